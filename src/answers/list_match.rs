//! Which couple of the book a preparation list is of, and which of the two is which.

use chrono::NaiveDate;

use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::book::preparation_list::{Again, PreparationList, again, take_in};
use crate::book::search::{self, Lower};
use crate::trade::wearer::Wearer;

type Names = [Option<String>; 2];

fn in_the_book(couple: Couple<'_>, lower: Lower) -> Names {
    Wearer::BOTH.map(|who| couple.name(who).map(lower))
}

fn in_the_list(said: &PreparationList, lower: Lower) -> Names {
    Wearer::BOTH.map(|who| said.name(who).map(lower))
}

/// Whether a list names two people of whom neither is one of this couple.
pub fn names_others(couple: Couple<'_>, said: &PreparationList, lower: Lower) -> bool {
    let (known, told) = (in_the_book(couple, lower), in_the_list(said, lower));
    let is_known = |name: &Option<String>| name.is_none() || known.contains(name);
    known.iter().any(Option::is_some) && !told.iter().any(is_known)
}

/// Whether the names agree with those of this couple only if the two change places.
pub fn is_crossed(couple: Couple<'_>, said: &PreparationList, lower: Lower) -> bool {
    let (known, told) = (in_the_book(couple, lower), in_the_list(said, lower));
    let agree = |one: &Option<String>, other: &Option<String>| one.is_some() && one == other;
    let straight = agree(&known[0], &told[0]) || agree(&known[1], &told[1]);
    !straight && (agree(&known[0], &told[1]) || agree(&known[1], &told[0]))
}

/// The only couple in sight that has both of these names, in whichever order; none if there are several.
pub fn only_of_these_names<'a>(
    couples: impl Iterator<Item = Couple<'a>>,
    said: &PreparationList,
    lower: Lower,
) -> Option<RecordId> {
    let told = in_the_list(said, lower);
    if told.iter().any(Option::is_none) {
        return None;
    }
    let is_them = |couple: &Couple<'_>| {
        let [one, other] = in_the_book(*couple, lower);
        let known = [[one.clone(), other.clone()], [other, one]];
        known.contains(&told) && couple.put_away().is_none()
    };
    let mut them = couples.filter(is_them).map(|couple| couple.0.id);
    them.next().filter(|_| them.next().is_none())
}

/// The couple that has this list already, and how this one stands to that.
pub fn has_list<'a>(
    mut couples: impl Iterator<Item = Couple<'a>>,
    said: &PreparationList,
) -> Option<(RecordId, Again)> {
    couples.find_map(|couple| {
        let known = couple.said().into_iter().find(|known| known.id == said.id)?;
        Some((couple.0.id, again(known, said)))
    })
}

/// What is written down to take a list in: into a couple, with the two in each other's place where that was chosen, or
/// into a new one.
pub fn writes(said: PreparationList, is_swapped: bool, into: Option<Couple<'_>>, today: NaiveDate) -> Vec<Write> {
    take_in(if is_swapped { said.swapped() } else { said }, into, today)
}

/// At most so many couples with these words. Those that are to stay in sight come first, the last of them before all,
/// whatever the words.
pub fn offered<'a>(
    couples: impl Iterator<Item = Couple<'a>>,
    words: &str,
    in_sight: [Option<RecordId>; 2],
    most: usize,
    lower: Lower,
) -> Vec<Couple<'a>> {
    let is_wanted = |couple: &Couple<'_>| {
        let is_in_sight = in_sight.contains(&Some(couple.0.id));
        !couple.is_blank() && (is_in_sight || search::matches(*couple, words, lower))
    };
    let mut found: Vec<Couple<'a>> = couples.filter(is_wanted).collect();
    let place = |couple: &Couple<'_>| in_sight.iter().rev().position(|id| *id == Some(couple.0.id));
    found.sort_by_key(|couple| place(couple).unwrap_or(in_sight.len()));
    found.truncate(most);
    found
}
