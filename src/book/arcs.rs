//! The dome and the edge relief of a band, where its other figures change.

use super::change::Write;
use super::couple::Band;
use super::field::{BandField, Field};
use super::value::Value;
use crate::trade::band::section::Section;
use crate::trade::measure::Length;
use crate::trade::wearer::Wearer;

/// The dome and the relief that are known of a band of this width, height and profile: they were chosen for exactly
/// that, and for no other.
pub fn known_for(band: &Band, of: &Band) -> (Option<Length>, Option<Length>) {
    let same = (band.width, band.height, band.profile) == (of.width, of.height, of.profile);
    if same { (band.dome, band.relief) } else { (None, None) }
}

/// A straight band made as low as this. It keeps the dome that its height was worked out with: the usual dome of a lower
/// band is flatter, and would not clear the head. Its relief does not depend on the height.
pub fn lowered(wearer: Wearer, band: &Band, section: Option<&Section>, height: Length) -> Vec<Write> {
    let set = |part, length| Write::set(Field::Band(wearer, part), Value::Length(length));
    let domed = section.filter(|section| band.dome.is_none() && section.profile().is_domed_outside());
    let dome = domed.map(|section| set(BandField::Dome, section.dome()));
    std::iter::once(set(BandField::Height, height)).chain(dome).collect()
}
