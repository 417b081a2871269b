// The couple's eyes: one tap on an answer or its picture, and nothing but that is there until it is deliberately left.
import { axe, overflow, smallTargets } from "./checks.js";
import { expect, furnish, go, hand, heading, ready, test } from "./hand.js";
import { say } from "./say.js";

const clean = (page) => page.locator("main.show");
const finish = (page) => page.getByRole("button", { name: say.showing.FINISH });
const lift = (page) => page.getByRole("button", { name: say.showing.LIFT });

/** Everything that ears and eyes can get at. */
async function tree(page) {
  return page.locator("body").ariaSnapshot();
}

/** What must not be seen: names, notes, ways to reach them, the places of the book. */
async function expectNothingOfTheBook(page) {
  await expect(clean(page)).toBeVisible();
  const seen = await tree(page);
  for (const word of ["Ines", "Callum", "climbs", "07700", "Wharfside", "engagement", "Today", "Setup", "Back", "link"])
    expect(seen, word).not.toContain(word);
  await expect(page.locator(".frame")).toBeHidden();
  expect(await page.locator("a:visible").count()).toBe(0);
}

async function hold(page) {
  await finish(page).scrollIntoViewIfNeeded();
  const box = await finish(page).boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await expect(lift(page)).toBeVisible();
  await expect(clean(page), "it stays while the finger is down").toBeVisible();
  await page.mouse.up();
  await expect(clean(page)).toHaveCount(0);
}

/** The entry of the history that catches the way back stands: there are more of them than before. */
const caught = (page, before) => page.waitForFunction((before) => history.length > before, before);

/** All that follows from what was just done is drawn. */
const drawn = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

for (const [which, title] of [
  ["order", "The size to make"],
  ["stack", "Your rings together"],
  ["dates", "When to order"],
  ["size", "One size on every scale"],
])
  test(`${which}: one tap shows the answer alone, and holding the button leads back`, async ({ page, start }) => {
    await start();
    const { couple } = await furnish(page);
    await go(page, `#/tools/${which}?couple=${couple}&who=first`);
    const before = page.url();
    const entries = await page.evaluate(() => history.length);
    await page.getByRole("button", { name: say.showing.SHOW }).first().tap();
    await expect(heading(page.locator(":root"))).toHaveCount(2);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
    await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
    await expectNothingOfTheBook(page);
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    await caught(page, entries);
    await hold(page);
    await expect(page.getByRole("button", { name: say.showing.SHOW }).first()).toBeFocused();
    expect(page.url()).toBe(before);
  });

test("every picture of the stack and the bands side by side have a clean view of their own", async ({ page, start }) => {
  await start();
  const { couple, ring } = await furnish(page);
  await go(page, `#/couple/${couple}/rings/first/${ring}`);
  for (const [key, words] of [["ring-name", "the engagement ring of Ines"], ["height", "1.7"], ["head-web", "0.8"], ["head-underside", "1.5"]]) await page.locator(`#${key}`).fill(words);
  await page.getByRole("button", { name: say.screens.SAVE, exact: true }).tap();
  await expect(page.locator("#height")).toHaveCount(0);
  await go(page, `#/couple/${couple}/band/first`);
  await page.locator("#height").fill("1.8");
  await page.getByRole("button", { name: say.screens.SAVE, exact: true }).tap();
  await expect(page.locator("#height")).toHaveCount(0);
  const show = page.getByRole("button", { name: say.showing.SHOW });
  const look = async (at, title, drawn = true) => {
    await show.nth(at).tap();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(title);
    await expectNothingOfTheBook(page);
    expect(await axe(page)).toEqual([]);
    if (drawn) await expect(clean(page).locator("svg").first()).toBeVisible();
    // However tall the answer is, the way out of it is on the screen.
    const box = await finish(page).boundingBox();
    expect(box.y + box.height).toBeLessThanOrEqual(page.viewportSize().height + 0.5);
    await hold(page);
  };
  await go(page, `#/tools/stack?couple=${couple}&who=first`);
  // From above, laid flat, from the side, what can be done, how they wear, and two sections.
  await expect(show).toHaveCount(7);
  for (const [at, title] of ["Your rings together", "The ring and the band, laid flat", "How they lie side by side", "Beside the head: what can be done", "How they wear together", "Cut through", "Cut through"].entries())
    await look(at, title, !/done|wear/.test(title));
  await go(page, `#/tools/compare?couple=${couple}&who=first&band2-width=6&band2-height=2&band2-profile=flat&band2-metal=titanium`);
  await look(0, "Bands side by side");
  // What was settled, from the couple's own page.
  await go(page, `#/couple/${couple}`);
  await look(0, "What we have settled");
});

for (const [name, at] of [
  ["dates", (id) => `#/tools/dates?couple=${id}`],
  ["size", (id) => `#/tools/size?couple=${id}&who=first`],
  ["order", (id) => `#/tools/order?couple=${id}&who=first`],
])
  test(`the way out of a tall answer stays on a small screen: ${name}`, async ({ page, start }) => {
    await page.setViewportSize({ width: 320, height: 480 });
    await start();
    const { couple } = await furnish(page);
    await go(page, at(couple));
    await page.getByRole("button", { name: say.showing.SHOW }).tap();
    await expect(clean(page)).toBeVisible();
    await page.evaluate(() => scrollTo(0, 0));
    const box = await finish(page).boundingBox();
    expect(box.y + box.height).toBeLessThanOrEqual(480.5);
    expect(box.y).toBeGreaterThanOrEqual(0);
  });

test("a tap on the picture does the same", async ({ page, start }) => {
  await start();
  const { couple } = await furnish(page);
  await go(page, `#/tools/order?couple=${couple}&who=first`);
  await page.locator("figure.picture").tap();
  await expectNothingOfTheBook(page);
});

test("the way back, a typed address, escape and a reload all stay; a short press asks first", async ({ page, site, start }) => {
  await start();
  const { couple } = await furnish(page);
  await go(page, `#/couple/${couple}`);
  await go(page, `#/tools/order?couple=${couple}&who=first`);
  const before = page.url();
  const entries = await page.evaluate(() => history.length);
  await page.getByRole("button", { name: say.showing.SHOW }).tap();
  // At once, before the history has its entry, and then again and again.
  await page.goBack();
  await caught(page, entries);
  await expectNothingOfTheBook(page);
  for (let times = 0; times < 3; times++) {
    await page.goBack();
    await drawn(page);
    await expectNothingOfTheBook(page);
  }
  await page.keyboard.press("Escape");
  await page.evaluate(() => new Promise((done) => {
    addEventListener("hashchange", done, { once: true });
    location.hash = "#/couples";
  }));
  await drawn(page);
  await expectNothingOfTheBook(page);
  await page.reload();
  await ready(page);
  await expectNothingOfTheBook(page);
  await expect(page.locator(".show-figure")).toHaveText("UK N");

  // By keyboard, as somebody who cannot hold: the question, and its first button stays.
  await finish(page).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: say.showing.FINISH_QUESTION })).toBeVisible();
  await expect(page.locator("#show-question"), "the question has the focus").toBeFocused();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: say.showing.FINISH_QUESTION })).toHaveCount(0);
  // As a screen reader presses: no finger, only a click. (A tap of a slow machine's may last a second: a hold.)
  await finish(page).evaluate((button) => button.click());
  await expect(page.getByRole("heading", { name: say.showing.FINISH_QUESTION })).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await page.getByRole("button", { name: say.showing.FINISH_NOW }).tap();
  await expect(clean(page)).toHaveCount(0);
  await expect(page.getByRole("navigation")).toBeVisible();
  await expect.poll(() => page.url()).toBe(before);
  await page.reload();
  await ready(page);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Order size");
});

test("the touch that finishes presses nothing of what comes in its place", async ({ page, start }) => {
  await start();
  const { couple } = await furnish(page);
  await go(page, `#/tools/order?couple=${couple}&who=first`);
  const before = page.url();
  const touch = await page.context().newCDPSession(page);
  const { width } = page.viewportSize();
  const places = await page.getByRole("navigation").getByRole("link").all();
  expect(places).toHaveLength(4);
  for (const at of [0.5, 1.5, 2.5, 3.5]) {
    const entries = await page.evaluate(() => history.length);
    await page.getByRole("button", { name: say.showing.SHOW }).first().tap();
    await expect(finish(page)).toBeVisible();
    if (at === 0.5) await caught(page, entries);
    const box = await finish(page).boundingBox();
    const touchPoints = [{ x: (at * width) / 4, y: box.y + box.height / 2 }];
    expect(await page.evaluate(({ x, y }) => document.elementFromPoint(x, y).className, touchPoints[0])).toBe("show-finish");
    await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints });
    await expect(lift(page)).toBeVisible();
    await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await expect(clean(page)).toHaveCount(0);
    await drawn(page);
    expect(page.url(), `held over ${at} quarters of the width`).toBe(before);
    await expect(heading(page)).toHaveText("Order size");
  }
});

test("what is typed stays typed behind it", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/tools/size");
  await thumb.write(page.getByRole("textbox", { name: say.bench.SIZE }), "M½");
  const entries = await page.evaluate(() => history.length);
  await page.getByRole("button", { name: say.showing.SHOW }).tap();
  await expect(page.locator(".show-figure")).toHaveText("53.13 mm");
  await caught(page, entries);
  await hold(page);
  await expect(page.getByRole("textbox", { name: say.bench.SIZE })).toHaveValue("M½");
});
