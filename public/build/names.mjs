// Gives what the WebAssembly asks of the page short names: wasm-bindgen's own carry a hash each, which no compressor can
// make small and which stand in the WebAssembly and in its glue (measured: 6 kB of the first load, brotli). Binaryen's own
// minify-imports leaves these names alone: it looks at the modules "env" and "wasi" only. The pass that looks at all of
// them renames what is exported too, and by that the files which are fetched later find their functions.

const IMPORTS = 2;
/** The module by which the WebAssembly knows its glue. */
const GLUE = "./bandwright_bg.js";

/** The same WebAssembly and glue with short names between them. */
export function shorten(wasm, glue) {
  const asked = new WebAssembly.Module(wasm);
  const names = [...new Set(WebAssembly.Module.imports(asked).filter((it) => it.module === GLUE).map((it) => it.name))];
  const taken = new Set(WebAssembly.Module.exports(asked).map((it) => it.name));
  const short = new Map(names.map((name, at) => [name, `_${at.toString(36)}`]));
  for (const [name, to] of short) {
    const whole = new RegExp(`\\b${name}\\b`, "g");
    if (taken.has(name) || !whole.test(glue)) throw new Error(`${name} cannot be called ${to}`);
    glue = glue.replace(whole, to);
  }
  const renamed = rename(wasm, short);
  if (!WebAssembly.validate(renamed)) throw new Error("with short names it is no WebAssembly any more");
  return { wasm: renamed, glue };
}

/** The WebAssembly with other names for what it imports from its glue. The core specification, 5.5.5, says what stands where. */
function rename(wasm, short) {
  let at = 8;
  const number = () => {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = wasm[at++];
      value += (byte & 0x7f) * 2 ** shift;
      if (byte < 0x80) return value;
    }
  };
  const text = () => {
    const length = number();
    return wasm.toString("utf8", at, (at += length));
  };
  const limits = () => {
    const bounded = wasm[at++] & 1;
    number();
    if (bounded) number();
  };
  const sections = [wasm.subarray(0, 8)];
  while (at < wasm.length) {
    const begin = at;
    const kind = wasm[at++];
    const end = number() + at;
    if (kind !== IMPORTS) {
      sections.push(wasm.subarray(begin, (at = end)));
      continue;
    }
    const parts = [];
    for (let left = number(); left > 0; left--) {
      const [module, name] = [text(), text()];
      const what = at;
      const described = [number, () => (at++, limits()), limits, () => (at += 2)][wasm[at++]];
      described();
      parts.push(written(module), written(module === GLUE ? short.get(name) : name), wasm.subarray(what, at));
    }
    const count = parts.length / 3;
    const body = Buffer.concat([leb(count), ...parts]);
    sections.push(Buffer.from([IMPORTS]), leb(body.length), body);
  }
  return Buffer.concat(sections);
}

function written(text) {
  return Buffer.concat([leb(Buffer.byteLength(text)), Buffer.from(text)]);
}

/** LEB128, unsigned. */
function leb(value) {
  const bytes = [];
  for (; value >= 0x80; value = Math.floor(value / 0x80)) bytes.push((value % 0x80) | 0x80);
  return Buffer.from([...bytes, value]);
}
