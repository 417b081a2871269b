// The stack on the finger: a ring recorded by hand, whether the band lies flush, pictures that say the same as the
// figures, and bands side by side of which one becomes the band.
import { axe, overflow } from "./checks.js";
import { expect, fieldsOf, go, hand, heading, line, meet, notice, test } from "./hand.js";
import { say } from "./say.js";

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

test("a ring with a head is recorded by hand, and the stack says how far it holds the band off", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Wren");
  const thumb = hand(page);
  await go(page, `#/couple/${id}/rings/first/new`);
  const began = Date.now();
  await thumb.write(page.locator("#ring-name"), "engagement ring");
  for (const [key, words] of [["shoulder-width", "2.6"], ["top-width", "1.8"], ["height", "1.7"], ["head-tip", "0.8"], ["head-underside", "1.5"]]) await thumb.write(page.locator(`#${key}`), words);
  await page.locator("#metal").selectOption({ label: "platinum 950" });
  await thumb.press(say.screens.SAVE);
  await expect(line(page, "engagement ring")).toContainText("2.6 mm");
  expect(Date.now() - began, "recorded in a minute").toBeLessThan(60_000);

  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.locator("#band-width"), "4");
  await thumb.write(page.locator("#height"), "1.8");
  await thumb.tap(page.locator("#profile-d"));
  await thumb.write(page.locator("#dome"), "0.5");
  await near(page.locator("figure").first(), "dim-height", 1.8);
  await page.locator("#metal").selectOption({ label: "18 ct white gold with nickel" });
  await expect(page.locator(".caution", { hasText: "There is nickel in this metal" })).toBeVisible();
  await page.locator("#metal").selectOption({ label: "22 ct yellow gold" });
  await expect(page.locator(".caution", { hasText: "There is nickel in this metal" })).toHaveCount(0);
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).not.toContainText("Band");

  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  // With the usual clearance of 0.2 mm the head counts from 1.3 mm up, where the side of the band is straight: 0.8.
  const flush = part(page, "Flush or not");
  await expect(flush.locator(".reason").first()).toContainText("0.8 mm at the top, 0.4 mm at the shoulders, nothing at the palm");
  await expect(reason(page, "A shaped band").first()).toContainText("With a bay 1 mm deep");
  await near(flush, "dim-gap", 0.8);
  await near(flush, "dim-underside", 1.5);
  await expect(flush.locator("svg")).toHaveAttribute("aria-label", /0\.8 mm further on, band/);
  await expect(part(page, "Match")).toContainText("Matched to the top instead, a band would be 1.8 mm wide and 0.8 mm narrower");
  await expect(part(page, "Wear")).toContainText("The band is likely to lose metal: the engagement ring is harder · from memory");
  await near(part(page, "Cut through"), "dim-dome", 0.5);

  // Noted, and the band keeps its place.
  await thumb.press("Note this stack for Wren");
  await expect(notice(page)).toContainText("Stack saved");
  await expect(heading(page), "what is to be done about the head comes next").toHaveText("Wren: Beside the head");
  expect((await fieldsOf(page, id))["band.first.place"]).toBe(1);
});

test("bands side by side: one of them becomes the band", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Wren");
  const thumb = hand(page);
  await go(page, `#/couple/${id}/band/first`);
  await thumb.follow(say.bench.compare.COMPARE);
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
  await thumb.tap(second.getByRole("button", { name: say.bench.compare.MAKE_THIS }));
  await expect(heading(page)).toHaveText("Wren");
  const fields = await fieldsOf(page, id);
  expect([fields["band.first.width"], fields["band.first.height"], fields["band.first.profile"], fields["band.first.metal"]]).toEqual([4, 1.5, "flat", "titanium"]);
});

test("what cannot be is said in a sentence", async ({ page, start }) => {
  await start();
  const rings = [1, 2, 3, 4, 5, 6, 7].map((n) => `ring${n}-width=1`).join("&");
  for (const [asked, said] of [
    ["band=16&free=15", "A ring must be narrower than the finger is free: 16 mm is more than 15 mm."],
    ["band=4&ring1-width=2&ring1-web=-1&ring1-under=1.5", "A reach over the side must be between 0 and 10 mm, like 0.8."],
    ["band=4&band-height=0", "A height must be between 0.5 and 8 mm, like 1.8."],
    ["band=4&band-height=1.8&band-profile=d&band-dome=2", "The dome must be lower than the band: 2 mm is not below 1.8 mm."],
    ["band=4&band-height=1.8&band-profile=court&band-dome=1.5&band-relief=0.3", "Dome and edge relief must leave an edge: 1.5 and 0.3 mm leave none of 1.8 mm of height."],
  ]) {
    await go(page, `#/tools/stack?${asked}`);
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    await expect(page.getByText(said, { exact: true }), asked).toBeVisible();
  }
  await go(page, `#/tools/stack?band=1&${rings}`);
  await expect(page.locator("#stack-answer")).toContainText("9.4");

  // Nine rings of one couple, and one that is on no finger.
  const id = await meet(page, "Wren");
  for (let n = 1; n <= 8; n += 1) {
    await go(page, `#/couple/${id}/rings/first/new`);
    await page.locator("#shoulder-width").fill("1");
    await hand(page).press(say.screens.SAVE);
    await expect(heading(page)).not.toContainText("Ring");
  }
  await go(page, `#/tools/stack?couple=${id}&who=first&band=2`);
  await expect(page.getByText("8 rings are recorded for this finger, and 7 are counted beside the band. Not counted: a ring, 1 mm. So the stack cannot be noted.")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Note this stack/ }), "what leaves a ring out is not noted").toHaveCount(0);
  await expect(page.getByRole("link", { name: say.bench.stacking.SEE_RINGS })).toBeVisible();
  // More than five have numbers beside them and a key below.
  await expect(page.locator("figure.picture svg").first()).toContainText("second ring");
});

/** Saves a form, and waits until it is left: leaving goes back, which must not meet with going elsewhere. */
async function save(page) {
  const title = await heading(page).textContent();
  await hand(page).press(say.screens.SAVE);
  await expect(heading(page)).not.toHaveText(title);
}

/** A couple that marries, with a ring whose head reaches over the band beside it. */
async function withHead(page) {
  const id = await meet(page, "Wren", { wedding: "22 May 2027" });
  const thumb = hand(page);
  await go(page, `#/couple/${id}/rings/first/new`);
  for (const [key, words] of [["ring-name", "my gran's ring"], ["shoulder-width", "2.6"], ["top-width", "1.8"], ["height", "1.7"], ["head-tip", "0.8"], ["head-underside", "1.5"]]) await thumb.write(page.locator(`#${key}`), words);
  await thumb.tap(page.locator("#profile-court"));
  await save(page);
  await go(page, `#/couple/${id}/band/first`);
  for (const [key, words] of [["band-width", "4"], ["height", "1.8"]]) await thumb.write(page.locator(`#${key}`), words);
  await thumb.tap(page.locator("#profile-d"));
  await save(page);
  return id;
}

test("what is chosen beside a head is recorded, and Today says when the ring goes and when it is due", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  const thumb = hand(page);
  await go(page, `#/couple/${id}`);
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  // The head holds the band off: what to do about it is asked next.
  await thumb.press("Note this stack for Wren");
  await expect(heading(page)).toHaveText("Wren: Beside the head");
  await expect(reason(page, "A shaped band").first()).toContainText("With a bay 1 mm deep");
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Wren: stack")).toContainText("a head holds the band off: choose what to do about it");
  await thumb.tap(line(page, "Wren: beside the head").getByRole("link"));

  await thumb.tap(page.locator("#remedy-shaped"));
  await expect(page.locator("#bay"), "as it was worked out").toHaveValue("1");
  await save(page);
  await expect(line(page, "Wren: stack")).toContainText("say what the bench gets to shape the band by");
  await thumb.tap(line(page, "Wren: beside the head").getByRole("link"));
  await thumb.tap(page.locator("#impression"));
  await thumb.tap(page.locator("#ring-itself"));
  expect(await axe(page)).toEqual([]);
  await thumb.write(page.locator("#away-from"), "2 December 2026");
  await thumb.write(page.locator("#away-to"), "22 May 2027");
  const clash = page.getByText("The ring is at the bench when the wedding is.");
  await expect(clash).toBeVisible();
  await thumb.put(page.locator("#away-to"), "1 December 2026");
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#away-to-error")).toHaveText("Enter a day that is not before the day it goes to the bench.");
  await thumb.put(page.locator("#away-to"), "18 December 2026");
  await expect(clash).toHaveCount(0);
  await thumb.write(page.locator("#ring-back"), "20 November 2026");
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#ring-back-error")).toHaveText("Enter the day it was handed over first.");
  await thumb.put(page.locator("#ring-back"), "");
  await save(page);
  await expect(notice(page)).toContainText("Beside the head saved");
  await expect(line(page, "Wren: beside the head")).toContainText("shaped");
  expect((await fieldsOf(page, id))["remedy.first"]).toMatchObject({ way: "shaped", by: 1, impression: true, template: false, away: { from: "2026-12-02", to: "2026-12-18" } });

  await go(page, "#/today");
  await expect(line(page, "ring goes to the bench Wed 2 Dec 2026")).toContainText("in 7 days");
  await thumb.tap(line(page, "ring goes to the bench").getByRole("link"));
  await thumb.write(page.locator("#ring-gone"), "20 November 2026");
  await save(page);
  await go(page, "#/today");
  await expect(line(page, "ring back from the bench Fri 18 Dec 2026"), "more than a fortnight ahead").toHaveCount(0);
  await go(page, `#/couple/${id}/remedy/first`);
  await thumb.put(page.locator("#away-to"), "24 November 2026");
  // It was planned for later than it went: the plan is put right as well.
  await thumb.put(page.locator("#away-from"), "20 November 2026");
  await save(page);
  await go(page, "#/today");
  await expect(line(page, "ring back from the bench Tue 24 Nov 2026")).toContainText("yesterday");

  await go(page, `#/couple/${id}/specification`);
  await expect(page.locator("pre")).toContainText("Beside the head: shaped, with a bay 1 mm deep");
  await expect(page.locator("pre")).toContainText("To shape it by: an impression of the rings as worn, my gran's ring from Fri 20 Nov 2026, back on Tue 24 Nov 2026");
  await go(page, `#/couple/${id}/read-back`);
  await expect(line(page, "Wren: stack")).toContainText("shaped, with a bay 1 mm deep; the bench gets");

  // A ring that is at the bench is not lost sight of by another choice.
  await go(page, `#/couple/${id}/remedy/first`);
  await thumb.tap(page.locator("#remedy-lower"));
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#ring-back-error")).toContainText("Enter the day it came back");
  await thumb.write(page.locator("#ring-back"), "25 November 2026");
  await save(page);
  await expect(notice(page)).toContainText("Beside the head saved");
  const fields = await fieldsOf(page, id);
  expect(fields["remedy.first"].way).toBe("lower");
  expect(fields["band.first.height"], "the band is as low as was chosen").toBe(fields["remedy.first"].by);
});

test("the bay of a shaped band counts at the top, and rings on the other hand against their own finger", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  const thumb = hand(page);
  await go(page, `#/couple/${id}/rings/first/new`);
  await thumb.write(page.locator("#shoulder-width"), "3.2");
  await thumb.tap(page.locator("#hand-right"));
  await page.locator("#digit").selectOption("middle");
  await save(page);
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after&band-bay=1`);
  // 2.6 + 0.2 + 4, and 1 mm of bay.
  await expect(reason(page, "Worn now, with the band")).toContainText("6.8");
  await expect(reason(page, "With the bay, at the top")).toContainText("Roomy: 7.8 of 24 mm");
  const there = reason(page, "Right middle finger, now");
  await expect(there).toContainText("3.2 of 24 mm");
  await thumb.tap(page.locator("#figures summary").first());
  await thumb.write(page.locator("#free-right-middle"), "wide");
  await expect(page.locator("#free-right-middle-error")).toHaveText("Enter a free length of finger in figures, between 10 and 45 mm, like 24.");
  await thumb.put(page.locator("#free-right-middle"), "20");
  await expect(there).toContainText("3.2 of 20 mm");
  await expect(reason(page, "Right middle finger, left")).toContainText("16.8");
  await thumb.press("Note this stack for Wren");
  await expect(notice(page)).toContainText("Stack saved");
  const fields = await fieldsOf(page, id);
  expect([fields["free_length.first.right.middle"], fields["free_length.first"], fields["stack.first"].off]).toEqual([20, undefined, 0.8]);
  await go(page, `#/tools/stack?couple=${id}&who=first`);
  await expect(there, "and it is still known").toContainText("3.2 of 20 mm");
});

test("with text at twice its size the words of a picture are as large, and keys move it", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  const height = () => page.locator("figure.picture svg text").evaluateAll((all) => Math.min(...all.map((text) => parseFloat(getComputedStyle(text).fontSize) * text.ownerSVGElement.getScreenCTM().a)));
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  const usual = await height();
  await expect(page.locator("figure.picture[tabindex]"), "nothing to move").toHaveCount(0);
  await go(page, "#/tools");
  await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  expect(await height()).toBeGreaterThan(usual * 1.7);
  expect(await overflow(page)).toBe(0);
  expect(await axe(page)).toEqual([]);
  const figure = page.locator("figure.picture").first();
  await figure.focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => figure.evaluate((it) => it.scrollLeft)).toBeGreaterThan(0);
});

for (const [paper, wide, high] of [["A4", 703, 1032], ["A5", 468, 703]])
  test(`on ${paper} every picture keeps its scale and nothing of it is cut off`, async ({ page, start }) => {
    await start();
    const id = await withHead(page);
    // The sheet less its margins of 12 mm, at 96 px to the inch.
    await page.setViewportSize({ width: wide, height: high });
    await page.emulateMedia({ media: "print" });
    for (const [address, least] of [
      [`#/tools/stack?couple=${id}&who=first&place=after&ring2-width=2.4&ring2-when=later`, 5],
      [`#/tools/compare?couple=${id}&who=first&band2-width=6&band2-height=2&band2-profile=flat`, 2],
    ]) {
      await go(page, address);
      await expect(page.locator("figure.picture svg").nth(least - 1)).toBeVisible();
      const measured = await page.locator("figure.picture svg").evaluateAll((all) =>
        all.map((svg) => {
          const { a, b, d } = svg.getScreenCTM();
          const box = svg.getBoundingClientRect();
          const out = [...svg.querySelectorAll("text, path, line, rect, circle")].filter((part) => {
            const at = part.getBoundingClientRect();
            return at.width + at.height > 0 && !part.closest(".finger") && (at.left < box.left - 2 || at.right > box.right + 2 || at.top < box.top - 2 || at.bottom > box.bottom + 2);
          });
          const frame = svg.parentElement.getBoundingClientRect();
          return { of: svg.getAttribute("class"), stretched: Math.abs(a - d) + Math.abs(b), left: box.left, right: box.right, high: box.height, hidden: Math.max(0, box.width - frame.width) + Math.max(0, box.height - frame.height - 1), out: out.map((part) => part.outerHTML) };
        }),
      );
      for (const it of measured) {
        expect.soft(it.stretched, `${it.of}: both ways alike`).toBeLessThan(0.001);
        expect.soft(it.left, `${it.of}: on the sheet`).toBeGreaterThanOrEqual(0);
        expect.soft(it.right, `${it.of}: on the sheet`).toBeLessThanOrEqual(wide);
        expect.soft(it.high, `${it.of}: on one sheet`).toBeLessThanOrEqual(high);
        expect.soft(it.hidden, `${it.of}: its frame hides nothing`).toBeLessThan(1);
        expect.soft(it.out, `${it.of}: nothing stands out of it`).toEqual([]);
      }
      await expect(page.locator("button:visible, .places:visible")).toHaveCount(0);
    }
    await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
    await near(part(page, "Flush or not"), "dim-gap", 0.8);
    await near(part(page, "Cut through"), "dim-height", 1.7);
    await near(part(page, "Match"), "dim-width", 1.8);
    // On the sheet as well: the browser's own PDF has a page for all of it, and none is empty.
    const pdf = (await page.pdf({ format: paper, preferCSSPageSize: false })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g).length).toBeGreaterThan(1);
  });
