// `make test-engines`: every journey in every engine, on a new phone each time, with a server of its own.
//
//   node tests/web/engines/run.mjs [folder]     the built app, dist/ if nothing is said
//   ENGINE=Firefox                              in one of them alone
//
// What the phones showed at the end, and what their programs wrote, is in test-results/engines/.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { serve } from "../server.mjs";
import { ENGINES } from "./drivers.mjs";
import { journeys } from "./journeys.mjs";
import { Phone } from "./phone.mjs";

const RESULTS = "test-results/engines";
const [folder = "dist"] = process.argv.slice(2);
const engines = process.env.ENGINE ? process.env.ENGINE.split(",") : Object.keys(ENGINES);

if (!existsSync(join(folder, "index.html"))) throw new Error(`There is no built app in ${folder}: make dist`);
const unknown = engines.find((engine) => !ENGINES[engine]);
if (unknown) throw new Error(`${unknown} is none of ${Object.keys(ENGINES).join(", ")}`);
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, () => process.exit(1));

let passed = 0;
let failed = 0;
for (const engine of engines) {
  for (const [at, journey] of journeys.entries()) {
    if (await taken(engine, journey, at + 1)) passed += 1;
    else failed += 1;
  }
}
console.log(`  ${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;

async function taken(engine, { name, take }, number) {
  const began = Date.now();
  const site = await serve(folder);
  const phone = await Phone.make(engine, RESULTS);
  const faults = [];
  const note = (error) => faults.push(error.message);
  try {
    await phone.on();
    await take(phone, site);
  } catch (error) {
    note(error);
  }
  const size = await phone.size().catch(note);
  await phone.screenshot(join(RESULTS, `${engine}-${number}.png`)).catch(note);
  await phone.end().catch(note);
  await site.stop();
  const seconds = ((Date.now() - began) / 1000).toFixed(1);
  console.log(`${faults.length ? "FAILED" : "passed"}  ${phone.name} (${size}): ${name}, ${phone.steps} steps, ${seconds} s`);
  for (const fault of faults) console.log(`        ${fault}`);
  return faults.length === 0;
}
