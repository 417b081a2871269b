//! Erasing a couple for good: what goes is said, a file is offered first, and it takes a box that is ticked and then
//! another press, because it cannot be undone.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::layout::{block, column, para, section};
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::route::go_instead;
use crate::app::state::app;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::check;
use crate::parts::page::page;
use crate::screens::shell::couple_page::{CouplePage, couple_page};
use crate::screens::shell::lower::lower;
use crate::trade::wearer::Wearer;
use crate::words::copies::{self as say, Goes};
use crate::words::{book as say_book, screens};

pub fn erase(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, leave } = couple_page(id, say::ERASE, Part::Erase);
    let sure = RwSignal::new(false);
    let goes = app.couple(id, goes).unwrap_or_default();
    let joined = app.goes_with(id);
    let joined = (joined > 0).then(|| para("", say::erase_joined(joined)));
    let first = move || {
        let may = app.couple(id, |_| ()).is_some() && app.stays(id).is_none();
        let to = Address::Part(id, Part::Copy).to_string();
        may.then(|| link_button(Weight::Quiet, say::ERASE_COPY_FIRST, to))
    };
    let instead = move || {
        let put_away = move || {
            let names = app.couple(id, say_book::names).unwrap_or_default();
            let writes = vec![verbs::put_away(Some(app.today.get_untracked()))];
            app.save(id, writes, screens::was_put_away(&names), move || {
                let _ = leave.try_run(());
            });
        };
        let is_away = app.couple(id, |couple| couple.put_away().is_some()).unwrap_or(true);
        (!is_away).then(|| {
            let button = button(Weight::Quiet, say::PUT_AWAY_INSTEAD, put_away);
            block("column near", vec![para("small", say::ERASE_PUT_AWAY), button])
        })
    };
    let now = move || app.erase(id, lower, || go_instead(&Address::Couples.to_string()));
    let content = column(vec![
        section(say::ERASE_WHAT, vec![para("", goes), or_nothing(joined)]),
        para("caution", say::ERASE_HOW),
        maybe(first),
        maybe(instead),
        check("sure", say::ERASE_SURE, None, sure),
    ]);
    page(head, content, Some(maybe(move || sure.get().then(|| button(Weight::Primary, say::ERASE_NOW, now)))))
}

fn goes(couple: Couple<'_>) -> String {
    let of_both = |count: fn(Couple<'_>, Wearer) -> usize| Wearer::BOTH.map(|who| count(couple, who)).iter().sum();
    let goes = Goes {
        readings: of_both(|couple, who| couple.readings(who).len()),
        rings: of_both(|couple, who| couple.rings(who).len()),
        appointments: couple.appointments().len(),
        notes: couple.notes().len(),
        lists: couple.said().len(),
        changes: couple.0.changes().len(),
    };
    say::goes(&say_book::names(couple), goes)
}
