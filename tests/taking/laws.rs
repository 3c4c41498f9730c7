//! Laws of taking, whatever is typed into whatever draft.

use super::visits::second_visit;
use super::*;
use duckboard::engine::entry::DeviceId;
use duckboard::engine::job::Act;
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::sample;
use duckboard::engine::take::Whereabouts;
use proptest::prelude::*;

fn any_spot() -> impl Strategy<Value = Place> {
    let position = prop_oneof![
        (1_u16..=999, prop::option::of(0_i32..500)).prop_map(|(joist, along)| Position::OnJoist {
            joist: JoistNumber::new(joist).unwrap(),
            along: along.map(|inches| length(&format!("{inches} in"))),
        }),
        (-200_i32..500, -200_i32..500).prop_map(|(right, down)| Position::OnPlan {
            right: length(&format!("{right} in")),
            down: length(&format!("{down} in")),
        }),
        Just(Position::Named),
    ];
    let element = proptest::sample::select(Element::ALL.to_vec());
    let face = prop::option::of(proptest::sample::select(Face::ALL.to_vec()));
    (element, position, face).prop_map(|(element, position, face)| Place {
        element,
        position,
        face,
        height: None,
        chalk: None,
    })
}

/// What fingers, a paste or a damaged store may leave in the field.
fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => proptest::sample::select(vec!["18", "5' 3\"", "16", "9", "62", "0", "14 1/8", "3.5 m", "-4", "999999"])
            .prop_map(str::to_owned),
        2 => "[0-9 /'\".,-]{0,12}",
        1 => ".{0,40}",
    ]
}

const WHEREABOUTS: [Whereabouts; 4] = [Whereabouts::Along, Whereabouts::Right, Whereabouts::Down, Whereabouts::Height];

fn any_draft() -> impl Strategy<Value = Draft> {
    let instrument = proptest::sample::select(Instrument::ALL.to_vec());
    let task = (proptest::sample::select(TapeTask::ALL.to_vec()), proptest::sample::select(AirTask::ALL.to_vec()));
    let held = prop::collection::vec(any_text(), 0..6);
    let room = (any::<bool>(), 0_usize..9, any::<i16>());
    // Mostly none: it comes before everything else.
    let locating = prop::option::weighted(0.2, proptest::sample::select(WHEREABOUTS.to_vec()));
    (instrument, task, any_text(), held, (any_spot(), locating), room).prop_map(
        |(instrument, (tape, air), text, held, (spot, locating), (left, corner, travel))| Draft {
            locating,
            instrument,
            tape,
            air,
            text,
            held,
            spot,
            corner,
            line_from: (corner + 2) % 4,
            joist: JoistNumber::FIRST.step(travel),
            travel,
            turn: if left { Turn::Left } else { Turn::Right },
            run: if left { Run::AlongFirstSide } else { Run::AcrossFirstSide },
            ..Draft::default()
        },
    )
}

fn any_desk() -> impl Strategy<Value = Desk> {
    (0_usize..3).prop_map(|which| match which {
        0 => Desk::new(),
        1 => ell(),
        _ => {
            let records = sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap());
            Desk::of(Book::of(records))
        }
    })
}

/// Everything that an observation hangs on.
fn hangs_on(seen: &Observation) -> Vec<EntryId> {
    match seen {
        Observation::Side(side) => [Some(side.room), side.after].into_iter().flatten().collect(),
        Observation::Opening(opening) => vec![opening.from],
        Observation::Offset(offset) => vec![offset.of, offset.from, offset.to],
        Observation::CutBack(cut_back) => vec![cut_back.opening],
        Observation::Joists(joists) => vec![joists.room],
        Observation::JoistCenter(center) => vec![center.of],
        Observation::Level(level) => vec![level.place],
        Observation::Reading(reading) => vec![reading.place],
        Observation::SurfaceReading(surface) => surface.place.into_iter().collect(),
        Observation::Condition(condition) => condition.place.into_iter().collect(),
        _ => Vec::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn whatever_is_typed_into_whatever_draft_is_taken_whole_or_refused(
        mut desk in any_desk(), draft in any_draft(),
    ) {
        let text = draft.text.clone();
        let _ = Question::of(&draft, desk.job(), desk.units);
        desk.draft = draft.clone();
        match take::save(&draft, desk.book.job(), &mut desk.pen, desk.units, None) {
            Err(refused) => prop_assert!(refused.message.contains(": "), "{}", refused.message),
            Ok(saved) => {
                let held = saved.next.held.len() > draft.held.len();
                let says_where = draft.asked_where().is_some();
                prop_assert!(
                    saved.entries.is_empty() == (held || says_where),
                    "{text:?} is logged, held, or says where; never dropped"
                );
                if let Some(what) = draft.asked_where().filter(|_| !text.trim().is_empty()) {
                    prop_assert_eq!(what.read(&saved.next.spot), Some(&length(&text)));
                }
                prop_assert!(saved.next.text.is_empty());
                let entries = saved.entries.clone();
                // Adds each entry as new, and asserts that none is a fault.
                desk.takes(saved);
                for entry in entries {
                    let Act::Record(seen) = entry.act else { panic!("{entry:?} records nothing") };
                    for id in hangs_on(&seen) {
                        prop_assert!(id < entry.id && desk.job().now.get(id).is_some(), "{seen:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn any_row_of_values_leaves_a_job_without_faults(texts in prop::collection::vec(any_text(), 0..20)) {
        let mut desk = Desk::new();
        for text in texts {
            let before = desk.draft.clone();
            if desk.types(&text).is_err() {
                prop_assert_eq!(&desk.draft, &Draft { text, ..before });
            }
        }
        prop_assert!(desk.job().faults.is_empty() && desk.job().conflicts.is_empty());
    }

    #[test]
    fn a_draft_is_its_json(draft in any_draft()) {
        let json = serde_json::to_string(&draft).unwrap();
        prop_assert_eq!(serde_json::from_str::<Draft>(&json).unwrap(), draft);
    }

    #[test]
    fn a_second_visit_reads_every_place_once_whatever_it_begins_with(
        joists in prop::collection::btree_set(1_u16..60, 1..8).prop_map(|set| set.into_iter().collect::<Vec<_>>()).prop_shuffle(),
        first in any::<prop::sample::Index>(),
    ) {
        let mut desk = second_visit(&joists);
        desk.draft.spot = spot(*first.get(&joists), "5'");
        let mut read = Vec::new();
        for _ in &joists {
            read.push(joist_of(&desk.draft.spot));
            desk.types("15").unwrap();
        }
        read.sort_unstable();
        let mut all = joists.clone();
        all.sort_unstable();
        prop_assert_eq!(read, all);
    }
}
