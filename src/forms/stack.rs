//! The stack: the band, and up to seven rings beside it, from the web outwards.

use super::complaint::{Complaint, Complaints, Noun};
use super::reader::Reader;
use super::texts::{Key, Texts};
use super::write;
use crate::archive::code::Code;
use crate::book::couple::{Band, Couple, Head, Ring};
use crate::book::id::ItemId;
use crate::book::remedy::Way;
use crate::trade::band::section::{Section, SectionError, SectionInputs};
use crate::trade::band::{Bore, Finish, Profile};
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::stack::House;
use crate::trade::wearer::{Digit, Finger, Hand, Wearer};

pub const BAND: Key = Key::new("band");
pub const BAND_THICKNESS: Key = Key::new("band-height");
pub const BAND_PROFILE: Key = Key::new("band-profile");
pub const BAND_DOME: Key = Key::new("band-dome");
pub const BAND_RELIEF: Key = Key::new("band-relief");
/// How deep the curve of a shaped band is.
pub const BAND_CURVE: Key = Key::new("band-bay");
pub const BAND_METAL: Key = Key::new("band-metal");
pub const BAND_SET: Key = Key::new("band-set");
pub const BAND_INSIDE: Key = Key::new("band-inside");
pub const PLACE: Key = Key::new("place");
pub const GAP: Key = Key::new("gap");
pub const FREE: Key = Key::new("free");
/// The fields of the band that are folded away at first.
pub const BAND_MORE: [Key; 5] = [BAND_THICKNESS, BAND_DOME, BAND_RELIEF, BAND_CURVE, BAND_INSIDE];

/// The words for a ring that is worn now, and for one to come.
pub const NOW: &str = "now";
pub const LATER: &str = "later";
/// The words for where the band lies: nearest the web, or beyond the rings worn now; otherwise beyond so many rings.
pub const NEAREST_WEB: &str = "web";
pub const AFTER_WORN: &str = "after";

/// The fields of one ring.
pub struct RowKeys {
    pub name: Key,
    pub width: Key,
    pub top: Key,
    pub back: Key,
    pub when: Key,
    pub height: Key,
    pub profile: Key,
    pub metal: Key,
    pub web: Key,
    pub tip: Key,
    pub under: Key,
    pub stones: Key,
    pub inside: Key,
    /// Those that are folded away at first.
    pub more: [Key; 6],
}

macro_rules! row {
    ($n:literal) => {
        RowKeys {
            name: Key::new(concat!("ring", $n, "-name")),
            width: Key::new(concat!("ring", $n, "-width")),
            top: Key::new(concat!("ring", $n, "-top")),
            back: Key::new(concat!("ring", $n, "-back")),
            when: Key::new(concat!("ring", $n, "-when")),
            height: Key::new(concat!("ring", $n, "-height")),
            profile: Key::new(concat!("ring", $n, "-profile")),
            metal: Key::new(concat!("ring", $n, "-metal")),
            web: Key::new(concat!("ring", $n, "-web")),
            tip: Key::new(concat!("ring", $n, "-tip")),
            under: Key::new(concat!("ring", $n, "-under")),
            stones: Key::new(concat!("ring", $n, "-stones")),
            inside: Key::new(concat!("ring", $n, "-inside")),
            more: [
                Key::new(concat!("ring", $n, "-back")),
                Key::new(concat!("ring", $n, "-height")),
                Key::new(concat!("ring", $n, "-web")),
                Key::new(concat!("ring", $n, "-tip")),
                Key::new(concat!("ring", $n, "-under")),
                Key::new(concat!("ring", $n, "-inside")),
            ],
        }
    };
}

pub const ROWS: [RowKeys; 7] = [row!(1), row!(2), row!(3), row!(4), row!(5), row!(6), row!(7)];

/// The free length of each finger, and its field.
pub const FREE_OF: [(Finger, Key); 10] = [
    (finger(Hand::Left, Digit::Thumb), Key::new("free-left-thumb")),
    (finger(Hand::Left, Digit::Index), Key::new("free-left-index")),
    (finger(Hand::Left, Digit::Middle), Key::new("free-left-middle")),
    (finger(Hand::Left, Digit::Ring), Key::new("free-left-ring")),
    (finger(Hand::Left, Digit::Little), Key::new("free-left-little")),
    (finger(Hand::Right, Digit::Thumb), Key::new("free-right-thumb")),
    (finger(Hand::Right, Digit::Index), Key::new("free-right-index")),
    (finger(Hand::Right, Digit::Middle), Key::new("free-right-middle")),
    (finger(Hand::Right, Digit::Ring), Key::new("free-right-ring")),
    (finger(Hand::Right, Digit::Little), Key::new("free-right-little")),
];

const fn finger(hand: Hand, digit: Digit) -> Finger {
    Finger { hand, digit }
}

/// Where the band lies among the rings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lies {
    #[default]
    NearestWeb,
    /// Beyond the rings that are worn now.
    AfterWorn,
    /// Beyond so many rings.
    Beyond(u16),
}

/// What a stack is worked out from, as typed or as recorded, as far as it is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StackTyped {
    /// From the web outwards, without the band.
    pub rings: Vec<Ring>,
    pub band: Band,
    /// The band is set with stones.
    pub band_set: bool,
    /// Across the inside of the band.
    pub band_inside: Option<Length>,
    /// How deep the curve of a shaped band is.
    pub curve: Option<Length>,
    pub lies: Lies,
    pub gap: Option<Length>,
    pub free: Option<Length>,
    /// The free lengths of other fingers.
    pub free_elsewhere: Vec<(Finger, Length)>,
    /// Nothing is missing and nothing has to be put right.
    pub is_whole: bool,
}

/// The finger of the band: the one that was noted, otherwise that of the first ring with a finger.
pub fn finger_of_band(couple: Couple<'_>, who: Wearer) -> Option<Finger> {
    couple.finger(who).or_else(|| couple.rings(who).into_iter().find_map(|ring| ring.finger))
}

/// The rings that lie on the finger of the band, those without a finger among them.
pub fn rings_here(couple: Couple<'_>, who: Wearer) -> Vec<Ring> {
    let finger = finger_of_band(couple, who);
    let rings = couple.rings(who).into_iter();
    rings.filter(|ring| ring.finger.is_none() || finger.is_none() || ring.finger == finger).collect()
}

/// The cut through a band or ring, where its profile and thickness are known.
pub fn section(
    width: Length,
    profile: Option<Profile>,
    height: Option<Length>,
    arcs: (Option<Length>, Option<Length>),
) -> Option<Result<Section, SectionError>> {
    let (dome, relief) = arcs;
    let inputs = |(profile, height)| SectionInputs { profile, width, height, dome, relief };
    profile.zip(height).map(|made| Section::new(&inputs(made)))
}

/// Whether the profile of the band has a dome outside, and a relief inside, that could be measured.
pub fn arcs(texts: &Texts) -> (bool, bool) {
    let profile = Profile::from_code(texts.get(BAND_PROFILE));
    let has_relief = profile.is_some_and(|profile| profile.bore() == Bore::Domed);
    (profile.is_some_and(Profile::is_domed_outside), has_relief)
}

/// The head of a ring; none where the height of its underside is not known.
fn head_is_half(head: &Head) -> bool {
    head.underside.is_none() && (head.to_web.is_some() || head.to_tip.is_some())
}

impl StackTyped {
    /// What is recorded of one of a couple; without a couple, a stack with nothing in it.
    pub fn recorded(couple: Option<(Couple<'_>, Wearer)>, house: &House) -> StackTyped {
        let blank = StackTyped { gap: Some(house.gap), ..StackTyped::default() };
        let Some((couple, who)) = couple else { return blank };
        let band = couple.band(who);
        let across = couple.order_size(who).map(|size| size.size.circumference().diameter().0);
        let here = finger_of_band(couple, who);
        let free_of = |(finger, _): &(Finger, Key)| Some((*finger, couple.free_length_of(who, *finger)?));
        let mut rings = rings_here(couple, who);
        rings.truncate(ROWS.len());
        let typed = StackTyped {
            // As a calliper reads it.
            band_inside: across.map(write::to_hundredths),
            band_set: is_set(&band),
            curve: couple.remedy(who).filter(|it| it.way == Way::Shaped).map(|it| it.by),
            lies: band.place.filter(|place| place.0 > 0).map_or(Lies::NearestWeb, |place| Lies::Beyond(place.0)),
            free: couple.free_length(who),
            free_elsewhere: FREE_OF.iter().filter(|(it, _)| Some(*it) != here).filter_map(free_of).collect(),
            rings,
            band,
            ..blank
        };
        StackTyped { is_whole: typed.has_all(), ..typed }
    }

    /// The same with another band; where it is curved and where it lies stays.
    pub fn with_band(&self, band: &Band) -> StackTyped {
        let typed = StackTyped { band: *band, band_set: is_set(band), ..self.clone() };
        StackTyped { is_whole: typed.has_all(), ..typed }
    }

    /// Whether nothing is missing that the stack needs.
    fn has_all(&self) -> bool {
        let of_ring = |ring: &Ring| {
            let section = |width| section(width, ring.profile, ring.height, (None, None)).is_none_or(|it| it.is_ok());
            ring.shoulder_width.is_some_and(section) && !head_is_half(&ring.head)
        };
        let band = &self.band;
        let section = |width| section(width, band.profile, band.height, (band.dome, band.relief));
        let of_band = band.width.is_some_and(|width| section(width).is_none_or(|it| it.is_ok()));
        of_band && self.gap.is_some() && self.rings.iter().all(of_ring)
    }
}

fn is_set(band: &Band) -> bool {
    matches!(band.finish, Some(Finish::Set | Finish::SetAllRound))
}

/// The texts of what is recorded. `called` is what a ring is called in its field.
pub fn start(of: &StackTyped, called: fn(&Ring) -> String) -> Texts {
    let place = match of.lies {
        Lies::NearestWeb => NEAREST_WEB.to_owned(),
        Lies::AfterWorn => AFTER_WORN.to_owned(),
        Lies::Beyond(rings) => rings.to_string(),
    };
    let mut texts = Texts::default()
        .with(PLACE, place)
        .with(GAP, write::optional_mm(of.gap))
        .with(BAND_PROFILE, write::code_or_none(of.band.profile))
        .with(BAND_METAL, write::metal(of.band.metal))
        .with(BAND, write::optional_mm(of.band.width))
        .with(FREE, write::optional_mm(of.free))
        .with(BAND_THICKNESS, write::optional_mm(of.band.height))
        .with(BAND_DOME, write::optional_mm(of.band.dome))
        .with(BAND_RELIEF, write::optional_mm(of.band.relief))
        .with(BAND_SET, write::yes(of.band_set))
        .with(BAND_INSIDE, write::optional_mm(of.band_inside))
        .with(BAND_CURVE, write::optional_mm(of.curve));
    for (finger, key) in FREE_OF {
        let free = of.free_elsewhere.iter().find(|(it, _)| *it == finger).map(|(_, free)| *free);
        texts.set(key, write::optional_mm(free));
    }
    for (at, row) in ROWS.iter().enumerate() {
        let nobody = Ring::unknown(ItemId(0));
        let ring = of.rings.get(at).unwrap_or(&nobody);
        texts.set(row.name, of.rings.get(at).map(called).unwrap_or_default());
        for (key, length) in [
            (row.width, ring.shoulder_width),
            (row.top, ring.top_width),
            (row.back, ring.back_width),
            (row.height, ring.height),
            (row.web, ring.head.to_web),
            (row.tip, ring.head.to_tip),
            (row.under, ring.head.underside),
            (row.inside, ring.inside),
        ] {
            texts.set(key, write::optional_mm(length));
        }
        texts.set(row.stones, write::yes(ring.stones));
        texts.set(row.when, if ring.planned { LATER } else { NOW });
        texts.set(row.profile, write::code_or_none(ring.profile));
        texts.set(row.metal, write::metal(ring.metal));
    }
    texts
}

/// Reads the form.
pub fn read(texts: &Texts) -> (StackTyped, Complaints) {
    let mut form = Reader::new(texts);
    let gap = form.length(GAP, Limit::GapBetweenRings);
    let free = form.optional_length(FREE, Limit::FreeLength).flatten();
    let mut free_elsewhere = Vec::new();
    for (finger, key) in FREE_OF {
        let free = form.optional_length(key, Limit::FreeLength).flatten();
        free_elsewhere.extend(free.map(|free| (finger, free)));
    }
    let rings = ROWS.iter().enumerate().filter_map(|(at, row)| ring(&mut form, at, row)).collect();
    let band = band(&mut form);
    let band_inside = form.optional_length(BAND_INSIDE, Limit::InsideDiameter).flatten();
    // A curve that cannot be read leaves the stack as it is without one.
    let is_whole = form.is_fine();
    let curve = form.optional_length_named(BAND_CURVE, Limit::HeadReach, Noun::CurveDepth).flatten();
    let lies = match form.text(PLACE) {
        AFTER_WORN => Lies::AfterWorn,
        beyond => beyond.parse().map_or(Lies::NearestWeb, Lies::Beyond),
    };
    let typed = StackTyped {
        rings,
        band,
        band_set: form.yes(BAND_SET),
        band_inside,
        curve,
        lies,
        gap,
        free,
        free_elsewhere,
        is_whole,
    };
    (typed, form.complaints())
}

/// A row that has something in it. One with a name and no width is a ring whose width is missing.
fn ring(form: &mut Reader, at: usize, row: &RowKeys) -> Option<Ring> {
    let name = form.optional_text(row.name, Limit::LineText, Noun::RingName).flatten();
    let mut length = |key, limit| form.optional_length(key, limit).flatten();
    let (top_width, back_width) = (length(row.top, Limit::RingWidth), length(row.back, Limit::RingWidth));
    let height = length(row.height, Limit::RingHeight);
    let head = Head {
        to_web: length(row.web, Limit::HeadReach),
        to_tip: length(row.tip, Limit::HeadReach),
        underside: length(row.under, Limit::HeadUnderside),
    };
    let inside = length(row.inside, Limit::InsideDiameter);
    if form.is_blank(row.width) && name.is_none() && top_width.is_none() {
        return None;
    }
    // Said of the reach, which is there: of an empty field nobody has left yet, nothing is said.
    let reaching = head.to_web.map(|_| row.web).or(head.to_tip.map(|_| row.tip));
    if let Some(key) = reaching.filter(|_| form.is_blank(row.under)) {
        form.complain(key, Complaint::HeadIncomplete);
    }
    let shoulder_width = form.length(row.width, Limit::RingWidth);
    let profile = form.choice(row.profile);
    if let Some(made) = shoulder_width.and_then(|width| section(width, profile, height, (None, None))) {
        form.note(row.height, made.map_err(Complaint::Section));
    }
    Some(Ring {
        name,
        shoulder_width,
        top_width,
        back_width,
        height,
        inside,
        profile,
        metal: form.metal(row.metal),
        head,
        stones: form.yes(row.stones),
        planned: form.text(row.when) != NOW,
        ..Ring::unknown(ItemId(at as u128))
    })
}

fn band(form: &mut Reader) -> Band {
    let width = form.length(BAND, Limit::BandWidth);
    let height = form.optional_length(BAND_THICKNESS, Limit::RingHeight).flatten();
    let dome = form.optional_length(BAND_DOME, Limit::DomeHeight).flatten();
    let relief = form.optional_length(BAND_RELIEF, Limit::EdgeRelief).flatten();
    let profile: Option<Profile> = form.choice(BAND_PROFILE);
    if let Some(made) = width.and_then(|width| section(width, profile, height, (dome, relief))) {
        let at = match (&made, profile) {
            (Err(SectionError::Nothing) | Ok(_), _) | (_, None) => BAND_THICKNESS,
            (Err(_), Some(profile)) if profile.is_domed_outside() => BAND_DOME,
            (Err(_), Some(_)) => BAND_RELIEF,
        };
        form.note(at, made.map_err(Complaint::Section));
    }
    Band { width, profile, height, dome, relief, metal: form.metal(BAND_METAL), ..Band::default() }
}
