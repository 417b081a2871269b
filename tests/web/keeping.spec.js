// What is kept and what goes: erasing for good, putting away, and whether the browser keeps the book.
import { axe, overflow } from "./checks.js";
import { bringIn, choose, copy } from "./colleague.js";
import { expect, go, hand, heading, meet, meetByHand, notice, open, putRow, ready, rows, test } from "./hand.js";
import { say } from "./say.js";

test("erased for good: a tick and another press, no word is left, and an old file does not bring it back", async ({ page, site, start }) => {
  await start();
  const id = await meet(page, "Ada", { second: "Bo", reach: "07700 900111" });
  const { text } = await copy(page);
  // The couple was damaged once: what is left of that row was put aside, and they came in again from the copy.
  await putRow(page, "records", id, "a scrap of Ada");
  await open(page, site, "#/setup/phone");
  await hand(page).press(say.copies.PUT_ASIDE);
  await expect(notice(page)).toContainText("1 record put aside");
  await bringIn(page, { text });
  await go(page, "#/setup/phone");
  await expect(page.getByRole("button", { name: say.copies.SET_ASIDE_OUT })).toBeVisible();
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "half typed secret");
  // Words that nobody has saved name them in forms that are nobody's; others name somebody else.
  await go(page, "#/couples/new");
  await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), "Ada");
  await go(page, "#/couples/invite");
  await hand(page).write(page.locator("#first-name"), "Adalbert");
  await go(page, "#/couples/list");
  const spelled = String.raw`{"schema":"1.0","kind":"preparation-list","id":"${"0".repeat(31)}7","saved":"2026-11-25","answers":{"name.first":"\u0041da"}}`;
  await page.locator("#message").fill(`Here is ours: ${spelled}`);
  await go(page, `#/couple/${id}`);
  await hand(page).follow(/Erase for good/);
  await expect(page.locator("main")).toContainText("Everything about Ada & Bo");
  await expect(page.locator("main")).toContainText("cannot be undone");
  await expect(page.getByRole("link", { name: say.copies.ERASE_COPY_FIRST })).toBeVisible();
  await expect(page.getByRole("button", { name: say.copies.ERASE_NOW, exact: true })).toHaveCount(0);
  await expect(page.getByRole("button", { name: say.copies.PUT_AWAY_INSTEAD })).toBeVisible();
  await hand(page).tap(page.getByLabel(say.copies.ERASE_SURE));
  expect(await axe(page)).toEqual([]);
  await hand(page).press(say.copies.ERASE_NOW);
  await expect(heading(page)).toHaveText("Couples");
  await expect(notice(page)).toContainText("Erased for good");
  const kept = JSON.stringify(await rows(page)) + JSON.stringify(await page.evaluate(() => [{ ...localStorage }, { ...sessionStorage }]));
  for (const word of [/\bAda\b/, /u0041da/, /900111/, /secret/]) expect(kept).not.toMatch(word);
  expect(kept, "what was typed for somebody else stays").toContain("Adalbert");
  expect(kept, "a bare mark").toContain(id);
  await go(page, "#/setup/phone");
  await expect(page.getByRole("button", { name: say.copies.SET_ASIDE_OUT })).toHaveCount(0);
  await go(page, `#/couple/${id}/notes`);
  await expect(page.locator("main")).toContainText("They were erased for good.");
  await choose(page, text);
  await expect(page.locator("main")).toContainText("1 couple was erased on this phone and stay so.");
  await expect(page.getByRole("button", { name: /Bring in/ })).toHaveCount(0);
});

test("put away instead of erased: nothing is lost, and the way back leads to the couple", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}`);
  await hand(page).follow(/Erase for good/);
  await hand(page).press(say.copies.PUT_AWAY_INSTEAD);
  await expect(heading(page)).toHaveText("Ada");
  await expect(page.locator("main")).toContainText("Put away: out of sight, and nothing is lost.");
});

test("a tab that an installed app will not inherit says so before the first entry", async ({ page, context, start }) => {
  await context.addInitScript(() => Object.defineProperty(navigator, "standalone", { value: false }));
  await start();
  await expect(page.locator(".caution")).toContainText("starts with an empty book of its own");
  await go(page, "#/couples/new");
  await expect(page.locator(".caution")).toContainText("starts with an empty book of its own");
  await hand(page).follow(say.keeping.HOW_TO_INSTALL);
  await expect(heading(page)).toHaveText("On the home screen");
  await expect(page.locator(".step svg")).toHaveCount(5);
  await expect(page.locator(".section h2").first()).toHaveText("With a share sign");
  expect(await axe(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
  await meetByHand(page, "Ada");
  await go(page, "#/today");
  await expect(page.getByText("starts with an empty book of its own")).toHaveCount(0);
});

test("the browser is asked to keep the book on the second visit, and its no is said with what to do", async ({ page, context, start }) => {
  await context.addInitScript(() => {
    window.asked = 0;
    navigator.storage.persist = async () => {
      window.asked += 1;
      return false;
    };
    navigator.storage.persisted = async () => false;
  });
  await start();
  await meetByHand(page, "Ada");
  await go(page, "#/today");
  expect(await page.evaluate(() => window.asked)).toBe(0);
  await page.reload();
  await ready(page);
  await expect(page.locator("main")).toContainText("The browser has not promised to keep this book");
  expect(await page.evaluate(() => window.asked)).toBe(1);
  await page.reload();
  await ready(page);
  await expect(page.locator("main")).toContainText("The browser has not promised to keep this book");
  expect(await page.evaluate(() => window.asked), "the third visit asks nobody").toBe(0);
});
