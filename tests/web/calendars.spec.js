// Calendar files: of one couple, and of everybody; with names only where they are wanted.
import { readFile } from "node:fs/promises";
import { expect, go, hand, heading, meet, notice, said, test } from "./hand.js";
import { say } from "./say.js";

test("a calendar file without names, and with them", async ({ page, start }) => {
  await start();
  const couple = await meet(page, "Ines", { second: "Callum", wedding: "29 May 2027" });
  const thumb = hand(page);
  await go(page, `#/couple/${couple}/appointments/new`);
  await thumb.put(page.locator("#day"), "3 December 2026");
  await thumb.put(page.locator("#place"), "studio");
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  await go(page, `#/couple/${couple}/plan`);
  const file = async () => {
    const loading = page.waitForEvent("download");
    await thumb.press(say.agenda.DOWNLOAD);
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
  expect(named).toContain("studio");
  const uids = (text) => text.match(/^UID:.*/gm);
  expect(uids(named)).toEqual(uids(plain));
});

test("a couple that said no has no calendar file, nor what was joined with it, nor an invented one", async ({ page, start }) => {
  await start();
  const thumb = hand(page);
  const ids = [];
  for (const reach of ["07700 900111", "07700 900222"]) ids.push(await meet(page, "Ada", { second: "Bo", wedding: "22 May 2027", reach }));
  const [kept, away] = ids.sort();
  await go(page, `#/couple/${kept}/same`);
  await thumb.press(say.same.JOIN);
  await expect(notice(page)).toContainText("Joined");
  const buttons = page.getByRole("button", { name: /calendar file/ });
  for (const id of ids) {
    await go(page, `#/couple/${id}/plan`);
    await expect(buttons.first()).toBeVisible();
  }
  await go(page, `#/couple/${kept}/recorded`);
  await thumb.choose(say.screens.MAY_RECORD, say.screens.NO);
  await thumb.press(say.screens.SAVE);
  await expect(notice(page)).toContainText("saved");
  for (const [id, why] of [[kept, "They said no to being recorded"], [away, "The entry that was joined with this one says no"]]) {
    for (const part of ["", "/plan"]) {
      await go(page, `#/couple/${id}${part}`);
      await expect(page.locator(".caution", { hasText: why })).toBeVisible();
    }
    await expect(buttons).toHaveCount(0);
    await go(page, `#/couple/${id}/specification`);
    await expect(page.getByRole("button", { name: /Copy|Share/ })).toHaveCount(0);
  }
  await go(page, "#/setup/copies");
  await expect(page.locator("main")).toContainText("2 couples said no to being recorded and stay");
  await thumb.press(say.agenda.DOWNLOAD);
  await expect(notice(page)).toContainText("There is no day to put into a calendar yet.");
  await go(page, "#/setup/example");
  await thumb.press(say.screens.LOAD_EXAMPLES);
  await expect(notice(page)).toContainText("example couples loaded");
  const [example] = Object.entries(await said(page)).find(([, fields]) => fields["name.first"] === "Ines");
  await go(page, `#/couple/${example.split("/")[1]}/plan`);
  await expect(page.getByText("An invented example: it is left out of every file.")).toBeVisible();
  await expect(buttons).toHaveCount(0);
});

test("one calendar file for everybody, and what fell away is taken out", async ({ page, start }) => {
  await start();
  const tess = await meet(page, "Tess", { wedding: "22 May 2027" });
  const ines = await meet(page, "Ines", { wedding: "5 June 2027" });
  const thumb = hand(page);
  const file = async () => {
    await go(page, "#/setup/copies");
    const loading = page.waitForEvent("download");
    await thumb.press(say.agenda.DOWNLOAD);
    return readFile(await (await loading).path(), "utf8");
  };
  const event = (text, uid) => text.split("BEGIN:VEVENT").find((part) => part.includes(`UID:${uid}`));
  const before = await file();
  for (const id of [tess, ines]) expect(event(before, `${id}-wedding`)).toContain("STATUS:CONFIRMED");
  await go(page, `#/couple/${tess}/wedding`);
  await thumb.put(page.locator("#wedding"), "not yet");
  await thumb.press(say.screens.SAVE);
  // Back to where the hand came from.
  await expect(heading(page)).toHaveText("Copies");
  const after = await file();
  for (const what of ["wedding", "order", "try-on"]) expect(event(after, `${tess}-${what}`), what).toContain("STATUS:CANCELLED");
  expect(event(after, `${ines}-wedding`)).toContain("STATUS:CONFIRMED");
});
