//! What the two said in their preparation lists: a page of its own, and a quiet line where the jeweller records the same.

use leptos::prelude::*;

use super::{CouplePage, couple_page};
use crate::app::address::{Address, Part, with_query};
use crate::app::state::app;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::parts::button::{Weight, link_button};
use crate::parts::el::live;
use crate::parts::layout::{column, para, row, section};
use crate::parts::page::page;
use crate::screens::shell::in_words::in_words;
use crate::trade::wearer::Wearer;
use crate::words::list::{handing, pages, taking as say};

pub fn said(id: RecordId) -> AnyView {
    let app = app();
    let CouplePage { head, .. } = couple_page(id, say::SAID, Part::PreparationList);
    let lists = move || {
        let lists = app.couple(id, |couple| {
            couple.said().into_iter().map(|it| (pages::said_on(it), handing::groups(it))).collect::<Vec<_>>()
        });
        let lists = lists.unwrap_or_default();
        if lists.is_empty() {
            return para("", say::NO_LIST_YET);
        }
        let mut views = vec![para("small", say::ONE_LIST)];
        views.extend(lists.into_iter().map(|(heading, groups)| section(heading, vec![in_words(groups)])));
        column(views)
    };
    let take_in = with_query(Address::TakeIn, &[("couple".to_owned(), id.to_string())]);
    let invite = Address::Part(id, Part::Invite).to_string();
    let ways =
        row(vec![link_button(Weight::Quiet, say::TAKE_IN, take_in), link_button(Weight::Quiet, say::INVITE, invite)]);
    page(head, column(vec![live(lists), ways]), None)
}

/// Whether they said anything of the rings of one of the two.
pub fn has_rings(couple: Couple<'_>, who: Wearer) -> bool {
    couple.said().into_iter().any(|said| said.rings(who) > 0)
}
