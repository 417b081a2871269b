//! The gauges of a screen and of paper: what may be done on the screen as it is, how far a slide goes, and a print that is
//! put right. The figures of `tests/reference/gauge-screen.csv` are numpy's; those of the print are worked by hand.

use bandwright::answers::paper_gauge::{self, PaperAnswer};
use bandwright::answers::screen_gauge::{State, answer, circle, patch, state, things};
use bandwright::forms::{Texts, order, paper_gauge as print_form, screen_gauge as form};
use bandwright::pictures::paper::{Sheet, circles_end};
use bandwright::trade::glass::{Pixels, Ratio, Screen, Thing};
use bandwright::trade::measure::Length;
use bandwright::trade::paper::{Paper, Verdict};
use bandwright::trade::sizing::{Step, System};
use bandwright::words::bench as say;

/// A card's short side, 53.98 mm, is 269.9 pixels wide: 0.2 mm to a pixel.
fn screen() -> Screen {
    Screen::new(Thing::CardShort, Pixels::new(269.9), ratio()).unwrap()
}

fn ratio() -> Ratio {
    Ratio::new(3.0)
}

#[test]
fn nothing_is_measured_on_a_screen_that_does_not_know_its_size() {
    assert_eq!(state(false, None, false), State::Calibrating { known: None });
    assert_eq!(state(false, Some(screen()), false), State::Measuring(screen()));
    assert_eq!(state(false, Some(screen()), true), State::Calibrating { known: Some(screen()) });
    for anew in [true, false] {
        assert_eq!(state(true, Some(screen()), anew), State::Enlarged, "a pinched page measures nothing");
    }
}

#[test]
fn a_calibration_is_read_as_it_was_kept() {
    // As phones have kept it since the first release.
    assert_eq!(form::calibration(&screen()), "card-short 269900");
    assert_eq!(form::read_calibration("card-short 269900", ratio()), Some(screen()));
    for bad in ["", "card-short", "card-short abc", "card-long 0", "card-short -5", "ruler 269900", "card-short 1"] {
        assert_eq!(form::read_calibration(bad, ratio()), None, "{bad:?}");
    }
}

#[test]
fn a_slide_goes_as_far_as_the_page_and_no_ring_is_left_out() {
    let room = Pixels::new(352.0);
    let started = form::start(room);
    assert_eq!(form::thing(&started), Some(Thing::CardShort));
    assert_eq!(things(room).first(), Some(&Thing::CardShort));
    // 53.98 mm at 150 pixels an inch.
    let slide = patch(Thing::CardShort, None, room, ratio());
    assert_eq!((slide.start, slide.most, slide.step), (Pixels(318_780), room, Pixels(333)));
    assert_eq!(patch(Thing::CardShort, Some(&screen()), room, ratio()).start, Pixels::new(269.9));
    assert_ne!(patch(Thing::TwoEuro, Some(&screen()), room, ratio()).start, Pixels::new(269.9));
    assert_eq!(slide.moved(slide.start, -1), Pixels(318_447));
    assert_eq!(slide.moved(slide.start, 1_000), room);
    assert_eq!(slide.moved(slide.start, i64::MIN), slide.least);
    // 17.10 mm at 0.2 mm to a pixel, where nothing was moved yet or what was is no ring.
    for typed in [None, Some(Pixels(-1)), Some(Pixels::new(2_000.0))] {
        assert_eq!(circle(&screen(), typed, room, ratio()).start, Pixels::new(85.5));
    }
    assert_eq!(circle(&screen(), Some(Pixels::new(90.0)), room, ratio()).start, Pixels::new(90.0));
    for end in [circle(&screen(), None, room, ratio()).least, circle(&screen(), None, room, ratio()).most] {
        assert!(answer(screen(), end, System::Uk, Step::Half).is_some(), "{end:?} is a ring");
    }
}

#[test]
fn a_ring_on_the_glass_has_its_size_and_how_sure_that_is() {
    let found = answer(screen(), Pixels::new(86.0), System::Uk, Step::Half).unwrap();
    assert!((found.found.u.mm() - 0.355).abs() < 0.001, "GUM, by hand");
    // 17.2 mm across is 54.04 round: BS 6820 has N at 53.75 and N½ at 54.375; eight in ten from 53.58 to 54.49.
    assert_eq!(say::glass_headline(&found).figure, "N");
    assert_eq!(found.in_range.iter().map(|it| it.circumference().mm()).collect::<Vec<_>>(), [53.75, 54.375]);
    let sum = say::glass_reasons(&found).pop().unwrap();
    assert_eq!((sum.sum, sum.amount.as_str()), (true, "0.36"));
    // Half-way between whole letters none lies within: the nearest stands there, never nothing.
    let between = answer(screen(), Pixels::new(86.54), System::Uk, Step::Whole).unwrap();
    assert_eq!(between.in_range, [between.nearest]);
    assert!((between.nearest.circumference().0 - between.found.round.0).abs() > between.found.u, "{between:?}");
    assert_eq!(answer(screen(), Pixels(0), System::Uk, Step::Half), None);
    let texts = order::of_gauge(found.found.across.0, None, found.found.u);
    assert_eq!((texts.get(order::SIZE), texts.get(order::GAUGE)), ("17.20 mm", order::GAUGE_OTHER));
}

fn printed(line: &str, read: &str, by: &str) -> (print_form::PaperTyped, PaperAnswer) {
    let texts: Texts = print_form::start(System::Uk);
    let texts = texts.with(print_form::LINE, line).with(print_form::READ, read).with(print_form::BY, by);
    let (typed, complaints) = print_form::read(&texts);
    assert_eq!(complaints, []);
    let found = paper_gauge::answer(&typed, Step::Half);
    (typed, found)
}

#[test]
fn a_reading_on_a_print_is_put_right() {
    // 17.5 mm across times 0.98; on a strip 54 times 0.99, less 3.14 times 0.1 mm of paper.
    let circle = printed("98", "17.5 mm", print_form::BY_CIRCLE).1.right.unwrap();
    assert!((circle.at.diameter().mm() - 17.15).abs() < 0.001);
    assert_eq!(circle.gauge_width(), None, "a ring has its own width");
    let strip = printed("99", "54 mm", print_form::BY_STRIP).1.right.unwrap();
    assert!((strip.at.mm() - (53.46 - 0.314)).abs() < 0.001);
    assert_eq!(strip.gauge_width(), Some(Length::from_mm(8.0)));
    assert!(say::paper_headline(&strip).lines.iter().any(|it| it.contains("for paper of 0.1 mm")));
    // 53.15 round: M½ is 53.125.
    assert_eq!(say::paper_headline(&strip).figure, "M½");
    let to_order = order::of_gauge(strip.at.0, strip.gauge_width(), strip.u);
    assert_eq!((to_order.get(order::SIZE), to_order.get(order::GAUGE_WIDTH)), ("53.15 mm", "8"));
}

#[test]
fn a_print_that_is_far_off_answers_nothing() {
    let (_, found) = printed("95", "54 mm", print_form::BY_STRIP);
    assert!(matches!(found.verdict, Some(Verdict::PrintAgain { .. })) && found.right.is_none());
    let (_, unmeasured) = printed("", "54 mm", print_form::BY_STRIP);
    assert_eq!((unmeasured.verdict, unmeasured.right), (None, None));
    let (_, unread) = printed("100", "17", print_form::BY_STRIP);
    assert!(unread.verdict == Some(Verdict::True) && unread.right.is_none(), "17 may be several sizes");
}

#[test]
fn small_paper_has_whole_sizes_and_says_where_its_circles_end() {
    let sheet_on = |paper: &str| {
        let (typed, _) = print_form::read(&print_form::start(System::Uk).with(print_form::PAPER, paper));
        paper_gauge::sheet(&typed)
    };
    let (large, small) = (sheet_on("a4"), sheet_on("a6"));
    assert_eq!((large.paper, small.paper), (Paper::A4, Paper::A6));
    assert!(
        small.circles.iter().all(|size| size.is_on(Step::Whole))
            && !large.circles.iter().all(|it| it.is_on(Step::Whole))
    );
    assert_eq!(large.strip, small.strip);
    let drawn = Sheet::of(&small);
    assert!(circles_end(&drawn).is_some() && circles_end(&Sheet::of(&large)).is_none());
    assert!(drawn.sizes.iter().any(|it| it.label.is_empty()) && drawn.circles.iter().all(|it| !it.label.is_empty()));
}
