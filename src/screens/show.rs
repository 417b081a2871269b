//! What the couple sees when the phone is turned round: one picture, one answer, and nothing that leads away. The book
//! behind it is out of sight, out of reach and out of the ears' tree.
//!
//! Finishing MUST be a deliberate act: the button at the bottom held for a second, or pressed and then answered with
//! another button that stands elsewhere. The second way is for keyboards, switches and screen readers, which cannot
//! hold.

use std::time::Duration;

use crate::parts::el::{el, maybe, or_nothing};
use crate::parts::lay::{all, block, heading, para, row};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;

use crate::app::show::{Eyes, Shown};
use crate::parts::Press;
use crate::parts::button::{Weight, button};
use crate::parts::focus::{focus, once_drawn};
use crate::parts::picture::picture;
use crate::words::showing as say;

const HOLD: Duration = Duration::from_millis(1000);

/// The clean view, while anything is shown.
pub fn view(eyes: Eyes) -> AnyView {
    maybe(move || eyes.get().map(|shown| untrack(|| clean(eyes, shown))))
}

/// A picture and its answer, which a tap turns into the clean view; the button does the same for those who tab.
pub fn showable(inside: Vec<AnyView>, make: impl Fn() -> Option<Shown> + 'static) -> AnyView {
    let eyes: Eyes = expect_context();
    let show = button(Weight::Quiet, say::SHOW, || ());
    el("div")
        .class("showable column near")
        .on("click", move |_| {
            if let Some(shown) = make() {
                eyes.show(shown);
            }
        })
        .children(inside)
        .child(show)
        .view()
}

/// The button alone, for what stands on a page in many parts.
pub fn show_button(make: impl Fn() -> Option<Shown> + Send + Sync + 'static) -> AnyView {
    let eyes: Eyes = expect_context();
    button(Weight::Quiet, say::SHOW, move || {
        if let Some(shown) = make() {
            eyes.show(shown);
        }
    })
}

fn clean(eyes: Eyes, shown: Shown) -> AnyView {
    let asked = RwSignal::new(false);
    let opener = SendWrapper::new(document().active_element());
    // It can have the focus again when the book is back, which is a while after the finish.
    on_cleanup(move || {
        if let Some(opener) = opener.take().and_then(|it| it.dyn_into::<web_sys::HtmlElement>().ok()) {
            once_drawn(move || drop(opener.focus()));
        }
    });
    let finish = Callback::new(move |()| eyes.close());
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

/// The button that is held. A short press asks instead.
fn holder(asked: RwSignal<bool>, finish: Press) -> AnyView {
    let held = RwSignal::new(false);
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    let let_go = move || {
        held.set(false);
        if let Some(waiting) = waiting.get_value() {
            waiting.clear();
        }
    };
    let press = move || {
        let_go();
        held.set(true);
        let done = move || {
            let _ = finish.try_run(());
        };
        waiting.set_value(set_timeout_with_handle(done, HOLD).ok());
    };
    el("button")
        .attr("type", "button")
        .live_attr("class", move || Some(if held.get() { "show-finish held" } else { "show-finish" }.to_owned()))
        .on("pointerdown", move |_| press())
        .on("pointerup", move |_| let_go())
        .on("pointerleave", move |_| let_go())
        .on("pointercancel", move |_| let_go())
        .on("contextmenu", |event| event.prevent_default())
        .on("click", move |_| {
            asked.set(true);
            focus("#show-question");
        })
        .text(say::FINISH)
        .view()
}
