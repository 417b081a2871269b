//! Practice: what is usual where nothing is set, that what its forms take the calculators take too, and its words.

use bandwright::book::field::Constant;
use bandwright::book::practice::customary;
use bandwright::book::value::NamedClosure;
use bandwright::trade::dates::closed::{Closure, OnBankHolidays, Weekdays};
use bandwright::trade::dates::holidays::{Holiday, Region, upcoming};
use bandwright::trade::dates::places::Place;
use bandwright::trade::fit::{self, Quantity};
use bandwright::trade::limits::{self, Amount, Limit};
use bandwright::trade::measure::Percent;
use bandwright::trade::stack::{self, House, thresholds};
use bandwright::words::{dates as say_dates, format, practice as say, stack as say_stack};
use chrono::{NaiveDate, Weekday};

/// The figures of the trade's own notes: common practice, millimetres round the inside.
#[test]
fn customary_constants() {
    #[track_caller]
    fn check(constant: Constant, mm: f64) {
        assert_eq!(customary(constant).value.mm(), mm);
    }
    check(Constant::Width, 0.25);
    check(Constant::WidthSpread, 0.10);
    check(Constant::Bore, 0.8);
    check(Constant::BoreSpread, 0.3);
    check(Constant::Cold, 0.5);
    check(Constant::Warm, -0.5);
    check(Constant::HandsSpread, 0.4);
    check(Constant::NormalSpread, 0.3);
    check(Constant::Offset, 0.0);
    check(Constant::OffsetSpread, 0.0);
}

/// What a form takes must never stop a calculator later.
#[test]
fn what_a_form_takes_the_order_size_takes() {
    #[track_caller]
    fn check(limit: Limit, quantity: Quantity) {
        let fit::Range { least, most } = quantity.range();
        let taken = limits::of(limit);
        assert!(Amount::Length(least) <= taken.least && taken.most <= Amount::Length(most), "{limit:?}");
    }
    check(Limit::BandWidth, Quantity::BandWidth);
    check(Limit::RingWidth, Quantity::BesideWidth);
    check(Limit::Circumference, Quantity::AsRead);
    check(Limit::Circumference, Quantity::Joint);
    check(Limit::EdgeRelief, Quantity::BandRelief);
    check(Limit::GaugeWidth, Quantity::GaugeWidth);
    check(Limit::EdgeRelief, Quantity::GaugeRelief);
    check(Limit::GaugeStep, Quantity::GaugeStep);
    check(Limit::GaugeError, Quantity::OwnError);
    check(Limit::StickTaper, Quantity::Taper);
    check(Limit::WidthFactor, Quantity::WidthPerMm);
    check(Limit::WidthFactorSpread, Quantity::WidthPerMmSd);
    check(Limit::BoreFactor, Quantity::BorePerMm);
    check(Limit::BoreFactorSpread, Quantity::BorePerMmSd);
    check(Limit::ConditionShift, Quantity::Cold);
    check(Limit::ConditionSpread, Quantity::HandsOffSd);
    check(Limit::ConditionSpread, Quantity::HandsNormalSd);
    check(Limit::ConditionSpread, Quantity::OffsetSd);
    check(Limit::OwnShift, Quantity::Offset);
    check(Limit::OwnShift, Quantity::Own);
}

#[test]
fn what_a_form_takes_the_stack_takes() {
    #[track_caller]
    fn check(limit: Limit, quantity: stack::Quantity) {
        let stack::Range { least, most } = quantity.range();
        let taken = limits::of(limit);
        assert!(Amount::Length(least) <= taken.least && taken.most <= Amount::Length(most), "{limit:?}");
    }
    check(Limit::BandWidth, stack::Quantity::BandWidth);
    check(Limit::RingWidth, stack::Quantity::RingWidth);
    check(Limit::RingWidth, stack::Quantity::ShoulderWidth);
    check(Limit::RingWidth, stack::Quantity::TopWidth);
    check(Limit::FreeLength, stack::Quantity::FreeLength);
    check(Limit::GapBetweenRings, stack::Quantity::Gap);
}

#[test]
fn roomy_ends_before_full() {
    let said = |roomy, full| {
        let house = House { roomy: Percent(roomy), full: Percent(full), ..House::default() };
        thresholds(&house).map_err(|error| say_stack::error(&error))
    };
    assert_eq!(said(35, 50), Ok(()));
    assert_eq!(said(99, 100), Ok(()));
    let sentence = "Enter a share for full that is above roomy and at most 100 %: now roomy is 60 % and full is 50 %.";
    assert_eq!(said(60, 50), Err(sentence.to_owned()));
    assert!(said(50, 50).is_err());
}

/// GOV.UK, bank holidays, the lists of 2026 to 2028; 2029 is on none of them.
#[test]
fn next_bank_holidays() {
    let next = |region, (y, m, d), many: usize| -> Vec<String> {
        let from = NaiveDate::from_ymd_opt(y, m, d).unwrap();
        let said =
            |holiday: Holiday| format!("{} {}", format::day(holiday.day), say_dates::holiday_in_full(region, holiday));
        upcoming(region, from).take(many).map(said).collect()
    };
    assert_eq!(
        next(Region::EnglandAndWales, (2026, 12, 26), 3),
        ["Mon 28 Dec 2026 Boxing Day · substitute day", "Fri 1 Jan 2027 New Year’s Day", "Fri 26 Mar 2027 Good Friday",]
    );
    assert_eq!(next(Region::Scotland, (2027, 11, 30), 1), ["Tue 30 Nov 2027 St Andrew’s Day"]);
    assert_eq!(next(Region::NorthernIreland, (2028, 12, 27), 1), ["Mon 1 Jan 2029 New Year’s Day · projection"]);
}

#[test]
fn closures() {
    let day = |d| NaiveDate::from_ymd_opt(2027, 8, d).unwrap();
    let said = |from, to| {
        let days = Closure::new(day(from), day(to)).map_err(say_dates::calendar_error)?;
        Ok::<String, String>(say::closure_days(&NamedClosure {
            name: "Summer fortnight".into(),
            place: Place::Workshop,
            days,
        }))
    };
    assert_eq!(said(2, 13).unwrap(), "Mon 2 Aug to Fri 13 Aug 2027 · 12 days");
    assert_eq!(said(2, 2).unwrap(), "Mon 2 Aug 2027");
    assert_eq!(said(13, 2).unwrap_err(), "Enter a last day that is not before Fri 13 Aug 2027, the first.");
}

#[test]
fn days_of_the_week() {
    #[track_caller]
    fn check(days: &[Weekday], expected: &str) {
        let set = days.iter().fold(Weekdays::EMPTY, |mut set, day| {
            set.insert(*day);
            set
        });
        assert_eq!(say::weekdays(set), expected);
    }
    use Weekday::{Fri, Mon, Sat, Sun, Thu, Tue, Wed};
    check(&[Mon, Tue, Wed, Thu, Fri], "Mon to Fri");
    check(&[Sat, Tue, Wed, Thu, Fri], "Tue to Sat");
    check(&[Mon, Wed, Fri], "Mon, Wed, Fri");
    check(&[Sat, Sun], "Sat, Sun");
    check(&[Thu], "Thu");
    check(&[Mon, Tue, Wed, Thu, Fri, Sat, Sun], "every day");
    let usual = bandwright::trade::dates::closed::MON_TO_FRI;
    assert_eq!(say::closed_days(usual, OnBankHolidays::Closed, 0), "Mon to Fri, closed on bank holidays");
    assert_eq!(
        say::closed_days(usual, OnBankHolidays::Works, 2),
        "Mon to Fri, open on bank holidays, 2 closures to come"
    );
}
