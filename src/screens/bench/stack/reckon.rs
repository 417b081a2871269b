//! The inputs of the stack, read, and what `trade` makes of them.

use leptos::prelude::*;

use super::super::sheet::{Complaints, judge, read_needed, read_optional};
use super::fields::{AFTER_WORN, FREE, NOW, ROWS, RowKeys};
use super::{names, top};
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::trade::band::section::{Section, SectionError, SectionInputs};
use crate::trade::band::{Profile, alloys};
use crate::trade::entry;
use crate::trade::limits::{Limit, Whole};
use crate::trade::measure::Length;
use crate::trade::stack::RingState;
use crate::trade::stack::{
    self, Apart, Head, Lying, ProfileMatch, Remedies, RingOnFinger, ShoulderMatch, Stack, StackError, StackInputs,
    Stretch, Surface, Taper, Tighter, Wear, When,
};
use crate::trade::wearer::Finger;
use crate::words::{
    bench as say, entry as say_entry, remedy as say_remedy, rings as say_rings, showing, stack as say_stack,
};

/// The free lengths of other fingers that were typed.
type FreeElsewhere = Vec<(Finger, Length)>;

/// What was typed, read, and what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    pub complaints: Complaints,
    /// From the web outwards, the band among them.
    pub rings: Vec<Ring>,
    pub gap: Option<Length>,
    pub measured: Option<Length>,
    pub elsewhere: FreeElsewhere,
    pub stack: Option<Stack>,
    /// How deep the bay of a shaped band is.
    pub bay: Option<Length>,
    /// What the rings take at the top, where a bay or a gap adds to their widths. The palm takes neither.
    pub at_top: Option<Stack>,
    pub error: Option<StackError>,
    pub matches: Vec<Match>,
    /// Each two neighbours as they are worn now, and then those that come about with the rings to come.
    pub pairs: Vec<Pair>,
    pub tighter: Vec<Tighter>,
    /// How many rings lie between the band and the web.
    pub place: Option<Whole>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ring {
    pub name: String,
    /// What it is called in front of the couple.
    pub plain: String,
    pub widths: Taper,
    pub top_known: bool,
    /// Nobody measured its dome.
    pub usual_dome: bool,
    /// Some of its head is written down.
    pub head_known: bool,
    pub state: RingState,
    pub profile: Option<Profile>,
    pub lying: Lying,
    pub surface: Surface,
}

/// The band against a ring that lies next to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// Which of the rings.
    pub ring: usize,
    pub band: Length,
    pub found: ShoulderMatch,
    pub profile: Option<ProfileMatch>,
}

/// Two neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Only once the rings to come are there.
    pub later: bool,
    pub apart: Apart,
    /// How far they stand off at the top with the bay of the band.
    pub left: Length,
    /// Where what is held off is still to be made.
    pub remedies: Option<Remedies>,
    pub wear: Wear,
}

pub fn reckon(app: App, form: Form) -> Reckoned {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let (house, k) = app.practice(|practice| (practice.house(), practice.constants().width_per_mm));
    let gap = judge(&mut complaints, "gap", read_needed(&text("gap"), Limit::GapBetweenRings));
    let measured = judge(&mut complaints, "free", read_optional(&text("free"), Limit::FreeLength)).flatten();
    let mut elsewhere = FreeElsewhere::new();
    for (finger, key) in FREE {
        let free = judge(&mut complaints, key, read_optional(&text(key), Limit::FreeLength)).flatten();
        elsewhere.extend(free.map(|free| (finger, free)));
    }
    let mut rings: Vec<Ring> = ROWS.iter().filter_map(|row| ring(form, row, &mut complaints)).collect();
    let band = band(form, &mut complaints);
    let mut place = None;
    if let Some(band) = band {
        let worn = || rings.iter().rposition(|ring| ring.state == RingState::Worn).map_or(0, |last| last + 1);
        let at = match text("place").as_str() {
            AFTER_WORN => worn(),
            beyond => beyond.parse::<usize>().unwrap_or(0).min(rings.len()),
        };
        place = Some(Whole(at as u16));
        rings.insert(at, band);
    }
    let house = stack::House { gap: gap.unwrap_or(house.gap), ..house };
    let on_finger: Vec<RingOnFinger> = rings.iter().map(Ring::on_finger).collect();
    let inputs = complaints.is_empty().then(|| StackInputs { rings: on_finger.clone(), measured, house });
    let (stack, error) = match inputs.as_ref().map(stack::stack) {
        Some(Ok(stack)) => (Some(stack), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let bay = read_bay(&text("band-bay"));
    let bay = judge(&mut complaints, "band-bay", bay).flatten().filter(|bay| stack.is_some() && *bay > Length::ZERO);
    names::number(&mut rings);
    let matches = matches(&rings);
    let pairs = pairs(&rings, &house, bay);
    let at_top = inputs.filter(|_| stack.is_some()).and_then(|inputs| top::at_top(&inputs, &rings, &pairs, bay));
    let tighter = stack::tighter_later(&on_finger, k);
    Reckoned { complaints, rings, gap, measured, elsewhere, stack, bay, at_top, error, matches, pairs, tighter, place }
}

/// A row that has something in it. One with a name and no width is a ring whose width is missing.
fn ring(form: Form, row: &RowKeys, complaints: &mut Complaints) -> Option<Ring> {
    let text = |key| form.text(key).get();
    let name = entry::read_text(&text(row.name), Limit::LineText)
        .map_err(|error| say_entry::text_error_named(error, say::RING_NAME_NOUN));
    let name = judge(complaints, row.name, name).flatten();
    let mut length = |key, limit| judge(complaints, key, read_optional(&text(key), limit)).flatten();
    let (top, back) = (length(row.top, Limit::RingWidth), length(row.back, Limit::RingWidth));
    let height = length(row.height, Limit::RingHeight);
    let (to_web, to_tip) = (length(row.web, Limit::HeadReach), length(row.tip, Limit::HeadReach));
    let underside = length(row.under, Limit::HeadUnderside);
    let inside = length(row.inside, Limit::InsideDiameter);
    let typed = text(row.width);
    if typed.trim().is_empty() && name.is_none() && top.is_none() {
        return None;
    }
    // Said of the reach, which is there: of an empty field nobody has left yet, nothing is said.
    let reaching = to_web.map(|_| row.web).or(to_tip.map(|_| row.tip)).filter(|_| text(row.under).trim().is_empty());
    complaints.extend(reaching.map(|key| (key, say_rings::HEAD_INCOMPLETE.to_owned())));
    let reach = |reach: Option<Length>| reach.unwrap_or(Length::ZERO);
    let head = underside.map(|underside| Head { to_web: reach(to_web), to_tip: reach(to_tip), underside });
    let state = if text(row.when) == NOW { RingState::Worn } else { RingState::Planned };
    let width = judge(complaints, row.width, read_needed(&typed, Limit::RingWidth))?;
    let profile = Profile::from_code(&text(row.profile));
    let made = profile
        .zip(height)
        .map(|(profile, height)| Section::new(&SectionInputs { profile, width, height, dome: None, relief: None }));
    let section = made.and_then(|made| judge(complaints, row.height, made.map_err(say_stack::section_error)));
    let alloy = alloys::by_code(&text(row.metal));
    Some(Ring {
        name: name.unwrap_or_else(|| say::ring_by_its_state(state)),
        plain: String::new(),
        widths: Taper { top: top.unwrap_or(width), shoulders: width, back: back.unwrap_or(width) },
        top_known: top.is_some(),
        usual_dome: section.is_some_and(|section| section.dome() > Length::ZERO),
        head_known: head.is_some(),
        state,
        profile,
        lying: Lying { width, section, head, inside },
        surface: Surface { alloy, height, stones: text(row.stones) == "yes" },
    })
}

fn band(form: Form, complaints: &mut Complaints) -> Option<Ring> {
    let text = |key| form.text(key).get();
    let width = judge(complaints, "band", read_needed(&text("band"), Limit::BandWidth));
    let mut length = |key, limit| judge(complaints, key, read_optional(&text(key), limit)).flatten();
    let height = length("band-height", Limit::RingHeight);
    let dome = length("band-dome", Limit::DomeHeight);
    let relief = length("band-relief", Limit::EdgeRelief);
    let inside = length("band-inside", Limit::InsideDiameter);
    let width = width?;
    let profile = Profile::from_code(&text("band-profile"));
    let made = profile
        .zip(height)
        .map(|(profile, height)| Section::new(&SectionInputs { profile, width, height, dome, relief }));
    let section = made.and_then(|made| {
        let at = made.as_ref().err().zip(profile).map_or("band-height", |(error, profile)| match error {
            SectionError::Nothing => "band-height",
            _ if profile.is_domed_outside() => "band-dome",
            _ => "band-relief",
        });
        judge(complaints, at, made.map_err(say_stack::section_error))
    });
    let alloy = alloys::by_code(&text("band-metal"));
    Some(Ring {
        name: say::BAND.to_owned(),
        plain: String::new(),
        widths: Taper::even(width),
        top_known: true,
        usual_dome: dome.is_none() && section.is_some_and(|section| section.dome() > Length::ZERO),
        head_known: true,
        state: RingState::Wanted,
        profile,
        lying: Lying { width, section, head: None, inside },
        surface: Surface { alloy, height, stones: text("band-set") == "yes" },
    })
}

fn read_bay(text: &str) -> Result<Option<Length>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let read = entry::read_length(text, Limit::HeadReach);
    read.map(Some).map_err(|error| say_entry::number_error_named(error, say_remedy::BAY_NOUN))
}

/// The band against each ring that lies next to it.
fn matches(rings: &[Ring]) -> Vec<Match> {
    let Some(at) = rings.iter().position(|ring| ring.state == RingState::Wanted) else { return Vec::new() };
    let band = &rings[at];
    let beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten();
    let one = |at: usize| {
        let ring = rings.get(at)?;
        let found = stack::shoulder_match(band.lying.width, &ring.widths).ok()?;
        let profile = band.profile.zip(ring.profile).map(|(band, ring)| stack::profile_match(band, ring));
        Some(Match { ring: at, band: band.lying.width, found, profile })
    };
    beside.filter_map(one).collect()
}

/// Every two neighbours as they are worn now; of those with the rings to come, the ones that are new.
fn pairs(rings: &[Ring], house: &stack::House, bay: Option<Length>) -> Vec<Pair> {
    let worn: Vec<usize> = (0..rings.len()).filter(|at| rings[*at].state != RingState::Planned).collect();
    let mut found = neighbours(rings, &worn, house, bay);
    if worn.len() < rings.len() {
        let every: Vec<usize> = (0..rings.len()).collect();
        let later = neighbours(rings, &every, house, bay);
        let is_new = |pair: &Pair| {
            !found.iter().any(|now| now.apart.rings == pair.apart.rings && now.apart.top == pair.apart.top)
        };
        let new: Vec<Pair> = later.into_iter().filter(is_new).map(|pair| Pair { later: true, ..pair }).collect();
        found.extend(new);
    }
    found
}

fn neighbours(rings: &[Ring], order: &[usize], house: &stack::House, bay: Option<Length>) -> Vec<Pair> {
    let lying: Vec<Lying> = order.iter().map(|at| rings[*at].lying).collect();
    let one = |apart: Apart| {
        let made = apart.cause.is_some_and(|cause| rings[order[cause.meets]].state != RingState::Worn);
        let remedies = stack::remedies(&apart, &lying, house.clearance, house.thinnest).filter(|_| made);
        let pair = (order[apart.rings.0], order[apart.rings.1]);
        let wear = stack::wear(&rings[pair.0].surface, &rings[pair.1].surface, house.catch);
        let cause =
            apart.cause.map(|cause| stack::Cause { head: order[cause.head], meets: order[cause.meets], ..cause });
        // The bay gives way to a head that meets the band.
        let of_band = cause.is_some_and(|cause| !cause.heads_meet && rings[cause.meets].state == RingState::Wanted);
        let bay = bay.filter(|_| of_band).unwrap_or_default();
        let left = (apart.top - bay).max(Length::ZERO);
        Pair { later: false, apart: Apart { rings: pair, cause, ..apart }, left, remedies, wear }
    };
    stack::flush(&lying, house.clearance).into_iter().map(one).collect()
}

impl Ring {
    fn on_finger(&self) -> RingOnFinger {
        let when = if self.state == RingState::Planned { When::Later } else { When::Now };
        RingOnFinger { width: self.lying.width, when }
    }
}

impl Reckoned {
    /// With every ring that is to come.
    pub fn later(&self) -> Option<&Stretch> {
        self.stack.as_ref().map(|stack| &stack.later)
    }

    /// The widest place of what is made: at the top where a bay adds to it, otherwise at the palm.
    pub fn widest(&self) -> Option<&Stack> {
        self.at_top.as_ref().filter(|_| self.bay.is_some()).or(self.stack.as_ref())
    }

    /// A ring and the one before it once all are there.
    pub fn before(&self, ring: usize) -> Option<&Pair> {
        let of = |pair: &&Pair| pair.apart.rings.1 == ring && pair.apart.rings.0 + 1 == ring;
        self.pairs.iter().rfind(of)
    }

    /// How far the shanks of a ring and the one before it are from each other at the top, and how much of it is the bay.
    pub fn at_shanks(&self, ring: usize) -> (Length, Length) {
        let Some(pair) = self.before(ring) else { return (Length::ZERO, Length::ZERO) };
        let bay = self.bay.filter(|_| self.is_of_band(pair)).unwrap_or_default();
        (bay + pair.left, bay)
    }

    /// How far the band bends at its top, away from the head that its bay is for: to the tip, or below zero to the web.
    pub fn bend(&self, ring: usize) -> Length {
        let bay = self.bay.filter(|_| self.rings.get(ring).is_some_and(|it| it.state == RingState::Wanted));
        let bay = bay.unwrap_or_default();
        let beyond = self.held_off().find_map(|pair| pair.apart.cause).is_some_and(|cause| cause.head > cause.meets);
        if beyond { -bay } else { bay }
    }

    /// How two neighbours lie, in words, with the bay of the band where it has one.
    pub fn lie(&self, pair: &Pair, name: &dyn Fn(usize) -> String) -> String {
        match self.bay.filter(|_| self.is_of_band(pair)) {
            Some(bay) => say_stack::in_bay(&pair.apart, bay, pair.left, name),
            None => say_stack::apart(&pair.apart, name),
        }
    }

    /// Whether it is the band that a head holds off: what can be done about it is done to the band.
    pub fn is_of_band(&self, pair: &Pair) -> bool {
        let cause = pair.apart.cause.and_then(|cause| self.rings.get(cause.meets));
        pair.remedies.is_some() && cause.is_some_and(|ring| ring.state == RingState::Wanted)
    }

    /// The neighbours as they are worn now whose head holds the band off, otherwise those with the rings to come.
    fn held_off(&self) -> impl Iterator<Item = &Pair> {
        let of_band = |pair: &&Pair| self.is_of_band(pair);
        let now = self.pairs.iter().filter(of_band).any(|pair| !pair.later);
        self.pairs.iter().filter(of_band).filter(move |pair| pair.later != now)
    }

    /// What does for every head that holds the band off.
    pub fn remedies(&self) -> Option<Remedies> {
        let of_band = self.held_off().filter_map(|pair| pair.remedies);
        of_band.reduce(|one, other| Remedies {
            bay: one.bay.max(other.bay),
            height: one.height.and(other.height),
            gap: one.gap.max(other.gap),
        })
    }

    /// How far a head holds the band off as it is worn now.
    pub fn off(&self) -> Length {
        let now = self.held_off().filter(|pair| !pair.later);
        now.map(|pair| pair.apart.top).max().unwrap_or_default()
    }

    /// A ring as it is called in front of the couple.
    pub fn plain_name(&self, ring: usize) -> String {
        self.rings.get(ring).map(|ring| showing::ring_named(&ring.plain, ring.state)).unwrap_or_default()
    }

    pub fn name(&self, ring: usize) -> String {
        self.rings.get(ring).map(|ring| say::named(&ring.name, ring.state)).unwrap_or_default()
    }
}
