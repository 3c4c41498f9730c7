//! Files that were damaged, or made to do damage.

use crate::job_samples::*;
use crate::{faults, file_of, with_field};
use duckboard::engine::job::Record;
use duckboard::file::{JobFile, Salvage, Snapshot, merge, read, salvage, write};
use proptest::prelude::*;
use serde_json::Value;
use std::sync::LazyLock;

/// What could be done to a file on its way.
#[derive(Debug, Clone)]
enum Damage {
    Set(prop::sample::Index, u8),
    Cut(prop::sample::Index),
    Remove(prop::sample::Index, usize),
    Insert(prop::sample::Index, String),
}

fn damage() -> impl Strategy<Value = Damage> {
    let piece = prop_oneof![
        Just("\"".to_owned()),
        Just("{".to_owned()),
        Just("]".to_owned()),
        Just("\\u0000".to_owned()),
        Just("\\ud800".to_owned()),
        Just("null".to_owned()),
        Just("-1e999".to_owned()),
        Just("[[[[".to_owned()),
        ".{0,8}",
    ];
    prop_oneof![
        (any::<prop::sample::Index>(), any::<u8>()).prop_map(|(at, byte)| Damage::Set(at, byte)),
        any::<prop::sample::Index>().prop_map(Damage::Cut),
        (any::<prop::sample::Index>(), 1_usize..200).prop_map(|(at, most)| Damage::Remove(at, most)),
        (any::<prop::sample::Index>(), piece).prop_map(|(at, piece)| Damage::Insert(at, piece)),
    ]
}

fn damaged(mut bytes: Vec<u8>, damage: &[Damage]) -> Vec<u8> {
    for damage in damage {
        if bytes.is_empty() {
            break;
        }
        match damage {
            Damage::Set(at, byte) => *at.get_mut(&mut bytes) = *byte,
            Damage::Cut(at) => bytes.truncate(at.index(bytes.len())),
            Damage::Remove(at, most) => {
                let from = at.index(bytes.len());
                bytes.drain(from..bytes.len().min(from + most));
            }
            Damage::Insert(at, piece) => {
                let from = at.index(bytes.len());
                bytes.splice(from..from, piece.bytes());
            }
        }
    }
    bytes
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn a_damaged_file_is_read_rightly_or_refused_but_never_panics(
        damage in prop::collection::vec(damage(), 1..4)
    ) {
        static SOUND: LazyLock<String> = LazyLock::new(|| text(&first_file()));
        let bytes = damaged(SOUND.clone().into_bytes(), &damage);
        match salvage(&bytes) {
            Ok(salvaged) => prop_assert!(comes_back(&salvaged.file)),
            Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
        }
    }

    #[test]
    fn random_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(read(&bytes).is_err());
    }

    #[test]
    fn any_json_in_an_entry_is_kept_to_the_byte_or_named_and_costs_no_other(
        at in any::<prop::sample::Index>(), part in any::<prop::sample::Index>(), json in json(), version in version()
    ) {
        static SOUND: LazyLock<JobFile> = LazyLock::new(first_file);
        let sound: Vec<&str> = SOUND.records.iter().map(Record::json).collect();
        let strange = with_one_part_exchanged(at.get::<&str>(&sound[2..]), part, json);
        let file = file_of(version, &[sound[0], &strange, sound[1]]);
        let Salvage { file, faults } = salvage(file.as_bytes()).unwrap();

        let kept: Vec<&str> = file.records.iter().map(Record::json).collect();
        prop_assert!(kept.contains(&sound[0]) && kept.contains(&sound[1]));
        prop_assert_eq!(kept.contains(&strange.as_str()), faults.is_empty(), "{}", strange);
        prop_assert!(faults.iter().all(|fault| fault.to_string().starts_with("entries[1]")));
        prop_assert!(comes_back(&file));
    }

    #[test]
    fn any_json_for_a_photo_is_named(json in json()) {
        let json = json.to_string();
        let file = with_field(&file_of("1.0", &[]), &format!("\"photos\": [{json}, {json}]"));
        let Salvage { file, faults } = salvage(file.as_bytes()).unwrap();
        prop_assert!(file.photos.is_empty());
        for name in ["photos[0]", "photos[1]"] {
            prop_assert!(faults.iter().any(|fault| fault.to_string().starts_with(name)), "{} of {}: {:?}", name, json, faults);
        }
    }
}

/// Is it the same once it was written and read? Without figures, which are never read.
fn comes_back(file: &JobFile) -> bool {
    let text = |file| write::parts(file, &Snapshot::none()).collect::<String>();
    text(&read(text(file).as_bytes()).unwrap()) == text(file)
}

/// Any JSON value that is not deep.
fn json() -> impl Strategy<Value = Value> {
    let plain = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        prop::num::f64::NORMAL.prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
    ];
    plain.prop_recursive(3, 16, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
            prop::collection::vec((".{0,8}", inner), 0..4)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

/// This build's version, and one that may know more.
fn version() -> impl Strategy<Value = &'static str> {
    prop_oneof![Just("1.0"), Just("1.99")]
}

/// An entry with any one of its values, or all of it, exchanged for another.
fn with_one_part_exchanged(entry: &str, part: prop::sample::Index, json: Value) -> String {
    let mut entry: Value = serde_json::from_str(entry).unwrap();
    let mut places = Vec::new();
    add_places(&entry, String::new(), &mut places);
    *entry.pointer_mut(part.get::<String>(&places)).unwrap() = json;
    entry.to_string()
}

/// Where in the value there is a value, from the whole to the least.
fn add_places(value: &Value, place: String, places: &mut Vec<String>) {
    if let Value::Object(fields) = value {
        fields.iter().for_each(|(name, field)| add_places(field, format!("{place}/{name}"), places));
    }
    if let Value::Array(elements) = value {
        elements.iter().enumerate().for_each(|(at, element)| add_places(element, format!("{place}/{at}"), places));
    }
    places.push(place);
}

#[test]
fn nesting_costs_no_stack() {
    let deep = "[".repeat(30_000) + &"]".repeat(30_000);
    let field = format!("\"deep\": {deep}");
    let file = read(with_field(&file_of("1.0", &[]), &field).as_bytes()).unwrap();
    assert_eq!(text(&merge(file.clone(), file.clone()).unwrap()), text(&file));
    assert!(faults(&file_of("1.0", &[&deep]))[0].starts_with("entries[0]"));
}
