//! The styles of the app, once for all tests of the page: whichever of them comes first puts them there.

use web_sys::Document;

/// Puts the styles of the parts and the pictures into the page, if they are not there yet.
pub fn dress(document: &Document) {
    if document.query_selector("style[data-app]").unwrap().is_some() {
        return;
    }
    let style = document.create_element("style").unwrap();
    style.set_attribute("data-app", "").unwrap();
    style.set_text_content(Some(concat!(
        include_str!("../../style/layers.css"),
        include_str!("../../style/tokens.css"),
        include_str!("../../style/base.css"),
        include_str!("../../style/layout.css"),
        include_str!("../../style/parts/answer.css"),
        include_str!("../../style/parts/button.css"),
        include_str!("../../style/parts/choice.css"),
        include_str!("../../style/parts/details.css"),
        include_str!("../../style/parts/empty.css"),
        include_str!("../../style/parts/field.css"),
        include_str!("../../style/parts/line.css"),
        include_str!("../../style/parts/notice.css"),
        include_str!("../../style/parts/page.css"),
        include_str!("../../style/parts/picture.css"),
        include_str!("../../style/parts/places.css"),
        include_str!("../../style/parts/reasons.css"),
    )));
    document.head().unwrap().append_child(&style).unwrap();
}
