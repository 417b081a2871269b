// At length, as `make prove` does (AT_LENGTH=yes): every field of every screen is fed with all that people should not type,
// and with what they may. One field of a kind and one of a screen are fed in every run: fields.spec.js.
//
// The fields are enumerated from the page itself. A bad input gets exactly one sentence beside its field that says what
// would be right; what was typed stays; nothing is saved; nothing breaks (the guard sees page errors). A good one is
// taken without a word.
import { arrive, byHand, chooseAll, complaints, feed, feedBesides, fieldsHere, rows } from "./feeding.js";
import { choice, FIELDS, INPUTS, KINDS } from "./fields.js";
import { expect, furnish, hand, said, test } from "./hand.js";

/** Of a screen at a second address of the same kind, of the last ring, of the bands between the first and the last and of
    the points of a gauge after the first, these are fed; the other fields of further rings are not: it is the same code. */
const ONCE_MORE = ["text", "large", "past day"];

const DOTS = { couple: "…", appointment: "…", ring: "…", gauge: "…", tryOn: "…", extra: "…", closure: "…", phone: "…" };
/** Pages of the list that only have something to read, or lead somewhere. */
const TO_READ = /^#\/list(\/(bring|measure|send))?$/;
const fed = process.env.AT_LENGTH === "yes" ? rows.filter(({ name, at }) => FIELDS[name] && !TO_READ.test(at(DOTS))) : [];

test.describe.configure({ timeout: 240_000 });

for (const { name, at, again } of fed)
  test(`${name} ${at(DOTS)}: every field of it`, async ({ page, start }) => {
    // It has as many fields as three of the others.
    if (name === "Calculator::Stack") test.setTimeout(600_000);
    await start();
    const ids = at({}).includes("undefined") || name.startsWith("Calculator") ? await furnish(page) : {};
    await arrive(page, name, at(ids));
    const keys = [...new Map((await fieldsHere(page)).map((field) => [field.key, field.typed]))];
    expect.soft(keys.length, "fields were found").toBeGreaterThan(0);

    // From the last to the first: a way to reach them that is taken out moves up those after it.
    for (const [key, typed] of keys.reverse().filter(([key]) => !/^(ring[2-6]-|ring7-(?!width|name))/.test(key))) {
      const kind = FIELDS[name][key];
      if (kind && typed) await feedAll(key, KINDS[kind] ?? kind);
      else if (kind) {
        await arrive(page, name, at(ids));
        await chooseAll(page, key);
        expect.soft(await complaints(page), key).toEqual([]);
      }
    }

    async function feedAll(key, { takes, ...says }) {
      let fresh = false;
      let before;
      const inputs = Object.entries(INPUTS).filter(([what]) => !(again || /^(ring7|band[23]|cal[2-5])-|-second$/.test(key)) || ONCE_MORE.includes(what));
      for (const [what, words] of inputs) {
        const label = `${key}, ${what}`;
        if (!fresh) {
          await arrive(page, name, at(ids));
          await feedBesides(page, name, key, byHand);
          before = await said(page);
          fresh = true;
        }
        const sends = await feed(page, key, words, byHand);
        await page.evaluate(() => new Promise((done) => setTimeout(done, 60)));
        if (takes.includes(what)) {
          expect.soft(await complaints(page), label).toEqual([]);
          fresh = !sends;
          continue;
        }
        const complained = await complaints(page);
        expect.soft(complained.map(([of]) => of), `${label}: one complaint, beside the field`).toEqual([key]);
        if (complained.length === 0) {
          fresh = false;
          continue;
        }
        const [, sentence] = complained[0];
        expect.soft(sentence, label).toMatch(says[what] ?? says.says);
        expect.soft(sentence.match(/[.!?](\s|$)/g), `${label}: one sentence: ${sentence}`).toHaveLength(1);
        expect.soft(await page.locator(`#${key}`).inputValue(), `${label}: what was typed stays`).toBe(words);
        expect.soft(await said(page), `${label}: nothing is saved`).toEqual(before);
      }
      // The next field begins with what is good in this one.
      await arrive(page, name, at(ids));
      const discard = page.getByRole("button", { name: /^(Throw them away|Start afresh|Back to their own figures)$/ });
      if (await discard.count()) await hand(page).tap(discard);
      // On the couple's list nothing is saved or thrown away: what is typed is what stands.
      if (name === "Address::List") await hand(page).put(page.locator(`#${key}`), "");
      // A calculator writes its address, and what it will remember, a moment later.
      if (name.startsWith("Calculator")) await page.waitForTimeout(500);
    }
  });
