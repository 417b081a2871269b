//! A gauge printed on paper: what a print that is not true does to it, and what makes it right again.

use super::glass::EYE;
use super::measure::{Circumference, Diameter, Length};
use std::f64::consts::PI;

/// The paper that is printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    #[default]
    A4,
    A6,
}

impl Paper {
    pub const ALL: [Paper; 2] = [Paper::A4, Paper::A6];

    /// Its word in an address.
    pub fn code(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::A6 => "a6",
        }
    }

    pub fn from_code(code: &str) -> Option<Paper> {
        Paper::ALL.into_iter().find(|paper| paper.code() == code)
    }
}

/// The strips of the gauge are cut out as wide as this: a finger reads as wide as what it was read with.
pub const WIDE_STRIP: Length = Length::tenthousandths(8_0000);
pub const NARROW_STRIP: Length = Length::tenthousandths(4_0000);

/// The line that is printed to be measured with a ruler.
pub const CONTROL: Length = Length::tenthousandths(100_0000);

/// How thick printing paper is: 0.1 mm for 80 g a square metre, from memory.
pub const PAPER: Length = Length::tenthousandths(1_000);

/// What a ruler tells of the line, at best: to a quarter of a millimetre. House rule.
const RULER: Length = Length::tenthousandths(2_500);

/// What a strip that is wrapped by hand reads by, one standard deviation: it gives, it slants, and its end is read to
/// half a millimetre. House rule.
const BY_HAND: Length = Length::tenthousandths(5_000);

/// From here on a print is to be made again: 3 mm of 100. House rule: it was made to fit, and may be off unevenly.
const AGAIN: Length = Length::tenthousandths(3_0000);

/// A print whose control line was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Print {
    line: Length,
}

/// What is to be done about a print.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// As true as a ruler can tell.
    True,
    /// Off by so much in 100 mm, and put right by reckoning.
    PutRight { off: Length },
    /// Print it again at 100 %.
    PrintAgain { off: Length },
}

impl Print {
    /// A print on which the line of 100 mm measures so much. The field accepts 50 to 150 mm.
    pub fn new(line: Length) -> Print {
        Print { line }
    }

    pub fn verdict(&self) -> Verdict {
        let off = self.line - CONTROL;
        if off.abs() <= RULER {
            Verdict::True
        } else if off.abs() <= AGAIN {
            Verdict::PutRight { off }
        } else {
            Verdict::PrintAgain { off }
        }
    }

    /// The finger that the strip was wrapped round and read so much.
    ///
    /// C = read x line / 100 mm - pi x 0.1 mm: the strip lies round the finger with half its thickness on either side of
    /// its own middle. Millimetres. Source: proportion and geometry; the thickness of paper is from memory.
    ///
    /// ```
    /// use bandwright::trade::{measure::{Circumference, Length}, paper::Print};
    /// let print = Print::new(Length::from_mm(99.0));
    /// assert!((print.finger(Circumference::from_mm(54.0)).mm() - (53.46 - 0.314)).abs() < 0.001);
    /// ```
    pub fn finger(&self, read: Circumference) -> Circumference {
        Circumference::from_mm(read.mm() * self.scale() - PI * PAPER.mm())
    }

    /// The ring that fits a circle of so much.
    ///
    /// d = circle x line / 100 mm. Millimetres. Source: proportion.
    ///
    /// ```
    /// use bandwright::trade::{measure::{Diameter, Length}, paper::Print};
    /// assert_eq!(Print::new(Length::from_mm(101.0)).ring(Diameter::from_mm(17.0)).mm(), 17.17);
    /// ```
    pub fn ring(&self, circle: Diameter) -> Diameter {
        Diameter::from_mm(circle.mm() * self.scale())
    }

    /// How sure a finger is that a strip read as so much, one standard deviation, round the inside.
    ///
    /// u^2 = 0.5^2 + r^2: the strip by hand, and for the line r = C x 0.25 / 100 / sqrt 3, the ruler either way.
    /// Millimetres. Source: propagation of error (GUM, JCGM 100:2008, 4.3.7, cited from memory); the 0.5 mm and the
    /// 0.25 mm are house rules.
    pub fn finger_u(&self, finger: Circumference) -> Length {
        by_print(BY_HAND.mm(), finger)
    }

    /// The same of a ring that a circle was found for: u^2 = (pi x 0.1)^2 + r^2, by eye as on the glass of a screen.
    pub fn ring_u(&self, ring: Circumference) -> Length {
        by_print(PI * EYE.mm(), ring)
    }

    fn scale(&self) -> f64 {
        self.line.mm() / CONTROL.mm()
    }
}

fn by_print(read: f64, of: Circumference) -> Length {
    let line = of.mm() * (RULER.mm() / CONTROL.mm()) / 3f64.sqrt();
    Length::from_mm(read.hypot(line))
}

/// What a print that is one in a hundred too large or too small makes of a size: 0.54 mm of 54.
pub fn one_percent(of: Circumference) -> Length {
    of.0 * 0.01
}
