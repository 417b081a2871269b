//! Everything that can be chosen has a name of its own.

use bandwright::book::checklist::Care;
use bandwright::book::field::{Outcome, Stage, Wish};
use bandwright::book::remedy::Way;
use bandwright::trade::band::alloys::ALLOYS;
use bandwright::trade::band::{Bore, Finish, Profile};
use bandwright::trade::dates::holidays::{HolidayName, Region};
use bandwright::trade::dates::lead_times::Step as Work;
use bandwright::trade::dates::milestones::Milestone;
use bandwright::trade::dates::places;
use bandwright::trade::fit::{Hands, Place, ReadAt, Sits, Term};
use bandwright::trade::limits;
use bandwright::trade::measure::Standing;
use bandwright::trade::sizing::System;
use bandwright::trade::stack::Verdict;
use bandwright::trade::wearer::{Digit, Finger, Hand};
use bandwright::words;
use chrono::Weekday;

pub fn unique(of: &str, names: Vec<String>) {
    for (at, name) in names.iter().enumerate() {
        assert!(!name.trim().is_empty() && name.trim() == name, "{of}: {name:?}");
        assert!(!names[..at].contains(name), "{of}: {name:?} is the name of two");
    }
}

#[test]
fn everything_that_can_be_chosen_has_a_name_of_its_own() {
    fn named<T: Copy, N: Into<String>>(of: &str, all: &[T], name: impl Fn(T) -> N) {
        unique(of, all.iter().map(|one| name(*one).into()).collect());
    }
    named("alloys", &ALLOYS.each_ref(), words::band::alloy);
    named("systems", &System::ALL, words::sizing::system_name);
    named("regions", &Region::ALL, words::dates::region);
    named("stages", &Stage::ALL, words::book::stage);
    named("outcomes", &Outcome::ALL, words::book::outcome);
    named("profiles", &Profile::ALL, words::band::profile);
    named("profiles described", &Profile::ALL, words::band::profile_described);
    named("finishes", &Finish::ALL, words::band::finish);
    named("hands", &Hands::ALL, words::fit::hands);
    named("places", &Place::ALL, words::fit::place);
    named("where it was read", &ReadAt::ALL, words::fit::read_at);
    named("how it sits", &Sits::ALL, words::fit::sits);
    named("terms", &Term::ALL, words::fit::term);
    named("ways beside a head", &Way::ALL, words::remedy::way);
    named("wishes", &Wish::ALL, words::finger::wish);
    named("what a wish means", &Wish::ALL, words::finger::wish_means);
    let fingers: Vec<Finger> =
        Hand::ALL.iter().flat_map(|hand| Digit::ALL.map(|digit| Finger { hand: *hand, digit })).collect();
    named("fingers", &fingers, words::band::finger);
    named("bores", &each![Bore::Flat => Bore::Flat, Bore::Domed => Bore::Domed], words::band::bore);
    use Work as W;
    let steps = each![
        W::Making => W::Making, W::Stones => W::Stones, W::Marking => W::Marking, W::Engraving => W::Engraving,
        W::Delivery => W::Delivery, W::Resizing => W::Resizing,
    ];
    named("pieces of work", &steps, words::dates::step);
    use Standing as S;
    let standings = each![
        S::Published => S::Published, S::Derived => S::Derived, S::CommonPractice => S::CommonPractice,
        S::FromMemory => S::FromMemory, S::Yours => S::Yours,
    ];
    named("standings", &standings, words::standing::standing);
    use Care as C;
    let cares = each![
        C::DateNotFixed => C::DateNotFixed, C::Incomplete => C::Incomplete, C::MeasureAgain => C::MeasureAgain,
        C::Changed => C::Changed, C::RemedyOpen => C::RemedyOpen, C::RemedyStale => C::RemedyStale, C::BenchOpen => C::BenchOpen,
        C::AwayOpen => C::AwayOpen, C::AwayAtWedding => C::AwayAtWedding, C::Differs => C::Differs,
    ];
    named("cares", &cares, words::book::care);
    use Verdict as V;
    let verdicts = each![
        V::Roomy => V::Roomy, V::Full => V::Full, V::Crowded => V::Crowded, V::DoesNotFit => V::DoesNotFit,
    ];
    named("verdicts", &verdicts, words::stack::verdict);
    named("milestones", &Milestone::ALL, words::dates::milestone);
    named("why a milestone is kept", &Milestone::ALL, words::dates::milestone_why);
    named("calendars", &places::Place::ALL, words::dates::place);
    named("holidays", &HolidayName::ALL, words::dates::holiday);
    let week: Vec<Weekday> = (0..7).map(|day| Weekday::try_from(day).unwrap()).collect();
    named("weekdays", &week, words::dates::weekday);
    named("limits", limits::all(), |row| words::entry::limit_noun(row.limit));
}
