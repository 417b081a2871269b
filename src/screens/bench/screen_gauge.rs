//! A ring on the glass: the screen is told its size once, then a circle is matched to a ring.
//!
//! What is drawn here MUST keep its own size, and nothing is answered on a screen that was not calibrated as it is now.
//! The picture does not react to touch: a ring or a card that is laid on it would move it.

use std::time::Duration;

use crate::parts::el::{el, live, maybe, value_of};
use crate::parts::lay::{all, block, column, para};
use leptos::prelude::*;

use super::{Opened, Whose};
use crate::answers::Tone;
use crate::app::address::{Address, Calculator, with_query};
use crate::app::device::{Display, display};
use crate::app::form::Form;
use crate::app::state::App;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::parts::reasons::reasons;
use crate::pictures::glass::{Patch, glass};
use crate::screens::couple::write_down_from_glass;
use crate::storage::preferences;
use crate::trade::glass::{Measured, Pixels, Ratio, Screen, Thing};
use crate::trade::measure::Length;
use crate::trade::sizing;
use crate::words::answer::Headline;
use crate::words::answer::{Reason, reason};
use crate::words::{bench as say, book as say_book, format, sizing as say_sizing};

/// Wider than this nothing is drawn: the page's column.
const WIDEST: f64 = 640.0;
/// What the circle starts with: UK N, between most fingers.
const START: Length = Length::tenthousandths(17_1000);
/// How often the screen is looked at: it does not tell by itself that it was pinched or moved.
const LOOK: Duration = Duration::from_millis(400);

/// What the page does: as the screen is now.
#[derive(Clone, PartialEq)]
enum Mode {
    Enlarged,
    Calibrating { display: Display, known: Option<Screen> },
    Measuring { display: Display, screen: Screen },
}

pub fn screen_gauge(opened: Opened) -> AnyView {
    let seen = RwSignal::new(display());
    let looking = set_interval_with_handle(move || seen.set(display()), LOOK).ok();
    on_cleanup(move || {
        if let Some(looking) = looking {
            looking.clear();
        }
    });
    let first = Thing::ALL.into_iter().find(|thing| thing.fits(room(&seen.get_untracked())));
    let form = opened.form(vec![
        ("with", first.map(|thing| thing.row().code.to_owned()).unwrap_or_default()),
        ("circle", String::new()),
    ]);
    let anew = RwSignal::new(false);
    // Where the phone keeps nothing, until the page is left.
    let told = RwSignal::new(None::<(Display, Screen)>);
    let now = Memo::new(move |_| seen.get());
    let mode = Memo::new(move |_| {
        let display = now.get();
        if display.enlarged {
            return Mode::Enlarged;
        }
        let known = told.get().filter(|(of, _)| *of == display).map(|(_, screen)| screen).or_else(|| known(&display));
        match known {
            Some(screen) if !anew.get() => Mode::Measuring { display, screen },
            known => Mode::Calibrating { display, known },
        }
    });
    let app = opened.app;
    let span = RwSignal::new(String::new());
    // A patch that nobody has matched with anything says nothing of the screen.
    let matched = RwSignal::new(false);
    let content = live(move || match mode.get() {
        Mode::Enlarged => para("caution", say::ENLARGED),
        Mode::Calibrating { display, known } => calibrating(form, (span, matched), display, known),
        Mode::Measuring { display, screen } => measuring(app, form, &display, screen, anew),
    });
    let keep = move || {
        let Mode::Calibrating { display, .. } = mode.get_untracked() else { return };
        if !matched.get_untracked() {
            return app.say(say::MATCH_FIRST.to_owned());
        }
        let thing = form.text("with").with_untracked(|code| Thing::from_code(code));
        let pixels = span.with_untracked(|text| pixels(text));
        let screen = thing.zip(pixels).and_then(|(thing, span)| Screen::new(thing, span, ratio(&display)));
        if let Some(screen) = screen {
            let said = format!("{} {}", screen.thing().row().code, screen.span().0);
            if !preferences::keep_calibration(&display.screen, &kept_ratio(&display), &said) {
                app.say(say::KEPT_NOT.to_owned());
            }
            told.set(Some((display, screen)));
            anew.set(false);
            to_picture();
        }
    };
    let whose = opened.whose;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let action = maybe(move || match mode.get() {
        Mode::Enlarged => None,
        Mode::Calibrating { .. } => Some(button(Weight::Primary, say::IT_FITS, keep)),
        Mode::Measuring { screen, .. } => Some(next(form, screen, whose, &name)),
    });
    page(opened.head(), content, Some(action))
}

/// From nothing, or from what is known, to a screen that knows its size.
fn calibrating(
    form: Form,
    (span, matched): (RwSignal<String>, RwSignal<bool>),
    display: Display,
    known: Option<Screen>,
) -> AnyView {
    let room = room(&display);
    let with = form.text("with");
    let why = match &known {
        Some(_) => para("small", say::ZOOM_UNTOLD),
        None if preferences::was_calibrated(&display.screen) => para("caution", say::WAS_OTHERWISE),
        None => para("", say::NOT_CALIBRATED),
    };
    let fitting = Thing::ALL.into_iter().filter(|thing| thing.fits(room));
    let options = fitting.map(|thing| option(thing.row().code, say::thing(thing))).collect();
    let patch = live(move || {
        let Some(thing) = with.with(|code| Thing::from_code(code)) else { return para("", say::ROOM_ONLY) };
        let start = match known {
            Some(screen) if screen.thing() == thing => screen.span(),
            _ => thing.usual(),
        };
        span.set(start.min(room).0.to_string());
        matched.set(false);
        let drawn = Signal::derive(move || {
            let wide = span.with(|text| pixels(text)).unwrap_or_default();
            let patch = match thing {
                Thing::CardShort | Thing::CardLong => Patch::Card { wide, long_side: thing == Thing::CardLong },
                Thing::TwoEuro | Thing::OneEuro | Thing::TwoPence | Thing::TenPence | Thing::UsQuarter => {
                    Patch::Disc(wide)
                }
            };
            glass(patch, room, &say::patch_drawn(thing)).svg
        });
        let spoken = Signal::derive(move || span.with(|text| pixels(text)).map(in_pixels).unwrap_or_default());
        let ends = (Pixels(start.min(room).0 / 2), room);
        all(vec![
            on_glass(drawn),
            slide((span, matched), say::MATCH_PATCH, ends, ratio(&display).step(), spoken),
            para("", if thing.is_card() { say::LAY_CARD } else { say::LAY_COIN }),
            para("small", say::thing_known(thing)),
        ])
    });
    // What is pressed while a card lies on the glass comes right under it.
    column(vec![
        why,
        block("column near", vec![patch]),
        choice("with", say::WITH, Shape::Chips, options, with),
        para("small", say::ROOM_ONLY),
    ])
}

fn measuring(app: App, form: Form, display: &Display, screen: Screen, anew: RwSignal<bool>) -> AnyView {
    let circle = form.text("circle");
    let room = room(display);
    let (least, most) = screen.circles();
    let most = most.min(room);
    let inside = circle.with_untracked(|text| pixels(text)).filter(|it| (least..=most).contains(it));
    let start = inside.unwrap_or_else(|| screen.pixels(START).min(most)).0.to_string();
    if circle.with_untracked(|text| *text != start) {
        circle.set(start);
    }
    let wide = move || circle.with(|text| pixels(text)).unwrap_or_default();
    let found = Memo::new(move |_| screen.measured(wide()));
    let drawn = Signal::derive(move || glass(Patch::Disc(wide()), room, &say::circle_drawn(screen.length(wide()))).svg);
    let spoken = Signal::derive(move || say::across(screen.length(wide())));
    let said = Signal::derive(move || found.get().map(|found| said(app, &found)).unwrap_or_else(nothing_said));
    let why = Signal::derive(move || found.get().map(|found| why(&screen, &found)).unwrap_or_default());
    let to_size = Signal::derive(move || {
        let query = [("q".to_owned(), found.get().map(|found| say::typed_across(found.across)).unwrap_or_default())];
        with_query(Address::Calculator(Calculator::Size), &query)
    });
    column(vec![
        block(
            "column near",
            vec![
                on_glass(drawn),
                slide((circle, RwSignal::new(false)), say::MATCH_CIRCLE, (least, most), ratio(display).step(), spoken),
                answer("glass-size", say::SIZE, said),
                para("", say::LAY_RING),
            ],
        ),
        reasons(why),
        para("small", say::NO_JEWELLERS_GAUGE),
        block(
            "row",
            vec![
                link_button(Weight::Quiet, say::IN_EVERY_SYSTEM, to_size),
                button(Weight::Quiet, say::CALIBRATE_ANEW, move || {
                    anew.set(true);
                    to_picture();
                }),
            ],
        ),
        para("small", say::ZOOM_UNTOLD),
    ])
}

/// What is laid on is at the top of the page.
fn to_picture() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// The picture at its own size.
fn on_glass(svg: Signal<String>) -> AnyView {
    el("figure").class("glass").html(svg.into()).view()
}

/// A slide and four buttons that make a patch smaller and larger, by one pixel of the screen at the least.
fn slide(
    (value, touched): (RwSignal<String>, RwSignal<bool>),
    label: &'static str,
    (least, most): (Pixels, Pixels),
    step: Pixels,
    spoken: Signal<String>,
) -> AnyView {
    let by = move |steps: i64| {
        touched.set(true);
        let now = value.with_untracked(|text| pixels(text)).unwrap_or_default();
        value.set((now.0 + steps * step.0).min(most.0).max(least.0).to_string());
    };
    let one = |sign: &'static str, name: &'static str, steps: i64| {
        el("button")
            .attr("type", "button")
            .class("button quiet")
            .attr("aria-label", name)
            .on("click", move |_| by(steps))
            .text(sign)
            .view()
    };
    let input = el("input")
        .attr("type", "range")
        .attr("id", "match")
        .attr("name", "match")
        .attr("min", least.0.to_string())
        .attr("max", most.0.to_string())
        .attr("step", step.0.to_string())
        .words_attr("aria-valuetext", spoken.into())
        .live_value(move || value.get())
        .on("input", move |event| {
            touched.set(true);
            value.set(value_of(&event));
        });
    block(
        "glass-match",
        vec![
            el("label").class("field-label").attr("for", "match").text(label).view(),
            input.view(),
            block(
                "glass-buttons",
                vec![
                    one("−−", say::MUCH_SMALLER, -10),
                    one("−", say::SMALLER, -1),
                    one("+", say::LARGER, 1),
                    one("++", say::MUCH_LARGER, 10),
                ],
            ),
        ],
    )
}

fn said(app: App, found: &Measured) -> Headline {
    let (system, step) = app.practice(|practice| (practice.first_system(), practice.step()));
    let nearest = sizing::nearest(system, found.round, step).size;
    let within = sizing::within(system, found.low..=found.high, step);
    let mut names: Vec<String> = within.into_iter().map(say_sizing::size_name).collect();
    if names.is_empty() {
        names.push(say_sizing::size_name(nearest));
    }
    Headline { figure: say_sizing::size_name(nearest), lines: say::measured(found, &names), tone: Tone::Act }
}

fn nothing_said() -> Headline {
    Headline { figure: String::new(), lines: Vec::new(), tone: Tone::Care }
}

fn why(screen: &Screen, found: &Measured) -> Vec<Reason> {
    let mut sum = reason(say::GIVE_OR_TAKE, format::mm(found.u, 2), say::GIVE_OR_TAKE_WHY);
    sum.sum = true;
    vec![
        reason(say::PIXEL, format::mm(screen.finest(), 3), say::PIXEL_WHY),
        reason(say::BY_EYE, format::mm(found.u_match, 2), say::BY_EYE_WHY),
        reason(say::calibrated_by(screen), format::mm(found.u_screen, 2), say::calibrated_why(screen)),
        sum,
    ]
}

/// What the size is for: a reading of whom it was opened for, or an order size.
fn next(form: Form, screen: Screen, whose: Option<Whose>, name: &str) -> AnyView {
    let circle = form.text("circle");
    let found = move || circle.with(|text| pixels(text)).and_then(|wide| screen.measured(wide));
    match whose {
        Some(Whose { id, who }) => button(Weight::Primary, say::write_down(name), move || {
            if let Some(found) = untrack(found) {
                write_down_from_glass(id, who, say::typed_across(found.across), found.u);
            }
        }),
        None => {
            let href = Signal::derive(move || {
                let (size, error) = found()
                    .map(|found| (say::typed_across(found.across), say::typed_error(found.u)))
                    .unwrap_or_default();
                let query = [
                    ("size", size),
                    ("gauge", "other".to_owned()),
                    ("gauge-kind", "set".to_owned()),
                    ("gauge-error", error),
                ];
                let query = query.map(|(name, text)| (name.to_owned(), text));
                with_query(Address::Calculator(Calculator::Order), &query)
            });
            link_button(Weight::Primary, say::ORDER_FROM_THIS, href)
        }
    }
}

/// How this screen was calibrated as it is now.
fn known(display: &Display) -> Option<Screen> {
    let said = preferences::calibration(&display.screen, &kept_ratio(display))?;
    let (code, span) = said.split_once(' ')?;
    Screen::new(Thing::from_code(code)?, pixels(span)?, ratio(display))
}

fn ratio(display: &Display) -> Ratio {
    Ratio::new(display.ratio)
}

/// As the calibration is kept under it.
fn kept_ratio(display: &Display) -> String {
    ratio(display).0.to_string()
}

fn room(display: &Display) -> Pixels {
    Pixels::new(display.room.min(WIDEST))
}

fn pixels(text: &str) -> Option<Pixels> {
    text.trim().parse().ok().map(Pixels)
}

fn in_pixels(of: Pixels) -> String {
    say::pixels(of.0 / 1_000)
}
