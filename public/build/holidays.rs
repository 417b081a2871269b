//! Makes Rust tables of `src/trade/dates/holidays.txt` while the app is built, and stops at a line that it does not
//! understand. What the parts of a line mean is said at the top of that file.
//!
//! The table is a text file because somebody who knows a country's holidays need not know Rust. It becomes plain
//! arrays, so that the app carries no reader of it.

use std::fmt::Write;
use std::path::Path;
use std::{env, fs};

const TABLE: &str = "src/trade/dates/holidays.txt";
const WEEK: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS: [(&str, u32); 12] = [
    ("January", 31),
    ("February", 29),
    ("March", 31),
    ("April", 30),
    ("May", 31),
    ("June", 30),
    ("July", 31),
    ("August", 31),
    ("September", 30),
    ("October", 31),
    ("November", 30),
    ("December", 31),
];

type Result<T> = std::result::Result<T, String>;

#[derive(Default)]
struct Table {
    /// Code, name, whether proclaimed year by year, the last year that is settled.
    regions: Vec<(String, String, bool, i32)>,
    holidays: Vec<(String, String)>,
    rules: String,
    rules_count: usize,
    once: String,
    once_count: usize,
}

fn main() {
    println!("cargo::rerun-if-changed={TABLE}");
    println!("cargo::rerun-if-changed=public/build/holidays.rs");
    let text = fs::read_to_string(TABLE).expect("the table of holidays is there");
    let mut table = Table::default();
    for (line, n) in text.lines().zip(1..) {
        if let Err(why) = read(&mut table, line.trim()) {
            println!("cargo::error={TABLE}, line {n}: {why}");
            return;
        }
    }
    let out = env::var("OUT_DIR").expect("cargo says where to write");
    let write = |name: &str, text: String| fs::write(Path::new(&out).join(name), text).expect("can be written");
    write("holidays.rs", rules(&table));
    write("holiday_names.rs", names(&table));
}

fn read(table: &mut Table, line: &str) -> Result<()> {
    if line.is_empty() || line.starts_with('#') {
        return Ok(());
    }
    let (kind, rest) = line.split_once(' ').ok_or("a line begins with region, holiday, rule or once")?;
    let parts: Vec<&str> = rest.split('|').map(str::trim).collect();
    match (kind, parts.as_slice()) {
        ("region", [code, name, until]) => {
            let (word, year) = until.rsplit_once(" to ").ok_or("how long it is settled: proclaimed to 2028")?;
            let proclaimed = match word {
                "proclaimed" => true,
                "law known" => false,
                _ => return Err(format!("neither proclaimed nor law known: {word}")),
            };
            table.regions.push((code_of(code)?, (*name).into(), proclaimed, number(year)?));
        }
        ("holiday", [code, name]) => table.holidays.push((code_of(code)?, (*name).into())),
        ("rule", [places, holiday, day, years, weekend, source]) => {
            let (places, name) = (places_of(table, places)?, name_of(table, holiday)?);
            let (rule, (from, to, every), weekend) = (rule_of(day)?, years_of(years)?, weekend_of(weekend)?);
            let by_choice = source.starts_with("by choice:");
            writeln!(
                table.rules,
                "    Row {{ places: {places}, name: HolidayName::{name}, rule: {rule}, from: {from}, to: {to}, \
                 every: {every}, weekend: {weekend}, by_choice: {by_choice} }},"
            )
            .map_err(|error| error.to_string())?;
            table.rules_count += 1;
        }
        ("once", [places, holiday, day, instead, _source]) => {
            let (places, name, day) = (places_of(table, places)?, name_of(table, holiday)?, day_of(day)?);
            let instead = match instead.strip_prefix("in place of ") {
                Some(day) => format!("Some({})", day_of(day)?),
                None if *instead == "-" => "None".into(),
                None => return Err(format!("neither - nor in place of a day: {instead}")),
            };
            writeln!(
                table.once,
                "    OneOff {{ places: {places}, name: HolidayName::{name}, day: {day}, replaces: {instead} }},"
            )
            .map_err(|error| error.to_string())?;
            table.once_count += 1;
        }
        ("region" | "holiday" | "rule" | "once", parts) => {
            return Err(format!("{} parts do not make a {kind}", parts.len()));
        }
        _ => return Err(format!("a line begins with region, holiday, rule or once, not {kind}")),
    }
    Ok(())
}

fn code_of(code: &str) -> Result<String> {
    let fine = code.starts_with(|c: char| c.is_ascii_lowercase())
        && code.chars().all(|c| c.is_ascii_lowercase() || c == '-' || c.is_ascii_digit());
    if fine { Ok(code.to_owned()) } else { Err(format!("a code is of small letters and hyphens: {code}")) }
}

fn number<T: std::str::FromStr>(text: &str) -> Result<T> {
    text.trim().parse().map_err(|_| format!("not a number: {text}"))
}

/// The regions as bits.
fn places_of(table: &Table, text: &str) -> Result<String> {
    let mut bits = 0u64;
    for word in text.split_whitespace() {
        let hits = |code: &str| word.strip_suffix('*').map_or(word == code, |start| code.starts_with(start));
        let found = table.regions.iter().enumerate().filter(|(_, region)| hits(&region.0));
        let found = found.fold(0, |bits, (at, _)| bits | 1 << at);
        if found == 0 {
            return Err(format!("there is no region {word} above"));
        }
        bits |= found;
    }
    if bits == 0 { Err("no region".into()) } else { Ok(format!("{bits:#x}")) }
}

fn name_of(table: &Table, code: &str) -> Result<String> {
    let known = table.holidays.iter().any(|(known, _)| known == code);
    if known { Ok(camel(code)) } else { Err(format!("there is no holiday {code} above")) }
}

fn rule_of(text: &str) -> Result<String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    Ok(match words.as_slice() {
        ["Easter"] => "Rule::Easter(0)".into(),
        ["Easter", days] => format!("Rule::Easter({})", number::<i16>(days)?),
        [day, month] => {
            let (day, month) = fixed(day, month)?;
            format!("Rule::Fixed {{ day: {day}, month: {month} }}")
        }
        [weekday, "on", "or", "after", day, month] => {
            let (day, month) = fixed(day, month)?;
            from_day(weekday, day, month)?
        }
        [nth, weekday, "in", month] => {
            let (_, month) = fixed("1", month)?;
            let day = match *nth {
                "first" => 1,
                "second" => 8,
                "third" => 15,
                "fourth" => 22,
                "last" if month != 2 => MONTHS[month - 1].1 - 6,
                _ => return Err(format!("no first, second, third, fourth or last: {nth}")),
            };
            from_day(weekday, day, month)?
        }
        _ => return Err(format!("not a rule for a day: {text}")),
    })
}

fn from_day(weekday: &str, day: u32, month: usize) -> Result<String> {
    let short = weekday.get(..3).filter(|short| WEEK.contains(short)).ok_or(format!("no weekday: {weekday}"))?;
    Ok(format!("Rule::From {{ weekday: Weekday::{short}, day: {day}, month: {month} }}"))
}

fn fixed(day: &str, month: &str) -> Result<(u32, usize)> {
    let at = MONTHS.iter().position(|(name, _)| *name == month).ok_or(format!("no month: {month}"))?;
    let day = number(day)?;
    if (1..=MONTHS[at].1).contains(&day) { Ok((day, at + 1)) } else { Err(format!("no such day: {day} {month}")) }
}

fn years_of(text: &str) -> Result<(i32, String, i32)> {
    if let Some(rest) = text.strip_prefix("from ") {
        let (from, every) = match rest.split_once(" every ") {
            Some((from, every)) => (from, number(every)?),
            None => (rest, 1),
        };
        return if every > 0 { Ok((number(from)?, "i32::MAX".into(), every)) } else { Err("every 0 years".into()) };
    }
    let (from, to) = text.split_once(" to ").ok_or(format!("no years: {text}"))?;
    Ok((number(from)?, number::<i32>(to)?.to_string(), 1))
}

fn weekend_of(text: &str) -> Result<String> {
    let shifts = |rest: &str, again: bool| -> Result<String> {
        let words: Vec<&str> = rest.split_whitespace().collect();
        let mut by = [0i8; 7];
        for pair in words.chunks(2) {
            let [day, days] = pair else { return Err(format!("a weekday and a number of days: {rest}")) };
            let at = WEEK.iter().position(|known| known == day).ok_or(format!("no weekday: {day}"))?;
            by[at] = number(days)?;
        }
        Ok(format!("OnWeekend::Shift {{ by: {by:?}, again: {again} }}"))
    };
    match text {
        "-" => Ok("OnWeekend::Stays".into()),
        "again on the next free weekday" => Ok("OnWeekend::NextFreeWeekday".into()),
        _ => match (text.strip_prefix("again on "), text.strip_prefix("moved on ")) {
            (Some(rest), _) => shifts(rest, true),
            (_, Some(rest)) => shifts(rest, false),
            _ => Err(format!("nothing that a holiday does on a weekend: {text}")),
        },
    }
}

/// A day that does not exist does not compile.
fn day_of(text: &str) -> Result<String> {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts.as_slice() else { return Err(format!("no day: {text}")) };
    Ok(format!("date({}, {}, {})", number::<i32>(year)?, number::<u32>(month)?, number::<u32>(day)?))
}

fn camel(code: &str) -> String {
    let word = |word: &str| word[..1].to_uppercase() + &word[1..];
    code.split('-').filter(|part| !part.is_empty()).map(word).collect()
}

fn rules(table: &Table) -> String {
    let regions: Vec<&str> = table.regions.iter().map(|(code, ..)| code.as_str()).collect();
    let holidays: Vec<&str> = table.holidays.iter().map(|(code, _)| code.as_str()).collect();
    let mut out = String::new();
    choice(&mut out, "Region", "Where public holidays are those of.", &regions);
    choice(&mut out, "HolidayName", "Which holiday a day is; what people call it is in `words`.", &holidays);
    let settled = table.regions.iter().map(|(_, _, proclaimed, year)| format!("({proclaimed}, {year})"));
    let settled: Vec<String> = settled.collect();
    out += &format!("const SETTLED: [(bool, i32); {}] = [{}];\n", settled.len(), settled.join(", "));
    out += &format!("static RULES: [Row; {}] = [\n{}];\n", table.rules_count, table.rules);
    out += &format!("static ONE_OFFS: [OneOff; {}] = [\n{}];\n", table.once_count, table.once);
    out
}

/// An enum of these codes, with all of them in order and the code of each.
fn choice(out: &mut String, name: &str, what: &str, codes: &[&str]) {
    let variants: Vec<String> = codes.iter().map(|code| camel(code)).collect();
    let all: Vec<String> = variants.iter().map(|variant| format!("{name}::{variant}")).collect();
    let count = codes.len();
    *out += &format!(
        "/// {what}\n#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]\npub enum {name} {{ {} }}\n\
         impl {name} {{\n    pub const ALL: [{name}; {count}] = [{}];\n    /// Its word in files.\n    \
         pub fn code(self) -> &'static str {{\n        const CODES: [&str; {count}] = {codes:?};\n        \
         CODES[self as usize]\n    }}\n}}\n",
        variants.join(", "),
        all.join(", "),
    );
}

fn names(table: &Table) -> String {
    let regions: Vec<&str> = table.regions.iter().map(|(_, name, ..)| name.as_str()).collect();
    let holidays: Vec<&str> = table.holidays.iter().map(|(_, name)| name.as_str()).collect();
    format!(
        "const REGIONS: [&str; {}] = {regions:?};\nconst HOLIDAYS: [&str; {}] = {holidays:?};\n",
        regions.len(),
        holidays.len()
    )
}
