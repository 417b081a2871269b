// Files out and in: a copy of the book, a colleague's phone, the preview, taking an import back, and bad input.
import { readFile } from "node:fs/promises";
import { axe, overflow, smallTargets } from "./checks.js";
import { choose, colleague, copy, download } from "./colleague.js";
import { TODAY, expect, go, hand, heading, line, loadExamples, meet, notice, ready, said, test } from "./hand.js";
import { say } from "./say.js";

/** At the end of the page nothing that is said lies over a button. */
async function expectClear(page, button) {
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  const [said, below] = [await notice(page).boundingBox(), await button.boundingBox()];
  expect(below.y + below.height <= said.y || below.y >= said.y + said.height, "clear of the notice").toBe(true);
}

/** Pastes a text. */
async function paste(page, text) {
  await go(page, "#/setup/copies/bring-in");
  await page.getByLabel(say.copies.PASTE).fill(text);
  await hand(page).press(say.copies.LOOK_AT_IT);
}

/** What each couple says, without what it is called by inside. */
const couplesOf = async (page) => JSON.stringify(await said(page));

test("the whole book leaves as a file, and comes in on another phone with a preview first", async ({ page, browser, guard, site, start }) => {
  await start();
  await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027" });
  await meet(page, "Cleo");
  await go(page, "#/today");
  await go(page, "#/setup/copies");
  await expect(page.locator("main")).toContainText("No copy of the whole book has left this phone yet.");
  await expect(page.locator("main")).toContainText("2 couples");
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
  const { name, text } = await copy(page);
  expect(name).toBe("bandwright-book-2026-11-25.json");
  expect(JSON.parse(text).records.length).toBe(2);
  await expect(page.locator("main")).toContainText("Last copy of the whole book: Wed 25 Nov 2026. Nothing was written here since.");

  const other = await colleague(browser, guard, site);
  await choose(other, text, "whatever.bin");
  await expect(line(other, "Ada & Bo")).toBeVisible();
  await expect(line(other, "Cleo")).toBeVisible();
  expect(await said(other), "nothing has changed yet").toEqual({});
  expect(await axe(other)).toEqual([]);
  await hand(other).press("Bring in 2 couples");
  await expect(notice(other)).toContainText("Brought in");
  await expect(other.locator("main")).toContainText("nothing of it has to be settled");
  expect(await couplesOf(other)).toBe(await couplesOf(page));

  // Once more, and one's own: nothing changes.
  for (const phone of [other, page]) {
    await choose(phone, text);
    await expect(phone.locator("main")).toContainText("Everything in it is here already.");
    await expect(phone.getByRole("button", { name: /Bring in/ })).toHaveCount(0);
  }

  // The same knowledge writes the same bytes, but for the head of the file.
  const body = (text) => text.slice(text.indexOf('"records"'));
  expect(body((await copy(other)).text)).toBe(body(text));
});

test("one tap takes an import back, also after a reload, and what was changed since stays", async ({ page, browser, guard, site, start }) => {
  await start();
  const ada = await meet(page, "Ada");
  await meet(page, "Cleo");
  const { text } = await copy(page);
  const other = await colleague(browser, guard, site);
  const own = await meet(other, "Dee");
  const before = await couplesOf(other);
  await choose(other, text);
  await hand(other).press("Bring in 2 couples");
  await expect(notice(other)).toContainText("Brought in");
  await other.reload();
  await ready(other);
  await go(other, "#/setup/copies");
  await expect(other.locator(".last-import")).toContainText("2 couples");
  await hand(other).press(say.copies.UNDO_IMPORT);
  await expect(notice(other)).toContainText("taken back");
  expect(await couplesOf(other)).toBe(before);
  await go(other, "#/couples");
  await expect(line(other, "Dee")).toBeVisible();
  await expect(line(other, "Ada")).toHaveCount(0);
  await go(other, `#/couple/${own}`);
  await expect(heading(other)).toHaveText("Dee");
  await go(other, `#/couple/${ada}`);
  await expect(heading(other)).toHaveText("This is not on this phone");
});

test("while a file comes in its button is gone, and it can still be taken back", async ({ page, browser, guard, site, start }) => {
  await start();
  await meet(page, "Ada");
  const { text } = await copy(page);
  const other = await colleague(browser, guard, site);
  await choose(other, text);
  const take = other.getByRole("button", { name: "Bring in 1 couple" });
  await expect(take).toBeVisible();
  // Somebody else writes into the book for a while: the import waits for its turn.
  await other.evaluate(
    () =>
      new Promise((done) => {
        indexedDB.open("bandwright").onsuccess = ({ target: { result: db } }) => {
          const store = db.transaction(["records", "meta"], "readwrite").objectStore("meta");
          const hold = () => (window.free ? db.close() : (store.get("installation").onsuccess = hold));
          hold();
          done();
        };
      }),
  );
  await hand(other).tap(take);
  await expect(other.locator(".page-action")).toHaveText("Bringing it in.");
  await expect(other.locator("main [role=status]")).toHaveText("Bringing it in.");
  await expect(line(other, "Ada")).toBeVisible();
  await expect(other.getByRole("button", { name: /Bring in|Leave it/ })).toHaveCount(0);
  expect(await axe(other)).toEqual([]);
  await other.evaluate(() => (window.free = true));
  await expect(notice(other)).toContainText("Brought in");
  await hand(other).press(say.copies.UNDO_IMPORT);
  await expect(notice(other)).toContainText("taken back");
  expect(await said(other)).toEqual({});

  // Where it does not come in, it can be tried again.
  await choose(other, text);
  await expect(take).toBeVisible();
  await other.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      IDBObjectStore.prototype.put = put;
      throw new DOMException("no", "QuotaExceededError");
    };
  });
  await hand(other).tap(take);
  await expect(other.getByRole("alert")).toContainText("storage is full");
  await hand(other).press("Close");
  await hand(other).tap(take);
  await expect(notice(other)).toContainText("Brought in");
});

test("one couple, or some; who said no and who is invented stays, and is named as staying", async ({ page, start }) => {
  await start();
  await go(page, "#/today");
  await loadExamples(page);
  const ada = await meet(page, "Ada");
  await meet(page, "Bea");
  const no = await meet(page, "Cleo");
  await go(page, `#/couple/${no}/recorded`);
  await hand(page).choose(say.screens.MAY_RECORD, say.screens.NO);
  await hand(page).press(say.screens.SAVE);
  await expect(heading(page), "the form is behind").toHaveText("Cleo");
  const ids = (text) => JSON.parse(text).records.map(({ id }) => id);

  await go(page, "#/setup/copies");
  await expect(page.locator("main")).toContainText("1 couple said no to being recorded and stay");
  await expect(page.locator("main")).toContainText("4 invented examples stay");
  const { text: book } = await download(page);
  expect(ids(book)).toContain(ada);
  for (const word of [no, "Cleo", "Ines"]) expect(book).not.toContain(word);

  await hand(page).choose(say.copies.WHAT_LEAVES, say.copies.SOME_COUPLES);
  await expect(page.locator("main")).toContainText("Choose at least one couple.");
  await expect(page.getByRole("button", { name: say.copies.DOWNLOAD, exact: true })).toHaveCount(0);
  await expect(page.locator("input[id^=couple-]")).toHaveCount(2);
  await hand(page).tap(page.getByRole("checkbox", { name: "Ada" }));
  const some = await download(page);
  expect(some.name).toBe(`bandwright-${ada.slice(0, 6)}-2026-11-25.json`);
  expect(ids(some.text)).toEqual([ada]);

  await go(page, `#/couple/${ada}`);
  await hand(page).follow(/File of this couple/);
  const one = await download(page);
  expect(one.text).toBe(some.text);
  await go(page, `#/couple/${no}/copy`);
  await expect(page.locator("main")).toContainText("said no to being recorded");
  await expect(page.getByRole("button", { name: say.copies.DOWNLOAD, exact: true })).toHaveCount(0);
});

test("a table for a spreadsheet leaves too: nothing in it is worked out, and it counts as no copy", async ({ page, start }) => {
  await start();
  await meet(page, "=1+1", { second: "Bo", reach: "+44 7700 900123" });
  await go(page, "#/setup/copies");
  await hand(page).choose(say.copies.WHAT_LEAVES, say.copies.SPREADSHEET);
  await expect(page.locator("main")).toContainText("it is no copy");
  const { name, text } = await download(page);
  expect(name).toBe("bandwright-table-2026-11-25.csv");
  expect(text.trimEnd().split("\r\n")).toHaveLength(2);
  expect(text).toContain(`"'=1+1"`);
  expect(text).toContain(`"+44 7700 900123"`);
  await expect(page.locator("main")).toContainText("No copy of the whole book has left this phone yet.");
});

test("the share sheet gets the file, as text where it refuses JSON, and as a download where it takes no files", async ({ page, context, start }) => {
  await context.addInitScript(() => {
    window.refuses = () => false;
    window.handed = [];
    const kinds = ({ files = [] }) => files.map(({ type }) => type);
    navigator.canShare = (data) => kinds(data).every((kind) => !window.refuses(kind));
    navigator.share = async (data) => {
      window.handed.push({ name: data.files[0].name, type: data.files[0].type, text: await data.files[0].text() });
      if (window.closes) throw new DOMException("closed", "AbortError");
    };
  });
  await start();
  await meet(page, "Ada");
  await go(page, "#/setup/copies");
  const last = () => page.evaluate(() => window.handed.at(-1));
  await page.evaluate(() => (window.closes = true));
  await hand(page).press(say.copies.SHARE_FILE);
  await expect(notice(page)).toContainText("has not left");
  await expect(page.locator("main"), "a closed share sheet is no copy").toContainText("No copy of the whole book");
  await page.evaluate(() => (window.closes = false));
  await hand(page).press(say.copies.SHARE_FILE);
  await expect(notice(page)).toContainText("The file has left");
  expect(await last()).toMatchObject({ name: "bandwright-book-2026-11-25.json", type: "application/json" });
  await expect(page.locator("main")).toContainText("Last copy of the whole book: Wed 25 Nov 2026");
  await page.evaluate(() => (window.refuses = (kind) => kind !== "text/plain"));
  await hand(page).press(say.copies.SHARE_FILE);
  await expect.poll(last).toMatchObject({ name: "bandwright-book-2026-11-25.json.txt", type: "text/plain" });
  expect(JSON.parse((await last()).text).kind).toBe("bandwright-book");
});

const row = { schema: "1.0", id: "0123456789abcdef0123456789abcdef", kind: "couple" };
const change = (sets) => ({ by: "00000000000000000000000000000abc", n: 1, at: +TODAY, sets });
const named = (name) => ({ ...row, changes: [change([{ field: "name.first", value: name }])] });
const file = (records, head = {}) =>
  JSON.stringify({ schema: "1.1", kind: "bandwright-book", written: +TODAY, by: "00000000000000000000000000000abc", holds: "couples", ...head, records });

test("bad input is one clear sentence each, and the book is untouched", async ({ page, start }) => {
  await start();
  await meet(page, "Ada");
  const before = await couplesOf(page);
  const good = file([named("Zoe")]);
  const utf16 = Buffer.from("\ufeff" + good, "utf16le");
  for (const [body, sentence] of [
    ["", "There is nothing in it."],
    ["hello, when can we come?", "not a file of Bandwright"],
    [good.slice(0, -20), "The end of it is missing."],
    [file([named("Zoe")], { schema: "7.0" }), "newer version of Bandwright, format 7"],
    [JSON.stringify({ type: "FeatureCollection", features: [] }), "another program"],
    ["[".repeat(200) + "]".repeat(200), "file of Bandwright"],
    [`{"schema":"1.1","kind":"bandwright-book","x":${"[".repeat(200)}${"]".repeat(200)},"records":[]}`, "nested deeper"],
    [utf16, "UTF-16"],
    [Buffer.from("504b0304140000000800", "hex"), "zip"],
    [Buffer.from("89504e470d0a1a0a0000", "hex"), "not text"],
  ]) {
    await choose(page, body, "x.txt");
    await expect(page.locator("main .caution"), sentence).toContainText(sentence);
    await expect(page.locator("main .caution")).toContainText("Nothing was changed.");
    if (typeof body === "string" && body !== "") {
      await paste(page, body);
      await expect(page.locator("main .caution"), `pasted: ${sentence}`).toContainText(sentence);
    }
  }
  expect(await couplesOf(page)).toBe(before);
});

test("of a partly bad file the good rows are offered, and the bad ones are named", async ({ page, start }) => {
  await start();
  const rtl = "\u202eeoZ<b>\u0007";
  const bad = { ...named("Y"), id: "1123456789abcdef0123456789abcdef", changes: [change([{ field: "wedding", value: { day: "2027-02-31" } }])] };
  await paste(page, `Here it is:\n${file([{ ...named(rtl) }, named("Twin"), bad, 7])}\nGreetings`);
  const main = page.locator("main");
  await expect(main).toContainText("eoZ<b>");
  expect(await main.textContent()).not.toMatch(/[\u202e\u0007]/);
  await expect(main.locator("b")).toHaveCount(0);
  await expect(line(page, "Entry 2")).toContainText("stands in the file twice");
  await expect(line(page, "Entry 2"), "whose entry it is").toContainText("Twin");
  await expect(line(page, "Entry 4")).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await hand(page).press("Bring in 1 couple");
  await expect(notice(page)).toContainText("Brought in");
  await expectClear(page, page.getByRole("button", { name: say.copies.UNDO_IMPORT }));
  expect(Object.keys(await said(page))).toEqual(["records/0123456789abcdef0123456789abcdef"]);
  await go(page, "#/couples");
  expect(await page.locator("main").textContent()).not.toMatch(/[\u202e\u0007]/);
});

test("after seven days of changes without a copy Today says so, with one button", async ({ page, context, start }) => {
  await start();
  await meet(page, "Ada");
  const days = async (count) => {
    await context.clock.setFixedTime(new Date(+TODAY + count * 86_400_000));
    await page.reload();
    await ready(page);
    await go(page, "#/today");
  };
  const make = page.getByRole("link", { name: say.copies.MAKE_ONE });
  await days(6);
  await expect(make).toHaveCount(0);
  await days(7);
  await expect(page.locator("main")).toContainText("What was written since Wed 25 Nov 2026 is on this phone only");
  await hand(page).tap(make);
  await download(page);
  await days(30);
  await expect(heading(page)).toHaveText("Today");
  await expect(make, "nothing was written since").toHaveCount(0);
});

test("a notice lies over no button at the end of a page, with one row of actions or two", async ({ page, start }) => {
  await start();
  await page.setViewportSize({ width: 360, height: 640 });
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}`);
  await hand(page).press(say.screens.PUT_AWAY);
  await expect(notice(page)).toBeVisible();
  await expectClear(page, page.getByRole("button", { name: say.screens.BRING_BACK }));
  // The notice goes along once: over to a preview whose two buttons stand in two rows.
  const others = Array.from({ length: 12 }, (_, at) => ({ ...named(`Zoe ${at}`), id: `${at}`.padStart(32, "0") }));
  await go(page, "#/setup/copies/bring-in");
  await page.locator("#file").setInputFiles({ name: "x.json", mimeType: "text/plain", buffer: Buffer.from(file(others)) });
  await expect(page.getByRole("button", { name: "Bring in 12 couples" })).toBeVisible();
  for (const name of ["Leave it", "Bring in 12 couples"]) await expectClear(page, page.getByRole("button", { name }));
});

test("a couple's list among files of the book is handed on to where lists are taken in", async ({ page, start }) => {
  await start();
  const list = { schema: "1.0", kind: "preparation-list", id: "0".repeat(31) + "7", saved: "2026-11-25", answers: { "name.first": "Zoe" } };
  for (const bring of [choose, paste]) {
    await bring(page, JSON.stringify(list));
    await expect(page.locator("main .caution")).toContainText("This is a couple’s preparation list");
    await hand(page).follow(say.list.taking.TAKE_IN);
    await expect(page.locator("main")).toContainText("Said by the couple, Wed 25 Nov 2026");
  }
  await hand(page).press(say.list.taking.TAKE_IT_IN);
  await expect(heading(page)).toHaveText("Zoe");
});
