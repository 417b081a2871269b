//! The figures of a stack: gaps, the usual free length, and what counts as being roomy and full.

use leptos::prelude::*;

use super::{back_to_usual, head, open};
use crate::app::address::Setting;
use crate::forms::setup::stack as form_of;
use crate::parts::layout::{all, block, para};
use crate::screens::shell::fields;
use crate::screens::shell::form_page::form_page;
use crate::words::{practice as say, screens as say_frame};

const HERE: Setting = Setting::Stack;

pub fn stack() -> AnyView {
    let page = open(HERE, form_of::start);
    let form = page.form;
    let save = move || {
        let Some(writes) = page.read(form_of::read) else { return };
        page.save(writes, say_frame::saved(say::STACK));
    };
    let [free, gap, roomy, full, clearance, catch, thinnest] = say::house_usual();
    let content = all(vec![
        para("small", say::EMPTY_IS_USUAL),
        block(
            "ledger",
            vec![
                fields::mm(form, form_of::FREE_LENGTH, say::FREE_LENGTH).hint(free).line(),
                fields::mm(form, form_of::GAP, say::GAP).hint(gap).line(),
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
