//! What is said about couples: their names, stages and appointments, and the lines of the checklist.

use super::harmless::harmless;
use super::{band, dates, fit, format, lengths, remedy, rings, sizing};
use crate::answers::stack::place_on_finger;
use crate::book::checklist::{Care, Topic};
use crate::book::couple::{Appointment, Band, Couple, Ring};
use crate::book::field::{Outcome, Stage};
use crate::book::fitting;
use crate::book::id::ItemId;
use crate::book::leaving::Stays;
use crate::book::value::{OrderSize, OwnGauge, ReadingTaken, When};
use crate::trade::fit::{GaugeKind, Place};
use crate::trade::stack::House;
use crate::trade::wearer::Wearer;

/// Both names, or the one there is: "Ines & Callum".
pub fn names(couple: Couple<'_>) -> String {
    both_names(Wearer::BOTH.map(|wearer| couple.name(wearer)))
}

/// Two names as they stand together, as far as they are known.
pub fn both_names(names: [Option<&str>; 2]) -> String {
    match names {
        [Some(first), Some(second)] => format!("{} & {}", harmless(first), harmless(second)),
        [Some(only), None] | [None, Some(only)] => harmless(only),
        [None, None] => "Without a name".to_owned(),
    }
}

/// The name of one of the two, or what stands for it.
pub fn name_of(couple: Couple<'_>, wearer: Wearer) -> String {
    couple.name(wearer).map_or_else(|| nameless(wearer).to_owned(), harmless)
}

pub fn nameless(wearer: Wearer) -> &'static str {
    match wearer {
        Wearer::First => "First of the two",
        Wearer::Second => "Second of the two",
    }
}

pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Enquiry => "enquiry",
        Stage::Booked => "booked",
        Stage::Ordered => "ordered",
        Stage::Collected => "collected",
        Stage::Lost => "lost",
    }
}

pub fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Happened => "it happened",
        Outcome::Missed => "they did not come",
        Outcome::CalledOff => "called off",
    }
}

/// "Sat 22 May 2027, 14:30".
pub fn when(when: When) -> String {
    match when.time {
        Some(time) => format!("{}, {}", format::day(when.day), dates::time(time)),
        None => format::day(when.day),
    }
}

/// The second line of a couple in a list: where it stands and where it was met.
pub fn standing(couple: Couple<'_>) -> String {
    let mut parts = vec![stage(couple.stage()).to_owned()];
    if let Some(day) = couple.reached(couple.stage()) {
        parts.push(format::day(day));
    }
    if let Some(met) = couple.met() {
        parts.push(harmless(met));
    }
    parts.join(" · ")
}

/// The name of a line of the checklist.
pub fn topic(couple: Couple<'_>, topic: Topic) -> String {
    let of = |wearer, what: &str| format!("{}: {what}", name_of(couple, wearer));
    match topic {
        Topic::Wedding => "Wedding".to_owned(),
        Topic::Finger(wearer) => of(wearer, "finger"),
        Topic::Rings(wearer) => of(wearer, "rings"),
        Topic::Band(wearer) => of(wearer, "band"),
        Topic::OrderSize(wearer) => of(wearer, "order size"),
        Topic::Stack(wearer) => of(wearer, "stack"),
        Topic::Dates => "Dates".to_owned(),
        Topic::Notes => "Notes".to_owned(),
        Topic::ReadBack => "Read-back".to_owned(),
        Topic::Fitted(wearer) => of(wearer, "what fitted"),
    }
}

/// The one thing to do about a line, as the button under the checklist says it.
pub fn do_next(couple: Couple<'_>, topic: Topic) -> String {
    let name = |wearer| name_of(couple, wearer);
    match topic {
        Topic::Wedding => "Ask the wedding date".to_owned(),
        Topic::Finger(wearer) => format!("Measure {}", name(wearer)),
        Topic::Rings(wearer) => format!("Note the rings of {}", name(wearer)),
        Topic::Band(wearer) => format!("Choose the band for {}", name(wearer)),
        Topic::OrderSize(wearer) => format!("Settle the size for {}", name(wearer)),
        Topic::Stack(wearer) => format!("Look at the stack of {}", name(wearer)),
        Topic::Dates => "Count the working days".to_owned(),
        Topic::Notes => "Write a note".to_owned(),
        Topic::ReadBack => "Read it back together".to_owned(),
        Topic::Fitted(wearer) => format!("Ask what fitted {}", name(wearer)),
    }
}

/// What a line says, if it says anything yet.
pub fn says(couple: Couple<'_>, topic: Topic, house: House) -> Option<String> {
    match topic {
        Topic::Wedding => couple.wedding().map(dates::wedding),
        Topic::Finger(wearer) => {
            let counted = |place| fitting::counted(couple, wearer, place);
            let newest = |of: &[(ItemId, &ReadingTaken)]| Some(sizing::stated_name(of.first()?.1.size.stated));
            let (base, joint) = (counted(Place::Base), counted(Place::Joint));
            let many = (base.len() > 1).then(|| format!("{} readings", base.len()));
            let joint = newest(&joint).map(|size| format!("joint {size}"));
            let parts: Vec<String> = [newest(&base), many, joint].into_iter().flatten().collect();
            (!parts.is_empty()).then(|| parts.join(", "))
        }
        Topic::Rings(wearer) => match couple.rings(wearer).as_slice() {
            [] => couple.has_no_rings(wearer).then(|| "none".to_owned()),
            [only] => Some(ring(only)),
            many => Some(format!("{} rings", many.len())),
        },
        Topic::Band(wearer) => Some(couple.band(wearer)).filter(|it| !it.is_empty()).map(|it| self::band(&it)),
        Topic::OrderSize(wearer) => couple.order_size(wearer).map(|size| sizing::size_name(size.size)),
        Topic::Stack(wearer) => {
            let parts = [at_palm(couple, wearer), remedy::at_top_in_short(couple, wearer, house)];
            couple.stack(wearer).map(|_| join(parts.into_iter().flatten()))
        }
        Topic::Dates => couple.dates().map(|settled| format!("order by {}", format::day(settled.order_by))),
        Topic::Notes => match couple.notes().len() {
            0 => None,
            notes => Some(format::counted(notes as i64, "note", "notes")),
        },
        Topic::ReadBack => couple.read_back().map(format::day),
        Topic::Fitted(wearer) => couple.fitted(wearer).map(super::finger::fitted),
    }
}

/// All that a line knows, for reading back.
pub fn in_full(couple: Couple<'_>, topic: Topic, house: House) -> Option<String> {
    match topic {
        Topic::Finger(wearer) => {
            let all = couple.readings(wearer).into_iter();
            let readings: Vec<String> =
                all.map(|(_, taken)| join([reading(taken), aside(couple, wearer, taken)])).collect();
            (!readings.is_empty()).then(|| readings.join("; "))
        }
        Topic::Rings(wearer) if !couple.rings(wearer).is_empty() => {
            let one = |it: &Ring| join([ring(it), ring_small(couple, wearer, it)]);
            Some(couple.rings(wearer).iter().map(one).collect::<Vec<_>>().join("; "))
        }
        Topic::OrderSize(wearer) => couple.order_size(wearer).map(|size| order_size(&size)),
        Topic::Stack(wearer) => {
            let chosen = couple.remedy(wearer).map(|it| remedy::in_full(&it, remedy::ring(couple, wearer)));
            let where_now = remedy::whereabouts(couple.ring_gone(wearer), couple.ring_back(wearer));
            let at_top = remedy::at_top(couple, wearer, house);
            let parts: Vec<String> =
                [at_palm(couple, wearer), at_top, chosen, where_now].into_iter().flatten().collect();
            (!parts.is_empty()).then(|| parts.join("; "))
        }
        Topic::Band(wearer) => {
            let thick = couple.band(wearer).height.map(|height| format!("{} mm thick", lengths::plain(height)));
            let parts: Vec<String> = [says(couple, topic, house), thick].into_iter().flatten().collect();
            (!parts.is_empty()).then(|| parts.join(", "))
        }
        Topic::Wedding | Topic::Rings(_) | Topic::Dates | Topic::Notes | Topic::ReadBack | Topic::Fitted(_) => {
            says(couple, topic, house)
        }
    }
}

/// What the noted stack takes of the palm: "7.7 of 24 mm".
fn at_palm(couple: Couple<'_>, wearer: Wearer) -> Option<String> {
    let stack = couple.stack(wearer)?;
    Some(format!("{} of {} mm", lengths::plain(stack.later), lengths::plain(stack.free)))
}

/// What else is known of a ring: "still to come, court, platinum 950, left ring finger". Its place counts the band, as
/// the drawing of the stack has it.
pub fn ring_small(couple: Couple<'_>, wearer: Wearer, it: &Ring) -> String {
    let planned = it.planned.then(|| "still to come".to_owned());
    let top = it.top_width.map(|width| format!("{} mm at the top", lengths::plain(width)));
    let profile = it.profile.map(|profile| band::profile(profile).to_owned());
    let head = it.head.underside.map(|_| "with a head".to_owned());
    let place = it.place.map(|place| place_on_finger(couple, wearer, it).unwrap_or(place.0));
    let place = place.map(|place| format!("place {}", rings::place(place)));
    let stones = it.stones.then(|| "stones down the shoulders".to_owned());
    let holds = it.holds.then(|| "holds those nearer the web".to_owned());
    let (metal, finger) = (it.metal.map(band::alloy), it.finger.map(band::finger));
    let parts = [planned, top, profile, metal, head, stones, finger, place, holds];
    join(parts.into_iter().flatten())
}

/// A gauge in a list: "narrow rings, 3 mm, flat inside".
pub fn gauge(own: &OwnGauge) -> String {
    format!("{}, {} mm, {}", harmless(&own.name), lengths::plain(own.gauge.width), band::bore(own.gauge.bore))
}

/// The same words inside a sentence.
fn small(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| std::iter::once(first.to_ascii_lowercase()).chain(letters).collect()).unwrap_or_default()
}

fn join(parts: impl IntoIterator<Item = String>) -> String {
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// What about a line wants another look.
pub fn care(care: Care) -> &'static str {
    match care {
        Care::DateNotFixed => "the day is not fixed yet",
        Care::Incomplete => "a part of it is missing",
        Care::MeasureAgain => "measure again before ordering",
        Care::Changed => "something it rests on has changed since",
        Care::RemedyOpen => "a head holds the band off: choose what to do about it",
        Care::RemedyStale => "a ring or the band has changed since: look again at what is chosen beside the head",
        Care::BenchOpen => "say what the bench gets to shape the band by",
        Care::AwayOpen => "say from when to when the ring is at the bench",
        Care::AwayAtWedding => "a ring is at the bench when the wedding is",
        Care::Differs => "two phones say different things",
    }
}

/// "engagement ring, 2.6 mm".
pub fn ring(ring: &Ring) -> String {
    let name = ring_name(ring);
    match ring.shoulder_width {
        Some(width) => format!("{name}, {} mm", lengths::plain(width)),
        None => name,
    }
}

pub fn ring_name(ring: &Ring) -> String {
    ring.name
        .as_deref()
        .map(harmless)
        .unwrap_or_else(|| if ring.planned { "a ring to come".to_owned() } else { "a ring".to_owned() })
}

/// "2.5 mm court, plain, platinum 950".
pub fn band(it: &Band) -> String {
    let mut parts = Vec::new();
    let width = it.width.map(|width| format!("{} mm", lengths::plain(width)));
    let profile = it.profile.map(|profile| band::profile(profile).to_owned());
    let shape: Vec<String> = [width, profile].into_iter().flatten().collect();
    if !shape.is_empty() {
        parts.push(shape.join(" "));
    }
    parts.extend(it.finish.map(|finish| band::finish(finish).to_owned()));
    parts.extend(it.metal.map(band::alloy));
    parts.join(", ")
}

/// A reading on one line: "M½, narrow rings 3 mm flat inside, beside 2.6 mm, cold hands, Sat 3 Oct 2026 · left ring
/// finger, base".
pub fn reading(taken: &ReadingTaken) -> String {
    let gauge = &taken.gauge.gauge;
    let named =
        format!("{} {} mm {}", harmless(&taken.gauge.name), lengths::plain(gauge.width), band::bore(gauge.bore));
    let read_at =
        matches!(gauge.kind, GaugeKind::Stick { .. }).then(|| format!("read {}", small(fit::read_at(taken.read_at))));
    let beside: Vec<String> = taken.beside.iter().map(|width| lengths::plain(*width)).collect();
    let beside = (!beside.is_empty()).then(|| format!("beside {} mm", beside.join(" and ")));
    let day = format::day(taken.taken);
    let parts = [
        Some(sizing::stated_name(taken.size.stated)),
        Some(named),
        beside,
        Some(small(taken.sits.map_or(fit::hands(taken.hands), fit::sits))),
        read_at,
        Some(taken.at.map_or(day.clone(), |at| format!("{day} {}", dates::time(at)))),
    ];
    let place = match taken.place {
        Place::Base => "base",
        Place::Joint => "joint",
    };
    format!("{} · {}, {place}", join(parts.into_iter().flatten()), band::finger(taken.finger))
}

/// Why a reading does not count, if it does not.
fn aside(couple: Couple<'_>, wearer: Wearer, taken: &ReadingTaken) -> String {
    if fitting::is_of_the_bands_finger(couple, wearer, taken) {
        if taken.left_out { super::finger::LEFT_OUT.to_owned() } else { String::new() }
    } else {
        super::finger::NOT_THE_BANDS.to_owned()
    }
}

/// The settled size with what it may lie between: "N, from 53.1 to 54.4 mm, in the stack".
pub fn order_size(size: &OrderSize) -> String {
    let range = match size.from == size.to {
        true => format!("at least {} mm, for the joint", format::mm(size.from.0, 2)),
        false => format!("8 in 10: {} to {} mm", format::mm(size.from.0, 2), format::mm(size.to.0, 2)),
    };
    format!(
        "{} ({} mm inside; {range}), {}",
        sizing::size_in_full(size.size),
        format::mm(size.size.circumference().0, 2),
        if size.in_stack { "worn in the stack" } else { "worn alone" },
    )
}

/// An appointment on one line.
pub fn appointment(it: &Appointment) -> String {
    match &it.place {
        Some(place) => format!("{} · {}", when(it.when), harmless(place)),
        None => when(it.when),
    }
}

/// Why a couple stays on this phone.
pub fn stays(why: Stays) -> &'static str {
    match why {
        Stays::SaidNo => "They said no to being recorded: this stays on this phone and is left out of every file.",
        Stays::JoinedSaidNo => {
            "The entry that was joined with this one says no to being recorded: both stay on this phone and are left out of every file. If they say yes now, write it down in both."
        }
        Stays::Example => "An invented example: it is left out of every file.",
    }
}

pub fn undone() -> String {
    "Taken back".to_owned()
}

pub fn put_back() -> String {
    "Put back".to_owned()
}

pub fn nothing_to_undo() -> String {
    "There is nothing to take back: it has been changed again since.".to_owned()
}

pub fn examples_loaded(count: usize) -> String {
    format!("{} loaded", format::counted(count as i64, "example couple", "example couples"))
}

pub fn examples_removed(gone: usize, kept: usize) -> String {
    let gone = format!("{} removed", format::counted(gone as i64, "example couple", "example couples"));
    match kept {
        0 => gone,
        1 => format!("{gone}; one that you edited stays"),
        kept => format!("{gone}; {kept} that you edited stay"),
    }
}
