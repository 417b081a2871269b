// A plain static file server on the loopback, as any host would be: no rewriting, 404.html for what is not there.
// As a program (`make serve`): node tests/web/server.mjs [folder] [port].
// As a module (tests): it can also be stopped, moved to another folder, and made to lie.
import { createReadStream } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

/** Serves `folder` under `base` ("/" or "/some/path/"). Port 0 takes a free one and keeps it over stop and start. */
export async function serve(folder, { base = "/", port = 0 } = {}) {
  const lies = new Map();
  const asked = [];
  let told = 0;
  let server;

  async function answer(request, response) {
    const { pathname } = new URL(request.url, "http://localhost");
    asked.push(pathname);
    if (!pathname.startsWith(base)) return send(response, 404, "text/plain", "not here");
    const name = decodeURIComponent(pathname.slice(base.length)) || "index.html";
    const lie = lies.get(name);
    if (lie) told += 1;
    if (lie) return send(response, lie.status, lie.type, lie.body);
    const file = normalize(join(folder, name));
    if (file.startsWith(normalize(join(folder, "/"))) && (await stat(file).catch(() => null))?.isFile()) {
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream", "cache-control": "no-cache" });
      return createReadStream(file).pipe(response);
    }
    send(response, 404, TYPES[".html"], await readFile(join(folder, "404.html")).catch(() => "not found"));
  }

  const site = {
    /** Every path that was asked for, in order. */
    asked,
    /** How many lies were told so far. */
    get lies() {
      return told;
    },
    get url() {
      return `http://127.0.0.1:${port}${base}`;
    },
    /** From now on serves another folder: the next version, say. */
    use(other) {
      folder = other;
    },
    /** Answers one file with something else: by default what a fair's log-in page would be, 200 and text/html. */
    lie(name, { status = 200, type = "text/html", body = "<h1>Log in to Hall WiFi</h1>" } = {}) {
      lies.set(name, { status, type, body });
    },
    /** Tells the truth again. */
    truth() {
      lies.clear();
    },
    async start() {
      if (server) return;
      server = createServer((request, response) => answer(request, response).catch(() => response.destroy()));
      await new Promise((done, fail) => server.once("error", fail).listen(port, "127.0.0.1", done));
      port = server.address().port;
    },
    /** The server is gone: nothing answers, open connections are cut. */
    async stop() {
      if (!server) return;
      const closing = new Promise((done) => server.close(done));
      server.closeAllConnections();
      server = undefined;
      await closing;
    },
  };
  await site.start();
  return site;
}

function send(response, status, type, body) {
  response.writeHead(status, { "content-type": type, "cache-control": "no-cache" });
  response.end(body);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder = "dist", port = "8017"] = process.argv.slice(2);
  const site = await serve(folder, { port: Number(port) }).catch((error) => {
    console.error(error.code === "EADDRINUSE" ? `Port ${port} is taken: choose another with PORT=...` : error.message);
    process.exit(1);
  });
  console.log(`Bandwright is at ${site.url} (Ctrl-C stops it)`);
}
