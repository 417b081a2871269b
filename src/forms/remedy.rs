//! What is chosen for a band that a head holds off: the way with its figure, what the workshop gets to shape the band
//! by, and the days of a ring that is away for it.

use chrono::NaiveDate;

use super::complaint::{Complaint, Complaints, Noun};
use super::reader::Reader;
use super::texts::{Key, Texts};
use super::write;
use crate::book::arcs;
use crate::book::change::Write;
use crate::book::couple::{Band, Couple, Ring};
use crate::book::field::Field;
use crate::book::id::ItemId;
use crate::book::remedy::{Away, Remedy, Way, away_at};
use crate::book::value::Value;
use crate::trade::band::section::Section;
use crate::trade::dates::entry::read_day_from;
use crate::trade::dates::wedding::Wedding;
use crate::trade::entry;
use crate::trade::limits::Limit;
use crate::trade::measure::Length;
use crate::trade::stack::Remedies;
use crate::trade::wearer::Wearer;

pub const WAY: Key = Key::new("remedy");
pub const IMPRESSION: Key = Key::new("impression");
pub const TEMPLATE: Key = Key::new("template");
pub const RING_ITSELF: Key = Key::new("ring-itself");
pub const WHICH_RING: Key = Key::new("which-ring");
pub const AWAY_FROM: Key = Key::new("away-from");
pub const AWAY_TO: Key = Key::new("away-to");
pub const RING_GONE: Key = Key::new("ring-gone");
pub const RING_BACK: Key = Key::new("ring-back");

/// The figure that belongs to a way: how deep the curve is, how thick the band is at most, how wide the gap is.
pub const fn amount(way: Way) -> Key {
    Key::new(match way {
        Way::Shaped => "bay",
        Way::Lower => "most-high",
        Way::Gap => "left-gap",
    })
}

/// What was read: the choice, and the days on which a ring went and came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RemedyTyped {
    pub remedy: Option<Remedy>,
    pub gone: Option<NaiveDate>,
    pub back: Option<NaiveDate>,
}

/// The rings that could go to the workshop, those with a head first.
pub fn rings_worn(couple: Couple<'_>, who: Wearer) -> Vec<Ring> {
    let worn: Vec<Ring> = couple.rings(who).into_iter().filter(|ring| !ring.planned).collect();
    let (mut with_head, others): (Vec<Ring>, Vec<Ring>) =
        worn.into_iter().partition(|ring| ring.head.underside.is_some());
    with_head.extend(others);
    with_head
}

/// What the form starts with: what was chosen, and for the other ways what was computed. `day` writes a day as it is
/// typed.
pub fn start(couple: Couple<'_>, who: Wearer, computed: Option<Remedies>, day: fn(NaiveDate) -> String) -> Texts {
    let known = couple.remedy(who);
    let away = known.and_then(|it| it.ring);
    let day = |of: Option<NaiveDate>| of.map(day).unwrap_or_default();
    let by = |way: Way| {
        let chosen = known.filter(|it| it.way == way).map(|it| it.by);
        // To the hundredth, as it is shown.
        let computed = computed.and_then(|it| match way {
            Way::Shaped => Some(it.bay),
            Way::Lower => it.height.height(),
            Way::Gap => Some(it.gap),
        });
        write::optional_mm(chosen.or(computed.map(write::to_hundredths)))
    };
    let first = rings_worn(couple, who).first().map(|ring| ring.item);
    let ring = away.and_then(|away| away.ring).or(first);
    let amounts = Way::ALL.into_iter().fold(Texts::default(), |texts, way| texts.with(amount(way), by(way)));
    amounts
        .with(WAY, write::code_or_none(known.map(|it| it.way)))
        .with(IMPRESSION, write::yes(known.is_some_and(|it| it.impression)))
        .with(TEMPLATE, write::yes(known.is_some_and(|it| it.template)))
        .with(RING_ITSELF, write::yes(away.is_some()))
        .with(WHICH_RING, ring.map(|item| item.to_string()).unwrap_or_default())
        .with(AWAY_FROM, day(away.and_then(|away| away.from)))
        .with(AWAY_TO, day(away.and_then(|away| away.to)))
        .with(RING_GONE, day(couple.ring_gone(who)))
        .with(RING_BACK, day(couple.ring_back(who)))
}

/// The way that is chosen.
pub fn way_chosen(texts: &Texts) -> Option<Way> {
    Reader::new(texts).choice(WAY)
}

/// Whether the ring would be away at the wedding.
pub fn is_away_at(texts: &Texts, wedding: Wedding, today: NaiveDate) -> bool {
    away_at(typed_away(texts, today), wedding)
}

/// From when to when the ring would be away, as far as it can be read.
pub fn typed_away(texts: &Texts, today: NaiveDate) -> Away {
    let day = |key, from| read_day_from(texts.get(key), from, today).ok();
    let from = day(AWAY_FROM, today);
    Away { ring: None, from, to: day(AWAY_TO, from.unwrap_or(today)) }
}

/// Reads the form. `section` is the band cut through, as it is now.
pub fn read(texts: &Texts, today: NaiveDate, section: Option<Section>) -> Result<RemedyTyped, Complaints> {
    let mut form = Reader::new(texts);
    let way: Option<Way> = form.choice(WAY);
    let is_away = way == Some(Way::Shaped) && form.yes(RING_ITSELF);
    let ring = if is_away { read_away(&mut form, today).map(Some) } else { Some(None) };
    let happened = read_happened(&mut form, today, is_away);
    let remedy = match way {
        None => Some(None),
        Some(way) => {
            let by = read_amount(&mut form, way, section);
            let shaped = |key| way == Way::Shaped && form.yes(key);
            let (impression, template) = (shaped(IMPRESSION), shaped(TEMPLATE));
            by.zip(ring).map(|(by, ring)| Some(Remedy { way, by, impression, template, ring }))
        }
    };
    let read = remedy.zip(happened).map(|(remedy, (gone, back))| RemedyTyped { remedy, gone, back });
    form.checked(read)
}

fn read_amount(form: &mut Reader, way: Way, section: Option<Section>) -> Option<Length> {
    let (limit, noun) = match way {
        Way::Shaped => (Limit::HeadReach, Noun::CurveDepth),
        Way::Lower => (Limit::RingHeight, Noun::MostThickness),
        Way::Gap => (Limit::HeadReach, Noun::GapAtTop),
    };
    let by = entry::read_length(form.text(amount(way)), limit).map_err(|error| Complaint::Number(error, noun));
    // The band keeps its dome and its relief: a thickness that leaves them no edge is none.
    let by = by.and_then(|by| {
        let made = section.filter(|_| way == Way::Lower).map_or(Ok(()), |band| band.at_height(by).map(|_| ()));
        made.map(|()| by).map_err(Complaint::Section)
    });
    form.note(amount(way), by)
}

/// From when to when the ring is to be away.
fn read_away(form: &mut Reader, today: NaiveDate) -> Option<Away> {
    let from = form.optional_day(AWAY_FROM, today, today);
    let to = form.optional_day(AWAY_TO, from.flatten().unwrap_or(today), today);
    let (from, to) = (from?, to?);
    let ordered = from.zip(to).is_none_or(|(from, to)| from <= to);
    form.note(AWAY_TO, if ordered { Ok(()) } else { Err(Complaint::BackBeforeAway) })?;
    Some(Away { ring: ItemId::parse(form.text(WHICH_RING)), from, to })
}

/// The days on which it went and came. One that went and has no place at the workshop any more has to have come back.
fn read_happened(form: &mut Reader, today: NaiveDate, is_away: bool) -> Option<(Option<NaiveDate>, Option<NaiveDate>)> {
    let gone = form.optional_day(RING_GONE, today, today);
    let back = form.optional_day(RING_BACK, today, today);
    let (gone, back) = (gone?, back?);
    let not_yet = |day: Option<NaiveDate>| day.is_some_and(|day| day > today);
    let went = if not_yet(gone) { Err(Complaint::NotYet(today)) } else { Ok(()) };
    let came = match (gone, back) {
        // A day that has not been yet is put right first: what follows from it would be said of a day that it is not.
        _ if went.is_err() => Ok(()),
        (None, Some(_)) => Err(Complaint::BackNotGone),
        (Some(gone), Some(back)) if back < gone => Err(Complaint::BackBeforeGone),
        (Some(_), None) if !is_away => Err(Complaint::StillAway),
        _ if not_yet(back) => Err(Complaint::NotYet(today)),
        _ => Ok(()),
    };
    let (went, came) = (form.note(RING_GONE, went), form.note(RING_BACK, came));
    went.and(came).map(|()| (gone, back))
}

impl RemedyTyped {
    /// What is written down: the choice, the days, and for a thinner band its thickness with the dome it was computed
    /// with.
    pub fn writes(&self, who: Wearer, band: &Band, section: Option<Section>) -> Vec<Write> {
        let day = |field, of: Option<NaiveDate>| Write { field, value: of.map(Value::Day) };
        let mut writes = vec![
            Write { field: Field::Remedy(who), value: self.remedy.map(Value::Remedy) },
            day(Field::RingGone(who), self.gone),
            day(Field::RingBack(who), self.back),
        ];
        let lower = self.remedy.filter(|it| it.way == Way::Lower);
        writes.extend(lower.into_iter().flat_map(|it| arcs::lowered(who, band, section.as_ref(), it.by)));
        writes
    }
}
