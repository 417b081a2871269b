// A band beside a head: what is said of ways out, what becomes of the one that is chosen, and what is asked where a head
// is not written down.
import { overflow } from "./checks.js";
import { expect, fieldsOf, go, hand, heading, line, meet, notice, test } from "./hand.js";
import { say } from "./say.js";

test.describe.configure({ timeout: 180_000 });

const part = (page, name) => page.locator(".section", { has: page.getByRole("heading", { name, exact: true }) });
const reason = (page, words) => page.locator(".reason", { hasText: words });

/** Saves a form, and waits until it is left. */
async function save(page) {
  const title = await heading(page).textContent();
  await hand(page).press(say.screens.SAVE);
  await expect(heading(page)).not.toHaveText(title);
}

/** A couple with a ring whose head reaches over the band beside it, and a band of 6 × 1.8 mm, domed outside. */
async function withHead(page, { dome } = {}) {
  const id = await meet(page, "Wren");
  const thumb = hand(page);
  await go(page, `#/couple/${id}/rings/first/new`);
  for (const [key, words] of [["ring-name", "engagement ring"], ["shoulder-width", "2.6"], ["height", "1.7"], ["head-tip", "0.8"], ["head-underside", "1.5"]]) await thumb.write(page.locator(`#${key}`), words);
  await save(page);
  await go(page, `#/couple/${id}/band/first`);
  for (const [key, words] of [["band-width", "6"], ["height", "1.8"]]) await thumb.write(page.locator(`#${key}`), words);
  await thumb.tap(page.locator("#profile-d"));
  await expect(page.locator("#dome-hint")).toContainText("at most two fifths of the height");
  if (dome) await thumb.write(page.locator("#dome"), dome);
  await save(page);
  return id;
}

test("bands side by side keep the dome that was chosen, and say where it is the usual one", async ({ page, start }) => {
  await start();
  const id = await withHead(page, { dome: "0.3" });
  const thumb = hand(page);
  await go(page, `#/tools/compare?couple=${id}&who=first`);
  const cards = page.locator(".alternative");
  await expect(cards.first()).toContainText("Dome 0.3 mm");
  await expect(cards.first(), "only what is missing is named").toContainText("Order size: a reading is needed.");
  await thumb.press(say.bench.compare.ANOTHER);
  await expect(page.locator("#band2-width")).toHaveValue("6");
  await expect(page.locator("#band2-height")).toHaveValue("1.8");
  await thumb.put(page.locator("#band2-width"), "5");
  await expect(cards.nth(1)).toContainText("Usual dome 0.62 mm");
  await page.locator("#band1-metal").selectOption({ label: "platinum 950" });
  await thumb.press("See the 2 bands");
  await expect(page.locator("#answer")).toBeInViewport();
  await page.getByRole("button", { name: say.showing.SHOW }).tap();
  await expect(page.locator("main.show")).toContainText("Dome 0.3 mm");
  await expect(page.locator("main.show"), "what is missing is for the jeweller").not.toContainText("is needed");
  await page.getByRole("button", { name: say.showing.FINISH }).tap();
  await page.getByRole("button", { name: say.showing.FINISH_NOW }).tap();
  await expect(page.locator("main.show")).toHaveCount(0);
  // The way back to the book takes the browser a moment.
  await expect.poll(() => page.evaluate(() => history.state)).toBe(null);
  await thumb.tap(cards.first().getByRole("button", { name: say.bench.compare.MAKE_THIS }));
  await expect(notice(page)).toContainText("Band saved");
  await expect(heading(page)).toHaveText("Wren");
  const fields = await fieldsOf(page, id);
  expect([fields["band.first.dome"], fields["band.first.metal"]]).toEqual([0.3, "platinum-950"]);
});

test("the thinner band that is offered clears the head once it is saved", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  const thumb = hand(page);
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  await expect(reason(page, "Engagement ring and band").first()).toContainText("derived; the clearance under the head and the usual dome are common practice");
  await thumb.press("Note this stack for Wren");
  await expect(heading(page)).toHaveText("Wren: Beside the head");
  await thumb.tap(page.locator("#remedy-lower"));
  const low = await page.locator("#most-high").inputValue();
  expect(low).toBe("1.67");
  await save(page);
  await expect(notice(page)).toContainText("Beside the head saved");
  const fields = await fieldsOf(page, id);
  expect([fields["band.first.height"], fields["band.first.dome"]]).toEqual([1.67, 0.72]);
  await go(page, `#/tools/stack?couple=${id}&who=first`);
  await expect(part(page, "Flush or not")).toContainText("The engagement ring and the band lie flush");
  await expect(page.getByRole("heading", { name: say.bench.stacking.FLUSH })).toBeVisible();
  await expect(reason(page, "A thinner band")).toHaveCount(0);
  // Noted again: what was chosen rests on the band as it is now, and nothing is asked once more.
  await thumb.press("Note this stack for Wren");
  await expect(notice(page)).toContainText("Stack saved");
  await expect(line(page, "Wren: stack")).not.toContainText("changed");
  // Another ring under the same choice: its own sentence, which leads to where it was chosen.
  await go(page, `#/couple/${id}`);
  await thumb.tap(line(page, "Wren: rings").getByRole("link"));
  await thumb.tap(line(page, "engagement ring").getByRole("link"));
  await thumb.put(page.locator("#head-tip"), "1.2");
  await save(page);
  await go(page, `#/tools/stack?couple=${id}&who=first`);
  await thumb.press("Note this stack for Wren");
  await expect(notice(page)).toContainText("Stack saved");
  await expect(line(page, "Wren: stack")).toContainText("look again at what is chosen beside the head");
  await thumb.tap(line(page, "Wren: stack").getByRole("link"));
  await expect(heading(page)).toHaveText("Wren: Beside the head");
});

test("with the bay that is chosen the stack says flush, draws it, and counts it at the top", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  const thumb = hand(page);
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after`);
  await expect(page.locator("#stack-answer")).toContainText("8.8");
  await expect(reason(page, "With the gap, at the top"), "2.6 + 0.2 + 6, and the gap").toContainText("Full: 9.");
  await thumb.press("Note this stack for Wren");
  await expect(heading(page)).toHaveText("Wren: Beside the head");
  await thumb.tap(page.locator("#remedy-shaped"));
  const bay = await page.locator("#bay").inputValue();
  await thumb.tap(page.locator("#template"));
  await save(page);
  await expect(notice(page)).toContainText("Beside the head saved");
  await go(page, `#/tools/stack?couple=${id}&who=first`);
  const top = String(Math.round((8.8 + Number(bay)) * 100) / 100);
  await expect(page.locator("#stack-answer")).toContainText(top);
  await expect(page.locator("#stack-answer")).toContainText("at the top, with the bay");
  await expect(page.locator("#stack-answer")).toContainText("8.8 mm at the palm");
  const flush = part(page, "Flush or not");
  await expect(flush).toContainText(`with the bay of ${bay} mm it lies flush`);
  await expect(page.locator(".caution", { hasText: "stand apart" })).toHaveCount(0);
  await expect(reason(page, "A thinner band")).toHaveCount(0);
  await expect(flush.locator("svg .dim-bay")).toHaveCount(1);
  await expect(page.locator("figure.picture svg").first()).toHaveAttribute("aria-label", new RegExp(`${top}0? mm at the top`));
  await expect(page.getByText("A shaped band: for the bench")).toHaveCount(1);
  await go(page, `#/couple/${id}/specification`);
  await expect(page.locator("pre")).toContainText(`at the top, with the bay, ${top} mm`);
});

test("no way out is said only where there is none", async ({ page, start }) => {
  await start();
  const head = "ring1-width=2.4&ring1-tip=0.8&ring1-under=1.5";
  for (const [asked, said, not] of [
    [`band=3&place=after&${head}`, "1.3 mm high, the band clears the head whatever its profile", "No way out"],
    [`band=3&band-height=1.8&band-profile=flat&place=after&${head}`, "At most 1.3 mm high, the band clears the head", "No way out"],
    ["band=3&band-height=1.8&band-profile=flat&place=after&ring1-width=2.4&ring1-tip=0.8&ring1-under=1.2", "thinner than 1.3 mm to clear the head", "Profile and height"],
    [`band=3&place=web&${head}&ring2-width=2.4&ring2-when=later&ring2-web=0.5&ring2-under=2`, "No way out: two heads meet", "A shaped band"],
  ]) {
    await go(page, `#/tools/stack?${asked}`);
    await expect(part(page, "Flush or not"), asked).toContainText(said);
    await expect(part(page, "Flush or not"), asked).not.toContainText(not);
  }
  await expect(part(page, "Flush or not").locator("svg"), "each pair is drawn once").toHaveCount(1);
  await expect(part(page, "Flush or not"), "rings without a name").toContainText("the ring to come");
});

test("a head of which only a part is known is asked for, and so is one that nobody wrote down", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/stack?band=4&ring1-width=2&ring1-web=1");
  // Where it stands is folded away at first: what is wrong opens it.
  await expect(page.locator("#ring1-web-error")).toBeVisible();
  await expect(page.locator("#ring1-web-error")).toHaveText("Enter the height of the head’s underside, or leave its reach empty.");
  await expect(page.locator(".bench-ring").first()).toContainText("Lay a straight edge against the shoulders");
  await go(page, "#/tools/stack?band=4&ring1-width=3&ring1-top=9&ring2-width=2");
  await expect(page.locator(".caution")).toContainText("The first ring is wider at its top than at three and nine, by about 3 mm a side");
  await expect(page.locator("figure.picture svg").first()).toHaveAttribute("aria-label", /second ring, 2\.0 mm/);
});

test("on a turned phone a picture is no higher than the screen, and wear and ways out can be shown", async ({ page, start }) => {
  await start();
  const id = await withHead(page);
  await page.setViewportSize({ width: 740, height: 360 });
  await go(page, `#/tools/stack?couple=${id}&who=first&place=after&ring1-metal=platinum-950&band-metal=yellow-750`);
  for (const svg of await page.locator("figure.picture svg").all()) expect((await svg.boundingBox()).height).toBeLessThanOrEqual(264.5);
  expect(await overflow(page)).toBe(0);
  const show = page.getByRole("button", { name: say.showing.SHOW });
  const finish = async () => {
    await page.getByRole("button", { name: say.showing.FINISH }).tap();
    await page.getByRole("button", { name: say.showing.FINISH_NOW }).tap();
    await expect(page.locator("main.show")).toHaveCount(0);
  };
  await show.first().tap();
  // The whole of it, between the title and the way out.
  const [drawn, out] = [await page.locator("main.show svg").boundingBox(), await page.getByRole("button", { name: say.showing.FINISH }).boundingBox()];
  expect(drawn.y).toBeGreaterThanOrEqual(0);
  expect(drawn.y + drawn.height).toBeLessThanOrEqual(out.y + 0.5);
  expect(drawn.height, "and it is still to be read").toBeGreaterThan(200);
  expect(await overflow(page)).toBe(0);
  await finish();
  await part(page, "Flush or not").getByRole("button", { name: say.showing.SHOW }).last().tap();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Beside the head: what can be done");
  await expect(page.locator("main.show")).toContainText("A shaped band. With a bay");
  await expect(page.locator("main.show")).not.toContainText("engagement");
  await finish();
  await part(page, "Wear").getByRole("button", { name: say.showing.SHOW }).tap();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("How they wear together");
  await expect(page.locator("main.show")).toContainText("the ring");
  await expect(page.locator("main.show")).not.toContainText("engagement");
  await finish();
});

test("what was typed a moment before it is shown to the couple is still asked when that is left", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/compare?band1-width=6&band2-width=5&band1-profile=flat&band2-profile=flat");
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  await page.locator("#band1-metal").selectOption({ label: "platinum 950" });
  const entries = await page.evaluate(() => history.length);
  // All within the moment after which a calculator writes its address.
  await page.evaluate(() => [...document.querySelectorAll("button")].find((it) => it.textContent === "Show to the couple").click());
  await page.evaluate(() => [...document.querySelectorAll("main.show button")].find((it) => it.textContent === "Hold to finish").click());
  await page.evaluate(() => [...document.querySelectorAll("main.show button")].find((it) => it.textContent === "Yes, finish").click());
  await expect(page.locator("main.show")).toHaveCount(0);
  await expect(page.locator("#band1-metal")).toHaveValue("platinum-950");
  expect(page.url()).toContain("band1-metal=platinum-950");
  // The entry that was gone back from is left, and with it all that could lead to it.
  expect(await page.evaluate(() => history.state)).toBe(null);
  expect(await page.evaluate(() => history.length)).toBe(entries + 1);
});
