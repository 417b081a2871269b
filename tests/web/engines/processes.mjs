// Every process that a phone needs, and that all of them end.
//
// A program is started as the head of a group of processes. What it starts belongs to that group, or has the profile's
// folder, which nobody else knows, among its arguments.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync, readdirSync } from "node:fs";
import { createServer } from "node:net";

const PATIENCE = 30_000;

export class Processes {
  #profile;
  #heads = new Set();

  constructor(profile) {
    this.#profile = profile;
  }

  /** Starts a program. Its output goes to `log`, a file's descriptor; what it writes to descriptor 3 can be read. */
  async start([command, ...args], { environment = {}, log }) {
    const env = { ...process.env, ...environment };
    const program = spawn(command, args, { detached: true, stdio: ["ignore", log, log, "pipe"], env });
    await once(program, "spawn");
    this.#heads.add(program.pid);
    return program;
  }

  /** Waits until whatever the programs have started has ended by itself: a browser that was closed. */
  async closed() {
    await this.#until((it) => this.#heads.has(it.pid));
  }

  /** Ends all of it. */
  async end() {
    this.#signal("SIGTERM");
    await this.#until(() => false).finally(() => this.kill());
    this.#heads.clear();
  }

  /** Ends all of it at once. */
  kill() {
    this.#signal("SIGKILL");
  }

  async #until(mayStay) {
    for (const late = Date.now() + PATIENCE; ; await pause(20)) {
      const left = this.#running().filter((it) => !mayStay(it));
      if (left.length === 0) return;
      if (Date.now() > late) throw new Error(`after ${PATIENCE / 1000} s there still runs: ${left.map(({ name }) => name).join(", ")}`);
    }
  }

  #signal(signal) {
    for (const { pid } of this.#running()) {
      try {
        process.kill(pid, signal);
      } catch {
        // It has ended meanwhile.
      }
    }
  }

  #running() {
    return everything().filter(({ group, args }) => this.#heads.has(group) || args.includes(this.#profile));
  }
}

/** What runs on this machine, without what has ended and only waits for somebody to take note of it. */
function everything() {
  const found = [];
  for (const pid of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
    try {
      const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
      const [state, , group] = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
      const name = stat.slice(stat.indexOf("(") + 1, stat.lastIndexOf(")"));
      const args = readFileSync(`/proc/${pid}/cmdline`, "utf8");
      if (state !== "Z") found.push({ pid: Number(pid), name, group: Number(group), args });
    } catch {
      // It has ended meanwhile.
    }
  }
  return found;
}

/** A port on which nobody listens. */
export async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address();
  server.close();
  await once(server, "close");
  return port;
}

export const pause = (ms) => new Promise((done) => setTimeout(done, ms));
