//! A file for a calendar: the days of one couple, or of everybody who is still to marry. Who may not be in a file has
//! none.

use leptos::prelude::*;

use crate::app::clock;
use crate::app::share;
use crate::app::state::{App, app};
use crate::archive::calendar::{self, Event};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::schedule::OwnOrders;
use crate::parts::button::{Weight, button};
use crate::parts::choice::check;
use crate::parts::el::{live, or_nothing};
use crate::parts::layout::{all, para};
use crate::words::{agenda as say, book as say_book};

/// Whose days are in the file.
#[derive(Clone, Copy, PartialEq)]
pub enum Of {
    Couple(RecordId),
    /// Everybody whose wedding is not over.
    Everybody,
}

/// What the file is, whether names are in it, and the buttons; of a couple that may not be in a file, why not.
pub fn into_calendar(of: Of, why: &'static str) -> AnyView {
    let app = app();
    let with_names = RwSignal::new(false);
    // Nobody who is still to marry is a file without a single day, which calendars refuse.
    let file = move || {
        let events = events(app, of, with_names.get_untracked());
        (!events.is_empty()).then(|| calendar::write(&events, clock::moment()))
    };
    let heard = move |left| app.say(if left { say::SHARED } else { say::NOT_SHARED }.to_owned());
    let share = move || match file() {
        Some(file) => share::share_file(say::FILE_NAME.to_owned(), share::CALENDAR, file, heard),
        None => app.say(say::NO_DAYS.to_owned()),
    };
    let download = move || match file() {
        Some(file) => heard(share::download(say::FILE_NAME, share::CALENDAR, &file)),
        None => app.say(say::NO_DAYS.to_owned()),
    };
    let stays = Memo::new(move |_| match of {
        Of::Couple(id) => app.stays(id),
        Of::Everybody => None,
    });
    let offered = move || match stays.get() {
        Some(stays) => para("caution", say_book::stays(stays)),
        None => all(vec![
            para("small", why),
            check("with-names", say::WITH_NAMES, Some(say::WITH_NAMES_HINT.into()), with_names),
            or_nothing(share::can_share_files().then(|| button(Weight::Quiet, say::SHARE, share))),
            button(Weight::Quiet, say::DOWNLOAD, download),
        ]),
    };
    live(offered)
}

fn events(app: App, of: Of, with_names: bool) -> Vec<Event> {
    let today = app.today.get_untracked();
    untrack(|| {
        app.with(|book| {
            let practice = Practice(&book.practice);
            let everybody = || book.couples.values().map(|record| Couple(record));
            let own = OwnOrders::of(everybody(), practice);
            let refusing = book.refusing();
            let is_asked_for = |couple: &Couple<'_>| match of {
                Of::Couple(id) => couple.0.id == id,
                Of::Everybody => !couple.is_blank() && !couple.wedding().is_some_and(|wedding| wedding.is_past(today)),
            };
            let is_in = |couple: &Couple<'_>| is_asked_for(couple) && refusing.may_leave(*couple).is_ok();
            let of_couple = |couple| say::events(couple, practice, &own, today, with_names);
            everybody().filter(is_in).flat_map(of_couple).collect()
        })
    })
}
