//! What the calculators share: fields that are read while they are typed in, and where inputs and answer stand.

use crate::parts::el::{el, live, maybe};
use crate::parts::layout::{all, block, para};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::app::form::Form;
use crate::forms::{Key, SizeTyped, reading_codes};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Chosen, Shape, choice, option, tick};
use crate::parts::details::details;
use crate::parts::field::{Field, Keyboard};
use crate::trade::paper::Paper;
use crate::trade::sizing::SizeAsRead;
use crate::words::{bench as say, sizing as say_sizing};

/// What is wrong with which field, in words.
type Complaints = Vec<(&'static str, String)>;

/// The inputs of a calculator, with what is wrong with them.
#[derive(Clone, Copy)]
pub struct Sheet {
    pub form: Form,
    complaints: Signal<Complaints>,
    /// The fields that were left: from then on being empty is something to complain about.
    left: RwSignal<Vec<&'static str>>,
}

impl Sheet {
    pub fn new(form: Form, complaints: Signal<Complaints>) -> Sheet {
        Sheet { form, complaints, left: RwSignal::new(Vec::new()) }
    }

    /// A field whose complaint shows while it is typed in, but not before anything was.
    pub fn field(self, key: &'static str, label: impl Into<String>) -> Field {
        let text = self.form.text(key);
        let complaint = Signal::derive(move || {
            let due = text.with(|text| !text.is_empty()) || self.left.with(|left| left.contains(&key));
            let found = || self.complaints.with(|all| all.iter().find(|(of, _)| *of == key).map(|(_, it)| it.clone()));
            due.then(found).flatten()
        });
        let leave = move || self.left.update(|left| left.push(key));
        Field::new(key, label.into(), text).error(complaint).on_leave(leave)
    }

    /// Whether there is something to complain about in one of these fields that is filled in.
    pub fn complains(self, keys: &'static [Key]) -> Signal<bool> {
        let filled =
            move |key: &str| keys.iter().any(|of| of.name() == key && self.form.text(of).with(|it| !it.is_empty()));
        Signal::derive(move || self.complaints.with(|all| all.iter().any(|(key, _)| filled(key))))
    }

    /// A field for millimetres.
    pub fn mm(self, key: &'static str, label: &str) -> Field {
        self.field(key, label).unit("mm".to_owned()).keyboard(Keyboard::Decimal)
    }

    /// A field for a size, and under it which of its readings is meant where there are several.
    pub fn size(self, key: &'static str, which: &'static str, field: Field, typed: Signal<SizeTyped>) -> AnyView {
        let form = self.form;
        let options = Memo::new(move |_| typed.with(options_of));
        let meant = Memo::new(move |_| typed.with(SizeTyped::code));
        let legend = move || say::which_size(&form.text(key).get());
        let choose = move || {
            let options = options.get();
            (options.len() > 1).then(|| {
                let options = options.into_iter().map(|(code, name)| option(code, name)).collect();
                // What counts is shown as chosen.
                let chosen = Chosen { shown: meant.into(), ..Chosen::from(form.text(which)) };
                choice(which, Signal::derive(legend), Shape::Chips, options, chosen)
            })
        };
        all(vec![field.line(), maybe(choose)])
    }

    /// A box to tick, kept as "yes" or nothing.
    pub fn yes(self, key: &'static str, label: &str, hint: Option<&str>) -> AnyView {
        let text = self.form.text(key);
        let ticked = Signal::derive(move || text.with(|text| text == "yes"));
        let set = Callback::new(move |yes: bool| text.set(if yes { "yes" } else { "" }.to_owned()));
        tick(key, label.to_owned(), hint.map(|hint| hint.to_owned().into()), ticked, set)
    }

    /// Takes everything back to what the calculator started with.
    pub fn afresh(self, label: &'static str) -> AnyView {
        let form = self.form;
        let shown = move || {
            form.is_touched().then(|| {
                button(Weight::Quiet, label.to_owned(), move || {
                    form.reset();
                    self.left.set(Vec::new());
                })
            })
        };
        maybe(shown)
    }
}

/// Each reading with the word that stands for it: its system, and its number where a system has several.
fn options_of(typed: &SizeTyped) -> Vec<(String, String)> {
    let name =
        |reading: &SizeAsRead| say::reading_named(&say_sizing::stated_in_full(reading.stated), reading.circumference());
    reading_codes(&typed.readings).into_iter().zip(typed.readings.iter().map(name)).collect()
}

/// The paper to print on.
pub fn papers(key: Key, form: Form) -> AnyView {
    let options = Paper::ALL.map(|paper| option(paper.code(), say::paper(paper)));
    choice(key.name(), say::PAPER, Shape::Segments, options.into(), form.text(key))
}

/// The one step of what is to be printed.
pub fn print() -> AnyView {
    button(Weight::Primary, say::PRINT, || {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    })
}

/// What stands on the page of a calculator.
pub struct Laid {
    /// What is missing, before anything else.
    pub first: AnyView,
    /// The calculator was opened with an answer: it comes first, and the inputs are folded away under it.
    pub answered: bool,
    pub answer: AnyView,
    pub inputs: AnyView,
    /// The inputs in one line.
    pub summary: Signal<String>,
    pub reasons: AnyView,
}

/// Lays out a calculator. The order is settled when it is opened: nothing jumps while somebody types.
pub fn laid(of: Laid) -> AnyView {
    let Laid { first, answered, answer, inputs, summary, reasons } = of;
    let inputs = block("column bench-inputs", vec![inputs]);
    let answer = el("div").class("column near").attr("id", "answer").child(answer).view();
    if answered {
        let summary = Signal::derive(move || say::worked_out_from(&summary.get()));
        block(
            "column bench",
            vec![first, answer, el("div").attr("id", "figures").child(details(summary, inputs)).view(), reasons],
        )
    } else {
        block("column bench", vec![first, inputs, answer, reasons])
    }
}

/// Opens the folded inputs and goes there.
pub fn show_figures() {
    if let Ok(Some(folded)) = document().query_selector("#figures > details") {
        let _ = folded.set_attribute("open", "");
        folded.scroll_into_view();
        if let Ok(Some(field)) = folded.query_selector("input, select")
            && let Ok(field) = field.dyn_into::<web_sys::HtmlElement>()
        {
            let _ = field.focus();
        }
    }
}

/// Goes to the answer.
pub fn show_answer() {
    if let Some(answer) = document().get_element_by_id("answer") {
        answer.scroll_into_view();
    }
}

/// The one step of a calculator that was opened from the Bench: to the answer, or to the inputs where the answer
/// comes first. `label` is what to go to the answer for, once there is one.
pub fn step(answered: bool, label: Signal<Option<String>>) -> AnyView {
    if answered {
        return button(Weight::Primary, say::CHANGE_FIGURES, show_figures);
    }
    let there = Memo::new(move |_| label.with(Option::is_some));
    let text = Signal::derive(move || label.get().unwrap_or_default());
    maybe(move || there.get().then(|| button(Weight::Primary, text, show_answer)))
}

/// What a couple lacks: a sentence each, and the way to the one place where it is entered.
pub fn missing(all: Vec<(String, String, String)>) -> AnyView {
    let one = |(sentence, label, href): (String, String, String)| {
        block("bench-missing", vec![para("caution", sentence), link_button(Weight::Quiet, label, href)])
    };
    crate::parts::layout::all(all.into_iter().map(one).collect())
}

/// Sentences that want to be read before anything is done.
pub fn cautions(all: Signal<Vec<String>>) -> AnyView {
    live(move || crate::parts::layout::all(all.get().into_iter().map(|text| para("caution", text)).collect()))
}
