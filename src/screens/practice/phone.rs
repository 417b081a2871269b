//! This phone: light or dark, the storage, what leaves it, how to install, the version.

use crate::parts::el::{el, live, maybe, or_nothing};
use crate::parts::layout::{all, block, column, para, section};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::{head, to};
use crate::app::address::Setting;
use crate::app::state::{App, app};
use crate::app::theme;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::storage::book::Quarantined;
use crate::storage::preferences;
use crate::storage::room::{Room, ask_to_persist, room};
use crate::words::{
    copies as say_copies, keeping as say_keeping, phones as say_phones, practice as say, storage as say_storage,
};

pub fn phone() -> AnyView {
    let app = app();
    let content = column(vec![
        theme_choice(app),
        storage(app),
        quarantined(app),
        section(say_phones::PHONES, vec![lines(Signal::derive(move || phones(app)))]),
        section(say::LEAVES, vec![para("", say::LEAVES_WHAT)]),
        section(
            say::INSTALL,
            vec![
                para("", say::INSTALL_HOW),
                link_button(Weight::Quiet, say_keeping::HOW_TO_INSTALL, to(Setting::Install)),
            ],
        ),
        section(say::VERSION, vec![para("", say::version(env!("CARGO_PKG_VERSION")))]),
    ]);
    page(head(Setting::Phone, say::PHONE), content, None)
}

/// This phone, and every other whose words are in the book.
fn phones(app: App) -> Vec<Line> {
    let row = |by| line(app.phone_name(by), "", to(Setting::PhoneName(by)));
    app.phones().into_iter().map(row).collect()
}

fn theme_choice(app: App) -> AnyView {
    let chosen = RwSignal::new(preferences::theme());
    Effect::new(move |before: Option<()>| {
        let name = chosen.get();
        if before.is_some() {
            theme::show(&name);
            if !preferences::keep_theme(&name) {
                app.say(say::THEME_NOT_KEPT.to_owned());
            }
        }
    });
    let options =
        vec![option("system", say::THEME_SYSTEM), option("light", say::THEME_LIGHT), option("dark", say::THEME_DARK)];
    choice("theme", say::THEME, Shape::Segments, options, chosen)
}

fn storage(app: App) -> AnyView {
    let found = RwSignal::new(None::<Room>);
    let refused = RwSignal::new(false);
    // The screen may be left before the browser answers: then there is nobody to tell.
    let look = move || {
        spawn_local(async move {
            let _ = found.try_set(Some(room().await));
        });
    };
    look();
    let ask = move || {
        spawn_local(async move {
            let agreed = ask_to_persist().await == Some(true);
            if agreed {
                app.say(say::KEEPS.to_owned());
            }
            let _ = refused.try_set(!agreed);
            look();
        });
    };
    let said = move || match found.get() {
        None => para("", say::STORAGE_ASKING),
        Some(room) => all(vec![
            para("", say::room(&say_storage::room(room.used_bytes, room.quota_bytes))),
            para("", say_storage::persistent(room.persistent)),
            or_nothing((room.persistent == Some(false)).then(|| button(Weight::Quiet, say::ASK_TO_KEEP, ask))),
        ]),
    };
    section(
        say::STORAGE,
        vec![
            live(said),
            el("p").attr("role", "status").child(maybe(move || refused.get().then(|| say::REFUSED.into_any()))).view(),
        ],
    )
}

/// Records that could not be read, with why; nothing where there are none.
fn quarantined(app: App) -> AnyView {
    let row = |key: &str, why: String| Line { href: None, ..line(key, "", "").small(why) };
    let rows = Signal::derive(move || {
        let rows = |aside: &Quarantined| row(&aside.key, say_storage::row_error(aside.why));
        app.with(|book| book.quarantined.iter().map(rows).collect::<Vec<_>>())
    });
    maybe(move || {
        let count = rows.with(Vec::len);
        let out = move || button(Weight::Quiet, say_copies::SET_ASIDE_OUT, move || app.download_quarantined());
        let is_open = app.with(|book| book.quarantined.iter().any(Quarantined::is_damaged));
        let away = move || {
            let away = button(Weight::Quiet, say_copies::PUT_ASIDE, move || app.quarantine());
            block("column near", vec![para("small", say_copies::PUT_ASIDE_HOW), away])
        };
        (count > 0).then(|| {
            let said = para("caution", say_storage::quarantined(count));
            section(say::SET_ASIDE, vec![said, lines(rows), out(), or_nothing(is_open.then(away))])
        })
    })
}
