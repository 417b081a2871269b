//! Numbers in, a drawing out: each picture is to scale, from the same figures as the answer beside it.
//!
//! INVARIANT: pure. A picture knows no screen, no state and no browser; it is text in SVG. It has no colour of its
//! own, only classes that `style/parts/picture.css` gives a colour by its job, and it carries a text alternative that
//! says the same as it shows. Whatever the figures, nothing runs off its edge and nothing panics.
//!
//! Why SVG as text and not as views: it is pure, so that it is tested natively, and weighs a third. [`pen`]
//! escapes every word that is drawn, and no picture has an inline style, so that the content security policy stays
//! strict.

pub mod ahead;
mod calendar_months;
pub mod calendar_strip;
mod calendar_weeks;
pub mod glass;
pub mod installing;
pub mod ladder;
pub mod layout;
pub mod measuring;
pub mod order_size;
pub mod ornament;
pub mod paper;
pub mod pen;
pub mod rules;
pub mod section;
pub mod side;
pub mod size_rules;
pub mod stack;
pub mod stack_answer;
pub mod unrolled;

/// A finished drawing: an `<svg>` element with `role="img"` and its text alternative.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    pub svg: String,
}
