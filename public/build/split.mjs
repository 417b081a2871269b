// Cuts the WebAssembly that cargo built at the functions marked in src/screens/later/files.rs: a first file with all that
// the first screen needs, and further files that are fetched later. Called by seal.mjs in a build by Trunk, whose
// own output from the whole WebAssembly it replaces.
import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdir, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { build } from "esbuild";
import { shorten } from "./names.mjs";

const run = promisify(execFile);
const FEATURES = ["--enable-bulk-memory", "--enable-mutable-globals", "--enable-nontrapping-float-to-int", "--enable-reference-types", "--enable-multivalue", "--enable-sign-ext"];
/** Small, then twice with its branches drawn anew and small again: a hundredth less than "-Oz" alone, 2.2 kB of the first
 *  load. What is fetched later is three times as large, and would take a minute of each build for 3 kB. */
const AGAIN = ["--flatten", "--rereloop", "-Oz", "-Oz"];
const SMALL = ["-Oz", ...AGAIN, ...AGAIN];

/** Splits `wasm` and puts what comes of it into `dir`; index.html there is made to name the new files. */
export async function split(wasm, dir, { small }) {
  const work = `${wasm}.split`;
  await rm(work, { recursive: true, force: true });
  await mkdir(work, { recursive: true });
  await run("wasm-split-cli", [wasm, work, "--out-name", "bandwright"]);
  const link = (await readdir(work)).find((name) => name.endsWith(".js"));
  await run("wasm-bindgen", [
    join(work, "bandwright.wasm"), "--target", "web", "--no-typescript", "--keep-lld-exports", "--omit-default-module-path",
    "--out-dir", join(work, "glue"), "--out-name", "bandwright",
  ]);
  const files = { "bandwright_bg.wasm": join(work, "glue", "bandwright_bg.wasm") };
  for (const name of await readdir(work))
    if (name.endsWith(".wasm") && name !== "bandwright.wasm") files[name] = join(work, name);

  // The link module and the glue import each other: they become one file.
  await writeFile(join(work, "glue", link), await readFile(join(work, link)));
  const bundle = await build({
    entryPoints: [join(work, "glue", "bandwright.js")],
    bundle: true, write: false, format: "esm", minify: small, target: "esnext",
    logOverride: { "duplicate-object-key": "silent" }, // the glue names the link module once a file
  });
  let glue = bundle.outputFiles[0].text;

  let main;
  for (const [name, path] of Object.entries(files)) {
    if (small) await run("wasm-opt", [...(name === "bandwright_bg.wasm" ? SMALL : ["-Oz"]), ...FEATURES, path, "-o", path]);
    let bytes = await readFile(path);
    if (small && name === "bandwright_bg.wasm") ({ wasm: bytes, glue } = shorten(bytes, glue));
    const named = `${name.replace(/(_bg)?\.wasm$/, "").replace(/^split_/, "").replace(/^chunk_/, "shared-")}-${short(bytes)}.wasm`;
    if (name === "bandwright_bg.wasm") main = named;
    else glue = glue.replaceAll(name, named);
    await writeFile(join(dir, named), bytes);
  }
  const script = `bandwright-${short(glue)}.js`;

  let page = await readFile(join(dir, "index.html"), "utf8");
  for (const name of await readdir(dir)) {
    const to = /^bandwright-.*\.js$/.test(name) ? script : /^bandwright-.*\.wasm$/.test(name) && name !== main ? main : null;
    if (!to) continue;
    if (!page.includes(name)) throw new Error(`index.html does not name ${name}`);
    page = page.replaceAll(name, to);
    await rm(join(dir, name));
  }
  await writeFile(join(dir, script), glue);
  await writeFile(join(dir, "index.html"), page);
}

/** Makes the WebAssembly in `dir` small as it is, in one file. */
export async function shrink(dir) {
  const wasm = (await readdir(dir)).find((name) => name.endsWith(".wasm"));
  await run("wasm-opt", ["-Oz", ...FEATURES, join(dir, wasm), "-o", join(dir, wasm)]);
}

function short(bytes) {
  return createHash("sha256").update(bytes).digest("hex").slice(0, 16);
}
