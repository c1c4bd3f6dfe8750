//! Rows put into order, by one routine for all kinds of rows.
//!
//! The standard library makes its sort anew for every type and every comparison: 5 kB of the program each. Here the places of the rows
//! are sorted, always by the same code, and the rows then moved. Equal rows keep their order. What is sorted in a search's inner loop
//! stays with the standard library's sort, and so do plain numbers, which are few kinds.

use std::cmp::Ordering;
use std::collections::BTreeMap;

/// Puts rows into the order of a comparison, which must be a total one. Equal rows keep their order.
pub fn by<T>(rows: &mut Vec<T>, compare: impl Fn(&T, &T) -> Ordering) {
    let order = places(rows.len(), &|one, other| match (rows.get(one), rows.get(other)) {
        (Some(one), Some(other)) => compare(one, other),
        _ => Ordering::Equal,
    });
    arrange(rows, &order);
}

/// Puts rows into the order of a key, worked out once a row. Rows of equal keys keep their order.
pub fn by_key<T, K: Ord>(rows: &mut Vec<T>, key: impl FnMut(&T) -> K) {
    let keys: Vec<K> = rows.iter().map(key).collect();
    let order = places(rows.len(), &|one, other| keys.get(one).cmp(&keys.get(other)));
    arrange(rows, &order);
}

/// The places 0 to `count` − 1 in the order of the rows that stand there.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|one, other| compare(*one, *other));
    places
}

fn arrange<T>(rows: &mut Vec<T>, order: &[usize]) {
    let mut waiting: Vec<Option<T>> = rows.drain(..).map(Some).collect();
    rows.extend(order.iter().filter_map(|place| waiting.get_mut(*place)?.take()));
}

/// Values by their key, the last one where a key comes twice. Taken in one by one: collected, they would be sorted first.
pub fn index<K: Ord, V>(pairs: impl IntoIterator<Item = (K, V)>) -> BTreeMap<K, V> {
    let mut index = BTreeMap::new();
    index.extend(pairs);
    index
}
