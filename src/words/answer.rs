//! An answer in words, as the parts of a page show it: the figure with what stands beside it, its reasons, and what the
//! couple sees of it.

use crate::answers::Tone;

/// One large figure, and what belongs to it beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Headline {
    pub figure: String,
    pub lines: Vec<String>,
    pub tone: Tone,
}

impl Headline {
    /// While there is no answer.
    pub fn none() -> Headline {
        Headline { figure: String::new(), lines: Vec::new(), tone: Tone::Care }
    }
}

/// One reason of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    pub name: String,
    /// With its sign: "+0.75".
    pub amount: String,
    /// "0.25 mm a millimetre · common practice"; may be empty.
    pub why: String,
    /// What the reasons come to, under a stroke.
    pub sum: bool,
}

/// A reason that is one of several.
pub fn reason(name: impl Into<String>, amount: impl Into<String>, why: impl Into<String>) -> Reason {
    Reason { name: name.into(), amount: amount.into(), why: why.into(), sum: false }
}

/// What the couple is shown: nothing in it names anybody.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CoupleView {
    pub title: String,
    /// SVG text from `pictures`; empty for none.
    pub picture: String,
    pub figure: String,
    pub lines: Vec<String>,
}
