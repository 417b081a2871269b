// The table of every address of the app, which several specs walk along, and the ids that its rows need.
import { readFile } from "node:fs/promises";
import { practiceFields, rows, said } from "./rows.js";

/**
 * Every address of src/app/address.rs: its name there, and the address itself. `at` is given what `waypoints` found:
 * the ids of a couple with everything and of its items. A variant without a row here fails addresses.spec.js.
 */
export const ADDRESSES = [
  ["Address::Today", () => "#/today"],
  ["Address::Couples", () => "#/couples"],
  ["Address::NewCouple", () => "#/couples/new"],
  ["Address::TakeIn", () => "#/couples/list"],
  ["Address::Invite", () => "#/couples/invite"],
  ["Address::List", () => "#/list"],
  ...["two", "wedding", "wearing", "rings", "look", "hands", "budget", "bring", "measure", "privacy", "send"].map((page) => ["Address::List", () => `#/list/${page}`]),
  ["Address::Couple", ({ couple }) => `#/couple/${couple}`],
  ["Address::Bench", () => "#/tools"],
  ["Address::Practice", () => "#/setup"],
  ["Address::Nowhere", () => "#/no/such/place"],
  ["Part::People", ({ couple }) => `#/couple/${couple}/people`],
  ["Part::Wedding", ({ couple }) => `#/couple/${couple}/wedding`],
  ["Part::Appointments", ({ couple }) => `#/couple/${couple}/appointments`],
  ["Part::Appointment", ({ couple }) => `#/couple/${couple}/appointments/new`],
  ["Part::Appointment", ({ couple, appointment }) => `#/couple/${couple}/appointments/${appointment}`],
  ["Part::Recorded", ({ couple }) => `#/couple/${couple}/recorded`],
  ["Part::Stage", ({ couple }) => `#/couple/${couple}/stage`],
  ["Part::Notes", ({ couple }) => `#/couple/${couple}/notes`],
  ["Part::Finger", ({ couple }) => `#/couple/${couple}/finger/first`],
  ["Part::Fitted", ({ couple }) => `#/couple/${couple}/fitted/first`],
  ["Part::Rings", ({ couple }) => `#/couple/${couple}/rings/first`],
  ["Part::Ring", ({ couple }) => `#/couple/${couple}/rings/first/new`],
  ["Part::Ring", ({ couple, ring }) => `#/couple/${couple}/rings/first/${ring}`],
  ["Part::Band", ({ couple }) => `#/couple/${couple}/band/first`],
  ["Part::Remedy", ({ couple }) => `#/couple/${couple}/remedy/first`],
  ["Part::ReadBack", ({ couple }) => `#/couple/${couple}/read-back`],
  ["Part::Plan", ({ couple }) => `#/couple/${couple}/plan`],
  ["Part::Specification", ({ couple }) => `#/couple/${couple}/specification`],
  ["Part::Copy", ({ couple }) => `#/couple/${couple}/copy`],
  ["Part::Same", ({ couple }) => `#/couple/${couple}/same`],
  ["Part::Differences", ({ couple }) => `#/couple/${couple}/differences`],
  ["Part::History", ({ couple }) => `#/couple/${couple}/history`],
  ["Part::Erase", ({ couple }) => `#/couple/${couple}/erase`],
  ["Part::PreparationList", ({ couple }) => `#/couple/${couple}/said`],
  ["Part::Invite", ({ couple }) => `#/couple/${couple}/invite`],
  ["Calculator::Size", () => "#/tools/size?q=M%C2%BD"],
  ["Calculator::Size", ({ couple }) => `#/tools/size?couple=${couple}&who=first`],
  ["Calculator::Table", () => "#/tools/table"],
  ["Calculator::Order", () => "#/tools/order"],
  ["Calculator::Order", ({ couple }) => `#/tools/order?couple=${couple}&who=first`],
  ["Calculator::Stack", () => "#/tools/stack"],
  ["Calculator::Stack", ({ couple }) => `#/tools/stack?couple=${couple}&who=first`],
  ["Calculator::Compare", () => "#/tools/compare"],
  ["Calculator::Compare", ({ couple }) => `#/tools/compare?couple=${couple}&who=first`],
  ["Calculator::Dates", () => "#/tools/dates"],
  ["Calculator::Dates", ({ couple }) => `#/tools/dates?couple=${couple}`],
  ["Calculator::ScreenGauge", () => "#/tools/screen-gauge"],
  ["Calculator::ScreenGauge", ({ couple }) => `#/tools/screen-gauge?couple=${couple}&who=first`],
  ["Calculator::PaperGauge", () => "#/tools/paper-gauge"],
  ["Setting::Fair", () => "#/setup/fair"],
  ["Setting::Sizes", () => "#/setup/sizes"],
  ["Setting::Gauges", () => "#/setup/gauges"],
  ["Setting::Gauge", () => "#/setup/gauges/new"],
  ["Setting::Gauge", ({ gauge }) => `#/setup/gauges/${gauge}`],
  ["Setting::Tray", () => "#/setup/tray"],
  ["Setting::TryOn", () => "#/setup/tray/new"],
  ["Setting::TryOn", ({ tryOn }) => `#/setup/tray/${tryOn}`],
  ["Setting::Times", () => "#/setup/times"],
  ["Setting::Time", () => "#/setup/times/making"],
  ["Setting::Extra", () => "#/setup/times/new"],
  ["Setting::Extra", ({ extra }) => `#/setup/times/${extra}`],
  ["Setting::Closures", () => "#/setup/closures"],
  ["Setting::Place", () => "#/setup/closures/assay-office"],
  ["Setting::Place", () => "#/setup/closures/courier"],
  ["Setting::Holidays", () => "#/setup/closures/holidays"],
  ["Setting::Chances", () => "#/setup/chances"],
  ["Setting::Closure", () => "#/setup/closures/new"],
  ["Setting::Closure", ({ closure }) => `#/setup/closures/${closure}`],
  ["Setting::Stack", () => "#/setup/stack"],
  ["Setting::Fit", () => "#/setup/fit"],
  ["Setting::Phone", () => "#/setup/phone"],
  ["Setting::PhoneName", ({ phone }) => `#/setup/phone/${phone}`],
  ["Setting::Install", () => "#/setup/install"],
  ["Setting::Copies", () => "#/setup/copies"],
  ["Setting::BringIn", () => "#/setup/copies/bring-in"],
  ["Setting::Differences", () => "#/setup/differences"],
  ["Setting::Example", () => "#/setup/example"],
];

/** The names of the variants of an enum in src/app/address.rs. */
export async function variants(name) {
  const source = await readFile(new URL("../../src/app/address.rs", import.meta.url), "utf8");
  const body = source.match(new RegExp(`pub enum ${name} \\{([\\s\\S]*?)\\n\\}`))[1];
  return [...body.matchAll(/^    ([A-Z]\w*)/gm)].map(([, variant]) => `${name}::${variant}`);
}

/** The ids that the addresses need: those of the couple that has the most recorded, and of items of the practice. */
export async function waypoints(page) {
  const all = await said(page);
  const [key, fields] = Object.entries(all).sort(([, a], [, b]) => Object.keys(b).length - Object.keys(a).length)[0];
  const practice = await practiceFields(page);
  const item = (of, pattern) => Object.keys(of).map((field) => field.match(pattern)?.[1]).find(Boolean);
  return {
    couple: key.split("/")[1],
    appointment: item(fields, /^appointment\.([0-9a-f]{32})\.when$/),
    ring: item(fields, /^ring\.first\.([0-9a-f]{32})\.planned$/),
    gauge: item(practice, /^practice\.gauge\.([0-9a-f]{32})$/),
    tryOn: item(practice, /^practice\.try_on\.([0-9a-f]{32})$/),
    extra: item(practice, /^practice\.extra\.([0-9a-f]{32})$/),
    closure: item(practice, /^practice\.closure\.([0-9a-f]{32})$/),
    phone: JSON.parse((await rows(page))["meta/installation"]).id,
  };
}
