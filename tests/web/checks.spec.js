// The checks that every screen has to pass are themselves shown to find what they look for.
import { axe, overflow, smallTargets } from "./checks.js";
import { crash, expect, hand, ready, test } from "./fixtures.js";

const page_ = (body) => `<!doctype html><html lang="en"><head><title>Trial</title><meta name="viewport" content="width=device-width"></head>
  <body><main><h1>Trial</h1>${body}</main></body></html>`;

test("axe finds a contrast under 7:1 and a field without a name, and nothing in a sound page", async ({ page }) => {
  await page.setContent(page_(`<p>Sound</p>`));
  expect(await axe(page)).toEqual([]);
  await page.setContent(page_(`<p style="color: #666; background: #fff">5.7:1</p><input>`));
  const faults = (await axe(page)).join("\n");
  expect(faults).toContain("color-contrast-enhanced");
  expect(faults).toContain("label");
});

test("a small control is found, one with a large label is not", async ({ page }) => {
  const choice = `<label style="display: block; min-height: 44px"><input type="checkbox"> Yes</label>`;
  await page.setContent(page_(`<button style="width: 44px; height: 43px">x</button>${choice}<button hidden>y</button>`));
  expect(await smallTargets(page)).toEqual([expect.stringContaining("44.0 x 43.0")]);
});

test("a page wider than the screen is found", async ({ page }) => {
  await page.setContent(page_(`<p>Narrow</p>`));
  expect(await overflow(page)).toBe(0);
  await page.setContent(page_(`<div style="width: 400px; height: 1px"></div>`));
  expect(await overflow(page)).toBeGreaterThan(0);
});

test("a hand counts its taps and types key by key", async ({ page }) => {
  await page.setContent(page_(`<label>Name <input></label>`));
  const thumb = hand(page);
  await thumb.tap(page.getByLabel("Name"));
  await thumb.type("Mara");
  await expect(page.getByLabel("Name")).toHaveValue("Mara");
  expect(thumb.taps).toBe(1);
});

test("a crashed page can be opened again", async ({ page, context, site, start }) => {
  await start();
  await crash(page);
  const again = await context.newPage();
  await again.goto(site.url);
  await ready(again);
});
