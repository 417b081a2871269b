// The commonest jobs, each from Today, with what they cost a hand (see `cost` in hand.js) and a bound on the taps.
import { coupleOf, cost, expect, fieldsOf, figure, go, hand, heading, line, meet, notice, test } from "./hand.js";
import { say } from "./say.js";

/** Does a job from Today with a fresh hand, prints what it cost, and holds it to a number of taps. */
async function job(page, name, most, work) {
  await go(page, "#/today");
  const thumb = hand(page);
  await work(thumb);
  figure(`${name}: ${cost(thumb).text}`);
  expect(thumb.taps, name).toBeLessThanOrEqual(most);
}

test("the commonest jobs take few taps", async ({ page, context, browser, guard, site, start }) => {
  test.slow();
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await start();
  const field = (label) => page.getByLabel(label, { exact: true });
  let id;

  await job(page, "a new couple: both names, a number, a wedding date, their answer", 7, async (thumb) => {
    await thumb.follow(say.screens.NEW_COUPLE);
    await thumb.write(field("First name"), "Tess");
    await thumb.write(field("Second name"), "Rowan");
    await thumb.write(field("Telephone or e-mail"), "07700900123");
    await thumb.write(field("Wedding date"), "22 May 2027");
    await thumb.choose(say.screens.MAY_RECORD, say.screens.YES);
    await thumb.press(say.screens.SAVE);
    await expect(heading(page)).toHaveText("Tess & Rowan");
    id = coupleOf(page);
  });

  await job(page, "one person's ring, finger and band, down to an order size that is settled", 15, async (thumb) => {
    await thumb.follow(say.screens.COUPLES);
    await thumb.tap(line(page, "Tess & Rowan"));
    await thumb.tap(line(page, "Tess: finger"));
    await thumb.write(field("Size read"), "M");
    await thumb.press(say.screens.ADD_READING);
    await expect(page.locator(".note")).toHaveCount(1);
    await thumb.follow(/^Back: Tess & Rowan/);
    await thumb.tap(line(page, "Tess: band"));
    await thumb.write(page.locator("#band-width"), "2.5");
    await thumb.choose(say.screens.PROFILE, "court");
    await thumb.choose(say.screens.FINISH, "plain");
    await page.getByLabel(say.screens.METAL).selectOption("platinum-950");
    thumb.taps += 2; // a list is opened and a row of it tapped, outside the page
    await thumb.press(say.screens.SAVE);
    await thumb.tap(line(page, "Tess: order size"));
    await thumb.press(/^Use .* for Tess’s band/);
    await expect(notice(page)).toContainText("saved");
    await expect(line(page, "Tess: order size")).toContainText("Done:");
  });

  await job(page, "will they be ready: the last day to order, written down", 4, async (thumb) => {
    await thumb.follow(say.screens.COUPLES);
    await thumb.tap(line(page, "Tess & Rowan"));
    await thumb.tap(line(page, "Dates"));
    await thumb.press(/8 Apr/);
    await expect(line(page, "Dates")).toContainText("order by Thu 8 Apr 2027");
  });

  await job(page, "the specification as a text for a message", 4, async (thumb) => {
    await thumb.follow(say.screens.COUPLES);
    await thumb.tap(line(page, "Tess & Rowan"));
    await thumb.follow(/Specification for the bench/);
    await thumb.press(say.copies.COPY_TEXT);
    await expect(notice(page)).toContainText("Copied");
    expect(await page.evaluate(() => navigator.clipboard.readText())).toContain("For Tess & Rowan");
  });

  let book;
  await job(page, "a copy of the whole book as a file", 3, async (thumb) => {
    await thumb.follow(say.screens.SETUP);
    await thumb.tap(line(page, "Copies"));
    const [download] = await Promise.all([page.waitForEvent("download"), thumb.press(say.copies.DOWNLOAD)]);
    book = await download.path();
  });

  // A colleague's phone.
  const colleague = await browser.newContext();
  guard.follow(colleague);
  const other = await colleague.newPage();
  await start(other);
  await job(other, "a colleague's file looked at and brought in", 4, async (thumb) => {
    await thumb.follow(say.screens.SETUP);
    await thumb.tap(line(other, "Bring in a file"));
    const [chooser] = await Promise.all([other.waitForEvent("filechooser"), thumb.tap(other.getByText("Choose a file"))]);
    await chooser.setFiles(book);
    await thumb.press(/^Bring in/);
    await expect(notice(other)).toContainText("Brought in");
    expect(await fieldsOf(other, id)).toEqual(await fieldsOf(page, id));
  });

  const list = { schema: "1.0", kind: "preparation-list", id: "0".repeat(31) + "7", saved: "2026-11-25", answers: { "name.first": "Ada", "name.second": "Ben" } };
  await page.evaluate((text) => navigator.clipboard.writeText(text), JSON.stringify(list));
  await job(page, "a couple's list, pasted from a message into a new couple", 5, async (thumb) => {
    await thumb.follow(say.screens.COUPLES);
    await thumb.follow(say.list.taking.TAKE_IN);
    await thumb.tap(page.locator("#message"));
    await page.keyboard.press("Control+V");
    thumb.taps += 1; // the phone's own "paste"
    await thumb.press(say.list.taking.TAKE_IT_IN);
    await expect(heading(page)).toHaveText("Ada & Ben");
  });
});
