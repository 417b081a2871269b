//! Reading a file: whatever comes in, an answer; of a partly damaged one the good rows.

use serde_json::{Map, Value as Json};

use super::write::holds_code;
use super::{FileError, Header, Holds, KIND, MOST_BYTES};
use crate::archive::carried::rest;
use crate::archive::row::{self, RowError};
use crate::archive::scan::Scan;
use crate::archive::version::{MAJOR, MINOR, version};
use crate::book::id::{InstallationId, Moment, RecordId};
use crate::book::record::Record;

/// A header has no part above this size; such a part is passed over.
const MOST_IN_HEADER: usize = 1 << 20;

/// A file that is being read: its header is known, its rows come one by one.
#[derive(Debug)]
pub struct Reader {
    text: String,
    header: Header,
    at: usize,
    rows: usize,
    is_done: bool,
}

/// One row of a file.
#[derive(Debug)]
pub struct Row {
    /// Its place in the file, from 1.
    pub at: usize,
    pub read: Result<Record, RowError>,
}

impl Row {
    /// The id of its record, if it can be read.
    pub fn id(&self) -> Option<RecordId> {
        self.read.as_ref().ok().map(|record| record.id)
    }
}

/// Opens a file, or a message with a file somewhere in it.
pub fn open(bytes: Vec<u8>) -> Result<Reader, FileError> {
    let mut text = decode(bytes)?;
    let from = text.find('{').ok_or(FileError::NotJson)?;
    let to = text.rfind('}').filter(|to| *to > from).ok_or(FileError::CutOff)?;
    text.truncate(to + 1);
    text.drain(..from);
    let (header, at) = read_header(&text)?;
    Ok(Reader { text, header, at, rows: 0, is_done: false })
}

impl Reader {
    pub fn header(&self) -> &Header {
        &self.header
    }

    /// The next row. None after the last one; after a mistake in the file as a whole nothing comes any more, and what
    /// came before is not to be used either.
    pub fn next_row(&mut self) -> Option<Result<Row, FileError>> {
        if self.is_done {
            return None;
        }
        let mut scan = Scan { text: &self.text, at: self.at };
        let next = match element(&mut scan, self.rows == 0) {
            Ok(Some(text)) => Ok(Some(Row { at: self.rows + 1, read: row::read(text) })),
            Ok(None) => end(&mut scan).map(|()| None),
            Err(error) => Err(error),
        };
        self.at = scan.at;
        self.rows += 1;
        self.is_done = !matches!(next, Ok(Some(_)));
        next.transpose()
    }

    /// How many of its bytes have been read, and how many there are.
    pub fn progress(&self) -> (usize, usize) {
        (self.at, self.text.len())
    }
}

fn decode(bytes: Vec<u8>) -> Result<String, FileError> {
    if bytes.len() > MOST_BYTES {
        return Err(FileError::TooBig);
    }
    match bytes.as_slice() {
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => return Err(FileError::Utf16),
        // Without its mark: every other byte of plain letters is nought.
        [0, a, 0, b, ..] | [a, 0, b, 0, ..] if *a != 0 && *b != 0 => return Err(FileError::Utf16),
        [b'P', b'K', 3 | 5, 4 | 6, ..] => return Err(FileError::Zip),
        _ => {}
    }
    let text = String::from_utf8(bytes).map_err(|error| match error.utf8_error().error_len() {
        // The last letter is not whole.
        None => FileError::CutOff,
        Some(_) => FileError::NotText,
    })?;
    if text.contains('\0') {
        return Err(FileError::NotText);
    }
    if text.trim_matches(|c: char| c.is_whitespace() || c == '\u{feff}').is_empty() {
        return Err(FileError::Empty);
    }
    Ok(text)
}

/// The header, and the place of the first row.
fn read_header(text: &str) -> Result<(Header, usize), FileError> {
    let mut scan = Scan { text, at: 0 };
    let mut parts = Map::new();
    let mut records = None;
    scan.pass(b'{')?;
    while let Some(key) = key(&mut scan, parts.is_empty() && records.is_none())? {
        if key != "records" {
            let value = scan.value(1)?;
            if value.len() <= MOST_IN_HEADER {
                parts.insert(key, serde_json::from_str(value).map_err(|_| FileError::NotJson)?);
            }
            continue;
        }
        let is_first = records.is_none();
        scan.peek();
        let from = scan.at;
        records = Some(from);
        // Ours stand last: what says whose file it is has been read by now, and the rows are read when they are wanted.
        if is_first && parts.contains_key("kind") && parts.contains_key("schema") {
            break;
        }
        scan.value(1)?;
        if !is_first {
            records = None;
            break;
        }
    }
    let header = header(parts)?;
    let mut scan = Scan { text, at: records.ok_or(FileError::Damaged)? };
    scan.pass(b'[').map_err(|_| FileError::Damaged)?;
    Ok((header, scan.at))
}

/// The next key of an object; none at its end.
fn key(scan: &mut Scan<'_>, is_first: bool) -> Result<Option<String>, FileError> {
    match scan.peek() {
        Some(b'}') => {
            scan.at += 1;
            return Ok(None);
        }
        Some(_) if is_first => {}
        _ => scan.pass(b',')?,
    }
    let key = scan.value(1)?;
    scan.pass(b':')?;
    serde_json::from_str(key).map(Some).map_err(|_| FileError::NotJson)
}

/// The next element of an array; none at its end.
fn element<'a>(scan: &mut Scan<'a>, is_first: bool) -> Result<Option<&'a str>, FileError> {
    match scan.peek() {
        Some(b']') => {
            scan.at += 1;
            return Ok(None);
        }
        Some(_) if is_first => {}
        _ => scan.pass(b',')?,
    }
    scan.value(2).map(Some)
}

/// What comes after the rows: nothing, or what a newer version has added.
fn end(scan: &mut Scan<'_>) -> Result<(), FileError> {
    while let Some(key) = key(scan, false)? {
        let value = scan.value(1)?;
        if key == "records" || (value.len() <= MOST_IN_HEADER && serde_json::from_str::<Json>(value).is_err()) {
            return Err(FileError::NotJson);
        }
    }
    if scan.peek().is_some() { Err(FileError::NotJson) } else { Ok(()) }
}

fn header(mut parts: Map<String, Json>) -> Result<Header, FileError> {
    if parts.remove("kind") != Some(Json::String(KIND.to_owned())) {
        return Err(FileError::NotOurs);
    }
    let (major, minor) = parts.get("schema").and_then(Json::as_str).and_then(version).ok_or(FileError::Damaged)?;
    if major > MAJOR {
        return Err(FileError::Newer(major));
    }
    if minor <= MINOR {
        parts.remove("schema");
    }
    read_parts(parts).filter(|_| major == MAJOR).ok_or(FileError::Damaged)
}

fn read_parts(mut parts: Map<String, Json>) -> Option<Header> {
    let practice = match parts.remove("practice") {
        Some(id) => Some(RecordId::parse(id.as_str()?)?),
        None => None,
    };
    Some(Header {
        written: Moment(parts.remove("written")?.as_i64()?),
        by: InstallationId::parse(parts.remove("by")?.as_str()?)?,
        practice,
        holds: {
            let holds = parts.remove("holds")?;
            [Holds::Book, Holds::Couples].into_iter().find(|it| holds.as_str() == Some(holds_code(*it)))?
        },
        unknown: rest(parts),
    })
}
