// What specs of the couple's list have in common.
import { phone } from "./browser.js";
import { TODAY, go, hand } from "./hand.js";

/** The link with which they are invited. */
export const INVITED = "#/list?for=Ada&with=Ben&when=2027-05-22T10%3A00&region=scotland";

/** A second phone, with a book of its own. */
export async function secondPhone(browser, guard) {
  const context = await browser.newContext({ ...phone, acceptDownloads: true });
  guard.follow(context);
  await context.clock.setFixedTime(TODAY);
  return context.newPage();
}

/** Fills in a few answers of every kind. */
export async function fill(page, { recorded = "yes" } = {}) {
  const thumb = hand(page);
  for (const [address, fields] of [
    ["#/list/two", { "name-first": "Ada", "name-second": "Ben" }],
    ["#/list/wedding", { wedding: "22 May 2027", "needed-by": "by the end of April" }],
    ["#/list/rings", { "owns-rings-first-some": null, "ring-name-first-1": "engagement ring", "ring-width-first-1": "2,6", "ring-how-first-1-ruler": null }],
    ["#/list/look", { "colour-second-yellow": null, "nickel-free-first-yes": null, "likes-first": "narrow “and” plain" }],
    ["#/list/privacy", { [`recorded-${recorded}`]: null }],
  ]) {
    await go(page, address);
    for (const [id, words] of Object.entries(fields)) {
      if (words === null) await thumb.tap(page.locator(`#${id}`));
      else await thumb.put(page.locator(`#${id}`), words);
    }
  }
}
