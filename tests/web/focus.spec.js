// Where the focus goes when the page changes, and that it takes nothing from anybody's fingers.
import { expect, go, heading, meet, test } from "./hand.js";
import { say } from "./say.js";

/** Frames come late, as they do on a busy phone: what the app does in a frame happens after the next taps and keys. */
const busy = (page) =>
  page.evaluate(() => {
    const next = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (draw) => setTimeout(() => next(draw), 1500);
  });

/** Whatever waited for a frame has had it. */
const caughtUp = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));

test("on a busy phone nobody who types at once types into nothing", async ({ page, start }) => {
  await start();
  await go(page, "#/couples");
  await busy(page);
  await page.getByRole("link", { name: say.screens.NEW_COUPLE }).click();
  await page.locator("#first-name").click();
  await page.keyboard.type("Te");
  await caughtUp(page);
  await page.keyboard.type("ss");
  await expect(page.locator("#first-name")).toHaveValue("Tess");
  await expect(page.locator("#first-name")).toBeFocused();
});

test("on a busy phone no page slips from under the finger", async ({ page, start }) => {
  await start();
  await meet(page, "Tess");
  await busy(page);
  await page.getByRole("link", { name: "Tess: finger", exact: false }).click();
  await expect(heading(page)).toHaveText(`Tess: ${say.screens.FINGER}`);
  await page.evaluate(() => scrollTo(0, 200));
  await caughtUp(page);
  expect(await page.evaluate(() => scrollY)).toBe(200);
});
