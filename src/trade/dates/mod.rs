//! Days: which are closed, how long work takes, and planning back from the wedding.
//!
//! INVARIANT: civil dates only. Today and the time of day are arguments; nothing here looks at a clock, walks
//! without a bound, or panics on a date at the edge of what can be written.
//!
//! Reading order: [`easter`] and the table `holidays.txt` feed [`holidays`]; [`closed`] lays a workshop's own weekdays and
//! closures over them and counts; [`spread`], [`lead_times`] and [`wedding`] are what goes in; [`countdown`] is the
//! answer; [`entry`] reads what people type.

pub mod closed;
pub mod countdown;
pub mod easter;
pub mod entry;
pub mod forecast;
pub mod holidays;
pub mod lead_times;
pub mod milestones;
pub mod odds;
pub mod places;
pub mod season;
pub mod spread;
pub mod wedding;
