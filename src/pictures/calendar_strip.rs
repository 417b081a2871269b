//! From today to the wedding: weeks while they can be read, months beyond, with closed days hatched.

use super::Picture;
use super::calendar_months::Months;
use super::calendar_weeks::Weeks;
use super::layout::TEXT;
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::arrange::in_order;
use crate::words::calendar::{self as words, DayMark};
use crate::words::format;
use chrono::{Days, NaiveDate};

/// What the calendar is drawn from.
pub struct CalendarStrip<'a> {
    /// The days that are marked, in any order; today and the wedding among them.
    pub marks: Vec<(DayMark, NaiveDate)>,
    /// The days on which it may be finished, each with its share of the whole.
    pub finish: &'a [(NaiveDate, f64)],
    /// Whether the bench is closed on a day.
    pub closed: &'a dyn Fn(NaiveDate) -> bool,
}

/// Up to so many days, each week is a row; beyond, each month.
const WEEKS_UP_TO: i64 = 9 * 7;
/// A day that has passed is still drawn when it is not longer ago than this.
const LOOK_BACK: Days = Days::new(45);

/// Draws the calendar.
pub fn calendar_strip(of: &CalendarStrip) -> Picture {
    let marks = in_order(of.marks.iter().copied(), |(_, day)| *day);
    let on = |mark| marks.iter().find(|(it, _)| *it == mark).map(|(_, day)| *day);
    let today = on(DayMark::Today).unwrap_or_default();
    let earliest = today.checked_sub_days(LOOK_BACK).unwrap_or(today);
    let likely = of.finish.first().zip(of.finish.last()).map(|((first, _), (last, _))| (*first, *last));
    let drawn = |day: &NaiveDate| *day >= earliest;
    let days = || marks.iter().map(|(_, day)| *day).chain(likely.map(|(_, last)| last)).filter(drawn);
    let (from, to) = (days().min().unwrap_or(today), days().max().unwrap_or(today));

    let mut pen = Pen::default();
    let grid: Box<dyn Grid> = if (to - from).num_days() < WEEKS_UP_TO {
        Box::new(Weeks::new(from, to))
    } else {
        Box::new(Months::new(from, to))
    };
    grid.draw(&mut pen);
    draw_likely(&mut pen, grid.as_ref(), of.finish);
    let between = (today, on(DayMark::Wedding).unwrap_or(today));
    let closed = draw_closed(&mut pen, grid.as_ref(), of, (from, to), between);
    // Changed rings are back the day before the wedding.
    let room = on(DayMark::LastResize).zip(on(DayMark::Wedding).and_then(|day| day.pred_opt()));
    draw_runs(&mut pen, grid.as_ref(), on(DayMark::Start).zip(on(DayMark::Finish)), "work", "thick verdigris");
    draw_runs(&mut pen, grid.as_ref(), room, "room", "thick rouge");
    grid.draw_over(&mut pen);
    // Marks of one day stand beside each other, the smaller the more there are.
    for of_day in marks.chunk_by(|(_, one), (_, other)| one == other) {
        let Some(cell) = of_day.first().and_then(|(_, day)| grid.cell(*day)) else { continue };
        let radius = grid.symbol_radius() / (of_day.len() as f64).sqrt();
        let (x, y) = grid.middle(&cell);
        for (at, (mark, _)) in of_day.iter().enumerate() {
            let aside = (at as f64 - (of_day.len() - 1) as f64 / 2.0) * radius * 2.0;
            pen.group("mark", |pen| symbol(pen, *mark, (x + aside, y), radius));
        }
    }
    let end = draw_key(&mut pen, &marks, grid.bottom() + 22.0, likely.is_some(), room.is_some());
    pen.finish("calendar", WIDTH, end, &words::calendar(&marks, closed, likely))
}

/// The place of a day: its corner and its size.
#[derive(Clone, Copy)]
pub(super) struct Cell {
    pub corner: At,
    pub size: At,
}

/// Where days stand.
pub(super) trait Grid {
    fn cell(&self, day: NaiveDate) -> Option<Cell>;
    /// Draws what lies under the days.
    fn draw(&self, pen: &mut Pen);
    /// Draws what lies over the hatching.
    fn draw_over(&self, pen: &mut Pen);
    fn bottom(&self) -> f64;
    fn symbol_radius(&self) -> f64;
    /// Where in a day its mark stands.
    fn middle(&self, cell: &Cell) -> At;
}

/// Shades the days on which it may be finished, the likelier the darker.
fn draw_likely(pen: &mut Pen, grid: &dyn Grid, finish: &[(NaiveDate, f64)]) {
    let most = finish.iter().map(|(_, share)| *share).fold(0.0, f64::max);
    pen.group("likely", |pen| {
        for (day, share) in finish {
            let Some(Cell { corner, size }) = grid.cell(*day) else { continue };
            let class = match share / most {
                share if share > 0.75 => "solid verdigris bare likeliest",
                share if share > 0.5 => "solid verdigris bare likely",
                share if share > 0.25 => "solid verdigris bare possible",
                _ => "solid verdigris bare unlikely",
            };
            pen.rect(class, corner, size, 0.0);
        }
    });
}

/// Hatches every closed day in one stroke of the pen, and says how many there are from today to the wedding.
fn draw_closed(
    pen: &mut Pen,
    grid: &dyn Grid,
    of: &CalendarStrip,
    (from, to): (NaiveDate, NaiveDate),
    (today, wedding): (NaiveDate, NaiveDate),
) -> usize {
    let mut steps: Vec<(&str, [f64; 2])> = Vec::new();
    let mut count = 0;
    for day in from.iter_days().take_while(|day| *day <= to).take(3_700) {
        if !(of.closed)(day) {
            continue;
        }
        count += usize::from(day >= today && day <= wedding);
        let Some(Cell { corner: (x, y), size: (w, h) }) = grid.cell(day) else { continue };
        pen.rect("wash-ink bare closed", (x, y), (w, h), 0.0);
        let lines = if w > 20.0 { 5 } else { 2 };
        for i in 0..lines {
            // Lines at 45 degrees or so, from the lower left to the upper right, cut at the cell.
            let t = (f64::from(i) + 0.5) / f64::from(lines) * 2.0;
            let (a, b) = ((t - 1.0).max(0.0), t.min(1.0));
            steps.push(("M", [x + w * a, y + h * b]));
            steps.push(("L", [x + w * b, y + h * a]));
        }
    }
    let steps: Vec<(&str, &[f64])> = steps.iter().map(|(verb, at)| (*verb, at.as_slice())).collect();
    pen.path("thin pale hatching", &steps);
    count
}

/// A line under the days from one to another: those at the bench, those that a change of size may take.
fn draw_runs(
    pen: &mut Pen,
    grid: &dyn Grid,
    days: Option<(NaiveDate, NaiveDate)>,
    group: &'static str,
    class: &'static str,
) {
    let Some((start, finish)) = days else { return };
    let mut run: Option<(f64, f64, f64)> = None;
    let mut runs = Vec::new();
    for cell in start.iter_days().take_while(|day| *day <= finish).take(3_700).filter_map(|day| grid.cell(day)) {
        let (x, y) = (cell.corner.0, cell.corner.1 + cell.size.1 - 1.5);
        run = match run {
            Some((from, _, at)) if (at - y).abs() < 0.1 => Some((from, x + cell.size.0, y)),
            done => {
                runs.extend(done);
                Some((x, x + cell.size.0, y))
            }
        };
    }
    runs.extend(run);
    pen.group(group, |pen| {
        for (from, to, y) in runs {
            pen.line(class, (from + 1.5, y), (to - 1.5, y));
        }
    });
}

fn symbol(pen: &mut Pen, mark: DayMark, at: At, r: f64) {
    let (x, y) = at;
    let square = |pen: &mut Pen, class: &str, r: f64| pen.rect(class, (x - r, y - r), (2.0 * r, 2.0 * r), 0.5);
    match mark {
        DayMark::Today => pen.circle("paper", at, r),
        DayMark::OrderBy => square(pen, "solid rouge thin", r),
        DayMark::Start => pen.path(
            "solid thin",
            &[("M", &[x - r * 0.8, y - r]), ("L", &[x + r, y]), ("L", &[x - r * 0.8, y + r]), ("Z", &[])],
        ),
        DayMark::Finish => pen.circle("solid verdigris thin", at, r * 0.9),
        DayMark::InHand => square(pen, "paper verdigris", r),
        DayMark::TryOn => {
            pen.path(
                "paper",
                &[("M", &[x, y - r]), ("L", &[x + r, y]), ("L", &[x, y + r]), ("L", &[x - r, y]), ("Z", &[])],
            );
        }
        DayMark::LastResize => {
            pen.path("paper rouge", &[("M", &[x - r, y - r]), ("L", &[x + r, y - r]), ("L", &[x, y + r]), ("Z", &[])]);
        }
        DayMark::Appointment => pen.circle("solid thin", at, r * 0.6),
        DayMark::Wedding => {
            pen.circle("paper bare", at, r * 1.6);
            pen.circle("rouge", (x - r * 0.6, y), r);
            pen.circle("rouge", (x + r * 0.6, y), r);
        }
    }
}

fn draw_key(pen: &mut Pen, marks: &[(DayMark, NaiveDate)], top: f64, likely: bool, room: bool) -> f64 {
    let mut y = top;
    for (mark, day) in marks {
        symbol(pen, *mark, (14.0, y - 4.5), 4.6);
        pen.text("", (32.0, y), Anchor::Start, words::day_mark(*mark));
        pen.runs("strong", (WIDTH - 4.0, y), Anchor::End, TEXT, &[("", &format::day(*day))]);
        y += 20.0;
    }
    if likely {
        for (class, x) in [("solid verdigris bare unlikely", 6.0), ("solid verdigris bare likeliest", 14.0)] {
            pen.rect(class, (x, y - 9.0), (8.0, 9.0), 0.0);
        }
        pen.text("soft", (32.0, y), Anchor::Start, words::likely_days());
        y += 20.0;
    }
    if room {
        pen.line("thick rouge", (6.0, y - 4.5), (22.0, y - 4.5));
        pen.text("soft", (32.0, y), Anchor::Start, words::room_for_resize());
        y += 20.0;
    }
    for i in 0..3 {
        let x = 6.0 + 5.0 * f64::from(i);
        pen.line("thin soft", (x, y), (x + 7.0, y - 9.0));
    }
    pen.text("soft", (32.0, y), Anchor::Start, words::closed_days());
    y + 8.0
}
