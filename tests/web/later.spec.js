// The screens that come in files of their own, after the first screen.
import { readdir } from "node:fs/promises";
import { DIST, expect, ready, test } from "./fixtures.js";
import { say } from "./say.js";

const isLater = (name) => name.endsWith(".wasm") && !name.includes("bandwright-");

async function fileOf(place) {
  return (await readdir(DIST)).find((name) => name.startsWith(`${place}-`) && name.endsWith(".wasm"));
}

// No service worker is allowed here: it might fetch them before the page does.
test("the first screen waits for no file of a later one, and they come without being asked for", async ({ page, site }) => {
  expect((await readdir(DIST)).filter(isLater).length).toBeGreaterThan(1);
  let release;
  let held = 0;
  const open = new Promise((done) => (release = done));
  await page.route((url) => isLater(url.pathname), async (route) => {
    held += 1;
    await open;
    await route.continue();
  });
  await page.goto(site.url);
  await ready(page);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Today");
  await expect.poll(() => held, "nobody has pressed anything").toBeGreaterThan(0);
  await page.getByRole("link", { name: say.screens.TOOLS }).tap();
  await expect(page.getByRole("heading", { level: 1 }), "said while it comes").toHaveText("Opening the book");
  release();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(say.screens.TOOLS);
});

test("a part that does not arrive says so, and comes when it is tried again", async ({ page, site, guard }) => {
  guard.allow(/wasm|Failed to|TypeError|mime|MIME/i);
  site.lie(await fileOf("work"));
  await page.goto(site.url + "#/tools/size");
  await ready(page);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("This part has not arrived yet");
  await page.getByRole("button", { name: say.screens.TRY_AGAIN }).tap();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("This part has not arrived yet");
  site.truth();
  await page.getByRole("button", { name: say.screens.TRY_AGAIN }).tap();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Size converter");
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
});
