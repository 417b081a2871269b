//! A gauge to print, and what its readings are once the print was measured.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::lay::{all, block, column, para};
use leptos::prelude::*;

use super::Opened;
use super::sheet::{Complaints, Sheet, judge, read_optional};
use crate::answers::Tone;
use crate::app::address::{Address, Calculator, with_query};
use crate::app::form::Form;
use crate::app::state::App;
use crate::forms::SizeTyped;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option, pick};
use crate::parts::details::details;
use crate::parts::page::page;
use crate::pictures::ladder::Named;
use crate::pictures::paper::{self, Paper, WIDE_STRIP};
use crate::trade::limits::Limit;
use crate::trade::measure::{Circumference, Length};
use crate::trade::paper::{Print, Verdict};
use crate::trade::sizing::{self, Size, Step, System};
use crate::words::answer::Headline;
use crate::words::complaint::complaint;
use crate::words::lengths::plain;
use crate::words::{bench as say, screens, sizing as say_sizing};

/// The size that a print which is not true is explained with.
const EXAMPLE: Circumference = round(54);
/// The sizes on the strip, and those with a circle.
const STRIP: (Circumference, Circumference) = (round(40), round(78));
const CIRCLES: (Circumference, Circumference) = (round(44), round(72));

const fn round(mm: i64) -> Circumference {
    Circumference(Length::tenthousandths(mm * 10_000))
}

/// What was typed about a print, and what it comes to.
#[derive(Clone, Debug, Default, PartialEq)]
struct Found {
    complaints: Complaints,
    typed: SizeTyped,
    print: Option<Print>,
    by_strip: bool,
}

impl Found {
    fn verdict(&self) -> Option<Verdict> {
        self.print.map(|print| print.verdict())
    }

    /// The size put right and how sure it is; none on a print that has to be made again.
    fn right(&self) -> Option<(Circumference, Length)> {
        let print = self.print.filter(|print| !matches!(print.verdict(), Verdict::PrintAgain { .. }))?;
        let read = self.typed.meant()?.circumference();
        Some(if self.by_strip {
            let finger = print.finger(read);
            (finger, print.finger_u(finger))
        } else {
            let ring = print.ring(read.diameter()).circumference();
            (ring, print.ring_u(ring))
        })
    }
}

pub fn paper_gauge(opened: Opened) -> AnyView {
    let app = opened.app;
    let first = app.practice(|practice| practice.first_system());
    let form = opened.form(vec![
        ("first", first.code().to_owned()),
        ("paper", "a4".to_owned()),
        ("line", String::new()),
        ("by", "strip".to_owned()),
        ("read", String::new()),
        ("as", String::new()),
    ]);
    let found = Memo::new(move |_| read(form));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|found| found.complaints.clone())));
    let systems = System::ALL.map(|it| (it.code().to_owned(), say_sizing::system_name(it).to_owned()));
    let papers = vec![option("a4", "A4"), option("a6", "A6")];
    let content = column(vec![
        block(
            "column unprinted",
            vec![
                para("caution", say::PAPER_NOTE),
                pick("first", say::TABLE_OF, systems.to_vec(), form.text("first")),
                choice("paper", say::PAPER, Shape::Segments, papers, form.text("paper")),
                details(say::PUT_RIGHT, put_right(app, sheet, found)),
            ],
        ),
        live(move || drawn(form)),
    ]);
    let print = button(Weight::Primary, say::PRINT, || {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    page(opened.head(), content, Some(print))
}

/// The print is measured, and then what was read on it is put right.
fn put_right(app: App, sheet: Sheet, found: Memo<Found>) -> AnyView {
    let form = sheet.form;
    let ways = vec![option("strip", say::BY_STRIP), option("circle", say::BY_CIRCLE)];
    let verdict = move || {
        found.with(Found::verdict).map(|verdict| {
            let class = if matches!(verdict, Verdict::PrintAgain { .. }) { "caution" } else { "" };
            para(class, say::verdict(verdict))
        })
    };
    let typed = Signal::derive(move || found.with(|found| found.typed.clone()));
    let field = sheet.field("read", say::PAPER_READ).hint(screens::READ_SIZE_HINT).enter("done");
    let there = Memo::new(move |_| found.with(Found::right));
    let said = Signal::derive(move || said(app, form, there.get(), found.with(|found| found.by_strip)));
    let to_order = Signal::derive(move || {
        let (size, error) = there.get().map(|(at, u)| (say::typed_round(at), say::typed_error(u))).unwrap_or_default();
        let width = if found.with(|found| found.by_strip) { plain(WIDE_STRIP) } else { String::new() };
        let query = [
            ("size", size),
            ("gauge", "other".to_owned()),
            ("gauge-kind", "set".to_owned()),
            ("gauge-width", width),
            ("gauge-error", error),
        ];
        with_query(Address::Calculator(Calculator::Order), &query.map(|(name, text)| (name.to_owned(), text)))
    });
    all(vec![
        para("small", say::one_percent_is(EXAMPLE)),
        sheet.mm("line", say::PRINTED_LINE).hint(say::PRINTED_LINE_HINT).line(),
        maybe(verdict),
        choice("by", say::READ_ON_IT, Shape::Segments, ways, form.text("by")),
        sheet.size("read", "as", field, typed),
        maybe(move || {
            there.get().map(|_| {
                all(vec![
                    answer("paper-size", say::PUT_RIGHT, said),
                    link_button(Weight::Quiet, say::ORDER_FROM_THIS, to_order),
                ])
            })
        }),
        sheet.afresh(say::AFRESH),
    ])
}

fn read(form: Form) -> Found {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let line = judge(&mut complaints, "line", read_optional(&text("line"), Limit::ControlLine)).flatten();
    let typed = match text("read") {
        blank if blank.trim().is_empty() => SizeTyped::default(),
        typed => {
            let read = SizeTyped::read(&typed, &text("as"), system(form)).map_err(|what| complaint(&what));
            judge(&mut complaints, "read", read).unwrap_or_default()
        }
    };
    Found { complaints, typed, print: line.map(Print::new), by_strip: text("by") == "strip" }
}

fn system(form: Form) -> System {
    form.text("first").with(|code| System::from_code(code)).unwrap_or(System::Uk)
}

fn said(app: App, form: Form, right: Option<(Circumference, Length)>, by_strip: bool) -> Headline {
    let Some((right, u)) = right else {
        return Headline { figure: String::new(), lines: Vec::new(), tone: Tone::Care };
    };
    let step = app.practice(|practice| practice.step());
    let nearest = sizing::nearest(system(form), right, step).size;
    Headline { figure: say_sizing::size_name(nearest), lines: say::put_right(right, u, by_strip), tone: Tone::Act }
}

fn drawn(form: Form) -> AnyView {
    let system = system(form);
    let (paper, class) = match form.text("paper").with(|paper| paper == "a6") {
        true => (Paper::A6, "sheet paper-a6"),
        false => (Paper::A4, "sheet paper-a4"),
    };
    let named = |size: Size| Named { at: size.circumference(), label: say::on_sheet(size) };
    let sizes = sizing::within(system, STRIP.0..=STRIP.1, Step::Half).into_iter().map(|size| Named {
        label: if size.is_on(Step::Whole) { say::on_sheet(size) } else { String::new() },
        ..named(size)
    });
    let step = if paper == Paper::A6 { Step::Whole } else { Step::Half };
    let circles = sizing::within(system, CIRCLES.0..=CIRCLES.1, step).into_iter().map(named);
    let sheet = paper::Sheet {
        paper,
        scale: say_sizing::system_name(system).to_owned(),
        sizes: sizes.collect(),
        circles: circles.collect(),
    };
    let end = paper::circles_end(&sheet).filter(|_| paper == Paper::A6);
    let end = end.map(|size| block("unprinted", vec![para("small", say::circles_end(&size.label, size.at))]));
    all(vec![or_nothing(end), el("figure").class(class).html(paper::sheet(&sheet).svg.into()).view()])
}
