//! What every screen of a setting has: its head and its form.

use leptos::prelude::*;

use super::form_page::RecordForm;
use crate::app::address::{Address, Setting};
use crate::app::route::go_instead;
use crate::app::state::{App, app};
use crate::book::practice::Practice;
use crate::forms::Texts;
use crate::parts::Words;
use crate::parts::page::PageHeader;
use crate::words::{copies as say_copies, finger as say_finger, practice as say, screens as say_frame};

/// The head of a setting's screen, with the way back to the list it is on.
pub fn head(setting: Setting, title: impl Into<Words>) -> PageHeader {
    let up = Address::Setting(setting).up();
    let name = match up {
        Address::Setting(Setting::Gauges) => say::GAUGES,
        Address::Setting(Setting::Tray) => say_finger::TRAY,
        Address::Setting(Setting::Times) => say::TIMES,
        Address::Setting(Setting::Closures) => say::CLOSED_DAYS,
        Address::Setting(Setting::Phone) => say::PHONE,
        Address::Setting(Setting::Copies) => say_copies::COPIES,
        _ => say_frame::SETUP,
    };
    PageHeader::new(title).back(up.to_string(), name.to_owned())
}

/// The form of a setting, its words kept under the setting's own name. It starts with what the settings say now and then
/// belongs to who types; saved, it leads back to the list.
pub fn open(setting: Setting, start: impl FnOnce(Practice<'_>) -> Texts) -> RecordForm {
    let up = Address::Setting(setting).up().to_string();
    let leave = Callback::new(move |()| go_instead(&up));
    RecordForm::of_practice(format!("practice/{setting}"), now(app(), start), leave)
}

/// What the settings say now.
pub fn now<T>(app: App, read: impl FnOnce(Practice<'_>) -> T) -> T {
    untrack(|| app.practice(read))
}
