//! Reads the reference rows for dates.
#![allow(dead_code, reason = "each test file uses its own part")]

use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::spread::{Spread, WorkingDays};
use chrono::NaiveDate;

pub fn date(text: &str) -> NaiveDate {
    text.parse().unwrap_or_else(|_| panic!("not a date: {text}"))
}

/// The rows of a reference file, without its source lines and its heading.
pub fn rows(file: &str) -> Vec<Vec<String>> {
    let path = format!("{}/tests/reference/{file}", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.map(|line| line.split(',').map(str::to_owned).collect()).collect()
}

/// The regions of which GOV.UK has lists.
pub const UK: [Region; 3] = [Region::EnglandAndWales, Region::Scotland, Region::NorthernIreland];

/// "15/17/20".
pub fn spread(text: &str) -> Spread {
    let days: Vec<u16> = text.split('/').map(|days| days.parse().unwrap()).collect();
    Spread::new(WorkingDays(days[0]), WorkingDays(days[1]), WorkingDays(days[2])).unwrap()
}
