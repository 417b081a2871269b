//! What the parts say of themselves: the words that no screen gives them.

/// Where a line of a list stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Mark {
    Done,
    Open,
    Care,
    Next,
}

impl Mark {
    pub const ALL: [Mark; 4] = [Mark::Done, Mark::Open, Mark::Care, Mark::Next];
}

/// The mark as a sign for the eye.
pub fn sign(mark: Mark) -> &'static str {
    match mark {
        Mark::Done => "✓",
        Mark::Open => "○",
        Mark::Care => "▲",
        Mark::Next => "→",
    }
}

/// The mark in words, for ears.
pub fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Done => "Done",
        Mark::Open => "Not done",
        Mark::Care => "Needs care",
        Mark::Next => "Next",
    }
}

/// The few words that belong to a part itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PartWord {
    Back,
    Places,
    Close,
    Care,
}

/// The word of a part.
pub fn part(word: PartWord) -> &'static str {
    match word {
        PartWord::Back => "Back",
        PartWord::Places => "Places",
        PartWord::Close => "Close",
        PartWord::Care => "Take care:",
    }
}
