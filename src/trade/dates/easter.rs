//! The date of Easter, on which half of the spring's holidays hang.

use chrono::NaiveDate;

/// Easter Sunday of a year in the Gregorian calendar.
///
/// To a jeweller: Good Friday and Easter Monday move with it, in the weeks when spring weddings are ordered.
///
/// Formula: the anonymous Gregorian computus (golden number, century, epact, weekday), whole numbers only.
/// Units: a civil date. Range: 1583 onwards, the first full Gregorian year; none before it.
/// Source: J. Meeus, *Astronomical Algorithms*, chapter 8; the rows in the tests are python-dateutil's.
///
/// ```
/// use bandwright::trade::dates::easter::easter;
/// use chrono::NaiveDate;
/// assert_eq!(easter(2027), NaiveDate::from_ymd_opt(2027, 3, 28));
/// ```
pub fn easter(year: i32) -> Option<NaiveDate> {
    if year < 1583 {
        return None;
    }
    let golden = year % 19;
    let (century, in_century) = (year / 100, year % 100);
    let skipped_moon = (century - (century + 8) / 25 + 1) / 3;
    let epact = (19 * golden + century - century / 4 - skipped_moon + 15) % 30;
    let to_sunday = (32 + 2 * (century % 4) + 2 * (in_century / 4) - epact - in_century % 4) % 7;
    let late = (golden + 11 * epact + 22 * to_sunday) / 451;
    let count = epact + to_sunday - 7 * late + 114;
    NaiveDate::from_ymd_opt(year, u32::try_from(count / 31).ok()?, u32::try_from(count % 31 + 1).ok()?)
}
