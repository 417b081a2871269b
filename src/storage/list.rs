//! The preparation list on the couple's own phone, in the form in which it is handed over. One that cannot be read is
//! moved aside before another takes its place.

use serde_json::from_str;

use super::local;
use crate::archive::list;
use crate::book::preparation_list::PreparationList;

const KEY: &str = "bandwright.list";
const ASIDE: &str = "bandwright.aside.list";

/// The list that was kept. What cannot be read is left where it is.
pub fn kept() -> Option<PreparationList> {
    let text: String = local::get(KEY)?;
    list::read_json(from_str(&text).ok()?).ok()
}

/// Whether this browser keeps anything at all.
pub fn can_keep() -> bool {
    local::is_allowed()
}

/// Whether there is a list on this phone.
pub fn is_there() -> bool {
    local::is_there(KEY)
}

/// Keeps the list. False if the phone would not take it.
pub fn keep(said: &PreparationList) -> bool {
    let unreadable = local::is_there(KEY) && kept().is_none();
    (!unreadable || local::rename(KEY, ASIDE)) && local::set(KEY, &list::write(said))
}

/// Forgets the list, and what was set aside of it.
pub fn forget() {
    local::delete(KEY);
    local::delete(ASIDE);
}
