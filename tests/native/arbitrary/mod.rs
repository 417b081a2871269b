//! Records as they come about: every field, with every value that it can hold.
#![allow(dead_code, reason = "each test file uses its own part")]

use bandwright::book::asks::{AnswerKey, Of, RINGS_MOST, ROWS};
use bandwright::book::change::{Change, Write};
use bandwright::book::field::{
    AppointmentField, BandField, Constant, Field, Outcome, PracticeField as P, RingField, Stage, Wish,
};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::preparation_list::{Invitation, PreparationList, is_offered};
use bandwright::book::record::{Kind, Record};
use bandwright::book::settings::SettingKey;
use bandwright::book::value::{Extra, ExtraWork, FittedAt, NamedClosure, Recorded, StackSeen, Value, ValueKind, When};
use bandwright::trade::band::alloys::ALLOYS;
use bandwright::trade::band::{Finish, Profile};
use bandwright::trade::dates::closed::{Closure, OnBankHolidays};
use bandwright::trade::dates::holidays::{HolidayName, Region};
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::places::{Place, PlaceDays};
use bandwright::trade::dates::spread::CalendarDays;
use bandwright::trade::limits::Whole;
use bandwright::trade::measure::{Circumference, Length, Percent};
use bandwright::trade::sizing::{Step, System};
use bandwright::trade::wearer::{Digit, Finger, Hand, Wearer};
use chrono::{Days, NaiveDate, NaiveTime};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

pub mod dates;
use dates::{dates, months, repeats, spread, wedding, week};
mod fit;
use fit::{calibrated, order_size, reading, remedy, size_as_read, try_on};

pub const WORKS: [Work; 6] =
    [Work::Making, Work::Stones, Work::Marking, Work::Engraving, Work::Delivery, Work::Resizing];

/// Every field of a couple, with these two items.
pub fn couple_fields() -> Vec<Field> {
    let items = [ItemId(1), ItemId(u128::MAX)];
    let mut all =
        vec![Field::Met, Field::Wedding, Field::Recorded, Field::Stage, Field::PutAway, Field::Example, Field::Dates];
    all.push(Field::ReadBack);
    all.extend(Stage::ALL.map(Field::Reached));
    all.extend(WORKS.map(|work| Field::WorkDone(ExtraWork::Usual(work))));
    all.push(Field::WorkDone(ExtraWork::Own(items[1])));
    all.extend(Milestone::ALL.map(Field::MilestoneDone));
    for item in items {
        all.extend([Field::Reach(item), Field::Note(item), Field::PreparationList(item)]);
        all.push(Field::SameAs(RecordId(item.0)));
        all.extend(AppointmentField::ALL.map(|part| Field::Appointment(item, part)));
    }
    for who in Wearer::BOTH {
        all.extend([Field::Name(who), Field::Finger(who), Field::FirstRing(who), Field::NoRings(who)]);
        all.extend([Field::MeasureAgain(who), Field::Fitted(who)]);
        all.extend(Wish::ALL.map(|wish| Field::Wish(who, wish)));
        all.extend([Field::OrderSize(who), Field::FreeLength(who), Field::Stack(who)]);
        all.extend([Field::Remedy(who), Field::RingGone(who), Field::RingBack(who)]);
        let fingers = [(Hand::Left, Digit::Thumb), (Hand::Right, Digit::Little)];
        all.extend(fingers.map(|(hand, digit)| Field::FreeLengthOf(who, Finger { hand, digit })));
        all.extend(BandField::ALL.map(|part| Field::Band(who, part)));
        for item in items {
            all.push(Field::Reading(who, item));
            all.extend(RingField::ALL.map(|part| Field::Ring(who, item, part)));
        }
    }
    all
}

/// Every field of the practice: every setting of the table, of each thing of which it can be one.
pub fn practice_fields() -> Vec<Field> {
    let mut keys: Vec<Option<SettingKey>> = vec![None];
    keys.extend([ItemId(2), ItemId(3)].map(|item| Some(SettingKey::ItemId(item))));
    keys.push(Some(SettingKey::InstallationId(InstallationId(5))));
    keys.extend([Place::AssayOffice, Place::Courier].map(|place| Some(SettingKey::Place(place))));
    let names = [HolidayName::GoodFriday, HolidayName::LiberationOther];
    keys.extend(names.map(|name| Some(SettingKey::HolidayName(name))));
    keys.extend(WORKS.map(|work| Some(SettingKey::Work(work))));
    keys.extend(Constant::ALL.map(|constant| Some(SettingKey::Constant(constant))));
    let all = P::CODES.into_iter().flat_map(|code| {
        let of_code: Vec<P> = keys.iter().filter_map(|key| P::from_code(code, *key)).collect();
        assert!(!of_code.is_empty(), "no key for {code}");
        of_code
    });
    all.map(Field::Practice).collect()
}

pub fn all_fields() -> Vec<Field> {
    couple_fields().into_iter().chain(practice_fields()).collect()
}

/// A value that the field can hold.
pub fn value_of(field: &Field) -> BoxedStrategy<Value> {
    match (field, field.kind()) {
        (Field::PreparationList(list), _) => {
            said(*list).prop_map(|said| Value::PreparationList(Box::new(said))).boxed()
        }
        (_, Some(kind)) => value_of_kind(kind),
        (_, None) => text().prop_map(|_| Value::Unknown(r#"{"new":[1,2.5,null]}"#.into())).boxed(),
    }
}

fn value_of_kind(kind: ValueKind) -> BoxedStrategy<Value> {
    use ValueKind as K;
    match kind {
        K::Text => text(),
        K::Yes => any::<bool>().prop_map(Value::Yes).boxed(),
        K::Day => day().prop_map(Value::Day).boxed(),
        K::When => (day(), of(time())).prop_map(|(day, time)| Value::When(When { day, time })).boxed(),
        K::Wedding => wedding().prop_map(Value::Wedding).boxed(),
        K::Recorded => {
            (any::<bool>(), day()).prop_map(|(agrees, asked)| Value::Recorded(Recorded { agrees, asked })).boxed()
        }
        K::Stage => one_of(Stage::ALL, Value::Stage),
        K::Outcome => one_of(Outcome::ALL, Value::Outcome),
        K::Finger => finger().prop_map(Value::Finger).boxed(),
        K::Reading => reading().prop_map(Value::Reading).boxed(),
        K::Length => length().prop_map(Value::Length).boxed(),
        K::Profile => one_of(Profile::ALL, Value::Profile),
        K::Finish => one_of(Finish::ALL, Value::Finish),
        K::Metal => (0..ALLOYS.len()).prop_map(|at| Value::Metal(&ALLOYS[at])).boxed(),
        K::OrderSize => order_size().prop_map(Value::OrderSize).boxed(),
        K::Stack => (length(), length(), length(), any::<bool>(), length(), day())
            .prop_map(|(now, later, free, measured, off, seen)| {
                Value::Stack(StackSeen { now, later, free, measured, off, seen })
            })
            .boxed(),
        K::Remedy => remedy().prop_map(Value::Remedy).boxed(),
        K::Dates => dates().prop_map(Value::Dates).boxed(),
        K::Region => one_of(Region::ALL, Value::Region),
        K::System => one_of(System::ALL, Value::System),
        K::Step => one_of(Step::ALL, Value::Step),
        K::Gauge => calibrated().prop_map(Value::Gauge).boxed(),
        K::TryOn => try_on().prop_map(Value::TryOn).boxed(),
        K::Fitted => (size_as_read(), any::<bool>(), day())
            .prop_map(|(size, resized, noted)| Value::Fitted(FittedAt { size, resized, noted }))
            .boxed(),
        K::Spread => spread().prop_map(Value::Spread).boxed(),
        K::Extra => (words(), spread()).prop_map(|(name, spread)| Value::Extra(Extra { name, spread })).boxed(),
        K::Closure => (words(), day(), 0u64..300, select(Place::ALL.to_vec()), repeats())
            .prop_map(|(name, from, days, place, repeats)| {
                let days = Closure::new(from, from + Days::new(days)).unwrap().repeating(repeats);
                Value::Closure(NamedClosure { name, place, days })
            })
            .boxed(),
        K::PlaceDays => (week(), any::<bool>(), any::<bool>())
            .prop_map(|(weekdays, works, shut_at_christmas)| {
                let on_bank_holidays = if works { OnBankHolidays::Works } else { OnBankHolidays::Closed };
                Value::PlaceDays(PlaceDays { weekdays, on_bank_holidays, shut_at_christmas })
            })
            .boxed(),
        K::Weekdays => week().prop_map(Value::Weekdays).boxed(),
        K::Months => months().prop_map(Value::Months).boxed(),
        K::Time => time().prop_map(Value::Time).boxed(),
        K::Days => any::<u16>().prop_map(|days| Value::Days(CalendarDays(days))).boxed(),
        K::Percent => any::<u16>().prop_map(|share| Value::Percent(Percent(share))).boxed(),
        K::PreparationList => said(ItemId(1)).prop_map(|said| Value::PreparationList(Box::new(said))).boxed(),
        K::Place => (0u16..30).prop_map(|place| Value::Place(Whole(place))).boxed(),
    }
}

/// A few writes to different fields, as a form makes them.
pub fn writes(fields: Vec<Field>) -> impl Strategy<Value = Vec<Write>> {
    vec(
        select(fields).prop_flat_map(|field| {
            let value = value_of(&field);
            of(value).prop_map(move |value| Write { field: field.clone(), value })
        }),
        1..5,
    )
}

pub const OURS: InstallationId = InstallationId(0xa11ce);

/// Says the writes to a record; the number of the change, if there was anything to change.
pub fn say(record: &mut Record, by: InstallationId, n: u64, writes: Vec<Write>) -> Option<Stamp> {
    let draft = record.draft(writes, Moment(1_792_000_000_000 + n as i64))?;
    let stamp = Stamp { by, n };
    record.add(Change::stamped(draft, stamp));
    Some(stamp)
}

/// Takes a change back; the number of the taking-back, if there was anything to take back.
pub fn undo(record: &mut Record, by: InstallationId, n: u64, stamp: Stamp) -> Option<Stamp> {
    let drafts = record.undo(stamp, Moment(1_792_000_000_000 + n as i64));
    let mut last = None;
    for (n, draft) in (n..).zip(drafts) {
        let stamp = Stamp { by, n };
        record.add(Change::stamped(draft, stamp));
        last = Some(stamp);
    }
    last
}

pub fn new_couple() -> Record {
    Record::new(RecordId(7), Kind::Couple)
}

/// A practice in which nothing is set.
pub fn practice_of_nothing() -> Record {
    Record::new(RecordId(0), Kind::Practice)
}

/// What the fields hold, to be compared.
pub fn held(record: &Record) -> Vec<(Field, Value)> {
    record.fields().map(|(field, value)| (field.clone(), value.clone())).collect()
}

/// A record that two installations have written to and taken back from, not always having seen each other.
pub fn record() -> impl Strategy<Value = Record> {
    let couple = (Just(Kind::Couple), history(couple_fields()));
    let practice = (Just(Kind::Practice), history(practice_fields()));
    (any::<u128>(), prop_oneof![3 => couple, 1 => practice]).prop_map(|(id, (kind, acts))| {
        let mut ours = Record::new(RecordId(id), kind);
        let mut theirs = ours.clone();
        for (n, act) in (1..).zip(acts) {
            let (record, by) = match act.theirs {
                true => (&mut theirs, InstallationId(id ^ 1)),
                false => (&mut ours, OURS),
            };
            if act.meets {
                let all = [ours.changes(), theirs.changes()].concat();
                all.into_iter().for_each(|change| {
                    ours.add(change.clone());
                    theirs.add(change);
                });
            } else if act.undoes {
                let last = record.changes().last().map(|change| change.stamp);
                last.and_then(|last| undo(record, by, n, last));
            } else {
                say(record, by, n, act.writes);
            }
        }
        theirs.changes().iter().for_each(|change| ours.add(change.clone()));
        ours
    })
}

#[derive(Clone, Debug)]
struct Act {
    theirs: bool,
    meets: bool,
    undoes: bool,
    writes: Vec<Write>,
}

fn history(fields: Vec<Field>) -> impl Strategy<Value = Vec<Act>> {
    let act = (any::<bool>(), prop::bool::weighted(0.3), prop::bool::weighted(0.2), writes(fields));
    vec(act.prop_map(|(theirs, meets, undoes, writes)| Act { theirs, meets, undoes, writes }), 0..12)
}

fn one_of<T: Copy + std::fmt::Debug + 'static, const N: usize>(
    all: [T; N],
    value: fn(T) -> Value,
) -> BoxedStrategy<Value> {
    select(all.to_vec()).prop_map(value).boxed()
}

fn text() -> BoxedStrategy<Value> {
    words().prop_map(Value::Text).boxed()
}

/// Any text at all, quotes, control characters and all.
fn words() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => "\\PC{0,12}",
        1 => ".{0,6}",
        1 => select(vec!["Ines".to_owned(), "\"}\\u0000\u{0}\n".into(), "\u{2028}💍\u{feff}".into(), "07700 900123".into()]),
    ]
}

pub fn day() -> impl Strategy<Value = NaiveDate> {
    let edges = vec!["0001-01-01", "1582-10-15", "2024-02-29", "9999-12-31", "+12345-06-07", "-0044-03-15"];
    prop_oneof![
        9 => (0u64..60_000).prop_map(|days| NaiveDate::from_ymd_opt(1990, 1, 1).unwrap() + Days::new(days)),
        1 => select(edges).prop_map(|day| day.parse().unwrap()),
    ]
}

fn time() -> impl Strategy<Value = NaiveTime> {
    (0u32..24, 0u32..60).prop_map(|(hour, minute)| NaiveTime::from_hms_opt(hour, minute, 0).unwrap())
}

fn finger() -> impl Strategy<Value = Finger> {
    (select(Hand::ALL.to_vec()), select(Digit::ALL.to_vec())).prop_map(|(hand, digit)| Finger { hand, digit })
}

fn length() -> impl Strategy<Value = Length> {
    prop_oneof![
        4 => (0i64..1_000_000).prop_map(Length::tenthousandths),
        1 => (-999_999_999i64..1_000_000_000).prop_map(Length::tenthousandths),
    ]
}

fn circumference() -> impl Strategy<Value = Circumference> {
    length().prop_map(Circumference)
}

/// A preparation list with any answers at all, offered or not.
pub fn said(id: ItemId) -> impl Strategy<Value = PreparationList> {
    let name = || of("[A-Za-z]{1,9}");
    let when = of((day(), of(time())).prop_map(|(day, time)| When { day, time }));
    let invitation = (name(), name(), when, of(select(Region::ALL.to_vec())))
        .prop_map(|(first, second, when, region)| Invitation { first, second, when, region });
    let answer = select(spots()).prop_flat_map(|spot| (Just(spot), words()));
    let unknown = of(Just(r#"{"answers":{"moon":[1,null]},"schema":"1.3"}"#.to_owned()));
    (day(), of(day()), invitation, proptest::collection::btree_map(select(spots()), words(), 0..6), answer, unknown)
        .prop_map(move |(saved, asked, invitation, mut answers, (spot, text), unknown)| {
            answers.insert(spot, text);
            // Of a newer list, what is not offered here is not among the answers.
            if unknown.is_some() {
                answers.retain(|spot, text| is_offered(spot.ask, text));
            }
            PreparationList { id, saved, asked, invitation, answers, unknown }
        })
}

/// Every answer there is.
pub fn spots() -> Vec<AnswerKey> {
    let mut all = Vec::new();
    for row in ROWS {
        match row.of {
            Of::Both => all.push(AnswerKey::both(row.ask)),
            Of::Each => all.extend(Wearer::BOTH.map(|who| AnswerKey::of(row.ask, who))),
            Of::Ring => all.extend(
                Wearer::BOTH
                    .into_iter()
                    .flat_map(|who| (1..=RINGS_MOST).map(move |n| AnswerKey::ring(row.ask, who, n))),
            ),
        }
    }
    all
}
