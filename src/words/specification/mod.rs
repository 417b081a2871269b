//! One couple's specification as plain text, for a message to the bench: everything that two bands are made from, what
//! it rests on, and what is still open. No notes, no ways to reach anybody, nothing about where they were met.

mod readings;

use super::harmless::harmless;
use super::list::{asked, handing};
use super::{band as say_band, book, dates, fields, format, lengths, remedy, rings as say_rings, sizing};
use crate::book::asks::{AnswerKey, Ask, Of};
use crate::book::checklist::{self, Care, State, TOPICS, Topic};
use crate::book::couple::{Couple, Ring};
use crate::book::field::{BandField, Field};
use crate::book::merge::conflict::Conflict;
use crate::book::remedy::care;
use crate::book::value::{DatesSettled, ExtraWork, OrderSize};
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::{Circumference, Length};
use crate::trade::stack::House;
use crate::trade::wearer::Wearer;
use chrono::{Days, NaiveDate};

/// How the two are called in a text that leaves the phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Called {
    Names,
    Initials,
}

/// The text, with every line that the bench needs.
/// `house` is what the practice takes for granted of stacks.
pub fn specification(couple: Couple<'_>, called: Called, today: NaiveDate, house: House) -> String {
    let mut lines = vec!["Specification for two bands".to_owned(), whose(couple, called), written(couple, today)];
    for wearer in Wearer::BOTH {
        lines.push(String::new());
        lines.push(format!("Band for {}", name(couple, wearer, called)));
        lines.extend(one_band(couple, wearer, house));
    }
    lines.push(String::new());
    lines.push("Dates".to_owned());
    lines.extend(days(couple));
    let said = said(couple, called);
    if !said.is_empty() {
        lines.push(String::new());
        lines.push("Said by the couple, not measured by us".to_owned());
        lines.extend(said);
    }
    let open = open(couple, called);
    if !open.is_empty() {
        lines.push(String::new());
        lines.push("Still open".to_owned());
        lines.extend(open);
    }
    lines.push(String::new());
    lines.push(MILLIMETRES_COUNT.to_owned());
    lines.iter().map(|line| plain(line)).collect::<Vec<_>>().join("\n")
}

/// A line as one line: what somebody called a ring, a gauge or a piece of work makes no other.
fn plain(line: &str) -> String {
    harmless(line).replace(BREAKS, " ")
}

/// What ends a line, in one program or another.
const BREAKS: [char; 3] = ['\n', '\u{2028}', '\u{2029}'];

/// What the text is called where something asks for a title.
pub fn title(couple: Couple<'_>, called: Called) -> String {
    plain(&format!("Specification: {}", both(couple, called)))
}

const MILLIMETRES_COUNT: &str = "Where a letter or number on your own gauge comes to other millimetres, the millimetres \
                                 here count.";

fn whose(couple: Couple<'_>, called: Called) -> String {
    format!("For {}", both(couple, called))
}

fn both(couple: Couple<'_>, called: Called) -> String {
    match called {
        Called::Names => book::names(couple),
        Called::Initials => {
            let initials = Wearer::BOTH.map(|wearer| couple.name(wearer).and_then(initial));
            match initials {
                [Some(first), Some(second)] => format!("{first} & {second}"),
                [Some(only), None] | [None, Some(only)] => only,
                [None, None] => "a couple without a name".to_owned(),
            }
        }
    }
}

/// The day of writing, and the beginning of the couple's id, by which the bench can ask back.
fn written(couple: Couple<'_>, today: NaiveDate) -> String {
    let id = couple.0.id.to_string();
    format!("Written {}, reference {}", format::day(today), id.get(..6).unwrap_or_default())
}

/// One of the two. Initials that are the same, or none, are told apart by their place.
fn name(couple: Couple<'_>, wearer: Wearer, called: Called) -> String {
    let place = || match wearer {
        Wearer::First => "the first of the two",
        Wearer::Second => "the second of the two",
    };
    let of = |wearer| match called {
        Called::Names => couple.name(wearer).map(str::to_owned),
        Called::Initials => couple.name(wearer).and_then(initial),
    };
    match (of(wearer), of(Wearer::First) == of(Wearer::Second)) {
        (Some(name), false) => name,
        (Some(name), true) => format!("{name}, {}", place()),
        (None, _) => place().to_owned(),
    }
}

fn initial(name: &str) -> Option<String> {
    name.chars().find(|letter| letter.is_alphanumeric()).map(|letter| format!("{letter}."))
}

fn one_band(couple: Couple<'_>, wearer: Wearer, house: House) -> Vec<String> {
    let on = couple.finger(wearer).map_or_else(|| NOT_SETTLED.to_owned(), say_band::finger);
    let is_band = |part| move |field: &Field| *field == Field::Band(wearer, part);
    let mut lines = vec![marked(couple, |field| *field == Field::Finger(wearer), format!("Hand and finger: {on}"))];
    let size =
        couple.order_size(wearer).map_or_else(|| vec![format!("Order size: {NOT_SETTLED}")], |it| order_size(&it));
    lines.extend(size.into_iter().map(|line| marked(couple, |field| *field == Field::OrderSize(wearer), line)));
    let band = couple.band(wearer);
    let or_open = |text: Option<String>| text.unwrap_or_else(|| NOT_SETTLED.to_owned());
    let profile = band
        .profile
        .map(|profile| format!("{} ({})", say_band::profile(profile), say_band::profile_described(profile)));
    lines.push(marked(couple, is_band(BandField::Width), format!("Width: {}", or_open(band.width.map(mm)))));
    lines.push(marked(couple, is_band(BandField::Profile), format!("Profile: {}", or_open(profile))));
    // A height without its dome is half of it: a band made lower to clear a head keeps the dome it had.
    for (part, what, length) in [
        (BandField::Height, "Height", band.height),
        (BandField::Dome, "Dome outside", band.dome),
        (BandField::Relief, "Edge relief inside", band.relief),
    ] {
        lines.extend(length.map(|length| marked(couple, is_band(part), format!("{what}: {}", mm(length)))));
    }
    lines.push(marked(
        couple,
        is_band(BandField::Finish),
        format!("Finish: {}", or_open(band.finish.map(|finish| say_band::finish(finish).to_owned()))),
    ));
    lines.push(marked(
        couple,
        is_band(BandField::Metal),
        format!("Metal: {}", or_open(band.metal.map(say_band::alloy))),
    ));
    let is_remedy = |field: &Field| *field == Field::Remedy(wearer);
    lines.extend(beside_head(couple, wearer).into_iter().map(|line| marked(couple, is_remedy, line)));
    let rings_differ = checklist::differs(couple, Topic::Rings(wearer));
    lines.extend(rings(couple, wearer).into_iter().map(|line| marked_where(rings_differ, line)));
    lines.extend(couple.stack(wearer).map(|stack| {
        let at_top = remedy::at_top(couple, wearer, house).map(|said| format!("; {said}")).unwrap_or_default();
        let free = if stack.measured { "measured" } else { "not measured, a usual finger" };
        format!(
            "Stack: {} now, {} with rings to come{at_top}; free length of the finger {} ({free})",
            mm(stack.now),
            mm(stack.later),
            mm(stack.free)
        )
    }));
    lines.extend(couple.readings(wearer).into_iter().map(|(_, taken)| readings::reading(couple, wearer, taken)));
    if couple.readings(wearer).is_empty() {
        lines.push("Measured: not yet".to_owned());
    }
    if couple.first_ring(wearer) == Some(true) {
        lines.push("Has never worn a ring".to_owned());
    }
    lines
}

/// How the band meets a head, what the bench gets for it, and where a ring is meanwhile.
fn beside_head(couple: Couple<'_>, wearer: Wearer) -> Vec<String> {
    let Some(chosen) = couple.remedy(wearer) else { return Vec::new() };
    let mut lines = vec![format!("Beside the head: {}", remedy::shape(&chosen))];
    let gets = remedy::for_bench(&chosen, remedy::ring(couple, wearer));
    lines.extend(gets.map(|gets| format!("To shape it by: {gets}")));
    let whereabouts = remedy::whereabouts(couple.ring_gone(wearer), couple.ring_back(wearer));
    lines.extend(whereabouts.filter(|_| chosen.ring.is_some()).map(|said| format!("That ring: {said}")));
    lines
}

const NOT_SETTLED: &str = "not settled yet";

fn order_size(size: &OrderSize) -> Vec<String> {
    let worn = if size.in_stack { "to be worn beside the other rings" } else { "to be worn alone" };
    let range = match size.from == size.to {
        true => format!("at least {} mm, for the joint", format::mm(size.from.0, 2)),
        false => format!("8 in 10 lie between {} and {} mm", format::mm(size.from.0, 2), format::mm(size.to.0, 2)),
    };
    let mut lines = vec![
        format!("Order size: {}, {}", sizing::size_in_full(size.size), inside(size.size.circumference())),
        format!("Worked out: {} mm round; {range}; {worn}", format::mm(size.exact.0, 2)),
    ];
    if size.overruled {
        lines.push("The jeweller chose this size instead of the nearest to what was worked out".to_owned());
    }
    lines
}

/// "53.75 mm round the inside, 17.11 mm across".
fn inside(at: Circumference) -> String {
    format!("{} mm round the inside, {} mm across", format::mm(at.0, 2), format::mm(at.diameter().0, 2))
}

fn rings(couple: Couple<'_>, wearer: Wearer) -> Vec<String> {
    let rings = couple.rings(wearer);
    if rings.is_empty() {
        let said = if couple.has_no_rings(wearer) { "none" } else { "not asked yet" };
        return vec![format!("Rings beside it: {said}")];
    }
    rings.iter().map(ring).collect()
}

fn ring(ring: &Ring) -> String {
    let worn = if ring.planned { "Ring to come" } else { "Ring beside it" };
    let shoulder = ring.shoulder_width.map_or_else(
        || "width at three and nine o’clock not measured yet".to_owned(),
        |width| format!("{} at three and nine o’clock", mm(width)),
    );
    let parts = [
        ring.name.clone(),
        Some(shoulder),
        ring.top_width.map(|width| format!("{} at the top", mm(width))),
        ring.profile.map(|profile| say_band::profile(profile).to_owned()),
        ring.metal.map(say_band::alloy),
        say_rings::inscription(ring),
        ring.finger.map(say_band::finger),
        ring.holds.then(|| "holds the rings nearer the web".to_owned()),
    ];
    format!("{worn}: {}", parts.into_iter().flatten().collect::<Vec<_>>().join(", "))
}

fn days(couple: Couple<'_>) -> Vec<String> {
    let wedding = couple.wedding();
    let said = format!("Wedding: {}", wedding.map_or_else(|| "not asked yet".to_owned(), dates::wedding));
    let mut lines = vec![marked(couple, |field| *field == Field::Wedding, said)];
    match couple.dates() {
        Some(settled) => {
            let is_dates = |field: &Field| *field == Field::Dates;
            lines.extend(settled_days(wedding, settled).into_iter().map(|line| marked(couple, is_dates, line)));
        }
        None => lines.push(format!("Order by: {NOT_SETTLED}")),
    }
    lines.push(match couple.read_back() {
        None => "Read back with the couple: not yet".to_owned(),
        Some(day) if couple.changed_since_read_back() => {
            format!("Read back with the couple: {}, and changed since", format::day(day))
        }
        Some(day) => format!("Read back with the couple: {}", format::day(day)),
    });
    lines
}

fn settled_days(wedding: Option<Wedding>, settled: &DatesSettled) -> Vec<String> {
    let mut lines = vec![format!("Order by: {}", format::day(settled.order_by))];
    if let Some(Wedding::Day(day)) = wedding
        && let Some(in_hand) = day.checked_sub_days(Days::new(settled.in_hand.0.into()))
    {
        lines.push(format!("In the couple’s hands by: {}", format::day(in_hand)));
    }
    lines.push(format!("Making: {}", dates::spread(settled.making)));
    lines.extend(settled.extras.iter().map(|extra| {
        let name = match (extra.work, &extra.name) {
            (ExtraWork::Usual(work), _) => dates::step(work),
            (ExtraWork::Own(_), Some(name)) => name.as_str(),
            (ExtraWork::Own(_), None) => "Other work",
        };
        format!("{name}: {}", dates::spread(extra.spread))
    }));
    lines
}

/// What the bench may want to know of their own words, which settle nothing.
const ASKS: [Ask; 7] = [Ask::Colour, Ask::Metal, Ask::Nickel, Ask::Engraving, Ask::ToCome, Ask::Work, Ask::Sport];

fn said(couple: Couple<'_>, called: Called) -> Vec<String> {
    let mut lines = Vec::new();
    for said in couple.said() {
        let mut add = |ask: Ask, who: Option<Wearer>| {
            let Some(answer) = said.get(AnswerKey { ask, who, ring: None }) else { return };
            let whose = who.map_or_else(|| "Both".to_owned(), |who| name(couple, who, called));
            lines.push(format!("{whose}: {}: {}", asked::short(ask), asked::answer(ask, answer)));
        };
        for ask in ASKS {
            match ask.row().of {
                Of::Both => add(ask, None),
                Of::Each | Of::Ring => Wearer::BOTH.into_iter().for_each(|who| add(ask, Some(who))),
            }
        }
        for who in Wearer::BOTH {
            let rings = (1..=said.rings(who)).filter_map(|number| handing::ring(said, who, number));
            lines.extend(rings.map(|ring| format!("{}: {}", name(couple, who, called), ring)));
        }
    }
    lines
}

/// What the bench could not make the bands without, or should not.
fn open(couple: Couple<'_>, called: Called) -> Vec<String> {
    let mut lines = Vec::new();
    // A stack that nobody looked at holds up no bench, and notes stay where they are. A band beside a head does.
    let holds_up = |topic: &Topic| match topic {
        Topic::Stack(wearer) => {
            let off = couple.stack(*wearer).map_or(Length::ZERO, |seen| seen.off);
            care(couple, *wearer, off).is_some() || couple.0.differs(|field| *field == Field::Remedy(*wearer))
        }
        Topic::Notes => false,
        _ => true,
    };
    for topic in TOPICS.into_iter().filter(holds_up) {
        match checklist::state(couple, topic) {
            State::Done => {}
            State::Open => lines.push(format!("– {}: not done yet", about(couple, topic, called))),
            State::Care(Care::Differs) => lines.extend(differing(couple, topic, called)),
            State::Care(care) => lines.push(format!("– {}: {}", about(couple, topic, called), book::care(care))),
        }
        if let Topic::Finger(wearer) = topic
            && couple.finger(wearer).is_none()
        {
            let who = name(couple, wearer, called);
            lines.push(format!("– hand and finger of {who}: not settled yet"));
        }
    }
    lines
}

/// What two phones say, one line a field: "– order size of Ada: not settled: UK M or UK P".
fn differing(couple: Couple<'_>, topic: Topic, called: Called) -> Vec<String> {
    let line = |conflict: &Conflict<'_>| match conflict {
        Conflict::Field { field, sides } if checklist::is_of(field, topic) => {
            let sides: Vec<String> = sides.iter().map(|side| fields::value(side.value)).collect();
            Some(format!("– {}: not settled: {}", about(couple, topic, called), sides.join(" or ")))
        }
        Conflict::Removed { edits, .. } if edits.iter().any(|(field, _)| checklist::is_of(field, topic)) => {
            Some(format!("– {}: not settled: {}", about(couple, topic, called), super::phones::GONE_OR_NOT))
        }
        Conflict::Field { .. } | Conflict::PutAway { .. } | Conflict::Removed { .. } => None,
    };
    couple.0.conflicts().iter().filter_map(line).collect()
}

/// A line of the text; where two phones say different things of what it says, it sends the bench to the end.
fn marked(couple: Couple<'_>, of: impl Fn(&Field) -> bool, line: String) -> String {
    marked_where(couple.0.differs(of), line)
}

fn marked_where(differs: bool, line: String) -> String {
    if differs { format!("{line} – NOT SETTLED, see the end") } else { line }
}

fn about(couple: Couple<'_>, topic: Topic, called: Called) -> String {
    let of = |what: &str, wearer| format!("{what} of {}", name(couple, wearer, called));
    match topic {
        Topic::Wedding => "wedding date".to_owned(),
        Topic::Finger(wearer) => of("reading", wearer),
        Topic::Rings(wearer) => of("rings", wearer),
        Topic::Band(wearer) => of("band", wearer),
        Topic::OrderSize(wearer) => of("order size", wearer),
        Topic::Stack(wearer) => of("stack", wearer),
        Topic::Dates => "dates".to_owned(),
        Topic::Notes => "notes".to_owned(),
        Topic::ReadBack => "read-back".to_owned(),
        Topic::Fitted(wearer) => of("what fitted", wearer),
    }
}

fn mm(length: Length) -> String {
    format!("{} mm", lengths::plain(length))
}
