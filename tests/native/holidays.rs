//! Public holidays and Easter against GOV.UK's lists, dateutil's Easters and the holidays package.
//! The rows and how they are made are in `reference/` and `reference/generate/dates.py`.

use crate::shared::{UK, date, rows};
use bandwright::trade::dates::easter::easter;
use bandwright::trade::dates::holidays::{Holiday, HolidayKind, Region, in_year, is_projection};
use bandwright::words;
use chrono::{Datelike, NaiveDate};
use std::collections::BTreeSet;

// ---- Easter ----

#[test]
fn easter_is_dateutils_from_1900_to_2199() {
    let rows = rows("easter-1900-2199.csv");
    assert_eq!(rows.len(), 300);
    for row in rows {
        let day = date(&row[0]);
        assert_eq!(easter(day.year()), Some(day));
    }
    assert_eq!(easter(1582), None);
    assert_eq!(easter(i32::MIN), None);
    assert_eq!(easter(i32::MAX), None);
}

// ---- Public holidays ----

/// GOV.UK's titles that are not ours: names of people stay out of ours, and one list swaps two titles.
const OTHER_TITLES: [(&str, &str, &str); 6] = [
    ("2012-06-05", "Queen’s Diamond Jubilee", "Diamond Jubilee bank holiday"),
    ("2020-05-08", "Early May bank holiday (VE day)", "Early May bank holiday"),
    ("2022-09-19", "Bank Holiday for the State Funeral of Queen Elizabeth II", "State funeral bank holiday"),
    ("2023-05-08", "Bank holiday for the coronation of King Charles III", "Coronation bank holiday"),
    // Scotland: 1 January is a Sunday and 2 January a Monday; GOV.UK gives that Monday to the 2nd in 2012 and 2017,
    // and to New Year's Day in 2023. The same two days are closed.
    ("2023-01-02", "New Year’s Day", "2nd January"),
    ("2023-01-03", "2nd January", "New Year’s Day"),
];

fn title_of(region: Region, holiday: Holiday) -> String {
    let ours = words::dates::holiday(holiday.name);
    let day = holiday.day.to_string();
    let swapped = |d: &str| d.starts_with("2023-01");
    let theirs = OTHER_TITLES
        .iter()
        .find(|(d, _, name)| *d == day && *name == ours && (!swapped(d) || region == Region::Scotland));
    theirs.map_or(ours, |(_, title, _)| title).to_owned()
}

#[test]
fn bank_holidays_are_gov_uks_from_2012_to_2028() {
    for region in UK {
        let listed: Vec<(NaiveDate, String)> = rows(&format!("bank-holidays-{}.csv", region.code()))
            .into_iter()
            .map(|row| (date(&row[0]), row[1].clone()))
            .collect();
        let ours: Vec<(NaiveDate, String)> = (2012..=2028)
            .flat_map(|year| in_year(region, year))
            .filter(|h| h.kind != HolidayKind::OnWeekend)
            // The one day that the copies of GOV.UK's list lack; the next test looks for it.
            .filter(|h| !(region == Region::Scotland && h.day == date("2026-06-15")))
            .map(|h| (h.day, title_of(region, h)))
            .collect();
        assert_eq!(ours, listed, "{region:?}");
    }
}

#[test]
fn substitute_days_are_gov_uks() {
    for region in UK {
        for row in rows(&format!("bank-holidays-{}.csv", region.code())) {
            let day = date(&row[0]);
            let ours =
                in_year(region, day.year()).into_iter().find(|h| h.day == day && h.kind != HolidayKind::OnWeekend);
            let kind = ours.unwrap_or_else(|| panic!("{region:?} {day}")).kind;
            if day == date("2012-06-04") {
                // Moved for the jubilee; GOV.UK says "Substitute day" in two of its three lists.
                assert_eq!(kind, HolidayKind::Moved);
            } else if region == Region::Scotland && day == date("2023-01-02") {
                // Called a substitute for New Year's Day there; by rule it is the 2nd itself.
                assert_eq!(kind, HolidayKind::Itself);
            } else {
                assert_eq!(kind == HolidayKind::Substitute, row[2] == "Substitute day", "{region:?} {day}");
            }
        }
    }
}

#[test]
fn one_off_days_are_all_in_the_table() {
    for row in rows("one-off-holidays.csv") {
        let (day, place) = (date(&row[0]), row[3].as_str());
        let replaces = (!row[4].is_empty()).then(|| date(&row[4]));
        for region in UK.into_iter().chain([Region::Ireland]) {
            let expected = match place {
                "UK" => region != Region::Ireland,
                "Scotland only" => region == Region::Scotland,
                "Ireland" => region == Region::Ireland,
                other => panic!("a place the test does not know: {other}"),
            };
            let found = in_year(region, day.year());
            let once = [HolidayKind::Moved, HolidayKind::Extra];
            let given = found.iter().find(|h| h.day == day && once.contains(&h.kind));
            assert_eq!(given.is_some(), expected, "{region:?} {day}");
            if expected {
                let kind = if replaces.is_some() { HolidayKind::Moved } else { HolidayKind::Extra };
                assert_eq!(given.map(|h| h.kind), Some(kind), "{region:?} {day}");
            }
            if let Some(replaced) = replaces.filter(|_| expected) {
                assert!(found.iter().all(|h| h.day != replaced), "{replaced}");
            }
        }
    }
}

/// Where the holidays package and our rules differ from 1995 to 2041, row by row.
const LIBRARY_DIFFERS: [(Region, &str, &str); 1] = [
    // The package begins a year early: the Act that gives the day became law in January 2007.
    (Region::Scotland, "2006-11-30", "St Andrew's Day"),
];

#[test]
fn every_closed_day_is_the_holidays_packages_from_1995_to_2041() {
    for region in UK {
        let theirs: BTreeSet<NaiveDate> =
            rows(&format!("holidays-library-{}.csv", region.code())).iter().map(|r| date(&r[0])).collect();
        let ours: BTreeSet<NaiveDate> = (1995..=2041).flat_map(|y| in_year(region, y)).map(|h| h.day).collect();
        let differing: Vec<String> = theirs.symmetric_difference(&ours).map(|day| day.to_string()).collect();
        let expected: Vec<String> =
            LIBRARY_DIFFERS.iter().filter(|(r, ..)| *r == region).map(|(_, day, _)| (*day).to_owned()).collect();
        assert_eq!(differing, expected, "{region:?}");
    }
}

/// Every region that GOV.UK has no list of: each year's days, and those that depend on the employer or the parish.
#[test]
fn every_other_region_is_the_holidays_packages_from_2012_to_2041() {
    let mut checked = BTreeSet::new();
    for row in rows("holidays-library-others.csv") {
        let [region, year, always, by_choice] = row.try_into().unwrap();
        let region = Region::ALL.into_iter().find(|it| it.code() == region).unwrap();
        let year: i32 = year.parse().unwrap();
        let ours = |by_choice| -> Vec<String> {
            let days = in_year(region, year).into_iter().filter(|h| h.by_choice == by_choice).map(|h| h.day);
            let days: BTreeSet<NaiveDate> = days.collect();
            // A day by choice that is one for all as well is one for all.
            let others = in_year(region, year).into_iter().filter(|h| by_choice && !h.by_choice).map(|h| h.day);
            let others: BTreeSet<NaiveDate> = others.collect();
            let days = days.difference(&others);
            days.into_iter().map(|day| format!("{:02}{:02}", day.month(), day.day())).collect()
        };
        assert_eq!(ours(false).join(" "), always, "{region:?} {year}");
        assert_eq!(ours(true).join(" "), by_choice, "by choice, {region:?} {year}");
        checked.insert((region, year));
    }
    assert_eq!(checked.len(), (Region::ALL.len() - UK.len()) * 30);
}

#[test]
fn rules_work_to_2199_and_are_called_projections_beyond_2028() {
    for region in UK {
        let a_year = in_year(region, 2030).iter().filter(|h| h.kind != HolidayKind::OnWeekend).count();
        for year in 2029..=2199 {
            let found = in_year(region, year);
            let proper: Vec<&Holiday> = found.iter().filter(|h| h.kind != HolidayKind::OnWeekend).collect();
            let days: BTreeSet<NaiveDate> = proper.iter().map(|h| h.day).collect();
            assert_eq!(proper.len(), a_year, "{region:?} {year}");
            assert_eq!(days.len(), a_year, "two on one day: {region:?} {year}");
            assert!(days.iter().all(|d| d.year() == year && d.weekday().num_days_from_monday() < 5));
            assert!(is_projection(region, year));
        }
        assert!((1995..=2028).all(|year| !is_projection(region, year)));
    }
}

#[test]
fn any_year_of_any_region_may_be_asked_for() {
    for region in Region::ALL {
        for year in [i32::MIN, -1, 0, 1582, 2012, 2199, 9999, i32::MAX] {
            assert!(in_year(region, year).iter().all(|h| h.day.year() == year));
        }
        assert!(!is_projection(region, 2028) && is_projection(region, 2029));
    }
}
