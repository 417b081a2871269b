// `make bench`: what a large book costs at the start, as a multiple of an ordinary one, with no server and the
// processor not slowed. To be reached: the first paint of 20,000 couples takes at most twice that of 200. Each run is
// a browser process of its own on a stored profile; RUNS (5) may be set. Nothing fails on a time.
//   first paint  first contentful paint      usable  data-ready is set on <html>
//   longest      the longest task of the page until then and half a second on
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { launch, phone } from "./browser.js";
import { fill } from "./seeding.mjs";
import { serve } from "./server.mjs";

const RUNS = Number(process.env.RUNS ?? 5);
const SIZES = [200, 20_000];
const READY = "html[data-ready]";

const work = await mkdtemp(join(tmpdir(), "opening-"));
try {
  const medians = [];
  for (const couples of SIZES) medians.push(await measure(couples));
  for (const what of ["first", "usable", "longest"]) {
    const [ordinary, large] = medians.map((one) => one[what]);
    console.log(`${what.padEnd(8)} ${SIZES[0]} couples ${ordinary.toFixed(0)} ms, ${SIZES[1]} couples ${large.toFixed(0)} ms, ratio ${(large / ordinary).toFixed(2)}`);
  }
} finally {
  await rm(work, { recursive: true, force: true, maxRetries: 5 });
}

/** The medians of the starts of a book of so many couples. */
async function measure(couples) {
  const site = await serve("dist");
  const profile = join(work, `${couples}`);
  await inBrowser(profile, async (page) => {
    await page.goto(site.url);
    await page.locator(READY).waitFor({ state: "attached" });
    await page.evaluate(() => navigator.serviceWorker.ready);
    await fill(page, couples);
    await page.waitForTimeout(1500);
  });
  await site.stop();
  const times = [];
  for (let run = 0; run < RUNS; run++) times.push(await inBrowser(profile, (page) => start(page, site.url)));
  const median = (what) => times.map((time) => time[what]).toSorted((a, b) => a - b)[Math.floor(RUNS / 2)];
  return { first: median("first"), usable: median("usable"), longest: median("longest") };
}

async function start(page, url) {
  await page.addInitScript(() => {
    window.longest = 0;
    new PerformanceObserver((list) => list.getEntries().forEach(({ duration }) => (window.longest = Math.max(window.longest, duration)))).observe({ type: "longtask", buffered: true });
    const look = () => document.documentElement?.hasAttribute("data-ready") && (window.usable ??= performance.now());
    new MutationObserver(look).observe(document, { attributes: true, subtree: true, attributeFilter: ["data-ready"] });
  });
  await page.goto(url);
  await page.locator(READY).waitFor({ state: "attached" });
  await page.waitForTimeout(500);
  return page.evaluate(() => ({ first: performance.getEntriesByName("first-contentful-paint")[0].startTime, usable: window.usable, longest: window.longest }));
}

async function inBrowser(profile, then) {
  const context = await chromium.launchPersistentContext(profile, { ...launch, ...phone });
  const page = context.pages()[0];
  page.setDefaultTimeout(300_000);
  const result = await then(page);
  await context.close();
  return result;
}
