//! A calendar file: RFC 5545, one file with all events of a couple, to be taken over by any calendar.
//!
//! Every event keeps its UID for ever and its SEQUENCE only grows, so that a file taken over again replaces what was
//! there. Times are those of whoever looks at them ("floating"): a phone that crosses a border moves no appointment. A
//! day without a time lasts until the next day, not included. Lines end in CRLF and are folded at 75 octets, never
//! within a character.
//!
//! Names are in it only when they are asked for: calendars are shared with families and kept on servers.

use chrono::{Datelike, Days, NaiveDate, NaiveTime, TimeDelta, Timelike};

use crate::book::id::Moment;

/// One event. What it says comes from `words`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    pub uid: String,
    pub sequence: usize,
    pub day: NaiveDate,
    /// None for a whole day.
    pub time: Option<NaiveTime>,
    pub title: String,
    pub place: Option<String>,
    pub about: Option<String>,
    /// Whether it was called off: a calendar that has it takes it out.
    pub called_off: bool,
    /// Whether the calendar reminds of it.
    pub alarm: bool,
}

/// An appointment without an end lasts an hour.
const LASTS: TimeDelta = TimeDelta::hours(1);
/// The longest line in octets, its end not counted.
const LONGEST: usize = 75;

/// The file. `now` is when it was written.
pub fn write(events: &[Event], now: Moment) -> String {
    let mut file = String::new();
    for text in ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Bandwright//EN", "CALSCALE:GREGORIAN", "METHOD:PUBLISH"] {
        line(&mut file, text);
    }
    let stamp = utc(now);
    for event in events {
        write_event(&mut file, event, &stamp);
    }
    line(&mut file, "END:VCALENDAR");
    file
}

fn write_event(file: &mut String, event: &Event, stamp: &str) {
    line(file, "BEGIN:VEVENT");
    line(file, &format!("UID:{}", escaped(&event.uid)));
    line(file, &format!("DTSTAMP:{stamp}"));
    line(file, &format!("SEQUENCE:{}", event.sequence));
    let begins = date(event.day);
    match event.time {
        Some(time) => {
            let (ends, days) = time.overflowing_add_signed(LASTS);
            let last = if days > 0 { next(event.day) } else { event.day };
            line(file, &format!("DTSTART:{begins}T{}", clock(time)));
            line(file, &format!("DTEND:{}T{}", date(last), clock(ends)));
        }
        None => {
            line(file, &format!("DTSTART;VALUE=DATE:{begins}"));
            line(file, &format!("DTEND;VALUE=DATE:{}", date(next(event.day))));
            line(file, "TRANSP:TRANSPARENT");
        }
    }
    line(file, &format!("SUMMARY:{}", escaped(&event.title)));
    for (name, text) in [("LOCATION", &event.place), ("DESCRIPTION", &event.about)] {
        if let Some(text) = text {
            line(file, &format!("{name}:{}", escaped(text)));
        }
    }
    line(file, if event.called_off { "STATUS:CANCELLED" } else { "STATUS:CONFIRMED" });
    if event.alarm && !event.called_off {
        // A day ahead for whole days, from nine in the morning; two hours for appointments.
        let trigger = if event.time.is_some() { "TRIGGER:-PT2H" } else { "TRIGGER:-PT15H" };
        line(file, "BEGIN:VALARM");
        line(file, "ACTION:DISPLAY");
        line(file, &format!("DESCRIPTION:{}", escaped(&event.title)));
        line(file, trigger);
        line(file, "END:VALARM");
    }
    line(file, "END:VEVENT");
}

/// A line, folded: what goes on begins with a space, which counts.
fn line(file: &mut String, text: &str) {
    let mut octets = 0;
    for c in text.chars() {
        if octets + c.len_utf8() > LONGEST {
            file.push_str("\r\n ");
            octets = 1;
        }
        file.push(c);
        octets += c.len_utf8();
    }
    file.push_str("\r\n");
}

/// Text as a value: new lines and the signs that mean something else are escaped, control characters left out.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            c if c.is_control() && c != '\t' => {}
            c => out.push(c),
        }
    }
    out
}

fn date(day: NaiveDate) -> String {
    // The format has four figures for a year.
    format!("{:04}{:02}{:02}", day.year().clamp(0, 9999), day.month(), day.day())
}

fn clock(time: NaiveTime) -> String {
    format!("{:02}{:02}{:02}", time.hour(), time.minute(), time.second())
}

fn utc(moment: Moment) -> String {
    let seconds = moment.0.div_euclid(1000);
    let days = i32::try_from(seconds.div_euclid(86_400)).unwrap_or(0);
    let of_day = seconds.rem_euclid(86_400);
    // 719,163 is 1 January 1970, counted from the year 1.
    let day = NaiveDate::from_num_days_from_ce_opt(days.saturating_add(719_163)).unwrap_or_default();
    format!("{}T{:02}{:02}{:02}Z", date(day), of_day / 3600, of_day / 60 % 60, of_day % 60)
}

fn next(day: NaiveDate) -> NaiveDate {
    day.checked_add_days(Days::new(1)).unwrap_or(day)
}
