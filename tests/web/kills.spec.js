// A browser is killed while the app opens for the first time, and then in the midst of writing; `make prove-kills` does
// that 500 times at random moments. How it is done stands in kills.mjs.
import { DIST, expect, figure, test } from "./hand.js";
import { kill, told } from "./kills.mjs";

/** Another one each day it runs: it is printed. */
const SEED = Math.floor(Date.now() / 86_400_000);
const FEW = { kills: 2, shown: 6, seed: SEED, dist: DIST };

test("a browser killed while it writes has everything that was shown as saved", async () => {
  const figures = await kill(FEW);
  figure(told(SEED, figures));
  expect(figures.lost).toEqual([]);
  expect(figures.faults).toEqual([]);
  expect(figures.kills).toBe(2);
  expect(figures.shown).toBeGreaterThanOrEqual(6);
});

test("a phone that forgets some of what it says it has written is found out", async () => {
  const figures = await kill({ ...FEW, shown: 2, spoil: forgetSome });
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
