// `make size`: what each file of the app weighs, raw and compressed, and whether the first load keeps its budget.
// The first load is all that the service worker keeps (which is all that a start needs) and the worker itself.
//
// `make size` fails over the budget. The budget is not met yet (DEVELOPERS.md, "Why is the app over its budget?"), so
// `make test` asks with --no-heavier: it says so, and fails as soon as the app weighs more than it did.
import { readFile, readdir, stat } from "node:fs/promises";
import { join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { kept } from "../../public/build/seal.mjs";

const BUDGET = 220_000;
const WEIGHED = 325_000;
const noHeavier = process.argv.includes("--no-heavier");
const dist = process.argv.slice(2).find((word) => !word.startsWith("--")) ?? "dist";
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
  console.error(`size: OVER BUDGET, ${verdict}`);
  process.exit(noHeavier && total("brotli") <= WEIGHED ? 0 : 1);
}
console.log(`size: within budget, ${verdict}`);
