// What is stored on the phone, read and written behind the app's back.

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
