//! The stack: every ring worn together, now and later, against the free length of the finger.

mod fields;

use crate::parts::el::{el, live, maybe, nothing, or_nothing};
use crate::parts::layout::{all, heading as heading_of, section};
use leptos::prelude::*;

use super::sheet::{self, Laid, Sheet, laid};
use super::unsettled::Unsettled;
use super::{Opened, Opener};
use crate::answers::stack::{
    Elsewhere, StackAnswer, StackRules, USUAL_FINGER, answer as compute, elsewhere, finger_across, holding, lacking,
    unsettled,
};
use crate::app::address::{Address, Part};
use crate::app::route::go_instead;
use crate::app::state::app;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::{BandField, Field};
use crate::forms::stack as form_of;
use crate::parts::answer::answer;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::reasons;
use crate::pictures::stack_answer::{self as drawing, Drawn};
use crate::screens::shell::show::{show_button, showable};
use crate::trade::measure::{Diameter, Length};
use crate::words::answer::Reason;
use crate::words::bench::{self as say, Called};
use crate::words::{book as say_book, complaint as say_complaint};

pub fn stack(opened: Opened) -> AnyView {
    let finger = opened.read(finger_across).flatten().unwrap_or(USUAL_FINGER);
    let (begin, rules) = opened.known(|couple, practice| {
        let recorded = form_of::StackTyped::recorded(couple, &practice.house());
        (form_of::start(&recorded, say_book::ring_name), StackRules::of(practice))
    });
    let form = opened.form(begin.into_pairs());
    let held = Unsettled::by(&opened, |field, who| match field {
        Field::Stack(of) | Field::FreeLength(of) | Field::FreeLengthOf(of, _) | Field::Band(of, BandField::Place) => {
            *of == who
        }
        _ => false,
    });
    let read = Memo::new(move |_| form_of::read(&form.texts()));
    let found = Memo::new(move |_| read.with(|(typed, _)| compute(typed, &rules)));
    let complaints = Signal::derive(move || read.with(|(_, complaints)| say_complaint::complaints(complaints)));
    let sheet = Sheet::new(form, complaints);
    let answered = found.with_untracked(|found| found.stack.is_some());
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let shown = move || {
        there.get().then(|| {
            let drawn = move || found.with(|found| drawing::from_above(found, finger, Called::Own));
            let svg = Signal::derive(move || drawn().map(|picture| picture.svg).unwrap_or_default());
            let said = Signal::derive(move || found.with(say::stack_headline));
            let shown = move || found.with_untracked(|found| drawing::shown(found, finger));
            showable(vec![picture(svg), answer("stack-answer", say::STACK_LATER, said)], shown)
        })
    };
    let unsettled = opened.read(unsettled).unwrap_or_default();
    let unsettled: Vec<String> = unsettled.iter().map(say::stack_unsettled).collect();
    let cautions = Signal::derive(move || {
        let mut all = unsettled.clone();
        all.extend(found.with(say::stack_cautions));
        all
    });
    let answer = all(vec![maybe(shown), sheet::cautions(cautions)]);
    let others = opened.read(elsewhere).unwrap_or_default();
    let holding = say::holding_reasons(&opened.read(holding).unwrap_or_default());
    let opener = opened.opener;
    let why = move || there.get().then(|| explained(found, finger, &others, holding.clone(), opener));
    let content = laid(Laid {
        first: all(vec![held.caution(), opened.missing(lacking)]),
        answered,
        answer,
        inputs: fields::fields(&opened, sheet),
        summary: Signal::derive(move || found.with(say::stack_summary)),
        reasons: maybe(why),
    });
    let head = match opened.read(say::stack_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.opener {
        Some(opener) => note_for(&opened, opener, held, found),
        None => {
            let label = Signal::derive(move || found.with(|found| found.later().map(|it| say::see_stack(it.total))));
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// The parts of the answer, each with its picture.
fn explained(
    found: Memo<StackAnswer>,
    finger: Diameter,
    others: &[Elsewhere],
    holding: Vec<Reason>,
    opener: Option<Opener>,
) -> AnyView {
    let part = |heading: &'static str, of: fn(&StackAnswer) -> Vec<Reason>, drawn: Signal<Vec<Drawn>>, on: AnyView| {
        let any = Memo::new(move |_| found.with(|found| !of(found).is_empty()));
        let inside = live(move || if any.get() { reasons(Signal::derive(move || found.with(of))) } else { nothing() });
        let there = move || any.get().then(|| heading_of(heading));
        el("section").class("section").child(maybe(there)).child(pictures(drawn)).child(inside).child(on).view()
    };
    let none = Signal::stored(Vec::new());
    let flat = Signal::derive(move || found.with(|found| drawing::laid_flat(found, finger)));
    let side = Signal::derive(move || found.with(drawing::from_the_side));
    let sections = Signal::derive(move || found.with(drawing::sections));
    let any_section = Memo::new(move |_| sections.with(|drawn| !drawn.is_empty()));
    let cut = move || any_section.get().then(|| section(say::CUT_THROUGH, vec![pictures(sections)]));
    let others = others.to_vec();
    let elsewhere = (!others.is_empty()).then(|| {
        let said = move || {
            let house = app().practice(|practice| practice.house());
            found.with(|found| say::elsewhere_reasons(found, &others, house))
        };
        section(say::OTHER_FINGERS, vec![reasons(Signal::derive(said))])
    });
    let is_off = Memo::new(move |_| found.with(|found| found.remedies().is_some()));
    let choose = move || {
        let shows = is_off.get().then(|| show_button(move || found.with_untracked(say::ways_shown)));
        let link = opener.filter(|_| is_off.get()).map(|Opener { id, who }| {
            link_button(Weight::Quiet, say::CHOOSE_REMEDY, Address::Part(id, Part::Remedy(who)).to_string())
        });
        shows.map(|shows| all(vec![shows, or_nothing(link)]))
    };
    let any_wear = Memo::new(move |_| found.with(|found| say::wear_shown(found).is_some()));
    let show_wear = move || any_wear.get().then(|| show_button(move || found.with_untracked(say::wear_shown)));
    let holding = (!holding.is_empty()).then(|| reasons(Signal::stored(holding)));
    all(vec![
        part(say::ROOM, say::room_reasons, none, or_nothing(holding)),
        or_nothing(elsewhere),
        part(say::MATCH, say::match_reasons, flat, nothing()),
        part(say::FLUSH, say::flush_reasons, side, maybe(choose)),
        part(say::WEAR, say::wear_reasons, none, maybe(show_wear)),
        maybe(cut),
    ])
}

/// Pictures, each of which can be shown to the couple.
fn pictures(drawn: Signal<Vec<Drawn>>) -> AnyView {
    let one = |it: Drawn| showable(vec![picture(it.svg)], move || Some(it.shown.clone()));
    live(move || all(drawn.get().into_iter().map(one).collect()))
}

/// Writes down what the stack came to, and the free length if it was measured here.
fn note_for(opened: &Opened, Opener { id, who }: Opener, held: Unsettled, found: Memo<StackAnswer>) -> AnyView {
    let app = opened.app;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let chosen = opened.read(|couple, who| couple.remedy(who).is_some()).unwrap_or(false);
    let record = StoredValue::new(opened.read(|couple, _| couple.0.clone()));
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let save = move || {
        let today = app.today.get_untracked();
        let writes = record.with_value(|record| {
            let record = record.as_ref()?;
            Some(found.with_untracked(|found| found.writes(Couple(record), who, today)))
        });
        let Some(writes) = writes.filter(|writes| !writes.is_empty()) else { return };
        // What is still to be chosen comes next.
        let is_off = found.with_untracked(|found| found.off() > Length::ZERO);
        let to = if is_off && !chosen { Address::Part(id, Part::Remedy(who)) } else { Address::Couple(id) };
        app.save(id, writes, say::stack_saved(), move || go_instead(&to.to_string()));
    };
    // A stack that leaves a ring out is not noted as if it were whole.
    let left_out =
        opened.read(|couple, who| form_of::rings_here(couple, who).len() > form_of::ROWS.len()).unwrap_or(false);
    if left_out {
        return link_button(Weight::Primary, say::SEE_RINGS, Address::of_topic(id, Topic::Rings(who)));
    }
    let lacks_band = opened.read(|couple, who| couple.band(who).width.is_none().then_some(Topic::Band(who))).flatten();
    let choose = lacks_band.map(|topic| {
        let label = opened.read(|couple, _| say_book::do_next(couple, topic)).unwrap_or_default();
        (label, Address::of_topic(id, topic))
    });
    maybe(move || match (there.get(), &choose) {
        (true, _) if held.is_so() => None,
        (true, _) => Some(button(Weight::Primary, say::note_stack(&name), save)),
        (false, Some((label, href))) => Some(link_button(Weight::Primary, label.clone(), href.clone())),
        (false, None) => None,
    })
}
