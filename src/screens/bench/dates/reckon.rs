//! The inputs of the countdown, read, and what `trade` makes of them.

use chrono::{NaiveDate, NaiveTime};
use leptos::prelude::*;

use super::super::sheet::{Complaints, judge};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::progress;
use crate::book::schedule::{self as way, OwnOrders, Step};
use crate::book::value::{ChosenExtra, DatesSettled, ExtraWork};
use crate::trade::dates::closed::{Calendar, ClosedDay};
use crate::trade::dates::countdown::{self, Cost, Countdown, DatesError, Inputs, Ordered, is_past_cut_off};
use crate::trade::dates::entry::{read_day, read_wedding};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::{EXTRAS, Step as Work};
use crate::trade::dates::odds::{Chance, Lasts};
use crate::trade::dates::places::Place;
use crate::trade::dates::spread::{CalendarDays, Spread, SpreadError, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry::{read_percent, read_whole};
use crate::trade::limits::{Limit, Whole};
use crate::trade::measure::Percent;
use crate::words::dates::{self as say_dates, Asked};
use crate::words::{bench as say, entry as say_entry};

/// What was typed, read, and what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    pub complaints: Complaints,
    pub today: NaiveDate,
    /// After this time an order counts as the next working day's.
    pub cut_off: Option<NaiveTime>,
    pub past_cut_off: bool,
    pub wedding: Option<Wedding>,
    pub region: Region,
    pub calendar: Option<Calendar>,
    pub making: Option<Spread>,
    pub extras: Vec<ChosenExtra>,
    pub in_hand: Option<CalendarDays>,
    pub confidence: Option<Percent>,
    /// The steps in the order of the work, as they are counted.
    pub steps: Vec<(Step, Lasts)>,
    pub answer: Option<Result<Countdown, DatesError>>,
    /// What each of the steps costs; none for making.
    pub costs: Vec<Option<Cost>>,
    /// When it is ready if they decide on another day, and the chance of the day in hand that is planned for.
    pub decided: Option<(NaiveDate, Ordered, Chance)>,
    pub counts_today: bool,
    /// The days of the couple's appointments that are still to come.
    pub appointments: Vec<NaiveDate>,
    /// What the closures are called, those of the workshop first.
    pub closures: Vec<(Place, Vec<String>)>,
    /// The closed days of the other places that steps use.
    pub elsewhere: Vec<(Place, Vec<ClosedDay>)>,
    /// When it is ready if it is ordered now; needs no wedding.
    pub if_today: Option<Ordered>,
}

/// How long the jeweller's own orders took; read from the whole book, and so not at every key.
pub fn own_orders(app: App) -> Memo<OwnOrders> {
    Memo::new(move |_| {
        app.with(|book| OwnOrders::of(book.couples.values().map(|record| Couple(record)), Practice(&book.practice)))
    })
}

pub fn reckon(app: App, form: Form, whose: Option<RecordId>, own: Memo<OwnOrders>) -> Reckoned {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let today = app.today.get();
    let cut_off = app.practice(|practice| practice.cut_off());
    let past_cut_off = cut_off.is_some_and(|cut_off| is_past_cut_off(clock::now().1, cut_off));
    let read = read_wedding(&text("wedding"), today).map_err(|error| say_dates::date_entry(error, Asked::Wedding));
    let wedding = judge(&mut complaints, "wedding", read);
    let region = Region::from_code(&text("region")).unwrap_or(Region::EnglandAndWales);
    let calendar = app.practice(|practice| practice.calendar(region, Place::Workshop));
    let making = spread(form, &mut complaints);
    let in_hand = whole(&text("in-hand"), Limit::DaysInHand);
    let in_hand = judge(&mut complaints, "in-hand", in_hand).map(|days| CalendarDays(days.0));
    let confidence = read_percent(&text("confidence"), Limit::ConfidenceShare).map_err(say_entry::number_error);
    let confidence = judge(&mut complaints, "confidence", confidence);
    let decided = match text("decided") {
        text if text.trim().is_empty() => None,
        text => {
            let read = read_day(&text, today).map_err(|error| say_dates::date_entry(error, Asked::Day));
            let read = read.and_then(|day| if day < today { Err(say::decided_past(today)) } else { Ok(day) });
            judge(&mut complaints, "decided", read)
        }
    };
    let ticked = text("extras");
    let extras = app.practice(|practice| chosen(practice, &ticked));

    let asked = making.zip(in_hand).zip(confidence).map(|((making, in_hand), confidence)| way::Asked {
        region,
        making,
        extras: extras.clone(),
        in_hand,
        confidence,
    });
    // The wedding may be missing: when it is ready does not depend on it.
    let inputs = asked.as_ref().map(|asked| {
        app.with(|book| {
            let practice = Practice(&book.practice);
            let wedding = wedding.unwrap_or(Wedding::NotYet);
            let inputs = own.with(|own| asked.inputs(practice, own, wedding, today))?;
            Ok(Inputs { past_cut_off, ..inputs })
        })
    });
    let ready = inputs.as_ref().and_then(|inputs| inputs.as_ref().ok());
    let answer = inputs.as_ref().map(|inputs| match inputs {
        Ok(inputs) => countdown::countdown(inputs),
        Err(error) => Err(DatesError::Calendar(*error)),
    });
    let found = ready.zip(answer.as_ref().and_then(|answer| answer.as_ref().ok()));
    let if_today = match found {
        Some((_, answer)) => Some(answer.if_today.clone()),
        None => ready.and_then(|inputs| countdown::if_ordered_today(inputs).ok()),
    };
    let costs = found.and_then(|(inputs, answer)| countdown::costs(inputs, answer).ok()).unwrap_or_default();
    // Making is the first of them, and nothing that could be left out.
    let costs = costs.into_iter().enumerate().map(|(at, cost)| (at > 0).then_some(cost)).collect();
    let decided = decided.zip(found).and_then(|(day, (inputs, answer))| {
        let (ordered, chance) = countdown::if_decided(inputs, &answer.plan, day).ok()?;
        Some((day, ordered, chance))
    });
    let lasts = ready.map_or(Vec::new(), |inputs| inputs.way.legs.iter().map(|leg| leg.lasts.clone()).collect());
    let steps = asked.map_or(Vec::new(), |asked| asked.steps()).into_iter().zip(lasts).collect();
    let calendar = calendar.ok();
    let counts_today = app.practice(|practice| practice.counts_today());
    let appointments = whose.and_then(|id| app.couple(id, |couple| progress::appointments(couple, today)));
    let closures = app.practice(progress::closure_names);
    let elsewhere = found.map(|(inputs, answer)| progress::elsewhere(&inputs.way, today, answer.plan.wedding));
    Reckoned {
        elsewhere: elsewhere.unwrap_or_default(),
        appointments: appointments.unwrap_or_default(),
        closures,
        complaints,
        today,
        cut_off,
        past_cut_off,
        wedding,
        region,
        calendar,
        making,
        extras,
        in_hand,
        confidence,
        steps,
        answer,
        costs,
        decided,
        counts_today,
        if_today,
    }
}

fn whole(text: &str, limit: Limit) -> Result<Whole, String> {
    read_whole(text, limit).map_err(say_entry::number_error)
}

/// Least, usual and most of making; what is wrong with their order is said beside the one to change.
fn spread(form: Form, complaints: &mut Complaints) -> Option<Spread> {
    let mut days = |key| {
        let read = whole(&form.text(key).get(), Limit::LeadTimeDays);
        judge(complaints, key, read).map(|days| WorkingDays(days.0))
    };
    let (least, usual, most) = (days("least"), days("usual"), days("most"));
    let read = Spread::new(least?, usual?, most?);
    let key = match read {
        Err(SpreadError::LeastAboveUsual { .. }) => "usual",
        Err(SpreadError::UsualAboveMost { .. } | SpreadError::TooLong { .. }) | Ok(_) => "most",
    };
    judge(complaints, key, read.map_err(say_dates::spread_error))
}

/// Whether an extra is among those that are ticked, "marking,engraving".
pub fn is_ticked(ticked: &str, code: &str) -> bool {
    ticked.split(',').any(|it| it == code)
}

/// Every extra there is, each with its word: the usual ones and the jeweller's own.
pub fn all_extras(practice: Practice<'_>) -> Vec<(String, ChosenExtra)> {
    // A change of size is no step of its own: it comes after the try-on, with its chance.
    let usual = EXTRAS.iter().filter(|row| row.step != Work::Resizing).map(|row| {
        let spread = practice.lead_time(row.step);
        (row.step.code().to_owned(), ChosenExtra { work: ExtraWork::Usual(row.step), name: None, spread })
    });
    let own = practice.extras().into_iter().map(|(item, extra)| {
        let chosen = ChosenExtra { work: ExtraWork::Own(item), name: Some(extra.name.clone()), spread: extra.spread };
        (item.to_string(), chosen)
    });
    usual.chain(own).collect()
}

fn chosen(practice: Practice<'_>, ticked: &str) -> Vec<ChosenExtra> {
    let all = all_extras(practice).into_iter();
    all.filter(|(code, _)| is_ticked(ticked, code)).map(|(_, extra)| extra).collect()
}

impl Reckoned {
    pub fn countdown(&self) -> Option<&Countdown> {
        // The day on which they may decide is asked beside the answer, which does not rest on it.
        let rests_on = |(key, _): &(&str, String)| *key != "decided";
        self.answer.as_ref()?.as_ref().ok().filter(|_| !self.complaints.iter().any(rests_on))
    }

    /// What is written down when the answer is used; the chance that is wanted only where it is not the usual one.
    pub fn settled(&self, today: NaiveDate, usual: Percent) -> Option<DatesSettled> {
        Some(DatesSettled {
            region: self.region,
            in_hand: self.in_hand?,
            making: self.making?,
            extras: self.extras.clone(),
            confidence: self.confidence.filter(|it| *it != usual),
            order_by: self.countdown()?.plan.order_by,
            settled: today,
        })
    }
}
