// The words of buttons, links and fields as the app has them: `say.screens.SAVE` is the constant SAVE of
// src/words/screens.rs, `say.list.taking.FIRST` that of src/words/list/taking.rs. Specs find controls by these, so that a
// rewording touches one file. A name that is not there throws.
import { readFileSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../src/words/", import.meta.url));
const CONSTANT = /pub const ([A-Z0-9_]+): &str\s*=\s*"((?:[^"\\]|\\[\s\S])*)";/g;

/** A text as Rust reads it: a line that ends with a backslash goes on where the next one begins. */
const text = (literal) => literal.replace(/\\\n\s*/g, "").replace(/\\(["\\])/g, "$1");

const strict = (words, path) =>
  new Proxy(words, {
    get(_, name) {
      if (!(name in words)) throw new Error(`src/words has no ${[...path, name].map(String).join(".")}`);
      return words[name];
    },
  });

const all = {};
for (const file of readdirSync(folder, { recursive: true }).filter((name) => name.endsWith(".rs"))) {
  const path = file.replace(/\.rs$/, "").split(/[\\/]/).filter((part) => part !== "mod");
  const words = path.reduce((at, part) => (at[part] ??= {}), all);
  for (const [, name, literal] of readFileSync(folder + file, "utf8").matchAll(CONSTANT)) words[name] = text(literal);
}

const closed = (words, path) => {
  for (const [name, value] of Object.entries(words)) if (typeof value === "object") words[name] = closed(value, [...path, name]);
  return strict(words, path);
};

export const say = closed(all, []);
