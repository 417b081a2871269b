// Every screen for every hand, eye and ear: axe with enhanced contrast, targets of 44 px, no sideways scrolling, text at
// twice its size, pictures and answers that are read out, and the main path by keyboard alone.
import { axe, deafRegions, overflow, smallTargets } from "./checks.js";
import { ADDRESSES, coupleOf, expect, furnish, go, hand, heading, loadExamples, notice, open, test } from "./hand.js";
import { say } from "./say.js";

test.describe.configure({ timeout: 180_000 });

const FURNISHED = ADDRESSES;
/** Addresses that exist in an empty book. The couple's own list and the calculators know no book: one walk has them. */
const EMPTY = ADDRESSES.filter(([name, at]) => !/undefined/.test(at({})) && !/^(Address::List|Calculator)/.test(name));
/** Screens that have between them every part with colours of its own, and a picture. */
const DARK = ["Address::Today", "Address::Couple", "Part::Band", "Calculator::Stack"];

/** So high that nothing of a page lies under the bars at its foot, where axe could not see it. */
const tall = { width: 360, height: 8000 };
const narrow = { width: 320, height: 740 };

/** Goes to an address and waits until it is settled: fonts, pictures and what moves stand still. */
async function arrive(page, address) {
  await go(page, address);
  await page.evaluate(() => {
    document.querySelectorAll("details").forEach((folded) => (folded.open = true));
    return Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {})));
  });
}

// Two walks, each in parts, so that the workers share them.
const PARTS = { furnished: 4, empty: 2 };
for (const [book, addresses] of Object.entries({ furnished: FURNISHED, empty: EMPTY }))
  for (let part = 0; part < PARTS[book]; part++)
    test(`every screen of ${book === "empty" ? "an empty" : "a furnished"} book can be read and pressed, part ${part + 1}`, async ({ page, start }) => {
      await start();
      const ids = book === "furnished" ? await furnish(page) : {};
      for (const [name, at] of addresses.filter((_, i) => i % PARTS[book] === part)) {
        const label = `${name} ${at(ids)}`;
        await page.setViewportSize(tall);
        await arrive(page, at(ids));
        expect.soft(await axe(page), label).toEqual([]);
        expect.soft(await muteIn(page), `${label}: pictures without words`).toEqual([]);
        expect.soft(await faults(page), label).toEqual([]);
        await page.setViewportSize(narrow);
        await arrive(page, at(ids));
        expect.soft(await faults(page), `${label}, at 320 px`).toEqual([]);
        await sizeOfText(page, "200%");
        expect.soft(await faults(page), `${label}, at 320 px with text at twice its size`).toEqual([]);
        await sizeOfText(page, "");
      }
    });

// The colours themselves are proved in tests/colours.rs, in light and dark.
test.describe("dark", () => {
  test.use({ colorScheme: "dark" });

  test("axe finds nothing in the dark either", async ({ page, start }) => {
    await start();
    const ids = await furnish(page);
    for (const name of DARK) {
      await arrive(page, ADDRESSES.findLast(([of]) => of === name)[1](ids));
      expect.soft(await axeAll(page), name).toEqual([]);
    }
  });
});

test("axe finds nothing in notices, complaints, words that came back, and a couple with only a name", async ({ page, site, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/couples/new");
  await thumb.press(say.screens.SAVE);
  await thumb.write(page.getByLabel(say.screens.WEDDING), "31/2/2027");
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("[aria-invalid=true]")).toHaveCount(2);
  expect.soft(await axeAll(page), "complaints").toEqual([]);
  await open(page, site, "#/couples/new");
  await expect(page.getByText("Your unsaved words are back.")).toBeVisible();
  expect.soft(await axeAll(page), "words that came back").toEqual([]);
  await thumb.press(say.screens.DRAFT_DISCARD);
  await thumb.write(page.getByLabel(say.screens.FIRST_NAME), "Wren");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toBeVisible();
  const id = coupleOf(page);
  expect.soft(await axeAll(page), "a notice, a couple with only a name").toEqual([]);
  await thumb.press(say.screens.PUT_AWAY);
  await expect(notice(page)).toContainText("put away");
  expect.soft(await axeAll(page), "put away").toEqual([]);
  await page.evaluate(() => (IDBObjectStore.prototype.put = () => { throw new DOMException("no", "QuotaExceededError"); }));
  await thumb.press(say.screens.BRING_BACK);
  await expect(page.getByRole("alert")).toContainText("Not saved");
  expect.soft(await axeAll(page), "a failure").toEqual([]);
  await go(page, `#/couple/${id.replace(/^./, "0")}`);
  expect.soft(await axeAll(page), "a couple that is not here").toEqual([]);
});

test("every answer is an output with a name", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  for (const [which, address, least] of [
    ["size", "#/tools/size?q=UK%20M", 1],
    ["order", "#/tools/order?size=UK%20M&width=6", 1],
    ["order, of a couple", `#/tools/order?couple=${ids.couple}&who=first`, 1],
    ["stack", "#/tools/stack?band=3&ring1-width=2.6", 1],
    ["stack, of a couple", `#/tools/stack?couple=${ids.couple}&who=first`, 1],
    ["dates", "#/tools/dates?wedding=22%20May%202028", 1],
    ["dates, of a couple", `#/tools/dates?couple=${ids.couple}`, 1],
  ]) {
    await arrive(page, address);
    const outputs = page.locator("output");
    expect.soft(await outputs.count(), which).toBeGreaterThanOrEqual(least);
    for (const output of await outputs.all()) {
      expect.soft(await output.getAttribute("aria-label"), `${which}: the name`).toMatch(/\w/);
      expect.soft(await output.textContent(), `${which}: the answer`).toMatch(/\d/);
    }
  }
});

test("the main path by keyboard alone: a new couple, its wedding, its notes, and back", async ({ page, start }) => {
  await start();
  await loadExamples(page);
  await page.evaluate(() => document.activeElement.blur());
  await tabTo(page, "New couple");
  await page.keyboard.press("Enter");
  await expect(heading(page)).toBeFocused();
  await tabTo(page, "First name");
  await page.keyboard.type("Tess");
  await tabTo(page, "Second name");
  await page.keyboard.type("Rowan");
  await tabTo(page, "Not asked");
  await page.keyboard.press("ArrowRight");
  await tabTo(page, "Save");
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Tess & Rowan");
  await expect(heading(page)).toBeFocused();
  await tabTo(page, /Wedding/);
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Wedding date");
  await expect(heading(page)).toBeFocused();
  await tabTo(page, "Wedding date");
  await page.keyboard.type("31/2/2027");
  await page.keyboard.press("Enter");
  await expect(page.getByLabel(say.screens.WEDDING), "the field with the complaint has the focus").toBeFocused();
  await page.keyboard.press("ControlOrMeta+A");
  await page.keyboard.type("22 May 2027");
  await page.keyboard.press("Enter");
  await expect(page.locator(".line", { hasText: "Wedding" })).toContainText("22 May 2027");
  await tabTo(page, "Undo");
  await page.keyboard.press("Enter");
  await expect(notice(page)).toContainText("Taken back");
  await page.evaluate(() => scrollTo(0, 0));
  await tabTo(page, "Today");
  await page.keyboard.press("Enter");
  await expect(heading(page)).toHaveText("Today");
  await expect(heading(page)).toBeFocused();
});

/** Presses Tab until the control of this name has the focus, and checks on the way that the focus can be seen. */
async function tabTo(page, name) {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press("Tab");
    const now = await page.evaluate(() => {
      const at = document.activeElement;
      const said = at.labels?.[0]?.textContent ?? at.getAttribute("aria-label") ?? at.textContent;
      const shown = getComputedStyle(at.type === "radio" ? (at.nextElementSibling ?? at) : at);
      return { said: said.trim(), outline: shown.outlineStyle, width: shown.outlineWidth };
    });
    if (typeof name === "string" ? now.said === name : name.test(now.said)) return;
  }
  throw new Error(`Tab never came to ${name}`);
}

/** What cannot be pressed or read as the screen stands: controls that are too small, scrolling sideways, words cut off. */
async function faults(page) {
  // The button that lets the enter key send a form is nobody's target.
  const small = (await smallTargets(page)).filter((fault) => !/class="unseen" tabindex="-1" aria-hidden="true"/.test(fault));
  const wider = await overflow(page);
  const deaf = await deafRegions(page);
  return [...small, ...deaf.map((region) => `not drawn until it says something: ${region}`), ...(wider ? [`${wider} px wider than the screen`] : []), ...(await cutOff(page)).map((part) => `cut off: ${part}`)];
}

/** Sets the size of text as a browser does at the wish of its user. */
const sizeOfText = (page, size) => page.evaluate((size) => void (document.documentElement.style.fontSize = size), size);

/** What axe finds on a screen so high that nothing of the page lies under the bars at its foot. */
async function axeAll(page) {
  const { width, height } = page.viewportSize();
  await page.setViewportSize({ width, height: Math.max(height, await page.evaluate(() => document.documentElement.scrollHeight)) });
  const faults = await axe(page);
  await page.setViewportSize({ width, height });
  return faults;
}

/** Words that are wider than the box that holds and cuts them. */
function cutOff(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("main *, nav *")]
      .filter((part) => part.checkVisibility({ visibilityProperty: true }) && !part.closest("svg") && !part.matches(".unseen, input, textarea, select"))
      .filter((part) => ["hidden", "clip"].includes(getComputedStyle(part).overflowX) && part.scrollWidth > part.clientWidth + 1)
      .map((part) => part.outerHTML.slice(0, 120)),
  );
}

/** Pictures that say nothing in words. */
function muteIn(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("svg")]
      .filter((svg) => svg.checkVisibility() && !svg.closest("[aria-hidden=true]"))
      .filter((svg) => {
        const holder = svg.closest("[role=img]") ?? svg;
        const by = (holder.getAttribute("aria-labelledby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent);
        return ![holder.getAttribute("aria-label"), ...by, holder.querySelector("title")?.textContent].some((text) => text?.trim());
      })
      .map((svg) => svg.outerHTML.slice(0, 120)),
  );
}
