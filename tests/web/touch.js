// How a hand does things on the phone, what that costs it, and where on the screen it looks.
import { expect, hand as bareHand, ready } from "./fixtures.js";

/** A hand that taps and types. `put` replaces what a field holds, key by key; `press` and `follow` go by name. */
export function hand(page) {
  const thumb = bareHand(page);
  return Object.assign(thumb, {
    keys: 0,
    /** Types into whatever has the focus; `type` of the bare hand, counted. */
    async type(words) {
      thumb.keys += [...words].length;
      await page.keyboard.type(words);
    },
    /** Taps a field and waits, as a hand does, until the cursor is in it. */
    async enter(field) {
      await thumb.tap(field);
      await expect(field).toBeFocused();
    },
    /** Taps a field and types into it. */
    async write(field, words) {
      await thumb.enter(field);
      await thumb.type(words);
    },
    /** Taps a field and types over what it holds. */
    async put(field, words) {
      await thumb.enter(field);
      // As the phone's own "select all". Taps that follow each other faster than a thumb are taken for a double tap,
      // whose selection comes late: then once more.
      await expect(async () => {
        await field.selectText();
        await page.keyboard.press("Delete");
        expect(await field.inputValue()).toBe("");
      }).toPass({ timeout: 5000, intervals: [50] });
      await thumb.type(words);
    },
    /** Taps a button. */
    async press(name) {
      await thumb.tap(page.getByRole("button", { name, exact: typeof name === "string" }));
    },
    /** Taps a link. */
    async follow(name) {
      await thumb.tap(page.getByRole("link", { name, exact: typeof name === "string" }));
    },
    /** Taps one option of a group of radios. */
    async choose(group, name) {
      await thumb.tap(page.getByRole("group", { name: group }).getByRole("radio", { name, exact: true }));
    },
  });
}

// What a hand costs. A tap is every pointer press outside the on-screen keyboard. Its time is that of the keystroke-level
// model (Card, Moran and Newell 1980): 1.1 s to point and 1.35 s to make up one's mind, for every tap alike. A key is
// 0.33 s: 36 words a minute, the mean of 37,000 people typing on their phones (Palin and others 2019). Both from memory
// of the papers. The waiting for the app is not in it.
const TAP_S = 1.1 + 1.35;
const KEY_S = 0.33;

/** The seconds of hand time that a hand has cost, and the same in words. */
export function cost({ taps, keys }) {
  const seconds = taps * TAP_S + keys * KEY_S;
  return { seconds, text: `${taps} taps, ${keys} keys, ${seconds.toFixed(1)} s of hand time` };
}

/** A row of a list, by words in it. */
export const line = (page, words) => page.locator(".line", { hasText: words });

/** The heading of the screen. */
export const heading = (page) => page.locator("main h1");

/** The notice at the bottom of the screen. */
export const notice = (page) => page.locator(".notices .notice");

/** The preparation list as the couple's phone keeps it. */
export const keptList = (page) => page.evaluate(() => JSON.parse(JSON.parse(localStorage.getItem("bandwright.list"))));

/**
 * Goes to an address as from a link, without loading the page anew, and waits until its screen stands: until the app has
 * heard of the address, the file that the screen comes in has arrived, and its heading has the focus.
 */
export async function go(page, address) {
  await page.evaluate(async (address) => {
    const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const to = async (address) => {
      const { href } = new URL(address, location.href);
      const heard = new Promise((done) => {
        addEventListener("hashchange", function hear({ newURL }) {
          if (newURL !== href) return;
          removeEventListener("hashchange", hear);
          done();
        });
      });
      location.hash = address;
      await heard;
      do await drawn();
      while (document.querySelector("main[aria-busy=true]"));
    };
    // Where it is there already, by way of a place that is none.
    if (new URL(address, location.href).href === location.href) await to("#/no/such/other/place");
    await to(address);
  }, address);
}

/** Loads an address anew, as from a bookmark. */
export async function open(page, site, address = "") {
  await page.goto("about:blank");
  await page.goto(site.url + address);
  await ready(page);
}

/** The id of the couple whose screen is open. */
export function coupleOf(page) {
  return page.url().match(/#\/couple\/([0-9a-f]{32})/)[1];
}
