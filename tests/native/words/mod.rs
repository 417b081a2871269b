//! Every mistake has one sentence of its own, and everything that can be chosen a name of its own: those are in `names`.

use std::collections::BTreeMap;
use std::fmt::Debug;

use bandwright::archive::file::FileError;
use bandwright::archive::import::Refused;
use bandwright::archive::list::ListError;
use bandwright::archive::row::RowError;
use bandwright::book::asks::{Kind, ROWS, Section};
use bandwright::book::preparation_list::AnswerError;
use bandwright::storage::error::StorageError;
use bandwright::trade::band::section::SectionError;
use bandwright::trade::dates::closed::CalendarError;
use bandwright::trade::dates::countdown::DatesError;
use bandwright::trade::dates::entry::{DateEntryError, TimeEntryError};
use bandwright::trade::dates::spread::{CalendarDays, SpreadError, WorkingDays};
use bandwright::trade::dates::wedding::Wedding;
use bandwright::trade::entry::{ContactError, NumberError, NumberFault, SizeEntryError, TextError, TextFault};
use bandwright::trade::fit::{self, FitError};
use bandwright::trade::limits;
use bandwright::trade::measure::{Length, Percent};
use bandwright::trade::stack::{self, StackError};
use bandwright::words::{self, dates::Asked};
use chrono::{NaiveDate, NaiveTime, Weekday};

/// One of each kind. A kind that is missing here does not compile.
macro_rules! each {
    ($($kind:pat => $one:expr),+ $(,)?) => {{
        let all = vec![$($one),+];
        all.iter().for_each(|one| match one { $($kind => ()),+ });
        all
    }};
}

mod names;
mod sides;
use names::unique;

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 5, 22).unwrap()
}

/// One sentence: it begins with a capital letter, ends with its only full stop, and says what would be right.
fn check_sentence(kind: &dyn Debug, text: &str) {
    assert!(text.starts_with(char::is_uppercase), "{kind:?}: {text}");
    assert!(text.ends_with('.') && !text.ends_with(".."), "{kind:?}: {text}");
    assert!(!text.contains(". ") && !text.contains(['!', '?', '\n']) && !text.contains("  "), "{kind:?}: {text}");
    let asks = ["Enter ", "Choose ", "Keep ", "Shorten ", "Check ", "Count "];
    assert!(asks.iter().any(|ask| text.starts_with(ask)) || text.contains(" must "), "{kind:?}: {text}");
    // It is for people: no figure of ours, no name of the code's.
    assert!(!text.contains(['{', '}', '_', '"']) && !text.contains("NaN"), "{kind:?}: {text}");
    assert!(text.chars().count() <= 180, "{kind:?}: {text}");
}

/// All kinds of one enum: a sentence each, and no two the same.
fn check<K: Debug>(kinds: Vec<K>, say: impl Fn(&K) -> String) {
    let mut said: BTreeMap<String, &K> = BTreeMap::new();
    for kind in &kinds {
        let text = say(kind);
        check_sentence(kind, &text);
        if let Some(other) = said.insert(text.clone(), kind) {
            panic!("{other:?} and {kind:?} are both told: {text}");
        }
    }
}

#[test]
fn a_size_that_cannot_be_taken() {
    use SizeEntryError as E;
    let kinds = each![
        E::Empty => E::Empty, E::TooLong => E::TooLong, E::NotASize => E::NotASize, E::LetterLast => E::LetterLast,
        E::LetterElsewhere => E::LetterElsewhere, E::NumberForLetter => E::NumberForLetter,
        E::BetweenSteps => E::BetweenSteps, E::OutOfRange => E::OutOfRange, E::LengthOutOfRange => E::LengthOutOfRange,
    ];
    check(kinds, |kind| words::entry::size_error(*kind));
}

#[test]
fn a_figure_that_cannot_be_taken() {
    use NumberFault as F;
    let faults = each![
        F::Empty => F::Empty, F::NotANumber => F::NotANumber, F::TwoSeparators => F::TwoSeparators,
        F::NotWhole => F::NotWhole, F::OutOfRange => F::OutOfRange, F::TooLong => F::TooLong,
    ];
    // Of every figure there is: no fault and no figure is told what another is told.
    let kinds = limits::all().iter().flat_map(|row| faults.iter().map(|fault| (row.limit, *fault)));
    check(kinds.collect(), |(limit, fault)| words::entry::number_error(NumberError { limit: *limit, fault: *fault }));
}

#[test]
fn a_text_that_cannot_be_taken() {
    use TextFault as F;
    use bandwright::trade::limits::Limit as L;
    let faults = each![
        F::Empty => F::Empty, F::TooLong => F::TooLong, F::Control => F::Control, F::Direction => F::Direction,
    ];
    let texts = [L::NameText, L::LineText, L::NoteText];
    let kinds = texts.iter().flat_map(|limit| faults.iter().map(|fault| (*limit, *fault)));
    check(kinds.collect(), |(limit, fault)| words::entry::text_error(TextError { limit: *limit, fault: *fault }));
}

#[test]
fn a_way_to_reach_somebody_that_cannot_be_taken() {
    use ContactError as E;
    let kinds = each![
        E::Empty => E::Empty, E::TooLong => E::TooLong, E::PhoneDigits => E::PhoneDigits, E::BadEmail => E::BadEmail,
        E::Neither => E::Neither,
    ];
    check(kinds, |kind| words::entry::contact_error(*kind).to_owned());
}

#[test]
fn a_list_that_cannot_be_taken_in() {
    use ListError as E;
    let kinds = each![
        E::Empty => E::Empty, E::TooLarge => E::TooLarge, E::Zip => E::Zip, E::Utf16 => E::Utf16,
        E::NotText => E::NotText, E::NoList => E::NoList, E::CutOff => E::CutOff, E::TooDeep => E::TooDeep,
        E::NotOurs => E::NotOurs, E::OtherKind => E::OtherKind, E::Newer(_) => E::Newer(2), E::Damaged => E::Damaged,
    ];
    check(kinds, |kind| words::list::taking::error(*kind));
}

#[test]
fn an_answer_of_a_list_that_cannot_be_taken() {
    use TextFault as F;
    let kinds = each![
        AnswerError::Text(F::Empty) => AnswerError::Text(F::Empty),
        AnswerError::Text(F::TooLong) => AnswerError::Text(F::TooLong),
        AnswerError::Text(F::Control) => AnswerError::Text(F::Control),
        AnswerError::Text(F::Direction) => AnswerError::Text(F::Direction),
        AnswerError::NotOffered => AnswerError::NotOffered,
    ];
    for row in ROWS {
        check(kinds.clone(), |kind| words::list::asked::error(row.ask, *kind));
        unique("left out", kinds.iter().map(|kind| words::list::asked::left_out(row.ask, *kind)).collect());
    }
}

#[test]
fn the_questions_of_the_list_and_what_they_offer() {
    use words::list::{asked, pages};
    unique("questions", ROWS.iter().map(|row| asked::label(row.ask).to_owned()).collect());
    unique("questions in short", ROWS.iter().map(|row| asked::short(row.ask).to_owned()).collect());
    unique("pages", Section::ALL.iter().map(|section| pages::title(*section).to_owned()).collect());
    for row in ROWS {
        if let Kind::Choice(codes) = row.kind {
            let names: Vec<String> = codes.iter().map(|code| asked::answer(row.ask, code).to_owned()).collect();
            assert!(names.iter().all(|name| !name.contains('-')), "a code is no answer: {names:?}");
            unique(row.code, names);
        }
    }
}

#[test]
fn a_date_that_cannot_be_taken() {
    use DateEntryError as E;
    let kinds = each![
        // Nothing there and no date there are told the same: what a date looks like.
        E::Empty | E::NotADate => E::NotADate,
        E::TooLong => E::TooLong,
        E::NoSuchMonth { .. } => E::NoSuchMonth { month: 13 },
        E::NoSuchDay { .. } => E::NoSuchDay { day: 30, month: 2, year: Some(2027) },
        E::OtherWeekday { .. } => E::OtherWeekday { day: day(), typed: Weekday::Mon },
        E::DayOrYear { .. } => E::DayOrYear { month: 5, number: 27 },
        E::DayMissing => E::DayMissing,
        E::EitherDay { .. } => E::EitherDay { first: day(), second: day() },
        E::Past { .. } => E::Past { wedding: Wedding::Month { year: 2020, month: 5 } },
        E::TooFar { .. } => E::TooFar { latest: day() },
        E::TooLongAgo { .. } => E::TooLongAgo { earliest: day() },
    ];
    for asked in [Asked::Day, Asked::Wedding] {
        check(kinds.clone(), |kind| words::dates::date_entry(*kind, asked));
        let same = words::dates::date_entry(E::Empty, asked);
        assert_eq!(same, words::dates::date_entry(E::NotADate, asked));
    }
}

#[test]
fn a_time_that_cannot_be_taken() {
    use TimeEntryError as E;
    let kinds = each![
        E::Empty | E::NotATime => E::NotATime,
        E::TooLong => E::TooLong,
        E::NoSuchTime => E::NoSuchTime,
        E::AmOrPm { .. } => E::AmOrPm { time: NaiveTime::from_hms_opt(2, 30, 0).unwrap() },
    ];
    check(kinds, |kind| words::dates::time_entry(*kind));
    assert_eq!(words::dates::time_entry(E::Empty), words::dates::time_entry(E::NotATime));
}

#[test]
fn days_and_spreads_that_cannot_be_taken() {
    use SpreadError as S;
    let days = WorkingDays;
    let kinds = each![
        S::LeastAboveUsual { .. } => S::LeastAboveUsual { least: days(20), usual: days(15) },
        S::UsualAboveMost { .. } => S::UsualAboveMost { usual: days(20), most: days(15) },
        S::TooLong { .. } => S::TooLong { most: days(999), limit: days(260) },
    ];
    check(kinds, |kind| words::dates::spread_error(*kind));
}

#[test]
fn a_countdown_that_cannot_be_made() {
    use CalendarError as C;
    let calendar = each![
        C::NoWeekdays => C::NoWeekdays,
        C::Backwards { .. } => C::Backwards { from: day(), to: day() },
        C::ClosureTooLong { .. } => C::ClosureTooLong { limit: CalendarDays(366) },
        C::TooManyClosures { .. } => C::TooManyClosures { limit: 40 },
        C::NoWorkingDay { .. } => C::NoWorkingDay { near: day() },
        C::TooFar { .. } => C::TooFar { from: day() },
    ];
    check(calendar.clone(), |kind| words::dates::calendar_error(*kind));
    use DatesError as D;
    let mut kinds = each![
        D::NoWeddingDate => D::NoWeddingDate,
        D::WeddingPast { .. } => D::WeddingPast { wedding: Wedding::Day(day()) },
        D::WeddingTooFar { .. } => D::WeddingTooFar { wedding: day() },
        D::TakesTooLong => D::TakesTooLong,
        D::TooManySteps { .. } => D::TooManySteps { limit: 30 },
        D::Calendar(_) => D::Calendar(calendar[0]),
    ];
    kinds.extend(calendar[1..].iter().map(|error| D::Calendar(*error)));
    check(kinds, |kind| words::dates::dates_error(*kind));
}

#[test]
fn an_order_size_that_cannot_be_worked_out() {
    use FitError as E;
    use fit::Quantity as Q;
    let out = |what: Q| E::OutOfRange { what, range: what.range() };
    let quantities = each![
        Q::AsRead => Q::AsRead, Q::Joint => Q::Joint, Q::BandWidth => Q::BandWidth, Q::GaugeWidth => Q::GaugeWidth,
        Q::BesideWidth => Q::BesideWidth, Q::BandRelief => Q::BandRelief, Q::GaugeRelief => Q::GaugeRelief,
        Q::GaugeStep => Q::GaugeStep, Q::OwnError => Q::OwnError, Q::Taper => Q::Taper, Q::MakeStep => Q::MakeStep,
        Q::WidthPerMm => Q::WidthPerMm, Q::WidthPerMmSd => Q::WidthPerMmSd, Q::BorePerMm => Q::BorePerMm,
        Q::BorePerMmSd => Q::BorePerMmSd, Q::Cold => Q::Cold, Q::Warm => Q::Warm, Q::HandsOffSd => Q::HandsOffSd,
        Q::HandsNormalSd => Q::HandsNormalSd, Q::Offset => Q::Offset, Q::OffsetSd => Q::OffsetSd,
        Q::GaugeOff => Q::GaugeOff, Q::Own => Q::Own,
    ];
    let mut kinds = each![
        E::OutOfRange { .. } => out(quantities[0]),
        E::TooManyBeside { .. } => E::TooManyBeside { most: 9 },
        E::TooManyReadings { .. } => E::TooManyReadings { most: 60 },
        E::NotTheBase => E::NotTheBase,
    ];
    kinds.extend(quantities[1..].iter().map(|what| out(*what)));
    check(kinds, words::fit::error);
}

#[test]
fn a_stack_that_cannot_be_added_up() {
    use StackError as E;
    use stack::Quantity as Q;
    let out = |what: Q| E::OutOfRange { what, range: what.range() };
    let quantities = each![
        Q::RingWidth => Q::RingWidth, Q::Gap => Q::Gap, Q::FreeLength => Q::FreeLength, Q::BandWidth => Q::BandWidth,
        Q::ShoulderWidth => Q::ShoulderWidth, Q::TopWidth => Q::TopWidth,
    ];
    let mut kinds = each![
        E::NoRings => E::NoRings,
        E::TooManyRings { .. } => E::TooManyRings { most: 12 },
        E::OutOfRange { .. } => out(quantities[0]),
        E::WiderThanFinger { .. } => E::WiderThanFinger { width: Length::from_mm(16.0), free: Length::from_mm(15.0) },
        E::Thresholds { .. } => E::Thresholds { roomy: Percent(60), full: Percent(50) },
    ];
    kinds.extend(quantities[1..].iter().map(|what| out(*what)));
    check(kinds, words::stack::error);
}

#[test]
fn a_band_that_cannot_be_made() {
    use SectionError as E;
    let mm = Length::from_mm;
    let kinds = each![
        E::Nothing => E::Nothing,
        E::DomeTooHigh { .. } => E::DomeTooHigh { dome: mm(2.0), height: mm(1.8) },
        E::NoEdge { .. } => E::NoEdge { dome: mm(1.5), relief: mm(0.3), height: mm(1.8) },
        E::TooRound { .. } => E::TooRound { most: mm(1.0) },
    ];
    check(kinds, |kind| words::stack::section_error(*kind));
}

#[test]
fn a_phone_that_does_not_store() {
    use RowError as R;
    use StorageError as S;
    let rows = each![
        R::NotJson => R::NotJson, R::NotARecord => R::NotARecord, R::Newer(_) => R::Newer(2), R::Damaged => R::Damaged,
    ];
    let kinds = each![
        S::Denied => S::Denied, S::Full => S::Full, S::Newer => S::Newer, S::Lost => S::Lost,
        S::Unreadable(_) => S::Unreadable(R::Damaged), S::Gone => S::Gone, S::Erased => S::Erased, S::Failed(_) => S::Failed("AbortError".into()),
    ];
    // What to do takes more than one sentence here; each is whole, and no two are the same.
    let saved: Vec<String> = kinds.iter().map(words::storage::not_saved).collect();
    let opened: Vec<String> = kinds.iter().map(words::storage::not_opened).collect();
    for text in saved.iter().chain(&opened) {
        assert!(text.ends_with('.') && text.starts_with(char::is_uppercase) && !text.contains(['{', '_']), "{text}");
    }
    assert!(
        saved.iter().all(|text| text.starts_with("Not saved: ") && text.ends_with("What you typed is still here."))
    );
    unique("not saved", saved);
    unique("not opened", opened);
    unique("a row", rows.iter().map(|row| words::storage::row_error(*row)).collect());
}

#[test]
fn a_file_that_cannot_be_read() {
    use FileError as F;
    let kinds = each![
        F::Empty => F::Empty, F::TooBig => F::TooBig, F::NotText => F::NotText, F::Utf16 => F::Utf16, F::Zip => F::Zip,
        F::NotJson => F::NotJson, F::CutOff => F::CutOff, F::TooDeep => F::TooDeep, F::NotOurs => F::NotOurs,
        F::Newer(_) => F::Newer(2), F::Damaged => F::Damaged,
    ];
    let said: Vec<String> = kinds.iter().map(|kind| words::files::error(*kind)).collect();
    for text in &said {
        assert!(text.starts_with(char::is_uppercase) && text.ends_with(". Nothing was changed."), "{text}");
        assert!(!text.contains(['{', '_', '!']) && !text.contains("  ") && text.chars().count() <= 180, "{text}");
    }
    unique("a file", said);
    use RowError as R;
    let mut kinds = each![
        Refused::Row(_) => Refused::Row(R::NotJson), Refused::Repeated => Refused::Repeated,
        Refused::UnreadableHere => Refused::UnreadableHere, Refused::OtherKind => Refused::OtherKind,
        Refused::Counter => Refused::Counter, Refused::Settings => Refused::Settings,
    ];
    kinds.extend([R::NotARecord, R::Newer(2), R::Damaged].map(Refused::Row));
    unique("a row of a file", kinds.iter().map(|kind| words::files::refused(*kind)).collect());
}
