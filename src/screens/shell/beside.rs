//! A quiet line with what the two said in their preparation lists, where the jeweller records the same.

use leptos::prelude::*;

use crate::app::state::app;
use crate::book::asks::{AnswerKey, Ask, Of};
use crate::book::couple::Couple;
use crate::book::id::RecordId;
use crate::parts::el::maybe;
use crate::parts::layout::{block, para};
use crate::trade::wearer::Wearer;
use crate::words::list::{asked, handing, taking as say};

/// What they said of the same things as the form below it asks, if they said anything.
pub fn beside(id: RecordId, who: Option<Wearer>, asks: &'static [Ask]) -> AnyView {
    let app = app();
    maybe(move || {
        let lines = app.couple(id, |couple| lines(couple, who, asks)).unwrap_or_default();
        (!lines.is_empty()).then(|| {
            let mut views = vec![para("said-by", say::SAID_BY_THEM)];
            views.extend(lines.into_iter().map(|line| para("small", line)));
            block("said", views)
        })
    })
}

fn lines(couple: Couple<'_>, who: Option<Wearer>, asks: &[Ask]) -> Vec<String> {
    let mut lines = Vec::new();
    for said in couple.said() {
        for ask in asks {
            let of = ask.row().of;
            if of == Of::Ring {
                let rings = who.into_iter().flat_map(|who| (1..=said.rings(who)).map(move |number| (who, number)));
                lines.extend(rings.filter_map(|(who, number)| handing::ring(said, who, number)));
                continue;
            }
            let spot = AnswerKey { ask: *ask, who: who.filter(|_| of == Of::Each), ring: None };
            let answer = said.get(spot).map(|text| asked::answer(*ask, text));
            lines.extend(answer.map(|answer| say::beside(asked::short(*ask), answer)));
        }
    }
    lines
}
