// The couple's list with no server there: kept, and handed over from their phone to the jeweller's.
import { readFile } from "node:fs/promises";
import { axe } from "./checks.js";
import { expect, fieldsOf, go, hand, heading, keptList, loadExamples, notice, open, ready, said, test } from "./hand.js";
import { INVITED, fill, secondPhone } from "./list.js";
import { say } from "./say.js";

test.use({ serviceWorkers: "allow" });

test("it is kept at every key and goes on after a reload, with the server gone", async ({ page, site, install }) => {
  await install();
  await site.stop();
  await open(page, site, "#/list/two");
  await hand(page).write(page.locator("#name-first"), "Ada");
  await page.reload();
  await ready(page);
  await expect(page.locator("#name-first")).toHaveValue("Ada");
  await go(page, "#/list/rings");
  await hand(page).tap(page.locator("#owns-rings-second-some"));
  await hand(page).write(page.locator("#ring-width-second-1"), "about two");
  await page.keyboard.press("Tab");
  await expect(page.getByText("Kept as you wrote it. A figure like 2.6 would help.")).toBeVisible();
  await hand(page).press(say.list.pages.ADD_RING);
  await hand(page).write(page.locator("#ring-name-second-2"), "signet");
  await page.reload();
  await ready(page);
  await expect(page.locator("#ring-width-second-1")).toHaveValue("about two");
  await expect(page.locator("#ring-name-second-2")).toHaveValue("signet");
  await go(page, "#/list");
  await expect(page.getByText("0 of 16 answered, 2 more by one of you")).toBeVisible();
  // The installed app begins at Today, where there is no couple: the list is not far.
  await go(page, "#/today");
  await expect(page.getByRole("link", { name: say.list.pages.RESUME })).toHaveAttribute("href", "#/list");
});

test("handed over by file and by message between two phones with the server gone", async ({ page, context, browser, site, install, guard }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const book = await secondPhone(browser, guard);
  await install(page);
  await install(book);
  await loadExamples(book);
  await site.stop();

  await open(page, site, INVITED);
  await fill(page);
  await go(page, "#/list/send");
  const downloading = page.waitForEvent("download");
  await hand(page).press(say.list.handing.SAVE_FILE);
  const file = await (await downloading).path();
  await hand(page).press(say.list.handing.COPY_TEXT);
  await expect(page.getByText("Copied.")).toBeVisible();
  const message = await page.evaluate(() => navigator.clipboard.readText());
  expect(JSON.parse(await readFile(file, "utf8"))).toEqual(await keptList(page));

  // By file, into a new couple.
  const thumb = hand(book);
  await go(book, "#/couples/list");
  await book.locator("#list-file").setInputFiles(file);
  await expect(book.getByText("engagement ring, 2,6 mm at three and nine o’clock, measured with a ruler")).toBeVisible();
  const before = await said(book);
  expect(Object.keys(before).length, "nothing is written before it was seen").toBe(4);
  expect(await axe(book)).toEqual([]);
  await thumb.press(say.list.taking.TAKE_IT_IN);
  await expect(heading(book)).toHaveText("Ada & Ben");
  const id = book.url().match(/couple\/([0-9a-f]{32})/)[1];
  const fields = await fieldsOf(book, id);
  expect(fields).toMatchObject({ "name.first": "Ada", "name.second": "Ben", wedding: "2027-05-22", recorded: { agrees: true, asked: "2026-11-25" }, stage: "enquiry" });
  const list = await keptList(page);
  expect(fields[`said.${list.id}`]).toEqual(list);
  expect(Object.keys(fields).filter((field) => /^(ring|band|finger|reading)\./.test(field)), "their words are no measures of ours").toEqual([]);
  // Where the jeweller records the same thing, their words stand beside it.
  for (const [part, words] of [["wedding", "22 May 2027"], ["rings/first", "engagement ring, 2,6 mm"], ["rings/first/new", "engagement ring, 2,6 mm"], ["band/first", "yes, please"]]) {
    await go(book, `#/couple/${id}/${part}`);
    await expect(book.locator(".said", { hasText: "Said by the couple" })).toContainText(words);
  }
  await go(book, `#/couple/${id}/said`);
  await expect(book.getByText("narrow “and” plain")).toBeVisible();
  expect(await axe(book)).toEqual([]);

  // By message, as a messenger leaves it: the same list is known again, and changes nothing.
  const sent = "Hi Mara\n> " + message.replace(/"/g, (_, at) => (at % 2 ? "“" : "”")).replace(/.{60}/g, "$&\n> ");
  const after = await said(book);
  await go(book, "#/couples/list");
  await book.locator("#message").fill(sent);
  await expect(book.getByText("This list has been taken in already, and nothing in it has changed.")).toBeVisible();
  await thumb.press(say.list.taking.TAKE_IT_IN);
  await expect(heading(book)).toHaveText("Ada & Ben");
  expect(await said(book)).toEqual(after);

  // A later version takes its place, and one undo puts the earlier one back.
  await go(page, "#/list/wedding");
  await hand(page).put(page.locator("#needed-by"), "by March");
  await go(page, "#/list/send");
  await hand(page).press(say.list.handing.COPY_TEXT);
  await expect(page.getByText("Copied.")).toBeVisible();
  await go(book, "#/couples/list");
  await book.locator("#message").fill(await page.evaluate(() => navigator.clipboard.readText()));
  await expect(book.getByText("This list has been taken in before.")).toBeVisible();
  await thumb.press(say.list.taking.TAKE_IT_IN);
  await expect(notice(book)).toContainText("List taken in");
  expect((await fieldsOf(book, id))[`said.${list.id}`].answers["needed-by"]).toBe("by March");
  await thumb.press(say.screens.UNDO);
  await expect(notice(book)).toContainText("Taken back");
  expect(await said(book)).toEqual(after);
});
