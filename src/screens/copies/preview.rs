//! What a file would bring, before anything changes: with names, and with what would be left out and why.

use std::collections::BTreeMap;

use crate::parts::el::or_nothing;
use crate::parts::layout::{all, para, section};
use leptos::prelude::*;

use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::state::App;
use crate::archive::import::{Entry, News, Offer, Plan};
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::id::RecordId;
use crate::book::record::Kind;
use crate::book::value::Value;
use crate::parts::choice::check;
use crate::parts::line::{Line, line, lines};
use crate::words::harmless::harmless;
use crate::words::parts::Mark;
use crate::words::{book as say_book, copies as say, fields, files, phones, same as say_same};

/// So many names are shown of a kind.
const NAMES: usize = 50;
/// So many fields are named of one couple.
const FIELDS: usize = 4;

pub fn preview(app: App, plan: &Plan, take_practice: RwSignal<bool>) -> AnyView {
    let written = clock::civil(plan.header.written).0;
    let mut parts = vec![para("", say::from(&app.phone_name(plan.header.by), written))];
    let mut sentence = |is_so: bool, class, text: &dyn Fn() -> String| {
        if is_so {
            parts.push(para(class, text()));
        }
    };
    sentence(plan.is_empty(), "settled", &|| say::NOTHING_NEW.to_owned());
    sentence(plan.claims_ours, "caution", &|| say::CLAIMS_OURS.to_owned());
    for off in &plan.far_off {
        sentence(true, "caution", &|| say::far_off(&app.phone_name(off.by), clock::civil(off.at).0, off.ahead));
    }
    let is = |news| move |entry: &&Entry| entry.news == news && entry.conflicts.is_empty();
    parts.push(group(
        app,
        say::ERASED_THERE,
        Mark::Care,
        plan.entries.iter().filter(|it| it.news == News::Erased),
        erased_row,
    ));
    if plan.count(News::Erased) > 0 {
        parts.push(para("caution", say::ERASED_THERE_WHY));
    }
    let differ = plan.entries.iter().filter(|entry| !entry.conflicts.is_empty());
    parts.push(group(app, say::IN_CONFLICT, Mark::Care, differ, differing_row));
    let changed = plan.entries.iter().filter(is(News::Changed));
    parts.push(group(app, say::CHANGED_HERE, Mark::Done, changed, changed_row));
    let perhaps: BTreeMap<RecordId, RecordId> = plan.perhaps.iter().copied().collect();
    let may_be_here = |entry: &&Entry| perhaps.contains_key(&entry.incoming.id);
    let twice = plan.entries.iter().filter(is(News::New)).filter(may_be_here);
    parts.push(group(app, say_same::PERHAPS_HERE, Mark::Care, twice, |_, _| Line::default()));
    if !perhaps.is_empty() {
        parts.push(para("", say_same::PERHAPS_HERE_WHY));
    }
    let new = plan.entries.iter().filter(is(News::New)).filter(|entry| !may_be_here(entry));
    parts.push(group(app, say::NEW_HERE, Mark::Done, new, |_, _| Line::default()));
    parts.push(left_out(plan));
    if plan.same > 0 && !plan.is_empty() {
        parts.push(para("small", say::REST_IS_HERE));
    }
    if plan.erased_here > 0 {
        parts.push(para("small", say::erased_here(plan.erased_here)));
    }
    if plan.practice != Offer::None {
        let hint = say::TAKE_PRACTICE_HINT.into();
        parts.push(check("take-practice", say::TAKE_PRACTICE, Some(hint), take_practice));
    }
    all(parts)
}

/// One that goes: while it is here, a file of it can be made first.
fn erased_row(app: App, entry: &Entry) -> Line {
    let id = entry.incoming.id;
    if app.couple(id, |_| ()).is_none() || app.stays(id).is_some() {
        return Line::default();
    }
    line("", "", Address::Part(id, Part::Copy).to_string()).small(say::ERASED_COPY_FIRST)
}

/// What differs: both values of each field, as they begin.
fn differing_row(app: App, entry: &Entry) -> Line {
    let both = |field: &Field| {
        let value = |of: Option<&Value>| phones::head(&fields::value(of)).to_owned();
        let here = match entry.incoming.kind {
            Kind::Couple => app.couple(entry.incoming.id, |couple| value(couple.0.get(field))).unwrap_or_default(),
            Kind::Practice => app.practice(|practice| value(practice.0.get(field))),
        };
        let there = value(entry.incoming.get(field));
        let name = fields::field(Couple(&entry.incoming), field);
        // Where both begin alike, or it is not in the value that they differ, the field alone is named.
        if here == there { name } else { say::here_and_there(&name, &here, &there) }
    };
    about(entry.conflicts.iter().map(both).collect())
}

fn changed_row(_: App, entry: &Entry) -> Line {
    about(entry.fields.iter().map(|field| fields::field(Couple(&entry.incoming), field)).collect())
}

fn about(mut fields: Vec<String>) -> Line {
    let more = fields.len().saturating_sub(FIELDS);
    fields.truncate(FIELDS);
    fields.extend((more > 0).then(|| say::and_more(more)));
    Line { small: harmless(&fields.join("; ")), ..Line::default() }
}

/// Couples of a kind by their names, each with what is to be said of it.
fn group<'a>(
    app: App,
    heading: &'static str,
    mark: Mark,
    entries: impl Iterator<Item = &'a Entry>,
    said: fn(App, &Entry) -> Line,
) -> AnyView {
    let entries: Vec<&Entry> = entries.collect();
    let row = |entry: &&Entry| {
        let record = &entry.incoming;
        // What is here has the names that are known here.
        let here = app.couple(record.id, |couple| (!couple.is_blank()).then(|| say_book::names(couple))).flatten();
        let name = match record.kind {
            Kind::Couple => here.unwrap_or_else(|| say_book::names(Couple(record))),
            Kind::Practice => phones::SETTINGS.to_owned(),
        };
        Line { name: harmless(&name), mark: Some(mark), ..said(app, entry) }
    };
    let rows: Vec<Line> = entries.iter().take(NAMES).map(row).collect();
    listed(heading, rows, entries.len())
}

fn left_out(plan: &Plan) -> AnyView {
    let row = |it: &crate::archive::import::Unreadable| {
        let why = say::left_out(it.at, &files::refused(it.why));
        // Who it is about comes first, where that can be read.
        let [name, small] = match it.names.each_ref().map(Option::as_deref) {
            [None, None] => [why, String::new()],
            names => [say_book::both_names(names), why],
        };
        Line { name, small, mark: Some(Mark::Care), ..Line::default() }
    };
    listed(say::LEFT_OUT, plan.unreadable.iter().take(NAMES).map(row).collect(), plan.unreadable.len())
}

fn listed(heading: &'static str, rows: Vec<Line>, of: usize) -> AnyView {
    let more = of.saturating_sub(rows.len());
    let more = (more > 0).then(|| para("small", say::and_more(more)));
    or_nothing((of > 0).then(|| section(heading, vec![lines(Signal::stored(rows)), or_nothing(more)])))
}
