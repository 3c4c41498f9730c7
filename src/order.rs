//! Things in order, by one sort for every type. The standard sort is compiled anew for each
//! type that it sorts; that was a fifteenth of what a phone loads first.

use litemap::LiteMap;
use std::cmp::Ordering;

/// Sorts; what compares equal stays in its order.
pub fn sort_by<T>(items: &mut Vec<T>, compare: impl Fn(&T, &T) -> Ordering) {
    let pair = |one: usize, other: usize| items.get(one).zip(items.get(other));
    let order = places(items.len(), &|one, other| pair(one, other).map_or(Ordering::Equal, |(a, b)| compare(a, b)));
    let mut from: Vec<Option<T>> = std::mem::take(items).into_iter().map(Some).collect();
    items.extend(order.into_iter().filter_map(|place| from.get_mut(place).and_then(Option::take)));
}

/// Sorts; what compares equal stays in its order.
pub fn sort<T: Ord>(items: &mut Vec<T>) {
    sort_by(items, T::cmp);
}

/// The places of so many things in the order that they belong in.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|one, other| compare(*one, *other));
    places
}

/// In order, each once: to be looked up by halves.
pub fn once<T: Ord>(items: impl IntoIterator<Item = T>) -> Vec<T> {
    let mut all: Vec<T> = items.into_iter().collect();
    sort(&mut all);
    all.dedup();
    all
}

/// A map, filled one by one: collecting would sort first. Of pairs with one key the last stays.
pub fn map<K: Ord, V>(pairs: impl IntoIterator<Item = (K, V)>) -> LiteMap<K, V> {
    let mut map = LiteMap::new();
    for (key, value) in pairs {
        map.insert(key, value);
    }
    map
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeSet;

    proptest! {
        #[test]
        fn it_is_the_standard_stable_sort(items: Vec<(u8, u32)>) {
            let (mut ours, mut standard) = (items.clone(), items);
            sort_by(&mut ours, |a, b| a.0.cmp(&b.0));
            standard.sort_by_key(|pair| pair.0);
            prop_assert_eq!(&ours, &standard);
            sort(&mut ours);
            standard.sort();
            prop_assert_eq!(ours, standard);
        }

        #[test]
        fn one_by_one_comes_to_what_collecting_does(pairs: Vec<(u8, u32)>) {
            prop_assert_eq!(once(pairs.clone()), Vec::from_iter(pairs.iter().copied().collect::<BTreeSet<_>>()));
            prop_assert_eq!(map(pairs.clone()), pairs.into_iter().collect::<LiteMap<_, _>>());
        }
    }
}
