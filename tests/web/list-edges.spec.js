// The couple's list at its edges: before anything is answered, with a question left open, with a link for somebody
// else, on a phone that forgets, and on the wrong screen.
import { readFile } from "node:fs/promises";
import { axe } from "./checks.js";
import { TODAY, expect, go, hand, heading, keptList, line, meet, notice, open, test } from "./hand.js";
import { INVITED } from "./list.js";
import { say } from "./say.js";

test("nothing is handed over before anything is answered, and what is left open about recording is asked once more", async ({ page, site, start }) => {
  await start();
  // The names that a link brings along are no answer of theirs.
  await open(page, site, "#/list?for=Ada");
  await go(page, "#/list/send");
  await expect(page.getByText("Nothing is answered yet")).toBeVisible();
  await expect(page.getByRole("button")).toHaveCount(0);
  await go(page, "#/list/budget");
  await hand(page).write(page.locator("#else"), "we are vegan");
  await go(page, "#/list/send");
  await expect(page.getByText("answer the message in which the link came")).toBeVisible();
  const group = page.getByRole("group", { name: "May your jeweller write this down and keep it?" });
  await expect(group).toBeVisible();
  // Handed over as it is, the jeweller is told that it was left open.
  const downloading = page.waitForEvent("download");
  await hand(page).press(say.list.handing.SAVE_FILE);
  const leftOpen = await readFile(await (await downloading).path(), "utf8");
  expect(JSON.parse(leftOpen).answers).toEqual({ "name.first": "Ada", else: "we are vegan" });
  // A no counts at once, in what leaves and in what is kept.
  await hand(page).choose("May your jeweller write this down and keep it?", "no");
  await expect(page.getByText("You said no to being recorded")).toBeVisible();
  const again = page.waitForEvent("download");
  await hand(page).press(say.list.handing.SAVE_FILE);
  expect(JSON.parse(await readFile(await (await again).path(), "utf8")).answers).toEqual({ "name.first": "Ada", recorded: "no" });
  expect((await keptList(page)).answers).toEqual({ "name.first": "Ada", else: "we are vegan", recorded: "no" });

  await go(page, "#/couples/list");
  await page.locator("#message").fill(leftOpen);
  await expect(page.getByText("They left open whether you may write this down.")).toBeVisible();
});

test("a link for others asks whether a new list is to begin, and neither is lost unseen", async ({ page, site, start }) => {
  await start();
  const names = async () => Object.entries((await keptList(page)).answers).filter(([spot]) => /^name/.test(spot)).map(([, name]) => name);
  // A jeweller tries one link after the other: nothing is written in them, so nothing is asked.
  await open(page, site, "#/list?for=Eve&with=Sam");
  await open(page, site, INVITED);
  await expect(page.getByText("For Ada and Ben.")).toBeVisible();
  await expect(page.getByRole("link", { name: "Begin: The wedding" })).toBeVisible();
  expect(await names()).toEqual(["Ada", "Ben"]);
  await go(page, "#/list/wedding");
  await hand(page).write(page.locator("#wedding"), "May 2027");
  const before = await keptList(page);

  // Their own link once more, with another appointment, changes no answer.
  await open(page, site, "#/list?for=Ada&with=Ben&when=2027-01-04T09%3A30");
  await expect(page.getByText("For Ada and Ben. Your appointment: Mon 4 Jan 2027, 09:30.")).toBeVisible();
  expect((await keptList(page)).id).toBe(before.id);

  const others = "#/list?for=Amy&with=Kim&when=2026-12-05T10%3A00";
  const asked = page.getByText("This link is for Amy and Kim, and there is a list of Ada and Ben on this phone.");
  await open(page, site, others);
  await expect(asked).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await hand(page).press(say.list.pages.KEEP_LIST);
  await expect(page.getByText("For Ada and Ben.")).toBeVisible();
  expect(new URL(page.url()).hash).toBe("#/list");
  expect((await keptList(page)).answers).toEqual(before.answers);

  await open(page, site, others);
  await hand(page).press(say.list.pages.NEW_LIST);
  await expect(page.getByText("For Amy and Kim. Your appointment: Sat 5 Dec 2026, 10:00.")).toBeVisible();
  expect(await names()).toEqual(["Amy", "Kim"]);
  expect((await keptList(page)).id).not.toBe(before.id);
  await hand(page).press(say.list.pages.PUT_BACK);
  await expect(page.getByText("For Ada and Ben.")).toBeVisible();
  expect((await keptList(page)).answers).toEqual(before.answers);
});

test("a second link fills in who is missing, and names nobody twice", async ({ page, site, start }) => {
  await start();
  const names = async () => Object.entries((await keptList(page)).answers).filter(([spot]) => /^name/.test(spot)).sort().map(([, name]) => name);
  const rows = [
    [{ "name-first": "Ben" }, "for=Ada&with=Ben", ["Ben", "Ada"]],
    [{ "name-second": "Ada" }, "for=Ada&with=Ben", ["Ben", "Ada"]],
    [{ "name-first": "Ada" }, "for=Ada&with=Ben", ["Ada", "Ben"]],
    [{ "name-first": "Ada", "name-second": "Benjamin" }, "for=Ada&with=Ben", ["Ada", "Benjamin"]],
    [{}, "with=Ben", ["Ben"]],
  ];
  for (const [typed, query, expected] of rows) {
    await page.evaluate(() => localStorage.removeItem("bandwright.list"));
    await go(page, "#/list/two");
    for (const [id, name] of Object.entries(typed)) await hand(page).write(page.locator(`#${id}`), name);
    // What is typed is kept before a link is opened.
    await expect.poll(async () => Object.keys((await keptList(page))?.answers ?? {}).length).toBe(Object.keys(typed).length);
    await open(page, site, `#/list?${query}&when=2027-01-04T09%3A30`);
    await expect(page.locator(".list-greeting")).toBeVisible();
    expect(await names(), `${JSON.stringify(typed)} and ${query}`).toEqual(expected);
  }
  expect((await keptList(page)).answers).toEqual({ "name.second": "Ben" });
});

test("a phone that stops keeping says so where it is typed, and a width in words is no mistake", async ({ page, site, start }) => {
  await start();
  await open(page, site, "#/list/rings");
  await hand(page).tap(page.locator("#owns-rings-first-some"));
  const width = page.locator("#ring-width-first-1");
  const help = page.getByText("Kept as you wrote it. A figure like 2.6 would help.");
  for (const [words, told] of [["about two", 1], ["900", 1], ["2,6", 0]]) {
    await hand(page).put(width, words);
    await page.keyboard.press("Tab");
    await expect(help, words).toHaveCount(told);
    await expect(width).not.toHaveAttribute("aria-invalid", "true");
  }
  await go(page, "#/list/two");
  const stopped = page.getByText("This phone has stopped keeping what you write");
  await hand(page).write(page.locator("#name-first"), "A");
  await expect(stopped).toHaveCount(0);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
  });
  await hand(page).type("da");
  await expect(stopped).toBeVisible();
  expect(await axe(page)).toEqual([]);
  for (const address of ["#/list/wedding", "#/list"]) {
    await go(page, address);
    await expect(stopped).toBeVisible();
  }
});

test("a phone whose browser clears what is not visited says so, to the couple and to the jeweller", async ({ page, site, context, start }) => {
  await context.addInitScript(() => Object.defineProperty(navigator, "standalone", { value: false }));
  await start();
  await open(page, site, "#/list");
  await expect(page.locator(".caution")).toContainText("If you do not open this list for a week, this phone’s browser may delete it.");
  await go(page, "#/couples/list");
  await expect(page.locator(".caution")).toContainText("starts with an empty book of its own");
});

test("a file of the book among lists is handed on to where files come in", async ({ page, start }) => {
  await start();
  const by = "00000000000000000000000000000abc";
  const record = { schema: "1.0", id: "0123456789abcdef0123456789abcdef", kind: "couple", changes: [{ by, n: 1, at: +TODAY, sets: [{ field: "name.first", value: "Zoe" }] }] };
  const book = JSON.stringify({ schema: "1.1", kind: "bandwright-book", written: +TODAY, by, holds: "couples", records: [record] });
  const ways = [
    () => page.locator("#message").fill(book),
    () => page.locator("#list-file").setInputFiles({ name: "x.json", mimeType: "text/plain", buffer: Buffer.from(book) }),
  ];
  for (const give of ways) {
    await go(page, "#/couples/list");
    await page.locator("#message").fill("");
    await give();
    await expect(page.getByText("this is one with couples of a book.")).toBeVisible();
    await hand(page).follow(say.copies.BRING_IN);
    await expect(line(page, "Zoe")).toBeVisible();
  }
  await hand(page).press("Bring in 1 couple");
  await expect(notice(page)).toContainText("Brought in");
  // What was looked at and left does not come up on the other screen, another time.
  await go(page, "#/couples/list");
  await page.locator("#message").fill("");
  await ways[1]();
  await expect(page.getByText("this is one with couples of a book.")).toBeVisible();
  await go(page, "#/today");
  await go(page, "#/setup/copies/bring-in");
  await expect(page.getByText("Choose a file")).toBeVisible();
  await expect(line(page, "Zoe")).toHaveCount(0);
});

/** A list of these two, as it is handed over. */
const listOf = (first, second, more = {}) => JSON.stringify({ schema: "1.0", kind: "preparation-list", id: "0".repeat(31) + "7", saved: "2026-11-25", answers: { "name.first": first, "name.second": second, ...more } });

test("a list that was looked at and left is aimed at nobody else", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const ada = await meet(page, "Ada", { second: "Ben" });
  const cleo = await meet(page, "Cleo", { second: "Dan" });
  await go(page, "#/setup/copies/bring-in");
  await page.locator("#file").setInputFiles({ name: "x.json", mimeType: "text/plain", buffer: Buffer.from(listOf("Ada", "Ben")) });
  await expect(page.getByText("This is a couple’s preparation list")).toBeVisible();
  await go(page, `#/couple/${cleo}/said`);
  await thumb.follow(say.list.taking.TAKE_IN);
  await expect(page.getByRole("button", { name: say.list.taking.TAKE_IT_IN }), "it stayed where it was").toHaveCount(0);
  await expect(page.locator("#message")).toBeVisible();

  // Pasted and left, it is there again, and says that it is of an earlier visit.
  await page.locator("#message").fill(listOf("Ada", "Ben"));
  await expect(page.getByRole("button", { name: say.list.taking.TAKE_IT_IN })).toBeVisible();
  const others = page.getByText("These names are not those of Cleo & Dan, from whose page you came.");
  await expect(others).toBeVisible();
  await expect(page.getByRole("radio", { name: "Cleo & Dan" })).not.toBeChecked();
  await expect(page.getByRole("radio", { name: "Ada & Ben" })).toBeChecked();
  expect(await axe(page)).toEqual([]);
  await go(page, `#/couple/${cleo}/said`);
  await thumb.follow(say.list.taking.TAKE_IN);
  await expect(page.locator(".restored").first()).toBeVisible();
  await expect(page.getByRole("radio", { name: "Ada & Ben" })).toBeChecked();
  await thumb.press(say.list.taking.ANOTHER);
  // One of the two is enough: they are the same people under other names.
  await page.locator("#message").fill(listOf("Chloë", "Dan"));
  await expect(page.getByRole("radio", { name: "Cleo & Dan" })).toBeChecked();
  await expect(others).toHaveCount(0);
  await go(page, `#/couple/${ada}/said`);
  await thumb.follow(say.list.taking.TAKE_IN);
  await expect(page.getByText("These names are not those of Ada & Ben")).toBeVisible();
  await expect(page.getByRole("radio", { name: say.list.taking.NEW_COUPLE })).toBeChecked();
});

test("a yes after a no is asked about, and a no has a rest to read only where there is one", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Ada", { second: "Ben" });
  await go(page, `#/couple/${id}/recorded`);
  await thumb.choose(say.screens.MAY_RECORD, say.screens.NO);
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, "#/couples/list");
  const asked = page.getByText("They said no before and say yes now: ask them");
  await page.locator("#message").fill(listOf("Ada", "Ben", { recorded: "yes" }));
  await expect(asked).toBeVisible();
  await thumb.tap(page.getByRole("radio", { name: say.list.taking.NEW_COUPLE }));
  await expect(asked).toHaveCount(0);
  await thumb.press(say.list.taking.ANOTHER);
  const rest = page.getByText("Read the rest now");
  await page.locator("#message").fill(listOf("Ada", "Ben", { recorded: "no" }));
  await expect(page.getByText("They say no to being recorded.")).toBeVisible();
  await expect(rest).toHaveCount(0);
  await thumb.press(say.list.taking.ANOTHER);
  await page.locator("#message").fill(listOf("Ada", "Ben", { recorded: "no", else: "vegan" }));
  await expect(rest).toBeVisible();
});

test("a file that is larger than any list is not read", async ({ page, start }) => {
  await start();
  await page.evaluate(() => {
    window.slices = 0;
    const slice = Blob.prototype.slice;
    Blob.prototype.slice = function (...range) {
      window.slices += 1;
      return slice.apply(this, range);
    };
  });
  const give = (size) => page.locator("#list-file").setInputFiles({ name: "x.json", mimeType: "text/plain", buffer: Buffer.alloc(size, "x") });
  await go(page, "#/couples/list");
  await give(2_500_000);
  await expect(page.getByText("a list is never larger than 1,000 kB, and this is.")).toBeVisible();
  expect(await page.evaluate(() => window.slices)).toBe(0);
  await give(1_000_000);
  await expect(page.getByText("there is no list in this.")).toBeVisible();
  expect(await page.evaluate(() => window.slices)).toBe(1);
});

test("what they said of the day they need the bands stands where dates are worked out", async ({ page, start }) => {
  await start();
  const answers = { "name.first": "Ada", "name.second": "Ben", wedding: "22 May 2027", "needed-by": "by the end of April" };
  const list = { schema: "1.0", kind: "preparation-list", id: "0".repeat(31) + "7", saved: "2026-11-25", answers };
  await go(page, "#/couples/list");
  await page.locator("#message").fill(JSON.stringify(list));
  await hand(page).press(say.list.taking.TAKE_IT_IN);
  await expect(heading(page)).toHaveText("Ada & Ben");
  await hand(page).tap(line(page, "Dates"));
  await expect(page.locator(".said", { hasText: "Said by the couple" })).toContainText("Bands needed: by the end of April");
});
