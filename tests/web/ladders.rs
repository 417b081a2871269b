//! The ladder in a browser: its shifts and its readings to the scale of its rule, its words inside its edges.

use crate::pictures::{all, c, check_words, figure, named, near, show};
use bandwright::pictures::ladder::{Ladder, Named, Shift, Single, ladder};
use bandwright::trade::fit::Worn;
use bandwright::trade::measure::{Circumference, Length};
use wasm_bindgen_test::wasm_bindgen_test;

/// UK letters from K (50 mm) to R, each half letter a tick.
fn ticks() -> Vec<Named> {
    let letters = ["K", "", "L", "", "M", "", "N", "", "O", "", "P", "", "Q", "", "R"];
    letters.iter().enumerate().map(|(i, letter)| named(50.0 + 0.625 * i as f64, letter)).collect()
}

pub fn a_ladder(shifts: &[(&str, f64)], order: Named, other: Option<Named>, joint: Option<Named>) -> Ladder {
    let shifts: Vec<Shift> =
        shifts.iter().map(|(label, mm)| Shift { label: (*label).into(), amount: Length::from_mm(*mm) }).collect();
    let best = Circumference(Length::from_mm(53.125) + shifts.iter().map(|shift| shift.amount).sum());
    let range = (c(best.mm() - 0.7), c(best.mm() + 0.7));
    Ladder {
        ticks: ticks(),
        reading: named(53.125, "M½"),
        singles: vec![],
        shifts,
        best,
        range,
        order,
        worn: Worn::Alone,
        other,
        joint,
    }
}

#[wasm_bindgen_test]
fn a_ladder_is_drawn_to_the_scale_of_its_rule() {
    let shifts = [("wider", 0.75), ("domed bore", -0.48), ("cold hands", 0.5)];
    let host = show(&ladder(&a_ladder(&shifts, named(53.75, "N"), None, None)));
    let ticks = all(&host, ".tick");
    // Two neighbouring ticks are half a letter apart: 0.625 mm.
    let mm = 0.625 / (figure(&ticks[1], "x1") - figure(&ticks[0], "x1"));
    let arrows = all(&host, ".shift .shaft");
    assert_eq!(arrows.len(), 3);
    for (arrow, (_, meant)) in arrows.iter().zip(shifts) {
        near((figure(arrow, "x2") - figure(arrow, "x1")) * mm, meant);
    }
    let order = all(&host, ".tick.rouge");
    near((figure(&all(&host, ".best")[0], "cx") - figure(&order[0], "x1")) * mm, 53.895 - 53.75);
    let range = &all(&host, ".range .span")[0];
    near((figure(range, "x2") - figure(range, "x1")) * mm, 1.4);
    let name = host.query_selector("svg").unwrap().unwrap().get_attribute("aria-label").unwrap();
    assert!(name.contains("domed bore −0.48") && name.ends_with("Order N."), "{name}");
}

#[wasm_bindgen_test]
fn every_reading_has_its_mark_on_the_rule() {
    let single = |mm: f64, label: &str, apart| Single { read: named(mm, label), apart };
    for far in [57.5, 48.0, 75.0, 37.5] {
        let mut of = a_ladder(&[("wider", 0.75)], named(53.75, "N"), None, Some(named(53.75, "N")));
        of.singles = vec![
            single(52.5, "M", false),
            single(52.5, "M", false),
            single(53.125, "M½", false),
            single(far, "Q", true),
        ];
        let host = show(&ladder(&of));
        let ticks = all(&host, ".tick");
        let mm = 0.625 / (figure(&ticks[1], "x1") - figure(&ticks[0], "x1"));
        let marks = all(&host, ".single circle");
        assert_eq!(marks.len(), 3);
        // The two alike stand one under the other.
        assert!(
            figure(&marks[0], "cx") == figure(&marks[1], "cx") && figure(&marks[0], "cy") != figure(&marks[1], "cy")
        );
        near((figure(&marks[2], "cx") - figure(&marks[0], "cx")) * mm, 0.625);
        let diamond = all(&host, ".single-apart path.paper");
        // Within sight it is on the rule; far beyond it an arrow points there.
        assert_eq!(diamond.len(), usize::from(far == 57.5 || far == 48.0), "{far}");
        if let Some(diamond) = diamond.first() {
            let top: f64 = diamond.get_attribute("d").unwrap()[1..].split(' ').next().unwrap().parse().unwrap();
            near((top - figure(&marks[0], "cx")) * mm, far - 52.5);
        }
        check_words(&host);
    }
}

#[wasm_bindgen_test]
fn no_word_of_a_ladder_runs_off_or_over_another() {
    let long = "beside the engagement ring and everything else she wears";
    let both = Some(named(54.375, "N½"));
    let joint = Some(named(53.125, "M½"));
    check_words(&show(&ladder(&a_ladder(&[], named(53.125, "M½"), None, None))));
    check_words(&show(&ladder(&a_ladder(
        &[(long, 0.75), (long, -0.5)],
        named(53.75, "N"),
        both.clone(),
        joint.clone(),
    ))));
    check_words(&show(&ladder(&a_ladder(&[("wider", 4.0)], named(57.5, "Q"), Some(named(50.625, "K½")), joint))));
    check_words(&show(&ladder(&a_ladder(&[("<b>&\"", -3.0)], named(50.0, "K"), both, None))));
}
