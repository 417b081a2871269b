//! The inputs of the countdown, read, and what `trade` makes of them.

use chrono::NaiveDate;
use leptos::prelude::*;

use super::super::sheet::{Complaints, judge};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::practice::Practice;
use crate::book::value::{ChosenExtra, DatesSettled, ExtraWork};
use crate::trade::dates::closed::Calendar;
use crate::trade::dates::countdown::{self, Countdown, DatesError, Inputs, Ordered, is_past_cut_off};
use crate::trade::dates::entry::{read_calendar_days, read_wedding, read_working_days};
use crate::trade::dates::holidays::Region;
use crate::trade::dates::lead_times::EXTRAS;
use crate::trade::dates::spread::{CalendarDays, Spread, SpreadError};
use crate::trade::dates::wedding::Wedding;
use crate::words::dates::{self as say_dates, Asked};

/// What was typed, read, and what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    pub complaints: Complaints,
    pub today: NaiveDate,
    pub past_cut_off: bool,
    pub wedding: Option<Wedding>,
    pub region: Region,
    pub calendar: Option<Calendar>,
    pub making: Option<Spread>,
    pub extras: Vec<ChosenExtra>,
    pub in_hand: Option<CalendarDays>,
    pub answer: Option<Result<Countdown, DatesError>>,
    /// When it is ready if it is ordered now; needs no wedding.
    pub if_today: Option<Ordered>,
}

pub fn reckon(app: App, form: Form) -> Reckoned {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let today = app.today.get();
    let past_cut_off =
        app.practice(|practice| practice.cut_off()).is_some_and(|cut_off| is_past_cut_off(clock::now().1, cut_off));
    let read = read_wedding(&text("wedding"), today).map_err(|error| say_dates::date_entry(error, Asked::Wedding));
    let wedding = judge(&mut complaints, "wedding", read);
    let region = Region::from_code(&text("region")).unwrap_or(Region::EnglandAndWales);
    let calendar = app.practice(|practice| practice.calendar(region));
    let making = spread(form, &mut complaints);
    let in_hand = read_calendar_days(&text("in-hand")).map_err(say_dates::amount_entry);
    let in_hand = judge(&mut complaints, "in-hand", in_hand);
    let ticked = text("extras");
    let extras = app.practice(|practice| chosen(practice, &ticked));

    // The wedding may be missing: when it is ready does not depend on it.
    let inputs = (|| {
        Some(Inputs {
            today,
            past_cut_off,
            wedding: wedding.unwrap_or(Wedding::NotYet),
            calendar: calendar.clone().ok()?,
            making: making?,
            extras: extras.iter().map(|extra| extra.spread).collect(),
            in_hand: in_hand?,
        })
    })();
    let if_today = inputs.as_ref().and_then(|inputs| countdown::if_ordered_today(inputs).ok());
    let answer = match (&calendar, inputs) {
        (Err(error), _) => Some(Err(DatesError::Calendar(*error))),
        (Ok(_), inputs) => inputs.map(|inputs| countdown::countdown(&inputs)),
    };
    let calendar = calendar.ok();
    Reckoned { complaints, today, past_cut_off, wedding, region, calendar, making, extras, in_hand, answer, if_today }
}

/// Least, usual and most of making; what is wrong with their order is said beside the one to change.
fn spread(form: Form, complaints: &mut Complaints) -> Option<Spread> {
    let mut days =
        |key| judge(complaints, key, read_working_days(&form.text(key).get()).map_err(say_dates::amount_entry));
    let (least, usual, most) = (days("least"), days("usual"), days("most"));
    let read = Spread::new(least?, usual?, most?);
    let key = match read {
        Err(SpreadError::LeastAboveUsual { .. }) => "usual",
        Err(SpreadError::UsualAboveMost { .. } | SpreadError::TooLong { .. }) | Ok(_) => "most",
    };
    judge(complaints, key, read.map_err(say_dates::spread_error))
}

/// The words of the extras that are ticked, "marking,engraving".
pub fn is_ticked(ticked: &str, code: &str) -> bool {
    ticked.split(',').any(|it| it == code)
}

/// Every extra there is, each with its word: the usual ones and the jeweller's own.
pub fn all_extras(practice: Practice<'_>) -> Vec<(String, ChosenExtra)> {
    let usual = EXTRAS.iter().map(|row| {
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
        self.answer.as_ref()?.as_ref().ok().filter(|_| self.complaints.is_empty())
    }

    /// What is written down when the answer is used.
    pub fn settled(&self, today: NaiveDate) -> Option<DatesSettled> {
        Some(DatesSettled {
            region: self.region,
            in_hand: self.in_hand?,
            making: self.making?,
            extras: self.extras.clone(),
            order_by: self.countdown()?.order_by,
            settled: today,
        })
    }
}
