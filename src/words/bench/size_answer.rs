//! One size on every scale, in words.

use crate::answers::size::{Converted, InSystem, SizeAnswer};
use crate::trade::sizing::{Conversion, System};
use crate::words::answer::{CoupleView, Headline, Reason, reason};
use crate::words::{bench as say, showing, sizing, standing};

pub fn size_headline(found: &SizeAnswer) -> Headline {
    let tone = found.tone();
    match &found.converted {
        Some(Converted { stated, at, .. }) => {
            Headline { figure: say::hundredths(at.0), lines: say::inside(*stated, *at), tone }
        }
        None => Headline { figure: "?".to_owned(), lines: vec![say::several_readings(found.readings)], tone },
    }
}

/// The size in each system, with how far it is off and what the scale rests on.
pub fn size_reasons(found: &SizeAnswer) -> Vec<Reason> {
    found.converted.iter().flat_map(|converted| &converted.systems).map(in_system).collect()
}

fn in_system(of: &InSystem) -> Reason {
    let system = of.found.stated.system();
    let standing = standing::standing(of.standing);
    let why = match system.is_millimetres() {
        true => standing.to_owned(),
        false => format!("{} · {standing}", sizing::nearest_off(&of.found)),
    };
    reason(sizing::system_name(system), sizing::on_scale(&of.found), why)
}

/// What published charts make of the sizes that are named.
pub fn size_published(found: &SizeAnswer) -> Vec<String> {
    let all = found.converted.iter().flat_map(|converted| &converted.systems).flat_map(|it| &it.published);
    all.map(|(size, published)| sizing::published(*size, *published)).collect()
}

/// The same for the couple, without its picture.
pub fn size_shown(found: &SizeAnswer) -> Option<CoupleView> {
    let converted = found.converted.as_ref()?;
    let on_scale = |of: &Conversion| showing::on_scale(sizing::system_name(of.stated.system()), &sizing::on_scale(of));
    Some(CoupleView {
        title: showing::SIZE_TITLE.to_owned(),
        picture: String::new(),
        figure: showing::along(converted.at.0),
        lines: converted.systems.iter().map(|it| on_scale(&it.found)).collect(),
    })
}

/// Where each scale is used, and what it rests on.
pub fn about_scales() -> Vec<Reason> {
    let row = |system: System| {
        let why = format!("{} {}", say::used_in(system), sizing::system_source(system));
        reason(sizing::system_name(system), standing::standing(system.standing()), why)
    };
    System::ALL.map(row).to_vec()
}
