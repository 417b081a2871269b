//! Whatever may be long is done in pieces, with the page awake in between.

use crate::app::share::breathe;

/// So many records are worked on, or let go, without a look at the clock.
pub(super) const AT_ONCE: usize = 50;
/// So long the page is kept busy before it is given a turn, in milliseconds.
const BUSY_MS: f64 = 30.0;

/// When the page is to be given a turn. Each turn costs milliseconds, so they are not taken oftener than needed.
pub(super) struct Pace(f64);

impl Pace {
    pub(super) fn new() -> Self {
        Pace(js_sys::Date::now())
    }

    pub(super) fn is_due(&self) -> bool {
        // A clock that was set back counts as time gone by.
        !(0.0..BUSY_MS).contains(&(js_sys::Date::now() - self.0))
    }

    pub(super) async fn rest(&mut self) {
        breathe().await;
        *self = Pace::new();
    }
}

/// Frees what may be large, some at a time.
pub(super) async fn let_go<T>(mut things: Vec<T>) {
    let mut pace = Pace::new();
    while !things.is_empty() {
        things.truncate(things.len().saturating_sub(AT_ONCE));
        if pace.is_due() {
            pace.rest().await;
        }
    }
}
