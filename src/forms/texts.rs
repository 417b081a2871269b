//! The texts of a form, by the keys of its fields.

/// The name of a field: in drafts, in addresses and in the page. Only a form makes one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(&'static str);

impl Key {
    pub(in crate::forms) const fn new(name: &'static str) -> Key {
        Key(name)
    }

    pub const fn name(self) -> &'static str {
        self.0
    }
}

impl From<Key> for &'static str {
    fn from(key: Key) -> &'static str {
        key.0
    }
}

impl AsRef<str> for Key {
    fn as_ref(&self) -> &str {
        self.0
    }
}

/// One text a field, in the order of the form.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Texts(Vec<(&'static str, String)>);

impl Texts {
    /// The texts as the page holds them.
    pub fn of(all: Vec<(&'static str, String)>) -> Texts {
        Texts(all)
    }

    /// The text of a field; one that the form does not have is empty.
    pub fn get(&self, key: Key) -> &str {
        self.0.iter().find(|(name, _)| *name == key.0).map_or("", |(_, text)| text)
    }

    /// Puts a text into a field, which is added where there is none.
    pub fn set(&mut self, key: Key, text: impl Into<String>) {
        let text = text.into();
        match self.0.iter_mut().find(|(name, _)| *name == key.0) {
            Some(entry) => entry.1 = text,
            None => self.0.push((key.0, text)),
        }
    }

    /// The same with another text in a field.
    pub fn with(mut self, key: Key, text: impl Into<String>) -> Texts {
        self.set(key, text);
        self
    }

    /// The same with empty fields.
    pub fn with_blank(mut self, keys: impl IntoIterator<Item = Key>) -> Texts {
        keys.into_iter().for_each(|key| self.set(key, ""));
        self
    }

    /// What a page starts a form with.
    pub fn into_pairs(self) -> Vec<(&'static str, String)> {
        self.0
    }
}
