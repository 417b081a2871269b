// Fills the book for scripts that need a full one. `seed.js` beside this file says how: it exports
// `seed(page, couples)`, given a page in which the app is ready, and resolves when the couples are saved.
import { existsSync } from "node:fs";

const script = new URL("./seed.js", import.meta.url);

/** Stores `couples` couples; says on the console when there is no way to do so yet, and returns what was stored. */
export async function fill(page, couples) {
  if (!existsSync(script)) {
    console.log("There is no tests/web/seed.js: nothing is stored, the book is empty.");
    return 0;
  }
  await (await import(script.href)).seed(page, couples);
  return couples;
}
