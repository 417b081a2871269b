// Dates that hold: from the wedding to an order under way, a calendar file, and holidays one by one.
import { readFile } from "node:fs/promises";
import { expect, figure, furnish, go, hand, heading, meet, test } from "./hand.js";

const answer = (page) => page.locator("#order-by");
const reasonOf = (page, name) => page.locator(".reason", { hasText: name });

test("the chance of being in time, and what it rests on", async ({ page, install }) => {
  await install();
  await go(page, "#/bench/dates?wedding=22%20May%202027");
  // Twenty working days back from Friday 7 May: the twentieth has 3 chances of 42, which is more than 5 %.
  await expect(answer(page)).toContainText("Thu 8 Apr 2027");
  await expect(answer(page)).toContainText("100 % in hand by Sat 8 May 2027");
  await go(page, "#/bench/dates?wedding=22%20May%202027&confidence=90&decided=12%20April%202027");
  await expect(answer(page)).toContainText("Fri 9 Apr 2027");
  // Decided on Monday 12 April eighteen working days are left: 33 of 42.
  await expect(reasonOf(page, "If decided")).toContainText("78 %");
});

test("an order as it goes, and what ran late", async ({ page, install }) => {
  await install();
  const id = await meet(page, "Tess", { wedding: "22 May 2027" });
  const thumb = hand(page);
  await go(page, `#/couple/${id}/stage`);
  await thumb.choose("Stage", "ordered");
  await thumb.put(page.getByLabel("Since"), "5 October 2026");
  await thumb.press("Save");
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  const made = page.getByLabel("Making, finished");
  await thumb.put(made, "26 November 2026");
  await thumb.press("Save");
  await expect(page.locator("#done-making-error")).toHaveText("Enter a day no later than today, Wed 25 Nov 2026.");
  await thumb.put(made, "9 November 2026");
  await thumb.press("Save");
  await expect(heading(page)).toHaveText("Tess");
  await go(page, `#/couple/${id}/plan`);
  // numpy.busday_count of 5 October to 9 November: 25.
  await expect(reasonOf(page, "Making")).toContainText("25 working days: late, 5 more than its longest");
  await expect(reasonOf(page, "In hand in time")).toContainText("100 %");
});

test("a calendar file without names, and with them", async ({ page, install }) => {
  await install();
  const { couple } = await furnish(page);
  const thumb = hand(page);
  await go(page, `#/couple/${couple}/plan`);
  const file = async () => {
    const loading = page.waitForEvent("download");
    await thumb.press("Download the calendar file");
    const download = await loading;
    expect(download.suggestedFilename()).toBe("rings.ics");
    return readFile(await download.path(), "utf8");
  };
  const plain = await file();
  expect(plain).toMatch(/^BEGIN:VCALENDAR\r\n/);
  expect(plain).toContain("SUMMARY:Rings: try on\r\n");
  expect(plain).not.toMatch(/Ines|Callum|studio/);
  await thumb.tap(page.locator("#with-names"));
  const named = await file();
  expect(named).toContain("SUMMARY:Rings: try on\\, Ines & Callum\r\n");
  const uids = (text) => text.match(/^UID:.*/gm);
  expect(uids(named)).toEqual(uids(plain));
});

test("a holiday that is worked moves the date", async ({ page, install }) => {
  await install();
  const thumb = hand(page);
  await go(page, "#/practice/closures/holidays");
  await thumb.tap(page.locator("#kept-early-may"));
  await thumb.press("Save");
  await go(page, "#/bench/dates?wedding=22%20May%202027");
  await expect(answer(page)).toContainText("Fri 9 Apr 2027");
});

test("a forecast two years out takes no time", async ({ page, install }) => {
  await install();
  await go(page, "#/bench/dates?wedding=22%20May%202027&extras=stones,engraving,marking,delivery");
  // From a key to the answer on the page, with everything in between; a task of its own ends what the key began.
  const worked = async (wedding) => {
    const field = page.locator("#wedding");
    return field.evaluate(async (field, wedding) => {
      const settled = () =>
        new Promise((done) => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = done;
          port2.postMessage(null);
        });
      const times = [];
      for (let n = 0; n < 21; n += 1) {
        field.value = wedding + " ".repeat(n % 2);
        const begun = performance.now();
        field.dispatchEvent(new Event("input", { bubbles: true }));
        await settled();
        times.push(performance.now() - begun);
      }
      return times.sort((a, b) => a - b)[10];
    }, wedding);
  };
  await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
  for (const [wedding, year] of [["22 May 2027", "2027"], ["25 November 2028", "2028"], ["25 November 2034", "2034"]]) {
    const took = await worked(wedding);
    figure(`forecast of five steps to ${wedding}: ${took.toFixed(1)} ms from a key to the answer`);
    await expect(answer(page)).toContainText(year);
    // A shared machine may be slow, but not by that much.
    expect(took).toBeLessThan(250);
  }
});
