//! Buttons, fields, answers, notices: what every screen is put together from.
//!
//! INVARIANT: a part knows no screen and no state. It is handed its words, its signals and what to do when it is
//! pressed. Each part is a file here and a file of the same name in `style/parts/`, but for `el` and `lay`, which all
//! are made with; what it MUST do for people who hear, tab or enlarge the page stands at its top, and
//! `tests/web/parts.rs` holds it to that in a browser.
//!
//! All parts give back an `AnyView`: screens are then put together from one type, which keeps the app small.

pub mod answer;
pub mod button;
pub mod choice;
pub mod details;
pub mod el;
pub mod empty;
pub mod field;
pub mod focus;
pub mod layout;
pub mod line;
pub mod notice;
pub mod page;
pub mod picture;
pub mod places;
pub mod reasons;

use std::borrow::Cow;

use leptos::prelude::{Callback, Get, Memo, Signal};

/// Words: most stay as they are, some change while they are shown.
#[derive(Clone)]
pub enum Words {
    Still(Cow<'static, str>),
    Live(Signal<String>),
}

impl Words {
    /// The words as they are now.
    pub fn now(&self) -> String {
        match self {
            Words::Still(words) => words.to_string(),
            Words::Live(words) => words.get(),
        }
    }
}

impl From<&'static str> for Words {
    fn from(words: &'static str) -> Self {
        Words::Still(Cow::Borrowed(words))
    }
}

impl From<String> for Words {
    fn from(words: String) -> Self {
        Words::Still(Cow::Owned(words))
    }
}

impl From<Signal<String>> for Words {
    fn from(words: Signal<String>) -> Self {
        Words::Live(words)
    }
}

impl From<Memo<String>> for Words {
    fn from(words: Memo<String>) -> Self {
        Words::Live(words.into())
    }
}

/// What happens when something is pressed.
pub type Press = Callback<()>;
