//! The stack: the room that all rings take, now and later, how the band matches, whether it lies flush, what can be
//! done about a head, and how the rings wear each other.

mod couple;
mod pairs;
mod pictured;

pub use couple::{
    Elsewhere, TopNoted, USUAL_FINGER, Unsettled, elsewhere, finger_across, holding, lacking, noted_at_top, of_couple,
    place_on_finger, unsettled,
};
pub use pairs::{Match, Pair};

use super::Tone;
use crate::book::practice::Practice;
use crate::forms::stack::{Lies, StackTyped, section};
use crate::trade::band::Profile;
use crate::trade::band::section::Section;
use crate::trade::fit::{Constants, PerMm};
use crate::trade::limits::Whole;
use crate::trade::measure::Length;
use crate::trade::stack::{
    self, Head, House, Lying, Remedies, RingOnFinger, RingState, Stack, StackError, StackInputs, Stretch, Surface,
    Taper, Tighter, Verdict,
};
use crate::trade::wearer::Finger;

/// What the practice sets for every stack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StackRules {
    pub house: House,
    /// How much tighter a ring feels for each millimetre beside it.
    pub width_per_mm: PerMm,
}

impl StackRules {
    pub fn of(practice: Practice<'_>) -> StackRules {
        StackRules { house: practice.house(), width_per_mm: practice.constants().width_per_mm }
    }
}

/// With the customary figures of the fit: nothing but how much tighter rings feel rests on them.
impl From<House> for StackRules {
    fn from(house: House) -> StackRules {
        StackRules { house, width_per_mm: Constants::default().width_per_mm }
    }
}

/// What the stack comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct StackAnswer {
    /// From the web outwards, the band among them.
    pub rings: Vec<RingInStack>,
    pub gap: Option<Length>,
    pub measured: Option<Length>,
    pub free_elsewhere: Vec<(Finger, Length)>,
    /// Along the palm, where the free length is measured. None while something is missing or has to be put right.
    pub stack: Option<Stack>,
    /// How deep the curve of a shaped band is.
    pub curve: Option<Length>,
    /// What the rings take at the top, where a curve or a gap adds to their widths. The palm takes neither.
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
pub struct RingInStack {
    /// None for the band, and for a ring that nobody named.
    pub name: Option<String>,
    /// Which it is of those in its state, where there are several of them.
    pub number: Option<usize>,
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

/// What wants to be read first.
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    NoAnswer(StackError),
    DoesNotFit,
    Crowded,
    /// A gap takes nothing of the palm, and may still be too much at the top.
    CrowdedAtTop {
        total: Length,
        verdict: Verdict,
    },
    /// Two neighbours, of [`StackAnswer::pairs`], that a head keeps apart.
    Apart(usize),
    /// Two neighbours of which one is likely to lose metal, or which catch.
    Wears(usize),
    /// A ring that is wider at its top than at its shoulders, and whose head nobody has written down.
    HeadUnknown {
        ring: usize,
        over: Length,
    },
}

/// What was typed or recorded, and what it comes to.
pub fn answer(typed: &StackTyped, rules: &StackRules) -> StackAnswer {
    let mut rings: Vec<RingInStack> = typed.rings.iter().filter_map(ring).collect();
    let mut place = None;
    if let Some(band) = band(typed) {
        let worn = || rings.iter().rposition(|ring| ring.state == RingState::Worn).map_or(0, |last| last + 1);
        let at = match typed.lies {
            Lies::NearestWeb => 0,
            Lies::AfterWorn => worn(),
            Lies::Beyond(beyond) => usize::from(beyond).min(rings.len()),
        };
        place = Some(Whole(at as u16));
        rings.insert(at, band);
    }
    number(&mut rings);
    let house = House { gap: typed.gap.unwrap_or(rules.house.gap), ..rules.house };
    let on_finger: Vec<RingOnFinger> =
        rings.iter().map(|it| RingOnFinger { width: it.lying.width, when: it.state.when() }).collect();
    let inputs = typed.is_whole.then(|| StackInputs { rings: on_finger.clone(), measured: typed.free, house });
    let (stack, error) = match inputs.as_ref().map(stack::stack) {
        Some(Ok(stack)) => (Some(stack), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let curve = typed.curve.filter(|curve| stack.is_some() && *curve > Length::ZERO);
    let mut found = StackAnswer {
        matches: pairs::matches(&rings),
        pairs: pairs::pairs(&rings, &house, curve),
        tighter: stack::tighter_later(&on_finger, rules.width_per_mm),
        gap: typed.gap,
        measured: typed.free,
        free_elsewhere: typed.free_elsewhere.clone(),
        at_top: None,
        rings,
        stack,
        curve,
        error,
        place,
    };
    found.at_top = inputs.filter(|_| found.stack.is_some()).and_then(|inputs| found.stack_at_top(&inputs));
    found
}

fn ring(typed: &crate::book::couple::Ring) -> Option<RingInStack> {
    let width = typed.shoulder_width?;
    let (head, top, back) = (typed.head, typed.top_width, typed.back_width);
    let reach = |reach: Option<Length>| reach.unwrap_or(Length::ZERO);
    let head =
        head.underside.map(|underside| Head { to_web: reach(head.to_web), to_tip: reach(head.to_tip), underside });
    let section = section(width, typed.profile, typed.height, (None, None)).and_then(Result::ok);
    Some(RingInStack {
        name: typed.name.clone(),
        number: None,
        widths: Taper { top: top.unwrap_or(width), shoulders: width, back: back.unwrap_or(width) },
        top_known: top.is_some(),
        usual_dome: section.is_some_and(|section| section.dome() > Length::ZERO),
        head_known: head.is_some(),
        state: if typed.planned { RingState::Planned } else { RingState::Worn },
        profile: typed.profile,
        lying: Lying { width, section, head, inside: typed.inside },
        surface: Surface { alloy: typed.metal, height: typed.height, stones: typed.stones },
    })
}

fn band(typed: &StackTyped) -> Option<RingInStack> {
    let band = &typed.band;
    let width = band.width?;
    let section = section(width, band.profile, band.height, (band.dome, band.relief)).and_then(Result::ok);
    Some(RingInStack {
        name: None,
        number: None,
        widths: Taper::even(width),
        top_known: true,
        usual_dome: band.dome.is_none() && section.is_some_and(|section| section.dome() > Length::ZERO),
        head_known: true,
        state: RingState::Wanted,
        profile: band.profile,
        lying: Lying { width, section, head: None, inside: typed.band_inside },
        surface: Surface { alloy: band.metal, height: band.height, stones: typed.band_set },
    })
}

/// Numbers the rings of which there are several, from the web.
fn number(rings: &mut [RingInStack]) {
    for state in [RingState::Worn, RingState::Planned] {
        let many = rings.iter().filter(|ring| ring.state == state).count() > 1;
        let of_state = rings.iter_mut().filter(|ring| ring.state == state);
        of_state.enumerate().for_each(|(at, ring)| ring.number = many.then_some(at));
    }
}

impl StackAnswer {
    /// With every ring that is to come.
    pub fn later(&self) -> Option<&Stretch> {
        self.stack.as_ref().map(|stack| &stack.later)
    }

    /// The widest place of what is made: at the top where a curve adds to it, otherwise at the palm. The figure, its
    /// verdict, what is left and what a further ring may measure are all of this place.
    pub fn widest(&self) -> Option<&Stack> {
        self.at_top.as_ref().filter(|_| self.curve.is_some()).or(self.stack.as_ref())
    }

    pub fn has_rings_to_come(&self) -> bool {
        self.rings.iter().any(|ring| ring.state == RingState::Planned)
    }

    pub fn has_band(&self) -> bool {
        self.rings.iter().any(|ring| ring.state == RingState::Wanted)
    }

    /// The band cut through, where its profile and thickness are known.
    pub fn section_of_band(&self) -> Option<Section> {
        self.rings.iter().find(|ring| ring.state == RingState::Wanted)?.lying.section
    }

    pub fn tone(&self) -> Tone {
        match self.widest().map(|stack| stack.later.verdict) {
            Some(Verdict::Roomy) => Tone::Settled,
            Some(Verdict::Full) => Tone::Act,
            Some(Verdict::Crowded | Verdict::DoesNotFit) | None => Tone::Care,
        }
    }

    /// What wants to be read first, the most harmful first.
    pub fn cautions(&self) -> Vec<Caution> {
        let mut all = self.no_room();
        let off = self.pairs.iter().enumerate().filter(|(_, pair)| pair.left > Length::ZERO && !pair.later);
        all.extend(off.map(|(at, _)| Caution::Apart(at)));
        all.extend(self.heads_unknown());
        all
    }

    /// What is to be thought of the band, where it stands among others: room, gaps, metal that is likely to be lost.
    pub fn cautions_of_band(&self) -> Vec<Caution> {
        let mut all = self.no_room();
        all.extend(self.heads_unknown());
        let band = self.rings.iter().position(|ring| ring.state == RingState::Wanted);
        for (at, pair) in self.pairs.iter().enumerate() {
            let (near, far) = pair.apart.rings;
            if Some(near) == band || Some(far) == band {
                all.extend((pair.left > Length::ZERO).then_some(Caution::Apart(at)));
                all.extend(pair.wear.is_a_caution().then_some(Caution::Wears(at)));
            }
        }
        all
    }

    fn no_room(&self) -> Vec<Caution> {
        let mut all: Vec<Caution> = self.error.into_iter().map(Caution::NoAnswer).collect();
        match self.widest().map(|stack| stack.later.verdict) {
            Some(Verdict::Crowded) => all.push(Caution::Crowded),
            Some(Verdict::DoesNotFit) => all.push(Caution::DoesNotFit),
            Some(Verdict::Roomy | Verdict::Full) => {
                let at_top = self.at_top.as_ref().map(|stack| &stack.later);
                let too_much = |it: &&Stretch| matches!(it.verdict, Verdict::Crowded | Verdict::DoesNotFit);
                let at_top = at_top.filter(too_much);
                all.extend(at_top.map(|it| Caution::CrowdedAtTop { total: it.total, verdict: it.verdict }));
            }
            None => {}
        }
        all
    }

    fn heads_unknown(&self) -> Vec<Caution> {
        let wide = self.rings.iter().enumerate().filter(|(_, ring)| !ring.head_known && self.rings.len() > 1);
        let one = |(at, ring): (usize, &RingInStack)| {
            let over = ring.widths.over_shoulders();
            (over > Length::ZERO).then_some(Caution::HeadUnknown { ring: at, over })
        };
        wide.filter_map(one).collect()
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
}
