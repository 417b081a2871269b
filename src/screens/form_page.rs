//! What every form has: its words back after a crash, its fields, and one button that saves.

use leptos::prelude::*;

use crate::app::form::Form;
use crate::parts::button::{Weight, button};
use crate::parts::page::{Head, page};
use crate::words::screens as say;

/// A page with a form. `save` is called when the button is pressed or the form is sent from the keyboard.
pub fn form_page(
    head: Head,
    form: Form,
    fields: AnyView,
    label: String,
    save: impl Fn() + Copy + Send + Sync + 'static,
) -> AnyView {
    let back = move || {
        form.restored.get().then(|| {
            view! {
                <div class="restored" role="status">
                    <p>{say::DRAFT_BACK}</p>
                    {button(Weight::Plain, say::DRAFT_DISCARD.to_owned(), move || form.reset())}
                </div>
            }
        })
    };
    let content = view! {
        <form
            class="column"
            novalidate
            on:submit=move |event| {
                event.prevent_default();
                save();
            }
        >
            {back}
            {fields}
            // Without a submit button the enter key of the keyboard sends nothing.
            <button type="submit" class="unseen" tabindex="-1" aria-hidden="true"></button>
        </form>
    };
    page(head, content.into_any(), Some(button(Weight::Primary, label, save)))
}

/// Moves to the first field that something is wrong with.
pub fn show_first_complaint() {
    use wasm_bindgen::JsCast;
    request_animation_frame(|| {
        if let Ok(Some(field)) = document().query_selector("[aria-invalid='true']")
            && let Ok(field) = field.dyn_into::<web_sys::HtmlElement>()
        {
            let _ = field.focus();
        }
    });
}
