// The stack on the finger: a ring recorded by hand, whether the band lies flush, pictures that say the same as the
// figures, and bands side by side of which one becomes the band.
import { expect, fieldsOf, go, hand, heading, line, meet, test } from "./hand.js";

test.describe.configure({ timeout: 180_000 });

/** A section of the answer under its heading. */
const part = (page, name) => page.locator(".section", { has: page.getByRole("heading", { name, exact: true }) });

/** A reason by words in it. */
const reason = (page, words) => page.locator(".reason", { hasText: words });

/** How long a dimension of a picture is, in millimetres: from what is drawn, by the scale that is written down. */
const drawn = (picture, dimension) =>
  picture.evaluate((picture, dimension) => {
    const svg = picture.querySelector(`svg:has(.${dimension})`);
    const line = svg.querySelector(`.${dimension} .span`).getBoundingClientRect();
    // A picture higher than its frame is drawn smaller than the frame is wide: the browser says by how much.
    const scale = svg.getScreenCTM().a;
    const unit = Number(svg.dataset.unit) * scale;
    // The stroke has a width of its own and round ends, which are no part of the dimension.
    const stroke = parseFloat(getComputedStyle(svg.querySelector(`.${dimension} .span`)).strokeWidth) * scale;
    const long = Math.max(line.width, line.height);
    return { loose: long / unit, tight: (long - stroke) / unit };
  }, dimension);

/** Whether a drawn dimension is the figure to a tenth of a millimetre, whether or not its ends count. */
async function near(picture, dimension, mm) {
  const { loose, tight } = await drawn(picture, dimension);
  expect(Math.min(Math.abs(loose - mm), Math.abs(tight - mm)), `${dimension}: ${tight} to ${loose}`).toBeLessThanOrEqual(0.1);
}

test("a ring with a head is recorded by hand, and the stack says how far it holds the band off", async ({ page, install }) => {
  await install();
  const id = await meet(page, "Wren");
  const thumb = hand(page);
  await go(page, `#/couple/${id}/rings/first/new`);
  const began = Date.now();
  await thumb.write(page.locator("#ring-name"), "engagement ring");
  for (const [key, words] of [["shoulder-width", "2.6"], ["top-width", "1.8"], ["height", "1.7"], ["head-tip", "0.8"], ["head-underside", "1.5"]]) await thumb.write(page.locator(`#${key}`), words);
  await page.locator("#metal").selectOption({ label: "platinum 950" });
  await thumb.press("Save");
  await expect(line(page, "engagement ring")).toContainText("2.6 mm");
  expect(Date.now() - began, "recorded in a minute").toBeLessThan(60_000);

  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.locator("#band-width"), "4");
  await thumb.write(page.locator("#height"), "1.8");
  await thumb.tap(page.locator("#profile-d"));
  await thumb.write(page.locator("#dome"), "0.5");
  await near(page.locator("figure").first(), "dim-height", 1.8);
  await page.locator("#metal").selectOption({ label: "22 ct yellow gold" });
  await thumb.press("Save");
  await expect(heading(page)).not.toContainText("Band");

  await go(page, `#/bench/stack?couple=${id}&who=first&place=after`);
  // With the usual clearance of 0.2 mm the head counts from 1.3 mm up, where the side of the band is straight: 0.8.
  const flush = part(page, "Flush or not");
  await expect(flush.locator(".reason").first()).toContainText("0.8 mm at the top, 0.4 mm at the shoulders, nothing at the palm");
  await expect(reason(page, "A shaped band").first()).toContainText("With a bay 1 mm deep");
  await near(flush, "dim-gap", 0.8);
  await near(flush, "dim-underside", 1.5);
  await expect(flush.locator("svg")).toHaveAttribute("aria-label", /0\.8 mm further on, band/);
  await expect(part(page, "Match")).toContainText("Matched to the top instead, a band would be 1.8 mm wide and 0.8 mm narrower");
  await expect(part(page, "Wear")).toContainText("The band is likely to lose metal: the engagement ring is harder · common practice");
  await near(part(page, "Cut through"), "dim-dome", 0.5);

  // Noted, and the band keeps its place.
  await thumb.press("Note this stack for Wren");
  await expect(heading(page)).toHaveText("Wren");
  expect((await fieldsOf(page, id))["band.first.place"]).toBe(1);
});

test("bands side by side: one of them becomes the band", async ({ page, install }) => {
  await install();
  const id = await meet(page, "Wren");
  const thumb = hand(page);
  await go(page, `#/couple/${id}/band/first`);
  await thumb.follow("Compare bands");
  await expect(heading(page)).toHaveText("Compare bands");
  await thumb.write(page.locator("#band1-width"), "2.5");
  await thumb.write(page.locator("#band2-width"), "4");
  await thumb.write(page.locator("#band2-height"), "1.5");
  await thumb.tap(page.locator("#band2-profile-flat"));
  await page.locator("#band2-metal").selectOption({ label: "titanium" });
  const second = page.locator(".alternative").nth(1);
  await expect(second).toContainText("4 mm flat, titanium");
  await expect(second).toContainText("Stack 4 mm, roomy");
  await expect(second).toContainText("This metal cannot be resized, or hardly.");
  await near(second, "dim-width", 4);
  await thumb.tap(second.getByRole("button", { name: "Make this the band" }));
  await expect(heading(page)).toHaveText("Wren");
  const fields = await fieldsOf(page, id);
  expect([fields["band.first.width"], fields["band.first.height"], fields["band.first.profile"], fields["band.first.metal"]]).toEqual([4, 1.5, "flat", "titanium"]);
});

test("what cannot be is said in a sentence", async ({ page, install }) => {
  await install();
  const rings = [1, 2, 3, 4, 5, 6, 7].map((n) => `ring${n}-width=1`).join("&");
  for (const [asked, said] of [
    ["band=16&free=15", "A ring must be narrower than the finger is free: 16 mm is more than 15 mm."],
    ["band=4&ring1-width=2&ring1-web=-1&ring1-under=1.5", "A reach over the side must be between 0 and 10 mm, like 0.8."],
    ["band=4&band-height=0", "A height must be between 0.5 and 8 mm, like 1.8."],
    ["band=4&band-height=1.8&band-profile=d&band-dome=2", "The dome must be lower than the band: 2 mm is not below 1.8 mm."],
    ["band=4&band-height=1.8&band-profile=court&band-dome=1.5&band-relief=0.3", "Dome and edge relief must leave an edge: 1.5 and 0.3 mm leave none of 1.8 mm of height."],
  ]) {
    await go(page, `#/bench/stack?${asked}`);
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    await expect(page.getByText(said, { exact: true }), asked).toBeVisible();
  }
  await go(page, `#/bench/stack?band=1&${rings}`);
  await expect(page.locator("#stack-answer")).toContainText("9.4");

  // Nine rings of one couple, and one that is on no finger.
  const id = await meet(page, "Wren");
  for (let n = 1; n <= 8; n += 1) {
    await go(page, `#/couple/${id}/rings/first/new`);
    await page.locator("#shoulder-width").fill("1");
    await hand(page).press("Save");
    await expect(heading(page)).not.toContainText("Ring");
  }
  await go(page, `#/bench/stack?couple=${id}&who=first&band=2`);
  await expect(page.getByText("Enter at most 7 rings.")).toBeVisible();
});
