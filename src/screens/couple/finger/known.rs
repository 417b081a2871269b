//! What is known of the finger: its readings, what they come to together, wishes, and when to measure again.

use crate::parts::el::{el, maybe, or_nothing};
use crate::parts::layout::{all, heading, para, row};
use chrono::Days;
use leptos::prelude::*;

use super::Whom;
use crate::answers::finger::{ReadingSeen, of_couple};
use crate::app::address::{Address, Part};
use crate::book::checklist::Topic;
use crate::book::field::Wish;
use crate::book::practice::Practice;
use crate::book::value::ReadingTaken;
use crate::book::verbs;
use crate::parts::button::{Weight, button, link_button};
use crate::parts::choice::tick;
use crate::parts::line::{line, lines};
use crate::trade::wearer::Finger;
use crate::words::{book as say_book, finger as say_finger, screens as say};

pub fn readings(whom: Whom) -> AnyView {
    let Whom { app, id, wearer } = whom;
    let to_order = Address::of_topic(id, Topic::OrderSize(wearer));
    maybe(move || {
        let practice = app.with(|book| book.practice.clone());
        let found = app.couple(id, |couple| of_couple(couple, Practice(&practice), wearer))?;
        let together = say_finger::comes_to(&found).into_iter().map(|text| para("", text)).collect();
        let others = found.others.into_iter().map(|finger| move_to(whom, finger)).collect();
        let rows: Vec<AnyView> = found.readings.into_iter().map(|it| one(whom, it)).collect();
        (!rows.is_empty()).then(|| {
            all(vec![
                heading(say::READINGS),
                el("ul").class("notes").children(rows).view(),
                all(together),
                all(others),
                link_button(Weight::Quiet, say_finger::TO_ORDER_SIZE, to_order.clone()),
            ])
        })
    })
}

/// Gives the band to another finger that was read.
fn move_to(whom: Whom, finger: Finger) -> AnyView {
    let Whom { app, id, wearer } = whom;
    button(Weight::Quiet, say_finger::move_it(finger), move || {
        app.save(id, vec![verbs::choose_finger(wearer, finger)], say::saved(say::FINGER), || ());
    })
}

fn one(whom: Whom, it: ReadingSeen) -> AnyView {
    let Whom { app, id, wearer } = whom;
    let said = say_finger::said_of(&it);
    let ReadingSeen { item, taken, .. } = it;
    let text = say_book::reading(&taken);
    let remove = move || {
        app.save(id, vec![verbs::reading(wearer, item, None)], say::removed(say::READING), || ());
    };
    let label = if taken.left_out { say_finger::COUNT_IT } else { say_finger::LEAVE_OUT };
    let turn = move || {
        let turned = ReadingTaken { left_out: !taken.left_out, ..taken.clone() };
        app.save(id, vec![verbs::reading(wearer, item, Some(turned))], say::saved(say::READING), || ());
    };
    let buttons = vec![button(Weight::Plain, say::REMOVE, remove), button(Weight::Plain, label, turn)];
    el("li")
        .class("note")
        .child(para("", text))
        .maybe_child((!said.is_empty()).then(|| para("small", said)))
        .child(row(buttons))
        .view()
}

/// What changes the finger, and what is wished for it.
pub fn wishes(whom: Whom) -> AnyView {
    let Whom { app, id, wearer } = whom;
    let one = |wish: Wish| {
        let said = Signal::derive(move || app.couple(id, |it| it.wishes(wearer).contains(&wish)).unwrap_or(false));
        let set = Callback::new(move |is: bool| {
            app.save(id, vec![verbs::wish(wearer, wish, is)], say::saved(say_finger::wish(wish)), || ());
        });
        tick(key(wish), say_finger::wish(wish), None, said, set)
    };
    all(vec![
        heading(say_finger::WISHES),
        para("small", say_finger::WISHES_WHY),
        all(Wish::ALL.into_iter().map(one).collect()),
    ])
}

fn key(wish: Wish) -> &'static str {
    match wish {
        Wish::WarmWork => "wish-warm-work",
        Wish::Sport => "wish-sport",
        Wish::Adjustable => "wish-adjustable",
    }
}

/// The day on which the finger is to be measured again: on Today until there is another reading.
pub fn again(whom: Whom) -> AnyView {
    let Whom { app, id, wearer } = whom;
    let put = |weeks: u16| {
        button(Weight::Quiet, say_finger::in_weeks(weeks), move || {
            let days = Days::new(u64::from(weeks) * 7);
            let Some(day) = app.today.get_untracked().checked_add_days(days) else { return };
            app.save(id, vec![verbs::measure_again(wearer, Some(day))], say_finger::is_on_today(day), || ());
        })
    };
    let take_off = move || {
        app.save(id, vec![verbs::measure_again(wearer, None)], say::removed(say_finger::AGAIN_LIST), || ());
    };
    let stands = move || {
        let day = app.couple(id, |couple| couple.measure_again(wearer)).flatten()?;
        Some(all(vec![
            para("", say_finger::is_on_today(day)),
            button(Weight::Plain, say_finger::TAKE_OFF_TODAY, take_off),
        ]))
    };
    all(vec![heading(say_finger::AGAIN_LIST), maybe(stands), row(AGAIN_WEEKS.map(put).into())])
}

/// In so many weeks.
const AGAIN_WEEKS: [u16; 3] = [1, 2, 4];

/// The way to what fitted in the end, once there is a size.
pub fn to_fitted(whom: Whom) -> AnyView {
    let Whom { app, id, wearer } = whom;
    let there = app.couple(id, |couple| couple.order_size(wearer).is_some()).unwrap_or(false);
    let said = Signal::derive(move || {
        let fitted = app.couple(id, |couple| couple.fitted(wearer).map(say_finger::fitted)).flatten();
        let value = fitted.unwrap_or_else(|| say_finger::FITTED_NONE.to_owned());
        vec![line(say_finger::FITTED, value, Address::Part(id, Part::Fitted(wearer)).to_string())]
    });
    or_nothing(there.then(|| lines(said)))
}
