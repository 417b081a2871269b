//! The working-day countdown: the wedding, how long the work takes, and the chance that is planned for.

use chrono::NaiveDate;

use super::complaint::{Complaint, Complaints};
use super::reader::Reader;
use super::texts::{Key, Texts};
use super::write;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::practice::Practice;
use crate::book::schedule::Asked;
use crate::book::value::{ChosenExtra, ExtraWork};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::{EXTRAS as USUAL_EXTRAS, Step as Work};
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::dates::wedding::Wedding;
use crate::trade::limits::Limit;
use crate::trade::measure::Percent;

pub const WEDDING: Key = Key::new("wedding");
pub const REGION: Key = Key::new("region");
/// How long making takes, in working days.
pub const LEAST: Key = Key::new("least");
pub const USUAL: Key = Key::new("usual");
pub const MOST: Key = Key::new("most");
/// The extras that are ticked, with commas: see [`with_extra`].
pub const EXTRAS: Key = Key::new("extras");
pub const IN_HAND: Key = Key::new("in-hand");
pub const CONFIDENCE: Key = Key::new("confidence");
/// The day on which they may decide; the countdown does not rest on it.
pub const DECIDED: Key = Key::new("decided");

/// What is counted with while no region is chosen.
const USUAL_REGION: Region = Region::EnglandAndWales;

/// What is known while somebody types.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// Every extra there is, each with its word.
    pub extras: Vec<(String, ChosenExtra)>,
    pub today: NaiveDate,
}

impl Known {
    pub fn of(practice: Practice<'_>, today: NaiveDate) -> Known {
        Known { extras: all_extras(practice), today }
    }
}

/// What was typed, as far as it could be read.
#[derive(Clone, Debug, PartialEq)]
pub struct DatesTyped {
    pub wedding: Option<Wedding>,
    pub region: Region,
    pub making: Option<Spread>,
    pub extras: Vec<ChosenExtra>,
    pub in_hand: Option<CalendarDays>,
    pub confidence: Option<Percent>,
    /// The day on which they may decide, from today on.
    pub decided: Option<NaiveDate>,
}

impl DatesTyped {
    /// What the way to the wedding is worked out from; none while something of it has to be put right.
    pub fn asked(&self) -> Option<Asked> {
        Some(Asked {
            region: self.region,
            making: self.making?,
            extras: self.extras.clone(),
            in_hand: self.in_hand?,
            confidence: self.confidence?,
        })
    }
}

/// Every extra there is, each with its word: the usual ones and the jeweller's own.
pub fn all_extras(practice: Practice<'_>) -> Vec<(String, ChosenExtra)> {
    // A change of size is no step of its own: it comes after the try-on, with its chance.
    let usual = USUAL_EXTRAS.iter().filter(|row| row.step != Work::Resizing).map(|row| {
        let spread = practice.lead_time(row.step);
        ChosenExtra { work: ExtraWork::Usual(row.step), name: None, spread }
    });
    let own = practice.extras().into_iter().map(|(item, extra)| ChosenExtra {
        work: ExtraWork::Own(item),
        name: Some(extra.name.clone()),
        spread: extra.spread,
    });
    usual.chain(own).map(|extra| (extra_code(&extra), extra)).collect()
}

fn extra_code(extra: &ChosenExtra) -> String {
    match extra.work {
        ExtraWork::Usual(work) => work.code().to_owned(),
        ExtraWork::Own(item) => item.to_string(),
    }
}

/// Whether an extra is among those that are ticked, "marking,engraving".
pub fn has_extra(ticked: &str, code: &str) -> bool {
    ticked.split(',').any(|it| it == code)
}

/// The same with an extra ticked, or not.
pub fn with_extra(ticked: &str, code: &str, is_ticked: bool) -> String {
    let others = ticked.split(',').filter(|it| !it.is_empty() && *it != code);
    others.chain(is_ticked.then_some(code)).collect::<Vec<_>>().join(",")
}

/// What the form starts with: what was settled for the couple, or the practice's own times. `wedding` writes one as it
/// is typed.
pub fn start(couple: Option<Couple<'_>>, practice: Practice<'_>, wedding: fn(Wedding) -> String) -> Texts {
    let asked = couple.map_or_else(|| Asked::usual(practice), |couple| Asked::of(couple, practice));
    let Asked { region, making, extras, in_hand, confidence } = asked;
    let extras: Vec<String> = extras.iter().map(extra_code).collect();
    Texts::default()
        .with(WEDDING, couple.and_then(|couple| couple.wedding()).map(wedding).unwrap_or_default())
        .with(REGION, region.code())
        .with(LEAST, write::whole(making.least().0))
        .with(USUAL, write::whole(making.usual().0))
        .with(MOST, write::whole(making.most().0))
        .with(EXTRAS, extras.join(","))
        .with(IN_HAND, write::whole(in_hand.0))
        .with(CONFIDENCE, write::whole(confidence.0))
        .with_blank([DECIDED])
}

/// Reads the form.
pub fn read(texts: &Texts, known: &Known) -> (DatesTyped, Complaints) {
    let mut form = Reader::new(texts);
    let ticked = form.text(EXTRAS);
    let extras = known.extras.iter().filter(|(code, _)| has_extra(ticked, code));
    let typed = DatesTyped {
        wedding: form.wedding(WEDDING, known.today),
        region: form.choice(REGION).unwrap_or(USUAL_REGION),
        making: form.spread([LEAST, USUAL, MOST]),
        extras: extras.map(|(_, extra)| extra.clone()).collect(),
        in_hand: form.days(IN_HAND, Limit::DaysInHand),
        confidence: form.percent(CONFIDENCE, Limit::ConfidenceShare),
        decided: decided(&mut form, known.today),
    };
    (typed, form.complaints())
}

fn decided(form: &mut Reader, today: NaiveDate) -> Option<NaiveDate> {
    let day = form.optional_day(DECIDED, today, today)??;
    let from_today = if day < today { Err(Complaint::DayPast { day, today }) } else { Ok(day) };
    form.note(DECIDED, from_today)
}
