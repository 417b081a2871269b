// Fills the book with real rows for scripts that need a full one.
//
// The rows are the app's own: its example book is loaded by its own button, its couples are copied under new random
// ids and other invented names, without the mark of an example, and the examples themselves are taken out again. So a
// row is what the app writes today (src/archive/row.rs), whatever that is, and nothing here knows its fields.
const FIRST = ["Mara", "Tess", "Ines", "Orla", "Wren", "Priya", "Lena", "Ada", "Freya", "Nell", "Ruth", "Isla", "Dina", "Sanne"];
const SECOND = ["Callum", "Tomasz", "Noor", "Jonah", "Elis", "Kofi", "Bram", "Ivo", "Hugh", "Rafi", "Sven", "Owen", "Luca"];

/** Stores `couples` couples, given a page in which the app is ready and its book is empty; then opens the book anew. */
export async function fill(page, couples) {
  await page.evaluate(() => (location.hash = "#/today"));
  const press = page.getByRole("button", { name: "Load the example book" });
  await press.click();
  await press.waitFor({ state: "detached" });
  const stored = await page.evaluate(copyExamples, { couples, FIRST, SECOND });
  await page.reload();
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  return stored;
}

/** Runs in the page. */
async function copyExamples({ couples, FIRST, SECOND }) {
  const asked = (request) =>
    new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  const db = await asked(indexedDB.open("bandwright"));
  const stores = db.transaction(["records", "meta"], "readwrite");
  const [records, meta] = [stores.objectStore("records"), stores.objectStore("meta")];
  const installation = JSON.parse(await asked(meta.get("installation")));
  const isExample = (row) => row.changes.some(({ sets }) => sets.some(({ field }) => field === "example"));
  const examples = (await asked(records.getAll())).map((text) => JSON.parse(text)).filter(isExample);
  for (const { id } of examples) records.delete(id);
  for (let i = 0; i < couples; i++) {
    const row = JSON.parse(withFreshIds(JSON.stringify(examples[i % examples.length]), installation.id));
    for (const change of row.changes) {
      change.n = installation.next++;
      change.sets = change.sets.filter(({ field }) => field !== "example");
      for (const set of change.sets) {
        if (set.field === "name.first") set.value = FIRST[i % FIRST.length] + (i < FIRST.length ? "" : ` ${Math.floor(i / FIRST.length) + 1}`);
        if (set.field === "name.second" && set.value) set.value = SECOND[i % SECOND.length];
      }
    }
    records.put(JSON.stringify(row), row.id);
  }
  meta.put(JSON.stringify(installation), "installation");
  await new Promise((done, fail) => {
    stores.oncomplete = done;
    stores.onabort = () => fail(stores.error);
  });
  db.close();
  return couples;

  /** Every id but the installation's own becomes another, the same one everywhere in the row. */
  function withFreshIds(text, own) {
    const fresh = new Map();
    return text.replace(/\b[0-9a-f]{32}\b/g, (id) => {
      if (id === own) return id;
      const bytes = crypto.getRandomValues(new Uint8Array(16));
      if (!fresh.has(id)) fresh.set(id, Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join(""));
      return fresh.get(id);
    });
  }
}
