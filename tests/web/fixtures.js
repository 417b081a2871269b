// How to write a spec: put `name.spec.js` beside this file and start it with
//
//   import { test, expect } from "./fixtures.js";
//
//   test.use({ serviceWorkers: "allow" });    // only where the app's being kept on the phone is the subject
//
//   test("a couple is still there with the server gone", async ({ page, site, install }) => {
//     await install();                        // open the app at phone size and wait until it is kept on the phone
//     await page.goto(site.url + "#/couples/new");
//     ...
//     await site.stop();                      // no server from here on
//     await page.reload();
//     await ready(page);                      // the app has mounted and says so
//   });
//
// Each test gets a server of its own on a free loopback port (`site`, see server.mjs: stop, start, use, lie, asked),
// so nothing is shared: own origin, own storage. The built app in dist/ is what is tested; `make dist` first.
//
//   site      the server; `test.use({ base: "/shop/app/" })` puts the app under a sub-path
//   page      one tab; further tabs by `context.newPage()`
//   start     opens the app and waits until it can be used; `start(otherPage)` for another tab. No service worker comes
//   install   the same, and waits for the service worker; only where it is allowed, as above
//   handset   a phone that can be switched off: `handset.page`, `await handset.restart()` (closes the browser,
//             opens it again on the same storage), `await handset.kill()` (SIGKILL), then `await handset.on()`
//   release   `await release("2")` makes the next version of the app in a folder of its own, for `site.use(...)`
//   guard     fails the test at its end on any request to another origin, page error or console error; a test that
//             provokes one says so: `guard.allow(/pattern/)`. `guard.follow(context)` includes a context of your own
//
// Besides: `ready(page)`, `hand(page)` (counts taps, types), `crash(page)`; in checks.js `axe(page)`,
// `smallTargets(page)` and `overflow(page)`, each of which returns its faults.
//
// Buttons, links and fields are found by role and by the words that the app has for them: `say.screens.SAVE` (say.js).
//
// Specs of the book import from hand.js instead, which has all of this and more. What they begin with need not be typed
// in. Once a run a setup types it (book.setup.js), and these put the rows of it onto a phone on which the app is open:
//
//   const ids = await furnish(page);                            // something at every address; on an empty phone
//   await loadExamples(page);                                   // the example couples; on an empty phone
//   const id = await meet(page, "Ada", { second: "Bo", reach: "07700 900111", wedding: "22 May 2027" });
//
// After `meet` the couple's screen is open, after the others the list of couples. No notice is left by them. Where the
// typing or the saving is what is tested, `meetByHand(page, ...)` and so on do the same through the forms.
import { cp, mkdtemp, readFile, readdir, readlink, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium, test as base, expect } from "@playwright/test";
import { seal } from "../../public/build/seal.mjs";
import { launch, phone } from "./browser.js";
import { serve } from "./server.mjs";

export { expect };
export const DIST = fileURLToPath(new URL("../../dist", import.meta.url));

/** What people see when a new version waits; the one place where the specs know its words. */
export const NEW_VERSION = { text: "A new version is ready", button: "Use it now" };

/** Waits until the app has replaced the page's shell and marked itself as usable, and the screen itself has arrived. */
export async function ready(page) {
  await page.locator("html[data-ready]:not(:has(main[aria-busy=true]))").waitFor({ state: "attached", timeout: 30_000 });
}

/** A hand on the phone: taps are counted, words are typed key by key and never filled in. */
export function hand(page) {
  return {
    taps: 0,
    async tap(locator) {
      this.taps += 1;
      await locator.tap();
    },
    async type(words) {
      await page.keyboard.type(words);
    },
  };
}

/** The page's process dies, as when the phone runs out of memory: no event reaches the app. */
export async function crash(page) {
  const devtools = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  devtools.send("Page.crash").catch(() => {});
  await crashed;
}

export const test = base.extend({
  base: ["/", { option: true }],

  site: async ({ base }, use) => {
    const site = await serve(DIST, { base });
    await use(site);
    await site.stop();
  },

  guard: [
    async ({ site }, use) => {
      const guard = new Guard(site);
      await use(guard);
      expect(guard.faults, "requests to another origin, page errors, console errors").toEqual([]);
    },
    { auto: true },
  ],

  context: async ({ context, guard }, use) => {
    guard.follow(context);
    await use(context);
  },

  start: async ({ page, site }, use) => {
    await use(async (tab = page) => {
      await tab.goto(site.url);
      await ready(tab);
    });
  },

  install: async ({ page, start, serviceWorkers }, use) => {
    await use(async (tab = page) => {
      if (serviceWorkers !== "allow") throw new Error('The service worker is kept away: test.use({ serviceWorkers: "allow" }).');
      const arrived = new Set();
      tab.on("requestfinished", (request) => arrived.add(request.url().split("/").pop()));
      await start(tab);
      await tab.evaluate(async () => {
        await navigator.serviceWorker.ready;
        while (!navigator.serviceWorker.controller) await new Promise((done) => setTimeout(done, 20));
      });
      // What the page itself began to fetch before the worker took over still comes from the server.
      const files = (await readdir(DIST)).filter((name) => name.endsWith(".wasm"));
      await expect.poll(() => files.filter((name) => !arrived.has(name)), { timeout: 30_000 }).toEqual([]);
    });
  },

  handset: async ({ guard, serviceWorkers }, use) => {
    const handset = new Handset(guard, await mkdtemp(join(tmpdir(), "handset-")), serviceWorkers);
    await handset.on();
    await use(handset);
    await handset.off();
    await rm(handset.storage, { recursive: true, force: true, maxRetries: 5 });
  },

  release: async ({}, use) => {
    const folders = [];
    await use(async (name) => {
      const folder = await mkdtemp(join(tmpdir(), "release-"));
      folders.push(folder);
      await nextVersion(folder, name);
      return folder;
    });
    for (const folder of folders) await rm(folder, { recursive: true, force: true });
  },
});

/** A copy of the built app that differs in every kind of file, sealed as a build is. `data-release` on <html> tells. */
export async function nextVersion(folder, name) {
  await cp(DIST, folder, { recursive: true });
  const edit = async (file, change) => writeFile(join(folder, file), change(await readFile(join(folder, file), "utf8")));
  await edit("index.html", (page) => page.replace("<html ", `<html data-release="${name}" `));
  await edit("manifest.webmanifest", (manifest) => manifest + "\n");
  await seal(folder);
}

class Guard {
  faults = [];
  #allowed = [];
  #site;

  constructor(site) {
    this.#site = site;
  }

  allow(pattern) {
    this.#allowed.push(pattern);
  }

  /** What was noticed so far, which is then forgotten: for a test that provokes it on purpose. */
  take() {
    return this.faults.splice(0);
  }

  follow(context) {
    const own = new URL(this.#site.url).origin;
    context.on("request", (request) => {
      const { origin, protocol } = new URL(request.url());
      if (origin !== own && !["data:", "blob:"].includes(protocol)) this.#fault(`request: ${request.url()}`);
    });
    context.on("console", (message) => {
      // With the server gone the browser itself notes that it could not look for a newer worker: no fault of the app.
      const search = message.location().url.endsWith("/sw.js") && /ERR_CONNECTION|ERR_INTERNET/.test(message.text());
      if (message.type() === "error" && !search) this.#fault(`console: ${message.text()} (${message.location().url})`);
    });
    context.on("weberror", (error) => this.#fault(`page error: ${error.error().message}`));
  }

  #fault(text) {
    if (!this.#allowed.some((pattern) => pattern.test(text))) this.faults.push(text);
  }
}

class Handset {
  #guard;
  #context;

  constructor(guard, storage, serviceWorkers) {
    this.#guard = guard;
    this.storage = storage;
    this.serviceWorkers = serviceWorkers;
  }

  get context() {
    return this.#context;
  }

  get page() {
    return this.#context.pages()[0];
  }

  async on() {
    this.#context = await chromium.launchPersistentContext(this.storage, { ...launch, ...phone, serviceWorkers: this.serviceWorkers });
    this.#guard.follow(this.#context);
  }

  async off() {
    await this.#context?.close().catch(() => {});
    this.#context = undefined;
  }

  async restart() {
    await this.off();
    await this.on();
  }

  /** As when the battery goes: no event reaches the page. The lock that Chromium leaves names its process. */
  async kill() {
    const pid = Number((await readlink(join(this.storage, "SingletonLock"))).split("-").pop());
    const gone = new Promise((done) => this.#context.once("close", done));
    process.kill(pid, "SIGKILL");
    await gone;
    this.#context = undefined;
    for (const name of ["SingletonLock", "SingletonSocket", "SingletonCookie"])
      await rm(join(this.storage, name), { force: true });
  }
}
