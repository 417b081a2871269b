//! The installation's own row.
//!
//! ```json
//! {"schema": "1.2", "id": "<32 hex>", "practice": "<32 hex>", "next": 8, "former": ["<32 hex>"]}
//! ```
//!
//! `former` (since 1.1) stands there only if the installation had other ids before.

use serde_json::{Map, Value as Json};

use super::carried::rest;
use super::row::{RowError, open};
use super::version::fresh;
use crate::book::id::{InstallationId, RecordId};

/// The installation: who it is, under which id its practice is kept, and which number its next change gets: a higher
/// one than any it has read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Installation {
    pub id: InstallationId,
    pub practice: RecordId,
    pub next: u64,
    /// The ids it had before: it takes a new one when a file shows that another phone writes under the same.
    pub former: Vec<InstallationId>,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

impl Installation {
    /// Makes sure that the next number is higher than this one.
    pub fn follow(&mut self, highest: u64) {
        // Every number that is read is below 2^53, and so is what is written.
        self.next = self.next.max(highest.saturating_add(1)).min((1 << 53) - 1);
    }

    /// Gives it a new id; the one that it had is remembered.
    pub fn rename(&mut self, id: InstallationId) {
        self.former.push(std::mem::replace(&mut self.id, id));
    }
}

/// The row as text.
pub fn write(installation: &Installation) -> String {
    let mut row = fresh(installation.unknown.as_deref());
    row.insert("id".into(), Json::String(installation.id.to_string()));
    row.insert("practice".into(), Json::String(installation.practice.to_string()));
    row.insert("next".into(), installation.next.into());
    if !installation.former.is_empty() {
        row.insert("former".into(), installation.former.iter().map(|id| Json::String(id.to_string())).collect());
    }
    Json::Object(row).to_string()
}

/// The row from text.
pub fn read(text: &str) -> Result<Installation, RowError> {
    let (row, _) = open(text)?;
    read_parts(row).ok_or(RowError::Damaged)
}

fn read_parts(mut row: Map<String, Json>) -> Option<Installation> {
    Some(Installation {
        id: InstallationId::parse(row.remove("id")?.as_str()?)?,
        practice: RecordId::parse(row.remove("practice")?.as_str()?)?,
        next: row.remove("next")?.as_u64().filter(|next| (1..1 << 53).contains(next))?,
        former: match row.remove("former") {
            Some(former) => {
                former.as_array()?.iter().map(|id| InstallationId::parse(id.as_str()?)).collect::<Option<_>>()?
            }
            None => Vec::new(),
        },
        unknown: rest(row),
    })
}
