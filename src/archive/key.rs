//! The name of a field in files: words and ids joined by dots, "ring.first.0123....shoulder_width".

use super::code::Code;
use crate::book::field::{AppointmentField, BandField, Field, RingField};
use crate::book::id::{InstallationId, ItemId, RecordId};
use crate::book::settings::{PracticeField, SettingKey};
use crate::book::value::ExtraWork;
use crate::trade::wearer::Finger;

/// The name of a field.
pub fn write(field: &Field) -> String {
    match field {
        Field::Name(who) => format!("name.{}", who.code()),
        Field::Reach(item) => format!("reach.{item}"),
        Field::Met => "met".into(),
        Field::Wedding => "wedding".into(),
        Field::Appointment(item, part) => format!("appointment.{item}.{}", part.code()),
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
        Field::Ring(who, item, part) => format!("ring.{}.{item}.{}", who.code(), part.code()),
        Field::Band(who, part) => format!("band.{}.{}", who.code(), part.code()),
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
        Field::PreparationList(list) => format!("said.{list}"),
        Field::Practice(field) => practice(*field),
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
        ["appointment", item, part] => Field::Appointment(ItemId::parse(item)?, AppointmentField::from_code(part)?),
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
        ["ring", who, item, part] => {
            Field::Ring(Code::from_code(who)?, ItemId::parse(item)?, RingField::from_code(part)?)
        }
        ["band", who, part] => Field::Band(Code::from_code(who)?, BandField::from_code(part)?),
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
        ["said", list] => Field::PreparationList(ItemId::parse(list)?),
        ["practice", code] => Field::Practice(PracticeField::from_code(code, None)?),
        ["practice", code, key] => Field::Practice(setting_of(code, key)?),
        _ => return None,
    })
}

fn practice(setting: PracticeField) -> String {
    let code = setting.code();
    match setting.key() {
        None => format!("practice.{code}"),
        Some(SettingKey::ItemId(item)) => format!("practice.{code}.{item}"),
        Some(SettingKey::InstallationId(phone)) => format!("practice.{code}.{phone}"),
        Some(SettingKey::Work(work)) => format!("practice.{code}.{}", work.code()),
        Some(SettingKey::HolidayName(name)) => format!("practice.{code}.{}", name.code()),
        Some(SettingKey::Place(place)) => format!("practice.{code}.{}", place.code()),
        Some(SettingKey::Constant(constant)) => format!("practice.{code}.{}", constant.code()),
    }
}

/// The setting of a code and a key, read as whatever key that setting has.
fn setting_of(code: &str, key: &str) -> Option<PracticeField> {
    let keys = [
        ItemId::parse(key).map(SettingKey::ItemId),
        InstallationId::parse(key).map(SettingKey::InstallationId),
        Code::from_code(key).map(SettingKey::Work),
        Code::from_code(key).map(SettingKey::HolidayName),
        Code::from_code(key).map(SettingKey::Place),
        Code::from_code(key).map(SettingKey::Constant),
    ];
    keys.into_iter().flatten().find_map(|key| PracticeField::from_code(code, Some(key)))
}
