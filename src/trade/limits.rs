//! The table of accepted ranges: what a figure may be, an example of it, and why.
//!
//! A range is where a figure stops being plausible, not where it stops being wise: advice is for the calculators.

use super::measure::Standing::{self, CommonPractice, Derived, FromMemory};
use super::measure::{Length, Percent};

/// A figure that people enter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Limit {
    // lengths
    /// How far it is round the inside of a ring.
    Circumference,
    /// Of the band to be made.
    BandWidth,
    /// Of the gauge the finger was read with.
    GaugeWidth,
    /// How thick a try-on band is.
    TryOnHeight,
    /// Of a ring already owned, at three and nine o'clock or at the top.
    RingWidth,
    /// Of the finger, on the palm side, from the web to the crease of the joint.
    FreeLength,
    /// Between two rings of a stack.
    GapBetweenRings,
    /// From the finger to the highest point of a ring's or a band's outside.
    RingHeight,
    /// How far a domed outside rises from its edges.
    DomeHeight,
    /// How far a head reaches over one side of its shank.
    HeadReach,
    /// Of a head's underside above the finger.
    HeadUnderside,
    /// Across the inside of a ring.
    InsideDiameter,
    /// Free under a head.
    Clearance,
    /// How far the heights of neighbours may differ.
    HeightDifference,
    /// How far the edge of a domed bore stands back.
    EdgeRelief,
    /// From one mark or ring of a gauge to the next, of circumference.
    GaugeStep,
    /// A gauge's own error, of circumference.
    GaugeError,
    /// A ring stick's taper: circumference for each millimetre of its length.
    StickTaper,
    /// Circumference for each millimetre of width, k.
    WidthFactor,
    /// How sure k is.
    WidthFactorSpread,
    /// Circumference for each millimetre of a domed bore's room, eta.
    BoreFactor,
    /// How sure eta is.
    BoreFactorSpread,
    /// For cold or warm hands.
    ConditionShift,
    /// How sure that is.
    ConditionSpread,
    /// A shift that the jeweller sets, up or down.
    OwnShift,
    /// The line of a printed gauge, by a ruler.
    ControlLine,
    // shares
    /// Of the free length, where a stack stops being roomy or full.
    StackShare,
    /// Of being in time, that an order-by date is to have.
    ConfidenceShare,
    /// Of something that may happen: a busy season, a change of size.
    ChanceShare,
    /// By how much work takes longer in a busy season.
    LongerShare,
    // whole numbers
    /// Working days of one step.
    LeadTimeDays,
    /// Days of the calendar: between the band in hand and the wedding, or the try-on.
    DaysInHand,
    // lengths of texts
    /// A name.
    NameText,
    /// One line: a place, where met.
    LineText,
    /// A note of several lines.
    NoteText,
}

/// An amount with its unit; amounts of different units never compare as within each other's range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Amount {
    Length(Length),
    Percent(Percent),
    Days(Whole),
    Characters(Whole),
}

/// A whole number of days or characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Whole(pub u16);

/// One row of the table: from `least` to `most`, both included, with something that people might enter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    pub limit: Limit,
    pub least: Amount,
    pub most: Amount,
    pub example: Amount,
    pub standing: Standing,
    pub source: &'static str,
}

impl Range {
    /// Whether an amount lies in the range; an amount of another unit never does.
    pub fn holds(&self, amount: Amount) -> bool {
        (self.least..=self.most).contains(&amount)
    }
}

/// The accepted range of a figure.
///
/// ```
/// use bandwright::trade::limits::{self, Amount, Limit};
/// use bandwright::trade::measure::Length;
/// assert!(limits::of(Limit::BandWidth).holds(Amount::Length(Length::from_mm(2.5))));
/// ```
pub fn of(limit: Limit) -> &'static Range {
    // The assertion below the table holds when it is compiled: every limit has its row at its own place.
    &ROWS[limit as usize]
}

/// The whole table, in the order of [`Limit`].
pub fn all() -> &'static [Range] {
    &ROWS
}

#[rustfmt::skip]
const ROWS: [Range; 35] = [
    row(Limit::Circumference, mm(36_0000, 80_0000, 54_0000), CommonPractice, "US 0 to UK Z+9; ISO sticks carry 41 to 76"),
    row(Limit::BandWidth, mm(1_0000, 20_0000, 2_5000), CommonPractice, "wire of 1 mm to a cigar band"),
    row(Limit::GaugeWidth, mm(1_0000, 15_0000, 3_0000), CommonPractice, "narrow and wide gauge sets"),
    row(Limit::TryOnHeight, mm(5000, 8_0000, 1_8000), CommonPractice, "a thin gauge to a signet"),
    row(Limit::RingWidth, mm(5000, 25_0000, 2_6000), CommonPractice, "the thinnest shank to the widest top"),
    row(Limit::FreeLength, mm(10_0000, 45_0000, 24_0000), FromMemory, "20 to 28 mm is usual"),
    row(Limit::GapBetweenRings, mm(0, 2_0000, 2000), CommonPractice, "0.2 mm each is usual"),
    row(Limit::RingHeight, mm(5000, 8_0000, 1_8000), CommonPractice, "a worn shank to a signet; bands are made from 1.2 mm up"),
    row(Limit::DomeHeight, mm(0, 4_0000, 5000), CommonPractice, "an eighth of the width is usual"),
    row(Limit::HeadReach, mm(0, 10_0000, 8000), CommonPractice, "flush with the shank to a halo of 20 mm and more"),
    row(Limit::HeadUnderside, mm(0, 12_0000, 1_5000), CommonPractice, "on the finger to a tall cathedral setting"),
    row(Limit::InsideDiameter, mm(11_4000, 25_5000, 17_2000), Derived, "36 to 80 mm round the inside"),
    row(Limit::Clearance, mm(0, 1_0000, 2000), CommonPractice, "0.2 mm is usual"),
    row(Limit::HeightDifference, mm(0, 2_0000, 4000), CommonPractice, "0.4 mm is usual"),
    row(Limit::EdgeRelief, mm(0, 1_0000, 2800), Derived, "a dome of radius 16 mm, capped at 0.30 mm, is the default"),
    row(Limit::GaugeStep, mm(1000, 6_0000, 6250), CommonPractice, "a fine mark to two whole sizes; half a UK letter is 0.625 mm"),
    row(Limit::GaugeError, mm(0, 1_0000, 1000), CommonPractice, "less than half a US size of circumference"),
    row(Limit::StickTaper, mm(0, 6000, 2190), Derived, "ISO 8653: 41 to 76 on 160 mm is 0.219"),
    row(Limit::WidthFactor, mm(0, 1_0000, 2500), CommonPractice, "0.25 mm for each mm"),
    row(Limit::WidthFactorSpread, mm(0, 5000, 1000), CommonPractice, "0.10 mm for each mm"),
    row(Limit::BoreFactor, mm(0, 1_0000, 8000), CommonPractice, "0.8 mm for each mm of the room; more than all of it makes no sense"),
    row(Limit::BoreFactorSpread, mm(0, 1_0000, 3000), CommonPractice, "0.3 mm for each mm"),
    row(Limit::ConditionShift, mm(0, 2_0000, 5000), CommonPractice, "about 0.5 mm each way; 1.15 mm after swelling (Siamwala 2018, derived)"),
    row(Limit::ConditionSpread, mm(0, 1_0000, 4000), CommonPractice, "0.4 mm"),
    row(Limit::OwnShift, mm(-5_0000, 5_0000, 5000), CommonPractice, "four UK letters either way"),
    row(Limit::ControlLine, mm(50_0000, 150_0000, 99_5000), CommonPractice, "100 mm, printed at half to one and a half times its size"),
    row(Limit::StackShare, percent(5, 100, 35), CommonPractice, "roomy to 35, full to 50 %: house rule"),
    row(Limit::ConfidenceShare, percent(50, 100, 95), CommonPractice, "less than even is no plan"),
    row(Limit::ChanceShare, percent(0, 100, 10), CommonPractice, "never to always"),
    row(Limit::LongerShare, percent(0, 300, 50), CommonPractice, "half as long again to four times as long"),
    row(Limit::LeadTimeDays, days(0, 260, 15), CommonPractice, "15 to 20 working days are usual; a year's work at most"),
    row(Limit::DaysInHand, days(0, 366, 14), CommonPractice, "14 days leave time for a resize; a year at most"),
    row(Limit::NameText, characters(80), CommonPractice, "longer does not fit a line"),
    row(Limit::LineText, characters(160), CommonPractice, "two lines on a phone"),
    row(Limit::NoteText, characters(4000), CommonPractice, "about two printed pages"),
];

const _: () = {
    let mut place = 0;
    while place < ROWS.len() {
        assert!(ROWS[place].limit as usize == place);
        place += 1;
    }
    assert!(Limit::NoteText as usize + 1 == ROWS.len());
};

type Amounts = (Amount, Amount, Amount);

const fn row(limit: Limit, (least, most, example): Amounts, standing: Standing, source: &'static str) -> Range {
    Range { limit, least, most, example, standing, source }
}

/// In ten-thousandths of a millimetre.
const fn mm(least: i64, most: i64, example: i64) -> Amounts {
    const fn length(value: i64) -> Amount {
        Amount::Length(Length::tenthousandths(value))
    }
    (length(least), length(most), length(example))
}

const fn percent(least: u16, most: u16, example: u16) -> Amounts {
    (Amount::Percent(Percent(least)), Amount::Percent(Percent(most)), Amount::Percent(Percent(example)))
}

const fn days(least: u16, most: u16, example: u16) -> Amounts {
    (Amount::Days(Whole(least)), Amount::Days(Whole(most)), Amount::Days(Whole(example)))
}

const fn characters(most: u16) -> Amounts {
    (Amount::Characters(Whole(1)), Amount::Characters(Whole(most)), Amount::Characters(Whole(most)))
}
