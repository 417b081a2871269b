//! What the list gives to read: measuring a ring, what to bring, measuring a finger, and who sees what was written.

use super::super::lengths;
use crate::trade::card;

pub const HOW_TO_MEASURE: &str = "How to measure a ring, with drawings";
pub const CLOCK: &str = "Think of the ring as a clock face, with its stone or its front at twelve. Most rings are narrower or wider at the top than at \
the sides. The sides, at three and nine o\u{2019}clock, are where the new band will touch.";
pub const RULER: &str = "With a ruler: look at the ring from the side, at three o\u{2019}clock. Lay the ruler across the band, not along it, and read from \
one edge to the other. Half a millimetre is close enough.";
pub const CARD: &str = "Without a ruler: lay the straight edge of a sheet of paper across the band and mark both of its edges with a sharp pencil. Then \
step that width along the short side of a bank card, and count how often it goes into it.";
pub const CARD_OTHER: &str = "Another number? Divide 54 by it.";
pub const MEASURE_OFF: &str = "Take the ring off for it, and never force a ring that does not come off.";

/// What the counting comes to.
pub fn card_table() -> Vec<String> {
    let row = |times: u8| {
        let width = card::width_of(times).map(crate::trade::measure::Length::in_tenthousandths).unwrap_or_default();
        // To the tenth: the strip is not better than that.
        let tenths = crate::trade::measure::Length::tenthousandths((width + 500) / 1000 * 1000);
        format!("{times} times: {} mm", lengths::plain(tenths))
    };
    [36, 30, 27, 24, 21, 18, 15, 13, 11, 9].map(row).to_vec()
}

/// The sides of a card, for whoever wants to test a ruler.
pub fn card_note() -> String {
    format!(
        "Bank, library and loyalty cards are all {} by {} mm. They tell you whether a printed ruler is true, too.",
        lengths::plain(card::LONG_SIDE),
        lengths::plain(card::SHORT_SIDE)
    )
}

pub const BRING: [&str; 7] = [
    "Both of you, if you can. Hands differ, and so do opinions.",
    "Every ring that you will wear on that finger. The band is matched to them.",
    "A ring that fits you well, of any kind, on any finger: it helps as a second opinion.",
    "Pictures of what you like, and one of what you do not.",
    "The words for the engraving, written out as they should read.",
    "Old gold or a family ring that you would like to see used again: ask whether that can be done before you set your heart on it.",
    "This phone, with the list on it.",
];

pub const MEASURE_INTRO: &str = "There is no need to. Your jeweller measures with proper gauges, more than once. If you would like a first idea of your own, this is \
how it is commonly done:";
pub const MEASURE_HOW: [&str; 5] = [
    "Take a quiet moment in the afternoon or the evening, with hands neither cold nor warm.",
    "Cut a strip of paper as long as your hand and about as wide as the band that you have in mind.",
    "Lay it round the base of the finger, where the ring will sit: close, but so that it still slides. Mark with a sharp pencil where the end meets the strip.",
    "Lay the strip along a ruler and read from the end to the mark, to the half millimetre. Then do the same round the knuckle.",
    "Do it again on another day. Tell your jeweller all the figures: they are a first idea, and no order is made from them.",
];
pub const MEASURE_MIND: &str = "What to keep in mind";
pub const MEASURE: [&str; 7] = [
    "Not when your hands are cold. Fingers shrink, and the ring will be too tight in summer.",
    "Not straight after sport, a hot bath or a salty meal. Fingers swell.",
    "Not first thing in the morning, when hands are often thicker.",
    "Not while a finger is swollen or hurt, and not in pregnancy. Wait, and measure again later.",
    "The ring has to pass the knuckle. A finger with a large knuckle needs a compromise: leave that to your jeweller.",
    "The hand you write with is usually the larger. Measure the finger that will wear the ring.",
    "A wide band feels tighter than a narrow one of the same size, so do not simply copy the size of another ring.",
];

pub const PRIVACY: [&str; 4] = [
    "What you write stays in this browser, on this phone. Nobody sees it and nothing is sent by itself.",
    "When you hand it over, it goes to the person you choose, in the app you choose. Your jeweller keeps it beside their own notes.",
    "You may ask your jeweller what is kept, have it put right, and have it erased. The law where you live has the details.",
    "If you answer no, only your names and your no are handed over. The rest stays here, and you can show it on this phone when you meet.",
];
pub const NICKEL: &str = "Nobody can promise that a metal suits every skin. Your jeweller can tell you what is in an alloy, and has the workshop confirm it.";

/// What the drawings say, for whoever does not see them.
pub const CLOCK_DRAWN: &str = "A ring from the front as a clock face, its stone at twelve, with marks at three and nine. Beside it the same ring from the \
side: its width is measured across the middle, not at the narrower top.";
pub const RULER_DRAWN: &str = "A ring from the side with a ruler laid across the middle of the band. The band reaches over three divisions of a millimetre.";
pub const CARD_DRAWN: &str = "A bank card with a strip of paper along its short side. The width of the band is marked on the strip eighteen times, one beside \
the other, from one end of the side to the other.";
pub const AT_TOP: &str = "top";
pub const AT_SIDE: &str = "here";
pub const SHORT_SIDE: &str = "54.0 mm";
pub const EIGHTEEN: &str = "18 times";
