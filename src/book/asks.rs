//! What the couple's preparation list asks: rows, no branches. The words of the questions are in `words`.
//!
//! Codes are our own and stay as they are: lists that were handed over hold them.

use crate::trade::wearer::Wearer;

/// One thing that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ask {
    Name,
    Wedding,
    NeededBy,
    Hand,
    Finger,
    FirstRing,
    OwnsRings,
    RingName,
    RingWidth,
    RingTop,
    RingMetal,
    RingHow,
    ToCome,
    Colour,
    Metal,
    Nickel,
    Likes,
    Engraving,
    Work,
    Sport,
    Budget,
    BudgetLeast,
    BudgetMost,
    Else,
    Recorded,
}

/// Whom it is asked of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// Both together.
    Both,
    Each,
    /// Each, of every ring they own.
    Ring,
}

/// What an answer is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Name,
    Line,
    Note,
    /// A date as far as it is known, in their own words.
    Wedding,
    /// Millimetres, in their own words.
    Width,
    /// One of these codes.
    Choice(&'static [&'static str]),
}

/// The questions as the couple count them: each may take several fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Question {
    Names,
    Wedding,
    NeededBy,
    Wearing,
    FirstRing,
    Rings,
    ToCome,
    Metal,
    Nickel,
    Likes,
    Engraving,
    Work,
    Sport,
    Budget,
    Else,
    Recorded,
}

/// A page of the list, in the order in which they are offered; any order will do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Section {
    Two,
    Wedding,
    Wearing,
    Rings,
    Look,
    Hands,
    Budget,
    /// What to bring, to read.
    Bring,
    /// How and when not to measure a finger, to read.
    Measure,
    Privacy,
    /// Handing it over.
    Send,
}

impl Section {
    pub const ALL: [Section; 11] = [
        Section::Two,
        Section::Wedding,
        Section::Wearing,
        Section::Rings,
        Section::Look,
        Section::Hands,
        Section::Budget,
        Section::Bring,
        Section::Measure,
        Section::Privacy,
        Section::Send,
    ];

    /// Its word in addresses.
    pub fn code(self) -> &'static str {
        match self {
            Section::Two => "two",
            Section::Wedding => "wedding",
            Section::Wearing => "wearing",
            Section::Rings => "rings",
            Section::Look => "look",
            Section::Hands => "hands",
            Section::Budget => "budget",
            Section::Bring => "bring",
            Section::Measure => "measure",
            Section::Privacy => "privacy",
            Section::Send => "send",
        }
    }

    pub fn from_code(code: &str) -> Option<Section> {
        Section::ALL.into_iter().find(|section| section.code() == code)
    }

    /// What is asked there; nothing on a page to read.
    pub fn questions(self) -> &'static [Question] {
        match self {
            Section::Two => &[Question::Names],
            Section::Wedding => &[Question::Wedding, Question::NeededBy],
            Section::Wearing => &[Question::Wearing, Question::FirstRing],
            Section::Rings => &[Question::Rings, Question::ToCome],
            Section::Look => &[Question::Metal, Question::Nickel, Question::Likes, Question::Engraving],
            Section::Hands => &[Question::Work, Question::Sport],
            Section::Budget => &[Question::Budget, Question::Else],
            Section::Privacy => &[Question::Recorded],
            Section::Bring | Section::Measure | Section::Send => &[],
        }
    }

    /// The one after it, if there is one.
    pub fn next(self) -> Option<Section> {
        Section::ALL.get(self as usize + 1).copied()
    }
}

/// How many questions there are.
pub const QUESTIONS: usize = 16;

/// So many rings are asked about for each of the two.
pub const RINGS_MOST: u8 = 6;

/// One row of the list.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    pub ask: Ask,
    pub code: &'static str,
    pub of: Of,
    pub kind: Kind,
    pub question: Question,
}

/// The code of the answer that there are rings; of that there is a range of money.
pub const SOME: &str = "some";
pub const RANGE: &str = "range";

const HANDS: Kind = Kind::Choice(&["left", "right", "unsure"]);
const FINGERS: Kind = Kind::Choice(&["ring", "middle", "index", "little", "thumb", "unsure"]);
const YES_NO: Kind = Kind::Choice(&["yes", "no"]);
const SOME_NONE: Kind = Kind::Choice(&[SOME, "none"]);
const OWNED: Kind = Kind::Choice(&["yellow-gold", "rose-gold", "white-gold", "platinum", "silver", "other", "unsure"]);
const HOW: Kind = Kind::Choice(&["ruler", "calliper", "card", "guess"]);
const COLOURS: Kind = Kind::Choice(&["yellow", "rose", "white", "dark", "two", "unsure"]);
const METALS: Kind = Kind::Choice(&["gold", "platinum", "palladium", "silver", "other", "unsure"]);
const NICKEL: Kind = Kind::Choice(&["yes", "no", "unsure"]);
const BUDGET: Kind = Kind::Choice(&[RANGE, "in-person", "unsure"]);

#[rustfmt::skip]
pub const ROWS: [Row; 25] = [
    row(Ask::Name, "name", Of::Each, Kind::Name, Question::Names),
    row(Ask::Wedding, "wedding", Of::Both, Kind::Wedding, Question::Wedding),
    row(Ask::NeededBy, "needed-by", Of::Both, Kind::Line, Question::NeededBy),
    row(Ask::Hand, "hand", Of::Each, HANDS, Question::Wearing),
    row(Ask::Finger, "finger", Of::Each, FINGERS, Question::Wearing),
    row(Ask::FirstRing, "first-ring", Of::Each, YES_NO, Question::FirstRing),
    row(Ask::OwnsRings, "owns-rings", Of::Each, SOME_NONE, Question::Rings),
    row(Ask::RingName, "ring-name", Of::Ring, Kind::Line, Question::Rings),
    row(Ask::RingWidth, "ring-width", Of::Ring, Kind::Width, Question::Rings),
    row(Ask::RingTop, "ring-top", Of::Ring, Kind::Width, Question::Rings),
    row(Ask::RingMetal, "ring-metal", Of::Ring, OWNED, Question::Rings),
    row(Ask::RingHow, "ring-how", Of::Ring, HOW, Question::Rings),
    row(Ask::ToCome, "to-come", Of::Both, Kind::Note, Question::ToCome),
    row(Ask::Colour, "colour", Of::Each, COLOURS, Question::Metal),
    row(Ask::Metal, "metal", Of::Each, METALS, Question::Metal),
    row(Ask::Nickel, "nickel-free", Of::Each, NICKEL, Question::Nickel),
    row(Ask::Likes, "likes", Of::Each, Kind::Note, Question::Likes),
    row(Ask::Engraving, "engraving", Of::Each, Kind::Line, Question::Engraving),
    row(Ask::Work, "work", Of::Each, Kind::Line, Question::Work),
    row(Ask::Sport, "sport", Of::Each, Kind::Line, Question::Sport),
    row(Ask::Budget, "budget", Of::Both, BUDGET, Question::Budget),
    row(Ask::BudgetLeast, "budget-least", Of::Both, Kind::Line, Question::Budget),
    row(Ask::BudgetMost, "budget-most", Of::Both, Kind::Line, Question::Budget),
    row(Ask::Else, "else", Of::Both, Kind::Note, Question::Else),
    row(Ask::Recorded, "recorded", Of::Both, YES_NO, Question::Recorded),
];

const _: () = {
    let mut place = 0;
    while place < ROWS.len() {
        assert!(ROWS[place].ask as usize == place);
        place += 1;
    }
    assert!(Ask::Recorded as usize + 1 == ROWS.len() && Question::Recorded as usize + 1 == QUESTIONS);
};

const fn row(ask: Ask, code: &'static str, of: Of, kind: Kind, question: Question) -> Row {
    Row { ask, code, of, kind, question }
}

impl Ask {
    pub fn row(self) -> &'static Row {
        // The assertion under the table holds when it is compiled: every ask has its row at its own place.
        &ROWS[self as usize]
    }
}

/// The place of one answer: what was asked, of whom, and of which of their rings (1 is the first).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct AnswerKey {
    pub ask: Ask,
    pub who: Option<Wearer>,
    pub ring: Option<u8>,
}

impl AnswerKey {
    pub const fn both(ask: Ask) -> AnswerKey {
        AnswerKey { ask, who: None, ring: None }
    }

    pub const fn of(ask: Ask, who: Wearer) -> AnswerKey {
        AnswerKey { ask, who: Some(who), ring: None }
    }

    pub const fn ring(ask: Ask, who: Wearer, ring: u8) -> AnswerKey {
        AnswerKey { ask, who: Some(who), ring: Some(ring) }
    }

    /// Whether something is asked there.
    pub fn exists(self) -> bool {
        match self.ask.row().of {
            Of::Both => self.who.is_none() && self.ring.is_none(),
            Of::Each => self.who.is_some() && self.ring.is_none(),
            Of::Ring => self.who.is_some() && self.ring.is_some_and(|ring| (1..=RINGS_MOST).contains(&ring)),
        }
    }

    /// The same answer if the two were named in the other order.
    pub fn swapped(self) -> AnswerKey {
        let other = |who| if who == Wearer::First { Wearer::Second } else { Wearer::First };
        AnswerKey { who: self.who.map(other), ..self }
    }
}
