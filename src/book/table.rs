//! How a table of fields is written: a row a field.
//!
//! A row of a thing that has parts, as a ring has, says what the field is called in the program, the code under which
//! it stands in files for ever, the type of what it holds, and where the thing keeps that:
//!
//! ```text
//! ShoulderWidth = "shoulder_width": Length => shoulder_width,
//! ```
//!
//! From the rows follow the enum of the fields, the list of all of them, both ways between field and code, the kind of
//! value, and how the thing is read from a record and written into one. A row that says another type than the thing
//! keeps there does not compile.

/// The fields of a thing with parts: `parts! { RingField of Ring { rows } }`. Without `of`, the fields alone.
macro_rules! parts {
    ($(#[$about:meta])* $field:ident {
        $($(#[$doc:meta])* $name:ident = $code:literal: $held:ty,)+
    }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $field {
            $($(#[$doc])* $name,)+
        }

        impl $field {
            pub const ALL: [$field; [$($code),+].len()] = [$($field::$name),+];

            /// What it is called in files, for ever.
            pub fn code(self) -> &'static str {
                match self {
                    $($field::$name => $code,)+
                }
            }

            pub fn from_code(code: &str) -> Option<$field> {
                match code {
                    $($code => Some($field::$name),)+
                    _ => None,
                }
            }

            pub fn kind(self) -> $crate::book::value::ValueKind {
                match self {
                    $($field::$name => <$held as $crate::book::value::FieldValue>::KIND,)+
                }
            }
        }
    };
    ($(#[$about:meta])* $field:ident of $thing:ident {
        $($(#[$doc:meta])* $name:ident = $code:literal: $held:ty => $($kept:ident).+,)+
    }) => {
        $crate::book::table::parts! {
            $(#[$about])*
            $field {
                $($(#[$doc])* $name = $code: $held,)+
            }
        }

        impl $thing {
            /// Takes in what a record holds of a part.
            pub(in $crate::book) fn put(&mut self, part: $field, value: &$crate::book::value::Value) {
                match part {
                    $($field::$name => {
                        if let Some(held) = <$held as $crate::book::value::FieldValue>::of(value) {
                            $crate::book::table::Slot::<$held>::put(&mut self.$($kept).+, held.clone());
                        }
                    })+
                }
            }

            /// What a record is to hold of a part; none where nothing is known.
            pub(in $crate::book) fn value(&self, part: $field) -> Option<$crate::book::value::Value> {
                match part {
                    $($field::$name => {
                        let held: Option<$held> = $crate::book::table::Slot::get(&self.$($kept).+);
                        held.map($crate::book::value::FieldValue::into_value)
                    })+
                }
            }
        }
    };
}
pub(super) use parts;

/// Where a thing keeps what one of its fields holds.
pub(super) trait Slot<T> {
    fn put(&mut self, held: T);

    fn get(&self) -> Option<T>;
}

/// As far as it is known.
impl<T: Clone> Slot<T> for Option<T> {
    fn put(&mut self, held: T) {
        *self = Some(held);
    }

    fn get(&self) -> Option<T> {
        self.clone()
    }
}

/// Yes, or nothing was said.
impl Slot<bool> for bool {
    fn put(&mut self, held: bool) {
        *self = held;
    }

    fn get(&self) -> Option<bool> {
        self.then_some(true)
    }
}
