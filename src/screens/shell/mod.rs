//! What several rooms of the app need: page frames, forms, fields, and what goes along from one room to another. It
//! knows no room; rooms do not know each other.

pub mod beside;
pub mod calendar_file;
pub mod couple_page;
pub mod fields;
pub mod form_page;
pub mod from_glass;
pub mod group;
pub mod handed;
pub mod in_words;
pub mod lower;
pub mod setting_page;
pub mod show;
pub mod tab_warning;
