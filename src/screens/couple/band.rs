//! The band wanted for one of the two: width, profile, surface and metal, each as far as it is settled.

use crate::parts::lay::{all, para};
use leptos::prelude::*;

use super::said::beside;
use super::{Whose, whose_of};
use crate::app::address::Part;
use crate::app::form::Form;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::asks::Ask;
use crate::book::couple::Band;
use crate::book::id::RecordId;
use crate::book::verbs;
use crate::parts::choice::{Shape, choice, option};
use crate::screens::fields;
use crate::screens::form_page::{form_page, show_first_complaint};
use crate::trade::band::{Finish, Profile, alloys};
use crate::trade::limits::Limit;
use crate::trade::wearer::Wearer;
use crate::words::{band as say_band, lengths, screens as say};

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
            ("metal", of(|band| band.metal.map_or("none", |alloy| alloy.code).to_owned())),
        ],
    );
    let seen = Seen::couple(app, id);
    let save = move || {
        let Some(width) = fields::read_optional_length(form, "band-width", Limit::BandWidth) else {
            return show_first_complaint();
        };
        let text = |key| form.text(key).get_untracked();
        let band = Band {
            width,
            profile: Profile::from_code(&text("profile")),
            finish: Finish::from_code(&text("finish")),
            metal: alloys::by_code(&text("metal")),
        };
        app.save(id, seen.changed(verbs::choose_band(wearer, band)), say::saved(say::BAND), move || {
            form.done();
            let _ = leave.try_run(());
        });
    };
    let finishes = std::iter::once(option("none", say::NOT_SETTLED))
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
    let content = all(vec![
        beside(
            id,
            Some(wearer),
            &[Ask::Colour, Ask::Metal, Ask::Nickel, Ask::Likes, Ask::Work, Ask::Sport, Ask::Engraving],
        ),
        width.line(),
        fields::profile(form, "profile"),
        choice("finish", say::FINISH, Shape::Chips, finishes, form.text("finish")),
        fields::metal(form, "metal"),
        para("small", say::NICKEL),
    ]);
    form_page(head, form, content, say::SAVE, save)
}
