//! The example book: four invented couples at different points of the way, dated from today, so that every screen
//! has something to show. None of them exists.

use chrono::{Days, Months, NaiveDate, NaiveTime};

use super::change::Write;
use super::couple::{Band, Head, Ring};
use super::field::{Field, Outcome, Stage};
use super::id::ItemId;
use super::value::{OwnGauge, ReadingTaken, Recorded, Value, When};
use super::verbs;
use crate::trade::band::{Bore, Finish, Profile, alloys};
use crate::trade::dates::wedding::Wedding;
use crate::trade::fit::{Gauge, GaugeKind, Hands, Place, ReadAt};
use crate::trade::limits::Whole;
use crate::trade::measure::Length;
use crate::trade::sizing::{Size, SizeAsRead, Stated, System};
use crate::trade::wearer::{Finger, Wearer};

/// The writes of each example couple. `id` hands out the ids of its items.
pub fn couples(today: NaiveDate, mut id: impl FnMut() -> ItemId) -> Vec<Vec<Write>> {
    let id = &mut id;
    let all = [well_measured(today, id), nearly_late(today, id), just_met(today, id), date_open(today, id)];
    let flag = Write::set(Field::Example, Value::Yes(true));
    all.into_iter().map(|writes| writes.into_iter().chain([flag.clone()]).collect()).collect()
}

fn well_measured(today: NaiveDate, id: &mut impl FnMut() -> ItemId) -> Vec<Write> {
    let mut writes = met("Ines", Some("Callum"), "Wharfside wedding fair", before(today, 40));
    writes.extend([
        Write::set(Field::Wedding, Value::Wedding(Wedding::Day(saturday(months(today, 6))))),
        Write::set(Field::Reach(id()), Value::Text("07700 900123".into())),
        Write::set(Field::Reach(id()), Value::Text("ines.callum@example.org".into())),
        Write::set(Field::Recorded, Value::Recorded(Recorded { agrees: true, asked: before(today, 40) })),
        Write::set(Field::Note(id()), Value::Text("Ines climbs at weekends: takes every ring off for it.".into())),
    ]);
    writes.extend(verbs::move_to(Stage::Booked, before(today, 30)));
    writes.extend(kept(id(), before(today, 30), "their kitchen"));
    writes.extend(visit(id(), after(today, 1), 18, "studio"));
    writes.push(Write::set(Field::FirstRing(Wearer::First), Value::Yes(false)));
    writes.push(Write::set(Field::FirstRing(Wearer::Second), Value::Yes(true)));
    writes.extend(measured(id(), Wearer::First, 50, Hands::Cold, before(today, 30)));
    writes.extend(measured(id(), Wearer::Second, 74, Hands::Normal, before(today, 30)));
    let item = id();
    writes.extend(verbs::note_ring(
        Wearer::First,
        Ring {
            name: Some("engagement ring".into()),
            finger: Some(Finger::LEFT_RING),
            shoulder_width: Some(tenths(26)),
            top_width: Some(tenths(18)),
            profile: Some(Profile::Court),
            metal: alloys::by_code("platinum-950"),
            height: Some(tenths(18)),
            head: Head { to_web: Some(tenths(9)), to_tip: Some(tenths(9)), underside: Some(tenths(19)) },
            place: Some(Whole(1)),
            ..Ring::unknown(item)
        },
    ));
    writes.push(Write::set(Field::NoRings(Wearer::Second), Value::Yes(true)));
    writes.extend(verbs::choose_band(Wearer::First, band(25, Profile::Court, "platinum-950")));
    writes.extend(verbs::choose_band(Wearer::Second, band(60, Profile::FlatCourt, "platinum-950")));
    writes
}

fn nearly_late(today: NaiveDate, id: &mut impl FnMut() -> ItemId) -> Vec<Write> {
    let mut writes = met("Orla", Some("Tomasz"), "Barn Lane open day", before(today, 75));
    writes.extend([
        Write::set(Field::Wedding, Value::Wedding(Wedding::Day(saturday(after(today, 40))))),
        Write::set(Field::Reach(id()), Value::Text("07700 900456".into())),
        Write::set(Field::Recorded, Value::Recorded(Recorded { agrees: false, asked: before(today, 75) })),
    ]);
    writes.extend(verbs::move_to(Stage::Booked, before(today, 60)));
    writes.extend(visit(id(), before(today, 6), 11, "home visit"));
    writes.extend(measured(id(), Wearer::Second, 82, Hands::Warm, before(today, 60)));
    writes.extend(verbs::choose_band(Wearer::First, band(30, Profile::D, "yellow-750")));
    writes
}

fn just_met(today: NaiveDate, id: &mut impl FnMut() -> ItemId) -> Vec<Write> {
    let mut writes = met("Wren", None, "Wharfside wedding fair", before(today, 2));
    writes.push(Write::set(Field::Wedding, Value::Wedding(month_of(months(today, 10)))));
    writes.extend(visit(id(), after(today, 5), 10, "studio"));
    writes
}

fn date_open(today: NaiveDate, id: &mut impl FnMut() -> ItemId) -> Vec<Write> {
    let mut writes = met("Priya", Some("Noor"), "asked by telephone", before(today, 12));
    writes.push(Write::set(Field::Wedding, Value::Wedding(Wedding::NotYet)));
    writes.push(Write::set(Field::Note(id()), Value::Text("Like a brushed surface, nothing shiny.".into())));
    writes
}

fn met(first: &str, second: Option<&str>, place: &str, day: NaiveDate) -> Vec<Write> {
    verbs::meet(first.into(), second.map(Into::into), Some(place.into()), day)
}

fn visit(item: ItemId, day: NaiveDate, hour: u32, place: &str) -> Vec<Write> {
    verbs::book(item, When { day, time: NaiveTime::from_hms_opt(hour, 0, 0) }, Some(place.into()))
}

fn kept(item: ItemId, day: NaiveDate, place: &str) -> Vec<Write> {
    let mut writes = visit(item, day, 19, place);
    writes.extend(verbs::conclude(item, Some(Outcome::Happened)));
    writes
}

/// One reading of the left ring finger with the usual narrow gauge, by its UK size in quarters from A.
fn measured(item: ItemId, wearer: Wearer, quarters: i32, hands: Hands, taken: NaiveDate) -> Vec<Write> {
    let size = Size::new(System::Uk, quarters).unwrap_or(Size::first(System::Uk));
    let gauge = Gauge {
        kind: GaugeKind::RingSet,
        width: tenths(30),
        bore: Bore::Flat,
        relief: None,
        step: Length::tenthousandths(6_250),
        own_error: Length::tenthousandths(1_000),
    };
    let reading = ReadingTaken {
        size: SizeAsRead { stated: Stated::Size(size), typed: String::new() },
        finger: Finger::LEFT_RING,
        place: Place::Base,
        gauge: OwnGauge { name: "narrow rings".into(), gauge, calibration: Vec::new() },
        read_at: ReadAt::LowerEdge,
        hands,
        beside: Vec::new(),
        sits: None,
        taken,
        at: None,
        left_out: false,
    };
    vec![
        Write::set(Field::Finger(wearer), Value::Finger(Finger::LEFT_RING)),
        Write::set(Field::Reading(wearer, item), Value::Reading(reading)),
    ]
}

fn band(width: i64, profile: Profile, metal: &str) -> Band {
    Band {
        width: Some(tenths(width)),
        profile: Some(profile),
        finish: Some(Finish::Plain),
        metal: alloys::by_code(metal),
        height: Some(tenths(18)),
        ..Band::default()
    }
}

fn tenths(of_a_millimetre: i64) -> Length {
    Length::tenthousandths(of_a_millimetre * 1_000)
}

fn before(day: NaiveDate, days: u64) -> NaiveDate {
    day.checked_sub_days(Days::new(days)).unwrap_or(day)
}

fn after(day: NaiveDate, days: u64) -> NaiveDate {
    day.checked_add_days(Days::new(days)).unwrap_or(day)
}

fn months(day: NaiveDate, months: u32) -> NaiveDate {
    day.checked_add_months(Months::new(months)).unwrap_or(day)
}

fn saturday(day: NaiveDate) -> NaiveDate {
    day.week(chrono::Weekday::Sun).first_day().pred_opt().map_or(day, |saturday| after(saturday, 7))
}

fn month_of(day: NaiveDate) -> Wedding {
    use chrono::Datelike;
    Wedding::Month { year: day.year(), month: day.month() }
}
