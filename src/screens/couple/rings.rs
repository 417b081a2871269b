//! The rings that one of the two owns or will own, and one of them.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, column, heading, pair, para, section};
use leptos::prelude::*;

use super::said::{beside, has_rings};
use super::{Whose, not_here, whose_of};
use crate::app::address::{Address, Part};
use crate::app::clock;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::change::Write;
use crate::book::couple::{Head, Ring};
use crate::book::field::Field as Kept;
use crate::book::id::{ItemId, RecordId};
use crate::book::value::Value;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::{Shape, choice_with, option, pick};
use crate::parts::line::{line, lines};
use crate::parts::page::page;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::{Profile, alloys};
use crate::trade::limits::{Limit, Whole};
use crate::trade::stack::RINGS_MOST;
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};
use crate::words::list::taking as say_list;
use crate::words::{book as say_book, lengths, rings as say_rings, screens as say};

pub fn rings(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, .. } = whose_of(id, wearer, say::RINGS, Part::Rings(wearer));
    let rows = Signal::derive(move || {
        let row = |it: Ring| {
            let width = it.shoulder_width.map(|width| format!("{} mm", lengths::plain(width))).unwrap_or_default();
            let small = app.couple(id, |couple| say_book::ring_small(couple, wearer, &it)).unwrap_or_default();
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
    let place = couple_rings_next(app, id, wearer);
    let known = known.unwrap_or(Ring { finger: worn_on, place: Some(Whole(place)), ..Ring::unknown(item) });
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
            ("back-width", length(known.back_width)),
            ("height", length(known.height)),
            ("inside", length(known.inside)),
            ("profile", fields::code_or_none(known.profile)),
            ("metal", known.metal.map_or(fields::NONE, |alloy| alloy.code).to_owned()),
            ("ring-inscription", known.inscription.clone().unwrap_or_default()),
            ("head-web", length(known.head.to_web)),
            ("head-tip", length(known.head.to_tip)),
            ("head-underside", length(known.head.underside)),
            ("stones", fields::yes_or_nothing(known.stones)),
            ("place", known.place.map_or(fields::NONE.to_owned(), |place| place.0.to_string())),
            ("holds", fields::yes_or_nothing(known.holds)),
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
    let planned = form.text("planned");
    let planned_hint = move || if planned.with(|it| it == "later") { say::PLANNED_HINT } else { "" }.to_owned();
    let when = vec![option("now", say::WORN_NOW), option("later", say::PLANNED)];
    let places = (1..=RINGS_MOST as u16).map(|place| (place.to_string(), say_rings::place(place)));
    let places = std::iter::once((fields::NONE.to_owned(), say_rings::NO_PLACE.to_owned())).chain(places).collect();
    let content = all(vec![
        beside(id, Some(wearer), &[Ask::RingName]),
        fields::text(form, "ring-name", say::RING_NAME).hint(say::RING_NAME_HINT).line(),
        choice_with(
            "planned",
            say::WHEN_WORN.into(),
            Some(Signal::derive(planned_hint).into()),
            Shape::Segments,
            when,
            form.text("planned"),
        ),
        fields::mm(form, "shoulder-width", say::SHOULDER_WIDTH).hint(say::SHOULDER_WIDTH_HINT).line(),
        pair(vec![
            fields::mm(form, "top-width", say::TOP_WIDTH).line(),
            fields::mm(form, "back-width", say_rings::BACK_WIDTH).line(),
        ]),
        fields::mm(form, "height", say_rings::HEIGHT).hint(say_rings::HEIGHT_HINT).line(),
        fields::profile(form, "profile"),
        fields::metal(form, "metal"),
        fields::text(form, "ring-inscription", say_rings::INSCRIPTION).hint(say_rings::INSCRIPTION_HINT).line(),
        pick("place", say_rings::PLACE, places, form.text("place")),
        fields::yes(form, "holds", say_rings::HOLDS, say_rings::HOLDS_HINT),
        section(
            say_rings::HEAD,
            vec![
                para("small", say_rings::HEAD_HOW),
                pair(vec![
                    fields::mm(form, "head-web", say_rings::TO_WEB).line(),
                    fields::mm(form, "head-tip", say_rings::TO_TIP).line(),
                ]),
                fields::mm(form, "head-underside", say_rings::UNDERSIDE).line(),
                fields::yes(form, "stones", say_rings::STONES, say_rings::STONES_HINT),
            ],
        ),
        fields::mm(form, "inside", say_rings::INSIDE).hint(say_rings::INSIDE_HINT).line(),
        fields::hand_and_finger(form),
        or_nothing(remove),
    ]);
    form_page(head, form, content, say::SAVE, save)
}

/// Which ring a new one is on the finger, unless somebody says otherwise: the next outwards.
fn couple_rings_next(app: App, id: RecordId, wearer: Wearer) -> u16 {
    let known = app.couple(id, |couple| couple.rings(wearer).len()).unwrap_or(0);
    (known + 1).min(RINGS_MOST) as u16
}

fn read(form: Form, item: ItemId) -> Option<Ring> {
    let name = fields::read_line(form, "ring-name");
    let inscription = fields::read_line(form, "ring-inscription");
    let length = |key, limit| fields::read_optional_length(form, key, limit);
    let shoulder_width = length("shoulder-width", Limit::RingWidth);
    let top_width = length("top-width", Limit::RingWidth);
    let back_width = length("back-width", Limit::RingWidth);
    let height = length("height", Limit::RingHeight);
    let inside = length("inside", Limit::InsideDiameter);
    let to_web = length("head-web", Limit::HeadReach);
    let to_tip = length("head-tip", Limit::HeadReach);
    let underside = length("head-underside", Limit::HeadUnderside);
    let text = |key| form.text(key).get_untracked();
    let head = Head { to_web: to_web?, to_tip: to_tip?, underside: underside? };
    if head.underside.is_none() && (head.to_web.is_some() || head.to_tip.is_some()) {
        form.judge::<()>("head-underside", Err(say_rings::HEAD_INCOMPLETE.to_owned()))?;
    }
    Some(Ring {
        item,
        name: name?,
        finger: Some(Finger { hand: Hand::from_code(&text("hand"))?, digit: Digit::from_code(&text("digit"))? }),
        shoulder_width: shoulder_width?,
        top_width: top_width?,
        back_width: back_width?,
        height: height?,
        inside: inside?,
        profile: Profile::from_code(&text("profile")),
        metal: alloys::by_code(&text("metal")),
        inscription: inscription?,
        head,
        stones: text("stones") == "yes",
        place: text("place").parse().ok().map(Whole),
        holds: text("holds") == "yes",
        planned: text("planned") == "later",
    })
}
