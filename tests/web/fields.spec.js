// One field of each kind takes what is good and says what is wrong with the rest; every screen has one complaint; no
// field of any screen is unknown to fields.js. All fields with all inputs are fed in matrix.spec.js, at length.
//
// The fields are enumerated from the page itself: one without a row in FIELDS fails, and so does a row without a field.
// A bad input gets exactly one sentence beside its field that says what would be right; what was typed stays; nothing is
// saved; nothing breaks (the guard sees page errors). A good one is taken without a word.
import { allOf, arrive, chooseAll, complaints, feed, feedBesides, fieldsHere, rows } from "./feeding.js";
import { choice, FIELDS, INPUTS, KINDS, nameOf, SHOW } from "./fields.js";
import { expect, furnish, go, hand, keptList, meet, said, test } from "./hand.js";
import { CHOICES, SAMPLES } from "./samples.js";
import { say } from "./say.js";

const soft = expect.configure({ soft: true });

test("each kind of field has a sample", () => {
  const kinds = (rows) => new Set(rows.map(([screen, key]) => nameOf(FIELDS[screen][key])));
  const all = kinds(Object.entries(FIELDS).flatMap(([screen, fields]) => Object.keys(fields).map((key) => [screen, key])));
  expect([...kinds([...SAMPLES, ...CHOICES])].sort()).toEqual([...all].sort());
});

// In parts, so that the workers share them.
const PARTS = 4;
const isIn = (part) => (_, at) => at % PARTS === part;
for (let part = 0; part < PARTS; part++)
  test(`a field of each kind takes what is good and says what is wrong, part ${part + 1}`, async ({ page, start }) => {
    await start();
    const ids = await furnish(page);
    for (const [screen, key, inputs, more] of SAMPLES.filter(isIn(part))) await tryOut(page, { screen, key, ids, more, ...inputs });
    for (const [screen, key] of CHOICES.filter(isIn(part))) {
      await arrive(page, screen, addressOf(screen, ids));
      expect.soft(await chooseAll(page, key), `${key}: what it offers`).toBeGreaterThan(0);
      expect.soft(await complaints(page), key).toEqual([]);
    }
  });

test("every other screen says what is wrong with a field", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  const sampled = SAMPLES.filter(([, , { bad }]) => bad[1]).map(([screen]) => screen);
  for (const [screen, fields] of Object.entries(FIELDS).filter(([screen]) => !sampled.includes(screen))) {
    const [key, kind] = Object.entries(fields).find(([, kind]) => kind !== choice && bad(kind)) ?? [];
    if (!key) continue;
    const { says, ...by } = KINDS[kind] ?? kind;
    await arrive(page, screen, addressOf(screen, ids));
    await feedBesides(page, screen, key);
    const [what, words] = bad(kind);
    await refuses(page, key, words, by[what] ?? says, await said(page), `${screen}, ${key}: ${what}`);
    await leave(page, screen, ids);
  }
});

test("screens without a row have no field, and no row is without a field", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  // Two fields that show only then: which of several readings is meant, and the couples that were put away.
  await go(page, `#/couple/${ids.couple}`);
  await hand(page).press(say.screens.PUT_AWAY);
  await expect(page.locator(".notices")).toContainText("put away");
  const seen = {};
  const look = async (name) => (seen[name] = [...(seen[name] ?? []), ...(await fieldsHere(page))]);
  for (const { name, at } of rows) {
    await go(page, allOf(name, at(ids)));
    await SHOW[name]?.(page);
    await look(name);
  }
  await go(page, `#/couple/${ids.couple}/finger/first`);
  await page.locator("#gauge").selectOption({ index: 0 });
  await look("Part::Finger");
  // The figures of the other ways, and the free length of another finger with a ring.
  for (const way of ["lower", "gap"]) {
    await go(page, `#/couple/${ids.couple}/remedy/first`);
    await page.locator(`#remedy-${way}`).tap();
    await look("Part::Remedy");
  }
  await go(page, `#/couple/${ids.couple}/rings/first/new`);
  await page.locator("#shoulder-width").fill("3");
  await page.locator("#hand-right").tap();
  await page.locator("#digit").selectOption("middle");
  await hand(page).press(say.screens.SAVE);
  await expect(page.locator("#shoulder-width"), "the form is left").toHaveCount(0);
  await go(page, `#/tools/stack?couple=${ids.couple}&who=first`);
  await look("Calculator::Stack");
  await go(page, "#/tools/size?q=6");
  await look("Calculator::Size");
  // What leaves is offered of no invented couple.
  await go(page, `#/couple/${await meet(page, "Tess")}/plan`);
  await look("Part::Plan");
  for (const name of new Set(rows.map(({ name }) => name))) {
    const listed = FIELDS[name] ?? {};
    const unknown = seen[name].filter(({ key, typed }) => !listed[key] || (listed[key] === choice) === typed);
    expect.soft([...new Set(unknown.map(({ key }) => key))], `${name}: fields without a row`).toEqual([]);
    const found = seen[name].map(({ key }) => key);
    expect.soft(Object.keys(listed).filter((key) => !found.includes(key) && key !== "reach-3"), `${name}: rows without a field`).toEqual([]);
  }
});

/** Feeds one field with the bad input and the one at the edge, then with the good one. */
async function tryOut(page, { screen, key, ids, more, good, bad, edge }) {
  const label = (words) => `${screen}, ${key}: ${words.slice(0, 30) || "nothing"}`;
  const come = async () => {
    await arrive(page, screen, typeof more === "string" ? more : addressOf(screen, ids));
    if (typeof more === "function") await more(page);
    else await feedBesides(page, screen, key);
  };
  await come();
  for (const [words, sentence] of [bad, edge]) {
    if (sentence) await refuses(page, key, words, sentence, await said(page), label(words));
    else if (await takes(page, key, words, label(words))) await come();
  }
  const before = await everything(page);
  const sent = await takes(page, key, good, label(good));
  if (sent) await soft.poll(() => everything(page), `${label(good)}: saved`).not.toEqual(before);
  // A calculator writes its address a moment after the last key, without the words that may name somebody.
  else if (screen.startsWith("Calculator") && !key.endsWith("-name")) await soft.poll(() => asked(page, key), `${label(good)}: in the address`).toBe(good);
  else soft(await page.locator(`#${key}`).inputValue(), `${label(good)}: stands`).toBe(good);
  await leave(page, screen, ids);
}

/** Types what cannot be taken: one complaint, beside its field; what was typed stays; nothing is saved. */
async function refuses(page, key, words, sentence, before, label) {
  await feed(page, key, words);
  const pair = [key, typeof sentence === "string" ? sentence : expect.stringMatching(sentence)];
  await soft.poll(() => complaints(page), { message: label, timeout: 2000 }).toEqual([pair]);
  soft(await page.locator(`#${key}`).inputValue(), `${label}: what was typed stays`).toBe(words);
  soft(await said(page), `${label}: nothing is saved`).toEqual(before);
  for (const [, told] of await complaints(page)) soft(told.match(/[.!?](\s|$)/g), `${label}: one sentence`).toHaveLength(1);
}

/** Types what is taken without a word. Answers whether a form was sent with it. */
async function takes(page, key, words, label) {
  const sends = await feed(page, key, words);
  soft(await complaints(page), `${label}: taken`).toEqual([]);
  return sends;
}

/** What was typed and not saved goes, so that it does not come back with the next field of the screen. */
async function leave(page, screen, ids) {
  const discard = page.getByRole("button", { name: /^(Throw them away|Start afresh|Back to their own figures)$/ });
  if ((await discard.count()) === 0) return;
  await arrive(page, screen, addressOf(screen, ids));
  if (await discard.count()) await hand(page).tap(discard);
}

const addressOf = (screen, ids) => rows.find(({ name }) => name === screen).at(ids);

/** The first of all inputs that a kind does not take. */
const bad = (kind) => Object.entries(INPUTS).find(([what]) => what !== "empty" && !(KINDS[kind] ?? kind).takes.includes(what));

/** What a calculator's address says of a field. */
const asked = (page, key) => new URLSearchParams(page.url().split("?")[1]).get(key);

/** All that is kept: the book, and the couple's own list. */
const everything = async (page) => [await said(page), await keptList(page).catch(() => null)];
