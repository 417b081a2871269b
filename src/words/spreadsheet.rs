//! The book as a table for a spreadsheet: a line a couple, and what stands about it now.

use super::{band, book, dates, format, rings, sizing};
use crate::archive::csv;
use crate::book::couple::Couple;
use crate::book::leaving::Refusing;
use crate::book::value::Recorded;
use crate::trade::wearer::Wearer;

/// The heads of the columns.
const HEADS: [&str; 21] = [
    "First name",
    "Second name",
    "Stage",
    "Since",
    "Put away",
    "Met at",
    "Wedding",
    "Reach them",
    "Recorded",
    "First: finger",
    "First: band",
    "First: order size",
    "First: rings",
    "Second: finger",
    "Second: band",
    "Second: order size",
    "Second: rings",
    "Order by",
    "Read back",
    "Appointments",
    "Notes",
];

/// The table of these couples, as a file. Couples who said no in the book, examples, and what was erased or taken back
/// are left out.
pub fn table<'a>(couples: impl Iterator<Item = Couple<'a>>, refusing: &Refusing) -> String {
    let mut text = csv::MARK.to_owned() + &csv::line(&HEADS.map(str::to_owned));
    for couple in couples.filter(|couple| !couple.is_blank() && refusing.may_leave(*couple).is_ok()) {
        text += &csv::line(&cells(couple));
    }
    text
}

fn cells(couple: Couple<'_>) -> Vec<String> {
    let name = |wearer| couple.name(wearer).unwrap_or_default().to_owned();
    let day = |day: Option<chrono::NaiveDate>| day.map(format::day).unwrap_or_default();
    let mut cells = vec![
        name(Wearer::First),
        name(Wearer::Second),
        book::stage(couple.stage()).to_owned(),
        day(couple.reached(couple.stage())),
        day(couple.put_away()),
        couple.met().unwrap_or_default().to_owned(),
        couple.wedding().map(dates::wedding).unwrap_or_default(),
        join(couple.reach().into_iter().map(|(_, text)| text.to_owned()), " / "),
        couple.recorded().map(recorded).unwrap_or_default(),
    ];
    for wearer in Wearer::BOTH {
        cells.push(couple.finger(wearer).map(band::finger).unwrap_or_default());
        cells.push(book::band(&couple.band(wearer)));
        cells.push(couple.order_size(wearer).map(|size| sizing::size_in_full(size.size)).unwrap_or_default());
        cells.push(match couple.rings(wearer).as_slice() {
            [] if couple.has_no_rings(wearer) => "none".to_owned(),
            owned => join(
                owned
                    .iter()
                    .map(|ring| join([Some(book::ring(ring)), rings::inscription(ring)].into_iter().flatten(), ", ")),
                "; ",
            ),
        });
    }
    cells.push(day(couple.dates().map(|settled| settled.order_by)));
    cells.push(day(couple.read_back()));
    cells.push(join(couple.appointments().iter().map(book::appointment), "; "));
    cells.push(join(couple.notes().into_iter().map(|(_, text)| text.to_owned()), "\n"));
    cells
}

fn recorded(answer: Recorded) -> String {
    format!("{}, {}", if answer.agrees { "yes" } else { "no" }, format::day(answer.asked))
}

fn join(parts: impl Iterator<Item = String>, with: &str) -> String {
    parts.collect::<Vec<_>>().join(with)
}
