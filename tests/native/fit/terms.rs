//! Each part of the order size, case by case, worked by hand or quoted.

use super::*;
use bandwright::trade::measure::Standing;

#[test]
fn order_sizes_of_the_worked_examples() {
    let rows = rows("fit-order-sizes.csv");
    assert_eq!(rows.len(), 2);
    for row in rows {
        let found = ordered(|inputs| {
            inputs.reading.as_read = round(figure(&row[0]));
            inputs.band.width = mm(figure(&row[1]));
            inputs.band.bore = if row[2] == "domed" { Bore::Domed } else { Bore::Flat };
        });
        near(&row.join(","), found.alone.exact.mm(), figure(&row[3]), figure(&row[4]));
        assert_eq!(found.alone, found.in_stack);
    }
}

#[test]
fn room_of_a_domed_bore() {
    let rows = rows("fit-bore-room.csv");
    assert_eq!(rows.len(), 2);
    for row in rows {
        let relief = edge_relief(mm(figure(&row[0])));
        near("relief", relief.mm(), figure(&row[1]), figure(&row[2]));
        near("room", bore_room(relief).mm(), figure(&row[3]), figure(&row[4]));
    }
    assert_eq!(edge_relief(mm(12.0)), mm(0.30), "capped");
}

#[test]
fn flat_ring_read_at_the_middle_of_a_stick() {
    let stick = |width: f64, bore, read_at| {
        ordered(|inputs| {
            let taper = constants::STICK_TAPER.value;
            inputs.reading.gauge.kind = GaugeKind::Stick { taper };
            inputs.reading.gauge.width = mm(width);
            inputs.reading.gauge.bore = bore;
            inputs.reading.read_at = read_at;
            inputs.band.width = mm(width);
            inputs.band.bore = bore;
        })
    };
    let rows = rows("fit-stick.csv");
    assert_eq!(rows.len(), 3);
    for row in rows {
        let (width, low, tolerance) = (figure(&row[0]), figure(&row[1]), figure(&row[2]));
        let found = stick(width, Bore::Flat, ReadAt::Centre);
        assert!(matches!(found.alone.shifts[0].kind, ShiftKind::Stick { .. }));
        assert_eq!(found.alone.shifts[0].standing, Standing::Derived);
        near("flat at the middle", found.alone.exact.mm() - 54.0, low, tolerance);
        near("flat at its edge", stick(width, Bore::Flat, ReadAt::LowerEdge).alone.exact.mm(), 54.0, 0.0);
        near("domed at the middle", stick(width, Bore::Domed, ReadAt::Centre).alone.exact.mm(), 54.0, 0.0);
        near(
            "domed at its edge",
            stick(width, Bore::Domed, ReadAt::LowerEdge).alone.exact.mm() - 54.0,
            -low,
            tolerance,
        );
    }
}

/// What a change of the plain inputs does to the exact answer, worked by hand.
fn check(what: &str, change: impl FnOnce(&mut Inputs), expected: f64) {
    near(what, ordered(change).in_stack.exact.mm(), expected, 0.0005);
}

#[test]
fn each_term_has_its_sign_and_its_cap() {
    check("as wide as the gauge", |i| i.band.width = mm(3.0), 54.0);
    check("gauge wider than the band", |i| i.reading.gauge.width = mm(8.0), 53.5);
    check("much wider: 0.6 at most", |i| i.reading.gauge.width = mm(12.0), 53.4);
    check("much narrower: no cap upward", |i| i.band.width = mm(11.0), 56.0);
    // 54 + 0.75 + 0.8 x 0.589
    check(
        "domed gauge, flat band",
        |i| {
            i.reading.gauge.bore = Bore::Domed;
            i.reading.gauge.relief = Some(mm(0.28125));
        },
        55.2212,
    );
    check("domed band, relief measured as none", |i| i.band = domed(6.0, Some(0.0)), 54.75);
    check("flat band, relief ignored", |i| i.band.relief = Some(mm(0.3)), 54.75);
    check("very hollow bore: 0.50 at most", |i| i.band = domed(6.0, Some(0.9)), 54.25);
    check("wide court: capped by itself", |i| i.band = domed(9.0, None), 55.0);
    check("cold", |i| i.reading.hands = Hands::Cold, 55.25);
    check("warm", |i| i.reading.hands = Hands::Warm, 54.25);
    check("first ring: nothing", |i| i.first_ring = true, 54.75);
    // half of 2.6 and 3.0: 2.8 mm more
    check("neighbours count half", |i| i.neighbours = vec![mm(2.6), mm(3.0)], 55.45);
    check("and so beside the gauge", |i| i.reading.beside = vec![mm(2.6)], 54.425);
    check("joint over the base", |i| i.joint = Some(round(55.3)), 55.3);
    check("joint under the base", |i| i.joint = Some(round(54.3)), 54.75);
}

#[test]
fn alone_and_in_the_stack_differ_by_the_neighbours() {
    let found = ordered(|inputs| inputs.neighbours = vec![mm(2.0)]);
    near("alone", found.alone.exact.mm(), 54.75, 0.0);
    near("in the stack", found.in_stack.exact.mm(), 55.0, 0.0);
}

/// Where the formula would fall with the width, the least of what is wider stands. Gauge of 6 mm, flat: a court band of
/// 3.6 mm is 0.6 down by width and 0.8 x 2 pi / 3 x 3.6^2 / 128 = 0.1696 by its bore.
#[test]
fn narrow_domed_band_is_no_larger_than_a_wider_one() {
    let court = |width: f64| {
        ordered(|inputs| {
            inputs.reading.gauge.width = mm(6.0);
            inputs.band = domed(width, None);
        })
    };
    near("at 3.6", court(3.6).alone.exact.mm(), 53.2304, 0.0002);
    near("at 2.0, level with it", court(2.0).alone.exact.mm(), 53.2304, 0.0002);
    near("at 4.0, as the formula says", court(4.0).alone.exact.mm(), 53.2906, 0.0002);
    let level = court(2.0).alone.shifts[2];
    assert_eq!(level.kind, ShiftKind::Level { as_wide_as: mm(3.6) });
    near("the difference", level.amount.mm(), -0.1173, 0.0002);
    assert!(!court(4.0).alone.shifts.iter().any(|shift| matches!(shift.kind, ShiftKind::Level { .. })));
}

#[test]
fn uncertainty_and_range() {
    // sqrt(0.35^2 + 0.3^2 + (3 x 0.10)^2 + 0.3^2) = 0.6265; 1.28 of it 0.802
    let found = ordered(|_| ()).alone;
    near("u", found.u.mm(), 0.6265, 0.0002);
    near("low", found.low.mm(), 53.948, 0.001);
    near("high", found.high.mm(), 55.552, 0.001);
    assert_eq!(found.in_range, [round(54.375), round(55.0)]);
    // as above with a domed bore of 0.589 and cold hands, own error 0.2:
    // sqrt(0.1225 + 0.09 + 0.04 + 0.09 + 0.0312 + 0.16)
    let found = ordered(|inputs| {
        inputs.band = domed(6.0, None);
        inputs.reading.hands = Hands::Cold;
        inputs.reading.gauge.own_error = mm(0.2);
    });
    near("u, everything in it", found.alone.u.mm(), 0.7306, 0.0003);
    // a coarse gauge: 2 / sqrt 12 = 0.577 takes the place of 0.35
    let coarse = ordered(|inputs| inputs.reading.gauge.step = mm(2.0)).alone;
    near("u, coarse gauge", coarse.u.mm(), 0.7767, 0.0003);
    let first = ordered(|inputs| inputs.first_ring = true).alone;
    near("first ring: no wider", first.u.mm(), 0.6265, 0.0002);
}

#[test]
fn half_way_between_two_sizes() {
    let size = |width: f64, bore, as_read: f64| {
        let answer = ordered(|inputs| {
            inputs.reading.as_read = round(as_read);
            inputs.reading.gauge.width = mm(width);
            inputs.reading.gauge.bore = bore;
            inputs.band = Band { width: mm(width), bore, relief: None };
        });
        (answer.alone.size, answer.alone.tie.map(|tie| tie.prefer_larger))
    };
    // Half-way between 54.375 and 55.0 is 54.6875.
    assert_eq!(size(5.0, Bore::Flat, 54.6), (round(55.0), Some(true)));
    assert_eq!(size(4.9, Bore::Flat, 54.6), (round(54.375), Some(false)));
    assert_eq!(size(4.9, Bore::Flat, 54.78), (round(54.375), Some(false)));
    assert_eq!(size(6.0, Bore::Domed, 54.78), (round(54.375), Some(false)));
    assert_eq!(size(6.0, Bore::Flat, 54.58), (round(54.375), None));
    assert_eq!(size(4.0, Bore::Flat, 54.80), (round(55.0), None));
    assert_eq!(size(6.0, Bore::Flat, 54.375), (round(54.375), None));
    // In quarters a tenth of a millimetre is a third of a step: 55.25 is O¼ and no half.
    let quarters = |as_read: f64| {
        let answer = ordered(|inputs| {
            inputs.grid.step = mm(0.3125);
            inputs.reading.as_read = round(as_read);
            inputs.band.width = inputs.reading.gauge.width;
        });
        (answer.alone.size, answer.alone.tie.is_some())
    };
    assert_eq!(quarters(55.25), (round(55.3125), false));
    assert_eq!(quarters(55.2), (round(55.0), true));
}
