//! Reading a row straight off its text, where it is written as this version writes: most of them, and several times as
//! fast as by way of the library. Whatever is written otherwise, or is wrong, reads as none here; then the library
//! judges it, so that this knows no errors and decides nothing.
//!
//! `tests/native/files/mutated.rs` holds the two ways of reading to the same answer.

use std::sync::Arc;

use super::code::Code;
use super::object::{is_plain, says_the_same};
use super::scan::Scan;
use super::value::write;
use super::version::{MAJOR, MINOR, version};
use super::{key, value};
use crate::book::change::{Change, Set};
use crate::book::field::Field;
use crate::book::id::{InstallationId, Moment, RecordId, Stamp};
use crate::book::record::Record;
use crate::book::value::Value;

/// Depths do not matter: what is deep is read by the library.
const DEPTH: usize = 0;

/// What reads a part of an object by its name, or an element of a list.
type Part<'p, 'a> = &'p mut dyn FnMut(&'a str, &mut Scan<'a>) -> Option<()>;

/// A record whose row is written as ours are.
pub(super) fn read(text: &str) -> Option<Record> {
    let (mut id, mut kind, mut is_ours, mut changes) = (None, None, false, None);
    let mut scan = Scan { text, at: 0 };
    object(&mut scan, &mut |name, scan| match name {
        "id" => once(&mut id, RecordId::parse(string(scan)?)?),
        "kind" => once(&mut kind, Code::from_code(string(scan)?)?),
        "schema" => {
            is_ours = version(string(scan)?).is_some_and(|(major, minor)| major == MAJOR && minor <= MINOR);
            Some(())
        }
        "changes" => {
            let mut all = Vec::new();
            list(scan, &mut |_, scan| {
                all.push(Arc::new(change(scan)?));
                Some(())
            })?;
            once(&mut changes, all)
        }
        _ => None,
    })?;
    let changes = changes.filter(|changes| is_ours && Change::are_in_order(changes))?;
    if scan.peek().is_some() { None } else { Some(Record::of(id?, kind?, changes)) }
}

fn change(scan: &mut Scan<'_>) -> Option<Change> {
    let (mut by, mut n, mut at, mut undoes, mut after, mut sets) = (None, None, None, None, None, None);
    object(scan, &mut |name, scan| match name {
        "by" => once(&mut by, InstallationId::parse(string(scan)?)?),
        "n" => once(&mut n, counter(scan)?),
        "at" => once(&mut at, Moment(whole(scan)?)),
        "undoes" => once(&mut undoes, stamp(scan)?),
        "after" => once(&mut after, stamps(scan)?),
        "sets" => {
            let mut all = Vec::new();
            list(scan, &mut |_, scan| {
                all.push(set(scan)?);
                Some(())
            })?;
            once(&mut sets, all)
        }
        _ => None,
    })?;
    let stamp = Stamp { n: n?, by: by? };
    Some(Change { stamp, claimed: None, at: at?, undoes, after: after.unwrap_or_default(), sets: sets?, unknown: None })
}

fn set(scan: &mut Scan<'_>) -> Option<Set> {
    let (mut field, mut found, mut replaces, mut restores) = (None, None, None, None);
    object(scan, &mut |name, scan| match name {
        "field" => once(&mut field, key::read(string(scan)?)),
        "value" => {
            scan.peek();
            once(&mut found, scan.value(DEPTH).ok()?)
        }
        "replaces" => once(&mut replaces, stamps(scan)?),
        "restores" => once(&mut restores, stamp(scan)?),
        _ => None,
    })?;
    let field = field.filter(|field| !matches!(field, Field::Unknown(_)))?;
    let value = match found {
        Some(text) => Some(value_of(&field, text)?),
        None => None,
    };
    Some(Set { field, value, replaces: replaces.unwrap_or_default(), restores, unknown: None })
}

/// A value, unless it carries more than is read from it.
fn value_of(field: &Field, text: &str) -> Option<Value> {
    let json = match unquoted(text) {
        Some(words) => words.into(),
        None => serde_json::from_str(text).ok()?,
    };
    let value = value::read(field, &json)?;
    if matches!(value, Value::Text(_)) || says_the_same(&json, &write(&value)) { Some(value) } else { None }
}

fn stamps(scan: &mut Scan<'_>) -> Option<Vec<Stamp>> {
    let mut all = Vec::new();
    list(scan, &mut |_, scan| {
        all.push(stamp(scan)?);
        Some(())
    })?;
    // An empty list is not written at all.
    if all.is_empty() { None } else { Some(all) }
}

fn stamp(scan: &mut Scan<'_>) -> Option<Stamp> {
    let (mut by, mut n) = (None, None);
    object(scan, &mut |name, scan| match name {
        "by" => once(&mut by, InstallationId::parse(string(scan)?)?),
        "n" => once(&mut n, counter(scan)?),
        _ => None,
    })?;
    Some(Stamp { n: n?, by: by? })
}

/// Keeps a part; one that is there twice is for the library to judge.
fn once<T>(slot: &mut Option<T>, part: T) -> Option<()> {
    if slot.replace(part).is_some() { None } else { Some(()) }
}

fn object<'a>(scan: &mut Scan<'a>, part: Part<'_, 'a>) -> Option<()> {
    scan.pass(b'{').ok()?;
    if scan.peek()? == b'}' {
        return scan.pass(b'}').ok();
    }
    loop {
        let name = string(scan)?;
        scan.pass(b':').ok()?;
        part(name, scan)?;
        if scan.peek()? == b'}' {
            return scan.pass(b'}').ok();
        }
        scan.pass(b',').ok()?;
    }
}

fn list<'a>(scan: &mut Scan<'a>, element: Part<'_, 'a>) -> Option<()> {
    scan.pass(b'[').ok()?;
    if scan.peek()? == b']' {
        return scan.pass(b']').ok();
    }
    loop {
        element("", scan)?;
        if scan.peek()? == b']' {
            return scan.pass(b']').ok();
        }
        scan.pass(b',').ok()?;
    }
}

/// A text in which every letter stands for itself.
fn string<'a>(scan: &mut Scan<'a>) -> Option<&'a str> {
    scan.peek();
    unquoted(scan.value(DEPTH).ok()?)
}

fn unquoted(text: &str) -> Option<&str> {
    let words = text.strip_prefix('"')?.strip_suffix('"')?;
    if words.bytes().all(is_plain) { Some(words) } else { None }
}

fn counter(scan: &mut Scan<'_>) -> Option<u64> {
    u64::try_from(whole(scan)?).ok().filter(|n| (1..1 << 53).contains(n))
}

/// A whole number as it is written, without a needless nought or sign.
fn whole(scan: &mut Scan<'_>) -> Option<i64> {
    scan.peek();
    let text = scan.value(DEPTH).ok()?;
    let digits = text.strip_prefix('-').unwrap_or(text);
    let is_written_so = digits.bytes().all(|byte| byte.is_ascii_digit()) && (!digits.starts_with('0') || text == "0");
    if is_written_so { text.parse().ok() } else { None }
}
