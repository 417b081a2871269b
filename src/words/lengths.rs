//! Lengths inside a sentence: without needless noughts.

use super::format;
use crate::trade::measure::Length;

/// A length in millimetres, no unit, with as many decimals as it needs and at most two: "3", "2.5", "0.28".
pub fn plain(length: Length) -> String {
    let hundredths = (length.mm() * 100.0).round() as i64;
    let decimals = match hundredths {
        whole if whole % 100 == 0 => 0,
        tenths if tenths % 10 == 0 => 1,
        _ => 2,
    };
    let rounded = Length::tenthousandths(hundredths.saturating_mul(100));
    if rounded < Length::ZERO {
        format!("−{}", format::mm(-rounded, decimals))
    } else {
        format::mm(rounded, decimals)
    }
}
