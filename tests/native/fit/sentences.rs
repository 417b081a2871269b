//! What people read: reasons, when to measure again, what is refused.

use super::*;
use bandwright::words;

#[test]
fn when_to_measure_again() {
    let check = |change: fn(&mut Inputs), expected: &[&str]| {
        let found = ordered(change).measure_again;
        assert_eq!(found.iter().map(words::fit::measure_again).collect::<Vec<_>>(), expected);
    };
    check(|_| (), &[]);
    check(
        |i| i.band.width = mm(6.1),
        &["Measure again with a wider gauge: alone, the band counts as 6.1 mm, the gauge as 3 mm."],
    );
    check(
        |i| i.reading.gauge.width = mm(10.0),
        &["Measure again with a narrower gauge: alone, the band counts as 6 mm, the gauge as 10 mm."],
    );
    check(
        |i| i.neighbours = vec![mm(2.6)],
        &["Measure again with a wider gauge: in the stack, the band counts as 7.3 mm, the gauge as 3 mm."],
    );
    check(|i| i.reading.hands = Hands::Warm, &["Measure again another day with this gauge: the hands were warm."]);
    check(
        |i| {
            i.reading.hands = Hands::Cold;
            i.finger_changing = true;
        },
        &[
            "Measure again another day with this gauge: the hands were cold.",
            "Measure again once the finger has settled, with this gauge.",
        ],
    );
}

#[test]
fn shifts_and_their_reasons() {
    let said = |change: fn(&mut Inputs)| -> Vec<String> {
        let shifts = ordered(change).in_stack.shifts;
        let line = |shift: &Shift| {
            format!(
                "{} {} ({}), {}",
                words::fit::shift_name(&shift.kind),
                words::format::mm_signed(shift.amount, 2),
                words::fit::shift_reason(&shift.kind),
                words::standing::standing(shift.standing)
            )
        };
        shifts.iter().map(line).collect()
    };
    assert_eq!(
        said(|i| {
            i.band = domed(6.0, None);
            i.reading.hands = Hands::Cold;
        }),
        [
            "Wider than the gauge +0.75 (0.25 mm a millimetre, 3 mm wider than the gauge), common practice",
            "Domed bore gives room −0.47 (edge relief 0.28 mm in the band, 0 mm in the gauge; 0.8 of the room counts), \
             common practice",
            "Cold hands +0.50 (cold hands read small), common practice",
        ]
    );
    assert_eq!(
        said(|i| {
            i.reading.gauge.width = mm(11.0);
            i.neighbours = vec![mm(2.0)];
            i.constants.width_per_mm = PerMm(mm(0.2));
            i.joint = Some(round(54.0));
        }),
        [
            "Narrower than the gauge −0.60 (0.2 mm a millimetre, 4 mm narrower than the gauge, rings beside it counted \
             half, at most 0.6 mm down), yours",
            "Bore like the gauge’s 0.00 (both are flat inside), common practice",
            "Normal hands 0.00 (nothing to allow for), common practice",
            "To pass the joint +0.60 (the joint passes at 54 mm in the band’s width), published",
        ]
    );
    assert_eq!(
        said(|i| {
            i.reading.gauge.kind = GaugeKind::Stick { taper: constants::STICK_TAPER.value };
            i.reading.gauge.width = mm(6.0);
            i.reading.read_at = ReadAt::Centre;
            i.band.width = mm(2.0);
            i.band.bore = Bore::Domed;
        }),
        [
            "Read at the middle of the ring +0.66 (a flat bore touches at its lower edge: half of 6 mm, at 0.219 mm a \
             millimetre), derived",
            "Narrower than the gauge −0.60 (0.25 mm a millimetre, 4 mm narrower than the gauge, at most 0.6 mm down), \
             common practice",
            "Domed bore gives room −0.05 (edge relief 0.03 mm in the band, 0 mm in the gauge; 0.8 of the room counts), \
             common practice",
            "No larger than a wider band −0.12 (a 3.6 mm band of this bore would come out smaller, so this takes its \
             size), derived",
            "Normal hands 0.00 (nothing to allow for), common practice",
        ]
    );
}

#[test]
fn what_is_said_beside_the_answer() {
    let said: Vec<_> = CUSTOMARY_UPS.iter().map(words::fit::customary).collect();
    assert_eq!(
        said,
        ["half a UK letter up at 6 mm", "about one UK letter up at 8 to 10 mm", "half a US size up from 5 mm"]
    );
    assert!(ordered(|inputs| inputs.first_ring = true).first_ring);
    assert!(words::fit::first_ring().contains("do not go up for that alone"));
    assert_eq!(
        words::fit::tie("N½", "O", true),
        "Half-way between N½ and O: the larger, for a wide band that is flat inside."
    );
    assert_eq!(words::fit::tie("N½", "O", false), "Half-way between N½ and O: the smaller.");
}

#[test]
fn what_cannot_be_worked_out() {
    let check = |change: fn(&mut Inputs), expected: &str| {
        let error = order(&with(change)).expect_err("it should be refused");
        assert_eq!(words::fit::error(&error), expected);
    };
    check(|i| i.reading.as_read = round(0.0), "The reading must be between 30 and 90 mm.");
    check(|i| i.joint = Some(round(91.0)), "The size that passes the joint must be between 30 and 90 mm.");
    check(|i| i.band.width = mm(-1.0), "The band’s width must be between 0.8 and 20 mm.");
    check(|i| i.reading.gauge.width = mm(1e9), "The gauge’s width must be between 0.5 and 20 mm.");
    check(|i| i.neighbours = vec![mm(0.0)], "The width of a ring worn beside it must be between 0.5 and 25 mm.");
    check(|i| i.neighbours = vec![mm(2.0); 10], "Enter at most 9 rings worn beside it.");
    check(|i| i.grid.step = Length::ZERO, "The step the bench makes must be between 0.1 and 6 mm.");
    check(
        |i| i.constants.width_per_mm = PerMm(mm(-0.1)),
        "The shift for width must be between 0 and 1 mm a millimetre.",
    );
    check(|i| i.constants.warm = mm(0.5), "The shift for warm hands must be between −2 and 0 mm.");
    check(
        |i| i.reading.place = Place::Joint,
        "Enter a reading of the base of the finger: the joint is asked for on its own.",
    );
}
