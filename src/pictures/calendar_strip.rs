//! From today to the wedding: weeks while they can be read, months beyond, with closed days hatched.

use super::Picture;
use super::calendar_months::Months;
use super::calendar_weeks::Weeks;
use super::lay::TEXT;
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::trade::arrange::in_order;
use crate::words::format;
use crate::words::pictures::{self as words, DayMark};
use chrono::{Days, NaiveDate};

/// What the calendar is drawn from. Days that are not known are left out.
pub struct CalendarStrip<'a> {
    pub today: NaiveDate,
    pub wedding: NaiveDate,
    pub order_by: Option<NaiveDate>,
    pub start: Option<NaiveDate>,
    pub finish: Option<NaiveDate>,
    pub in_hand: Option<NaiveDate>,
    /// Whether the bench is closed on a day.
    pub closed: &'a dyn Fn(NaiveDate) -> bool,
}

/// Up to so many days, each week is a row; beyond, each month.
const WEEKS_UP_TO: i64 = 9 * 7;
/// A day that has passed is still drawn when it is not longer ago than this.
const LOOK_BACK: Days = Days::new(45);

/// Draws the calendar.
pub fn calendar_strip(of: &CalendarStrip) -> Picture {
    let marks = marks(of);
    let earliest = of.today.checked_sub_days(LOOK_BACK).unwrap_or(of.today);
    let drawn = |day: &NaiveDate| *day >= earliest;
    let days = || marks.iter().map(|(_, day)| *day).filter(drawn);
    let (from, to) = (days().min().unwrap_or(of.today), days().max().unwrap_or(of.today));

    let mut pen = Pen::default();
    let grid: Box<dyn Grid> = if (to - from).num_days() < WEEKS_UP_TO {
        Box::new(Weeks::new(from, to))
    } else {
        Box::new(Months::new(from, to))
    };
    grid.draw(&mut pen);
    let closed = draw_closed(&mut pen, grid.as_ref(), of, from, to);
    draw_work(&mut pen, grid.as_ref(), of);
    grid.draw_over(&mut pen);
    for (mark, day) in &marks {
        if let Some(cell) = grid.cell(*day) {
            pen.group("mark", |pen| symbol(pen, *mark, grid.middle(&cell), grid.symbol_radius()));
        }
    }
    let end = draw_key(&mut pen, &marks, grid.bottom() + 22.0);
    pen.finish("calendar", WIDTH, end, &words::calendar(&marks, closed))
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

fn marks(of: &CalendarStrip) -> Vec<(DayMark, NaiveDate)> {
    let known = [
        (DayMark::Today, Some(of.today)),
        (DayMark::OrderBy, of.order_by),
        (DayMark::Start, of.start),
        (DayMark::Finish, of.finish),
        (DayMark::InHand, of.in_hand),
        (DayMark::Wedding, Some(of.wedding)),
    ];
    in_order(known.into_iter().filter_map(|(mark, day)| day.map(|day| (mark, day))), |(_, day)| *day)
}

/// Hatches every closed day in one stroke of the pen, and says how many there are from today to the wedding.
fn draw_closed(pen: &mut Pen, grid: &dyn Grid, of: &CalendarStrip, from: NaiveDate, to: NaiveDate) -> usize {
    let mut steps: Vec<(&str, [f64; 2])> = Vec::new();
    let mut count = 0;
    for day in from.iter_days().take_while(|day| *day <= to).take(3_700) {
        if !(of.closed)(day) {
            continue;
        }
        count += usize::from(day >= of.today && day <= of.wedding);
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

/// The days at the bench, from the start to the likely finish: a line under them.
fn draw_work(pen: &mut Pen, grid: &dyn Grid, of: &CalendarStrip) {
    let (Some(start), Some(finish)) = (of.start, of.finish) else { return };
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
    pen.group("work", |pen| {
        for (from, to, y) in runs {
            pen.line("thick verdigris", (from + 1.5, y), (to - 1.5, y));
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
        DayMark::Wedding => {
            pen.circle("paper bare", at, r * 1.6);
            pen.circle("rouge", (x - r * 0.6, y), r);
            pen.circle("rouge", (x + r * 0.6, y), r);
        }
    }
}

fn draw_key(pen: &mut Pen, marks: &[(DayMark, NaiveDate)], top: f64) -> f64 {
    let mut y = top;
    for (mark, day) in marks {
        symbol(pen, *mark, (14.0, y - 4.5), 4.6);
        pen.text("", (32.0, y), Anchor::Start, words::day_mark(*mark));
        pen.runs("strong", (WIDTH - 4.0, y), Anchor::End, TEXT, &[("", &format::day(*day))]);
        y += 20.0;
    }
    for i in 0..3 {
        let x = 6.0 + 5.0 * f64::from(i);
        pen.line("thin soft", (x, y), (x + 7.0, y - 9.0));
    }
    pen.text("soft", (32.0, y), Anchor::Start, words::closed_days());
    y + 8.0
}
