//! Writing JSON straight down, without building it first: most of what is written is as long as a book.

use std::fmt::{Arguments, Write as _};

use serde_json::{Map, Value as Json};

use super::carried::carried;

/// An object that is being written. Its parts come in the order of their names; what a newer version wrote beside them
/// is put where it belongs.
pub(super) struct Object<'a> {
    out: &'a mut String,
    carried: Map<String, Json>,
    is_first: bool,
}

impl<'a> Object<'a> {
    /// Begins an object, with what is carried through.
    pub fn new(out: &'a mut String, unknown: Option<&str>) -> Self {
        out.push('{');
        Object { out, carried: carried(unknown), is_first: true }
    }

    /// Writes a part, also in place of one of the same name that is carried.
    pub fn part(&mut self, name: &str, write: &dyn Fn(&mut String)) {
        self.carry(Some(name));
        self.carried.remove(name);
        self.key(name);
        write(self.out);
    }

    /// Writes a part, unless one of that name is carried.
    pub fn unless_carried(&mut self, name: &str, write: &dyn Fn(&mut String)) {
        if !self.carried.contains_key(name) {
            self.part(name, write);
        }
    }

    /// Ends the object.
    pub fn end(mut self) {
        self.carry(None);
        self.out.push('}');
    }

    /// Writes what is carried and stands before a name.
    fn carry(&mut self, before: Option<&str>) {
        if self.carried.is_empty() {
            return;
        }
        for (name, value) in std::mem::take(&mut self.carried) {
            if before.is_none_or(|before| name.as_str() < before) {
                self.key(&name);
                put(self.out, format_args!("{value}"));
            } else {
                self.carried.insert(name, value);
            }
        }
    }

    fn key(&mut self, name: &str) {
        if !std::mem::take(&mut self.is_first) {
            self.out.push(',');
        }
        text(name, self.out);
        self.out.push(':');
    }
}

/// Writes a list.
pub(super) fn list<T>(out: &mut String, things: &[T], write: fn(&T, &mut String)) {
    out.push('[');
    for (at, thing) in things.iter().enumerate() {
        if at > 0 {
            out.push(',');
        }
        write(thing, out);
    }
    out.push(']');
}

/// Writes a text with its quotes.
pub(super) fn text(words: &str, out: &mut String) {
    if words.bytes().all(is_plain) {
        out.push('"');
        out.push_str(words);
        out.push('"');
    } else {
        put(out, format_args!("{}", Json::String(words.to_owned())));
    }
}

/// Writes what cannot fail to be written.
pub(super) fn put(out: &mut String, what: Arguments<'_>) {
    let _ = out.write_fmt(what);
}

/// Whether a byte stands for itself within the quotes of a text.
pub(super) fn is_plain(byte: u8) -> bool {
    byte >= b' ' && byte != b'"' && byte != b'\\'
}

/// Whether two values are the same to every reader of JSON, which knows one kind of number: `3` and `3.0`.
pub(super) fn says_the_same(one: &Json, other: &Json) -> bool {
    match (one, other) {
        (Json::Number(a), Json::Number(b)) if a.is_f64() != b.is_f64() => a.as_f64() == b.as_f64(),
        (Json::Array(a), Json::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| says_the_same(a, b)),
        (Json::Object(a), Json::Object(b)) => {
            let is_in = |(name, value): (&String, &Json)| b.get(name).is_some_and(|other| says_the_same(value, other));
            a.len() == b.len() && a.iter().all(is_in)
        }
        _ => one == other,
    }
}
