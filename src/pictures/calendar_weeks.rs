//! A calendar with a row a week, for the last weeks before a wedding.

use super::calendar_strip::{Cell, Grid};
use super::layout::SMALL;
use super::pen::{Anchor, At, Pen, WIDTH};
use crate::words::calendar as words;
use chrono::{Datelike, Days, NaiveDate};

const HEAD: f64 = 56.0;
const TOP: f64 = 18.0;
const ROW: f64 = 25.0;
const DAY: f64 = (WIDTH - HEAD - 2.0) / 7.0;

pub(super) struct Weeks {
    monday: NaiveDate,
    from: NaiveDate,
    to: NaiveDate,
}

impl Weeks {
    pub fn new(from: NaiveDate, to: NaiveDate) -> Self {
        let back = Days::new(u64::from(from.weekday().num_days_from_monday()));
        Weeks { monday: from.checked_sub_days(back).unwrap_or(from), from, to }
    }

    fn days(&self) -> impl Iterator<Item = NaiveDate> {
        let to = self.to;
        self.from.iter_days().take_while(move |day| *day <= to)
    }

    fn rows(&self) -> f64 {
        ((self.to - self.monday).num_days() / 7 + 1) as f64
    }
}

impl Grid for Weeks {
    fn cell(&self, day: NaiveDate) -> Option<Cell> {
        if day < self.from || day > self.to {
            return None;
        }
        let n = (day - self.monday).num_days();
        let corner = (HEAD + DAY * (n % 7) as f64, TOP + ROW * (n / 7) as f64);
        Some(Cell { corner, size: (DAY, ROW) })
    }

    fn draw(&self, pen: &mut Pen) {
        for (i, letter) in words::weekday_letters().into_iter().enumerate() {
            let x = HEAD + DAY * (i as f64 + 0.5);
            pen.runs("soft", (x, 12.0), Anchor::Middle, SMALL, &[("", letter)]);
        }
        for day in self.days() {
            if let Some(Cell { corner, size }) = self.cell(day) {
                pen.rect("leaf thin pale day", corner, size, 0.0);
                let new_month = day.day() == 1 || day == self.from;
                if new_month {
                    let head = words::month_head(day, day.month() == 1 || day == self.from);
                    // A month that begins in a week whose head is taken has its name one row down.
                    let taken = day != self.from && (day - self.monday).num_days() / 7 == 0;
                    let y = corner.1 + 16.5 + if taken { ROW } else { 0.0 };
                    pen.text("strong", (2.0, y), Anchor::Start, &head);
                }
            }
        }
    }

    fn draw_over(&self, pen: &mut Pen) {
        for day in self.days() {
            if let Some(Cell { corner, .. }) = self.cell(day) {
                let at = (corner.0 + 4.0, corner.1 + 15.5);
                pen.runs("on-leaf", at, Anchor::Start, SMALL, &[("", &day.day().to_string())]);
            }
        }
    }

    fn bottom(&self) -> f64 {
        TOP + ROW * self.rows()
    }

    fn symbol_radius(&self) -> f64 {
        4.6
    }

    fn middle(&self, cell: &Cell) -> At {
        (cell.corner.0 + DAY - 10.0, cell.corner.1 + ROW / 2.0 - 1.0)
    }
}
