//! The forms of a couple.

pub mod appointment;
pub mod band;
pub mod fitted;
pub mod invitation;
pub mod new_couple;
pub mod note;
pub mod people;
pub mod plan;
pub mod recorded;
pub mod ring;
pub mod stage;
pub mod taking;
pub mod wedding;
