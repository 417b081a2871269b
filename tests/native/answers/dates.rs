//! The countdown: what its answer says, that a couple's plan says the same, and what it writes. The days are numpy's, as
//! `tests/native/dates.rs` has them.

use super::{Told, day};
use crate::arbitrary::{self, OURS};
use bandwright::answers::dates::{Caution, Context, DatesAnswer, Reason, Start, answer};
use bandwright::book::change::Write;
use bandwright::book::field::{Field, PracticeField};
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::progress;
use bandwright::book::record::Record;
use bandwright::book::schedule::{Asked, OwnOrders};
use bandwright::book::value::Value;
use bandwright::book::verbs;
use bandwright::forms::dates as form;
use bandwright::forms::{Complaint, Complaints, Texts};
use bandwright::pictures::ahead::calendar;
use bandwright::trade::dates::countdown::{DatesError, Slack};
use bandwright::trade::dates::spread::WorkingDays;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::measure::{Percent, Standing};
use bandwright::words::standing::standing;
use bandwright::words::{ahead as say_ahead, bench as say, complaint as say_complaint};
use chrono::NaiveTime;
use proptest::prelude::*;

const TODAY: &str = "2026-11-25";

/// Everything that a countdown is asked with.
struct Asking {
    practice: Record,
    told: Option<Told>,
    own: OwnOrders,
    now: NaiveTime,
    today: &'static str,
}

impl Asking {
    fn new() -> Asking {
        let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap();
        Asking { practice: super::practice(), told: None, own: OwnOrders::default(), now: noon, today: TODAY }
    }

    fn of_a_couple(writes: Vec<Write>) -> Asking {
        let mut told = Told::new();
        told.say(writes);
        Asking { told: Some(told), ..Asking::new() }
    }

    fn with(mut self, field: PracticeField, value: Value) -> Asking {
        arbitrary::say(&mut self.practice, OURS, 1, vec![Write::set(Field::Practice(field), value)]);
        self
    }

    fn context(&self) -> Context<'_> {
        Context {
            practice: Practice(&self.practice),
            own: &self.own,
            couple: self.told.as_ref().map(Told::couple),
            today: day(self.today),
            now: self.now,
        }
    }

    fn read(&self, change: impl FnOnce(Texts) -> Texts) -> (form::DatesTyped, Complaints) {
        let Context { practice, couple, today, .. } = self.context();
        let texts = change(form::start(couple, practice, say::wedding_typed));
        form::read(&texts, &form::Known::of(practice, today))
    }

    fn ask(&self, change: impl FnOnce(Texts) -> Texts) -> DatesAnswer {
        answer(self.read(change).0, &self.context())
    }
}

fn wedding(text: &str) -> impl FnOnce(Texts) -> Texts {
    move |texts| texts.with(form::WEDDING, text)
}

fn reason(found: &DatesAnswer, name: &str) -> (String, String) {
    let all = say::dates_reasons(found);
    let of = all.iter().find(|it| it.name.starts_with(name)).unwrap_or_else(|| panic!("no {name} in {all:?}"));
    (of.amount.clone(), of.why.clone())
}

#[test]
fn the_answer_is_the_last_day_to_order_and_what_it_rests_on() {
    // Twenty working days back from Friday 7 May, round the early May bank holiday.
    let asking = Asking::new();
    let found = asking.ask(wedding("22 May 2027"));
    let said = say::dates_headline(&found);
    assert_eq!(said.figure, "Thu 8 Apr 2027");
    // numpy.busday_count of 25 November to 8 April, and one for the last day itself.
    assert!(said.lines[0].starts_with("92 working days left to order in, today among them"), "{:?}", said.lines);
    assert_eq!(said.lines[2], "Ordered now: over 99 % in hand by Sat 8 May 2027.");
    assert_eq!(
        reason(&found, "In hand by"),
        ("Sat 8 May 2027".into(), "14 days before the wedding, for a try-on · common practice".into())
    );
    // Weekends from 25 November to 22 May, and six bank holidays of England on weekdays.
    assert_eq!(reason(&found, say::CLOSED_DAYS).0, "57");
    assert_eq!(found.cautions, []);
    // At 90 % the twentieth day has 3 chances of 42 to be needed; decided on 12 April, 33 of 42 are in time.
    let found = asking.ask(|it| {
        it.with(form::WEDDING, "22 May 2027").with(form::CONFIDENCE, "90").with(form::DECIDED, "12 April 2027")
    });
    assert_eq!(found.order_by(), Some(day("2027-04-09")));
    assert_eq!(reason(&found, "If decided Mon 12 Apr").0, "78 %");
    let yours = format!(" · {}", standing(Standing::Yours));
    assert!(reason(&found, say::ORDER_BY).1.ends_with(&yours), "{:?}", reason(&found, say::ORDER_BY));
    let standings: Vec<Standing> = found
        .reasons()
        .iter()
        .filter_map(|it| match it {
            Reason::InHand { standing, .. } | Reason::OrderBy { standing, .. } => Some(*standing),
            Reason::Step(step) => step.standing,
            _ => None,
        })
        .collect();
    assert_eq!(
        standings,
        [Standing::CommonPractice, Standing::CommonPractice, Standing::Yours],
        "in hand, making, 90 %"
    );
}

#[test]
fn without_a_wedding_it_says_when_the_rings_are_ready() {
    let asking = Asking::new();
    let found = asking.ask(|texts| texts);
    assert_eq!((found.order_by(), found.cautions.as_slice()), (None, &[][..]), "the field itself asks for it");
    let ordered = found.if_today.as_ref().unwrap();
    // numpy.busday_offset of 25 November by 20, round Christmas: 23 December.
    assert_eq!((ordered.day_zero, ordered.most), (day(TODAY), day("2026-12-23")));
    assert_eq!(say::dates_headline(&found).figure, "Wed 23 Dec 2026");
    assert_eq!(say::dates_name(&found), say::IF_ORDERED_TODAY);
    assert!(found.ahead.is_none() && found.writes(None).is_empty());
    let said = asking.ask(wedding("not yet"));
    assert_eq!(said.cautions, [Caution::NoAnswer(DatesError::NoWeddingDate)]);
}

#[test]
fn what_cannot_be_read_is_a_complaint_and_no_answer() {
    let asking = Asking::new();
    for (key, text) in [(form::LEAST, "abc"), (form::IN_HAND, ""), (form::CONFIDENCE, "49"), (form::MOST, "3")] {
        let (typed, complaints) = asking.read(|it| it.with(form::WEDDING, "22 May 2027").with(key, text));
        assert_eq!(complaints.len(), 1, "{complaints:?}");
        let found = answer(typed, &asking.context());
        assert!(!found.is_there(), "{key:?}");
        assert!(say::dates_shown(&found).is_none() && say::dates_reasons(&found).is_empty());
    }
}

/// The countdown does not rest on the day on which they may decide.
#[test]
fn a_day_of_decision_that_is_past_takes_nothing_from_the_answer() {
    let asking = Asking::new();
    let hint = |text: &str| {
        let (typed, complaints) = asking.read(|it| it.with(form::WEDDING, "22 May 2027").with(form::DECIDED, text));
        let hint = say::decided_understood(typed.decided, &complaints, day(TODAY));
        (hint, say_complaint::complaints(&complaints), answer(typed, &asking.context()))
    };
    let (said, complaints, found) = hint("3 November 2026");
    assert_eq!(said, "Tue 3 Nov 2026 · 22 days ago");
    assert_eq!(complaints, [("decided", "Enter a day from today on, Wed 25 Nov 2026.".to_owned())]);
    assert!(found.order_by().is_some() && found.decided.is_none());
    assert_eq!(hint("").0, say::DECIDED_HINT);
    assert_eq!(hint("next Thursday").0, "Enter Thu 26 Nov 2026 or Thu 3 Dec 2026: it can be read as either.");
    assert_eq!(hint("Thursday").0, "Thu 26 Nov 2026 · tomorrow");
}

#[test]
fn an_order_after_the_cut_off_starts_on_the_next_working_day() {
    let cut_off = NaiveTime::from_hms_opt(15, 0, 0).unwrap();
    let at = |hour, today| {
        let now = NaiveTime::from_hms_opt(hour, 0, 0).unwrap();
        let asking = Asking { now, today, ..Asking::new().with(PracticeField::CutOff, Value::Time(cut_off)) };
        let found = asking.ask(wedding("22 May 2027"));
        let start = found.reasons().into_iter().find_map(|it| match it {
            Reason::WorkStarts { day, why } => Some((day, why)),
            _ => None,
        });
        (found.past_cut_off, start.unwrap())
    };
    assert_eq!(at(14, TODAY), (false, (day(TODAY), Start::BeforeCutOff(cut_off))));
    assert_eq!(at(16, TODAY), (true, (day("2026-11-26"), Start::PastCutOff)));
    // A Saturday: the time of day says nothing.
    assert_eq!(at(14, "2026-11-28"), (false, (day("2026-11-30"), Start::OfTheOrder)));
}

#[test]
fn what_wants_to_be_read_first() {
    let asking = Asking::new();
    let said = |text: &str| say::dates_cautions(&asking.ask(wedding(text)));
    assert_eq!(said("May 2027"), ["Counted from Sat 1 May 2027, the earliest day it can be."]);
    assert_eq!(
        said("Good Friday 2027".replace("Good Friday", "26 March").as_str()),
        ["The wedding is on Good Friday: nobody delivers or mends anything that day."]
    );
    assert_eq!(said("27 March 2027"), [""; 0], "a Saturday is no reason to speak");
    assert!(said("22 May 2032")[0].contains("are a projection"), "{:?}", said("22 May 2032"));
    // Half a year too late: the day in hand is past, and of it nothing is said.
    let late = asking.ask(wedding("5 December 2026"));
    assert!(matches!(late.countdown.as_ref().unwrap().slack, Slack::Late(days) if days > WorkingDays(0)));
    assert!(late.is_in_hand_past() && !say::dates_headline(&late).lines.iter().any(|it| it.contains("in hand by")));
    assert!(reason(&late, "In hand by").1.starts_with("already past"));
}

#[test]
fn a_step_says_what_it_costs_and_making_does_not() {
    let found = Asking::new().ask(|it| it.with(form::WEDDING, "22 May 2027").with(form::EXTRAS, "marking,engraving"));
    let costs: Vec<bool> = found
        .reasons()
        .iter()
        .filter_map(|it| if let Reason::Step(step) = it { Some(step.cost.is_some()) } else { None })
        .collect();
    assert_eq!(costs, [false, true, true]);
    assert!(reason(&found, "Engraving").1.contains("without it"), "{:?}", reason(&found, "Engraving"));
    assert_eq!(found.extras(), 2);
    assert_eq!(say::dates_summary(&found), "Sat 22 May 2027 · England and Wales · making 15 to 20 · 2 extras");
}

#[test]
fn an_extra_is_ticked_and_unticked_by_its_word() {
    let ticked = form::with_extra("", "marking", true);
    let both = form::with_extra(&ticked, "engraving", true);
    assert_eq!(both, "marking,engraving");
    assert!(form::has_extra(&both, "engraving") && !form::has_extra(&both, "engrav"));
    assert_eq!(form::with_extra(&both, "marking", false), "engraving");
    assert_eq!(form::with_extra(&both, "marking", true), "engraving,marking", "once");
}

/// One figure, one function: the countdown of a couple is the plan that their page shows, and its calendar is the same.
#[test]
fn a_couples_plan_says_the_same() {
    let on = Wedding::Day(day("2027-05-22"));
    let mut asking = Asking::of_a_couple(vec![Write::set(Field::Wedding, Value::Wedding(on))]);
    let visit = |day_of| bandwright::book::value::When { day: day(day_of), time: None };
    let told = asking.told.as_mut().unwrap();
    told.say(verbs::book(ItemId(7), visit("2027-01-14"), None));
    told.say(verbs::book(ItemId(8), visit("2027-06-14"), None));
    let (found, context) = (asking.ask(|texts| texts), asking.context());
    let couple = context.couple.unwrap();
    let plan = progress::plan(couple, context.practice, &asking.own, context.today).unwrap();
    assert_eq!(found.countdown.as_ref().map(|it| &it.plan), Some(&plan));
    let ahead = progress::ahead(couple, context.practice, &asking.own, context.today, false).unwrap();
    assert_eq!(found.ahead.as_ref(), Some(&ahead));
    let days = say_ahead::days(&ahead);
    let appointments = days.iter().filter(|it| it.name == say_ahead::APPOINTMENT);
    assert_eq!(
        appointments.map(|it| it.amount.as_str()).collect::<Vec<_>>(),
        ["Thu 14 Jan 2027"],
        "none after the wedding"
    );
    assert!(calendar(&ahead).svg.contains("order by Thu 8 Apr 2027"));
}

#[test]
fn what_is_written_reads_back_as_it_was() {
    let mut asking = Asking::of_a_couple(vec![]);
    let change = |it: Texts| {
        it.with(form::WEDDING, "22 May 2027")
            .with(form::MOST, "25")
            .with(form::EXTRAS, "engraving")
            .with(form::CONFIDENCE, "90")
    };
    let found = asking.ask(change);
    let writes = found.writes(None);
    assert_eq!(writes.iter().map(|it| it.field.clone()).collect::<Vec<_>>(), [Field::Wedding, Field::Dates]);
    assert_eq!(found.writes(found.typed.wedding).len(), 1, "a wedding that is known is not written again");
    let told = asking.told.as_mut().unwrap();
    told.say(writes);
    let settled = told.couple().dates().cloned().unwrap();
    assert_eq!((settled.confidence, settled.settled), (Some(Percent(90)), day(TODAY)));
    assert_eq!(Some(settled.order_by), found.order_by());
    assert_eq!(asking.ask(|texts| texts), found, "opened again it says the same");
    // The chance is written down only where it is not the practice's own.
    let usual = Asking::of_a_couple(vec![]).ask(wedding("22 May 2027"));
    let Some(Value::Dates(settled)) = usual.writes(None).pop().and_then(|it| it.value) else { panic!("no dates") };
    assert_eq!(settled.confidence, None);
}

#[test]
fn a_wedding_that_is_no_day_is_typed_as_it_reads() {
    let asking = Asking::new();
    for on in
        [Wedding::Day(day("2027-05-22")), Wedding::Month { year: 2027, month: 5 }, Wedding::Year(2027), Wedding::NotYet]
    {
        let read = asking.read(|it| it.with(form::WEDDING, say::wedding_typed(on)));
        assert_eq!(read.0.wedding, Some(on));
    }
    let (typed, complaints) = asking.read(wedding("31/2/2027"));
    assert!(matches!(complaints.as_slice(), [(form::WEDDING, Complaint::Date(..))]) && typed.wedding.is_none());
}

proptest! {
    /// A tool that is opened from a couple reads from its texts what is recorded, as far as the form takes it.
    #[test]
    fn what_is_recorded_is_what_is_asked(dates in arbitrary::dates::dates()) {
        let takes = dates.in_hand.0 <= 366 && dates.confidence.is_none_or(|it| (50..=100).contains(&it.0));
        let asking = Asking::of_a_couple(vec![Write::set(Field::Dates, Value::Dates(dates))]);
        let (typed, complaints) = asking.read(wedding("22 May 2027"));
        prop_assert_eq!(complaints.is_empty(), takes, "{:?}", complaints);
        if let Some(asked) = typed.asked() {
            let recorded = Asked::of(asking.context().couple.unwrap(), asking.context().practice);
            prop_assert_eq!(asked.making, recorded.making);
            prop_assert_eq!((asked.region, asked.in_hand, asked.confidence), (recorded.region, recorded.in_hand, recorded.confidence));
        }
    }
}
