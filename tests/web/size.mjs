// `make size`: what each file of the app weighs, raw and compressed. Fails if the first load is over its budget.
// The first load is what the page fetches until its first screen can be used, and the service worker's script. The
// rest of what the service worker keeps is fetched after that: the files of screens that come later (split.mjs).
import { readFile, readdir, stat } from "node:fs/promises";
import { join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { kept } from "../../public/build/seal.mjs";

const BUDGET = 220_000;
const dist = process.argv[2] ?? "dist";
const keeps = [...(await kept(dist)).map(({ name }) => name), "sw.js"];
const isLater = (name) => name.endsWith(".wasm") && !name.startsWith("bandwright-");
const when = (name) => (!keeps.includes(name) ? 2 : isLater(name) ? 1 : 0);

let rows = [];
for (const entry of await readdir(dist, { recursive: true })) {
  const file = join(dist, entry);
  if (!(await stat(file)).isFile()) continue;
  const bytes = await readFile(file);
  const options = { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } };
  const brotli = entry.endsWith(".png") ? bytes.length : brotliCompressSync(bytes, options).length;
  rows.push({ name: relative(dist, file), raw: bytes.length, brotli, when: when(relative(dist, file)) });
}
rows.sort((a, b) => b.brotli - a.brotli);

const line = (name, raw, brotli) => console.log(name.padEnd(44), String(raw).padStart(9), String(brotli).padStart(9));
const of = (when, field) => rows.filter((row) => row.when === when).reduce((sum, row) => sum + row[field], 0);
["first load (bytes)", "then, kept for offline", "fetched when wanted"].forEach((title, when) => {
  line(title, "raw", "brotli");
  for (const row of rows) if (row.when === when) line(row.name, row.raw, row.brotli);
  line("in all", of(when, "raw"), of(when, "brotli"));
  console.log();
});

const weighs = of(0, "brotli");
console[weighs > BUDGET ? "error" : "log"](`size: the first load weighs ${weighs} bytes, ${weighs > BUDGET ? "OVER" : "within"} its budget of ${BUDGET}`);
process.exit(weighs > BUDGET ? 1 : 0);
