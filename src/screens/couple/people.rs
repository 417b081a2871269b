//! The names of the two, the ways to reach them, and where they were met.

use crate::parts::lay::all;
use leptos::prelude::*;

use super::{Whose, whose};
use crate::app::address::Part;
use crate::app::clock;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::book::field::Field as Kept;
use crate::book::id::{ItemId, RecordId};
use crate::book::verbs;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::wearer::Wearer;
use crate::words::screens as say;

/// The fields for ways to reach them: those there are, up to this many, and one more.
const REACH: [&str; 6] = ["reach", "reach-2", "reach-3", "reach-4", "reach-5", "reach-6"];

pub fn people(id: RecordId) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose(id, say::PEOPLE, Part::People);
    let known =
        app.couple(id, |couple| couple.reach().into_iter().map(|(item, text)| (item, text.to_owned())).collect());
    let known: Vec<(ItemId, String)> = known.unwrap_or_default();
    let text = |of: Option<Option<String>>| of.flatten().unwrap_or_default();
    let name = |wearer| text(app.couple(id, |couple| couple.name(wearer).map(str::to_owned)));
    let mut start = vec![
        ("first-name", name(Wearer::First)),
        ("second-name", name(Wearer::Second)),
        ("met", text(app.couple(id, |couple| couple.met().map(str::to_owned)))),
    ];
    let slots = (known.len() + 1).min(REACH.len());
    start.extend(
        REACH
            .iter()
            .take(slots)
            .enumerate()
            .map(|(i, key)| (*key, known.get(i).map(|(_, text)| text.clone()).unwrap_or_default())),
    );
    let form = Form::draft(format!("people.{id}"), start);
    let items: Vec<ItemId> = known.iter().map(|(item, _)| *item).collect();
    let items = StoredValue::new(items);
    let seen = Seen::couple(app, id);
    let save = move || {
        let first = fields::read_name(form, "first-name");
        let second = fields::read_optional_name(form, "second-name");
        let met = fields::read_line(form, "met");
        let reach: Vec<_> = REACH.iter().take(slots).map(|key| fields::read_reach(form, key)).collect();
        let (Some(first), Some(second), Some(met), Some(reach)) =
            (first, second, met, reach.into_iter().collect::<Option<Vec<_>>>())
        else {
            return show_first_complaint();
        };
        let mut writes = vec![
            verbs::text(Kept::Name(Wearer::First), Some(first)),
            verbs::text(Kept::Name(Wearer::Second), second),
            verbs::text(Kept::Met, met),
        ];
        for (i, text) in reach.into_iter().enumerate() {
            let item = items.with_value(|items| items.get(i).copied());
            match (item, text) {
                (Some(item), text) => writes.push(verbs::text(Kept::Reach(item), text)),
                (None, Some(text)) => writes.push(verbs::text(Kept::Reach(ItemId(clock::random())), Some(text))),
                (None, None) => {}
            }
        }
        app.save(id, seen.changed(writes), say::saved(say::PEOPLE_SHORT), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let reach: Vec<AnyView> = REACH
        .iter()
        .take(slots)
        .enumerate()
        .map(|(i, key)| {
            let label = if i == 0 { say::REACH } else { say::REACH_ANOTHER };
            fields::reach(form, key, label).line()
        })
        .collect();
    let content = all(vec![
        fields::name(form, "first-name", say::FIRST_NAME).line(),
        fields::name(form, "second-name", say::SECOND_NAME).line(),
        all(reach),
        fields::text(form, "met", say::MET).line(),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
