//! Fields and what they hold, in words: for the history, and where two phones say different things.

use super::harmless::harmless;
use super::list::pages;
use super::{band, book, dates, finger, format, lengths, planning, practice, remedy, rings, screens, sizing};
use crate::book::couple::Couple;
use crate::book::field::{AppointmentField, Field, PracticeField};
use crate::book::value::{DatesSettled, ExtraWork, StackSeen, Value};
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;

/// What a field is called: "Ines: band, width".
pub fn field(couple: Couple<'_>, field: &Field) -> String {
    let of = |wearer: Wearer, what: &str| format!("{}: {what}", book::name_of(couple, wearer));
    match field {
        Field::Name(Wearer::First) => screens::FIRST_NAME.to_owned(),
        Field::Name(Wearer::Second) => screens::SECOND_NAME.to_owned(),
        Field::Reach(_) => screens::REACH.to_owned(),
        Field::Met => screens::MET.to_owned(),
        Field::Wedding => screens::WEDDING.to_owned(),
        Field::Appointment(_, AppointmentField::When) => "Appointment, day and time".to_owned(),
        Field::Appointment(_, AppointmentField::Place) => "Appointment, place".to_owned(),
        Field::Appointment(_, AppointmentField::Outcome) => "Appointment, what became of it".to_owned(),
        Field::Recorded => screens::RECORDED.to_owned(),
        Field::Stage => screens::STAGE.to_owned(),
        Field::Reached(stage) => format!("Since when: {}", book::stage(*stage)),
        Field::PutAway => screens::PUT_AWAY.to_owned(),
        Field::Example => "Example".to_owned(),
        Field::Note(_) => "Note".to_owned(),
        Field::Finger(wearer) => of(*wearer, "hand and finger"),
        Field::FirstRing(wearer) => of(*wearer, "first ring ever"),
        Field::Reading(wearer, _) => of(*wearer, "reading"),
        Field::NoRings(wearer) => of(*wearer, "no other ring"),
        Field::Ring(wearer, item, part) => {
            let name = couple.ring(*wearer, *item).name.unwrap_or_else(|| "a ring".to_owned());
            of(*wearer, &format!("{name}, {}", rings::ring_part(*part)))
        }
        Field::Band(wearer, part) => of(*wearer, &format!("band, {}", rings::band_part(*part))),
        Field::Wish(wearer, wish) => of(*wearer, finger::wish(*wish)),
        Field::MeasureAgain(wearer) => of(*wearer, "measure again on"),
        Field::Fitted(wearer) => of(*wearer, "what fitted"),
        Field::OrderSize(wearer) => of(*wearer, "order size"),
        Field::FreeLength(wearer) => of(*wearer, "free length of the finger"),
        Field::FreeLengthOf(wearer, on) => of(*wearer, &format!("free length of the {}", band::finger(*on))),
        Field::Stack(wearer) => of(*wearer, "stack"),
        Field::Remedy(wearer) => of(*wearer, "band beside a head"),
        Field::RingGone(wearer) => of(*wearer, "ring handed over for the bench"),
        Field::RingBack(wearer) => of(*wearer, "ring back from the bench"),
        Field::Dates => "Dates".to_owned(),
        Field::ReadBack => screens::READ_BACK.to_owned(),
        Field::WorkDone(ExtraWork::Usual(work)) => format!("{}, finished", dates::step(*work)),
        Field::WorkDone(ExtraWork::Own(_)) => "Work on top, finished".to_owned(),
        Field::MilestoneDone(milestone) => format!("{}, done", dates::milestone(*milestone)),
        Field::PreparationList(_) => "What they said in their list".to_owned(),
        Field::SameAs(_) => "The same couple as another entry".to_owned(),
        Field::Practice(field) => practice_field(*field).to_owned(),
        Field::Unknown(_) => "Something of a newer version".to_owned(),
    }
}

fn practice_field(field: PracticeField) -> &'static str {
    match field {
        PracticeField::Fair => practice::FAIR,
        PracticeField::Region => "Region",
        PracticeField::FirstSystem => practice::FIRST_SYSTEM,
        PracticeField::Step => practice::STEP,
        PracticeField::Gauge(_) => practice::GAUGE,
        PracticeField::TryOn(_) => finger::TRAY,
        PracticeField::LeadTime(work) => dates::step(work),
        PracticeField::Extra(_) => "Work on top",
        PracticeField::Closure(_) => "Closed days",
        PracticeField::Weekdays => "Days of the week that are worked",
        PracticeField::WorksOnHolidays => "Work on bank holidays",
        PracticeField::CutOff => "Cut-off",
        PracticeField::DaysInHand => "Days in hand",
        PracticeField::Holiday(name) => dates::holiday(name),
        PracticeField::PlaceDays(place) => dates::place(place),
        PracticeField::CountsToday => "Today counts",
        PracticeField::Confidence => "Chance wanted",
        PracticeField::BusyChance => "Chance of a busy season",
        PracticeField::BusyLonger => "Longer in a busy season",
        PracticeField::BusyMonths => planning::BUSY_MONTHS,
        PracticeField::ResizeChance => "Chance of a change of size",
        PracticeField::TryOnAfter => "Days until the try-on",
        PracticeField::FreeLength => "Usual free length",
        PracticeField::Gap => "Usual gap",
        PracticeField::Roomy => "Roomy up to",
        PracticeField::Full => "Full up to",
        PracticeField::Clearance => practice::CLEARANCE,
        PracticeField::Catch => practice::CATCH,
        PracticeField::Thinnest => practice::THINNEST,
        PracticeField::Constant(_) => "A figure of the fit",
        PracticeField::PhoneName(_) => "Name of a phone",
    }
}

/// What a field holds; nothing is said as "nothing".
pub fn value(value: Option<&Value>) -> String {
    let Some(value) = value else { return "nothing".to_owned() };
    match value {
        Value::Text(text) => harmless(text),
        Value::Yes(true) => "yes".to_owned(),
        Value::Yes(false) => "no".to_owned(),
        Value::Day(day) => format::day(*day),
        Value::When(when) => book::when(*when),
        Value::Wedding(wedding) => dates::wedding(*wedding),
        Value::Recorded(recorded) => screens::recorded(recorded.agrees, recorded.asked),
        Value::Stage(stage) => book::stage(*stage).to_owned(),
        Value::Outcome(outcome) => book::outcome(*outcome).to_owned(),
        Value::Finger(finger) => band::finger(*finger),
        Value::Reading(reading) => book::reading(reading),
        Value::Length(length) => mm(*length),
        Value::Profile(profile) => band::profile(*profile).to_owned(),
        Value::Finish(finish) => band::finish(*finish).to_owned(),
        Value::Metal(alloy) => band::alloy(alloy),
        Value::OrderSize(size) => book::order_size(size),
        Value::Stack(stack) => stack_seen(stack),
        Value::Remedy(chosen) => remedy::in_full(chosen, None),
        Value::Dates(settled) => dates_settled(settled),
        Value::PreparationList(said) => pages::list_of(said),
        Value::Region(region) => dates::region(*region).to_owned(),
        Value::System(system) => sizing::system_name(*system).to_owned(),
        Value::Step(step) => sizing::step_name(*step).to_owned(),
        Value::Gauge(gauge) => book::gauge(gauge),
        Value::TryOn(band) => finger::try_on(band),
        Value::Fitted(fitted) => finger::fitted(fitted),
        Value::Spread(spread) => dates::spread(*spread),
        Value::Extra(extra) => format!("{}, {}", extra.name, dates::spread(extra.spread)),
        Value::Closure(closure) => {
            format!("{}, {} to {}", closure.name, format::day(closure.days.from()), format::day(closure.days.to()))
        }
        Value::Weekdays(_) => "a choice of days".to_owned(),
        Value::Months(months) => planning::months(*months),
        Value::PlaceDays(days) => practice::closed_days(days.weekdays, days.on_bank_holidays, 0),
        Value::Time(time) => dates::time(*time),
        Value::Days(days) => dates::calendar_days(*days),
        Value::Place(place) => place.0.to_string(),
        Value::Percent(share) => format!("{} %", format::count(share.0.into())),
        Value::Unknown(_) => "something that this version cannot read".to_owned(),
    }
}

fn stack_seen(stack: &StackSeen) -> String {
    format!("{} now, {} later, of {}", mm(stack.now), mm(stack.later), mm(stack.free))
}

fn dates_settled(settled: &DatesSettled) -> String {
    format!("order by {}, making {}", format::day(settled.order_by), dates::spread(settled.making))
}

fn mm(length: Length) -> String {
    format!("{} mm", lengths::plain(length))
}
