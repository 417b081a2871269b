//! Where the work is done: each place has a calendar of its own.

use super::closed::{Calendar, CalendarError, Closure, MON_TO_FRI, OnBankHolidays, Repeats, Weekdays};
use super::holidays::{HolidayName, Region};
use super::lead_times::Step;
use chrono::NaiveDate;

/// Whose days count for a step.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    #[default]
    Workshop,
    AssayOffice,
    Courier,
}

/// The calendars of the three.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Places {
    pub workshop: Calendar,
    pub assay_office: Calendar,
    pub courier: Calendar,
}

/// How another place than the workshop works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PlaceDays {
    pub weekdays: Weekdays,
    pub on_bank_holidays: OnBankHolidays,
    /// Shut from Christmas Eve to New Year's Day, every year.
    pub shut_at_christmas: bool,
}

impl Place {
    pub const ALL: [Place; 3] = [Place::Workshop, Place::AssayOffice, Place::Courier];

    /// Where a step is done.
    pub fn of(step: Step) -> Place {
        match step {
            Step::Making | Step::Stones | Step::Engraving | Step::Resizing => Place::Workshop,
            Step::Marking => Place::AssayOffice,
            Step::Delivery => Place::Courier,
        }
    }

    /// How a place works until the jeweller says otherwise. Common practice, not published: Monday to Friday, shut on
    /// bank holidays; an assay office also between Christmas and New Year.
    pub fn usual_days(self) -> PlaceDays {
        PlaceDays {
            weekdays: MON_TO_FRI,
            on_bank_holidays: OnBankHolidays::Closed,
            shut_at_christmas: self == Place::AssayOffice,
        }
    }
}

impl PlaceDays {
    /// The calendar of a place with these days, and with closures that are written down for it.
    pub fn calendar(
        self,
        region: Region,
        mut closures: Vec<Closure>,
        switched: Vec<(HolidayName, bool)>,
    ) -> Result<Calendar, CalendarError> {
        if self.shut_at_christmas {
            closures.extend(christmas());
        }
        Ok(Calendar::new(region, self.on_bank_holidays, self.weekdays, closures)?.switching(switched))
    }
}

impl Places {
    /// Everything done in one place.
    pub fn one(calendar: Calendar) -> Places {
        Places { assay_office: calendar.clone(), courier: calendar.clone(), workshop: calendar }
    }

    pub fn of(&self, place: Place) -> &Calendar {
        match place {
            Place::Workshop => &self.workshop,
            Place::AssayOffice => &self.assay_office,
            Place::Courier => &self.courier,
        }
    }
}

/// 24 December to 1 January, from as long ago as anybody plans.
fn christmas() -> Option<Closure> {
    let day = NaiveDate::from_ymd_opt;
    Some(Closure::new(day(1995, 12, 24)?, day(1996, 1, 1)?).ok()?.repeating(Repeats::SameDates))
}
