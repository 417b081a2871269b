//! Weddings, closed days and lead times as JSON.

use serde_json::{Value as Json, json};

use super::json::{choice, object, option, optional, read_whole, string};
use crate::archive::code::Code;
use crate::archive::day::{read_day, write_day};
use crate::book::id::ItemId;
use crate::book::value::{ChosenExtra, ExtraWork, NamedClosure};
use crate::trade::dates::closed::{Closure, OnBankHolidays, Repeats, Weekdays};
use crate::trade::dates::places::{Place, PlaceDays};
use crate::trade::dates::season::MonthSet;
use crate::trade::dates::spread::{Spread, WorkingDays};
use crate::trade::dates::wedding::Wedding;

pub(super) fn write_chosen(extra: &ChosenExtra) -> Json {
    let work = match extra.work {
        ExtraWork::Usual(work) => json!(work.code()),
        ExtraWork::Own(item) => json!(item.to_string()),
    };
    object([
        ("work", work),
        ("name", option(extra.name.as_deref(), |name| json!(name))),
        ("days", write_spread(extra.spread)),
    ])
}

pub(super) fn read_chosen(json: &Json) -> Option<ChosenExtra> {
    let work = json.get("work")?.as_str()?;
    let work = match Code::from_code(work) {
        Some(usual) => ExtraWork::Usual(usual),
        None => ExtraWork::Own(ItemId::parse(work)?),
    };
    Some(ChosenExtra {
        work,
        name: optional(json, "name", |name| name.as_str().map(str::to_owned))?,
        spread: read_spread(json.get("days")?)?,
    })
}

/// What is usual is left out: a closure of the workshop that comes once has only a name and two days.
pub(super) fn write_closure(closure: &NamedClosure) -> Json {
    let not = |usual: bool, code: &str| if usual { Json::Null } else { json!(code) };
    let repeats = closure.days.repeats();
    object([
        ("name", json!(closure.name)),
        ("place", not(closure.place == Place::Workshop, closure.place.code())),
        ("from", write_day(closure.days.from())),
        ("to", write_day(closure.days.to())),
        ("repeats", not(repeats == Repeats::Once, repeats.code())),
    ])
}

pub(super) fn read_closure(json: &Json) -> Option<NamedClosure> {
    let days = Closure::new(read_day(json.get("from")?)?, read_day(json.get("to")?)?).ok()?;
    Some(NamedClosure {
        name: string(json, "name")?,
        place: optional(json, "place", choice)?.unwrap_or(Place::Workshop),
        days: days.repeating(optional(json, "repeats", choice)?.unwrap_or(Repeats::Once)),
    })
}

pub(super) fn write_place_days(days: PlaceDays) -> Json {
    object([
        ("weekdays", write_weekdays(days.weekdays)),
        ("works_on_holidays", json!(days.on_bank_holidays == OnBankHolidays::Works)),
        ("shut_at_christmas", json!(days.shut_at_christmas)),
    ])
}

pub(super) fn read_place_days(json: &Json) -> Option<PlaceDays> {
    let works = json.get("works_on_holidays")?.as_bool()?;
    Some(PlaceDays {
        weekdays: read_weekdays(json.get("weekdays")?)?,
        on_bank_holidays: if works { OnBankHolidays::Works } else { OnBankHolidays::Closed },
        shut_at_christmas: json.get("shut_at_christmas")?.as_bool()?,
    })
}

pub(super) fn write_weekdays(days: Weekdays) -> Json {
    days.iter(chrono::Weekday::Mon).map(|day| json!(day.code())).collect()
}

pub(super) fn read_weekdays(json: &Json) -> Option<Weekdays> {
    let days: Option<Vec<chrono::Weekday>> = json.as_array()?.iter().map(choice).collect();
    Some(days?.into_iter().collect())
}

/// Some months by their numbers; none at all is no season.
pub(super) fn read_months(json: &Json) -> Option<MonthSet> {
    let months: Option<Vec<u32>> = json.as_array()?.iter().map(|month| read_whole(month).map(u32::from)).collect();
    MonthSet::of(months?).filter(|months| !months.is_empty())
}

pub(super) fn write_spread(spread: Spread) -> Json {
    object([("least", json!(spread.least().0)), ("usual", json!(spread.usual().0)), ("most", json!(spread.most().0))])
}

pub(super) fn read_spread(json: &Json) -> Option<Spread> {
    let days = |name| read_whole(json.get(name)?).map(WorkingDays);
    Spread::new(days("least")?, days("usual")?, days("most")?).ok()
}

pub(super) fn write_wedding(wedding: Wedding) -> Json {
    match wedding {
        Wedding::Day(day) => write_day(day),
        Wedding::Month { year, month } => json!(format!("{year:04}-{month:02}")),
        Wedding::Year(year) => json!(format!("{year:04}")),
        Wedding::NotYet => json!("not yet"),
    }
}

pub(super) fn read_wedding(json: &Json) -> Option<Wedding> {
    let text = json.as_str()?;
    let wedding = if text == "not yet" {
        Wedding::NotYet
    } else if let Some(day) = read_day(json) {
        Wedding::Day(day)
    } else if let Some((year, month)) = text.rsplit_once('-').filter(|(year, _)| !year.is_empty()) {
        Wedding::Month { year: year.parse().ok()?, month: month.parse().ok()? }
    } else {
        Wedding::Year(text.parse().ok()?)
    };
    // What cannot be written back as it was read is no wedding date of ours, nor is a month without days.
    let exists = wedding == Wedding::NotYet || wedding.earliest().is_some();
    (exists && write_wedding(wedding) == *json).then_some(wedding)
}
