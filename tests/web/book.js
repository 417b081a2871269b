// A book with something in it. What specs begin with is typed in once a run, by the setup in book.setup.js, through the
// app; each test then gets the very rows that the app wrote there, put into the storage of its own phone. Where typing
// is the subject, the same things are done by hand: `meetByHand` and so on. book.spec.js holds the two to each other.
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { waypoints } from "./addresses.js";
import { expect } from "./fixtures.js";
import { rows } from "./rows.js";
import { coupleOf, go, hand, heading, notice } from "./touch.js";
import { say } from "./say.js";

const folder = fileURLToPath(new URL("../../test-results/books/", import.meta.url));

/** Keeps all that is stored on a phone under a name, for the tests of this run. */
export async function keep(page, name) {
  await mkdir(folder, { recursive: true });
  await writeFile(`${folder}${name}.json`, JSON.stringify(await rows(page)));
}

const books = new Map();

/** What was kept under a name. */
export async function kept(name) {
  if (!books.has(name)) books.set(name, JSON.parse(await readFile(`${folder}${name}.json`, "utf8")));
  return books.get(name);
}

/** The example book, on a phone on which nothing was written yet. */
export async function loadExamples(page) {
  await lay(page, "examples");
}

/** A book with something at every address: the examples, two gauges, an extra and a closure. Answers with the ids. */
export async function furnish(page) {
  await lay(page, "furnished");
  return waypoints(page);
}

/** A couple by one name, and more if given; its screen is open then. Answers with its id. */
export async function meet(page, first, { second, reach, wedding } = {}) {
  const typed = Object.entries(await kept("couple")).find(([key]) => key.startsWith("records/"))[1];
  const values = { "name.first": first, "name.second": second, reach, wedding: wedding && dayOf(wedding) };
  const id = await page.evaluate(putCouple, { typed, values });
  await go(page, `#/couple/${id}`);
  await expect(heading(page)).toHaveText(second ? `${first} & ${second}` : first);
  return id;
}

/** As `loadExamples`, from an empty Today. */
export async function loadExamplesByHand(page) {
  await hand(page).press(say.screens.LOAD_EXAMPLES);
  await expect(notice(page)).toContainText("example couples loaded");
}

/** As `furnish`. */
export async function furnishByHand(page) {
  const thumb = hand(page);
  await go(page, "#/today");
  await loadExamplesByHand(page);
  await go(page, "#/setup/gauges");
  await thumb.press(say.practice.ADD_USUAL_SETS);
  await expect(notice(page)).toContainText("Two ring sets added");
  for (const [address, words] of [
    ["#/setup/times/new", { "What it is": "plating", "At least": "2", Usually: "3", "At most": "5" }],
    ["#/setup/tray/new", { "Its number": "7", "Its size": "UK N", Width: "4" }],
    ["#/setup/closures/new", { Why: "summer fortnight", "First day closed": "2 August 2027", "Last day closed": "13 August 2027" }],
  ]) {
    await go(page, address);
    for (const [label, text] of Object.entries(words)) await thumb.write(page.getByLabel(label, { exact: true }), text);
    await thumb.press(say.screens.SAVE);
    await expect(notice(page)).toContainText("saved");
  }
}

/** As `meet`, typed into the form. */
export async function meetByHand(page, first, { second, reach, wedding } = {}) {
  const thumb = hand(page);
  await go(page, "#/couples/new");
  await thumb.write(page.getByLabel(say.screens.FIRST_NAME), first);
  if (second) await thumb.write(page.getByLabel(say.screens.SECOND_NAME), second);
  if (reach) await thumb.write(page.getByLabel(say.screens.REACH), reach);
  if (wedding) await thumb.write(page.getByLabel(say.screens.WEDDING), wedding);
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText(second ? `${first} & ${second}` : first);
  return coupleOf(page);
}

const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

/** A day, a month or a year as it is stored. */
function dayOf(words) {
  const [year, month, day] = words.split(" ").reverse();
  const two = (number) => String(number).padStart(2, "0");
  return [year, month && two(MONTHS.indexOf(month) + 1), day && two(day)].filter(Boolean).join("-");
}

/** Puts a whole book that was kept onto a phone with nothing in it, and waits until the app shows it. */
async function lay(page, name) {
  const couples = await page.evaluate(putBook, await kept(name));
  await go(page, "#/couples");
  await expect(page.locator(".lines > .line")).toHaveCount(couples);
}

/** Runs in the page. The phone keeps its own ids: what is put there counts as written on it. */
async function putBook(book) {
  const theirs = JSON.parse(book["meta/installation"]);
  const { result: db } = await new Promise((done) => (indexedDB.open("bandwright").onsuccess = ({ target }) => done(target)));
  const couples = await new Promise((done, fail) => {
    const writing = db.transaction(["records", "meta"], "readwrite", { durability: "strict" });
    const [records, meta] = [writing.objectStore("records"), writing.objectStore("meta")];
    let put = 0;
    meta.get("installation").onsuccess = ({ target }) => {
      const own = JSON.parse(target.result);
      if (own.next !== 1) return fail(new Error("Something was written on this phone before."));
      for (const [key, row] of Object.entries(book)) {
        if (!key.startsWith("records/")) continue;
        const ours = (text) => text.replaceAll(theirs.id, own.id).replaceAll(theirs.practice, own.practice);
        records.put(ours(row), ours(key.slice("records/".length)));
        put += JSON.parse(row).kind === "couple";
      }
      meta.put(JSON.stringify({ ...own, next: theirs.next }), "installation");
    };
    writing.oncomplete = () => done(put);
    writing.onabort = () => fail(writing.error);
  });
  db.close();
  // As another tab says that all of the book is another.
  const line = new BroadcastChannel("bandwright");
  line.postMessage("0".repeat(32));
  line.close();
  return couples;
}

/** Runs in the page: stores the row of a couple with other values, without the fields that have none. */
async function putCouple({ typed, values }) {
  const fresh = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
  const row = { ...JSON.parse(typed), id: fresh() };
  const [change] = row.changes;
  const now = new Date();
  const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((number) => String(number).padStart(2, "0")).join("-");
  change.at = now.getTime();
  change.sets = change.sets.flatMap(({ field, value }) => {
    if (field.startsWith("reach.")) return values.reach ? [{ field: `reach.${fresh()}`, value: values.reach }] : [];
    if (field === "reached.enquiry") return [{ field, value: today }];
    if (/^(name|wedding)\b/.test(field)) return values[field] ? [{ field, value: values[field] }] : [];
    return [{ field, value }];
  });
  const { result: db } = await new Promise((done) => (indexedDB.open("bandwright").onsuccess = ({ target }) => done(target)));
  await new Promise((done, fail) => {
    const writing = db.transaction(["records", "meta"], "readwrite", { durability: "strict" });
    const meta = writing.objectStore("meta");
    meta.get("installation").onsuccess = ({ target }) => {
      const own = JSON.parse(target.result);
      Object.assign(change, { by: own.id, n: own.next });
      writing.objectStore("records").put(JSON.stringify(row), row.id);
      meta.put(JSON.stringify({ ...own, next: own.next + 1 }), "installation");
    };
    writing.oncomplete = () => done();
    writing.onabort = () => fail(writing.error);
  });
  db.close();
  // As another tab says that it has written something.
  const line = new BroadcastChannel("bandwright");
  line.postMessage(row.id);
  line.close();
  return row.id;
}
