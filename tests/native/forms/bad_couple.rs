//! The forms of a couple, for the bad input.

use super::bad_input::{Field, Form, Kind::*, needed, optional};
use super::couple::couple;
use crate::shared::date;
use bandwright::book::couple::{Couple, Ring};
use bandwright::book::field::Stage;
use bandwright::book::id::ItemId;
use bandwright::book::practice::Practice;
use bandwright::book::verbs;
use bandwright::forms::couple::*;
use bandwright::trade::sizing::System;
use bandwright::words::{dates, format};
use chrono::NaiveDate;

fn today() -> NaiveDate {
    date("2026-11-25")
}

fn all<const N: usize>(parts: [Vec<Field>; N]) -> Vec<Field> {
    parts.into_iter().flatten().collect()
}

pub fn forms() -> Vec<Form> {
    vec![
        a_new_couple(),
        the_two(),
        a_wedding(),
        whether_they_agree(),
        where_they_stand(),
        a_note(),
        an_appointment(),
        a_ring(),
        a_band(),
        what_fitted(),
        an_order_under_way(),
    ]
}

fn a_new_couple() -> Form {
    use new_couple::*;
    use people::{FIRST_NAME, MET, SECOND_NAME};
    Form {
        name: "new couple",
        filled: start(None).with(FIRST_NAME, "Ines"),
        read: |texts| read(texts, today()).map(drop),
        fields: all([
            needed(Words, [FIRST_NAME]),
            optional(Words, [SECOND_NAME, MET]),
            optional(Contact, [REACH]),
            optional(Wedding, [wedding::WEDDING]),
            optional(Choice, [recorded::MAY_RECORD]),
        ]),
    }
}

fn the_two() -> Form {
    use people::*;
    Form {
        name: "people",
        filled: reach(6).iter().fold(start(Couple(&couple(vec![]))), |texts, key| texts.with(*key, "07700 900123")),
        read: |texts| read(texts, 6).map(drop),
        fields: all([
            needed(Words, [FIRST_NAME]),
            optional(Words, [SECOND_NAME, MET]),
            optional(Contact, reach(6).iter().copied()),
        ]),
    }
}

fn a_wedding() -> Form {
    use wedding::*;
    Form {
        name: "wedding",
        filled: start(None, dates::wedding).with(WEDDING, "22 May 2027"),
        read: |texts| read(texts, None, dates::wedding, today()).map(drop),
        fields: optional(Wedding, [WEDDING]),
    }
}

fn whether_they_agree() -> Form {
    use recorded::*;
    Form {
        name: "recorded",
        filled: start(Couple(&couple(vec![])), today(), format::day),
        read: |texts| read(texts, today()).map(drop),
        fields: all([needed(Day, [ASKED]), optional(Choice, [MAY_RECORD])]),
    }
}

fn where_they_stand() -> Form {
    use stage::*;
    Form {
        name: "stage",
        filled: start(Couple(&couple(vec![])), today(), format::day),
        read: |texts| read(texts, Stage::Enquiry, today()).map(drop),
        fields: all([needed(Day, [SINCE]), optional(Choice, [STAGE])]),
    }
}

fn a_note() -> Form {
    use note::*;
    let read = |texts: &_| read(texts).map(drop);
    Form { name: "note", filled: start().with(NOTE, "likes bark"), read, fields: needed(Words, [NOTE]) }
}

fn an_appointment() -> Form {
    use appointment::*;
    Form {
        name: "appointment",
        filled: start(None, format::day).with(DAY, "5 Dec 2026"),
        read: |texts| read(texts, ItemId(1), today()).map(drop),
        fields: all([
            needed(Day, [DAY]),
            optional(Time, [TIME]),
            optional(Words, [PLACE]),
            optional(Choice, [OUTCOME]),
        ]),
    }
}

fn a_ring() -> Form {
    use ring::*;
    Form {
        name: "ring",
        filled: start(&Ring::unknown(ItemId(1))).with(HEAD_UNDERSIDE, "2"),
        read: |texts| match read(texts, ItemId(1)) {
            // A finger that cannot be picked leaves nothing to complain of.
            Err(all) if all.is_empty() => Ok(()),
            read => read.map(drop),
        },
        fields: all([
            optional(Words, [NAME, INSCRIPTION]),
            optional(Figure, [SHOULDER_WIDTH, TOP_WIDTH, BACK_WIDTH, HEIGHT, INSIDE]),
            optional(Figure, [HEAD_TO_WEB, HEAD_TO_TIP, HEAD_UNDERSIDE]),
            optional(Choice, [WHEN, PROFILE, METAL, STONES, PLACE, HOLDS, HAND, DIGIT]),
        ]),
    }
}

fn a_band() -> Form {
    use band::*;
    Form {
        name: "band",
        filled: start(&Default::default()).with(PROFILE, "court").with(WIDTH, "3").with(HEIGHT, "1.8"),
        read: |texts| read(texts, None).map(drop),
        fields: all([optional(Figure, [WIDTH, HEIGHT, DOME, RELIEF]), optional(Choice, [PROFILE, FINISH, METAL])]),
    }
}

fn what_fitted() -> Form {
    use fitted::*;
    Form {
        name: "fitted",
        filled: start(Couple(&couple(vec![])), bandwright::trade::wearer::Wearer::First).with(SIZE, "M½"),
        read: |texts| read(texts, System::Uk, today()).map(drop),
        fields: all([needed(Size, [SIZE]), optional(Choice, [HOW, SIZE_AS])]),
    }
}

fn an_order_under_way() -> Form {
    use plan::*;
    fn steps() -> Vec<Field> {
        let record = couple(verbs::move_to(Stage::Ordered, date("2026-10-01")));
        fields(Couple(&record), Practice(&crate::arbitrary::practice_of_nothing()))
    }
    Form {
        name: "order under way",
        filled: start(Couple(&couple(vec![])), &steps(), format::day),
        read: |texts| read(texts, &steps(), None, today()).map(drop),
        fields: all([optional(Day, steps().into_iter().map(|(key, _)| key)), optional(Choice, [REACHED])]),
    }
}
