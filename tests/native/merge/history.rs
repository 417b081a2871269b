//! Random histories: three to six phones that write to one couple, take back, put away, erase, swap files in any order,
//! drop some, get some twice, with clocks years off, old and new versions of the app, files that are taken back, restored and cloned phones.
//!
//! Beside each phone runs what it is compared with: the multi-value registers of another project, and a plain list of
//! who knew of which change when. Both know nothing of stamps.

use std::collections::BTreeMap;

use bandwright::archive::installation::Installation;
use bandwright::archive::merge::{added, merge};
use bandwright::archive::row;
use bandwright::book::change::{Change, Draft, Write};
use bandwright::book::couple::Ring;
use bandwright::book::field::{AppointmentField, Field, Outcome};
use bandwright::book::id::{InstallationId, ItemId, Moment, RecordId, Stamp};
use bandwright::book::record::{Kind, Record};
use bandwright::book::value::{Value, When};
use bandwright::book::verbs;
use bandwright::trade::measure::Length;
use bandwright::trade::wearer::Wearer;
use chrono::NaiveDate;
use crdts::{CmRDT, CvRDT, MVReg};

/// What a register of the other project holds: which change wrote it, and what it says.
type FieldValue = (usize, Option<Value>);
type Registers = BTreeMap<Field, MVReg<FieldValue, u32>>;

/// What happened, as somebody saw it who looked over everybody's shoulder.
#[derive(Clone, Debug)]
pub struct Happened {
    pub change: Change,
    /// The changes that were on the phone then, as a set of bits.
    pub knew: u128,
}

#[derive(Clone)]
pub struct Phone {
    pub record: Record,
    pub installation: Installation,
    pub registers: Registers,
    pub knows: u128,
    actor: u32,
    clock: i64,
    is_old: bool,
    /// As it was before the latest file came, as long as nothing was written since.
    before: Option<Copy>,
}

#[derive(Clone)]
struct Copy {
    record: Record,
    registers: Registers,
    knows: u128,
}

pub struct World {
    pub phones: Vec<Phone>,
    pub happened: Vec<Happened>,
    /// A phone was cloned: two of them write under one name.
    pub cloned: bool,
    /// A phone writes as version 1.0 did, without what its user had seen.
    pub has_old: bool,
    copies: Vec<Copy>,
    random: Random,
    actors: u32,
}

/// SplitMix64, by Steele, Lea and Flood.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn below(&mut self, most: usize) -> usize {
        (self.next() % most as u64) as usize
    }

    pub fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }
}

pub const COUPLE: RecordId = RecordId(7);
const ITEM: ItemId = ItemId(2);

impl World {
    /// A whole history, up to where everybody has everything.
    pub fn of(seed: u64) -> World {
        let mut random = Random(seed);
        let mut world = World {
            phones: Vec::new(),
            happened: Vec::new(),
            cloned: false,
            has_old: random.one_in(4),
            copies: Vec::new(),
            random,
            actors: 0,
        };
        let clones = world.random.one_in(4);
        for _ in 0..3 + world.random.below(4) {
            let phone = world.new_phone();
            world.phones.push(phone);
        }
        for _ in 0..10 + world.random.below(40) {
            world.step(clones);
        }
        world.meet();
        world
    }

    fn new_phone(&mut self) -> Phone {
        self.actors += 1;
        let id = InstallationId(u128::from(self.random.next()));
        let year = 365 * 24 * 3_600_000;
        Phone {
            record: Record::new(COUPLE, Kind::Couple),
            installation: Installation { id, practice: RecordId(1), next: 1, former: vec![], unknown: None },
            registers: Registers::new(),
            knows: 0,
            actor: self.actors,
            clock: [0, 0, year, -3 * year, 900 * year][self.random.below(5)],
            is_old: self.has_old && self.random.one_in(2),
            before: None,
        }
    }

    fn step(&mut self, clones: bool) {
        let at = self.random.below(self.phones.len());
        match self.random.below(21) {
            0..9 => {
                let writes = self.writes();
                let moment = self.moment(at);
                if let Some(draft) = self.phones[at].record.draft(writes, moment) {
                    self.save_all(at, vec![draft]);
                }
            }
            9 => {
                let moment = self.moment(at);
                let phone = &self.phones[at];
                let last = phone.record.undoable(phone.installation.id).map(|change| change.stamp);
                let drafts = last.map(|stamp| phone.record.undo(stamp, moment));
                self.save_all(at, drafts.unwrap_or_default());
            }
            10..14 => self.send(at),
            14..18 if !self.copies.is_empty() => {
                // The same file may come again later, or never.
                let copy = self.random.below(self.copies.len());
                let copy = self.copies[copy].clone();
                self.receive(at, copy);
            }
            18 if !self.copies.is_empty() && self.random.one_in(3) => {
                // A new phone, with what an old copy holds; the lost one never says anything again.
                let phone = self.new_phone();
                self.phones[at] = phone;
                let copy = self.random.below(self.copies.len());
                let copy = self.copies[copy].clone();
                self.receive(at, copy);
            }
            19 if clones && self.phones[at].knows != 0 && self.random.one_in(3) => {
                let mut clone = self.phones[at].clone();
                self.actors += 1;
                clone.actor = self.actors;
                self.cloned = true;
                self.phones.push(clone);
            }
            19 if self.random.one_in(40) && self.phones[at].record.erased().is_none() => {
                let phone = &mut self.phones[at];
                phone.installation.follow(phone.record.highest());
                let stamp = Stamp { n: phone.installation.next, by: phone.installation.id };
                phone.installation.follow(stamp.n);
                phone.record = Record::mark(COUPLE, Kind::Couple, stamp);
            }
            // The latest file is taken back; what an erasing took is not kept anywhere.
            20 if self.phones[at].record.erased().is_none() => {
                if let Some(before) = self.phones[at].before.take() {
                    let phone = &mut self.phones[at];
                    (phone.record, phone.registers, phone.knows) = (before.record, before.registers, before.knows);
                }
            }
            _ => {}
        }
    }

    fn moment(&self, at: usize) -> Moment {
        Moment(1_792_000_000_000 + self.phones[at].clock + self.happened.len() as i64 * 60_000)
    }

    fn writes(&mut self) -> Vec<Write> {
        let date = |day| NaiveDate::from_ymd_opt(2027, 5, day).unwrap();
        let day = |day| Value::Day(date(day));
        let some = ["M", "N", "O"][self.random.below(3)];
        let text = |field| Write::set(field, Value::Text(some.into()));
        let (first, second) = (self.random.one_in(2), self.random.one_in(2));
        match self.random.below(14) {
            0 => vec![text(Field::Met)],
            1 => vec![text(Field::Met), text(Field::Name(Wearer::First))],
            2 => vec![text(Field::Name(Wearer::Second))],
            3 => vec![text(Field::Name(Wearer::First)), Write::clear(Field::Met)],
            4 => vec![text(Field::Note(ItemId(u128::from(self.random.next()))))],
            5 => vec![text(Field::Note(ItemId(1)))],
            6 => vec![Write::set(Field::PutAway, day(1 + self.random.below(3) as u32))],
            7 => verbs::book(
                ITEM,
                When { day: date(1 + self.random.below(3) as u32), time: None },
                first.then(|| some.into()),
            ),
            8 => {
                let outcome = verbs::conclude(ITEM, first.then_some(Outcome::Happened));
                // A form with the outcome and the place, the place emptied.
                let place = second.then_some(Write::clear(Field::Appointment(ITEM, AppointmentField::Place)));
                outcome.into_iter().chain(place).collect()
            }
            9 => verbs::cancel(ITEM),
            10 | 11 => {
                let height = first.then(|| Length::from_mm(1.0 + self.random.below(3) as f64));
                let name = second.then(|| some.to_owned());
                verbs::note_ring(Wearer::First, Ring { height, name, ..Ring::unknown(ITEM) })
            }
            12 => verbs::drop_ring(Wearer::First, ITEM),
            _ => vec![Write::clear(Field::PutAway)],
        }
    }

    /// Drafts that were made at once: none of them knows of another. Registers tell them apart by their authors.
    fn save_all(&mut self, at: usize, drafts: Vec<Draft>) {
        // Storage refuses a change to what was erased.
        if self.happened.len() + drafts.len() > 128 || self.phones[at].record.erased().is_some() {
            return;
        }
        let knew = self.phones[at].knows;
        let before = self.phones[at].registers.clone();
        for (which, draft) in drafts.into_iter().enumerate() {
            let mut actor = self.phones[at].actor;
            if which > 0 {
                self.actors += 1;
                actor = self.actors;
            }
            self.save(at, draft, knew, &before, actor);
        }
    }

    fn save(&mut self, at: usize, draft: Draft, knew: u128, before: &Registers, actor: u32) {
        let phone = &mut self.phones[at];
        phone.before = None;
        phone.installation.follow(phone.record.highest());
        let stamp = Stamp { n: phone.installation.next, by: phone.installation.id };
        phone.installation.follow(stamp.n);
        let mut change = Change::stamped(draft, stamp);
        if phone.is_old {
            change.after.clear();
        }
        for set in &change.sets {
            let context = before.get(&set.field).cloned().unwrap_or_default().read().derive_add_ctx(actor);
            let register = phone.registers.entry(set.field.clone()).or_default();
            register.apply(register.write((self.happened.len(), set.value.clone()), context));
        }
        self.happened.push(Happened { change: change.clone(), knew });
        phone.knows |= 1 << (self.happened.len() - 1);
        phone.record.add(change);
        assert_eq!(phone.record.changes().last().map(|change| change.stamp), Some(stamp), "the newest comes last");
    }

    fn send(&mut self, at: usize) {
        let phone = &self.phones[at];
        let mut record = phone.record.clone();
        if self.random.one_in(4) {
            let text = row::write(&record);
            record = row::read(&text).unwrap_or_else(|why| panic!("{why:?}: {text}"));
            assert_eq!(record, phone.record, "as it was before it was written and read");
        }
        self.copies.push(Copy { record, registers: phone.registers.clone(), knows: phone.knows });
    }

    fn receive(&mut self, at: usize, copy: Copy) {
        let fresh = InstallationId(u128::from(self.random.next()));
        let phone = &mut self.phones[at];
        let before = Copy { record: phone.record.clone(), registers: phone.registers.clone(), knows: phone.knows };
        phone.before = Some(before);
        let merged = merge(&phone.record, &copy.record);
        if added(&phone.record, &merged).iter().any(|change| change.by() == phone.installation.id) {
            assert!(self.cloned, "nobody else writes under this name");
            phone.installation.rename(fresh);
        }
        phone.installation.follow(merged.highest());
        phone.record = merged;
        phone.knows |= copy.knows;
        for (field, register) in copy.registers {
            phone.registers.entry(field).or_default().merge(register);
        }
    }

    /// Everybody gets what everybody has, in some order.
    fn meet(&mut self) {
        let mut all: Vec<usize> = (0..self.phones.len()).collect();
        for at in (1..all.len()).rev() {
            all.swap(at, self.random.below(at + 1));
        }
        for _ in 0..2 {
            for from in &all {
                for to in &all {
                    let phone = &self.phones[*from];
                    let registers = phone.registers.clone();
                    let copy = Copy { record: phone.record.clone(), registers, knows: phone.knows };
                    self.receive(*to, copy);
                }
            }
        }
    }
}
