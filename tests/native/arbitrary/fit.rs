//! Readings, gauges and sizes with anything in them.

use super::{circumference, day, finger, length, time, words};
use bandwright::book::id::ItemId;
use bandwright::book::remedy::{Away, Remedy, Way};
use bandwright::book::value::{OrderSize, OwnAmount, OwnGauge, OwnTerms, ReadingTaken, TryOnBand};
use bandwright::trade::band::Bore;
use bandwright::trade::fit::{CalibrationPoint, Gauge, GaugeKind, Hands, PerMm, Place, ReadAt, Sits, Term};
use bandwright::trade::measure::Diameter;
use bandwright::trade::sizing::{Size, SizeAsRead, Stated, System};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

fn size() -> impl Strategy<Value = Size> {
    (select(System::ALL.to_vec()), -20i32..400)
        .prop_map(|(system, quarters)| Size::new(system, quarters).unwrap_or(Size::first(system)))
        .prop_filter("the first size is not on every scale", |size| Size::new(size.system(), size.quarters()).is_some())
}

pub fn size_as_read() -> impl Strategy<Value = SizeAsRead> {
    let stated = prop_oneof![
        size().prop_map(Stated::Size),
        length().prop_map(|length| Stated::Diameter(Diameter(length))),
        circumference().prop_map(Stated::Circumference),
    ];
    (stated, words()).prop_map(|(stated, typed)| SizeAsRead { stated, typed })
}

fn gauge() -> impl Strategy<Value = OwnGauge> {
    let kind =
        prop_oneof![Just(GaugeKind::RingSet), length().prop_map(|taper| GaugeKind::Stick { taper: PerMm(taper) }),];
    let bore = select(vec![Bore::Flat, Bore::Domed]);
    (words(), kind, length(), bore, of(length()), length(), length()).prop_map(
        |(name, kind, width, bore, relief, step, own_error)| OwnGauge {
            name,
            gauge: Gauge { kind, width, bore, relief, step, own_error },
            calibration: Vec::new(),
        },
    )
}

pub fn calibrated() -> impl Strategy<Value = OwnGauge> {
    let point = (circumference(), circumference()).prop_map(|(says, is)| CalibrationPoint { says, is });
    (gauge(), vec(point, 0..3)).prop_map(|(gauge, calibration)| OwnGauge { calibration, ..gauge })
}

pub fn try_on() -> impl Strategy<Value = TryOnBand> {
    let bore = select(vec![Bore::Flat, Bore::Domed]);
    (words(), length(), bore, of(length()), size_as_read()).prop_map(|(number, width, bore, height, size)| TryOnBand {
        number,
        width,
        bore,
        height,
        size,
    })
}

fn own_terms() -> impl Strategy<Value = OwnTerms> {
    vec((select(Term::ALL.to_vec()), length(), length()), 0..3).prop_map(|all| {
        let mut own = OwnTerms::default();
        all.into_iter().for_each(|(term, worked_out, used)| own.set(term, OwnAmount { worked_out, used }));
        own
    })
}

pub fn reading() -> impl Strategy<Value = ReadingTaken> {
    let how = (select(Place::ALL.to_vec()), select(ReadAt::ALL.to_vec()), select(Hands::ALL.to_vec()));
    let worn = (of(select(Sits::ALL.to_vec())), of(time()), any::<bool>());
    (size_as_read(), finger(), calibrated(), how, vec(length(), 0..4), day(), worn).prop_map(
        |(size, finger, gauge, (place, read_at, hands), beside, taken, (sits, at, left_out))| ReadingTaken {
            size,
            finger,
            place,
            gauge,
            read_at,
            hands,
            beside,
            sits,
            taken,
            at,
            left_out,
        },
    )
}

pub fn order_size() -> impl Strategy<Value = OrderSize> {
    let flags = (any::<bool>(), any::<bool>(), any::<bool>());
    (size(), circumference(), circumference(), circumference(), flags, own_terms(), day()).prop_map(
        |(size, exact, from, to, (in_stack, overruled, measure_again), own, settled)| OrderSize {
            size,
            exact,
            from,
            to,
            in_stack,
            overruled,
            own,
            measure_again,
            settled,
        },
    )
}

/// What was chosen for a band beside a head.
pub fn remedy() -> impl Strategy<Value = Remedy> {
    let item = of((0u128..4).prop_map(ItemId));
    let away = (item, of(day()), of(day())).prop_map(|(ring, from, to)| Away { ring, from, to });
    (select(&Way::ALL[..]), length(), any::<bool>(), any::<bool>(), of(away))
        .prop_map(|(way, by, impression, template, ring)| Remedy { way, by, impression, template, ring })
}
