// The example book: loaded and removed with one tap, flagged, and an example that somebody edited stays.
import { coupleOf, expect, go, hand, heading, loadExamplesByHand, meet, notice, open, said, test } from "./hand.js";
import { say } from "./say.js";

const couples = (page) => page.locator(".lines > .line");

test("one tap loads it, every couple of it is marked, and one tap takes it out again", async ({ page, site, start }) => {
  await start();
  const own = await meet(page, "Tess");
  await go(page, "#/setup/example");
  const thumb = hand(page);
  await thumb.press(say.screens.LOAD_EXAMPLES);
  await expect(notice(page)).toContainText("4 example couples loaded");
  expect(thumb.taps).toBe(1);
  await go(page, "#/couples");
  await expect(couples(page)).toHaveCount(5);
  await expect(page.locator(".line", { hasText: "example" })).toHaveCount(4);
  await expect(page.locator(".line", { hasText: "Tess" })).not.toContainText("example");
  await page.locator(".line", { hasText: "Ines" }).getByRole("link").tap();
  await expect(page.getByText("An invented example: it is left out of every file.")).toBeVisible();
  await open(page, site, "#/setup/example");
  const again = hand(page);
  await again.press(/Remove the example/);
  await expect(notice(page)).toContainText("4 example couples removed");
  expect(again.taps).toBe(1);
  expect(Object.keys(await said(page)).filter((key) => key.startsWith("records/"))).toContain(`records/${own}`);
  await go(page, "#/couples");
  await expect(couples(page)).toHaveCount(1);
  await open(page, site, "#/couples");
  await expect(couples(page)).toHaveCount(1);
});

test("an example that was edited stays, marked as an example", async ({ page, site, start }) => {
  await start();
  await loadExamplesByHand(page);
  await go(page, "#/couples");
  await page.getByRole("link", { name: /Wren/ }).tap();
  const id = coupleOf(page);
  await go(page, `#/couple/${id}/notes`);
  await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), "Ours now.");
  await hand(page).press(say.screens.ADD_NOTE);
  await expect(notice(page)).toContainText("saved");
  await go(page, "#/setup/example");
  await hand(page).press(/Remove the example/);
  await expect(notice(page)).toContainText("3 example couples removed; one that you edited stays");
  await open(page, site, `#/couple/${id}`);
  await expect(heading(page)).toHaveText("Wren");
  await expect(page.getByText("An invented example")).toBeVisible();
});
