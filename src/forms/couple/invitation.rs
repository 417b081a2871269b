//! The link that invites a couple to their list: what it says. What cannot be read stays out of the link, and is said
//! beside its field once that is left.

use chrono::NaiveDate;

use crate::book::couple::Couple;
use crate::book::value::{Invitation, When};
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::holidays::Region;
use crate::trade::wearer::Wearer;

pub use super::appointment::{DAY, TIME};
pub use super::people::{FIRST_NAME, SECOND_NAME};

pub const REGION: Key = Key::new("region");

/// What the book knows of a couple: their names, and the next appointment. `day` writes a day as it is typed.
pub fn start(couple: Option<Couple<'_>>, region: Region, today: NaiveDate, day: fn(NaiveDate) -> String) -> Texts {
    let name = |who| couple.and_then(|it| it.name(who)).unwrap_or_default();
    let appointments = couple.map(|it| it.appointments()).unwrap_or_default();
    let next = appointments.into_iter().find(|it| it.outcome.is_none() && it.when.day >= today).map(|it| it.when);
    Texts::default()
        .with(FIRST_NAME, name(Wearer::First))
        .with(SECOND_NAME, name(Wearer::Second))
        .with(DAY, next.map(|when| day(when.day)).unwrap_or_default())
        .with(TIME, write::optional_time(next.and_then(|when| when.time)))
        .with(REGION, region.code())
}

/// What is typed, as far as it can be read.
pub fn read(texts: &Texts, today: NaiveDate) -> Invitation {
    let mut form = Reader::new(texts);
    let time = form.optional_time(TIME).flatten();
    Invitation {
        first: form.optional_name(FIRST_NAME).flatten(),
        second: form.optional_name(SECOND_NAME).flatten(),
        when: form.optional_day(DAY, today, today).flatten().map(|day| When { day, time }),
        region: form.choice(REGION),
    }
}
