//! The queue against every sequence of pushes, attempts and failures.

use super::super::faulty::{Fault, Faulty};
use super::super::{JobKey, Line, Memory, NoteKey, NoteScope};
use super::*;
use pollster::block_on;
use proptest::prelude::*;

fn batch(number: usize) -> Batch {
    let line = Line::new(format!("{number:04}"), number.to_string());
    Batch::entries(&JobKey::from_bits(1), [line]).with_note(NoteKey::phone("last"), Some(number.to_string()))
}

fn queue_of(count: usize) -> SaveQueue {
    let mut queue = SaveQueue::new();
    (0..count).for_each(|number| queue.push(batch(number)));
    queue
}

#[test]
fn an_empty_queue_is_saved_and_has_nothing_to_send() {
    let mut queue = SaveQueue::new();
    assert_eq!(queue.state(), SaveState::Saved);
    assert!(queue.start().is_none());
}

#[test]
fn a_batch_counts_as_unsaved_until_the_store_says_that_it_is_safe() {
    let mut queue = queue_of(2);
    assert_eq!(queue.state(), SaveState::Saving(2));
    let sending = queue.start().unwrap();
    assert_eq!(queue.state(), SaveState::Saving(2));
    queue.settle(sending, Ok(()));
    assert_eq!(queue.state(), SaveState::Saving(1));
}

#[test]
fn a_failure_stays_on_the_screen_until_an_attempt_succeeds() {
    let mut queue = queue_of(1);
    let failed = |unsaved| SaveState::Failed { why: StoreError::QuotaExceeded, unsaved };
    let sending = queue.start().unwrap();
    queue.settle(sending, Err(StoreError::QuotaExceeded));
    assert_eq!(queue.state(), failed(1));
    queue.push(batch(1));
    assert_eq!(queue.state(), failed(2));
    let again = queue.start().unwrap();
    assert_eq!(again.batch(), &batch(0));
    assert_eq!(queue.state(), failed(2));
    queue.settle(again, Ok(()));
    assert_eq!(queue.state(), SaveState::Saving(1));
}

#[test]
fn the_word_of_another_queue_changes_nothing() {
    let (mut queue, mut other) = (queue_of(1), queue_of(1));
    let _sending = queue.start().unwrap();
    queue.settle(other.start().unwrap(), Ok(()));
    assert_eq!(queue.state(), SaveState::Saving(1));
    assert!(queue.start().is_none());
}

#[derive(Debug, Clone)]
enum Step {
    Push,
    Start,
    Succeed,
    Fail,
}

fn any_steps() -> impl Strategy<Value = Vec<Step>> {
    let step = prop_oneof![Just(Step::Push), Just(Step::Start), Just(Step::Succeed), Just(Step::Fail)];
    prop::collection::vec(step, 0..60)
}

fn any_fault() -> impl Strategy<Value = Option<Fault>> {
    prop_oneof![Just(None), Just(Some(Fault::full())), Just(Some(Fault::lost())), Just(Some(Fault::Unheard))]
}

proptest! {
    /// After any steps the queue holds exactly what was pushed and not yet saved, in
    /// the order of the pushes; one at most is under way; and the state is the truth.
    #[test]
    fn nothing_is_dropped_reordered_or_sent_twice_at_once(steps in any_steps()) {
        let mut queue = SaveQueue::new();
        let (mut pushed, mut saved, mut failed) = (0, 0, false);
        let mut under_way = None;
        for step in steps {
            match step {
                Step::Push => {
                    queue.push(batch(pushed));
                    pushed += 1;
                }
                Step::Start => match queue.start() {
                    Some(sending) => {
                        prop_assert!(under_way.is_none(), "two at once");
                        prop_assert_eq!(sending.batch(), &batch(saved));
                        under_way = Some(sending);
                    }
                    None => prop_assert!(under_way.is_some() || saved == pushed, "it stands still"),
                },
                Step::Succeed => if let Some(sending) = under_way.take() {
                    queue.settle(sending, Ok(()));
                    saved += 1;
                    failed = false;
                },
                Step::Fail => if let Some(sending) = under_way.take() {
                    queue.settle(sending, Err(StoreError::QuotaExceeded));
                    failed = true;
                },
            }
            let unsaved: Vec<_> = queue.unsaved().cloned().collect();
            prop_assert_eq!(unsaved, (saved..pushed).map(batch).collect::<Vec<_>>());
            let state = match (failed, pushed - saved) {
                (true, unsaved) => SaveState::Failed { why: StoreError::QuotaExceeded, unsaved },
                (false, 0) => SaveState::Saved,
                (false, unsaved) => SaveState::Saving(unsaved),
            };
            prop_assert_eq!(queue.state(), state);
        }
    }

    /// Whatever fails on the way, even a commit that arrived without a word: once the
    /// store works again, everything is in it, once, and the last note is the last.
    #[test]
    fn everything_arrives_in_the_end(
        count in 1..12_usize,
        faults in prop::collection::vec(any_fault(), 0..20),
    ) {
        let attempts = faults.len() + 1;
        let memory = Memory::default();
        let store = Faulty::new(memory.clone(), faults);
        let queue = RefCell::new(queue_of(count));
        let mut told = SaveState::Saving(count);
        for _ in 0..attempts {
            block_on(drain(&queue, &store, |state| told = state));
            prop_assert_eq!(&told, &queue.borrow().state());
        }
        prop_assert_eq!(told, SaveState::Saved);
        let sent = (0..count).flat_map(|number| batch(number).lines);
        let wanted: Vec<_> = sent.map(|(_, line)| line).collect();
        prop_assert_eq!(block_on(memory.lines(&JobKey::from_bits(1))).unwrap(), wanted);
        let notes = block_on(memory.notes(&NoteScope::Phone)).unwrap();
        prop_assert_eq!(notes, vec![(NoteKey::phone("last"), (count - 1).to_string())]);
    }

    /// At every moment, what the queue does not count as unsaved is in the store.
    #[test]
    fn what_counts_as_saved_is_in_the_store(
        count in 1..12_usize,
        faults in prop::collection::vec(any_fault(), 0..20),
    ) {
        let memory = Memory::default();
        let store = Faulty::new(memory.clone(), faults.clone());
        let queue = RefCell::new(queue_of(count));
        for _ in 0..=faults.len() {
            block_on(drain(&queue, &store, |_| {
                let kept = block_on(memory.lines(&JobKey::from_bits(1))).unwrap();
                let saved = count - queue.borrow().unsaved().count();
                assert!(kept.len() >= saved, "{saved} shown as saved, {} kept", kept.len());
                assert!(kept.iter().take(saved).map(|line| line.json.clone()).eq((0..saved).map(|n| n.to_string())));
            }));
        }
    }
}

/// A tap while another save is under way: the running drain takes it along, and a
/// second drain must neither wait nor send.
#[test]
fn a_second_drain_leaves_the_work_to_the_first() {
    let queue = RefCell::new(queue_of(2));
    let sending = queue.borrow_mut().start().unwrap();
    let store = Memory::default();
    block_on(drain(&queue, &store, |state| panic!("told {state:?}")));
    assert_eq!(block_on(store.jobs()), Ok(vec![]));
    queue.borrow_mut().settle(sending, Ok(()));
    block_on(drain(&queue, &store, |_| {}));
    assert_eq!(queue.borrow().state(), SaveState::Saved);
}
