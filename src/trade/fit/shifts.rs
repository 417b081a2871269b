//! The shifts from what was read to what the base wants, one after another.

use super::bore::{relief_in_use_mm, relief_of_room_mm, room_mm, width_of_relief_mm};
use super::constants::*;
use super::order::Inputs;
use super::reading::{GaugeKind, Hands, ReadAt};
use crate::trade::arrange::in_order;
use crate::trade::band::Bore;
use crate::trade::measure::{Circumference, Length, Standing};

/// One part of the way from the reading to the order size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shift {
    pub kind: ShiftKind,
    /// Up is above zero.
    pub amount: Length,
    /// How sure the amount is, one standard deviation.
    pub sd: Length,
    pub standing: Standing,
}

/// What a shift is for, with the figures that its reason names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShiftKind {
    /// The ring was read at the wrong place of the stick. Listed only then.
    Stick {
        read_at: ReadAt,
        width: Length,
        taper: PerMm,
    },
    /// The band is wider than the gauge (`apart` above zero) or narrower, rings worn beside each counting half.
    Width {
        apart: Length,
        per_mm: PerMm,
        beside: bool,
        at_most: Option<Length>,
    },
    /// The band's bore is domed otherwise than the gauge's. Reliefs at the edge, 0 for a flat bore.
    Bore {
        band_relief: Length,
        gauge_relief: Length,
        per_mm: PerMm,
        at_most: Option<Length>,
    },
    /// A wider band of this bore would come out smaller: this one takes the wider one's size. Listed only then.
    Level {
        as_wide_as: Length,
    },
    Hands(Hands),
    /// The joint needs more than the base. Listed only then.
    Joint {
        passes_at: Circumference,
    },
}

/// The shifts of a band worn beside these rings, in order, the joint left out.
///
/// width = k (W - W_g), at most 0.6 mm down; bore = -eta (G_band - G_gauge), at most 0.5 mm either way; hands + 0.5
/// cold, - 0.5 warm. W is the band's own width and half of its neighbours', W_g the same of the gauge. The formula
/// as such can fall while the band widens: a narrow domed band gains room at the edges while the width shift is
/// held at its floor, or outpaced because k was set low. So the size is the least that the formula gives for this
/// width and every greater one ([`ShiftKind::Level`] is the difference), the greatest curve below the formula that
/// never falls. It leaves the formula alone wherever the formula keeps the promise by itself.
pub(super) fn base_shifts(inputs: &Inputs, neighbours: &[Length]) -> Vec<Shift> {
    let mut shifts = Vec::with_capacity(6);
    shifts.extend(stick(inputs));
    shifts.extend(width_and_bore(inputs, neighbours));
    shifts.push(hands(inputs));
    shifts
}

/// A band's width as the finger feels it: its own and half of what is pressed against it, no gaps.
pub(super) fn felt_width(own: Length, beside: &[Length]) -> Length {
    own + beside.iter().copied().sum::<Length>().half()
}

/// A flat bore read at its centre reads low by w/2 x taper; a domed one read at its lower edge, high by the same.
fn stick(inputs: &Inputs) -> Option<Shift> {
    let gauge = inputs.reading.gauge;
    let GaugeKind::Stick { taper } = gauge.kind else { return None };
    let read_at = inputs.reading.read_at;
    if read_at == ReadAt::right_for(gauge.bore) {
        return None;
    }
    let off = gauge.width * (taper.factor() / 2.0);
    let amount = match read_at {
        ReadAt::Centre => off,
        ReadAt::LowerEdge => -off,
    };
    let kind = ShiftKind::Stick { read_at, width: gauge.width, taper };
    Some(Shift { kind, amount, sd: Length::ZERO, standing: standing_of(taper, STICK_TAPER) })
}

fn width_and_bore(inputs: &Inputs, neighbours: &[Length]) -> Vec<Shift> {
    let (gauge, band, constants) = (inputs.reading.gauge, inputs.band, &inputs.constants);
    let apart = felt_width(band.width, neighbours) - felt_width(gauge.width, &inputs.reading.beside);
    let width = band.width.mm();
    let gauge_relief = relief_in_use_mm(gauge.bore, gauge.relief, gauge.width.mm());
    let curve = Curve {
        width_per_mm: constants.width_per_mm.factor(),
        apart_at_no_width: apart.mm() - width,
        bore_per_mm: constants.bore_per_mm.factor(),
        gauge_room: room_mm(gauge_relief),
        band: (band.bore, band.relief),
    };

    // Each is rounded as a running total, so that the shifts add up and rounding cannot undo the promise.
    let by_width = Length::from_mm(curve.width_shift(width));
    let by_bore = Length::from_mm(curve.total(width));
    let (level, as_wide_as) = curve.least_from(width);
    let by_level = Length::from_mm(level);

    let room_apart = curve.room(width) - curve.gauge_room;
    let mut shifts = vec![
        Shift {
            kind: ShiftKind::Width {
                apart,
                per_mm: constants.width_per_mm,
                beside: !(neighbours.is_empty() && inputs.reading.beside.is_empty()),
                at_most: (curve.width_uncapped(width) < -WIDTH_DOWN_MOST.value.mm()).then_some(WIDTH_DOWN_MOST.value),
            },
            amount: by_width,
            sd: apart.abs() * constants.width_per_mm_sd.factor(),
            standing: standing_of(
                (constants.width_per_mm, constants.width_per_mm_sd),
                both(WIDTH_PER_MM, WIDTH_PER_MM_SD),
            ),
        },
        Shift {
            kind: ShiftKind::Bore {
                band_relief: Length::from_mm(relief_in_use_mm(band.bore, band.relief, width)),
                gauge_relief: Length::from_mm(gauge_relief),
                per_mm: constants.bore_per_mm,
                at_most: (curve.bore_uncapped(width).abs() > BORE_MOST.value.mm()).then_some(BORE_MOST.value),
            },
            amount: by_bore - by_width,
            sd: Length::from_mm(room_apart.abs()) * constants.bore_per_mm_sd.factor(),
            standing: standing_of((constants.bore_per_mm, constants.bore_per_mm_sd), both(BORE_PER_MM, BORE_PER_MM_SD)),
        },
    ];
    if by_level != by_bore {
        let kind = ShiftKind::Level { as_wide_as: Length::from_mm(as_wide_as) };
        shifts.push(Shift { kind, amount: by_level - by_bore, sd: Length::ZERO, standing: Standing::Derived });
    }
    shifts
}

fn hands(inputs: &Inputs) -> Shift {
    let (hands, constants) = (inputs.reading.hands, &inputs.constants);
    let off_sd = constants.hands_off_sd;
    let (amount, sd, standing) = match hands {
        Hands::Cold => (constants.cold, off_sd, standing_of((constants.cold, off_sd), both(COLD, HANDS_OFF_SD))),
        Hands::Warm => (constants.warm, off_sd, standing_of((constants.warm, off_sd), both(WARM, HANDS_OFF_SD))),
        Hands::Normal => {
            let sd = constants.hands_normal_sd;
            (Length::ZERO, sd, standing_of(sd, HANDS_NORMAL_SD))
        }
    };
    Shift { kind: ShiftKind::Hands(hands), amount, sd, standing }
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
