//! What was chosen for a band beside a head.

use serde_json::{Value as Json, json};

use super::json::{choice, object, option, optional, read_length, write_length};
use crate::archive::code::Code;
use crate::archive::day::{read_day, write_day};
use crate::book::id::ItemId;
use crate::book::value::{Away, Remedy};

pub(super) fn write_remedy(remedy: &Remedy) -> Json {
    let away = |away: Away| {
        object([
            ("ring", option(away.ring, |item| json!(item.to_string()))),
            ("from", option(away.from, write_day)),
            ("to", option(away.to, write_day)),
        ])
    };
    object([
        ("way", json!(remedy.way.code())),
        ("by", write_length(remedy.by)),
        ("impression", json!(remedy.impression)),
        ("template", json!(remedy.template)),
        ("away", option(remedy.ring, away)),
    ])
}

pub(super) fn read_remedy(json: &Json) -> Option<Remedy> {
    let away = |json: &Json| {
        Some(Away {
            ring: optional(json, "ring", |item| ItemId::parse(item.as_str()?))?,
            from: optional(json, "from", read_day)?,
            to: optional(json, "to", read_day)?,
        })
    };
    Some(Remedy {
        way: choice(json.get("way")?)?,
        by: read_length(json.get("by")?)?,
        impression: json.get("impression")?.as_bool()?,
        template: json.get("template")?.as_bool()?,
        ring: optional(json, "away", away)?,
    })
}
