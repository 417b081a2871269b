//! The installation's own row.
//!
//! ```json
//! {"schema": "1.0", "id": "<32 hex>", "practice": "<32 hex>", "next": 8}
//! ```

use serde_json::{Map, Value as Json};

use super::row::{RowError, fresh, open, rest};
use crate::book::id::{InstallationId, RecordId};

/// The installation: who it is, under which id its practice is kept, and which number its next change gets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Installation {
    pub id: InstallationId,
    pub practice: RecordId,
    pub next: u64,
    /// What a newer version wrote beside it, carried through unharmed.
    pub unknown: Option<String>,
}

/// The row as text.
pub fn write(installation: &Installation) -> String {
    let mut row = fresh(installation.unknown.as_deref());
    row.insert("id".into(), Json::String(installation.id.to_string()));
    row.insert("practice".into(), Json::String(installation.practice.to_string()));
    row.insert("next".into(), installation.next.into());
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
        unknown: rest(row),
    })
}
