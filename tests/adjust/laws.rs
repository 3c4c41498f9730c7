//! What holds of every adjustment.

use crate::rooms::{Dice, Room, inches, room};
use duckboard::engine::geometry::Turn;
use duckboard::engine::survey::adjust::{House, Measured, Network, Observation, Unfixed, adjust};
use duckboard::engine::units::{Angle, Length};
use proptest::prelude::*;

fn near(a: Length, b: Length) -> bool {
    (a - b).abs() < Length::nm(2_000)
}

/// A room's distances and turns without any noise.
fn exact(room: &Room) -> Network {
    let count = room.turns.len();
    let pairs = (0..count).map(|side| (side, (side + 1) % count)).chain((2..count - 1).map(|to| (0, to)));
    let distance = |(from, to)| Observation::Distance {
        from,
        to,
        is: inches(room.distance(from, to)),
        sigma: Length::sixty_fourths(4),
    };
    Network { turns: room.quarters(), observations: pairs.map(distance).collect(), house: House::Unsaid }
}

/// The same with every corner measured to be square.
fn squared(mut network: Network) -> Network {
    for observation in &mut network.observations {
        if let Observation::Built { at, is } = *observation {
            *observation = Observation::Angle { at, is, sigma: Angle::micro_degrees(200_000) };
        }
    }
    network
}

fn any_room() -> impl Strategy<Value = (Room, u64)> {
    any::<u64>().prop_map(|seed| (room(&mut Dice::new(seed)), seed))
}

impl std::fmt::Debug for Room {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:?}", self.corners)
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn exact_measurements_give_the_room_back((room, _) in any_room()) {
        let adjusted = adjust(&exact(&room)).unwrap();
        for from in 0..room.turns.len() {
            for to in 0..from {
                let apart = (adjusted.corners[from] - adjusted.corners[to]).length();
                prop_assert!(near(apart, inches(room.distance(from, to))), "{from} {to}");
            }
        }
        prop_assert!(adjusted.verdict.is_none());
    }

    #[test]
    fn the_order_of_measuring_is_nothing_to_the_outline((room, seed) in any_room(), by in 0..9_usize) {
        let network = room.measured(2, &mut Dice::new(seed));
        let mut turned = network.clone();
        let count = turned.observations.len();
        turned.observations.rotate_left(by % count);
        let (one, other) = (adjust(&network).unwrap(), adjust(&turned).unwrap());
        prop_assert!(one.corners.iter().zip(&other.corners).all(|(a, b)| near((*a - *b).length(), Length::ZERO)));
    }

    #[test]
    fn how_sure_all_readings_are_together_moves_no_corner((room, seed) in any_room(), times in 2..9_i64) {
        let network = squared(room.measured(2, &mut Dice::new(seed)));
        let mut surer = network.clone();
        for observation in &mut surer.observations {
            match observation {
                Observation::Angle { sigma, .. } => *sigma = Angle::from_radians(sigma.to_radians() * times as f64),
                Observation::Distance { sigma, .. } => *sigma = *sigma * times,
                Observation::Built { .. } | Observation::Offset { .. } | Observation::Along { .. } => {}
            }
        }
        let (one, other) = (adjust(&network).unwrap(), adjust(&surer).unwrap());
        prop_assert!(one.corners.iter().zip(&other.corners).all(|(a, b)| near((*a - *b).length(), Length::ZERO)));
    }

    #[test]
    fn the_same_reading_twice_is_one_that_is_surer((room, seed) in any_room()) {
        let network = squared(room.measured(2, &mut Dice::new(seed)));
        let Observation::Distance { from, to, is, .. } = network.observations[0] else { return Ok(()) };
        let (mut twice, mut once) = (network.clone(), network);
        let sigma = Length::nm(4_000_000);
        twice.observations[0] = Observation::Distance { from, to, is, sigma };
        twice.observations.push(twice.observations[0]);
        let surer = Length::nm((4_000_000.0 / 2.0_f64.sqrt()) as i64);
        once.observations[0] = Observation::Distance { from, to, is, sigma: surer };
        let (one, other) = (adjust(&twice).unwrap(), adjust(&once).unwrap());
        prop_assert!(one.corners.iter().zip(&other.corners).all(|(a, b)| near((*a - *b).length(), Length::ZERO)));
    }

    #[test]
    fn whatever_is_measured_there_is_an_answer(
        turns in prop::collection::vec(any::<bool>(), 0..8),
        readings in prop::collection::vec((0..6_u8, 0..9_usize, 0..9_usize, 0..9_usize, any::<i32>(), -2..5_i32), 0..14),
    ) {
        let turns = turns.into_iter().map(|right| if right { Turn::Right } else { Turn::Left }.quarter()).collect();
        let observations = readings.into_iter().map(|(kind, of, from, to, is, sigma)| {
            let (angle, is, wide, sigma) =
                (Angle::micro_degrees(i64::from(is)), Length::sixty_fourths(is), Angle::degrees(sigma), Length::inches(sigma));
            match kind {
                0 | 1 => Observation::Distance { from, to, is, sigma },
                2 => Observation::Angle { at: of, is: angle, sigma: wide },
                5 => Observation::Built { at: of, is: angle },
                3 => Observation::Offset { of, from, to, is, sigma },
                _ => Observation::Along { of, from, to, is, sigma },
            }
        });
        match adjust(&Network { turns, observations: observations.collect(), house: House::Unsaid }) {
            Ok(adjusted) => prop_assert!(adjusted.checked.iter().all(|check| (0.0..=1.0).contains(&check.redundancy))),
            Err(why) => prop_assert!(!why.to_string().is_empty()),
        }
    }
}

#[test]
fn a_loose_corner_says_what_would_fix_it_and_that_does() {
    let room = room(&mut Dice::new(3));
    let mut network = exact(&room);
    network.observations.truncate(room.turns.len());
    let Err(Unfixed::Loose { would_fix, .. }) = adjust(&network) else { panic!("sides alone fix nothing") };
    if room.turns.len() == 4 {
        let Measured::Diagonal(from, to) = would_fix[0] else { panic!("{would_fix:?}") };
        let is = inches(room.distance(from, to));
        network.observations.push(Observation::Distance { from, to, is, sigma: Length::INCH });
        assert!(adjust(&network).is_ok());
    }
}

#[test]
fn a_square_given_up_is_measured_instead() {
    // A parallelogram: its angles come out of the diagonal.
    let corners = vec![(0.0, 0.0), (100.0, 0.0), (110.0, 60.0), (10.0, 60.0)];
    let room = Room { turns: vec![Turn::Right; 4], corners };
    let adjusted = adjust(&exact(&room)).unwrap();
    let expected = libm::atan2(60.0_f64, 10.0).to_degrees() - 90.0;
    let (off, sigma) = adjusted.out_of_square[0];
    assert!((off.to_degrees() - expected).abs() < 1e-3, "{}", off.to_degrees());
    assert!(sigma > Angle::default());
    assert!((adjusted.area.0.to_square_feet() - 6000.0 / 144.0).abs() < 1e-4);
}
