// What the specs of fields share: which fields a screen has, how one of them is fed, and what is complained of.
import { expect } from "@playwright/test";
import { ALL_OF, BESIDES, FIELDS, SHOW } from "./fields.js";
import { ADDRESSES, go, hand } from "./hand.js";

/** Every address with fields to feed: its name, the address, and whether another of that name comes before it. */
export const rows = ADDRESSES.map(([name, at], i) => ({ name, at, again: name !== "Address::List" && ADDRESSES.findIndex(([other]) => other === name) < i }));

/** The address at which all fields of a screen stand. */
export const allOf = (name, address) => (ALL_OF[name] ?? ((address) => address))(address);

/** Goes to a screen, with all that is folded opened and what shows only with a choice shown. */
export async function arrive(page, name, address) {
  await go(page, allOf(name, address));
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  await SHOW[name]?.(page);
}

/** Types key by key, as a hand does. Nobody types ten thousand characters: they are pasted. */
export async function byHand(page, field, words) {
  await hand(page).put(field, words.length < 100 ? words : "");
  if (words.length >= 100) await page.keyboard.insertText(words);
}

/** Puts words into a field at once. */
const atOnce = (_, field, words) => field.fill(words);

/** Puts in what else has to be in a form for it to be saved. */
export async function feedBesides(page, name, key, put = atOnce) {
  for (const [other, text] of Object.entries(BESIDES[name] ?? {})) if (other !== key) await put(page, page.locator(`#${other}`), text);
}

/** Puts words into a field in the place of what it holds, and sends its form, or leaves the field where none is sent.
    Answers whether it was sent. */
export async function feed(page, key, words, put = atOnce) {
  const field = page.locator(`#${key}`);
  await put(page, field, words);
  const save = page.getByRole("button", { name: /^(Save|Add note|Add reading)$/ });
  const sends = (await save.count()) > 0;
  if (sends) await save.tap();
  else await field.press("Tab");
  return sends;
}

/** Chooses all that a field offers, one after the other. Answers how much that is. */
export async function chooseAll(page, key) {
  const thumb = hand(page);
  const box = page.locator(key === "extra-own" ? `[name^="extra-"]` : `[name="${key}"]`);
  const options = await box.evaluateAll((boxes) => boxes.map((box) => (box.type === "radio" ? box.value : [...(box.options ?? [])].map(({ value }) => value))).flat());
  const type = await box.first().evaluate((box) => box.type);
  if (type === "checkbox") {
    options.push("on", "off");
    await thumb.tap(box.first());
    await thumb.tap(box.first());
  } else if (type === "radio") for (const value of options) await thumb.tap(page.locator(`[name="${key}"][value="${value}"]`));
  else for (const value of options) await box.selectOption(value);
  return options.length;
}

/** Every field of the page by its key, and whether it is typed in. An extra of one's own has an id for a name. */
export function fieldsHere(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("input:not([type=file]), textarea:not([readonly]), select")].map((field) => ({
      key: (field.name || field.id).replace(/^extra-[0-9a-f]{32}$/, "extra-own"),
      typed: field.matches("textarea, input:not([type=radio], [type=checkbox], [type=file], [type=range])"),
    })),
  );
}

/** The complaints that show: the key of the field and the sentence, which has to stand beside it. */
export function complaints(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("[aria-invalid=true], .choice.wrong")].map((field) => {
      const key = field.id || field.name;
      const told = document.getElementById(`${key}-error`);
      return [key, told?.checkVisibility() ? told.textContent.trim() : "(not shown)"];
    }),
  );
}
