//! Closed days: a workshop's own weekdays and closures laid over its region's holidays, and counting round them.
//!
//! Counting follows numpy: [`Calendar::count`] is `busday_count`, [`Calendar::forward`] is `busday_offset` rolled
//! forward, [`Calendar::back`] is `busday_offset` rolled backward. No walk is longer than [`REACH`].

use super::holidays::{Holiday, HolidayName, Region, in_year};
use super::spread::{CalendarDays, WorkingDays};
use chrono::{Datelike, NaiveDate, Weekday};

/// A set of weekdays.
pub use chrono::WeekdaySet as Weekdays;

/// The working week unless it is set otherwise.
pub const MON_TO_FRI: Weekdays =
    Weekdays::from_array([Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri]);

/// The longest walk from one day to another: thirty years.
pub const REACH: CalendarDays = CalendarDays(10_957);

/// Days on which the workshop is shut, first and last included. What they are called is kept in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Closure {
    from: NaiveDate,
    to: NaiveDate,
    repeats: Repeats,
}

/// Whether a closure comes again every year after its first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Repeats {
    #[default]
    Once,
    /// On the same dates, first and last: Christmas to Epiphany.
    SameDates,
    /// From the same weekday of the month on, for as long: the fortnight from the first Monday in August.
    SameWeekday,
}

/// Whether the workshop works on the region's public holidays.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum OnBankHolidays {
    #[default]
    Closed,
    Works,
}

/// On which days somebody works.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Calendar {
    region: Region,
    on_bank_holidays: OnBankHolidays,
    weekdays: Weekdays,
    closures: Vec<Closure>,
    switched: Vec<(HolidayName, bool)>,
}

/// Why a day is closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Closed {
    /// One of the place's closures, by its place in the calendar's list.
    Closure(usize),
    Holiday(HolidayName),
    /// A weekday on which nobody works there.
    Weekend,
}

/// A closed day and why it is one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ClosedDay {
    pub day: NaiveDate,
    pub why: Closed,
}

/// What is wrong with a calendar, or with what was asked of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CalendarError {
    /// Not one weekday is worked.
    NoWeekdays,
    /// The closure ends before it begins.
    Backwards {
        from: NaiveDate,
        to: NaiveDate,
    },
    /// The closure is longer than a year.
    ClosureTooLong {
        limit: CalendarDays,
    },
    TooManyClosures {
        limit: usize,
    },
    /// No working day within reach of this one.
    NoWorkingDay {
        near: NaiveDate,
    },
    /// The answer lies out of reach.
    TooFar {
        from: NaiveDate,
    },
}

impl Closure {
    pub const LONGEST: CalendarDays = CalendarDays(366);

    /// A closure from its first day to its last.
    pub fn new(from: NaiveDate, to: NaiveDate) -> Result<Closure, CalendarError> {
        match (to - from).num_days() {
            days if days < 0 => Err(CalendarError::Backwards { from, to }),
            days if days >= i64::from(Closure::LONGEST.0) => {
                Err(CalendarError::ClosureTooLong { limit: Closure::LONGEST })
            }
            _ => Ok(Closure { from, to, repeats: Repeats::Once }),
        }
    }

    pub fn from(self) -> NaiveDate {
        self.from
    }

    pub fn to(self) -> NaiveDate {
        self.to
    }

    pub fn repeats(self) -> Repeats {
        self.repeats
    }

    pub fn repeating(self, repeats: Repeats) -> Closure {
        Closure { repeats, ..self }
    }

    pub fn has(self, day: NaiveDate) -> bool {
        let year = day.year();
        let mut years = [Some(year), year.checked_sub(1)].into_iter().flatten();
        years.any(|year| self.in_year(year).is_some_and(|(from, to)| from <= day && day <= to))
    }

    /// When it begins and ends, if it begins in that year. In years without a 29 February the 28th stands for it, as
    /// the first day and as the last; where there is no fifth such weekday of a month, the last one does.
    pub fn in_year(self, year: i32) -> Option<(NaiveDate, NaiveDate)> {
        let from = self.from;
        if year <= from.year() || self.repeats == Repeats::Once {
            return (year == from.year()).then_some((from, self.to));
        }
        match self.repeats {
            Repeats::Once | Repeats::SameDates => {
                let later = year.checked_sub(from.year())?;
                Some((in_later_year(from, later)?, in_later_year(self.to, later)?))
            }
            Repeats::SameWeekday => {
                let nth = |n| NaiveDate::from_weekday_of_month_opt(year, from.month(), from.weekday(), n);
                let begins = nth((from.day0() / 7 + 1) as u8).or(nth(4))?;
                Some((begins, begins.checked_add_signed(self.to - from)?))
            }
        }
    }
}

/// The same date so many years later; of a 29 February the 28th where there is none.
fn in_later_year(day: NaiveDate, later: i32) -> Option<NaiveDate> {
    let year = day.year().checked_add(later)?;
    day.with_year(year).or(NaiveDate::from_ymd_opt(year, day.month(), day.day() - 1))
}

impl Calendar {
    pub const MOST_CLOSURES: usize = 200;

    /// A calendar; one without a working weekday, or with very many closures, is refused.
    pub fn new(
        region: Region,
        on_bank_holidays: OnBankHolidays,
        weekdays: Weekdays,
        closures: Vec<Closure>,
    ) -> Result<Calendar, CalendarError> {
        if weekdays.is_empty() {
            Err(CalendarError::NoWeekdays)
        } else if closures.len() > Calendar::MOST_CLOSURES {
            Err(CalendarError::TooManyClosures { limit: Calendar::MOST_CLOSURES })
        } else {
            Ok(Calendar { region, on_bank_holidays, weekdays, closures, switched: Vec::new() })
        }
    }

    /// Monday to Friday, closed on the region's bank holidays, no closures.
    pub fn usual(region: Region) -> Calendar {
        Calendar {
            region,
            on_bank_holidays: OnBankHolidays::Closed,
            weekdays: MON_TO_FRI,
            closures: Vec::new(),
            switched: Vec::new(),
        }
    }

    /// The same calendar with some holidays switched: on, it is closed on them; off, it works. The others are as usual:
    /// closed, unless the day is one by choice.
    pub fn switching(self, switched: Vec<(HolidayName, bool)>) -> Calendar {
        Calendar { switched, ..self }
    }

    /// Whether it is closed on a holiday.
    pub fn keeps(&self, holiday: Holiday) -> bool {
        let switch = self.switched.iter().find(|(name, _)| *name == holiday.name);
        self.on_bank_holidays == OnBankHolidays::Closed && switch.map_or(!holiday.by_choice, |(_, on)| *on)
    }

    pub fn region(&self) -> Region {
        self.region
    }

    pub fn on_bank_holidays(&self) -> OnBankHolidays {
        self.on_bank_holidays
    }

    pub fn weekdays(&self) -> Weekdays {
        self.weekdays
    }

    pub fn closures(&self) -> &[Closure] {
        &self.closures
    }

    /// Why a day is closed, or nothing if it is worked. A closure is named first, then a holiday, then the weekday.
    pub fn why_closed(&self, day: NaiveDate) -> Option<Closed> {
        Walk::new(self).why_closed(day)
    }

    pub fn is_working(&self, day: NaiveDate) -> bool {
        self.why_closed(day).is_none()
    }

    /// The day itself if it is worked, or else the next one that is.
    pub fn on_or_after(&self, day: NaiveDate) -> Result<NaiveDate, CalendarError> {
        self.working_days(day, NaiveDate::succ_opt).next().ok_or(CalendarError::NoWorkingDay { near: day })
    }

    /// The first working day after a day.
    pub fn after(&self, day: NaiveDate) -> Result<NaiveDate, CalendarError> {
        self.on_or_after(day.succ_opt().ok_or(CalendarError::TooFar { from: day })?)
    }

    /// Whether it works at all within a year after a day. One that is closed from 1 March to 28 February of every year
    /// works on some leap days, and nobody can plan by that.
    pub fn works_in_the_year_after(&self, day: NaiveDate) -> bool {
        self.after(day).is_ok_and(|next| (next - day).num_days() <= Closure::LONGEST.0.into())
    }

    /// The working day that many working days later, from the day itself or the next working one.
    ///
    /// To a jeweller: an order of Saturday starts on Monday (day zero), and one working day later is Tuesday.
    ///
    /// Formula: numpy `busday_offset(day, n, roll='forward')`. Units: working days. Range: [`REACH`].
    /// Source: the numpy reference, checked row by row in the tests.
    ///
    /// ```
    /// use bandwright::trade::dates::{closed::Calendar, holidays::Region, spread::WorkingDays};
    /// let date = |m, d| chrono::NaiveDate::from_ymd_opt(2027, m, d).unwrap();
    /// let calendar = Calendar::usual(Region::EnglandAndWales);
    /// // Thursday before Easter 2027: Friday and Monday are closed.
    /// assert_eq!(calendar.forward(date(3, 25), WorkingDays(1)), Ok(date(3, 30)));
    /// ```
    pub fn forward(&self, day: NaiveDate, by: WorkingDays) -> Result<NaiveDate, CalendarError> {
        let start = self.on_or_after(day)?;
        self.working_days(start, NaiveDate::succ_opt).nth(by.0.into()).ok_or(CalendarError::TooFar { from: day })
    }

    /// The working day that many working days earlier, from the day itself or the last working one before it:
    /// numpy `busday_offset(day, -n, roll='backward')`.
    pub fn back(&self, day: NaiveDate, by: WorkingDays) -> Result<NaiveDate, CalendarError> {
        let mut days = self.working_days(day, NaiveDate::pred_opt);
        let start = days.next().ok_or(CalendarError::NoWorkingDay { near: day })?;
        self.working_days(start, NaiveDate::pred_opt).nth(by.0.into()).ok_or(CalendarError::TooFar { from: day })
    }

    /// The working days from one day up to another, the first included and the last not: numpy `busday_count`.
    /// None if the second day is not after the first.
    pub fn count(&self, from: NaiveDate, to: NaiveDate) -> Result<WorkingDays, CalendarError> {
        if (to - from).num_days() > REACH.0.into() {
            return Err(CalendarError::TooFar { from });
        }
        let days = self.working_days(from, NaiveDate::succ_opt).take_while(|day| *day < to).count();
        u16::try_from(days).map(WorkingDays).map_err(|_| CalendarError::TooFar { from })
    }

    /// Every closed day from one day to another, both included, in order, as far as [`REACH`].
    pub fn closed_days(&self, from: NaiveDate, to: NaiveDate) -> Vec<ClosedDay> {
        let mut walk = Walk::new(self);
        from.iter_days()
            .take(REACH.0.into())
            .take_while(|day| *day <= to)
            .filter_map(|day| walk.why_closed(day).map(|why| ClosedDay { day, why }))
            .collect()
    }

    /// The working days from a day on, the day itself among them if it is one, as far as [`REACH`].
    pub fn working_from(&self, day: NaiveDate) -> impl Iterator<Item = NaiveDate> {
        self.working_days(day, NaiveDate::succ_opt)
    }

    /// The working days from a day on, in the direction of `step`, as far as [`REACH`].
    fn working_days(
        &self,
        from: NaiveDate,
        step: fn(&NaiveDate) -> Option<NaiveDate>,
    ) -> impl Iterator<Item = NaiveDate> {
        let mut walk = Walk::new(self);
        std::iter::successors(Some(from), step)
            .take(usize::from(REACH.0) + 1)
            .filter(move |day| walk.why_closed(*day).is_none())
    }
}

/// A walk over a calendar: keeps the holidays of the year it is in.
struct Walk<'a> {
    calendar: &'a Calendar,
    year: Option<i32>,
    holidays: Vec<Holiday>,
}

impl<'a> Walk<'a> {
    fn new(calendar: &'a Calendar) -> Self {
        Walk { calendar, year: None, holidays: Vec::new() }
    }

    fn why_closed(&mut self, day: NaiveDate) -> Option<Closed> {
        if let Some(index) = self.calendar.closures.iter().position(|closure| closure.has(day)) {
            return Some(Closed::Closure(index));
        }
        if let Some(name) = self.holiday(day) {
            return Some(Closed::Holiday(name));
        }
        if self.calendar.weekdays.contains(day.weekday()) { None } else { Some(Closed::Weekend) }
    }

    fn holiday(&mut self, day: NaiveDate) -> Option<HolidayName> {
        if self.calendar.on_bank_holidays == OnBankHolidays::Works {
            return None;
        }
        if self.year != Some(day.year()) {
            self.year = Some(day.year());
            self.holidays = in_year(self.calendar.region, day.year());
            self.holidays.retain(|holiday| self.calendar.keeps(*holiday));
        }
        self.holidays.iter().find(|holiday| holiday.day == day).map(|holiday| holiday.name)
    }
}

/// Closed days up to a day, without those that are never worked; days in a row for the same reason are one.
pub fn closed_spans(days: &[ClosedDay], until: NaiveDate) -> Vec<(Closed, NaiveDate, NaiveDate)> {
    let mut all: Vec<(Closed, NaiveDate, NaiveDate)> = Vec::new();
    for ClosedDay { day, why } in days.iter().copied().filter(|it| it.day <= until && it.why != Closed::Weekend) {
        match all.last_mut() {
            Some((before, _, last)) if *before == why && last.succ_opt() == Some(day) => *last = day,
            _ => all.push((why, day, day)),
        }
    }
    all
}
