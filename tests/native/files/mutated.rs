//! Files that somebody, or something, has scribbled in: never a panic, and what is taken in can be kept and taken back.
//! That the phone's storage is left as it was by one that is refused is for `tests/web/storage/imports.rs`.

use crate::shared::set;
use std::collections::BTreeMap;

use super::mutate::mutate;
use super::{NOW, couple, header, installation};
use bandwright::archive::file::write;
use bandwright::archive::import::{Here, log, plan};
use bandwright::archive::row;
use bandwright::book::couple::Couple;
use bandwright::book::id::{InstallationId, RecordId, Stamp};
use bandwright::book::record::{Kind, Record};

/// How many files: 1,000,000 in `make prove`.
fn mutations() -> u64 {
    set("MUTATIONS", 4_000)
}

/// Rows are read in two ways: straight off their text where they are written as ours are, and otherwise by way of the
/// library. Whatever stands in a row, both come to the same. A name with an escape in it is read by the library.
#[test]
fn scribbled_over_rows_read_the_same_either_way() {
    let samples = [include_str!("../../reference/record-1.1.json"), include_str!("../../reference/record-1.0.json")];
    let small = row::write(&couple(3, InstallationId(1), 4, "fair"));
    let (mut good, mut bad) = (0, 0);
    for seed in 1..=mutations() {
        let sample = if seed % 8 == 0 { samples[seed as usize / 8 % 2] } else { &small };
        let Ok(text) = String::from_utf8(mutate(sample, seed)) else { continue };
        let other = text.replacen("\"changes\":", "\"chan\\u0067es\":", 1);
        if text == other {
            continue;
        }
        let read = row::read(&text);
        assert_eq!(read, row::read(&other), "seed {seed}: {text}");
        if let Ok(record) = &read {
            good += 1;
            assert_eq!(row::read(&row::write(record)).as_ref(), Ok(record), "seed {seed}: {text}");
        } else {
            bad += 1;
        }
    }
    println!("rows: seeds 1 to {}, {good} read, {bad} refused, the same either way", mutations());
    assert!(good > 0 && bad > 0);
}

#[test]
fn scribbled_over() {
    let sample = include_str!("../../reference/book-1.1.json");
    let small = write(&header(), &[couple(3, InstallationId(1), 4, "fair"), couple(4, InstallationId(2), 5, "studio")]);
    let mark = Record::mark(RecordId(4), Kind::Couple, Stamp { n: 2, by: InstallationId(9) });
    let book: BTreeMap<RecordId, Record> =
        [couple(3, InstallationId(8), 1, "kitchen"), mark].into_iter().map(|record| (record.id, record)).collect();
    let (mut refused, mut taken) = (0, 0);
    for seed in 1..=mutations() {
        let bytes = mutate(if seed % 16 == 0 { sample } else { &small }, seed);
        let here = |id| book.get(&id).map_or(Here::Nothing, Here::Record);
        let Ok(plan) = plan(bytes, &installation(), here, NOW) else {
            refused += 1;
            continue;
        };
        for entry in &plan.entries {
            taken += 1;
            let here = book.get(&entry.incoming.id);
            let (record, added) = log::take_in(here, &entry.incoming);
            let text = row::write(&record);
            assert_eq!(row::read(&text).as_ref(), Ok(&record), "seed {seed}: what is taken in can be kept");
            if let Some(here) = here {
                let kept =
                    here.changes().iter().all(|change| record.changes().iter().any(|it| it.says_the_same(change)));
                assert!(kept || record.erased().is_some(), "seed {seed}: nothing of ours is lost");
            }
            if let Some(added) = added {
                let log = log::ImportLog {
                    at: NOW,
                    by: plan.header.by,
                    under: None,
                    next: 100,
                    practice: None,
                    records: vec![],
                    unknown: None,
                };
                let back = log.take_back(&added, &record, &installation());
                assert_eq!(back.as_ref().map(Record::changes), here.map(Record::changes), "seed {seed}");
            }
            let _ = bandwright::book::checklist::next(Couple(&record));
        }
    }
    println!("mutations: seeds 1 to {}, {refused} files refused, {taken} records taken in", mutations());
    assert!(refused > 0 && taken > 0);
}
