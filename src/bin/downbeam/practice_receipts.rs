//! Receipts of practice that `grade` finds among the others: asked again, and the learners' curves.

use crate::all_processors::{in_order, states};
use crate::command::printable;
use crate::receipt_source::Found;
use downbeam::class::table::CsvStyle;
use downbeam::practice::curve::Verdict;
use downbeam::practice::kind::Skill;
use downbeam::practice::practice_receipt::{PracticeReceipt, PracticeVerdict, curves_csv, shared};
use std::fmt::Write;

/// What was found.
#[derive(Default)]
pub(crate) struct Practised {
    checked: Vec<(PracticeReceipt, PracticeVerdict)>,
    /// Place and sentence of what could not be read.
    unread: Vec<(String, String)>,
}

/// Whether a text found among receipts is one of practice.
pub(crate) fn is_practice(found: &Found) -> bool {
    found.text.as_ref().is_ok_and(|text| PracticeReceipt::is_meant(text))
}

impl Practised {
    /// Reads and checks on all processors.
    pub(crate) fn of(found: &[Found]) -> Self {
        let mut practised = Self::default();
        let read = in_order(found, &mut states::<()>(), |(), Found { source, line, text }| {
            let receipt = PracticeReceipt::from_json(text.as_deref().unwrap_or_default());
            receipt.map(|receipt| (receipt.verify(), receipt)).map_err(|error| {
                let place = line.map_or(source.clone(), |line| format!("{source}, line {line}"));
                (place, error.to_string())
            })
        });
        for one in read {
            match one {
                Ok((verdict, receipt)) => practised.checked.push((receipt, verdict)),
                Err(unread) => practised.unread.push(unread),
            }
        }
        practised
    }

    /// Whether there was any.
    pub(crate) fn is_empty(&self) -> bool {
        self.checked.is_empty() && self.unread.is_empty()
    }

    /// How many, and how many of them are not verified.
    pub(crate) fn counts(&self) -> (usize, usize) {
        let all = self.checked.len() + self.unread.len();
        let good = self.checked.iter().filter(|(_, verdict)| *verdict == PracticeVerdict::Verified).count();
        (all, all - good)
    }

    /// For a spreadsheet.
    pub(crate) fn csv(&self, style: CsvStyle) -> String {
        curves_csv(&self.checked, style)
    }

    /// A line a learner.
    pub(crate) fn in_words(&self) -> String {
        let mut text = String::from("\nPractice\n");
        let same = shared(&self.checked.iter().map(|(receipt, _)| receipt).collect::<Vec<_>>());
        for ((receipt, verdict), shares) in self.checked.iter().zip(same) {
            let progress = receipt.progress();
            let skills: Vec<String> = Skill::ALL
                .iter()
                .map(|&skill| {
                    let curve = progress.curve(skill);
                    let reached = curve.reached.map_or(String::new(), |at| format!(", reached at {at}"));
                    let standing = match curve.standing() {
                        Some(Verdict::Acceptable) => ", acceptable",
                        Some(Verdict::Unacceptable) => ", unacceptable",
                        None => "",
                    };
                    format!("{} {}, {} wrong{reached}{standing}", skill.name(), curve.answers, curve.wrong)
                })
                .collect();
            let _ = write!(
                text,
                "{:<14}  {:<16}  {}",
                verdict.name().replace('_', " "),
                printable(&receipt.learner),
                skills.join("; ")
            );
            match verdict {
                PracticeVerdict::Altered(why) => text += &format!("  ({why})"),
                PracticeVerdict::UnknownEngine(version) => {
                    text += &format!("  (drawn by version {})", printable(version))
                }
                PracticeVerdict::Verified => {}
            }
            if let Some((other, answers)) = shares {
                let _ = write!(
                    text,
                    "  shares {answers} films with {}",
                    printable(&self.checked[other].0.learner)
                );
            }
            text.push('\n');
        }
        for (place, why) in &self.unread {
            let _ = writeln!(text, "{:<14}  {}: {why}", "unreadable", printable(place));
        }
        text
    }
}
