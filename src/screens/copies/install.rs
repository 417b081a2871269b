//! How to put the app on the home screen, with pictures, and the warning before anything is typed into a tab.

use crate::parts::el::{el, or_nothing};
use crate::parts::layout::{column, para, section};
use leptos::prelude::*;

use crate::app::address::Setting;
use crate::app::device;
use crate::parts::page::page;
use crate::parts::picture::sketch;
use crate::pictures::installing::{add_row, home_screen, menu, share_sign};
use crate::screens::shell::setting_page::head;
use crate::words::keeping as say;

pub fn install() -> AnyView {
    let share = steps(&say::SHARE_SIGN_STEPS, vec![share_sign().svg, add_row().svg, home_screen().svg]);
    let dots = steps(&say::MENU_STEPS, vec![menu().svg, home_screen().svg]);
    let by_share = section(say::SHARE_SIGN, vec![share]);
    let by_menu = section(say::MENU, vec![dots]);
    // The way of this phone first.
    let ways = if device::keeps_tabs_apart() { vec![by_share, by_menu] } else { vec![by_menu, by_share] };
    let installed = device::is_installed().then(|| para("settled", say::IS_INSTALLED));
    let mut content = vec![or_nothing(installed), para("", say::INSTALL_WHY)];
    content.extend(ways);
    content.push(para("small", say::ALREADY_TYPED));
    page(head(Setting::Install, say::INSTALL), column(content), None)
}

fn steps(words: &'static [&'static str], drawings: Vec<String>) -> AnyView {
    let step = |(words, drawing): (&&'static str, String)| {
        el("li").class("step").child(sketch(drawing)).child(para("", *words)).view()
    };
    el("ol").class("steps").children(words.iter().zip(drawings).map(step).collect()).view()
}
