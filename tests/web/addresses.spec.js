// Every address of the app has its row in the table that the other specs walk along, and shows a screen of its own.
import { ADDRESSES, expect, furnish, go, heading, ready, test, variants } from "./hand.js";
import { say } from "./say.js";

test("the table of addresses is that of src/app/address.rs", async () => {
  const named = ["Address", "Part", "Calculator", "Setting"].map(variants);
  // These stand for the addresses under them.
  const groups = ["Address::Part", "Address::Calculator", "Address::Setting"];
  const known = (await Promise.all(named)).flat().filter((name) => !groups.includes(name));
  expect(known.length).toBeGreaterThan(30);
  expect([...new Set(ADDRESSES.map(([name]) => name))].sort()).toEqual(known.sort());
});

test("every address has a screen with a heading that takes the focus", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  for (const [name, at] of ADDRESSES) {
    await go(page, at(ids));
    const title = await heading(page).textContent();
    expect.soft(title, name).toMatch(/\S/);
    expect.soft(title, name).not.toMatch(/not on this phone/);
    expect.soft(await page.evaluate(() => document.activeElement?.tagName), `${name}: the focus`).toBe("H1");
    expect.soft(await page.locator("main").count(), `${name}: mains`).toBe(1);
  }
});

test("an address of an earlier version leads where it led, and is written anew", async ({ page, start }) => {
  await start();
  const { couple } = await furnish(page);
  for (const [former, now, title] of [
    ["#/bench", "#/tools", say.screens.TOOLS],
    ["#/practice", "#/setup", say.screens.SETUP],
    ["#/bench/size?q=M%C2%BD", "#/tools/size?q=M%C2%BD", say.bench.SIZE_CONVERTER],
    [`#/bench/order?couple=${couple}&who=first`, `#/tools/order?couple=${couple}&who=first`, say.bench.ORDER_SIZE],
    ["#/practice/closures/holidays", "#/setup/closures/holidays", say.planning.HOLIDAYS_KEPT],
  ]) {
    await page.evaluate((former) => (location.hash = former), former);
    await expect(heading(page), former).toHaveText(title);
    await expect.poll(() => page.evaluate(() => location.hash), former).toBe(now);
    await page.reload();
    await ready(page);
    await expect(heading(page), former).toHaveText(title);
  }
  await page.goBack();
  await expect(heading(page), "the way back is what it was").toHaveText(say.bench.ORDER_SIZE);
});

test("a screen whose file is late says that it comes, and is waited for", async ({ page, site }) => {
  let release;
  const held = new Promise((done) => (release = done));
  await page.route(/\/work-[^/]*\.wasm$/, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(site.url);
  await ready(page);
  const gone = go(page, "#/couples/new");
  await expect(page.locator("main")).toHaveAttribute("aria-busy", "true");
  expect(await page.locator("input").count()).toBe(0);
  release();
  await gone;
  expect(await page.locator("#first-name").count()).toBe(1);
  await expect(page.locator("main")).not.toHaveAttribute("aria-busy");
});
