// The specification for the bench: shown, copied, shared, and kept back where they said no.
import { axe, overflow, smallTargets } from "./checks.js";
import { expect, go, hand, heading, loadExamples, meet, notice, test } from "./hand.js";
import { say } from "./say.js";

const paper = (page) => page.locator("#specification-text");

test("it is copied as it is shown, by names or by initials", async ({ page, context, start }) => {
  await start();
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const id = await meet(page, "Ada", { second: "Bo", reach: "07700 900111", wedding: "22 May 2027" });
  await hand(page).follow(/Specification for the bench/);
  await expect(heading(page)).toHaveText("Specification for the bench");
  await expect(paper(page)).toContainText("For Ada & Bo");
  await expect(paper(page)).toContainText(`reference ${id.slice(0, 6)}`);
  await expect(paper(page)).toContainText("Wedding: Sat 22 May 2027");
  await expect(paper(page)).not.toContainText("900111");
  await hand(page).press(say.copies.COPY_TEXT);
  await expect(notice(page)).toContainText("Copied");
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(await paper(page).textContent());
  await hand(page).choose(say.copies.CALLED, say.copies.INITIALS);
  await expect(paper(page)).toContainText("For A. & B.");
  await expect(paper(page)).not.toContainText("Ada");
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
});

test("without a clipboard the words are selected", async ({ page, context, start }) => {
  await context.addInitScript(() => {
    Object.defineProperty(navigator, "clipboard", { value: undefined });
    Document.prototype.execCommand = () => false;
  });
  await start();
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}/specification`);
  await hand(page).press(say.copies.COPY_TEXT);
  await expect(notice(page)).toContainText("would not copy");
  expect(await page.evaluate(() => getSelection().toString())).toContain("Specification for two bands");
});

test("the share sheet gets title and text, and a closed one sends nothing", async ({ page, context, start }) => {
  await context.addInitScript(() => {
    window.handed = [];
    navigator.share = async (data) => {
      window.handed.push(data);
      if (window.handed.length > 1) throw new DOMException("closed", "AbortError");
    };
  });
  await start();
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}/specification`);
  await hand(page).press(say.copies.SHARE);
  await expect(notice(page)).toContainText("Handed to the share sheet");
  const [{ title, text }] = await page.evaluate(() => window.handed);
  expect(title).toBe("Specification: Ada");
  expect(text).toBe(await paper(page).textContent());
  await hand(page).press(say.copies.SHARE);
  await expect(notice(page)).toContainText("Nothing was sent");
});

test("a couple that said no has no text to send, and an example is only looked at", async ({ page, start }) => {
  await start();
  await go(page, "#/today");
  await loadExamples(page);
  const follow = async (name) => {
    await go(page, "#/couples");
    await hand(page).follow(name);
    await hand(page).follow(/Specification for the bench/);
    await expect(heading(page)).toHaveText("Specification for the bench");
  };
  await follow(/Ines & Callum/);
  await expect(paper(page)).toBeVisible();
  await expect(page.getByRole("button", { name: say.copies.COPY_TEXT })).toHaveCount(0);
  // Of the examples none may be unmarked: a couple of one's own that says no.
  const id = await meet(page, "Cleo");
  await go(page, `#/couple/${id}/recorded`);
  await hand(page).choose(say.screens.MAY_RECORD, say.screens.NO);
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, `#/couple/${id}/specification`);
  await expect(page.locator(".caution")).toContainText("nothing about them leaves this phone");
  await expect(paper(page)).toHaveCount(0);
  await expect(page.getByRole("button", { name: /Copy|Share/ })).toHaveCount(0);
});
