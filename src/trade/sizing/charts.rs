//! Where published charts differ from the rules here: rows as printed, with their source, no branches.

use super::convert::all;
use super::size::{Size, Step};
use super::systems::System;
use crate::trade::measure::{Circumference, Length};

/// A chart or formula that is published and differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Published {
    /// The conversion chart of the encyclopaedia article "Ring size" prints this size, so much larger than the rule.
    Chart { prints: Circumference, larger: Length },
    /// That chart leaves this size out.
    LeftOut,
    /// Four published formulas of the US scale differ by 0.2 mm round the inside at size 7 and by 0.3 at 12.
    UsFormulas,
    /// The Japan columns of printed charts stray by up to 1.7 mm.
    JapanColumns,
}

/// What is published about a size and differs from the rule, or agrees with it where `larger` is nothing.
///
/// Source: the chart as printed (the rows below); the formulas and columns as compared there.
pub fn published(size: Size) -> Vec<Published> {
    let column = match size.system() {
        System::Uk => &UK[..],
        System::Us => &US[..],
        System::Italy => &ITALY[..],
        System::Iso | System::Japan | System::Diameter | System::Circumference => &[],
    };
    let mut found = Vec::new();
    if let Some((_, prints)) = column.iter().find(|(quarters, _)| *quarters == size.quarters()) {
        let prints = Circumference(Length::tenthousandths(i64::from(*prints) * 1_000));
        found.push(Published::Chart { prints, larger: prints.0 - size.circumference().0 });
    }
    if size.system() == System::Uk && UK_LEFT_OUT.contains(&size.quarters()) {
        found.push(Published::LeftOut);
    }
    match size.system() {
        System::Us => found.push(Published::UsFormulas),
        System::Japan => found.push(Published::JapanColumns),
        System::Uk | System::Iso | System::Italy | System::Diameter | System::Circumference => {}
    }
    found
}

/// By how much the encyclopaedia's chart differs at the most from the rule of a system, in either direction; none
/// where it prints nothing of it.
pub fn chart_differs_at_most(system: System) -> Option<Length> {
    let differs = |size| {
        published(size).into_iter().find_map(|found| match found {
            Published::Chart { larger, .. } => Some(larger.abs()),
            Published::LeftOut | Published::UsFormulas | Published::JapanColumns => None,
        })
    };
    all(system, Step::Quarter).filter_map(differs).max()
}

/// I½ and Y½.
const UK_LEFT_OUT: [i32; 2] = [34, 98];

// Quarters of the size, and the inside circumference that the chart prints beside it, in tenths of a millimetre.
#[rustfmt::skip]
const UK: [(i32, u16); 49] = [
    (4, 391), (6, 397), (8, 404), (10, 410), (12, 417), (14, 423), (16, 429), (18, 436), (20, 442),
    (22, 448), (24, 455), (26, 461), (28, 468), (30, 474), (32, 480), (36, 487), (38, 493), (40, 500),
    (42, 506), (44, 512), (46, 519), (48, 525), (50, 531), (52, 538), (54, 544), (56, 551), (58, 557),
    (60, 563), (62, 570), (64, 576), (66, 583), (68, 589), (70, 595), (72, 602), (74, 608), (76, 614),
    (78, 621), (80, 627), (82, 634), (84, 640), (86, 646), (88, 653), (90, 659), (92, 666), (94, 672),
    (96, 678), (100, 685), (102, 691), (104, 704),
];

#[rustfmt::skip]
const US: [(i32, u16); 26] = [
    (4, 391), (6, 404), (8, 417), (10, 429), (12, 442), (14, 455), (16, 468), (18, 480), (20, 493),
    (22, 506), (24, 519), (26, 531), (28, 544), (30, 557), (32, 570), (34, 583), (36, 595), (38, 608),
    (40, 621), (42, 634), (44, 646), (46, 659), (48, 672), (50, 685), (52, 697), (54, 710),
];

#[rustfmt::skip]
const ITALY: [(i32, u16); 49] = [
    (2, 404), (4, 410), (7, 417), (9, 423), (12, 429), (14, 436), (17, 442), (19, 448), (22, 455),
    (24, 461), (27, 468), (30, 474), (32, 480), (35, 487), (37, 493), (40, 500), (42, 506), (45, 512),
    (47, 519), (50, 525), (53, 531), (55, 538), (58, 544), (60, 551), (63, 557), (65, 563), (68, 570),
    (70, 576), (73, 583), (76, 589), (78, 595), (81, 602), (83, 608), (86, 614), (88, 621), (91, 627),
    (93, 634), (96, 640), (99, 646), (101, 653), (104, 659), (106, 666), (109, 672), (111, 678), (114, 685),
    (116, 691), (119, 697), (122, 704), (124, 710),
];
