// Every screen for every hand, eye and ear: axe with enhanced contrast in light and dark, targets of 44 px, no sideways
// scrolling, text at twice its size, answers that are read out, and the main path by keyboard alone.
import { axe, overflow, smallTargets } from "./checks.js";
import { ADDRESSES, expect, furnish, go, hand, heading, loadExamples, meet, notice, open, test } from "./hand.js";

test.describe.configure({ timeout: 180_000 });

/** Addresses that exist in an empty book. */
const ALONE = ADDRESSES.filter(([, at]) => !/undefined/.test(at({})));

/** Settled: fonts, pictures and what moves stand still. */
async function arrive(page, address) {
  await go(page, address);
  await page.evaluate(() => {
    document.querySelectorAll("details").forEach((folded) => (folded.open = true));
    return Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {})));
  });
}

for (const colorScheme of ["light", "dark"])
  test.describe(colorScheme, () => {
    test.use({ colorScheme });

    // In four parts, so that two workers share them.
    for (const part of [0, 1, 2, 3])
      test(`axe finds nothing in a furnished book, part ${part + 1}`, async ({ page, start }) => {
        await start();
        const ids = await furnish(page);
        for (const [name, at] of ADDRESSES.filter((_, i) => i % 4 === part)) {
          await arrive(page, at(ids));
          expect.soft(await axeAll(page), `${name} ${at(ids)}`).toEqual([]);
        }
      });

    for (const part of [0, 1])
      test(`axe finds nothing in an empty book, part ${part + 1}`, async ({ page, start }) => {
        await start();
        for (const [name, at] of ALONE.filter((_, i) => i % 2 === part)) {
          await arrive(page, at({}));
          expect.soft(await axeAll(page), name).toEqual([]);
        }
      });

    test("axe finds nothing in notices, complaints, words that came back, and a couple with only a name", async ({ page, site, start }) => {
      await start();
      const thumb = hand(page);
      await go(page, "#/couples/new");
      await thumb.press("Save");
      await thumb.write(page.getByLabel("Wedding date"), "31/2/2027");
      await thumb.press("Save");
      await expect(page.locator("[aria-invalid=true]")).toHaveCount(2);
      expect.soft(await axeAll(page), "complaints").toEqual([]);
      await open(page, site, "#/couples/new");
      await expect(page.getByText("Your unsaved words are back.")).toBeVisible();
      expect.soft(await axeAll(page), "words that came back").toEqual([]);
      await thumb.press("Throw them away");
      const id = await meet(page, "Wren");
      await expect(notice(page)).toBeVisible();
      expect.soft(await axeAll(page), "a notice, a couple with only a name").toEqual([]);
      await thumb.press("Put away");
      await expect(notice(page)).toContainText("put away");
      expect.soft(await axeAll(page), "put away").toEqual([]);
      await page.evaluate(() => (IDBObjectStore.prototype.put = () => { throw new DOMException("no", "QuotaExceededError"); }));
      await thumb.press("Bring back");
      await expect(page.getByRole("alert")).toContainText("Not saved");
      expect.soft(await axeAll(page), "a failure").toEqual([]);
      await go(page, `#/couple/${id.replace(/^./, "0")}`);
      expect.soft(await axeAll(page), "a couple that is not here").toEqual([]);
    });
  });

for (const width of [320, 360])
  for (const book of ["furnished", "empty"])
    test(`every control is 44 px at ${width} px and nothing scrolls sideways, ${book}`, async ({ page, start }) => {
      await page.setViewportSize({ width, height: 740 });
      await start();
      const ids = book === "furnished" ? await furnish(page) : {};
      for (const [name, at] of book === "furnished" ? ADDRESSES : ALONE) {
        await arrive(page, at(ids));
        expect.soft(await tooSmall(page), name).toEqual([]);
        expect.soft(await overflow(page), `${name}: sideways`).toBe(0);
        expect.soft(await cutOff(page), `${name}: cut off`).toEqual([]);
      }
    });

for (const width of [320, 360])
  test(`text at twice its size loses nothing at ${width} px`, async ({ page, start }) => {
    await page.setViewportSize({ width, height: 740 });
    await start();
    const ids = await furnish(page);
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    for (const [name, at] of ADDRESSES) {
      await arrive(page, at(ids));
      expect.soft(await overflow(page), `${name}: sideways`).toBe(0);
      expect.soft(await cutOff(page), `${name}: cut off`).toEqual([]);
      expect.soft(await tooSmall(page), name).toEqual([]);
    }
  });

test("every answer is an output with a name", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  for (const [which, address, least] of [
    ["size", "#/bench/size?q=UK%20M", 1],
    ["order", "#/bench/order?size=UK%20M&width=6", 1],
    ["order, of a couple", `#/bench/order?couple=${ids.couple}&who=first`, 1],
    ["stack", "#/bench/stack?band=3&ring1-width=2.6", 1],
    ["stack, of a couple", `#/bench/stack?couple=${ids.couple}&who=first`, 1],
    ["dates", "#/bench/dates?wedding=22%20May%202028", 1],
    ["dates, of a couple", `#/bench/dates?couple=${ids.couple}`, 1],
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

test("every picture says the same in words", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  for (const [name, at] of ADDRESSES) {
    await arrive(page, at(ids));
    const mute = await page.evaluate(() =>
      [...document.querySelectorAll("svg")]
        .filter((svg) => svg.checkVisibility() && !svg.closest("[aria-hidden=true]"))
        .filter((svg) => {
          const holder = svg.closest("[role=img]") ?? svg;
          const by = (holder.getAttribute("aria-labelledby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent);
          return ![holder.getAttribute("aria-label"), ...by, holder.querySelector("title")?.textContent].some((text) => text?.trim());
        })
        .map((svg) => svg.outerHTML.slice(0, 120)),
    );
    expect.soft(mute, name).toEqual([]);
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
  await tabTo(page, "Wedding date");
  await page.keyboard.type("31/2/2027");
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Wedding date"), "the field with the complaint has the focus").toBeFocused();
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

/** The controls that people press and that are too small. The button that lets the enter key send a form is none. */
async function tooSmall(page) {
  return (await smallTargets(page)).filter((fault) => !/class="unseen" tabindex="-1" aria-hidden="true"/.test(fault));
}

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
