//! What a file would bring, and taking it back again.

use crate::shared::cases;
use std::collections::BTreeMap;

use super::{NOW, couple, header, installation};
use crate::arbitrary::{self, OURS, say};
use bandwright::archive::file::{Header, Holds, open, write};
use bandwright::archive::import::log::{self, ImportLog, Taken};
use bandwright::archive::import::{Here, News, Offer, Plan, Preview, Refused, plan};
use bandwright::archive::merge::merge;
use bandwright::archive::row::{self, RowError};
use bandwright::book::change::Write;
use bandwright::book::couple::Couple;
use bandwright::book::field::{Field, PracticeField};
use bandwright::book::id::{InstallationId, Moment, RecordId, Stamp};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::Value;
use bandwright::trade::wearer::Wearer;
use proptest::prelude::*;

const THEIRS: InstallationId = InstallationId(0xb0b);

type Book = BTreeMap<RecordId, Record>;

fn book(records: impl IntoIterator<Item = Record>) -> Book {
    records.into_iter().map(|record| (record.id, record)).collect()
}

fn planned(text: &str, book: &Book) -> Plan {
    let here = |id| book.get(&id).map_or(Here::Nothing, Here::Record);
    plan(text.into(), &installation(), here, NOW).unwrap()
}

/// What storage does with a plan, on a book in memory.
fn take_in(book: &mut Book, plan: &Plan) -> ImportLog {
    let mut records = Vec::new();
    for entry in &plan.entries {
        let (record, taken) = log::take_in(book.get(&entry.incoming.id), &entry.incoming);
        records.extend(taken);
        book.insert(record.id, record);
    }
    ImportLog { at: NOW, by: THEIRS, under: None, next: 100, practice: None, records, unknown: None }
}

fn take_back(book: &mut Book, log: &ImportLog) {
    for taken in &log.records {
        match log.take_back(taken, &book[&taken.id], &installation()) {
            Some(record) => book.insert(taken.id, record),
            None => book.remove(&taken.id),
        };
    }
}

fn set(record: &Record, by: InstallationId, n: u64, field: Field, text: &str) -> Record {
    let mut record = record.clone();
    say(&mut record, by, n, vec![Write::set(field, Value::Text(text.into()))]).unwrap();
    record
}

#[test]
fn what_a_file_would_bring() {
    let name = Field::Name(Wearer::First);
    let start = couple(1, OURS, 1, "fair");
    let away = [Write::set(Field::PutAway, Value::Day("2026-10-03".parse().unwrap()))];
    let mut put_away = couple(6, OURS, 6, "fair");
    let mut edited = put_away.clone();
    say(&mut put_away, OURS, 7, away.to_vec());
    say(&mut edited, THEIRS, 7, vec![Write::set(name.clone(), Value::Text("Ines".into()))]);
    let mark = |id, n| Record::mark(RecordId(id), Kind::Couple, Stamp { n, by: THEIRS });
    let here = book([
        set(&start, OURS, 2, Field::Met, "studio"),
        couple(2, OURS, 3, "market"),
        couple(3, OURS, 4, "kitchen"),
        mark(5, 9),
        put_away.clone(),
    ]);
    let theirs = [
        // Both have changed where they met; the name is theirs alone.
        set(&set(&start, THEIRS, 2, Field::Met, "barn"), THEIRS, 3, name.clone(), "Ines"),
        couple(2, OURS, 3, "market"),
        mark(3, 8),
        couple(4, THEIRS, 1, "van"),
        couple(5, THEIRS, 2, "bridge"),
        edited,
        mark(7, 3),
    ];
    let plan = planned(&write(&header(), &theirs), &here);
    let told: Vec<_> = plan.entries.iter().map(|entry| (entry.incoming.id.0, entry.news)).collect();
    let expected = [(1, News::Changed), (3, News::Erased), (4, News::New), (6, News::Changed), (7, News::Silent)];
    assert_eq!(told, expected);
    assert_eq!((plan.same, plan.erased_here, plan.in_conflict(), plan.count(News::New)), (1, 1, 2, 1));
    assert_eq!(plan.entries[0].fields, [name.clone(), Field::Met]);
    assert_eq!(plan.entries[0].conflicts, [Field::Met]);
    assert_eq!(
        (plan.entries[3].fields.as_slice(), plan.entries[3].conflicts.as_slice()),
        (&[name][..], &[Field::PutAway][..])
    );
    assert!(!plan.claims_ours && plan.far_off.is_empty() && plan.unreadable.is_empty() && !plan.is_empty());

    // Taken in, it is nothing new any more; taken back, all is as it was, but what was erased stays so.
    let mut now = here.clone();
    let log = take_in(&mut now, &plan);
    assert_eq!(log::read(&log::write(&log)).as_ref(), Ok(&log));
    assert!(planned(&write(&header(), &theirs), &now).is_empty());
    take_back(&mut now, &log);
    for id in [1, 2, 5, 6].map(RecordId) {
        assert_eq!(now[&id], here[&id]);
    }
    assert!(now[&RecordId(3)].erased().is_some() && !now.contains_key(&RecordId(4)));
}

#[test]
fn what_was_changed_here_since_stays() {
    let here = book([couple(1, OURS, 1, "fair")]);
    let theirs = [set(&here[&RecordId(1)], THEIRS, 2, Field::Met, "barn"), couple(2, THEIRS, 3, "van")];
    let mut now = here.clone();
    let plan = planned(&write(&header(), &theirs), &here);
    let log = take_in(&mut now, &plan);
    let name = Field::Name(Wearer::First);
    now.insert(RecordId(1), set(&now[&RecordId(1)], OURS, 100, name.clone(), "Ines"));
    now.insert(RecordId(2), set(&now[&RecordId(2)], OURS, 101, name, "Callum"));
    take_back(&mut now, &log);
    let told = |id| (Couple(&now[&RecordId(id)]).met(), Couple(&now[&RecordId(id)]).name(Wearer::First));
    assert_eq!(told(1), (Some("fair"), Some("Ines")));
    assert_eq!(told(2), (None, Some("Callum")));
    // And taken in again, all is there again.
    take_in(&mut now, &plan);
    let told = |id| (Couple(&now[&RecordId(id)]).met(), Couple(&now[&RecordId(id)]).name(Wearer::First));
    assert_eq!((told(1), told(2)), ((Some("barn"), Some("Ines")), (Some("van"), Some("Callum"))));
}

#[test]
fn what_was_written_over_an_import_is_asked_about_once_the_import_is_taken_back() {
    let here = book([couple(1, OURS, 1, "fair")]);
    let theirs = [set(&here[&RecordId(1)], THEIRS, 2, Field::Met, "barn")];
    let mut now = here.clone();
    let plan = planned(&write(&header(), &theirs), &here);
    let log = take_in(&mut now, &plan);
    now.insert(RecordId(1), set(&now[&RecordId(1)], OURS, 100, Field::Met, "barn, by the river"));
    assert!(!now[&RecordId(1)].is_in_conflict());
    take_back(&mut now, &log);
    let conflicts = now[&RecordId(1)].conflicts();
    let asked: Vec<_> = conflicts.iter().map(Conflict::field).collect();
    assert_eq!(asked, [&Field::Met], "the fair, or what was written in place of the barn");
    // Taken in again, it is as it was before.
    take_in(&mut now, &plan);
    assert!(!now[&RecordId(1)].is_in_conflict());
}

#[test]
fn rows_that_are_left_out() {
    let here = book([couple(1, OURS, 1, "fair")]);
    let mut high = couple(2, THEIRS, 1, "van");
    say(&mut high, THEIRS, 1 << 40, vec![Write::clear(Field::Met)]);
    let practice = Record::of(RecordId(1), Kind::Practice, couple(1, THEIRS, 2, "x").changes().to_vec());
    say(&mut high, THEIRS, (1 << 40) + 1, vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))]);
    let both = set(&couple(4, THEIRS, 4, "van"), THEIRS, 5, Field::Name(Wearer::First), "Callum");
    let good = row::write(&set(&both, THEIRS, 6, Field::Name(Wearer::Second), "Wren"));
    let rows = [row::write(&high), row::write(&practice), good.clone(), good.replace("van", "bus"), "{}".into()];
    let text = write(&header(), []).replace("[\n]", &format!("[\n{}\n]", rows.join(",\n")));
    let told = planned(&text, &here);
    let why: Vec<_> = told.unreadable.iter().map(|row| (row.at, row.id.map(|id| id.0), row.why)).collect();
    let not_ours = Refused::Row(RowError::NotARecord);
    let expected = [
        (1, Some(2), Refused::Counter),
        (2, Some(1), Refused::OtherKind),
        (4, Some(4), Refused::Repeated),
        (5, None, not_ours),
    ];
    assert_eq!(why, expected);
    assert_eq!(told.entries.iter().map(|entry| entry.incoming.id.0).collect::<Vec<_>>(), [4]);
    // Of what can be read it is said who it is.
    let named: Vec<_> = told.unreadable.iter().map(|row| row.names.each_ref().map(Option::as_deref)).collect();
    assert_eq!(named, [[Some("Ines"), None], [None, None], [Some("Callum"), Some("Wren")], [None, None]]);
    // What cannot be read here is not written over.
    let told = plan(text.into(), &installation(), |_| Here::Unreadable, NOW).unwrap();
    assert!(told.is_empty());
    assert_eq!(told.unreadable[1].why, Refused::UnreadableHere);
}

#[test]
fn a_cloned_phone_is_known_by_what_it_says_in_our_name() {
    let here = book([couple(1, OURS, 1, "fair"), couple(2, OURS, 2, "fair")]);
    // Our own file, and an older one.
    assert!(planned(&write(&header(), here.values()), &here).is_empty());
    // The same number says something else there; or there is one more.
    let twin = couple(1, OURS, 1, "barn");
    let more = set(&here[&RecordId(2)], OURS, 3, Field::Met, "van");
    for theirs in [&twin, &more] {
        let plan = planned(&write(&header(), [theirs]), &here);
        assert!(plan.claims_ours);
        let mut now = here.clone();
        let log = take_in(&mut now, &plan);
        let record = &now[&theirs.id];
        for place in ["fair", "barn", "van"] {
            let value = Value::Text(place.into());
            let is_there =
                |record: &Record| record.changes().iter().any(|it| it.sets[0].value.as_ref() == Some(&value));
            assert_eq!(is_there(record), is_there(theirs) || is_there(&here[&theirs.id]), "{place}");
        }
        take_back(&mut now, &log);
        assert_eq!(now, here);
    }
    let told = merge(&here[&RecordId(1)], &twin);
    assert_eq!(told.conflicts().len(), 1, "both stand, and a person chooses");
    let chosen = set(&told, THEIRS, 9, Field::Met, "fair");
    assert!(!chosen.is_in_conflict() && merge(&chosen, &twin) == chosen);
}

#[test]
fn what_was_put_aside_comes_back_in_our_name_without_alarm() {
    let claims = |here: &Book, text: &str| {
        let mut file = open(text.into()).unwrap();
        let lost = [RecordId(1)].into();
        let mut preview = Preview::new(&installation(), None, file.header(), NOW).with_lost(lost);
        while let Some(row) = file.next_row() {
            let row = row.unwrap();
            let here = row.id().and_then(|id| here.get(&id)).map_or(Here::Nothing, Here::Record);
            preview.take(row, here);
        }
        preview.finish().claims_ours
    };
    let text = |record: &Record| write(&header(), [record]);
    let old = couple(1, OURS, 1, "fair");
    let later = set(&old, OURS, 7, Field::Met, "studio");
    // From a copy of one's own; and then what a colleague had of it, written here after that copy.
    assert!(!claims(&Book::new(), &text(&old)));
    assert!(!claims(&book([old.clone()]), &text(&later)));
    assert!(planned(&text(&later), &book([old.clone()])).claims_ours, "where nothing was put aside");
    // Of what no number was given out for, of another record, and of two under one number there is no doubt.
    let ahead = set(&old, OURS, installation().next, Field::Met, "van");
    assert!(claims(&Book::new(), &text(&ahead)));
    assert!(claims(&Book::new(), &text(&couple(2, OURS, 1, "fair"))));
    assert!(claims(&book([old]), &text(&couple(1, OURS, 1, "barn"))));
}

#[test]
fn times_that_cannot_be_right() {
    let hour = 3_600_000;
    let dated = |id, by, at| {
        let draft = Record::new(RecordId(id), Kind::Couple)
            .draft(vec![Write::set(Field::Met, Value::Text("x".into()))], Moment(at));
        let stamp = Stamp { n: id as u64, by: InstallationId(by) };
        Record::of(
            RecordId(id),
            Kind::Couple,
            vec![bandwright::book::change::Change::stamped(draft.unwrap(), stamp).into()],
        )
    };
    let all = [
        dated(1, 1, NOW.0 + 24 * hour),
        dated(2, 2, NOW.0 + 25 * hour),
        dated(3, 2, NOW.0 + 999 * hour),
        dated(4, 3, 0),
        dated(5, 4, i64::MAX),
        dated(6, 5, i64::MIN),
    ];
    let plan = planned(&write(&header(), &all), &Book::new());
    let told: Vec<_> = plan.far_off.iter().map(|off| (off.by.0, off.record.0, off.ahead)).collect();
    assert_eq!(told, [(2, 3, true), (3, 4, false), (4, 5, true), (5, 6, false)]);
    assert_eq!(plan.count(News::New), 6, "pointed out, and nothing else");
}

#[test]
fn a_lost_phone_gets_its_settings_back() {
    let fair = |id, by, n| {
        let mut practice = Record::new(RecordId(id), Kind::Practice);
        say(&mut practice, by, n, vec![Write::set(Field::Practice(PracticeField::Fair), Value::Text("barn".into()))]);
        practice
    };
    let theirs = fair(0xcafe, THEIRS, 5);
    let head = Header { practice: Some(theirs.id), holds: Holds::Book, ..header() };
    let text = write(&head, [&theirs]);
    let plan = planned(&text, &Book::new());
    assert_eq!((plan.practice, plan.count(News::Silent)), (Offer::Offered(theirs.id), 1));
    // It came in, and was not taken over: it stands beside, and is offered as before.
    let told = planned(&text, &book([theirs.clone()]));
    assert_eq!((told.practice, told.is_empty(), told.same), (Offer::Offered(theirs.id), true, 1));
    // Where something is set already, it is kept beside and not offered.
    let here = book([fair(1, OURS, 1)]);
    assert_eq!(planned(&text, &here).practice, Offer::None);
    // And where the file names one that it does not bring.
    assert_eq!(planned(&write(&head, []), &Book::new()).practice, Offer::None);
    assert_eq!(
        planned(&write(&Header { practice: Some(RecordId(1)), ..head }, [&fair(1, THEIRS, 5)]), &Book::new()).practice,
        Offer::None
    );
}

#[test]
fn two_phones_with_one_practice_settle_what_they_have_set_differently() {
    let fair = Field::Practice(PracticeField::Fair);
    let set = |record: &Record, by, n, text: &str| {
        let mut record = record.clone();
        say(&mut record, by, n, vec![Write::set(fair.clone(), Value::Text(text.into()))]);
        record
    };
    // Another's practice is kept beside, whatever stands in it; this phone's own is told of and asked about.
    for (id, news, asked) in
        [(RecordId(0x77), News::Silent, vec![]), (installation().practice, News::Changed, vec![fair.clone()])]
    {
        let start = set(&Record::new(id, Kind::Practice), THEIRS, 5, "quay");
        let here = book([set(&start, InstallationId(9), 6, "barn")]);
        let plan = planned(&write(&header(), [&set(&start, InstallationId(8), 6, "mill")]), &here);
        assert_eq!((plan.entries[0].news, &plan.entries[0].conflicts), (news, &asked));
        assert_eq!(plan.in_conflict(), asked.len());
    }
}

#[test]
fn nobody_erases_settings() {
    let id = installation().practice;
    let mut practice = Record::new(id, Kind::Practice);
    say(&mut practice, OURS, 1, vec![Write::set(Field::Practice(PracticeField::Fair), Value::Text("barn".into()))]);
    let mark = Record::mark(id, Kind::Practice, Stamp { n: 9, by: THEIRS });
    let told = planned(&write(&header(), [&mark]), &book([practice]));
    assert!(told.is_empty());
    assert_eq!(told.unreadable.iter().map(|row| row.why).collect::<Vec<_>>(), [Refused::Settings]);
}

#[test]
fn what_a_clone_wrote_under_the_id_of_before_goes_with_the_import() {
    // The file claims ours: this phone takes a new id, and what it changes from then on is under that.
    let fresh = InstallationId(0xf1e5);
    let theirs = couple(2, OURS, 120, "van");
    let plan = planned(&write(&header(), [&theirs]), &Book::new());
    assert!(plan.claims_ours);
    let mut now = Book::new();
    let mut log = take_in(&mut now, &plan);
    let mut renamed = installation();
    renamed.rename(fresh);
    log.under = Some(fresh);
    assert_eq!(log::read(&log::write(&log)).as_ref(), Ok(&log));
    assert_eq!(log.take_back(&log.records[0], &now[&RecordId(2)], &renamed), None);
    let edited = set(&now[&RecordId(2)], fresh, 130, Field::Name(Wearer::First), "Ines");
    let left = log.take_back(&log.records[0], &edited, &renamed).unwrap();
    assert_eq!((Couple(&left).met(), Couple(&left).name(Wearer::First)), (None, Some("Ines")));
}

proptest! {
    #![proptest_config(cases(48))]

    /// Of any record, any part may be here already: the file adds the rest, and taking back leaves what was.
    #[test]
    fn taken_in_and_taken_back(record in arbitrary::record(), part in any::<u64>(), all in any::<bool>()) {
        let some = record.changes().iter().enumerate().filter(|(at, _)| all || part >> (at % 64) & 1 == 1);
        let part = Record::of(record.id, record.kind, some.map(|(_, change)| change.clone()).collect());
        let (now, taken) = log::take_in(Some(&part), &record);
        prop_assert_eq!(&now, &record);
        let log = ImportLog { at: NOW, by: THEIRS, under: None, next: 1 << 40, practice: None, records: vec![], unknown: None };
        match taken {
            Some(taken) => prop_assert_eq!(log.take_back(&taken, &now, &installation()), Some(part)),
            None => prop_assert_eq!(&now, &part),
        }
        let fresh = Taken { id: record.id, added: None };
        prop_assert_eq!(log::take_in(None, &record), (record.clone(), Some(fresh.clone())));
        prop_assert_eq!(log.take_back(&fresh, &record, &installation()), None);
    }
}
