//! The readings of a finger as the fit takes them, and the rings beside a band.

use super::couple::{Band as Wanted, Couple};
use super::id::ItemId;
use super::practice::Practice;
use super::value::{OwnGauge, ReadingTaken};
use crate::trade::band::Finish;
use crate::trade::fit::{Combined, Grid, NoBeads, Place, Reading, calibrate, combine, constants, stick_off};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{Step, System, even_scale};
use crate::trade::wearer::Wearer;

/// How much larger a gauge is, where it says this, by its calibration.
pub fn gauge_off(own: &OwnGauge, says: Circumference) -> Length {
    calibrate(&own.calibration).map_or(Length::ZERO, |found| found.off_at(says))
}

/// A reading as the fit takes it.
pub fn as_reading(taken: &ReadingTaken) -> Reading {
    let as_read = taken.size.circumference();
    Reading {
        as_read,
        gauge: taken.gauge.gauge,
        read_at: taken.read_at,
        hands: taken.hands,
        place: taken.place,
        beside: taken.beside.clone(),
        sits: taken.sits,
        gauge_off: gauge_off(&taken.gauge, as_read),
        day: taken.taken,
    }
}

/// The readings of one place that count together, the newest first: of the finger the band is for, and not left out.
pub fn counted<'a>(couple: Couple<'a>, who: Wearer, place: Place) -> Vec<(ItemId, &'a ReadingTaken)> {
    let mut all = alike(couple, who, place);
    all.retain(|(_, taken)| !taken.left_out);
    all
}

/// The same with those that were left out.
fn alike<'a>(couple: Couple<'a>, who: Wearer, place: Place) -> Vec<(ItemId, &'a ReadingTaken)> {
    let here = |taken: &ReadingTaken| taken.place == place && is_of_the_bands_finger(couple, who, taken);
    couple.readings(who).into_iter().rev().filter(|(_, taken)| here(taken)).collect()
}

/// Whether a reading is of the finger that the band is for. While none is chosen every finger is.
pub fn is_of_the_bands_finger(couple: Couple<'_>, who: Wearer, taken: &ReadingTaken) -> bool {
    couple.finger(who).is_none_or(|finger| finger == taken.finger)
}

/// What the readings of a place come to together; none without any.
pub fn together(couple: Couple<'_>, practice: Practice<'_>, who: Wearer, place: Place) -> Option<Combined> {
    let readings: Vec<Reading> = counted(couple, who, place).iter().map(|(_, taken)| as_reading(taken)).collect();
    combine(&readings.iter().collect::<Vec<_>>(), &practice.constants())
}

/// The newest reading that this one contradicts, and how much larger this one is, both on the same plain gauge.
pub fn contradicted<'a>(
    couple: Couple<'a>,
    practice: Practice<'_>,
    who: Wearer,
    fresh: &ReadingTaken,
) -> Option<(&'a ReadingTaken, Length)> {
    let constants = practice.constants();
    let plain = |taken: &ReadingTaken| combine(&[&as_reading(taken)], &constants).map(|found| found.plain.0);
    let mine = plain(fresh)?;
    let others = couple.readings(who).into_iter().rev().map(|(_, taken)| taken);
    others
        .filter(|taken| taken.place == fresh.place && taken.finger == fresh.finger && !taken.left_out)
        .filter_map(|taken| Some((taken, mine - plain(taken)?)))
        .find(|(_, more)| more.abs() > constants::READINGS_APART.value)
}

/// The widths of the rings that lie next to the band now, the one nearer the web first: at most one on either side. A
/// ring that is only planned is passed over, as by what makes rings tighter later (`trade/stack/later.rs`). A band
/// without a place lies nearest the web; its place counts the rings of which a width is known, as the stack does.
pub fn worn_beside(couple: Couple<'_>, who: Wearer) -> Vec<Length> {
    let finger = couple.finger(who);
    let here = |of| finger.is_none() || of == finger;
    let rings = couple.rings(who).into_iter();
    let rings = rings.filter(|ring| ring.finger.is_none() || here(ring.finger));
    let rings: Vec<(Length, bool)> = rings.filter_map(|it| Some((it.shoulder_width?, it.planned))).collect();
    let place = couple.band(who).place.map_or(0, |place| usize::from(place.0));
    let (below, above) = rings.split_at(place.min(rings.len()));
    let worn = |(_, planned): &&(Length, bool)| !planned;
    let next = [below.iter().rev().find(worn), above.iter().find(worn)];
    next.into_iter().flatten().map(|(width, _)| *width).collect()
}

/// Why a band takes no sizing beads, if it takes none.
pub fn no_beads(band: &Wanted) -> Option<NoBeads> {
    match (band.finish, band.metal) {
        (Some(Finish::SetAllRound), _) => Some(NoBeads::FullEternity),
        (_, Some(metal)) if metal.hard => Some(NoBeads::HardMetal),
        _ => None,
    }
}

/// What passes the joint, and how wide that was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct JointRead {
    pub passes_at: Circumference,
    /// Of several gauges the one that is least like the band.
    pub width: Length,
    pub readings: usize,
}

/// What passes the joint, by the readings of it that count: as read and put right for the gauge's calibration and for
/// where it was read on a stick, no term for width, bore or stack. Those taken in the band's width, if there are any; else all of them.
pub fn joint(couple: Couple<'_>, who: Wearer) -> Option<JointRead> {
    joint_of(counted(couple, who, Place::Joint).into_iter().map(|(_, taken)| taken).collect(), couple.band(who).width)
}

fn joint_of(mut taken: Vec<&ReadingTaken>, band: Option<Length>) -> Option<JointRead> {
    let apart = |taken: &ReadingTaken| band.map_or(Length::ZERO, |band| (band - taken.gauge.gauge.width).abs());
    if taken.iter().any(|taken| apart(taken) <= constants::JOINT_APART.value) {
        taken.retain(|taken| apart(taken) <= constants::JOINT_APART.value);
    }
    let sum: Length = taken.iter().map(|taken| passes_at(taken).0).sum();
    let farthest = taken.iter().max_by_key(|taken| apart(taken))?;
    Some(JointRead {
        passes_at: Circumference(Length::from_mm(sum.mm() / taken.len() as f64)),
        width: farthest.gauge.gauge.width,
        readings: taken.len(),
    })
}

/// What a reading of the joint comes to.
fn passes_at(taken: &ReadingTaken) -> Circumference {
    let reading = as_reading(taken);
    Circumference(reading.as_read.0 + reading.gauge_off + stick_off(&reading))
}

/// What a reading of the base comes to on a plain gauge, where that is not what it says.
pub fn put_right(taken: &ReadingTaken, practice: Practice<'_>) -> Option<Circumference> {
    let plain = match taken.place {
        Place::Base => combine(&[&as_reading(taken)], &practice.constants())?.plain,
        Place::Joint => passes_at(taken),
    };
    (plain != taken.size.circumference()).then_some(plain)
}

/// The steps that the bench makes.
pub fn grid(system: System, step: Step) -> Grid {
    let (origin, step) = even_scale(system, step);
    Grid { origin, step }
}
