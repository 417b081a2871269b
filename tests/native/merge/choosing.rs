//! What waits for a decision, and how it is made.

use super::said;
use crate::shared::met;
use bandwright::archive::collision::hash;
use bandwright::archive::merge::merge;
use bandwright::archive::row;
use bandwright::book::change::{Change, Write};
use bandwright::book::couple::Couple;
use bandwright::book::field::{BandField, Field};
use bandwright::book::id::{InstallationId, Moment, RecordId, Stamp};
use bandwright::book::merge::conflict::Conflict;
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::Value;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::Wearer;

use crate::arbitrary::{new_couple, undo as take_back};

const STUDIO: InstallationId = InstallationId(1);
const VAN: InstallationId = InstallationId(2);

fn away(day: &str) -> Vec<Write> {
    vec![Write::set(Field::PutAway, Value::Day(day.parse().unwrap()))]
}

/// The values that stand side by side, the one that is shown first.
fn sides(record: &Record) -> Vec<(InstallationId, Option<String>)> {
    let conflicts = record.conflicts();
    let Some(Conflict::Field { sides, .. }) = conflicts.first() else { return vec![] };
    let text = |value: &Value| if let Value::Text(text) = value { text.clone() } else { format!("{value:?}") };
    sides.iter().map(|side| (side.by, side.value.map(text))).collect()
}

#[test]
fn what_was_settled_is_out_of_date_by_what_its_author_had_not_seen() {
    let width =
        |mm: f64| vec![Write::set(Field::Band(Wearer::First, BandField::Width), Value::Length(Length::from_mm(mm)))];
    let read_back = || vec![Write::set(Field::ReadBack, Value::Day("2026-11-25".parse().unwrap()))];
    let start = said(&new_couple(), STUDIO, 1, width(2.5));
    let confirmed = said(&start, STUDIO, 9, read_back());
    let stale = |record: &Record| Couple(record).changed_since_read_back();
    assert!(!stale(&confirmed));
    // Whichever of the two phones counts higher: nobody confirmed 6 mm.
    for n in [2, 20] {
        assert!(stale(&merge(&confirmed, &said(&start, VAN, n, width(6.0)))), "{n}");
    }
    // What the other phone wrote and was seen here before is confirmed.
    let theirs = said(&start, VAN, 2, width(6.0));
    assert!(!stale(&said(&theirs, STUDIO, 9, read_back())));
    // Confirmed once more, now that both have come together, it stands.
    let both = merge(&confirmed, &said(&start, VAN, 2, width(6.0)));
    assert!(!stale(&said(&both, VAN, 22, read_back())));
}

#[test]
fn an_undo_passes_over_what_others_have_replaced() {
    let start = said(
        &said(&new_couple(), STUDIO, 1, met("fair")),
        STUDIO,
        2,
        vec![Write::set(Field::Name(Wearer::First), Value::Text("Ada".into()))],
    );
    let replaced = said(&said(&start, STUDIO, 3, met("barn")), VAN, 4, met("hall"));
    assert_eq!(replaced.undoable(STUDIO).map(|change| change.stamp.n), Some(2));
}

#[test]
fn two_that_had_not_seen_each_other() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let one = said(&start, STUDIO, 2, met("kitchen"));
    let other = said(&start, VAN, 2, met("barn"));
    let both = merge(&one, &other);
    assert_eq!(sides(&both), [(VAN, Some("barn".into())), (STUDIO, Some("kitchen".into()))]);
    assert_eq!(Couple(&both).met(), Some("barn"), "the one of the highest stamp is shown meanwhile");
    // Choosing either is one ordinary change that has seen both, also where it says what is shown already.
    for place in ["barn", "kitchen", "hall"] {
        let chosen = said(&both, STUDIO, 3, met(place));
        assert_eq!((Couple(&chosen).met(), chosen.is_in_conflict()), (Some(place), false));
        assert_eq!(merge(&merge(&chosen, &other), &one), chosen, "and it stays chosen");
        assert_eq!(chosen.changes().len(), 4, "the other stays in the history");
    }
    // A form that saves what it had found does not choose by the way.
    assert_eq!(both.changed(met("barn")), []);
    // What says the same is no conflict, and neither is what somebody else wrote to another field.
    assert!(!merge(&one, &said(&start, VAN, 2, met("kitchen"))).is_in_conflict());
    let named = said(&start, VAN, 2, vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))]);
    assert!(!merge(&one, &named).is_in_conflict());
    // One has taken it out, the other has changed it.
    let cleared = merge(&said(&start, STUDIO, 2, vec![Write::clear(Field::Met)]), &other);
    assert_eq!(sides(&cleared), [(VAN, Some("barn".into())), (STUDIO, None)]);
    assert_eq!(sides(&said(&cleared, VAN, 3, vec![Write::clear(Field::Met)])), []);
}

#[test]
fn a_time_before_that_of_words_it_had_seen_is_pointed_out() {
    let at = |mut record: Record, by, n, place: &str, at| {
        let draft = record.draft(met(place), Moment(at)).unwrap();
        record.add(Change::stamped(draft, Stamp { n, by }));
        record
    };
    const DAY: i64 = 86_400_000;
    let start = at(new_couple(), STUDIO, 1, "fair", 400 * DAY);
    let behind = at(start.clone(), VAN, 2, "barn", 35 * DAY);
    let later = at(behind.clone(), VAN, 3, "hall", 36 * DAY);
    let told = |record: &Record| record.dated_back().into_iter().map(|stamp| stamp.n).collect::<Vec<_>>();
    assert_eq!(told(&later), [2, 3], "what these had seen counts too");
    assert_eq!(told(&at(start.clone(), VAN, 2, "barn", 399 * DAY)), vec![0; 0], "a day is time zones and slow clocks");
    // One that had not seen it may be older.
    let unaware = at(new_couple(), VAN, 1, "barn", 35 * DAY);
    assert_eq!(told(&merge(&start, &unaware)), vec![0; 0]);
}

#[test]
fn a_choice_taken_back_is_open_again() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let both = merge(&said(&start, STUDIO, 2, met("kitchen")), &said(&start, VAN, 2, met("barn")));
    let third = merge(&both, &said(&start, InstallationId(3), 2, met("hall")));
    let values = |record: &Record| sides(record).into_iter().map(|(_, value)| value.unwrap()).collect::<Vec<_>>();
    for (open, expected) in [(both, vec!["barn", "kitchen"]), (third, vec!["hall", "barn", "kitchen"])] {
        for chosen in ["barn", "kitchen", "attic"] {
            let mut record = said(&open, STUDIO, 3, met(chosen));
            let choice = Stamp { n: 3, by: STUDIO };
            let back = take_back(&mut record, STUDIO, 4, choice).unwrap();
            assert_eq!(values(&record), expected, "the same one is shown, the others stand beside it");
            assert!(record.is_undone(choice));
            assert_eq!(record.undoable(STUDIO).map(|change| change.stamp), Some(Stamp { n: 2, by: STUDIO }));
            // And chosen again, by putting it back.
            take_back(&mut record, STUDIO, 9, back).unwrap();
            assert_eq!((Couple(&record).met(), record.is_in_conflict()), (Some(chosen), false));
            assert!(!record.is_undone(choice));
            take_back(&mut record, STUDIO, 12, choice).unwrap();
            assert_eq!(values(&record), expected, "and so on");
        }
    }
}

#[test]
fn one_of_three_taken_back_leaves_the_other_two_side_by_side() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let two = merge(&said(&start, STUDIO, 2, met("kitchen")), &said(&start, VAN, 2, met("barn")));
    let mut three = merge(&two, &said(&start, InstallationId(3), 2, met("hall")));
    take_back(&mut three, InstallationId(3), 4, Stamp { n: 2, by: InstallationId(3) }).unwrap();
    let values: Vec<_> = sides(&three).into_iter().map(|(_, value)| value.unwrap()).collect();
    assert_eq!(values, ["barn", "kitchen"]);
}

#[test]
fn a_decision_on_a_putting_away_taken_back_is_open_again() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let both = merge(&said(&start, STUDIO, 2, away("2026-10-03")), &said(&start, VAN, 2, met("barn")));
    for decision in [away("2026-10-03"), vec![Write::clear(Field::PutAway)]] {
        let mut record = said(&both, VAN, 3, decision);
        take_back(&mut record, VAN, 4, Stamp { n: 3, by: VAN }).unwrap();
        let conflicts = record.conflicts();
        let [Conflict::PutAway { edits, .. }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
        assert_eq!((edits.len(), edits[0].0, edits[0].1.by), (1, &Field::Met, VAN));
    }
    // One that nothing was unseen by is simply put away again; what was written meanwhile was known.
    let mut record = said(&start, STUDIO, 2, away("2026-10-03"));
    record = said(&record, STUDIO, 3, vec![Write::clear(Field::PutAway)]);
    record = said(&record, STUDIO, 4, met("hall"));
    take_back(&mut record, STUDIO, 5, Stamp { n: 3, by: STUDIO }).unwrap();
    assert!(Couple(&record).put_away().is_some() && !record.is_in_conflict());
}

#[test]
fn put_away_beside_an_edit() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let put_away = said(&start, STUDIO, 2, away("2026-10-03"));
    let edited = said(&start, VAN, 2, met("barn"));
    let both = merge(&put_away, &edited);
    let conflicts = both.conflicts();
    let [Conflict::PutAway { away: by, edits }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
    assert_eq!((by.by, edits.len(), edits[0].0, edits[0].1.by), (STUDIO, 1, &Field::Met, VAN));
    // Put away again, also with the same day, or brought back: decided.
    let again = said(&both, VAN, 3, away("2026-10-03"));
    let back = said(&both, VAN, 3, vec![Write::clear(Field::PutAway)]);
    assert!(!again.is_in_conflict() && !back.is_in_conflict());
    assert!(Couple(&again).put_away().is_some() && Couple(&back).put_away().is_none());
    assert_eq!(again.draft(away("2026-10-03"), Moment(0)), None, "once is enough");
    // One who has seen it may write on, and one who was seen by it asks nothing.
    assert!(!said(&put_away, VAN, 3, met("barn")).is_in_conflict());
    assert!(!said(&edited, STUDIO, 3, away("2026-10-03")).is_in_conflict());
    // An edit to another field, too; and one that was replaced by somebody who knew asks nothing any more.
    let named = said(&start, VAN, 2, vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))]);
    assert!(merge(&put_away, &named).is_in_conflict());
    assert!(!said(&both, STUDIO, 3, met("hall")).is_in_conflict());
}

#[test]
fn a_form_knows_what_it_found_and_nothing_that_came_meanwhile() {
    let found = said(&new_couple(), STUDIO, 1, met("fair"));
    // A file that another tab takes in while the form stands open: another place, and put away.
    let theirs = said(&said(&found, VAN, 2, met("barn")), VAN, 3, away("2026-10-03"));
    let named = said(&found, STUDIO, 2, vec![Write::set(Field::Name(Wearer::First), Value::Text("Ines".into()))]);
    let made = named.changes().last().unwrap().stamp;
    let now = merge(&named, &theirs);
    let save = |had_seen: &dyn Fn(Stamp) -> bool| {
        let mut draft = now.draft(met("hall"), Moment(0)).unwrap();
        now.leave_unseen(&mut draft, had_seen);
        let mut saved = now.clone();
        saved.add(Change::stamped(draft, Stamp { n: 4, by: STUDIO }));
        saved
    };
    let saved = save(&|stamp| stamp == made || found.holds_change(stamp));
    assert_eq!(sides(&saved), [(STUDIO, Some("hall".into())), (VAN, Some("barn".into()))]);
    let conflicts = saved.conflicts();
    let [_, Conflict::PutAway { away, edits }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
    assert_eq!(away.by, VAN);
    assert!(edits.iter().any(|(field, edit)| (*field, edit.by) == (&Field::Met, STUDIO)), "{edits:?}");
    // Found as it is now, both are known: only the name was written by one who knew nothing of the putting-away.
    let saved = save(&|stamp| now.holds_change(stamp));
    let conflicts = saved.conflicts();
    let [Conflict::PutAway { edits, .. }] = conflicts.as_slice() else { panic!("{conflicts:?}") };
    assert_eq!((edits.len(), edits[0].0), (1, &Field::Name(Wearer::First)));
}

#[test]
fn erased_is_final() {
    let start = said(&new_couple(), STUDIO, 1, met("fair"));
    let stamp = |n, by| Stamp { n, by };
    let mark = Record::mark(start.id, Kind::Couple, stamp(2, STUDIO));
    let edited = said(&start, VAN, 7, met("barn"));
    for other in [&start, &edited] {
        assert_eq!(merge(&mark, other), mark);
        assert_eq!(merge(other, &mark), mark);
    }
    let later = Record::mark(start.id, Kind::Couple, stamp(2, VAN));
    assert_eq!((merge(&mark, &later), merge(&later, &mark)), (later.clone(), later));
    let mut written = mark.clone();
    written.add(edited.changes()[1].clone());
    assert_eq!(written, mark, "a mark takes no change");
    assert!(Couple(&mark).is_blank() && !row::write(&mark).contains("fair"));
    assert_eq!(row::read(&row::write(&mark)).as_ref(), Ok(&mark));
    // A mark that still holds something is none of ours.
    let held =
        row::write(&start).replace("\"id\"", "\"erased\":{\"by\":\"00000000000000000000000000000001\",\"n\":2},\"id\"");
    assert!(row::read(&held).is_err());
}

#[test]
fn a_record_of_another_id_or_kind_is_not_merged() {
    let one = said(&new_couple(), STUDIO, 1, met("fair"));
    let other = said(&Record::new(RecordId(8), Kind::Couple), VAN, 1, met("barn"));
    assert_eq!(merge(&one, &other), one);
    assert_eq!(merge(&one, &Record::of(one.id, Kind::Practice, other.changes().to_vec())), one);
}

#[test]
fn what_newer_versions_wrote_beside_it() {
    let with = |unknown: &str| {
        let mut record = said(&new_couple(), STUDIO, 1, met("fair"));
        record.unknown = Some(unknown.into());
        record
    };
    let check = |one: &str, other: &str, expected: &str| {
        for merged in [merge(&with(one), &with(other)), merge(&with(other), &with(one))] {
            assert_eq!(merged.unknown.as_deref(), Some(expected), "{one} {other}");
        }
    };
    check(r#"{"schema":"1.9"}"#, r#"{"schema":"1.10"}"#, r#"{"schema":"1.10"}"#);
    check(r#"{"a":1,"schema":"1.3"}"#, r#"{"b":[2],"schema":"1.2"}"#, r#"{"a":1,"b":[2],"schema":"1.3"}"#);
    check(r#"{"a":1}"#, r#"{"a":2}"#, r#"{"a":2}"#);
}

#[test]
fn a_hundred_thousand_conflicts_take_no_longer_than_they_must() {
    let changes = (0..100_000_u64).map(|at| {
        let draft = new_couple().draft(met(&at.to_string()), Moment(0)).unwrap();
        bandwright::book::change::Change::stamped(draft, Stamp { n: 1, by: InstallationId(at.into()) })
    });
    let record = Record::of(RecordId(7), Kind::Couple, changes.map(Into::into).collect());
    let half = Record::of(RecordId(7), Kind::Couple, record.changes().iter().step_by(2).cloned().collect());
    assert_eq!(merge(&half, &record).changes().len(), 100_000);
    assert_eq!(bandwright::archive::merge::added(&half, &record).len(), 50_000);
    assert_eq!(record.conflicts().len(), 1);
    assert!(!said(&record, STUDIO, 2, met("fair")).is_in_conflict());
}

/// The test vectors of the authors, for 128 bits.
#[test]
fn the_hash_is_fnv_1a() {
    assert_eq!(hash(b""), 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d);
    assert_eq!(hash(b"a"), 0xd228_cb69_6f1a_8caf_7891_2b70_4e4a_8964);
    assert_eq!(hash(b"foobar"), 0x343e_1662_793c_64bf_6f0d_3597_ba44_6f18);
}
