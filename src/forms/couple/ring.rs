//! A ring that one of the two owns or will own.

use crate::archive::code::Code;
use crate::book::couple::{Couple, Head, Ring};
use crate::book::id::ItemId;
use crate::forms::complaint::{Complaint, Complaints};
use crate::forms::reader::Reader;
use crate::forms::stack::{LATER, NOW};
use crate::forms::texts::{Key, Texts};
use crate::forms::{reading, write};
use crate::trade::limits::{Limit, Whole};
use crate::trade::stack::RINGS_MOST;
use crate::trade::wearer::{Finger, Wearer};

pub use crate::forms::reading::{DIGIT, HAND};

pub const NAME: Key = Key::new("ring-name");
pub const WHEN: Key = Key::new("planned");
pub const SHOULDER_WIDTH: Key = Key::new("shoulder-width");
pub const TOP_WIDTH: Key = Key::new("top-width");
pub const BACK_WIDTH: Key = Key::new("back-width");
pub const HEIGHT: Key = Key::new("height");
pub const INSIDE: Key = Key::new("inside");
pub const PROFILE: Key = Key::new("profile");
pub const METAL: Key = Key::new("metal");
pub const INSCRIPTION: Key = Key::new("ring-inscription");
pub const HEAD_TO_WEB: Key = Key::new("head-web");
pub const HEAD_TO_TIP: Key = Key::new("head-tip");
pub const HEAD_UNDERSIDE: Key = Key::new("head-underside");
pub const STONES: Key = Key::new("stones");
pub const PLACE: Key = Key::new("place");
pub const HOLDS: Key = Key::new("holds");

/// A ring that is new here: on the finger of the band, and beyond those that are known.
pub fn new(couple: Couple<'_>, who: Wearer, item: ItemId) -> Ring {
    let next = couple.rings(who).len().saturating_add(1).min(RINGS_MOST);
    Ring { finger: couple.finger(who), place: Some(Whole(next as u16)), ..Ring::unknown(item) }
}

pub fn start(known: &Ring) -> Texts {
    let finger = known.finger.unwrap_or(Finger::LEFT_RING);
    Texts::default()
        .with(NAME, known.name.clone().unwrap_or_default())
        .with(WHEN, if known.planned { LATER } else { NOW })
        .with(SHOULDER_WIDTH, write::optional_mm(known.shoulder_width))
        .with(TOP_WIDTH, write::optional_mm(known.top_width))
        .with(BACK_WIDTH, write::optional_mm(known.back_width))
        .with(HEIGHT, write::optional_mm(known.height))
        .with(INSIDE, write::optional_mm(known.inside))
        .with(PROFILE, write::code_or_none(known.profile))
        .with(METAL, write::metal(known.metal))
        .with(INSCRIPTION, known.inscription.clone().unwrap_or_default())
        .with(HEAD_TO_WEB, write::optional_mm(known.head.to_web))
        .with(HEAD_TO_TIP, write::optional_mm(known.head.to_tip))
        .with(HEAD_UNDERSIDE, write::optional_mm(known.head.underside))
        .with(STONES, write::yes(known.stones))
        .with(PLACE, known.place.map_or(write::NONE.to_owned(), |place| place.0.to_string()))
        .with(HOLDS, write::yes(known.holds))
        .with(HAND, finger.hand.code())
        .with(DIGIT, finger.digit.code())
}

pub fn read(texts: &Texts, item: ItemId) -> Result<Ring, Complaints> {
    let mut form = Reader::new(texts);
    let name = form.optional_line(NAME);
    let inscription = form.optional_line(INSCRIPTION);
    let mut length = |key, limit| form.optional_length(key, limit);
    let shoulder_width = length(SHOULDER_WIDTH, Limit::RingWidth);
    let top_width = length(TOP_WIDTH, Limit::RingWidth);
    let back_width = length(BACK_WIDTH, Limit::RingWidth);
    let height = length(HEIGHT, Limit::RingHeight);
    let inside = length(INSIDE, Limit::InsideDiameter);
    let to_web = length(HEAD_TO_WEB, Limit::HeadReach);
    let to_tip = length(HEAD_TO_TIP, Limit::HeadReach);
    let underside = length(HEAD_UNDERSIDE, Limit::HeadUnderside);
    let reaches = to_web.flatten().or(to_tip.flatten()).is_some();
    if underside == Some(None) && reaches {
        form.complain(HEAD_UNDERSIDE, Complaint::HeadIncomplete);
    }
    let ring = (|| {
        Some(Ring {
            item,
            name: name?,
            finger: Some(reading::finger(texts)?),
            shoulder_width: shoulder_width?,
            top_width: top_width?,
            back_width: back_width?,
            height: height?,
            inside: inside?,
            profile: form.choice(PROFILE),
            metal: form.metal(METAL),
            inscription: inscription?,
            head: Head { to_web: to_web?, to_tip: to_tip?, underside: underside? },
            stones: form.yes(STONES),
            place: form.text(PLACE).parse().ok().map(Whole),
            holds: form.yes(HOLDS),
            planned: form.text(WHEN) == LATER,
        })
    })();
    form.checked(ring)
}
