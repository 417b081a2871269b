//! The forms of the settings, for the bad input.

use super::bad_input::{Field, Form, Kind::*, needed, optional};
use crate::arbitrary::practice_of_nothing as practice;
use crate::shared::date;
use bandwright::book::field::Constant;
use bandwright::book::id::{InstallationId, ItemId};
use bandwright::book::practice::Practice;
use bandwright::forms::setup::*;
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::places::Place;
use bandwright::trade::sizing::System;
use bandwright::words::format;
use chrono::NaiveDate;

fn today() -> NaiveDate {
    date("2026-11-25")
}

fn all<const N: usize>(parts: [Vec<Field>; N]) -> Vec<Field> {
    parts.into_iter().flatten().collect()
}

pub fn forms() -> Vec<Form> {
    vec![
        fair(),
        phone(),
        first_size(),
        a_gauge(),
        a_band_of_the_tray(),
        a_usual_lead_time(),
        a_lead_time_of_ones_own(),
        the_workshop(),
        another_place(),
        what_is_kept(),
        a_closure(),
        what_is_planned_for(),
        figures_of_a_stack(),
        constants_of_the_fit(),
    ]
}

fn fair() -> Form {
    use names::*;
    Form {
        name: "fair",
        filled: start_fair(Practice(&practice())),
        read: |texts| read_fair(texts).map(drop),
        fields: optional(Words, [FAIR]),
    }
}

fn phone() -> Form {
    use names::*;
    Form {
        name: "name of a phone",
        filled: start_phone(Practice(&practice()), InstallationId(5)),
        read: |texts| read_phone(texts, InstallationId(5)).map(drop),
        fields: optional(Words, [PHONE_NAME]),
    }
}

fn first_size() -> Form {
    use sizes::*;
    let read = |texts: &_| {
        read(texts);
        Ok(())
    };
    let filled = start(Practice(&practice()));
    Form { name: "sizes", filled, read, fields: optional(Choice, [FIRST_SYSTEM, STEP]) }
}

/// A stick that is domed inside, calibrated at every point.
fn a_gauge() -> Form {
    use calibration::POINTS;
    use gauge::*;
    let mut filled =
        start(None).with(NAME, "stick").with(WIDTH, "4").with(KIND, STICK).with(BORE, "domed").with(RELIEF, "0.1");
    let mut fields = all([
        needed(Words, [NAME]),
        needed(Figure, [WIDTH, STEP, ERROR, TAPER]),
        optional(Figure, [RELIEF]),
        optional(Choice, [KIND, BORE]),
    ]);
    for point in POINTS {
        filled = filled.with(point.says.size, "M").with(point.is.size, "M½");
        fields.extend(needed(Size, [point.says.size, point.is.size]));
        fields.extend(optional(Choice, [point.says.which, point.is.which]));
    }
    Form { name: "gauge", filled, read: |texts| read(texts, System::Uk).map(drop), fields }
}

fn a_band_of_the_tray() -> Form {
    use try_on::*;
    Form {
        name: "try-on band",
        filled: start(None).with(NUMBER, "12").with(SIZE, "M½").with(WIDTH, "4"),
        read: |texts| match read(texts, System::Uk) {
            // An inside that cannot be picked leaves nothing to complain of.
            Err(all) if all.is_empty() => Ok(()),
            read => read.map(drop),
        },
        fields: all([
            needed(Words, [NUMBER]),
            needed(Size, [SIZE]),
            needed(Figure, [WIDTH]),
            optional(Figure, [HEIGHT]),
            optional(Choice, [SIZE_AS, BORE]),
        ]),
    }
}

fn a_usual_lead_time() -> Form {
    use lead_time::*;
    let filled = start_usual(Practice(&practice()), Work::Making);
    Form {
        name: "usual lead time",
        filled: DAYS.into_iter().fold(filled, |texts, key| texts.with(key, "5")),
        read: |texts| read_usual(texts, Work::Making).map(drop),
        fields: needed(Whole, DAYS),
    }
}

fn a_lead_time_of_ones_own() -> Form {
    use lead_time::*;
    Form {
        name: "lead time of one's own",
        filled: DAYS.into_iter().fold(start_own(None).with(NAME, "stone"), |texts, key| texts.with(key, "5")),
        read: |texts| read_own(texts).map(drop),
        fields: all([needed(Words, [NAME]), needed(Whole, DAYS)]),
    }
}

fn the_workshop() -> Form {
    use workshop::*;
    Form {
        name: "days of the workshop",
        filled: start(Practice(&practice())),
        read: |texts| read(texts).map(drop),
        fields: all([
            optional(Choice, [REGION, WEEKDAYS, ON_HOLIDAYS]),
            optional(Time, [CUT_OFF]),
            optional(Whole, [DAYS_IN_HAND]),
        ]),
    }
}

fn another_place() -> Form {
    use place::*;
    Form {
        name: "assay office",
        filled: start(Practice(&practice()), Place::AssayOffice),
        read: |texts| read(texts, Place::AssayOffice).map(drop),
        fields: optional(Choice, [WEEKDAYS, ON_HOLIDAYS, AT_CHRISTMAS]),
    }
}

fn what_is_kept() -> Form {
    use holidays::*;
    let region = Practice(&practice()).region();
    let read = |texts: &_| {
        read(texts, &listed(Practice(&practice()).region(), today()));
        Ok(())
    };
    let filled = start(Practice(&practice()), &listed(region, today()));
    Form { name: "holidays", filled, read, fields: optional(Choice, [KEPT]) }
}

fn a_closure() -> Form {
    use closure::*;
    Form {
        name: "closure",
        filled: start(None, format::day).with(NAME, "summer").with(FROM, "2 Aug 2027").with(TO, "13 Aug 2027"),
        read: |texts| read(texts, Practice(&practice()), ItemId(1), today()).map(drop),
        fields: all([needed(Words, [NAME]), needed(Day, [FROM, TO]), optional(Choice, [PLACE, REPEATS])]),
    }
}

fn what_is_planned_for() -> Form {
    use chances::*;
    Form {
        name: "chances",
        filled: start(Practice(&practice())),
        read: |texts| read(texts).map(drop),
        fields: all([
            optional(Whole, [CONFIDENCE_WANTED, RESIZE, WAIT, BUSY, LONGER]),
            optional(Choice, [COUNTS_TODAY, MONTHS]),
        ]),
    }
}

fn figures_of_a_stack() -> Form {
    use stack::*;
    Form {
        name: "figures of a stack",
        filled: start(Practice(&practice())),
        read: |texts| read(texts).map(drop),
        fields: optional(Figure, [FREE_LENGTH, GAP, ROOMY, FULL, CLEARANCE, CATCH, THINNEST]),
    }
}

fn constants_of_the_fit() -> Form {
    use fit::*;
    Form {
        name: "constants of the fit",
        filled: start(Practice(&practice())),
        read: |texts| read(texts).map(drop),
        fields: Constant::ALL
            .into_iter()
            .flat_map(|of| optional(if of == Constant::Offset { Signed } else { Figure }, [key(of)]))
            .collect(),
    }
}
