//! Sorting and gathering without a copy of the machine code for every type; here because every room stands on
//! this one. The standard library's stable sort is compiled anew for each type, about 5 KB of the page each time,
//! and so it is where a map is collected, since that sorts first. Our lists are short.

use std::cmp::Ordering;

/// Sorts by a comparison; what is equal keeps its order.
pub fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let order = in_order(items.len(), &|a, b| compare(&items[a], &items[b]));
    bring(&order, &mut |a, b| items.swap(a, b));
}

/// Sorts by a key; what has the same keeps its order.
pub fn sort_by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(items, |a, b| key(a).cmp(&key(b)));
}

/// A map or a set of all items; of two with one key the later one counts.
pub fn gather<C: Default + Extend<T>, T>(items: impl IntoIterator<Item = T>) -> C {
    let mut all = C::default();
    // One after the other: `collect` would sort them all.
    all.extend(items);
    all
}

/// Which item stands at each place.
fn in_order(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order = Vec::with_capacity(count);
    for item in 0..count {
        let place = order.partition_point(|&before| compare(before, item).is_le());
        order.insert(place, item);
    }
    order
}

/// Brings each item to its place by exchanging two at a time.
fn bring(order: &[usize], swap: &mut dyn FnMut(usize, usize)) {
    for place in 0..order.len() {
        let mut from = order[place];
        // What stood at an earlier place went to where the item of that place came from.
        while from < place {
            from = order[from];
        }
        swap(place, from);
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(keys in prop::collection::vec(0u8..20, 0..80)) {
            let mut ours: Vec<(u8, usize)> = keys.iter().copied().zip(0..).collect();
            let mut theirs = ours.clone();
            sort_by_key(&mut ours, |item| item.0);
            theirs.sort_by_key(|item| item.0);
            prop_assert_eq!(ours, theirs);
        }

        #[test]
        fn a_map_holds_the_same_as_when_it_is_collected(items in prop::collection::vec((0u8..20, 0u8..9), 0..80)) {
            let ours: BTreeMap<u8, u8> = gather(items.clone());
            prop_assert_eq!(ours, items.into_iter().collect::<BTreeMap<u8, u8>>());
        }
    }
}
