//! The Bench: its calculators, each usable on its own, and each opened from a couple with the couple's figures.
//!
//! INVARIANT: what a calculator was asked stands in its address and nowhere else; `forms` reads it and `answers` answers
//! it anew whenever that changes. Nothing is kept until a couple's button is pressed.

mod compare;
mod dates;
mod order;
mod paper_gauge;
mod screen_gauge;
mod sheet;
mod size;
mod stack;
mod table;
mod unsettled;

use crate::parts::el::{live, nothing};
use crate::parts::layout::{all, block, para};
use leptos::prelude::*;

use crate::app::address::{self, Address, Calculator, Query};
use crate::app::form::{Form, Start};
use crate::app::route::{Route, asked as value_of};
use crate::app::seen::Seen;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::forms::Texts;
use crate::parts::line::{line, lines};
use crate::parts::page::{PageHeader, page};
use crate::screens::shell::couple_page::not_here;
use crate::storage::preferences;
use crate::trade::wearer::Wearer;
use crate::words::{bench as say, book as say_book, screens};

/// The list of them, with what each answers.
pub fn bench() -> AnyView {
    let row = |which: Calculator| {
        line(name(which), String::new(), Address::Calculator(which).to_string()).small(answers(which))
    };
    let rows = Signal::stored(Calculator::ALL.map(row).to_vec());
    let content = all(vec![block("bench-list", vec![lines(rows)]), para("small", say::BENCH_HOW)]);
    page(PageHeader::new(screens::TOOLS), content, None)
}

/// A calculator. It is set up anew when its address is gone to with another query.
pub fn calculator(which: Calculator) -> AnyView {
    let app = app();
    let route: Route = expect_context();
    let shown = move || {
        let (address, asked) = route.arrived();
        if address != Address::Calculator(which) {
            return nothing();
        }
        untrack(|| match Opened::new(app, which, asked) {
            None => not_here(),
            Some(opened) => {
                // It starts from the couple's figures as they are now, and replaces no later ones by the way.
                if let Some(Opener { id, .. }) = opened.opener {
                    Seen::couple(app, id);
                }
                match which {
                    Calculator::Size => size::size(opened),
                    Calculator::Table => table::table(opened),
                    Calculator::Order => order::order(opened),
                    Calculator::Stack => stack::stack(opened),
                    Calculator::Compare => compare::compare(opened),
                    Calculator::Dates => dates::dates(opened),
                    Calculator::ScreenGauge => screen_gauge::screen_gauge(opened),
                    Calculator::PaperGauge => paper_gauge::paper_gauge(opened),
                }
            }
        })
    };
    live(shown)
}

/// A calculator as it was opened: what it is asked, and for whom.
struct Opened {
    app: App,
    which: Calculator,
    opener: Option<Opener>,
    asked: Query,
}

/// The couple, and which of the two, that a calculator was opened for.
#[derive(Clone, Copy)]
struct Opener {
    id: RecordId,
    who: Wearer,
}

impl Opened {
    /// None if it is for a couple that is not here.
    fn new(app: App, which: Calculator, asked: Query) -> Option<Opened> {
        let Some(id) = value_of(&asked, "couple") else {
            return Some(Opened { app, which, opener: None, asked: remembered(which, asked) });
        };
        let id = RecordId::parse(id)?;
        let known = app.couple(id, |couple| !couple.is_blank()).unwrap_or(false);
        let who = value_of(&asked, "who").and_then(Wearer::from_code).unwrap_or(Wearer::First);
        known.then_some(Opened { app, which, opener: Some(Opener { id, who }), asked })
    }

    /// Reads the couple it was opened for.
    fn read<T>(&self, read: impl FnOnce(Couple<'_>, Wearer) -> T) -> Option<T> {
        let Opener { id, who } = self.opener?;
        self.app.couple(id, |couple| read(couple, who))
    }

    /// Reads the couple it was opened for, if there is one, and the practice.
    fn known<T>(&self, read: impl FnOnce(Option<(Couple<'_>, Wearer)>, Practice<'_>) -> T) -> T {
        let record = self.opener.and_then(|Opener { id, who }| {
            let record = self.app.couple(id, |couple| couple.0.clone())?;
            Some((record, who))
        });
        self.app.practice(|practice| read(record.as_ref().map(|(record, who)| (Couple(record), *who)), practice))
    }

    /// What the couple lacks of these, each with the way to where it is entered.
    fn missing(&self, topics: impl FnOnce(Couple<'_>, Wearer) -> Vec<Topic>) -> AnyView {
        let all = self.read(|couple, who| {
            let topics = topics(couple, who).into_iter();
            let one = |topic| {
                let href = Address::of_topic(couple.0.id, topic);
                (say::lacking(couple, topic), say_book::do_next(couple, topic), href)
            };
            topics.map(one).collect()
        });
        sheet::missing(all.unwrap_or_default())
    }

    /// The inputs, with the couple's figures or nothing to start from.
    fn form(&self, start: Vec<Start>) -> Form {
        let fixed = self.opener.map_or_else(Vec::new, |Opener { id, who }| {
            let mut fixed = vec![("couple".to_owned(), id.to_string())];
            if self.which != Calculator::Dates {
                fixed.push(("who".to_owned(), who.code().to_owned()));
            }
            fixed
        });
        Form::address(self.which, fixed, &self.asked, start)
    }

    /// The head of the page; the way back leads to the couple or to the Bench.
    fn head(&self) -> PageHeader {
        let head = PageHeader::new(name(self.which).to_owned());
        match self.opener {
            None => head.back(Address::Bench.to_string(), screens::TOOLS),
            Some(Opener { id, .. }) => {
                let names = self.read(|couple, _| say_book::names(couple)).unwrap_or_default();
                head.back(Address::Couple(id).to_string(), names)
            }
        }
    }
}

/// What was asked, or, where nothing is, what was asked the last time.
fn remembered(which: Calculator, asked: Query) -> Query {
    if !asked.is_empty() {
        return asked;
    }
    let last = preferences::last_query(which.code()).unwrap_or_default();
    address::read(&format!("{}?{last}", Address::Calculator(which))).1
}

/// The address of a calculator that is asked this.
fn asking(which: Calculator, asked: Texts) -> String {
    let query: Query = asked.into_pairs().into_iter().map(|(name, text)| (name.to_owned(), text)).collect();
    address::with_query(Address::Calculator(which), &query)
}

fn name(which: Calculator) -> &'static str {
    match which {
        Calculator::Size => say::SIZE_CONVERTER,
        Calculator::Table => say::TABLE,
        Calculator::Order => say::ORDER_SIZE,
        Calculator::Stack => say::STACK,
        Calculator::Compare => say::COMPARE,
        Calculator::Dates => say::COUNTDOWN,
        Calculator::ScreenGauge => say::SCREEN_GAUGE,
        Calculator::PaperGauge => say::PAPER_GAUGE,
    }
}

fn answers(which: Calculator) -> &'static str {
    match which {
        Calculator::Size => say::SIZE_CONVERTER_HOW,
        Calculator::Table => say::TABLE_HOW,
        Calculator::Order => say::ORDER_SIZE_HOW,
        Calculator::Stack => say::STACK_HOW,
        Calculator::Compare => say::COMPARE_HOW,
        Calculator::Dates => say::COUNTDOWN_HOW,
        Calculator::ScreenGauge => say::SCREEN_GAUGE_HOW,
        Calculator::PaperGauge => say::PAPER_GAUGE_HOW,
    }
}
