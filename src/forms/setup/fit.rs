//! The constants of the order size: the jeweller's own, where they have set any.

use crate::book::change::Write;
use crate::book::practice::{Practice, customary};
use crate::book::settings;
use crate::book::value::Constant;
use crate::forms::complaint::Complaints;
use crate::forms::reader::Reader;
use crate::forms::texts::{Key, Texts};
use crate::forms::write;
use crate::trade::fit::Learned;
use crate::trade::limits::{self, Amount, Limit};
use crate::trade::measure::Length;

/// The field of a constant.
pub const fn key(of: Constant) -> Key {
    Key::new(match of {
        Constant::Width => "fit-width",
        Constant::WidthSpread => "fit-width-spread",
        Constant::Bore => "fit-bore",
        Constant::BoreSpread => "fit-bore-spread",
        Constant::Cold => "fit-cold",
        Constant::Warm => "fit-warm",
        Constant::HandsSpread => "fit-hands-spread",
        Constant::NormalSpread => "fit-normal-spread",
        Constant::Offset => "fit-offset",
        Constant::OffsetSpread => "fit-offset-spread",
    })
}

/// Empty where nothing of one's own is set.
pub fn start(practice: Practice<'_>) -> Texts {
    let text = |of| write::optional_mm(practice.constant(of).map(|value| asked(of, value)));
    Constant::ALL.into_iter().fold(Texts::default(), |texts, of| texts.with(key(of), text(of)))
}

/// Reads the form; what is empty is as usual.
pub fn read(texts: &Texts) -> Result<Vec<Write>, Complaints> {
    let mut form = Reader::new(texts);
    let mut one = |of| {
        let usual = customary(of).value;
        let typed = form.optional_length(key(of), limit(of))?;
        let value = typed.map_or(usual, |it| if of == Constant::Warm { -it } else { it });
        Some(settings::constant(of).unless_usual(value, usual))
    };
    // All of them are looked at, so that all complaints show at once.
    let writes: Vec<Option<Write>> = Constant::ALL.into_iter().map(&mut one).collect();
    form.checked(writes.into_iter().collect())
}

/// A constant with its value.
pub type Figure = (Constant, Length);

/// What the bands that were worn say: each constant with its give or take.
pub fn learned(found: &Learned) -> [(Figure, Figure); 3] {
    [
        ((Constant::Width, found.width.value), (Constant::WidthSpread, found.width.sd)),
        ((Constant::Bore, found.bore.value), (Constant::BoreSpread, found.bore.sd)),
        ((Constant::Offset, found.offset.value), (Constant::OffsetSpread, found.offset.sd)),
    ]
}

/// What is written down to use what was learned; none where the form would not take all of it.
pub fn use_learned(found: &Learned) -> Option<Vec<Write>> {
    let figures = || learned(found).into_iter().flat_map(|(value, sd)| [value, sd]);
    let is_accepted = |(of, value): Figure| limits::of(limit(of)).holds(Amount::Length(value));
    let write = |(of, value): Figure| settings::constant(of).write(Some(value));
    figures().all(is_accepted).then(|| figures().map(write).collect())
}

/// A shift down for warm hands is kept below zero and asked for without its sign.
fn asked(of: Constant, value: Length) -> Length {
    if of == Constant::Warm { value.abs() } else { value }
}

fn limit(of: Constant) -> Limit {
    match of {
        Constant::Width => Limit::WidthFactor,
        Constant::WidthSpread => Limit::WidthFactorSpread,
        Constant::Bore => Limit::BoreFactor,
        Constant::BoreSpread => Limit::BoreFactorSpread,
        Constant::Cold | Constant::Warm => Limit::ConditionShift,
        Constant::HandsSpread | Constant::NormalSpread | Constant::OffsetSpread => Limit::ConditionSpread,
        Constant::Offset => Limit::OwnShift,
    }
}
