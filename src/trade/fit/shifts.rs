//! The shifts from what was read to what the base wants, one after another.
//!
//! A wider band never comes out smaller (`tests/native/fit/promises.rs`). The rule alone would break that: while
//! the width shift is at its floor, or with a low width constant and a high bore constant, a wider domed band
//! still gains room inside. So the least that the rule gives for this width and every greater one is taken, and
//! shown as a shift of its own. It changes only widths at the floor, where another reading is asked for anyway; a
//! running maximum from below would have changed ordinary cases. An amount of the jeweller's own for width or bore
//! stands as it is: then nothing is levelled.

use super::bore::{relief_in_use_mm, relief_of_room_mm, room_mm, width_of_relief_mm};
use super::constants::*;
use super::order::Inputs;
use super::reading::{GaugeKind, Hands, ReadAt, Reading, Sits};
use super::terms::{Shift, ShiftKind, Term};
use crate::trade::arrange::in_order;
use crate::trade::band::Bore;
use crate::trade::measure::{Length, Standing};

/// The shifts of a band worn beside these rings, in order, the joint left out; of several readings, each by its weight.
///
/// width = k (W - W_g), at most 0.6 mm down; bore = -eta (G_band - G_gauge), at most 0.5 mm either way; hands + 0.5
/// cold, - 0.5 warm. W is the band's own width and half of its neighbours', W_g the same of the gauge. The formula
/// as such can fall while the band widens: a narrow domed band gains room at the edges while the width shift is
/// held at its floor, or outpaced because k was set low. So the size is the least that the formula gives for this
/// width and every greater one ([`ShiftKind::Level`] is the difference), the greatest curve below the formula that
/// never falls. It leaves the formula alone wherever the formula keeps the promise by itself, and where the jeweller
/// has put an amount of their own in the place of width or bore.
pub(super) fn base_shifts(inputs: &Inputs, weights: &[f64], neighbours: &[Length]) -> Vec<Shift> {
    let readings = inputs.readings();
    let constants = &inputs.constants;
    let merged = |term, of: fn(&Reading, &Constants) -> Option<Shift>| {
        merge(term, readings.iter().map(|reading| of(reading, constants)).collect(), weights)
    };
    let mut shifts = Vec::with_capacity(8);
    shifts.extend(merged(Term::Gauge, gauge));
    shifts.extend(merged(Term::Stick, |reading, _| stick(reading)));
    shifts.extend(width_and_bore(inputs, &readings, weights, neighbours));
    shifts.extend(merged(Term::Hands, hands));
    shifts.extend(merged(Term::Sits, sits));
    shifts.extend(offset(constants));
    shifts.into_iter().map(|shift| shift.overruled(&inputs.overrules)).collect()
}

/// A band's width as the finger feels it: its own and half of what is pressed against it, no gaps.
pub(super) fn felt_width(own: Length, beside: &[Length]) -> Length {
    own + beside.iter().copied().sum::<Length>().half()
}

/// The room that the gauge's own bore gives.
pub(super) fn gauge_room_mm(reading: &Reading) -> f64 {
    let gauge = &reading.gauge;
    room_mm(relief_in_use_mm(gauge.bore, gauge.relief, gauge.width.mm()))
}

/// What a reading is put right by, whatever band is made from it. Millimetres.
pub(super) struct PutRight {
    gauge: f64,
    stick: f64,
    hands: f64,
    pub hands_sd: f64,
}

impl PutRight {
    pub(super) fn all(&self) -> f64 {
        self.gauge + self.stick + self.hands
    }
}

pub(super) fn put_right(reading: &Reading, constants: &Constants) -> PutRight {
    let felt = hands(reading, constants).or(sits(reading, constants));
    PutRight {
        gauge: reading.gauge_off.mm(),
        stick: stick_off(reading).mm(),
        hands: felt.map_or(0.0, |shift| shift.amount.mm()),
        hands_sd: felt.map_or(0.0, |shift| shift.sd.mm()),
    }
}

/// One term of all readings: as it is where there is one reading, or all are alike in it.
fn merge(term: Term, each: Vec<Option<Shift>>, weights: &[f64]) -> Option<Shift> {
    let first = each.iter().flatten().next().copied()?;
    if each.iter().all(|other| *other == Some(first)) {
        return Some(first);
    }
    let shares = || each.iter().zip(weights).filter_map(|(shift, weight)| Some((shift.as_ref()?, weight)));
    let amount = shares().map(|(shift, weight)| shift.amount.mm() * weight).sum();
    let sd = shares().map(|(shift, weight)| shift.sd.mm() * weight).sum();
    let yours = shares().any(|(shift, _)| shift.standing == Standing::Yours);
    let kind = ShiftKind::Several { term, readings: each.len() };
    let standing = if yours { Standing::Yours } else { first.standing };
    Some(Shift::new(kind, Length::from_mm(amount), Length::from_mm(sd), standing))
}

fn gauge(reading: &Reading, _: &Constants) -> Option<Shift> {
    let off = reading.gauge_off;
    (off != Length::ZERO).then(|| Shift::new(ShiftKind::Gauge, off, Length::ZERO, Standing::Yours))
}

/// What a reading is off by where its ring was not read where it touches the stick, to be added; nothing elsewhere.
pub fn stick_off(reading: &Reading) -> Length {
    stick(reading).map_or(Length::ZERO, |shift| shift.amount)
}

/// A flat bore read at its centre reads low by w/2 x taper; a domed one read at its lower edge, high by the same.
fn stick(reading: &Reading) -> Option<Shift> {
    let gauge = reading.gauge;
    let GaugeKind::Stick { taper } = gauge.kind else { return None };
    let read_at = reading.read_at;
    if read_at == ReadAt::right_for(gauge.bore) {
        return None;
    }
    let off = gauge.width * (taper.factor() / 2.0);
    let amount = match read_at {
        ReadAt::Centre => off,
        ReadAt::LowerEdge => -off,
    };
    let kind = ShiftKind::Stick { read_at, width: gauge.width, taper };
    Some(Shift::new(kind, amount, Length::ZERO, standing_of(taper, STICK_TAPER)))
}

fn width_and_bore(
    inputs: &Inputs,
    readings: &[&Reading],
    weights: &[f64],
    neighbours: &[Length],
) -> impl Iterator<Item = Shift> {
    let (band, constants) = (inputs.band, &inputs.constants);
    let mean =
        |of: fn(&Reading) -> f64| readings.iter().zip(weights).map(|(one, weight)| of(one) * weight).sum::<f64>();
    let gauge_width = Length::from_mm(mean(|one| felt_width(one.gauge.width, &one.beside).mm()));
    let gauge_room = mean(gauge_room_mm);
    let apart = felt_width(band.width, neighbours) - gauge_width;
    let width = band.width.mm();
    let curve = Curve {
        width_per_mm: constants.width_per_mm.factor(),
        apart_at_no_width: apart.mm() - width,
        bore_per_mm: constants.bore_per_mm.factor(),
        gauge_room,
        band: (band.bore, band.relief),
    };

    // Each is rounded as a running total, so that the shifts add up and rounding cannot undo the promise.
    let by_width = Length::from_mm(curve.width_shift(width));
    let by_bore = Length::from_mm(curve.total(width));
    let (level, as_wide_as) = curve.least_from(width);
    let by_level = Length::from_mm(level);

    let width_shift = Shift::new(
        ShiftKind::Width {
            apart,
            per_mm: constants.width_per_mm,
            beside: !(neighbours.is_empty() && readings.iter().all(|one| one.beside.is_empty())),
            at_most: (curve.width_uncapped(width) < -WIDTH_DOWN_MOST.value.mm()).then_some(WIDTH_DOWN_MOST.value),
        },
        by_width,
        apart.abs() * constants.width_per_mm_sd.factor(),
        standing_of((constants.width_per_mm, constants.width_per_mm_sd), both(WIDTH_PER_MM, WIDTH_PER_MM_SD)),
    );
    let bore_shift = Shift::new(
        ShiftKind::Bore {
            band_relief: Length::from_mm(relief_in_use_mm(band.bore, band.relief, width)),
            gauge_relief: Length::from_mm(relief_of_room_mm(gauge_room)),
            per_mm: constants.bore_per_mm,
            at_most: (curve.bore_uncapped(width).abs() > BORE_MOST.value.mm()).then_some(BORE_MOST.value),
        },
        by_bore - by_width,
        Length::from_mm((curve.room(width) - gauge_room).abs()) * constants.bore_per_mm_sd.factor(),
        standing_of((constants.bore_per_mm, constants.bore_per_mm_sd), both(BORE_PER_MM, BORE_PER_MM_SD)),
    );
    let by_rule = inputs.overrules.of(Term::Width).is_none() && inputs.overrules.of(Term::Bore).is_none();
    let level_shift = (by_rule && by_level != by_bore).then(|| {
        let kind = ShiftKind::Level { as_wide_as: Length::from_mm(as_wide_as) };
        Shift::new(kind, by_level - by_bore, Length::ZERO, Standing::Derived)
    });
    [Some(width_shift), Some(bore_shift), level_shift].into_iter().flatten()
}

fn hands(reading: &Reading, constants: &Constants) -> Option<Shift> {
    if reading.sits.is_some() {
        return None;
    }
    let hands = reading.hands;
    let off_sd = constants.hands_off_sd;
    let (amount, sd, standing) = match hands {
        Hands::Cold => (constants.cold, off_sd, standing_of((constants.cold, off_sd), both(COLD, HANDS_OFF_SD))),
        Hands::Warm => (constants.warm, off_sd, standing_of((constants.warm, off_sd), both(WARM, HANDS_OFF_SD))),
        Hands::Normal => {
            let sd = constants.hands_normal_sd;
            (Length::ZERO, sd, standing_of(sd, HANDS_NORMAL_SD))
        }
    };
    Some(Shift::new(ShiftKind::Hands(hands), amount, sd, standing))
}

fn sits(reading: &Reading, _: &Constants) -> Option<Shift> {
    let sits = reading.sits?;
    let (amount, sd) = match sits {
        Sits::Tight => (SITS_TIGHT.value, SITS_OFF_SD),
        Sits::Right => (Length::ZERO, SITS_RIGHT_SD),
        Sits::Spins => (SITS_SPINS.value, SITS_OFF_SD),
        Sits::SticksInSummer => (SITS_SUMMER.value, SITS_OFF_SD),
    };
    Some(Shift::new(ShiftKind::Sits(sits), amount, sd.value, sd.standing))
}

fn offset(constants: &Constants) -> Option<Shift> {
    let (amount, sd) = (constants.offset, constants.offset_sd);
    let set = amount != Length::ZERO || sd != Length::ZERO;
    set.then(|| Shift::new(ShiftKind::Offset, amount, sd, Standing::Yours))
}

fn both<T: Copy>(figure: Figure<T>, sd: Figure<T>) -> Figure<(T, T)> {
    Figure { value: (figure.value, sd.value), standing: figure.standing, source: figure.source }
}

/// Width shift and bore shift as they go with the band's own width, everything else held. Millimetres.
struct Curve {
    width_per_mm: f64,
    apart_at_no_width: f64,
    bore_per_mm: f64,
    gauge_room: f64,
    band: (Bore, Option<Length>),
}

impl Curve {
    fn width_uncapped(&self, width: f64) -> f64 {
        self.width_per_mm * (width + self.apart_at_no_width)
    }

    fn width_shift(&self, width: f64) -> f64 {
        self.width_uncapped(width).max(-WIDTH_DOWN_MOST.value.mm())
    }

    fn room(&self, width: f64) -> f64 {
        room_mm(relief_in_use_mm(self.band.0, self.band.1, width))
    }

    fn bore_uncapped(&self, width: f64) -> f64 {
        -self.bore_per_mm * (self.room(width) - self.gauge_room)
    }

    fn total(&self, width: f64) -> f64 {
        let most = BORE_MOST.value.mm();
        self.width_shift(width) + self.bore_uncapped(width).clamp(-most, most)
    }

    /// The least total from a width on, and the width it belongs to. Between two of the widths below the total is a
    /// straight or a concave line, and beyond the last of them it rises: the least is at the start or at one of them.
    fn least_from(&self, width: f64) -> (f64, f64) {
        let turns = [
            // the width shift leaves its floor
            -WIDTH_DOWN_MOST.value.mm() / self.width_per_mm - self.apart_at_no_width,
            // the assumed relief reaches its cap
            width_of_relief_mm(RELIEF_MOST.value.mm()),
            // the bore shift reaches its cap
            width_of_relief_mm(relief_of_room_mm(self.gauge_room + BORE_MOST.value.mm() / self.bore_per_mm)),
        ];
        let mut least = (self.total(width), width);
        for turn in in_order(turns, |turn| Length::from_mm(*turn)) {
            let total = self.total(turn);
            if turn.is_finite() && turn > width && total < least.0 - 1e-9 {
                least = (total, turn);
            }
        }
        least
    }
}
