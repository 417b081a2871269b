//! What the couple sees when the phone is turned round: one picture, one answer, and nothing that leads away. The book
//! behind it is out of sight, out of reach and out of the ears' tree.
//!
//! Finishing MUST be a deliberate act: the button at the bottom held for a second and let go, or pressed and then
//! answered with another button that stands elsewhere. The second way is for keyboards, switches and screen readers,
//! which cannot hold. The touch that finishes MUST press nothing else.

use std::time::Duration;

use crate::parts::el::{el, maybe, or_nothing};
use crate::parts::layout::{all, block, heading, para, row};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;

use crate::app::show::{CleanView, Shown};
use crate::parts::Press;
use crate::parts::button::{Weight, button};
use crate::parts::focus::{focus, once_drawn};
use crate::parts::picture::picture;
use crate::words::showing as say;

const HOLD: Duration = Duration::from_millis(1000);
/// The click of a touch comes within so long after the finger is lifted, if it comes.
const CLICK_TAKES: Duration = Duration::from_millis(100);

/// The clean view, while anything is shown.
pub fn view(clean_view: CleanView) -> AnyView {
    maybe(move || clean_view.get().map(|shown| untrack(|| clean(clean_view, shown))))
}

/// A picture and its answer, which a tap turns into the clean view; the button does the same for those who tab.
pub fn showable(inside: Vec<AnyView>, make: impl Fn() -> Option<Shown> + 'static) -> AnyView {
    let clean_view: CleanView = expect_context();
    let show = button(Weight::Quiet, say::SHOW, || ());
    el("div")
        .class("showable column near")
        .on("click", move |_| {
            if let Some(shown) = make() {
                clean_view.show(shown);
            }
        })
        .children(inside)
        .child(show)
        .view()
}

/// The button alone, for what stands on a page in many parts.
pub fn show_button(make: impl Fn() -> Option<Shown> + Send + Sync + 'static) -> AnyView {
    let clean_view: CleanView = expect_context();
    button(Weight::Quiet, say::SHOW, move || {
        if let Some(shown) = make() {
            clean_view.show(shown);
        }
    })
}

fn clean(clean_view: CleanView, shown: Shown) -> AnyView {
    let asked = RwSignal::new(false);
    let opener = SendWrapper::new(document().active_element());
    // It can have the focus again when the book is back, which is a while after the finish.
    on_cleanup(move || {
        if let Some(opener) = opener.take().and_then(|it| it.dyn_into::<web_sys::HtmlElement>().ok()) {
            once_drawn(move || drop(opener.focus()));
        }
    });
    let finish = Callback::new(move |()| clean_view.close());
    let question = move || {
        asked.get().then(|| {
            el("div")
                .class("show-question column near")
                .attr("id", "show-question")
                .attr("tabindex", "-1")
                .children(vec![
                    heading(say::FINISH_QUESTION),
                    para("", say::FINISH_WHY),
                    row(vec![
                        button(Weight::Quiet, say::KEEP_SHOWING, move || asked.set(false)),
                        button(Weight::Quiet, say::FINISH_NOW, finish),
                    ]),
                ])
                .view()
        })
    };
    let lines = shown.lines.into_iter().map(|line| para("", line)).collect();
    let figure = (!shown.figure.is_empty()).then(|| para("show-figure", shown.figure));
    focus("#show-title");
    el("main")
        .class("show")
        .child(maybe(question))
        .child(el("h1").attr("id", "show-title").attr("tabindex", "-1").text(shown.title).view())
        .child(or_nothing((!shown.picture.is_empty()).then(|| picture(shown.picture))))
        .child(block("show-answer", vec![or_nothing(figure), all(lines)]))
        .child(holder(asked, finish))
        .view()
}

/// How far the button has been held.
#[derive(Clone, Copy, PartialEq)]
enum Hold {
    Not,
    Down,
    /// Long enough: it finishes when the finger is lifted, or the same touch would press what comes in its place.
    Long,
    Lifted,
}

/// The button that is held. A short press asks instead.
fn holder(asked: RwSignal<bool>, finish: Press) -> AnyView {
    let hold = RwSignal::new(Hold::Not);
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    let finish = move || {
        let _ = finish.try_run(());
    };
    let let_go = move || {
        hold.set(Hold::Not);
        if let Some(waiting) = waiting.get_value() {
            waiting.clear();
        }
    };
    let press = move || {
        let_go();
        hold.set(Hold::Down);
        let long = move || {
            let _ = hold.try_set(Hold::Long);
        };
        waiting.set_value(set_timeout_with_handle(long, HOLD).ok());
    };
    let lift = move || {
        if hold.get_untracked() != Hold::Long {
            return let_go();
        }
        // Most browsers make no click of so long a touch.
        hold.set(Hold::Lifted);
        set_timeout(finish, CLICK_TAKES);
    };
    let click = move || {
        if hold.get_untracked() == Hold::Lifted {
            return finish();
        }
        asked.set(true);
        focus("#show-question");
    };
    let class = move || if hold.get() == Hold::Not { "show-finish" } else { "show-finish held" };
    let label = move || if matches!(hold.get(), Hold::Not | Hold::Down) { say::FINISH } else { say::LIFT };
    el("button")
        .attr("type", "button")
        .live_attr("class", move || Some(class().to_owned()))
        .on("pointerdown", move |_| press())
        .on("pointerup", move |_| lift())
        .on("pointerleave", move |_| {
            if hold.get_untracked() != Hold::Lifted {
                let_go();
            }
        })
        .on("pointercancel", move |_| let_go())
        .on("contextmenu", |event| event.prevent_default())
        .on("click", move |_| click())
        .words(Signal::derive(move || label().to_owned()).into())
        .view()
}
