// The gauges on the glass and on paper, measured: the circle in pixels of the screen, the print in tenths of millimetres.
import { execFile } from "node:child_process";
import { mkdir, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { phone } from "./browser.js";
import { expect, fieldsOf, figure, go, hand, heading, meet, notice, open, ready, test } from "./hand.js";
import { readPng } from "./png.js";
import { say } from "./say.js";

// As fine as phones are: how near a slide comes, and what a calibration is of, follows the pixels of the screen.
test.use({ deviceScaleFactor: 3 });

const run = promisify(execFile);
const python = fileURLToPath(new URL("../../.tools/venv/bin/python", import.meta.url));
const results = fileURLToPath(new URL("../../test-results", import.meta.url));

/** The short side of a card, in mm: ISO/IEC 7810. */
const CARD = 53.98;

/** Moves the slide to so many thousandths of a pixel, as near as its steps go. */
async function slideTo(page, thousandths) {
  await page.locator("#match").evaluate((slide, value) => {
    slide.value = value;
    slide.dispatchEvent(new Event("input", { bubbles: true }));
  }, String(thousandths));
}

/** Calibrates with a card that is so many pixels wide on this screen; answers with what was set. */
async function calibrate(page, pixels) {
  await expect(page.locator(".glass .patch")).toBeVisible();
  await slideTo(page, pixels * 1000);
  const { width } = await page.locator(".glass .patch").evaluate((it) => it.getBoundingClientRect());
  await hand(page).press(say.bench.gauging.IT_FITS);
  await expect(page.locator("#glass-size")).toBeVisible();
  return width;
}

/** How wide the patch is by the colour on the screen: across its middle, and by its area; in pixels of the page. It is
    looked for round about where one of that width would be, short of the guides and the edges. */
async function painted(page, ratio, wide) {
  const png = readPng(await page.locator(".glass").screenshot());
  const [middle, row, reach] = [Math.floor(png.width / 2), Math.floor(png.height / 2), Math.ceil((wide / 2 + 8) * ratio)];
  const ink = png.at(middle, row);
  const ground = png.at(middle, row - reach);
  expect(ink.some((value, i) => Math.abs(value - ground[i]) > 60), "ink on another ground").toBe(true);
  // How much of the patch's colour a pixel has: at the rim it is a part.
  const share = (x, y) => {
    const parts = png.at(x, y).map((value, i) => (value - ground[i]) / (ink[i] - ground[i]));
    return Math.min(1, Math.max(0, parts.reduce((sum, part) => sum + part) / 3));
  };
  let area = 0;
  let across = 0;
  for (let x = middle - reach; x <= middle + reach; x++) {
    let most = 0;
    for (let y = row - reach; y <= row + reach; y++) {
      area += share(x, y);
      most = Math.max(most, share(x, y));
    }
    across += most;
  }
  return { across: across / ratio, byArea: (2 * Math.sqrt(area / Math.PI)) / ratio };
}

for (const ratio of [1, 2, 3])
  test(`a circle on the glass is as wide as it says, at ${ratio} pixels of the screen to one`, async ({ browser, site, guard }) => {
    const context = await browser.newContext({ ...phone, deviceScaleFactor: ratio });
    guard.follow(context);
    const page = await context.newPage();
    await page.goto(site.url + "#/tools/screen-gauge");
    await ready(page);
    // Nothing is answered before.
    await expect(page.locator("main")).toContainText("Until then it gives no answer");
    await expect(page.locator("#glass-size")).toHaveCount(0);

    const card = await calibrate(page, 306);
    expect(Math.abs(card - 306), "the patch for the card").toBeLessThanOrEqual(1 / ratio);
    for (const wide of [82, 97.4, 118.9]) {
      await slideTo(page, wide * 1000);
      const slid = Number(await page.locator("#match").inputValue()) / 1000;
      expect(Math.abs(slid - wide)).toBeLessThanOrEqual(1 / ratio);
      const box = await page.locator(".glass .patch").evaluate((it) => it.getBoundingClientRect().toJSON());
      // The answer follows from two proportions that anybody can reckon.
      const across = (slid * CARD) / card;
      await expect(page.locator("#glass-size")).toContainText(`${across.toFixed(2)} mm across`);
      expect(Math.abs(box.width - slid), "the box of the circle, in pixels of the page").toBeLessThan(0.02);
      expect(Math.abs(box.height - slid)).toBeLessThan(0.02);
      const paint = await painted(page, ratio, slid);
      expect(Math.abs(paint.across - slid), `painted ${paint.across} across`).toBeLessThanOrEqual(1 / ratio + 0.01);
      expect(Math.abs(paint.byArea - slid), `painted ${paint.byArea} by its area`).toBeLessThan(0.3 / ratio);
      figure(`ratio ${ratio}: asked ${slid}, box ${box.width.toFixed(2)}, painted ${paint.across.toFixed(2)} across, ${paint.byArea.toFixed(2)} by area`);
    }
    // One press is one pixel of the screen, and by the keyboard as well.
    const before = Number(await page.locator("#match").inputValue());
    await hand(page).press(say.bench.gauging.LARGER);
    expect(Number(await page.locator("#match").inputValue()) - before).toBe(Math.floor(1000 / ratio));
    await page.locator("#match").focus();
    await page.keyboard.press("ArrowLeft");
    expect(Number(await page.locator("#match").inputValue())).toBe(before);
    await context.close();
  });

test("the calibration is of one screen at one zoom, and kept on the phone alone", async ({ page, site, start }) => {
  await start();
  await go(page, "#/tools/screen-gauge");
  await calibrate(page, 306);
  await open(page, site, "#/tools/screen-gauge");
  await expect(page.locator("#glass-size"), "it is remembered").toBeVisible();

  const devtools = await page.context().newCDPSession(page);
  const screen = (ratio) => devtools.send("Emulation.setDeviceMetricsOverride", { width: 360, height: 740, deviceScaleFactor: ratio, mobile: true, screenWidth: 360, screenHeight: 740 });
  await screen(2);
  await expect(page.locator("main")).toContainText("calibrated while the page was shown at another size");
  await expect(page.locator("#glass-size")).toHaveCount(0);
  await screen(3);
  await expect(page.locator("#glass-size")).toBeVisible();

  await devtools.send("Emulation.setPageScaleFactor", { pageScaleFactor: 2 });
  await expect(page.locator("main")).toContainText("The page is pinched larger than it is.");
  await expect(page.locator(".glass")).toHaveCount(0);
  await devtools.send("Emulation.setPageScaleFactor", { pageScaleFactor: 1 });
  await expect(page.locator("#glass-size")).toBeVisible();

  // It can be checked: the patch is as wide as it was set.
  await hand(page).press(say.bench.gauging.CALIBRATE_ANEW);
  const { width } = await page.locator(".glass .patch").evaluate((it) => it.getBoundingClientRect());
  expect(Math.abs(width - 306)).toBeLessThan(0.5);
});

test("an order size from the glass or from paper knows how sure that was", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/tools/screen-gauge");
  await calibrate(page, 306);
  await slideTo(page, 97_300);
  const [, sure] = /give or take ([\d.]+) mm round/.exec(await page.locator("#glass-size").textContent());
  await thumb.follow(say.bench.ORDER_FROM_THIS);
  await expect(page.locator("#gauge-error")).toHaveValue(sure);
  await thumb.write(page.locator("#gauge-width"), "3");
  await thumb.write(page.locator("#width"), "3");
  const range = async () => {
    const [, from, to] = /8 in 10 between ([\d.]+) and ([\d.]+) mm/.exec(await page.locator("main").textContent());
    return to - from;
  };
  const unsure = await range();
  await thumb.put(page.locator("#gauge-error"), "");
  await expect.poll(async () => unsure - (await range())).toBeGreaterThan(0.1);
});

test("a ring on the glass becomes a reading of a ring that they wear", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await page.locator("#gauge").selectOption("worn");
  await thumb.follow(say.bench.gauging.SCREEN_GAUGE);
  const card = await calibrate(page, 306);
  await slideTo(page, 97_300);
  const slid = Number(await page.locator("#match").inputValue()) / 1000;
  await thumb.press("Tess wears it: write it down");
  await expect(heading(page)).toHaveText("Tess: Finger");
  await expect(page.getByLabel(say.screens.READ_SIZE)).toHaveValue(`${((slid * CARD) / card).toFixed(2)} mm`);
  await expect(page.locator("main")).toContainText("Measured on the screen: no stick");
  await expect(page.getByRole("group", { name: say.screens.READ_AT })).toHaveCount(0);
  await thumb.write(page.getByLabel(say.finger.WORN_WIDTH), "3");
  await thumb.press(say.screens.ADD_READING);
  await expect(notice(page)).toContainText("Reading saved");
  const reading = Object.entries(await fieldsOf(page, id)).find(([key]) => key.startsWith("reading."))[1];
  expect(reading).toMatchObject({ sits: "right", gauge: { name: "ring they wear, on the screen", kind: "rings" } });
  expect(reading.gauge.own_error).toBeGreaterThan(0.3);
  expect(reading.gauge.own_error).toBeLessThan(0.45);
  // The phone's calibration is in no record.
  expect(JSON.stringify(await fieldsOf(page, id))).not.toContain("card-short");
});

test("a printed gauge is as large as it says, to a tenth of a millimetre", async ({ page, start }) => {
  await start();
  await mkdir(results, { recursive: true });
  const thumb = hand(page);
  await go(page, "#/tools/paper-gauge");
  for (const [paper, system] of [["A4", "uk"], ["A6", "uk"], ["A4", "iso"], ["A6", "us"]]) {
    await thumb.choose("Paper", paper);
    await page.locator("#first").selectOption(system);
    const file = `${results}/paper-gauge-${paper}-${system}.pdf`.toLowerCase();
    await writeFile(file, await page.pdf({ preferCSSPageSize: true }));
    // Rendered to a picture by another program and measured there (tests/web/paper.py says what it looks for).
    const { stdout } = await run(python, [fileURLToPath(new URL("paper.py", import.meta.url)), file, paper]);
    const found = JSON.parse(stdout);
    figure(`${paper} ${system}: ${stdout.trim()}`);
    expect(found.pages).toBe(1);
    expect(Math.abs(found.line - 100), "the control line").toBeLessThan(0.1);
    const circles = await page.locator(".sheet circle").count();
    expect(found.circles.length, "every circle is found").toBe(circles);
    await expect(page.getByText("On this paper the circles end at")).toHaveCount(paper === "A6" && system === "uk" ? 1 : 0);
    const said = await page.locator(".sheet .bore + text + text").allTextContents();
    for (const [i, across] of found.circles.entries()) expect(Math.abs(across - Number(said[i])), `circle ${said[i]}`).toBeLessThan(0.1);
    const ticks = await page.locator(".sheet .strip").first().locator(".size-tick").evaluateAll((all) => all.map((it) => Number(it.getAttribute("x1")) / 4));
    expect(ticks.length).toBeGreaterThan(10);
    // The strokes of the strip, from its cut end: the first and the last.
    expect(Math.abs(found.strip.first - ticks[0]), "the first stroke of the strip").toBeLessThan(0.1);
    expect(Math.abs(found.strip.last - ticks.at(-1)), "the last stroke of the strip").toBeLessThan(0.1);
    if (paper === "A4") {
      expect(Math.abs(found.card[0] - 85.6)).toBeLessThan(0.1);
      expect(Math.abs(found.card[1] - 53.98)).toBeLessThan(0.1);
    }
  }
});

test("a print that is off is put right, and one that is far off has to be made again", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/tools/paper-gauge");
  await expect(page.locator("main")).toContainText("A paper strip is no jeweller’s gauge");
  await thumb.tap(page.locator("summary", { hasText: "Put right" }));
  await expect(page.locator("main")).toContainText("1 % too large or too small is 0.54 mm off at size 54");
  await thumb.write(page.locator("#line"), "98");
  await thumb.choose(say.bench.gauging.READ_ON_IT, say.bench.gauging.BY_CIRCLE);
  await thumb.write(page.locator("#read"), "17.5 mm");
  // 17.5 times 0.98.
  await expect(page.locator("#paper-size")).toContainText("17.15 mm across");
  await expect(page.locator("#paper-size")).toContainText("give or take 0.32 mm round");
  // It goes along to an order size, which is less sure than with a set that is in order.
  const order = page.getByRole("link", { name: say.bench.ORDER_FROM_THIS });
  await expect(order).toHaveAttribute("href", /&gauge-error=0\.32$/);
  await thumb.put(page.locator("#line"), "96");
  await expect(page.locator("main")).toContainText("print it again at 100 %");
  await expect(page.locator("#paper-size")).toHaveCount(0);
});
