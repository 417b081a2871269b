// `make bench` and `make prove`: what merging costs in the page. A book of COUPLES couples (10000) takes in a file of as
// many, each of which is here already and has been changed elsewhere, through the screen that people use.
//
//   looked at   from choosing the file until what it would bring is shown
//   brought in  from the press until it is on the disk and shown
//   taken back  the same for taking the import back
//   floor       what the browser's storage alone takes for the rows of "brought in": each read and written again
//
// The longest task is the longest time that the page answers nobody. To be reached: 2 s for the first two together,
// and no task over 100 ms, on a processor that is not slowed and has nothing else to do. "Own" is the time that the
// page's own thread was at work, whatever else the machine did. Nothing fails on a time: it varies with the machine.
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { launch, phone } from "./browser.js";
import { fill } from "./seeding.mjs";
import { serve } from "./server.mjs";

const COUPLES = Number(process.env.COUPLES ?? 10_000);
const WANTED = { seconds: 2, task: 100 };

const work = await mkdtemp(join(tmpdir(), "merging-"));
const site = await serve("dist");
try {
  const context = await chromium.launchPersistentContext(join(work, "phone"), { ...launch, ...phone });
  const page = context.pages()[0];
  page.setDefaultTimeout(120_000);
  page.on("pageerror", (error) => {
    throw error;
  });
  await page.goto(site.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  await fill(page, COUPLES);
  const file = join(work, "book.json");
  const text = await page.evaluate(elsewhere);
  await writeFile(file, text);
  await page.evaluate(() => (location.hash = "#/setup/copies/bring-in"));
  await page.locator("#file").waitFor({ state: "attached" });
  await page.waitForTimeout(2000);

  const devtools = await context.newCDPSession(page);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  const report = [];
  const bringIn = page.getByRole("button", { name: /^Bring in/ });
  report.push(["looked at", await time(page, devtools, () => page.locator("#file").setInputFiles(file), "Here, and the file knows more")]);
  report.push(["brought in", await time(page, devtools, () => bringIn.click(), "Brought in")]);
  // A notice goes when another screen is opened; it stands over the button.
  for (const screen of ["#/setup/copies", "#/setup/copies/bring-in"]) await page.evaluate((screen) => (location.hash = screen), screen);
  await page.waitForTimeout(1000);
  report.push(["taken back", await time(page, devtools, () => page.getByRole("button", { name: "Take the import back" }).click(), "The import was taken back")]);
  const floor = await page.evaluate(rewrite);
  await context.close();
  print(report, text.length, floor);
} finally {
  await site.stop();
  await rm(work, { recursive: true, force: true, maxRetries: 5 });
}

/** Does something in the page, and says how long it takes until `words` are there and the page has settled. */
async function time(page, devtools, act, words) {
  const own = async () => (await devtools.send("Performance.getMetrics")).metrics.find(({ name }) => name === "TaskDuration").value;
  const before = await own();
  const events = [];
  const collect = ({ value }) => events.push(...value);
  devtools.on("Tracing.dataCollected", collect);
  const traceConfig = { includedCategories: ["toplevel"], excludedCategories: ["*"] };
  await devtools.send("Tracing.start", { transferMode: "ReportEvents", traceConfig });
  await page.evaluate((words) => {
    window.tasks = [];
    window.watch?.disconnect();
    window.watch = new PerformanceObserver((list) => window.tasks.push(...list.getEntries().map((it) => it.duration)));
    window.watch.observe({ type: "longtask" });
    window.began = undefined;
    const begin = () => (window.began ??= performance.now());
    for (const kind of ["click", "change"]) addEventListener(kind, begin, { capture: true, once: true });
    window.done = new Promise((done) => {
      const look = new MutationObserver(() => {
        if (!document.body.textContent.includes(words)) return;
        look.disconnect();
        done(performance.now());
      });
      look.observe(document.body, { childList: true, subtree: true, characterData: true });
    });
  }, words);
  await act();
  const took = await page.evaluate(async () => (await window.done) - window.began);
  // What is shown is not always all that is done.
  await page.waitForTimeout(1000);
  const tasks = await page.evaluate(() => window.tasks);
  const all = (await own()) - before;
  const ended = new Promise((done) => devtools.once("Tracing.tracingComplete", done));
  await devtools.send("Tracing.end");
  await ended;
  devtools.off("Tracing.dataCollected", collect);
  return { took, tasks, own: all, longest: longestTask(events) };
}

/** The longest that the page's own thread was at work on one task, in ms. */
function longestTask(events) {
  const pages = events.filter(({ name, args }) => name === "thread_name" && args.name === "CrRendererMain").map(({ pid, tid }) => `${pid}.${tid}`);
  const tasks = events.filter((it) => it.name === "ThreadControllerImpl::RunTask" && it.tdur && pages.includes(`${it.pid}.${it.tid}`));
  if (!tasks.length) throw new Error("the browser names no tasks");
  return tasks.reduce((most, { tdur }) => Math.max(most, tdur), 0) / 1000;
}

/** Runs in the page: the book as another phone has it, which has changed every couple. */
async function elsewhere() {
  const asked = (request) =>
    new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  const db = await asked(indexedDB.open("bandwright"));
  const rows = await asked(db.transaction("records").objectStore("records").getAll());
  db.close();
  const by = "0000000000000000000000000000e15e";
  const records = rows.map((text, at) => {
    const row = JSON.parse(text);
    const last = Math.max(...row.changes.map(({ n }) => n));
    row.changes.push({ by, n: last + 1 + at, at: Date.now(), sets: [{ field: `note.${row.id}`, value: "Rang back, all well." }] });
    return JSON.stringify(row);
  });
  const head = { schema: "1.1", kind: "bandwright-book", written: Date.now(), by, holds: "couples" };
  return `${JSON.stringify(head).slice(0, -1)},\n"records":[\n${records.join(",\n")}\n]}\n`;
}

/** Runs in the page: reads every row and writes it again, in one strict transaction as an import does. In seconds. */
async function rewrite() {
  const asked = (request) =>
    new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  const db = await asked(indexedDB.open("bandwright"));
  const began = performance.now();
  const transaction = db.transaction(["records", "meta"], "readwrite", { durability: "strict" });
  const records = transaction.objectStore("records");
  const all = await asked(records.getAllKeys());
  const blocks = [];
  while (all.length) blocks.push(all.splice(0, 100));
  const ask = (keys) => keys && asked(records.getAll(IDBKeyRange.bound(keys[0], keys.at(-1))));
  let next = ask(blocks[0]);
  for (const [at, keys] of blocks.entries()) {
    const rows = await next;
    next = ask(blocks[at + 1]);
    rows.forEach((row, i) => records.put(row, keys[i]));
  }
  await new Promise((done) => (transaction.oncomplete = done));
  db.close();
  return (performance.now() - began) / 1000;
}

function print(report, bytes, floor) {
  console.log(`\nMerging in the page: ${COUPLES} + ${COUPLES} couples, a file of ${(bytes / 1e6).toFixed(1)} MB.\n`);
  console.log("".padEnd(12), "seconds".padStart(8), "own".padStart(8), "longest task, ms".padStart(18), "own".padStart(8), "tasks over 50 ms".padStart(18));
  for (const [what, { took, tasks, own, longest }] of report)
    console.log(what.padEnd(12), (took / 1000).toFixed(2).padStart(8), own.toFixed(2).padStart(8), Math.max(0, ...tasks).toFixed(0).padStart(18), longest.toFixed(0).padStart(8), String(tasks.length).padStart(18));
  console.log("floor".padEnd(12), floor.toFixed(2).padStart(8));
  const busy = loadavg()[0] / cpus().length;
  if (busy > 1) console.log(`\nThe machine had ${busy.toFixed(1)} times as much to do as it has processors: only the own times say much.`);
  const [looked, brought] = report.map(([, it]) => it);
  const seconds = (looked.took + brought.took) / 1000;
  console.log(`\nBrought in: ${(brought.took / 1000 / floor).toFixed(2)} times what the browser's storage alone takes.`);
  const task = Math.max(0, ...looked.tasks, ...brought.tasks);
  const verdict = (is, most) => `${(is / most).toFixed(2)} of what it may be${is <= most ? "" : ": NOT REACHED"}`;
  console.log(`Together ${seconds.toFixed(2)} s, ${verdict(seconds, WANTED.seconds)}; longest task ${task.toFixed(0)} ms, ${verdict(task, WANTED.task)}.`);
}
