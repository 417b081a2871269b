// Which finger the band is for, what counts of what was read, and what the joint was tried in.
import { expect, fieldsOf, go, hand, heading, line, meet, notice, test } from "./hand.js";

test("a reading of another finger moves the band only if somebody says so", async ({ page, install }) => {
  await install();
  const thumb = hand(page);
  const id = await meet(page, "Cleo");
  const notes = page.locator(".note");
  const read = async (size, count) => {
    await thumb.put(page.getByLabel("Size read"), size);
    await thumb.press("Add reading");
    await expect(notes).toHaveCount(count);
  };
  await go(page, `#/couple/${id}/finger/first`);
  await read("UK M", 1);
  await thumb.choose("Measured at", "Joint");
  await read("UK P", 2);
  await expect(page.locator("main")).toContainText("Joint: passes at 56.25 mm, near UK P, as read in 3 mm.");

  // To compare: asked, and nothing is saved before it is said.
  await thumb.choose("Hand", "right");
  await thumb.put(page.getByLabel("Size read"), "UK O");
  await thumb.press("Add reading");
  await expect(page.locator("#moves-error")).toHaveText("Say first which finger the band is for.");
  await expect(notes).toHaveCount(2);
  await thumb.choose("Is the band for the right ring finger now?", "No, for the left ring finger: this is to compare");
  await thumb.press("Add reading");
  await expect(notes).toHaveCount(3);
  await expect(notes.last()).toContainText("right ring finger, base");
  await expect(notes.last()).toContainText("not the band’s finger: does not count");
  expect((await fieldsOf(page, id))["finger.first"]).toEqual({ hand: "left", digit: "ring" });
  // The form is back at the band's finger.
  await expect(page.getByRole("group", { name: "Hand" }).getByLabel("left")).toBeChecked();
  await expect(page.getByText("Is the band for")).toHaveCount(0);
  await go(page, `#/couple/${id}`);
  await expect(line(page, "Cleo: finger")).toContainText("M, joint P");

  await go(page, `#/couple/${id}/band/first`);
  await thumb.write(page.getByLabel("Width", { exact: true }), "8");
  await thumb.choose("Profile", "flat");
  await thumb.press("Save");
  await expect(heading(page)).not.toContainText("band");
  await go(page, `#/bench/order?couple=${id}&who=first`);
  await expect(page.locator("#answer")).toContainText("Try the joint again in 8 mm: it was tried in 3 mm");
  const joint = page.locator(".reason", { hasText: "To pass the joint" });
  await expect(joint).toContainText("the joint passes at 56.25 mm in a gauge of 3 mm · rule published, amount as read");

  // And the band may move.
  await go(page, `#/couple/${id}/finger/first`);
  await thumb.press("The band is for the right ring finger");
  await expect(notice(page)).toContainText("Finger saved");
  await expect(notes.first()).toContainText("not the band’s finger: does not count");
  expect((await fieldsOf(page, id))["finger.first"]).toEqual({ hand: "right", digit: "ring" });
});
