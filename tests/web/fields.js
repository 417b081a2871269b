// What each field of each screen takes, and what is said of everything else. All of it is fed in matrix.spec.js, at
// length; one field of a kind and one of a screen in fields.spec.js.

export const INPUTS = {
  empty: "",
  spaces: "   ",
  text: "about two",
  comma: "2,5",
  fraction: "2 1/2",
  zero: "0",
  negative: "-3",
  large: "99999999999999",
  emoji: "💍💍",
  long: "x".repeat(10_000),
  "no such day": "31/2/2031",
  "past day": "22 May 2019",
};

/** What each kind of field takes, and what is said of everything else; where one sentence does not fit all, by input. */
const but = (...bad) => Object.keys(INPUTS).filter((name) => !bad.includes(name));
const SIZE = /^(Enter a size|Enter one size|A size must be|A ring must be)[, ].*\.$/;
const CHOOSE = /^Choose which of these sizes is meant, or type it with its system, like UK M or US 6\.$/;
export const KINDS = {
  name: { takes: but("empty", "spaces", "long"), says: /^Enter a name( of at most 80 characters)?\.$/ },
  "name or none": { takes: but("long"), says: /^Enter a name of at most 80 characters\.$/ },
  line: { takes: but("long"), says: /^Enter a line of at most 160 characters\.$/ },
  "ring name": { takes: but("long"), says: /^Enter a name for the ring of at most 160 characters\.$/ },
  note: { takes: but("empty", "spaces", "long"), says: /^Enter a note( of at most 4,000 characters)?\.$/ },
  words: { takes: but() },
  reach: { takes: ["empty", "spaces", "large"], says: /phone number|e-mail address/ },
  "wedding or none": {
    takes: ["empty", "spaces"],
    says: /^Enter (a date like 22 May 2027, a month, a year, or “not yet”|the date alone, like 22 May 2027)\.$/,
    "no such day": /^Enter a day that exists: there is no 31 February 2031\.$/,
    "past day": /^Enter a wedding date from today on: Wed 22 May 2019 is past\.$/,
  },
  day: {
    takes: ["past day"],
    says: /^Enter (a date like 22 May 2027 or 22\/5\/2027|the date alone, like 22 May 2027)\.$/,
    "no such day": /^Enter a day that exists: there is no 31 February 2031\.$/,
  },
  "day or none": {
    takes: ["empty", "spaces", "past day"],
    says: /^Enter (a date like 22 May 2027 or 22\/5\/2027|the date alone, like 22 May 2027)\.$/,
    "no such day": /^Enter a day that exists: there is no 31 February 2031\.$/,
  },
  "note or none": { takes: but("long"), says: /^Enter a note of at most 4,000 characters\.$/ },
  message: { takes: ["empty", "spaces"], says: /^Enter the whole message, its last line too: there is no list in this\.$/ },
  wedding: { takes: [], says: /^Enter (a date like 22 May 2027, a month, a year, or “not yet”|the date alone, like 22 May 2027)\.$/, "no such day": /^Enter a day that exists: there is no 31 February 2031\.$/, "past day": /^Enter a wedding date from today on: Wed 22 May 2019 is past\.$/ },
  // "0" is midnight.
  "time or none": { takes: ["empty", "spaces", "zero"], says: /^Enter (a time like 14:30 or 2\.30pm|the time alone, like 14:30|a time between 00:00 and 23:59)\.$/ },
  size: { takes: [], says: SIZE, comma: CHOOSE, fraction: CHOOSE, zero: CHOOSE },
  // On the Bench every reading of a bare number is an answer.
  "size asked": { takes: ["comma", "fraction", "zero"], says: SIZE },
  "size or none": { takes: ["empty", "spaces", "comma", "fraction", "zero"], says: SIZE },
  "another size or none": { takes: ["empty", "spaces"], says: SIZE, comma: CHOOSE, fraction: CHOOSE, zero: CHOOSE },
  // A comma may stand between two rings, or in one figure.
  widths: { takes: ["empty", "spaces", "fraction"], says: /ring width.*between 0\.5 and 25 mm/, comma: /^One ring of [\d.]+ mm, or two, \d and \d mm: write [\d.]+, or \d and \d\.$/ },
};
/** A figure between two ends, with its noun. */
const figure = (noun, least, most, takes) => ({ kind: `${noun || "a figure of the fit"} ${least} to ${most}`, takes, says: new RegExp(`${noun}.* between ${least} and ${most}( mm| %)?, like [\\d.]+\\.$`, "i") });
const mm = (noun, least, most, ...more) => figure(noun, least, most, [...more, "comma", "fraction"]);
const none = ["empty", "spaces"];
const days = (...more) => figure("number of working days", "0", "260", [...more, "zero"]);
const calendarDays = (...more) => figure("number of days", "0", "366", [...more, "zero"]);

/** A choice among what is offered: every option is taken. */
export const choice = "choice";

/** What a kind of field is called: its name in KINDS, or what it is a figure of, with its ends. */
export const nameOf = (kind) => kind.kind ?? kind;

const INVITE = { "first-name": "name or none", "second-name": "name or none", day: "day or none", time: "time or none", region: choice };

const each = (fields) => Object.fromEntries(Object.entries(fields).flatMap(([key, kind]) => ["first", "second"].map((who) => [`${key}-${who}`, kind])));
const LIST = {
  ...each({ name: "name or none", hand: choice, finger: choice, "first-ring": choice, "owns-rings": choice }),
  ...each({ colour: choice, metal: choice, "nickel-free": choice, likes: "note or none", engraving: "line", work: "line", sport: "line" }),
  wedding: "wedding or none",
  "needed-by": "line",
  "ring-name-first-1": "line",
  "ring-width-first-1": "line",
  "ring-top-first-1": "line",
  "ring-metal-first-1": choice,
  "ring-how-first-1": choice,
  "to-come": "note or none",
  budget: choice,
  "budget-least": "line",
  "budget-most": "line",
  else: "note or none",
  recorded: choice,
};

/** A head that reaches has an underside; nothing is one while nothing is known of the head. */
const UNDERSIDE = mm("height of the head’s underside", "0", "12", ...none, "zero");
/** A dome higher than the band is another fault than a dome of no height that there is. */
const DOME = { ...figure("dome", "0", "4", [...none, "zero"]), comma: /^The dome must be lower than the band/, fraction: /^The dome must be lower than the band/ };

/** The parts of a ring of the stack. */
const RING = {
  name: "ring name",
  width: mm("ring width", "0\\.5", "25", ...none),
  top: mm("ring width", "0\\.5", "25", ...none),
  back: mm("ring width", "0\\.5", "25", ...none),
  when: choice,
  height: mm("height", "0\\.5", "8", ...none),
  profile: choice,
  metal: choice,
  web: mm("reach over the side", "0", "10", ...none, "zero"),
  tip: mm("reach over the side", "0", "10", ...none, "zero"),
  under: UNDERSIDE,
  stones: choice,
  inside: figure("width across the inside", "11\\.4", "25\\.5", none),
};

export const FIELDS = {
  "Address::Couples": { find: "words", "put-away": choice },
  "Address::NewCouple": {
    "first-name": "name",
    "second-name": "name or none",
    reach: "reach",
    wedding: "wedding or none",
    met: "line",
    "may-record": choice,
  },
  "Address::TakeIn": { message: "message" },
  "Address::Invite": INVITE,
  "Part::Invite": INVITE,
  "Address::List": LIST,
  "Part::People": { "first-name": "name", "second-name": "name or none", reach: "reach", "reach-2": "reach", "reach-3": "reach", met: "line" },
  "Part::Wedding": { wedding: "wedding or none" },
  "Part::Appointment": { day: "day", time: "time or none", place: "line", outcome: choice },
  "Part::Recorded": { "may-record": choice, asked: "day" },
  "Part::Stage": { stage: choice, since: "day" },
  "Part::Notes": { note: "note" },
  "Part::Finger": {
    size: "size",
    gauge: choice,
    hands: choice,
    place: choice,
    hand: choice,
    digit: choice,
    beside: "widths",
    "worn-width": mm("gauge width", "1", "15"),
    "worn-bore": choice,
    sits: choice,
    "read-at": choice,
    "taken-at": "time or none",
    "wish-warm-work": choice,
    "wish-sport": choice,
    "wish-adjustable": choice,
    "first-ring": choice,
  },
  "Part::Fitted": { "fitted-how": choice, "fitted-size": "size" },
  "Part::Plan": { reached: choice, "with-names": choice },
  "Part::Ring": {
    "ring-name": "line",
    planned: choice,
    "shoulder-width": mm("ring width", "0\\.5", "25", ...none),
    "top-width": mm("ring width", "0\\.5", "25", ...none),
    "back-width": mm("ring width", "0\\.5", "25", ...none),
    height: mm("height", "0\\.5", "8", ...none),
    profile: choice,
    metal: choice,
    place: choice,
    holds: choice,
    "ring-inscription": "line",
    "head-web": mm("reach over the side", "0", "10", ...none, "zero"),
    "head-tip": mm("reach over the side", "0", "10", ...none, "zero"),
    "head-underside": UNDERSIDE,
    stones: choice,
    inside: figure("width across the inside", "11\\.4", "25\\.5", none),
    hand: choice,
    digit: choice,
  },
  "Part::Band": {
    "band-width": mm("band width", "1", "20", ...none),
    height: mm("height", "0\\.5", "8", ...none),
    profile: choice,
    dome: DOME,
    relief: figure("edge relief", "0", "1", [...none, "zero"]),
    finish: choice,
    metal: choice,
  },
  "Part::Remedy": {
    remedy: choice,
    bay: figure("depth of the bay", "0", "10", ["zero", "comma", "fraction"]),
    "most-high": mm("height", "0\\.5", "8"),
    "left-gap": figure("gap at the top", "0", "10", ["zero", "comma", "fraction"]),
    impression: choice,
    template: choice,
    "ring-itself": choice,
    "away-from": "day or none",
    "away-to": "day or none",
    "ring-gone": "day or none",
    "ring-back": "day or none",
  },
  "Part::Specification": { called: choice },
  "Part::History": { "history-of": choice },
  "Part::Erase": { sure: choice },
  "Calculator::Size": { q: "size asked", as: choice },
  "Calculator::Table": { first: choice, step: choice, paper: choice },
  "Calculator::Order": {
    size: "size asked",
    gauge: choice,
    "gauge-kind": choice,
    "gauge-width": mm("gauge width", "1", "15"),
    "gauge-bore": choice,
    "gauge-error": figure("gauge error", "0", "1", ["zero", ...none]),
    "read-at": choice,
    hands: choice,
    width: mm("band width", "1", "20"),
    profile: choice,
    relief: figure("edge relief", "0", "1", [...none, "zero"]),
    neighbours: "widths",
    beside: "widths",
    joint: "size or none",
    "joint-width": mm("gauge width", "1", "15", ...none),
    "no-beads": choice,
    "first-ring": choice,
    changing: choice,
    ...Object.fromEntries(["width", "bore", "hands"].map((term) => [`own-${term}`, mm("shift of your own", "−5", "5", ...none, "zero", "negative")])),
  },
  "Calculator::Stack": {
    band: mm("band width", "1", "20"),
    "band-height": mm("height", "0\\.5", "8", ...none),
    "band-profile": choice,
    "band-dome": DOME,
    "band-relief": figure("edge relief", "0", "1", [...none, "zero"]),
    "band-metal": choice,
    "band-bay": figure("depth of the bay", "0", "10", [...none, "zero", "comma", "fraction"]),
    "band-set": choice,
    "band-inside": figure("width across the inside", "11\\.4", "25\\.5", none),
    ...Object.fromEntries([1, 2, 3, 4, 5, 6, 7].flatMap((n) => Object.entries(RING).map(([part, kind]) => [`ring${n}-${part}`, kind]))),
    place: choice,
    free: figure("free length", "10", "45", none),
    "free-right-middle": figure("free length", "10", "45", none),
    gap: figure("gap between rings", "0", "2", ["zero"]),
  },
  "Calculator::Compare": Object.fromEntries(
    [1, 2, 3, 4].flatMap((n) =>
      Object.entries({ width: mm("band width", "1", "20", ...none), height: mm("height", "0\\.5", "8", ...none), profile: choice, metal: choice, finish: choice }).map(([part, kind]) => [`band${n}-${part}`, kind]),
    ),
  ),
  "Calculator::ScreenGauge": { with: choice, match: choice },
  "Calculator::PaperGauge": {
    first: choice,
    paper: choice,
    line: figure("length of the printed line", "50", "150", none),
    by: choice,
    read: "size or none",
  },
  "Calculator::Dates": {
    wedding: "wedding",
    region: choice,
    least: days(),
    usual: days(),
    most: days(),
    ...Object.fromEntries(["stones", "marking", "engraving", "delivery", "own"].map((work) => [`extra-${work}`, choice])),
    "in-hand": calendarDays(),
    confidence: figure("chance to plan for", "50", "100", []),
    decided: { ...KINDS.day, kind: "day from today on or none", takes: none, "past day": /^Enter a day from today on, Wed 25 Nov 2026\.$/ },
  },
  "Setting::Fair": { fair: "line" },
  "Setting::Sizes": { "first-system": choice, step: choice },
  "Setting::Gauge": {
    "gauge-name": "name",
    "gauge-kind": choice,
    "gauge-width": mm("gauge width", "1", "15"),
    "gauge-bore": choice,
    "gauge-relief": figure("edge relief", "0", "1", [...none, "zero"]),
    "gauge-step": mm("step", ".*", ".*"),
    "gauge-taper": figure("taper", "0", "0\\.6", ["zero"]),
    "gauge-error": figure("gauge error", "0", "1", ["zero"]),
    ...Object.fromEntries([1, 2, 3, 4, 5].flatMap((n) => [[`cal${n}-says`, "another size or none"], [`cal${n}-is`, "another size or none"]])),
  },
  "Setting::TryOn": {
    "try-on-number": "name",
    size: "size",
    "try-on-width": mm("gauge width", "1", "15"),
    "try-on-bore": choice,
    "try-on-height": mm("thickness of the band", "0\\.5", "8", ...none),
  },
  "Setting::Time": { "least-days": days(), "usual-days": days(), "most-days": days() },
  "Setting::Extra": { "extra-name": "name", "least-days": days(), "usual-days": days(), "most-days": days() },
  "Setting::Closures": { region: choice, weekdays: choice, "on-holidays": choice, "cut-off": "time or none", "in-hand": calendarDays(...none) },
  "Setting::Closure": { "closure-name": "name", "closure-from": "day", "closure-to": "day", "closure-repeats": choice, "closure-place": choice },
  "Setting::Place": { "place-weekdays": choice, "place-holidays": choice, "place-christmas": choice },
  "Setting::Holidays": { kept: choice },
  "Setting::Chances": {
    confidence: figure("chance to plan for", "50", "100", none),
    "resize-chance": figure("chance", "0", "100", [...none, "zero"]),
    "try-on-after": calendarDays(...none),
    "busy-chance": figure("chance", "0", "100", [...none, "zero"]),
    "busy-longer": figure("stretch of the work", "0", "300", [...none, "zero"]),
    "busy-months": choice,
    "counts-today": choice,
  },
  "Setting::Stack": {
    "free-length": figure("free length", "10", "45", none),
    gap: figure("gap between rings", "0", "2", [...none, "zero"]),
    roomy: figure("share of the free length", "5", "100", none),
    full: figure("share of the free length", "5", "100", none),
    clearance: figure("clearance", "0", "1", [...none, "zero"]),
    catch: figure("difference of heights", "0", "2", [...none, "zero"]),
    thinnest: mm("height", "0\\.5", "8", ...none),
  },
  "Setting::Fit": Object.fromEntries(["width", "width-spread", "bore", "bore-spread", "cold", "warm", "hands-spread", "normal-spread", "offset-spread"].map((which) => [`fit-${which}`, figure("", "0", "[\\d.]+", [...none, "zero"])]).concat([["fit-offset", mm("shift of your own", "−5", "5", ...none, "zero", "negative")]])),
  "Setting::Phone": { theme: choice },
  "Setting::PhoneName": { "phone-name": "name or none" },
  "Setting::Copies": { what: choice, "with-names": choice },
  // The file is fed in copies.spec.js.
  "Setting::BringIn": { pasted: "words" },
};

/** What else has to be in a form for it to be saved. */
export const BESIDES = {
  "Address::NewCouple": { "first-name": "Tess" },
  "Part::Appointment": { day: "3 May 2031" },
  "Part::Finger": { size: "UK M", "worn-width": "3" },
  "Part::Ring": { "head-underside": "1.5" },
  "Part::Band": { "band-width": "4", height: "1.8" },
  "Part::Remedy": { bay: "1", "ring-gone": "20 May 2019", "ring-back": "" },
  "Setting::TryOn": { "try-on-number": "7", size: "UK M", "try-on-width": "4" },
  "Setting::Gauge": { "gauge-name": "odd rings", "gauge-width": "4" },
  "Setting::Extra": { "extra-name": "plating", "least-days": "0", "usual-days": "0", "most-days": "0" },
  "Setting::Time": { "least-days": "0", "usual-days": "0", "most-days": "0" },
  "Calculator::Stack": { band: "4", "ring1-under": "1.5", "ring7-width": "2", "ring7-under": "1.5" },
  "Calculator::Compare": { "band4-width": "3" },
  "Calculator::Dates": { least: "0", usual: "0", most: "0" },
  "Setting::Closure": { "closure-name": "fair", "closure-from": "20 May 2019", "closure-to": "24 May 2019" },
};

/** Addresses at which all fields of a calculator stand, and what shows those that come only with a choice. */
export const ALL_OF = {
  "Calculator::Order": (address) => address + (address.includes("?") ? "&" : "?") + "gauge=other&gauge-kind=stick",
  "Calculator::Stack": (address) => address + (address.includes("?") ? "&" : "?") + [1, 2, 3, 4, 5, 6].map((n) => `ring${n}-width=2`).join("&") + "&band-profile=court&band-height=1.8",
  "Calculator::Compare": (address) => address + (address.includes("?") ? "&" : "?") + [1, 2, 3].map((n) => `band${n}-width=3`).join("&"),
};
export const SHOW = {
  "Address::List": async (page) => {
    for (const shows of ["#owns-rings-first-some", "#budget-range"]) {
      const answer = page.locator(shows);
      if (await answer.count()) await answer.tap();
    }
  },
  "Part::Finger": async (page) => {
    await page.locator("#gauge").selectOption("worn");
  },
  "Part::Band": (page) => page.locator("#profile-court").tap(),
  "Part::Remedy": async (page) => {
    await page.locator("#remedy-shaped").tap();
    const ring = page.locator("#ring-itself");
    if (!(await ring.isChecked())) await ring.tap();
  },
  "Setting::Gauge": async (page) => {
    await page.locator("#gauge-kind-stick").tap();
    await page.locator("#gauge-bore-domed").tap();
  },
};
