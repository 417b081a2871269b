//! Small drawings of how an app gets onto the home screen, drawn from no product: a phone in outline, and in it the one
//! thing to press. The words beside them say it all; they are hidden from ears.

use super::Picture;
use super::ornament::small;

/// A page in a browser, and in the bar under it a square with an arrow up out of it.
pub fn share_sign() -> Picture {
    phone(
        r#"<path class="faint" d="M20 26H60M20 34H52M20 42H56M10 96H70"/><path class="faint" d="M18 107H26M54 107H62"/>
<circle class="fill" cx="40" cy="106" r="9.500"/><path d="M37.500 104.500H36.500V110.500H43.500V104.500H42.500M40 107.500V101M37.800 103L40 100.800L42.200 103"/>"#,
    )
}

/// A list over the page, one row of it marked: a plus in a square at its end.
pub fn add_row() -> Picture {
    phone(
        r#"<path class="faint" d="M20 22H60M20 30H52"/><path class="ground" d="M10 44H70V112Q70 116 66 116H14Q10 116 10 112Z"/>
<path d="M10 44H70"/><path class="faint" d="M17 54H48M10 62H70M17 72H52M10 98H70M17 107H46"/>
<path class="fill" d="M10 80H70V98H10Z"/><path d="M10 80H70M10 98H70M17 89H46M56 84.500H65V93.500H56ZM60.500 86.800V91.200M58.300 89H62.700"/>"#,
    )
}

/// A home screen, and on it the two bands.
pub fn home_screen() -> Picture {
    phone(
        r#"<path class="faint" d="M16 20H30V34H16ZM34 20H48V34H34ZM52 20H66V34H52ZM16 40H30V54H16ZM52 40H66V54H52ZM16 98H30V112H16ZM34 98H48V112H34ZM52 98H66V112H52Z"/>
<path class="fill" d="M32 38H50V56H32Z"/><circle cx="38.500" cy="47" r="4.200"/><circle cx="43.500" cy="47" r="4.200"/>"#,
    )
}

/// The menu of a browser, open from its three dots.
pub fn menu() -> Picture {
    phone(
        r#"<path class="faint" d="M10 22H70M16 16H50"/><circle class="fill" cx="62" cy="12" r="0.900"/><circle class="fill" cx="62" cy="15.500" r="0.900"/><circle class="fill" cx="62" cy="19" r="0.900"/>
<path class="ground" d="M26 24H66V84H26Z"/><path d="M26 24H66V84H26Z"/><path class="faint" d="M32 33H54M32 43H58M32 75H52"/>
<path class="fill" d="M26 51H66V67H26Z"/><path d="M26 51H66M26 67H66M32 59H56"/>"#,
    )
}

fn phone(inside: &str) -> Picture {
    small(
        "0 0 80 124",
        &format!(r#"<path d="M14 4H66Q70 4 70 8V116Q70 120 66 120H14Q10 120 10 116V8Q10 4 14 4Z"/>{inside}"#),
    )
}
