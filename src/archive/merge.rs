//! Merging two records of one id: all that either holds.
//!
//! Commutative, associative, idempotent: the union of two sets of changes. Erasing wins over everything.

use std::cmp::Ordering;
use std::collections::BTreeMap;
use std::sync::Arc;

use super::carried::carried;
use super::collision;
use super::version::version;
use crate::book::change::Change;
use crate::book::id::Stamp;
use crate::book::record::Record;

/// What both records hold together. Of different ids or kinds, the first as it is.
pub fn merge(one: &Record, other: &Record) -> Record {
    if one.id != other.id || one.kind != other.kind {
        return one.clone();
    }
    let (mut merged, other) = match (one.erased(), other.erased()) {
        (Some(stamp), Some(also)) if also > stamp => (other.clone(), Some(one)),
        (Some(_), Some(_)) => (one.clone(), Some(other)),
        (Some(_), None) => (one.clone(), None),
        (None, Some(_)) => (other.clone(), None),
        (None, None) if one.changes() == other.changes() => (one.clone(), Some(other)),
        (None, None) => {
            let mut merged = Record::of(one.id, one.kind, collision::separate(union(one.changes(), other.changes())));
            merged.unknown.clone_from(&one.unknown);
            (merged, Some(other))
        }
    };
    // What was written beside a record that is erased is gone with it.
    if let Some(other) = other {
        merged.unknown = both(merged.unknown.as_deref(), other.unknown.as_deref());
    }
    merged
}

/// Whether a record holds everything that another one of the same id does, so that merging them changes nothing.
pub fn knows(one: &Record, other: &Record) -> bool {
    one.erased() == other.erased()
        && one.kind == other.kind
        && one.unknown == other.unknown
        && other.changes().iter().all(|change| holds(one, change))
}

/// Whether a record holds a change as it is.
fn holds(record: &Record, change: &Change) -> bool {
    let place = record.changes().binary_search_by_key(&change.stamp, |known| known.stamp);
    place.is_ok_and(|place| *record.changes()[place] == *change)
}

/// Two lists in the order of their stamps as one. What is in both is there once, unless something else claims its
/// stamp.
fn union(one: &[Arc<Change>], other: &[Arc<Change>]) -> Vec<Arc<Change>> {
    let mut all = Vec::with_capacity(one.len().max(other.len()) + 1);
    let (mut one, mut other) = (one.iter().peekable(), other.iter().peekable());
    loop {
        let next = match (one.peek(), other.peek()) {
            (Some(a), Some(b)) if a == b => one.next().and(other.next()),
            (Some(a), Some(b)) if b.stamp < a.stamp => other.next(),
            (None, _) => other.next(),
            _ => one.next(),
        };
        match next {
            Some(change) => all.push(Arc::clone(change)),
            None => return all,
        }
    }
}

/// Those changes of a record that an earlier state of it did not hold, whatever other changes claim their stamps.
pub fn added<'a>(before: &Record, after: &'a Record) -> Vec<&'a Change> {
    let has_collisions = |record: &Record| record.changes().iter().any(|change| change.claimed.is_some());
    let all = after.changes().iter().map(|change| &**change);
    if !has_collisions(before) && !has_collisions(after) {
        return all.filter(|change| !holds(before, change)).collect();
    }
    let mut known: BTreeMap<Stamp, Vec<&Change>> = BTreeMap::new();
    for change in before.changes() {
        known.entry(change.made_under()).or_default().push(change);
    }
    let is_known = |change: &&Change| {
        known.get(&change.made_under()).is_some_and(|same| same.iter().any(|known| known.says_the_same(change)))
    };
    all.filter(|change| !is_known(change)).collect()
}

/// What newer versions wrote beside two states of a record: every key of either. Where they differ, the higher version
/// counts, and otherwise the text that sorts last: the same whichever comes first.
fn both(one: Option<&str>, other: Option<&str>) -> Option<String> {
    let (Some(text), Some(also)) = (one, other) else { return one.or(other).map(str::to_owned) };
    if text == also {
        return Some(text.to_owned());
    }
    let mut all = carried(Some(text));
    for (key, theirs) in carried(Some(also)) {
        let ours = all.get(&key);
        let order = ours.map(|ours| {
            let versions = (ours.as_str().and_then(version), theirs.as_str().and_then(version));
            versions.0.cmp(&versions.1).then_with(|| ours.to_string().cmp(&theirs.to_string()))
        });
        if order.is_none_or(|order| order == Ordering::Less) {
            all.insert(key, theirs);
        }
    }
    Some(serde_json::Value::Object(all).to_string())
}
