//! When the wedding is, as exactly as the couple know it.

use chrono::NaiveDate;

/// The wedding: a day, a month, a year, or not known yet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Wedding {
    Day(NaiveDate),
    /// `month` runs from 1 to 12; anything else is a month without days.
    Month {
        year: i32,
        month: u32,
    },
    Year(i32),
    #[default]
    NotYet,
}

impl Wedding {
    /// The earliest day it can be, which is the one that counts; none if nothing is known.
    ///
    /// ```
    /// use bandwright::trade::dates::wedding::Wedding;
    /// let may = Wedding::Month { year: 2027, month: 5 };
    /// assert_eq!(may.earliest(), chrono::NaiveDate::from_ymd_opt(2027, 5, 1));
    /// ```
    pub fn earliest(self) -> Option<NaiveDate> {
        match self {
            Wedding::Day(day) => Some(day),
            Wedding::Month { year, month } => NaiveDate::from_ymd_opt(year, month, 1),
            Wedding::Year(year) => NaiveDate::from_ymd_opt(year, 1, 1),
            Wedding::NotYet => None,
        }
    }

    /// The latest day it can be.
    pub fn latest(self) -> Option<NaiveDate> {
        match self {
            Wedding::Day(day) => Some(day),
            Wedding::Month { year, month } => {
                let day = |day| NaiveDate::from_ymd_opt(year, month, day);
                day(31).or_else(|| day(30)).or_else(|| day(29)).or_else(|| day(28))
            }
            Wedding::Year(year) => NaiveDate::from_ymd_opt(year, 12, 31),
            Wedding::NotYet => None,
        }
    }

    /// The earliest day it can still be, seen from today; none if nothing is known or all of it is past.
    /// A wedding "in 2027" can be today at the earliest once 2027 has begun.
    pub fn earliest_from(self, today: NaiveDate) -> Option<NaiveDate> {
        let latest = self.latest()?;
        if latest < today { None } else { self.earliest().map(|day| day.max(today)) }
    }

    /// Whether all of it lies before today.
    pub fn is_past(self, today: NaiveDate) -> bool {
        self.latest().is_some_and(|latest| latest < today)
    }
}
