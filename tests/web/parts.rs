//! What each part MUST do for people who hear, tab or enlarge the page, asked of the page in a browser.

use crate::dress::dress;
use bandwright::answers::Tone;
use bandwright::parts::answer::answer;
use bandwright::parts::button::{Weight, button, link_button};
use bandwright::parts::choice::{Shape, check, choice, option, pick};
use bandwright::parts::details::{details, details_opened};
use bandwright::parts::empty::empty;
use bandwright::parts::field::{Field, Keyboard};
use bandwright::parts::line::{line, lines};
use bandwright::parts::notice::{self, notices};
use bandwright::parts::page::{PageHeader, page};
use bandwright::parts::picture::{picture, sketch};
use bandwright::parts::places::{NavLink, places};
use bandwright::parts::reasons::reasons;
use bandwright::pictures::ornament;
use bandwright::words::answer::Headline;
use bandwright::words::answer::reason;
use bandwright::words::parts::Mark;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Element, Event, EventInit, HtmlElement, HtmlInputElement};

/// The page with only `view` in it, and the styles of the app.
fn show(view: impl FnOnce() -> AnyView + 'static) -> Element {
    let document = web_sys::window().unwrap().document().unwrap();
    dress(&document);
    let host = document.create_element("div").unwrap();
    host.set_attribute("style", "inline-size: 320px").unwrap();
    document.body().unwrap().append_child(&host).unwrap();
    leptos::mount::mount_to(host.clone().unchecked_into::<HtmlElement>(), view).forget();
    host
}

fn find<T: JsCast>(host: &Element, selector: &str) -> T {
    let found = host.query_selector(selector).unwrap().unwrap_or_else(|| panic!("no {selector}"));
    found.dyn_into().unwrap_or_else(|_| panic!("{selector} is another kind of element"))
}

fn attribute(host: &Element, selector: &str, name: &str) -> Option<String> {
    find::<Element>(host, selector).get_attribute(name)
}

/// The text of all elements whose ids stand in an attribute.
fn described(host: &Element, selector: &str) -> String {
    let ids = attribute(host, selector, "aria-describedby").unwrap_or_default();
    let texts = ids.split_whitespace().map(|id| find::<Element>(host, &format!("[id='{id}']")).text_content());
    texts.flatten().map(|text| text.trim().to_string()).filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" | ")
}

fn fire(target: &Element, kind: &str) {
    let options = EventInit::new();
    options.set_bubbles(true);
    target.dispatch_event(&Event::new_with_event_init_dict(kind, &options).unwrap()).unwrap();
}

/// Lets effects run.
async fn settle() {
    leptos::task::tick().await;
}

#[track_caller]
fn check_target(host: &Element, selector: &str) {
    let place = find::<Element>(host, selector).get_bounding_client_rect();
    assert!(place.width() >= 44.0 && place.height() >= 44.0, "{selector}: {} x {}", place.width(), place.height());
}

#[wasm_bindgen_test]
async fn a_field_has_its_label_hint_unit_and_error_read_with_it() {
    let value = RwSignal::new("6".to_string());
    let error = RwSignal::new(None::<String>);
    let host = show(move || {
        Field::new("width", "Band width", value)
            .hint("at its widest")
            .unit("mm")
            .keyboard(Keyboard::Decimal)
            .error(error)
            .line()
    });
    settle().await;
    let input: HtmlInputElement = find(&host, "input");
    assert_eq!(find::<Element>(&host, "label[for=width]").text_content().as_deref(), Some("Band width"));
    assert_eq!((input.id(), input.name(), input.value()), ("width".into(), "width".into(), "6".into()));
    assert_eq!(attribute(&host, "input", "inputmode").as_deref(), Some("decimal"));
    assert_eq!(described(&host, "input"), "at its widest | mm");
    assert_eq!(attribute(&host, "input", "aria-invalid"), None);
    check_target(&host, "input");
    let style = web_sys::window().unwrap().get_computed_style(&input).unwrap().unwrap();
    let size = style.get_property_value("font-size").unwrap();
    assert!(size.trim_end_matches("px").parse::<f64>().unwrap() >= 16.0, "{size}");

    error.set(Some("Enter the width in millimetres.".into()));
    settle().await;
    assert_eq!(attribute(&host, "input", "aria-invalid").as_deref(), Some("true"));
    assert_eq!(described(&host, "input"), "at its widest | mm | Enter the width in millimetres.");
    assert_eq!(attribute(&host, ".field-error", "aria-live").as_deref(), Some("polite"));
    assert_eq!(input.value(), "6");
}

#[wasm_bindgen_test]
async fn typing_reaches_the_signal_and_the_signal_reaches_the_field() {
    let value = RwSignal::new(String::new());
    let left = RwSignal::new(0);
    let leave = move |()| left.update(|n| *n += 1);
    let host = show(move || Field::new("name", "Name", value).on_leave(Callback::new(leave)).line());
    let input: HtmlInputElement = find(&host, "input");
    input.set_value("Mara <b>💍");
    fire(&input, "input");
    assert_eq!((value.get_untracked().as_str(), left.get_untracked()), ("Mara <b>💍", 0));
    fire(&input, "blur");
    assert_eq!(left.get_untracked(), 1);
    value.set("Jonas".into());
    settle().await;
    assert_eq!(input.value(), "Jonas");
}

#[wasm_bindgen_test]
async fn a_choice_is_native_radios_in_a_named_group() {
    let value = RwSignal::new("cold".to_string());
    let options = || vec![option("cold", "cold"), option("warm", "warm")];
    let host = show(move || choice("hands", "Hands", Shape::Segments, options(), value));
    assert_eq!(find::<Element>(&host, "fieldset > legend").text_content().as_deref(), Some("Hands"));
    let (cold, warm): (HtmlInputElement, HtmlInputElement) = (find(&host, "#hands-cold"), find(&host, "#hands-warm"));
    assert_eq!((cold.type_(), cold.name(), warm.name()), ("radio".into(), "hands".into(), "hands".into()));
    assert!(cold.checked() && !warm.checked());
    // It can be tabbed to and its arrow keys work: it is there, only not seen.
    let style = web_sys::window().unwrap().get_computed_style(&warm).unwrap().unwrap();
    assert_ne!(style.get_property_value("display").unwrap(), "none");
    assert_ne!(style.get_property_value("visibility").unwrap(), "hidden");
    warm.focus().unwrap();
    let focused = web_sys::window().unwrap().document().unwrap().active_element().unwrap();
    assert_eq!(focused.id(), "hands-warm");
    check_target(&host, "#hands-warm");
    warm.click();
    settle().await;
    assert_eq!(value.get_untracked(), "warm");
    assert!(warm.checked() && !cold.checked());
    value.set("cold".into());
    settle().await;
    assert!(cold.checked());
}

#[wasm_bindgen_test]
async fn a_list_and_a_box_have_labels_and_are_large_enough() {
    let (metal, again) = (RwSignal::new("b".to_string()), RwSignal::new(false));
    let metals = || vec![("a".to_string(), "silver".to_string()), ("b".to_string(), "platinum".to_string())];
    let host = show(move || {
        view! {
            {pick("metal", "Metal", metals(), metal)}
            {check("again", "Measure again", Some("goes to Today".into()), again)}
        }
        .into_any()
    });
    assert_eq!(find::<Element>(&host, "label[for=metal]").text_content().as_deref(), Some("Metal"));
    assert_eq!(find::<web_sys::HtmlSelectElement>(&host, "select").value(), "b");
    check_target(&host, "select");
    check_target(&host, "#again");
    assert_eq!(described(&host, "#again"), "goes to Today");
    find::<HtmlInputElement>(&host, "label.check > #again").click();
    assert!(again.get_untracked());
}

#[wasm_bindgen_test]
async fn an_answer_is_a_named_output_and_care_is_said_in_words() {
    let said = RwSignal::new(Headline { figure: "N".into(), lines: vec!["53.75 mm".into()], tone: Tone::Act });
    let host = show(move || answer("order-size", "Order size", said));
    assert_eq!(attribute(&host, "output", "aria-label").as_deref(), Some("Order size"));
    assert_eq!(find::<Element>(&host, "output").text_content().as_deref(), Some("N 53.75 mm"));
    said.set(Headline { figure: "N½".into(), lines: vec![], tone: Tone::Care });
    settle().await;
    assert_eq!(find::<Element>(&host, ".unseen").text_content().as_deref(), Some("Take care: "));
    assert_eq!(attribute(&host, ".answer-sign", "aria-hidden").as_deref(), Some("true"));
}

#[wasm_bindgen_test]
async fn a_line_is_one_link_with_its_state_in_words() {
    let rows = vec![line("Wedding", "22 May", "#/x").mark(Mark::Care).small("order by March")];
    let host = show(move || lines(Signal::stored(rows)));
    assert_eq!(
        find::<Element>(&host, "ul > li > a").text_content().as_deref().map(heard),
        Some("▲ Needs care: Wedding 22 May order by March".into())
    );
    assert_eq!(attribute(&host, "a [aria-hidden]", "aria-hidden").as_deref(), Some("true"));
    check_target(&host, "a");
}

/// Text with its runs of blanks as one.
fn heard(text: &str) -> String {
    text.replace('▲', "▲ ").split_whitespace().collect::<Vec<_>>().join(" ")
}

#[wasm_bindgen_test]
async fn a_page_has_one_heading_a_named_way_back_and_places_that_say_where_one_is() {
    let host = show(move || {
        let head = PageHeader::new("Order size").back("#/tools", "Tools");
        let action = button(Weight::Primary, "Use N", Callback::new(|()| ()));
        let place =
            |label: &'static str, here| NavLink { href: "#/".into(), label: label.into(), here: Signal::stored(here) };
        let bar = [place("Today", false), place("Couples", false), place("Tools", true), place("Setup", false)];
        let more = link_button(Weight::Quiet, "More", "#/more");
        view! { <div class="frame">{page(head, more, Some(action))}{places(bar)}</div> }.into_any()
    });
    assert_eq!(host.get_elements_by_tag_name("h1").length(), 1);
    assert_eq!(host.get_elements_by_tag_name("main").length(), 1);
    assert_eq!(attribute(&host, ".page-back", "aria-label").as_deref(), Some("Back: Tools"));
    assert_eq!(find::<Element>(&host, "nav [aria-current=page]").text_content().as_deref(), Some("Tools"));
    assert!(attribute(&host, "nav", "aria-label").is_some());
    for selector in [".page-back", ".page-action button", "nav a", "a.button"] {
        check_target(&host, selector);
    }
    host.scroll_into_view_with_bool(false);
    // The action stands clear of the content and of the bar of places.
    let bottom = |selector: &str| find::<Element>(&host, selector).get_bounding_client_rect().bottom();
    let top = |selector: &str| find::<Element>(&host, selector).get_bounding_client_rect().top();
    assert!(bottom(".page-content .button") <= top(".page-action"));
    assert!(bottom(".page-action") <= top("nav") + 0.5);
}

#[wasm_bindgen_test]
async fn notices_are_said_in_regions_that_were_there_before() {
    let due = RwSignal::new(Vec::new());
    let undone = RwSignal::new(false);
    let host = show(move || notices(due));
    let (alert, status): (Element, Element) = (find(&host, "[role=alert]"), find(&host, "[role=status]"));
    assert_eq!((alert.child_element_count(), status.child_element_count()), (0, 0));
    let undo = Callback::new(move |()| undone.set(true));
    due.set(vec![
        notice::done("Saved", Some(("Undo".into(), undo))),
        notice::wrong("Not saved", None, Callback::new(move |()| due.update(|due| due.truncate(1)))),
    ]);
    settle().await;
    assert!(status.text_content().unwrap().contains("Saved"));
    assert!(alert.text_content().unwrap().contains("Not saved"));
    find::<HtmlElement>(&status, "button").click();
    assert!(undone.get_untracked());
    find::<HtmlElement>(&alert, "button").click();
    settle().await;
    assert_eq!((alert.child_element_count(), status.child_element_count()), (0, 1));
}

#[wasm_bindgen_test]
async fn what_is_folded_away_is_native_and_opens_when_it_is_wanted() {
    let wanted = RwSignal::new(false);
    let inside = || "the inputs".into_any();
    let host = show(move || (details("From M½", inside()), details_opened("More", inside(), wanted.into())).into_any());
    let all = host.query_selector_all("details").unwrap();
    let folded = |at: u32| all.item(at).unwrap().unchecked_into::<web_sys::HtmlDetailsElement>();
    assert_eq!(find::<Element>(&host, "details > summary").text_content().as_deref(), Some("From M½"));
    assert!(find::<Element>(&host, "summary").get_bounding_client_rect().height() >= 44.0);
    find::<HtmlElement>(&host, "summary").click();
    assert!(folded(0).open() && !folded(1).open());
    wanted.set(true);
    settle().await;
    assert!(folded(1).open());
    // Whoever closes it then, closes it.
    folded(1).set_open(false);
    wanted.set(false);
    settle().await;
    wanted.set(true);
    settle().await;
    assert!(!folded(1).open());
}

#[wasm_bindgen_test]
async fn an_empty_place_says_all_in_words() {
    let host = show(|| empty(sketch(ornament::two_bands().svg), "Nobody yet.", None));
    assert_eq!(attribute(&host, "svg", "aria-hidden").as_deref(), Some("true"));
    assert_eq!(host.text_content().map(|text| text.trim().to_owned()).as_deref(), Some("Nobody yet."));
}

#[wasm_bindgen_test]
async fn reasons_are_a_list_each_read_as_one() {
    let rows = vec![reason("Wider than the gauge", "+0.20", "common practice"), reason("Cold hands", "+0.50", "")];
    let host = show(move || reasons(Signal::stored(rows.clone())));
    let items = host.query_selector_all("ul > li").unwrap();
    let said = |at: u32| items.item(at).unwrap().text_content().unwrap();
    assert_eq!(items.length(), 2);
    assert_eq!(said(0), "Wider than the gauge +0.20 common practice");
    assert_eq!(said(1), "Cold hands +0.50");
}

#[wasm_bindgen_test]
async fn a_picture_wider_than_its_place_is_reached_by_keys() {
    let drawn = |width: u32| {
        format!(r#"<svg role="img" aria-label="a ring" height="40" style="min-inline-size: {width}px"></svg>"#)
    };
    let host = show(move || (picture(drawn(2000)), picture(drawn(100))).into_any());
    let frame = js_sys::Promise::new(&mut |done, _| {
        web_sys::window().unwrap().request_animation_frame(&done).unwrap();
    });
    wasm_bindgen_futures::JsFuture::from(frame).await.unwrap();
    let all = host.query_selector_all("figure").unwrap();
    let reached = |at: u32| all.item(at).unwrap().unchecked_into::<Element>().get_attribute("tabindex");
    assert_eq!((reached(0).as_deref(), reached(1)), (Some("0"), None));
}
