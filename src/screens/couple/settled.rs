//! What was settled with a couple, as they may see it: nobody's name, no notes.

use leptos::prelude::*;

use crate::answers::stack::{StackRules, USUAL_FINGER, finger_across, of_couple};
use crate::app::show::Shown;
use crate::app::state::App;
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::pictures::stack_answer::from_above;
use crate::screens::shell::show::show_button;
use crate::trade::wearer::Wearer;
use crate::words::bench::Called;
use crate::words::{book as say_book, dates, remedy, showing as say, sizing};

/// The button that shows it, as soon as there is anything of a band.
pub fn settled(app: App, id: RecordId) -> Option<AnyView> {
    let any = app.couple(id, |couple| Wearer::BOTH.into_iter().any(|who| !of(couple, who).is_empty()));
    any.unwrap_or(false).then(|| show_button(move || untrack(|| shown(app, id))))
}

fn shown(app: App, id: RecordId) -> Option<Shown> {
    app.couple(id, |couple| {
        let stacks = Wearer::BOTH.into_iter().filter_map(|who| {
            let found = app.practice(|practice| of_couple(couple, &StackRules::of(practice), who))?;
            let finger = finger_across(couple, who).unwrap_or(USUAL_FINGER);
            from_above(&found, finger, Called::Plain)
        });
        let picture = stacks.map(|picture| picture.svg).collect();
        let mut lines: Vec<String> = Wearer::BOTH
            .into_iter()
            .map(|who| (who, of(couple, who)))
            .filter(|(_, said)| !said.is_empty())
            .map(|(who, said)| say::for_one(who, &said))
            .collect();
        lines.extend(couple.dates().map(|settled| say::order_by(settled.order_by)));
        let figure = couple.wedding().map(dates::wedding).unwrap_or_default();
        Shown { title: say::SETTLED_TITLE.to_owned(), picture, figure, lines }
    })
}

/// The band, how it lies beside a head, and the size.
fn of(couple: Couple<'_>, who: Wearer) -> Vec<String> {
    let band = couple.band(who);
    let band = (!band.is_empty()).then(|| say_book::band(&band));
    let beside = couple.remedy(who).map(|chosen| remedy::shape(&chosen));
    let size = couple.order_size(who).map(|size| sizing::size_name(size.size));
    [band, beside, size].into_iter().flatten().collect()
}
