//! Addresses, read: what they say stands in their one list, [`super`].

use js_sys::decode_uri_component;

use super::{Address, Calculator, Part, Query, Setting};
use crate::archive::code::Code;
use crate::book::asks::Section;
use crate::book::id::{InstallationId, ItemId, RecordId};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::Place;
use crate::trade::wearer::Wearer;

/// Reads what stands behind the page's path: "#/bench/size?q=M".
pub fn read(hash: &str) -> (Address, Query) {
    let text = hash.trim_start_matches('#');
    let (path, query) = text.split_once('?').unwrap_or((text, ""));
    let parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
    let address = match parts.as_slice() {
        [] => Address::Today,
        parts => address(parts).unwrap_or(Address::Nowhere),
    };
    (address, read_query(query))
}

fn read_query(text: &str) -> Query {
    let decoded = |part: &str| decode_uri_component(part).map(String::from).unwrap_or_else(|_| part.to_owned());
    text.split('&')
        .filter_map(|pair| pair.split_once('='))
        .map(|(name, value)| (decoded(name), decoded(value)))
        .collect()
}

fn address(parts: &[&str]) -> Option<Address> {
    Some(match parts {
        ["today"] => Address::Today,
        ["couples"] => Address::Couples,
        ["couples", "new"] => Address::NewCouple,
        ["couples", "list"] => Address::TakeIn,
        ["couples", "invite"] => Address::Invite,
        ["couple", id] => Address::Couple(RecordId::parse(id)?),
        ["couple", id, rest @ ..] => Address::Part(RecordId::parse(id)?, part(rest)?),
        ["bench"] => Address::Bench,
        ["bench", which] => Address::Calculator(Calculator::ALL.into_iter().find(|c| c.code() == *which)?),
        ["practice"] => Address::Practice,
        ["practice", rest @ ..] => Address::Setting(setting(rest)?),
        ["list"] => Address::List(None),
        ["list", section] => Address::List(Some(Section::from_code(section)?)),
        _ => return None,
    })
}

fn part(parts: &[&str]) -> Option<Part> {
    Some(match parts {
        ["people"] => Part::People,
        ["wedding"] => Part::Wedding,
        ["appointments"] => Part::Appointments,
        ["appointments", item] => Part::Appointment(read_item(item)?),
        ["recorded"] => Part::Recorded,
        ["stage"] => Part::Stage,
        ["notes"] => Part::Notes,
        ["finger", who] => Part::Finger(Wearer::from_code(who)?),
        ["fitted", who] => Part::Fitted(Wearer::from_code(who)?),
        ["rings", who] => Part::Rings(Wearer::from_code(who)?),
        ["rings", who, item] => Part::Ring(Wearer::from_code(who)?, read_item(item)?),
        ["band", who] => Part::Band(Wearer::from_code(who)?),
        ["remedy", who] => Part::Remedy(Wearer::from_code(who)?),
        ["read-back"] => Part::ReadBack,
        ["plan"] => Part::Plan,
        ["specification"] => Part::Specification,
        ["copy"] => Part::Copy,
        ["differences"] => Part::Differences,
        ["same"] => Part::Same,
        ["history"] => Part::History,
        ["erase"] => Part::Erase,
        ["said"] => Part::Said,
        ["invite"] => Part::Invite,
        _ => return None,
    })
}

fn setting(parts: &[&str]) -> Option<Setting> {
    Some(match parts {
        ["fair"] => Setting::Fair,
        ["sizes"] => Setting::Sizes,
        ["gauges"] => Setting::Gauges,
        ["gauges", item] => Setting::Gauge(read_item(item)?),
        ["tray"] => Setting::Tray,
        ["tray", item] => Setting::TryOn(read_item(item)?),
        ["times"] => Setting::Times,
        ["times", item] => match Work::from_code(item) {
            Some(work) => Setting::Time(work),
            None => Setting::Extra(read_item(item)?),
        },
        ["closures"] => Setting::Closures,
        ["closures", "holidays"] => Setting::Holidays,
        ["closures", place] if Place::from_code(place).is_some() => Setting::Place(Place::from_code(place)?),
        ["chances"] => Setting::Chances,
        ["closures", item] => Setting::Closure(read_item(item)?),
        ["stack"] => Setting::Stack,
        ["fit"] => Setting::Fit,
        ["phone"] => Setting::Phone,
        ["phone", by] => Setting::PhoneName(InstallationId::parse(by)?),
        ["install"] => Setting::Install,
        ["copies"] => Setting::Copies,
        ["copies", "bring-in"] => Setting::BringIn,
        ["example"] => Setting::Example,
        _ => return None,
    })
}

/// "new" is no item yet; anything else has to be an id.
fn read_item(text: &str) -> Option<Option<ItemId>> {
    if text == "new" { Some(None) } else { ItemId::parse(text).map(Some) }
}
