//! What is chosen for a band that a head holds off: shaped, lower, or the gap accepted; what the bench gets to shape it
//! by; and when a ring is away for it.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{all, para, section};
use leptos::prelude::*;

use super::{Whose, whose_of};
use crate::answers::stack::{StackAnswer, StackRules, of_couple};
use crate::app::address::{Address, Part};
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::arcs;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::{Band, Couple, Ring};
use crate::book::field::Field;
use crate::book::id::{ItemId, RecordId};
use crate::book::remedy::{Away, Remedy, Way, away_at};
use crate::book::value::Value;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, choice, option, pick};
use crate::parts::reasons::reasons;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::section::Section;
use crate::trade::entry;
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;
use crate::words::bench::held_off_reasons;
use crate::words::stack::capital;
use crate::words::{
    book as say_book, entry as say_entry, lengths, remedy as say, screens as say_frame, stack as say_stack,
};
use chrono::NaiveDate;

/// The figure that belongs to a way, and its field.
const fn key(way: Way) -> &'static str {
    match way {
        Way::Shaped => "bay",
        Way::Lower => "most-high",
        Way::Gap => "left-gap",
    }
}

pub fn remedy(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose_of(id, wearer, say::TITLE, Part::Remedy(wearer));
    let held = untrack(|| {
        app.couple(id, |couple| app.practice(|practice| of_couple(couple, &StackRules::of(practice), wearer)))
    })
    .flatten();
    let rings = app.couple(id, |couple| worn(couple, wearer)).unwrap_or_default();
    let begin = app.couple(id, |couple| start(couple, wearer, &held)).unwrap_or_default();
    let form = Form::draft(format!("remedy.{id}.{}", wearer.code()), begin);
    let seen = Seen::couple(app, id);
    let band = app.couple(id, |couple| couple.band(wearer)).unwrap_or_default();
    let section_of_band = held.as_ref().and_then(StackAnswer::section_of_band);
    let save = move || {
        let Some(read) = read(form, app.today.get_untracked(), section_of_band) else { return show_first_complaint() };
        let writes = writes(wearer, read, &band, section_of_band);
        app.save(id, seen.changed(writes), say_frame::saved(say::TITLE), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let way = move || Way::from_code(&form.text("remedy").get());
    let amount = move || {
        let way = way()?;
        let field = fields::mm(form, key(way), amount_name(way));
        Some(match way {
            Way::Lower => field.hint(say::MOST_HIGH_HINT).line(),
            Way::Shaped | Way::Gap => field.line(),
        })
    };
    let shaped = Memo::new(move |_| way() == Some(Way::Shaped));
    let away = Memo::new(move |_| shaped.get() && form.text("ring-itself").with(|it| it == "yes"));
    let bench = move || {
        shaped.get().then(|| {
            section(
                say::FOR_BENCH,
                vec![
                    fields::yes(form, "impression", say::IMPRESSION, say::IMPRESSION_HINT),
                    fields::yes(form, "template", say::TEMPLATE, say::TEMPLATE_HINT),
                    fields::yes(form, "ring-itself", say::RING, say::RING_HINT),
                ],
            )
        })
    };
    let names: Vec<(String, String)> =
        rings.iter().map(|ring| (ring.item.to_string(), say_book::ring_name(ring))).collect();
    let planned = move || {
        away.get().then(|| {
            let which =
                (names.len() > 1).then(|| pick("which-ring", say::WHICH_RING, names.clone(), form.text("which-ring")));
            let from = Signal::derive(move || day(form, "away-from", app.today.get()).unwrap_or(app.today.get()));
            all(vec![
                or_nothing(which),
                fields::day(form, "away-from", say::FROM),
                fields::day_from(form, "away-to", say::TO, from),
                maybe(move || {
                    let away = typed_away(form, app.today.get());
                    let wedding = app.couple(id, |couple| couple.wedding()).flatten()?;
                    away_at(away, wedding).then(|| para("caution", say::AT_WEDDING))
                }),
            ])
        })
    };
    // Where a ring went, its days stay in sight, whatever is chosen meanwhile.
    let may_be_gone = Memo::new(move |_| away.get() || form.text("ring-gone").with(|text| !text.is_empty()));
    let at_bench = move || {
        may_be_gone
            .get()
            .then(|| all(vec![fields::day(form, "ring-gone", say::GONE), fields::day(form, "ring-back", say::BACK)]))
    };
    let ways = std::iter::once(option(fields::NONE, say_frame::NOT_SETTLED))
        .chain(Way::ALL.map(|way| option(way.code(), capital(say::way(way)))))
        .collect();
    let content = all(vec![
        section(
            say::WORKED_OUT,
            vec![
                worked_out(&held),
                link_button(Weight::Quiet, say::TO_STACK, Address::of_topic(id, Topic::Stack(wearer))),
            ],
        ),
        choice("remedy", say::WAY, Shape::Chips, ways, form.text("remedy")),
        maybe(amount),
        maybe(bench),
        maybe(planned),
        maybe(at_bench),
    ]);
    form_page(head, form, content, say_frame::SAVE, save)
}

fn amount_name(way: Way) -> &'static str {
    match way {
        Way::Shaped => say::BAY,
        Way::Lower => say::MOST_HIGH,
        Way::Gap => say::GAP,
    }
}

fn worked_out(held: &Option<StackAnswer>) -> AnyView {
    let Some(held) = held else { return para("", say::NO_BAND) };
    let why = held_off_reasons(held);
    if why.is_empty() { para("", say::NOT_HELD_OFF) } else { reasons(Signal::stored(why)) }
}

/// The rings that could go to the bench, those with a head first.
fn worn(couple: Couple<'_>, wearer: Wearer) -> Vec<Ring> {
    let worn: Vec<Ring> = couple.rings(wearer).into_iter().filter(|ring| !ring.planned).collect();
    let (mut with_head, others): (Vec<Ring>, Vec<Ring>) =
        worn.into_iter().partition(|ring| ring.head.underside.is_some());
    with_head.extend(others);
    with_head
}

fn start(couple: Couple<'_>, wearer: Wearer, held: &Option<StackAnswer>) -> Vec<(&'static str, String)> {
    let known = couple.remedy(wearer);
    let plain = |of: Option<Length>| of.map(lengths::plain).unwrap_or_default();
    let worked_out = held.as_ref().and_then(StackAnswer::remedies);
    let amount = |way: Way| {
        let chosen = known.filter(|it| it.way == way).map(|it| it.by);
        let computed = worked_out.and_then(|it| match way {
            Way::Shaped => Some(it.bay),
            Way::Lower => it.height.height(),
            Way::Gap => Some(it.gap),
        });
        plain(chosen.or(computed))
    };
    let away = known.and_then(|it| it.ring);
    let day = |of: Option<NaiveDate>| of.map(crate::words::format::day).unwrap_or_default();
    let first = worn(couple, wearer).first().map(|ring| ring.item);
    let ring = away.and_then(|away| away.ring).or(first);
    let mut start: Vec<(&'static str, String)> = Way::ALL.map(|way| (key(way), amount(way))).to_vec();
    start.extend([
        ("remedy", fields::code_or_none(known.map(|it| it.way))),
        ("impression", fields::yes_or_nothing(known.is_some_and(|it| it.impression))),
        ("template", fields::yes_or_nothing(known.is_some_and(|it| it.template))),
        ("ring-itself", fields::yes_or_nothing(away.is_some())),
        ("which-ring", ring.map(|item| item.to_string()).unwrap_or_default()),
        ("away-from", day(away.and_then(|away| away.from))),
        ("away-to", day(away.and_then(|away| away.to))),
        ("ring-gone", day(couple.ring_gone(wearer))),
        ("ring-back", day(couple.ring_back(wearer))),
    ]);
    start
}

/// What was read: the choice, and the days on which a ring went and came.
struct Read {
    remedy: Option<Remedy>,
    gone: Option<NaiveDate>,
    back: Option<NaiveDate>,
}

fn writes(wearer: Wearer, read: Read, band: &Band, section: Option<Section>) -> Vec<Write> {
    let day = |field, of: Option<NaiveDate>| Write { field, value: of.map(Value::Day) };
    let mut writes = vec![
        Write { field: Field::Remedy(wearer), value: read.remedy.map(Value::Remedy) },
        day(Field::RingGone(wearer), read.gone),
        day(Field::RingBack(wearer), read.back),
    ];
    let lower = read.remedy.filter(|it| it.way == Way::Lower);
    writes.extend(lower.into_iter().flat_map(|it| arcs::lowered(wearer, band, section.as_ref(), it.by)));
    writes
}

fn day(form: Form, key: &'static str, today: NaiveDate) -> Option<NaiveDate> {
    form.text(key).with(|text| crate::trade::dates::entry::read_day(text, today)).ok()
}

fn typed_away(form: Form, today: NaiveDate) -> Away {
    let from = day(form, "away-from", today);
    Away { ring: None, from, to: day(form, "away-to", from.unwrap_or(today)) }
}

fn read(form: Form, today: NaiveDate, band: Option<Section>) -> Option<Read> {
    let text = |key| form.text(key).get_untracked();
    let way = Way::from_code(&text("remedy"));
    let is_away = way == Some(Way::Shaped) && text("ring-itself") == "yes";
    let ring = if is_away { read_away(form, today).map(Some) } else { Some(None) };
    let happened = read_happened(form, today, is_away);
    let Some(way) = way else {
        let (gone, back) = happened?;
        return Some(Read { remedy: None, gone, back });
    };
    let (limit, noun) = match way {
        Way::Shaped => (Limit::HeadReach, say::BAY_NOUN),
        Way::Lower => (Limit::RingHeight, say::MOST_HIGH_NOUN),
        Way::Gap => (Limit::HeadReach, say::GAP_NOUN),
    };
    let by = entry::read_length(&text(key(way)), limit);
    let by = by.map_err(|error| say_entry::number_error_named(error, noun)).and_then(|by| {
        // The band keeps its dome and its relief: a height that leaves them no edge is none.
        let made = band.filter(|_| way == Way::Lower).map_or(Ok(()), |band| band.at_height(by).map(|_| ()));
        made.map(|()| by).map_err(say_stack::section_error)
    });
    let by = form.judge(key(way), by);
    let shaped = |key| way == Way::Shaped && text(key) == "yes";
    let (impression, template) = (shaped("impression"), shaped("template"));
    let (gone, back) = happened?;
    Some(Read { remedy: Some(Remedy { way, by: by?, impression, template, ring: ring? }), gone, back })
}

/// From when to when the ring is to be away.
fn read_away(form: Form, today: NaiveDate) -> Option<Away> {
    let from = fields::read_optional_day(form, "away-from", today);
    let to = fields::read_optional_day(form, "away-to", from.flatten().unwrap_or(today));
    let (from, to) = (from?, to?);
    let ordered = from.zip(to).is_none_or(|(from, to)| from <= to);
    form.judge("away-to", if ordered { Ok(()) } else { Err(say::TO_BEFORE_FROM.to_owned()) })?;
    Some(Away { ring: ItemId::parse(&form.text("which-ring").get_untracked()), from, to })
}

/// The days on which it went and came. One that went and has no place at the bench any more has to have come back.
fn read_happened(form: Form, today: NaiveDate, is_away: bool) -> Option<(Option<NaiveDate>, Option<NaiveDate>)> {
    let gone = fields::read_optional_day(form, "ring-gone", today);
    let back = fields::read_optional_day(form, "ring-back", today);
    let (gone, back) = (gone?, back?);
    let not_yet = |day: Option<NaiveDate>| day.is_some_and(|day| day > today);
    let went = if not_yet(gone) { Err(say::not_yet(today)) } else { Ok(()) };
    let came = match (gone, back) {
        (None, Some(_)) => Err(say::BACK_NOT_GONE.to_owned()),
        (Some(gone), Some(back)) if back < gone => Err(say::BACK_BEFORE_GONE.to_owned()),
        (Some(_), None) if !is_away => Err(say::STILL_AWAY.to_owned()),
        _ if not_yet(back) => Err(say::not_yet(today)),
        _ => Ok(()),
    };
    let (went, came) = (form.judge("ring-gone", went), form.judge("ring-back", came));
    went.and(came).map(|()| (gone, back))
}
