// A reporter that says, at the end of a run, where its time went: the slowest tests, and the time of each file.
import { relative } from "node:path";

const MOST = 10;

export default class Slowest {
  #folder = "";
  #times = [];

  onBegin(config) {
    this.#folder = config.rootDir;
  }

  onTestEnd(test, result) {
    const place = `${relative(this.#folder, test.location.file)}:${test.location.line}`;
    this.#times.push({ file: place.split(":")[0], place, title: test.title, seconds: result.duration / 1000 });
  }

  onEnd() {
    if (!this.#times.length) return;
    const files = new Map();
    for (const { file, seconds } of this.#times) {
      const so = files.get(file) ?? { seconds: 0, tests: 0 };
      files.set(file, { seconds: so.seconds + seconds, tests: so.tests + 1 });
    }
    const slowest = this.#times.toSorted((a, b) => b.seconds - a.seconds).slice(0, MOST);
    const whole = [...files.values()].reduce((sum, { seconds }) => sum + seconds, 0);
    console.log(`\nThe slowest ${slowest.length} of ${this.#times.length} tests:`);
    for (const { place, title, seconds } of slowest) console.log(`${figure(seconds)}  ${place}  ${title}`);
    console.log(`\nThe time by file, ${whole.toFixed(0)} s in all:`);
    for (const [file, { seconds, tests }] of [...files].sort(([, a], [, b]) => b.seconds - a.seconds)) console.log(`${figure(seconds)}  ${file}, ${tests} tests`);
  }

  printsToStdio() {
    return true;
  }
}

const figure = (seconds) => `${seconds.toFixed(1).padStart(7)} s`;
