// Dates that hold: from the wedding to an order under way, and holidays one by one.
import { readFile } from "node:fs/promises";
import { expect, fieldsOf, figure, go, hand, heading, meet, notice, practiceFields, said, test } from "./hand.js";
import { say } from "./say.js";

const answer = (page) => page.locator("#order-by");
/** Pieces of work of the jeweller's own. */
async function offer(page, names) {
  const thumb = hand(page);
  for (const name of names) {
    await go(page, "#/setup/times/new");
    for (const [label, text] of [["What it is", name], ["At least", "2"], ["Usually", "3"], ["At most", "5"]]) await thumb.put(page.getByLabel(label, { exact: true }), text);
    await thumb.press(say.screens.SAVE);
    await expect(notice(page)).toContainText(`${name} saved`);
  }
}
const reasonOf = (page, name) => page.locator(".reason", { hasText: name });

test("the chance of being in time, and what it rests on", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/dates?wedding=22%20May%202027");
  // Twenty working days back from Friday 7 May: the twentieth has 3 chances of 42, which is more than 5 %.
  await expect(answer(page)).toContainText("Thu 8 Apr 2027");
  await expect(answer(page)).toContainText("over 99 % in hand by Sat 8 May 2027");
  await go(page, "#/tools/dates?wedding=22%20May%202027&confidence=90&decided=12%20April%202027");
  await expect(answer(page)).toContainText("Fri 9 Apr 2027");
  // Decided on Monday 12 April eighteen working days are left: 33 of 42.
  await expect(reasonOf(page, "If decided")).toContainText("78 %");
  await expect(answer(page)).toContainText("over 99 % here before the wedding");
  // A weekday is understood; where two may be meant, both are named, and the answer stays.
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  const decided = page.locator("#decided");
  await hand(page).put(decided, "Thursday");
  await expect(reasonOf(page, "If decided")).toContainText("Thu 26 Nov");
  await hand(page).put(decided, "next Thursday");
  await expect(page.locator("#decided-error")).toHaveText("Enter Thu 26 Nov 2026 or Thu 3 Dec 2026: it can be read as either.");
  await expect(answer(page)).toContainText("Fri 9 Apr 2027");
  await expect(page.locator("main figure svg")).toBeVisible();
  // A day in hand that is past is not spoken of.
  await go(page, "#/tools/dates?wedding=5%20December%202026");
  await expect(answer(page)).toContainText("under 1 % here before the wedding");
  await expect(answer(page)).not.toContainText("in hand by");
});

test("an order as it goes, and what ran late", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Tess", { wedding: "22 May 2027" });
  const thumb = hand(page);
  await go(page, `#/couple/${id}/stage`);
  await thumb.choose(say.screens.STAGE, "ordered");
  await thumb.put(page.getByLabel(say.screens.STAGE_DAY), "5 October 2026");
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  // numpy.busday_count of 5 October to 25 November: 37.
  await expect(reasonOf(page, /Making\s*at the bench/)).toContainText("37 working days so far: late, 17 more than its longest");
  // Nobody knows any more: a day before which it is not there, and neither chance nor 95 %.
  await expect(reasonOf(page, "Not before")).toContainText("Wed 25 Nov 2026");
  await expect(page.locator("main")).not.toContainText("95 %");
  await expect(reasonOf(page, "In hand in time")).toHaveCount(0);
  // Today says so, and so does the checklist; both lead to the plan.
  await go(page, "#/today");
  const late = page.locator("section", { has: page.getByRole("heading", { name: say.agenda.MAY_BE_LATE }) });
  await expect(late).toContainText("runs late: not before Wed 25 Nov 2026");
  await thumb.tap(late.getByRole("link", { name: /Tess/ }));
  await expect(heading(page)).toHaveText("Order and days to keep");
  await go(page, `#/couple/${id}`);
  const line = page.locator(`main a[href="#/couple/${id}/plan"]`).first();
  await expect(line).toContainText("not before Wed 25 Nov 2026");
  await expect(line).toContainText("the order runs late");
  await expect(page.locator("main")).not.toContainText("order by");
  await go(page, `#/couple/${id}/plan`);
  const made = page.getByLabel("Making, finished");
  await thumb.put(made, "26 November 2026");
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#done-making-error")).toHaveText("Enter a day no later than today, Wed 25 Nov 2026.");
  await thumb.put(made, "4 October 2026");
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#done-making-error")).toHaveText("Enter a day from Mon 5 Oct 2026 on: it was ordered then.");
  await thumb.put(made, "9 November 2026");
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  // numpy.busday_count of 5 October to 9 November: 25.
  await expect(reasonOf(page, "Making")).toContainText("25 working days: late, 5 more than its longest");
  await expect(reasonOf(page, "In hand in time")).toContainText("over 99 %");
});

test("a holiday that is worked moves the date", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  await go(page, "#/setup/closures/holidays");
  await thumb.tap(page.locator("#kept-early-may"));
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, "#/tools/dates?wedding=22%20May%202027");
  await expect(answer(page)).toContainText("Fri 9 Apr 2027");
});

test("a season of some months moves only what is worked in them", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const season = async (...months) => {
    await go(page, "#/setup/chances");
    for (const [key, figure] of [["busy-chance", "100"], ["busy-longer", "50"]]) await thumb.put(page.locator(`#${key}`), figure);
    for (const month of months) await thumb.tap(page.locator(`#busy-months-${month}`));
    await thumb.press(say.screens.SAVE);
    await expect(heading(page)).toHaveText(say.screens.SETUP);
  };
  const orderBy = async () => {
    await go(page, "#/tools/dates?wedding=22%20May%202027");
    await expect(answer(page)).toContainText("2027");
    return answer(page).innerText();
  };
  expect(await orderBy()).toContain("Thu 8 Apr 2027");
  // Whatever happens in August, it is long before.
  await season(8);
  await expect(page.locator("main")).toContainText("a busy season 100 % (August)");
  expect(await orderBy()).toContain("Thu 8 Apr 2027");
  await season(8, 4);
  const april = await orderBy();
  expect(april).not.toContain("Thu 8 Apr 2027");
  // None ticked is all the year, May as well: earlier still. 29 of 30 busy days back from Friday 7 May.
  await season(4);
  await expect(page.locator("main")).toContainText("a busy season 100 %");
  await expect(page.locator("main")).not.toContainText("(");
  expect(await orderBy()).not.toContain(april.match(/\w{3} \d+ \w{3} 2027/)[0]);
});

test("a couple's calendar stands on their plan, in words and in the couple's eyes", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Tess", { wedding: "22 May 2027" });
  const thumb = hand(page);
  await go(page, `#/couple/${id}/appointments/new`);
  await thumb.put(page.locator("#day"), "14 January 2027");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, `#/couple/${id}/plan`);
  const picture = page.locator("main figure svg");
  const said = async () => (await picture.getAttribute("aria-label")) ?? (await picture.locator("title").textContent());
  expect(await said()).toContain("order by Thu 8 Apr 2027");
  // The list says what the picture says: every marked day of it, and the likely days.
  const list = await page.locator(".reasons").first().innerText();
  const marked = [...(await said()).matchAll(/\w{3} \d+ \w{3,4} 202\d/g)].map(([day]) => day.replace(/ 202\d$/, ""));
  expect(marked.length).toBeGreaterThan(8);
  for (const day of marked) expect(list, day).toContain(day);
  await expect(reasonOf(page, "Appointment")).toContainText("in 50 days");
  await expect(reasonOf(page, "Room for a change of size")).toContainText("to Fri 21 May 2027");
  await thumb.tap(page.getByText("Closed days, one by one"));
  for (const words of ["Mon to Fri", "Christmas Day", "Fri 26 Mar 2027", "Mon 3 May 2027"]) await expect(page.locator("details .reasons")).toContainText(words);
  await thumb.press(say.showing.SHOW);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("When to order");
  await expect(page.locator("main.show svg")).toBeVisible();
  await expect(page.locator("main.show")).toContainText("The wedding: Sat 22 May 2027, in 178 days.");
  await expect(page.locator("main.show")).not.toContainText("Tess");
  await thumb.press(say.showing.FINISH);
  await thumb.press(say.showing.FINISH_NOW);
  await expect(page.locator("main.show")).toHaveCount(0);

  // Ordered, the finish is forecast from the order, and there is nothing left to order by.
  await go(page, `#/couple/${id}/stage`);
  await thumb.choose(say.screens.STAGE, "ordered");
  await thumb.put(page.getByLabel(say.screens.STAGE_DAY), "23 November 2026");
  await thumb.press(say.screens.SAVE);
  // Back to where the hand came from.
  await expect(heading(page)).toHaveText("Order and days to keep");
  await go(page, `#/couple/${id}/plan`);
  expect(await said()).not.toContain("order by");
  await expect(reasonOf(page, "Ordered")).toContainText("Mon 23 Nov 2026");
  // Fifteen working days from Monday 23 November, and twenty.
  await expect(reasonOf(page, "Likely ready")).toContainText("Mon 14 Dec to Mon 21 Dec 2026");
  await thumb.press(say.showing.SHOW);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("When your rings are ready");
  await expect(page.locator(".show-figure")).toHaveText("Mon 21 Dec 2026");
});

test("an order has as many extras of the jeweller's own as it likes", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const own = ["plating", "hammering", "lining", "inlay", "granulation", "piercing", "enamel", "niello"];
  await offer(page, own);
  const id = await meet(page, "Tess", { wedding: "22 May 2027" });
  await go(page, `#/tools/dates?couple=${id}`);
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  const boxes = page.locator('[name^="extra-"]');
  const ids = await boxes.evaluateAll((all) => all.map((box) => box.id).filter((id) => /[0-9a-f]{32}/.test(id)));
  expect(ids).toHaveLength(own.length);
  for (const box of ids) await thumb.tap(page.locator(`#${box}`));
  // The answer is made anew with each of them, its button too: a hand looks at it first. Then the address has them all.
  await expect.poll(() => page.url().match(/[0-9a-f]{32}/g)?.length).toBe(1 + own.length);
  await thumb.press(/^Use order by/);
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/stage`);
  await thumb.choose(say.screens.STAGE, "ordered");
  await thumb.put(page.getByLabel(say.screens.STAGE_DAY), "1 October 2026");
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  for (const [at, name] of ["Making", ...own].entries()) await thumb.put(page.getByLabel(`${name}, finished`), `${at + 1} November 2026`);
  await thumb.press(say.screens.SAVE);
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  for (const name of own) await expect(page.getByLabel(`${name}, finished`)).toHaveValue(/Nov 2026$/);
});

test("what nobody should type about days gets a sentence each", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const wrong = async (address, typed, field, sentence) => {
    await go(page, address);
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    for (const [key, text] of Object.entries(typed)) await thumb.put(page.locator(`#${key}`), text);
    const save = page.getByRole("button", { name: say.screens.SAVE, exact: true });
    if (await save.count()) await thumb.tap(save);
    else await page.keyboard.press("Tab");
    await expect(page.locator(`#${field}-error`)).toHaveText(sentence);
  };
  const bench = "#/tools/dates";
  await wrong(bench, { wedding: "24 November 2026" }, "wedding", "Enter a wedding date from today on: Tue 24 Nov 2026 is past.");
  await wrong(bench, { wedding: "22 May 2199" }, "wedding", "Enter a date no later than Sun 25 Nov 2046.");
  await wrong(bench, { wedding: "22 May 2027", least: "18" }, "usual", "Enter a usual time no shorter than the least: 17 is less than 18 working days.");
  await wrong(bench, { wedding: "22 May 2027", least: "15", confidence: "120" }, "confidence", "A chance to plan for must be between 50 and 100 %, like 95.");
  await wrong("#/setup/chances", { "resize-chance": "120" }, "resize-chance", "A chance must be between 0 and 100 %, like 10.");
  await wrong("#/setup/closures/new", { "closure-name": "abroad", "closure-from": "1 June 2027", "closure-to": "1 June 2037" }, "closure-to", "Enter a closure of at most 366 days.");
  await go(page, "#/setup/closures");
  for (const day of ["mon", "tue", "wed", "thu", "fri"]) await thumb.tap(page.locator(`#weekdays-${day}`));
  await thumb.press(say.screens.SAVE);
  await expect(page.locator("#weekdays-error")).toHaveText("Choose at least one day of the week that is worked.");
  // All year, every year.
  await go(page, "#/setup/closures/new");
  await thumb.choose(say.planning.CLOSURE_REPEATS, "Every year, same dates");
  await wrong("#/setup/closures/new", { "closure-name": "abroad", "closure-from": "1 January 2027", "closure-to": "31 December 2027" }, "closure-to", "Shorten the closure: there would be no working day in the year after Fri 31 Dec 2027.");
  // A wedding known by its month is on no holiday.
  await go(page, `${bench}?wedding=January%202028`);
  await expect(answer(page)).toContainText("2027");
  await expect(page.locator("main")).not.toContainText("nobody delivers");
  // On a holiday there is an answer, and a word of warning.
  await go(page, `${bench}?wedding=3%20May%202027`);
  await expect(page.locator("main")).toContainText("The wedding is on Early May bank holiday: nobody delivers or mends anything that day.");
});

test.describe("on the way", () => {
  // The time zone of the phone itself, so that it can change while the page is open.
  test.use({ timezoneId: "" });
  test("a phone that crosses midnight and a border in between changes nothing that was written down", async ({ page, context, start }) => {
    const devtools = await context.newCDPSession(page);
    const land = (timezoneId) => devtools.send("Emulation.setTimezoneOverride", { timezoneId });
    await land("Europe/London");
    await start();
    const id = await meet(page, "Tess", { wedding: "22 May 2027" });
    const thumb = hand(page);
    await go(page, `#/couple/${id}/appointments/new`);
    await thumb.put(page.locator("#day"), "25 November 2026");
    await thumb.put(page.locator("#time"), "23:30");
    await thumb.press(say.screens.SAVE);
    await expect(notice(page)).toContainText("saved");
    await go(page, `#/couple/${id}/plan`);
    const events = async () => {
      await go(page, `#/couple/${id}/plan`);
      const loading = page.waitForEvent("download");
      await thumb.press(say.agenda.DOWNLOAD);
      const text = await readFile(await (await loading).path(), "utf8");
      return text.replace(/^(DTSTAMP|SEQUENCE):.*\r\n/gm, "");
    };
    const before = await events();
    expect(before).toContain("DTSTART:20261125T233000\r\n");
    const kept = await fieldsOf(page, id);

    // Half a note is typed at ten to twelve, the rest of it on the next day.
    const at = async (time) => {
      await context.clock.setFixedTime(new Date(time));
      await page.evaluate(() => window.dispatchEvent(new Event("focus")));
    };
    await at("2026-11-25T23:50:00Z");
    await go(page, `#/couple/${id}/notes`);
    const note = page.locator("main textarea");
    await thumb.put(note, "They will think about ");
    await at("2026-11-26T00:10:00Z");
    await expect(note).toHaveValue("They will think about ");
    await note.pressSequentially("the court profile.");
    await thumb.press(say.screens.ADD_NOTE);
    await expect(page.locator("main")).toContainText("They will think about the court profile.");
    // Today is another day; the appointment is still that of yesterday, and waits for what became of it.
    await go(page, "#/today");
    await expect(page.locator("main")).toContainText("Wed 25 Nov");

    // Over the Atlantic it is yesterday evening again.
    await land("America/New_York");
    await at("2026-11-26T00:10:00Z");
    expect(await page.evaluate(() => new Date().getDate())).toBe(25);
    expect(await events()).toBe(before);
    const after = await fieldsOf(page, id);
    for (const [field, value] of Object.entries(kept)) expect(after[field], field).toEqual(value);
    await go(page, `#/couple/${id}/notes`);
    await expect(page.locator("main")).toContainText("They will think about the court profile.");
  });
});

test("the phone stays awake while something is shown, and no longer", async ({ page, context, start }) => {
  await context.addInitScript(() => {
    window.heard = [];
    const request = async (what) => {
      window.heard.push(what);
      return { release: async () => window.heard.push("released") };
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
  });
  await start();
  const heard = () => page.evaluate(() => window.heard);
  const thumb = hand(page);
  await go(page, "#/tools/dates?wedding=22%20May%202027");
  await expect(answer(page)).toContainText("2027");
  expect(await heard()).toEqual([]);
  await thumb.press(say.showing.SHOW);
  await expect.poll(heard).toEqual(["screen"]);
  // A phone that was put away lets go by itself; looked at again, it is asked again.
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange", { bubbles: true })));
  await expect.poll(heard).toEqual(["screen", "screen"]);
  await thumb.press(say.showing.FINISH);
  await thumb.press(say.showing.FINISH_NOW);
  await expect.poll(heard).toEqual(["screen", "screen", "released"]);
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange", { bubbles: true })));
  expect(await heard()).toHaveLength(3);
});

test("a forecast two years out takes no time, and how that grows", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  // Eight steps: making, the four usual ones on top, and three of the jeweller's own.
  await offer(page, ["plating", "hammering", "lining"]);
  const own = Object.keys(await practiceFields(page)).map((field) => field.match(/extra\.([0-9a-f]{32})/)?.[1]).filter(Boolean);
  expect(own).toHaveLength(3);
  await go(page, "#/setup/chances");
  for (const [key, figure] of [["busy-chance", "20"], ["busy-longer", "50"]]) await thumb.put(page.locator(`#${key}`), figure);
  for (const month of [5, 6, 7, 12]) await thumb.tap(page.locator(`#busy-months-${month}`));
  await thumb.press(say.screens.SAVE);
  const extras = ["stones", "engraving", "marking", "delivery", ...own];
  // From a key to the answer on the page, with everything in between; a task of its own ends what the key began. The
  // clock of the specs counts whole milliseconds: so runs of keys are timed. The quickest of four counts: the one that
  // others on the machine disturbed least.
  const worked = (wedding) =>
    page.locator("#wedding").evaluate(async (field, wedding) => {
      const settled = () =>
        new Promise((done) => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = done;
          port2.postMessage(null);
        });
      const runs = [];
      for (let run = 0; run < 5; run += 1) {
        const begun = performance.now();
        for (let n = 0; n < 20; n += 1) {
          field.value = wedding + " ".repeat(n % 2);
          field.dispatchEvent(new Event("input", { bubbles: true }));
          await settled();
        }
        runs.push((performance.now() - begun) / 20);
      }
      // The first run warms up.
      return Math.min(...runs.slice(1));
    }, wedding);
  const grown = [];
  for (const steps of [3, 8]) {
    await go(page, `#/tools/dates?wedding=22%20May%202027&extras=${extras.slice(0, steps - 1).join(",")}`);
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    const row = [];
    for (const [years, wedding] of [[1, "25 November 2027"], [2, "25 November 2028"], [4, "25 November 2030"]]) {
      const took = await worked(wedding);
      await expect(answer(page)).toContainText(wedding.slice(-4));
      row.push(`${years} ${years === 1 ? "year" : "years"} ${took.toFixed(2)} ms`);
      // It takes some 2 ms where nothing else runs. A shared machine may be several times slower, not more.
      expect(took).toBeLessThan(25);
    }
    grown.push(`${steps} steps: ${row.join(", ")}`);
  }
  figure(`forecast from a key to the answer on the page: ${grown.join("; ")}`);
});
