//! The table of fields: what each holds, what it is called in files, and that nothing is read or written past it.

use crate::arbitrary::{OURS, all_fields, new_couple, say, value_of};
use crate::shared::cases;
use bandwright::archive::{key, value};
use bandwright::book::change::Write;
use bandwright::book::couple::{Band, Couple, Ring};
use bandwright::book::field::{BandField, Field, PracticeField, RingField};
use bandwright::book::id::{ItemId, Moment};
use bandwright::book::value::{Value, ValueKind};
use bandwright::book::verbs;
use bandwright::trade::wearer::Wearer;
use proptest::prelude::*;

const WHO: Wearer = Wearer::Second;
const ITEM: ItemId = ItemId(17);

fn values(fields: Vec<Field>) -> impl Strategy<Value = Vec<(Field, Value)>> {
    let values: Vec<_> = fields.iter().map(value_of).collect();
    values.prop_map(move |values| fields.iter().cloned().zip(values).collect())
}

proptest! {
    #![proptest_config(cases(16))]

    /// Every value of every field is offered to every field: it can hold it if, and only if, it is read back as it was.
    #[test]
    fn a_field_takes_what_is_read_for_it(all in values(all_fields())) {
        for (own, value) in &all {
            prop_assert!(own.takes(value), "{own:?} {value:?}");
            let json = value::write(value);
            for field in all_fields() {
                let read = value::read(&field, &json);
                let its = match (&field, value) {
                    (Field::PreparationList(id), Value::PreparationList(list)) => list.id == *id,
                    _ => field.takes(value),
                };
                prop_assert_eq!(read.as_ref() == Some(value), its, "{:?} in {:?}", value, field);
                prop_assert!(read.is_none_or(|read| field.takes(&read)), "{json} in {field:?}");
            }
        }
    }

    /// Every row of the tables is read, and the verb writes every row: a ring and a band come back as they were.
    #[test]
    fn a_ring_and_a_band_are_read_and_written_by_every_row(
        of_ring in values(RingField::ALL.map(|part| Field::Ring(WHO, ITEM, part)).to_vec()),
        of_band in values(BandField::ALL.map(|part| Field::Band(WHO, part)).to_vec()),
    ) {
        for (field, value) in of_ring.iter().chain(&of_band) {
            let mut record = new_couple();
            say(&mut record, OURS, 1, vec![Write::set(field.clone(), value.clone())]);
            let couple = Couple(&record);
            let (ring, band) = (couple.ring(WHO, ITEM), couple.band(WHO));
            let is_read = ring != Ring::unknown(ITEM) || band != Band::default();
            prop_assert_eq!(is_read, *value != Value::Yes(false), "{:?} {:?}", field, value);
            let writes = [verbs::note_ring(WHO, ring), verbs::choose_band(WHO, band)].concat();
            let written = writes.into_iter().find(|write| write.field == *field);
            let written = written.unwrap_or_else(|| panic!("the verb leaves out {field:?}"));
            prop_assert_eq!(written.value.unwrap_or(Value::Yes(false)), value.clone());
        }
    }
}

#[test]
fn a_value_that_the_field_cannot_hold_is_no_draft() {
    let record = new_couple();
    let pair = |field, value| move || record.draft(vec![Write::set(field, value)], Moment(0));
    let width = Field::Ring(WHO, ITEM, RingField::ShoulderWidth);
    let refused = std::panic::catch_unwind(std::panic::AssertUnwindSafe(pair(width, Value::Yes(true))));
    assert!(refused.is_err(), "a width that is a yes");
}

#[test]
fn every_field_has_a_name_of_its_own_in_files() {
    let names: std::collections::BTreeSet<String> = all_fields().iter().map(key::write).collect();
    assert_eq!(names.len(), all_fields().len());
    for field in all_fields() {
        assert_eq!(key::read(&key::write(&field)), field);
    }
    assert_eq!(key::read("ring.third.1.name"), Field::Unknown("ring.third.1.name".into()));
    for name in ["practice.gauge", "practice.fair.making", "practice.lead_time.good-friday", "practice.fair."] {
        assert_eq!(key::read(name), Field::Unknown(name.into()));
    }
}

/// Codes stand in files for ever: whoever changes one here breaks every book that is out there.
#[test]
fn the_codes_are_what_they_were() {
    assert_eq!(
        RingField::ALL.map(RingField::code).join(" "),
        "name finger shoulder_width top_width back_width height inside profile metal inscription head_to_web \
         head_to_tip head_underside stones place holds planned"
    );
    assert_eq!(BandField::ALL.map(BandField::code).join(" "), "width profile finish metal height dome relief place");
    assert_eq!(
        PracticeField::CODES.join(" "),
        "fair region first_system step gauge try_on lead_time extra closure weekdays works_on_holidays cut_off \
         days_in_hand holiday place_days counts_today confidence busy_chance busy_longer busy_months resize_chance \
         try_on_after free_length gap roomy full clearance catch thinnest constant phone_name"
    );
}

#[test]
fn a_field_of_a_newer_version_takes_anything() {
    assert_eq!(Field::Unknown("moon".into()).kind(), None);
    assert!(Field::Unknown("moon".into()).takes(&Value::Yes(true)));
    assert!(Field::Wedding.takes(&Value::Unknown("{}".into())), "and a value of one goes anywhere");
    assert_eq!(Field::Wedding.kind(), Some(ValueKind::Wedding));
}
