//! Names of things that must never be mistaken for one another: 128 random bits from the shell, written as 32 hex
//! digits. Never counters, never names of people.

use std::fmt;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u128);

        impl $name {
            /// Reads 32 lower-case hex digits; anything else is none.
            pub fn parse(text: &str) -> Option<Self> {
                parse(text).map($name)
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{:032x}", self.0)
            }
        }
    };
}

id!(
    /// A couple, or the practice.
    RecordId
);
id!(
    /// One of several things of a kind within a record: an appointment, a reading, a ring, a gauge.
    ItemId
);
id!(
    /// One installation of the app on one device.
    InstallationId
);

fn parse(text: &str) -> Option<u128> {
    let hex = text.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
    if text.len() == 32 && hex { u128::from_str_radix(text, 16).ok() } else { None }
}

/// The name of one change. `n` starts at 1 and is higher than every number that the installation has seen: so whatever
/// was seen comes before, in this order, without any clock. No installation uses a number twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    pub n: u64,
    pub by: InstallationId,
}

/// A moment, in milliseconds since 1970-01-01 00:00 UTC. Shown to people; never used to decide which change counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(pub i64);
