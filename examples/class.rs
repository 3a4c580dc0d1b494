//! Writes the receipts of a class that never was, a JSON object a line: learners of all degrees of care at lessons that ship, and
//! among every hundred a few that are altered, copied, cut short or of another engine.
//!
//! `cargo run --release --example class -- 10000 curved-assessment > class.ndjson`; with `--honest` nothing is amiss in it,
//! and with `--careful` every learner has the careful hand's log besides.

#[path = "../tests/common/mod.rs"]
mod common;

use common::learner::{log, shipped, strayed, strays};
use downbeam::class::receipt::Receipt;
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::marks::{ReplayError, replay};
use downbeam::procedure::action::{Action, Event};
use std::collections::BTreeMap;
use std::error::Error;
use std::io::Write;

fn main() -> Result<(), Box<dyn Error>> {
    let mut words: Vec<String> = std::env::args().skip(1).collect();
    let honest = words.iter().any(|w| w == "--honest" || w == "--careful");
    let careful = words.iter().any(|w| w == "--careful");
    words.retain(|w| !w.starts_with("--"));
    let (count, ids) = words.split_first().ok_or("wanted: how many, then ids of lessons")?;
    let lessons: Vec<Lesson> = ids.iter().map(|id| shipped(id)).collect();
    let mut interiors = Interiors::default();
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    let mut known = Known::new();
    let mut last: Option<Receipt> = None;
    for i in 0..count.parse::<usize>()? {
        let lesson = lessons.get(i % lessons.len().max(1)).ok_or("wanted: ids of lessons")?;
        let mut receipt = of_learner(lesson, i, careful, &mut interiors, &mut known)?;
        let mut line = serde_json::to_string(&receipt)?;
        if !honest {
            match i % 100 {
                17 | 61 => receipt.claim.total = if receipt.claim.total < 1.0 { 1.0 } else { 0.5 },
                33 => receipt.engine.scoring = "0123456789abcdef".to_owned(),
                48 => {
                    if let Some(last) = &last {
                        receipt = Receipt { learner: receipt.learner, ..last.clone() };
                    }
                }
                _ => {}
            }
            line = serde_json::to_string(&receipt)?;
            if i % 100 == 72 {
                line.truncate(line.len() / 2);
            }
        }
        writeln!(out, "{line}")?;
        last = Some(receipt);
    }
    Ok(())
}

/// The careful hand's logs, by lesson, patient, target and missed parts: it takes a hundred times as long as a replay.
type Known = BTreeMap<String, Vec<Event>>;

/// What learner `i` hands in: the careful hand's log, the worse the less care is taken.
fn of_learner(
    lesson: &Lesson,
    i: usize,
    careful: bool,
    interiors: &mut Interiors,
    known: &mut Known,
) -> Result<Receipt, Box<dyn Error>> {
    let code = format!("learner {i:05}");
    let drawn = drawn(lesson, &code)?;
    let interior = interiors.of(&drawn.spec);
    let mut stray = strays(i as u32);
    let mut care = 60 * (stray(500) + 500) / 1000;
    let mut misses = (stray(2).max(0)) as usize;
    if careful {
        (care, misses) = (0, 0);
    }
    let key = format!(
        "{} {:?} {} {misses}",
        lesson.id,
        drawn.spec,
        drawn.order_seed * u64::from(!lesson.parts.is_empty())
    );
    let key = format!("{key} {:?}", drawn.case.target);
    let steps = known.entry(key).or_insert_with(|| log(lesson, &drawn, interior, misses));
    let mut events: Vec<Event> = steps
        .iter()
        .copied()
        .filter_map(|Event(tick, action)| {
            let action = match action {
                Action::Aspirate if care > 50 => return None,
                other => strayed(other, &mut stray, care, 4 * care, 10 * care),
            };
            Some(Event(tick, action))
        })
        .collect();
    // What no longer can be done is left out, as the page does not let it happen.
    while let Err(error) = replay(lesson, &drawn, interior, &events) {
        let (ReplayError::NotAllowed { number, .. } | ReplayError::Impossible { number, .. }) = error;
        events.remove(number - 1);
    }
    Ok(Receipt::of(lesson, &code, &events, interiors)?)
}
