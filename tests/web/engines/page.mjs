// What is looked up in the page. Each function runs there, as text, and therefore uses nothing from around it.

/** The control that somebody would call so: a button or link by its name, a field by its label, a radio in its group. */
export function control(kind, name, group) {
  const words = (it) => it?.textContent.replace(/\s+/g, " ").trim();
  const named = (it) => (it.getAttribute("aria-label") ?? words(it.querySelector(".line-name") ?? it)) === name;
  const inGroup = (it) => words(it.closest("fieldset")?.querySelector("legend")) === group;
  const all = (selector) => [...document.querySelectorAll(selector)];
  const found = {
    button: () => all("button").filter(named),
    link: () => all("a[href]").filter(named),
    field: () => all("label[for]").filter(named).map((label) => label.control),
    // A finger taps the words; the radio in them may be as small as it likes.
    radio: () => all("label.choice-option").filter((label) => named(label) && inGroup(label)),
  }[kind]();
  return found.find((it) => it?.checkVisibility()) ?? null;
}

/** What a row of a list says, as it is read out. */
export function row(name) {
  const words = (it) => it?.textContent.replace(/\s+/g, " ").trim();
  const line = [...document.querySelectorAll(".line")].find((it) => words(it.querySelector(".line-name")) === name);
  const said = line?.cloneNode(true);
  for (const drawn of said?.querySelectorAll("[aria-hidden=true]") ?? []) drawn.remove();
  return words(said) ?? null;
}

export function heading() {
  return document.querySelector("main h1")?.textContent ?? null;
}

export function value(field) {
  return field.value;
}

/** Whether the app has replaced the page's shell and can be used. */
export function usable() {
  return document.documentElement.hasAttribute("data-ready");
}

/** Whether the service worker has everything and answers for this page. */
export function kept() {
  return navigator.serviceWorker.controller?.state === "activated";
}

export function everything() {
  return `${location.href} ${document.body?.innerText.replace(/\s+/g, " ").slice(0, 500)}`;
}

export function size() {
  return `${innerWidth} x ${innerHeight}`;
}
