//! The rings that one of the two owns or will own, and one of them.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, column, heading, pair, para};
use leptos::prelude::*;

use super::said::{beside, has_rings};
use super::{Whose, not_here, whose_of};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::couple::Ring;
use crate::book::field::Field as Kept;
use crate::book::id::{ItemId, RecordId};
use crate::book::value::Value;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice_with, option};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::{Profile, alloys};
use crate::trade::limits::Limit;
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};
use crate::words::list::taking as say_list;
use crate::words::{book as say_book, lengths, screens as say};

pub fn rings(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, .. } = whose_of(id, wearer, say::RINGS, Part::Rings(wearer));
    let rows = Signal::derive(move || {
        let row = |it: Ring| {
            let width = it.shoulder_width.map(|width| format!("{} mm", lengths::plain(width))).unwrap_or_default();
            let small = say_book::ring_small(&it);
            let href = Address::Part(id, Part::Ring(wearer, Some(it.item))).to_string();
            line(say_book::ring_name(&it), width, href).small(small)
        };
        app.couple(id, |couple| couple.rings(wearer).into_iter().map(row).collect::<Vec<_>>()).unwrap_or_default()
    });
    let none = move || {
        let asked = app.couple(id, |couple| couple.has_no_rings(wearer)).unwrap_or(false);
        let said = move || {
            let writes = vec![Write::set(Kept::NoRings(wearer), Value::Yes(!asked))];
            app.save(id, writes, say::saved(say::RINGS), || ());
        };
        let label = if asked { say::NO_RINGS_BACK } else { say::NO_RINGS };
        rows.with(Vec::is_empty).then(|| {
            all(vec![
                para("", if asked { say::NO_RINGS_SAID } else { say::NONE_YET }),
                button(Weight::Quiet, label.to_owned(), said),
            ])
        })
    };
    let new = Address::Part(id, Part::Ring(wearer, None)).to_string();
    let theirs = beside(id, Some(wearer), &[Ask::OwnsRings, Ask::RingName, Ask::ToCome]);
    let ours = move || {
        let said = app.couple(id, |couple| has_rings(couple, wearer)).unwrap_or(false);
        (said && rows.with(|rows| !rows.is_empty())).then(|| heading(say_list::MEASURED_BY_US))
    };
    page(
        head,
        column(vec![theirs, maybe(ours), lines(rows), maybe(none)]),
        Some(link_button(Weight::Primary, say::NEW_RING, new)),
    )
}

pub fn ring(id: RecordId, wearer: Wearer, which: Option<ItemId>) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose_of(id, wearer, say::RING, Part::Ring(wearer, which));
    let owned = app.couple(id, |couple| couple.rings(wearer)).unwrap_or_default();
    let known = which.and_then(|item| owned.into_iter().find(|ring| ring.item == item));
    if which.is_some() && known.is_none() {
        return not_here();
    }
    let item = which.unwrap_or_else(|| ItemId(clock::random()));
    let worn_on = app.couple(id, |couple| couple.finger(wearer)).flatten();
    let known = known.unwrap_or(Ring {
        item,
        name: None,
        finger: worn_on,
        shoulder_width: None,
        top_width: None,
        profile: None,
        metal: None,
        planned: false,
    });
    let finger = known.finger.unwrap_or(Finger { hand: Hand::Left, digit: Digit::Ring });
    let length = |of: Option<_>| of.map(lengths::plain).unwrap_or_default();
    let name = which.map_or_else(|| "new".to_owned(), |item| item.to_string());
    let form = Form::draft(
        format!("ring.{id}.{}.{name}", wearer.code()),
        vec![
            ("ring-name", known.name.clone().unwrap_or_default()),
            ("planned", if known.planned { "later" } else { "now" }.to_owned()),
            ("shoulder-width", length(known.shoulder_width)),
            ("top-width", length(known.top_width)),
            ("profile", fields::code_or_none(known.profile)),
            ("metal", known.metal.map_or("none", |alloy| alloy.code).to_owned()),
            ("hand", finger.hand.code().to_owned()),
            ("digit", finger.digit.code().to_owned()),
        ],
    );
    let seen = Seen::couple(app, id);
    let save = move || {
        let Some(ring) = read(form, item) else { return show_first_complaint() };
        app.save(id, seen.changed(verbs::note_ring(wearer, ring)), say::saved(say::RING), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let remove = which.map(|item| {
        button(Weight::Quiet, say::REMOVE, move || {
            app.save(id, verbs::drop_ring(wearer, item), say::removed(say::RING), move || {
                form.done();
                let _ = leave.try_run(());
            });
        })
    });
    let when = vec![option("now", say::WORN_NOW), option("later", say::PLANNED)];
    let content = all(vec![
        beside(id, Some(wearer), &[Ask::RingName]),
        fields::text(form, "ring-name", say::RING_NAME).hint(say::RING_NAME_HINT).line(),
        choice_with(
            "planned",
            say::WHEN_WORN.into(),
            Some(say::PLANNED_HINT.into()),
            Shape::Segments,
            when,
            form.text("planned"),
        ),
        pair(vec![
            fields::mm(form, "shoulder-width", say::SHOULDER_WIDTH).hint(say::SHOULDER_WIDTH_HINT).line(),
            fields::mm(form, "top-width", say::TOP_WIDTH).line(),
        ]),
        fields::profile(form, "profile"),
        fields::metal(form, "metal"),
        fields::hand_and_finger(form),
        or_nothing(remove),
    ]);
    form_page(head, form, content, say::SAVE, save)
}

fn read(form: Form, item: ItemId) -> Option<Ring> {
    let name = fields::read_line(form, "ring-name");
    let shoulder_width = fields::read_optional_length(form, "shoulder-width", Limit::RingWidth);
    let top_width = fields::read_optional_length(form, "top-width", Limit::RingWidth);
    let text = |key| form.text(key).get_untracked();
    Some(Ring {
        item,
        name: name?,
        finger: Some(Finger { hand: Hand::from_code(&text("hand"))?, digit: Digit::from_code(&text("digit"))? }),
        shoulder_width: shoulder_width?,
        top_width: top_width?,
        profile: Profile::from_code(&text("profile")),
        metal: alloys::by_code(&text("metal")),
        planned: text("planned") == "later",
    })
}
