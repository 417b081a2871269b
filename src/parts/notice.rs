//! Notices at the bottom ("Saved", with a way to undo it) and a banner at the top ("Update ready").
//!
//! The regions MUST be in the page before anything is said in them, or it is not read out: what is wrong in an
//! assertive region, everything else politely. A notice of something wrong MUST stay until it is closed. Nothing is
//! taken away while it has the focus: that is for the caller, who takes the list's items away.

use super::button::{Weight, button};
use super::el::{el, live, maybe};
use super::layout::{all, block};
use super::{Press, Words};
use crate::words::parts::{Mark, PartWord, part, sign};
use leptos::prelude::*;

/// One notice.
#[derive(Clone)]
pub struct Notice {
    pub text: String,
    /// What can be done about it: its name, and what to do.
    pub action: Option<(String, Press)>,
    /// Something went wrong: it is read out at once and stays until it is closed.
    pub wrong: Option<Press>,
}

/// A notice that something was done, with a way to undo it.
pub fn done(text: impl Into<String>, action: Option<(String, Press)>) -> Notice {
    Notice { text: text.into(), action, wrong: None }
}

/// A notice that something went wrong; `close` takes it away.
pub fn wrong(text: impl Into<String>, action: Option<(String, Press)>, close: impl Into<Press>) -> Notice {
    Notice { text: text.into(), action, wrong: Some(close.into()) }
}

/// The notices that are due, at the bottom of the screen. Put in the page once, outside what changes.
pub fn notices(notices: impl Into<Signal<Vec<Notice>>>) -> AnyView {
    let notices = notices.into();
    let said = move |wrong: bool| {
        live(move || {
            let mine = notices.get().into_iter().filter(|notice| notice.wrong.is_some() == wrong);
            all(mine.map(shown).collect())
        })
    };
    let alert = el("div").attr("role", "alert").child(said(true)).view();
    let status = el("div").attr("role", "status").child(said(false)).view();
    block("notices", vec![alert, status])
}

fn shown(notice: Notice) -> AnyView {
    let class = if notice.wrong.is_some() { "notice wrong" } else { "notice" };
    let mark = if notice.wrong.is_some() { Mark::Care } else { Mark::Done };
    let action = notice.action.map(|(label, press)| button(Weight::Plain, label, press));
    let close = notice.wrong.map(|close| button(Weight::Plain, part(PartWord::Close), close));
    let text = signed("notice-sign", mark, notice.text);
    el("div").class(class).child(text).maybe_child(action).maybe_child(close).view()
}

/// A banner at the top of the page: something that is so until something is done about it. Its region is always in
/// the page; while `text` is none there is nothing in it.
pub fn banner(text: impl Into<Signal<Option<String>>>, action: impl Into<Words>, press: impl Into<Press>) -> AnyView {
    let (text, action, press) = (text.into(), action.into(), press.into());
    let shown = maybe(move || {
        let text = signed("banner-sign", Mark::Care, text.get()?);
        Some(block("banner", vec![text, button(Weight::Quiet, action.clone(), press)]))
    });
    el("div").attr("role", "status").child(shown).view()
}

/// A sentence with its sign before it.
fn signed(class: &'static str, mark: Mark, text: String) -> AnyView {
    let sign = el("span").class(class).attr("aria-hidden", "true").text(sign(mark)).view();
    el("p").child(sign).text(text).view()
}
