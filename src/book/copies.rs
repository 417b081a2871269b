//! What of the book has not been copied yet.

use super::couple::Couple;
use super::id::{InstallationId, Moment};
use super::leaving::may_leave;
use super::record::{Kind, Record};

/// After so long with changes that no copy holds, it is time for one.
const LONGEST_MS: i64 = 7 * 24 * 60 * 60 * 1000;

/// When the last copy of the whole book left the phone, and which number this installation's next change had then:
/// every change of its own with a lower number is in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastCopy {
    pub at: Moment,
    pub next: u64,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

/// The earliest change made here that no copy holds. What came from another phone is on that phone too; what may not
/// leave waits for no copy.
pub fn waiting<'a>(
    records: impl Iterator<Item = &'a Record>,
    ours: &[InstallationId],
    last: Option<&LastCopy>,
) -> Option<Moment> {
    let covered = last.map_or(0, |last| last.next);
    let leaves = |record: &&Record| record.kind == Kind::Practice || may_leave(Couple(record)).is_ok();
    let new = |record: &'a Record| record.changes().iter().rev().take_while(move |change| change.stamp.n >= covered);
    records.filter(leaves).flat_map(new).filter(|change| ours.contains(&change.by())).map(|change| change.at).min()
}

/// Whether it is time for a copy.
pub fn is_due(waiting: Option<Moment>, now: Moment) -> bool {
    waiting.is_some_and(|since| now.0.saturating_sub(since.0) >= LONGEST_MS)
}
