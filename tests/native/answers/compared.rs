//! Bands side by side say of each what its own pages say.

use super::{Told, WHO, mm, read_practice, taken};
use bandwright::answers::compare::{NoSize, Shared, alternatives};
use bandwright::answers::order::size_to_make;
use bandwright::book::couple::Band;
use bandwright::book::fit_basis::{FitBasis, FitRules};
use bandwright::book::remedy::Way;
use bandwright::book::verbs;
use bandwright::forms::compare as form;
use bandwright::trade::band::{Finish, Profile};
use bandwright::trade::stack::House;
use bandwright::words::bench as say;

#[test]
fn the_curve_that_was_chosen_is_the_same_beside_other_bands() {
    let mut told = Told::with_a_head();
    told.choose(Way::Shaped, 0.8);
    let shared = read_practice(|practice| Shared::of(Some((told.couple(), WHO)), practice));
    let (bands, complaints) = form::read(&form::start(&shared.chosen), &shared.chosen);
    assert_eq!(complaints, []);
    let all = alternatives(&bands, &shared);
    let own = bandwright::answers::stack::of_couple(told.couple(), &House::default().into(), WHO).unwrap();
    assert_eq!(all[0].stack, own, "the stack of the band itself is that of its own page");
    let said = say::alternative_lines(&all[0]);
    assert!(said.contains(&"Stack 9.1 mm at the top, full: 37.9 % of 24 mm".to_owned()), "{said:?}");
    let cautions = say::alternative_cautions(&all[0], say::Called::Own);
    assert!(!cautions.iter().any(|it| it.starts_with("Not flush") && it.contains("0.8")), "{cautions:?}");
}

#[test]
fn an_order_size_is_that_of_the_order_page() {
    let mut told = Told::with_a_head();
    told.read(20, "M");
    let band = Band { width: Some(mm(6.0)), profile: Some(Profile::Court), ..Band::default() };
    told.say(verbs::choose_band(WHO, band));
    let (shared, own) = read_practice(|practice| {
        let own = size_to_make(&FitBasis::of(told.couple(), WHO), FitRules::of(practice));
        (Shared::of(Some((told.couple(), WHO)), practice), own)
    });
    let start = form::start(&shared.chosen).with(form::BANDS[1].width, "3").with(form::BANDS[2].width, "abc");
    let (bands, complaints) = form::read(&start, &shared.chosen);
    assert_eq!(complaints.len(), 1, "what cannot be read is said");
    let all = alternatives(&bands, &shared);
    assert_eq!(all.len(), 2, "and is no band");
    assert_eq!(all[0].size, own.map(Ok));
    assert!(own.is_some() && taken("M").size.circumference() != own.unwrap().circumference());
    assert_eq!(all[1].size, Some(Err(NoSize { profile_known: false, has_reading: true })));
    assert_eq!(all[1].number, 2);
}

#[test]
fn what_cannot_be_resized_is_said() {
    let shared = read_practice(|practice| Shared::of(None, practice));
    let band = Band { width: Some(mm(2.0)), finish: Some(Finish::SetAllRound), ..Band::default() };
    let all = alternatives(&form::read(&form::start(&band), &band).0, &shared);
    assert_eq!(all[0].size, None, "without a couple there is no order size to speak of");
    assert_eq!(say::alternative_cautions(&all[0], say::Called::Plain), ["Set all round: it cannot be resized."]);
}
