// What the specs of the app itself share. A spec imports `test`, `expect` and the rest of fixtures.js from here as well.
import { test as base } from "./fixtures.js";

export * from "./fixtures.js";
export { ADDRESSES, variants, waypoints } from "./addresses.js";
export { furnish, furnishByHand, loadExamples, loadExamplesByHand, meet, meetByHand } from "./book.js";
export { fieldsOf, foldFields, practiceFields, putRow, rows, said } from "./rows.js";
export { cost, coupleOf, go, hand, heading, keptList, line, notice, open } from "./touch.js";

/** The day on which the specs take place: a Wednesday. The dates in them do not age. */
export const TODAY = new Date("2026-11-25T10:00:00");

export const test = base.extend({
  context: async ({ context }, use) => {
    await context.clock.setFixedTime(TODAY);
    await use(context);
  },

  handset: async ({ handset }, use) => {
    const on = handset.on.bind(handset);
    handset.on = async () => {
      await on();
      await handset.context.clock.setFixedTime(TODAY);
    };
    await handset.context.clock.setFixedTime(TODAY);
    await use(handset);
  },
});

/** A figure that was measured, for whoever reads the report. */
export function figure(text) {
  test.info().annotations.push({ type: "figure", description: text });
  console.log(`figure: ${text}`);
}
