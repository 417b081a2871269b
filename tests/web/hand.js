// What the specs of the app itself share: how a hand does things on the phone, what is stored there, and the table of
// every address. A spec imports `test`, `expect` and the rest of fixtures.js from here as well.
import { readFile } from "node:fs/promises";
import { expect, hand as bareHand, ready, test as base } from "./fixtures.js";

export * from "./fixtures.js";

/** The day on which the specs take place: a Wednesday. The dates in them do not age. */
export const TODAY = new Date("2026-11-25T10:00:00");

export const test = base.extend({
  context: async ({ context }, use) => {
    await context.clock.setFixedTime(TODAY);
    await use(context);
  },

  handset: async ({ handset }, use) => {
    const on = handset.on.bind(handset);
    handset.on = async () => {
      await on();
      await handset.context.clock.setFixedTime(TODAY);
    };
    await handset.context.clock.setFixedTime(TODAY);
    await use(handset);
  },
});

/** A hand that taps and types. `put` replaces what a field holds, key by key; `press` and `follow` go by name. */
export function hand(page) {
  const thumb = bareHand(page);
  return Object.assign(thumb, {
    keys: 0,
    /** Types into whatever has the focus; `type` of the bare hand, counted. */
    async type(words) {
      thumb.keys += [...words].length;
      await page.keyboard.type(words);
    },
    /** Taps a field and waits, as a hand does, until the cursor is in it. */
    async enter(field) {
      await thumb.tap(field);
      await expect(field).toBeFocused();
    },
    /** Taps a field and types into it. */
    async write(field, words) {
      await thumb.enter(field);
      await thumb.type(words);
    },
    /** Taps a field and types over what it holds. */
    async put(field, words) {
      await thumb.enter(field);
      // As the phone's own "select all". Taps that follow each other faster than a thumb are taken for a double tap,
      // whose selection comes late: then once more.
      await expect(async () => {
        await field.selectText();
        await page.keyboard.press("Delete");
        expect(await field.inputValue()).toBe("");
      }).toPass({ timeout: 5000, intervals: [50] });
      await thumb.type(words);
    },
    /** Taps a button. */
    async press(name) {
      await thumb.tap(page.getByRole("button", { name, exact: typeof name === "string" }));
    },
    /** Taps a link. */
    async follow(name) {
      await thumb.tap(page.getByRole("link", { name, exact: typeof name === "string" }));
    },
    /** Taps one option of a group of radios. */
    async choose(group, name) {
      await thumb.tap(page.getByRole("group", { name: group }).getByRole("radio", { name, exact: true }));
    },
  });
}

// What a hand costs. A tap is every pointer press outside the on-screen keyboard. Its time is that of the keystroke-level
// model (Card, Moran and Newell 1980): 1.1 s to point and 1.35 s to make up one's mind, for every tap alike. A key is
// 0.33 s: 36 words a minute, the mean of 37,000 people typing on their phones (Palin and others 2019). Both from memory
// of the papers. The waiting for the app is not in it.
const TAP_S = 1.1 + 1.35;
const KEY_S = 0.33;

/** The seconds of hand time that a hand has cost, and the same in words. */
export function cost({ taps, keys }) {
  const seconds = taps * TAP_S + keys * KEY_S;
  return { seconds, text: `${taps} taps, ${keys} keys, ${seconds.toFixed(1)} s of hand time` };
}

/** A figure that was measured, for whoever reads the report. */
export function figure(text) {
  test.info().annotations.push({ type: "figure", description: text });
  console.log(`figure: ${text}`);
}

/** A row of a list, by words in it. */
export const line = (page, words) => page.locator(".line", { hasText: words });

/** The heading of the screen. */
export const heading = (page) => page.locator("main h1");

/** The notice at the bottom of the screen. */
export const notice = (page) => page.locator(".notices .notice");

/** The preparation list as the couple's phone keeps it. */
export const keptList = (page) => page.evaluate(() => JSON.parse(JSON.parse(localStorage.getItem("bandwright.list"))));

/**
 * Goes to an address as from a link, without loading the page anew, and waits until its screen stands: until the app has
 * heard of the address, the file that the screen comes in has arrived, and its heading has the focus.
 */
export async function go(page, address) {
  await page.evaluate(async (address) => {
    const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const to = async (address) => {
      const { href } = new URL(address, location.href);
      const heard = new Promise((done) => {
        addEventListener("hashchange", function hear({ newURL }) {
          if (newURL !== href) return;
          removeEventListener("hashchange", hear);
          done();
        });
      });
      location.hash = address;
      await heard;
      do await drawn();
      while (document.querySelector("main[aria-busy=true]"));
    };
    // Where it is there already, by way of a place that is none.
    if (new URL(address, location.href).href === location.href) await to("#/no/such/other/place");
    await to(address);
  }, address);
}

/** Loads an address anew, as from a bookmark. */
export async function open(page, site, address = "") {
  await page.goto("about:blank");
  await page.goto(site.url + address);
  await ready(page);
}

/** Loads the example book from an empty Today. */
export async function loadExamples(page) {
  await page.getByRole("button", { name: "Load the example book" }).tap();
  await expect(notice(page)).toContainText("example couples loaded");
}

/** Writes down a couple by one name, and more if given, and answers with its id. */
export async function meet(page, first, { second, reach, wedding } = {}) {
  const thumb = hand(page);
  await go(page, "#/couples/new");
  await thumb.write(page.getByLabel("First name"), first);
  if (second) await thumb.write(page.getByLabel("Second name"), second);
  if (reach) await thumb.write(page.getByLabel("Telephone or e-mail"), reach);
  if (wedding) await thumb.write(page.getByLabel("Wedding date"), wedding);
  await thumb.press("Save");
  await expect(heading(page)).toHaveText(second ? `${first} & ${second}` : first);
  return coupleOf(page);
}

/** The id of the couple whose screen is open. */
export function coupleOf(page) {
  return page.url().match(/#\/couple\/([0-9a-f]{32})/)[1];
}

/** Everything that IndexedDB holds: rows as text by their keys. */
export async function rows(page) {
  return page.evaluate(
    () =>
      new Promise((done, fail) => {
        const opening = indexedDB.open("bandwright");
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const db = opening.result;
          const asking = db.transaction(["records", "meta"]);
          const found = {};
          for (const store of ["records", "meta"]) {
            const walk = asking.objectStore(store).openCursor();
            walk.onsuccess = () => {
              const at = walk.result;
              if (!at) return;
              found[`${store}/${at.key}`] = at.value;
              at.continue();
            };
          }
          asking.oncomplete = () => {
            db.close();
            done(found);
          };
          asking.onerror = () => fail(asking.error);
        };
      }),
  );
}

/** Writes a row by hand, or takes it away where no value is given. */
export async function putRow(page, store, key, value) {
  await page.evaluate(
    ([store, key, value]) =>
      new Promise((done, fail) => {
        const opening = indexedDB.open("bandwright");
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const db = opening.result;
          const writing = db.transaction(store, "readwrite");
          const rows = writing.objectStore(store);
          if (value === undefined) rows.delete(key);
          else rows.put(value, key);
          writing.oncomplete = () => {
            db.close();
            done();
          };
          writing.onerror = () => fail(writing.error);
        };
      }),
    [store, key, value],
  );
}

/** The fields of one record as they stand in storage: of each the value that was written last. */
export async function fieldsOf(page, id) {
  return foldFields((await rows(page))[`records/${id}`]);
}

/** The fields of the practice as they stand in storage. */
export async function practiceFields(page) {
  const all = await rows(page);
  const { practice } = JSON.parse(all["meta/installation"]);
  return foldFields(all[`records/${practice}`]);
}

export function foldFields(row) {
  const fields = {};
  if (!row) return fields;
  const changes = JSON.parse(row).changes.sort((a, b) => a.n - b.n);
  for (const { sets } of changes)
    for (const { field, value } of sets) {
      if (value === undefined) delete fields[field];
      else fields[field] = value;
    }
  return fields;
}

/** Everything recorded, by record, without how it came about: two equal ones say the same to people. */
export async function said(page) {
  const all = await rows(page);
  const records = Object.entries(all).filter(([key]) => key.startsWith("records/"));
  return Object.fromEntries(records.map(([key, row]) => [key, foldFields(row)]));
}

/**
 * Every address of src/app/address.rs: its name there, and the address itself. `at` is given what `waypoints` found:
 * the ids of a couple with everything and of its items. A variant without a row here fails addresses.spec.js.
 */
export const ADDRESSES = [
  ["Address::Today", () => "#/today"],
  ["Address::Couples", () => "#/couples"],
  ["Address::NewCouple", () => "#/couples/new"],
  ["Address::TakeIn", () => "#/couples/list"],
  ["Address::Invite", () => "#/couples/invite"],
  ["Address::List", () => "#/list"],
  ...["two", "wedding", "wearing", "rings", "look", "hands", "budget", "bring", "measure", "privacy", "send"].map((page) => ["Address::List", () => `#/list/${page}`]),
  ["Address::Couple", ({ couple }) => `#/couple/${couple}`],
  ["Address::Bench", () => "#/bench"],
  ["Address::Practice", () => "#/practice"],
  ["Address::Nowhere", () => "#/no/such/place"],
  ["Part::People", ({ couple }) => `#/couple/${couple}/people`],
  ["Part::Wedding", ({ couple }) => `#/couple/${couple}/wedding`],
  ["Part::Appointments", ({ couple }) => `#/couple/${couple}/appointments`],
  ["Part::Appointment", ({ couple }) => `#/couple/${couple}/appointments/new`],
  ["Part::Appointment", ({ couple, appointment }) => `#/couple/${couple}/appointments/${appointment}`],
  ["Part::Recorded", ({ couple }) => `#/couple/${couple}/recorded`],
  ["Part::Stage", ({ couple }) => `#/couple/${couple}/stage`],
  ["Part::Notes", ({ couple }) => `#/couple/${couple}/notes`],
  ["Part::Finger", ({ couple }) => `#/couple/${couple}/finger/first`],
  ["Part::Fitted", ({ couple }) => `#/couple/${couple}/fitted/first`],
  ["Part::Rings", ({ couple }) => `#/couple/${couple}/rings/first`],
  ["Part::Ring", ({ couple }) => `#/couple/${couple}/rings/first/new`],
  ["Part::Ring", ({ couple, ring }) => `#/couple/${couple}/rings/first/${ring}`],
  ["Part::Band", ({ couple }) => `#/couple/${couple}/band/first`],
  ["Part::Remedy", ({ couple }) => `#/couple/${couple}/remedy/first`],
  ["Part::ReadBack", ({ couple }) => `#/couple/${couple}/read-back`],
  ["Part::Plan", ({ couple }) => `#/couple/${couple}/plan`],
  ["Part::Specification", ({ couple }) => `#/couple/${couple}/specification`],
  ["Part::Copy", ({ couple }) => `#/couple/${couple}/copy`],
  ["Part::Same", ({ couple }) => `#/couple/${couple}/same`],
  ["Part::Differences", ({ couple }) => `#/couple/${couple}/differences`],
  ["Part::History", ({ couple }) => `#/couple/${couple}/history`],
  ["Part::Erase", ({ couple }) => `#/couple/${couple}/erase`],
  ["Part::Said", ({ couple }) => `#/couple/${couple}/said`],
  ["Part::Invite", ({ couple }) => `#/couple/${couple}/invite`],
  ["Calculator::Size", () => "#/bench/size?q=M%C2%BD"],
  ["Calculator::Size", ({ couple }) => `#/bench/size?couple=${couple}&who=first`],
  ["Calculator::Table", () => "#/bench/table"],
  ["Calculator::Order", () => "#/bench/order"],
  ["Calculator::Order", ({ couple }) => `#/bench/order?couple=${couple}&who=first`],
  ["Calculator::Stack", () => "#/bench/stack"],
  ["Calculator::Stack", ({ couple }) => `#/bench/stack?couple=${couple}&who=first`],
  ["Calculator::Compare", () => "#/bench/compare"],
  ["Calculator::Compare", ({ couple }) => `#/bench/compare?couple=${couple}&who=first`],
  ["Calculator::Dates", () => "#/bench/dates"],
  ["Calculator::Dates", ({ couple }) => `#/bench/dates?couple=${couple}`],
  ["Calculator::ScreenGauge", () => "#/bench/screen-gauge"],
  ["Calculator::ScreenGauge", ({ couple }) => `#/bench/screen-gauge?couple=${couple}&who=first`],
  ["Calculator::PaperGauge", () => "#/bench/paper-gauge"],
  ["Setting::Fair", () => "#/practice/fair"],
  ["Setting::Sizes", () => "#/practice/sizes"],
  ["Setting::Gauges", () => "#/practice/gauges"],
  ["Setting::Gauge", () => "#/practice/gauges/new"],
  ["Setting::Gauge", ({ gauge }) => `#/practice/gauges/${gauge}`],
  ["Setting::Tray", () => "#/practice/tray"],
  ["Setting::TryOn", () => "#/practice/tray/new"],
  ["Setting::TryOn", ({ tryOn }) => `#/practice/tray/${tryOn}`],
  ["Setting::Times", () => "#/practice/times"],
  ["Setting::Time", () => "#/practice/times/making"],
  ["Setting::Extra", () => "#/practice/times/new"],
  ["Setting::Extra", ({ extra }) => `#/practice/times/${extra}`],
  ["Setting::Closures", () => "#/practice/closures"],
  ["Setting::Place", () => "#/practice/closures/assay-office"],
  ["Setting::Place", () => "#/practice/closures/courier"],
  ["Setting::Holidays", () => "#/practice/closures/holidays"],
  ["Setting::Chances", () => "#/practice/chances"],
  ["Setting::Closure", () => "#/practice/closures/new"],
  ["Setting::Closure", ({ closure }) => `#/practice/closures/${closure}`],
  ["Setting::Stack", () => "#/practice/stack"],
  ["Setting::Fit", () => "#/practice/fit"],
  ["Setting::Phone", () => "#/practice/phone"],
  ["Setting::PhoneName", ({ phone }) => `#/practice/phone/${phone}`],
  ["Setting::Install", () => "#/practice/install"],
  ["Setting::Copies", () => "#/practice/copies"],
  ["Setting::BringIn", () => "#/practice/copies/bring-in"],
  ["Setting::Differences", () => "#/practice/differences"],
  ["Setting::Example", () => "#/practice/example"],
];

/** The names of the variants of an enum in src/app/address.rs. */
export async function variants(name) {
  const source = await readFile(new URL("../../src/app/address.rs", import.meta.url), "utf8");
  const body = source.match(new RegExp(`pub enum ${name} \\{([\\s\\S]*?)\\n\\}`))[1];
  return [...body.matchAll(/^    ([A-Z]\w*)/gm)].map(([, variant]) => `${name}::${variant}`);
}

/** A book with something at every address: the examples, two gauges, an extra and a closure. Answers with the ids. */
export async function furnish(page) {
  const thumb = hand(page);
  await go(page, "#/today");
  await loadExamples(page);
  await go(page, "#/practice/gauges");
  await thumb.press("Add the two usual sets");
  await expect(notice(page)).toContainText("Two ring sets added");
  for (const [address, words] of [
    ["#/practice/times/new", { "What it is": "plating", "At least": "2", Usually: "3", "At most": "5" }],
    ["#/practice/tray/new", { "Its number": "7", "Its size": "UK N", Width: "4" }],
    ["#/practice/closures/new", { Why: "summer fortnight", "First day closed": "2 August 2027", "Last day closed": "13 August 2027" }],
  ]) {
    await go(page, address);
    for (const [label, text] of Object.entries(words)) await thumb.write(page.getByLabel(label, { exact: true }), text);
    await thumb.press("Save");
    await expect(notice(page)).toContainText("saved");
  }
  return waypoints(page);
}

/** The ids that the addresses need: those of the couple that has the most recorded, and of items of the practice. */
export async function waypoints(page) {
  const all = await said(page);
  const [key, fields] = Object.entries(all).sort(([, a], [, b]) => Object.keys(b).length - Object.keys(a).length)[0];
  const practice = await practiceFields(page);
  const item = (of, pattern) => Object.keys(of).map((field) => field.match(pattern)?.[1]).find(Boolean);
  return {
    couple: key.split("/")[1],
    appointment: item(fields, /^appointment\.([0-9a-f]{32})\.when$/),
    ring: item(fields, /^ring\.first\.([0-9a-f]{32})\.planned$/),
    gauge: item(practice, /^practice\.gauge\.([0-9a-f]{32})$/),
    tryOn: item(practice, /^practice\.try_on\.([0-9a-f]{32})$/),
    extra: item(practice, /^practice\.extra\.([0-9a-f]{32})$/),
    closure: item(practice, /^practice\.closure\.([0-9a-f]{32})$/),
    phone: JSON.parse((await rows(page))["meta/installation"]).id,
  };
}
