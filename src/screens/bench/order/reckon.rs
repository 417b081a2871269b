//! The inputs of the order size, read, and what `trade` makes of them.

use chrono::NaiveDate;
use leptos::prelude::*;

use super::super::sheet::{Complaints, SizeTyped, judge, read_needed, read_optional};
use super::couple::own_key;
use crate::app::form::Form;
use crate::app::state::App;
use crate::archive::code::Code;
use crate::book::field::Wish;
use crate::book::fitting;
use crate::book::value::{OrderSize, OwnAmount, OwnGauge, OwnTerms, ReadingTaken};
use crate::screens::fields::widths;
use crate::trade::arrange::in_order;
use crate::trade::band::{Bore, Profile};
use crate::trade::fit::gauges::OWN_ERROR;
use crate::trade::fit::{
    self, Answer, Band, FitError, Gauge, GaugeKind, Hands, Inputs, MeasureAgain, NoBeads, Order, Overrules, Place,
    RINGS_BESIDE_MOST, ReadAt, Reading, Term, constants,
};
use crate::trade::limits::Limit;
use crate::trade::measure::{Circumference, Length};
use crate::trade::sizing::{self, Nearest, Size, Stated, Step, System};
use crate::words::sizing as say_sizing;

/// The word for the gauge that the couple's reading was taken with, and for one that is not in the practice.
pub const TAKEN: &str = "taken";
pub const OTHER: &str = "other";

/// What was typed, read, and what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    pub complaints: Complaints,
    pub system: System,
    pub step: Step,
    pub size: SizeTyped,
    pub joint: SizeTyped,
    pub gauge: Option<OwnGauge>,
    /// The names and widths of the gauges of the practice.
    gauges: Vec<(String, Length)>,
    /// How many further readings count.
    pub others: usize,
    pub wishes: Vec<Wish>,
    pub profile: Option<Profile>,
    pub inputs: Option<Inputs>,
    pub order: Option<Order>,
    pub error: Option<FitError>,
    alone_chosen: bool,
    make: String,
}

/// The size to make, after the jeweller's word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    pub size: Size,
    pub name: String,
    pub overruled: bool,
}

/// Reads the inputs. `readings` are the couple's, the newest first: its gauge may be picked, and the others count with it.
pub fn reckon(app: App, form: Form, readings: &[ReadingTaken], wishes: &[Wish]) -> Reckoned {
    let text = |key| form.text(key).get();
    let mut complaints = Complaints::new();
    let (system, step) = app.practice(|practice| (practice.first_system(), practice.step()));
    let size = judge(&mut complaints, "size", SizeTyped::read(&text("size"), &text("as"), system)).unwrap_or_default();
    let joint = match text("joint") {
        blank if blank.trim().is_empty() => SizeTyped::default(),
        typed => {
            judge(&mut complaints, "joint", SizeTyped::read(&typed, &text("joint-as"), system)).unwrap_or_default()
        }
    };
    let taken = readings.first();
    let gauge = gauge(app, form, taken, fitting::grid(system, step).step, &mut complaints);
    let width = judge(&mut complaints, "width", read_needed(&text("width"), Limit::BandWidth));
    let neighbours = judge(&mut complaints, "neighbours", widths(&text("neighbours"), RINGS_BESIDE_MOST));
    let beside = judge(&mut complaints, "beside", widths(&text("beside"), RINGS_BESIDE_MOST));
    let profile = Profile::from_code(&text("profile"));
    // A flat inside has none, whatever was measured of another profile.
    let relief = match profile.map(Profile::bore) {
        Some(Bore::Domed) => {
            judge(&mut complaints, "relief", read_optional(&text("relief"), Limit::EdgeRelief)).flatten()
        }
        Some(Bore::Flat) | None => None,
    };
    let hands = Hands::from_code(&text("hands"));
    let touches = ReadAt::right_for(gauge.as_ref().map_or(Bore::Flat, |own| own.gauge.bore));
    let read_at = ReadAt::from_code(&text("read-at")).unwrap_or(touches);
    let is_taken = text("gauge") == TAKEN;
    let others: Vec<Reading> = match text("alone-reading") == "yes" {
        true => Vec::new(),
        false => readings.iter().skip(1).map(fitting::as_reading).collect(),
    };
    let mut overrules = Overrules::default();
    for term in Term::ALL {
        let own = read_optional(&text(own_key(term)), Limit::OwnShift);
        overrules.set(term, judge(&mut complaints, own_key(term), own).flatten());
    }
    // Half a word about a joint that nobody has tried says nothing.
    let joint_width = judge(&mut complaints, "joint-width", read_optional(&text("joint-width"), Limit::GaugeWidth));
    let joint_open = !joint.readings.is_empty() && joint.meant().is_none();

    let inputs = (|| {
        if !complaints.is_empty() || joint_open {
            return None;
        }
        let reading = Reading {
            as_read: size.meant()?.circumference(),
            gauge: gauge.as_ref()?.gauge,
            read_at,
            hands: hands?,
            place: Place::Base,
            beside: beside?,
            sits: taken.filter(|_| is_taken).and_then(|taken| taken.sits),
            gauge_off: fitting::gauge_off(gauge.as_ref()?, size.meant()?.circumference()),
            day: taken.filter(|_| is_taken).map_or(app.today.get(), |taken| taken.taken),
        };
        Some(Inputs {
            reading,
            others: others.clone(),
            overrules,
            band: Band { width: width?, bore: profile?.bore(), relief },
            neighbours: neighbours?,
            first_ring: text("first-ring") == "yes",
            finger_changing: text("changing") == "yes",
            joint: joint.meant().map(|joint| joint.circumference()),
            joint_width: joint_width?.filter(|_| joint.meant().is_some()),
            no_beads: no_beads(&text("no-beads")),
            constants: app.practice(|practice| practice.constants()),
            grid: fitting::grid(system, step),
        })
    })();
    let (order, error) = match inputs.as_ref().map(fit::order) {
        Some(Ok(order)) => (Some(order), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let gauges = app.practice(|practice| {
        let all = practice.gauges().into_iter();
        all.map(|(_, own)| (own.name.clone(), own.gauge.width)).collect()
    });
    let alone_chosen = text("worn") == "alone";
    let make = text("make");
    Reckoned {
        complaints,
        system,
        step,
        size,
        joint,
        gauge,
        gauges,
        others: others.len(),
        wishes: wishes.to_vec(),
        profile,
        inputs,
        order,
        error,
        alone_chosen,
        make,
    }
}

/// The words for why a ring takes no beads.
pub fn no_beads_code(why: NoBeads) -> &'static str {
    match why {
        NoBeads::FullEternity => "full-eternity",
        NoBeads::HardMetal => "hard-metal",
    }
}

fn no_beads(code: &str) -> Option<NoBeads> {
    [NoBeads::FullEternity, NoBeads::HardMetal].into_iter().find(|why| no_beads_code(*why) == code)
}

/// The gauge that is picked: the couple's, one of the practice, or another with what is typed about it.
fn gauge(
    app: App,
    form: Form,
    taken: Option<&ReadingTaken>,
    step: Length,
    complaints: &mut Complaints,
) -> Option<OwnGauge> {
    let picked = form.text("gauge").get();
    if picked == TAKEN {
        return taken.map(|taken| taken.gauge.clone());
    }
    let own = app.practice(|practice| {
        practice.gauges().into_iter().find(|(item, _)| item.to_string() == picked).map(|(_, own)| own.clone())
    });
    if own.is_some() {
        return own;
    }
    let width = judge(complaints, "gauge-width", read_needed(&form.text("gauge-width").get(), Limit::GaugeWidth));
    let kind = match form.text("gauge-kind").get().as_str() {
        "stick" => GaugeKind::Stick { taper: constants::STICK_TAPER.value },
        _ => GaugeKind::RingSet,
    };
    let bore = Bore::from_code(&form.text("gauge-bore").get()).unwrap_or(Bore::Flat);
    let own_error = judge(complaints, "gauge-error", read_optional(&form.text("gauge-error").get(), Limit::GaugeError));
    let own_error = own_error?.unwrap_or(OWN_ERROR);
    let gauge = Gauge { kind, width: width?, bore, relief: None, step, own_error };
    Some(OwnGauge { name: String::new(), gauge, calibration: Vec::new() })
}

impl Reckoned {
    /// The answer for the way of wearing that is chosen.
    pub fn answer(&self) -> Option<&Answer> {
        let order = self.order.as_ref()?;
        Some(if self.is_in_stack() { &order.in_stack } else { &order.alone })
    }

    pub fn is_in_stack(&self) -> bool {
        let neighbours = self.inputs.as_ref().is_some_and(|inputs| !inputs.neighbours.is_empty());
        neighbours && !self.alone_chosen
    }

    /// The sizes alone and in the stack, where they differ.
    pub fn worn_choice(&self) -> Option<(String, String)> {
        let order = self.order.as_ref()?;
        let differ = order.alone.size != order.in_stack.size;
        differ.then(|| (self.name_at(order.alone.size), self.name_at(order.in_stack.size)))
    }

    /// The size of the first system at a step of the grid.
    pub fn nearest(&self, at: Circumference) -> Nearest {
        sizing::nearest(self.system, at, self.step)
    }

    /// What the first system calls a circumference; beyond its scale the millimetres.
    pub fn name_at(&self, at: Circumference) -> String {
        match self.is_off_the_scale(at) {
            true => say_sizing::stated_shown(Stated::Circumference(at)),
            false => say_sizing::size_name(self.nearest(at).size),
        }
    }

    /// The sizes in the range, each once; none beyond the scale.
    pub fn names_in_range(&self) -> Vec<String> {
        let all = self.answer().map(|answer| answer.in_range.as_slice()).unwrap_or_default();
        all.iter().filter(|at| !self.is_off_the_scale(**at)).map(|at| self.name_at(*at)).collect()
    }

    fn is_off_the_scale(&self, at: Circumference) -> bool {
        self.nearest(at).off.0.abs() > fitting::grid(self.system, self.step).step.half()
    }

    /// The size to make as it was worked out: of the first system, or in millimetres round where that has none. None
    /// for what is no ring any more.
    pub fn worked_out(&self, answer: &Answer) -> Option<Size> {
        if !self.is_off_the_scale(answer.size) {
            return Some(self.nearest(answer.size).size);
        }
        // The steps of the scale mean nothing there: what was worked out itself.
        let found = sizing::nearest(System::Circumference, answer.exact, Step::Quarter);
        let joint = self.joint.meant().map(|joint| joint.circumference());
        let up = sizing::rounded_up(System::Circumference, answer.exact, Step::Quarter);
        let passes = |size: &Size| joint.is_none_or(|joint| size.circumference() >= joint);
        let near = |size: &Size| (size.circumference().0 - answer.exact.0).abs() < Length::from_mm(0.25);
        Some(found.size).filter(passes).or(up.map(|up| up.size)).filter(near)
    }

    /// Whether the worked-out size lies beyond the last one that the scale has.
    pub fn is_beyond(&self) -> bool {
        self.answer().is_some_and(|answer| self.is_off_the_scale(answer.size))
    }

    pub fn made(&self) -> Option<Made> {
        let worked_out = self.worked_out(self.answer()?)?;
        let chosen = self.choices().into_iter().find(|size| code_of(*size) == self.make);
        let size = chosen.unwrap_or(worked_out);
        let name = match size.system().is_millimetres() {
            true => say_sizing::stated_shown(size.into()),
            false => say_sizing::size_name(size),
        };
        Some(Made { size, name, overruled: size != worked_out })
    }

    /// The sizes that may be made instead, each with its word; the worked-out one has none.
    pub fn offered(&self) -> Vec<(String, String)> {
        let Some(worked_out) = self.answer().and_then(|answer| self.worked_out(answer)) else { return Vec::new() };
        let word = |size| if size == worked_out { String::new() } else { code_of(size) };
        self.choices().into_iter().map(|size| (word(size), say_sizing::size_name(size))).collect()
    }

    /// Every size in the range, and one more at either end; none that does not pass the joint.
    fn choices(&self) -> Vec<Size> {
        let Some(answer) = self.answer() else { return Vec::new() };
        if self.is_beyond() {
            return Vec::new();
        }
        let mut sizes = in_order(answer.in_range.iter().map(|at| self.nearest(*at).size), |size| *size);
        let below = sizes.first().and_then(|size| size.smaller(self.step));
        let above = sizes.last().and_then(|size| size.larger(self.step));
        sizes.extend(below.into_iter().chain(above));
        let mut sizes = in_order(sizes, |size| *size);
        sizes.dedup();
        let joint = self.joint.meant().map(|joint| joint.circumference());
        sizes.retain(|size| joint.is_none_or(|joint| size.circumference() >= joint));
        sizes
    }

    /// The terms that the jeweller overruled, with what the rules gave.
    fn own_terms(&self) -> OwnTerms {
        let mut own = OwnTerms::default();
        for shift in self.answer().map(|answer| answer.shifts.as_slice()).unwrap_or_default() {
            let overruled = |term: &Term| self.inputs.as_ref().is_some_and(|it| it.overrules.of(*term).is_some());
            if let Some(term) = shift.kind.term().filter(overruled) {
                own.set(term, OwnAmount { worked_out: shift.worked_out, used: shift.amount });
            }
        }
        own
    }

    /// The gauge of the practice that is nearer to what is wanted than the one that was used.
    pub fn nearer_gauge(&self, reason: &MeasureAgain) -> Option<&(String, Length)> {
        let (wanted, used) = reason.wanted_width()?;
        let apart = |width: Length| (wanted - width).abs();
        let nearest = self.gauges.iter().min_by_key(|(_, width)| apart(*width))?;
        (apart(nearest.1) < apart(used)).then_some(nearest)
    }

    pub fn asks_again(&self) -> bool {
        self.order.as_ref().is_some_and(|order| !order.measure_again.is_empty() || order.has_outlier())
    }

    /// What a band one millimetre wider would take.
    pub fn wider(&self) -> Option<fit::Wider> {
        let worn = if self.is_in_stack() { fit::Worn::InStack } else { fit::Worn::Alone };
        fit::wider(self.inputs.as_ref()?, worn)
    }

    /// What is written down when the answer is used.
    pub fn settled(&self, today: NaiveDate) -> Option<OrderSize> {
        let (answer, made) = (self.answer()?, self.made()?);
        Some(OrderSize {
            size: made.size,
            exact: answer.exact,
            from: answer.low,
            to: answer.high,
            in_stack: self.is_in_stack(),
            overruled: made.overruled,
            own: self.own_terms(),
            measure_again: self.order.as_ref().is_some_and(|order| !order.measure_again.is_empty()),
            settled: today,
        })
    }
}

fn code_of(size: Size) -> String {
    format!("{}-{}", size.system().code(), size.quarters())
}
