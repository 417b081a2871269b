//! An order under way: what is finished, what ran late, when the rest may be; and which milestones are still open.

use chrono::NaiveDate;

use super::couple::Couple;
use super::field::Stage;
use super::practice::Practice;
use super::schedule::{Asked, OwnOrders, Step, took};
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::{Calendar, ClosedDay};
use crate::trade::dates::countdown::{self, Inputs, Plan};
use crate::trade::dates::forecast::{Finish, Way, finish};
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::dates::odds::Chance;
use crate::trade::dates::spread::WorkingDays;
use crate::trade::wearer::Wearer;

/// An order under way.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderWay {
    /// Every step in its order, with the day it was finished and the working days it took.
    pub steps: Vec<(Step, Option<NaiveDate>, Option<WorkingDays>)>,
    /// The step that is at the bench, with the working days it has taken so far.
    pub at_work: Option<(Step, WorkingDays)>,
    /// Whether it has taken longer than its longest: then `finish` is the earliest that can be, and no forecast.
    pub is_overrun: bool,
    /// When the rest may be finished.
    pub finish: Finish,
    /// The chance of being in hand in time; none without a wedding date.
    pub chance: Option<Chance>,
}

/// How an ordered couple's rings stand today; none for a couple that has not ordered, or has collected.
pub fn under_way(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<UnderWay> {
    let ordered = couple.reached(Stage::Ordered).filter(|_| couple.stage() == Stage::Ordered)?;
    let asked = Asked::of(couple, practice);
    let took = took(couple, practice);
    let days = |step: &Step| took.iter().find(|(it, _)| it.work == step.work).map(|(_, days)| *days);
    let steps: Vec<_> = asked.steps();
    let done = steps.iter().take_while(|step| couple.work_done(step.work).is_some()).count();
    let from = steps[..done].last().and_then(|step| couple.work_done(step.work)).unwrap_or(ordered);
    let wedding = couple.wedding().unwrap_or_default();
    let inputs = asked.inputs(practice, own, wedding, today).ok()?;
    let way = Way { legs: inputs.way.legs[done..].to_vec(), ..inputs.way.clone() };
    let place = way.legs.first().map(|leg| inputs.way.places.of(leg.place));
    let so_far = place.and_then(|calendar| calendar.count(from, today.max(from)).ok());
    let longest = way.legs.first().map(|leg| way.longest_of(&leg.lasts));
    let is_overrun = so_far.zip(longest).is_some_and(|(so_far, longest)| so_far > longest);
    let at_work = steps.get(done).cloned().zip(so_far);
    let finish = finish(&way, from, if way.legs.is_empty() { from } else { today.max(from) }).ok()?;
    let plan = countdown::plan(&inputs).ok();
    let chance = plan.map(|plan| finish.chance_by(plan.in_hand));
    let steps = steps.into_iter().map(|step| {
        let (day, days) = (couple.work_done(step.work), days(&step));
        (step, day, days)
    });
    Some(UnderWay { steps: steps.collect(), at_work, is_overrun, finish, chance })
}

/// The way from today to the wedding, as a calendar shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct Ahead {
    pub today: NaiveDate,
    pub plan: Plan,
    /// When work starts, or started, and the days of finishing; none once the rings are collected, or while a step has
    /// taken longer than its longest, when nobody knows.
    pub ready: Option<(NaiveDate, Finish)>,
    pub is_ordered: bool,
    /// The workshop's.
    pub calendar: Calendar,
    /// Those of the workshop, from today to the wedding, or to the last day of finishing if that is later.
    pub closed_days: Vec<ClosedDay>,
    /// Those without an outcome that are to come, up to the wedding.
    pub appointments: Vec<NaiveDate>,
    pub reached: Vec<Milestone>,
}

/// The way ahead of a couple. None without a wedding date that can be counted to.
pub fn ahead(
    couple: Couple<'_>,
    practice: Practice<'_>,
    own: &OwnOrders,
    today: NaiveDate,
    past_cut_off: bool,
) -> Option<Ahead> {
    let asked = Asked::of(couple, practice);
    let inputs = Inputs { past_cut_off, ..asked.inputs(practice, own, couple.wedding()?, today).ok()? };
    let plan = countdown::plan(&inputs).ok()?;
    let stage = couple.stage();
    let ready = match stage {
        Stage::Ordered => {
            let it = under_way(couple, practice, own, today).filter(|it| !it.is_overrun);
            couple.reached(Stage::Ordered).zip(it.map(|it| it.finish))
        }
        Stage::Collected => None,
        _ => countdown::if_ordered_today(&inputs).ok().map(|ordered| (ordered.day_zero, ordered.finish)),
    };
    let calendar = inputs.way.places.workshop;
    let last = ready.as_ref().map_or(plan.wedding, |(_, finish)| finish.last().max(plan.wedding));
    let reached = plan.milestones.iter().map(|due| due.what).filter(|what| is_reached(couple, *what)).collect();
    Some(Ahead {
        today,
        ready,
        is_ordered: matches!(stage, Stage::Ordered | Stage::Collected),
        closed_days: calendar.closed_days(today, last),
        calendar,
        appointments: appointments(couple, today).into_iter().filter(|day| *day <= plan.wedding).collect(),
        reached,
        plan,
    })
}

/// The days of the appointments that are still to come.
pub fn appointments(couple: Couple<'_>, today: NaiveDate) -> Vec<NaiveDate> {
    let open = couple.appointments().into_iter().filter(|it| it.outcome.is_none() && it.when.day >= today);
    in_order(open.map(|it| it.when.day), |day| *day)
}

/// The plan of a couple: the days planned back from its wedding. None without a wedding date that can be counted to.
pub fn plan(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<Plan> {
    let inputs = Asked::of(couple, practice).inputs(practice, own, couple.wedding()?, today).ok()?;
    countdown::plan(&inputs).ok()
}

/// The milestones of a plan that are still to be reached, in their order.
pub fn open(couple: Couple<'_>, plan: &Plan) -> Vec<Due> {
    plan.milestones.iter().copied().filter(|due| !is_reached(couple, due.what)).collect()
}

/// Whether a milestone is behind: said to be, or plain from what is written down.
pub fn is_reached(couple: Couple<'_>, milestone: Milestone) -> bool {
    let stage = couple.stage();
    let ordered = matches!(stage, Stage::Ordered | Stage::Collected);
    couple.milestone_done(milestone).is_some()
        || match milestone {
            Milestone::Decide => {
                let named = Wearer::BOTH.into_iter().filter(|who| couple.name(*who).is_some());
                let mut bands = named.map(|who| couple.band(who).is_whole()).peekable();
                ordered || couple.read_back().is_some() || (bands.peek().is_some() && bands.all(|whole| whole))
            }
            Milestone::Order => ordered,
            Milestone::EngravingText | Milestone::Collect => stage == Stage::Collected,
            Milestone::TryOn => false,
            Milestone::LastResize => couple.milestone_done(Milestone::TryOn).is_some(),
        }
}
