//! The order size: the size to make, the range it may lie in, each part of the way there, and what to think of first.

use chrono::{Days, NaiveDate};

use crate::book::change::Write;
use crate::book::checklist::Topic;
use crate::book::couple::{Band, Couple};
use crate::book::field::{BandField, Field, Wish};
use crate::book::fit_basis::{FitBasis, FitRules};
use crate::book::fitting;
use crate::book::value::{OrderSize, OwnAmount, OwnGauge, OwnTerms, Value};
use crate::forms::order::{OrderTyped, USUAL_PROFILE};
use crate::trade::arrange::in_order;
use crate::trade::band::Bore;
use crate::trade::fit::{
    self, Answer, Combined, FitError, Inputs, JointFinding, JointHelp, MeasureAgain, Order, Place, Reading, Shift,
    Term, Tie, Wider, Worn,
};
use crate::trade::measure::{Circumference, Length, Standing};
use crate::trade::sizing::{self, Size, Stated, Step, System};
use crate::trade::wearer::Wearer;

use super::Tone;
use super::scale::Scale;

/// A finger is measured again a week later: on another day, and still in time. House rule.
const MEASURED_AGAIN_AFTER: Days = Days::new(7);

/// The order size of what was typed, with what the answer says about it.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderAnswer {
    pub typed: OrderTyped,
    pub rules: FitRules,
    /// None while something is missing for it.
    pub sized: Option<SizedBand>,
    /// What wants to be read before anything is ordered, the most harmful first.
    pub cautions: Vec<Caution>,
    pub asks_again: bool,
}

/// A size, and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct SizedBand {
    pub inputs: Inputs,
    pub order: Order,
    /// How the band is worn: beside its neighbours where there are any, unless it is to be worn alone.
    pub worn: Worn,
    pub scale: Scale,
    /// The size to make as it was worked out: of the first system, or in millimetres round where that has none. None
    /// for what is no ring any more.
    pub worked_out: Option<Size>,
    /// The sizes that may be made instead, the worked-out one among them.
    pub choices: Vec<Size>,
    /// After the jeweller's word.
    pub made: Option<Made>,
    pub wider: WiderBand,
    pub tone: Tone,
}

/// The size to make, and whether the jeweller chose it instead of the nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Made {
    pub size: Size,
    pub overruled: bool,
}

/// What wants to be read first.
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    NoAnswer(FitError),
    /// The size can be read in so many ways.
    SeveralReadings(usize),
    /// Beyond the last size of the scale.
    BeyondScale {
        exact: Circumference,
        last: Size,
    },
    /// With the gauge of the practice that is nearer to what is wanted than the one that was used.
    MeasureAgain(MeasureAgain, Option<(String, Length)>),
    Tie(Tie),
    Joint(JointFinding),
    /// One of several readings stands apart.
    Outlier,
    Wish(Wish),
    FirstRing,
}

/// A part of the way from the reading to the size.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    Reading {
        as_read: Circumference,
        stated: Option<Stated>,
        gauge: OwnGauge,
    },
    /// Several readings, what each weighs and what it said.
    Together {
        as_read: Circumference,
        combined: Combined,
        singles: Vec<Stated>,
    },
    Shift(Shift),
    Sum(Answer),
    ToMake {
        step: Step,
        size: Size,
        off: Length,
    },
}

/// What a band one millimetre wider would take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WiderBand {
    Takes(Wider),
    /// The jeweller's own amount for the width stands.
    AmountStands,
    /// The joint alone decides, and has to be tried in that width.
    JointDecides,
    /// No band is so wide.
    None,
}

/// The answer to what was typed. `gauges` are those of the practice, `wishes` what is to be thought of about the finger.
pub fn answer(typed: OrderTyped, rules: FitRules, gauges: &[(String, OwnGauge)], wishes: &[Wish]) -> OrderAnswer {
    let inputs = typed.basis.as_ref().and_then(|basis| basis.inputs(&rules));
    let worked_out = inputs.map(|inputs| SizedBand::new(inputs, rules, typed.worn, typed.make));
    let (sized, error) = match worked_out {
        Some(Ok(sized)) => (Some(sized), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let mut cautions: Vec<Caution> = error.into_iter().map(Caution::NoAnswer).collect();
    cautions.extend(typed.size.is_open().then_some(Caution::SeveralReadings(typed.size.readings.len())));
    cautions.extend(sized.as_ref().map(|sized| sized.cautions(gauges, wishes)).unwrap_or_default());
    let asks_again = sized.as_ref().is_some_and(SizedBand::asks_again);
    OrderAnswer { typed, rules, sized, cautions, asks_again }
}

/// The size to make for another basis, everything else as it is; none where something is missing for it.
pub fn size_to_make(basis: &FitBasis, rules: FitRules) -> Option<Size> {
    let sized = SizedBand::new(basis.inputs(&rules)?, rules, None, None).ok()?;
    sized.made.map(|made| made.size)
}

impl SizedBand {
    fn new(inputs: Inputs, rules: FitRules, worn: Option<Worn>, make: Option<Size>) -> Result<SizedBand, FitError> {
        let order = fit::order(&inputs)?;
        let worn = if inputs.neighbours.is_empty() { Worn::Alone } else { worn.unwrap_or(Worn::InStack) };
        let scale = Scale { system: rules.system, step: rules.step };
        let mut sized = SizedBand {
            wider: WiderBand::None,
            worked_out: None,
            choices: Vec::new(),
            made: None,
            tone: Tone::Care,
            inputs,
            order,
            worn,
            scale,
        };
        sized.worked_out = sized.size_worked_out();
        sized.choices = sized.sizes_to_choose();
        sized.made = sized.worked_out.map(|worked_out| {
            let size = make.filter(|size| sized.choices.contains(size)).unwrap_or(worked_out);
            Made { size, overruled: size != worked_out }
        });
        sized.wider = sized.wider_band();
        sized.tone = sized.tone_of_figure();
        Ok(sized)
    }

    /// The answer for the way of wearing that is chosen.
    pub fn answer(&self) -> &Answer {
        self.answer_worn(self.worn)
    }

    pub fn answer_worn(&self, worn: Worn) -> &Answer {
        match worn {
            Worn::Alone => &self.order.alone,
            Worn::InStack => &self.order.in_stack,
        }
    }

    /// The sizes alone and in the stack, where they differ.
    pub fn worn_choice(&self) -> Option<(Stated, Stated)> {
        let (alone, stack) = (self.order.alone.size, self.order.in_stack.size);
        (alone != stack).then(|| (self.scale.name(alone), self.scale.name(stack)))
    }

    /// The sizes in the range, each once; none beyond the scale.
    pub fn sizes_in_range(&self) -> Vec<Size> {
        let on_scale = self.answer().in_range.iter().filter(|at| !self.scale.is_beyond(**at));
        on_scale.map(|at| self.scale.nearest(*at).size).collect()
    }

    /// Whether the worked-out size lies beyond the last one that the scale has.
    pub fn is_beyond(&self) -> bool {
        self.scale.is_beyond(self.answer().size)
    }

    /// Each of several readings as it was read, and whether it stands apart.
    pub fn singles(&self) -> Vec<(&Reading, bool)> {
        let Some(combined) = &self.order.combined else { return Vec::new() };
        self.inputs.readings().into_iter().zip(&combined.parts).map(|(it, part)| (it, part.outlier)).collect()
    }

    fn size_worked_out(&self) -> Option<Size> {
        let answer = self.answer();
        if !self.scale.is_beyond(answer.size) {
            return Some(self.scale.nearest(answer.size).size);
        }
        // The steps of the scale mean nothing there: what was worked out itself.
        let found = sizing::nearest(System::Circumference, answer.exact, Step::Quarter);
        let up = sizing::rounded_up(System::Circumference, answer.exact, Step::Quarter);
        let near = |size: &Size| (size.circumference().0 - answer.exact.0).abs() < Length::from_mm(0.25);
        Some(found.size).filter(|size| self.passes(*size)).or(up.map(|up| up.size)).filter(near)
    }

    /// Every size in the range, and one more at either end; none that does not pass the joint.
    fn sizes_to_choose(&self) -> Vec<Size> {
        if self.is_beyond() {
            return Vec::new();
        }
        let in_range = self.answer().in_range.iter().map(|at| self.scale.nearest(*at).size);
        let mut sizes = in_order(in_range, |size| *size);
        let below = sizes.first().and_then(|size| size.smaller(self.scale.step));
        let above = sizes.last().and_then(|size| size.larger(self.scale.step));
        sizes.extend(below.into_iter().chain(above));
        let mut sizes = in_order(sizes, |size| *size);
        sizes.dedup();
        sizes.retain(|size| self.passes(*size));
        sizes
    }

    fn passes(&self, size: Size) -> bool {
        self.inputs.joint.is_none_or(|joint| size.circumference() >= joint)
    }

    fn wider_band(&self) -> WiderBand {
        if self.inputs.overrules.of(Term::Width).is_some() {
            WiderBand::AmountStands
        } else if self.answer().joint_alone() {
            WiderBand::JointDecides
        } else {
            fit::wider(&self.inputs, self.worn).map_or(WiderBand::None, WiderBand::Takes)
        }
    }

    fn tone_of_figure(&self) -> Tone {
        let loose = matches!(
            self.answer().joint,
            Some(JointFinding::Decides { help, .. }) if help != JointHelp::Accept
        );
        let care = self.made.is_none() || !self.order.measure_again.is_empty() || loose || self.is_beyond();
        if care { Tone::Care } else { Tone::Act }
    }

    fn asks_again(&self) -> bool {
        !self.order.measure_again.is_empty() || self.order.has_outlier()
    }

    fn cautions(&self, gauges: &[(String, OwnGauge)], wishes: &[Wish]) -> Vec<Caution> {
        let (order, answer) = (&self.order, self.answer());
        let mut all = Vec::new();
        if self.is_beyond() {
            let last = self.scale.nearest(answer.size).size;
            all.push(Caution::BeyondScale { exact: answer.exact, last });
        }
        let again = order.measure_again.iter();
        all.extend(again.map(|reason| Caution::MeasureAgain(*reason, nearer_gauge(reason, gauges))));
        all.extend(answer.tie.map(Caution::Tie));
        all.extend(answer.joint.map(Caution::Joint));
        all.extend(order.has_outlier().then_some(Caution::Outlier));
        all.extend(wishes.iter().copied().map(Caution::Wish));
        all.extend(order.first_ring.then_some(Caution::FirstRing));
        all
    }

    /// The terms that the jeweller overruled, with what the rules gave.
    fn own_terms(&self) -> OwnTerms {
        let mut own = OwnTerms::default();
        for shift in &self.answer().shifts {
            let overruled = shift.kind.term().filter(|term| self.inputs.overrules.of(*term).is_some());
            if let Some(term) = overruled {
                own.set(term, OwnAmount { worked_out: shift.worked_out, used: shift.amount });
            }
        }
        own
    }
}

impl OrderAnswer {
    pub fn made(&self) -> Option<Made> {
        self.sized.as_ref()?.made
    }

    /// Whether a term of the fit has a field for an amount of the jeweller's own: those of the answer, and those that any
    /// answer may have.
    pub fn has_term(&self, term: Term) -> bool {
        matches!(term, Term::Width | Term::Bore | Term::Hands) || self.worked_out(term).is_some()
    }

    /// What the rule gives for a term of the answer.
    pub fn worked_out(&self, term: Term) -> Option<Length> {
        let shifts = &self.sized.as_ref()?.answer().shifts;
        shifts.iter().find(|shift| shift.kind.term() == Some(term)).map(|shift| shift.worked_out)
    }

    /// The day on which the finger is measured again, where the calculation asks for it.
    pub fn measure_again_on(&self, today: NaiveDate) -> Option<NaiveDate> {
        today.checked_add_days(MEASURED_AGAIN_AFTER).filter(|_| self.asks_again)
    }

    /// From the reading to the answer, each part with its amount, its reason and its standing.
    pub fn reasons(&self) -> Vec<Reason> {
        let (Some(sized), Some(gauge)) = (&self.sized, &self.typed.gauge) else { return Vec::new() };
        let (order, answer) = (&sized.order, sized.answer());
        let singles = sized.singles().into_iter().map(|(reading, _)| sized.scale.name_read(reading.as_read)).collect();
        let as_read = order.as_read;
        let first = match &order.combined {
            Some(combined) => Reason::Together { as_read, combined: combined.clone(), singles },
            None => {
                let stated = self.typed.size.meant().map(|size| size.stated);
                Reason::Reading { as_read, stated, gauge: gauge.clone() }
            }
        };
        let shifts = answer.shifts.iter().copied().map(Reason::Shift);
        let to_make = sized.worked_out.map(|size| {
            let off = size.circumference().0 - answer.exact.0;
            Reason::ToMake { step: sized.scale.step, size, off }
        });
        std::iter::once(first).chain(shifts).chain([Reason::Sum(answer.clone())]).chain(to_make).collect()
    }

    /// What is written down when the answer is used: the size, and with it what was typed of the band that it is the
    /// size of. A profile that was only counted with, because none is chosen, is not.
    pub fn writes(&self, who: Wearer, known: &Band, today: NaiveDate) -> Vec<Write> {
        let Some(size) = self.settled(today) else { return Vec::new() };
        let typed = &self.typed.band;
        let field = |part| Field::Band(who, part);
        let length = |part, typed: Option<Length>, known: Option<Length>| {
            (typed != known).then(|| Write { field: field(part), value: typed.map(Value::Length) })
        };
        let chosen = typed.profile.filter(|profile| *profile != known.profile.unwrap_or(USUAL_PROFILE));
        let profile = chosen.map(|profile| Write::set(field(BandField::Profile), Value::Profile(profile)));
        // A flat inside has no relief: what is known of another profile's stays where it is.
        let relief = typed.profile.filter(|profile| profile.bore() == Bore::Domed);
        let relief = relief.and_then(|_| length(BandField::Relief, typed.relief, known.relief));
        let mut writes = vec![Write::set(Field::OrderSize(who), Value::OrderSize(size))];
        writes.extend(length(BandField::Width, typed.width, known.width));
        writes.extend(profile);
        writes.extend(relief);
        writes
    }

    fn settled(&self, today: NaiveDate) -> Option<OrderSize> {
        let sized = self.sized.as_ref()?;
        let (answer, made) = (sized.answer(), sized.made?);
        Some(OrderSize {
            size: made.size,
            exact: answer.exact,
            from: answer.low,
            to: answer.high,
            in_stack: sized.worn == Worn::InStack,
            overruled: made.overruled,
            own: sized.own_terms(),
            measure_again: !sized.order.measure_again.is_empty(),
            settled: today,
        })
    }
}

impl Reason {
    /// How well it is founded, where it is a figure of its own.
    pub fn standing(&self) -> Option<Standing> {
        match self {
            Reason::Shift(shift) => Some(shift.standing),
            Reason::Reading { .. } | Reason::Together { .. } | Reason::Sum(_) | Reason::ToMake { .. } => None,
        }
    }
}

/// What a couple lacks for an order size.
pub fn lacking(couple: Couple<'_>, who: Wearer) -> Vec<Topic> {
    let band = couple.band(who);
    let reading = fitting::counted(couple, who, Place::Base).is_empty().then_some(Topic::Finger(who));
    let width = (band.width.is_none() || band.profile.is_none()).then_some(Topic::Band(who));
    reading.into_iter().chain(width).collect()
}

/// The gauge of the practice that is nearer to what is wanted than the one that was used.
fn nearer_gauge(reason: &MeasureAgain, gauges: &[(String, OwnGauge)]) -> Option<(String, Length)> {
    let (wanted, used) = reason.wanted_width()?;
    let apart = |width: Length| (wanted - width).abs();
    let nearest = gauges.iter().map(|(_, own)| own).min_by_key(|own| apart(own.gauge.width))?;
    (apart(nearest.gauge.width) < apart(used)).then(|| (nearest.name.clone(), nearest.gauge.width))
}
