//! Today: who is next, what is late, which order-by dates are nearest. One button starts a new couple.

use crate::parts::el::{live, maybe, or_nothing};
use crate::parts::layout::{all, block, column, para};
use crate::screens::shell::group::group;
use chrono::NaiveDate;
use leptos::prelude::*;

use crate::app::address::{Address, Part, Setting};
use crate::app::badge;
use crate::app::keeping::Keeping;
use crate::app::state::{Book, app};
use crate::book::couple::{Appointment, Couple};
use crate::book::field::Stage;
use crate::book::id::RecordId;
use crate::book::practice::Practice;
use crate::book::record::Record;
use crate::book::remedy::Move;
use crate::book::today::{self as reckoning, Today};
use crate::parts::button::{Weight, link_button};
use crate::parts::empty::empty;
use crate::parts::line::{Line, line};
use crate::parts::page::{PageHeader, page};
use crate::parts::picture::sketch;
use crate::pictures::ornament;
use crate::screens::later;
use crate::screens::shell::tab_warning::tab_warning;
use crate::storage::list::is_there;
use crate::trade::wearer::Wearer;
use crate::words::list::pages::RESUME;
use crate::words::parts::Mark;
use crate::words::{
    book as say_book, copies as say_copies, dates as say_dates, finger as say_finger, format, keeping as say_keeping,
    phones as say_phones, remedy as say_remedy, screens as say, storage,
};

/// So many order-by dates are shown.
const NEAREST: usize = 6;

pub fn today() -> AnyView {
    let app = app();
    let day = app.today;
    let due = Memo::new(move |_| {
        app.with(|book| {
            reckoning::today(book.couples.values().map(|record| Couple(record)), Practice(&book.practice), day.get())
        })
    });
    Effect::new(move |_| badge::show(due.with(Today::late)));
    let content = move || {
        let due = due.get();
        if app.with(|book| book.couples.values().all(|record| Couple(record).is_blank())) {
            return first_time();
        }
        let (late, appointments, order_by) = app.with(|book| sections(book, &due, day.get()));
        let again = app.with(|book| measure_again(book, &due, day.get()));
        let rings = app.with(|book| rings(book, &due, day.get()));
        let quiet = [&rings, &late, &appointments, &order_by, &again].iter().all(|rows| rows.is_empty());
        // How orders stand, and what fitted, is said by a part that comes later.
        let is_ordered = |record: &Record| matches!(Couple(record).stage(), Stage::Ordered | Stage::Collected);
        let is_any_ordered = app.with(|book| book.couples.values().any(|record| is_ordered(record)));
        all(vec![
            or_nothing(
                (quiet && !is_any_ordered).then(|| empty(sketch(ornament::two_bands().svg), say::NOTHING_DUE, None)),
            ),
            or_nothing(app.with(to_settle)),
            or_nothing(group(say::LATE, late, due.counts.late)),
            or_nothing(group(say::NEXT_APPOINTMENTS, appointments, due.counts.appointments)),
            or_nothing(group(say_remedy::AT_BENCH, rings, due.counts.rings)),
            or_nothing(group(say_finger::AGAIN_LIST, again, due.counts.measure_again)),
            or_nothing(is_any_ordered.then(later::orders)),
            or_nothing(group(say::ORDER_BY_DATES, order_by, 0)),
        ])
    };
    let aside = move || {
        let count = app.with(|book| book.quarantined.iter().filter(|row| !row.is_for_good()).count());
        (count > 0).then(|| para("caution", storage::quarantined(count)))
    };
    let keeping: Keeping = expect_context();
    let kept = move || {
        let to = Address::Setting(Setting::Phone).to_string();
        let what = link_button(Weight::Quiet, say_keeping::TO_PHONE, to);
        keeping.refused.get().then(|| block("column near", vec![para("caution", say_keeping::REFUSED), what]))
    };
    let copy = move || {
        let since = app.copy_due()?;
        let to = Address::Setting(Setting::Copies).to_string();
        let make = link_button(Weight::Quiet, say_copies::MAKE_ONE, to);
        Some(block("column near", vec![para("caution", say_copies::nothing_since(since)), make]))
    };
    let head = PageHeader::new(say::TODAY).subtitle(Signal::derive(move || format::day(day.get())));
    let new = link_button(Weight::Primary, say::NEW_COUPLE, Address::NewCouple.to_string());
    page(head, column(vec![maybe(aside), maybe(copy), live(content), maybe(kept)]), Some(new))
}

fn first_time() -> AnyView {
    // On the phone of a couple this is where the installed app begins: then their list is what they want.
    let list = is_there().then(|| link_button(Weight::Quiet, RESUME, Address::List(None).to_string()));
    let empty = empty(sketch(ornament::two_bands().svg), say::FIRST_TIME, Some(later::examples()));
    let warning = if list.is_some() { None } else { tab_warning() };
    all(vec![or_nothing(warning), or_nothing(list), empty])
}

/// Couples of which two phones say different things, and settings of which they do.
fn to_settle(book: &Book) -> Option<AnyView> {
    let of = |record: &Record, names: String, to: Address| {
        line(names, "", to.to_string()).small(say_phones::differences(record.conflicts().len())).mark(Mark::Care)
    };
    let practice = Some(&book.practice).filter(|practice| practice.is_in_conflict());
    let practice = practice.map(|it| of(it, say_phones::SETTINGS.to_owned(), Address::Setting(Setting::Differences)));
    let couples: Vec<_> = book.couples.values().filter(|record| record.is_in_conflict()).collect();
    let count = couples.len() + practice.iter().len();
    let couples = couples
        .into_iter()
        .take(NEAREST)
        .map(|record| of(record, say_book::names(Couple(record)), Address::Part(record.id, Part::Differences)));
    group(say_phones::DIFFERENCES, practice.into_iter().chain(couples).collect(), count)
}

/// Fingers that are to be measured again.
fn measure_again(book: &Book, due: &Today, today: NaiveDate) -> Vec<Line> {
    let one = |(id, wearer, day): &(RecordId, Wearer, NaiveDate)| {
        of_wearer(book, (*id, *wearer), Part::Finger(*wearer), *day, today).small(format::day(*day))
    };
    due.measure_again.iter().map(one).collect()
}

/// Rings that go to the bench, or are due back.
fn rings(book: &Book, due: &Today, today: NaiveDate) -> Vec<Line> {
    let one = |(id, wearer, day, what): &(RecordId, Wearer, NaiveDate, Move)| {
        let small = say_remedy::moves(*what, *day);
        of_wearer(book, (*id, *wearer), Part::Remedy(*wearer), *day, today).small(small)
    };
    due.rings.iter().map(one).collect()
}

/// A row about one of the two, for a day.
fn of_wearer(book: &Book, (id, wearer): (RecordId, Wearer), part: Part, day: NaiveDate, today: NaiveDate) -> Line {
    let name = book.couples.get(&id).map(|record| say_book::name_of(Couple(record), wearer)).unwrap_or_default();
    let mark = if day < today { Mark::Care } else { Mark::Open };
    line(name, say::from_today(day, today), Address::Part(id, part).to_string()).mark(mark)
}

fn sections(book: &Book, due: &Today, today: NaiveDate) -> (Vec<Line>, Vec<Line>, Vec<Line>) {
    let names = |id: RecordId| book.couples.get(&id).map(|record| say_book::names(Couple(record))).unwrap_or_default();
    let row = |id: RecordId, to: Address, day: NaiveDate, small: String, mark| {
        line(names(id), say::from_today(day, today), to.to_string()).small(small).mark(mark)
    };
    let appointment = |(id, it): &(RecordId, Appointment)| {
        let href = Address::Part(*id, Part::Appointment(Some(it.item))).to_string();
        line(names(*id), say::from_today(it.when.day, today), href).small(say_book::appointment(it))
    };
    let not_ordered = |(id, day): &(RecordId, NaiveDate)| {
        let small = format!("{}, {}", say::order_by(*day), say::NOT_ORDERED);
        row(*id, Address::Couple(*id), *day, small, Mark::Care)
    };
    let mut late: Vec<Line> = due.late_orders.iter().map(not_ordered).collect();
    let plan = |id| Address::Part(id, Part::Plan);
    late.extend(due.overdue.iter().map(|(id, due)| {
        row(*id, plan(*id), due.by, say::was_due(say_dates::milestone(due.what), due.by), Mark::Care)
    }));
    late.extend(due.unsettled.iter().map(|it| {
        let line = appointment(it);
        let small = format!("{}: {}", line.small, say::NO_OUTCOME);
        line.small(small).mark(Mark::Care)
    }));
    let appointments = due.appointments.iter().map(appointment).collect();
    let ask = |(id, last): &(RecordId, NaiveDate)| {
        row(*id, Address::Part(*id, Part::Wedding), *last, say::ask_the_day(*last), Mark::Care)
    };
    let to_order =
        |(id, day): &(RecordId, NaiveDate)| row(*id, Address::Couple(*id), *day, say::order_by(*day), Mark::Open);
    let order_by = due.order_by.iter().take(NEAREST).map(to_order);
    let order_by = due.ask_the_day.iter().take(NEAREST).map(ask).chain(order_by).collect();
    (late, appointments, order_by)
}
