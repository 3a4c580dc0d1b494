//! A term: forty learners, three lessons, two tries each, five cheats of different kinds, one lost laptop; from class list to gradebook.

mod common;

use common::learner::{receipt, shipped};
use downbeam::lesson::class_list::ClassList;
use downbeam::lesson::class_report::{ClassReport, Status, row};
use downbeam::lesson::class_table::{CsvStyle, Separator};
use downbeam::lesson::draw::Interiors;
use downbeam::lesson::gradebook::Class;
use downbeam::lesson::receipt::{Lessons, Receipt};

const LESSONS: [&str; 3] = ["views-homework", "true-ap", "lateral-view"];

/// A first try: the attempt broken off before its last two actions, with the claim that this gives.
fn worse(good: &Receipt, lesson: &str) -> String {
    let mut events = good.events().unwrap();
    events.truncate(events.len().saturating_sub(2));
    Receipt::of(&shipped(lesson), &good.learner, &events, &mut Interiors::default()).unwrap().to_json()
}

#[test]
fn from_class_list_to_gradebook() {
    let names: String =
        (0..40).map(|i| format!("Learner; {i}\n")).map(|l| format!("\"{}\"\n", l.trim())).collect();
    let list = ClassList::dealt(&names, 41).unwrap();
    let codes: Vec<&str> = list.members().iter().map(|m| m.code.as_str()).collect();
    let lessons: Lessons = LESSONS.iter().map(|id| shipped(id)).collect();
    let mut interiors = Interiors::default();
    let mut rows = Vec::new();
    // The last learner's laptop is lost: nothing was handed in.
    for (n, code) in codes.iter().enumerate().take(39) {
        for id in LESSONS {
            let good = receipt(&shipped(id), code);
            let mut second = good.clone();
            match (n, id) {
                // Claims more than the log gives.
                (1, "true-ap") => second.claim.total = 0.9999,
                // Another's log under the own code, on patients of their own: it does not give that score.
                (2, "views-homework") => second.log = receipt(&shipped(id), codes[0]).log,
                // Another's receipt as it is, with the own code written into it, on a patient that all have.
                (3, "true-ap") => {
                    second = Receipt { learner: (*code).to_owned(), ..receipt(&shipped(id), codes[0]) }
                }
                // The same with an idle action put in.
                (4, "true-ap") => second.log.insert(0, "0 orient 0 0".to_owned()),
                // The own receipt handed in twice as two tries.
                (5, "lateral-view") => {}
                _ => {}
            }
            let first = if (n, id) == (5, "lateral-view") { second.to_json() } else { worse(&good, id) };
            for (which, text) in [first, second.to_json()].into_iter().enumerate() {
                rows.push(row(&format!("{code}-{id}-{which}.json"), None, &text, &lessons, &mut interiors));
            }
        }
    }
    let report = ClassReport::of(rows);
    assert_eq!(report.rows.len(), 39 * 3 * 2);
    assert!(report.count(Status::Altered) >= 2, "{}", report.count(Status::Altered));
    let class = Class::of(&report, &list);
    assert_eq!(class.missing, [codes[39]]);
    assert_eq!((class.learners.len(), class.lessons.len()), (40, 3));
    for (n, lesson) in [(1, "true-ap"), (2, "views-homework")] {
        let at = class.lessons.iter().position(|l| l == lesson).unwrap();
        let tries = &class.learners[n].lessons[at];
        assert_eq!((tries.rows.len(), tries.totals.len()), (2, 1), "the altered one gives no marks");
        assert!(!class.learners[n].look_at.is_empty());
    }
    let of_five = &class.learners[5].lessons[class.lessons.iter().position(|l| l == "lateral-view").unwrap()];
    assert_eq!(of_five.rows.len(), 1, "the same receipt twice is one try");
    // An honest learner: two tries, the better one counts.
    for tries in &class.learners[20].lessons {
        assert_eq!(tries.totals.len(), 2);
        assert!(tries.total >= tries.totals.iter().copied().reduce(f64::max));
        assert_eq!(tries.passed, Some(true));
    }
    let style = CsvStyle { separator: Separator::Semicolon, byte_order_mark: true };
    let book = class.gradebook(style);
    let mut reader =
        csv::ReaderBuilder::new().delimiter(b';').from_reader(book.trim_start_matches('\u{feff}').as_bytes());
    assert_eq!(&reader.headers().unwrap()[1], "name");
    let written: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(written.len(), 40);
    assert_eq!(&written[7][1], "Learner; 7");
    assert_eq!(&written[39][2], "", "nothing handed in is an empty cell, not a zero");
    assert!(
        written[20][2].parse::<f64>().is_err() || !written[20][2].contains('.'),
        "a decimal comma: {}",
        &written[20][2]
    );
}
