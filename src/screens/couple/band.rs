//! The band wanted for one of the two: width, profile, surface and metal, each as far as it is settled.

use crate::parts::el::maybe;
use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::said::beside;
use super::{Whose, whose_of};
use crate::app::address::{Address, Calculator, Part, with_query};
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::couple::Band;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::parts::button::{Weight, link_button};
use crate::parts::choice::{Shape, choice, option};
use crate::parts::picture::picture;
use crate::pictures::section as drawing;
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::section::{Section, SectionError, SectionInputs};
use crate::trade::band::{Bore, Finish, Profile, alloys};
use crate::trade::entry;
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;
use crate::words::{
    band as say_band, bench as say_bench, lengths, rings as say_rings, screens as say, stack as say_stack,
};

pub fn band(id: RecordId, wearer: Wearer) -> AnyView {
    let app = app();
    let Whose { head, leave } = whose_of(id, wearer, say::BAND, Part::Band(wearer));
    let known = app.couple(id, |couple| couple.band(wearer));
    let of = |read: fn(Band) -> String| known.map(read).unwrap_or_default();
    let form = Form::draft(
        format!("band.{id}.{}", wearer.code()),
        vec![
            ("band-width", of(|band| band.width.map(lengths::plain).unwrap_or_default())),
            ("profile", of(|band| fields::code_or_none(band.profile))),
            ("finish", of(|band| fields::code_or_none(band.finish))),
            ("metal", of(|band| band.metal.map_or(fields::NONE, |alloy| alloy.code).to_owned())),
            ("height", of(|band| band.height.map(lengths::plain).unwrap_or_default())),
            ("dome", of(|band| band.dome.map(lengths::plain).unwrap_or_default())),
            ("relief", of(|band| band.relief.map(lengths::plain).unwrap_or_default())),
        ],
    );
    let seen = Seen::couple(app, id);
    let save = move || {
        let Some(mut band) = read(form) else { return show_first_complaint() };
        band.place = known.and_then(|band| band.place);
        app.save(id, seen.changed(verbs::choose_band(wearer, band)), say::saved(say::BAND), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let finishes = std::iter::once(option(fields::NONE, say::NOT_SETTLED))
        .chain(Finish::ALL.map(|finish| option(finish.code(), say_band::finish(finish))))
        .collect();
    let shoulders = app.couple(id, |couple| {
        let rings = couple.rings(wearer).into_iter();
        rings
            .filter(|ring| !ring.planned)
            .find_map(|ring| Some((crate::words::book::ring_name(&ring), ring.shoulder_width?)))
    });
    let hint = shoulders.flatten().map(|(name, width)| say::match_shoulders(&name, width));
    let width = fields::mm(form, "band-width", say::BAND_WIDTH);
    let width = match hint {
        Some(hint) => width.hint(hint),
        None => width,
    };
    let asked = [("couple".to_owned(), id.to_string()), ("who".to_owned(), wearer.code().to_owned())];
    let to_compare = with_query(Address::Calculator(Calculator::Compare), &asked);
    let profile = move || Profile::from_code(&form.text("profile").get());
    let arcs = move || {
        let profile = profile()?;
        let dome = || fields::mm(form, "dome", say_rings::DOME).hint(say_rings::DOME_HINT).line();
        let relief = || fields::mm(form, "relief", say_rings::RELIEF).hint(say_rings::RELIEF_HINT).line();
        let fields = [profile.is_domed_outside().then(dome), (profile.bore() == Bore::Domed).then(relief)];
        Some(all(fields.into_iter().flatten().collect()))
    };
    let drawn = Memo::new(move |_| section_of(form).map(|section| drawing::section(say::BAND, &section).svg));
    let content = all(vec![
        beside(
            id,
            Some(wearer),
            &[Ask::Colour, Ask::Metal, Ask::Nickel, Ask::Likes, Ask::Work, Ask::Sport, Ask::Engraving],
        ),
        width.line(),
        fields::mm(form, "height", say_rings::BAND_HEIGHT).hint(say_rings::BAND_HEIGHT_HINT).line(),
        fields::profile(form, "profile"),
        maybe(arcs),
        maybe(move || drawn.get().map(picture)),
        choice("finish", say::FINISH, Shape::Chips, finishes, form.text("finish")),
        fields::metal(form, "metal"),
        para("small", say::NICKEL),
        link_button(Weight::Quiet, say_bench::COMPARE, to_compare),
    ]);
    form_page(head, form, content, say::SAVE, save)
}

/// The section of what is typed so far, if it is one.
fn section_of(form: Form) -> Option<Section> {
    let typed = |key, limit| entry::read_length(&form.text(key).get(), limit).ok();
    let profile = Profile::from_code(&form.text("profile").get())?;
    Section::new(&SectionInputs {
        profile,
        width: typed("band-width", Limit::BandWidth)?,
        height: typed("height", Limit::RingHeight)?,
        dome: typed("dome", Limit::DomeHeight),
        relief: typed("relief", Limit::EdgeRelief),
    })
    .ok()
}

fn read(form: Form) -> Option<Band> {
    let length = |key, limit| fields::read_optional_length(form, key, limit);
    let text = |key| form.text(key).get_untracked();
    let profile = Profile::from_code(&text("profile"));
    let width = length("band-width", Limit::BandWidth);
    let height = length("height", Limit::RingHeight);
    // What the profile does not ask is not kept.
    let domed = profile.is_some_and(Profile::is_domed_outside);
    let dome = if domed { length("dome", Limit::DomeHeight) } else { Some(None) };
    let domed = profile.is_some_and(|profile| profile.bore() == Bore::Domed);
    let relief = if domed { length("relief", Limit::EdgeRelief) } else { Some(None) };
    let (width, height, dome, relief) = (width?, height?, dome?, relief?);
    if let (Some(profile), Some(width), Some(height)) = (profile, width, height) {
        let made = Section::new(&SectionInputs { profile, width, height, dome, relief });
        let at = match &made {
            Ok(_) | Err(SectionError::Nothing) => "height",
            Err(_) if profile.is_domed_outside() => "dome",
            Err(_) => "relief",
        };
        form.judge(at, made.map_err(say_stack::section_error))?;
    }
    Some(Band {
        width,
        profile,
        finish: Finish::from_code(&text("finish")),
        metal: alloys::by_code(&text("metal")),
        height,
        dome,
        relief,
        place: None,
    })
}
