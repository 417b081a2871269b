// The last step of a build, called by Trunk's post_build hook (and by tests, to make "the next version"):
// 0. in a build by Trunk: has the WebAssembly cut into what the first screen needs and what comes later, or with
//    SPLIT=no made small as it is (split.mjs);
// 1. joins the style files, in the page's order, into one named by its hash, and makes styles small;
// 2. hashes the inline scripts into the CSP, and refuses inline styles and handlers, which the CSP would block;
// 3. checks that the manifest names pictures that are there, in the sizes it says;
// 4. writes the list of files and their hashes into the service worker;
// 5. copies index.html to 404.html.
// Sealing twice changes nothing. A build for development has no service worker: what was just built is what is seen.
import { createHash } from "node:crypto";
import { cp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { transform } from "esbuild";
import { shrink, split } from "./split.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Seals the built app in `dir`; the list of files that the service worker keeps comes back. */
export async function seal(dir, { worker = true } = {}) {
  const screenshots = join(root, "public/screenshots");
  if (existsSync(screenshots)) await cp(screenshots, join(dir, "screenshots"), { recursive: true });
  await cp(join(root, "public/book.schema.json"), join(dir, "book.schema.json"));
  let page = await readFile(join(dir, "index.html"), "utf8");
  page = page.replace(/<!--[\s\S]*?-->/g, "").replace(/^\s+/gm, "");
  page = await joinStyles(dir, page);
  page = hashScripts(page);
  await writeFile(join(dir, "index.html"), page);
  await writeFile(join(dir, "404.html"), page);
  await checkManifest(dir);
  return worker ? writeWorker(dir) : [];
}

/** What the service worker keeps: all that a start needs, and the page itself as the address "./". */
export async function kept(dir) {
  const names = (await readdir(dir, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => relative(dir, join(entry.parentPath ?? entry.path, entry.name)))
    .filter((name) => !/^(sw\.js|404\.html|\.stage|screenshots\/.*|icons\/.*\.png|.*\.schema\.json)$/.test(name))
    .sort();
  return Promise.all(
    names.map(async (name) => ({
      name,
      address: name === "index.html" ? "./" : name,
      kind: name.split(".").pop(),
      hash: sha256(await readFile(join(dir, name))),
    })),
  );
}

async function joinStyles(dir, page) {
  const links = [...page.matchAll(/<link\b[^>]*rel="?stylesheet"?[^>]*>/g)].map(([link]) => link);
  if (!links.length) throw new Error("index.html links no style file");
  const files = links.map((link) => /href="?\.?\/?([^">\s]+)/.exec(link)[1]);
  let css = "";
  for (const file of files) css += (await readFile(join(dir, file), "utf8")).trim() + "\n";
  for (const file of files) await rm(join(dir, file));
  css = (await transform(css, { loader: "css", minify: true, target: "esnext" })).code;
  const name = `style-${short(css)}.css`;
  await writeFile(join(dir, name), css);
  links.forEach((link, i) => (page = page.replace(link, i === 0 ? `<link rel="stylesheet" href="./${name}">` : "")));
  return page;
}

function hashScripts(page) {
  const inline = /<style\b|<[^>]+\s(style|on[a-z]+)\s*=/i.exec(page.replace(/(<script\b[^>]*>)[\s\S]*?<\/script>/g, "$1"));
  if (inline) throw new Error(`index.html has an inline style or handler, which its CSP blocks: ${inline[0]}`);
  const hashes = [...page.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)]
    .filter(([, attributes]) => !/\bsrc=/.test(attributes))
    .map(([, , text]) => `'sha256-${sha256(text)}'`);
  let found = false;
  page = page.replace(/script-src ([^;"]*)/, (_, sources) => {
    found = true;
    const fixed = sources.split(" ").filter((source) => source && !source.startsWith("'sha256-"));
    return `script-src ${[...fixed, ...hashes].join(" ")}`;
  });
  if (!found) throw new Error("index.html has no CSP with a script-src");
  return page;
}

async function checkManifest(dir) {
  const manifest = JSON.parse(await readFile(join(dir, "manifest.webmanifest"), "utf8"));
  for (const { src, sizes, type } of [...manifest.icons, ...(manifest.screenshots ?? [])]) {
    const bytes = await readFile(join(dir, src)).catch(() => {
      throw new Error(`manifest.webmanifest names ${src}, which is not there`);
    });
    const actual = type === "image/png" ? `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}` : sizes;
    if (actual !== sizes) throw new Error(`manifest.webmanifest says ${src} is ${sizes}; it is ${actual}`);
  }
}

async function writeWorker(dir) {
  const template = await readFile(join(root, "public/sw.js"), "utf8");
  const list = await kept(dir);
  const files = JSON.stringify(list.map(({ address, kind, hash }) => [address, kind, hash]));
  const version = short(template + files);
  const worker = template
    .replace('const VERSION = "";', () => `const VERSION = "${version}";`)
    .replace("const FILES = [];", () => `const FILES = ${files};`);
  if (!worker.includes(version) || !worker.includes(files)) throw new Error("public/sw.js has lost its two constants");
  const { code } = await transform(worker, { minifyWhitespace: true, target: "esnext", legalComments: "none" });
  await writeFile(join(dir, "sw.js"), code);
  return list;
}

/** Every style file of the project has to be in the page: a forgotten one would be missed only by eye. */
async function checkStyles() {
  const page = await readFile(join(root, "public/index.html"), "utf8");
  for (const entry of await readdir(join(root, "style"), { recursive: true }))
    if (entry.endsWith(".css") && !page.includes(`"../style/${entry}"`))
      throw new Error(`style/${entry} is not listed in public/index.html`);
}

function short(text) {
  return createHash("sha256").update(text).digest("hex").slice(0, 16);
}

function sha256(bytes) {
  return createHash("sha256").update(bytes).digest("base64");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await checkStyles();
  const { TRUNK_STAGING_DIR, TRUNK_PROFILE, CARGO_TARGET_DIR, SPLIT } = process.env;
  const small = TRUNK_PROFILE === "release";
  if (TRUNK_STAGING_DIR && SPLIT === "no") {
    if (small) await shrink(TRUNK_STAGING_DIR);
  } else if (TRUNK_STAGING_DIR) {
    const profile = small ? "release" : "debug";
    const built = join(CARGO_TARGET_DIR ?? join(root, "target"), "wasm32-unknown-unknown", profile, "bandwright.wasm");
    await split(built, TRUNK_STAGING_DIR, { small });
  }
  const list = await seal(TRUNK_STAGING_DIR ?? join(root, "dist"), { worker: !TRUNK_STAGING_DIR || small });
  console.log(`sealed: ${list.length} files for the service worker`);
}
