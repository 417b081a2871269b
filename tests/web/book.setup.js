// What most specs begin with, typed in once through the app and kept for all of them: see book.js.
import { keep } from "./book.js";
import { furnishByHand, loadExamplesByHand, meetByHand, test } from "./hand.js";

test("the example book", async ({ page, start }) => {
  await start();
  await loadExamplesByHand(page);
  await keep(page, "examples");
});

test("something at every address", async ({ page, start }) => {
  await start();
  await furnishByHand(page);
  await keep(page, "furnished");
});

test("a couple of whom all is known that a first form asks", async ({ page, start }) => {
  await start();
  await meetByHand(page, "Tess", { second: "Rowan", reach: "07700 900123", wedding: "22 May 2027" });
  await keep(page, "couple");
});
