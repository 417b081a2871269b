//! What a file would bring.

use crate::archive::file::Header;
use crate::archive::row::RowError;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, RecordId};
use crate::book::record::{Kind, Record};
use crate::book::same::Sought;
use crate::book::search::Lower;

/// Everything that a file would bring. Nothing has been changed yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    pub header: Header,
    /// What would come in, in the order of the file.
    pub entries: Vec<Entry>,
    /// The rows of the file that would be left out.
    pub unreadable: Vec<Unreadable>,
    /// How many records hold nothing that is not here already.
    pub same: usize,
    /// How many were erased on this phone, and stay so.
    pub erased_here: usize,
    /// Dates that cannot be right: the farthest of each installation whose clock must be wrong.
    pub far_off: Vec<FarOff>,
    /// The file holds changes under this installation's name that it never made: another phone writes under the same
    /// name, and this one takes a new one.
    pub claims_ours: bool,
    pub practice: Offer,
    /// Couples that would be new and may be here already under another id: theirs, then the one here.
    pub perhaps: Vec<(RecordId, RecordId)>,
}

/// A record of the file that would change something here.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// As the file has it.
    pub incoming: Record,
    pub news: News,
    /// The fields for which the file says something that is not known here.
    pub fields: Vec<Field>,
    /// The fields for which a person would have to choose, and did not have to before.
    pub conflicts: Vec<Field>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum News {
    /// Not here yet.
    New,
    /// Here, and the file knows more.
    Changed,
    /// Here, and erased in the file: this is final.
    Erased,
    /// Nothing to show: the mark of a record that never was here, or another installation's practice.
    Silent,
}

/// A row that is left out, its place in the file from 1, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    pub at: usize,
    pub id: Option<RecordId>,
    pub why: Refused,
    /// The names of the couple, as far as it has any, where the row can be read.
    pub names: [Option<String>; 2],
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It cannot be read.
    Row(RowError),
    /// Another row of the file has the same id.
    Repeated,
    /// The record of this id on this phone cannot be read, and is not written over.
    UnreadableHere,
    /// It is a couple in the file and a practice here, or the other way round.
    OtherKind,
    /// It counts its changes with numbers that no phone gets to.
    Counter,
    /// It erases settings, which nobody can: they are changed.
    Settings,
}

/// A date that cannot be right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FarOff {
    pub by: InstallationId,
    pub at: Moment,
    pub record: RecordId,
    /// In time to come; otherwise long before there was such an app.
    pub ahead: bool,
}

/// Whether the practice of the file may become this phone's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offer {
    None,
    /// Nothing is set on this phone yet: the jeweller may take over the settings of the file, as after a lost phone.
    Offered(RecordId),
}

impl Plan {
    /// Whether no record would change; settings may still be offered.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The couples that would be new, to be looked for among those that are here.
    pub fn sought(&self, lower: Lower) -> Sought {
        let mut sought = Sought::default();
        let new = self.entries.iter().filter(|entry| entry.news == News::New && entry.incoming.kind == Kind::Couple);
        new.for_each(|entry| sought.add(Couple(&entry.incoming), lower));
        sought
    }

    /// How many entries are of this kind.
    pub fn count(&self, news: News) -> usize {
        self.entries.iter().filter(|entry| entry.news == news).count()
    }

    /// How many couples would come in or change.
    pub fn couples(&self) -> usize {
        let comes = |entry: &&Entry| matches!(entry.news, News::New | News::Changed);
        self.entries.iter().filter(comes).filter(|entry| entry.incoming.kind == Kind::Couple).count()
    }

    /// How many entries would wait for a decision.
    pub fn in_conflict(&self) -> usize {
        self.entries.iter().filter(|entry| !entry.conflicts.is_empty()).count()
    }
}
