//! Finding the parts of a JSON text without reading it whole: a book of 20,000 couples, read at once, would take many
//! times its size, and the page would stand still meanwhile. What is found is read by the library.

use super::file::{FileError, MOST_LEVELS};

/// A place in a text. It stands before ASCII characters only, so it never splits a letter.
pub(super) struct Scan<'a> {
    pub text: &'a str,
    pub at: usize,
}

impl<'a> Scan<'a> {
    /// The next character that is no space; none at the end.
    pub fn peek(&mut self) -> Option<u8> {
        let bytes = self.text.as_bytes();
        while let Some(byte) = bytes.get(self.at) {
            if !matches!(byte, b' ' | b'\t' | b'\r' | b'\n') {
                return Some(*byte);
            }
            self.at += 1;
        }
        None
    }

    /// Passes one character, which must be this one.
    pub fn pass(&mut self, wanted: u8) -> Result<(), FileError> {
        match self.peek() {
            Some(byte) if byte == wanted => {
                self.at += 1;
                Ok(())
            }
            Some(_) => Err(FileError::NotJson),
            None => Err(FileError::CutOff),
        }
    }

    /// Passes one value, at this depth in the whole, and gives its text. Brackets match and strings end; the rest is
    /// for the library to judge.
    pub fn value(&mut self, depth: usize) -> Result<&'a str, FileError> {
        let first = self.peek().ok_or(FileError::CutOff)?;
        let from = self.at;
        match first {
            b'"' => self.string()?,
            b'{' | b'[' => self.nested(depth)?,
            _ => {
                let ends =
                    |byte: &u8| matches!(byte, b',' | b']' | b'}' | b' ' | b'\t' | b'\r' | b'\n' | b'"' | b'{' | b'[');
                let rest = &self.text.as_bytes()[self.at..];
                self.at += rest.iter().position(ends).ok_or(FileError::CutOff)?;
            }
        }
        if self.at == from { Err(FileError::NotJson) } else { Ok(&self.text[from..self.at]) }
    }

    fn nested(&mut self, depth: usize) -> Result<(), FileError> {
        let mut open = Vec::new();
        loop {
            match self.text.as_bytes().get(self.at) {
                None => return Err(FileError::CutOff),
                Some(b'"') => {
                    self.string()?;
                    continue;
                }
                Some(b'{') => open.push(b'}'),
                Some(b'[') => open.push(b']'),
                Some(closing @ (b'}' | b']')) => {
                    if open.pop() != Some(*closing) {
                        return Err(FileError::NotJson);
                    }
                }
                Some(_) => {}
            }
            if depth + open.len() > MOST_LEVELS {
                return Err(FileError::TooDeep);
            }
            self.at += 1;
            if open.is_empty() {
                return Ok(());
            }
        }
    }

    fn string(&mut self) -> Result<(), FileError> {
        self.at += 1;
        loop {
            match self.text.as_bytes().get(self.at) {
                None => return Err(FileError::CutOff),
                Some(b'"') => break,
                Some(b'\\') => self.at += 2,
                Some(_) => self.at += 1,
            }
        }
        self.at += 1;
        Ok(())
    }
}
