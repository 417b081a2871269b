//! The drawings for measuring a ring at home: to scale, inside their edges, and told to those who do not see them.

use crate::shared::figures;
use bandwright::pictures::measuring::{clock, ruler, strip};

#[test]
fn each_is_an_image_with_words_for_ears() {
    for svg in [clock().svg, ruler().svg, strip().svg] {
        assert!(svg.starts_with("<svg") && svg.contains("role=\"img\""), "{svg}");
        let (_, label) = svg.split_once("aria-label=\"").unwrap();
        assert!(label.split('"').next().unwrap().len() > 60);
        assert!(!svg.contains("style="), "the content security policy allows none");
    }
}

#[test]
fn nothing_runs_off_the_top_or_the_bottom() {
    for svg in [clock().svg, ruler().svg, strip().svg] {
        let height: f64 = svg.split_once("viewBox=\"0 0 328 ").unwrap().1.split('"').next().unwrap().parse().unwrap();
        let mut rows: Vec<f64> = Vec::new();
        for attribute in ["y", "y1", "y2", "cy"] {
            rows.extend(figures(&svg, "", attribute));
        }
        for path in svg.split("<path").skip(1) {
            let d = path.split_once(" d=\"").unwrap().1.split('"').next().unwrap();
            let numbers: Vec<f64> =
                d.split(|c: char| c.is_alphabetic() || c == ' ').filter_map(|n| n.parse().ok()).collect();
            rows.extend(numbers.chunks(2).filter_map(|pair| pair.get(1)));
        }
        assert!(rows.len() > 10 && rows.iter().all(|row| (0.0..=height).contains(row)), "{height}: {rows:?}");
    }
}

#[test]
fn the_ruler_reads_three_millimetres() {
    let svg = ruler().svg;
    let ticks = figures(&svg, "line class=\"thin\"", "x1");
    // The first thin line is the stone's.
    let ticks = &ticks[1..];
    let millimetre = ticks[1] - ticks[0];
    let across = svg.split('<').find(|tag| tag.contains("rouge span")).unwrap();
    let end = |name: &str| figures(&format!("<{across}"), "", name)[0];
    assert!(((end("x2") - end("x1")) / millimetre - 3.0).abs() < 0.02);
    assert!(ticks.iter().any(|tick| (tick - end("x1")).abs() < 0.02), "the band begins at a division");
}

#[test]
fn the_strip_is_marked_eighteen_times_along_the_short_side() {
    let svg = strip().svg;
    let card = figures(&svg, "rect class=\"leaf\"", "height")[0];
    let long = figures(&svg, "rect class=\"leaf\"", "width")[0];
    // ISO/IEC 7810 ID-1: 85.60 by 53.98 mm, corners of 3.18 mm.
    assert!((long / card - 85.60 / 53.98).abs() < 0.001);
    assert!((figures(&svg, "rect class=\"leaf\"", "rx")[0] / card - 3.18 / 53.98).abs() < 0.001);
    let marks: Vec<f64> = figures(&svg, "line", "y1");
    assert_eq!(marks.len(), 19);
    assert!((marks[18] - marks[0] - card).abs() < 0.02);
    assert!(marks.windows(2).all(|pair| (pair[1] - pair[0] - card / 18.0).abs() < 0.02));
}
