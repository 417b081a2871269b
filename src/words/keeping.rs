//! How to keep the book: installing, the browser's promise, and what to do while there is none.

// In a tab, before the first entry
pub const TAB_STARTS_EMPTY: &str = "This is a tab of the browser. On this phone the app on the home screen starts with an \
                                    empty book of its own: what you write here does not go along. Put it on the home \
                                    screen first.";
pub const HOW_TO_INSTALL: &str = "How to, with pictures";

// The browser would not promise
pub const REFUSED: &str = "The browser has not promised to keep this book: it may clear it when the phone runs short of \
                           room. Put the app on the home screen, and let a copy leave the phone now and then.";
pub const TO_PHONE: &str = "What to do";

// Installing
pub const INSTALL: &str = "On the home screen";
pub const INSTALL_WHY: &str = "From the home screen the app opens without a browser round it, works without signal, and its \
                               book is kept more safely.";
pub const SHARE_SIGN: &str = "With a share sign";
pub const SHARE_SIGN_STEPS: [&str; 3] = [
    "Press the share sign in the bar of the browser: a square with an arrow that points up out of it.",
    "Slide the list up and press the row that adds to the home screen. It has a plus in a square.",
    "Press Add. Then open Bandwright from the home screen, and write down the first couple there.",
];
pub const MENU: &str = "With a menu";
pub const MENU_STEPS: [&str; 2] = [
    "Open the menu of the browser: three dots, or three lines.",
    "Press the row that installs the app or adds it to the home screen, and agree.",
];
pub const ALREADY_TYPED: &str = "Already written something in the tab? Let a copy leave under Practice, Copies. Open the app from \
                                 the home screen and bring that file in there.";
pub const IS_INSTALLED: &str = "This is the installed app.";
