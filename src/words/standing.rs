//! How well a figure is founded, in words.

use crate::trade::measure::Standing;

pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "published",
        Standing::Derived => "derived",
        Standing::CommonPractice => "common practice",
        Standing::FromMemory => "from memory",
        Standing::Yours => "yours",
    }
}
