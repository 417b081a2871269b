//! Choosing: one of a few (radios), one of many (a list to pick from), yes or no (a box to tick).
//!
//! A group of radios MUST be a `<fieldset>` whose `<legend>` names it, of native radios with one name, so that the
//! arrow keys work; each option MUST be 44 px at least, and the chosen one told apart by more than its colour (it is
//! filled and heavier). A list to pick from and a box MUST be native and have a `<label>`.

use super::Words;
use super::el::{El, el, is_ticked, value_of};
use super::field::complaint;
use super::layout::block;
use leptos::prelude::*;

/// One option: the value that is kept, its name, and a small drawing if that says it better.
pub struct Choosable {
    pub value: String,
    pub label: String,
    pub drawing: Option<AnyView>,
}

/// An option without a drawing.
pub fn option(value: impl Into<String>, label: impl Into<String>) -> Choosable {
    Choosable { value: value.into(), label: label.into(), drawing: None }
}

/// An option with a drawing above its name.
pub fn drawn(value: impl Into<String>, label: impl Into<String>, drawing: AnyView) -> Choosable {
    Choosable { value: value.into(), label: label.into(), drawing: Some(drawing) }
}

/// What is shown as chosen, and what becomes of another choice: a text of its own, or one that follows something else as
/// long as nobody has chosen.
#[derive(Clone, Copy)]
pub struct Chosen {
    pub shown: Signal<String>,
    pub set: Callback<String>,
}

impl From<RwSignal<String>> for Chosen {
    fn from(text: RwSignal<String>) -> Self {
        Chosen { shown: text.into(), set: Callback::new(move |chosen| text.set(chosen)) }
    }
}

/// How a group of radios is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Side by side, touching: two to four short words.
    Segments,
    /// Apart and wrapping: more of them, or longer ones.
    Chips,
    /// In a grid, each with its drawing.
    Drawn,
}

/// A group of radios. `key` is their name; each has the id `key-value`.
pub fn choice(
    key: &'static str,
    legend: impl Into<Words>,
    shape: Shape,
    options: Vec<Choosable>,
    value: impl Into<Chosen>,
) -> AnyView {
    group(key, legend.into(), None, shape, options, value.into())
}

/// A group of radios with a line of help under its options.
pub fn choice_with(
    key: &'static str,
    legend: Words,
    hint: Option<Words>,
    shape: Shape,
    options: Vec<Choosable>,
    value: impl Into<Chosen>,
) -> AnyView {
    group(key, legend, hint, shape, options, value.into())
}

fn group(
    key: &'static str,
    legend: Words,
    hint: Option<Words>,
    shape: Shape,
    options: Vec<Choosable>,
    value: Chosen,
) -> AnyView {
    let class = match shape {
        Shape::Segments => "choice segments",
        Shape::Chips => "choice",
        Shape::Drawn => "choice drawn",
    };
    let (hint, described) = hinted("choice-hint", "p", key, hint);
    let options = options.into_iter().map(|option| radio(key, option, value)).collect();
    el("fieldset")
        .class(class)
        .maybe_attr("aria-describedby", described)
        .child(el("legend").words(legend).view())
        .child(block("choice-row", options))
        .maybe_child(hint)
        .view()
}

fn radio(key: &'static str, option: Choosable, value: Chosen) -> AnyView {
    let mine = option.value.clone();
    let chosen = option.value.clone();
    let input = el("input")
        .attr("type", "radio")
        .attr("id", format!("{key}-{}", option.value))
        .attr("name", key)
        .attr("value", option.value)
        .live_flag("checked", move || value.shown.with(|value| *value == mine))
        .on("change", move |_| value.set.run(chosen.clone()));
    labelled(input, option.drawing, option.label)
}

/// A line of help with its id, and what the described element says of it.
fn hinted(class: &'static str, tag: &'static str, key: &str, hint: Option<Words>) -> (Option<AnyView>, Option<String>) {
    let id = format!("{key}-hint");
    let described = hint.is_some().then(|| id.clone());
    (hint.map(|hint| el(tag).class(class).attr("id", id).words(hint).view()), described)
}

fn labelled(input: El, drawing: Option<AnyView>, label: String) -> AnyView {
    let name = el("span").text(label).view();
    el("label").class("choice-option").child(input.view()).maybe_child(drawing).child(name).view()
}

/// A group of boxes with long names, one under the other: otherwise as [`several`].
pub fn several_rows(
    key: &'static str,
    legend: impl Into<Words>,
    options: Vec<Choosable>,
    value: RwSignal<String>,
    error: RwSignal<Option<String>>,
) -> AnyView {
    block("stacked", vec![several(key, legend, options, value, error)])
}

/// A group of boxes of which several may be ticked. `value` holds the values of the ticked ones, in the order of the
/// options, with a space between them; each box has the id `key-value`.
pub fn several(
    key: &'static str,
    legend: impl Into<Words>,
    options: Vec<Choosable>,
    value: RwSignal<String>,
    error: RwSignal<Option<String>>,
) -> AnyView {
    let legend = legend.into();
    let all: Vec<String> = options.iter().map(|option| option.value.clone()).collect();
    let has = |text: &str, option: &str| text.split(' ').any(|ticked| ticked == option);
    let boxes: Vec<AnyView> = options
        .into_iter()
        .map(|option| {
            let (mine, pressed, all) = (option.value.clone(), option.value.clone(), all.clone());
            let press = move |ticked: bool| {
                value.update(|text| {
                    let stays = |it: &&String| if **it == pressed { ticked } else { has(text, it) };
                    let kept: Vec<&str> = all.iter().filter(stays).map(String::as_str).collect();
                    *text = kept.join(" ");
                });
            };
            let input = el("input")
                .attr("type", "checkbox")
                .attr("id", format!("{key}-{}", option.value))
                .attr("name", key)
                .attr("value", option.value)
                .live_flag("checked", move || value.with(|text| has(text, &mine)))
                .on("change", move |event| press(is_ticked(&event)));
            labelled(input, option.drawing, option.label)
        })
        .collect();
    let id = format!("{key}-error");
    el("fieldset")
        .class("choice several")
        .attr("aria-describedby", id.clone())
        .child(el("legend").words(legend).view())
        .child(block("choice-row", boxes))
        .child(complaint(id, move || error.get()))
        .view()
}

/// A list to pick one from.
pub fn pick(
    key: &'static str,
    label: impl Into<Words>,
    options: Vec<(String, String)>,
    value: RwSignal<String>,
) -> AnyView {
    let option = |(option, name): (String, String)| {
        let mine = option.clone();
        let selected = move || value.with(|value| *value == mine);
        el("option").attr("value", option).live_flag("selected", selected).text(name).view()
    };
    let select = el("select")
        .attr("id", key)
        .attr("name", key)
        .on("change", move |event| value.set(value_of(&event)))
        .children(options.into_iter().map(option).collect());
    let label = el("label").attr("for", key).words(label.into());
    block("pick", vec![label.view(), block("pick-box", vec![select.view()])])
}

/// A box to tick, its whole row a target.
pub fn check(key: &'static str, label: impl Into<Words>, hint: Option<Words>, value: RwSignal<bool>) -> AnyView {
    ticked(key.to_owned(), label.into(), hint, value.into(), Callback::new(move |ticked| value.set(ticked)))
}

/// A box to tick that is one of several behind one text, or that is kept as a word: the caller says whether it is
/// ticked, and hears when it is pressed.
pub fn tick(
    key: impl Into<String>,
    label: impl Into<Words>,
    hint: Option<Words>,
    is_ticked: Signal<bool>,
    set: Callback<bool>,
) -> AnyView {
    ticked(key.into(), label.into(), hint, is_ticked, set)
}

fn ticked(key: String, label: Words, hint: Option<Words>, now: Signal<bool>, set: Callback<bool>) -> AnyView {
    let (hint, described) = hinted("check-hint", "span", &key, hint);
    let input = el("input")
        .attr("type", "checkbox")
        .attr("id", key.clone())
        .attr("name", key)
        .maybe_attr("aria-describedby", described)
        .live_flag("checked", move || now.get())
        .on("change", move |event| set.run(is_ticked(&event)));
    let name = el("span").words(label).view();
    el("label").class("check").child(input.view()).child(name).maybe_child(hint).view()
}
