//! What every screen about a part of a couple has: its head, its form, and what is shown where there is no such couple.

use leptos::prelude::*;

use super::form_page::RecordForm;
use crate::app::address::{Address, Part};
use crate::app::route::route;
use crate::app::state::{App, app};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::forms::Texts;
use crate::parts::layout::para;
use crate::parts::page::{PageHeader, page};
use crate::trade::wearer::Wearer;
use crate::words::{book as say_book, copies as say_copies, screens as say};

/// What every screen about a part of a couple has: its head, and the way on when its work is done.
pub struct CouplePage {
    pub head: PageHeader,
    pub leave: Callback<()>,
}

/// The head of a part of a couple: what it is, whose it is, and the way back.
pub fn couple_page(id: RecordId, title: &str, part: Part) -> CouplePage {
    let app = app();
    let up = Address::Part(id, part).up();
    let back = match up {
        Address::Couple(_) => app.couple(id, say_book::names).unwrap_or_default(),
        Address::Part(_, Part::Appointments) => say::APPOINTMENTS.to_owned(),
        Address::Part(_, Part::Finger(_)) => say::FINGER.to_owned(),
        _ => say::RINGS.to_owned(),
    };
    let names = Signal::derive(move || app.couple(id, say_book::names).unwrap_or_default());
    let head = PageHeader::new(title.to_owned()).subtitle(names).back(up.to_string(), back);
    let route = route();
    CouplePage { head, leave: Callback::new(move |()| route.leave(up)) }
}

/// The same for what belongs to one of the two.
pub fn page_of_wearer(id: RecordId, wearer: Wearer, what: &str, part: Part) -> CouplePage {
    let name = app().couple(id, |couple| say_book::name_of(couple, wearer)).unwrap_or_default();
    couple_page(id, &say::of(&name, what), part)
}

/// The form about a part of a couple, with what it starts with.
pub fn open(id: RecordId, name: String, leave: Callback<()>, start: impl FnOnce(Couple<'_>) -> Texts) -> RecordForm {
    let start = untrack(|| app().couple(id, start)).unwrap_or_default();
    RecordForm::of_couple(id, name, start, leave)
}

/// What is shown at an address of a couple that is not here.
pub fn not_here() -> AnyView {
    let head = PageHeader::new(say::NOT_HERE).back(Address::Couples.to_string(), say::COUPLES);
    page(head, para("", say::NOT_HERE_WHY), None)
}

/// The same, and whether it was erased.
pub fn gone(app: App, id: RecordId) -> AnyView {
    if untrack(|| app.couple(id, |couple| couple.0.erased().is_none())).unwrap_or(true) {
        return not_here();
    }
    let head = PageHeader::new(say::NOT_HERE).back(Address::Couples.to_string(), say::COUPLES);
    page(head, para("", say_copies::IS_ERASED), None)
}
