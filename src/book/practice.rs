//! What the jeweller has set for their own work, with what is usual where nothing is set.

use chrono::NaiveTime;

use super::field::{Field, PracticeField};
use super::id::{InstallationId, ItemId};
use super::record::Record;
use super::settings::{self, Setting};
use super::value::{Constant, Extra, FieldValue, NamedClosure, OwnGauge, TryOnBand};
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

impl<'a> Practice<'a> {
    pub fn fair(self) -> Option<&'a str> {
        self.get(settings::fair()).map(String::as_str)
    }

    pub fn region(self) -> Region {
        self.get(settings::region()).copied().unwrap_or(USUAL_REGION)
    }

    pub fn first_system(self) -> System {
        self.get(settings::first_system()).copied().unwrap_or(USUAL_SYSTEM)
    }

    /// The step in which the bench makes sizes.
    pub fn step(self) -> Step {
        self.get(settings::step()).copied().unwrap_or(USUAL_STEP)
    }

    /// The gauges, in the order of their names.
    pub fn gauges(self) -> Vec<(ItemId, &'a OwnGauge)> {
        let all = self.each(|of| if let PracticeField::Gauge(key) = of { Some(key) } else { None }, settings::gauge);
        in_order(all, |(_, it)| &it.name)
    }

    /// The bands of the tray, the smallest first.
    pub fn tray(self) -> Vec<(ItemId, &'a TryOnBand)> {
        let all = self.each(|of| if let PracticeField::TryOn(key) = of { Some(key) } else { None }, settings::try_on);
        in_order(all, |(_, band)| (band.size.circumference(), band.width))
    }

    /// How long a usual piece of work takes here.
    pub fn lead_time(self, work: Work) -> Spread {
        self.get(settings::lead_time(work)).copied().unwrap_or(lead_times::usual(work).days)
    }

    /// The pieces of work that the jeweller has added, in the order of their names.
    pub fn extras(self) -> Vec<(ItemId, &'a Extra)> {
        let all = self.each(|of| if let PracticeField::Extra(key) = of { Some(key) } else { None }, settings::extra);
        in_order(all, |(_, it)| &it.name)
    }

    /// The days on which a place is closed, the workshop's and the others', in the order of their first days.
    pub fn closures(self) -> Vec<(ItemId, &'a NamedClosure)> {
        let all =
            self.each(|of| if let PracticeField::Closure(key) = of { Some(key) } else { None }, settings::closure);
        in_order(all, |(_, closure)| closure.days.from())
    }

    pub fn weekdays(self) -> Weekdays {
        self.get(settings::weekdays()).copied().unwrap_or(MON_TO_FRI)
    }

    pub fn on_bank_holidays(self) -> OnBankHolidays {
        match self.get(settings::works_on_holidays()) {
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
                self.get(settings::place_days(place)).copied().unwrap_or(place.usual_days())
            }
        }
    }

    /// The holidays that are switched on or off, whatever is usual.
    pub fn switched(self) -> Vec<(HolidayName, bool)> {
        let all =
            self.each(|of| if let PracticeField::Holiday(key) = of { Some(key) } else { None }, settings::holiday);
        in_order(all.into_iter().map(|(name, on)| (name, *on)), |(name, _)| *name)
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
        self.get(settings::counts_today()).copied().unwrap_or(true)
    }

    /// The chance of being in time that an order-by date is to have.
    pub fn confidence(self) -> Percent {
        self.get(settings::confidence()).copied().unwrap_or(CONFIDENCE)
    }

    pub fn busy(self) -> Busy {
        Busy {
            chance: self.get(settings::busy_chance()).copied().unwrap_or(Percent(0)),
            longer: self.get(settings::busy_longer()).copied().unwrap_or(Percent(0)),
            months: self.get(settings::busy_months()).copied().unwrap_or(MonthSet::ALL),
        }
    }

    pub fn resize_chance(self) -> Percent {
        self.get(settings::resize_chance()).copied().unwrap_or(RESIZE_CHANCE)
    }

    pub fn try_on_after(self) -> CalendarDays {
        self.get(settings::try_on_after()).copied().unwrap_or(TRY_ON_AFTER)
    }

    /// After this time of day an order counts as the next day's; none: there is no such time.
    pub fn cut_off(self) -> Option<NaiveTime> {
        self.get(settings::cut_off()).copied()
    }

    pub fn in_hand(self) -> CalendarDays {
        self.get(settings::days_in_hand()).copied().unwrap_or(lead_times::IN_HAND)
    }

    /// Whether the jeweller has set anything of their own in this field.
    pub fn is_set(self, of: PracticeField) -> bool {
        self.0.get(&Field::Practice(of)).is_some()
    }

    /// The thresholds of a stack.
    pub fn house(self) -> House {
        let usual = House::default();
        House {
            gap: self.get(settings::gap()).copied().unwrap_or(usual.gap),
            free_length: self.get(settings::free_length()).copied().unwrap_or(usual.free_length),
            roomy: self.get(settings::roomy()).copied().unwrap_or(usual.roomy),
            full: self.get(settings::full()).copied().unwrap_or(usual.full),
            clearance: self.get(settings::clearance()).copied().unwrap_or(usual.clearance),
            catch: self.get(settings::catch()).copied().unwrap_or(usual.catch),
            thinnest: self.get(settings::thinnest()).copied().unwrap_or(usual.thinnest),
        }
    }

    /// What a phone is called here.
    pub fn phone_name(self, by: InstallationId) -> Option<&'a str> {
        self.get(settings::phone_name(by)).map(String::as_str)
    }

    /// Every name that is given to a phone here.
    pub fn phone_names(self) -> Vec<&'a str> {
        let all =
            self.each(|of| if let PracticeField::PhoneName(key) = of { Some(key) } else { None }, settings::phone_name);
        all.into_iter().map(|(_, name)| name.as_str()).collect()
    }

    /// The constant that was set, if it was.
    pub fn constant(self, constant: Constant) -> Option<Length> {
        self.get(settings::constant(constant)).copied()
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

    /// What a setting holds, where it was set.
    fn get<T: FieldValue>(self, setting: Setting<T>) -> Option<&'a T> {
        self.0.get(&Field::Practice(setting.field)).and_then(T::of)
    }

    /// Every setting of a sort, with what it is one of: `key` tells the sort, `setting` is how it is read.
    fn each<K: Copy, T: FieldValue + 'a>(
        self,
        key: impl Fn(PracticeField) -> Option<K>,
        setting: impl Fn(K) -> Setting<T>,
    ) -> Vec<(K, &'a T)> {
        let fields = self.0.fields().filter_map(|(field, _)| match field {
            Field::Practice(field) => key(*field),
            _ => None,
        });
        fields.filter_map(|key| Some((key, self.get(setting(key))?))).collect()
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
