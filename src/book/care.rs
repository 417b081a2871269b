//! What wants another look, of what is written down of a couple.

/// What wants another look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Care {
    /// The wedding is known only by its month or year, or not at all yet.
    DateNotFixed,
    /// Only a part of it is known.
    Incomplete,
    /// The calculation asked for another reading.
    MeasureAgain,
    /// Something that it rests on has changed since.
    Changed,
    /// A head holds the band off, and nobody has chosen what to do about it.
    RemedyOpen,
    /// The rings or the band have changed since it was chosen.
    RemedyStale,
    /// A band is to be shaped, and nothing goes to the bench to shape it by.
    BenchOpen,
    /// A ring goes to the bench, and from when to when is not said.
    AwayOpen,
    /// A ring is at the bench when the wedding is.
    AwayAtWedding,
    /// Two phones say different things of it, and nobody has chosen yet.
    Differs,
}
