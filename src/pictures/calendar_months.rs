//! A calendar with a row a month and a column a day of the month, for up to two years and, with a cut in the middle,
//! beyond.

use super::calendar_strip::{Cell, Grid};
use super::layout::SMALL;
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::words::calendar as words;
use chrono::{Datelike, NaiveDate};

const HEAD: f64 = 54.0;
const TOP: f64 = 18.0;
const DAY: f64 = (WIDTH - HEAD - 2.0) / 31.0;
/// More months than this are cut in the middle.
const MOST: i32 = 25;
const KEPT: i32 = 12;

pub(super) struct Months {
    from: NaiveDate,
    to: NaiveDate,
}

fn month_number(day: NaiveDate) -> i32 {
    day.year() * 12 + day.month0() as i32
}

impl Months {
    pub fn new(from: NaiveDate, to: NaiveDate) -> Self {
        Months { from, to }
    }

    fn months(&self) -> i32 {
        month_number(self.to) - month_number(self.from) + 1
    }

    fn is_cut(&self) -> bool {
        self.months() > MOST
    }

    /// Rows that are drawn, the cut counted as one.
    fn rows(&self) -> i32 {
        if self.is_cut() { 2 * KEPT + 1 } else { self.months() }
    }

    fn row_height(&self) -> f64 {
        (290.0 / f64::from(self.rows())).clamp(14.0, 22.0)
    }

    /// The row of a month, unless it is one of those cut out.
    fn row(&self, day: NaiveDate) -> Option<i32> {
        let n = month_number(day) - month_number(self.from);
        let cut = self.months() - self.rows();
        match n {
            n if !self.is_cut() || n < KEPT => Some(n),
            n if n > KEPT + cut => Some(n - cut),
            _ => None,
        }
    }

    fn y(&self, row: i32) -> f64 {
        TOP + self.row_height() * f64::from(row)
    }

    fn first_days(&self) -> impl Iterator<Item = NaiveDate> {
        (month_number(self.from)..=month_number(self.to))
            .filter_map(|n| NaiveDate::from_ymd_opt(n.div_euclid(12), n.rem_euclid(12) as u32 + 1, 1))
    }
}

impl Grid for Months {
    fn cell(&self, day: NaiveDate) -> Option<Cell> {
        if day < self.from || day > self.to {
            return None;
        }
        let corner = (HEAD + DAY * f64::from(day.day0()), self.y(self.row(day)?));
        Some(Cell { corner, size: (DAY, self.row_height() - 3.0) })
    }

    fn draw(&self, pen: &mut Pen) {
        for day in [1, 5, 10, 15, 20, 25, 30] {
            let x = HEAD + DAY * (f64::from(day) - 0.5);
            pen.runs("soft", (x, 12.0), Anchor::Middle, SMALL, &[("", &day.to_string())]);
        }
        for first in self.first_days().take(1_300) {
            let Some(row) = self.row(first) else { continue };
            let begins = first.max(self.from);
            let days = i32::from(first.num_days_in_month());
            let ends = if month_number(first) == month_number(self.to) { self.to.day() as i32 } else { days };
            let y = self.y(row);
            let x = HEAD + DAY * f64::from(begins.day0());
            let wide = DAY * (f64::from(ends) - f64::from(begins.day0()));
            pen.rect("leaf thin soft month", (x, y), (wide, self.row_height() - 3.0), 0.0);
            let with_year = first.month() == 1 || begins == self.from || Some(row) == self.is_cut().then_some(KEPT + 1);
            let class = if with_year { "strong" } else { "" };
            let head = words::month_head(first, with_year);
            let y = y + self.row_height() / 2.0 + 3.0;
            pen.runs(class, (1.0, y), Anchor::Start, SMALL, &[("", &head)]);
        }
        if self.is_cut() {
            let y = self.y(KEPT) + self.row_height() / 2.0 + 3.0;
            let left_out = i64::from(self.months() - 2 * KEPT);
            pen.runs("soft", (HEAD, y), Anchor::Start, SMALL, &[("", &words::months_left_out(left_out))]);
        }
    }

    fn draw_over(&self, _: &mut Pen) {}

    fn bottom(&self) -> f64 {
        self.y(self.rows()) - 2.0
    }

    fn symbol_radius(&self) -> f64 {
        4.3
    }

    fn middle(&self, cell: &Cell) -> At {
        (cell.corner.0 + DAY / 2.0, cell.corner.1 + cell.size.1 / 2.0)
    }
}
