// Sizes and fit: readings together, one that contradicts, amounts of one's own, what fitted, gauges put right, tables.
import { expect, fieldsOf, go, hand, heading, line, meet, notice, practiceFields, test } from "./hand.js";
import { say } from "./say.js";

/** Adds a reading with what stands in the form, and waits until it is in the list. */
async function read(page, size, { twice = false } = {}) {
  const thumb = hand(page);
  const before = await page.locator(".note").count();
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), size);
  await thumb.press(say.screens.ADD_READING);
  if (twice) {
    await expect(page.locator("#size-error")).toContainText("more than two sizes; press again to keep it.");
    await expect(page.locator(".note")).toHaveCount(before);
    await thumb.press(say.screens.ADD_READING);
  }
  await expect(page.locator(".note")).toHaveCount(before + 1);
}

/** A band of 6 mm for the first of the two. */
async function chooseBand(page, id) {
  const thumb = hand(page);
  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "6");
  await thumb.choose(say.screens.PROFILE, "flat");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("Band saved");
  await expect(heading(page)).not.toContainText("Band");
}

test("readings count together; one that contradicts is asked about, pointed out and left out", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  for (const size of ["UK M", "UK M½", "UK M"]) await read(page, size);
  await expect(page.locator("main")).toContainText("Base of the finger: 52.71 mm as a flat gauge of 3 mm would read it");
  await read(page, "UK R", { twice: true });
  await expect(page.locator(".note").last()).toContainText("stands apart from the others");

  await chooseBand(page, id);
  await go(page, `#/tools/order?couple=${id}&who=first`);
  await expect(page.locator("#answer")).toContainText("One of the readings stands apart");
  await expect(page.locator("#answer")).toContainText("Measure again: two readings are 6.25 mm apart, more than two UK letters.");
  // The picture has a mark for each, and says so.
  await expect(page.locator("#answer .ladder .single circle")).toHaveCount(3);
  await expect(page.locator("#answer .ladder .single-apart")).toContainText("R stands apart");
  await expect(page.locator("#answer .ladder")).toHaveAttribute("aria-label", /^Size rule\. 4 readings: R, 58\.75 mm, stands apart; M, 52\.50 mm; M½, 53\.13 mm; M, 52\.50 mm\. /);
  await expect(page.locator(".reason", { hasText: "4 readings together" })).toContainText(/R \d+ % \(stands apart\), M \d+ %, M½ \d+ %, M \d+ %/);
  await thumb.press(say.finger.AGAIN_IN_A_WEEK);
  await expect(page.locator("#answer")).toContainText("On Today for Wed 2 Dec 2026.");
  await go(page, "#/today");
  await thumb.tap(line(page, "Tess").filter({ hasText: "Wed 2 Dec 2026" }).getByRole("link"));
  await expect(heading(page)).toHaveText("Tess: Finger");

  await thumb.tap(page.locator(".note").last().getByRole("button", { name: say.finger.LEAVE_OUT }));
  await expect(page.locator(".note").last()).toContainText("left out by you");
  await expect(page.locator("main")).toContainText("3 readings");
  // Another reading, and nobody waits any more.
  await read(page, "UK M");
  await go(page, "#/today");
  await expect(page.locator("main")).not.toContainText("Wed 2 Dec 2026");
});

test("an amount of one's own stands in the place of the rule's, and both are kept", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await read(page, "UK M");
  await chooseBand(page, id);
  await go(page, `#/tools/order?couple=${id}&who=first`);
  await expect(page.locator(".reason", { hasText: "Wider than the gauge" })).toContainText("+0.75");
  await expect(page.locator("main")).toContainText("1 mm wider: +0.25 mm");
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  await thumb.put(page.locator("#own-width"), "1.25");
  const width = page.locator(".reason", { hasText: "Wider than the gauge" });
  await expect(width).toContainText("+1.25");
  await expect(width).toContainText("worked out: +0.75 · yours");
  await thumb.press(/^Use N for Tess/);
  await expect(notice(page)).toContainText("Order size saved");
  const fields = await fieldsOf(page, id);
  expect(fields["order_size.first"].own).toEqual({ width: { used: 1.25, worked_out: 0.75 } });
});

test("a try-on band that fits is a reading with one tap; a worn ring stands for a gauge", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/tray/new");
  for (const [label, text] of [["Its number", "7"], ["Its size", "UK N"], ["Width", "4"]]) await thumb.write(page.getByLabel(label, { exact: true }), text);
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.tap(page.getByText("Try-on bands"));
  await thumb.press("7: N, 4 mm, flat inside");
  await expect(page.locator(".note")).toContainText("N, try-on band 7 4 mm flat inside");

  await page.locator("#gauge").selectOption("worn");
  await thumb.write(page.getByLabel(say.finger.WORN_WIDTH), "3");
  await thumb.choose(say.finger.SITS, "Spins");
  // Where it touches a stick follows its inside, until another place is chosen.
  const readAt = page.getByRole("group", { name: say.screens.READ_AT });
  await expect(readAt.getByLabel("At the lower edge")).toBeChecked();
  await thumb.choose(say.bench.order.GAUGE_BORE, "domed inside");
  await expect(readAt.getByLabel("At the middle")).toBeChecked();
  await thumb.choose(say.screens.READ_AT, "At the lower edge");
  await thumb.choose(say.bench.order.GAUGE_BORE, "flat inside");
  await thumb.choose(say.bench.order.GAUGE_BORE, "domed inside");
  await expect(readAt.getByLabel("At the lower edge")).toBeChecked();
  await thumb.choose(say.bench.order.GAUGE_BORE, "flat inside");
  await read(page, "UK O");
  await expect(page.locator(".note").last()).toContainText("O, ring they wear 3 mm flat inside, spins");
  const reading = Object.entries(await fieldsOf(page, id)).find(([key, value]) => key.startsWith("reading.") && value.sits)[1];
  expect(reading).toMatchObject({ sits: "spins", size: { typed: "UK O" } });
});

test("a try-on band that contradicts the readings is asked about before it counts", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/tray/new");
  for (const [label, text] of [["Its number", "9"], ["Its size", "UK R"], ["Width", "3"]]) await thumb.write(page.getByLabel(label, { exact: true }), text);
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await read(page, "UK M");
  await thumb.tap(page.getByText("Try-on bands"));
  await thumb.press("9: R, 3 mm, flat inside");
  await expect(page.locator(".caution")).toContainText("6.25 mm larger than the reading M of Wed 25 Nov 2026, more than two sizes");
  await expect(page.locator(".note")).toHaveCount(1);
  await thumb.press("9: R, 3 mm, flat inside");
  await expect(page.locator(".note")).toHaveCount(2);
});

test("of two sizes of one system the one that was chosen is kept, and is still meant later", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), "M+");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator("#size-error")).toContainText("Choose which of these sizes is meant");
  await thumb.choose(say.screens.READ_AS, "UK M½");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator(".note")).toContainText("M½, ");
  await go(page, `#/tools/order?couple=${id}&who=first&width=3&profile=flat`);
  await expect(page.locator(".reason", { hasText: "Reading" }).first()).toContainText("53.13");
});

test("an edge relief that was measured counts in the order size", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/order?size=UK%20M&gauge=other&gauge-width=3&width=5&profile=court&relief=0.1");
  const bore = page.locator(".reason", { hasText: "Domed bore gives room" });
  // 2 pi s / 3 of 0.1 mm is 0.209 mm, of which 0.8 count.
  await expect(bore).toContainText("−0.17");
  await expect(bore).toContainText("edge relief 0.1 mm in the band");
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  await page.locator("#profile-flat").tap();
  await expect(page.locator("#relief")).toHaveCount(0);
  await expect(page.locator(".reason", { hasText: "Bore like the gauge" })).toContainText("0.00");
});

test("a gauge is calibrated, and pointed out if it is off by more than a quarter size", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/gauges/new");
  await thumb.write(page.getByLabel(say.practice.GAUGE_NAME), "old rings");
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "3");
  await thumb.tap(page.getByText("Calibration"));
  await thumb.write(page.getByLabel("1: it says"), "UK M");
  await thumb.write(page.getByLabel("1: it is"), "52.9 mm");
  await expect(page.locator("main")).toContainText("On the average larger by 0.40 mm round the inside");
  await expect(page.locator(".caution")).toHaveText("Off by more than a quarter size: +0.40 mm at 52.5 mm round.");
  await thumb.press(say.screens.SAVE);
  const gauge = Object.entries(await practiceFields(page)).find(([key]) => key.startsWith("practice.gauge."))[1];
  expect(gauge.calibration).toEqual([{ says: 52.5, is: 52.9 }]);

  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await read(page, "UK M");
  await chooseBand(page, id);
  await go(page, `#/tools/order?couple=${id}&who=first`);
  await expect(page.locator(".reason", { hasText: "Gauge put right" })).toContainText("+0.40");
});

test("what fitted teaches the constants, which are used only if somebody says so", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  for (const name of ["Tess", "Una", "Wil"]) {
    const id = await meet(page, name);
    await go(page, `#/couple/${id}/finger/first`);
    await read(page, "UK M");
    await chooseBand(page, id);
    await go(page, `#/tools/order?couple=${id}&who=first`);
    await thumb.press(/^Use \S+ for /);
    await expect(notice(page)).toContainText("Order size saved");
    await go(page, `#/couple/${id}/finger/first`);
    await thumb.follow(/^What fitted/);
    await thumb.choose(say.finger.FITTED_HOW, say.finger.RESIZED);
    await thumb.put(page.getByLabel(say.finger.FITTED_SIZE), "UK N");
    await thumb.press(say.screens.SAVE);
    await expect(line(page, "What fitted")).toContainText("resized to UK N");
  }
  await go(page, "#/setup/fit");
  await expect(page.locator("main")).toContainText("From 3 bands that have been worn");
  await expect(page.locator("main")).toContainText(/Each band foretold without itself: off by 0\.\d\d mm; by the customary figures: 0\.50 mm/);
  expect(Object.keys(await practiceFields(page)).filter((key) => key.includes("constant"))).toEqual([]);
  await thumb.press(say.gauges.USE_LEARNED);
  await expect(notice(page)).toContainText("Your own constants are used from now on");
  expect((await practiceFields(page))["practice.constant.width"]).toBeGreaterThan(0.25);
});

test("the table of sizes prints on A4 and on A6", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/tools/table");
  await expect(page.getByRole("row", { name: /^M½ 53\.13 / })).toBeVisible();
  for (const [paper, width, height] of [["A4", 595, 842], ["A6", 298, 420]]) {
    await thumb.choose("Paper", paper);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const sizes = [...pdf.matchAll(/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map((found) => found.slice(1).map((it) => Math.round(Number(it))));
    expect(sizes.length, `${paper}: pages`).toBeGreaterThan(0);
    for (const size of sizes) expect(size, paper).toEqual([width, height]);
  }
});

test("what a chart says otherwise is said beside the size", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/size?q=UK%20B");
  await expect(page.locator("main")).toContainText("The encyclopaedia’s chart prints UK B as 39.1 mm, 0.35 mm larger than the rule. The rule stands.");
});
