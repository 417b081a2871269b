//! The stack: every ring worn together, now and later, against the free length of the finger.

mod fields;
mod reckon;

use crate::parts::el::maybe;
use crate::parts::lay::{all, section};
use leptos::prelude::*;

use super::sheet::{self, Laid, Sheet, laid};
use super::{Opened, Whose};
use crate::app::address::Address;
use crate::app::route::go_instead;
use crate::app::show::Shown;
use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::Couple;
use crate::book::field::Field;
use crate::book::value::{StackSeen, Value};
use crate::parts::answer::{Said, Tone, answer};
use crate::parts::button::{Weight, button, link_button};
use crate::parts::page::page;
use crate::parts::picture::picture;
use crate::parts::reasons::{Reason, reason, reasons};
use crate::pictures::stack as drawing;
use crate::screens::show::showable;
use crate::trade::measure::{Circumference, Diameter, Length, Standing};
use crate::trade::stack::Verdict;
use crate::trade::wearer::Wearer;
use crate::words::pictures::RingState;
use crate::words::{bench as say, book as say_book, showing, stack as say_stack, standing};
use reckon::Reckoned;

pub fn stack(opened: Opened) -> AnyView {
    let app = opened.app;
    let finger = opened.read(finger).flatten().unwrap_or(USUAL_FINGER);
    let form = opened.form(fields::start(&opened));
    let found = Memo::new(move |_| reckon::reckon(app, form));
    let sheet = Sheet::new(form, Signal::derive(move || found.with(|found| found.complaints.clone())));
    let answered = found.with_untracked(|found| found.stack.is_some());
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let shown = move || {
        there.get().then(|| {
            let svg = Signal::derive(move || found.with(|found| drawn(found, finger, own_name)).unwrap_or_default());
            let said = Signal::derive(move || found.with(said));
            let shown = move || found.with_untracked(|found| shown_to_them(found, finger));
            showable(vec![picture(svg), answer("stack-answer", say::STACK_LATER, said)], shown)
        })
    };
    let answer = all(vec![maybe(shown), sheet::cautions(Signal::derive(move || found.with(cautions)))]);
    let why = move || there.get().then(|| section(say::WHY, vec![reasons(Signal::derive(move || found.with(why)))]));
    let content = laid(Laid {
        first: opened.missing(lacking),
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
        Some(whose) => note_for(&opened, whose, found),
        None => {
            let label = Signal::derive(move || found.with(|found| found.later().map(|it| say::see_stack(it.total))));
            sheet::step(answered, label)
        }
    };
    page(head, content, Some(action))
}

/// A finger of size M½ or so, where nothing is known of it: only the drawing needs it.
const USUAL_FINGER: Diameter = Diameter(Length::tenthousandths(170_000));
/// So high a ring is drawn.
const HEIGHT: Length = Length::tenthousandths(18_000);

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

fn own_name(ring: &reckon::Ring) -> String {
    ring.name.clone()
}

/// The same for the couple: what somebody calls a ring stays in the book.
fn shown_to_them(found: &Reckoned, finger: Diameter) -> Option<Shown> {
    let (stack, later) = (found.stack.as_ref()?, found.later()?);
    let to_come = found.rings.iter().any(|ring| ring.state == RingState::Planned);
    Some(Shown {
        title: showing::STACK_TITLE.to_owned(),
        picture: drawn(found, finger, |ring| showing::ring(ring.state)).unwrap_or_default(),
        figure: showing::along(later.total),
        lines: vec![showing::of_free(stack.free_length, to_come), say_stack::verdict(later.verdict).to_owned()],
    })
}

fn drawn(found: &Reckoned, finger: Diameter, label: fn(&reckon::Ring) -> String) -> Option<String> {
    let later = found.later()?;
    let ring = |ring: &reckon::Ring| drawing::Ring {
        label: label(ring),
        width: ring.width,
        height: HEIGHT,
        state: ring.state,
        head: None,
    };
    let picture = drawing::stack(&drawing::Stack {
        rings: found.rings.iter().map(ring).collect(),
        gap: found.gap?,
        free: found.stack.as_ref()?.free_length,
        finger,
        crowded: matches!(later.verdict, Verdict::Crowded | Verdict::DoesNotFit),
    });
    Some(picture.svg)
}

fn said(found: &Reckoned) -> Said {
    let (Some(stack), Some(later)) = (&found.stack, found.later()) else {
        return Said { figure: String::new(), lines: Vec::new(), tone: Tone::Care };
    };
    let tone = match later.verdict {
        Verdict::Roomy => Tone::Settled,
        Verdict::Full => Tone::Rouge,
        Verdict::Crowded | Verdict::DoesNotFit => Tone::Care,
    };
    let to_come = found.rings.iter().any(|ring| ring.state == RingState::Planned);
    let lines = vec![say::stack_total(to_come).to_owned(), say::verdict_of(later, stack.free_length)];
    Said { figure: say::width(later.total), lines, tone }
}

fn cautions(found: &Reckoned) -> Vec<String> {
    let mut all: Vec<String> = found.error.iter().map(say_stack::error).collect();
    match found.later().map(|later| later.verdict) {
        Some(Verdict::Crowded) => all.push(say::CROWDED.to_owned()),
        Some(Verdict::DoesNotFit) => all.push(say::DOES_NOT_FIT.to_owned()),
        Some(Verdict::Roomy | Verdict::Full) | None => {}
    }
    all
}

fn why(found: &Reckoned) -> Vec<Reason> {
    let (Some(stack), Some(gap)) = (&found.stack, found.gap) else { return Vec::new() };
    let rule = standing::standing(Standing::CommonPractice);
    let mut all = vec![reason(
        say::WORN_TOGETHER_NOW,
        say::width(stack.now.total),
        say::founded(&say_stack::summary(stack, &stack.now), rule),
    )];
    if stack.later.total != stack.now.total {
        let summary = say::founded(&say_stack::summary(stack, &stack.later), rule);
        all.push(reason(say::WITH_RINGS_TO_COME, say::width(stack.later.total), summary));
    }
    all.push(reason(say::GAPS, say::width(gap), rule));
    let left = say::left_of(stack.later.left);
    all.push(reason(say::LEFT, left, say::founded(&say_stack::further(&stack.later), rule)));
    for shoulder in &found.shoulders {
        all.push(reason(
            say::shoulder_match(&shoulder.name),
            say::shoulder_figures(shoulder.band, shoulder.shoulders),
            say::founded(&say::shoulder_said(shoulder.found, shoulder.top.is_some()), rule),
        ));
    }
    all.push(reason(
        say::FREE_LENGTH,
        say::width(stack.free_length),
        format!("{} · {}", say::FREE_HOW, standing::standing(stack.free_standing)),
    ));
    all
}

fn summary(found: &Reckoned) -> String {
    let rings: Vec<String> = found.rings.iter().map(|ring| say::ring_short(&ring.name, ring.width)).collect();
    rings.join(" · ")
}

/// Writes down what the stack came to, and the free length if it was measured here.
fn note_for(opened: &Opened, Whose { id, who }: Whose, found: Memo<Reckoned>) -> AnyView {
    let app = opened.app;
    let name = opened.read(say_book::name_of).unwrap_or_default();
    let known = opened.read(|couple, who| couple.free_length(who)).flatten();
    let there = Memo::new(move |_| found.with(|found| found.stack.is_some()));
    let save = move || {
        let (seen, measured) = found.with_untracked(|found| {
            let seen = found.stack.as_ref().map(|stack| StackSeen {
                now: stack.now.total,
                later: stack.later.total,
                free: stack.free_length,
                measured: found.measured.is_some(),
                seen: app.today.get_untracked(),
            });
            (seen, found.measured)
        });
        let Some(seen) = seen else { return };
        let mut writes = Vec::new();
        if measured != known {
            writes.push(Write { field: Field::FreeLength(who), value: measured.map(Value::Length) });
        }
        writes.push(Write::set(Field::Stack(who), Value::Stack(seen)));
        app.save(id, writes, say::stack_saved(), move || go_instead(&Address::Couple(id).to_string()));
    };
    let lacks_band = opened.read(|couple, who| couple.band(who).width.is_none().then_some(Topic::Band(who))).flatten();
    let choose = lacks_band.map(|topic| {
        let label = opened.read(|couple, _| say_book::do_next(couple, topic)).unwrap_or_default();
        (label, Address::of_topic(id, topic))
    });
    maybe(move || match (there.get(), &choose) {
        (true, _) => Some(button(Weight::Primary, say::note_stack(&name), save)),
        (false, Some((label, href))) => Some(link_button(Weight::Primary, label.clone(), href.clone())),
        (false, None) => None,
    })
}
