// With the server gone: every address opens as from a bookmark, and a couple can be taken from hello to a record.
import { ADDRESSES, expect, furnish, hand, heading, meetByHand, open, ready, test } from "./hand.js";
import { say } from "./say.js";

test.use({ serviceWorkers: "allow" });

test("every address opens from a bookmark with the server gone", async ({ page, site, install }) => {
  test.slow();
  await install();
  const ids = await furnish(page);
  await site.stop();
  const asked = site.asked.length;
  for (const [name, at] of ADDRESSES) {
    await open(page, site, at(ids));
    await expect.soft(heading(page), name).toHaveText(/\S/);
    await expect.soft(heading(page), name).not.toHaveText(/not on this phone|did not open/);
    expect.soft(new URL(page.url()).hash, name).toBe(at(ids));
  }
  expect(site.asked.length).toBe(asked);
});

test("a new couple is written down with the server gone, and is there after the browser was closed", async ({ handset, site, install }) => {
  await install(handset.page);
  await site.stop();
  await handset.restart();
  await open(handset.page, site);
  await hand(handset.page).follow(say.screens.NEW_COUPLE);
  const id = await meetByHand(handset.page, "Tess", { second: "Rowan", reach: "07700 900123", wedding: "22 May 2027" });
  await handset.restart();
  await handset.page.goto(site.url + `#/couple/${id}`);
  await ready(handset.page);
  await expect(heading(handset.page)).toHaveText("Tess & Rowan");
  await expect(handset.page.getByRole("link", { name: "Call 07700 900123" })).toHaveAttribute("href", "tel:07700900123");
  await expect(handset.page.locator(".line", { hasText: "Wedding" })).toContainText("22 May 2027");
});
