//! The order size: the reading, the band to make, and what else the size rests on.

use chrono::NaiveDate;

use super::complaint::Complaints;
use super::reader::Reader;
use super::size::{SizeTyped, code_of_reading};
use super::texts::{Key, Texts};
use super::write;
use crate::archive::code::Code;
use crate::book::couple::{Band, Couple};
use crate::book::fit_basis::{FitBasis, FitRules};
use crate::book::fitting;
use crate::book::practice::Practice;
use crate::book::value::{OwnGauge, ReadingTaken};
use crate::trade::band::{Bore, Profile};
use crate::trade::fit::gauges::OWN_ERROR;
use crate::trade::fit::{
    Gauge, GaugeKind, Hands, NoBeads, Overrules, Place, RINGS_BESIDE_MOST, ReadAt, Reading, Term, Worn, constants,
};
use crate::trade::limits::{self, Amount, Limit};
use crate::trade::measure::Length;
use crate::trade::sizing::{Size, SizeAsRead, System};
use crate::trade::wearer::Wearer;

pub const SIZE: Key = Key::new("size");
pub const SIZE_AS: Key = Key::new("as");
pub const GAUGE: Key = Key::new("gauge");
pub const GAUGE_KIND: Key = Key::new("gauge-kind");
pub const GAUGE_WIDTH: Key = Key::new("gauge-width");
pub const GAUGE_BORE: Key = Key::new("gauge-bore");
pub const GAUGE_ERROR: Key = Key::new("gauge-error");
/// Empty: where the ring touches the stick.
pub const READ_AT: Key = Key::new("read-at");
pub const HANDS: Key = Key::new("hands");
pub const BESIDE: Key = Key::new("beside");
pub const WIDTH: Key = Key::new("width");
pub const PROFILE: Key = Key::new("profile");
pub const RELIEF: Key = Key::new("relief");
pub const NEIGHBOURS: Key = Key::new("neighbours");
pub const JOINT: Key = Key::new("joint");
pub const JOINT_AS: Key = Key::new("joint-as");
pub const JOINT_WIDTH: Key = Key::new("joint-width");
pub const NO_BEADS: Key = Key::new("no-beads");
pub const FIRST_RING: Key = Key::new("first-ring");
pub const CHANGING: Key = Key::new("changing");
/// The newest reading counts alone.
pub const ALONE_READING: Key = Key::new("alone-reading");
pub const WORN: Key = Key::new("worn");
/// The size that is made instead of the worked-out one.
pub const MAKE: Key = Key::new("make");

/// The words for the gauge that the couple's reading was taken with, and for one that is not in the practice.
pub const GAUGE_AS_TAKEN: &str = "taken";
pub const GAUGE_OTHER: &str = "other";
/// The words for the two kinds of gauge.
pub const KIND_SET: &str = "set";
pub const KIND_STICK: &str = "stick";
/// The words for the ways to wear the band.
pub const WORN_STACK: &str = "stack";
pub const WORN_ALONE: &str = "alone";

/// What is counted with while no profile is chosen.
pub const USUAL_PROFILE: Profile = Profile::Court;

/// The field for an amount of the jeweller's own.
pub const fn own(term: Term) -> Key {
    Key::new(match term {
        Term::Gauge => "own-gauge",
        Term::Stick => "own-stick",
        Term::Width => "own-width",
        Term::Bore => "own-bore",
        Term::Hands => "own-hands",
        Term::Sits => "own-sits",
        Term::Offset => "own-offset",
        Term::Joint => "own-joint",
    })
}

/// What is known while somebody types.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// The couple's readings that count, the newest first: its gauge may be picked, and the others count with it.
    pub readings: Vec<ReadingTaken>,
    /// The gauges of the practice, each with its word.
    pub gauges: Vec<(String, OwnGauge)>,
    pub rules: FitRules,
    pub today: NaiveDate,
}

impl Known {
    pub fn of(couple: Option<(Couple<'_>, Wearer)>, practice: Practice<'_>, today: NaiveDate) -> Known {
        let gauges = practice.gauges().into_iter();
        Known {
            readings: couple.map(|(couple, who)| readings(couple, who)).unwrap_or_default(),
            gauges: gauges.map(|(item, own)| (item.to_string(), own.clone())).collect(),
            rules: FitRules::of(practice),
            today,
        }
    }
}

/// The readings of the base of the finger that count, the newest first.
pub fn readings(couple: Couple<'_>, who: Wearer) -> Vec<ReadingTaken> {
    fitting::counted(couple, who, Place::Base).into_iter().map(|(_, taken)| taken.clone()).collect()
}

/// What was typed, as far as it could be read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderTyped {
    pub size: SizeTyped,
    pub joint: SizeTyped,
    pub gauge: Option<OwnGauge>,
    /// How many further readings count.
    pub others: usize,
    /// The width, the profile and the relief of the band.
    pub band: Band,
    /// All that the order size rests on; none while something is missing or has to be put right.
    pub basis: Option<FitBasis>,
    /// How the band is worn, where both ways are possible.
    pub worn: Option<Worn>,
    pub make: Option<Size>,
}

/// What the form starts with: the couple's figures, or nothing.
pub fn start(couple: Option<(Couple<'_>, Wearer)>, practice: Practice<'_>) -> Texts {
    let gauge = practice.gauges().first().map(|(item, _)| item.to_string());
    let blank = Texts::default()
        .with_blank([SIZE, SIZE_AS])
        .with(GAUGE, gauge.unwrap_or_else(|| GAUGE_OTHER.to_owned()))
        .with(GAUGE_KIND, KIND_SET)
        .with_blank([GAUGE_WIDTH])
        .with(GAUGE_BORE, Bore::Flat.code())
        .with_blank([GAUGE_ERROR, READ_AT])
        .with(HANDS, Hands::Normal.code())
        .with_blank([BESIDE, WIDTH])
        .with(PROFILE, USUAL_PROFILE.code())
        .with_blank([RELIEF, NEIGHBOURS, JOINT, JOINT_AS, JOINT_WIDTH, NO_BEADS, FIRST_RING, CHANGING, ALONE_READING])
        .with(WORN, WORN_STACK)
        .with_blank([MAKE])
        .with_blank(Term::ALL.map(own));
    match couple {
        Some((couple, who)) => recorded(blank, couple, who),
        None => blank,
    }
}

/// The texts of a size that was typed elsewhere; `which` says which reading of it is meant.
pub fn of_size(size: impl Into<String>, which: impl Into<String>) -> Texts {
    Texts::default().with(SIZE, size).with(SIZE_AS, which)
}

/// The texts of a size round or across the inside, in millimetres, from a gauge that a screen or a sheet of paper makes:
/// so wide, where that is known, and so sure, or as unsure as the form takes.
pub fn of_gauge(size: Length, width: Option<Length>, error: Length) -> Texts {
    let most = match limits::of(Limit::GaugeError).most {
        Amount::Length(most) => most,
        Amount::Percent(_) | Amount::Days(_) | Amount::Characters(_) => error,
    };
    let mut texts = Texts::default()
        .with(SIZE, write::size_in_mm(size))
        .with(GAUGE, GAUGE_OTHER)
        .with(GAUGE_KIND, KIND_SET)
        .with(GAUGE_ERROR, write::mm(write::to_hundredths(error.min(most))));
    if let Some(width) = width {
        texts.set(GAUGE_WIDTH, write::mm(width));
    }
    texts
}

fn recorded(mut texts: Texts, couple: Couple<'_>, who: Wearer) -> Texts {
    texts.set(NEIGHBOURS, write::widths(&fitting::worn_beside(couple, who)));
    if let Some((_, taken)) = fitting::counted(couple, who, Place::Base).first() {
        put_size(&mut texts, SIZE, SIZE_AS, &taken.size);
        texts.set(GAUGE, GAUGE_AS_TAKEN);
        let touches = taken.read_at == ReadAt::right_for(taken.gauge.gauge.bore);
        texts.set(READ_AT, if touches { "" } else { taken.read_at.code() });
        texts.set(HANDS, taken.hands.code());
        texts.set(BESIDE, write::widths(&taken.beside));
    }
    if let Some(joint) = fitting::joint(couple, who) {
        let taken = fitting::counted(couple, who, Place::Joint);
        let as_read = taken.iter().find(|(_, taken)| taken.size.circumference() == joint.passes_at);
        match as_read.filter(|_| joint.readings == 1) {
            Some((_, only)) => put_size(&mut texts, JOINT, JOINT_AS, &only.size),
            // Of several their mean, in millimetres round; of one what its calibration makes of it.
            None => texts.set(JOINT, write::circumference(joint.passes_at)),
        }
        texts.set(JOINT_WIDTH, write::mm(joint.width));
    }
    let band = couple.band(who);
    texts.set(WIDTH, write::optional_mm(band.width));
    texts.set(RELIEF, write::optional_mm(band.relief));
    texts.set(PROFILE, band.profile.unwrap_or(USUAL_PROFILE).code());
    texts.set(NO_BEADS, fitting::no_beads(&band).map(no_beads_code).unwrap_or_default());
    texts.set(FIRST_RING, write::yes(couple.first_ring(who) == Some(true)));
    texts
}

fn put_size(texts: &mut Texts, key: Key, which: Key, size: &SizeAsRead) {
    texts.set(key, write::size(size));
    texts.set(which, code_of_reading(size));
}

/// Reads the form.
pub fn read(texts: &Texts, known: &Known) -> (OrderTyped, Complaints) {
    let mut form = Reader::new(texts);
    let system = known.rules.system;
    let size = form.size(SIZE, SIZE_AS, system).unwrap_or_default();
    let joint = form.optional_size(JOINT, JOINT_AS, system).flatten().unwrap_or_default();
    let taken = known.readings.first().filter(|_| form.text(GAUGE) == GAUGE_AS_TAKEN);
    let gauge = gauge(&mut form, known, taken);
    let width = form.length(WIDTH, Limit::BandWidth);
    let neighbours = form.widths(NEIGHBOURS, RINGS_BESIDE_MOST);
    let beside = form.widths(BESIDE, RINGS_BESIDE_MOST);
    let profile: Option<Profile> = form.choice(PROFILE);
    let relief = match has_relief(texts) {
        true => form.optional_length(RELIEF, Limit::EdgeRelief).flatten(),
        false => None,
    };
    let alone = form.yes(ALONE_READING);
    let others = known.readings.iter().skip(1).filter(|_| !alone).map(fitting::as_reading);
    let others: Vec<Reading> = others.collect();
    let mut overrules = Overrules::default();
    for term in Term::ALL {
        overrules.set(term, form.optional_length(own(term), Limit::OwnShift).flatten());
    }
    let joint_width = form.optional_length(JOINT_WIDTH, Limit::GaugeWidth).flatten();
    let count = others.len();
    let basis = (|| {
        let own = gauge.as_ref()?;
        let as_read = size.meant()?.circumference();
        let newest = Reading {
            as_read,
            gauge: own.gauge,
            read_at: form.choice(READ_AT).unwrap_or(ReadAt::right_for(own.gauge.bore)),
            hands: form.choice(HANDS)?,
            place: Place::Base,
            beside: beside?,
            sits: taken.and_then(|taken| taken.sits),
            gauge_off: fitting::gauge_off(own, as_read),
            day: taken.map_or(known.today, |taken| taken.taken),
        };
        // Half a word about a joint that nobody has tried says nothing.
        let joint = joint.meant().map(|joint| (joint.circumference(), joint_width));
        Some(FitBasis {
            readings: std::iter::once(newest).chain(others).collect(),
            width: Some(width?),
            profile: Some(profile?),
            relief,
            neighbours: neighbours?,
            first_ring: form.yes(FIRST_RING),
            finger_changing: form.yes(CHANGING),
            joint,
            no_beads: read_no_beads(form.text(NO_BEADS)),
            overrules,
        })
    })();
    let typed = OrderTyped {
        basis: basis.filter(|_| form.is_fine() && !joint.is_open()),
        size,
        joint,
        gauge,
        others: count,
        band: Band { width, profile, relief, ..Band::default() },
        worn: (form.text(WORN) == WORN_ALONE).then_some(Worn::Alone),
        make: read_size_code(form.text(MAKE)),
    };
    (typed, form.complaints())
}

/// The gauge that is picked: the couple's, one of the practice, or another with what is typed about it.
fn gauge(form: &mut Reader, known: &Known, taken: Option<&ReadingTaken>) -> Option<OwnGauge> {
    let picked = form.text(GAUGE);
    if picked == GAUGE_AS_TAKEN {
        return taken.map(|taken| taken.gauge.clone());
    }
    if let Some((_, own)) = known.gauges.iter().find(|(word, _)| word == picked) {
        return Some(own.clone());
    }
    let width = form.length(GAUGE_WIDTH, Limit::GaugeWidth);
    let kind = match form.text(GAUGE_KIND) {
        KIND_STICK => GaugeKind::Stick { taper: constants::STICK_TAPER.value },
        _ => GaugeKind::RingSet,
    };
    let own_error = form.optional_length(GAUGE_ERROR, Limit::GaugeError)?.unwrap_or(OWN_ERROR);
    let step = fitting::grid(known.rules.system, known.rules.step).step;
    let bore = form.choice(GAUGE_BORE).unwrap_or(Bore::Flat);
    let gauge = Gauge { kind, width: width?, bore, relief: None, step, own_error };
    Some(OwnGauge { name: String::new(), gauge, calibration: Vec::new() })
}

/// Whether the inside of the band has a relief that could be measured: a flat one has none, whatever was measured of
/// another profile.
pub fn has_relief(texts: &Texts) -> bool {
    Profile::from_code(texts.get(PROFILE)).is_some_and(|profile| profile.bore() == Bore::Domed)
}

/// Where the ring touches the stick: its gauge may not be complete yet.
pub fn touches(texts: &Texts, typed: &OrderTyped) -> ReadAt {
    let chosen = || Bore::from_code(texts.get(GAUGE_BORE)).unwrap_or(Bore::Flat);
    ReadAt::right_for(typed.gauge.as_ref().map_or_else(chosen, |own| own.gauge.bore))
}

/// The word for why a ring takes no beads.
pub fn no_beads_code(why: NoBeads) -> &'static str {
    match why {
        NoBeads::FullEternity => "full-eternity",
        NoBeads::HardMetal => "hard-metal",
    }
}

fn read_no_beads(code: &str) -> Option<NoBeads> {
    [NoBeads::FullEternity, NoBeads::HardMetal].into_iter().find(|why| no_beads_code(*why) == code)
}

/// The word of a size: its system and its quarters, "uk-54".
pub fn size_code(size: Size) -> String {
    format!("{}-{}", size.system().code(), size.quarters())
}

fn read_size_code(code: &str) -> Option<Size> {
    let (system, quarters) = code.split_once('-')?;
    Size::new(System::from_code(system)?, quarters.parse().ok()?)
}
