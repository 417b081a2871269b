//! What would come in, before anything is written down.

use chrono::NaiveDate;
use leptos::prelude::*;

use super::target::{Target, choose, known_list};
use crate::answers::list_match;
use crate::app::address::Address;
use crate::app::form::Form;
use crate::app::route::go_instead;
use crate::app::state::{App, app};
use crate::archive::list::{is_newer, unknown_answers};
use crate::book::asks::AnswerKey;
use crate::book::couple::Couple;
use crate::book::preparation_list::{Again, AnswerError, PreparationList};
use crate::parts::choice::{Choosable, Shape, choice, option};
use crate::parts::el::{el, or_nothing};
use crate::parts::layout::{column, para, section};
use crate::screens::shell::in_words::in_words;
use crate::words::list::{asked, handing, pages, taking as say};

/// What is in a list, and what takes it in.
pub fn preview(said: PreparationList, form: Form) -> (AnyView, Callback<()>) {
    let app = app();
    let newer = is_newer(&said);
    let (mut said, wrong) = said.checked();
    let mut left_out: Vec<String> = wrong.into_iter().map(|(spot, why)| left_out(spot, why)).collect();
    // What a newer version of the list asked is kept with it; what no version asks is not.
    if !newer {
        let unknown = unknown_answers(&said);
        left_out.extend((unknown > 0).then(|| say::unknown(unknown)));
        said.unknown = None;
    }
    let again = known_list(app, &said);
    let older = again.filter(|(_, again)| matches!(again, Again::Older(_)));
    let keep = RwSignal::new(if older.is_some() { KEEP_NEWER } else { USE_THIS }.to_owned());
    let notes = vec![
        or_nothing((said.agrees() == Some(false)).then(|| para("caution", say::says_no(says_more(&said))))),
        or_nothing(said.agrees().is_none().then(|| para("caution", say::NOT_SAID))),
        or_nothing(newer.then(|| para("small", say::newer_minor(unknown_answers(&said))))),
        or_nothing(again.map(|(_, again)| say_again(again, said.saved))),
        or_nothing(older.map(|_| choice("which-list", say::WHICH_LIST, Shape::Chips, which_list(), keep))),
        or_nothing(said.answers.is_empty().then(|| para("", say::NOTHING_SAID))),
    ];
    let said = StoredValue::new(said);
    let target = Target::new(app, said, again.map(|(id, _)| id));
    let missing = (!left_out.is_empty()).then(|| {
        let rows = left_out.into_iter().map(|text| el("li").text(text).view()).collect();
        section(say::LEFT_OUT, vec![el("ul").class("list-points").children(rows).view()])
    });
    let content = column(vec![
        section(said.with_value(pages::said_on), notes),
        in_words(said.with_value(handing::groups)),
        or_nothing(missing),
        choose(app, said, target),
    ]);
    let take = move |()| match older {
        Some((id, _)) if keep.with_untracked(|keep| keep == KEEP_NEWER) => {
            form.done();
            form.reset();
            go_instead(&Address::Couple(id).to_string());
        }
        _ => save(app, said, target, form),
    };
    (content, Callback::new(take))
}

const KEEP_NEWER: &str = "keep-newer";
const USE_THIS: &str = "use-this";

fn which_list() -> Vec<Choosable> {
    vec![option(KEEP_NEWER, say::KEEP_NEWER_LIST), option(USE_THIS, say::USE_OLDER_LIST)]
}

fn say_again(again: Again, saved: NaiveDate) -> AnyView {
    match again {
        Again::Same => para("small", say::AGAIN_SAME),
        Again::Newer => para("small", say::AGAIN_NEWER),
        Again::Older(known) => para("caution", say::older_list(saved, known)),
    }
}

/// Whether there is more in a list than a no lets through.
fn says_more(said: &PreparationList) -> bool {
    said.answers.len() > said.clone().as_agreed().answers.len()
}

fn left_out(spot: AnswerKey, why: AnswerError) -> String {
    asked::left_out(spot.ask, why)
}

fn save(app: App, said: StoredValue<PreparationList>, target: Target, form: Form) {
    let id = target.id();
    let today = app.today.get_untracked();
    let writes = |into: Option<Couple<'_>>| list_match::writes(said.get_value(), target.is_swapped(), into, today);
    let writes = untrack(|| app.couple(id, |couple| writes(Some(couple)))).unwrap_or_else(|| writes(None));
    app.save(id, writes, say::TAKEN_IN.to_owned(), move || {
        form.done();
        form.reset();
        go_instead(&Address::Couple(id).to_string());
    });
}
