//! A field to type in: one line, or several.
//!
//! Its label MUST be a `<label>` of the input; hint and unit MUST be read with it; an error MUST be a sentence in a
//! live region that the input points to, with `aria-invalid`; what was typed MUST stay, whatever is wrong with it.
//! Nothing in it is smaller than 16 px (smaller, and phones zoom in when it is touched) and it is 44 px high.

use super::{Press, Words};
use leptos::prelude::*;

/// Which keyboard the phone offers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keyboard {
    Text,
    /// Figures with a separator, but letters can be reached: sizes are typed as "M½" too.
    Decimal,
    Digits,
    Telephone,
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
        let wiring = self.wiring();
        let (kind, inputmode) = match self.keyboard {
            Keyboard::Text => ("text", "text"),
            Keyboard::Decimal => ("text", "decimal"),
            Keyboard::Digits => ("text", "numeric"),
            Keyboard::Telephone => ("tel", "tel"),
            Keyboard::Email => ("email", "email"),
        };
        let Wiring { described, wrong } = wiring;
        let (key, value, left) = (self.key, self.value, self.left);
        let input = view! {
            <input
                id=key
                name=key
                type=kind
                inputmode=inputmode
                autocomplete=self.autocomplete
                enterkeyhint=self.enter
                aria-describedby=described
                aria-invalid=move || wrong.get().then_some("true")
                prop:value=move || value.get()
                on:input:target=move |event| value.set(event.target().value())
                on:blur=move |_| leave(left)
            />
        };
        self.around(input.into_any())
    }

    /// A field of several lines.
    pub fn lines(self) -> AnyView {
        let Wiring { described, wrong } = self.wiring();
        let (key, value, left) = (self.key, self.value, self.left);
        let area = view! {
            <textarea
                id=key
                name=key
                rows="4"
                autocomplete=self.autocomplete
                aria-describedby=described
                aria-invalid=move || wrong.get().then_some("true")
                prop:value=move || value.get()
                on:input:target=move |event| value.set(event.target().value())
                on:blur=move |_| leave(left)
            ></textarea>
        };
        self.around(area.into_any())
    }

    fn wiring(&self) -> Wiring {
        let key = self.key;
        let error = self.error;
        let parts = [self.hint.map(|_| "hint"), self.unit.map(|_| "unit"), Some("error")];
        let ids: Vec<String> = parts.into_iter().flatten().map(|part| format!("{key}-{part}")).collect();
        Wiring { described: ids.join(" "), wrong: Signal::derive(move || error.with(Option::is_some)) }
    }

    fn around(self, input: AnyView) -> AnyView {
        let (key, label, error) = (self.key, self.label, self.error);
        let hint = self.hint.map(|hint| {
            view! { <span class="field-hint" id=format!("{key}-hint")>{move || hint.get()}</span> }
        });
        let unit = self.unit.map(|unit| {
            view! { <span class="field-unit" id=format!("{key}-unit")>{move || unit.get()}</span> }
        });
        view! {
            <div class="field" class:wrong=move || error.with(Option::is_some)>
                <label class="field-label" for=key>{move || label.get()}</label>
                {hint}
                <div class="field-box">{input}{unit}</div>
                <p class="field-error" id=format!("{key}-error") aria-live="polite">
                    {move || error.get().unwrap_or_default()}
                </p>
            </div>
        }
        .into_any()
    }
}

struct Wiring {
    described: String,
    wrong: Signal<bool>,
}

fn leave(left: Option<Press>) {
    // A field that is taken away while it has the focus is left too, and by then nobody listens any more.
    if let Some(left) = left {
        let _ = left.try_run(());
    }
}
