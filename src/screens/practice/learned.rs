//! What the bands that have been worn say about the constants: shown beside the customary ones, used only if the
//! jeweller says so.

use crate::parts::el::{maybe, or_nothing};
use crate::parts::lay::{para, section};
use leptos::prelude::*;

use super::keep;
use crate::app::address::Setting;
use crate::app::form::Form;
use crate::app::state::App;
use crate::book::change::Write;
use crate::book::couple::Couple;
use crate::book::field::{Constant, Field, PracticeField};
use crate::book::practice::{Practice, customary};
use crate::book::value::Value;
use crate::book::worn_bands::bands_worn;
use crate::parts::button::{Weight, button};
use crate::parts::reasons::reasons;
use crate::trade::fit::{Learned, learn};
use crate::trade::limits::{self, Amount};
use crate::trade::measure::Length;
use crate::words::answer::{Reason, reason};
use crate::words::{format, gauges as say, practice as say_practice};

pub fn learned(app: App, form: Form) -> AnyView {
    maybe(move || {
        let found = app.with(|book| {
            let couples = book.couples.values().map(|record| Couple(record));
            learn(&bands_worn(couples, Practice(&book.practice)))
        });
        Some(section(say::LEARNED, inside(app, form, found)))
    })
}

fn inside(app: App, form: Form, found: Learned) -> Vec<AnyView> {
    if found.bands == 0 {
        return vec![para("small", say::NOTHING_LEARNED)];
    }
    let rows = figures(&found).map(|(value, sd)| row(value, sd));
    let can_be_used = figures(&found).into_iter().flat_map(|(value, sd)| [value, sd]).all(is_accepted);
    let press = move || {
        let write = |(which, value)| Write::set(Field::Practice(PracticeField::Constant(which)), Value::Length(value));
        let writes = figures(&found).into_iter().flat_map(|(value, sd)| [value, sd]).map(write).collect();
        keep(app, Setting::Fit, form, writes, say::LEARNED_USED.to_owned());
    };
    vec![
        para("", say::learned_from(found.bands)),
        reasons(Signal::stored(rows.to_vec())),
        para("", found.score.map_or_else(|| say::NO_SCORE.to_owned(), say::score)),
        or_nothing(can_be_used.then(|| button(Weight::Quiet, say::USE_LEARNED, press))),
    ]
}

/// A constant with its value.
type Figure = (Constant, Length);

/// Each constant and its give or take.
fn figures(found: &Learned) -> [(Figure, Figure); 3] {
    [
        ((Constant::Width, found.width.value), (Constant::WidthSpread, found.width.sd)),
        ((Constant::Bore, found.bore.value), (Constant::BoreSpread, found.bore.sd)),
        ((Constant::Offset, found.offset.value), (Constant::OffsetSpread, found.offset.sd)),
    ]
}

fn row((which, value): Figure, (_, sd): Figure) -> Reason {
    reason(say_practice::constant(which), format::mm(value, 2), say::learned_why(sd, customary(which)))
}

fn is_accepted((which, value): Figure) -> bool {
    limits::of(super::fit::limit(which)).holds(Amount::Length(value))
}
