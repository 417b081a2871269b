// The couple's list on its way: what is no list, the link that invites, and the share sheet.
import { writeFile } from "node:fs/promises";
import { expect, go, hand, keptList, loadExamples, meet, notice, ready, said, test } from "./hand.js";
import { fill, secondPhone } from "./list.js";
import { say } from "./say.js";

test("what is no list is refused in one sentence, by file and by paste, and nothing is lost", async ({ page, start }, info) => {
  await start();
  await loadExamples(page);
  const before = await said(page);
  const whole = { schema: "1.0", kind: "preparation-list", id: "0".repeat(31) + "7", saved: "2026-11-25", answers: { "name.first": "Ada" } };
  const text = JSON.stringify(whole);
  const utf16 = Buffer.from("\ufeff" + text, "utf16le");
  const faults = {
    "not a list": ["Hello Mara, see you on Friday.", /there is no list in this\.$/],
    "cut off": [text.slice(0, -20), /cut off before its end\.$/],
    "another kind": [JSON.stringify({ ...whole, kind: "couple" }), /couples of a book\.$/],
    "another program's": ['{"contacts":[{"name":"Ada"}]}', /made by another program\.$/],
    "a newer major": [JSON.stringify({ ...whole, schema: "2.0" }), /format 2, which this version cannot read\.$/],
    damaged: [JSON.stringify({ ...whole, saved: "31/2/2026" }), /missing or damaged\.$/],
    "200 levels": ["[".repeat(200) + "]".repeat(200), /nested far deeper than any list\.$/],
    "too large": [" ".repeat(1_000_001), /never larger than 1,000 kB/, "file"],
    empty: ["", /this one is empty\.$/, "file"],
    "UTF-16": [utf16, /save it as UTF-8\.$/, "file"],
    "a packed folder": [Buffer.from("PK\x03\x04\x14\x00", "latin1"), /unpack it first\.$/, "file"],
    "a picture": [Buffer.from("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00", "latin1"), /a picture, a sound or the like\.$/, "file"],
  };
  const told = () => page.locator(".field-error:not(:empty)");
  await go(page, "#/couples/list");
  for (const [what, [content, sentence, only]] of Object.entries(faults)) {
    if (!only) {
      await page.locator("#message").fill(content);
      await expect(told(), what).toHaveCount(1);
      await expect(told(), what).toHaveText(sentence);
      await expect(page.locator("#message"), "what was pasted stays").toHaveValue(content);
    } else await page.locator("#message").fill("");
    const file = info.outputPath("list.odd");
    await writeFile(file, content);
    await page.locator("#list-file").setInputFiles(file);
    await expect(told(), `${what}, as a file`).toHaveText(sentence);
    await expect(page.getByRole("button", { name: say.list.taking.TAKE_IT_IN })).toHaveCount(0);
  }
  expect(await said(page)).toEqual(before);

  // A newer minor is read; what cannot be taken is named; the rest can be taken in.
  const odd = { ...whole, schema: "1.3", mood: "good", answers: { "name.first": "A\u202eda", "name.second": "<i>Ben</i>", "hand.first": "third", "moon.first": "full" } };
  await page.locator("#message").fill(JSON.stringify(odd));
  await expect(page.getByText("It was made with a newer version of the list.")).toBeVisible();
  await expect(page.getByText("Name: it has characters in it that turn the writing direction.")).toBeVisible();
  // A choice of a newer version is none that this one knows.
  await expect(page.getByText("2 answers that this version does not know are kept, not shown.")).toBeVisible();
  await expect(page.getByText("<i>Ben</i>").first()).toBeVisible();
  await expect(page.locator("main i")).toHaveCount(0);
  await hand(page).press(say.list.taking.ANOTHER);
  await page.locator("#message").fill(JSON.stringify({ ...odd, schema: "1.0" }));
  await expect(page.getByText("1 answer to questions that are not on the list.")).toBeVisible();
  await expect(page.getByText("Hand: it is none of the answers that are offered.")).toBeVisible();
  // Half-pasted words are there again after a reload.
  await page.reload();
  await ready(page);
  await expect(page.locator("#message")).toHaveValue(/moon/);
});

test("the jeweller invites a couple with a link", async ({ page, context, browser, site, start, guard }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await start();
  const id = await meet(page, "Ada", { second: "Ben" });
  await go(page, `#/couple/${id}/invite`);
  const thumb = hand(page);
  await thumb.write(page.getByLabel(say.screens.APPOINTMENT), "3 Dec");
  await thumb.write(page.getByLabel(say.screens.TIME), "6.30pm");
  const link = page.getByLabel(say.list.taking.LINK);
  await expect(link).toHaveValue(site.url + "#/list?for=Ada&with=Ben&when=2026-12-03T18%3A30&region=england-and-wales");
  await thumb.press(say.list.taking.COPY_LINK);
  await expect(notice(page)).toContainText("Link copied");
  const theirs = await secondPhone(browser, guard);
  await theirs.goto(await page.evaluate(() => navigator.clipboard.readText()));
  await ready(theirs);
  await expect(theirs.getByText("For Ada and Ben. Your appointment: Thu 3 Dec 2026, 18:30.")).toBeVisible();
});

test("the next invitation begins empty once the last link is on its way, and not before", async ({ page, context, start }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await start();
  const thumb = hand(page);
  const first = page.getByLabel(say.screens.FIRST_NAME);
  await go(page, "#/couples/invite");
  await thumb.write(first, "Ada");
  await go(page, "#/today");
  await go(page, "#/couples/invite");
  await expect(first, "what was typed is kept until it has gone").toHaveValue("Ada");
  await thumb.press(say.list.taking.COPY_LINK);
  await expect(notice(page)).toContainText("Link copied");
  await go(page, "#/today");
  await go(page, "#/couples/invite");
  await expect(first).toHaveValue("");
  await expect(page.getByLabel(say.list.taking.LINK)).not.toHaveValue(/Ada/);
});

test("with a share sheet the list goes there, as text where it takes no JSON", async ({ page, start }) => {
  await page.addInitScript(() => {
    window.shared = [];
    navigator.canShare = ({ files }) => !files || files[0].type === "text/plain";
    navigator.share = async ({ files, title, text }) => void window.shared.push({ title, text, name: files?.[0].name, body: await files?.[0].text() });
  });
  await start();
  await fill(page);
  await go(page, "#/list/send");
  await hand(page).press(say.list.handing.SEND_FILE);
  await expect(page.getByText("The file is on its way")).toBeVisible();
  await hand(page).press(say.list.handing.SEND_TEXT);
  await expect(page.getByText("The message is on its way.")).toBeVisible();
  const [file, message] = await page.evaluate(() => window.shared);
  expect(file.name).toBe("preparation-list.json.txt");
  expect(JSON.parse(file.body)).toEqual(await keptList(page));
  expect(message.text).toContain("Wedding: 22 May 2027");
});
