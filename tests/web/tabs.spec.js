// Two tabs of one book: what each changes is there in both, and nothing that was saved is lost.
import { coupleOf, crash, expect, fieldsOf, go, hand, heading, line, meet, meetByHand, notice, open, ready, rows, test } from "./hand.js";
import { choose, copy } from "./colleague.js";
import { say } from "./say.js";

test.beforeEach(async ({ start }) => {
  await start();
});

async function twoTabs(page, context, site) {
  const id = await meet(page, "Tess", { second: "Rowan" });
  const other = await context.newPage();
  await open(other, site, `#/couple/${id}`);
  await expect(heading(other)).toHaveText("Tess & Rowan");
  return { id, other };
}

/** Opens a part of the couple in a tab and types over one of its fields. */
async function change(tab, id, part, label, words) {
  await go(tab, `#/couple/${id}/${part}`);
  await hand(tab).put(tab.getByLabel(label, { exact: true }), words);
}

test("different fields changed in two tabs are both there, in both and after a reload", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  // Both forms stand open before either is saved: the second save must not bring back what the first one replaced.
  await change(page, id, "wedding", "Wedding date", "22 May 2027");
  await change(other, id, "notes", "New note", "Likes a brushed surface.");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await hand(other).press(say.screens.ADD_NOTE);
  await expect(notice(other)).toContainText("saved");
  for (const tab of [page, other]) {
    await go(tab, `#/couple/${id}`);
    await expect(line(tab, "Wedding"), "in the tab").toContainText("22 May 2027");
    await expect(line(tab, "Notes"), "in the tab").toContainText("1 note");
  }
  for (const tab of [page, other]) {
    await tab.reload();
    await ready(tab);
    await expect(line(tab, "Wedding"), "after a reload").toContainText("22 May 2027");
    await expect(line(tab, "Notes"), "after a reload").toContainText("1 note");
  }
});

test("two fields of one form changed in two tabs are both there", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await change(page, id, "people", "First name", "Tessa");
  await change(other, id, "people", "Second name", "Rowena");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await hand(other).press(say.screens.SAVE);
  await expect(notice(other)).toContainText("saved");
  for (const tab of [page, other]) {
    await go(tab, `#/couple/${id}`);
    await expect(heading(tab)).toHaveText("Tessa & Rowena");
    await tab.reload();
    await ready(tab);
    await expect(heading(tab)).toHaveText("Tessa & Rowena");
  }
});

test("a change in one tab shows in the other while it is looked at", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await change(page, id, "people", "First name", "Tessa");
  await hand(page).press(say.screens.SAVE);
  await expect(heading(other)).toHaveText("Tessa & Rowan");
});

test("of one field changed in two tabs both writes are kept, and both tabs show the same", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await change(page, id, "wedding", "Wedding date", "22 May 2027");
  await change(other, id, "wedding", "Wedding date", "June 2027");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await hand(other).press(say.screens.SAVE);
  await expect(notice(other)).toContainText("saved");
  const written = JSON.parse((await rows(page))[`records/${id}`])
    .changes.flatMap(({ sets }) => sets)
    .filter(({ field }) => field === "wedding")
    .map(({ value }) => value);
  expect(written).toEqual(["2027-05-22", "2027-06"]);
  const shown = [];
  for (const tab of [page, other]) {
    await go(tab, `#/couple/${id}`);
    shown.push(await line(tab, "Wedding").textContent());
    await tab.reload();
    await ready(tab);
    shown.push(await line(tab, "Wedding").textContent());
  }
  expect(new Set(shown).size, shown.join(" | ")).toBe(1);
  // The second form had not shown what the first one saved: neither counts before somebody chooses.
  await expect(page.getByRole("link", { name: /1 difference to settle/ })).toBeVisible();
});

test("what another tab saved while a calculator stood open stands beside what the calculator saves", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  for (const [tab, day] of [[page, "22"], [other, "29"]]) await go(tab, `#/tools/dates?couple=${id}&wedding=2027-05-${day}`);
  for (const tab of [page, other]) {
    await hand(tab).press(/^Use order by/);
    await expect(notice(tab)).toContainText("Dates saved");
  }
  await go(page, `#/couple/${id}`);
  await expect(page.getByRole("link", { name: /2 differences to settle/ })).toBeVisible();
  await hand(page).follow(/2 differences to settle/);
  for (const day of ["22 May 2027", "29 May 2027"]) await expect(page.locator(".side", { hasText: day }).first()).toBeVisible();
});

test("two saves of one form in one tab are no difference, nor is a save over what had come in before the form was opened", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  for (const [tab, date] of [[page, "22 May 2027"], [page, "23 May 2027"], [other, "24 May 2027"]]) {
    await change(tab, id, "wedding", "Wedding date", date);
    await hand(tab).press(say.screens.SAVE);
    await expect(notice(tab)).toContainText("saved");
  }
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Wedding")).toContainText("24 May 2027");
  await expect(page.getByText("to settle")).toHaveCount(0);
});

test("a file brought in by one tab, and taken back, is seen in the other", async ({ page, context, site }) => {
  const { other } = await twoTabs(page, context, site);
  const { text } = await copy(page);
  await go(other, "#/couples");
  await choose(page, text.replaceAll("Tess", "Mara").replace(/"id":"[0-9a-f]{32}"/, '"id":"000000000000000000000000000000aa"'));
  await hand(page).press(/Bring in/);
  await expect(notice(page)).toContainText("Brought in");
  await expect(other.getByRole("link", { name: /Mara/ })).toBeVisible();
  await hand(page).press(say.copies.UNDO_IMPORT);
  await expect(other.getByRole("link", { name: /Mara/ })).toHaveCount(0);
  await expect(other.getByRole("link", { name: /Tess/ })).toBeVisible();
});

test("words that come back over what was saved meanwhile say so at the field", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await change(page, id, "wedding", "Wedding date", "22 May 2027");
  await change(other, id, "wedding", "Wedding date", "June 2027");
  await hand(other).press(say.screens.SAVE);
  await expect(notice(other)).toContainText("saved");
  await open(page, site, `#/couple/${id}/wedding`);
  await expect(page.getByLabel(say.screens.WEDDING)).toHaveValue("22 May 2027");
  await expect(page.locator("#wedding-error")).toHaveText("Something else was saved here meanwhile. To save this takes its place.");
});

test("two tabs that save at the same moment both succeed, under numbers of their own", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await change(page, id, "notes", "New note", "one");
  await change(other, id, "notes", "New note", "two");
  await Promise.all([hand(page).press(say.screens.ADD_NOTE), hand(other).press(say.screens.ADD_NOTE)]);
  for (const tab of [page, other]) await expect(tab.locator(".note")).toHaveCount(2);
  const stamps = JSON.parse((await rows(page))[`records/${id}`]).changes.map(({ by, n }) => `${by} ${n}`);
  expect(new Set(stamps).size).toBe(stamps.length);
});

test("a couple put away in one tab leaves the list of the other, and comes back with it", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  await go(other, "#/couples");
  const name = other.getByRole("link", { name: /Tess & Rowan/ });
  await expect(name).toBeVisible();
  await go(page, `#/couple/${id}`);
  await hand(page).press(say.screens.PUT_AWAY);
  await expect(name).toHaveCount(0);
  await hand(page).press(say.screens.BRING_BACK);
  await expect(name).toBeVisible();
});

test("a new couple of one tab is in the list of the other", async ({ page, context, site }) => {
  const other = await context.newPage();
  await open(other, site, "#/couples");
  await meetByHand(page, "Wren");
  await expect(other.getByRole("link", { name: /Wren/ })).toBeVisible();
  expect((await fieldsOf(other, coupleOf(page)))["name.first"]).toBe("Wren");
});

test("the first two tabs ever opened agree on one installation", async ({ context, site }) => {
  const tabs = [await context.newPage(), await context.newPage()];
  await Promise.all(tabs.map((tab) => tab.goto(site.url)));
  await Promise.all(tabs.map((tab) => ready(tab)));
  await meetByHand(tabs[0], "Ines");
  await meetByHand(tabs[1], "Orla");
  const all = await rows(tabs[0]);
  const { id } = JSON.parse(all["meta/installation"]);
  const by = Object.entries(all).filter(([key]) => key.startsWith("records/")).flatMap(([, row]) => JSON.parse(row).changes.map((it) => it.by));
  expect(new Set(by)).toEqual(new Set([id]));
});

const BACK = "Your unsaved words are back.";
const ELSEWHERE = "This form is open in another tab too, with words that are not saved.";

test("two tabs with the same form keep their words apart, to the last key, whichever of them is lost", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  const note = (tab) => tab.getByLabel(say.screens.NEW_NOTE);
  for (const tab of [page, other]) await go(tab, `#/couple/${id}/notes`);
  await hand(page).enter(note(page));
  await hand(other).enter(note(other));
  // Key by key in turn, as fast as it goes.
  await Promise.all([page.keyboard.type("one one one", { delay: 5 }), other.keyboard.type("two two two", { delay: 7 })]);
  await expect(note(page)).toHaveValue("one one one");
  await expect(note(other)).toHaveValue("two two two");
  // What one saves takes nothing from the other.
  await hand(other).press(say.screens.ADD_NOTE);
  await expect(page.locator(".note")).toContainText("two two two");
  await expect(note(page)).toHaveValue("one one one");
  await expect(note(other)).toHaveValue("");
  await go(other, "#/today");
  await crash(page);
  const third = await context.newPage();
  await open(third, site, `#/couple/${id}/notes`);
  await expect(third.getByText(BACK)).toBeVisible();
  await expect(note(third)).toHaveValue("one one one");
  await hand(third).press(say.screens.ADD_NOTE);
  await expect(third.locator(".note")).toHaveCount(2);
  await third.reload();
  await ready(third);
  await expect(third.locator(".note")).toHaveCount(2);
  await expect(note(third)).toHaveValue("");
});

test("a tab that opens a form with words in another tab is told, and gets them when that tab is closed", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  const note = (tab) => tab.getByLabel(say.screens.NEW_NOTE);
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(note(page), "Half a note");
  await go(other, `#/couple/${id}/notes`);
  await expect(other.getByText(ELSEWHERE)).toBeVisible();
  await expect(note(other)).toHaveValue("");
  await page.close();
  await expect(other.getByText(BACK)).toBeVisible();
  await expect(other.getByText(ELSEWHERE)).toHaveCount(0);
  await expect(note(other)).toHaveValue("Half a note");
});

test("a tab with a form that nobody has typed into is told when another tab begins, and gets the words of one that crashes", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  const note = (tab) => tab.getByLabel(say.screens.NEW_NOTE);
  for (const tab of [page, other]) await go(tab, `#/couple/${id}/notes`);
  await expect(other.getByText(ELSEWHERE)).toHaveCount(0);
  await hand(page).write(note(page), "Half a note");
  await expect(other.getByText(ELSEWHERE)).toBeVisible();
  await crash(page);
  await expect(note(other)).toHaveValue("Half a note");
  await expect(other.getByText(ELSEWHERE)).toHaveCount(0);
});

test("a tab is told no longer when the other one has saved, and words of its own stay its own", async ({ page, context, site }) => {
  const { id, other } = await twoTabs(page, context, site);
  const note = (tab) => tab.getByLabel(say.screens.NEW_NOTE);
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(note(page), "theirs");
  await go(other, `#/couple/${id}/notes`);
  await expect(other.getByText(ELSEWHERE)).toBeVisible();
  await hand(other).write(note(other), "ours");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(other.getByText(ELSEWHERE)).toHaveCount(0);
  await expect(note(other)).toHaveValue("ours");
  // A tab closed with words of its own does not press them on one that has others; they come the next time.
  await hand(page).write(note(page), "theirs again");
  await page.close();
  // Where words do come over, in the tests above, it is as soon as the closed tab lets its lock go. Here none may.
  await other.waitForTimeout(300);
  await expect(note(other)).toHaveValue("ours");
  await hand(other).press(say.screens.ADD_NOTE);
  await expect(other.locator(".note")).toHaveCount(2);
  await go(other, "#/today");
  await go(other, `#/couple/${id}/notes`);
  await expect(other.getByText(BACK)).toBeVisible();
  await expect(note(other)).toHaveValue("theirs again");
});
