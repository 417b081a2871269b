// What specs begin with is what typing gives: rows that were put into storage are those that typing writes.
import { colleague } from "./colleague.js";
import { expect, furnish, furnishByHand, go, heading, loadExamples, meet, meetByHand, open, rows, test } from "./hand.js";

/** A row without what is another in each: who is who, and which number of this phone it was. */
function plain(text) {
  const row = JSON.parse(text);
  const changes = row.changes?.map(({ n, ...change }) => change);
  return JSON.stringify({ ...row, changes }).replace(/\b[0-9a-f]{32}\b/g, "id").replace(/"n":\d+/g, "n");
}

test("a couple that is put into the book is stored as a typed one is, and shown alike", async ({ page, site, start }) => {
  await start();
  for (const [first, more] of [
    ["Ada", {}],
    ["Ada", { second: "Bo" }],
    ["Wren", { wedding: "12 December 2026" }],
    ["bo", { second: "ADA", wedding: "May 2027", reach: "07700 900111" }],
    ["Ben", { second: "Ada", wedding: "2028" }],
  ]) {
    const ids = [await meetByHand(page, first, more), await meet(page, first, more)];
    const all = await rows(page);
    const [typed, put] = ids.map((id) => plain(all[`records/${id}`]));
    expect(typed).toContain(`"${first}"`);
    expect(put).toBe(typed);
    const shown = [];
    for (const id of ids) {
      await open(page, site, `#/couple/${id}`);
      await expect(heading(page)).toContainText(first);
      shown.push(await page.locator("main").innerText());
    }
    expect(shown[1]).toBe(shown[0]);
  }
});

test("a book that is put onto a phone is the one that typing makes there, and is there after a reload", async ({ page, browser, guard, site, start }) => {
  await start();
  await furnish(page);
  const other = await colleague(browser, guard, site);
  await furnishByHand(other);
  const [put, typed] = await Promise.all([page, other].map(async (phone) => Object.values(await rows(phone)).map(plain).sort()));
  expect(typed.length).toBeGreaterThan(5);
  expect(put).toEqual(typed);
  // It is shown as on the phone on which it was typed, at once and at another visit.
  for (const address of ["#/couples", "#/today", "#/setup"]) {
    await go(other, address);
    const shown = await other.locator("main").innerText();
    await go(page, address);
    await expect.poll(() => page.locator("main").innerText(), address).toBe(shown);
    await open(page, site, address);
    await expect.poll(() => page.locator("main").innerText(), `${address}, at another visit`).toBe(shown);
  }
});

test("no book is put over what was written", async ({ page, start }) => {
  await start();
  await meet(page, "Ada");
  await expect(loadExamples(page)).rejects.toThrow("Something was written on this phone before.");
});
