//! The size system shown first, and the step in which the bench makes sizes.

use crate::parts::el::or_nothing;
use crate::parts::lay::all;
use leptos::prelude::*;

use super::{back_to_usual, draft, head, keep, now, own};
use crate::app::address::Setting;
use crate::app::seen::Seen;
use crate::app::state::app;
use crate::archive::code::Code;
use crate::book::field::PracticeField::{FirstSystem, Step as StepField};
use crate::book::practice::{USUAL_STEP, USUAL_SYSTEM};
use crate::book::value::Value;
use crate::parts::choice::{Shape, choice, choice_with, option};
use crate::screens::form_page::form_page;
use crate::trade::sizing::{Step, System};
use crate::words::practice as say;
use crate::words::{screens as say_frame, sizing as say_sizing};

const HERE: Setting = Setting::Sizes;

pub fn sizes() -> AnyView {
    let app = app();
    let (system, step) = now(app, |practice| (practice.first_system(), practice.step()));
    let form = draft(HERE, vec![("first-system", system.code().to_owned()), ("step", step.code().to_owned())]);
    let chosen = move || form.text("first-system").with(|code| System::from_code(code)).unwrap_or(USUAL_SYSTEM);
    let seen = Seen::practice(app);
    let save = move || {
        let system = untrack(chosen);
        let step = form.text("step").with_untracked(|code| Step::from_code(code)).unwrap_or(USUAL_STEP);
        let writes = vec![
            own(FirstSystem, Value::System(system), system == USUAL_SYSTEM),
            own(StepField, Value::Step(step), step == USUAL_STEP),
        ];
        keep(app, HERE, form, seen.changed(writes), say_frame::saved(say::SIZES));
    };
    let systems = System::ALL.map(|it| option(it.code(), say_sizing::system_name(it))).into();
    let steps = Step::ALL.map(|it| option(it.code(), say_sizing::step_name(it))).into();
    let content = all(vec![
        choice_with(
            "first-system",
            say::FIRST_SYSTEM.into(),
            Some(Signal::derive(move || say_sizing::system_where(chosen()).to_owned()).into()),
            Shape::Chips,
            systems,
            form.text("first-system"),
        ),
        choice("step", say::STEP, Shape::Chips, steps, form.text("step")),
        or_nothing(back_to_usual(app, HERE, form, say::SIZES, vec![FirstSystem, StepField])),
    ]);
    form_page(head(HERE, say::SIZES), form, content, say_frame::SAVE, save)
}
