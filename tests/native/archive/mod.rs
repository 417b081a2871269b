//! How records are written down: the same bytes again, nothing unknown lost, nothing damaged taken for whole.

mod installation;
mod later;
mod refused;

use crate::arbitrary;
use crate::shared::cases;
use std::collections::BTreeSet;

use bandwright::archive::row::{RowError, read, write};
use bandwright::archive::version::MINOR;
use bandwright::book::couple::Couple;
use bandwright::book::field::Field;
use bandwright::book::id::Moment;
use bandwright::book::practice::Practice;
use bandwright::book::record::Record;
use bandwright::book::value::Value;
use bandwright::trade::dates::holidays::Region;
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::wearer::Wearer;
use proptest::prelude::*;
use serde_json::{Value as Json, json};

const COUPLE: &str = include_str!("../../reference/record-1.0.json");
const PRACTICE: &str = include_str!("../../reference/practice-1.0.json");

/// A small row of our version, to be changed.
fn row() -> Json {
    json!({
        "schema": format!("1.{MINOR}"),
        "id": "00000000000000000000000000000007",
        "kind": "couple",
        "changes": [
            {
                "by": "000000000000000000000000000a11ce", "n": 1, "at": 1_792_000_000_000_i64,
                "sets": [{ "field": "met", "value": "fair" }, { "field": "band.first.width", "value": 2.5 }],
            },
            {
                "by": "000000000000000000000000000a11ce", "n": 2, "at": 1_792_000_000_001_i64,
                "undoes": { "by": "000000000000000000000000000a11ce", "n": 1 },
                "sets": [{ "field": "met", "replaces": [{ "by": "000000000000000000000000000a11ce", "n": 1 }] }],
            },
        ],
    })
}

fn changed(change: impl FnOnce(&mut Json)) -> String {
    let mut row = row();
    change(&mut row);
    row.to_string()
}

fn check_same_again(text: &str) {
    let record = read(text).unwrap_or_else(|why| panic!("{why:?}: {text}"));
    assert_eq!(write(&record), text);
}

/// A sample of an earlier version is written as this version writes, and otherwise as it was.
fn check_rewritten(sample: &str) {
    // The version of the row stands at its end; that of a list within it is the list's own.
    let (row, _) = sample.trim_end().rsplit_once(",\"schema\":\"1.").unwrap();
    let text = format!("{row},\"schema\":\"1.{MINOR}\"}}");
    assert_eq!(write(&read(sample).unwrap()), text);
    check_same_again(&text);
}

/// One part of the names of these fields, where they have so many.
fn fields(fields: &[Field], part: usize) -> BTreeSet<String> {
    let name = |field| bandwright::archive::key::write(field);
    fields.iter().filter_map(|field| name(field).split('.').nth(part).map(str::to_owned)).collect()
}

fn kinds(record: &Record, part: usize) -> BTreeSet<String> {
    let held: Vec<_> = record.fields().map(|(field, _)| field.clone()).collect();
    fields(&held, part)
}

// ---- Frozen samples: a reader of 1.0 has to go on reading these, whatever comes after ----

#[test]
fn the_couple_of_1_0_still_reads_and_rewrites() {
    check_rewritten(COUPLE);
    let record = read(COUPLE).unwrap();
    let couple = Couple(&record);
    assert_eq!((couple.name(Wearer::First), couple.name(Wearer::Second)), (Some("Ines"), Some("Callum")));
    assert_eq!(couple.wedding(), Some(Wedding::Day("2027-05-22".parse().unwrap())));
    assert_eq!(couple.met(), Some("Wharfside wedding fair"), "the market was taken back");
    assert_eq!(couple.band(Wearer::First).width.unwrap().mm(), 2.5);
    assert_eq!(couple.order_size(Wearer::First).unwrap().size.quarters(), 50);
    assert_eq!(couple.rings(Wearer::First).len(), 1);
    assert_eq!(couple.readings(Wearer::First).len(), 1);
    assert_eq!(couple.dates().unwrap().extras.len(), 2);
    // A list that was taken in has a frozen sample of its own as well: reference/list-1.0.json.
    let all = fields(&arbitrary::couple_fields(), 0).into_iter();
    let all: BTreeSet<_> =
        all.filter(|kind| ![&later::OF_A_COUPLE[..], &later::OF_A_REMEDY].concat().contains(&kind.as_str())).collect();
    let held = kinds(&record, 0);
    assert_eq!(held, all, "a sample of every field");
}

#[test]
fn the_practice_of_1_0_still_reads_and_rewrites() {
    check_rewritten(PRACTICE);
    let record = read(PRACTICE).unwrap();
    let practice = Practice(&record);
    assert_eq!((practice.fair(), practice.region()), (Some("Barn Lane open day"), Region::Scotland));
    assert_eq!((practice.gauges().len(), practice.extras().len(), practice.closures().len()), (2, 1, 1));
    let all = fields(&arbitrary::practice_fields(), 1).into_iter();
    let all: BTreeSet<_> = all.filter(|kind| !later::OF_A_PRACTICE.contains(&kind.as_str())).collect();
    let held = kinds(&record, 1);
    assert_eq!(held, all, "a sample of every field");
}

// ---- A newer minor is carried through ----

#[test]
fn what_a_newer_minor_adds_is_carried_through() {
    let newer = |change: fn(&mut Json)| {
        let text = changed(|row| {
            row["schema"] = json!("1.7");
            change(row);
        });
        check_same_again(&text);
        // And still so after this version has written to it.
        let mut record = read(&text).unwrap();
        let stamp = record.changes()[0].stamp;
        let writes = vec![bandwright::book::change::Write::set(Field::Met, Value::Text("studio".into()))];
        arbitrary::say(&mut record, stamp.by, 9, writes).unwrap();
        let written: Json = serde_json::from_str(&write(&record)).unwrap();
        let original: Json = serde_json::from_str(&text).unwrap();
        for (key, value) in original.as_object().unwrap() {
            if key != "changes" {
                assert_eq!(&written[key], value, "{key}");
            }
        }
        let before = original["changes"].as_array().unwrap();
        assert_eq!(written["changes"].as_array().unwrap()[..before.len()], before[..]);
        assert_eq!(read(&write(&record)).as_ref(), Ok(&record));
    };
    newer(|_| ());
    newer(|row| row["locked"] = json!({ "by": ["bench", null, 1.5, -3, u64::MAX, true] }));
    newer(|row| row["changes"][0]["place"] = json!("kitchen"));
    newer(|row| row["changes"][0]["sets"][0]["sure"] = json!(false));
    newer(|row| row["changes"][0]["sets"][0]["field"] = json!("met.where.exactly"));
    newer(|row| row["changes"][0]["sets"][0] = json!({ "field": "moon", "value": { "phase": [1, 2, { "a": null }] } }));
    newer(|row| row["changes"][0]["sets"][0] = json!({ "field": "moon", "value": null }));
    newer(|row| row["changes"][0]["sets"][0] = json!({ "field": "moon" }));
    // Values that this version cannot read, and values of which it reads only a part.
    newer(|row| row["changes"][0]["sets"][0] = json!({ "field": "stage", "value": "engraved" }));
    newer(|row| row["changes"][0]["sets"][1]["value"] = json!({ "mm": 2.5, "by": "eye" }));
    newer(|row| {
        row["changes"][0]["sets"][0] =
            json!({ "field": "recorded", "value": { "agrees": true, "asked": "2026-10-03", "how": "aloud" } });
    });
    newer(|row| row["changes"][1]["undoes"]["because"] = json!("wrong couple"));
    newer(|row| row["changes"][1]["sets"][0]["replaces"][0]["seen"] = json!(1_792_000_000_000_i64));
    newer(|row| row["changes"][0]["sets"][0]["replaces"] = json!([]));
}

#[test]
fn what_a_newer_minor_means_is_read_as_far_as_it_is_known() {
    let text = changed(|row| {
        row["schema"] = json!("1.7");
        row["changes"][0]["sets"] = json!([
            { "field": "recorded", "value": { "agrees": false, "asked": "2026-10-03", "how": "aloud" } },
            { "field": "stage", "value": "engraved" },
        ]);
    });
    let record = read(&text).unwrap();
    assert!(!Couple(&record).recorded().unwrap().agrees, "a no is a no, whatever stands beside it");
    assert!(matches!(record.get(&Field::Stage), Some(Value::Unknown(_))));
}

// ---- Whatever comes ----

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn written_read_and_written_again_it_is_the_same(record in arbitrary::record()) {
        let text = write(&record);
        let again = read(&text);
        prop_assert_eq!(again.as_ref(), Ok(&record));
        prop_assert_eq!(write(&again.unwrap()), text);
    }

    /// Every value of every field at once.
    #[test]
    fn every_value_of_every_field(values in arbitrary::all_fields().iter().map(arbitrary::value_of).collect::<Vec<_>>()) {
        let mut record = arbitrary::new_couple();
        let fields = arbitrary::all_fields().into_iter().zip(values);
        let writes = fields.map(|(field, value)| bandwright::book::change::Write::set(field, value)).collect();
        arbitrary::say(&mut record, arbitrary::OURS, 1, writes);
        prop_assert_eq!(read(&write(&record)), Ok(record));
    }

    /// Another program that has read it and written it again may write 3.0 as 3: it is the same row.
    #[test]
    fn rewritten_by_another_program(record in arbitrary::record()) {
        let row: Json = serde_json::from_str(&write(&record)).unwrap();
        prop_assert_eq!(read(&one_kind(row).to_string()), Ok(record));
    }

    /// Cut off anywhere, a row is no row.
    #[test]
    fn cut_off(record in arbitrary::record(), at in any::<prop::sample::Index>()) {
        let text = write(&record);
        let chars: Vec<char> = text.chars().collect();
        let cut: String = chars[..at.index(chars.len())].iter().collect();
        prop_assert_eq!(read(&cut).err(), Some(RowError::NotJson));
    }

    /// One part replaced by something else: it is refused, or it is read and then written back unharmed. Nothing
    /// panics, nor does what is done with a record that was read.
    #[test]
    fn damaged(record in arbitrary::record(), newer in any::<bool>(), at in any::<prop::sample::Index>(), what in junk()) {
        let mut row: Json = serde_json::from_str(&write(&record)).unwrap();
        if newer {
            row["schema"] = json!("1.9");
        }
        let parts = count(&row);
        replace(&mut row, &mut at.index(parts), &what);
        let text = row.to_string();
        if let Ok(read_again) = read(&text) {
            let twice = read(&write(&read_again));
            prop_assert_eq!(twice.as_ref(), Ok(&read_again));
            let carried: Json = serde_json::from_str(&write(&read_again)).unwrap();
            prop_assert_eq!(in_order(one_kind(carried)), in_order(one_kind(row)));
            for change in read_again.changes() {
                read_again.undo(change.stamp, Moment(0));
            }
            read_again.undoable(arbitrary::OURS);
            let _ = bandwright::book::checklist::next(Couple(&read_again));
        }
    }

    /// Bytes changed anywhere.
    #[test]
    fn scribbled_over(record in arbitrary::record(), at in any::<prop::sample::Index>(), with in any::<char>()) {
        let mut chars: Vec<char> = write(&record).chars().collect();
        let at = at.index(chars.len());
        chars[at] = with;
        let _ = read(&chars.into_iter().collect::<String>());
    }
}

fn junk() -> impl Strategy<Value = Json> {
    prop_oneof![
        Just(json!(null)),
        any::<bool>().prop_map(|yes| json!(yes)),
        any::<i64>().prop_map(|number| json!(number)),
        (-1e6..1e6f64).prop_map(|number| json!((number * 16.0).round() / 16.0)),
        "\\PC{0,8}".prop_map(|text| json!(text)),
        Just(json!([])),
        Just(json!({})),
        Just(json!({ "by": "00000000000000000000000000000001", "n": 1 })),
        Just(json!([{ "field": "met" }])),
    ]
}

/// The row with its changes in the order of their stamps.
fn in_order(mut row: Json) -> Json {
    if let Some(changes) = row["changes"].as_array_mut() {
        changes.sort_by_key(|change| (change["n"].as_u64(), change["by"].to_string(), change.to_string()));
    }
    row
}

/// The row with every whole number written without a point, as most programs do that write JSON.
fn one_kind(json: Json) -> Json {
    match json {
        Json::Number(number) => match number.as_f64() {
            Some(float) if number.is_f64() && float.fract() == 0.0 && float.abs() < 1e15 => json!(float as i64),
            _ => Json::Number(number),
        },
        Json::Array(all) => all.into_iter().map(one_kind).collect(),
        Json::Object(all) => all.into_iter().map(|(name, part)| (name, one_kind(part))).collect(),
        other => other,
    }
}

/// How many parts a row has, itself left out.
fn count(json: &Json) -> usize {
    match json {
        Json::Array(all) => all.iter().map(|part| 1 + count(part)).sum(),
        Json::Object(all) => all.values().map(|part| 1 + count(part)).sum(),
        _ => 0,
    }
}

/// Replaces one of its parts, counted from the front.
fn replace(json: &mut Json, at: &mut usize, what: &Json) -> bool {
    let parts: Vec<&mut Json> = match json {
        Json::Array(all) => all.iter_mut().collect(),
        Json::Object(all) => all.values_mut().collect(),
        _ => return false,
    };
    for part in parts {
        if *at == 0 {
            *part = what.clone();
            return true;
        }
        *at -= 1;
        if replace(part, at, what) {
            return true;
        }
    }
    false
}
