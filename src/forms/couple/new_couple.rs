//! A new couple: one name is enough.

use chrono::NaiveDate;

use super::people::{FIRST_NAME, MET, SECOND_NAME};
use super::recorded::MAY_RECORD;
use super::wedding::WEDDING;
use crate::book::change::Write;
use crate::book::id::ItemId;
use crate::book::value::Recorded;
use crate::book::verbs;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::dates::wedding::Wedding;
use crate::trade::limits::Limit;

pub const REACH: Key = Key::new("reach");

/// What was read.
#[derive(Clone, Debug, PartialEq)]
pub struct NewCouple {
    pub first: String,
    pub second: Option<String>,
    pub reach: Option<String>,
    pub wedding: Option<Wedding>,
    pub met: Option<String>,
    /// Whether they agree to be recorded; none if they were not asked.
    pub agrees: Option<bool>,
}

/// A couple that is met at the fair of today, if there is one.
pub fn start(fair: Option<&str>) -> Texts {
    Texts::default()
        .with_blank([FIRST_NAME, SECOND_NAME, REACH, WEDDING])
        .with(MET, fair.unwrap_or_default())
        .with(MAY_RECORD, write::NOT_ASKED)
}

pub fn read(texts: &Texts, today: NaiveDate) -> Result<NewCouple, Complaints> {
    let mut form = Reader::new(texts);
    let first = form.needed(FIRST_NAME, Limit::NameText);
    let second = form.optional_name(SECOND_NAME);
    let reach = form.optional_contact(REACH);
    let wedding = form.optional_wedding(WEDDING, today);
    let met = form.optional_line(MET);
    let agrees = form.answer(MAY_RECORD);
    let typed =
        (|| Some(NewCouple { first: first?, second: second?, reach: reach?, wedding: wedding?, met: met?, agrees }))();
    form.checked(typed)
}

impl NewCouple {
    /// What is written down. `item` is for the way to reach them.
    pub fn writes(self, item: ItemId, today: NaiveDate) -> Vec<Write> {
        let mut writes = verbs::meet(self.first, self.second, self.met, today);
        writes.extend(self.reach.map(|text| verbs::reach(item, Some(text))));
        writes.extend(self.wedding.map(|wedding| verbs::marry(Some(wedding))));
        writes.extend(self.agrees.map(|agrees| verbs::record(Some(Recorded { agrees, asked: today }))));
        writes
    }
}
