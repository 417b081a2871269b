//! The figures of a stack: gaps, the usual free length, and what counts as being roomy and full.

use leptos::prelude::*;

use super::{back_to_usual, head, open};
use crate::app::address::Setting;
use crate::forms::setup::stack as form_of;
use crate::parts::lay::{all, block, para};
use crate::screens::fields;
use crate::screens::form_page::form_page;
use crate::trade::limits::{self, Limit};
use crate::trade::stack::House;
use crate::words::{practice as say, screens as say_frame};

const HERE: Setting = Setting::Stack;

pub fn stack() -> AnyView {
    let usual = House::default();
    let page = open(HERE, form_of::start);
    let form = page.form;
    let save = move || {
        let Some(writes) = page.read(form_of::read) else { return };
        page.save(writes, say_frame::saved(say::STACK));
    };
    let length = |of, limit| say::usual_length(of, limits::of(limit).standing);
    let share = |of| say::usual_share(of, limits::of(Limit::StackShare).standing);
    let free = format!("{} {}", say::FREE_LENGTH_WHY, length(usual.free_length, Limit::FreeLength));
    let roomy = format!("{} {}", say::ROOMY_WHY, share(usual.roomy));
    let full = format!("{} {}", say::FULL_WHY, share(usual.full));
    let clearance = length(usual.clearance, Limit::Clearance);
    let catch = length(usual.catch, Limit::HeightDifference);
    let thinnest = length(usual.thinnest, Limit::RingHeight);
    let content = all(vec![
        para("small", say::EMPTY_IS_USUAL),
        block(
            "ledger",
            vec![
                fields::mm(form, form_of::FREE_LENGTH, say::FREE_LENGTH).hint(free).line(),
                fields::mm(form, form_of::GAP, say::GAP).hint(length(usual.gap, Limit::GapBetweenRings)).line(),
                fields::percent(form, form_of::ROOMY, say::ROOMY).hint(roomy).line(),
                fields::percent(form, form_of::FULL, say::FULL).hint(full).line(),
                fields::mm(form, form_of::CLEARANCE, say::CLEARANCE).hint(clearance).line(),
                fields::mm(form, form_of::CATCH, say::CATCH).hint(catch).line(),
                fields::mm(form, form_of::THINNEST, say::THINNEST).hint(thinnest).enter("done").line(),
            ],
        ),
        back_to_usual(page, say::STACK, &form_of::FIELDS),
    ]);
    form_page(head(HERE, say::STACK), form, content, say_frame::SAVE, save)
}
