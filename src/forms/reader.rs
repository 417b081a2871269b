//! Reads the texts of a form, one way for each kind of field, and keeps what is wrong with which.

use chrono::{NaiveDate, NaiveTime};

use super::complaint::{Asked, Complaint, Complaints, Noun};
use super::size::SizeTyped;
use super::texts::{Key, Texts};
use crate::archive::code::Code;
use crate::trade::band::alloys::{self, Alloy};
use crate::trade::dates::entry as dates;
use crate::trade::dates::spread::{CalendarDays, Spread, SpreadError, WorkingDays};
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry::{self, NumberError, TextError, TextFault};
use crate::trade::limits::{Limit, Whole};
use crate::trade::measure::{Length, Percent};
use crate::trade::sizing::{SizeAsRead, System};

/// Reads a form. Each method answers with nothing where its field has to be put right, and notes why.
pub struct Reader<'a> {
    texts: &'a Texts,
    complaints: Complaints,
}

impl<'a> Reader<'a> {
    pub fn new(texts: &'a Texts) -> Reader<'a> {
        Reader { texts, complaints: Complaints::new() }
    }

    /// The value, unless something has to be put right.
    pub fn checked<T>(self, value: Option<T>) -> Result<T, Complaints> {
        value.filter(|_| self.complaints.is_empty()).ok_or(self.complaints)
    }

    /// What has to be put right.
    pub fn complaints(self) -> Complaints {
        self.complaints
    }

    pub fn is_fine(&self) -> bool {
        self.complaints.is_empty()
    }

    pub fn text(&self, key: Key) -> &'a str {
        self.texts.get(key)
    }

    pub fn is_blank(&self, key: Key) -> bool {
        self.text(key).trim().is_empty()
    }

    /// Hands on what was read, or notes what is wrong with it.
    pub fn note<T>(&mut self, key: Key, read: Result<T, Complaint>) -> Option<T> {
        read.map_err(|complaint| self.complain(key, complaint)).ok()
    }

    pub fn complain(&mut self, key: Key, complaint: Complaint) {
        self.complaints.push((key, complaint));
    }

    /// Nothing for an empty field; otherwise what `read` makes of it.
    fn optional<T>(&mut self, key: Key, read: impl FnOnce(&mut Self) -> Option<T>) -> Option<Option<T>> {
        if self.is_blank(key) { Some(None) } else { read(self).map(Some) }
    }

    // ---- Figures ----

    /// A length that has to be there.
    pub fn length(&mut self, key: Key, limit: Limit) -> Option<Length> {
        self.length_named(key, limit, Noun::OfLimit)
    }

    /// The same for a field with a name of its own.
    pub fn length_named(&mut self, key: Key, limit: Limit, noun: Noun) -> Option<Length> {
        let read = entry::read_length(self.text(key), limit);
        self.number(key, read, noun)
    }

    pub fn optional_length(&mut self, key: Key, limit: Limit) -> Option<Option<Length>> {
        self.optional_length_named(key, limit, Noun::OfLimit)
    }

    pub fn optional_length_named(&mut self, key: Key, limit: Limit, noun: Noun) -> Option<Option<Length>> {
        self.optional(key, |form| form.length_named(key, limit, noun))
    }

    pub fn percent(&mut self, key: Key, limit: Limit) -> Option<Percent> {
        let read = entry::read_percent(self.text(key), limit);
        self.number(key, read, Noun::OfLimit)
    }

    pub fn optional_percent(&mut self, key: Key, limit: Limit) -> Option<Option<Percent>> {
        self.optional(key, |form| form.percent(key, limit))
    }

    pub fn whole(&mut self, key: Key, limit: Limit) -> Option<Whole> {
        let read = entry::read_whole(self.text(key), limit);
        self.number(key, read, Noun::OfLimit)
    }

    fn number<T>(&mut self, key: Key, read: Result<T, NumberError>, noun: Noun) -> Option<T> {
        self.note(key, read.map_err(|error| Complaint::Number(error, noun)))
    }

    /// The widths of some rings, at most so many; none for an empty field.
    pub fn widths(&mut self, key: Key, most: usize) -> Option<Vec<Length>> {
        let read = entry::read_widths(self.text(key), most).map_err(Complaint::Widths);
        self.note(key, read)
    }

    // ---- Sizes ----

    /// A size; which of its readings is meant may be open still.
    pub fn size(&mut self, key: Key, which: Key, first: System) -> Option<SizeTyped> {
        let read = SizeTyped::read(self.text(key), self.text(which), first);
        self.note(key, read)
    }

    /// A size of which it is clear which reading is meant.
    pub fn meant_size(&mut self, key: Key, which: Key, first: System) -> Option<SizeAsRead> {
        let typed = self.size(key, which, first)?;
        self.note(key, typed.meant().cloned().ok_or(Complaint::WhichSize))
    }

    pub fn optional_size(&mut self, key: Key, which: Key, first: System) -> Option<Option<SizeTyped>> {
        self.optional(key, |form| form.size(key, which, first))
    }

    // ---- Words ----

    /// A name, or nothing for an empty field.
    pub fn optional_name(&mut self, key: Key) -> Option<Option<String>> {
        self.optional_text(key, Limit::NameText, Noun::OfLimit)
    }

    /// One line of text, or nothing for an empty field.
    pub fn optional_line(&mut self, key: Key) -> Option<Option<String>> {
        self.optional_text(key, Limit::LineText, Noun::OfLimit)
    }

    /// A text that has to be there.
    pub fn needed(&mut self, key: Key, limit: Limit) -> Option<String> {
        let read = entry::read_needed(self.text(key), limit);
        self.words(key, read, Noun::OfLimit)
    }

    pub fn optional_text(&mut self, key: Key, limit: Limit, noun: Noun) -> Option<Option<String>> {
        let read = entry::read_text(self.text(key), limit);
        self.words(key, read, noun)
    }

    /// A note; one with nothing in it is no note.
    pub fn note_text(&mut self, key: Key, limit: Limit) -> Option<String> {
        let read = entry::read_note(self.text(key), limit);
        let read = read.and_then(|note| note.ok_or(TextError { limit, fault: TextFault::Empty }));
        self.words(key, read, Noun::OfLimit)
    }

    fn words<T>(&mut self, key: Key, read: Result<T, TextError>, noun: Noun) -> Option<T> {
        self.note(key, read.map_err(|error| Complaint::Text(error, noun)))
    }

    /// A way to reach somebody, or nothing for an empty field.
    pub fn optional_contact(&mut self, key: Key) -> Option<Option<String>> {
        self.optional(key, |form| {
            let read = entry::read_contact(form.text(key)).map_err(Complaint::Contact);
            form.note(key, read).map(|contact| contact.text().to_owned())
        })
    }

    // ---- Days ----

    /// A wedding that has to be there, were it as "not yet".
    pub fn wedding(&mut self, key: Key, today: NaiveDate) -> Option<Wedding> {
        let read = dates::read_wedding(self.text(key), today);
        self.note(key, read.map_err(|error| Complaint::Date(error, Asked::Wedding)))
    }

    pub fn optional_wedding(&mut self, key: Key, today: NaiveDate) -> Option<Option<Wedding>> {
        self.optional(key, |form| form.wedding(key, today))
    }

    /// A day; one without a year is the next such day from `from` on.
    pub fn day(&mut self, key: Key, from: NaiveDate, today: NaiveDate) -> Option<NaiveDate> {
        let read = dates::read_day_from(self.text(key), from, today);
        self.note(key, read.map_err(|error| Complaint::Date(error, Asked::Day)))
    }

    pub fn optional_day(&mut self, key: Key, from: NaiveDate, today: NaiveDate) -> Option<Option<NaiveDate>> {
        self.optional(key, |form| form.day(key, from, today))
    }

    pub fn optional_time(&mut self, key: Key) -> Option<Option<NaiveTime>> {
        self.optional(key, |form| {
            let read = dates::read_time(form.text(key)).map_err(Complaint::Time);
            form.note(key, read)
        })
    }

    /// Days of the calendar.
    pub fn days(&mut self, key: Key, limit: Limit) -> Option<CalendarDays> {
        self.whole(key, limit).map(|days| CalendarDays(days.0))
    }

    pub fn optional_days(&mut self, key: Key, limit: Limit) -> Option<Option<CalendarDays>> {
        self.optional(key, |form| form.days(key, limit))
    }

    /// Three numbers of working days: the least, the usual, the most. What is wrong with their order is noted beside
    /// the one to change.
    pub fn spread(&mut self, keys: [Key; 3]) -> Option<Spread> {
        let [least, usual, most] = keys.map(|key| self.whole(key, Limit::LeadTimeDays).map(|days| WorkingDays(days.0)));
        let read = Spread::new(least?, usual?, most?);
        let at = match &read {
            Err(SpreadError::LeastAboveUsual { .. }) => keys[1],
            Ok(_) | Err(SpreadError::UsualAboveMost { .. } | SpreadError::TooLong { .. }) => keys[2],
        };
        self.note(at, read.map_err(Complaint::Spread))
    }

    /// The same, or nothing where all three are empty.
    pub fn optional_spread(&mut self, keys: [Key; 3]) -> Option<Option<Spread>> {
        if keys.iter().all(|key| self.is_blank(*key)) {
            return Some(None);
        }
        self.spread(keys).map(Some)
    }

    // ---- Choices ----

    /// What was chosen; none for a word that stands for nothing.
    pub fn choice<T: Code>(&self, key: Key) -> Option<T> {
        T::from_code(self.text(key))
    }

    pub fn metal(&self, key: Key) -> Option<&'static Alloy> {
        alloys::by_code(self.text(key))
    }

    /// The choices of a group of boxes that are ticked; a word that stands for nothing is left out.
    pub fn choices<T: Code>(&self, key: Key) -> Vec<T> {
        self.text(key).split(' ').filter_map(T::from_code).collect()
    }

    /// Yes or no; none for a question that nobody has asked.
    pub fn answer(&self, key: Key) -> Option<bool> {
        match self.text(key) {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        }
    }

    /// Whether a box is ticked.
    pub fn yes(&self, key: Key) -> bool {
        self.text(key) == "yes"
    }
}
