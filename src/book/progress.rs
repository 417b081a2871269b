//! An order under way: what is finished, what ran late, when the rest may be; and which milestones are still open.

use chrono::{Days, NaiveDate};

use super::couple::Couple;
use super::field::Stage;
use super::practice::Practice;
use super::schedule::{Asked, OwnOrders, Step, took};
use super::value::ExtraWork;
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::{Calendar, Closed, ClosedDay};
use crate::trade::dates::countdown::{self, Inputs, Plan};
use crate::trade::dates::forecast::{Finish, Way, finish};
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::milestones::{Due, Milestone};
use crate::trade::dates::odds::Chance;
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::WorkingDays;
use crate::trade::dates::wedding::Wedding;
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
    /// The chance of being in hand in time; none without a wedding date, or while a step is overrun.
    pub chance: Option<Chance>,
    /// The chance of being in hand on the day before the wedding; none where the other is none.
    pub before_wedding: Option<Chance>,
}

/// An order that will be late, or may well be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtRisk {
    /// The day by which it has to be in hand; none without a wedding.
    pub in_hand: Option<NaiveDate>,
    pub why: Risk,
}

/// What is wrong with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Risk {
    /// A step has taken longer than its longest: it is in hand on this day at the earliest.
    Overrun { not_before: NaiveDate },
    /// The chance of being in hand in time has fallen below the one that was planned for.
    Unlikely(Chance),
}

/// How far an order is, and when the rest may be finished.
struct Stands {
    /// So many steps are finished.
    done: usize,
    so_far: Option<WorkingDays>,
    is_overrun: bool,
    finish: Finish,
}

/// How an ordered couple's rings stand today; none for a couple that has not ordered, or has collected.
pub fn under_way(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<UnderWay> {
    let asked = Asked::of(couple, practice);
    let steps = asked.steps();
    let inputs = asked.inputs(practice, own, couple.wedding().unwrap_or_default(), today).ok()?;
    let plan = countdown::plan(&inputs).ok();
    let Stands { done, so_far, is_overrun, finish } = stands(couple, &steps, inputs)?;
    let took = took(couple, practice);
    let days = |step: &Step| took.iter().find(|(it, _)| it.work == step.work).map(|(_, days)| *days);
    let at_work = steps.get(done).cloned().zip(so_far);
    let plan = plan.filter(|_| !is_overrun);
    let chance = plan.as_ref().map(|plan| finish.chance_by(plan.in_hand));
    let before_wedding = plan.and_then(|plan| Some(finish.chance_by(plan.wedding.pred_opt()?)));
    let steps = steps.into_iter().map(|step| {
        let (day, days) = (couple.work_done(step.work), days(&step));
        (step, day, days)
    });
    Some(UnderWay { steps: steps.collect(), at_work, is_overrun, finish, chance, before_wedding })
}

fn stands(couple: Couple<'_>, steps: &[Step], inputs: Inputs) -> Option<Stands> {
    let ordered = couple.reached(Stage::Ordered).filter(|_| couple.stage() == Stage::Ordered)?;
    let today = inputs.today;
    let done = steps.iter().take_while(|step| couple.work_done(step.work).is_some()).count();
    let from = steps[..done].last().and_then(|step| couple.work_done(step.work)).unwrap_or(ordered);
    let mut way = inputs.way;
    way.legs.drain(..done);
    let at_work = way.legs.first();
    let so_far = at_work.and_then(|leg| way.places.of(leg.place).count(from, today.max(from)).ok());
    let is_overrun = so_far.zip(at_work).is_some_and(|(so_far, leg)| so_far > way.longest_of(&leg.lasts));
    let finish = finish(&way, from, if at_work.is_some() { today.max(from) } else { from }).ok()?;
    Some(Stands { done, so_far, is_overrun, finish })
}

/// Whether an order under way is late, or less likely in time than was planned for; none once every step is finished,
/// and none after the wedding. A wedding known only by its month or year may be on its last day.
pub fn at_risk(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<AtRisk> {
    let wedding = couple.wedding().unwrap_or_default();
    if couple.stage() != Stage::Ordered || wedding.is_past(today) {
        return None;
    }
    let asked = Asked::of(couple, practice);
    let steps = asked.steps();
    let inputs = asked.inputs(practice, own, wedding, today).ok()?;
    let in_hand = wedding.latest().and_then(|day| day.checked_sub_days(Days::new(asked.in_hand.0.into())));
    let Stands { is_overrun, finish, .. } = stands(couple, &steps, inputs).filter(|it| it.done < steps.len())?;
    let chance = in_hand.map(|day| finish.chance_by(day)).filter(|chance| !chance.is_at_least(asked.confidence));
    let why = match (is_overrun, chance) {
        (true, _) => Risk::Overrun { not_before: finish.earliest() },
        (false, Some(chance)) => Risk::Unlikely(chance),
        (false, None) => return None,
    };
    Some(AtRisk { in_hand, why })
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
    /// Those of the other places that steps use: see [`elsewhere`].
    pub elsewhere: Vec<(Place, Vec<ClosedDay>)>,
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
    let elsewhere = elsewhere(&inputs.way, today, plan.wedding);
    let calendar = inputs.way.places.workshop;
    let last = ready.as_ref().map_or(plan.wedding, |(_, finish)| finish.last().max(plan.wedding));
    let reached = plan.milestones.iter().map(|due| due.what).filter(|what| is_reached(couple, *what)).collect();
    Some(Ahead {
        today,
        ready,
        is_ordered: matches!(stage, Stage::Ordered | Stage::Collected),
        closed_days: calendar.closed_days(today, last),
        calendar,
        elsewhere,
        appointments: appointments(couple, today).into_iter().filter(|day| *day <= plan.wedding).collect(),
        reached,
        plan,
    })
}

/// The closed days of the other places that steps use, from today to the wedding, without the weekdays that they never
/// work, and without the holidays that the workshop keeps too.
pub fn elsewhere(way: &Way, today: NaiveDate, wedding: NaiveDate) -> Vec<(Place, Vec<ClosedDay>)> {
    let workshop = way.places.workshop.closed_days(today, wedding);
    let own = |calendar: &Calendar| {
        let mut days = calendar.closed_days(today, wedding);
        days.retain(|it| match it.why {
            Closed::Closure(_) => true,
            Closed::Holiday(_) => !workshop.contains(it),
            Closed::Weekend => false,
        });
        days
    };
    let others = way.used().filter(|(place, _)| *place != Place::Workshop);
    others.map(|(place, calendar)| (place, own(calendar))).collect()
}

/// What the closures of each place are called, in the order of its calendar.
pub fn closure_names(practice: Practice<'_>) -> Vec<(Place, Vec<String>)> {
    Place::ALL.map(|place| (place, practice.closure_names(place))).into()
}

/// The days of the appointments that are still to come.
pub fn appointments(couple: Couple<'_>, today: NaiveDate) -> Vec<NaiveDate> {
    let open = couple.appointments().into_iter().filter(|it| it.outcome.is_none() && it.when.day >= today);
    in_order(open.map(|it| it.when.day), |day| *day)
}

/// The plan of a couple: the days planned back from its wedding. None without a wedding date that can be counted to.
pub fn plan(couple: Couple<'_>, practice: Practice<'_>, own: &OwnOrders, today: NaiveDate) -> Option<Plan> {
    plan_for(couple, practice, own, couple.wedding()?, today)
}

/// The same if the wedding were then.
pub fn plan_for(
    couple: Couple<'_>,
    practice: Practice<'_>,
    own: &OwnOrders,
    wedding: Wedding,
    today: NaiveDate,
) -> Option<Plan> {
    countdown::plan(&Asked::of(couple, practice).inputs(practice, own, wedding, today).ok()?).ok()
}

/// The milestones of a plan that are still to be reached, in their order.
pub fn open(couple: Couple<'_>, plan: &Plan) -> Vec<Due> {
    plan.milestones.iter().copied().filter(|due| !is_reached(couple, due.what)).collect()
}

/// Whether a milestone is behind: said to be, or plain from what is written down.
///
/// The words to engrave are fixed once engraving, or a step after it, is finished. In hand means with the jeweller or
/// the couple, as the forecast counts it: once every step is finished, marking with both its ways and delivery among
/// them. It need not have been collected.
pub fn is_reached(couple: Couple<'_>, milestone: Milestone) -> bool {
    let stage = couple.stage();
    let ordered = matches!(stage, Stage::Ordered | Stage::Collected);
    let finished = |work: Work| couple.work_done(ExtraWork::Usual(work)).is_some();
    couple.milestone_done(milestone).is_some()
        || match milestone {
            Milestone::Decide => {
                let named = Wearer::BOTH.into_iter().filter(|who| couple.name(*who).is_some());
                let mut bands = named.map(|who| couple.band(who).is_whole()).peekable();
                ordered || couple.read_back().is_some() || (bands.peek().is_some() && bands.all(|whole| whole))
            }
            Milestone::Order => ordered,
            Milestone::EngravingText => {
                stage == Stage::Collected
                    || ordered && [Work::Engraving, Work::Marking, Work::Delivery].into_iter().any(finished)
            }
            Milestone::Collect => {
                let extras = couple.dates().map_or(&[][..], |dates| &dates.extras);
                let mut extras = extras.iter().filter(|extra| extra.work != ExtraWork::Usual(Work::Resizing));
                let made = ordered && finished(Work::Making);
                stage == Stage::Collected || made && extras.all(|extra| couple.work_done(extra.work).is_some())
            }
            Milestone::TryOn => false,
            Milestone::LastResize => couple.milestone_done(Milestone::TryOn).is_some(),
        }
}
