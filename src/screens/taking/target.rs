//! Where a list goes: a new couple, or one that is in the book; and which of the two is which.

use leptos::prelude::*;

use crate::answers::list_match;
use crate::app::clock;
use crate::app::route::{asked, route};
use crate::app::state::App;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::preparation_list::{Again, PreparationList};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::el::{live, maybe, or_nothing};
use crate::parts::field::Field;
use crate::parts::layout::{column, para};
use crate::screens::shell::lower::lower;
use crate::trade::wearer::Wearer;
use crate::words::book as say_book;
use crate::words::list::{pages, taking as say};

/// So many couples are offered at a time.
const OFFERED: usize = 6;

const NEW: &str = "new";
const SAME: &str = "same";
const SWAPPED: &str = "swapped";

/// What was chosen.
#[derive(Clone, Copy)]
pub struct Target {
    /// Given once, so that a second press saves nothing twice.
    fresh: RecordId,
    /// The couple from whose page this was opened, if the list names two others.
    stranger: Option<RecordId>,
    into: RwSignal<String>,
    /// Which of the two is which, as the choice that is drawn has it.
    order: StoredValue<RwSignal<String>>,
}

impl Target {
    /// The couple that has the list already, or the one from whose page this was opened, unless the list names two
    /// others, or the only one with the same two names, or else a new one.
    pub fn new(app: App, said: StoredValue<PreparationList>, known: Option<RecordId>) -> Target {
        let query = route().query();
        let is_there = |id: &RecordId| untrack(|| app.couple(*id, |it| !it.is_blank())).unwrap_or(false);
        let are_others = |id: &RecordId| {
            let others = |couple: Couple<'_>| said.with_value(|said| list_match::names_others(couple, said, lower));
            untrack(|| app.couple(*id, others)).unwrap_or(false)
        };
        let from = asked(&query, "couple").and_then(RecordId::parse).filter(is_there);
        let stranger = from.filter(are_others).filter(|_| known.is_none());
        let named =
            || said.with_value(|said| among(app, |couples| list_match::only_of_these_names(couples, said, lower)));
        let into = known.or(from.filter(|_| stranger.is_none())).or_else(named).filter(is_there);
        Target {
            fresh: RecordId(clock::random()),
            stranger,
            into: RwSignal::new(into.map_or_else(|| NEW.to_owned(), |id| id.to_string())),
            order: StoredValue::new(RwSignal::new(SAME.to_owned())),
        }
    }

    pub fn id(self) -> RecordId {
        self.into.with_untracked(|into| RecordId::parse(into)).unwrap_or(self.fresh)
    }

    pub fn is_swapped(self) -> bool {
        self.into.with_untracked(|into| into != NEW) && self.order.get_value().with_untracked(|order| order == SWAPPED)
    }

    /// The choice of who is who, which begins with the order in which the names agree.
    fn order_of(self, app: App, said: StoredValue<PreparationList>, id: RecordId) -> RwSignal<String> {
        let crossed = |couple: Couple<'_>| said.with_value(|said| list_match::is_crossed(couple, said, lower));
        let is_crossed = untrack(|| app.couple(id, crossed)).unwrap_or(false);
        let order = RwSignal::new(if is_crossed { SWAPPED } else { SAME }.to_owned());
        self.order.set_value(order);
        order
    }
}

/// The couple that has this list already, and how this one stands to that.
pub fn known_list(app: App, said: &PreparationList) -> Option<(RecordId, Again)> {
    among(app, |couples| list_match::has_list(couples, said))
}

/// What is found among all couples.
fn among<T>(app: App, find: impl FnOnce(Box<dyn Iterator<Item = Couple<'_>> + '_>) -> T) -> T {
    untrack(|| app.with(|book| find(Box::new(book.couples.values().map(|record| Couple(record))))))
}

/// The choice of the couple, and of who is who.
pub fn choose(app: App, said: StoredValue<PreparationList>, target: Target) -> AnyView {
    if untrack(|| app.with(|book| book.couples.is_empty())) {
        return ().into_any();
    }
    let first = said.with_value(|said| said.name(Wearer::First).map(str::to_owned)).unwrap_or_default();
    let find = RwSignal::new(if offered(app, &first, target).is_empty() { String::new() } else { first });
    let couples = move || {
        let mut options = vec![option(NEW, say::NEW_COUPLE)];
        let found = find.with(|words| offered(app, words, target));
        options.extend(found.into_iter().map(|(id, names)| option(id.to_string(), names)));
        choice("into", say::INTO, Shape::Chips, options, target.into)
    };
    let who = move || {
        let id = target.into.with(|into| RecordId::parse(into))?;
        let names = untrack(|| app.couple(id, |it| Wearer::BOTH.map(|who| say_book::name_of(it, who))));
        let [one, other] = names?;
        let [first, second] = Wearer::BOTH.map(|who| said.with_value(|said| pages::of(said, who)));
        let options = vec![
            option(SAME, say::who_is_who([&first, &second], [&one, &other])),
            option(SWAPPED, say::who_is_who([&first, &second], [&other, &one])),
        ];
        let order = target.order_of(app, said, id);
        Some(choice("order", say::WHO_IS_WHO, Shape::Chips, options, order))
    };
    // A yes in a list does not speak over a no that the jeweller has heard.
    let said_no = move || {
        let id = target.into.with(|into| RecordId::parse(into))?;
        let agrees = said.with_value(PreparationList::agrees) == Some(true);
        let no = |couple: Couple<'_>| couple.recorded().is_some_and(|it| !it.agrees);
        (agrees && app.couple(id, no)?).then(|| para("caution", say::SAID_NO_BEFORE))
    };
    let stranger = target.stranger.and_then(|id| untrack(|| app.couple(id, say_book::names)));
    column(vec![
        or_nothing(stranger.map(|names| para("caution", say::not_theirs(&names)))),
        Field::new("find", say::FIND, find).enter("search").line(),
        live(couples),
        maybe(who),
        maybe(said_no),
    ])
}

/// Couples with these words, the one that is chosen, and the one from whose page this was opened.
fn offered(app: App, words: &str, target: Target) -> Vec<(RecordId, String)> {
    let chosen = target.into.with_untracked(|into| RecordId::parse(into));
    among(app, |couples| {
        let found = list_match::offered(couples, words, [target.stranger, chosen], OFFERED, lower);
        found.into_iter().map(|it| (it.0.id, say_book::names(it))).collect()
    })
}
