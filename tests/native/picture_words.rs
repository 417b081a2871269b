//! What a picture says to those who do not see it, and that no word can break out of a drawing.

use crate::shared::mm;
use bandwright::pictures::calendar_strip::{CalendarStrip, calendar_strip};
use bandwright::pictures::ladder::{Ladder, Named, Shift, Single, ladder};
use bandwright::trade::band::Profile;
use bandwright::trade::band::section::{Section, SectionInputs};
use bandwright::trade::measure::Circumference;
use bandwright::trade::stack::{Head, Taper};
use bandwright::words::calendar::{self, DayMark};
use bandwright::words::pictures::{self as words, RingState, Worn};
use chrono::NaiveDate;

fn check(said: String, expected: &str) {
    assert_eq!(said, expected);
}

#[test]
fn a_stack_is_told_ring_by_ring() {
    let rings = [
        ("Engagement", mm(2.6), RingState::Worn),
        ("Band", mm(3.0), RingState::Wanted),
        ("Eternity", mm(2.5), RingState::Planned),
    ];
    check(
        words::stack(&rings, mm(5.8), mm(8.5), None, mm(24.0)),
        "The finger from above, from the web to the joint. Engagement, 2.6 mm, worn now. Band, 3.0 mm, the new band. \
         Eternity, 2.5 mm, to come. Now 5.8 mm, later 8.5 mm; 15.5 mm left of 24.0 mm of free finger on the palm side.",
    );
    check(
        words::stack(&rings[..2], mm(5.8), mm(5.8), Some(mm(6.8)), mm(24.0)),
        "The finger from above, from the web to the joint. Engagement, 2.6 mm, worn now. Band, 3.0 mm, the new band. Now \
         5.8 mm, 6.8 mm at the top; 18.2 mm left of 24.0 mm of free finger on the palm side.",
    );
    check(
        words::stack(&rings[..1], mm(2.6), mm(2.6), None, mm(2.0)),
        "The finger from above, from the web to the joint. Engagement, 2.6 mm, worn now. Now 2.6 mm; 0.6 mm more than \
         the 2.0 mm of free finger on the palm side.",
    );
}

#[test]
fn a_width_has_as_many_figures_as_are_true() {
    check(words::width(mm(2.5)), "2.5");
    check(words::width(mm(2.55)), "2.55");
    check(words::left_of(mm(-1.2), mm(24.0)), "1.2 over 24.0");
}

#[test]
fn a_calendar_is_told_day_by_day() {
    let day = |m, d| NaiveDate::from_ymd_opt(2027, m, d).unwrap();
    check(
        calendar::calendar(&[(DayMark::Today, day(3, 1)), (DayMark::Wedding, day(5, 22))], 1, None),
        "Calendar: today Mon 1 Mar 2027, wedding Sat 22 May 2027. 1 closed day in between.",
    );
    check(
        calendar::calendar(&[(DayMark::TryOn, day(5, 3))], 0, Some((day(4, 1), day(4, 9)))),
        "Calendar: try on Mon 3 May 2027. Finished between Thu 1 Apr 2027 and Fri 9 Apr 2027. 0 closed days in between.",
    );
}

/// The centres of the marks, as far as they are drawn as paths, circles or squares: the mean of the figures of each.
fn centres(svg: &str) -> Vec<(f64, f64, f64)> {
    let figures = |text: &str| -> Vec<f64> {
        let is_part = |c: char| c.is_ascii_digit() || c == '.' || c == '-';
        text.split(|c| !is_part(c)).filter_map(|part| part.parse().ok()).collect()
    };
    let marks = svg.split(r#"<g class="mark">"#).skip(1).filter_map(|rest| rest.split(r#" d=""#).nth(1));
    let paths = marks.map(|rest| figures(rest.split('"').next().unwrap_or_default()));
    let middle = |all: Vec<f64>| {
        let of = |at: usize| all.iter().skip(at).step_by(2).copied().collect::<Vec<f64>>();
        let ends =
            |all: &[f64]| (all.iter().copied().fold(f64::MAX, f64::min), all.iter().copied().fold(0.0, f64::max));
        let ((left, right), (top, bottom)) = (ends(&of(0)), ends(&of(1)));
        ((left + right) / 2.0, (top + bottom) / 2.0, right - left)
    };
    paths.map(middle).collect()
}

#[test]
fn marks_of_one_day_do_not_hide_each_other() {
    let day = |m, d| NaiveDate::from_ymd_opt(2027, m, d).unwrap();
    for wedding in [day(4, 10), day(12, 10)] {
        let both = wedding - chrono::Days::new(12);
        let drawn = calendar_strip(&CalendarStrip {
            marks: vec![
                (DayMark::Today, day(3, 1)),
                (DayMark::TryOn, both),
                (DayMark::LastResize, both),
                (DayMark::Wedding, wedding),
            ],
            finish: &[],
            closed: &|_| false,
        });
        // Only the try-on and the last resize are drawn as paths.
        let found = centres(&drawn.svg);
        let [(one, _, wide), (other, ..)] = found[..2] else { panic!("{found:?}") };
        assert!((one - other).abs() >= wide - 0.1, "{found:?}");
    }
}

#[test]
fn a_ladder_is_told_step_by_step_and_its_words_are_only_words() {
    let named = |at: f64, label: &str| Named { at: Circumference::from_mm(at), label: label.into() };
    let picture = ladder(&Ladder {
        ticks: vec![named(52.5, "M"), named(53.75, "N")],
        reading: named(53.1, "M½"),
        singles: vec![],
        shifts: vec![Shift { label: "<script>\"x\"&".into(), amount: mm(0.75) }],
        best: Circumference::from_mm(53.85),
        range: (Circumference::from_mm(53.2), Circumference::from_mm(54.56)),
        order: named(53.75, "N"),
        worn: Worn::Alone,
        other: Some(named(54.375, "N½")),
        joint: Some(named(51.25, "L")),
    });
    assert!(!picture.svg.contains("<script") && picture.svg.contains("&lt;script&gt;&quot;x&quot;&amp;"));
    assert!(picture.svg.contains(
        "Reading M½, 53.10 mm; &lt;script&gt;&quot;x&quot;&amp; +0.75; together 53.85 mm, 8 in 10 between 53.20 and \
         54.56 mm. Order N alone; N½ in the stack. The joint needs L, 51.25 mm."
    ));
    let single = |at: f64, label: &str, apart| Single { read: named(at, label), apart };
    let picture = ladder(&Ladder {
        ticks: vec![],
        reading: named(54.6, "N½"),
        singles: vec![single(52.5, "M", false), single(53.125, "M½", false), single(58.75, "R", true)],
        shifts: vec![],
        best: Circumference::from_mm(54.6),
        range: (Circumference::from_mm(54.0), Circumference::from_mm(55.2)),
        order: named(54.375, "N½"),
        worn: Worn::Alone,
        other: None,
        joint: None,
    });
    assert!(picture.svg.contains(
        "Size rule. 3 readings: M, 52.50 mm; M½, 53.13 mm; R, 58.75 mm, stands apart. By their weights they read N½, \
         54.60 mm; together 54.60 mm, 8 in 10 between 54.00 and 55.20 mm. Order N½."
    ));
    assert!(picture.svg.contains("3 readings, together N½") && picture.svg.contains("R stands apart"));
}

/// Where the joint decides, the bar is what the base alone wants, and the picture says so.
#[test]
fn a_ladder_to_the_joint_claims_no_certainty() {
    let named = |at: f64, label: &str| Named { at: Circumference::from_mm(at), label: label.into() };
    let picture = ladder(&Ladder {
        ticks: vec![],
        reading: named(53.75, "N"),
        singles: vec![],
        shifts: vec![Shift { label: "joint".into(), amount: mm(2.5) }],
        best: Circumference::from_mm(56.25),
        range: (Circumference::from_mm(53.0), Circumference::from_mm(54.6)),
        order: named(56.25, "P"),
        worn: Worn::Alone,
        other: None,
        joint: Some(named(56.25, "P")),
    });
    assert!(picture.svg.contains(
        "together 56.25 mm, at least, for the joint; the base alone wants 53.00 to 54.60 mm. Order P. The joint needs P"
    ));
    assert!(picture.svg.contains(">the base alone<") && !picture.svg.contains("8 in 10"));
}

#[test]
fn sections_sides_and_tapers_are_told() {
    let of = SectionInputs {
        profile: Profile::Court,
        width: mm(4.0),
        height: mm(1.8),
        dome: Some(mm(0.5)),
        relief: Some(mm(0.1)),
    };
    check(
        words::section("The band", &Section::new(&of).unwrap()),
        "The band cut through: court, 4.0 mm wide, 1.8 mm high, domed by 0.5 mm outside, its edges 0.1 mm off the finger \
         inside.",
    );
    let head = Head { to_web: mm(0.5), to_tip: mm(0.8), underside: mm(1.5) };
    check(
        words::side(
            [
                ("engagement ring", mm(0.0), mm(0.0), Some(head)),
                ("band", mm(0.37), mm(0.0), None),
                ("signet", mm(0.0), mm(0.0), None),
                ("halo", mm(1.0), mm(0.8), None),
            ]
            .into_iter(),
        ),
        "Side view at the top of the finger, from the web. engagement ring, its head 0.5 mm over the side to the web, \
         0.8 mm over the other, its underside 1.5 mm up. 0.37 mm further on, band. Flush with it, signet. 1.0 mm \
         further on, with a bay 0.8 mm deep, halo.",
    );
    let ring = Taper { top: mm(1.8), shoulders: mm(2.6), back: mm(2.0) };
    check(
        words::unrolled("engagement ring", &ring, mm(2.5)),
        "engagement ring laid flat: 1.8 mm at the top, 2.6 mm at three and nine o’clock, 2.0 mm at the back. Against it \
         the band, 2.5 mm all round.",
    );
}
