//! The rules of every scale, one under the other, with a converted size across them all.

use super::Picture;
use super::rules::{Row, Rules, Tick, rules};
use crate::answers::size::Converted;
use crate::trade::measure::Circumference;
use crate::trade::sizing::{self, Conversion, Stated, Step, System};
use crate::words::bench as say;
use crate::words::sizing as say_sizing;

/// The scales that are drawn, from the top.
const DRAWN: [System; 5] = [System::Uk, System::Us, System::Iso, System::Japan, System::Italy];

/// Draws them.
pub fn size_rules(of: &Converted) -> Picture {
    let found = |system| of.systems.iter().map(|it| &it.found).find(|found| found.stated.system() == system);
    let rows = DRAWN.into_iter().filter_map(|system| Some(row(system, of.at, found(system)?)));
    rules(&Rules { at: of.at, rows: rows.collect() })
}

fn row(system: System, at: Circumference, found: &Conversion) -> Row {
    let ticks = sizing::all(system, system.step(Step::Quarter)).map(|size| Tick {
        at: size.circumference(),
        label: if size.is_on(Step::Whole) { say_sizing::size_name(size) } else { String::new() },
    });
    let nearest = match found.stated {
        // Where the scale has no size nothing of it is pointed at.
        Stated::Size(_) if found.is_beyond() => Tick { at, label: say_sizing::on_scale(found) },
        Stated::Size(size) => Tick { at: size.circumference(), label: say_sizing::on_scale(found) },
        Stated::Diameter(_) | Stated::Circumference(_) => Tick { at, label: String::new() },
    };
    Row {
        label: say::rule_name(system).to_owned(),
        ticks: ticks.collect(),
        nearest,
        off: say_sizing::nearest_off(found),
    }
}
