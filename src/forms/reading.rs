//! One reading of a finger: with which gauge, how the hands were, where, and what it said.

use chrono::NaiveDate;

use super::complaint::Complaints;
use super::reader::Reader;
use super::texts::{Key, Texts};
use crate::archive::code::Code;
use crate::book::practice::Practice;
use crate::book::value::{OwnGauge, ReadingTaken, TryOnBand};
use crate::trade::band::Bore;
use crate::trade::fit::constants::STICK_TAPER;
use crate::trade::fit::gauges::{HALF_LETTER, OWN_ERROR, USUAL_SETS};
use crate::trade::fit::{Gauge, GaugeKind, Hands, Place, RINGS_BESIDE_MOST, ReadAt, Sits};
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::sizing::{SizeAsRead, System};
use crate::trade::wearer::Finger;

/// The word for a ring that they wear, in the place of a gauge.
pub const GAUGE_WORN: &str = "worn";

pub const HAND: Key = Key::new("hand");
pub const DIGIT: Key = Key::new("digit");
/// Whether the band goes to this finger, where it was for another one.
pub const MOVES: Key = Key::new("moves");
pub const SIZE: Key = Key::new("size");
pub const SIZE_AS: Key = Key::new("as");
pub const GAUGE: Key = Key::new("gauge");
pub const WORN_WIDTH: Key = Key::new("worn-width");
pub const WORN_BORE: Key = Key::new("worn-bore");
pub const SITS: Key = Key::new("sits");
/// Empty: where the ring touches the stick.
pub const READ_AT: Key = Key::new("read-at");
pub const HANDS: Key = Key::new("hands");
pub const PLACE: Key = Key::new("place");
pub const BESIDE: Key = Key::new("beside");
pub const TAKEN_AT: Key = Key::new("taken-at");
/// What the screen gauge said, and how sure it is: nobody types them.
pub const GLASS: Key = Key::new("glass");
pub const GLASS_OFF: Key = Key::new("glass-off");

/// What was chosen for one reading and holds for the next of the same finger: the gauge in the jeweller's hand, with
/// all that describes it, and how the finger's hands are. A form that fell back to the first gauge and normal hands would
/// misread the next reading in silence.
const HELD_ON: [Key; 5] = [GAUGE, WORN_WIDTH, WORN_BORE, READ_AT, HANDS];

/// A reading of this finger that nobody has typed yet. `gauge` is the word of the gauge that is taken until another is
/// chosen.
pub fn start(finger: Finger, gauge: String) -> Texts {
    Texts::default()
        .with(HAND, finger.hand.code())
        .with(DIGIT, finger.digit.code())
        .with_blank([MOVES, SIZE, SIZE_AS])
        .with(GAUGE, gauge)
        .with_blank([WORN_WIDTH])
        .with(WORN_BORE, Bore::Flat.code())
        .with(SITS, Sits::Right.code())
        .with_blank([READ_AT])
        .with(HANDS, Hands::Normal.code())
        .with(PLACE, Place::Base.code())
        .with_blank([BESIDE, TAKEN_AT, GLASS, GLASS_OFF])
}

/// What the form starts with after a reading was added: of the band's finger, with the gauge and hands of the one before.
pub fn start_after(added: &Texts, finger: Finger) -> Texts {
    let start = start(finger, String::new());
    HELD_ON.into_iter().fold(start, |start, key| start.with(key, added.get(key)))
}

/// What is known while somebody types.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// The gauges at hand, each with its word.
    pub gauges: Vec<(String, OwnGauge)>,
    pub first_system: System,
    pub today: NaiveDate,
    /// What a ring that they wear is called where it stands for the gauge: read on a stick, and measured on the glass.
    pub worn_on_stick: String,
    pub worn_on_glass: String,
}

/// The jeweller's own gauges, each with its id for a word; while there are none, the usual sets under these names.
pub fn at_hand(practice: Practice<'_>, usual: [&str; USUAL_SETS.len()]) -> Vec<(String, OwnGauge)> {
    let own: Vec<_> = practice.gauges().into_iter().map(|(item, own)| (item.to_string(), own.clone())).collect();
    if !own.is_empty() {
        return own;
    }
    let named = |(name, gauge): (&str, Gauge)| {
        (name.to_owned(), OwnGauge { name: name.to_owned(), gauge, calibration: Vec::new() })
    };
    usual.into_iter().zip(USUAL_SETS).map(named).collect()
}

/// Reads the form.
pub fn read(texts: &Texts, known: &Known) -> Result<ReadingTaken, Complaints> {
    let mut form = Reader::new(texts);
    let size = form.meant_size(SIZE, SIZE_AS, known.first_system);
    let beside = form.widths(BESIDE, RINGS_BESIDE_MOST);
    let at = form.optional_time(TAKEN_AT);
    let is_worn = form.text(GAUGE) == GAUGE_WORN;
    let gauge = if is_worn { worn_ring(&mut form, texts, known) } else { picked(texts, &known.gauges).cloned() };
    let taken = (|| {
        Some(ReadingTaken {
            size: SizeAsRead { typed: form.text(SIZE).trim().to_owned(), ..size? },
            finger: finger(texts)?,
            place: form.choice(PLACE)?,
            gauge: gauge?,
            read_at: form.choice(READ_AT).unwrap_or(touches(texts, &known.gauges)),
            hands: form.choice(HANDS)?,
            beside: beside?,
            sits: if is_worn { Some(form.choice(SITS)?) } else { None },
            taken: known.today,
            at: at?,
            left_out: false,
        })
    })();
    form.checked(taken)
}

/// A band of the tray that fits stands for the gauge: with the hands, place and finger that are chosen in the form.
/// `name` is what it is called.
pub fn try_on(texts: &Texts, known: &Known, band: &TryOnBand, name: String) -> Result<ReadingTaken, Complaints> {
    let mut form = Reader::new(texts);
    let beside = form.widths(BESIDE, RINGS_BESIDE_MOST);
    let gauge = of_half_letters(GaugeKind::RingSet, band.width, band.bore, OWN_ERROR);
    let taken = (|| {
        Some(ReadingTaken {
            size: band.size.clone(),
            finger: finger(texts)?,
            place: form.choice(PLACE)?,
            gauge: OwnGauge { name, gauge, calibration: Vec::new() },
            read_at: ReadAt::right_for(band.bore),
            hands: form.choice(HANDS)?,
            beside: beside?,
            sits: None,
            taken: known.today,
            at: None,
            left_out: false,
        })
    })();
    form.checked(taken)
}

/// The finger that is chosen in the form.
pub fn finger(texts: &Texts) -> Option<Finger> {
    let form = Reader::new(texts);
    Some(Finger { hand: form.choice(HAND)?, digit: form.choice(DIGIT)? })
}

/// The word for whether the band goes to this finger. It names the finger: another one is asked about anew.
pub fn moves_code(moves: bool, to: Finger) -> String {
    format!("{}-{}-{}", if moves { "yes" } else { "no" }, to.hand.code(), to.digit.code())
}

/// Whether the band goes to the finger of the form: by itself while none is chosen, by a word where it is another one.
/// None while nobody has said.
pub fn moves(texts: &Texts, chosen: Option<Finger>) -> Option<bool> {
    let here = finger(texts)?;
    if chosen.is_none_or(|chosen| chosen == here) {
        return Some(chosen.is_none());
    }
    [true, false].into_iter().find(|moves| texts.get(MOVES) == moves_code(*moves, here))
}

fn picked<'a>(texts: &Texts, gauges: &'a [(String, OwnGauge)]) -> Option<&'a OwnGauge> {
    gauges.iter().find(|(word, _)| word == texts.get(GAUGE)).map(|(_, own)| own)
}

/// Where on a stick the gauge, or the ring they wear, touches by its inside.
pub fn touches(texts: &Texts, gauges: &[(String, OwnGauge)]) -> ReadAt {
    let worn = || Bore::from_code(texts.get(WORN_BORE)).unwrap_or(Bore::Flat);
    ReadAt::right_for(picked(texts, gauges).map_or_else(worn, |own| own.gauge.bore))
}

/// Whether the size is read on a stick.
pub fn is_on_stick(texts: &Texts, gauges: &[(String, OwnGauge)]) -> bool {
    match picked(texts, gauges) {
        Some(own) => matches!(own.gauge.kind, GaugeKind::Stick { .. }),
        None => texts.get(GAUGE) == GAUGE_WORN && on_glass(texts).is_none(),
    }
}

/// How sure the screen gauge was of the size; none if it did not say this one.
pub fn on_glass(texts: &Texts) -> Option<Length> {
    let glass = texts.get(GLASS);
    let same = !glass.is_empty() && texts.get(SIZE) == glass;
    texts.get(GLASS_OFF).parse().ok().filter(|_| same).map(Length::tenthousandths)
}

/// A ring that was measured on the glass, as the texts of one that they wear.
pub fn from_glass(size: String, off: Length) -> Texts {
    Texts::default()
        .with(GAUGE, GAUGE_WORN)
        .with_blank([SIZE_AS])
        .with(GLASS, size.clone())
        .with(GLASS_OFF, off.in_tenthousandths().to_string())
        .with(SIZE, size)
}

/// A ring that they wear stands for the gauge; its size is read on a stick, or was on the glass.
fn worn_ring(form: &mut Reader, texts: &Texts, known: &Known) -> Option<OwnGauge> {
    let width = form.length(WORN_WIDTH, Limit::GaugeWidth)?;
    let bore = form.choice(WORN_BORE)?;
    let (kind, own_error, name) = match on_glass(texts) {
        Some(off) => (GaugeKind::RingSet, off, &known.worn_on_glass),
        None => (GaugeKind::Stick { taper: STICK_TAPER.value }, OWN_ERROR, &known.worn_on_stick),
    };
    let gauge = of_half_letters(kind, width, bore, own_error);
    Some(OwnGauge { name: name.clone(), gauge, calibration: Vec::new() })
}

fn of_half_letters(kind: GaugeKind, width: Length, bore: Bore, own_error: Length) -> Gauge {
    Gauge { kind, width, bore, relief: None, step: HALF_LETTER, own_error }
}
