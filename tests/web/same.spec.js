// One couple that two phones have written down by themselves: noticed before it comes in, joined, and taken apart.
import { axe, overflow, smallTargets } from "./checks.js";
import { choose, colleague, copy } from "./colleague.js";
import { expect, fieldsOf, go, hand, heading, meet, notice, rows, test } from "./hand.js";
import { say } from "./say.js";

test("the same couple from two phones is noticed, joined with what differs side by side, and taken apart", async ({ page, browser, guard, site, start }) => {
  await start();
  const ours = await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027" });
  const other = await colleague(browser, guard, site);
  const theirs = await meet(other, "bo", { second: "ADA", wedding: "May 2027", reach: "07700 900111" });
  const { text } = await copy(other);

  await choose(page, text);
  await expect(page.getByRole("heading", { name: say.same.PERHAPS_HERE })).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await hand(page).press(/Bring in/);
  await expect(notice(page)).toContainText("Brought in");

  await go(page, `#/couple/${ours}`);
  await hand(page).follow(/Perhaps here twice/);
  await expect(heading(page)).toHaveText("The same couple?");
  await expect(page.locator(".side")).toHaveCount(2);
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
  await hand(page).press(say.same.JOIN);
  await expect(notice(page)).toContainText("Joined");
  const [kept, away] = [ours, theirs].sort();
  const fields = await fieldsOf(page, kept);
  expect(Object.entries(fields).some(([name, value]) => name.startsWith("reach.") && value === "07700 900111")).toBe(true);
  await go(page, `#/couple/${kept}`);
  // A wedding known less exactly: to be settled, not chosen by the way. Names in another order are the same names.
  await expect(page.getByRole("link", { name: /1 difference to settle/ })).toBeVisible();
  await go(page, `#/couple/${away}`);
  await expect(page.getByRole("button", { name: say.screens.BRING_BACK })).toBeVisible();

  await go(page, `#/couple/${kept}`);
  await hand(page).follow(/Joined with another entry/);
  await expect(page.getByRole("heading", { name: say.same.IS_JOINED })).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await hand(page).press(say.same.TAKE_APART);
  await expect(notice(page)).toContainText("Taken apart");
  await go(page, `#/couple/${kept}`);
  await expect(page.getByText("to settle")).toHaveCount(0);
  await expect(page.getByText("Perhaps here twice"), "said to be two, they are not asked about again").toHaveCount(0);
  await go(page, `#/couple/${away}`);
  await expect(page.getByRole("button", { name: say.screens.PUT_AWAY })).toBeVisible();
});

test("said to be two couples, nobody asks again", async ({ page, start }) => {
  await start();
  const first = await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027" });
  const second = await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027" });
  await go(page, `#/couple/${second}/same`);
  await hand(page).press(say.same.TWO);
  await expect(page.locator("main")).toContainText("No other entry looks like this couple.");
  for (const id of [first, second]) {
    await go(page, `#/couple/${id}`);
    await expect(page.getByText("Perhaps here twice")).toHaveCount(0);
  }
});

test("to erase a joined couple erases both of its entries", async ({ page, start }) => {
  await start();
  const ids = [];
  for (const reach of ["07700 900111", "07700 900222"]) ids.push(await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027", reach }));
  await go(page, `#/couple/${ids[0]}/same`);
  await hand(page).press(say.same.JOIN);
  await expect(notice(page)).toContainText("Joined");
  await go(page, `#/couple/${ids.sort()[0]}/erase`);
  await expect(page.locator("main")).toContainText("The entry that was joined with this one goes with it.");
  await hand(page).tap(page.getByLabel(say.copies.ERASE_SURE));
  await hand(page).press(say.copies.ERASE_NOW);
  await expect(notice(page)).toContainText("Erased for good");
  const kept = JSON.stringify(await rows(page));
  for (const word of ["Ada", "900111", "900222"]) expect(kept, word).not.toContain(word);
  for (const id of ids) expect(kept, "a bare mark").toContain(id);
});

test("to erase one of a chain of joined entries erases all of them, and says how many", async ({ page, start }) => {
  await start();
  const twin = (reach) => meet(page, "Ada", { second: "Bo", wedding: "22 May 2027", reach });
  const join = async (id) => {
    await go(page, `#/couple/${id}/same`);
    await hand(page).press(say.same.JOIN);
    await expect(notice(page)).toContainText("Joined");
  };
  const ids = [await twin("07700 900111"), await twin("07700 900222")];
  await join(ids[0]);
  const away = ids.toSorted()[1];
  // A third is joined with the one of the two that stayed: of the one that was put away it says nothing.
  ids.push(await twin("07700 900333"));
  await join(ids[2]);
  await go(page, `#/couple/${away}/erase`);
  await expect(page.locator("main")).toContainText("2 entries that were joined with this one go with it.");
  await hand(page).tap(page.getByLabel(say.copies.ERASE_SURE));
  await hand(page).press(say.copies.ERASE_NOW);
  await expect(notice(page)).toContainText("Erased for good");
  const kept = JSON.stringify(await rows(page));
  for (const word of ["Ada", "900111", "900222", "900333"]) expect(kept, word).not.toContain(word);
  for (const id of ids) expect(kept, "a bare mark").toContain(id);
});
