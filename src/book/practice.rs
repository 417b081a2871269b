//! What the jeweller has set for their own work, with what is usual where nothing is set.

use chrono::NaiveTime;

use super::couple::read;
use super::field::{Constant, Field, PracticeField};
use super::id::{InstallationId, ItemId};
use super::record::Record;
use super::value::{Extra, NamedClosure, OwnGauge, TryOnBand, Value};
use crate::trade::arrange::in_order;
use crate::trade::dates::closed::{Calendar, CalendarError, Closure, MON_TO_FRI, OnBankHolidays, Weekdays};
use crate::trade::dates::countdown::{CONFIDENCE, RESIZE_CHANCE, TRY_ON_AFTER};
use crate::trade::dates::holidays::{HolidayName, Region};
use crate::trade::dates::lead_times::{self, Step as Work};
use crate::trade::dates::places::{Place, PlaceDays, Places};
use crate::trade::dates::season::{Busy, MonthSet};
use crate::trade::dates::spread::{CalendarDays, Spread};
use crate::trade::fit::{Constants, Figure, PerMm, constants};
use crate::trade::measure::{Length, Percent};
use crate::trade::sizing::{Step, System};
use crate::trade::stack::House;

/// What is taken where the jeweller has set nothing.
pub const USUAL_REGION: Region = Region::EnglandAndWales;
pub const USUAL_SYSTEM: System = System::Uk;
/// Common practice: benches make half sizes.
pub const USUAL_STEP: Step = Step::Half;

/// A reading view of the practice's record.
#[derive(Clone, Copy)]
pub struct Practice<'a>(pub &'a Record);

fn field(field: PracticeField) -> Field {
    Field::Practice(field)
}

impl<'a> Practice<'a> {
    pub fn fair(self) -> Option<&'a str> {
        read!(self.0, field(PracticeField::Fair), Text).map(String::as_str)
    }

    pub fn region(self) -> Region {
        read!(self.0, field(PracticeField::Region), Region).copied().unwrap_or(USUAL_REGION)
    }

    pub fn first_system(self) -> System {
        read!(self.0, field(PracticeField::FirstSystem), System).copied().unwrap_or(USUAL_SYSTEM)
    }

    /// The step in which the bench makes sizes.
    pub fn step(self) -> Step {
        read!(self.0, field(PracticeField::Step), Step).copied().unwrap_or(USUAL_STEP)
    }

    /// The gauges, in the order of their names.
    pub fn gauges(self) -> Vec<(ItemId, &'a OwnGauge)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::Gauge(item)), Value::Gauge(gauge)) => Some((*item, gauge)),
            _ => None,
        });
        in_order(all, |(_, it)| &it.name)
    }

    /// The bands of the tray, the smallest first.
    pub fn tray(self) -> Vec<(ItemId, &'a TryOnBand)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::TryOn(item)), Value::TryOn(band)) => Some((*item, band)),
            _ => None,
        });
        in_order(all, |(_, band)| (band.size.circumference(), band.width))
    }

    /// How long a usual piece of work takes here.
    pub fn lead_time(self, work: Work) -> Spread {
        read!(self.0, field(PracticeField::LeadTime(work)), Spread).copied().unwrap_or(lead_times::usual(work).days)
    }

    /// The pieces of work that the jeweller has added, in the order of their names.
    pub fn extras(self) -> Vec<(ItemId, &'a Extra)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::Extra(item)), Value::Extra(extra)) => Some((*item, extra)),
            _ => None,
        });
        in_order(all, |(_, it)| &it.name)
    }

    /// The days on which a place is closed, the workshop's and the others', in the order of their first days.
    pub fn closures(self) -> Vec<(ItemId, &'a NamedClosure)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::Closure(item)), Value::Closure(closure)) => Some((*item, closure)),
            _ => None,
        });
        in_order(all, |(_, closure)| closure.days.from())
    }

    pub fn weekdays(self) -> Weekdays {
        read!(self.0, field(PracticeField::Weekdays), Weekdays).copied().unwrap_or(MON_TO_FRI)
    }

    pub fn on_bank_holidays(self) -> OnBankHolidays {
        match read!(self.0, field(PracticeField::WorksOnHolidays), Yes) {
            Some(true) => OnBankHolidays::Works,
            Some(false) | None => OnBankHolidays::Closed,
        }
    }

    /// How a place works.
    pub fn place_days(self, place: Place) -> PlaceDays {
        match place {
            Place::Workshop => PlaceDays {
                weekdays: self.weekdays(),
                on_bank_holidays: self.on_bank_holidays(),
                shut_at_christmas: false,
            },
            Place::AssayOffice | Place::Courier => {
                read!(self.0, field(PracticeField::PlaceDays(place)), PlaceDays).copied().unwrap_or(place.usual_days())
            }
        }
    }

    /// The holidays that are switched on or off, whatever is usual.
    pub fn switched(self) -> Vec<(HolidayName, bool)> {
        let all = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::Holiday(name)), Value::Yes(on)) => Some((*name, *on)),
            _ => None,
        });
        in_order(all, |(name, _)| *name)
    }

    /// The calendar of a place. The workshop's switches hold for the workshop alone.
    pub fn calendar(self, region: Region, place: Place) -> Result<Calendar, CalendarError> {
        let closures = self.closures().into_iter().filter(|(_, closure)| closure.place == place);
        let switched = if place == Place::Workshop { self.switched() } else { Vec::new() };
        self.place_days(place).calendar(region, closures.map(|(_, closure)| closure.days).collect(), switched)
    }

    /// The calendar of a place with one closure more, or with other days for one that is known.
    pub fn calendar_with(self, place: Place, item: ItemId, days: Closure) -> Result<Calendar, CalendarError> {
        let others = self.closures().into_iter().filter(|(known, it)| *known != item && it.place == place);
        let closures = others.map(|(_, it)| it.days).chain([days]).collect();
        self.place_days(place).calendar(self.region(), closures, Vec::new())
    }

    /// What the closures of a place are called, in the order of its calendar.
    pub fn closure_names(self, place: Place) -> Vec<String> {
        let closures = self.closures().into_iter().filter(|(_, closure)| closure.place == place);
        closures.map(|(_, closure)| closure.name.clone()).collect()
    }

    /// The calendars of all places.
    pub fn places(self, region: Region) -> Result<Places, CalendarError> {
        Ok(Places {
            workshop: self.calendar(region, Place::Workshop)?,
            assay_office: self.calendar(region, Place::AssayOffice)?,
            courier: self.calendar(region, Place::Courier)?,
        })
    }

    /// Whether today counts among the working days that are left.
    pub fn counts_today(self) -> bool {
        read!(self.0, field(PracticeField::CountsToday), Yes).copied().unwrap_or(true)
    }

    /// The chance of being in time that an order-by date is to have.
    pub fn confidence(self) -> Percent {
        self.share(PracticeField::Confidence).unwrap_or(CONFIDENCE)
    }

    pub fn busy(self) -> Busy {
        let share = |of| self.share(of).unwrap_or(Percent(0));
        Busy {
            chance: share(PracticeField::BusyChance),
            longer: share(PracticeField::BusyLonger),
            months: read!(self.0, field(PracticeField::BusyMonths), Months).copied().unwrap_or(MonthSet::ALL),
        }
    }

    pub fn resize_chance(self) -> Percent {
        self.share(PracticeField::ResizeChance).unwrap_or(RESIZE_CHANCE)
    }

    pub fn try_on_after(self) -> CalendarDays {
        read!(self.0, field(PracticeField::TryOnAfter), Days).copied().unwrap_or(TRY_ON_AFTER)
    }

    /// After this time of day an order counts as the next day's; none: there is no such time.
    pub fn cut_off(self) -> Option<NaiveTime> {
        read!(self.0, field(PracticeField::CutOff), Time).copied()
    }

    pub fn in_hand(self) -> CalendarDays {
        read!(self.0, field(PracticeField::DaysInHand), Days).copied().unwrap_or(lead_times::IN_HAND)
    }

    /// Whether the jeweller has set anything of their own in this field.
    pub fn is_set(self, of: PracticeField) -> bool {
        self.0.get(&field(of)).is_some()
    }

    /// The thresholds of a stack.
    pub fn house(self) -> House {
        let usual = House::default();
        let share = |of| self.share(of);
        House {
            gap: self.length(PracticeField::Gap).unwrap_or(usual.gap),
            free_length: self.length(PracticeField::FreeLength).unwrap_or(usual.free_length),
            roomy: share(PracticeField::Roomy).unwrap_or(usual.roomy),
            full: share(PracticeField::Full).unwrap_or(usual.full),
            clearance: self.length(PracticeField::Clearance).unwrap_or(usual.clearance),
            catch: self.length(PracticeField::Catch).unwrap_or(usual.catch),
            thinnest: self.length(PracticeField::Thinnest).unwrap_or(usual.thinnest),
        }
    }

    /// What a phone is called here.
    pub fn phone_name(self, by: InstallationId) -> Option<&'a str> {
        read!(self.0, field(PracticeField::PhoneName(by)), Text).map(String::as_str)
    }

    /// Every name that is given to a phone here.
    pub fn phone_names(self) -> Vec<&'a str> {
        let names = self.0.fields().filter_map(|(field, value)| match (field, value) {
            (Field::Practice(PracticeField::PhoneName(_)), Value::Text(name)) => Some(name.as_str()),
            _ => None,
        });
        names.collect()
    }

    /// The constant that was set, if it was.
    pub fn constant(self, constant: Constant) -> Option<Length> {
        self.length(PracticeField::Constant(constant))
    }

    /// The constants of the fit: the customary ones, with the jeweller's own in their place.
    pub fn constants(self) -> Constants {
        let mut constants = Constants::default();
        for constant in Constant::ALL {
            if let Some(value) = self.constant(constant) {
                *slot(&mut constants, constant) = value;
            }
        }
        constants
    }

    fn share(self, of: PracticeField) -> Option<Percent> {
        read!(self.0, field(of), Percent).copied()
    }

    fn length(self, of: PracticeField) -> Option<Length> {
        read!(self.0, field(of), Length).copied()
    }
}

/// The customary figure of a constant, with its standing and where it comes from.
pub fn customary(constant: Constant) -> Figure<Length> {
    let rate = |of: Figure<PerMm>| Figure { value: of.value.0, standing: of.standing, source: of.source };
    match constant {
        Constant::Width => rate(constants::WIDTH_PER_MM),
        Constant::WidthSpread => rate(constants::WIDTH_PER_MM_SD),
        Constant::Bore => rate(constants::BORE_PER_MM),
        Constant::BoreSpread => rate(constants::BORE_PER_MM_SD),
        Constant::Cold => constants::COLD,
        Constant::Warm => constants::WARM,
        Constant::HandsSpread => constants::HANDS_OFF_SD,
        Constant::NormalSpread => constants::HANDS_NORMAL_SD,
        Constant::Offset | Constant::OffsetSpread => constants::OFFSET,
    }
}

fn slot(constants: &mut Constants, constant: Constant) -> &mut Length {
    match constant {
        Constant::Width => &mut constants.width_per_mm.0,
        Constant::WidthSpread => &mut constants.width_per_mm_sd.0,
        Constant::Bore => &mut constants.bore_per_mm.0,
        Constant::BoreSpread => &mut constants.bore_per_mm_sd.0,
        Constant::Cold => &mut constants.cold,
        Constant::Warm => &mut constants.warm,
        Constant::HandsSpread => &mut constants.hands_off_sd,
        Constant::NormalSpread => &mut constants.hands_normal_sd,
        Constant::Offset => &mut constants.offset,
        Constant::OffsetSpread => &mut constants.offset_sd,
    }
}
