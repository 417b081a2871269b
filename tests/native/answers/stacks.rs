//! The stack: the same figure on its own page, in the checklist, the read-back, the specification and before the couple.

use super::{Told, WHO, day, mm};
use bandwright::answers::Tone;
use bandwright::answers::stack::{Caution, StackAnswer, StackRules, USUAL_FINGER, answer, of_couple};
use bandwright::book::checklist::Topic;
use bandwright::book::remedy::Way;
use bandwright::forms::stack as form;
use bandwright::pictures::stack_answer as drawing;
use bandwright::trade::measure::Length;
use bandwright::trade::stack::{House, Verdict};
use bandwright::words::specification::{Called as Signed, specification};
use bandwright::words::{bench as say, book as say_book, remedy as say_remedy};

fn rules() -> StackRules {
    StackRules::from(House::default())
}

fn found(told: &Told) -> StackAnswer {
    of_couple(told.couple(), &rules(), WHO).unwrap()
}

fn note(told: &mut Told) {
    let writes = found(told).writes(told.couple(), WHO, day("2026-11-25"));
    told.say(writes);
}

fn read_back(told: &Told, topic: Topic) -> String {
    say_book::in_full(told.couple(), topic, House::default()).unwrap_or_default()
}

fn line_of_specification(told: &Told) -> String {
    let text = specification(told.couple(), Signed::Names, day("2026-11-25"), House::default());
    text.lines().find(|line| line.starts_with("Stack: ")).unwrap_or_default().to_owned()
}

/// 2.2 + 2.6 + 2.5 and two gaps of 0.2 are 7.7; with the curve of 0.8 and the gap of 0.6 to the ring to come, 9.1.
#[test]
fn a_curve_and_the_gap_of_a_ring_to_come_add_up_in_every_place() {
    let mut told = Told::with_a_head();
    told.choose(Way::Shaped, 0.8);
    note(&mut told);
    let found = found(&told);
    assert_eq!(found.stack.as_ref().map(|stack| stack.later.total), Some(mm(7.7)));
    assert_eq!(found.widest().map(|stack| (stack.now.total, stack.later.total)), Some((mm(5.8), mm(9.1))));
    // The answer, as the jeweller reads it and as the couple does.
    let headline = say::stack_headline(&found);
    assert_eq!(headline.figure, "9.1");
    assert_eq!(headline.lines[2], "7.7 mm at the palm");
    let view = drawing::shown(&found, USUAL_FINGER).unwrap();
    assert_eq!(view.figure, "9.1 mm");
    assert!(view.picture.contains("9.1 mm at the top"), "the picture's own words");
    // What was noted, wherever it is told.
    let at_top = "at the top, with the bay, 5.8 mm now, 9.1 mm later";
    assert_eq!(say_remedy::at_top(told.couple(), WHO, House::default()).as_deref(), Some(at_top));
    let line = say_book::says(told.couple(), Topic::Stack(WHO), House::default()).unwrap();
    assert_eq!(line, "7.7 of 24 mm, 9.1 mm at the top");
    assert!(read_back(&told, Topic::Stack(WHO)).starts_with(&format!("7.7 of 24 mm; {at_top}; ")));
    assert!(line_of_specification(&told).contains(&format!("7.7 mm with rings to come; {at_top};")));
}

#[test]
fn a_gap_that_is_accepted_counts_with_the_others() {
    let mut told = Told::with_a_head();
    told.choose(Way::Gap, 0.6);
    note(&mut told);
    assert_eq!(found(&told).at_top.map(|stack| stack.later.total), Some(mm(8.9)));
    let said = say_remedy::at_top(told.couple(), WHO, House::default()).unwrap();
    assert_eq!(said, "at the top, with the gap, 5.6 mm now, 8.9 mm later");
    told.choose(Way::Lower, 1.3);
    assert_eq!(say_remedy::at_top(told.couple(), WHO, House::default()), None, "a band that is thin enough");
}

#[test]
fn what_a_further_ring_may_measure_is_of_the_same_place_as_the_verdict() {
    let mut told = Told::with_a_head();
    told.choose(Way::Shaped, 0.8);
    let found = found(&told);
    let headline = say::stack_headline(&found);
    assert_eq!(headline.lines[1], "full: 37.9 % of 24 mm");
    assert_eq!(found.tone(), Tone::Act);
    let left = say::room_reasons(&found).into_iter().find(|row| row.name == say::LEFT).unwrap();
    assert_eq!(left.amount, "14.9");
    assert!(!left.why.contains("leaves it roomy"), "{}", left.why);
    assert!(left.why.starts_with("A further ring of up to 2.7 mm leaves it full"), "{}", left.why);
    // Without a curve the figure is that of the palm, and so is what is left.
    told.choose(Way::Gap, 0.6);
    let found = self::found(&told);
    assert_eq!(found.widest().map(|stack| stack.later.verdict), Some(Verdict::Roomy));
    let left = say::room_reasons(&found).into_iter().find(|row| row.name == say::LEFT).unwrap();
    assert_eq!(left.amount, "16.3");
    assert!(left.why.starts_with("A further ring of up to 0.5 mm leaves it roomy"), "{}", left.why);
}

#[test]
fn the_read_back_has_the_thickness_and_the_places_of_the_drawing() {
    let mut told = Told::with_a_head();
    assert_eq!(read_back(&told, Topic::Band(WHO)), "2.2 mm");
    let band = told.couple().band(WHO);
    let thick = bandwright::book::couple::Band { height: Some(mm(1.8)), ..band };
    told.say(bandwright::book::verbs::choose_band(WHO, thick));
    assert_eq!(read_back(&told, Topic::Band(WHO)), "2.2 mm, 1.8 mm thick");
    // The band lies nearest the web, so that the ring is the second.
    let rings = found(&told).rings.iter().map(|ring| say::ring_label(ring, say::Called::Own)).collect::<Vec<_>>();
    assert_eq!(rings, ["band", "engagement ring", "to come"]);
    assert!(read_back(&told, Topic::Rings(WHO)).contains("place 2"), "{}", read_back(&told, Topic::Rings(WHO)));
    let beyond = bandwright::book::couple::Band { place: Some(bandwright::trade::limits::Whole(2)), ..thick };
    told.say(bandwright::book::verbs::choose_band(WHO, beyond));
    assert!(read_back(&told, Topic::Rings(WHO)).contains("place 1, nearest the web"));
}

#[test]
fn the_worst_is_said_first() {
    let told = Told::with_a_head();
    let texts =
        form::start(&form::StackTyped::recorded(Some((told.couple(), WHO)), &House::default()), |_| String::new());
    let crowded = texts.with(form::FREE, "12");
    let (typed, complaints) = form::read(&crowded);
    assert_eq!(complaints, []);
    let found = answer(&typed, &rules());
    assert_eq!(found.cautions(), [Caution::Crowded, Caution::Apart(0)]);
    assert_eq!(say::stack_cautions(&found).len(), 2);
    assert!(found.pairs[0].left > Length::ZERO);
}
