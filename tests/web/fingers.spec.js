// Which finger the band is for, what counts of what was read, and what the joint was tried in.
import { expect, fieldsOf, go, hand, heading, line, meet, notice, test } from "./hand.js";
import { say } from "./say.js";

test("a reading of another finger moves the band only if somebody says so", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Cleo");
  const notes = page.locator(".note");
  const read = async (size, count) => {
    await thumb.put(page.getByLabel(say.screens.READ_SIZE), size);
    await thumb.press(say.screens.ADD_READING);
    await expect(notes).toHaveCount(count);
  };
  await go(page, `#/couple/${id}/finger/first`);
  await read("UK M", 1);
  await thumb.choose("Measured at", say.bench.order.JOINT);
  await read("UK P", 2);
  await expect(page.locator("main")).toContainText("Joint: passes at 56.25 mm, near UK P, as read in 3 mm.");

  // To compare: asked, and nothing is saved before it is said.
  await thumb.choose(say.screens.HAND, "right");
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), "UK O");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator("#moves-error")).toHaveText("Say first which finger the band is for.");
  await expect(notes).toHaveCount(2);
  await thumb.choose("Is the band for the right ring finger now?", "No, for the left ring finger: this is to compare");
  await thumb.press(say.screens.ADD_READING);
  await expect(notes).toHaveCount(3);
  await expect(notes.last()).toContainText("right ring finger, base");
  await expect(notes.last()).toContainText("not the band’s finger: does not count");
  expect((await fieldsOf(page, id))["finger.first"]).toEqual({ hand: "left", digit: "ring" });
  // The form is back at the band's finger.
  await expect(page.getByRole("group", { name: say.screens.HAND }).getByLabel("left")).toBeChecked();
  await expect(page.getByText("Is the band for")).toHaveCount(0);
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Cleo: finger")).toContainText("M, joint P");

  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "8");
  await thumb.choose(say.screens.PROFILE, "flat");
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Cleo");
  await go(page, `#/tools/order?couple=${id}&who=first`);
  await expect(page.locator("#answer")).toContainText("Try the joint again in 8 mm: it was tried in 3 mm");
  const joint = page.locator(".reason", { hasText: "To pass the joint" });
  await expect(joint).toContainText("the joint passes at 56.25 mm in a gauge of 3 mm · rule published, amount as read");

  // And the band may move.
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.press("The band is for the right ring finger");
  await expect(notice(page)).toContainText("Finger saved");
  await expect(notes.first()).toContainText("not the band’s finger: does not count");
  expect((await fieldsOf(page, id))["finger.first"]).toEqual({ hand: "right", digit: "ring" });
});

test("two rings or one: it is asked, and what was understood stands under the field", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/tools/order?size=UK%20M&gauge=other&gauge-width=3&width=5&profile=flat");
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  await thumb.put(page.locator("#neighbours"), "2,2");
  await expect(page.locator("#neighbours-error")).toHaveText("One ring of 2.2 mm, or two of 2 mm: write 2.2, or 2 and 2.");
  await thumb.put(page.locator("#neighbours"), "2 and 2");
  await expect(page.locator("#neighbours-hint")).toHaveText("2 rings: 2 and 2 mm.");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), "UK M");
  await thumb.put(page.locator("#beside"), "2,6");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator("#beside-error")).toContainText("One ring of 2.6 mm, or two");
  await thumb.put(page.locator("#beside"), "2.6");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator(".note")).toContainText("M, narrow rings 3 mm flat inside, beside 2.6 mm, normal hands");
});

test("a domed ring on a stick is read where it touches, unless somebody says otherwise", async ({ page, start }) => {
  await start();
  const shift = page.locator(".reason", { hasText: "Read at the lower edge of the ring" });
  await go(page, "#/tools/order?size=UK%20M&gauge=other&gauge-kind=stick&gauge-width=6&gauge-bore=domed&width=6&profile=court");
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  const place = page.getByRole("group", { name: say.bench.order.READ_AT });
  await expect(place.getByLabel("At the middle")).toBeChecked();
  await expect(page.locator("#order-size")).toContainText("M");
  await expect(shift).toHaveCount(0);
  await hand(page).choose(say.bench.order.READ_AT, "At the lower edge");
  await expect(shift).toContainText("0.66");
});

test("where numbers come first a bare one is read so, in sight of the others", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/sizes");
  await thumb.choose(say.practice.FIRST_SYSTEM, "US numbers");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), "7");
  const which = page.getByRole("group", { name: say.screens.READ_AS });
  await expect(which.getByLabel("US 7")).toBeChecked();
  await expect(which.getByRole("radio")).toHaveCount(3);
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator(".note")).toContainText("7, ");
  const reading = Object.entries(await fieldsOf(page, id)).find(([key]) => key.startsWith("reading."))[1];
  expect(reading.size.size).toEqual({ system: "us", quarters: 28 });
  // And in a calibration, where nothing could be chosen before.
  await go(page, "#/setup/gauges/new");
  await thumb.tap(page.getByText("Calibration"));
  await thumb.write(page.getByLabel("1: it says"), "7");
  await expect(page.getByRole("group", { name: "1: it says" }).getByLabel("US 7")).toBeChecked();
});

test("the nearest size is the nearest that there is, and no size stands beyond a scale", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/size?q=UK%20M");
  await expect(page.locator(".bench-table .reason", { hasText: "US numbers" })).toContainText("6¼");
  await expect(page.locator(".bench-table .reason", { hasText: "US numbers" })).toContainText("0.01 mm looser");
  await go(page, "#/tools/table");
  await expect(page.getByRole("row", { name: /^A 37\.50 / })).toContainText("–");
  await expect(page.locator("main")).toContainText("Published charts differ from these rules");
  await go(page, "#/tools/order?size=38%20mm%20round&gauge=other&gauge-width=3&width=3&profile=flat");
  await expect(page.locator("#order-size")).toContainText("A½");
  await go(page, "#/tools/order?size=36%20mm%20round&gauge=other&gauge-width=3&width=3&profile=flat");
  await expect(page.locator("#order-size")).toContainText("36.00 mm");
  await expect(page.locator("#order-size")).not.toContainText("8 in 10");
  await expect(page.locator("#answer")).toContainText("The scale ends at A: 36.00 mm inside has no size on it.");
});

test("a joint that decides is no certainty", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/order?size=UK%20N&gauge=other&gauge-width=3&width=3&profile=flat&joint=UK%20P");
  await expect(page.locator("#order-size")).toContainText(/at least 56\.25 mm \(the joint\); the base alone wants 5\d\.\d to 5\d\.\d/);
  await expect(page.locator("#answer")).not.toContainText("8 in 10");
  await expect(page.locator("main")).toContainText("1 mm wider: the joint decides, and has to be tried in that width.");
  await go(page, "#/tools/order?size=UK%20N&gauge=other&gauge-width=3&width=6&profile=flat&own-width=0.2");
  await expect(page.locator("main")).toContainText("1 mm wider: your amount for the width stands.");
});

test("several readings are summed up as several, and the practice's own gauge is named", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/gauges/new");
  await thumb.write(page.getByLabel(say.practice.GAUGE_NAME), "narrow ones");
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "3");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, "#/setup/gauges/new");
  await thumb.write(page.getByLabel(say.practice.GAUGE_NAME), "wide rings");
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "6");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("wide rings saved");
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await page.locator("#gauge").selectOption({ label: "narrow ones, 3 mm, flat inside" });
  for (const [n, size] of [[1, "UK M"], [2, "UK M½"]]) {
    await thumb.put(page.getByLabel(say.screens.READ_SIZE), size);
    await thumb.press(say.screens.ADD_READING);
    await expect(page.locator(".note")).toHaveCount(n);
    await page.locator("#gauge").selectOption({ label: "narrow ones, 3 mm, flat inside" });
  }
  await go(page, `#/tools/order?couple=${id}&who=first&width=8&profile=flat`);
  await expect(page.locator("#figures")).toContainText("From 2 readings");
  await expect(page.locator("#answer")).toContainText("Yours that comes nearest: wide rings, 6 mm.");
});

test("a screen is not calibrated by a press alone", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/screen-gauge");
  await hand(page).press(say.bench.gauging.IT_FITS);
  await expect(notice(page)).toContainText("Match the picture with what lies on the glass first");
  await expect(page.locator(".glass .patch")).toBeVisible();
});

test("what fitted is asked once the bands are collected", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const id = await meet(page, "Tess");
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.put(page.getByLabel(say.screens.READ_SIZE), "UK M");
  await thumb.press(say.screens.ADD_READING);
  await expect(page.locator(".note")).toHaveCount(1);
  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.getByLabel(say.screens.BAND_WIDTH, { exact: true }), "3");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("Band saved");
  await go(page, `#/tools/order?couple=${id}&who=first`);
  await expect(page.locator("main")).toContainText("The profile of Tess’s band is not chosen yet: counted as court until it is.");
  await thumb.press(/^Use \S+ for /);
  await expect(notice(page)).toContainText("Order size saved");
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Tess: order size")).toContainText("Done:");
  await expect(line(page, "Tess: what fitted")).toHaveCount(0);
  await go(page, `#/couple/${id}/stage`);
  await thumb.choose(say.screens.STAGE, "collected");
  await thumb.put(page.locator("#since"), "1/10/2026");
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).not.toContainText("Stage");
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Tess: what fitted")).toHaveCount(1);
  await go(page, "#/today");
  await expect(page.getByRole("heading", { name: say.finger.FITTED })).toBeVisible();
  await thumb.tap(line(page, "Tess").filter({ hasText: "29 Oct 2026" }).getByRole("link"));
  await thumb.put(page.getByLabel(say.finger.FITTED_SIZE), "UK M");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("What fitted saved");
  await go(page, "#/today");
  await expect(page.getByRole("heading", { name: say.finger.FITTED })).toHaveCount(0);
});
