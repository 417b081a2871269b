//! What the Bench says beside the trade's own words, and the rules of the size scales.

use crate::shared::mm;
use bandwright::pictures::rules::{Row, Rules, Tick, rules};
use bandwright::trade::dates::countdown::{Left, Slack};
use bandwright::trade::dates::spread::WorkingDays;
use bandwright::trade::measure::Circumference;
use bandwright::trade::sizing::{Size, Stated, Step, System, all, even_scale};
use bandwright::trade::stack::{Taper, shoulder_match};
use bandwright::words::bench as say;
use bandwright::words::sizing::size_name;

#[track_caller]
fn check(said: impl AsRef<str>, expected: &str) {
    assert_eq!(said.as_ref(), expected);
}

#[test]
fn the_range_names_its_sizes() {
    let names = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>();
    check(say::eight_in_ten(&names(&["M½", "N", "N½"])), "8 in 10: M½, N, N½");
    check(say::eight_in_ten(&names(&["N"])), "8 in 10: N");
    check(say::eight_in_ten(&names(&["L", "L¼", "L½", "L¾", "M", "M¼"])), "8 in 10: L to M¼, 6 sizes");
    check(say::eight_in_ten(&[]), "");
}

#[test]
fn the_shoulder_match_says_what_is_not_known() {
    let found = shoulder_match(mm(3.0), &Taper { top: mm(1.8), ..Taper::even(mm(2.6)) }).unwrap();
    check(
        say::shoulder_said(found, true),
        "The band is 0.4 mm wider than the ring at three and nine o’clock, where it counts. At the top it is 1.2 mm \
         wider than it. Matched to the top instead, a band would be 1.8 mm wide and 0.8 mm narrower than the ring at \
         three and nine.",
    );
    check(
        say::shoulder_said(found, false),
        "The band is 0.4 mm wider than the ring at three and nine o’clock, where it counts. The width at its top is \
         not known.",
    );
}

#[test]
fn what_is_left() {
    check(say::left_of(mm(15.5)), "15.5");
    check(say::left_of(mm(-4.6)), "4.6 too long");
    let left = |days, today_among| Some(Left { days: WorkingDays(days), today_among });
    check(say::slack(Slack::Left(WorkingDays(0)), left(1, true)), "the last day: no working day to spare");
    check(say::slack(Slack::Left(WorkingDays(1)), left(2, true)), "2 working days left to order in, today among them");
    check(say::slack(Slack::Left(WorkingDays(1)), left(1, false)), "1 working day left to order in after today");
    check(say::slack(Slack::Late(WorkingDays(7)), None), "7 working days too late");
}

#[test]
fn a_sentence_and_its_standing_are_one() {
    check(
        say::founded("Any further ring makes it crowded.", "common practice"),
        "Any further ring makes it crowded · common practice",
    );
    check(say::widths(&[mm(2.6), mm(2.0)]), "2.6 and 2");
    check(say::widths(&[]), "");
}

#[test]
fn a_millimetre_reading_is_not_named_twice() {
    let size = Size::new(System::Uk, 50).unwrap();
    let lines = say::inside(Stated::Size(size), size.circumference());
    assert_eq!(lines, ["mm round the inside", "16.91 mm across, 0.666 in", "UK M½"]);
    let round = Circumference::from_mm(54.0);
    let lines = say::inside(Stated::Circumference(round), round);
    assert_eq!(lines, ["mm round the inside", "17.19 mm across, 0.677 in"]);
}

/// ISO 8653 takes whole millimetres; the UK's letters are 1.25 mm apart (BS 6820); a US size is 0.032 in across.
#[test]
fn scales_are_even() {
    let (first, step) = even_scale(System::Iso, Step::Whole);
    assert_eq!((first, step), (Circumference::from_mm(36.0), mm(1.0)));
    assert_eq!(even_scale(System::Uk, Step::Whole).1, mm(1.25));
    let (_, step) = even_scale(System::Us, Step::Whole);
    assert!((step.mm() - 0.032 * 25.4 * std::f64::consts::PI).abs() < 0.0001);
    for system in System::ALL {
        for step in Step::ALL {
            let (origin, apart) = even_scale(system, step);
            for (n, size) in all(system, step).enumerate() {
                let at = origin.mm() + apart.mm() * n as f64;
                assert!((size.circumference().mm() - at).abs() < 0.01, "{system:?} {step:?} {n}");
            }
        }
    }
}

#[test]
fn the_rules_say_what_they_show() {
    let size = Size::new(System::Us, 26).unwrap();
    let ticks = all(System::Us, Step::Whole).map(|size| Tick { at: size.circumference(), label: size_name(size) });
    let row = Row {
        label: "US & <friends>".to_owned(),
        ticks: ticks.collect(),
        nearest: Tick { at: size.circumference(), label: "6½".to_owned() },
        off: "0.05 mm tighter".to_owned(),
    };
    let svg = rules(&Rules { at: Circumference::from_mm(53.4), rows: vec![row] }).svg;
    assert!(svg.contains("role=\"img\""));
    assert!(
        svg.contains(
            "53.40 mm round the inside across them all. Nearest: US &amp; &lt;friends&gt; 6½, 0.05 mm tighter."
        )
    );
    assert!(!svg.contains("<friends>") && !svg.contains("NaN"));
}
