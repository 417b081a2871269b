//! An order as it goes: the days on which its steps were finished, and what is reached of the days to keep.

use chrono::NaiveDate;

use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::practice::Practice;
use crate::book::schedule::{Asked, Step, not_before};
use crate::book::value::{ExtraWork, Stage};
use crate::book::verbs;
use crate::forms::complaint::{Complaint, Complaints};
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::countdown::MOST_STEPS;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::milestones::Milestone;

/// The milestones that are reached.
pub const REACHED: Key = Key::new("reached");

/// The fields of the steps that are the jeweller's own: as many as an order can have beside making.
#[rustfmt::skip]
const OWN: [&str; MOST_STEPS - 1] = [
    "done-own-1", "done-own-2", "done-own-3", "done-own-4", "done-own-5", "done-own-6", "done-own-7", "done-own-8",
    "done-own-9", "done-own-10", "done-own-11", "done-own-12", "done-own-13", "done-own-14", "done-own-15", "done-own-16",
    "done-own-17", "done-own-18", "done-own-19", "done-own-20", "done-own-21", "done-own-22", "done-own-23", "done-own-24",
    "done-own-25", "done-own-26", "done-own-27", "done-own-28", "done-own-29", "done-own-30", "done-own-31",
];

/// A step of an order, and its field.
pub type Field = (Key, Step);

/// What was read: of each step the day on which it was finished, and what is reached.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanTyped {
    pub finished: Vec<(ExtraWork, Option<NaiveDate>)>,
    pub reached: Vec<Milestone>,
}

/// The steps of an order that was placed, each with its field; none before.
pub fn fields(couple: Couple<'_>, practice: Practice<'_>) -> Vec<Field> {
    if !matches!(couple.stage(), Stage::Ordered | Stage::Collected) {
        return Vec::new();
    }
    let mut own = OWN.into_iter();
    let mut key = |step: &Step| match step.work {
        ExtraWork::Usual(Work::Making) => Some("done-making"),
        ExtraWork::Usual(Work::Stones) => Some("done-stones"),
        ExtraWork::Usual(Work::Engraving) => Some("done-engraving"),
        ExtraWork::Usual(Work::Marking) => Some("done-marking"),
        ExtraWork::Usual(Work::Delivery) => Some("done-delivery"),
        ExtraWork::Usual(Work::Resizing) => None,
        ExtraWork::Own(_) => own.next(),
    };
    let steps = Asked::of(couple, practice).steps();
    steps.into_iter().filter_map(|step| Some((Key::new(key(&step)?), step))).collect()
}

/// `day` writes a day as it is typed.
pub fn start(couple: Couple<'_>, fields: &[Field], day: fn(NaiveDate) -> String) -> Texts {
    let finished = |step: &Step| couple.work_done(step.work).map(day).unwrap_or_default();
    let texts = fields.iter().fold(Texts::default(), |texts, (key, step)| texts.with(*key, finished(step)));
    let reached = Milestone::ALL.into_iter().filter(|it| couple.milestone_done(*it).is_some());
    texts.with(REACHED, write::codes(reached))
}

/// Reads the form. `ordered` is the day of the order.
pub fn read(
    texts: &Texts,
    fields: &[Field],
    ordered: Option<NaiveDate>,
    today: NaiveDate,
) -> Result<PlanTyped, Complaints> {
    let mut form = Reader::new(texts);
    let mut typed: Vec<(&Step, Option<NaiveDate>)> = Vec::new();
    for (key, step) in fields {
        let day = form.optional_day(*key, today, today).and_then(|day| {
            let is_to_come = day.is_some_and(|day| day > today);
            form.note(*key, if is_to_come { Err(Complaint::NotYet(today)) } else { Ok(day) })
        });
        typed.push((step, day.flatten()));
    }
    for ((key, step), (_, day)) in fields.iter().zip(&typed) {
        let earliest = not_before(ordered, &typed, step);
        if let Some((from, ahead)) = earliest.filter(|(from, _)| day.is_some_and(|day| day < *from)) {
            let ahead = ahead.and_then(|at| typed.get(at)).map(|(step, _)| (*step).clone());
            form.complain(*key, Complaint::TooEarly { from, ahead });
        }
    }
    let finished = typed.into_iter().map(|(step, day)| (step.work, day)).collect();
    let reached = form.choices(REACHED);
    form.checked(Some(PlanTyped { finished, reached }))
}

impl PlanTyped {
    /// What is written down. A milestone that was reached before keeps its day.
    pub fn writes(self, couple: Couple<'_>, today: NaiveDate) -> Vec<Write> {
        let milestone = |it| {
            let day = self.reached.contains(&it).then(|| couple.milestone_done(it).unwrap_or(today));
            verbs::arrive(it, day)
        };
        let steps = self.finished.iter().map(|(work, day)| verbs::finish(*work, *day));
        steps.chain(Milestone::ALL.map(milestone)).collect()
    }
}
