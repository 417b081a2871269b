//! The form of what is chosen beside a head: it starts with what the stack computed, and reads what was chosen.

use super::{Told, WHO, day, mm};
use bandwright::answers::stack::of_couple;
use bandwright::book::couple::Band;
use bandwright::book::field::{BandField, Field};
use bandwright::book::remedy::Way;
use bandwright::book::verbs;
use bandwright::forms::{Complaint, Texts, remedy as form};
use bandwright::trade::band::Profile;
use bandwright::trade::stack::House;
use bandwright::words::complaint;

const TODAY: &str = "2026-11-25";

fn start(told: &Told) -> Texts {
    let found = of_couple(told.couple(), &House::default().into(), WHO).unwrap();
    form::start(told.couple(), WHO, found.remedies(), |day| day.to_string())
}

/// What is wrong with the days, in the order of the form.
fn complaints(texts: &Texts) -> Vec<Complaint> {
    form::read(texts, day(TODAY), None).unwrap_err().into_iter().map(|(_, what)| what).collect()
}

#[test]
fn it_starts_with_what_was_computed_and_keeps_what_was_chosen() {
    let mut told = Told::with_a_head();
    let texts = start(&told);
    assert_eq!((texts.get(form::amount(Way::Shaped)), texts.get(form::amount(Way::Gap))), ("0.8", "0.6"));
    assert_eq!(texts.get(form::WAY), "none");
    assert_eq!(form::read(&texts, day(TODAY), None).unwrap().remedy, None);
    let read = form::read(&texts.with(form::WAY, "shaped").with(form::TEMPLATE, "yes"), day(TODAY), None).unwrap();
    let chosen = read.remedy.unwrap();
    assert_eq!((chosen.way, chosen.by, chosen.template, chosen.ring), (Way::Shaped, mm(0.8), true, None));
    told.choose(Way::Shaped, 1.1);
    assert_eq!(start(&told).get(form::amount(Way::Shaped)), "1.1", "what was chosen, not what was computed");
}

#[test]
fn the_days_of_a_ring_that_is_away_have_an_order() {
    let told = Told::with_a_head();
    let texts = start(&told).with(form::WAY, "shaped").with(form::RING_ITSELF, "yes");
    let away = texts.clone().with(form::AWAY_FROM, "4 January 2027").with(form::AWAY_TO, "2 January 2027");
    assert_eq!(complaints(&away), [Complaint::BackBeforeAway]);
    let went = |gone: &str, back: &str| texts.clone().with(form::RING_GONE, gone).with(form::RING_BACK, back);
    assert_eq!(complaints(&went("", "1 November 2026")), [Complaint::BackNotGone]);
    assert_eq!(complaints(&went("2 November 2026", "1 November 2026")), [Complaint::BackBeforeGone]);
    assert_eq!(complaints(&went("1 December 2026", "")), [Complaint::NotYet(day(TODAY))]);
    let read = form::read(&went("1 November 2026", ""), day(TODAY), None).unwrap();
    assert_eq!((read.gone, read.back), (Some(day("2026-11-01")), None));
    let straight = went("1 November 2026", "").with(form::WAY, "gap");
    assert_eq!(complaints(&straight), [Complaint::StillAway], "nobody would ask for it any more");
    assert!(complaint::complaint(&Complaint::NotYet(day(TODAY))).contains("25 Nov"));
}

#[test]
fn a_thinner_band_keeps_an_edge_and_its_dome() {
    let mut told = Told::with_a_head();
    let band = Band { width: Some(mm(4.0)), height: Some(mm(1.8)), profile: Some(Profile::D), ..Band::default() };
    told.say(verbs::choose_band(WHO, band));
    let section = of_couple(told.couple(), &House::default().into(), WHO).unwrap().section_of_band();
    let texts = start(&told).with(form::WAY, "lower");
    let lower = |by: &str| form::read(&texts.clone().with(form::amount(Way::Lower), by), day(TODAY), section);
    let wrong = lower("0.5").unwrap_err();
    assert!(
        matches!(wrong.as_slice(), [(key, Complaint::Section(_))] if *key == form::amount(Way::Lower)),
        "its dome is 0.5 mm: {wrong:?}"
    );
    let writes = lower("1.4").unwrap().writes(WHO, &band, section);
    let fields: Vec<Field> = writes.into_iter().filter(|it| it.value.is_some()).map(|it| it.field).collect();
    let of_band = |part| Field::Band(WHO, part);
    assert_eq!(fields, [Field::Remedy(WHO), of_band(BandField::Height), of_band(BandField::Dome)]);
}
