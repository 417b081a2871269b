//! The order size: what its answer says, what it is called elsewhere, and what it writes.

use super::{Told, WHO, day, mm, read_practice};
use bandwright::answers::order::{Caution, OrderAnswer, Reason, answer};
use bandwright::book::checklist::{State, Topic, state};
use bandwright::book::couple::Band;
use bandwright::book::field::{BandField, Field};
use bandwright::book::fitting;
use bandwright::book::verbs;
use bandwright::forms::order as form;
use bandwright::forms::{Complaint, Texts};
use bandwright::pictures::order_size::order_size;
use bandwright::trade::band::Profile;
use bandwright::trade::fit::constants::PLAIN_WIDTH;
use bandwright::trade::fit::{Place, Term};
use bandwright::trade::sizing::System;
use bandwright::words::{bench as say, finger as say_finger};

fn asked(told: &Told, change: impl FnOnce(Texts) -> Texts) -> OrderAnswer {
    read_practice(|practice| {
        let couple = Some((told.couple(), WHO));
        let known = form::Known::of(couple, practice, day("2026-11-25"));
        let (typed, _) = form::read(&change(form::start(couple, practice)), &known);
        answer(typed, known.rules, &known.gauges, &[])
    })
}

fn with_a_band() -> Told {
    let mut told = Told::new();
    told.read(20, "R");
    let band = Band { width: Some(mm(3.0)), profile: Some(Profile::D), ..Band::default() };
    told.say(verbs::choose_band(WHO, band));
    told
}

/// R and R½ are R¼ together, in the picture and on the finger's page.
#[test]
fn several_readings_have_one_name() {
    let mut told = with_a_band();
    told.read(21, "R½");
    let found = asked(&told, |texts| texts);
    let picture = order_size(&found).unwrap().svg;
    assert!(picture.contains("2 readings, together R¼"), "{picture}");
    let together = read_practice(|practice| fitting::together(told.couple(), practice, WHO, Place::Base)).unwrap();
    let page = say_finger::together(&together, Place::Base, System::Uk, PLAIN_WIDTH.value);
    assert!(page.contains("near UK R¼;"), "{page}");
    let Some(Reason::Together { singles, .. }) = found.reasons().into_iter().next() else { panic!("two readings") };
    assert_eq!(singles.iter().map(|at| say::size_called(*at)).collect::<Vec<_>>(), ["R½", "R"], "the newest first");
}

/// What was typed beside the size goes to the band, in one step with it; the size is not out of date by it.
#[test]
fn a_width_and_a_profile_that_were_typed_go_to_the_band() {
    let mut told = with_a_band();
    let found = asked(&told, |texts| texts.with(form::WIDTH, "5.5").with(form::PROFILE, "court"));
    let band = told.couple().band(WHO);
    let writes = found.writes(WHO, &band, day("2026-11-25"));
    let fields: Vec<Field> = writes.iter().map(|write| write.field.clone()).collect();
    assert_eq!(
        fields,
        [Field::OrderSize(WHO), Field::Band(WHO, BandField::Width), Field::Band(WHO, BandField::Profile)]
    );
    told.say(writes);
    let band = told.couple().band(WHO);
    assert_eq!((band.width, band.profile), (Some(mm(5.5)), Some(Profile::Court)));
    assert_eq!(state(told.couple(), Topic::OrderSize(WHO)), State::Done);
    assert_eq!(told.couple().order_size(WHO).map(|it| it.size), found.made().map(|made| made.size));
    assert_eq!(asked(&told, |texts| texts).made(), found.made(), "opened again it says the same");
}

#[test]
fn nothing_of_the_band_is_written_that_nobody_typed() {
    let told = with_a_band();
    let found = asked(&told, |texts| texts);
    let fields = found.writes(WHO, &told.couple().band(WHO), day("2026-11-25")).len();
    assert_eq!(fields, 1, "the size alone");
    // A profile that is counted with because none is chosen stays unchosen.
    let mut told = Told::new();
    told.read(20, "R");
    let found = asked(&told, |texts| texts.with(form::WIDTH, "4"));
    let writes = found.writes(WHO, &told.couple().band(WHO), day("2026-11-25"));
    assert_eq!(writes.last().map(|write| write.field.clone()), Some(Field::Band(WHO, BandField::Width)));
}

#[test]
fn what_cannot_be_read_is_a_complaint_and_no_answer() {
    let told = with_a_band();
    read_practice(|practice| {
        let couple = Some((told.couple(), WHO));
        let known = form::Known::of(couple, practice, day("2026-11-25"));
        let texts = form::start(couple, practice).with(form::WIDTH, "2..5").with(form::SIZE, "17");
        let (typed, complaints) = form::read(&texts, &known);
        assert!(matches!(complaints.as_slice(), [(form::WIDTH, Complaint::Number(..))]), "{complaints:?}");
        let found = answer(typed, known.rules, &known.gauges, &[]);
        assert!(found.sized.is_none());
        assert!(matches!(found.cautions.as_slice(), [Caution::SeveralReadings(4)]), "{:?}", found.cautions);
    });
}

/// The amounts of the jeweller's own have their fields from the start; the others once the answer has such a part.
#[test]
fn an_amount_of_ones_own_has_its_field_beside_what_the_rule_gives() {
    let told = with_a_band();
    let found = asked(&told, |texts| texts);
    assert!([Term::Width, Term::Bore, Term::Hands].into_iter().all(|term| found.has_term(term)));
    // From a gauge of 3 mm to a band of 3 mm nothing is added for the width; 0.5 mm for warm hands, common practice.
    assert!(found.worked_out(Term::Stick).is_none() && !found.has_term(Term::Stick));
    let warm = asked(&told, |texts| texts.with(form::HANDS, "warm"));
    assert_eq!(warm.worked_out(Term::Hands), Some(mm(-0.5)));
    let unread = asked(&told, |texts| texts.with(form::SIZE, "abc"));
    assert!(unread.has_term(Term::Width) && unread.worked_out(Term::Width).is_none());
}

#[test]
fn another_day_is_asked_for_a_week_on_and_only_where_the_answer_wants_it() {
    let mut told = with_a_band();
    let today = day("2026-11-25");
    assert_eq!(asked(&told, |texts| texts).measure_again_on(today), None);
    told.read(21, "V");
    let found = asked(&told, |texts| texts);
    assert!(found.asks_again, "R and V are not one finger");
    assert_eq!(found.measure_again_on(today), Some(day("2026-12-02")));
}
