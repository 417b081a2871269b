//! Different changes under one stamp, as a cloned or restored phone makes them. All are kept, none is preferred.
//!
//! Each of them gets a stamp that follows from what it says: the same number, and in place of the installation a hash
//! of the change as it is written. So the same changes get the same stamps on every phone, in whatever order they came.
//! What names the stamp that several claim cannot say which of them it means: it replaces none of them, and they stand
//! side by side. In rows they stand under the stamp they were made under.
//!
//! Why all of them get another stamp, and none keeps its own: nobody could name that one without naming the
//! others, so a choice between them could not be written down. With a third such change the name might even move.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::change;
use crate::book::change::Change;
use crate::book::id::{InstallationId, Stamp};

/// The changes, each with a stamp of its own; one that is there twice, word for word, once.
pub fn separate(changes: Vec<Arc<Change>>) -> Vec<Arc<Change>> {
    if Change::are_in_order(&changes) && changes.iter().all(|change| change.claimed.is_none()) {
        return changes;
    }
    let mut by_stamp: BTreeMap<Stamp, Vec<Arc<Change>>> = BTreeMap::new();
    for mut change in changes {
        if let Some(claimed) = change.claimed {
            let change = Arc::make_mut(&mut change);
            change.stamp = claimed;
            change.claimed = None;
        }
        by_stamp.entry(change.stamp).or_default().push(change);
    }
    let mut all = Vec::with_capacity(by_stamp.len());
    for mut claimants in by_stamp.into_values() {
        // The usual case of two books that hold the same change.
        if claimants.len() == 2 && claimants[0].says_the_same(&claimants[1]) {
            claimants.pop();
        }
        if claimants.len() == 1 {
            all.append(&mut claimants);
        } else {
            all.extend(stand_ins(claimants));
        }
    }
    all
}

/// Gives each of several changes the stamp that follows from what it says; the only one that is left keeps its own.
fn stand_ins(claimants: Vec<Arc<Change>>) -> impl Iterator<Item = Arc<Change>> {
    let mut by_text: BTreeMap<String, Arc<Change>> = BTreeMap::new();
    for change in claimants {
        let mut text = String::new();
        change::write(&change, &mut text);
        by_text.insert(text, change);
    }
    let several = by_text.len() > 1;
    by_text.into_iter().map(move |(text, mut change)| {
        if several {
            let by = InstallationId(hash(text.as_bytes()));
            let change = Arc::make_mut(&mut change);
            change.claimed = Some(change.stamp);
            change.stamp.by = by;
        }
        change
    })
}

/// FNV-1a with 128 bits, by Fowler, Noll and Vo: small, and no secret depends on it.
pub fn hash(bytes: &[u8]) -> u128 {
    const OFFSET: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0100_0000_0000_0000_0000_013b;
    bytes.iter().fold(OFFSET, |hash, byte| (hash ^ u128::from(*byte)).wrapping_mul(PRIME))
}
