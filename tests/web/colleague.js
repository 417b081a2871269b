// A second phone, and what passes between the two: files out, files in.
import { readFile } from "node:fs/promises";
import { TODAY, expect, go, hand, notice, ready } from "./hand.js";

/** Another phone: a profile of its own, with the app open and its clock at `at`. */
export async function colleague(browser, guard, site, at = TODAY) {
  const context = await browser.newContext();
  guard.follow(context);
  await context.clock.setFixedTime(at);
  const page = await context.newPage();
  await page.goto(site.url);
  await ready(page);
  return page;
}

/** Presses a button that downloads, and answers with what was written. */
export async function download(page, button = "Download") {
  const [file] = await Promise.all([page.waitForEvent("download"), hand(page).press(button)]);
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), "utf8") };
}

/** The whole book as a file. */
export async function copy(page) {
  await go(page, "#/setup/copies");
  return download(page);
}

/** Chooses a file, whatever it is called, and waits for nothing. */
export async function choose(page, body, name = "book.json") {
  await go(page, "#/setup/copies/bring-in");
  await page.locator("#file").setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(body) });
}

/** Takes in all of a file. */
export async function bringIn(page, { text }) {
  await choose(page, text);
  await hand(page).press(/Bring (in|it)/);
  await expect(notice(page)).toContainText("Brought in");
}
