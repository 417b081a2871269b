//! The cross-section of a band: what its profile, width, height, dome and edge relief come to at every height.

use super::{Bore, Profile};
use crate::trade::fit::edge_relief;
use crate::trade::measure::Length;

/// What a section is made from. A dome or a relief that nobody measured is taken as usual.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SectionInputs {
    pub profile: Profile,
    pub width: Length,
    /// From the finger to the highest point of the outside.
    pub height: Length,
    /// How far a domed outside rises from its edges.
    pub dome: Option<Length>,
    /// How far the edges of a domed bore stand back from the finger.
    pub relief: Option<Length>,
}

/// A section that can be made: it has an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Section {
    profile: Profile,
    width: Length,
    height: Length,
    dome: Length,
    relief: Length,
}

/// Why there is no such section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionError {
    /// A width or a height of nothing, or of less.
    Nothing,
    /// The dome is as high as the band, or higher.
    DomeTooHigh { dome: Length, height: Length },
    /// Dome and relief meet: no edge is left between them.
    NoEdge { dome: Length, relief: Length, height: Length },
    /// An arc as high as half the band is wide, or higher, is no arc over it.
    TooRound { most: Length },
}

/// Where nobody measured the dome: an eighth of the width, and at most two fifths of the height, down to the hundredth,
/// so that it is the same once it is written down. Common practice.
pub fn usual_dome(width: Length, height: Length) -> Length {
    let dome = (width * 0.125).min(height * 0.4);
    dome - Length::tenthousandths(dome.in_tenthousandths().rem_euclid(100))
}

impl Section {
    /// The section of a band, or why there is none.
    ///
    /// edge = height - dome - relief, more than nothing. Millimetres. Source: geometry of circular arcs.
    ///
    /// ```
    /// use bandwright::trade::{band::{Profile, section::*}, measure::Length};
    /// let mm = Length::from_mm;
    /// let of = SectionInputs { profile: Profile::D, width: mm(4.0), height: mm(1.8), dome: Some(mm(0.5)), relief: None };
    /// let section = Section::new(&of).unwrap();
    /// assert_eq!(section.edge(), (mm(0.0), mm(1.3)));
    /// assert!((section.recess(mm(1.5)).mm() - 0.4316).abs() < 0.0005);
    /// ```
    pub fn new(of: &SectionInputs) -> Result<Section, SectionError> {
        let (width, height) = (of.width, of.height);
        if width <= Length::ZERO || height <= Length::ZERO {
            return Err(SectionError::Nothing);
        }
        let dome = match of.profile.is_domed_outside() {
            true => of.dome.unwrap_or(usual_dome(width, height)),
            false => Length::ZERO,
        };
        let relief = match of.profile.bore() {
            Bore::Domed => of.relief.unwrap_or(edge_relief(width)),
            Bore::Flat => Length::ZERO,
        };
        if dome >= height {
            return Err(SectionError::DomeTooHigh { dome, height });
        }
        if dome + relief >= height {
            return Err(SectionError::NoEdge { dome, relief, height });
        }
        if dome >= width.half() || relief >= width.half() {
            return Err(SectionError::TooRound { most: width.half() });
        }
        Ok(Section {
            profile: of.profile,
            width,
            height,
            dome: dome.max(Length::ZERO),
            relief: relief.max(Length::ZERO),
        })
    }

    pub fn profile(&self) -> Profile {
        self.profile
    }

    pub fn width(&self) -> Length {
        self.width
    }

    pub fn height(&self) -> Length {
        self.height
    }

    pub fn dome(&self) -> Length {
        self.dome
    }

    pub fn relief(&self) -> Length {
        self.relief
    }

    /// From where to where above the finger the side is straight.
    pub fn edge(&self) -> (Length, Length) {
        (self.relief, self.height - self.dome)
    }

    /// How far the side of the band has receded at a height above the finger; at most half the width.
    ///
    /// b(z) = w/2 - sqrt(R^2 - (R - d + z')^2), R = (w^2/4 + d^2) / 2d, z' how far z lies beyond the edge, d the dome
    /// there (or the relief, inside). Millimetres. Source: geometry.
    pub fn recess(&self, z: Length) -> Length {
        let (from, to) = self.edge();
        let (arc, beyond) = if z > to { (self.dome, z - to) } else { (self.relief, from - z) };
        let half = self.width.mm() / 2.0;
        let beyond = beyond.min(arc).mm();
        if beyond <= 0.0 {
            return Length::ZERO;
        }
        let arc = arc.mm();
        let radius = radius(half, arc);
        let from_centre = radius - arc + beyond;
        Length::from_mm(half - (radius * radius - from_centre * from_centre).max(0.0).sqrt())
    }

    /// How far below its crown the outside lies at a distance from the middle.
    pub(crate) fn drop(&self, from_middle: Length) -> Length {
        sagitta(self.width.mm() / 2.0, self.dome.mm(), from_middle.mm())
    }

    /// How far above the finger the inside lies at a distance from the middle.
    pub(crate) fn rise(&self, from_middle: Length) -> Length {
        sagitta(self.width.mm() / 2.0, self.relief.mm(), from_middle.mm())
    }

    /// The same section at another height, if it has an edge there.
    pub fn at_height(&self, height: Length) -> Result<Section, SectionError> {
        let Section { profile, width, dome, relief, .. } = *self;
        Section::new(&SectionInputs { profile, width, height, dome: Some(dome), relief: Some(relief) })
    }

    /// The outline, all round: across from the middle of the band, and up from the finger. Each arc in `steps` pieces.
    pub fn outline(&self, steps: u16) -> Vec<(Length, Length)> {
        let half = self.width * 0.5;
        let steps = i32::from(steps.max(1));
        let across = |i: i32| half * (f64::from(2 * i - steps) / f64::from(steps));
        let outside = (0..=steps).map(|i| (across(i), self.height - self.drop(across(i))));
        let inside = (0..=steps).rev().map(|i| (across(i), self.rise(across(i))));
        outside.chain(inside).collect()
    }
}

/// The radius of the arc over twice `half`, as high as `arc`.
fn radius(half: f64, arc: f64) -> f64 {
    (half * half + arc * arc) / (2.0 * arc)
}

/// How far an arc has fallen at a distance from its middle.
fn sagitta(half: f64, arc: f64, from_middle: f64) -> Length {
    if arc <= 0.0 {
        return Length::ZERO;
    }
    let radius = radius(half, arc);
    let at = from_middle.abs().min(half);
    Length::from_mm(radius - (radius * radius - at * at).max(0.0).sqrt())
}
