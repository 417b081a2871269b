//! What this phone prefers, and nothing that would be missed: the theme, what each calculator was last
//! asked, how large a pixel of its screen is, and how often the app was opened, which decides when the browser is
//! asked to keep the book.

use super::local;

/// The name under which the page's first script finds the theme.
const THEME: &str = "bandwright.theme";

/// "light", "dark" or, for whatever the phone itself is set to, "system".
pub fn theme() -> String {
    local::get(THEME).unwrap_or_else(|| "system".to_owned())
}

/// Keeps the theme. False if the phone would not take it.
pub fn keep_theme(theme: &str) -> bool {
    local::set(THEME, &theme)
}

/// Counts this opening of the app, and answers how many there were.
pub fn count_visit() -> u32 {
    let visits = local::get::<u32>("bandwright.visits").unwrap_or(0).saturating_add(1);
    local::set("bandwright.visits", &visits);
    visits
}

/// The query of the address with which a calculator was last used.
pub fn last_query(calculator: &str) -> Option<String> {
    local::get(&format!("bandwright.last.{calculator}"))
}

/// Keeps what a calculator was asked. Losing it costs nothing but typing it again.
pub fn keep_last_query(calculator: &str, query: &str) {
    local::set(&format!("bandwright.last.{calculator}"), &query);
}

/// How a screen was calibrated at a magnification, in words of the caller's. It is of this phone, and so in no record.
pub fn calibration(screen: &str, ratio: &str) -> Option<String> {
    local::get(&of_screen(screen, ratio))
}

/// Keeps how a screen was calibrated. False if the phone would not take it.
pub fn keep_calibration(screen: &str, ratio: &str, said: &str) -> bool {
    local::set(&of_screen(screen, ratio), &said)
}

/// Whether the screen was calibrated at any magnification.
pub fn was_calibrated(screen: &str) -> bool {
    let start = of_screen(screen, "");
    local::keys().iter().any(|key| key.starts_with(&start))
}

fn of_screen(screen: &str, ratio: &str) -> String {
    format!("bandwright.screen.{screen}.{ratio}")
}
