//! What a stack is measured against: the free length, the gap, and where it stops being roomy and full.

use crate::parts::el::or_nothing;
use crate::parts::lay::{all, block, para};
use leptos::prelude::*;

use super::{back_to_usual, draft, head, keep, now, own};
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::book::change::Write;
use crate::book::field::PracticeField::{self, Catch, Clearance, FreeLength, Full, Gap, Roomy, Thinnest};
use crate::book::value::Value;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::limits::{self, Limit};
use crate::trade::stack::{House, thresholds};
use crate::words::{practice as say, screens as say_frame, sizing::trimmed, stack as say_stack};

const HERE: Setting = Setting::Stack;
const FIELDS: [PracticeField; 7] = [FreeLength, Gap, Roomy, Full, Clearance, Catch, Thinnest];

pub fn stack() -> AnyView {
    let app = app();
    let usual = House::default();
    let start = now(app, |practice| {
        let house = practice.house();
        let shown = |field, text: String| if practice.is_set(field) { text } else { String::new() };
        vec![
            ("free-length", shown(FreeLength, trimmed(house.free_length))),
            ("gap", shown(Gap, trimmed(house.gap))),
            ("roomy", shown(Roomy, house.roomy.0.to_string())),
            ("full", shown(Full, house.full.0.to_string())),
            ("clearance", shown(Clearance, trimmed(house.clearance))),
            ("catch", shown(Catch, trimmed(house.catch))),
            ("thinnest", shown(Thinnest, trimmed(house.thinnest))),
        ]
    });
    let form = draft(HERE, start);
    let seen = Seen::practice(app);
    let save = move || match read(form) {
        Some(writes) => keep(app, HERE, form, seen.changed(writes), say_frame::saved(say::STACK)),
        None => show_first_complaint(),
    };
    let standing = |limit| limits::of(limit).standing;
    let free =
        format!("{} {}", say::FREE_LENGTH_WHY, say::usual_length(usual.free_length, standing(Limit::FreeLength)));
    let roomy = format!("{} {}", say::ROOMY_WHY, say::usual_share(usual.roomy, standing(Limit::StackShare)));
    let full = format!("{} {}", say::FULL_WHY, say::usual_share(usual.full, standing(Limit::StackShare)));
    let content = all(vec![
        para("small", say::EMPTY_IS_USUAL),
        block(
            "ledger",
            vec![
                fields::mm(form, "free-length", say::FREE_LENGTH).hint(free).line(),
                fields::mm(form, "gap", say::GAP)
                    .hint(say::usual_length(usual.gap, standing(Limit::GapBetweenRings)))
                    .line(),
                fields::percent(form, "roomy", say::ROOMY).hint(roomy).line(),
                fields::percent(form, "full", say::FULL).hint(full).line(),
                fields::mm(form, "clearance", say::CLEARANCE)
                    .hint(say::usual_length(usual.clearance, standing(Limit::Clearance)))
                    .line(),
                fields::mm(form, "catch", say::CATCH)
                    .hint(say::usual_length(usual.catch, standing(Limit::HeightDifference)))
                    .line(),
                fields::mm(form, "thinnest", say::THINNEST)
                    .hint(say::usual_length(usual.thinnest, standing(Limit::RingHeight)))
                    .enter("done")
                    .line(),
            ],
        ),
        or_nothing(back_to_usual(app, HERE, form, say::STACK, FIELDS.into())),
    ]);
    form_page(head(HERE, say::STACK), form, content, say_frame::SAVE, save)
}

fn read(form: Form) -> Option<Vec<Write>> {
    let usual = House::default();
    let free_length = fields::read_optional_length(form, "free-length", Limit::FreeLength);
    let gap = fields::read_optional_length(form, "gap", Limit::GapBetweenRings);
    let roomy = fields::read_optional_percent(form, "roomy", Limit::StackShare);
    let full = fields::read_optional_percent(form, "full", Limit::StackShare);
    let clearance = fields::read_optional_length(form, "clearance", Limit::Clearance);
    let catch = fields::read_optional_length(form, "catch", Limit::HeightDifference);
    let thinnest = fields::read_optional_length(form, "thinnest", Limit::RingHeight);
    let house = House {
        gap: gap?.unwrap_or(usual.gap),
        free_length: free_length?.unwrap_or(usual.free_length),
        roomy: roomy?.unwrap_or(usual.roomy),
        full: full?.unwrap_or(usual.full),
        clearance: clearance?.unwrap_or(usual.clearance),
        catch: catch?.unwrap_or(usual.catch),
        thinnest: thinnest?.unwrap_or(usual.thinnest),
    };
    form.judge("full", thresholds(&house).map_err(|error| say_stack::error(&error)))?;
    Some(vec![
        own(FreeLength, Value::Length(house.free_length), house.free_length == usual.free_length),
        own(Gap, Value::Length(house.gap), house.gap == usual.gap),
        own(Roomy, Value::Percent(house.roomy), house.roomy == usual.roomy),
        own(Full, Value::Percent(house.full), house.full == usual.full),
        own(Clearance, Value::Length(house.clearance), house.clearance == usual.clearance),
        own(Catch, Value::Length(house.catch), house.catch == usual.catch),
        own(Thinnest, Value::Length(house.thinnest), house.thinnest == usual.thinnest),
    ])
}
