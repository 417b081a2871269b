//! What is refused, and why; and what is ours but written another way.

use super::{changed, check_same_again, row};
use bandwright::archive::row::{RowError, read};
use serde_json::{Value as Json, json};

#[test]
fn what_cannot_be_read_says_why() {
    let check = |text: &str, expected: RowError| {
        let shown: String = text.chars().take(120).collect();
        assert_eq!(read(text).err(), Some(expected), "{shown}");
    };
    let whole = row().to_string();
    check("", RowError::NotJson);
    check("{", RowError::NotJson);
    check("Ines & Callum", RowError::NotJson);
    check(&whole[..whole.len() - 1], RowError::NotJson);
    check(&format!("{whole}{whole}"), RowError::NotJson);
    check(&format!("\u{feff}{whole}"), RowError::NotJson);
    // UTF-16, read as if each byte were a character.
    let utf_16: String = whole.encode_utf16().flat_map(u16::to_le_bytes).map(char::from).collect();
    check(&utf_16, RowError::NotJson);
    let deep = |levels| format!("{}{}", "[".repeat(levels), "]".repeat(levels));
    check(&deep(200), RowError::NotJson);
    check(&deep(1_000_000), RowError::NotJson);
    check(&changed(|row| row["schema"] = json!("1.7")).replace("\"fair\"", &deep(200)), RowError::NotJson);

    check("null", RowError::NotARecord);
    check("[]", RowError::NotARecord);
    check("17", RowError::NotARecord);
    check("{}", RowError::NotARecord);
    check(r#"{"version": 3, "contacts": [{"name": "Ines"}]}"#, RowError::NotARecord);
    check(r#"{"$schema": "https://json-schema.org/draft/2020-12/schema", "type": "object"}"#, RowError::NotARecord);
    for schema in
        [json!(1), json!(1.0), json!("1"), json!("one.nought"), json!(""), json!("1.0.0"), json!("0.9"), json!("-1.0")]
    {
        check(&changed(|row| row["schema"] = schema), RowError::NotARecord);
    }

    check(&changed(|row| row["schema"] = json!("2.0")), RowError::Newer(2));
    check(r#"{"schema": "12.3", "everything": "else"}"#, RowError::Newer(12));

    for key in ["id", "kind", "changes"] {
        check(&changed(|row| drop(row.as_object_mut().unwrap().remove(key))), RowError::Damaged);
        check(&changed(|row| row[key] = json!(null)), RowError::Damaged);
        check(&changed(|row| row[key] = json!(7)), RowError::Damaged);
    }
    for key in ["by", "n", "at", "sets"] {
        check(&changed(|row| drop(row["changes"][0].as_object_mut().unwrap().remove(key))), RowError::Damaged);
        check(&changed(|row| row["changes"][0][key] = json!({})), RowError::Damaged);
    }
    let damage: [fn(&mut Json); 16] = [
        |row| row["id"] = json!("0000000000000000000000000000000G"),
        |row| row["id"] = json!("7"),
        |row| row["kind"] = json!("triple"),
        |row| row["changes"][0] = json!(null),
        |row| row["changes"][0]["n"] = json!(-1),
        |row| row["changes"][0]["n"] = json!(1.5),
        // One change twice.
        |row| row["changes"][1] = row["changes"][0].clone(),
        |row| row["changes"][1]["undoes"] = json!({ "n": 1 }),
        |row| row["changes"][1]["undoes"] = json!(null),
        |row| row["changes"][1]["sets"][0]["replaces"] = json!({}),
        |row| row["changes"][1]["sets"][0]["restores"] = json!(1),
        |row| row["changes"][0]["sets"][0] = json!("met"),
        |row| row["changes"][0]["sets"][0]["field"] = json!("moon"),
        |row| row["changes"][0]["sets"][0]["value"] = json!(7),
        |row| row["changes"][0]["sets"][0]["value"] = json!(null),
        |row| row["changes"][0]["sets"][1]["value"] = json!("wide"),
    ];
    for change in damage {
        check(&changed(change), RowError::Damaged);
    }
}

#[test]
fn values_that_are_no_values() {
    let check = |field: &str, value: Json| {
        let text = changed(|row| row["changes"][0]["sets"][0] = json!({ "field": field, "value": value }));
        assert_eq!(read(&text).err(), Some(RowError::Damaged), "{field} {value}");
    };
    let weddings = [
        "",
        "2027-13",
        "2027-00",
        "2027-02-30",
        "2027-5-1",
        "27",
        "2027-05-22T10:00",
        "next year",
        "2027-",
        "-05",
        "+2027",
    ];
    weddings.into_iter().for_each(|day| check("wedding", json!(day)));
    ["", "2026-02-29", "2026-2-9", " 2026-02-09", "2026-02-09 ", "today"]
        .into_iter()
        .for_each(|day| check("put_away", json!(day)));
    [json!(1e9), json!(-1e9), json!("2.5"), json!([2.5]), json!(true)]
        .into_iter()
        .for_each(|width| check("band.first.width", width));
    ["25:00", "9", "12:60", "noon"].into_iter().for_each(|time| check("practice.cut_off", json!(time)));
    [json!(-1), json!(70_000), json!(1.5), json!("14")]
        .into_iter()
        .for_each(|days| check("practice.days_in_hand", days));
    check("practice.weekdays", json!(["mon", "moonday"]));
    [json!([]), json!([0]), json!([13]), json!([5, "June"]), json!("May"), json!([4_294_967_297u64])]
        .into_iter()
        .for_each(|months| check("practice.busy_months", months));
    check("practice.lead_time.making", json!({ "least": 20, "usual": 15, "most": 30 }));
    check("practice.lead_time.making", json!({ "least": 1, "usual": 2 }));
    check(
        "practice.closure.00000000000000000000000000000001",
        json!({ "name": "x", "from": "2027-08-02", "to": "2027-08-01" }),
    );
    check("band.first.metal", json!("unobtainium"));
    check("order_size.first", json!({ "size": { "system": "uk", "quarters": 51 } }));
    check("recorded", json!({ "agrees": "yes", "asked": "2026-10-03" }));
    check("finger.first", json!({ "hand": "left", "digit": "sixth" }));
}

#[test]
fn what_is_written_another_way_is_left_as_it_was() {
    // Ours, by hand: times without a leading nought, a key more than is needed.
    check_same_again(&changed(|row| {
        row["changes"][0]["sets"] = json!([
            { "field": "practice.cut_off", "value": "9:05" },
            { "field": "finger.first", "value": { "hand": "left", "digit": "ring", "note": "swollen" } },
        ]);
    }));
}
