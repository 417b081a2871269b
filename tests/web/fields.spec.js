// Every field of every screen is fed with what people should not type, and with what they may.
//
// The fields are enumerated from the page itself: one without a row in FIELDS fails, and so does a row without a field.
// A bad input gets exactly one sentence beside its field that says what would be right; what was typed stays; nothing is
// saved; nothing breaks (the guard sees page errors). A good one is taken without a word.
import { ALL_OF, BESIDES, choice, FIELDS, INPUTS, KINDS, SHOW } from "./fields.js";
import { ADDRESSES, expect, furnish, go, hand, meet, said, test } from "./hand.js";

/** Of a screen at a second address of the same kind, of the last ring, of the bands between the first and the last and of
    the points of a gauge after the first, these are fed; the other fields of further rings are not: it is the same code. */
const ONCE_MORE = ["text", "large", "past day"];

const DOTS = { couple: "…", appointment: "…", ring: "…", gauge: "…", tryOn: "…", extra: "…", closure: "…", phone: "…" };

test.describe.configure({ timeout: 240_000 });

const rows = ADDRESSES.map(([name, at], i) => ({ name, at, again: name !== "Address::List" && ADDRESSES.findIndex(([other]) => other === name) < i }));
/** Pages of the list that only have something to read, or lead somewhere. */
const TO_READ = /^#\/list(\/(bring|measure|send))?$/;

for (const { name, at, again } of rows.filter(({ name, at }) => FIELDS[name] && !TO_READ.test(at(DOTS))))
  test(`${name} ${at(DOTS)}: every field of it`, async ({ page, start }) => {
    // It has as many fields as three of the others.
    if (name === "Calculator::Stack") test.setTimeout(600_000);
    await start();
    const ids = at({}).includes("undefined") || name.startsWith("Calculator") ? await furnish(page) : {};
    const address = (ALL_OF[name] ?? ((address) => address))(at(ids));
    const thumb = hand(page);
    const arrive = async () => {
      await go(page, address);
      await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
      await SHOW[name]?.(page);
    };
    await arrive();
    const keys = [...new Map((await fieldsHere(page)).map((field) => [field.key, field.typed]))];
    expect.soft(keys.filter(([key, typed]) => !FIELDS[name][key] || (FIELDS[name][key] === choice) === typed).map(([key]) => key), "fields without a row").toEqual([]);
    expect.soft(keys.length, "fields were found").toBeGreaterThan(0);

    // From the last to the first: a way to reach them that is taken out moves up those after it.
    for (const [key, typed] of keys.reverse().filter(([key]) => !/^(ring[2-6]-|ring7-(?!width|name))/.test(key))) {
      const kind = FIELDS[name][key];
      if (kind && typed) await feed(key, KINDS[kind] ?? kind);
      else if (kind) await chooseAll(key);
    }

    async function feed(key, { takes, ...says }) {
      let fresh = false;
      let before;
      const inputs = Object.entries(INPUTS).filter(([what]) => !(again || /^(ring7|band[23]|cal[2-5])-|-second$/.test(key)) || ONCE_MORE.includes(what));
      for (const [what, words] of inputs) {
        const label = `${key}, ${what}`;
        if (!fresh) {
          await arrive();
          for (const [other, text] of Object.entries(BESIDES[name] ?? {})) if (other !== key) await thumb.put(page.locator(`#${other}`), text);
          before = await said(page);
          fresh = true;
        }
        const field = page.locator(`#${key}`);
        await thumb.put(field, words.length < 100 ? words : "");
        // Nobody types ten thousand characters: they are pasted.
        if (words.length >= 100) await page.keyboard.insertText(words);
        const save = page.getByRole("button", { name: /^(Save|Add note|Add reading)$/ });
        const sends = (await save.count()) > 0;
        if (sends) await thumb.tap(save);
        else await page.keyboard.press("Tab");
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
        expect.soft(await field.inputValue(), `${label}: what was typed stays`).toBe(words);
        expect.soft(await said(page), `${label}: nothing is saved`).toEqual(before);
      }
      // The next field begins with what is good in this one.
      await arrive();
      const discard = page.getByRole("button", { name: /^(Throw them away|Start afresh|Back to their own figures)$/ });
      if (await discard.count()) await thumb.tap(discard);
      // On the couple's list nothing is saved or thrown away: what is typed is what stands.
      if (name === "Address::List") await thumb.put(page.locator(`#${key}`), "");
      // A calculator writes its address, and what it will remember, a moment later.
      if (name.startsWith("Calculator")) await page.waitForTimeout(500);
    }

    async function chooseAll(key) {
      await arrive();
      const box = page.locator(key === "extra-own" ? `[name^="extra-"]` : `[name="${key}"]`);
      const options = await box.evaluateAll((boxes) => boxes.map((box) => (box.type === "radio" ? box.value : [...(box.options ?? [])].map(({ value }) => value))).flat());
      if ((await box.first().evaluate((box) => box.type)) === "checkbox") {
        await thumb.tap(box.first());
        await thumb.tap(box.first());
      } else if ((await box.first().evaluate((box) => box.type)) === "radio") for (const value of options) await thumb.tap(page.locator(`[name="${key}"][value="${value}"]`));
      else for (const value of options) await box.selectOption(value);
      expect.soft(await complaints(page), key).toEqual([]);
    }
  });

test("screens without a row have no field, and no row is without a field", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  // Two fields that show only then: which of several readings is meant, and the couples that were put away.
  await go(page, `#/couple/${ids.couple}`);
  await hand(page).press("Put away");
  await expect(page.locator(".notices")).toContainText("put away");
  const seen = {};
  for (const { name, at } of rows) {
    await go(page, (ALL_OF[name] ?? ((address) => address))(at(ids)));
    await SHOW[name]?.(page);
    seen[name] = [...(seen[name] ?? []), ...(await fieldsHere(page)).map(({ key }) => key)];
  }
  await go(page, `#/couple/${ids.couple}/finger/first`);
  await page.locator("#gauge").selectOption({ index: 0 });
  seen["Part::Finger"].push(...(await fieldsHere(page)).map(({ key }) => key));
  // The figures of the other ways, and the free length of another finger with a ring.
  for (const way of ["lower", "gap"]) {
    await go(page, `#/couple/${ids.couple}/remedy/first`);
    await page.locator(`#remedy-${way}`).tap();
    seen["Part::Remedy"].push(...(await fieldsHere(page)).map(({ key }) => key));
  }
  await go(page, `#/couple/${ids.couple}/rings/first/new`);
  await page.locator("#shoulder-width").fill("3");
  await page.locator("#hand-right").tap();
  await page.locator("#digit").selectOption("middle");
  await hand(page).press("Save");
  await expect(page.locator("#shoulder-width"), "the form is left").toHaveCount(0);
  await go(page, `#/bench/stack?couple=${ids.couple}&who=first`);
  seen["Calculator::Stack"].push(...(await fieldsHere(page)).map(({ key }) => key));
  await go(page, "#/bench/size?q=6");
  seen["Calculator::Size"].push(...(await fieldsHere(page)).map(({ key }) => key));
  // What leaves is offered of no invented couple.
  await go(page, `#/couple/${await meet(page, "Tess")}/plan`);
  seen["Part::Plan"].push(...(await fieldsHere(page)).map(({ key }) => key));
  for (const name of new Set(rows.map(({ name }) => name))) {
    const listed = Object.keys(FIELDS[name] ?? {});
    expect.soft([...new Set(seen[name])].filter((key) => !listed.includes(key)), `${name}: fields without a row`).toEqual([]);
    expect.soft(listed.filter((key) => !seen[name].includes(key) && key !== "reach-3"), `${name}: rows without a field`).toEqual([]);
  }
});

/** Every field of the page by its key, and whether it is typed in. An extra of one's own has an id for a name. */
function fieldsHere(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("input:not([type=file]), textarea:not([readonly]), select")].map((field) => ({
      key: (field.name || field.id).replace(/^extra-[0-9a-f]{32}$/, "extra-own"),
      typed: field.matches("textarea, input:not([type=radio], [type=checkbox], [type=file], [type=range])"),
    })),
  );
}

/** The complaints that show: the key of the field and the sentence. */
function complaints(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("[aria-invalid=true], .choice.wrong")].map((field) => {
      const key = field.id || field.name;
      const told = document.getElementById(`${key}-error`);
      return [key, told?.checkVisibility() ? told.textContent.trim() : "(not shown)"];
    }),
  );
}
