//! Small drawings beside words. They take the colour of the words, and say nothing that the words do not say:
//! they are hidden from ears.

use super::Picture;
use crate::trade::band::{Bore, Profile};

/// Two bands, one through the other: for a page that is still empty.
pub fn two_bands() -> Picture {
    small(
        "0 0 160 96",
        r#"<clipPath id="two-bands-over"><path d="M0 0H160V48H0Z"/></clipPath>
<path class="faint" d="M6 85C40 81 120 81 154 85"/>
<path class="ground" fill-rule="evenodd" d="M106 20a31 31 0 1 0 0 62a31 31 0 1 0 0-62ZM106 26a25 25 0 1 1 0 50a25 25 0 1 1 0-50Z"/>
<path class="ground" fill-rule="evenodd" d="M60 14a34 34 0 1 0 0 68a34 34 0 1 0 0-68ZM60 22a26 26 0 1 1 0 52a26 26 0 1 1 0-52Z"/>
<path class="ground" fill-rule="evenodd" clip-path="url(#two-bands-over)" d="M106 20a31 31 0 1 0 0 62a31 31 0 1 0 0-62ZM106 26a25 25 0 1 1 0 50a25 25 0 1 1 0-50Z"/>
<path class="faint" d="M31.500 57A30 30 0 0 1 44 22.600M130.200 37A28 28 0 0 1 130.200 65"/>"#,
    )
}

/// A band cut through, the finger below it: 6 mm wide and 2 mm high, the domes drawn as they are made.
pub fn profile(of: Profile) -> Picture {
    let outside = if of.is_domed_outside() { "L10 22Q48 2 86 22" } else { "L10 13Q10 11 12 11L84 11Q86 11 86 13" };
    let inside = match of.bore() {
        Bore::Flat => "L86 36Q86 38 84 38L12 38Q10 38 10 36Z",
        Bore::Domed => "L86 31Q48 45 10 31Z",
    };
    let body = format!(
        r#"<path class="fill" d="M10 30{outside}{inside}"/><path class="faint" d="M2 44.5C30 46.5 66 46.5 94 44.5"/>"#
    );
    small("0 0 96 50", &body)
}

pub(super) fn small(view: &str, body: &str) -> Picture {
    Picture {
        svg: format!(
            r#"<svg xmlns="http://www.w3.org/2000/svg" class="sketch" viewBox="{view}" aria-hidden="true" focusable="false">{body}</svg>"#
        ),
    }
}
