//! Choosing: one of a few (radios), one of many (a list to pick from), yes or no (a box to tick).
//!
//! A group of radios MUST be a `<fieldset>` whose `<legend>` names it, of native radios with one name, so that the
//! arrow keys work; each option MUST be 44 px at least, and the chosen one told apart by more than its colour (it is
//! filled and heavier). A list to pick from and a box MUST be native and have a `<label>`.

use super::Words;
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
    value: RwSignal<String>,
) -> AnyView {
    choice_with(key, legend.into(), None, shape, options, value)
}

/// A group of radios with a line of help under its options.
pub fn choice_with(
    key: &'static str,
    legend: Words,
    hint: Option<Words>,
    shape: Shape,
    options: Vec<Choosable>,
    value: RwSignal<String>,
) -> AnyView {
    let class = match shape {
        Shape::Segments => "choice segments",
        Shape::Chips => "choice",
        Shape::Drawn => "choice drawn",
    };
    let hint_id = format!("{key}-hint");
    let described = hint.map(|_| hint_id.clone());
    let options: Vec<AnyView> = options.into_iter().map(|option| radio(key, option, value)).collect();
    view! {
        <fieldset class=class aria-describedby=described>
            <legend>{move || legend.get()}</legend>
            <div class="choice-row">{options}</div>
            {hint.map(|hint| view! { <p class="choice-hint" id=hint_id>{move || hint.get()}</p> })}
        </fieldset>
    }
    .into_any()
}

fn radio(key: &'static str, option: Choosable, value: RwSignal<String>) -> AnyView {
    let mine = option.value.clone();
    let chosen = option.value.clone();
    view! {
        <label class="choice-option">
            <input
                type="radio"
                id=format!("{key}-{}", option.value)
                name=key
                value=option.value
                prop:checked=move || value.with(|value| *value == mine)
                on:change=move |_| value.set(chosen.clone())
            />
            {option.drawing}
            <span>{option.label}</span>
        </label>
    }
    .into_any()
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
            view! {
                <label class="choice-option">
                    <input
                        type="checkbox"
                        id=format!("{key}-{}", option.value)
                        name=key
                        value=option.value
                        prop:checked=move || value.with(|text| has(text, &mine))
                        on:change:target=move |event| press(event.target().checked())
                    />
                    {option.drawing}
                    <span>{option.label}</span>
                </label>
            }
            .into_any()
        })
        .collect();
    view! {
        <fieldset class="choice several" aria-describedby=format!("{key}-error")>
            <legend>{move || legend.get()}</legend>
            <div class="choice-row">{boxes}</div>
            <p class="field-error" id=format!("{key}-error") aria-live="polite">
                {move || error.get().unwrap_or_default()}
            </p>
        </fieldset>
    }
    .into_any()
}

/// A list to pick one from.
pub fn pick(
    key: &'static str,
    label: impl Into<Words>,
    options: Vec<(String, String)>,
    value: RwSignal<String>,
) -> AnyView {
    let label = label.into();
    let options: Vec<AnyView> = options
        .into_iter()
        .map(|(option, name)| {
            let mine = option.clone();
            view! { <option value=option prop:selected=move || value.with(|value| *value == mine)>{name}</option> }
                .into_any()
        })
        .collect();
    view! {
        <div class="pick">
            <label for=key>{move || label.get()}</label>
            <div class="pick-box">
                <select id=key name=key on:change:target=move |event| value.set(event.target().value())>{options}</select>
            </div>
        </div>
    }
    .into_any()
}

/// A box to tick, its whole row a target.
pub fn check(key: &'static str, label: impl Into<Words>, hint: Option<Words>, value: RwSignal<bool>) -> AnyView {
    let label = label.into();
    let hint_id = format!("{key}-hint");
    let described = hint.map(|_| hint_id.clone());
    view! {
        <label class="check">
            <input
                type="checkbox"
                id=key
                name=key
                aria-describedby=described
                prop:checked=move || value.get()
                on:change:target=move |event| value.set(event.target().checked())
            />
            <span>{move || label.get()}</span>
            {hint.map(|hint| view! { <span class="check-hint" id=hint_id>{move || hint.get()}</span> })}
        </label>
    }
    .into_any()
}

/// A box to tick that is one of several behind one text, or that is kept as a word: the caller says whether it is
/// ticked, and hears when it is pressed.
pub fn tick(
    key: impl Into<String>,
    label: impl Into<Words>,
    hint: Option<Words>,
    ticked: Signal<bool>,
    set: Callback<bool>,
) -> AnyView {
    let (key, label) = (key.into(), label.into());
    let hint_id = format!("{key}-hint");
    let described = hint.map(|_| hint_id.clone());
    view! {
        <label class="check">
            <input
                type="checkbox"
                id=key.clone()
                name=key
                aria-describedby=described
                prop:checked=move || ticked.get()
                on:change:target=move |event| set.run(event.target().checked())
            />
            <span>{move || label.get()}</span>
            {hint.map(|hint| view! { <span class="check-hint" id=hint_id>{move || hint.get()}</span> })}
        </label>
    }
    .into_any()
}
