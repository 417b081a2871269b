//! The warning before anything is typed into a tab that an installed app will not inherit.

use leptos::prelude::*;

use crate::app::address::{Address, Setting};
use crate::app::device;
use crate::parts::button::{Weight, link_button};
use crate::parts::layout::{block, para};
use crate::words::keeping as say;

/// What to say in a tab whose book an installed app would not have; nothing anywhere else.
pub fn tab_warning() -> Option<AnyView> {
    let apart = device::keeps_tabs_apart() && !device::is_installed();
    apart.then(|| {
        let how = link_button(Weight::Quiet, say::HOW_TO_INSTALL, Address::Setting(Setting::Install).to_string());
        block("column near", vec![para("caution", say::TAB_STARTS_EMPTY), how])
    })
}
