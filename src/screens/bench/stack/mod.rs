//! The stack: every ring worn together, now and later, against the free length of the finger.

mod draw;
mod fields;
mod names;
mod reckon;
mod top;
mod why;

use crate::parts::el::{el, live, maybe, nothing, or_nothing};
use crate::parts::lay::{all, heading as heading_of, section};
use leptos::prelude::*;

use super::held::Held;
use super::sheet::{self, Laid, Sheet, laid};
use super::{Opened, Whose};
use crate::app::address::{Address, Calculator, Part};
use crate::app::form::{Form, Start};
use crate::app::route::go_instead;
use crate::app::show::Shown;
use crate::app::state::{App, app};
use crate::archive::code::Code;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::{BandField, Field};
use crate::book::id::RecordId;
use crate::book::value::{StackSeen, Value};
use crate::parts::answer::{Said, Tone, answer};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::{Reason, reasons};
use crate::screens::show::{show_button, showable};
use crate::trade::band::section::Section;
use crate::trade::measure::{Circumference, Diameter, Length};
use crate::trade::stack::RingState;
use crate::trade::stack::{Remedies, Stretch, Verdict};
use crate::trade::wearer::{Finger, Wearer};
use crate::words::{bench as say, book as say_book, showing, stack as say_stack};
use draw::Drawn;
use fields::Elsewhere;
pub use fields::start;
use reckon::Reckoned;

pub fn stack(opened: Opened) -> AnyView {
    let app = opened.app;
    let finger = opened.read(finger).flatten().unwrap_or(USUAL_FINGER);
    let form = opened.form(fields::start(&opened));
    let held = Held::by(&opened, |field, who| match field {
        Field::Stack(of) | Field::FreeLength(of) | Field::FreeLengthOf(of, _) | Field::Band(of, BandField::Place) => {
            *of == who
        }
        _ => false,
    });
    let found = Memo::new(move |_| reckon::reckon(app, form));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|found| found.complaints.clone())));
    let answered = found.with_untracked(|found| found.stack.is_some());
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let shown = move || {
        there.get().then(|| {
            let drawn = move || found.with(|found| draw::from_above(found, finger, draw::own)).unwrap_or_default();
            let svg = Signal::derive(drawn);
            let said = Signal::derive(move || found.with(said));
            let shown = move || found.with_untracked(|found| shown_to_them(found, finger));
            showable(vec![picture(svg), answer("stack-answer", say::STACK_LATER, said)], shown)
        })
    };
    let unsettled = opened.read(unsettled).unwrap_or_default();
    let cautions = Signal::derive(move || {
        let mut all = unsettled.clone();
        all.extend(found.with(cautions));
        all
    });
    let answer = all(vec![maybe(shown), sheet::cautions(cautions)]);
    let others = opened.read(fields::elsewhere).unwrap_or_default();
    let holding = opened.read(why::holding).unwrap_or_default();
    let whose = opened.whose;
    let why = move || there.get().then(|| explained(found, finger, &others, holding.clone(), whose));
    let content = laid(Laid {
        first: all(vec![held.caution(), opened.missing(lacking)]),
        answered,
        answer,
        inputs: fields::fields(&opened, sheet),
        summary: Signal::derive(move || found.with(summary)),
        reasons: maybe(why),
    });
    let head = match opened.read(say::stack_subtitle) {
        Some(subtitle) => opened.head().subtitle(subtitle),
        None => opened.head(),
    };
    let action = match opened.whose {
        Some(whose) => note_for(&opened, whose, held, found),
        None => {
            let label = Signal::derive(move || found.with(|found| found.later().map(|it| say::see_stack(it.total))));
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// What heads do to the band of one of the two, as far as it is written down.
pub struct HeldOff {
    /// Each head with what can be done about it; nothing where the band lies flush.
    pub why: Vec<Reason>,
    /// What does for all of them.
    pub remedies: Option<Remedies>,
    /// The band cut through, where its profile and height are known.
    pub section: Option<Section>,
}

/// The finger of one of the two with every ring, as the couple may see it; none where there is no band.
pub fn shown_finger(app: App, id: RecordId, who: Wearer) -> Option<String> {
    let found = of_couple(app, id, who)?;
    let finger = app.couple(id, |couple| finger(couple, who)).flatten().unwrap_or(USUAL_FINGER);
    draw::from_above(&found, finger, draw::plain)
}

fn of_couple(app: App, id: RecordId, who: Wearer) -> Option<Reckoned> {
    let asked = vec![("couple".to_owned(), id.to_string()), ("who".to_owned(), who.code().to_owned())];
    let opened = Opened::new(app, Calculator::Stack, asked)?;
    let found = reckon::reckon(app, Form::still(fields::start(&opened)));
    found.rings.iter().any(|ring| ring.state == RingState::Wanted).then_some(found)
}

/// None where there is no band to work it out for.
pub fn held_off(app: App, id: RecordId, who: Wearer) -> Option<HeldOff> {
    let found = of_couple(app, id, who)?;
    Some(HeldOff { why: why::held_off(&found), remedies: found.remedies(), section: section_of_band(&found) })
}

/// The stack with another band, everything else as the calculator starts.
pub fn with_band(app: App, start: &[Start], band: &[Start]) -> Reckoned {
    reckon::reckon(app, Form::still(sheet::started_with(start, band)))
}

/// "The stack 5.3 mm, roomy: 22.1 % of 24 mm".
pub fn in_short(found: &Reckoned) -> Option<String> {
    let (stack, later) = (found.stack.as_ref()?, found.later()?);
    Some(say::stack_in_short(later.total, &say::verdict_of(later, stack.free_length)))
}

/// What is to be thought of, in short: room, gaps, metal that is likely to be lost.
pub fn cautions_in_short(found: &Reckoned, name: fn(&Reckoned, usize) -> String) -> Vec<String> {
    let mut all = no_room(found);
    all.extend(heads_unknown(found, name));
    let band = found.rings.iter().position(|ring| ring.state == RingState::Wanted);
    let beside = |pair: &&reckon::Pair| Some(pair.apart.rings.0) == band || Some(pair.apart.rings.1) == band;
    for pair in found.pairs.iter().filter(beside) {
        if pair.left > Length::ZERO {
            all.push(say_stack::apart_in_short(&pair.apart));
        }
        if pair.wear.is_a_caution() {
            let (near, far) = pair.apart.rings;
            let said = say_stack::wear(&pair.wear, &name(found, near), &name(found, far));
            all.extend(said.into_iter().map(|(said, _)| said));
        }
    }
    all
}

/// What rings are called on the jeweller's own screen, and in front of the couple.
pub fn own_name(found: &Reckoned, ring: usize) -> String {
    found.name(ring)
}

pub fn plain_name(found: &Reckoned, ring: usize) -> String {
    found.plain_name(ring)
}

/// The band cut through, where its profile and height are known.
pub fn section_of_band(found: &Reckoned) -> Option<Section> {
    found.rings.iter().find(|ring| ring.state == RingState::Wanted)?.lying.section
}

/// A finger of size M½ or so, where nothing is known of it: only the drawing needs it.
const USUAL_FINGER: Diameter = Diameter(Length::tenthousandths(170_000));

fn finger(couple: Couple<'_>, who: Wearer) -> Option<Diameter> {
    let settled = couple.order_size(who).map(|size| size.size.circumference());
    let read = || couple.readings(who).last().map(|(_, it)| it.size.circumference());
    settled.or_else(read).map(Circumference::diameter)
}

fn lacking(couple: Couple<'_>, who: Wearer) -> Vec<Topic> {
    let band = couple.band(who).width.is_none().then_some(Topic::Band(who));
    let unasked = couple.rings(who).is_empty() && !couple.has_no_rings(who);
    band.into_iter().chain(unasked.then_some(Topic::Rings(who))).collect()
}

/// The answer for the couple: what somebody calls a ring stays in the book.
fn shown_to_them(found: &Reckoned, finger: Diameter) -> Option<Shown> {
    let stack = found.widest()?;
    let later = &stack.later;
    let to_come = found.rings.iter().any(|ring| ring.state == RingState::Planned);
    Some(Shown {
        title: showing::STACK_TITLE.to_owned(),
        picture: draw::from_above(found, finger, draw::plain).unwrap_or_default(),
        figure: showing::along(later.total),
        lines: vec![
            showing::of_free(stack.free_length, to_come, found.bay),
            say_stack::verdict(later.verdict).to_owned(),
        ],
    })
}

/// What about the couple's rings wants to be settled before the stack can be trusted.
fn unsettled(couple: Couple<'_>, who: Wearer) -> Vec<String> {
    let here = fields::here(couple, who);
    let no_finger = here.iter().filter(|ring| ring.finger.is_none());
    let mut all: Vec<String> = no_finger.map(|ring| say::on_no_finger(&say_book::ring_name(ring))).collect();
    let elsewhere = !fields::elsewhere(couple, who).is_empty();
    let guessed = fields::of_band(couple, who).filter(|_| elsewhere && couple.finger(who).is_none());
    all.extend(guessed.map(say::band_taken_for));
    let left_out = here.iter().skip(fields::ROWS.len()).map(say_book::ring).collect::<Vec<_>>();
    if !left_out.is_empty() {
        all.push(say::not_counted(here.len(), fields::ROWS.len(), &left_out));
    }
    all
}

/// The parts of the answer, each with its picture.
fn explained(
    found: Memo<Reckoned>,
    finger: Diameter,
    others: &[Elsewhere],
    holding: Vec<Reason>,
    whose: Option<Whose>,
) -> AnyView {
    let part = |heading: &'static str, of: fn(&Reckoned) -> Vec<Reason>, drawn: Signal<Vec<Drawn>>, on: AnyView| {
        let any = Memo::new(move |_| found.with(|found| !of(found).is_empty()));
        let inside = live(move || if any.get() { reasons(Signal::derive(move || found.with(of))) } else { nothing() });
        let there = move || any.get().then(|| heading_of(heading));
        el("section").class("section").child(maybe(there)).child(pictures(drawn)).child(inside).child(on).view()
    };
    let none = Signal::stored(Vec::new());
    let flat = Signal::derive(move || found.with(|found| draw::laid_flat(found, finger)));
    let side = Signal::derive(move || found.with(draw::from_the_side));
    let sections = Signal::derive(move || found.with(draw::sections));
    let any_section = Memo::new(move |_| sections.with(|drawn| !drawn.is_empty()));
    let cut = move || any_section.get().then(|| section(say::CUT_THROUGH, vec![pictures(sections)]));
    let others = others.to_vec();
    let elsewhere = (!others.is_empty()).then(|| {
        let said = move || {
            let house = app().practice(|practice| practice.house());
            found.with(|found| why::elsewhere(found, &others, house))
        };
        section(say::OTHER_FINGERS, vec![reasons(Signal::derive(said))])
    });
    let is_off = Memo::new(move |_| found.with(|found| found.remedies().is_some()));
    let choose = move || {
        let shows = is_off.get().then(|| show_button(move || found.with_untracked(why::ways_shown)));
        let link = whose.filter(|_| is_off.get()).map(|Whose { id, who }| {
            link_button(Weight::Quiet, say::CHOOSE_REMEDY, Address::Part(id, Part::Remedy(who)).to_string())
        });
        shows.map(|shows| all(vec![shows, or_nothing(link)]))
    };
    let any_wear = Memo::new(move |_| found.with(|found| why::wear_shown(found).is_some()));
    let show_wear = move || any_wear.get().then(|| show_button(move || found.with_untracked(why::wear_shown)));
    let holding = (!holding.is_empty()).then(|| reasons(Signal::stored(holding)));
    all(vec![
        part(say::ROOM, why::room, none, or_nothing(holding)),
        or_nothing(elsewhere),
        part(say::MATCH, why::matches, flat, nothing()),
        part(say::FLUSH, why::flush, side, maybe(choose)),
        part(say::WEAR, why::wear, none, maybe(show_wear)),
        maybe(cut),
    ])
}

/// Pictures, each of which can be shown to the couple.
fn pictures(drawn: Signal<Vec<Drawn>>) -> AnyView {
    let one = |it: Drawn| showable(vec![picture(it.svg)], move || Some(it.shown.clone()));
    live(move || all(drawn.get().into_iter().map(one).collect()))
}

fn said(found: &Reckoned) -> Said {
    let (Some(palm), Some(stack)) = (&found.stack, found.widest()) else {
        return Said { figure: String::new(), lines: Vec::new(), tone: Tone::Care };
    };
    let later = &stack.later;
    let tone = match later.verdict {
        Verdict::Roomy => Tone::Settled,
        Verdict::Full => Tone::Rouge,
        Verdict::Crowded | Verdict::DoesNotFit => Tone::Care,
    };
    let to_come = found.rings.iter().any(|ring| ring.state == RingState::Planned);
    let mut lines =
        vec![say::stack_total(to_come, found.bay.is_some()).to_owned(), say::verdict_of(later, stack.free_length)];
    lines.extend(found.bay.map(|_| say::at_the_palm(palm.later.total)));
    Said { figure: say::width(later.total), lines, tone }
}

fn cautions(found: &Reckoned) -> Vec<String> {
    let mut all = no_room(found);
    let off = found.pairs.iter().filter(|pair| pair.left > Length::ZERO && !pair.later);
    all.extend(off.map(|pair| found.lie(pair, &|at| found.name(at))));
    all.extend(heads_unknown(found, own_name));
    all
}

/// Rings that are wider at the top than at their shoulders, and whose head nobody has written down.
fn heads_unknown(found: &Reckoned, name: fn(&Reckoned, usize) -> String) -> Vec<String> {
    let wide = found.rings.iter().enumerate().filter(|(_, ring)| !ring.head_known && found.rings.len() > 1);
    let one = |(at, ring): (usize, &reckon::Ring)| {
        let over = ring.widths.over_shoulders();
        (over > Length::ZERO).then(|| say_stack::head_unknown(&name(found, at), over))
    };
    wide.filter_map(one).collect()
}

fn no_room(found: &Reckoned) -> Vec<String> {
    let mut all: Vec<String> = found.error.iter().map(say_stack::error).collect();
    match found.widest().map(|stack| stack.later.verdict) {
        Some(Verdict::Crowded) => all.push(say::CROWDED.to_owned()),
        Some(Verdict::DoesNotFit) => all.push(say::DOES_NOT_FIT.to_owned()),
        // A gap takes nothing of the palm, and may still be too much at the top.
        Some(Verdict::Roomy | Verdict::Full) => {
            let at_top = found.at_top.as_ref().map(|stack| &stack.later);
            let too_much = |it: &&Stretch| matches!(it.verdict, Verdict::Crowded | Verdict::DoesNotFit);
            all.extend(at_top.filter(too_much).map(|it| say::crowded_at_top(it.total, it.verdict)));
        }
        None => {}
    }
    all
}

fn summary(found: &Reckoned) -> String {
    let rings: Vec<String> = found.rings.iter().map(|ring| say::ring_short(&ring.name, ring.lying.width)).collect();
    rings.join(" · ")
}

/// Writes down what the stack came to, and the free length if it was measured here.
fn note_for(opened: &Opened, Whose { id, who }: Whose, held: Held, found: Memo<Reckoned>) -> AnyView {
    let app = opened.app;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let known = opened.read(|couple, who| couple.free_length(who)).flatten();
    let chosen = opened.read(|couple, who| couple.remedy(who).is_some()).unwrap_or(false);
    let measured_elsewhere = |couple: Couple<'_>, who: Wearer| {
        let fingers = fields::elsewhere(couple, who).into_iter().map(|it| it.finger);
        fingers.map(|finger| (finger, couple.free_length_of(who, finger))).collect()
    };
    let elsewhere: Vec<(Finger, Option<Length>)> = opened.read(measured_elsewhere).unwrap_or_default();
    let elsewhere = StoredValue::new(elsewhere);
    let placed = opened.read(|couple, who| couple.band(who).place).flatten();
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let save = move || {
        let (seen, measured, place) = found.with_untracked(|found| {
            let seen = found.stack.as_ref().map(|stack| StackSeen {
                now: stack.now.total,
                later: stack.later.total,
                free: stack.free_length,
                measured: found.measured.is_some(),
                off: found.off(),
                seen: app.today.get_untracked(),
            });
            (seen, found.measured, found.place)
        });
        let Some(seen) = seen else { return };
        let mut writes = Vec::new();
        if measured != known {
            writes.push(Write { field: Field::FreeLength(who), value: measured.map(Value::Length) });
        }
        if let Some(place) = place.filter(|place| placed != Some(*place)) {
            writes.push(Write::set(Field::Band(who, BandField::Place), Value::Place(place)));
        }
        for (finger, before) in elsewhere.get_value() {
            let free =
                found.with_untracked(|found| found.elsewhere.iter().find(|(of, _)| *of == finger).map(|it| it.1));
            if free != before {
                let field = Field::FreeLengthOf(who, finger);
                writes.push(Write { field, value: free.map(Value::Length) });
            }
        }
        writes.push(Write::set(Field::Stack(who), Value::Stack(seen)));
        // What is still to be chosen comes next.
        let to =
            if seen.off > Length::ZERO && !chosen { Address::Part(id, Part::Remedy(who)) } else { Address::Couple(id) };
        app.save(id, writes, say::stack_saved(), move || go_instead(&to.to_string()));
    };
    // A stack that leaves a ring out is not noted as if it were whole.
    let left_out = opened.read(|couple, who| fields::here(couple, who).len() > fields::ROWS.len()).unwrap_or(false);
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
