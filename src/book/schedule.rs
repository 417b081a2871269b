//! The way from order to wedding of a couple: which steps, how long each, on whose calendar; and how the jeweller's own
//! orders went.

use chrono::NaiveDate;

use super::couple::Couple;
use super::field::Stage;
use super::practice::Practice;
use super::value::{ChosenExtra, ExtraWork};
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::CalendarError;
use crate::trade::dates::countdown::{Inputs, Resize};
use crate::trade::dates::forecast::{Leg, Way};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::Step as Work;
use crate::trade::dates::odds::Lasts;
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::{CalendarDays, Spread, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::measure::Percent;

/// A step of an order.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    pub work: ExtraWork,
    /// The name of one that the jeweller has added.
    pub name: Option<String>,
    pub spread: Spread,
}

/// What a way is worked out from.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    pub region: Region,
    pub making: Spread,
    pub extras: Vec<ChosenExtra>,
    pub in_hand: CalendarDays,
    pub confidence: Percent,
}

/// How long each usual piece of work took in the jeweller's own finished orders.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OwnOrders(Vec<(Work, WorkingDays)>);

impl Asked {
    /// What is usual in this practice.
    pub fn usual(practice: Practice<'_>) -> Asked {
        Asked {
            region: practice.region(),
            making: practice.lead_time(Work::Making),
            extras: Vec::new(),
            in_hand: practice.in_hand(),
            confidence: practice.confidence(),
        }
    }

    /// What was settled with a couple, otherwise what is usual in this practice.
    pub fn of(couple: Couple<'_>, practice: Practice<'_>) -> Asked {
        let usual = Asked::usual(practice);
        let Some(settled) = couple.dates() else { return usual };
        Asked {
            region: settled.region,
            making: settled.making,
            extras: settled.extras.clone(),
            in_hand: settled.in_hand,
            confidence: settled.confidence.unwrap_or(usual.confidence),
        }
    }

    /// The steps in the order of the work: making, stones, the jeweller's own, engraving, marking, delivery. A change
    /// of size is none: it comes after the try-on.
    pub fn steps(&self) -> Vec<Step> {
        let making = Step { work: ExtraWork::Usual(Work::Making), name: None, spread: self.making };
        let extras = self.extras.iter().filter(|extra| extra.work != ExtraWork::Usual(Work::Resizing));
        let extras = extras.map(|extra| Step { work: extra.work, name: extra.name.clone(), spread: extra.spread });
        in_order(std::iter::once(making).chain(extras), |step| place_in_order(step.work))
    }

    /// Everything that the countdown wants to know.
    pub fn inputs(
        &self,
        practice: Practice<'_>,
        own: &OwnOrders,
        wedding: Wedding,
        today: NaiveDate,
    ) -> Result<Inputs, CalendarError> {
        let steps = self.steps();
        let delivered = steps.iter().any(|step| step.work == ExtraWork::Usual(Work::Delivery));
        let again = [Some(Work::Resizing), delivered.then_some(Work::Delivery)].into_iter().flatten();
        let leg = |step: &Step| own.leg(practice, step.work, step.spread);
        Ok(Inputs {
            today,
            past_cut_off: false,
            wedding,
            engraving: steps.iter().position(|step| step.work == ExtraWork::Usual(Work::Engraving)),
            way: Way {
                places: practice.places(self.region)?,
                legs: steps.iter().map(leg).collect(),
                busy: practice.busy(),
            },
            in_hand: self.in_hand,
            confidence: self.confidence,
            resize: Resize {
                chance: practice.resize_chance(),
                wait: practice.try_on_after(),
                legs: again.map(|work| own.leg(practice, ExtraWork::Usual(work), practice.lead_time(work))).collect(),
            },
        })
    }
}

impl OwnOrders {
    /// Reads the orders of these couples. Examples are no orders.
    pub fn of<'a>(couples: impl Iterator<Item = Couple<'a>>, practice: Practice<'_>) -> OwnOrders {
        let mut all = Vec::new();
        for couple in couples.filter(|couple| !couple.is_example()) {
            for (step, took) in took(couple, practice) {
                if let ExtraWork::Usual(work) = step.work {
                    all.push((work, took));
                }
            }
        }
        OwnOrders(all)
    }

    /// How long a usual piece of work took in them; none while they are too few to say anything.
    pub fn lasts(&self, work: Work) -> Option<Lasts> {
        Lasts::of_orders(self.0.iter().filter(|(of, _)| *of == work).map(|(_, took)| *took).collect())
    }

    /// A step as it is counted: by the jeweller's own orders where there are enough of them and nothing else was
    /// entered for this couple.
    pub fn leg(&self, practice: Practice<'_>, work: ExtraWork, spread: Spread) -> Leg {
        match work {
            ExtraWork::Usual(work) => {
                let own = self.lasts(work).filter(|_| spread == practice.lead_time(work));
                Leg { place: Place::of(work), lasts: own.unwrap_or(Lasts::Spread(spread)) }
            }
            ExtraWork::Own(_) => Leg { place: Place::Workshop, lasts: Lasts::Spread(spread) },
        }
    }
}

/// The steps of an order that are finished, each with the working days it took on its own calendar. A step whose day
/// lies before that of the step ahead of it says nothing.
pub fn took(couple: Couple<'_>, practice: Practice<'_>) -> Vec<(Step, WorkingDays)> {
    let Some(mut from) = couple.reached(Stage::Ordered) else { return Vec::new() };
    let asked = Asked::of(couple, practice);
    let Ok(places) = practice.places(asked.region) else { return Vec::new() };
    let mut all = Vec::new();
    for step in asked.steps() {
        let Some(done) = couple.work_done(step.work) else { break };
        let place = match step.work {
            ExtraWork::Usual(work) => Place::of(work),
            ExtraWork::Own(_) => Place::Workshop,
        };
        if done >= from
            && let Ok(days) = places.of(place).count(from, done)
        {
            all.push((step, days));
        }
        from = done;
    }
    all
}

/// The day before which a step cannot have been finished: that of the order, or the latest of the steps ahead of it, with
/// the place of that step. Pieces of work that the jeweller has added have no order among each other.
pub fn not_before(
    ordered: Option<NaiveDate>,
    steps: &[(&Step, Option<NaiveDate>)],
    of: &Step,
) -> Option<(NaiveDate, Option<usize>)> {
    let ahead = |step: &Step| place_in_order(step.work) < place_in_order(of.work);
    let days = steps.iter().enumerate().filter(|(_, (step, _))| ahead(step));
    let days = days.filter_map(|(at, (_, day))| Some(((*day)?, Some(at))));
    ordered.map(|day| (day, None)).into_iter().chain(days).max_by_key(|(day, _)| *day)
}

fn place_in_order(work: ExtraWork) -> u8 {
    match work {
        ExtraWork::Usual(Work::Making) => 0,
        ExtraWork::Usual(Work::Stones) => 1,
        ExtraWork::Own(_) => 2,
        ExtraWork::Usual(Work::Engraving) => 3,
        ExtraWork::Usual(Work::Marking) => 4,
        ExtraWork::Usual(Work::Delivery) => 5,
        ExtraWork::Usual(Work::Resizing) => 6,
    }
}
