//! What the bands that have been worn say of the figures of the fit.

use super::couple::Couple;
use super::field::Field;
use super::fit_basis::{FitBasis, FitRules};
use super::practice::Practice;
use super::record::Record;
use crate::trade::fit::{Worn, WornBand, worn_band};
use crate::trade::wearer::Wearer;

/// The couple as it stood when the order size was settled: what was read or chosen since says nothing of a band that
/// was made before. None without a settled size.
fn as_settled(couple: Couple<'_>, who: Wearer) -> Option<Record> {
    let record = couple.0;
    let place = record.touched(|field| *field == Field::OrderSize(who)).max()?;
    Some(Record::of(record.id, record.kind, record.changes()[..=place].to_vec()))
}

/// What every band says that has been worn: of the couples without the invented ones.
pub fn bands_worn<'a>(couples: impl Iterator<Item = Couple<'a>>, practice: Practice<'_>) -> Vec<WornBand> {
    let rules = FitRules::of(practice);
    let mut all = Vec::new();
    for couple in couples.filter(|couple| !couple.is_example()) {
        for who in Wearer::BOTH {
            let Some(fitted) = couple.fitted(who) else { continue };
            let then = as_settled(couple, who);
            let basis = FitBasis::of(then.as_ref().map_or(couple, Couple), who);
            let Some(inputs) = basis.inputs(&rules) else { continue };
            let in_stack = couple.order_size(who).is_none_or(|size| size.in_stack);
            let worn = if in_stack { Worn::InStack } else { Worn::Alone };
            all.extend(worn_band(&inputs, worn, fitted.size.circumference()).ok().flatten());
        }
    }
    all
}
