// The app on the phone: kept, opened with the server gone, renewed only when asked, withdrawn when it must be.
import { cp, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { kept, seal } from "../../public/build/seal.mjs";
import { DIST, NEW_VERSION, expect, ready, test } from "./fixtures.js";
import { say } from "./say.js";

test.use({ serviceWorkers: "allow" });

const WITHDRAW = fileURLToPath(new URL("../../public/withdraw.js", import.meta.url));

for (const base of ["/", "/shop/app/"]) {
  test.describe(`under ${base}`, () => {
    test.use({ base });

    test("is kept whole at the first visit and starts with the server gone", async ({ page, site, install }) => {
      await install();
      const caches_ = await cacheContents(page);
      expect(Object.keys(caches_)).toHaveLength(1);
      const expected = (await kept(DIST)).map(({ address }) => new URL(address, site.url).href).sort();
      expect(Object.values(caches_)[0].sort()).toEqual(expected);

      await site.stop();
      await page.reload();
      await ready(page);
      await page.goto("about:blank");
      await page.goto(site.url + "#/tools");
      await ready(page);
      await expect(page.getByRole("link", { name: say.screens.TOOLS })).toBeVisible();
      expect(new URL(page.url()).hash).toBe("#/tools");
    });

    test("leads any other address back to the app", async ({ page, site, install }) => {
      await install();
      await site.stop();
      for (const address of ["index.html", "?from=somewhere", "no/such/place#/couples", "#/couples/new"]) {
        await page.goto("about:blank");
        await page.goto(site.url + address);
        await ready(page);
        expect(page.url()).toContain(address.includes("#") ? address.slice(address.indexOf("#")) : base);
      }
    });

    test("asks for nothing but its own files, all under its own path", async ({ page, site, install }) => {
      await install();
      await page.reload();
      await ready(page);
      const known = new Set((await kept(DIST)).map(({ address }) => new URL(address, site.url).pathname));
      const strange = site.asked.filter((path) => !known.has(path) && path !== `${base}sw.js` && !/\.png$/.test(path));
      expect(strange).toEqual([]);
    });
  });
}

test("survives the browser being closed, and killed, with the server gone", async ({ handset, site, install }) => {
  await install(handset.page);
  await site.stop();
  await handset.restart();
  await handset.page.goto(site.url);
  await ready(handset.page);
  await handset.kill();
  await handset.on();
  await handset.page.goto(site.url + "#/setup");
  await ready(handset.page);
});

test("a new version waits for a yes, then takes over with one reload", async ({ page, site, install, release }) => {
  await install();
  site.use(await release("2"));
  await lookForNew(page);
  await expect(page.getByText(NEW_VERSION.text)).toBeVisible();
  expect(Object.keys(await cacheContents(page)), "both versions are kept until the yes").toHaveLength(2);

  await page.reload();
  await ready(page);
  await expect(page.locator("html"), "a reload alone changes nothing").not.toHaveAttribute("data-release");
  await expect(page.getByText(NEW_VERSION.text)).toBeVisible();

  let loads = 0;
  page.on("load", () => loads++);
  await page.getByRole("button", { name: NEW_VERSION.button }).click();
  await expect(page.locator("html")).toHaveAttribute("data-release", "2");
  await ready(page);
  await expect(page.getByText(NEW_VERSION.text)).toBeHidden();
  await expect.poll(async () => Object.keys(await cacheContents(page))).toHaveLength(1);
  expect(loads).toBe(1);

  await site.stop();
  await page.reload();
  await ready(page);
  await expect(page.locator("html")).toHaveAttribute("data-release", "2");
});

test("half-typed words go along from the old version to the new", async ({ page, site, install, release }) => {
  await install();
  await page.goto(site.url + "#/couples/new");
  await page.getByLabel(say.screens.FIRST_NAME).pressSequentially("Tess");
  await page.getByLabel(say.screens.WEDDING).pressSequentially("22 May 20");
  site.use(await release("2"));
  await lookForNew(page);
  await expect(page.getByText(NEW_VERSION.text)).toBeVisible();
  await expect(page.getByLabel(say.screens.FIRST_NAME), "the notice takes nothing").toHaveValue("Tess");
  await page.getByRole("button", { name: NEW_VERSION.button }).click();
  await expect(page.locator("html")).toHaveAttribute("data-release", "2");
  await ready(page);
  await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Tess");
  await expect(page.getByLabel(say.screens.WEDDING)).toHaveValue("22 May 20");
  await page.getByLabel(say.screens.WEDDING).press("End");
  await page.getByLabel(say.screens.WEDDING).pressSequentially("27");
  await page.getByRole("button", { name: say.screens.SAVE }).click();
  await expect(page.getByRole("heading", { name: "Tess" })).toBeVisible();
});

test("another tab is told and not reloaded", async ({ page, context, site, install, release }) => {
  await install();
  const other = await context.newPage();
  await install(other);
  await other.evaluate(() => (window.untouched = true));
  site.use(await release("2"));
  await lookForNew(page);
  await page.getByRole("button", { name: NEW_VERSION.button }).click();
  await expect(page.locator("html")).toHaveAttribute("data-release", "2");
  await expect(other.getByText(NEW_VERSION.text)).toBeVisible();
  expect(await other.evaluate(() => window.untouched)).toBe(true);
  await other.getByRole("button", { name: NEW_VERSION.button }).click();
  await expect(other.locator("html")).toHaveAttribute("data-release", "2");
});

test("an update with any one file answered by a log-in page never replaces the old version", async ({ page, site, install, release, guard }) => {
  guard.allow(/MIME type|bad HTTP response|sw\.js/);
  await install();
  const before = await cacheContents(page);
  const next = await release("2");
  site.use(next);
  const files = (await kept(next)).map(({ name }) => name);
  expect(files.length).toBeGreaterThan(5);
  for (const file of [...files, "sw.js"]) {
    await tryWith(file);
    await tryWith(file, { status: 503, type: "text/plain", body: "busy" });
  }
  // The right type and status, but not the page of this version.
  await tryWith("index.html", { type: "text/html; charset=utf-8", body: await readFile(join(DIST, "index.html"), "utf8") });

  async function tryWith(file, lie) {
    site.lie(file, lie);
    const told = site.lies;
    expect(await lookForNew(page), `${file} answered with ${JSON.stringify(lie ?? "a log-in page")}`).toBe("refused");
    expect(site.lies, `${file} was asked for`).toBeGreaterThan(told);
    site.truth();
  }

  expect(await cacheContents(page)).toEqual(before);
  await site.stop();
  await page.reload();
  await ready(page);
  await expect(page.locator("html")).not.toHaveAttribute("data-release");
  await expect(page.getByText(NEW_VERSION.text)).toBeHidden();

  await site.start();
  site.truth();
  expect(await lookForNew(page), "the same update, whole").toBe("waiting");
});

test("a bad release is withdrawn, and what was written stays", async ({ page, site, install, release }) => {
  await install();
  await page.evaluate(writeSomething);
  const withdrawn = await release("2");
  await cp(WITHDRAW, join(withdrawn, "sw.js"));
  await page.evaluate(() => (window.untouched = true));
  site.use(withdrawn);
  await lookForNew(page);
  await expect.poll(async () => Object.keys(await cacheContents(page))).toEqual([]);
  expect(await page.evaluate(() => window.untouched), "an open page is not reloaded").toBe(true);

  await page.reload();
  await ready(page);
  await expect(page.locator("html"), "from the network").toHaveAttribute("data-release", "2");
  expect(await page.evaluate(readSomething)).toEqual({ draft: "half-typed", record: "kept" });

  const good = await release("3");
  site.use(good);
  await expect.poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  await page.reload();
  await install();
  await site.stop();
  await page.reload();
  await ready(page);
  await expect(page.locator("html")).toHaveAttribute("data-release", "3");
});

test("leaves the caches of a neighbour on the same host alone", async ({ page, site, install, release }) => {
  await install();
  await page.evaluate(() => caches.open("bandwright /elsewhere/ 1"));
  site.use(await release("2"));
  await lookForNew(page);
  await page.getByRole("button", { name: NEW_VERSION.button }).click();
  await expect(page.locator("html")).toHaveAttribute("data-release", "2");
  await expect.poll(async () => Object.keys(await cacheContents(page))).toHaveLength(2);
  expect(Object.keys(await cacheContents(page))).toContain("bandwright /elsewhere/ 1");
});

test("sealing twice changes nothing", async ({ release }) => {
  const folder = await release("2");
  const first = await readFile(join(folder, "sw.js"), "utf8");
  await seal(folder);
  expect(await readFile(join(folder, "sw.js"), "utf8")).toBe(first);
  const other = await release("3");
  expect(await readFile(join(other, "sw.js"), "utf8")).not.toBe(first);
});

/** Has the browser look for a newer worker; tells how that ended. */
async function lookForNew(page) {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update().catch(() => {});
    const worker = registration.installing;
    if (worker)
      await new Promise((done) => {
        const look = () => worker.state !== "installing" && done();
        worker.addEventListener("statechange", look);
        look();
      });
    return registration.waiting ? "waiting" : "refused";
  });
}

async function cacheContents(page) {
  return page.evaluate(async () => {
    const contents = {};
    for (const name of await caches.keys())
      contents[name] = (await (await caches.open(name)).keys()).map(({ url }) => url);
    return contents;
  });
}

function writeSomething() {
  localStorage.setItem("draft", "half-typed");
  return new Promise((done, fail) => {
    const opening = indexedDB.open("trial", 1);
    opening.onerror = fail;
    opening.onupgradeneeded = () => opening.result.createObjectStore("rows").put("kept", "record");
    opening.onsuccess = () => done(opening.result.close());
  });
}

function readSomething() {
  return new Promise((done, fail) => {
    const opening = indexedDB.open("trial", 1);
    opening.onerror = fail;
    opening.onsuccess = () => {
      const asking = opening.result.transaction("rows").objectStore("rows").get("record");
      asking.onsuccess = () => done({ draft: localStorage.getItem("draft"), record: asking.result });
    };
  });
}
