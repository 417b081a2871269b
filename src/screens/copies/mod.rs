//! What leaves the phone and what comes back: a couple's specification, files, differences between phones, the history,
//! and erasing for good.
//!
//! INVARIANT: everything here hangs off two functions, one for parts of a couple and one for settings, so that it can
//! be loaded apart from the rest.

mod bring_in;
mod brought;
mod differences;
mod erase;
mod history;
mod install;
mod list;
mod out;
mod phone_name;
mod preview;
mod rescue;
mod same;
mod specification;

pub use brought::arriving;
use leptos::prelude::*;
pub use rescue::rescue;

use crate::app::address::{Part, Setting};
use crate::book::id::RecordId;
use crate::screens::shell::couple_page::not_here;

/// A part of a couple that is about handing over or keeping.
pub fn part(id: RecordId, part: Part) -> AnyView {
    match part {
        Part::Specification => specification::specification(id),
        Part::Differences => differences::of_couple(id),
        Part::Same => same::same(id),
        Part::History => history::history(id),
        Part::Copy => out::one(id),
        Part::Erase => erase::erase(id),
        _ => not_here(),
    }
}

/// A setting that is about copies, phones or keeping.
pub fn setting(setting: Setting) -> AnyView {
    match setting {
        Setting::Install => install::install(),
        Setting::Copies => list::copies(),
        Setting::BringIn => bring_in::bring_in(),
        Setting::Differences => differences::of_practice(),
        Setting::PhoneName(by) => phone_name::phone_name(by),
        _ => not_here(),
    }
}
