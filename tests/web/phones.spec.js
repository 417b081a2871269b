// Two phones that say different things, the history, names of phones, and what was put away or erased on one of them.
import { axe, overflow, smallTargets } from "./checks.js";
import { bringIn, choose, colleague, copy } from "./colleague.js";
import { expect, fieldsOf, go, hand, heading, line, meet, notice, open, rows, test } from "./hand.js";
import { say } from "./say.js";

// A year behind: only the shown time is wrong.
const BEHIND = new Date("2025-11-25T09:00:00");

async function width(page, id, mm) {
  await go(page, `#/couple/${id}/band/first`);
  await hand(page).put(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), mm);
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
}

test("where two disagree both stand side by side until one is chosen with two taps; both phones end up the same", async ({ page, browser, guard, site, start }) => {
  await start();
  const id = await meet(page, "Ada");
  await go(page, "#/setup/phone");
  await hand(page).follow(/^This phone/);
  await hand(page).write(page.getByLabel(say.phones.PHONE_NAME), "Fair phone");
  await hand(page).press(say.screens.SAVE);
  const other = await colleague(browser, guard, site, BEHIND);
  await bringIn(other, await copy(page));
  await width(page, id, "2.5");
  await width(other, id, "3");
  await choose(other, (await copy(page)).text);
  await expect(other.getByRole("heading", { name: /you choose afterwards/ })).toBeVisible();
  await expect(line(other, "Ada")).toContainText("band, width: 3 mm here, 2.5 mm in the file");
  await hand(other).press(/Bring in/);
  await expect(notice(other)).toContainText("Brought in");
  // What is left to do stands where it was brought in, one tap away.
  await expect(other.getByRole("heading", { name: "1 couple to settle" })).toBeVisible();
  await hand(other).tap(line(other, "Ada"));
  await expect(heading(other)).toHaveText("Differences to settle");
  await bringIn(page, await copy(other));

  await go(page, "#/today");
  await expect(line(page, "Ada").first()).toContainText("1 difference to settle");
  await go(page, `#/couple/${id}`);
  const thumb = hand(page);
  await thumb.follow(/1 difference to settle/);
  const sides = page.locator(".side");
  await expect(sides).toHaveCount(2);
  await expect(sides.filter({ hasText: "2.5 mm" })).toContainText("Fair phone (this phone), Wed 25 Nov 2026");
  await expect(sides.filter({ hasText: "3 mm" })).toContainText("Another phone");
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
  await expect(sides.filter({ hasText: "3 mm" }).getByRole("button")).toHaveText("Keep 3 mm");
  await thumb.press("Keep 3 mm");
  expect(thumb.taps).toBe(2);
  await expect(page.locator("main")).toContainText("Nothing is left to settle.");
  expect((await fieldsOf(page, id))["band.first.width"]).toBe(3);

  // Taken back, both stand again; until it is settled it does not pass for settled anywhere.
  await thumb.press(say.screens.UNDO);
  await expect(notice(page)).toContainText("Taken back");
  await expect(sides).toHaveCount(2);
  await expect(sides.filter({ hasText: "3 mm" })).toContainText("dated before words it had seen");
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Ada: band")).toContainText("two phones say different things");
  await go(page, `#/couple/${id}/specification`);
  await expect(page.locator("#specification-text")).toContainText(/band of Ada: not settled: (3 mm or 2.5 mm|2.5 mm or 3 mm)/);
  await go(page, `#/couple/${id}/read-back`);
  await expect(page.locator("main")).toContainText("Settle that first");
  await expect(page.getByRole("button", { name: say.screens.READ_BACK_CONFIRM })).toHaveCount(0);
  await hand(page).follow(say.phones.DIFFERENCES);
  await hand(page).press("Keep 3 mm");
  await expect(page.locator("main")).toContainText("Nothing is left to settle.");

  // The other stays in the history, and can be put back.
  await go(page, `#/couple/${id}/history`);
  await expect(page.locator(".history")).toContainText("Ada: band, width: 2.5 mm");
  expect(await axe(page)).toEqual([]);
  await page.getByLabel(say.phones.OF_WHAT).selectOption({ label: "Ada: band, width" });
  await expect(page.getByRole("button", { name: "Put back 2.5 mm" }).first()).toBeVisible();

  await bringIn(other, await copy(page));
  await go(other, `#/couple/${id}`);
  await expect(other.getByText("to settle")).toHaveCount(0);
  await go(other, `#/couple/${id}/history`);
  await expect(other.locator(".history"), "the name goes along in files of the whole book").toContainText("Fair phone");
  const body = ({ text }) => text.slice(text.indexOf('"records"'));
  expect(body(await copy(other))).toBe(body(await copy(page)));

  await go(page, `#/couple/${id}/history`);
  await page.getByLabel(say.phones.OF_WHAT).selectOption({ label: "Ada: band, width" });
  await hand(page).tap(page.getByRole("button", { name: "Put back 2.5 mm" }).first());
  await expect(notice(page)).toContainText("earlier value put back");
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Ada: band")).toContainText("2.5 mm");
});

test("a phone that takes a new mark keeps its name", async ({ page, start }) => {
  await start();
  await meet(page, "Ada");
  await go(page, "#/setup/phone");
  await hand(page).follow(/^This phone/);
  await hand(page).write(page.getByLabel(say.phones.PHONE_NAME), "Fair phone");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  // Another phone that was set up from a copy of this one has written something else under the same number.
  const { text } = await copy(page);
  await choose(page, text.replace('"Ada"', '"Ida"'));
  await expect(page.locator("main")).toContainText("this phone takes a new mark");
  await hand(page).press(/Bring in/);
  await expect(notice(page)).toContainText("Brought in");
  expect(JSON.parse((await rows(page))["meta/installation"]).former).toHaveLength(1);
  await go(page, "#/setup/phone");
  await expect(line(page, "Fair phone (this phone)")).toBeVisible();
});

test("what two phones say differently no calculator settles by the way: it leads to where both sides stand", async ({ page, browser, guard, site, start }) => {
  await start();
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}/finger/first`);
  await hand(page).write(page.getByLabel(say.screens.READ_SIZE, { exact: true }), "UK M");
  await hand(page).press(say.screens.ADD_READING);
  await expect(notice(page)).toContainText("Reading saved");
  const other = await colleague(browser, guard, site, BEHIND);
  await bringIn(other, await copy(page));
  const buttons = [
    ["order", "&who=first", "&profile=flat&width=", /^Use .* for Ada/],
    ["stack", "&who=first", "&free=24&band=", "Note this stack for Ada"],
    ["dates", "", "&wedding=2027-05-", /^Use order by/],
    ["compare", "&who=first", "&band1-width=", "Make this the band"],
  ];
  const address = (which, who) => `#/tools/${which}?couple=${id}${who}`;
  for (const [phone, figures] of [[page, ["2", "2", "22", "4"]], [other, ["9", "3", "29", "3"]]]) {
    for (const [at, [which, who, asked, button]] of buttons.entries()) {
      await go(phone, address(which, who) + asked + figures[at]);
      await hand(phone).tap(phone.getByRole("button", { name: button }).first());
      await expect(notice(phone)).toContainText("saved");
      await expect(heading(phone), "the calculator is left").toHaveText(/^Ada/);
    }
  }
  await bringIn(page, await copy(other));
  await go(page, `#/couple/${id}`);
  await hand(page).tap(line(page, "two phones say different things").filter({ hasText: /order size/i }).getByRole("link"));
  await expect(heading(page)).toHaveText("Order size");
  for (const [which, who, asked, button] of buttons) {
    await go(page, address(which, who) + asked + "5");
    await expect(page.locator(".caution").first(), which).toContainText("Two phones say different things of what would be saved here.");
    await expect(page.getByRole("button", { name: button }), which).toHaveCount(0);
    expect(await axe(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
  }
  await hand(page).follow(say.phones.DIFFERENCES);
  const open = page.locator(".difference");
  await expect(open.first()).toBeVisible();
  for (let left = await open.count(); left > 0; left -= 1) {
    await hand(page).tap(open.first().locator(".side").first().getByRole("button"));
    await expect(open).toHaveCount(left - 1);
  }
  for (const [which, who, asked, button] of buttons) {
    await go(page, address(which, who) + asked + "5");
    await expect(page.getByRole("button", { name: button }).first(), which).toBeVisible();
    await expect(page.getByText("Two phones say different things"), which).toHaveCount(0);
  }
});

test("of very many differences the first are drawn, and the history of one thing goes back to its first value", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Ada");
  await width(page, id, "2.5");
  const file = JSON.parse((await copy(page)).text);
  const { changes } = file.records.find((record) => record.id === id);
  const n = Math.max(...changes.map((change) => change.n));
  const at = changes.at(-1).at;
  const set = (field, value) => [{ field, value }];
  for (const [which, by] of ["a", "b"].entries()) {
    for (let nth = 1; nth <= 45; nth += 1) {
      const sets = set(`note.${String(nth).padStart(32, "0")}`, `note ${nth} of ${by}`);
      changes.push({ by: by.repeat(32), n: n + 2 * nth + which, at: at + nth, sets });
    }
  }
  await bringIn(page, { text: JSON.stringify(file) });
  await go(page, `#/couple/${id}/differences`);
  await expect(page.locator(".difference")).toHaveCount(40);
  await expect(page.locator("main")).toContainText("and 5 more");
  await hand(page).press("Keep note 1 of a");
  await expect(page.locator("main")).toContainText("and 4 more");
  await expect(page.locator(".difference")).toHaveCount(40);
  await go(page, `#/couple/${id}/history`);
  await expect(page.locator(".history-entry")).toHaveCount(30);
  await page.getByLabel(say.phones.OF_WHAT).selectOption({ label: "Ada: band, width" });
  await expect(page.locator(".history-entry")).toHaveCount(1);
  await expect(page.locator(".history")).toContainText("2.5 mm");
  await expect(page.getByRole("button", { name: /^Show .* more/ })).toHaveCount(0);
});

test("put away here, edited there: it is asked, and nothing is lost", async ({ page, browser, guard, site, start }) => {
  await start();
  const id = await meet(page, "Ada");
  const other = await colleague(browser, guard, site, BEHIND);
  await bringIn(other, await copy(page));
  await width(other, id, "3");
  await go(page, `#/couple/${id}`);
  await hand(page).press(say.screens.PUT_AWAY);
  await bringIn(page, await copy(other));
  await go(page, `#/couple/${id}/differences`);
  await expect(page.getByRole("heading", { name: say.phones.AWAY_BUT_EDITED })).toBeVisible();
  await expect(page.locator("main")).toContainText("Ada: band, width: 3 mm");
  await hand(page).press(say.screens.BRING_BACK);
  await expect(page.locator("main")).toContainText("Nothing is left to settle.");
  await go(page, `#/couple/${id}`);
  await expect(page.getByRole("button", { name: say.screens.PUT_AWAY })).toBeVisible();
});

test("an appointment taken out here, with a place written there: it is asked whether it is to be", async ({ page, browser, guard, site, start }) => {
  await start();
  const id = await meet(page, "Ada");
  await go(page, `#/couple/${id}/appointments/new`);
  await hand(page).put(page.getByLabel(say.screens.DAY, { exact: true }), "9 January 2027");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  const other = await colleague(browser, guard, site, BEHIND);
  await bringIn(other, await copy(page));
  const open = async (phone) => {
    await go(phone, `#/couple/${id}/appointments`);
    await hand(phone).tap(phone.locator(".line a").first());
  };
  await open(other);
  await hand(other).write(other.getByLabel(say.screens.PLACE, { exact: true }), "Barn Lane");
  await hand(other).press(say.screens.SAVE);
  await expect(notice(other)).toContainText("saved");
  await open(page);
  await hand(page).press(say.screens.REMOVE);
  await expect(notice(page)).toContainText("removed");
  await bringIn(page, await copy(other));
  await go(page, `#/couple/${id}/differences`);
  await expect(page.getByRole("heading", { name: say.phones.GONE_BUT_EDITED })).toBeVisible();
  await expect(page.locator("main")).toContainText("Appointment, place: Barn Lane");
  expect(await axe(page)).toEqual([]);
  await hand(page).press(say.phones.BRING_IT_BACK);
  await expect(page.locator("main")).toContainText("Nothing is left to settle.");
  await go(page, `#/couple/${id}/appointments`);
  await expect(page.locator("main")).toContainText("Barn Lane");
});

test("two phones with one practice settle what they have set differently", async ({ page, browser, guard, site, start }) => {
  await start();
  const fair = async (phone, name) => {
    await go(phone, "#/setup/fair");
    await hand(phone).put(phone.getByLabel(say.practice.FAIR), name);
    await hand(phone).press(say.screens.SAVE);
    await expect(notice(phone)).toContainText("saved");
  };
  await fair(page, "Quay fair");
  const other = await colleague(browser, guard, site, BEHIND);
  await choose(other, (await copy(page)).text);
  await hand(other).tap(other.getByLabel(say.copies.TAKE_PRACTICE));
  await hand(other).press(/Bring (in|it)/);
  await expect(notice(other)).toContainText("Brought in");
  await fair(page, "Barn fair");
  await fair(other, "Mill fair");
  await choose(other, (await copy(page)).text);
  await expect(line(other, "Settings under Practice")).toContainText("Mill fair here, Barn fair in the file");
  await hand(other).press(/Bring (in|it)/);
  await expect(other.getByRole("heading", { name: "The settings to settle" })).toBeVisible();
  await hand(other).tap(line(other, "Settings under Practice"));
  await expect(heading(other)).toHaveText("Differences to settle");
  await go(other, "#/setup");
  await expect(line(other, "1 difference to settle")).toBeVisible();
  await meet(other, "Ada");
  await go(other, "#/today");
  await hand(other).tap(line(other, "Settings under Practice"));
  expect(await axe(other)).toEqual([]);
  expect(await smallTargets(other)).toEqual([]);
  await hand(other).press("Keep Barn fair");
  await expect(other.locator("main")).toContainText("Nothing is left to settle.");
  await go(other, "#/today");
  await expect(line(other, "Settings under Practice")).toHaveCount(0);
  await bringIn(page, await copy(other));
  await go(page, "#/setup");
  await expect(line(page, "Barn fair")).toBeVisible();
  await expect(page.getByText("to settle")).toHaveCount(0);
});

test("settings that were left out the first time are still to be had from the same file", async ({ page, browser, guard, site, start }) => {
  await start();
  await go(page, "#/setup/fair");
  await hand(page).put(page.getByLabel(say.practice.FAIR), "Quay fair");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await meet(page, "Ada");
  const { text } = await copy(page);
  const other = await colleague(browser, guard, site);
  await bringIn(other, { text });
  await go(other, "#/setup");
  await expect(line(other, "Quay fair")).toHaveCount(0);
  await choose(other, text);
  await expect(other.locator("main")).toContainText("Everything in it is here already.");
  const take = other.getByRole("button", { name: "Bring it in" });
  await expect(take).toHaveCount(0);
  await hand(other).tap(other.getByLabel(say.copies.TAKE_PRACTICE));
  expect(await axe(other)).toEqual([]);
  await hand(other).tap(take);
  await expect(notice(other)).toContainText("Brought in");
  await go(other, "#/setup");
  await expect(line(other, "Quay fair")).toBeVisible();
  await go(other, "#/setup/copies");
  await hand(other).press(say.copies.UNDO_IMPORT);
  await expect(notice(other)).toContainText("taken back");
  await go(other, "#/setup");
  await expect(line(other, "Quay fair")).toHaveCount(0);
});

test("two readings of one finger have two names in the history", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Ada");
  for (const size of ["M", "M", "P"]) {
    await go(page, `#/couple/${id}/finger/first`);
    await hand(page).write(page.getByLabel(say.screens.READ_SIZE, { exact: true }), size);
    await hand(page).press(say.screens.ADD_READING);
    // One that contradicts the others is asked about once.
    if (size === "P") await hand(page).press(say.screens.ADD_READING);
    await expect(notice(page)).toContainText("Reading saved");
  }
  await expect(page.locator(".note").first()).toBeInViewport();
  await hand(page).follow(say.finger.TO_ORDER_SIZE);
  await expect(heading(page)).toHaveText("Order size");
  await go(page, `#/couple/${id}/history`);
  const names = await page.getByLabel(say.phones.OF_WHAT).locator("option").allTextContents();
  expect(names.filter((name) => /reading/.test(name))).toEqual(expect.arrayContaining(["Ada: reading, M", "Ada: reading, M (2)", "Ada: reading, P"]));
});

test("erased there: the preview says what goes, a file comes first, and the button counts it apart", async ({ page, browser, guard, site, start }) => {
  await start();
  const id = await meet(page, "Ada");
  const other = await colleague(browser, guard, site, BEHIND);
  await bringIn(other, await copy(page));
  await go(page, `#/couple/${id}/erase`);
  await hand(page).tap(page.getByLabel(say.copies.ERASE_SURE));
  await hand(page).press(say.copies.ERASE_NOW);
  await expect(notice(page)).toContainText("Erased for good");
  await meet(page, "Bea");
  await width(other, id, "3");
  await choose(other, (await copy(page)).text);
  await expect(other.locator("main")).toContainText("Bringing this in erases them here too, with what only this phone knew.");
  await expect(line(other, "make a file of them first").locator("a")).toHaveAttribute("href", `#/couple/${id}/copy`);
  await hand(other).press("Bring in 1 couple, erase 1");
  await expect(other.locator(".last-import")).toContainText("1 couple brought in on");
});
