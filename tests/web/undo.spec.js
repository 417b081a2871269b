// Every kind of change can be taken back: at once by the notice, later by the couple's own button, and put back.
import { expect, fieldsOf, go, hand, heading, loadExamples, meet, notice, open, practiceFields, test, waypoints } from "./hand.js";
import { say } from "./say.js";

/** Types over a field and saves the form. */
const form = (path, label, words) => async (page, thumb) => {
  await go(page, path);
  await thumb.put(page.getByLabel(label, { exact: true }), words);
  await thumb.press(/^(Save|Add note|Add reading)$/);
};
const choose = (path, group, option) => async (page, thumb) => {
  await go(page, path);
  await thumb.choose(group, option);
  await thumb.press(say.screens.SAVE);
};
const press = (path, button) => async (page, thumb) => {
  await go(page, path);
  await thumb.press(button);
};

/** What can be changed about a couple, and how. `ids` are those of the example with the most in it. */
const CHANGES = {
  "a name": ({ couple }) => form(`#/couple/${couple}/people`, "First name", "Inez"),
  "a way to reach them": ({ couple }) => form(`#/couple/${couple}/people`, "Telephone or e-mail", "07700 900999"),
  "where they were met": ({ couple }) => form(`#/couple/${couple}/people`, "Where you met", "the other hall"),
  "the wedding": ({ couple }) => form(`#/couple/${couple}/wedding`, "Wedding date", "June 2031"),
  "a new appointment": ({ couple }) => form(`#/couple/${couple}/appointments/new`, "Day", "3 May 2031"),
  "the day of an appointment": ({ couple, appointment }) => form(`#/couple/${couple}/appointments/${appointment}`, "Day", "4 May 2031"),
  "what became of an appointment": ({ couple, appointment }) => choose(`#/couple/${couple}/appointments/${appointment}`, "What became of it", "they did not come"),
  "an appointment taken out": ({ couple, appointment }) => press(`#/couple/${couple}/appointments/${appointment}`, "Remove"),
  "whether they may be recorded": ({ couple }) => choose(`#/couple/${couple}/recorded`, "May you write this down?", "No"),
  "the stage": ({ couple }) => choose(`#/couple/${couple}/stage`, "Stage", "ordered"),
  "a note": ({ couple }) => form(`#/couple/${couple}/notes`, "New note", "Allergic to fuss."),
  "a note taken out": ({ couple }) => press(`#/couple/${couple}/notes`, "Remove"),
  "a ring": ({ couple, ring }) => form(`#/couple/${couple}/rings/first/${ring}`, "Width at the top", "3.1"),
  "a ring taken out": ({ couple, ring }) => press(`#/couple/${couple}/rings/first/${ring}`, "Remove"),
  "a new ring": ({ couple }) => form(`#/couple/${couple}/rings/first/new`, "What it is", "signet"),
  "no rings": ({ couple }) => press(`#/couple/${couple}/rings/second`, "Not so: ask again"),
  "a reading taken out": ({ couple }) => press(`#/couple/${couple}/finger/first`, "Remove"),
  "first ring ever": ({ couple }) => async (page, thumb) => {
    await go(page, `#/couple/${couple}/finger/first`);
    await thumb.tap(page.getByText("First ring ever"));
  },
  "the band": ({ couple }) => form(`#/couple/${couple}/band/first`, "Width", "4.5"),
  "the read-back": ({ couple }) => press(`#/couple/${couple}/read-back`, "We agree: confirmed today"),
  "put away": ({ couple }) => press(`#/couple/${couple}`, "Put away"),
};

for (const [what, make] of Object.entries(CHANGES))
  test(`${what}: undone by the notice, put back, and undone after a reload`, async ({ page, site, start }) => {
    await start();
    await loadExamples(page);
    const ids = await waypoints(page);
    const fields = () => fieldsOf(page, ids.couple);
    const before = await fields();
    const thumb = hand(page);

    await make(ids)(page, thumb);
    await expect(notice(page).getByRole("button", { name: say.screens.UNDO })).toBeVisible();
    const after = await fields();
    expect(after, "something was changed").not.toEqual(before);

    await notice(page).getByRole("button", { name: say.screens.UNDO }).tap();
    await expect(notice(page)).toContainText("Taken back");
    expect(await fields()).toEqual(before);
    await notice(page).getByRole("button", { name: say.screens.PUT_BACK }).tap();
    await expect(notice(page)).toContainText("Put back");
    expect(await fields()).toEqual(after);

    await open(page, site, `#/couple/${ids.couple}`);
    await thumb.press(say.screens.UNDO_LAST);
    await expect(notice(page)).toContainText("Taken back");
    expect(await fields()).toEqual(before);
  });

test("changes are taken back one after the other, each once, down to the beginning", async ({ page, site, start }) => {
  await start();
  const id = await meet(page, "Tess");
  const states = [await fieldsOf(page, id)];
  for (const words of ["one", "two", "three"]) {
    await go(page, `#/couple/${id}/notes`);
    await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), words);
    await hand(page).press(say.screens.ADD_NOTE);
    await expect(page.locator(".note")).toHaveCount(states.length);
    states.push(await fieldsOf(page, id));
  }
  await open(page, site, `#/couple/${id}`);
  for (const state of states.reverse().slice(1)) {
    await hand(page).press(say.screens.UNDO_LAST);
    await expect.poll(() => fieldsOf(page, id)).toEqual(state);
  }
  // The last one takes back the couple itself, which can be put back.
  await hand(page).press(say.screens.UNDO_LAST);
  await expect(heading(page)).toHaveText("This is not on this phone");
  await notice(page).getByRole("button", { name: say.screens.PUT_BACK }).tap();
  await expect(heading(page)).toHaveText("Tess");
});

test("a couple put away is out of sight, kept whole, and can be brought back", async ({ page, site, start }) => {
  await start();
  await loadExamples(page);
  const { couple } = await waypoints(page);
  const before = await fieldsOf(page, couple);
  await go(page, `#/couple/${couple}`);
  const name = await heading(page).textContent();
  await hand(page).press(say.screens.PUT_AWAY);
  await expect(notice(page)).toContainText("put away");
  await open(page, site, "#/today");
  await expect(page.locator("main")).not.toContainText(name);
  await go(page, "#/couples");
  await expect(page.getByRole("link", { name })).toHaveCount(0);
  await hand(page).tap(page.getByText("Show couples put away"));
  await page.getByRole("link", { name }).tap();
  await hand(page).press(say.screens.BRING_BACK);
  await expect(notice(page)).toContainText("back in the book");
  await open(page, site, "#/couples");
  await expect(page.getByRole("link", { name })).toBeVisible();
  expect(await fieldsOf(page, couple)).toEqual(before);
});
