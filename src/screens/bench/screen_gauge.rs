//! A ring on the glass: the screen is told its size once, then a circle is matched to a ring.
//!
//! What is drawn here MUST keep its own size, and nothing is answered on a screen that was not calibrated as it is now.
//! The picture does not react to touch: a ring or a card that is laid on it would move it.

use std::time::Duration;

use crate::parts::el::{el, live, maybe, value_of};
use crate::parts::layout::{all, block, column, para};
use leptos::prelude::*;

use super::{Opened, Opener, asking};
use crate::answers::screen_gauge::{ScreenAnswer, Slide, State, answer as compute, circle, patch, state, things};
use crate::app::address::Calculator;
use crate::app::device::{Display, display};
use crate::app::form::Form;
use crate::app::state::App;
use crate::forms::screen_gauge::{self as form_of, CIRCLE, WITH, read_pixels};
use crate::forms::{order, size, write};
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::page::page;
use crate::parts::reasons::reasons;
use crate::pictures::glass;
use crate::screens::shell::from_glass::write_down_from_glass;
use crate::storage::preferences;
use crate::trade::glass::{Pixels, Ratio, Screen};
use crate::words::answer::Headline;
use crate::words::{bench as say, book as say_book};

/// Wider than this nothing is drawn: the page's column.
const WIDEST: f64 = 640.0;
/// How often the screen is looked at: it does not tell by itself that it was pinched or moved.
const LOOK: Duration = Duration::from_millis(400);

/// A patch or circle as it is made wider and narrower: its width, and whether anybody has moved it.
#[derive(Clone, Copy)]
struct Moved {
    wide: RwSignal<String>,
    touched: RwSignal<bool>,
}

impl Moved {
    fn pixels(self) -> Option<Pixels> {
        self.wide.with(|text| read_pixels(text))
    }
}

pub fn screen_gauge(opened: Opened) -> AnyView {
    let seen = RwSignal::new(display());
    let looking = set_interval_with_handle(move || seen.set(display()), LOOK).ok();
    on_cleanup(move || {
        if let Some(looking) = looking {
            looking.clear();
        }
    });
    let form = opened.form(form_of::start(room(&seen.get_untracked())).into_pairs());
    let anew = RwSignal::new(false);
    // Where the phone keeps nothing, until the page is left.
    let told = RwSignal::new(None::<(Display, Screen)>);
    let now = Memo::new(move |_| seen.get());
    let mode = Memo::new(move |_| {
        let display = now.get();
        let known = told.get().filter(|(of, _)| *of == display).map(|(_, screen)| screen).or_else(|| known(&display));
        (state(display.enlarged, known, anew.get()), display)
    });
    let app = opened.app;
    // A patch that nobody has matched with anything says nothing of the screen.
    let span = Moved { wide: RwSignal::new(String::new()), touched: RwSignal::new(false) };
    let content = live(move || match mode.get() {
        (State::Enlarged, _) => para("caution", say::ENLARGED),
        (State::Calibrating { known }, display) => calibrating(form, span, display, known),
        (State::Measuring(screen), display) => measuring(app, form, &display, screen, anew),
    });
    let keep = move || {
        let (State::Calibrating { .. }, display) = mode.get_untracked() else { return };
        if !span.touched.get_untracked() {
            return app.say(say::MATCH_FIRST.to_owned());
        }
        let screen = untrack(|| form_of::screen(&form.texts(), span.pixels(), ratio(&display)));
        if let Some(screen) = screen {
            let said = form_of::calibration(&screen);
            if !preferences::keep_calibration(&display.screen, &kept_ratio(&display), &said) {
                app.say(say::KEPT_NOT.to_owned());
            }
            told.set(Some((display, screen)));
            anew.set(false);
            to_picture();
        }
    };
    let opener = opened.opener;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let action = maybe(move || match mode.get().0 {
        State::Enlarged => None,
        State::Calibrating { .. } => Some(button(Weight::Primary, say::IT_FITS, keep)),
        State::Measuring(screen) => Some(next(app, form, screen, opener, &name)),
    });
    page(opened.head(), content, Some(action))
}

/// From nothing, or from what is known, to a screen that knows its size.
fn calibrating(form: Form, span: Moved, display: Display, known: Option<Screen>) -> AnyView {
    let room = room(&display);
    let why = match &known {
        Some(_) => para("small", say::ZOOM_UNTOLD),
        None if preferences::was_calibrated(&display.screen) => para("caution", say::WAS_OTHERWISE),
        None => para("", say::NOT_CALIBRATED),
    };
    let options = things(room).into_iter().map(|thing| option(thing.row().code, say::thing(thing))).collect();
    let thing = Memo::new(move |_| form_of::thing(&form.texts()));
    let laid_on = live(move || {
        let Some(thing) = thing.get() else { return para("", say::ROOM_ONLY) };
        let slide = patch(thing, known.as_ref(), room, ratio(&display));
        span.wide.set(form_of::pixels(slide.start));
        span.touched.set(false);
        let drawn = Signal::derive(move || glass::patch(thing, span.pixels().unwrap_or_default(), room).svg);
        let spoken = Signal::derive(move || span.pixels().map(say::patch_wide).unwrap_or_default());
        all(vec![
            on_glass(drawn),
            slider(span, say::MATCH_PATCH, slide, spoken),
            para("", if thing.is_card() { say::LAY_CARD } else { say::LAY_COIN }),
            para("small", say::thing_known(thing)),
        ])
    });
    // What is pressed while a card lies on the glass comes right under it.
    column(vec![
        why,
        block("column near", vec![laid_on]),
        choice(WITH.name(), say::WITH, Shape::Chips, options, form.text(WITH)),
        para("small", say::ROOM_ONLY),
    ])
}

fn measuring(app: App, form: Form, display: &Display, screen: Screen, anew: RwSignal<bool>) -> AnyView {
    let room = room(display);
    let wide = Moved { wide: form.text(CIRCLE), touched: RwSignal::new(false) };
    let slide = circle(&screen, untrack(|| wide.pixels()), room, ratio(display));
    let start = form_of::pixels(slide.start);
    if wide.wide.with_untracked(|text| *text != start) {
        wide.wide.set(start);
    }
    let pixels = move || wide.pixels().unwrap_or_default();
    let found = Memo::new(move |_| found(app, form, screen));
    let drawn = Signal::derive(move || glass::circle(&screen, pixels(), room).svg);
    let spoken = Signal::derive(move || say::circle_wide(&screen, pixels()));
    let said = Signal::derive(move || found.with(|it| it.as_ref().map_or_else(Headline::none, say::glass_headline)));
    let why = Signal::derive(move || found.with(|it| it.as_ref().map(say::glass_reasons).unwrap_or_default()));
    let to_size = Signal::derive(move || {
        let across = found.with(|it| it.as_ref().map(|it| write::size_in_mm(it.found.across.0)));
        asking(Calculator::Size, size::of(across.unwrap_or_default()))
    });
    column(vec![
        block(
            "column near",
            vec![
                on_glass(drawn),
                slider(wide, say::MATCH_CIRCLE, slide, spoken),
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

/// The ring that the circle is matched to; none if no ring is that wide.
fn found(app: App, form: Form, screen: Screen) -> Option<ScreenAnswer> {
    let wide = form.text(CIRCLE).with(|text| read_pixels(text)).unwrap_or_default();
    let (system, step) = app.practice(|practice| (practice.first_system(), practice.step()));
    compute(screen, wide, system, step)
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
fn slider(moved: Moved, label: &'static str, slide: Slide, spoken: Signal<String>) -> AnyView {
    let Moved { wide, touched } = moved;
    let by = move |steps: i64| {
        touched.set(true);
        let now = untrack(|| moved.pixels()).unwrap_or_default();
        wide.set(form_of::pixels(slide.moved(now, steps)));
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
        .attr("min", form_of::pixels(slide.least))
        .attr("max", form_of::pixels(slide.most))
        .attr("step", form_of::pixels(slide.step))
        .words_attr("aria-valuetext", spoken.into())
        .live_value(move || wide.get())
        .on("input", move |event| {
            touched.set(true);
            wide.set(value_of(&event));
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

/// What the size is for: a reading of whom it was opened for, or an order size.
fn next(app: App, form: Form, screen: Screen, opener: Option<Opener>, name: &str) -> AnyView {
    let found = move || found(app, form, screen).map(|it| it.found);
    match opener {
        Some(Opener { id, who }) => button(Weight::Primary, say::write_down(name), move || {
            if let Some(found) = untrack(found) {
                write_down_from_glass(id, who, write::size_in_mm(found.across.0), found.u);
            }
        }),
        None => {
            let href = Signal::derive(move || {
                let asked = found().map(|found| order::of_gauge(found.across.0, None, found.u));
                asking(Calculator::Order, asked.unwrap_or_default())
            });
            link_button(Weight::Primary, say::ORDER_FROM_THIS, href)
        }
    }
}

/// How this screen was calibrated as it is now.
fn known(display: &Display) -> Option<Screen> {
    let kept = preferences::calibration(&display.screen, &kept_ratio(display))?;
    form_of::read_calibration(&kept, ratio(display))
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
