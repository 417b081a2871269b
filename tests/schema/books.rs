//! Makes books for checks outside `cargo test`.
//!
//! - `books lines 10000`: so many random files, one JSON text a line, for a schema to judge
//! - `books cells 10000`: so many lines of a spreadsheet, each with what it was made from, as JSON
//! - `books write 20000 FILE`: one file with so many couples as they are met at fairs
//! - `books speed 1000 10000`: what it takes to read, merge and write two such books, in milliseconds

#[path = "../native/arbitrary/mod.rs"]
mod arbitrary;

use std::collections::BTreeMap;
use std::io::{BufWriter, Write as _, stdout};
use std::time::Duration;

use bandwright::archive::file::{Header, Holds, write};
use bandwright::archive::import::{Here, log, plan};
use bandwright::archive::installation::Installation;
use bandwright::book::change::Write;
use bandwright::book::example;
use bandwright::book::field::Field;
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::Value;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

const NOW: Moment = Moment(1_792_000_000_000);

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["lines", count] => lines(count.parse().expect("how many")),
        ["cells", count] => cells(count.parse().expect("how many")),
        ["write", count, file] => {
            let couples = couples(count.parse().expect("how many"), InstallationId(1));
            let text = write(&header(), &couples);
            std::fs::write(file, &text).expect("the file can be written");
            println!("{} couples, {} bytes", couples.len(), text.len());
        }
        ["speed", counts @ ..] => {
            let mut first = None;
            for count in counts {
                let count: usize = count.parse().expect("how many");
                let took = speed(count);
                let each = took.as_secs_f64() * 1e6 / count as f64;
                let first = *first.get_or_insert(each);
                println!(
                    "  compared and merged: {} ms, {:.2} of 500 ms for 10,000; {each:.1} us a couple, {:.2} times the first",
                    took.as_millis(),
                    took.as_secs_f64() / 0.5 * 10_000.0 / count as f64,
                    each / first
                );
            }
        }
        _ => panic!("books lines COUNT | books cells COUNT | books write COUNT FILE | books speed COUNT..."),
    }
}

fn header() -> Header {
    Header { written: NOW, by: arbitrary::OURS, practice: None, holds: Holds::Book, unknown: None }
}

/// Any book at all, the same every time.
fn lines(count: usize) {
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let mark = (any::<u128>(), any::<u128>(), 1u64..1 << 53)
        .prop_map(|(id, by, n)| Record::mark(RecordId(id), Kind::Couple, Stamp { n, by: InstallationId(by) }));
    let book = vec(prop_oneof![6 => arbitrary::record(), 1 => mark], 0..4);
    let mut out = BufWriter::new(stdout().lock());
    for _ in 0..count {
        let records = book.new_tree(&mut runner).expect("a book").current();
        let practice = records.iter().find(|record| record.kind == Kind::Practice).map(|record| record.id);
        let holds = if practice.is_some() { Holds::Book } else { Holds::Couples };
        // Between the parts of JSON a line break is a space like any other.
        let text = write(&Header { practice, holds, ..header() }, &records).replace('\n', " ");
        writeln!(out, "{text}").expect("somebody reads it");
    }
}

/// Any texts at all, many of them with what spreadsheets take for something else.
fn cells(count: usize) {
    let mut runner = TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let cells = vec(prop_oneof!["[=+@, \"0-9\\r\\n\\t-]{0,6}", "[+]?[0-9 ]{0,14}", ".{0,12}"], 1..6);
    let mut out = BufWriter::new(stdout().lock());
    for _ in 0..count {
        let cells = cells.new_tree(&mut runner).expect("cells").current();
        let line = serde_json::json!({ "line": bandwright::archive::csv::line(&cells), "cells": cells });
        writeln!(out, "{line}").expect("somebody reads it");
    }
}

/// So many couples, each written down in one go and changed twice.
fn couples(count: usize, by: InstallationId) -> Vec<Record> {
    let today = "2026-10-03".parse().expect("a day");
    let mut item = 0;
    let invented = example::couples(today, || {
        item += 1;
        ItemId(item)
    });
    let mut n = 0;
    let mut say = |record: &mut Record, writes: Vec<Write>| {
        n += 1;
        arbitrary::say(record, by, n, writes);
    };
    let ids = (0..count).map(|at| (at as u128 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15_f39c_c060_5ced_c835));
    ids.zip(invented.iter().cycle())
        .map(|(id, writes)| {
            let mut record = Record::new(RecordId(id), Kind::Couple);
            let writes = writes
                .iter()
                .filter(|write| !matches!(write.field, Field::Example | Field::Recorded))
                .cloned()
                .collect();
            say(&mut record, writes);
            say(&mut record, vec![Write::set(Field::Met, Value::Text("Barn Lane open day".into()))]);
            say(&mut record, vec![Write::set(Field::Note(ItemId(9)), Value::Text("Rang back, all well.".into()))]);
            record
        })
        .collect()
}

/// How long this program has been at work, others on the machine left out where the system tells.
fn cpu() -> Duration {
    let told = std::fs::read_to_string("/proc/self/schedstat").ok();
    let at_work = told.as_ref().and_then(|told| told.split(' ').next()?.parse().ok()).map(Duration::from_nanos);
    at_work.unwrap_or_else(|| std::time::UNIX_EPOCH.elapsed().unwrap_or_default())
}

/// A phone with one half of the couples, each also on the other's, takes in the other's file.
/// Answers with what reading, comparing and merging took.
fn speed(count: usize) -> Duration {
    let start = couples(count, InstallationId(1));
    let ours: BTreeMap<RecordId, Record> = start.iter().map(|record| (record.id, record.clone())).collect();
    let theirs: Vec<Record> = start
        .into_iter()
        .enumerate()
        .map(|(at, mut record)| {
            let n = 1_000_000 + at as u64;
            arbitrary::say(&mut record, InstallationId(2), n, vec![Write::set(Field::Met, Value::Text("van".into()))]);
            record
        })
        .collect();
    let since = cpu();
    let text = write(&header(), &theirs);
    let written = cpu() - since;
    let since = cpu();
    let mut reader = bandwright::archive::file::open(text.clone().into()).expect("a file of ours");
    let read = std::iter::from_fn(|| reader.next_row()).filter(|row| row.is_ok()).count();
    let read_in = cpu() - since;
    assert_eq!(read, count);
    let installation =
        Installation { id: InstallationId(1), practice: RecordId(1), next: 1_000_000, former: vec![], unknown: None };
    let since = cpu();
    let here = |id| ours.get(&id).map_or(Here::Nothing, Here::Record);
    let plan = plan(text.clone().into(), &installation, here, NOW).expect("a file of ours");
    let previewed = cpu() - since;
    assert_eq!(plan.entries.len(), count);
    let since = cpu();
    let merged: Vec<_> =
        plan.entries.iter().map(|entry| log::take_in(ours.get(&entry.incoming.id), &entry.incoming)).collect();
    let merged_in = cpu() - since;
    assert_eq!(merged.len(), count);
    println!(
        "{count} + {count} couples, {:.1} MB: written in {} ms, read in {} ms, read and compared in {} ms, merged in {} ms",
        text.len() as f64 / 1e6,
        written.as_millis(),
        read_in.as_millis(),
        previewed.as_millis(),
        merged_in.as_millis()
    );
    previewed + merged_in
}
