//! An element of the page, put together at run time.
//!
//! Why not the `view!` macro: it makes a type of its own of every piece of markup, and the renderer is compiled anew
//! for each of them. In this app that came to two fifths of all of it (measured: 500 kB of 1,230 kB). Here
//! every element is of one type, every attribute of one of five, every live text of one. Weighed again on
//! 2026-11-30: with `view!` the frame of a page alone (`page.rs`) made the first load 2.7 kB heavier (brotli).

use leptos::attr::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::attr::custom::custom_attribute;
use leptos::prelude::*;
use leptos::tachys::html::element::{custom, inner_html};
use leptos::tachys::html::event::{Custom, on};
use leptos::tachys::html::property::prop;
use wasm_bindgen::JsCast;
use web_sys::{Event, EventTarget, HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement};

use super::Words;

/// An element that is being put together.
pub struct El {
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// Begins an element.
pub fn el(tag: &'static str) -> El {
    El { tag, attributes: Vec::new(), children: Vec::new() }
}

impl El {
    /// The finished element.
    pub fn view(self) -> AnyView {
        custom(self.tag).child(self.children).add_any_attr(self.attributes).into_any()
    }

    pub fn attr(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push(custom_attribute(name, value.into()).into_any_attr());
        self
    }

    pub fn class(self, class: &'static str) -> Self {
        self.attr("class", class)
    }

    /// An attribute that is there only if there is a value.
    pub fn maybe_attr(self, name: &'static str, value: Option<String>) -> Self {
        match value {
            Some(value) => self.attr(name, value),
            None => self,
        }
    }

    /// An attribute that changes while it is shown, or goes.
    pub fn live_attr(mut self, name: &'static str, value: impl Fn() -> Option<String> + Send + 'static) -> Self {
        let value: Box<dyn Fn() -> Option<String> + Send> = Box::new(value);
        self.attributes.push(custom_attribute(name, value).into_any_attr());
        self
    }

    /// The text in an input, whatever the user did to it meanwhile.
    pub fn live_value(mut self, value: impl Fn() -> String + Send + 'static) -> Self {
        let value: Box<dyn Fn() -> String + Send> = Box::new(value);
        self.attributes.push(prop("value", value).into_any_attr());
        self
    }

    /// A yes or no of an input: "checked", "selected".
    pub fn live_flag(mut self, name: &'static str, value: impl Fn() -> bool + Send + 'static) -> Self {
        let value: Box<dyn Fn() -> bool + Send> = Box::new(value);
        self.attributes.push(prop(name, value).into_any_attr());
        self
    }

    /// Everything inside it, as text of markup. Whoever writes the text escapes what goes into it.
    pub fn html(mut self, html: Words) -> Self {
        let html: Box<dyn Fn() -> String + Send> = Box::new(move || html.now());
        self.attributes.push(inner_html(html).into_any_attr());
        self
    }

    /// What to do when something happens to it.
    pub fn on(mut self, event: &'static str, react: impl FnMut(Event) + 'static) -> Self {
        let react: Box<dyn FnMut(Event)> = Box::new(react);
        self.attributes.push(on(Custom::<Event>::new(event), react).into_any_attr());
        self
    }

    pub fn child(mut self, child: AnyView) -> Self {
        self.children.push(child);
        self
    }

    pub fn maybe_child(self, child: Option<AnyView>) -> Self {
        match child {
            Some(child) => self.child(child),
            None => self,
        }
    }

    pub fn children(mut self, children: Vec<AnyView>) -> Self {
        self.children.extend(children);
        self
    }

    /// Words that stay as they are.
    pub fn text(self, text: impl Into<String>) -> Self {
        let text: String = text.into();
        self.child(text.into_any())
    }

    /// Words that may change.
    pub fn words(self, words: Words) -> Self {
        match words {
            Words::Still(words) => self.text(words),
            Words::Live(words) => self.child(words.into_any()),
        }
    }

    /// An attribute of words that may change.
    pub fn words_attr(self, name: &'static str, words: Words) -> Self {
        match words {
            Words::Still(words) => self.attr(name, words),
            Words::Live(words) => self.live_attr(name, move || Some(words.get())),
        }
    }
}

/// What is drawn anew whenever a signal that it reads changes.
pub fn live(draw: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    // Boxed first, so that every live part is of one type.
    let draw: Box<dyn Fn() -> AnyView + Send> = Box::new(draw);
    (move || draw()).into_any()
}

/// The same for what is there only sometimes.
pub fn maybe(draw: impl Fn() -> Option<AnyView> + Send + 'static) -> AnyView {
    live(move || or_nothing(draw()))
}

/// What is there, or nothing.
pub fn or_nothing(view: Option<AnyView>) -> AnyView {
    view.unwrap_or_else(nothing)
}

/// Nothing to be seen.
pub fn nothing() -> AnyView {
    ().into_any()
}

/// What stands in the input, list or text area that an event happened to.
pub fn value_of(event: &Event) -> String {
    let Some(target) = event.target() else { return String::new() };
    let input = |target: &EventTarget| Some(target.dyn_ref::<HtmlInputElement>()?.value());
    let area = |target: &EventTarget| Some(target.dyn_ref::<HtmlTextAreaElement>()?.value());
    let list = |target: &EventTarget| Some(target.dyn_ref::<HtmlSelectElement>()?.value());
    input(&target).or_else(|| area(&target)).or_else(|| list(&target)).unwrap_or_default()
}

/// Whether the box that an event happened to is ticked.
pub fn is_ticked(event: &Event) -> bool {
    event.target().and_then(|target| Some(target.dyn_ref::<HtmlInputElement>()?.checked())).unwrap_or(false)
}
