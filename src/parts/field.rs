//! A field to type in: one line, or several.
//!
//! Its label MUST be a `<label>` of the input; hint and unit MUST be read with it; an error MUST be a sentence in a
//! live region that the input points to, with `aria-invalid`; what was typed MUST stay, whatever is wrong with it.
//! Nothing in it is smaller than 16 px (smaller, and phones zoom in when it is touched) and it is 44 px high.

use super::el::{El, el, value_of};
use super::{Press, Words};
use leptos::prelude::*;

/// Which keyboard the phone offers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keyboard {
    Text,
    /// Figures with a separator, but letters can be reached: sizes are typed as "M½" too.
    Decimal,
    Digits,
    Email,
}

/// What a field is made of. The error is a signal of the caller's, who decides when it is due: when the field is left
/// or the form is sent, not at each key.
pub struct Field {
    key: &'static str,
    label: Words,
    value: RwSignal<String>,
    hint: Option<Words>,
    unit: Option<Words>,
    error: Signal<Option<String>>,
    keyboard: Keyboard,
    autocomplete: &'static str,
    enter: &'static str,
    left: Option<Press>,
}

impl Field {
    /// A field with its key (its `id` and `name`), its label and the text that is typed in it.
    pub fn new(key: &'static str, label: impl Into<Words>, value: RwSignal<String>) -> Self {
        Field {
            key,
            label: label.into(),
            value,
            hint: None,
            unit: None,
            error: Signal::stored(None),
            keyboard: Keyboard::Text,
            autocomplete: "off",
            enter: "next",
            left: None,
        }
    }

    pub fn hint(mut self, hint: impl Into<Words>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    /// What the figure is in, behind it: "mm".
    pub fn unit(mut self, unit: impl Into<Words>) -> Self {
        self.unit = Some(unit.into());
        self
    }

    pub fn error(mut self, error: impl Into<Signal<Option<String>>>) -> Self {
        self.error = error.into();
        self
    }

    pub fn keyboard(mut self, keyboard: Keyboard) -> Self {
        self.keyboard = keyboard;
        self
    }

    pub fn autocomplete(mut self, autocomplete: &'static str) -> Self {
        self.autocomplete = autocomplete;
        self
    }

    /// What the enter key of the phone's keyboard says: "next", "done", "search".
    pub fn enter(mut self, enter: &'static str) -> Self {
        self.enter = enter;
        self
    }

    /// What to do when the field is left: the moment to look at what was typed.
    pub fn on_leave(mut self, left: impl Into<Press>) -> Self {
        self.left = Some(left.into());
        self
    }

    /// A field of one line.
    pub fn line(self) -> AnyView {
        let (kind, inputmode) = match self.keyboard {
            Keyboard::Text => ("text", "text"),
            Keyboard::Decimal => ("text", "decimal"),
            Keyboard::Digits => ("text", "numeric"),
            Keyboard::Email => ("email", "email"),
        };
        let input = el("input").attr("type", kind).attr("inputmode", inputmode).attr("enterkeyhint", self.enter);
        self.around(input)
    }

    /// A field of several lines.
    pub fn lines(self) -> AnyView {
        self.around(el("textarea").attr("rows", "4"))
    }

    fn around(self, input: El) -> AnyView {
        let Field { key, value, error, left, .. } = self;
        let id = |part: &str| format!("{key}-{part}");
        let mut described = Vec::new();
        let mut helped = |class: &'static str, part: &str, words: Option<Words>| {
            let words = words?;
            described.push(id(part));
            Some(el("span").class(class).attr("id", id(part)).words(words).view())
        };
        let hint = helped("field-hint", "hint", self.hint);
        let unit = helped("field-unit", "unit", self.unit);
        described.push(id("error"));
        let wrong = move || error.with(Option::is_some);
        let input = input
            .attr("id", key)
            .attr("name", key)
            .attr("autocomplete", self.autocomplete)
            .attr("aria-describedby", described.join(" "))
            .live_attr("aria-invalid", move || wrong().then(|| "true".to_owned()))
            .live_value(move || value.get())
            .on("input", move |event| value.set(value_of(&event)))
            .on("blur", move |_| leave(left));
        el("div")
            .live_attr("class", move || Some(if wrong() { "field wrong" } else { "field" }.to_owned()))
            .child(el("label").class("field-label").attr("for", key).words(self.label).view())
            .maybe_child(hint)
            .child(el("div").class("field-box").child(input.view()).maybe_child(unit).view())
            .child(complaint(id("error"), move || error.get()))
            .view()
    }
}

/// The place under a field where its complaint appears: always in the page, or it would not be read out.
pub fn complaint(id: String, of: impl Fn() -> Option<String> + Send + Sync + 'static) -> AnyView {
    let words = Signal::derive(move || of().unwrap_or_default());
    el("p").class("field-error").attr("id", id).attr("aria-live", "polite").words(words.into()).view()
}

fn leave(left: Option<Press>) {
    // A field that is taken away while it has the focus is left too, and by then nobody listens any more.
    if let Some(left) = left {
        let _ = left.try_run(());
    }
}
