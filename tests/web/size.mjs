// `make size`: what each file of the app weighs, raw and compressed, and whether the first load keeps its budget.
// The first load is all that the service worker keeps (which is all that a start needs) and the worker itself.
import { readFile, readdir, stat } from "node:fs/promises";
import { join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { kept } from "../../public/build/seal.mjs";

const BUDGET = 220_000;
const dist = process.argv[2] ?? "dist";
const first = new Set([...(await kept(dist)).map(({ name }) => name), "sw.js"]);

let rows = [];
for (const entry of await readdir(dist, { recursive: true })) {
  const file = join(dist, entry);
  if (!(await stat(file)).isFile()) continue;
  const bytes = await readFile(file);
  const options = { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } };
  const brotli = entry.endsWith(".png") ? bytes.length : brotliCompressSync(bytes, options).length;
  rows.push({ name: relative(dist, file), raw: bytes.length, brotli, first: first.has(entry) });
}
rows.sort((a, b) => b.first - a.first || b.brotli - a.brotli);

const total = (field) => rows.filter((row) => row.first).reduce((sum, row) => sum + row[field], 0);
const line = (name, raw, brotli) => console.log(name.padEnd(44), String(raw).padStart(9), String(brotli).padStart(9));
line("first load (bytes)", "raw", "brotli");
for (const row of rows) if (row.first) line(row.name, row.raw, row.brotli);
line("in all", total("raw"), total("brotli"));
console.log();
line("fetched when wanted", "raw", "brotli");
for (const row of rows) if (!row.first) line(row.name, row.raw, row.brotli);
console.log();

const verdict = `${total("brotli")} of ${BUDGET} bytes`;
if (total("brotli") > BUDGET) {
  console.error(`size: over budget, ${verdict}`);
  process.exit(1);
}
console.log(`size: within budget, ${verdict}`);
