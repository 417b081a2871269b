//! Words in lower case, for whoever searches or compares names.

/// By the browser's own tables: the library's weigh 10 kB in the app.
pub fn lower(words: &str) -> String {
    String::from(js_sys::JsString::from(words).to_lower_case())
}
