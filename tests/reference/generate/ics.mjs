// Reads the calendar file that `cargo test --test native calendar` wrote with ical.js, and compares every event with what went
// in: ics.py does the same with another project's parser.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import ICAL from "ical.js";

const target = process.env.CARGO_TARGET_DIR ?? join(dirname(fileURLToPath(import.meta.url)), "../../../target");
const file = await readFile(join(target, "tmp/calendar.ics"), "utf8");
const expected = (await readFile(join(target, "tmp/calendar.jsonl"), "utf8")).trimEnd().split("\n").map((line) => JSON.parse(line));

const component = new ICAL.Component(ICAL.parse(file));
assert.equal(component.getFirstPropertyValue("method"), "PUBLISH");
const events = component.getAllSubcomponents("vevent");
assert.equal(events.length, 10_000);
events.forEach((event, at) => {
  const of = (name) => event.getFirstPropertyValue(name);
  const read = {
    uid: of("uid"),
    sequence: of("sequence"),
    title: of("summary"),
    place: of("location"),
    about: of("description"),
    starts: of("dtstart").toString(),
    ends: of("dtend").toString(),
    status: of("status"),
    alarms: event.getAllSubcomponents("valarm").length,
  };
  assert.equal(of("dtstart").isDate, !read.starts.includes("T"));
  assert.deepEqual(read, expected[at]);
});
console.log(`calendar: ${events.length} events as ical.js reads them`);
