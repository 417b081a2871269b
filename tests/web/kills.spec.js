// A few kills of the browser in the midst of writing; `make prove-kills` does 500. How it is done stands in kills.mjs.
import { DIST, expect, figure, test } from "./hand.js";
import { kill, told } from "./kills.mjs";

/** Another one each day it runs: it is printed. */
const SEED = Math.floor(Date.now() / 86_400_000);

test("a browser killed while it writes has everything that was shown as saved", async () => {
  test.setTimeout(300_000);
  const figures = await kill({ kills: 5, seed: SEED, dist: DIST });
  figure(told(SEED, figures));
  expect(figures.lost).toEqual([]);
  expect(figures.faults).toEqual([]);
  expect(figures.kills).toBe(5);
  expect(figures.shown).toBeGreaterThan(5);
});

test("a phone that forgets some of what it says it has written is found out", async () => {
  test.setTimeout(300_000);
  const figures = await kill({ kills: 3, seed: SEED, dist: DIST, spoil: forgetSome });
  expect(figures.lost.length, told(SEED, figures)).toBeGreaterThan(0);
});

/** Runs in the page: every second record is not written, and the app hears that it was. */
function forgetSome() {
  const put = IDBObjectStore.prototype.put;
  let times = 0;
  IDBObjectStore.prototype.put = function (value, key) {
    times += this.name === "records";
    return this.name === "records" && times % 2 === 0 ? this.get(key) : put.call(this, value, key);
  };
}
