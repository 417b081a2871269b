//! Joints that are larger than the base.

use super::*;
use bandwright::words;

#[test]
fn large_joints() {
    let joint = |joint: f64, no_beads| {
        let found = ordered(|inputs| {
            inputs.joint = Some(round(joint));
            inputs.no_beads = no_beads;
        });
        (found.alone.size.mm(), words::fit::joint(&found.alone.joint.expect("a joint was given")))
    };
    let check =
        |at: f64, no_beads, size: f64, sentence: &str| assert_eq!(joint(at, no_beads), (size, sentence.to_owned()));
    // The base wants 54.75, and of the half-way pair a wide flat band takes 55.0.
    check(53.75, None, 55.0, "The joint passes, with 1.25 mm to spare.");
    check(
        55.0,
        None,
        55.0,
        "The joint needs 0.25 mm more than the base: the ring will be 0.25 mm loose at the base. Leave it so.",
    );
    check(
        55.7,
        None,
        56.25,
        "The joint needs 0.95 mm more than the base: the ring will be 1.5 mm loose at the base. Offer sizing beads or a spring.",
    );
    check(
        55.7,
        Some(NoBeads::FullEternity),
        56.25,
        "The joint needs 0.95 mm more than the base: the ring will be 1.5 mm loose at the base. Ask the bench: with stones all round it takes no beads.",
    );
    check(
        55.7,
        Some(NoBeads::HardMetal),
        56.25,
        "The joint needs 0.95 mm more than the base: the ring will be 1.5 mm loose at the base. Ask the bench: a metal this hard takes no beads.",
    );
    check(
        58.0,
        None,
        58.125,
        "The joint needs 3.25 mm more than the base: the ring will be 3.38 mm loose at the base. Ask the bench.",
    );
    check(
        60.0,
        None,
        60.0,
        "The joint needs 5.25 mm more than the base: the ring will be 5.25 mm loose at the base. Offer a hinged shank.",
    );
}

#[test]
fn rounding_never_undoes_the_joint() {
    // The base wants 54.5, nearest 54.375; the joint passes at 54.4.
    let found = ordered(|inputs| {
        inputs.band.width = mm(5.0);
        inputs.joint = Some(round(54.4));
    });
    assert_eq!(found.alone.size, round(55.0));
    assert_eq!(found.alone.tie, None);
    assert_eq!(found.alone.low, round(54.4));
    assert_eq!(
        words::fit::joint(&found.alone.joint.expect("a joint was given")),
        "The size below would not pass the joint: the ring will be 0.5 mm loose at the base. Leave it so."
    );
}

#[test]
fn a_joint_tried_in_another_width_is_tried_again() {
    let tried = |width: f64| {
        ordered(|inputs| {
            inputs.band.width = mm(8.0);
            inputs.joint = Some(round(56.25));
            inputs.joint_width = Some(mm(width));
        })
    };
    let again = |found: &Order| {
        let joint = |reason: &&MeasureAgain| matches!(reason, MeasureAgain::JointUnlike { .. });
        found.measure_again.iter().find(joint).map(words::fit::measure_again)
    };
    let narrow = tried(3.0);
    assert_eq!(
        again(&narrow).as_deref(),
        Some("Try the joint again in 8 mm: it was tried in 3 mm, and a wider band passes less easily.")
    );
    let shift = narrow.alone.shifts.last().unwrap();
    assert_eq!(words::fit::shift_reason(&shift.kind), "the joint passes at 56.25 mm in a gauge of 3 mm");
    assert_eq!(words::fit::shift_standing(shift), "rule published, amount as read");
    // A millimetre makes no difference that anybody feels.
    assert_eq!((again(&tried(7.0)), again(&tried(8.0))), (None, None));
}

/// The joint leaves nothing of the range: what is said is no certainty.
#[test]
fn a_joint_that_decides_says_at_least() {
    let found = ordered(|inputs| inputs.joint = Some(round(58.0))).alone;
    assert!(found.joint_alone());
    let said = words::bench::range(&found);
    assert_eq!(said, "at least 58.00 mm (the joint); the base alone wants 53.9 to 55.6");
    let found = ordered(|inputs| inputs.joint = Some(round(55.0))).alone;
    assert!(!found.joint_alone() && words::bench::range(&found).starts_with("8 in 10 between 55.00 and"));
}

#[test]
fn the_width_that_is_wanted_is_named_by_a_gauge() {
    let found = ordered(|inputs| inputs.band.width = mm(8.0));
    let [reason] = found.measure_again.as_slice() else { panic!("{:?}", found.measure_again) };
    assert_eq!(reason.wanted_width(), Some((mm(8.0), mm(3.0))));
    assert_eq!(
        words::fit::measure_again_with(reason, "wide rings", mm(6.0)),
        "Measure again with a wider gauge: alone, the band counts as 8 mm, the gauge as 3 mm. Yours that comes nearest: \
         wide rings, 6 mm."
    );
}
