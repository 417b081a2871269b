//! A ring on the glass of a screen: how large a pixel is, by a thing of known size, and how sure that makes a size.
//!
//! A screen does not tell how large it is. Something whose size is published is laid on it and an outline matched to
//! it; from then on so many pixels are so many millimetres, on that screen and at that magnification.

use super::fit::EIGHT_IN_TEN;
use super::limits::{self, Amount, Limit};
use super::measure::Standing::{self, FromMemory, Published};
use super::measure::{Circumference, Diameter, Length};
use std::f64::consts::PI;

/// A length on the screen, in whole thousandths of the pixels that a page reckons in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pixels(pub i64);

/// How many pixels of the screen there are to one of the page's, in whole thousandths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ratio(pub i64);

impl Pixels {
    pub fn new(pixels: f64) -> Pixels {
        Pixels((pixels * 1_000.0).round() as i64)
    }

    pub fn of_page(self) -> f64 {
        self.0 as f64 / 1_000.0
    }
}

impl Ratio {
    pub fn new(ratio: f64) -> Ratio {
        Ratio((ratio * 1_000.0).round() as i64)
    }

    /// The smallest step that the screen can show.
    ///
    /// ```
    /// use bandwright::trade::glass::{Pixels, Ratio};
    /// assert_eq!(Ratio::new(3.0).step(), Pixels(333));
    /// ```
    pub fn step(self) -> Pixels {
        Pixels(1_000_000 / self.0.clamp(*RATIOS.start(), *RATIOS.end()))
    }
}

/// Something whose size is published, to calibrate a screen by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    CardShort,
    CardLong,
    TwoEuro,
    OneEuro,
    TwoPence,
    TenPence,
    UsQuarter,
}

/// Its row: the code that the phone keeps and never changes, how wide it is, by how much it may be off, and by whom
/// that is published.
pub struct Row {
    pub thing: Thing,
    pub code: &'static str,
    pub across: Length,
    pub off_by: Length,
    pub standing: Standing,
    pub source: &'static str,
}

#[rustfmt::skip]
const ROWS: [Row; 7] = [
    row(Thing::CardShort, "card-short", super::card::SHORT_SIDE, 600, Published, "ISO/IEC 7810, ID-1"),
    row(Thing::CardLong, "card-long", super::card::LONG_SIDE, 1_300, Published, "ISO/IEC 7810, ID-1"),
    row(Thing::TwoEuro, "euro-2", mm(25_7500), 1_000, Published, "Regulation (EU) 729/2014, annex I"),
    row(Thing::OneEuro, "euro-1", mm(23_2500), 1_000, Published, "Regulation (EU) 729/2014, annex I"),
    row(Thing::TwoPence, "pence-2", mm(25_9000), 1_000, Published, "secondary sources quoting the mint"),
    row(Thing::TenPence, "pence-10", mm(24_5000), 1_000, Published, "secondary sources quoting the mint"),
    row(Thing::UsQuarter, "us-quarter", mm(24_2600), 1_000, FromMemory, "United States Mint"),
];

const _: () = {
    let mut place = 0;
    while place < ROWS.len() {
        assert!(ROWS[place].thing as usize == place);
        place += 1;
    }
    assert!(Thing::UsQuarter as usize + 1 == ROWS.len());
};

impl Thing {
    pub const ALL: [Thing; ROWS.len()] = [
        Thing::CardShort,
        Thing::CardLong,
        Thing::TwoEuro,
        Thing::OneEuro,
        Thing::TwoPence,
        Thing::TenPence,
        Thing::UsQuarter,
    ];

    pub fn row(self) -> &'static Row {
        // The assertion above holds when it is compiled: every thing has its row at its own place.
        &ROWS[self as usize]
    }

    pub fn from_code(code: &str) -> Option<Thing> {
        Thing::ALL.into_iter().find(|thing| thing.row().code == code)
    }

    pub fn is_card(self) -> bool {
        matches!(self, Thing::CardShort | Thing::CardLong)
    }

    /// Whether it goes into so much room on any screen there is.
    ///
    /// room >= size x 165 pixels an inch, the densest that pages are shown at. Pages' pixels. Source: phones in use have
    /// 140 to 163, screens on desks 90 to 130, from memory.
    ///
    /// ```
    /// use bandwright::trade::glass::{Pixels, Thing};
    /// assert!(Thing::CardShort.fits(Pixels::new(352.0)) && !Thing::CardShort.fits(Pixels::new(312.0)));
    /// ```
    pub fn fits(self, room: Pixels) -> bool {
        room.of_page() >= self.row().across.mm() / 25.4 * DENSEST
    }

    /// What its outline starts with: as a phone would show it.
    pub fn usual(self) -> Pixels {
        Pixels::new(self.row().across.mm() / 25.4 * USUAL)
    }
}

/// Pages' pixels an inch: of phones for which a page is drawn smallest, and as they usually are. From memory.
const DENSEST: f64 = 165.0;
const USUAL: f64 = 150.0;

/// Pixels of the screen for one of the page, in thousandths: a quarter to sixteen. House rule: wider than any phone with
/// a page enlarged or made smaller as far as browsers do.
const RATIOS: std::ops::RangeInclusive<i64> = 250..=16_000;

/// No screen shows a page larger or smaller than this: millimetres a pixel. House rule: twice as fine as the finest phone,
/// and twice as coarse as the 96 pixels an inch that style sheets count with.
const PIXEL_LEAST: f64 = 0.08;
const PIXEL_MOST: f64 = 0.60;

/// What an eye sets two edges apart by, one standard deviation: 0.1 mm. House rule: half a minute of arc at 30 cm for
/// each edge is 0.04 mm, and rings have round edges and lie above the picture by the thickness of the glass.
pub const EYE: Length = mm(1_000);

/// A screen that was calibrated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Screen {
    thing: Thing,
    span: Pixels,
    ratio: Ratio,
}

/// A ring that a circle was matched to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measured {
    pub across: Diameter,
    pub round: Circumference,
    /// How sure it is round the inside, one standard deviation, and what eight in ten lie between.
    pub u: Length,
    pub low: Circumference,
    pub high: Circumference,
    /// Of that the match, and the calibration.
    pub u_match: Length,
    pub u_screen: Length,
}

impl Screen {
    /// A screen on which the thing was so many pixels wide; none if no screen is like that.
    pub fn new(thing: Thing, span: Pixels, ratio: Ratio) -> Option<Screen> {
        let pixel = thing.row().across.mm() / span.of_page();
        let plausible = (PIXEL_LEAST..=PIXEL_MOST).contains(&pixel) && RATIOS.contains(&ratio.0);
        plausible.then_some(Screen { thing, span, ratio })
    }

    pub fn thing(&self) -> Thing {
        self.thing
    }

    pub fn span(&self) -> Pixels {
        self.span
    }

    /// How long so many pixels are.
    ///
    /// length = pixels x size of the thing / its pixels. Millimetres. Source: proportion.
    ///
    /// ```
    /// use bandwright::trade::{glass::{Pixels, Ratio, Screen, Thing}, measure::Length};
    /// let screen = Screen::new(Thing::CardShort, Pixels::new(269.9), Ratio::new(3.0)).unwrap();
    /// assert_eq!(screen.length(Pixels::new(86.0)), Length::from_mm(17.2));
    /// ```
    pub fn length(&self, pixels: Pixels) -> Length {
        Length::from_mm(pixels.of_page() * self.pixel())
    }

    /// How many pixels so long a thing is.
    pub fn pixels(&self, length: Length) -> Pixels {
        Pixels::new(length.mm() / self.pixel())
    }

    /// The size of one pixel of the screen itself: nothing finer can be shown.
    pub fn finest(&self) -> Length {
        Length::from_mm(self.finest_mm())
    }

    /// The ring that a circle of so many pixels fills; none if no ring is that wide.
    ///
    /// d = pixels x s, C = pi d. u_match^2 = 0.1^2 + p^2 / 3, p one pixel of the screen either way; for the calibration
    /// the same, and t^2 / 3 for a thing that may be off by t, in proportion d / size: u = pi sqrt(u_match^2 +
    /// (d / size)^2 (u_match^2 + t^2 / 3)). Millimetres; 36 to 80 round the inside. Source: propagation of error (GUM,
    /// JCGM 100:2008, 4.3.7 and 5.1.2, cited from memory); the 0.1 mm are a house rule.
    ///
    /// ```
    /// use bandwright::trade::glass::{Pixels, Ratio, Screen, Thing};
    /// let screen = Screen::new(Thing::CardShort, Pixels::new(269.9), Ratio::new(3.0)).unwrap();
    /// let ring = screen.measured(Pixels::new(86.0)).unwrap();
    /// assert_eq!(ring.across.mm(), 17.2);
    /// assert!((ring.u.mm() - 0.355).abs() < 0.001);
    /// ```
    pub fn measured(&self, circle: Pixels) -> Option<Measured> {
        let across = Diameter(self.length(circle));
        let round = across.circumference();
        if !limits::of(Limit::Circumference).holds(Amount::Length(round.0)) {
            return None;
        }
        let pixel = self.finest_mm();
        let one = EYE.mm() * EYE.mm() + pixel * pixel / 3.0;
        let row = self.thing.row();
        let screen = (one + row.off_by.mm() * row.off_by.mm() / 3.0).sqrt() * across.mm() / row.across.mm();
        let u = Length::from_mm(PI * (one + screen * screen).sqrt());
        Some(Measured {
            across,
            round,
            u,
            low: Circumference(round.0 - u * EIGHT_IN_TEN),
            high: Circumference(round.0 + u * EIGHT_IN_TEN),
            u_match: Length::from_mm(PI * one.sqrt()),
            u_screen: Length::from_mm(PI * screen),
        })
    }

    /// The smallest and the largest circle that a ring can fill.
    pub fn circles(&self) -> (Pixels, Pixels) {
        let range = limits::of(Limit::Circumference);
        let end = |amount| match amount {
            Amount::Length(round) => self.pixels(Circumference(round).diameter().0),
            _ => Pixels::default(),
        };
        // Rounded inwards, so that both ends are rings.
        (Pixels(end(range.least).0 + 1), Pixels(end(range.most).0 - 1))
    }

    fn pixel(&self) -> f64 {
        self.thing.row().across.mm() / self.span.of_page()
    }

    fn finest_mm(&self) -> f64 {
        self.pixel() * 1_000.0 / self.ratio.0 as f64
    }
}

const fn mm(tenthousandths: i64) -> Length {
    Length::tenthousandths(tenthousandths)
}

const fn row(
    thing: Thing,
    code: &'static str,
    across: Length,
    off_by: i64,
    standing: Standing,
    source: &'static str,
) -> Row {
    Row { thing, code, across, off_by: mm(off_by), standing, source }
}
