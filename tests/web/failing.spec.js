// A phone whose storage fails: what is typed stays, what to do is said, and what can be read can leave as a file.
//
// What is real here and what is played:
//   full        real: the browser's own quota, set to less than is used (DevTools protocol)
//   denied      real: a profile whose settings block site data
//   cleared     real: the browser clears the database under the open app (DevTools protocol)
//   suspended   played: the connection is closed behind the app's back, as phones do, and opening it fails once
//   upgrade     played: the browser refuses to make the second of the two stores
//   silent      played: the browser does not answer the first time it is asked to open the database
//   newer, older  another tab opens the database under another version, as another version of the app would
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { axe, overflow, smallTargets } from "./checks.js";
import { bringIn, colleague, copy, download } from "./colleague.js";
import { TODAY, coupleOf, expect, go, hand, heading, line, meet, meetByHand, notice, open, putRow, ready, rows, test } from "./hand.js";
import { say } from "./say.js";

const alert = (page) => page.getByRole("alert");

/** What is wrong with the look of a screen. */
async function faults(page) {
  // The button that lets the enter key send a form is nobody's target.
  const small = (await smallTargets(page)).filter((fault) => !/class="unseen" tabindex="-1" aria-hidden="true"/.test(fault));
  return [...(await axe(page)), ...small, ...((await overflow(page)) ? ["wider than the screen"] : [])];
}

const names = (file) => JSON.parse(file.text).records.flatMap(({ changes }) => changes.flatMap(({ sets }) => sets.filter(({ field }) => field === "name.first").map(({ value }) => value)));

test("a phone that is full says so, keeps the words and gives the book away; with room again it saves", async ({ handset, site, start }) => {
  await start(handset.page);
  await meet(handset.page, "Tess");
  await handset.restart();
  const { page } = handset;
  const devtools = await handset.context.newCDPSession(page);
  const { origin } = new URL(site.url);
  await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1000 });
  await open(page, site, "#/couples/new");
  await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), "Orla");
  await hand(page).press(say.screens.SAVE);
  await expect(alert(page)).toContainText("the phone's storage is full. Free some room, then save again. What you typed is still here.");
  expect(await faults(page)).toEqual([]);

  await hand(page).press(say.copies.MAKE_ONE);
  await expect(heading(page)).toHaveText("Copies");
  expect(names(await download(page, "Download"))).toEqual(["Tess"]);
  // That the copy has left cannot be noted either, which is said; the words are still there.
  await go(page, "#/couples/new");
  await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Orla");

  await devtools.send("Storage.overrideQuotaForOrigin", { origin });
  await hand(page).press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Orla");
  await handset.restart();
  await open(handset.page, site, "#/couples");
  for (const name of ["Tess", "Orla"]) await expect(handset.page.getByRole("link", { name: new RegExp(name) })).toBeVisible();
});

test("a phone that lets the page store nothing says so, and opens the book once it does", async ({ handset, site }) => {
  // The app looks for a place to keep itself in, too, and the browser notes that it may not.
  await handset.off();
  const settings = async (cookies) => {
    await mkdir(join(handset.storage, "Default"), { recursive: true });
    await writeFile(join(handset.storage, "Default", "Preferences"), JSON.stringify({ profile: { default_content_setting_values: { cookies } } }));
  };
  await settings(2);
  await handset.on();
  await handset.page.goto(site.url);
  await expect(heading(handset.page)).toHaveText("The book did not open");
  await expect(handset.page.getByText("This browser does not let the page store anything. Leave private browsing, or allow site data")).toBeVisible();
  await expect(handset.page.getByText("Nothing of the book can be read from here just now.")).toBeVisible();
  expect(await faults(handset.page)).toEqual([]);
  await handset.off();
  await settings(1);
  await handset.on();
  await handset.page.goto(site.url);
  await ready(handset.page);
  await meetByHand(handset.page, "Tess");
});

test("a book that the browser clears under the open app can still leave it, and come back", async ({ page, context, site, start }) => {
  await start();
  const id = await meet(page, "Tess", { second: "Rowan" });
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Likes a brushed surface.");
  const devtools = await context.newCDPSession(page);
  await devtools.send("Storage.clearDataForOrigin", { origin: new URL(site.url).origin, storageTypes: "indexeddb" });
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(alert(page)).toContainText("no longer in the phone's storage");
  await expect(alert(page)).toContainText("What you typed is still here.");
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Likes a brushed surface.");
  expect(Object.keys(await rows(page)), "no scrap of the couple is written").toEqual([]);
  expect(await faults(page)).toEqual([]);

  await hand(page).press(say.copies.MAKE_ONE);
  const file = await download(page, "Download");
  await open(page, site, "#/setup/copies/bring-in");
  await page.locator("input[type=file]").setInputFiles({ name: file.name, mimeType: "application/json", buffer: Buffer.from(file.text) });
  await hand(page).press(/^Bring in/);
  await expect(notice(page)).toContainText("Brought in");
  await go(page, `#/couple/${id}/notes`);
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Likes a brushed surface.");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(page.locator(".note")).toContainText("Likes a brushed surface.");
  await go(page, `#/couple/${id}`);
  await expect(heading(page)).toHaveText("Tess & Rowan");
});

test("a connection that is lost and does not come back at once is said, the words stay, and the next save goes well", async ({ page, start }) => {
  await page.addInitScript(() => {
    window.connections = [];
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...asked) {
      window.connections.push(this);
      return begin.apply(this, asked);
    };
  });
  await start();
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Once.");
  await page.evaluate(() => {
    window.connections.forEach((connection) => connection.close());
    const begin = IDBFactory.prototype.open;
    IDBFactory.prototype.open = () => {
      IDBFactory.prototype.open = begin;
      throw new DOMException("Internal error opening backing store.", "UnknownError");
    };
  });
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(alert(page)).toContainText("Not saved: the phone's storage refused it. Save again; if that fails, reload the page.");
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Once.");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(page.locator(".note")).toHaveCount(1);
  await expect(page.locator(".note")).toContainText("Once.");
});

test("an upgrade that fails half-way leaves nothing half made, and is tried again with a press", async ({ page, site }) => {
  await page.addInitScript(() => {
    const make = IDBDatabase.prototype.createObjectStore;
    window.upgrade = () => (IDBDatabase.prototype.createObjectStore = make);
    IDBDatabase.prototype.createObjectStore = function (store) {
      if (store === "meta") throw new DOMException("no", "UnknownError");
      return make.call(this, store);
    };
  });
  await page.goto(site.url);
  await expect(heading(page)).toHaveText("The book did not open");
  await expect(page.getByText("Try again; the book itself is untouched.")).toBeVisible();
  await expect(page.getByText("Nothing of the book can be read from here just now.")).toBeVisible();
  expect(await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))).toEqual([]);
  await page.evaluate(() => window.upgrade());
  await hand(page).press(say.screens.TRY_AGAIN);
  await expect(heading(page)).toHaveText("Today");
  await meetByHand(page, "Tess");
});

/** Runs in the page: opens the database under a version, as another version of the app would, and keeps it open. */
function another(version) {
  return new Promise((done, fail) => {
    const opening = indexedDB.open("bandwright", version);
    opening.onerror = () => fail(opening.error);
    opening.onsuccess = () => done((window.held = opening.result) && undefined);
  });
}

/** A page of the same origin without the app. */
async function bare(context, site) {
  const page = await context.newPage();
  await page.route("**/bare", (route) => route.fulfill({ contentType: "text/html", body: '<link rel="icon" href="data:,">' }));
  await page.goto(`${site.url}bare`);
  return page;
}

test("a phone that does not answer is said to be slow, and is asked again with a press", async ({ page, site, start }) => {
  await start();
  await meet(page, "Tess");
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    let asked = 0;
    IDBFactory.prototype.open = function (...given) {
      const request = open.apply(this, given);
      asked += 1;
      // Nobody hears of the first one.
      if (asked === 1) for (const event of ["success", "upgradeneeded", "error"]) request.addEventListener(event, (it) => it.stopImmediatePropagation());
      return request;
    };
  });
  await page.clock.install({ time: TODAY });
  await page.goto("about:blank");
  await page.goto(site.url);
  await expect(heading(page)).toHaveText("Opening the book");
  await page.clock.runFor(9000);
  await expect(page.getByText("This takes long")).toHaveCount(0);
  await page.clock.runFor(2000);
  await expect(page.getByText("This takes long")).toBeVisible();
  expect(await faults(page)).toEqual([]);
  await hand(page).press(say.screens.TRY_AGAIN);
  await ready(page);
  await go(page, "#/couples");
  await expect(page.getByRole("link", { name: /Tess/ })).toBeVisible();
});

test("an old tab beside a newer one says so at once, keeps what is typed and gives the book away", async ({ page, context, site, start }) => {
  await start();
  await meet(page, "Nell");
  await go(page, `#/couple/${coupleOf(page)}/recorded`);
  await hand(page).choose(say.screens.MAY_RECORD, say.screens.NO);
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Rings in May.");
  const newer = await bare(context, site);
  await newer.evaluate(another, 2);
  await expect(page.locator(".banner")).toContainText("A new version is ready. What you have typed is kept.");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(alert(page)).toContainText("a newer version of Bandwright is open");
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Rings in May.");

  // The tab has an old version of the app and cannot help it: the book is read as far as it can be.
  await hand(page).press("Use it now");
  await expect(heading(page)).toHaveText("The book did not open");
  await expect(page.getByText("A newer version of Bandwright has already opened this book.")).toBeVisible();
  await expect(page.getByText("1 couple can be read and may leave. 1 couple said no to being recorded and stays on this phone.")).toBeVisible();
  await expect(page.getByText("note: Rings in May.")).toBeVisible();
  expect(await faults(page)).toEqual([]);
  const file = await download(page, "Download the book");
  expect(file.name).toBe("bandwright-book-2026-11-25.json");
  expect(names(file)).toEqual(["Tess"]);
  expect((await download(page, "Download these words")).text).toBe("Tess\nnote: Rings in May.\n\n");

  // Another phone takes the file.
  const elsewhere = await page.context().browser().newContext();
  const other = await elsewhere.newPage();
  await open(other, site, "#/setup/copies/bring-in");
  await other.locator("input[type=file]").setInputFiles({ name: file.name, mimeType: "application/json", buffer: Buffer.from(file.text) });
  await other.getByRole("button", { name: /^Bring in/ }).click();
  await expect(notice(other)).toContainText("Brought in");
  await other.goto(`${site.url}#/couple/${id}`);
  await expect(heading(other)).toHaveText("Tess");
  await elsewhere.close();
});

test("a new tab that an old one holds up says so, and goes on by itself when that is closed", async ({ page, context, site, start }) => {
  await start();
  await meet(page, "Tess");
  await page.goto("about:blank");
  const old = await bare(context, site);
  await old.evaluate(another, 1);
  await page.addInitScript(() => {
    const begin = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (name, version) {
      return begin.call(this, name, version && version + 1);
    };
  });
  await page.goto(`${site.url}#/couples`);
  await expect(page.getByText("An older version of Bandwright is open in another tab and holds the book. Close that tab: this one goes on by itself.")).toBeVisible();
  expect(await faults(page)).toEqual([]);
  await old.close();
  await expect(page.getByRole("link", { name: /Tess/ })).toBeVisible();
});

test("a register that cannot be read is in nobody's way: the book leaves, and opens again under a new one", async ({ page, site, start }) => {
  await start();
  await go(page, "#/setup/fair");
  await hand(page).write(page.getByLabel(say.practice.FAIR), "Wharfside");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await meet(page, "Tess");
  const spoilt = await meet(page, "Orla");
  const before = await rows(page);
  await putRow(page, "meta", "installation", "spoilt");
  await putRow(page, "records", spoilt, "spoilt too");
  await page.goto("about:blank");
  await page.goto(site.url);
  await expect(page.getByText(/register cannot be read/)).toBeVisible();
  await expect(page.getByText("1 couple can be read and may leave.")).toBeVisible();
  expect(await faults(page)).toEqual([]);
  expect((await download(page, "Download what could not be read")).text).toBe(`${spoilt}\tspoilt too\n`);
  const file = await download(page, "Download the book");
  expect(names(file)).toEqual(["Tess"]);
  const { practice } = JSON.parse(before["meta/installation"]);
  expect(JSON.parse(file.text).practice).toBe(practice);

  await hand(page).press(say.storage.RENEW);
  await expect(heading(page)).toHaveText("Today");
  await expect(page.getByText("One record on this phone could not be read.")).toBeVisible();
  await go(page, "#/setup/fair");
  await expect(page.getByLabel(say.practice.FAIR)).toHaveValue("Wharfside");
  const id = await meetByHand(page, "Wren");
  await go(page, "#/couples");
  await expect(line(page, "Tess")).toBeVisible();
  const after = await rows(page);
  const { id: renewed, practice: kept } = JSON.parse(after["meta/installation"]);
  expect([renewed === JSON.parse(before["meta/installation"]).id, kept]).toEqual([false, practice]);
  expect(after[`meta/aside.installation.${renewed}`]).toBe("spoilt");
  expect(after[`records/${spoilt}`]).toBe("spoilt too");
  const numbers = Object.entries(after).filter(([key, row]) => /^records/.test(key) && row.startsWith("{")).flatMap(([, row]) => JSON.parse(row).changes.map(({ n }) => n));
  expect(JSON.parse(after[`records/${id}`]).changes[0].n).toBe(Math.max(...numbers));
});

test("where two phones' settings are here, a new register asks whose it goes on with", async ({ page, browser, guard, site, start }) => {
  await start();
  const fair = async (phone, name) => {
    await go(phone, "#/setup/fair");
    await hand(phone).put(phone.getByLabel(say.practice.FAIR), name);
    await hand(phone).press(say.screens.SAVE);
    await expect(notice(phone)).toContainText("saved");
  };
  await fair(page, "Wharfside");
  const other = await colleague(browser, guard, site);
  await fair(other, "Millside");
  await meet(other, "Tess");
  await bringIn(page, await copy(other));
  await putRow(page, "meta", "installation", "spoilt");
  await page.goto("about:blank");
  await page.goto(site.url);
  await expect(page.getByText("More than one phone’s settings are here")).toBeVisible();
  const offered = page.getByRole("button", { name: /Begin a new register/ });
  await expect(offered).toHaveCount(3);
  await expect(offered.filter({ hasText: "Millside" })).toHaveCount(1);
  await expect(offered.filter({ hasText: "with none of these settings" })).toHaveCount(1);
  expect(await faults(page)).toEqual([]);
  await hand(page).press("Begin a new register, with the settings at Wharfside, last set on Wed 25 Nov 2026");
  await expect(heading(page)).toHaveText("Today");
  await go(page, "#/setup/fair");
  await expect(page.getByLabel(say.practice.FAIR)).toHaveValue("Wharfside");
  await go(page, "#/couples");
  await expect(line(page, "Tess")).toBeVisible();
});

test("words that the phone does not keep are said to be so, and last as long as the page", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/notes`);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
  });
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Half a");
  await expect(page.getByText("This phone does not keep half-typed words just now. Save them before you close or reload this page.")).toBeVisible();
  expect(await faults(page)).toEqual([]);
  await go(page, "#/today");
  await go(page, `#/couple/${id}/notes`);
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("Half a");
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), " note");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(page.locator(".note")).toContainText("Half a note");
  await go(page, "#/today");
  await go(page, `#/couple/${id}/notes`);
  await expect(page.getByLabel(say.screens.NEW_NOTE)).toHaveValue("");
});
