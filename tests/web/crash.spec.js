// Half-typed words outlive a page that crashes, and saved couples a browser that is killed.
//
// In `make prove` (AT_LENGTH=yes) a page crashes in another form as well, and browsers are killed after more waits.
import { coupleOf, crash, expect, fieldsOf, figure, go, hand, heading, meet, notice, open, ready, rows, test } from "./hand.js";
import { say } from "./say.js";

const atLength = process.env.AT_LENGTH === "yes";

/** Between two keys of a quick thumb. */
const KEY_MS = 60;

const WORDS = "Meets us at the barn, the lane behind the mill; ring twice";

const FORMS = [
  ["a note", "New note", (id) => `#/couple/${id}/notes`],
  ["a new couple", "Where you met", () => "#/couples/new"],
];
for (const [where, field, address] of atLength ? FORMS : FORMS.slice(0, 1))
  test(`a page that crashes while ${where} is typed loses at most a second of typing, and says that words are back`, async ({ page, context, site, start }) => {
    await start();
    const id = await meet(page, "Tess");
    await go(page, address(id));
    await page.getByLabel(field).tap();
    await page.keyboard.type(WORDS, { delay: KEY_MS });
    await crash(page);

    const again = await context.newPage();
    await open(again, site, address(id));
    await expect(again.getByText("Your unsaved words are back.")).toBeVisible();
    const kept = await again.getByLabel(field).inputValue();
    const lost = WORDS.length - kept.length;
    figure(`crashed page, ${where}: ${lost} of ${WORDS.length} characters lost (${(lost * KEY_MS) / 1000} s of typing)`);
    expect(WORDS.startsWith(kept), kept).toBe(true);
    expect(lost * KEY_MS).toBeLessThanOrEqual(1000);
    await expect(again.getByText("Your unsaved words are back.")).toBeVisible();
    // Nothing of it has been saved, and it can be thrown away.
    expect(Object.keys(await fieldsOf(again, id)).filter((name) => /note|met/.test(name))).toEqual([]);
    await hand(again).press(say.screens.DRAFT_DISCARD);
    await expect(again.getByLabel(field)).toHaveValue("");
    await again.reload();
    await ready(again);
    await expect(again.getByLabel(field)).toHaveValue("");
    await expect(again.getByText("Your unsaved words are back.")).toHaveCount(0);
  });

test("the words of each form of each couple are kept apart, and go when they are saved", async ({ page, context, site, start }) => {
  await start();
  const [one, two] = [await meet(page, "Ines"), await meet(page, "Orla")];
  for (const [id, words] of [[one, "first"], [two, "second"]]) {
    await go(page, `#/couple/${id}/notes`);
    await hand(page).write(page.getByLabel(say.screens.NEW_NOTE), words);
  }
  await crash(page);
  const again = await context.newPage();
  for (const [id, words] of [[one, "first"], [two, "second"]]) {
    await open(again, site, `#/couple/${id}/notes`);
    await expect(again.getByLabel(say.screens.NEW_NOTE)).toHaveValue(words);
    await hand(again).press(say.screens.ADD_NOTE);
    await expect(again.locator(".note")).toContainText(words);
    await again.reload();
    await ready(again);
    await expect(again.getByLabel(say.screens.NEW_NOTE)).toHaveValue("");
  }
});

test("a browser killed right after saved appears has the couple", async ({ handset, site, start }) => {
  test.slow();
  await start(handset.page);
  const names = [];
  // At once; at length up to a fifth of a second later.
  for (const wait of atLength ? [0, 0, 3, 20, 71, 190] : [0]) {
    const name = `Kept ${names.length + 1}`;
    const page = handset.page;
    await go(page, "#/couples/new");
    await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), name);
    await page.evaluate(() => {
      const watch = new MutationObserver(() => {
        if (document.querySelector(".notices .notice")?.textContent.includes("saved")) console.info("it says saved");
      });
      watch.observe(document.body, { childList: true, subtree: true, characterData: true });
    });
    const said = page.waitForEvent("console", (message) => message.text() === "it says saved");
    await hand(page).press(say.screens.SAVE);
    await said;
    if (wait) await new Promise((done) => setTimeout(done, wait));
    await handset.kill();
    names.push(name);
    await handset.on();
    await handset.page.goto(site.url + "#/couples");
    await ready(handset.page);
    for (const known of names) await expect(handset.page.getByRole("link", { name: new RegExp(known) })).toBeVisible();
  }
});

test("what a killed browser loses of half-typed words is measured; what is left is said to be back, and nothing of it is saved", async ({ handset, site, start }) => {
  test.slow();
  await start(handset.page);
  for (const seconds of atLength ? [0, 1, 3, 6, 10] : [1]) {
    const page = handset.page;
    await go(page, "#/couples/new");
    const field = page.getByLabel(say.screens.MET);
    await page.waitForTimeout(300); // what came through the last kill is back by then
    if (await page.getByRole("button", { name: say.screens.DRAFT_DISCARD }).count()) await hand(page).press(say.screens.DRAFT_DISCARD);
    await field.tap();
    await page.keyboard.type(WORDS, { delay: KEY_MS });
    await page.waitForTimeout(seconds * 1000);
    await handset.kill();
    await handset.on();
    await handset.page.goto(site.url + "#/couples/new");
    await ready(handset.page);
    await handset.page.waitForTimeout(300);
    const kept = await handset.page.getByLabel(say.screens.MET).inputValue();
    expect(WORDS.startsWith(kept), kept).toBe(true);
    await expect(handset.page.getByText("Your unsaved words are back")).toHaveCount(kept ? 1 : 0);
    expect(Object.keys(await rows(handset.page)).filter((key) => key.startsWith("records/"))).toEqual([]);
    figure(`browser killed ${seconds} s after the last key: ${WORDS.length - kept.length} of ${WORDS.length} characters lost, typed in ${((WORDS.length * KEY_MS) / 1000).toFixed(1)} s`);
  }
});

test("an unsaved form survives leaving the screen, going elsewhere and coming back", async ({ page, start }) => {
  await start();
  await go(page, "#/couples/new");
  await hand(page).write(page.getByLabel(say.screens.FIRST_NAME), "Half");
  await hand(page).follow(say.screens.TODAY);
  await expect(heading(page)).toHaveText("Today");
  await hand(page).follow(say.screens.NEW_COUPLE);
  await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("Half");
  await hand(page).press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  expect((await fieldsOf(page, coupleOf(page)))["name.first"]).toBe("Half");
  await go(page, "#/couples/new");
  await expect(page.getByLabel(say.screens.FIRST_NAME)).toHaveValue("");
});
