//! The preparation list on the couple's own phone: read, and written at every key. It has nothing to do with the book.
//!
//! A link for others may be opened on a phone that has a list. If that list holds only the names of an earlier
//! link, a new one begins: a jeweller tries a link or two. If more was written, somebody is asked which list is to
//! be here, and the other can be put back. A link that shares a name with the list is taken for their own.

use std::cell::RefCell;

use leptos::prelude::*;

use super::address::{Address, Query};
use super::{clock, route};
use crate::archive::list::{read_invitation, write_invitation};
use crate::book::asks::{AnswerKey, Ask};
use crate::book::id::ItemId;
use crate::book::preparation_list::{Invitation, PreparationList};
use crate::storage::list as stored;
use crate::trade::wearer::Wearer;

thread_local! {
    /// The list where the phone would not keep it: then it lives as long as the page.
    static UNKEPT: RefCell<Option<PreparationList>> = const { RefCell::new(None) };
}

/// The list as it stands; an empty one where there is none.
pub fn now() -> PreparationList {
    UNKEPT
        .with_borrow(Clone::clone)
        .or_else(stored::kept)
        .unwrap_or_else(|| PreparationList::new(ItemId(clock::random()), clock::now().0))
}

/// Whether the phone keeps what is written; a page of the list follows it.
#[derive(Clone, Copy)]
pub struct Kept(pub RwSignal<bool>);

/// Whether the phone keeps what is written.
pub fn is_kept() -> bool {
    stored::can_keep() && UNKEPT.with_borrow(Option::is_none)
}

/// Whether this browser keeps anything at all.
pub fn can_keep() -> bool {
    stored::can_keep()
}

/// Takes up what the jeweller's link says, and takes it out of the address. Where it is for others than a list that
/// has been begun here, nothing is taken up: then it answers with the invitation, for somebody to decide.
pub fn take_up(query: &Query) -> Option<Invitation> {
    let invitation = read_invitation(query.iter().map(|(key, text)| (key.as_str(), text.as_str())));
    if invitation == Invitation::default() {
        return None;
    }
    let there = now();
    if !is_for_others(&invitation, &there) {
        invite(there, invitation);
    } else if is_begun(&there) {
        return Some(invitation);
    } else {
        drop(begin_for(&invitation));
    }
    None
}

/// Whether more is written in a list than the names that its link brought along.
pub fn is_begun(said: &PreparationList) -> bool {
    let brought = |who| match who {
        Some(Wearer::First) => said.invitation.first.as_deref(),
        Some(Wearer::Second) => said.invitation.second.as_deref(),
        None => None,
    };
    said.answers.keys().any(|spot| {
        let answer = said.get(*spot);
        answer.is_some() && !(spot.ask == Ask::Name && answer == brought(spot.who))
    })
}

/// Begins a new list for those whom a link invites, and answers with the one that was there.
pub fn begin_for(invitation: &Invitation) -> PreparationList {
    let before = delete();
    invite(now(), invitation.clone());
    before
}

/// Leaves a link unused, and takes it out of the address.
pub fn leave_link() {
    route::rename(&Address::List(None).to_string());
}

/// Whether nobody whom a link names is in a list that has names. One name may have been put right since.
fn is_for_others(invitation: &Invitation, said: &PreparationList) -> bool {
    let there = Wearer::BOTH.map(|who| said.name(who));
    let mut invited = [&invitation.first, &invitation.second].into_iter().flatten().peekable();
    let is_named = invited.peek().is_some() && there.iter().any(Option::is_some);
    is_named && invited.all(|name| !there.contains(&Some(name.as_str())))
}

/// Fills in whom a link names and nobody has written down yet, each in the own place if that is free.
fn invite(mut said: PreparationList, invitation: Invitation) {
    for (who, name) in [(Wearer::First, &invitation.first), (Wearer::Second, &invitation.second)] {
        let is_free = |who: &Wearer| said.name(*who).is_none();
        let is_there = Wearer::BOTH.iter().any(|who| said.name(*who) == name.as_deref());
        if let (Some(name), Some(who), false) = (name, [who, who.other()].into_iter().find(is_free), is_there) {
            said.set(AnswerKey::of(Ask::Name, who), name.clone(), clock::now().0);
        }
    }
    said.invitation = invitation;
    keep(&said);
    if is_kept() {
        leave_link();
    }
}

/// The text of an answer. Each key that is typed into it is kept.
pub fn text(spot: AnswerKey) -> RwSignal<String> {
    let text = RwSignal::new(now().answers.get(&spot).cloned().unwrap_or_default());
    let kept = use_context::<Kept>();
    Effect::new(move |typed: Option<()>| {
        let words = text.get();
        if typed.is_some() {
            // Read anew: another tab may have written other answers.
            let mut said = now();
            said.set(spot, words, clock::now().0);
            keep(&said);
            if let Some(Kept(kept)) = kept {
                kept.set(is_kept());
            }
        }
    });
    text
}

/// Deletes everything, and answers with it in case it is to be put back.
pub fn delete() -> PreparationList {
    let said = now();
    stored::forget();
    UNKEPT.set(None);
    said
}

pub fn put_back(said: &PreparationList) {
    keep(said);
}

/// The address of a list for somebody: what a link says.
pub fn address_for(invitation: &Invitation) -> String {
    let query: Query = write_invitation(invitation).into_iter().map(|(key, text)| (key.to_owned(), text)).collect();
    super::address::with_query(Address::List(None), &query)
}

fn keep(said: &PreparationList) {
    let unkept = (!stored::keep(said)).then(|| said.clone());
    UNKEPT.set(unkept);
}
