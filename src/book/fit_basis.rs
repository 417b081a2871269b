//! What an order size rests on, and the one way from it to the inputs of the fit: for a couple's page, the tool, bands
//! side by side and what fitted.

use super::couple::{Band as Wanted, Couple};
use super::fitting::{as_reading, counted, grid, joint, no_beads, worn_beside};
use super::practice::Practice;
use crate::trade::band::{Bore, Profile};
use crate::trade::fit::{Band, Constants, Inputs, NoBeads, Overrules, Place, Reading};
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{Step, System};
use crate::trade::wearer::Wearer;

/// What an order size rests on, as recorded or as typed, as far as it is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FitBasis {
    /// Of the base of the finger, the newest first.
    pub readings: Vec<Reading>,
    pub width: Option<Length>,
    pub profile: Option<Profile>,
    pub relief: Option<Length>,
    /// The widths of the rings worn beside the band now.
    pub neighbours: Vec<Length>,
    pub first_ring: bool,
    /// The finger is changing for the time being.
    pub finger_changing: bool,
    /// What passes the joint, and how wide that was.
    pub joint: Option<(Circumference, Option<Length>)>,
    pub no_beads: Option<NoBeads>,
    pub overrules: Overrules,
}

/// What the practice sets for every order size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FitRules {
    pub constants: Constants,
    /// The system in which sizes are named first, and the step in which the workshop makes them.
    pub system: System,
    pub step: Step,
}

impl FitRules {
    pub fn of(practice: Practice<'_>) -> FitRules {
        FitRules { constants: practice.constants(), system: practice.first_system(), step: practice.step() }
    }
}

impl FitBasis {
    /// What is recorded of one of a couple.
    pub fn of(couple: Couple<'_>, who: Wearer) -> FitBasis {
        let readings = counted(couple, who, Place::Base);
        let basis = FitBasis {
            readings: readings.into_iter().map(|(_, taken)| as_reading(taken)).collect(),
            neighbours: worn_beside(couple, who),
            first_ring: couple.first_ring(who) == Some(true),
            joint: joint(couple, who).map(|joint| (joint.passes_at, Some(joint.width))),
            ..FitBasis::default()
        };
        basis.with_band(&couple.band(who))
    }

    /// The same for another band.
    pub fn with_band(self, band: &Wanted) -> FitBasis {
        FitBasis { width: band.width, profile: band.profile, relief: band.relief, no_beads: no_beads(band), ..self }
    }

    /// The inputs of the fit; none while something is missing.
    pub fn inputs(&self, rules: &FitRules) -> Option<Inputs> {
        let bore = self.profile?.bore();
        let mut readings = self.readings.iter().cloned();
        Some(Inputs {
            reading: readings.next()?,
            others: readings.collect(),
            // A flat inside has no relief, whatever was measured of another profile.
            band: Band { width: self.width?, bore, relief: self.relief.filter(|_| bore == Bore::Domed) },
            neighbours: self.neighbours.clone(),
            first_ring: self.first_ring,
            finger_changing: self.finger_changing,
            joint: self.joint.map(|(passes_at, _)| passes_at),
            joint_width: self.joint.and_then(|(_, width)| width),
            no_beads: self.no_beads,
            constants: rules.constants,
            overrules: self.overrules,
            grid: grid(rules.system, rules.step),
        })
    }
}
