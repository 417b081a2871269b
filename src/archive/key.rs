//! The name of a field in files: words and ids joined by dots, "ring.first.0123....shoulder_width".

use super::code::Code;
use crate::book::field::{AppointmentField, BandField, Field, PracticeField, RingField};
use crate::book::id::{InstallationId, ItemId, RecordId};
use crate::book::value::ExtraWork;
use crate::trade::wearer::Finger;

/// The name of a field.
pub fn write(field: &Field) -> String {
    match field {
        Field::Name(who) => format!("name.{}", who.code()),
        Field::Reach(item) => format!("reach.{item}"),
        Field::Met => "met".into(),
        Field::Wedding => "wedding".into(),
        Field::Appointment(item, part) => format!("appointment.{item}.{}", appointment_part(*part)),
        Field::Recorded => "recorded".into(),
        Field::Stage => "stage".into(),
        Field::Reached(stage) => format!("reached.{}", stage.code()),
        Field::PutAway => "put_away".into(),
        Field::Example => "example".into(),
        Field::Note(item) => format!("note.{item}"),
        Field::Finger(who) => format!("finger.{}", who.code()),
        Field::FirstRing(who) => format!("first_ring.{}", who.code()),
        Field::Reading(who, item) => format!("reading.{}.{item}", who.code()),
        Field::NoRings(who) => format!("no_rings.{}", who.code()),
        Field::Ring(who, item, part) => format!("ring.{}.{item}.{}", who.code(), ring_part(*part)),
        Field::Band(who, part) => format!("band.{}.{}", who.code(), band_part(*part)),
        Field::Wish(who, wish) => format!("wish.{}.{}", who.code(), wish.code()),
        Field::MeasureAgain(who) => format!("measure_again.{}", who.code()),
        Field::Fitted(who) => format!("fitted.{}", who.code()),
        Field::OrderSize(who) => format!("order_size.{}", who.code()),
        Field::FreeLength(who) => format!("free_length.{}", who.code()),
        Field::FreeLengthOf(who, on) => format!("free_length.{}.{}.{}", who.code(), on.hand.code(), on.digit.code()),
        Field::Stack(who) => format!("stack.{}", who.code()),
        Field::Remedy(who) => format!("remedy.{}", who.code()),
        Field::RingGone(who) => format!("ring_gone.{}", who.code()),
        Field::RingBack(who) => format!("ring_back.{}", who.code()),
        Field::Dates => "dates".into(),
        Field::ReadBack => "read_back".into(),
        Field::WorkDone(ExtraWork::Usual(work)) => format!("work_done.{}", work.code()),
        Field::WorkDone(ExtraWork::Own(item)) => format!("work_done.{item}"),
        Field::MilestoneDone(milestone) => format!("milestone_done.{}", milestone.code()),
        Field::SameAs(id) => format!("same_as.{id}"),
        Field::Said(list) => format!("said.{list}"),
        Field::Practice(field) => format!("practice.{}", practice(*field)),
        Field::Unknown(name) => name.clone(),
    }
}

/// The field of a name; a name that is not known stands for a field of a newer version.
pub fn read(name: &str) -> Field {
    known(name).unwrap_or_else(|| Field::Unknown(name.to_owned()))
}

fn known(name: &str) -> Option<Field> {
    let parts: Vec<&str> = name.split('.').collect();
    Some(match parts.as_slice() {
        ["name", who] => Field::Name(Code::from_code(who)?),
        ["reach", item] => Field::Reach(ItemId::parse(item)?),
        ["met"] => Field::Met,
        ["wedding"] => Field::Wedding,
        ["appointment", item, part] => Field::Appointment(
            ItemId::parse(item)?,
            AppointmentField::ALL.into_iter().find(|p| appointment_part(*p) == *part)?,
        ),
        ["recorded"] => Field::Recorded,
        ["stage"] => Field::Stage,
        ["reached", stage] => Field::Reached(Code::from_code(stage)?),
        ["put_away"] => Field::PutAway,
        ["example"] => Field::Example,
        ["note", item] => Field::Note(ItemId::parse(item)?),
        ["finger", who] => Field::Finger(Code::from_code(who)?),
        ["first_ring", who] => Field::FirstRing(Code::from_code(who)?),
        ["reading", who, item] => Field::Reading(Code::from_code(who)?, ItemId::parse(item)?),
        ["no_rings", who] => Field::NoRings(Code::from_code(who)?),
        ["ring", who, item, part] => Field::Ring(
            Code::from_code(who)?,
            ItemId::parse(item)?,
            RingField::ALL.into_iter().find(|p| ring_part(*p) == *part)?,
        ),
        ["band", who, part] => {
            Field::Band(Code::from_code(who)?, BandField::ALL.into_iter().find(|p| band_part(*p) == *part)?)
        }
        ["wish", who, wish] => Field::Wish(Code::from_code(who)?, Code::from_code(wish)?),
        ["measure_again", who] => Field::MeasureAgain(Code::from_code(who)?),
        ["fitted", who] => Field::Fitted(Code::from_code(who)?),
        ["order_size", who] => Field::OrderSize(Code::from_code(who)?),
        ["free_length", who] => Field::FreeLength(Code::from_code(who)?),
        ["free_length", who, hand, digit] => Field::FreeLengthOf(
            Code::from_code(who)?,
            Finger { hand: Code::from_code(hand)?, digit: Code::from_code(digit)? },
        ),
        ["remedy", who] => Field::Remedy(Code::from_code(who)?),
        ["ring_gone", who] => Field::RingGone(Code::from_code(who)?),
        ["ring_back", who] => Field::RingBack(Code::from_code(who)?),
        ["stack", who] => Field::Stack(Code::from_code(who)?),
        ["dates"] => Field::Dates,
        ["read_back"] => Field::ReadBack,
        ["work_done", work] => Field::WorkDone(match Code::from_code(work) {
            Some(usual) => ExtraWork::Usual(usual),
            None => ExtraWork::Own(ItemId::parse(work)?),
        }),
        ["milestone_done", milestone] => Field::MilestoneDone(Code::from_code(milestone)?),
        ["same_as", id] => Field::SameAs(RecordId::parse(id)?),
        ["said", list] => Field::Said(ItemId::parse(list)?),
        ["practice", rest @ ..] => Field::Practice(known_practice(rest)?),
        _ => return None,
    })
}

fn appointment_part(part: AppointmentField) -> &'static str {
    match part {
        AppointmentField::When => "when",
        AppointmentField::Place => "place",
        AppointmentField::Outcome => "outcome",
    }
}

fn ring_part(part: RingField) -> &'static str {
    match part {
        RingField::Name => "name",
        RingField::Finger => "finger",
        RingField::ShoulderWidth => "shoulder_width",
        RingField::TopWidth => "top_width",
        RingField::BackWidth => "back_width",
        RingField::Height => "height",
        RingField::Inside => "inside",
        RingField::Profile => "profile",
        RingField::Metal => "metal",
        RingField::HeadToWeb => "head_to_web",
        RingField::HeadToTip => "head_to_tip",
        RingField::HeadUnderside => "head_underside",
        RingField::Stones => "stones",
        RingField::Place => "place",
        RingField::Holds => "holds",
        RingField::Planned => "planned",
    }
}

fn band_part(part: BandField) -> &'static str {
    match part {
        BandField::Width => "width",
        BandField::Profile => "profile",
        BandField::Finish => "finish",
        BandField::Metal => "metal",
        BandField::Height => "height",
        BandField::Dome => "dome",
        BandField::Relief => "relief",
        BandField::Place => "place",
    }
}

fn practice(field: PracticeField) -> String {
    match field {
        PracticeField::Fair => "fair".into(),
        PracticeField::Region => "region".into(),
        PracticeField::FirstSystem => "first_system".into(),
        PracticeField::Step => "step".into(),
        PracticeField::Gauge(item) => format!("gauge.{item}"),
        PracticeField::TryOn(item) => format!("try_on.{item}"),
        PracticeField::LeadTime(work) => format!("lead_time.{}", work.code()),
        PracticeField::Extra(item) => format!("extra.{item}"),
        PracticeField::Closure(item) => format!("closure.{item}"),
        PracticeField::Weekdays => "weekdays".into(),
        PracticeField::WorksOnHolidays => "works_on_holidays".into(),
        PracticeField::CutOff => "cut_off".into(),
        PracticeField::DaysInHand => "days_in_hand".into(),
        PracticeField::Holiday(name) => format!("holiday.{}", name.code()),
        PracticeField::PlaceDays(place) => format!("place_days.{}", place.code()),
        PracticeField::CountsToday => "counts_today".into(),
        PracticeField::Confidence => "confidence".into(),
        PracticeField::BusyChance => "busy_chance".into(),
        PracticeField::BusyLonger => "busy_longer".into(),
        PracticeField::BusyMonths => "busy_months".into(),
        PracticeField::ResizeChance => "resize_chance".into(),
        PracticeField::TryOnAfter => "try_on_after".into(),
        PracticeField::FreeLength => "free_length".into(),
        PracticeField::Gap => "gap".into(),
        PracticeField::Roomy => "roomy".into(),
        PracticeField::Full => "full".into(),
        PracticeField::Clearance => "clearance".into(),
        PracticeField::Catch => "catch".into(),
        PracticeField::Thinnest => "thinnest".into(),
        PracticeField::Constant(constant) => format!("constant.{}", constant.code()),
        PracticeField::PhoneName(by) => format!("phone_name.{by}"),
    }
}

fn known_practice(parts: &[&str]) -> Option<PracticeField> {
    Some(match parts {
        ["fair"] => PracticeField::Fair,
        ["region"] => PracticeField::Region,
        ["first_system"] => PracticeField::FirstSystem,
        ["step"] => PracticeField::Step,
        ["gauge", item] => PracticeField::Gauge(ItemId::parse(item)?),
        ["try_on", item] => PracticeField::TryOn(ItemId::parse(item)?),
        ["lead_time", work] => PracticeField::LeadTime(Code::from_code(work)?),
        ["extra", item] => PracticeField::Extra(ItemId::parse(item)?),
        ["closure", item] => PracticeField::Closure(ItemId::parse(item)?),
        ["weekdays"] => PracticeField::Weekdays,
        ["works_on_holidays"] => PracticeField::WorksOnHolidays,
        ["cut_off"] => PracticeField::CutOff,
        ["days_in_hand"] => PracticeField::DaysInHand,
        ["holiday", name] => PracticeField::Holiday(Code::from_code(name)?),
        ["place_days", place] => PracticeField::PlaceDays(Code::from_code(place)?),
        ["counts_today"] => PracticeField::CountsToday,
        ["confidence"] => PracticeField::Confidence,
        ["busy_chance"] => PracticeField::BusyChance,
        ["busy_longer"] => PracticeField::BusyLonger,
        ["busy_months"] => PracticeField::BusyMonths,
        ["resize_chance"] => PracticeField::ResizeChance,
        ["try_on_after"] => PracticeField::TryOnAfter,
        ["free_length"] => PracticeField::FreeLength,
        ["gap"] => PracticeField::Gap,
        ["roomy"] => PracticeField::Roomy,
        ["full"] => PracticeField::Full,
        ["clearance"] => PracticeField::Clearance,
        ["catch"] => PracticeField::Catch,
        ["thinnest"] => PracticeField::Thinnest,
        ["constant", constant] => PracticeField::Constant(Code::from_code(constant)?),
        ["phone_name", by] => PracticeField::PhoneName(InstallationId::parse(by)?),
        _ => return None,
    })
}
