// The couple's preparation list: filled in on their phone, and taken into the book.
import { readFile } from "node:fs/promises";
import { axe, overflow } from "./checks.js";
import { expect, fieldsOf, go, hand, heading, keptList, line, meet, notice, open, said, test } from "./hand.js";
import { INVITED, fill } from "./list.js";
import { say } from "./say.js";

/** Presses Tab until the field or link has the focus. */
async function tabTo(page, css) {
  for (let presses = 0; presses < 80; presses++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((css) => document.activeElement.matches(css), css)) return;
  }
  throw new Error(`Tab never came to ${css}`);
}

test("a link invites them, is taken out of the address, and leads nowhere into the book", async ({ page, site, start }) => {
  await start();
  await open(page, site, INVITED);
  await expect(page.getByText("For Ada and Ben. Your appointment: Sat 22 May 2027, 10:00.")).toBeVisible();
  expect(new URL(page.url()).hash).toBe("#/list");
  await expect(page.getByText("1 of 16 answered")).toBeVisible();
  for (const address of ["#/list", "#/list/two", "#/list/rings", "#/list/privacy", "#/list/send"]) {
    await go(page, address);
    await expect(page.locator("nav")).toHaveCount(0);
    const hrefs = await page.locator("a").evaluateAll((links) => links.map((link) => link.getAttribute("href")));
    expect(hrefs.filter((href) => !href.startsWith("#/list")), address).toEqual([]);
  }
  await go(page, "#/list?for=%3Cb%3EEve%3C%2Fb%3E&with=" + "x".repeat(99) + "&when=tomorrow&region=moon");
  await expect(page.getByText("For <b>Eve</b>.")).toBeVisible();
  await expect(page.locator("main b")).toHaveCount(0);
});

test("what cannot be read is set aside, not written over", async ({ page, site, start }) => {
  await start();
  await page.evaluate(() => localStorage.setItem("bandwright.list", '"{broken"'));
  await open(page, site, "#/list/two");
  await expect(page.locator("#name-first")).toHaveValue("");
  await hand(page).write(page.locator("#name-first"), "Ada");
  await expect.poll(async () => (await keptList(page)).answers).toEqual({ "name.first": "Ada" });
  expect(await page.evaluate(() => localStorage.getItem("bandwright.aside.list"))).toBe('"{broken"');
});

test("it can be filled in by keyboard alone", async ({ page, context, site, start }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await start();
  await open(page, site, "#/list");
  const next = async (title) => {
    await tabTo(page, ".page-action a");
    await page.keyboard.press("Enter");
    await expect(heading(page)).toHaveText(title);
    await expect(heading(page)).toBeFocused();
  };
  const type = async (id, words) => {
    await tabTo(page, `#${id}`);
    await page.keyboard.type(words);
  };
  /** To a group of radios, and along it by arrow. */
  const choose = async (name, value) => {
    await tabTo(page, `[name="${name}"]`);
    for (let presses = 0; presses < 9 && !(await page.locator(`#${name}-${value}`).isChecked()); presses++) await page.keyboard.press("ArrowRight");
    await expect(page.locator(`#${name}-${value}`)).toBeFocused();
  };
  await next("The two of you");
  await type("name-first", "Ada");
  await type("name-second", "Ben");
  await next("The wedding");
  await type("wedding", "May 2027");
  await type("needed-by", "April");
  await next("How you will wear them");
  await choose("hand-first", "right");
  await choose("finger-first", "middle");
  await choose("first-ring-second", "yes");
  await next("Rings beside the band");
  await choose("owns-rings-first", "some");
  await type("ring-name-first-1", "signet");
  await type("ring-top-first-1", "4");
  await next("What you like");
  await choose("metal-second", "palladium");
  await type("engraving-second", "12 IV");
  await next("What your hands do");
  await type("sport-first", "climbing");
  await next("Budget, and anything else");
  await choose("budget", "in-person");
  for (const title of ["What to bring", "About measuring your finger", "Who will see this"]) await next(title);
  await choose("recorded", "yes");
  await next("Hand it over");
  await tabTo(page, "button.quiet");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Copied.")).toBeVisible();
  expect((await keptList(page)).answers).toEqual({
    "name.first": "Ada", "name.second": "Ben", wedding: "May 2027", "needed-by": "April", "hand.first": "right",
    "finger.first": "middle", "first-ring.second": "yes", "owns-rings.first": "some", "ring-name.first.1": "signet",
    "ring-top.first.1": "4", "metal.second": "palladium", "engraving.second": "12 IV", "sport.first": "climbing",
    budget: "in-person", recorded: "yes",
  });
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toContain("Ring 1: signet, 4 mm at the top");
  await page.keyboard.press("Home");
  await tabTo(page, ".page-back");
  await page.keyboard.press("Enter");
  await expect(page.getByText("5 of 16 answered, 6 more by one of you")).toBeVisible();
});

test("it can be filled in with text at twice its size on a narrow phone", async ({ page, site, start }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await start();
  await open(page, site, INVITED);
  await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
  await fill(page);
  for (const address of ["#/list", "#/list/rings", "#/list/send"]) {
    await go(page, address);
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    expect(await overflow(page), address).toBe(0);
  }
  await expect(page.getByText("engagement ring, 2,6 mm at three and nine o’clock")).toBeVisible();
});

test("everything is deleted with one press, and put back with another", async ({ page, start }) => {
  await start();
  await fill(page);
  const before = await keptList(page);
  await hand(page).press(say.list.pages.DELETE);
  await expect(page.getByText("Deleted from this phone.")).toBeVisible();
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => /list/.test(key)))).toEqual([]);
  await hand(page).press(say.list.pages.PUT_BACK);
  expect(await keptList(page)).toEqual(before);
  await hand(page).press(say.list.pages.DELETE);
  await expect(page.getByText("Deleted from this phone.")).toBeVisible();
  await go(page, "#/list");
  await expect(page.getByText("0 of 16 answered")).toBeVisible();
});

test("into a couple that is there: beside what is ours, whoever was named first", async ({ page, start }) => {
  await start();
  const id = await meet(page, "Ben", { second: "Ada", wedding: "2028" });
  await fill(page);
  const list = await keptList(page);
  await go(page, `#/couple/${id}/said`);
  await hand(page).follow(say.list.taking.TAKE_IN);
  await page.locator("#message").fill(JSON.stringify(list));
  await expect(page.getByRole("radio", { name: "Ben & Ada" })).toBeChecked();
  await expect(page.getByRole("radio", { name: "Ada is Ada, Ben is Ben" })).toBeChecked();
  await hand(page).press(say.list.taking.TAKE_IT_IN);
  await expect(notice(page)).toContainText("List taken in");
  const fields = await fieldsOf(page, id);
  expect(fields).toMatchObject({ "name.first": "Ben", "name.second": "Ada", wedding: "2028" });
  expect(fields.recorded).toEqual({ agrees: true, asked: "2026-11-25" });
  expect(fields[`said.${list.id}`].answers).toMatchObject({ "name.first": "Ben", "name.second": "Ada", "ring-width.second.1": "2,6" });
  await expect(line(page, "What they said")).toContainText("answers");
});

test("a no to being recorded: the answers stay on their phone, and the no on the jeweller's", async ({ page, site, start }) => {
  await start();
  await open(page, site, INVITED);
  await fill(page, { recorded: "no" });
  await go(page, "#/list/send");
  await expect(page.getByText("You said no to being recorded")).toBeVisible();
  const downloading = page.waitForEvent("download");
  await hand(page).press(say.list.handing.SAVE_FILE);
  const handed = JSON.parse(await readFile(await (await downloading).path(), "utf8"));
  expect(handed.answers).toEqual({ "name.first": "Ada", "name.second": "Ben", recorded: "no" });
  expect(Object.keys(handed).sort()).toEqual(["answers", "asked", "id", "kind", "saved", "schema"]);
  expect((await keptList(page)).invitation, "it stays on their phone").toMatchObject({ region: "scotland" });
  // Even from a list that says more than it should.
  await go(page, "#/couples/list");
  await page.locator("#message").fill(JSON.stringify(await keptList(page)));
  await expect(page.getByText("They say no to being recorded.")).toBeVisible();
  await hand(page).press(say.list.taking.TAKE_IT_IN);
  await expect(page.getByText("this stays on this phone and is left out of every file")).toBeVisible();
  const [fields] = Object.values(await said(page)).filter((fields) => fields["name.first"]);
  expect(Object.keys(fields).sort()).toEqual(["name.first", "name.second", "reached.enquiry", "recorded", "stage"]);
  expect(fields.recorded).toEqual({ agrees: false, asked: "2026-11-25" });
});
