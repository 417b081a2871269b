//! Notices at the bottom ("Saved", with a way to undo it) and a banner at the top ("Update ready").
//!
//! The regions MUST be in the page before anything is said in them, or it is not read out: what is wrong in an
//! assertive region, everything else politely. A notice of something wrong MUST stay until it is closed. Nothing is
//! taken away while it has the focus: that is for the caller, who takes the list's items away.

use super::button::{Weight, button};
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
        move || {
            let mine = notices.get().into_iter().filter(|notice| notice.wrong.is_some() == wrong);
            mine.map(shown).collect::<Vec<_>>()
        }
    };
    view! {
        <div class="notices">
            <div role="alert">{said(true)}</div>
            <div role="status">{said(false)}</div>
        </div>
    }
    .into_any()
}

fn shown(notice: Notice) -> AnyView {
    let class = if notice.wrong.is_some() { "notice wrong" } else { "notice" };
    let mark = if notice.wrong.is_some() { Mark::Care } else { Mark::Done };
    let action = notice.action.map(|(label, press)| button(Weight::Plain, label, press));
    let close = notice.wrong.map(|close| button(Weight::Plain, part(PartWord::Close), close));
    view! {
        <div class=class>
            <p><span class="notice-sign" aria-hidden="true">{sign(mark)}</span>{notice.text}</p>
            {action}
            {close}
        </div>
    }
    .into_any()
}

/// A banner at the top of the page: something that is so until something is done about it. Its region is always in
/// the page; while `text` is none there is nothing in it.
pub fn banner(text: impl Into<Signal<Option<String>>>, action: impl Into<Words>, press: impl Into<Press>) -> AnyView {
    let (text, action, press) = (text.into(), action.into(), press.into());
    let shown = move || {
        text.get().map(|text| {
            view! {
                <div class="banner">
                    <p><span class="banner-sign" aria-hidden="true">{sign(Mark::Care)}</span>{text}</p>
                    {button(Weight::Quiet, action, press)}
                </div>
            }
        })
    };
    view! { <div role="status">{shown}</div> }.into_any()
}
