// `make screenshots`: takes the pictures that an installer shows from the real app, into public/screenshots/, and
// names them in the manifest. Look at them before committing.
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { chromium } from "@playwright/test";
import { launch, phone } from "./browser.js";
import { fill } from "./seeding.mjs";
import { serve } from "./server.mjs";

const SHOTS = [
  { name: "today", address: "#/today", label: "Who is next, what is due, what is late" },
  { name: "order", address: "#/tools/order?size=M%C2%BD&gauge=other&gauge-width=3&width=6&hands=cold", label: "From a reading to the size to make" },
  { name: "stack", address: "#/tools/stack?band=3&ring1-width=2.6&ring1-top=1.8&ring2-width=2.5&ring2-when=later", label: "Every ring on the finger, now and later" },
  { name: "dates", address: "#/tools/dates?wedding=22%20May%202027", label: "From the wedding back to the last day to order" },
];
const PUBLIC = new URL("../../public/", import.meta.url);
const SCALE = 2;

const site = await serve("dist");
const browser = await chromium.launch(launch);
const page = await browser.newPage({ ...phone, deviceScaleFactor: SCALE, colorScheme: "light" });
await page.goto(site.url);
await page.locator("html[data-ready]").waitFor({ state: "attached" });
await fill(page, 6);
await mkdir(new URL("screenshots/", PUBLIC), { recursive: true });
const { width, height } = phone.viewport;
const entries = [];
for (const { name, address, label } of SHOTS) {
  await page.goto("about:blank");
  await page.goto(site.url + address);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  await page.waitForTimeout(500);
  const src = `screenshots/${name}.png`;
  // Nobody has tapped: the heading would show that it has the focus.
  await page.evaluate(() => document.activeElement?.blur());
  await page.screenshot({ path: new URL(src, PUBLIC).pathname });
  entries.push({ src, sizes: `${width * SCALE}x${height * SCALE}`, type: "image/png", form_factor: "narrow", label });
}
await browser.close();
await site.stop();

const manifest = new URL("manifest.webmanifest", PUBLIC);
const content = JSON.parse(await readFile(manifest, "utf8"));
await writeFile(manifest, JSON.stringify({ ...content, screenshots: entries }, null, 2) + "\n");
console.log(`screenshots: ${entries.length} in public/screenshots/, named in the manifest`);
