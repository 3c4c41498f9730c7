//! Things in order, by one sort for every type. The standard sort is compiled anew for each
//! type that it sorts; that was a fifteenth of what a phone loads first.

use litemap::LiteMap;
use serde::Serialize;
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

/// Things in order, each once, in one stretch of memory: a tree of them takes more code than
/// all that is asked of it here.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Set<T>(Vec<T>);

impl<T> Default for Set<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T: Ord> Set<T> {
    /// Just this.
    pub fn of(item: T) -> Self {
        Self(vec![item])
    }

    /// Puts it in. False if it was there.
    pub fn insert(&mut self, item: T) -> bool {
        let place = self.0.binary_search(&item);
        if let Err(place) = place {
            self.0.insert(place, item);
        }
        place.is_err()
    }

    /// Takes it out. False if it was not there.
    pub fn remove(&mut self, item: &T) -> bool {
        let place = self.0.binary_search(item);
        if let Ok(place) = place {
            self.0.remove(place);
        }
        place.is_ok()
    }

    /// Is it there?
    pub fn contains(&self, item: &T) -> bool {
        self.0.binary_search(item).is_ok()
    }

    /// Is there nothing in it?
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All of them, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, T> {
        self.0.iter()
    }
}

impl<T: Ord> Extend<T> for Set<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, items: I) {
        for item in items {
            self.insert(item);
        }
    }
}

impl<T> IntoIterator for Set<T> {
    type Item = T;
    type IntoIter = std::vec::IntoIter<T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, T> IntoIterator for &'a Set<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
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
        fn a_set_is_what_a_tree_of_its_things_is(steps: Vec<(bool, u8)>) {
            let (mut ours, mut tree) = (Set::default(), BTreeSet::new());
            for (puts_in, item) in steps {
                if puts_in {
                    prop_assert_eq!(ours.insert(item), tree.insert(item));
                } else {
                    prop_assert_eq!(ours.remove(&item), tree.remove(&item));
                }
                prop_assert_eq!(ours.contains(&item), tree.contains(&item));
                prop_assert!(ours.iter().eq(tree.iter()));
            }
        }

        #[test]
        fn one_by_one_comes_to_what_collecting_does(pairs: Vec<(u8, u32)>) {
            prop_assert_eq!(once(pairs.clone()), Vec::from_iter(pairs.iter().copied().collect::<BTreeSet<_>>()));
            prop_assert_eq!(map(pairs.clone()), pairs.into_iter().collect::<LiteMap<_, _>>());
        }
    }
}
