//! Addresses, read: what they say stands in their one list, [`super`].

use js_sys::decode_uri_component;

use super::{Address, Calculator, PARTS, Part, Query, SETTINGS, Setting};
use crate::archive::code::Code;
use crate::book::asks::Section;
use crate::book::id::{InstallationId, ItemId, RecordId};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::places::Place;
use crate::trade::wearer::Wearer;

/// Whether an address is written as an earlier version wrote it. Addresses stand in other people's notes, in calendars
/// and on home screens: each of them leads where it led, for ever.
pub fn is_former(hash: &str) -> bool {
    hash.starts_with("#/bench") || hash.starts_with("#/practice")
}

/// Reads what stands behind the page's path: "#/tools/size?q=M".
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
        ["tools" | "bench"] => Address::Bench,
        ["tools" | "bench", which] => Address::Calculator(Calculator::ALL.into_iter().find(|c| c.code() == *which)?),
        ["setup" | "practice"] => Address::Practice,
        ["setup" | "practice", rest @ ..] => Address::Setting(setting(rest)?),
        ["list"] => Address::List(None),
        ["list", section] => Address::List(Some(Section::from_code(section)?)),
        _ => return None,
    })
}

fn part(parts: &[&str]) -> Option<Part> {
    Some(match parts {
        [word] => named(&PARTS, word)?,
        ["appointments", item] => Part::Appointment(read_item(item)?),
        ["rings", who, item] => Part::Ring(Wearer::from_code(who)?, read_item(item)?),
        [what, who] => {
            let of = match *what {
                "finger" => Part::Finger,
                "fitted" => Part::Fitted,
                "rings" => Part::Rings,
                "band" => Part::Band,
                "remedy" => Part::Remedy,
                _ => return None,
            };
            of(Wearer::from_code(who)?)
        }
        _ => return None,
    })
}

fn setting(parts: &[&str]) -> Option<Setting> {
    if let Some(setting) = named(&SETTINGS, &parts.join("/")) {
        return Some(setting);
    }
    let [list, which] = parts else { return None };
    Some(match *list {
        "gauges" => Setting::Gauge(read_item(which)?),
        "tray" => Setting::TryOn(read_item(which)?),
        "times" => match Work::from_code(which) {
            Some(work) => Setting::Time(work),
            None => Setting::Extra(read_item(which)?),
        },
        "closures" => match Place::from_code(which) {
            Some(place) => Setting::Place(place),
            None => Setting::Closure(read_item(which)?),
        },
        "phone" => Setting::PhoneName(InstallationId::parse(which)?),
        _ => return None,
    })
}

/// What a word stands for in a table.
fn named<T: Copy>(table: &[(&str, T)], wanted: &str) -> Option<T> {
    table.iter().find(|(word, _)| *word == wanted).map(|(_, one)| *one)
}

/// "new" is no item yet; anything else has to be an id.
fn read_item(text: &str) -> Option<Option<ItemId>> {
    if text == "new" { Some(None) } else { ItemId::parse(text).map(Some) }
}
