//! The forms of the jeweller's own settings: each reads to what is written down.

pub mod calibration;
pub mod chances;
pub mod closure;
pub mod fit;
pub mod gauge;
pub mod holidays;
pub mod lead_time;
pub mod names;
pub mod place;
pub mod sizes;
pub mod stack;
pub mod try_on;
mod week;
pub mod workshop;
