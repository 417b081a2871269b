// `make bench`: how long the kept app takes to start with no server, as a multiple of a floor.
//
// The floor is the app's own rendered page and styles with the scripts taken out, kept by the same service worker:
// what the browser, the worker and the layout cost anyhow. Times vary with the machine; the ratios are what to trust.
// Each run is a browser process of its own on a stored profile, processor slowed four times, app and floor in turn.
//   first paint  first contentful paint      largest  largest contentful paint
//   usable       app: data-ready is set on <html>; floor: painted and parsed
// RUNS (11 or more) and COUPLES (200) may be set in the environment. Nothing fails on a time.
import { cp, mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { seal } from "../../public/build/seal.mjs";
import { launch, phone } from "./browser.js";
import { fill } from "./seeding.mjs";
import { serve } from "./server.mjs";

const RUNS = Math.max(11, Number(process.env.RUNS ?? 11));
const WARM_UP = 2; // lets the browser keep its compiled code, as it has after a first day
const COUPLES = Number(process.env.COUPLES ?? 200);
const SLOWER = 4;

const work = await mkdtemp(join(tmpdir(), "bench-"));
try {
  const app = { name: "app", ready: "html[data-ready]", site: await serve("dist"), profile: join(work, "app") };
  const stored = await prepare(app, async (page) => {
    const stored = await fill(page, COUPLES);
    await page.reload();
    await page.locator(app.ready).waitFor({ state: "attached" });
    await page.waitForTimeout(1000);
    await makeFloor(join(work, "site"), await page.content());
    return stored;
  });
  const floor = { name: "floor", ready: "body", site: await serve(join(work, "site")), profile: join(work, "floor") };
  await prepare(floor, () => {});
  await app.site.stop();
  await floor.site.stop();

  const times = { app: [], floor: [] };
  for (let run = -WARM_UP; run < RUNS; run++)
    for (const side of run % 2 ? [app, floor] : [floor, app]) {
      const time = await start(side);
      if (run >= 0) times[side.name].push(time);
    }
  report(times, stored);
} finally {
  await rm(work, { recursive: true, force: true, maxRetries: 5 });
}

/** Opens a side once with its server there, and waits until it is kept. */
async function prepare({ site, profile, ready }, then) {
  const context = await chromium.launchPersistentContext(profile, { ...launch, ...phone });
  const page = context.pages()[0];
  await page.goto(site.url);
  await page.locator(ready).waitFor({ state: "attached" });
  await page.evaluate(async () => {
    await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((done) => setTimeout(done, 20));
  });
  const result = await then(page);
  await context.close();
  return result;
}

async function makeFloor(folder, rendered) {
  await cp("dist", folder, { recursive: true });
  for (const name of await readdir(folder)) if (/\.(js|wasm)$/.test(name)) await rm(join(folder, name));
  const page = rendered
    .replace(/<script\b[\s\S]*?<\/script>/g, "")
    .replace(/<link\b[^>]*rel="(modulepreload|preload)"[^>]*>/g, "")
    .replace(/\sstyle="[^"]*"/g, "");
  await writeFile(join(folder, "index.html"), page);
  await seal(folder);
  if (/<script/.test(await readFile(join(folder, "index.html"), "utf8"))) throw new Error("the floor has a script");
}

/** One cold start without a server. */
async function start({ site, profile, ready }) {
  const context = await chromium.launchPersistentContext(profile, { ...launch, ...phone });
  const page = context.pages()[0];
  await page.addInitScript(() => {
    new PerformanceObserver((list) => (window.largest = list.getEntries().at(-1).startTime)).observe({ type: "largest-contentful-paint", buffered: true });
    const look = new MutationObserver(() => {
      if (!document.documentElement?.hasAttribute("data-ready") || window.usable) return;
      window.usable = performance.now();
    });
    look.observe(document, { attributes: true, subtree: true, attributeFilter: ["data-ready"] });
  });
  const devtools = await context.newCDPSession(page);
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  await page.goto(site.url);
  await page.locator(ready).waitFor({ state: "attached" });
  await page.waitForTimeout(500);
  const time = await page.evaluate(() => {
    const first = performance.getEntriesByName("first-contentful-paint")[0].startTime;
    const parsed = performance.getEntriesByType("navigation")[0].domContentLoadedEventEnd;
    return { first, largest: window.largest, usable: window.usable ?? Math.max(first, parsed) };
  });
  await context.close();
  return time;
}

function report({ app, floor }, stored) {
  const at = (list, part) => list.toSorted((a, b) => a - b)[Math.round((list.length - 1) * part)];
  console.log(`\nStart without a server, processor slowed ${SLOWER} times, ${stored} couples stored, ${app.length} runs each.`);
  console.log("Medians in ms (middle half), and the app as a multiple of the floor:\n");
  console.log("".padEnd(14), "app".padStart(18), "floor".padStart(18), "ratio".padStart(8));
  for (const [what, field] of [["first paint", "first"], ["largest paint", "largest"], ["usable", "usable"]]) {
    const [a, f] = [app, floor].map((side) => side.map((time) => time[field]));
    const cell = (list) => `${at(list, 0.5).toFixed(0)} (${at(list, 0.25).toFixed(0)}-${at(list, 0.75).toFixed(0)})`.padStart(18);
    console.log(what.padEnd(14), cell(a), cell(f), (at(a, 0.5) / at(f, 0.5)).toFixed(2).padStart(8));
  }
}
