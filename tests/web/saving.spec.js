// "Saved" means on the disk; what cannot be saved is said, and the words stay; what cannot be read is never written over.
import { bringIn, choose, copy, download } from "./colleague.js";
import { expect, fieldsOf, go, hand, heading, line, meetByHand, notice, open, putRow, ready, rows, test } from "./hand.js";
import { say } from "./say.js";

test("every transaction that writes is strictly durable", async ({ page, site, start }) => {
  await page.addInitScript(() => {
    window.transactions = [];
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...asked) {
      const transaction = begin.apply(this, asked);
      window.transactions.push([transaction.mode, transaction.durability]);
      return transaction;
    };
  });
  await start();
  const id = await meetByHand(page, "Tess");
  await hand(page).press(say.screens.PUT_AWAY);
  await expect(notice(page)).toContainText("put away");
  await notice(page).getByRole("button", { name: say.screens.UNDO }).tap();
  await expect(notice(page)).toContainText("Taken back");
  const writing = (await page.evaluate(() => window.transactions)).filter(([mode]) => mode === "readwrite");
  expect(writing.length).toBeGreaterThanOrEqual(4);
  expect(new Set(writing.map(([, durability]) => durability))).toEqual(new Set(["strict"]));
  expect((await fieldsOf(page, id))["name.first"]).toBe("Tess");
});

test("saved is said only after the transaction has completed", async ({ page, start }) => {
  await page.addInitScript(() => {
    window.order = [];
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...asked) {
      const transaction = begin.apply(this, asked);
      if (transaction.mode === "readwrite") transaction.addEventListener("complete", () => window.order.push("complete"));
      return transaction;
    };
  });
  await start();
  await go(page, "#/couples/new");
  await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), "Tess");
  await page.evaluate(() => {
    window.order = [];
    new MutationObserver(() => {
      if (/saved/.test(document.querySelector(".notices")?.textContent)) window.order.push("said");
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
  });
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  expect((await page.evaluate(() => window.order)).slice(0, 2)).toEqual(["complete", "said"]);
});

const FAILURES = [
  ["the phone is full", "QuotaExceededError", /storage is full\. Free some room, then save again/],
  ["the browser refuses", "NotAllowedError", /does not let the page store anything\. Leave private browsing/],
  ["something else breaks", "UnknownError", /refused it\. Save again; if that fails, reload the page/],
];

for (const [what, name, says] of FAILURES)
  test(`when ${what}, it says what to do and the words stay`, async ({ page, site, start }) => {
    await start();
    await go(page, "#/couples/new");
    await page.evaluate(failWrites, name);
    const before = await rows(page);
    const thumb = hand(page);
    await thumb.write(page.getByLabel(say.screens.FIRST_NAME), "Tess");
    await thumb.write(page.getByLabel(say.screens.MET), "Barn Lane");
    await thumb.press(say.screens.SAVE);
    await expect(page.getByRole("alert")).toContainText(says);
    await expect(page.getByRole("alert")).toContainText("What you typed is still here.");
    await expect(page.locator(".notices [role=status]")).toBeEmpty();
    await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Tess");
    await expect(page.getByLabel(say.screens.MET)).toHaveValue("Barn Lane");
    expect(await rows(page), "nothing half written").toEqual(before);

    // It stays said until it is closed, and the words outlast even a new page.
    for (const address of ["#/today", "#/couples/new"]) {
      await go(page, address);
      await expect(page.getByRole("alert")).toContainText(says);
    }
    await thumb.press("Close");
    await expect(page.getByRole("alert")).toBeEmpty();
    await open(page, site, "#/couples/new");
    await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Tess");
    await thumb.press(say.screens.SAVE);
    await expect(heading(page)).toHaveText("Tess");
  });

/** Runs in the page: from now on every write fails. */
function failWrites(name) {
  IDBObjectStore.prototype.put = () => {
    throw new DOMException("no", name);
  };
}

test("a transaction that is aborted at its end is a failure, not a save", async ({ page, start }) => {
  await start();
  await go(page, "#/couples/new");
  const before = await rows(page);
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (value, key) {
      const request = put.call(this, value, key);
      if (key === "installation") request.addEventListener("success", () => setTimeout(() => {}, 0) && request.transaction.abort());
      return request;
    };
  });
  await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), "Tess");
  await hand(page).press(say.screens.SAVE);
  await expect(page.getByRole("alert")).toContainText("Not saved");
  await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Tess");
  expect(await rows(page)).toEqual(before);
});

const UNREADABLE = [
  ["cut off", (row) => row.slice(0, row.length / 2)],
  ["not JSON", () => "not a row at all"],
  ["something else", () => '{"hello": "there"}'],
  ["no text", () => ({ an: "object" })],
  ["of a newer version", (row) => JSON.stringify({ ...JSON.parse(row), schema: "2.0" })],
  ["damaged inside", (row) => row.replace('"name.first","value":"Tess"', '"name.first","value":17')],
];

for (const [what, spoil] of UNREADABLE)
  test(`a row that is ${what} is set aside, said, and never written over`, async ({ page, site, start }) => {
    await start();
    const id = await meetByHand(page, "Tess");
    const other = await meetByHand(page, "Orla");
    const good = (await rows(page))[`records/${id}`];
    const bad = spoil(good);
    expect(bad).not.toEqual(good);
    await putRow(page, "records", id, bad);
    await open(page, site, "#/today");
    await expect(page.getByText("One record on this phone could not be read.")).toBeVisible();
    await go(page, `#/couple/${id}`);
    await expect(heading(page)).toHaveText("This is not on this phone");
    await go(page, `#/couple/${other}/notes`);
    await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "The rest of the book works.");
    await hand(page).press(say.screens.ADD_NOTE);
    await expect(notice(page)).toContainText("saved");
    await meetByHand(page, "Wren");
    expect((await rows(page))[`records/${id}`]).toEqual(bad);
  });

test("a damaged row is put aside by hand, and the couple comes in again from a copy", async ({ page, site, start }) => {
  await start();
  const id = await meetByHand(page, "Tess");
  const { text } = await copy(page);
  const register = async () => JSON.parse((await rows(page))["meta/installation"]);
  const { id: phone } = await register();
  await putRow(page, "records", id, "spoilt");
  await open(page, site, "#/today");
  await choose(page, text);
  await expect(page.locator("main")).toContainText("put the damaged one aside first");
  await go(page, "#/setup/phone");
  await hand(page).press(say.copies.PUT_ASIDE);
  await expect(notice(page)).toContainText("1 record put aside");
  await expect(page.getByRole("button", { name: say.copies.PUT_ASIDE })).toHaveCount(0);
  await expect(page.getByRole("button", { name: say.copies.SET_ASIDE_OUT })).toBeVisible();
  const kept = Object.entries(await rows(page)).filter(([key]) => key.startsWith("records/"));
  expect(kept).toEqual([[expect.stringMatching(new RegExp(`^records/aside\\.\\d+\\.${id}$`)), "spoilt"]]);
  // What comes back was written here: nobody takes it for the words of another phone.
  await choose(page, text);
  await expect(line(page, "Tess")).toBeVisible();
  await expect(page.locator("main")).not.toContainText("this phone takes a new mark");
  await bringIn(page, { text });
  expect((await register()).id).toBe(phone);
  await go(page, `#/couple/${id}`);
  await expect(heading(page)).toHaveText("Tess");
  await open(page, site, "#/today");
  await expect(page.getByText("could not be read")).toHaveCount(0);
  await go(page, "#/setup/phone");
  expect((await download(page, "Download what could not be read")).text).toContain("spoilt");
});

test("an import that was cut short is in its places when the book opens, and a damaged part of it holds nothing up", async ({ page, site, start }) => {
  await start();
  const id = await meetByHand(page, "Tess");
  const row = (await rows(page))[`records/${id}`];
  await putRow(page, "records", "parcel.f1e5.00000000", `${row}\n`);
  await putRow(page, "records", "parcel.f1e5.00000001", "{half a row");
  await putRow(page, "records", id);
  await open(page, site, `#/couple/${id}`);
  await expect(heading(page)).toHaveText("Tess");
  const kept = Object.entries(await rows(page)).filter(([key]) => key.startsWith("records/"));
  expect(Object.fromEntries(kept)).toEqual({ [`records/${id}`]: row, "records/parcel.f1e5.00000001": "{half a row" });
  await go(page, "#/today");
  await expect(page.getByText("One record on this phone could not be read.")).toBeVisible();
});

test("a row that turns unreadable under an open form is not written over, and the words stay", async ({ page, start }) => {
  await start();
  const id = await meetByHand(page, "Tess");
  await go(page, `#/couple/${id}/notes`);
  await putRow(page, "records", id, "spoilt");
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Kept all the same.");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(page.getByRole("alert")).toContainText("cannot be read, so nothing was written over it");
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Kept all the same.");
  expect((await rows(page))[`records/${id}`]).toBe("spoilt");
});

test("a register that cannot be read is said, and nothing is changed", async ({ page, site, start }) => {
  await start();
  await meetByHand(page, "Tess");
  await putRow(page, "meta", "installation", "spoilt");
  const before = await rows(page);
  await page.goto("about:blank");
  await page.goto(site.url);
  await expect(page.getByText(/register cannot be read/)).toBeVisible();
  await expect(page.getByRole("button", { name: say.screens.TRY_AGAIN })).toBeVisible();
  expect(await rows(page)).toEqual(before);
});

test("a lost connection is opened again without a word", async ({ page, start }) => {
  await page.addInitScript(() => {
    window.connections = [];
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...asked) {
      window.connections.push(this);
      return begin.apply(this, asked);
    };
  });
  await start();
  await go(page, "#/couples/new");
  // As iOS does after a suspend.
  await page.evaluate(() => window.connections.forEach((connection) => connection.close()));
  await meetByHand(page, "Tess");
  await page.reload();
  await ready(page);
  await expect(heading(page)).toHaveText("Tess");
});

test("who leaves a screen while it saves stays where they went, and the words are saved once", async ({ page, start }) => {
  await start();
  const id = await meetByHand(page, "Tess");
  // The phone is slow to write.
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...what) {
      const until = performance.now() + 150;
      while (performance.now() < until);
      return put.apply(this, what);
    };
  });
  const thumb = hand(page);
  for (const [address, label, words] of [[`#/couple/${id}/notes`, "New note", "Once."], [`#/couple/${id}/people`, "Second name", "Rowan"], ["#/setup/fair", "Fair of today", "Wharfside"], [`#/couple/${id}/finger/first`, say.screens.READ_SIZE, "M½"]]) {
    await go(page, address);
    await thumb.write(page.getByLabel(label, { exact: true }), words);
    await page.evaluate(() => {
      [...document.querySelectorAll("button")].find((button) => /^(Save|Add note|Add reading)$/.test(button.textContent)).click();
      location.hash = "#/couples";
    });
    await expect(notice(page)).toContainText("saved");
    await expect(heading(page)).toHaveText("Couples");
    // Nothing leads away from there later either: what would is called in the same moment as the notice.
    await page.waitForTimeout(100);
    await expect(heading(page)).toHaveText("Couples");
    await go(page, address);
    await expect(page.getByText("Your unsaved words are back.")).toHaveCount(0);
  }
  const fields = await fieldsOf(page, id);
  expect(fields["name.second"]).toBe("Rowan");
  for (const item of ["note.", "reading."]) expect(Object.keys(fields).filter((field) => field.includes(item)), item).toHaveLength(1);
});
