//! What is chosen beside a head: when it is open, when a ring is away, and what today, the calendar and the bench are
//! told of it.

use crate::arbitrary::{OURS, say};
use crate::shared::{date, mm};
use bandwright::book::agenda::{What, agenda};
use bandwright::book::change::Write;
use bandwright::book::checklist::{Care, State, Topic, is_about_remedy, state};
use bandwright::book::couple::{Band, Couple, Ring};
use bandwright::book::field::{BandField, Field, RingField, Stage};
use bandwright::book::id::{ItemId, RecordId};
use bandwright::book::practice::Practice;
use bandwright::book::record::{Kind, Record};
use bandwright::book::remedy::{Away, Move, Remedy, Way, away_at};
use bandwright::book::schedule::OwnOrders;
use bandwright::book::today::today;
use bandwright::book::value::{StackSeen, Value};
use bandwright::book::verbs;
use bandwright::trade::band::{Finish, Profile, alloys};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::limits::Whole;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::Wearer;
use bandwright::words::specification::{Called, specification};
use bandwright::words::{self, book::in_full};
use chrono::NaiveDate;

const WHO: Wearer = Wearer::First;
const RING: ItemId = ItemId(3);

/// A couple that marries on 22 May 2027, with a ring and a stack in which a head holds the band off by so much.
struct Told {
    record: Record,
    n: u64,
}

impl Told {
    fn off(off: f64) -> Told {
        let mut told = Told { record: Record::new(RecordId(1), Kind::Couple), n: 0 };
        let ring = Ring { name: Some("engagement ring".into()), ..Ring::unknown(RING) };
        told.say(verbs::note_ring(WHO, Ring { shoulder_width: Some(mm(2.6)), ..ring }));
        told.say(verbs::choose_band(WHO, Band { width: Some(mm(4.0)), ..Band::default() }));
        told.say(vec![Write::set(Field::Wedding, Value::Wedding(Wedding::Day(date("2027-05-22"))))]);
        told.seen(mm(off));
        told
    }

    fn note_stack(&mut self) {
        self.seen(mm(0.37));
    }

    fn seen(&mut self, off: Length) {
        let seen =
            StackSeen { now: mm(6.8), later: mm(6.8), free: mm(24.0), measured: false, off, seen: date("2026-11-25") };
        self.say(vec![Write::set(Field::Stack(WHO), Value::Stack(seen))]);
    }

    fn say(&mut self, writes: Vec<Write>) {
        self.n += 1;
        say(&mut self.record, OURS, self.n, writes);
    }

    fn choose(&mut self, remedy: Remedy) {
        self.say(vec![Write::set(Field::Remedy(WHO), Value::Remedy(remedy))]);
    }

    fn stack(&self) -> State {
        state(Couple(&self.record), Topic::Stack(WHO))
    }

    fn moves(&self, on: &str) -> Vec<(NaiveDate, Move)> {
        let practice = Record::new(RecordId(0), Kind::Practice);
        let page = today(std::iter::once(Couple(&self.record)), Practice(&practice), date(on));
        assert_eq!(page.counts.late_rings, page.rings.iter().filter(|(_, _, by, _)| *by < date(on)).count());
        page.rings.into_iter().map(|(_, _, by, what)| (by, what)).collect()
    }

    fn open(&self) -> Vec<String> {
        let text = specification(Couple(&self.record), Called::Names, date("2026-11-25"));
        let open = text.split("Still open\n").nth(1).unwrap_or_default();
        open.lines().filter(|line| line.contains("stack of")).map(str::to_owned).collect()
    }
}

fn happened(field: Field, on: &str) -> Vec<Write> {
    vec![Write::set(field, Value::Day(date(on)))]
}

fn shaped(ring: Option<Away>) -> Remedy {
    Remedy { way: Way::Shaped, by: mm(0.57), impression: false, template: false, ring }
}

fn away(from: &str, to: &str) -> Away {
    let day = |text: &str| text.parse().ok();
    Away { ring: Some(RING), from: day(from), to: day(to) }
}

#[test]
fn the_line_of_the_stack_says_what_is_open() {
    assert_eq!(Told::off(0.0).stack(), State::Done, "flush: nothing to choose");
    let mut told = Told::off(0.37);
    let care = |care| State::Care(care);
    assert_eq!(told.stack(), care(Care::RemedyOpen));
    assert_eq!(told.open(), ["– stack of the first of the two: a head holds the band off: choose what to do about it"]);
    told.choose(shaped(None));
    assert_eq!(told.stack(), care(Care::BenchOpen));
    told.choose(shaped(Some(away("2027-01-04", ""))));
    assert_eq!(told.stack(), care(Care::AwayOpen));
    told.choose(shaped(Some(away("2027-01-04", "2027-05-22"))));
    assert_eq!(told.stack(), care(Care::AwayAtWedding));
    assert_eq!(told.open(), ["– stack of the first of the two: a ring is at the bench when the wedding is"]);
    told.choose(shaped(Some(away("2027-01-04", "2027-01-22"))));
    assert_eq!((told.stack(), told.open()), (State::Done, vec![]));
    for way in [Way::Lower, Way::Gap] {
        told.choose(Remedy { way, ..shaped(None) });
        assert_eq!(told.stack(), State::Done, "{way:?} needs nothing of the bench");
    }
    told.choose(Remedy { template: true, ..shaped(None) });
    assert_eq!(told.stack(), State::Done);
    // Another band: what was chosen may hold no more, and neither may the stack.
    told.say(verbs::choose_band(WHO, Band { width: Some(mm(3.0)), ..Band::default() }));
    assert_eq!(told.stack(), care(Care::Changed));
    // The stack noted again says nothing of the remedy: it has its own sentence, and is looked at on its own screen.
    told.note_stack();
    assert_eq!(told.stack(), care(Care::RemedyStale));
    assert_eq!(is_about_remedy(Couple(&told.record), Topic::Stack(WHO)), Some(WHO));
    assert_eq!(
        told.open(),
        [
            "– stack of the first of the two: a ring or the band has changed since: look again at what is chosen beside the head"
        ]
    );
    told.choose(Remedy { template: true, ..shaped(None) });
    assert_eq!(told.stack(), State::Done);
}

/// What the bench gets says what the rings take at the top, where a bay or a gap counts; the palm figures stay as noted.
#[test]
fn the_bay_counts_at_the_top() {
    let mut told = Told::off(0.37);
    let stack = |told: &Told| {
        let text = specification(Couple(&told.record), Called::Names, date("2026-11-25"));
        text.lines().find(|line| line.starts_with("Stack: ")).unwrap_or_default().to_owned()
    };
    assert!(!stack(&told).contains("at the top"));
    for (way, said) in [(Way::Shaped, "with the bay"), (Way::Gap, "with the gap")] {
        told.choose(Remedy { way, template: true, ..shaped(None) });
        let line = stack(&told);
        assert!(
            line.contains(&format!("6.8 mm now, 6.8 mm with rings to come; at the top, {said}, 7.37 mm;")),
            "{line}"
        );
        let read = in_full(Couple(&told.record), Topic::Stack(WHO)).unwrap();
        assert!(read.starts_with(&format!("6.8 of 24 mm; at the top, {said}, 7.37 mm; ")), "{read}");
    }
    told.choose(Remedy { way: Way::Lower, ..shaped(None) });
    assert!(!stack(&told).contains("at the top"), "a band low enough adds nothing");
}

#[test]
fn the_bench_is_told_of_height_dome_and_what_holds() {
    let mut told = Told::off(0.0);
    told.say(verbs::choose_band(
        WHO,
        Band {
            width: Some(mm(6.0)),
            height: Some(mm(1.67)),
            dome: Some(mm(0.72)),
            profile: Some(Profile::D),
            ..Band::default()
        },
    ));
    told.say(vec![Write::set(Field::Ring(WHO, RING, RingField::Holds), Value::Yes(true))]);
    let text = specification(Couple(&told.record), Called::Names, date("2026-11-25"));
    for said in ["\nHeight: 1.67 mm\nDome outside: 0.72 mm\n", ", holds the rings nearer the web\n"] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert_eq!(
        words::stack::holds("the engagement ring", 1),
        "The engagement ring holds the rings nearer the web: it is the tighter one, goes on last and comes off first."
    );
    assert_eq!(
        words::stack::holds("the engagement ring", 0),
        "The engagement ring is to hold the rings nearer the web, and none lies there."
    );
}

/// Noting a stack writes down where the band lies; metal and finish hold nothing off.
#[test]
fn what_holds_nothing_off_makes_no_remedy_stale() {
    let mut told = Told::off(0.37);
    told.choose(Remedy { template: true, ..shaped(None) });
    let platinum = alloys::by_code("platinum-950").unwrap();
    for (field, value) in [
        (Field::Band(WHO, BandField::Place), Value::Place(Whole(1))),
        (Field::Band(WHO, BandField::Metal), Value::Metal(platinum)),
        (Field::Band(WHO, BandField::Finish), Value::Finish(Finish::Plain)),
        (Field::Ring(WHO, RING, RingField::Name), Value::Text("gran's ring".into())),
    ] {
        told.say(vec![Write::set(field, value)]);
        told.note_stack();
        assert_eq!(told.stack(), State::Done);
    }
    told.say(vec![Write::set(Field::Ring(WHO, RING, RingField::HeadToTip), Value::Length(mm(0.9)))]);
    told.note_stack();
    assert_eq!(told.stack(), State::Care(Care::RemedyStale));
}

#[test]
fn away_when_the_wedding_is() {
    let at = |from, to, wedding| away_at(away(from, to), wedding);
    let wedding = Wedding::Day(date("2027-05-22"));
    assert!(at("2027-05-01", "2027-05-22", wedding), "the day it is to be back may be late");
    assert!(at("2027-05-22", "2027-06-10", wedding));
    assert!(!at("2027-05-01", "2027-05-21", wedding) && !at("2027-05-23", "2027-06-10", wedding));
    let may = Wedding::Month { year: 2027, month: 5 };
    assert!(at("2027-04-20", "2027-05-01", may) && !at("2027-04-20", "2027-04-30", may));
    // Not known well enough to warn of anything.
    assert!(!at("2027-04-20", "2027-05-01", Wedding::Year(2027)) && !at("2027-04-20", "2027-05-01", Wedding::NotYet));
    assert!(!at("2027-04-20", "", wedding));
}

#[test]
fn today_says_when_a_ring_goes_and_when_it_is_due() {
    let mut told = Told::off(0.37);
    told.choose(shaped(Some(away("2027-01-04", "2027-01-22"))));
    assert_eq!(told.moves("2026-12-01"), []);
    let goes = (date("2027-01-04"), Move::Goes);
    assert_eq!(told.moves("2026-12-21"), [goes], "fourteen days ahead");
    assert_eq!(told.moves("2027-01-06"), [goes], "and until it went");
    told.say(happened(Field::RingGone(WHO), "2027-01-05"));
    assert_eq!(told.moves("2027-01-06"), []);
    let returns = (date("2027-01-22"), Move::Returns);
    assert_eq!(told.moves("2027-01-10"), [returns]);
    assert_eq!(told.moves("2027-02-10"), [returns], "overdue");
    told.say(happened(Field::RingBack(WHO), "2027-02-11"));
    assert_eq!(told.moves("2027-02-12"), []);
    // A couple that is lost is not on the page.
    let mut lost = Told::off(0.37);
    lost.choose(shaped(Some(away("2027-01-04", "2027-01-22"))));
    lost.say(verbs::move_to(Stage::Lost, date("2027-01-01")));
    assert_eq!(lost.moves("2027-01-04"), []);
}

#[test]
fn the_calendar_has_both_days() {
    let mut told = Told::off(0.37);
    told.choose(shaped(Some(away("2027-01-04", "2027-01-22"))));
    told.say(happened(Field::RingGone(WHO), "2027-01-05"));
    let practice = Record::new(RecordId(0), Kind::Practice);
    let found = agenda(Couple(&told.record), Practice(&practice), &OwnOrders::default(), date("2027-01-06"));
    let rings = found.iter().filter(|it| matches!(it.what, What::Ring(..)));
    let said: Vec<_> = rings.map(|it| (it.day.to_string(), words::agenda::title(it.what, None), it.done)).collect();
    let row = |day: &str, title: &str, done| (day.to_owned(), title.to_owned(), done);
    assert_eq!(
        said,
        [
            row("2027-01-04", "Rings: a ring goes to the bench", true),
            row("2027-01-22", "Rings: a ring is back from the bench", false),
        ]
    );
}

#[test]
fn the_bench_and_the_read_back_are_told() {
    let mut told = Told::off(0.37);
    told.choose(Remedy { impression: true, ..shaped(Some(away("2027-01-04", "2027-01-22"))) });
    told.say(happened(Field::RingGone(WHO), "2027-01-05"));
    let text = specification(Couple(&told.record), Called::Names, date("2027-01-06"));
    let of_head: Vec<&str> = text
        .lines()
        .skip_while(|line| !line.starts_with("Metal"))
        .skip(1)
        .take_while(|line| !line.starts_with("Ring beside"))
        .collect();
    assert_eq!(
        of_head,
        [
            "Beside the head: shaped, with a bay 0.57 mm deep",
            "To shape it by: an impression of the rings as worn, engagement ring from Mon 4 Jan 2027, back on Fri 22 Jan 2027",
            "That ring: handed over Tue 5 Jan 2027",
        ]
    );
    let read = in_full(Couple(&told.record), Topic::Stack(WHO)).unwrap();
    assert!(read.contains("shaped, with a bay 0.57 mm deep; the bench gets an impression"), "{read}");
    assert!(read.ends_with("handed over Tue 5 Jan 2027"), "{read}");
    // Two other ways, and nothing about a bench.
    told.choose(Remedy { way: Way::Lower, by: mm(1.3), ..shaped(None) });
    let text = specification(Couple(&told.record), Called::Names, date("2027-01-06"));
    assert!(
        text.contains("Beside the head: straight, no higher than 1.3 mm, to clear the head\nRing beside it"),
        "{text}"
    );
    told.choose(Remedy { way: Way::Gap, by: mm(0.37), ..shaped(None) });
    let text = specification(Couple(&told.record), Called::Names, date("2027-01-06"));
    assert!(text.contains("Beside the head: straight, the gap of 0.37 mm at the top accepted\n"), "{text}");
}

#[test]
fn what_is_chosen_after_the_read_back_wants_another() {
    let mut told = Told::off(0.37);
    told.choose(shaped(Some(away("2027-01-04", "2027-01-22"))));
    told.say(happened(Field::ReadBack, "2026-12-01"));
    assert_eq!(state(Couple(&told.record), Topic::ReadBack), State::Done);
    told.say(happened(Field::RingGone(WHO), "2027-01-05"));
    assert_eq!(state(Couple(&told.record), Topic::ReadBack), State::Done, "it went as was said");
    told.choose(shaped(Some(away("2027-01-11", "2027-01-29"))));
    assert_eq!(state(Couple(&told.record), Topic::ReadBack), State::Care(Care::Changed));
}
