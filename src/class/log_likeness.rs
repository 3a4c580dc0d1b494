//! How alike two logs are, whoever's they are: a log handed on stands out though an idle action was put in, the clock shifted, or a line
//! changed here and there.
//!
//! A log is compared by what it did: without its clock, without actions that change nothing, and with what is overwritten before anything
//! looks at it left out. Of that the runs of four actions are taken; two logs are as alike as their runs are shared
//! (Jaccard's index, Broder 1997, On the resemblance and containment of documents: from memory). Angles are tenths of a degree and lengths tenths of
//! a millimetre, so that hands that did the same thing still differ in nearly every run.

use std::collections::BTreeMap;

/// From this share on two logs of different learners are reported as alike. Own choice: a copy with one action of every ten changed shares a little
/// less than half of its runs.
pub const ALIKE: f64 = 0.4;
/// A log of fewer actions is not compared: honest ones may well be alike.
const LONG_LOG: usize = 24;
/// Actions in a run.
const RUN: usize = 4;
/// Of a run that more logs have, the first so many are compared.
const COMMON: usize = 64;

/// A line without its clock.
fn action_of(line: &str) -> &str {
    line.split_once(' ').map_or(line, |(_, action)| action)
}

/// The actions that did something, as lines without their clock.
pub fn effective(log: &[String]) -> Vec<&str> {
    effective_lines(log).into_iter().map(action_of).collect()
}

/// The lines of the actions that did something.
fn effective_lines(log: &[String]) -> Vec<&str> {
    let mut kept: Vec<&str> = Vec::with_capacity(log.len());
    // What the last lines of these kinds set; the C-arm, picture and table stand at nothing else before their first.
    let mut stand: BTreeMap<&str, &str> =
        [("orient", "orient 0 0"), ("rotate_image", "rotate_image 0"), ("move_table", "move_table 0 0 0")]
            .into();
    for line in log {
        let action = action_of(line);
        let name = action.split(' ').next().unwrap_or_default();
        if idle(action) {
            continue;
        }
        // A way back to a kept view, or a new needle, sets what the log does not say.
        if name == "recall" {
            stand.remove("orient");
        }
        if let Some(before) = stand.get_mut(name) {
            if *before == action {
                continue;
            }
            *before = action;
        }
        let replaces = matches!(name, "orient" | "rotate_image" | "move_table" | "mark" | "choose" | "name");
        if replaces && kept.last().is_some_and(|last| action_of(last).split(' ').next() == Some(name)) {
            kept.pop();
        }
        kept.push(line);
    }
    kept
}

/// Whether an action moves by nothing.
fn idle(action: &str) -> bool {
    let mut words = action.split(' ');
    match words.next() {
        Some("roll" | "advance" | "withdraw" | "inject") => words.next() == Some("0"),
        Some("fluoroscopy") => words.next() == Some("0"),
        _ => false,
    }
}

/// What two copies of one log have in common, as a text. Short logs keep their clock, since honest ones may well be alike but for it.
pub fn essence(log: &[String]) -> String {
    let lines = effective_lines(log);
    let clock = lines.len() < LONG_LOG;
    lines.iter().fold(String::new(), |text, line| text + if clock { line } else { action_of(line) } + "\n")
}

/// The runs of a log, as sorted numbers without doubles; none of a short one.
pub fn runs(log: &[String]) -> Vec<u32> {
    let lines = effective(log);
    if lines.len() < LONG_LOG {
        return Vec::new();
    }
    let mut runs: Vec<u32> =
        lines.windows(RUN).map(|run| run.iter().fold(0x811c_9dc5, |h, line| fnv(h, line))).collect();
    runs.sort_unstable();
    runs.dedup();
    runs
}

/// FNV-1a, 32 bits, with a line's end: a sum for comparison, nothing more.
fn fnv(start: u32, line: &str) -> u32 {
    line.bytes().chain([b'\n']).fold(start, |h, byte| (h ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}

/// For each log the one of another owner that it is most alike, and how much (0 to 1), from [`ALIKE`] on; of equals the first.
pub fn nearest(logs: &[(&str, &[u32])]) -> Vec<Option<(usize, f64)>> {
    // Which logs have a run: pairs in order, since a map of them would take many times the room.
    let mut index: Vec<(u32, u32)> = Vec::new();
    for (i, (_, runs)) in logs.iter().enumerate() {
        index.extend(runs.iter().map(|&run| (run, i as u32)));
    }
    index.sort_unstable();
    let mut best: Vec<Option<(usize, f64)>> = vec![None; logs.len()];
    for (i, (owner, runs)) in logs.iter().enumerate() {
        let mut shared: BTreeMap<usize, usize> = BTreeMap::new();
        for run in *runs {
            let from = index.partition_point(|(other, _)| other < run);
            let there = index[from..].iter().take(COMMON).take_while(|(other, _)| other == run);
            for j in there.map(|&(_, j)| j as usize).filter(|&j| j != i && logs[j].0 != *owner) {
                *shared.entry(j).or_default() += 1;
            }
        }
        for (j, n) in shared {
            let alike = n as f64 / (runs.len() + logs[j].1.len() - n) as f64;
            if alike >= ALIKE && best[i].is_none_or(|(_, most)| alike > most) {
                best[i] = Some((j, alike));
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    fn log(seed: u64, n: usize) -> Vec<String> {
        let mut x = seed;
        let mut next = move |most: u64| {
            x = x.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (x >> 33) % most
        };
        (0..n)
            .map(|i| match i % 3 {
                0 => format!("{} orient {} {}", 20 * i, next(900), next(300)),
                1 => format!("{} spot", 20 * i),
                _ => format!("{} advance {} 0", 20 * i, 1 + next(100)),
            })
            .collect()
    }

    #[test]
    fn idle_lines_and_the_clock_do_not_count() {
        let own = log(1, 60);
        let mut copy: Vec<String> = own.iter().map(|l| format!("9{l}")).collect();
        for (at, idle) in [(10, "5 roll 0"), (20, "5 advance 0 0"), (0, "5 orient 0 0")] {
            copy.insert(at, idle.to_owned());
        }
        let again = copy[5].clone();
        if again.contains("orient") {
            copy.insert(6, again);
        }
        assert_eq!(effective(&own), effective(&copy));
        assert!(effective(&["0 orient 5 5".to_owned(), "1 orient 6 6".to_owned()]) == ["orient 6 6"]);
    }

    #[test]
    fn a_copy_with_changes_is_near_and_another_hand_is_not() {
        let own = log(1, 90);
        let mut changed = own.clone();
        for i in [12, 30, 60] {
            changed[i] = "7 orient 1 1".to_owned();
        }
        let other = log(2, 90);
        let all = [runs(&own), runs(&changed), runs(&other), runs(&own)];
        let of: Vec<(&str, &[u32])> =
            ["a", "b", "c", "a"].into_iter().zip(all.iter().map(Vec::as_slice)).collect();
        let near = nearest(&of);
        assert_eq!(near[1].map(|(j, _)| j), Some(0));
        assert!(near[1].is_some_and(|(_, alike)| (0.6..0.9).contains(&alike)), "{near:?}");
        assert_eq!((near[0].map(|(j, _)| j), near[2]), (Some(1), None));
        assert!(runs(&log(1, 20)).is_empty());
    }
}
