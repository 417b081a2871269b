//! The alternatives, read, and what the stack and the order size make of each.

use leptos::prelude::*;

use super::super::sheet::Complaints;
use super::super::{Opened, order, stack};
use crate::app::form::{Form, Start};
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::arcs;
use crate::book::couple::Band;
use crate::screens::fields;
use crate::trade::band::section::Section;
use crate::trade::band::{Finish, Profile, alloys};
use crate::trade::entry;
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::words::{bench as say, book as say_book, lengths};

/// The names of an alternative's fields.
pub struct Keys {
    pub width: &'static str,
    pub height: &'static str,
    pub profile: &'static str,
    pub metal: &'static str,
    pub finish: &'static str,
}

impl Keys {
    pub fn all(&self) -> [&'static str; 5] {
        [self.width, self.height, self.profile, self.metal, self.finish]
    }
}

macro_rules! keys {
    ($n:literal) => {
        Keys {
            width: concat!("band", $n, "-width"),
            height: concat!("band", $n, "-height"),
            profile: concat!("band", $n, "-profile"),
            metal: concat!("band", $n, "-metal"),
            finish: concat!("band", $n, "-finish"),
        }
    };
}

pub const KEYS: [Keys; 4] = [keys!(1), keys!(2), keys!(3), keys!(4)];

/// What all alternatives share: the other rings, and what the order size starts with.
pub struct Basis {
    stack: Vec<Start>,
    order: Option<order::Basis>,
    known: Band,
    has_reading: bool,
}

/// One band as it would be.
#[derive(Clone, Debug, PartialEq)]
pub struct Alternative {
    pub number: usize,
    pub band: Band,
    pub section: Option<Section>,
    pub lines: Vec<String>,
    /// What is missing for an order size.
    pub no_size: Option<String>,
    pub cautions: Vec<String>,
    /// The same in front of the couple: nobody's own words for a ring.
    pub shown_cautions: Vec<String>,
}

impl Basis {
    pub fn of(opened: &Opened) -> Basis {
        Basis {
            stack: stack::start(opened),
            order: opened.whose.is_some().then(|| order::basis(opened)),
            known: opened.read(|couple, who| couple.band(who)).unwrap_or_default(),
            has_reading: opened.read(|couple, who| !couple.readings(who).is_empty()).unwrap_or(false),
        }
    }
}

/// What is wrong, and every alternative that has a width.
pub fn reckon(app: App, form: Form, basis: &Basis) -> (Complaints, Vec<Alternative>) {
    let mut complaints = Complaints::new();
    let mut all = Vec::new();
    for (at, keys) in KEYS.iter().enumerate() {
        let text = |key| form.text(key).get();
        let typed = [keys.width, keys.height, keys.profile, keys.metal, keys.finish].map(text);
        let [width, height, profile, metal, finish] = typed;
        if width.trim().is_empty() {
            continue;
        }
        let set = matches!(Finish::from_code(&finish), Some(Finish::Set | Finish::SetAllRound));
        let of = Band {
            width: entry::read_length(&width, Limit::BandWidth).ok(),
            profile: Profile::from_code(&profile),
            height: entry::read_length(&height, Limit::RingHeight).ok(),
            finish: Finish::from_code(&finish),
            metal: alloys::by_code(&metal),
            place: basis.known.place,
            ..Band::default()
        };
        let (dome, relief) = arcs::known_for(&basis.known, &of);
        let plain = |of: Option<Length>| of.map(lengths::plain).unwrap_or_default();
        let found = stack::with_band(
            app,
            &basis.stack,
            &[
                ("band", width.clone()),
                ("band-height", height.clone()),
                ("band-profile", profile.clone()),
                ("band-dome", plain(dome)),
                ("band-relief", plain(relief)),
                ("band-bay", String::new()),
                ("band-metal", metal.clone()),
                ("band-set", fields::yes_or_nothing(set)),
            ],
        );
        complaints.extend(found.complaints.iter().filter_map(|(key, said)| {
            let key = match *key {
                "band" => keys.width,
                // A dome or a relief that does not fit is the usual one for this width and height.
                "band-height" | "band-dome" | "band-relief" => keys.height,
                _ => return None,
            };
            Some((key, said.clone()))
        }));
        if of.width.is_none() {
            continue;
        }
        let band = Band { dome, relief, ..of };
        let section = stack::section_of_band(&found);
        let mut lines = vec![say_book::band(&band)];
        lines.extend(section.and_then(|section| say::arcs(&band, &section)));
        let size = basis.order.as_ref().map(|order| order::size_of(app, order, &width, &band));
        // What is missing is said to the jeweller; the couple is shown what there is.
        let missing = |size: &Option<String>| {
            size.is_none().then(|| say::no_order_size(band.profile.is_some(), basis.has_reading))
        };
        let no_size = size.as_ref().and_then(missing);
        lines.extend(size.flatten().map(|size| say::order_size_of(&size)));
        lines.extend(stack::in_short(&found));
        let mut cautions = stack::cautions_in_short(&found, stack::own_name);
        let mut shown_cautions = stack::cautions_in_short(&found, stack::plain_name);
        cautions.extend(say::cannot_be_resized(&band).map(str::to_owned));
        shown_cautions.extend(say::cannot_be_resized(&band).map(str::to_owned));
        all.push(Alternative { number: at + 1, band, section, lines, no_size, cautions, shown_cautions });
    }
    (complaints, all)
}
