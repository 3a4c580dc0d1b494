//! Work on a list that all processors share.

use std::sync::atomic::{AtomicUsize, Ordering};

/// What `work` makes of each item, in their order. Each worker has one of the `states` for its own and takes the next item when it has done one.
pub(crate) fn in_order<T: Sync, S: Send, R: Send>(
    items: &[T],
    states: &mut [S],
    work: impl Fn(&mut S, &T) -> R + Sync,
) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let take = |state: &mut S| {
        let mut own = Vec::new();
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some(item) = items.get(i) else { return own };
            own.push((i, work(state, item)));
        }
    };
    let mut all: Vec<(usize, R)> = std::thread::scope(|scope| {
        let workers: Vec<_> = states.iter_mut().map(|state| scope.spawn(|| take(state))).collect();
        workers.into_iter().flat_map(|w| w.join().unwrap_or_default()).collect()
    });
    all.sort_by_key(|(i, _)| *i);
    all.into_iter().map(|(_, result)| result).collect()
}

/// A state for each processor.
pub(crate) fn states<S: Default>() -> Vec<S> {
    let count = std::thread::available_parallelism().map_or(1, usize::from);
    (0..count).map(|_| S::default()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_stand_in_the_order_of_the_items() {
        let items: Vec<u32> = (0..1000).collect();
        let mut done = vec![0; 3];
        let doubled = in_order(&items, &mut done, |own: &mut usize, n| {
            *own += 1;
            2 * n
        });
        assert_eq!(doubled, items.iter().map(|n| 2 * n).collect::<Vec<_>>());
        assert_eq!(done.iter().sum::<usize>(), items.len());
    }
}
