// `make prove-kills`: a real browser on a profile of its own is killed (SIGKILL, the whole process group) while the
// app writes, and the same profile is opened again: whatever the app had shown as saved has to be there.
//
//   KILLS (500), SEED (the time) may be set in the environment; the same seed kills after the same waits. What the
//   machine does in them is another time another, so a seed brings a finding back often, not always.
//
// In each round one or two tabs write as people do: a new couple, notes, the second name, through the app's own screens
// and buttons; a value counts as shown when it stands on the screen as saved. The kill comes after a random time, or
// right after something was shown. Every 25th round begins with an empty profile and is killed while the app opens for
// the first time. A killed process leaves its written pages to the system; a power cut, which does not, is not tried here.
//
// After each kill: every value of the round stands in the book (or is in the history, where a later one replaced it),
// every row can be read, no number was given twice, and the app's own screens show the round's couples. At the end all
// values of all rounds are looked up once more.
import { mkdtemp, readFile, readlink, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "@playwright/test";
import { launch, phone } from "./browser.js";
import { rows } from "./hand.js";
import { serve } from "./server.mjs";

const FRESH = 25;

/**
 * Kills so many times, and answers with the figures. `shown`: one tab writes, and each kill comes right after so many
 * values were shown as saved, instead of when the dice say. `spoil` runs in every page first: for a test of this test.
 */
export async function kill({ kills, seed, dist, shown, spoil, log = () => {} }) {
  const random = generator(seed);
  const figures = { kills: 0, shown: 0, found: 0, lost: [], faults: [], underWay: 0, first: 0, atOnce: 0 };
  const storage = await mkdtemp(join(tmpdir(), "kills-"));
  const site = await serve(dist);
  try {
    let phones = 0;
    let on;
    let all = [];
    const settle = async () => {
      if (!on) return;
      await check(await on.look(), all, figures);
      await on.off();
      all = [];
    };
    for (let round = 0; round < kills; round++) {
      if (round % FRESH === 0) {
        await settle();
        on = new Phone(join(storage, `phone-${phones++}`), site.url, spoil);
        await on.on();
        // Not `goto`: what it waits for may be gone with the browser, and that is thrown where nothing can catch it.
        on.page.evaluate((url) => location.assign(url), site.url).catch(() => {});
        await pause(random() * 1500);
        figures.first += 1;
      } else {
        const values = await writeAndWait(on, random, `k${seed}-${round}`, figures, shown);
        figures.shown += values.length;
        all.push(...values);
      }
      await on.kill();
      figures.kills += 1;
      await on.on();
      const found = await on.look();
      await check(found, all.slice(-40), figures);
      await seen(on.page, site.url, all.slice(-8), figures);
      if (figures.kills % 25 === 0 || round === kills - 1) log(`${figures.kills} kills, ${figures.shown} values shown as saved`);
    }
    await settle();
    figures.found = figures.shown - figures.lost.length;
    return figures;
  } finally {
    await site.stop();
    await rm(storage, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Has one or two tabs write, until it is time to kill. Answers with what was shown as saved by then. */
async function writeAndWait(phone, random, name, figures, shown) {
  const values = [];
  const under = new Set();
  let told = () => {};
  const after = shown ?? (random() < 0.4 ? 1 + Math.floor(random() * 8) : 0);
  const enough = new Promise((done) => (told = () => after && values.length >= after && done()));
  const tabs = [phone.page];
  if (random() < 0.3 && !shown) tabs.push(await phone.more());
  await phone.hear(({ tab, begun, value }) => {
    if (begun) return under.add(tab);
    under.delete(tab);
    values.push(value);
    told();
  });
  tabs.forEach((tab, at) => tab.evaluate(writeOn, { tab: at, name: `${name}${"ab"[at]}`, seed: Math.floor(random() * 2 ** 32) }).catch(() => {}));
  // A slow machine gets time to begin; the dice say when it ends.
  await Promise.race([enough, pause(shown ? 20_000 : after ? 15_000 : 300 + random() * 2500)]);
  if (after) figures.atOnce += 1;
  if (under.size) figures.underWay += 1;
  return [...values];
}

/** Runs in the page: writes one thing after the other, until somebody pulls the plug. */
async function writeOn({ tab, name, seed }) {
  const dice = () => ((seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) / 2 ** 32);
  const wait = (ms) => new Promise((done) => setTimeout(done, ms));
  const until = async (there) => {
    for (;;) {
      const it = there();
      if (it) return it;
      await wait(2);
    }
  };
  const type = async (field, words) => {
    const input = await until(() => document.getElementById(field));
    input.value = words;
    input.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
  const press = (label) => {
    window.tell({ tab, begun: true });
    [...document.querySelectorAll("main button")].find((button) => button.textContent.trim() === label).click();
  };
  const title = () => document.querySelector("main h1")?.textContent ?? "";
  const shown = (couple, field, text) => window.tell({ tab, value: { couple, field, text } });
  for (let at = 0; ; at++) {
    const first = `${name}-${at}`;
    location.hash = "#/couples/new";
    await until(() => title() === "New couple");
    await type("first-name", first);
    press("Save");
    await until(() => title() === first);
    const couple = location.hash.match(/[0-9a-f]{32}/)[0];
    shown(couple, "name.first", first);
    for (let left = dice() * 6; left > 0; left--) {
      await wait(dice() * 40);
      const words = `${first}-${Math.floor(left)}-${Math.floor(dice() * 1e6)}`;
      if (dice() < 0.7) {
        location.hash = `#/couple/${couple}/notes`;
        await until(() => title() === "Notes");
        await type("note", words);
        press("Add note");
        await until(() => [...document.querySelectorAll(".note p")].some((note) => note.textContent === words));
        shown(couple, "note", words);
      } else {
        location.hash = `#/couple/${couple}/people`;
        await type("second-name", words);
        press("Save");
        await until(() => title() === `${first} & ${words}`);
        shown(couple, "name.second", words);
      }
    }
  }
}

/** Looks each value up in the rows, and each row over. */
async function check(stored, values, figures) {
  const changes = new Map();
  for (const [key, row] of Object.entries(stored)) {
    if (!key.startsWith("records/")) continue;
    try {
      changes.set(key.slice(8), JSON.parse(row).changes);
    } catch {
      figures.faults.push(`a row that cannot be read: ${key}: ${String(row).slice(0, 200)}`);
    }
  }
  const stamps = [...changes.values()].flat().map(({ by, n }) => `${by} ${n}`);
  if (new Set(stamps).size !== stamps.length) figures.faults.push("a number was given twice");
  for (const { couple, field, text } of values) {
    const sets = (changes.get(couple) ?? []).flatMap(({ sets }) => sets);
    const is = (set) => set.value === text && (field === "note" ? set.field.startsWith("note.") : set.field === field);
    const line = `${couple} ${field} ${text}`;
    if (!sets.some(is) && !figures.lost.includes(line)) figures.lost.push(line);
  }
}

/** The app's own word on it: it opens, nothing is unreadable, and the last couples show what they showed. */
async function seen(page, url, values, figures) {
  const said = await page.evaluate(() => document.body.innerText);
  if (/could not be read|did not open/.test(said)) figures.faults.push(`the app says: ${said.slice(0, 300)}`);
  const last = new Map();
  for (const { couple, field, text } of values) {
    if (field !== "note") continue;
    last.set(couple, [...(last.get(couple) ?? []), text]);
  }
  for (const [couple, notes] of last) {
    await page.goto(`${url}#/couple/${couple}/notes`);
    for (const note of notes)
      await page
        .locator(".note p", { hasText: note })
        .waitFor({ timeout: 20_000 })
        .catch(() => figures.faults.push(`not shown any more: ${couple} ${note}`));
  }
}

/** A browser of its own on a profile of its own. */
class Phone {
  #heard = () => {};

  constructor(storage, url, spoil) {
    Object.assign(this, { storage, url, spoil });
  }

  async on() {
    this.context = await chromium.launchPersistentContext(this.storage, { ...launch, ...phone });
    if (this.spoil) await this.context.addInitScript(this.spoil);
    await this.context.exposeFunction("tell", (it) => this.#heard(it));
    [this.page] = this.context.pages();
  }

  hear(heard) {
    this.#heard = heard;
  }

  async more() {
    const page = await this.context.newPage();
    await this.open(page);
    return page;
  }

  async open(page) {
    await page.goto(`${this.url}#/today`);
    await page.locator("html[data-ready]").waitFor({ state: "attached" });
  }

  /** Opens the app and answers with what is stored. */
  async look() {
    await this.open(this.page);
    return rows(this.page);
  }

  async off() {
    await this.context.close();
  }

  /** SIGKILL for the browser that this profile's lock names, and for its whole group. */
  async kill() {
    const pid = Number((await readlink(join(this.storage, "SingletonLock"))).split("-").pop());
    const command = await readFile(`/proc/${pid}/cmdline`, "utf8");
    if (!command.includes(this.storage)) throw new Error(`${pid} is not the browser of this test`);
    const gone = new Promise((done) => this.context.once("close", done));
    const stat = await readFile(`/proc/${pid}/stat`, "utf8");
    const group = Number(stat.slice(stat.lastIndexOf(")") + 2).split(" ")[2]);
    this.#heard = () => {};
    process.kill(group === pid ? -pid : pid, "SIGKILL");
    await gone;
    for (const name of ["SingletonLock", "SingletonSocket", "SingletonCookie"])
      await rm(join(this.storage, name), { force: true });
  }
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let it = Math.imul(state ^ (state >>> 15), state | 1);
    it ^= it + Math.imul(it ^ (it >>> 7), it | 61);
    return ((it ^ (it >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The figures on one line. */
export function told(seed, { kills, shown, found, lost, faults, underWay, first, atOnce }) {
  return (
    `seed ${seed}: ${kills} kills (${first} while opening for the first time, ${atOnce} right after saved was shown, ` +
    `${underWay} with a save under way), ${shown} values shown as saved, ${found} found, ${lost.length} lost, ${faults.length} other faults`
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const seed = Number(process.env.SEED ?? Math.floor(Date.now() / 1000));
  const kills = Number(process.env.KILLS ?? 500);
  console.log(`kills: ${kills} kills, seed ${seed}`);
  const figures = await kill({ kills, seed, dist: process.argv[2] ?? "dist", log: (line) => console.log(`kills: ${line}`) });
  console.log(`kills: ${told(seed, figures)}`);
  for (const line of [...figures.lost, ...figures.faults]) console.error(line);
  process.exit(figures.lost.length + figures.faults.length > 0 ? 1 : 0);
}
