//! What more than one subject needs: lengths, days, reference rows, figures of a drawing.

use bandwright::book::change::Write;
use bandwright::book::field::Field;
use bandwright::book::value::Value;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::spread::{Spread, WorkingDays};
use bandwright::trade::measure::Length;
use chrono::NaiveDate;
use proptest::prelude::ProptestConfig;

/// So many cases a property; at length, where PROPTEST_CASES asks for more than the usual 256, as many times more.
pub fn cases(usual: u32) -> ProptestConfig {
    let config = ProptestConfig::default();
    let cases = u64::from(usual) * u64::from(config.cases) / 256;
    ProptestConfig { cases: u32::try_from(cases).unwrap_or(u32::MAX).max(1), ..config }
}

/// Whether everything is to be tried, as `make prove` does, or a share of what takes long.
pub fn is_at_length() -> bool {
    ProptestConfig::default().cases > 256
}

/// A number of an environment variable: how many histories, how many mutations.
pub fn set(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).ok().and_then(|count| count.parse().ok()).unwrap_or(otherwise)
}

pub fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

pub fn date(text: &str) -> NaiveDate {
    text.parse().unwrap_or_else(|_| panic!("not a date: {text}"))
}

/// Where a couple was met.
pub fn met(place: &str) -> Vec<Write> {
    vec![Write::set(Field::Met, Value::Text(place.into()))]
}

/// The regions of which GOV.UK has lists.
pub const UK: [Region; 3] = [Region::EnglandAndWales, Region::Scotland, Region::NorthernIreland];

/// "15/17/20".
pub fn spread(text: &str) -> Spread {
    let days: Vec<u16> = text.split('/').map(|days| days.parse().unwrap()).collect();
    Spread::new(WorkingDays(days[0]), WorkingDays(days[1]), WorkingDays(days[2])).unwrap()
}

/// The lines of a reference file, without its source lines and its heading.
pub fn lines(file: &str) -> Vec<String> {
    let path = format!("{}/tests/reference/{file}", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
    text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()).skip(1).map(str::to_owned).collect()
}

/// The same in cells.
pub fn rows(file: &str) -> Vec<Vec<String>> {
    lines(file).iter().map(|line| line.split(',').map(str::to_owned).collect()).collect()
}

/// The figures of an attribute, of every element of a drawing that has this in its tag.
pub fn figures(svg: &str, within: &str, attribute: &str) -> Vec<f64> {
    let value = |tag: &str| {
        let (_, rest) = tag.split_once(&format!(" {attribute}=\""))?;
        rest.split('"').next()?.trim_end_matches("mm").parse().ok()
    };
    svg.split('<').filter(|tag| tag.contains(within)).filter_map(value).collect()
}
