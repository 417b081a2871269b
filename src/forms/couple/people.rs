//! The names of the two, the ways to reach them, and where they were met.

use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::id::ItemId;
use crate::book::verbs;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::trade::entry::{Contact, read_contact};
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;

pub const FIRST_NAME: Key = Key::new("first-name");
pub const SECOND_NAME: Key = Key::new("second-name");
pub const MET: Key = Key::new("met");
/// The fields for ways to reach them.
const REACH: [Key; 6] = [
    Key::new("reach"),
    Key::new("reach-2"),
    Key::new("reach-3"),
    Key::new("reach-4"),
    Key::new("reach-5"),
    Key::new("reach-6"),
];

/// What was read.
#[derive(Clone, Debug, PartialEq)]
pub struct PeopleTyped {
    pub first: String,
    pub second: Option<String>,
    pub met: Option<String>,
    /// By their fields.
    pub reach: Vec<Option<String>>,
}

/// The fields for ways to reach them, where so many are known: one each, as far as there are fields, and one more.
pub fn reach(known: usize) -> &'static [Key] {
    &REACH[..REACH.len().min(known.saturating_add(1))]
}

/// A way to reach them as it can be used; none for one that came from elsewhere and is neither a number nor an address.
pub fn contact(text: &str) -> Option<Contact> {
    read_contact(text).ok()
}

pub fn start(couple: Couple<'_>) -> Texts {
    let known = couple.reach();
    let texts = Texts::default()
        .with(FIRST_NAME, couple.name(Wearer::First).unwrap_or_default())
        .with(SECOND_NAME, couple.name(Wearer::Second).unwrap_or_default())
        .with(MET, couple.met().unwrap_or_default());
    let of = |at: usize| known.get(at).map_or("", |(_, text)| *text);
    reach(known.len()).iter().enumerate().fold(texts, |texts, (at, key)| texts.with(*key, of(at)))
}

/// Reads the form of a couple of whom so many ways to reach them are known.
pub fn read(texts: &Texts, known: usize) -> Result<PeopleTyped, Complaints> {
    let mut form = Reader::new(texts);
    let first = form.needed(FIRST_NAME, Limit::NameText);
    let second = form.optional_name(SECOND_NAME);
    let met = form.optional_line(MET);
    let reach: Vec<_> = reach(known).iter().map(|key| form.optional_contact(*key)).collect();
    let typed = (|| {
        let reach = reach.into_iter().collect::<Option<Vec<_>>>()?;
        Some(PeopleTyped { first: first?, second: second?, met: met?, reach })
    })();
    form.checked(typed)
}

impl PeopleTyped {
    /// What is written down. `known` are the ways to reach them in the order of the fields, `fresh` is for one more.
    pub fn writes(self, known: &[ItemId], fresh: ItemId) -> Vec<Write> {
        let mut writes = vec![
            verbs::name(Wearer::First, Some(self.first)),
            verbs::name(Wearer::Second, self.second),
            verbs::met(self.met),
        ];
        for (at, text) in self.reach.into_iter().enumerate() {
            let known = known.get(at).copied();
            if known.is_some() || text.is_some() {
                writes.push(verbs::reach(known.unwrap_or(fresh), text));
            }
        }
        writes
    }
}
