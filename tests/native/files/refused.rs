//! What is refused as a whole, and why; and of a partly damaged file the good rows.

use super::{couple, header, rows};
use bandwright::archive::file::{FileError, MOST_BYTES, open, write};
use bandwright::archive::row::RowError;
use bandwright::book::id::InstallationId;

fn whole() -> String {
    let all = [couple(1, InstallationId(1), 1, "fair"), couple(2, InstallationId(1), 2, "studio")];
    write(&header(), &all)
}

fn answer(bytes: impl Into<Vec<u8>>) -> Result<usize, FileError> {
    open(bytes.into()).and_then(|mut reader| rows(&mut reader)).map(|rows| rows.len())
}

#[test]
fn what_cannot_be_read_says_why() {
    let check = |bytes: &[u8], expected: FileError| {
        assert_eq!(answer(bytes), Err(expected), "{}", String::from_utf8_lossy(&bytes[..bytes.len().min(120)]));
    };
    let text = whole();
    assert_eq!(answer(text.as_str()), Ok(2));
    check(b"", FileError::Empty);
    check(b" \r\n\t", FileError::Empty);
    check("\u{feff}\n".as_bytes(), FileError::Empty);
    check(b"Hello, the couples are in the next message.", FileError::NotJson);
    check(b"Dear {name}, see you", FileError::NotJson);
    check(b"{\"schema\" \"1.1\"}", FileError::NotJson);
    check(b"{\"a\":1]", FileError::CutOff);
    check(b"{\"a\":[1}", FileError::NotJson);
    check(b"{'kind':'bandwright-book'}", FileError::NotJson);
    check(text.replace('"', "\u{201d}").as_bytes(), FileError::NotJson);
    check(b"{\"kind\":tru,\"schema\":\"1.1\"}", FileError::NotJson);
    // Two files in one message.
    check(format!("{text}{text}").as_bytes(), FileError::NotJson);
    check(text.replace("]}", "],\"records\":[]}").as_bytes(), FileError::NotJson);
    check(&text.as_bytes()[..text.len() - 4], FileError::CutOff);

    for bytes in [b"\xff\xfe", b"\xfe\xff"] {
        check(bytes, FileError::Utf16);
    }
    let units: Vec<u16> = text.encode_utf16().collect();
    check(&units.iter().flat_map(|unit| unit.to_le_bytes()).collect::<Vec<u8>>(), FileError::Utf16);
    check(&units.iter().flat_map(|unit| unit.to_be_bytes()).collect::<Vec<u8>>(), FileError::Utf16);
    check(b"PK\x03\x04\x14\x00\x08\x08", FileError::Zip);
    // An empty archive.
    check(b"PK\x05\x06\x00\x00\x00\x00", FileError::Zip);
    // The first bytes of a picture, and text in an old encoding.
    check(b"\xff\xd8\xff\xe0\x00\x10JFIF", FileError::NotText);
    check(b"\x89PNG\r\n\x1a\n\x00\x00", FileError::NotText);
    check(b"{\"name\":\"Zo\xeb\"}", FileError::NotText);
    check(b"{\"name\":\"\x00\"}", FileError::NotText);
    let mut bytes = vec![b' '; MOST_BYTES + 1];
    bytes[0] = b'{';
    check(&bytes, FileError::TooBig);

    for levels in [200, 100_000] {
        let deep = format!("{}1{}", "[".repeat(levels), "]".repeat(levels));
        check(text.replace("\"fair\"", &deep).as_bytes(), FileError::TooDeep);
        check(text.replacen('{', &format!("{{\"more\":{deep},"), 1).as_bytes(), FileError::TooDeep);
    }

    check(b"{}", FileError::NotOurs);
    check(b"[{\"name\":\"Ines\"},{\"name\":\"Callum\"}]", FileError::NotOurs);
    check(b"[{\"name\":\"Ines\"}]", FileError::NotOurs);
    check(b"{\"version\":3,\"records\":[{\"name\":\"Ines\"}],\"schema\":\"1.1\"}", FileError::NotOurs);
    check(text.replace("bandwright-book", "bandwright-list").as_bytes(), FileError::NotOurs);
    // A row of the phone's storage is no file.
    check(include_bytes!("../../reference/record-1.0.json"), FileError::NotOurs);

    let first = |from: &str, to: &str| text.replacen(from, to, 1);
    check(first("\"1.2\"", "\"2.0\"").as_bytes(), FileError::Newer(2));
    check(br#"{"kind":"bandwright-book","schema":"7.1"}"#, FileError::Newer(7));
    for schema in ["1.1.0", "0.9", "", "one"] {
        check(first("\"1.2\"", &format!("\"{schema}\"")).as_bytes(), FileError::Damaged);
    }
    for (from, to) in [
        ("\"schema\":\"1.2\",", ""),
        ("\"written\":", "\"writen\":"),
        ("\"by\":\"", "\"by\":\"x"),
        ("\"holds\":\"couples\"", "\"holds\":\"all\""),
        ("\"records\":[", "\"record\":["),
        ("\"holds\"", "\"practice\":7,\"holds\""),
    ] {
        assert!(text.contains(from), "{from}");
        check(first(from, to).as_bytes(), FileError::Damaged);
    }
    check(br#"{"kind":"bandwright-book","schema":"1.1","written":1,"by":"00000000000000000000000000000001","holds":"book","records":{}}"#, FileError::Damaged);
}

#[test]
fn a_newer_minor_is_read_and_written_back_unharmed() {
    let text =
        whole().replacen("\"1.2\"", "\"1.8\"", 1).replacen("\"holds\"", "\"from\":{\"van\":[1,2.5,null]},\"holds\"", 1);
    let mut reader = open(text.clone().into()).unwrap();
    let records: Vec<_> = rows(&mut reader).unwrap().into_iter().map(|row| row.read.unwrap()).collect();
    let again: serde_json::Value = serde_json::from_str(&write(reader.header(), &records)).unwrap();
    assert_eq!(again, serde_json::from_str::<serde_json::Value>(&text).unwrap());
    // After the records too, though only to be read.
    assert_eq!(answer(whole().replace("]}\n", "],\"more\":[{}]}")), Ok(2));
    assert_eq!(answer(whole().replace("]}\n", "],\"more\":[{]}")), Err(FileError::NotJson));
}

#[test]
fn of_a_partly_damaged_file_the_good_rows_are_there() {
    let good = couple(1, InstallationId(1), 1, "fair");
    let row = bandwright::archive::row::write(&good);
    let bad = [
        ("17", RowError::NotARecord),
        ("null", RowError::NotARecord),
        ("{\"name\":\"Ines\"}", RowError::NotARecord),
        ("{\"schema\":\"3.0\"}", RowError::Newer(3)),
        (&row.replace("\"n\":1", "\"n\":-1"), RowError::Damaged),
        (&row.replace("\"n\":1", "\"n\":9007199254740992"), RowError::Damaged),
        (&row.replace("\"met\"", "\"moon\""), RowError::Damaged),
        (&row.replace("\"n\":1", "\"n\":1,}"), RowError::NotJson),
        (&row.replace("fair", "\\q"), RowError::NotJson),
    ];
    for (text, why) in bad {
        let file = write(&header(), [&good]).replace("\n]}", &format!(",\n{text},\n{row}\n]}}"));
        let mut reader = open(file.clone().into()).unwrap();
        match rows(&mut reader) {
            Ok(rows) => {
                assert_eq!(rows.iter().map(|row| row.at).collect::<Vec<_>>(), [1, 2, 3]);
                assert_eq!(rows[1].read, Err(why), "{text}");
                assert_eq!((rows[0].read.as_ref(), rows[2].read.as_ref()), (Ok(&good), Ok(&good)));
            }
            // A bracket too many: nobody can say where the row ends.
            Err(error) => assert_eq!((error, why), (FileError::NotJson, RowError::NotJson), "{text}"),
        }
    }
}
