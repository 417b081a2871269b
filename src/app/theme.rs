//! Light, dark, or as the phone is set. The page's first script does the same before the app is there.

use leptos::prelude::{document, window};
use web_sys::Element;

const ATTRIBUTE: &str = "data-theme";

/// Shows the page in a theme: "light", "dark", or for anything else as the phone is set.
pub fn show(theme: &str) {
    let Some(html) = document().document_element() else { return };
    // What the phone paints round the page: the ground of each theme, as the styles have it.
    let grounds = ["light", "dark"].map(|theme| {
        let _ = html.set_attribute(ATTRIBUTE, theme);
        (theme, ground(&html))
    });
    let chosen = grounds.iter().find(|(name, _)| *name == theme);
    match chosen {
        Some((name, _)) => drop(html.set_attribute(ATTRIBUTE, name)),
        None => drop(html.remove_attribute(ATTRIBUTE)),
    }
    for (name, ground) in &grounds {
        let colour = chosen.map_or(ground, |(_, ground)| ground);
        let meta = format!("meta[name='theme-color'][media*='{name}']");
        if let (Ok(Some(meta)), Some(colour)) = (document().query_selector(&meta), colour) {
            let _ = meta.set_attribute("content", colour);
        }
    }
}

fn ground(html: &Element) -> Option<String> {
    window().get_computed_style(html).ok()??.get_property_value("background-color").ok()
}
