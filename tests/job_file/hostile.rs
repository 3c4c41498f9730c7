//! Files that were damaged, or made to do damage.

use crate::job_samples::*;
use crate::{faults, file_of, reread, with_field};
use duckboard::file::{merge, read, salvage};
use proptest::prelude::*;

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
        let bytes = damaged(text(&first_file()).into_bytes(), &damage);
        match salvage(&bytes) {
            Ok(salvaged) => prop_assert_eq!(text(&reread(&salvaged.file)), text(&salvaged.file)),
            Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
        }
    }

    #[test]
    fn random_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(read(&bytes).is_err());
    }

    #[test]
    fn any_json_is_refused_or_read_but_never_panics(json in ".{0,60}") {
        let fields = format!(r#"{{"format":"duckboard-job","version":"1.1","entries":[{json}],"photos":[{json}]}}"#);
        let _ = salvage(fields.as_bytes());
    }
}

#[test]
fn nesting_costs_no_stack() {
    let deep = "[".repeat(30_000) + &"]".repeat(30_000);
    let field = format!("\"deep\": {deep}");
    let file = read(with_field(&file_of("1.0", &[]), &field).as_bytes()).unwrap();
    assert_eq!(text(&merge(file.clone(), file.clone()).unwrap()), text(&file));
    assert!(faults(&file_of("1.0", &[&deep]))[0].starts_with("entries[0]"));
}
