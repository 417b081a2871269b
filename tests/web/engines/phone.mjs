// A phone with one of the engines, and a finger on it: the words in which journeys are told.
//
// Each of them is a step: it waits until what it is about is there, and fails with what the page says instead.
import { mkdirSync, openSync, rmSync } from "node:fs";
import { mkdtemp, writeFile } from "node:fs/promises";
import { once } from "node:events";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { listens, open } from "./client.mjs";
import { ENGINES } from "./drivers.mjs";
import * as page from "./page.mjs";
import { Processes, freePort, pause } from "./processes.mjs";

const PATIENCE = 30_000;

// What a finger meets too: a row that is drawn anew under it, a notice that goes away in a moment.
const AGAIN = ["stale element reference", "element click intercepted", "element not interactable"];

export class Phone {
  steps = 0;
  #engine;
  #log;
  #profile;
  #processes;
  #session;

  /** A new phone, switched off. What its programs write goes into a file in `results`. */
  static async make(name, results) {
    const phone = new Phone();
    mkdirSync(results, { recursive: true });
    phone.name = name;
    phone.#engine = ENGINES[name];
    phone.#log = openSync(join(results, `${name}.log`), "w");
    phone.#profile = await mkdtemp(join(tmpdir(), "engines-"));
    phone.#processes = new Processes(phone.#profile);
    process.on("exit", phone.#lost);
    await phone.#engine.prepare?.(phone.#profile);
    return phone;
  }

  async on() {
    const environment = { ...this.#engine.environment };
    if (this.#engine.screen) environment.DISPLAY = await this.#screen();
    const port = await freePort();
    const url = `http://127.0.0.1:${port}`;
    await this.#processes.start(this.#engine.driver(port), { environment, log: this.#log });
    await this.#until("its driver listens", () => listens(url));
    this.#session = await open(url, this.#engine.capabilities(this.#profile));
    this.name = this.name.split(" ")[0] + " " + this.#session.version;
  }

  /** Closes the browser, and waits until it is gone. */
  async off() {
    await this.#session.close();
    await this.#processes.closed();
    await this.#processes.end();
    this.#session = undefined;
  }

  /** Whatever has happened: nothing of it stays. */
  async end() {
    await this.#session?.close().catch(() => {});
    await this.#processes.end();
    process.off("exit", this.#lost);
    this.#forget();
  }

  /** Loads an address, and waits until the app can be used. */
  async open(url) {
    this.steps += 1;
    await this.#session.go(url).catch((error) => this.#fail(`going to ${url}: ${error.message}`));
    await this.#until("the app can be used", () => this.#session.run(page.usable));
  }

  /** Waits until the app is kept on the phone and needs no server any more. */
  async kept() {
    this.steps += 1;
    await this.#until("the app is kept on the phone", () => this.#session.run(page.kept));
  }

  press = (name) => this.#tap("button", name);
  follow = (name) => this.#tap("link", name);
  choose = (group, name) => this.#tap("radio", name, group);

  /** Types into a field that is empty. */
  async write(label, words) {
    await this.#tap("field", label);
    const field = await this.#session.run(page.control, "field", label);
    await this.#session.type(field, words);
    await this.#until(`"${label}" holds "${words}"`, async () => (await this.#session.run(page.value, field)) === words);
  }

  heading = (words) => this.#reads("the heading", words, page.heading);
  row = (name, words) => this.#reads(`the row "${name}"`, words, page.row, name);

  size = async () => this.#session?.run(page.size);
  screenshot = async (file) => this.#session && writeFile(file, await this.#session.screenshot());

  async #tap(kind, name, group) {
    this.steps += 1;
    await this.#until(`${kind} "${name}" can be tapped`, async () => {
      const control = await this.#session.run(page.control, kind, name, group ?? null);
      if (!control) return false;
      await this.#session.click(control);
      return true;
    });
  }

  async #reads(what, words, read, ...args) {
    this.steps += 1;
    await this.#until(`${what} reads "${words}"`, async () => (await this.#session.run(read, ...args)) === words);
  }

  async #until(what, there) {
    for (const late = Date.now() + PATIENCE; ; await pause(50)) {
      try {
        if (await there()) return;
      } catch (error) {
        if (!AGAIN.includes(error.code)) this.#fail(`until ${what}: ${error.message}`);
      }
      if (Date.now() > late) this.#fail(`not within ${PATIENCE / 1000} s: ${what}. ${await this.#instead()}`);
    }
  }

  #fail(text) {
    throw new Error(`step ${this.steps}: ${text}`);
  }

  async #instead() {
    return this.#session?.run(page.everything).catch((error) => error.message);
  }

  /** The journeys are broken off. */
  #lost = () => {
    this.#processes.kill();
    this.#forget();
  };

  #forget() {
    rmSync(this.#profile, { recursive: true, force: true, maxRetries: 5 });
  }

  async #screen() {
    const screen = ["Xvfb", "-displayfd", "3", "-screen", "0", "800x1000x24", "-noreset", "-nolisten", "tcp"];
    const program = await this.#processes.start(screen, { log: this.#log });
    const [number] = await once(program.stdio[3], "data");
    return `:${String(number).trim()}`;
  }
}
