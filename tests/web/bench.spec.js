// The Bench: what the calculators remember, what they ask back, and what stands in their addresses.
import { expect, fieldsOf, furnish, go, hand, open, ready, test } from "./hand.js";
import { say } from "./say.js";

test("each calculator remembers on the Bench what it was last asked, and its inputs live in the address", async ({ page, site, start }) => {
  await start();
  for (const [which, label, words, output, says] of [
    ["size", "Size", "UK M", "Round the inside", /52\.50/],
    ["stack", "Width of the band to make", "3.25", "The stack", /3\.25/],
    ["dates", "Wedding date", "22 May 2027", "Order by", /8 Apr/],
  ]) {
    await go(page, `#/tools/${which}`);
    await hand(page).write(page.getByLabel(label, { exact: true }), words);
    await expect(page.getByRole("status", { name: output, exact: true })).toContainText(says);
    await expect.poll(() => page.url()).toContain(encodeURIComponent(words));
    const address = page.url();
    await page.reload();
    await ready(page);
    await expect(page.getByRole("status", { name: output, exact: true }), "after a reload").toContainText(says);
    await open(page, site, `#/tools/${which}`);
    await expect(page.getByRole("status", { name: output, exact: true }), "opened from the Bench").toContainText(says);
    await page.goto("about:blank");
    await page.goto(address);
    await ready(page);
    await expect(page.getByRole("status", { name: output, exact: true }), "from a bookmark").toContainText(says);
  }
});

test("a bare number is never one of several sizes in silence", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/size");
  const thumb = hand(page);
  for (const [words, ways] of [["6", ["US 6", "Japan 6"]], ["16", ["Italy 16", "Japan 16"]], ["54", []], ["16.9 mm", []], ["M½", []], ["M 1/2", []], ["m.5", []], ["6 1/4", ["US 6¼", "Italy 6¼"]], ["6,25", ["US 6¼", "Italy 6¼"]]]) {
    // Afresh: which system was chosen for the number before is shown, and stays.
    await go(page, "#/tools/size?q=1");
    await thumb.put(page.getByLabel(say.bench.SIZE, { exact: true }), words);
    await expect(page.getByRole("status", { name: say.bench.INSIDE })).toBeVisible();
    const offered = page.locator("[name=as]");
    if (ways.length) {
      expect(await offered.count(), words).toBeGreaterThan(1);
      for (const way of ways) await expect(page.getByRole("group").filter({ has: offered }), words).toContainText(way);
      await expect(page.getByRole("status", { name: say.bench.EVERY_SYSTEM }), "nothing is converted before it was chosen").toHaveCount(0);
      await offered.first().tap();
    }
    else expect(await offered.count(), words).toBe(0);
    await expect(page.getByRole("status", { name: say.bench.EVERY_SYSTEM }), words).toContainText("US");
  }
});

test("no address carries words about people", async ({ page, start }) => {
  await start();
  const ids = await furnish(page);
  const names = Object.entries(await fieldsOf(page, ids.couple)).filter(([field]) => /^(name|reach|met|note)/.test(field)).map(([, value]) => value);
  expect(names.length).toBeGreaterThan(4);
  const seen = [];
  page.on("framenavigated", (frame) => seen.push(frame.url()));
  for (const address of [`#/couple/${ids.couple}`, `#/couple/${ids.couple}/people`]) {
    await go(page, address);
    seen.push(page.url());
  }
  // A calculator writes its address when something was typed, a moment later.
  for (const [which, who, field, words] of [["order", "&who=first", "#width", "5"], ["stack", "&who=first", "#band", "5"], ["dates", "", "#wedding", "2028"]]) {
    await go(page, `#/tools/${which}?couple=${ids.couple}${who}`);
    // What is asked is folded away under the answer.
    await page.evaluate(() => document.querySelectorAll("details").forEach((folded) => (folded.open = true)));
    await hand(page).put(page.locator(field), words);
    await expect.poll(() => page.url()).toContain(`=${words}`);
    seen.push(page.url());
  }
  for (const url of seen) for (const name of names) expect(decodeURIComponent(url)).not.toContain(name);
});

test("an address that is gone to at once after a key is not written over", async ({ page, start }) => {
  await start();
  await go(page, "#/tools/size?q=UK%20M");
  await page.evaluate(() => {
    const field = document.querySelector("#q");
    field.value = "UK N";
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    location.hash = "#/tools/size?q=UK%20P";
  });
  await expect(page.locator("#q")).toHaveValue("UK P");
  // A calculator writes its address 0.4 s after the last key.
  await page.waitForTimeout(600);
  expect(await page.evaluate(() => location.hash)).toBe("#/tools/size?q=UK%20P");
  await expect(page.locator("#q")).toHaveValue("UK P");
});
