//! This phone: light or dark, the storage, what leaves it, how to install, the version.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::head;
use crate::app::address::Setting;
use crate::app::state::{App, app};
use crate::app::theme;
use crate::parts::button::{Weight, button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::line::{Line, line, lines};
use crate::parts::page::page;
use crate::storage::preferences;
use crate::storage::room::{Room, ask_to_persist, room};
use crate::words::{practice as say, storage as say_storage};

pub fn phone() -> AnyView {
    let app = app();
    let content = view! {
        <div class="column">
            {theme_choice(app)}
            {storage(app)}
            {set_aside(app)}
            <section class="section"><h2>{say::LEAVES}</h2><p>{say::LEAVES_WHAT}</p></section>
            <section class="section"><h2>{say::INSTALL}</h2><p>{say::INSTALL_HOW}</p></section>
            <section class="section">
                <h2>{say::VERSION}</h2>
                <p>{say::version(env!("CARGO_PKG_VERSION"))}</p>
            </section>
        </div>
    };
    page(head(Setting::Phone, say::PHONE.to_owned()), content.into_any(), None)
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
    choice("theme", say::THEME.to_owned(), Shape::Segments, options, chosen)
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
        None => view! { <p>{say::STORAGE_ASKING}</p> }.into_any(),
        Some(room) => view! {
            <p>{say::room(&say_storage::room(room.used_bytes, room.quota_bytes))}</p>
            <p>{say_storage::persistent(room.persistent)}</p>
            {(room.persistent == Some(false)).then(|| button(Weight::Quiet, say::ASK_TO_KEEP.to_owned(), ask))}
        }
        .into_any(),
    };
    view! {
        <section class="section">
            <h2>{say::STORAGE}</h2>
            {said}
            <p role="status">{move || refused.get().then_some(say::REFUSED)}</p>
        </section>
    }
    .into_any()
}

/// Records that could not be read, with why; nothing where there are none.
fn set_aside(app: App) -> AnyView {
    let row = |key: &str, why: String| Line { href: None, ..line(key, "", "").small(why) };
    let rows = Signal::derive(move || {
        let rows = |aside: &crate::storage::book::SetAside| row(&aside.key, say_storage::row_error(aside.why));
        app.with(|book| book.set_aside.iter().map(rows).collect::<Vec<_>>())
    });
    (move || {
        let count = rows.with(Vec::len);
        (count > 0).then(|| {
            view! {
                <section class="section">
                    <h2>{say::SET_ASIDE}</h2>
                    <p class="caution">{say_storage::set_aside(count)}</p>
                    {lines(rows)}
                </section>
            }
        })
    })
    .into_any()
}
