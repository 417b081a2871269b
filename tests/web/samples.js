// One field of each kind, and what it says to three inputs: a good one, a bad one, and one at the edge. fields.spec.js
// feeds them, and fails for a kind of fields.js that has no row here. All else of fields.js is fed in matrix.spec.js.

const DAY = "Enter a date like 22 May 2027 or 22/5/2027.";
const WEDDING = "Enter a date like 22 May 2027, a month, a year, or “not yet”.";
const NO_SUCH_DAY = "Enter a day that exists: there is no 31 February 2031.";
const TIME = "Enter a time like 14:30 or 2.30pm.";
const SIZE = "Enter a size as a letter, a number or millimetres, like M½, 6¾, 54 or 17.2 mm.";
const WHICH = "Choose which of these sizes is meant, or type it with its system, like UK M or US 6.";
const RING = "A ring must be between 11.5 and 25.5 mm across the inside, or 36 and 80 mm round it.";

const letters = (count) => "x".repeat(count);

/** A text of so many characters at most. */
const text = (noun, most, empty) => ({
  good: letters(most),
  bad: [letters(most + 1), `Enter ${noun} of at most ${most.toLocaleString("en-GB")} characters.`],
  edge: empty === undefined ? [""] : ["   ", `Enter ${noun}.`],
});

/** A figure from the least to the most, which is taken; what is a little more is not. */
function figure(noun, least, most, unit, like) {
  const between = `between ${least} and ${most}${unit}, like ${like}.`;
  const beyond = unit === " mm" ? `${most}.01` : `${most + 1}`;
  return {
    good: `${most}`,
    bad: ["about two", `Enter ${noun} in figures, ${between}`],
    edge: [beyond, `${noun[0].toUpperCase()}${noun.slice(1)} must be ${between}`],
  };
}
const mm = (noun, least, most, like) => figure(noun, least, most, " mm", like);
const percent = (noun, least, most, like) => figure(noun, least, most, " %", like);
const whole = (noun, least, most, like) => figure(noun, least, most, "", like);

/** Screen, field, what it says; what an edge has no sentence to is taken. */
export const SAMPLES = [
  ["Address::NewCouple", "first-name", text("a name", 80, "not")],
  ["Setting::PhoneName", "phone-name", text("a name", 80)],
  ["Setting::Fair", "fair", text("a line", 160)],
  ["Part::Notes", "note", text("a note", 4000, "not")],
  ["Address::List", "else", text("a note", 4000), "#/list/budget"],
  ["Calculator::Stack", "ring1-name", text("a name for the ring", 160)],
  ["Address::Couples", "find", { good: "💍💍", bad: [letters(4001)], edge: [""] }],
  ["Address::TakeIn", "message", { good: "   ", bad: ["about two", "Enter the whole message, its last line too: there is no list in this."], edge: [""] }],
  ["Part::People", "reach", { good: "01234", bad: ["about two", "Enter a phone number in digits, or an e-mail address like name@example.org."], edge: ["0123", "A phone number must have between 5 and 20 digits."] }],
  ["Part::Wedding", "wedding", { good: "25 Nov 2026", bad: ["about two", WEDDING], edge: ["24 Nov 2026", "Enter a wedding date from today on: Tue 24 Nov 2026 is past."] }],
  ["Calculator::Dates", "wedding", { good: "25 Nov 2026", bad: ["", WEDDING], edge: ["24 Nov 2026", "Enter a wedding date from today on: Tue 24 Nov 2026 is past."] }],
  ["Calculator::Dates", "decided", { good: "25 Nov 2026", bad: ["about two", DAY], edge: ["24 Nov 2026", "Enter a day from today on, Wed 25 Nov 2026."] }],
  ["Part::Appointment", "day", { good: "22 May 2019", bad: ["", DAY], edge: ["31/2/2031", NO_SUCH_DAY] }],
  ["Address::Invite", "day", { good: "22 May 2019", bad: ["about two", DAY], edge: ["31/2/2031", NO_SUCH_DAY] }],
  ["Setting::Closures", "cut-off", { good: "23:59", bad: ["about two", TIME], edge: ["24:00", "Enter a time between 00:00 and 23:59."] }],
  ["Part::Finger", "size", { good: "UK M", bad: ["2,5", WHICH], edge: ["about two", SIZE] }],
  ["Calculator::Size", "q", { good: "36 mm round", bad: ["about two", SIZE], edge: ["35.9 mm", RING] }],
  ["Calculator::PaperGauge", "read", { good: "2,5", bad: ["about two", SIZE], edge: [""] }],
  ["Setting::Gauge", "cal1-says", { good: "", bad: ["about two", SIZE], edge: ["2,5", WHICH] }],
  ["Calculator::Order", "neighbours", { good: "2 and 2", bad: ["2,5", "One ring of 2.5 mm, or two, 2 and 5 mm: write 2.5, or 2 and 5."], edge: ["0.4", "A ring width must be between 0.5 and 25 mm, like 2.6."] }],
  ["Setting::TryOn", "try-on-width", mm("a gauge width", 1, 15, 3)],
  ["Setting::TryOn", "try-on-height", mm("a thickness of the band", 0.5, 8, 1.8)],
  ["Part::Ring", "shoulder-width", mm("a ring width", 0.5, 25, 2.6)],
  ["Part::Ring", "head-web", mm("a reach over the side", 0, 10, 0.8)],
  ["Part::Ring", "head-underside", mm("a height of the head’s underside", 0, 12, 1.5)],
  ["Part::Ring", "inside", { ...mm("a width across the inside", 11.4, 25.5, 17.2), edge: ["25.51", "A width across the inside must be between 11.4 and 25.5 mm, like 17.2."] }],
  ["Part::Band", "height", mm("a height", 0.5, 8, 1.8)],
  ["Part::Band", "dome", { ...mm("a dome", 0, 4, 0.5), good: "0.5" }],
  ["Part::Band", "relief", mm("an edge relief", 0, 1, 0.28)],
  ["Calculator::Compare", "band1-width", mm("a band width", 1, 20, 2.5)],
  ["Part::Remedy", "bay", mm("a depth of the bay", 0, 10, 0.8)],
  ["Part::Remedy", "left-gap", mm("a gap at the top", 0, 10, 0.8), (page) => page.locator("#remedy-gap").tap()],
  ["Calculator::Order", "own-width", { ...mm("a shift of your own", "−5", 5, 0.5), edge: ["-5.01", "A shift of your own must be between −5 and 5 mm, like 0.5."] }],
  ["Setting::Gauge", "gauge-error", mm("a gauge error", 0, 1, 0.1)],
  ["Setting::Gauge", "gauge-step", { ...mm("a step of the gauge", 0.1, 6, 0.625) }],
  ["Setting::Gauge", "gauge-taper", { ...mm("a taper for each mm of the stick", 0, 0.6, 0.219), edge: ["0.61", "A taper for each mm of the stick must be between 0 and 0.6 mm, like 0.219."] }],
  ["Calculator::Stack", "free", mm("a free length of finger", 10, 45, 24)],
  ["Calculator::PaperGauge", "line", mm("a length of the printed line", 50, 150, 99.5)],
  ["Setting::Stack", "gap", mm("a gap between rings", 0, 2, 0.2)],
  ["Setting::Stack", "clearance", mm("a clearance under the head", 0, 1, 0.2)],
  ["Setting::Stack", "catch", mm("a difference of heights", 0, 2, 0.4)],
  ["Setting::Stack", "full", percent("a share of the free length", 5, 100, 35)],
  ["Setting::Fit", "fit-width", mm("a shift for each mm of width", 0, 1, 0.25)],
  ["Setting::Time", "most-days", whole("a number of working days", 0, 260, 15)],
  ["Setting::Chances", "try-on-after", whole("a number of days", 0, 366, 14)],
  ["Setting::Chances", "confidence", percent("a chance to plan for", 50, 100, 95)],
  ["Setting::Chances", "resize-chance", percent("a chance", 0, 100, 10)],
  ["Setting::Chances", "busy-longer", percent("a stretch of the work", 0, 300, 50)],
];

/** A choice is a kind as well: buttons, a list, a box to tick. */
export const CHOICES = [
  ["Part::Band", "profile"],
  ["Setting::Closures", "region"],
  ["Calculator::Order", "no-beads"],
];
