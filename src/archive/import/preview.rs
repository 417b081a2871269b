//! Working out what a file would bring, row by row.

use std::collections::{BTreeMap, BTreeSet};

use super::plan::{Entry, FarOff, News, Offer, Plan, Refused, Unreadable};
use crate::archive::file::{FileError, Header, Row, open};
use crate::archive::installation::Installation;
use crate::archive::merge::{added, knows, merge};
use crate::book::change::Change;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, RecordId};
use crate::book::merge::conflict::Conflict;
use crate::book::record::{Kind, Record};
use crate::trade::wearer::Wearer;

/// A change may be dated this far after now: clocks differ, and so do days over the world.
const AHEAD_MS: i64 = 24 * 3_600_000;
/// 1 January 2020, UTC: no change was made before.
const LONG_AGO: Moment = Moment(1_577_836_800_000);
/// No phone makes so many changes: a number so far above ours was made by hand. One near 2^53 would leave no numbers for
/// anybody who reads it.
const MOST_AHEAD: u64 = 1 << 32;

/// What stands on this phone under the id of a row.
#[derive(Clone, Copy, Debug)]
pub enum Here<'a> {
    Nothing,
    Record(&'a Record),
    /// A row that cannot be read.
    Unreadable,
}

/// A preview in the making: rows go in, a plan comes out.
#[derive(Debug)]
pub struct Preview {
    installation: InstallationId,
    /// This phone's own practice: another one is kept beside, and nobody has to hear of it.
    practice: RecordId,
    next: u64,
    now: Moment,
    seen: BTreeSet<RecordId>,
    far_off: BTreeMap<InstallationId, FarOff>,
    /// The practice that is offered stands in the file, and can be read.
    has_offered: bool,
    /// The records of which a row was put aside here: what it held is not known any more.
    lost: BTreeSet<RecordId>,
    plan: Plan,
}

/// The plan of a whole file at once. `book` says what stands here under an id.
pub fn plan<'a>(
    bytes: Vec<u8>,
    installation: &Installation,
    book: impl Fn(RecordId) -> Here<'a>,
    now: Moment,
) -> Result<Plan, FileError> {
    let mut file = open(bytes)?;
    let practice = match book(installation.practice) {
        Here::Record(record) => Some(record),
        Here::Nothing | Here::Unreadable => None,
    };
    let mut preview = Preview::new(installation, practice, file.header(), now);
    while let Some(row) = file.next_row() {
        let row = row?;
        let here = row.id().map_or(Here::Nothing, &book);
        preview.take(row, here);
    }
    Ok(preview.finish())
}

impl Preview {
    /// `practice` is this phone's own, if anything was ever set in it.
    pub fn new(installation: &Installation, practice: Option<&Record>, header: &Header, now: Moment) -> Self {
        let is_blank = practice.is_none_or(|practice| practice.changes().is_empty());
        let other = header.practice.filter(|id| is_blank && *id != installation.practice);
        let plan = Plan {
            header: header.clone(),
            entries: Vec::new(),
            unreadable: Vec::new(),
            same: 0,
            erased_here: 0,
            far_off: Vec::new(),
            claims_ours: false,
            practice: other.map_or(Offer::None, Offer::Offered),
            perhaps: Vec::new(),
        };
        let (installation, practice, next) = (installation.id, installation.practice, installation.next);
        let (seen, far_off) = (BTreeSet::new(), BTreeMap::new());
        Preview { installation, practice, next, now, seen, far_off, has_offered: false, lost: BTreeSet::new(), plan }
    }

    /// Of these records a row was put aside here, so this installation cannot tell what it has written into them.
    pub fn with_lost(mut self, lost: BTreeSet<RecordId>) -> Self {
        self.lost = lost;
        self
    }

    /// Takes the next row of the file, with what stands here under its id.
    pub fn take(&mut self, row: Row, here: Here<'_>) {
        let (at, id) = (row.at, row.id());
        let mut left_out = |why, names| self.plan.unreadable.push(Unreadable { at, id, why, names });
        let record = match row.read {
            Err(why) => return left_out(Refused::Row(why), [None, None]),
            Ok(record) => record,
        };
        match refused(&record, here, !self.seen.insert(record.id), self.next) {
            Some(why) => {
                let name = |who| Couple(&record).name(who).map(str::to_owned);
                left_out(why, Wearer::BOTH.map(name));
            }
            None => self.take_record(record, here),
        }
    }

    pub fn finish(mut self) -> Plan {
        self.plan.far_off.extend(self.far_off.into_values());
        if !self.has_offered {
            self.plan.practice = Offer::None;
        }
        self.plan
    }

    fn take_record(&mut self, incoming: Record, here: Here<'_>) {
        let nothing = Record::new(incoming.id, incoming.kind);
        let (here, is_here) = match here {
            Here::Record(record) => (record, true),
            Here::Nothing | Here::Unreadable => (&nothing, false),
        };
        // It may stand here beside already, unused: it came in before, and was not taken over then.
        let is_offered = incoming.kind == Kind::Practice && self.plan.practice == Offer::Offered(incoming.id);
        self.has_offered |= is_offered;
        if here.erased().is_some() && incoming.erased().is_none() {
            self.plan.erased_here += 1;
            return;
        }
        if is_here && knows(here, &incoming) {
            self.plan.same += 1;
            return;
        }
        let merged = merge(here, &incoming);
        if is_here && merged == *here {
            self.plan.same += 1;
            return;
        }
        let entry = self.entry(here, is_here, &merged, incoming);
        self.plan.entries.push(entry);
    }

    fn entry(&mut self, here: &Record, is_here: bool, merged: &Record, incoming: Record) -> Entry {
        let added = added(here, merged);
        added.iter().for_each(|change| self.look_at(change, incoming.id));
        let is_beside = incoming.kind == Kind::Practice && incoming.id != self.practice;
        let is_silent = is_beside || here.erased().is_some();
        let news = match (incoming.erased().is_some(), is_here) {
            (true, true) if !is_silent => News::Erased,
            (true, _) => News::Silent,
            _ if is_silent => News::Silent,
            (false, true) => News::Changed,
            (false, false) => News::New,
        };
        let fields: BTreeSet<_> = added.iter().flat_map(|change| &change.sets).map(|set| &set.field).collect();
        let known: BTreeSet<_> = here.conflicts().iter().map(Conflict::field).collect();
        let conflicts = merged.conflicts();
        let is_asked = |field: &&Field| !is_beside && !known.contains(field);
        let conflicts = conflicts.iter().map(Conflict::field).filter(is_asked).cloned().collect();
        let fields = fields.into_iter().cloned().collect();
        Entry { incoming, news, fields, conflicts }
    }

    /// A change that is new here: whether its date can be right, and whether it claims to be ours.
    fn look_at(&mut self, change: &Change, record: RecordId) {
        let by = change.by();
        // It was written here, as far as anybody can tell, and went with the row that was put aside.
        let is_back = self.lost.contains(&record) && change.claimed.is_none() && change.stamp.n < self.next;
        if by == self.installation && !is_back {
            self.plan.claims_ours = true;
        }
        let ahead = change.at.0 > self.now.0.saturating_add(AHEAD_MS);
        if !ahead && change.at >= LONG_AGO {
            return;
        }
        let off = FarOff { by, at: change.at, record, ahead };
        let known = self.far_off.entry(by).or_insert(off);
        let how_far = |it: &FarOff| it.at.0.abs_diff(self.now.0);
        if how_far(&off) > how_far(known) {
            *known = off;
        }
    }
}

/// Why a record that can be read is left out all the same, if it is.
fn refused(incoming: &Record, here: Here<'_>, is_repeated: bool, next: u64) -> Option<Refused> {
    if is_repeated {
        return Some(Refused::Repeated);
    }
    if incoming.highest() > next.saturating_add(MOST_AHEAD) {
        return Some(Refused::Counter);
    }
    if incoming.kind == Kind::Practice && incoming.erased().is_some() {
        return Some(Refused::Settings);
    }
    match here {
        Here::Record(record) if record.kind != incoming.kind => Some(Refused::OtherKind),
        Here::Unreadable => Some(Refused::UnreadableHere),
        Here::Record(_) | Here::Nothing => None,
    }
}
