//! What fits a field is what the file of that field can hold, and nothing else.

use super::fits::fits;
use crate::arbitrary::{all_fields, value_of};
use crate::shared::cases;
use bandwright::archive::{key, value};
use bandwright::book::field::Field;
use proptest::prelude::*;

proptest! {
    #![proptest_config(cases(16))]

    /// Every value of every field is offered to every field: it fits if, and only if, it is read back as it was.
    #[test]
    fn fits_agrees_with_what_is_read(values in all_fields().iter().map(|field| value_of(field).boxed()).collect::<Vec<_>>()) {
        for (own, value) in all_fields().iter().zip(&values) {
            prop_assert!(fits(value, own), "{own:?} {value:?}");
            let json = value::write(value);
            for field in all_fields() {
                let read = value::read(&field, &json);
                prop_assert_eq!(read.as_ref() == Some(value), fits(value, &field), "{:?} in {:?}", value, field);
                prop_assert!(read.is_none_or(|read| fits(&read, &field)), "{json} in {field:?}");
            }
        }
    }
}

#[test]
fn every_field_has_a_name_of_its_own_in_files() {
    let names: std::collections::BTreeSet<String> = all_fields().iter().map(key::write).collect();
    assert_eq!(names.len(), all_fields().len());
    for field in all_fields() {
        assert_eq!(key::read(&key::write(&field)), field);
    }
    assert_eq!(key::read("ring.third.1.name"), Field::Unknown("ring.third.1.name".into()));
}
