//! A term: forty learners, three lessons, two tries each, five cheats of different kinds, one lost laptop; from class list to gradebook.

mod common;

use common::learner::{log, shipped, strayed, strays};
use downbeam::class::gradebook::Class;
use downbeam::class::list::ClassList;
use downbeam::class::receipt::{Lessons, Receipt};
use downbeam::class::report::{ClassReport, Status, row};
use downbeam::class::table::{self, CsvStyle, Separator};
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::marks::{ReplayError, replay};
use downbeam::procedure::action::{Action, Event};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

/// In the order of their names, as files come. The first is a whole injection; the last draws a patient for each code, and the others give
/// all the same one.
const LESSONS: [&str; 3] = ["few-pictures", "true-ap", "views-homework"];
const LEARNERS: usize = 40;
/// Whose work the copies are of.
const VICTIM: usize = 0;
/// What was read of a gradebook: cells by code.
type Book = BTreeMap<String, Vec<String>>;

/// Learners' own hands: each stands a little elsewhere and has a pace of its own.
#[derive(Default)]
struct Hands {
    interiors: Interiors,
    /// The careful hand's logs where all have one patient: it takes a hundred times as long as a replay.
    known: BTreeMap<String, Vec<Event>>,
}

impl Hands {
    /// Learner `n`'s try number `which`: the first is broken off before its last two actions.
    fn receipt(&mut self, id: &str, n: usize, code: &str, which: usize) -> Receipt {
        let lesson = shipped(id);
        let drawn = drawn(&lesson, code).unwrap();
        let interior = self.interiors.of(&drawn.spec);
        let key = format!("{id} {:?} {:?}", drawn.spec, drawn.case.target);
        let careful = self.known.entry(key).or_insert_with(|| log(&lesson, &drawn, interior, 0));
        let mut stray = strays((n * LEARNERS + which) as u32);
        let span = 4 * (2 - which as i32);
        let mut tick = 0;
        let mut events: Vec<Event> = careful
            .iter()
            .map(|&Event(_, action)| {
                tick += (30 + stray(25)) as u32;
                let action = match action {
                    Action::Advance { mm_tenths, spin_percent } => Action::Advance {
                        mm_tenths: (mm_tenths as i32 - stray(3).abs()).max(1) as u32,
                        spin_percent,
                    },
                    other => strayed(other, &mut stray, span, 2 * span, 10 * span),
                };
                Event(tick, action)
            })
            .collect();
        if which == 0 {
            events.truncate(events.len().saturating_sub(2));
        }
        // What no longer can be done is left out, as the page does not let it happen.
        while let Err(error) = replay(&lesson, &drawn, interior, &events) {
            let (ReplayError::NotAllowed { number, .. } | ReplayError::Impossible { number, .. }) = error;
            events.remove(number - 1);
        }
        Receipt::of(&lesson, code, &events, &mut self.interiors).unwrap()
    }
}

/// Another's log with the clock stretched, idle actions put in and an angle changed here and there; scored as what it is.
fn near_copy(of: &Receipt, code: &str, interiors: &mut Interiors) -> Receipt {
    let mut events: Vec<Event> = of.events().unwrap();
    let mut seen = 0;
    for Event(tick, action) in &mut events {
        *tick = *tick * 3 / 2;
        if let Action::Orient { oblique_tenths, .. } = action {
            seen += 1;
            *oblique_tenths += i32::from(seen % 3 == 1);
        }
    }
    for at in [2, 9, 17] {
        let tick = events[at].0;
        events.insert(at, Event(tick, Action::Roll { deg_tenths: 0 }));
    }
    let lesson = shipped(&of.lesson.id);
    let drawn = drawn(&lesson, code).unwrap();
    events.retain({
        // A roll needs a needle: where there is none yet, the idle action is another.
        let placed = events.iter().position(|e| matches!(e.1, Action::Place { .. })).unwrap_or_default();
        let mut i = 0;
        move |e| {
            i += 1;
            i > placed || !matches!(e.1, Action::Roll { deg_tenths: 0 })
        }
    });
    replay(&lesson, &drawn, interiors.of(&drawn.spec), &events).unwrap();
    Receipt::of(&lesson, code, &events, interiors).unwrap()
}

/// What a cheat hands in as the second try.
fn cheated(
    n: usize,
    id: &str,
    own: &Receipt,
    victims: &Receipt,
    first: &Receipt,
    interiors: &mut Interiors,
) -> Option<Receipt> {
    let mut claims_more = own.clone();
    claims_more.claim.total = 0.9999;
    Some(match (n, id) {
        // Claims more than the log gives.
        (1, "true-ap") => claims_more,
        // Another's receipt with the own code in it, where each code has a patient of its own.
        (2, "views-homework") => Receipt { learner: own.learner.clone(), ..victims.clone() },
        // The same where all have one patient: it verifies.
        (3, "few-pictures") => Receipt { learner: own.learner.clone(), ..victims.clone() },
        // Another's log disguised, and scored honestly: it verifies too.
        (4, "few-pictures") => near_copy(victims, &own.learner, interiors),
        // The own first try as the second.
        (5, "few-pictures") => first.clone(),
        _ => return None,
    })
}

fn book(text: &str) -> Book {
    let mut reader =
        csv::ReaderBuilder::new().delimiter(b';').from_reader(text.trim_start_matches('\u{feff}').as_bytes());
    assert_eq!(&reader.headers().unwrap()[1], "name");
    reader
        .records()
        .map(|r| r.unwrap().iter().map(str::to_owned).collect::<Vec<_>>())
        .map(|r| (r[0].clone(), r))
        .collect()
}

#[test]
#[expect(clippy::too_many_lines, reason = "one term from its beginning to its end")]
fn from_class_list_to_gradebook() {
    let names: String = (0..LEARNERS).map(|i| format!("\"Learner; {i}\"\n")).collect();
    let list = ClassList::dealt(&names, 41).unwrap();
    let codes: Vec<&str> = list.members().iter().map(|m| m.code.as_str()).collect();
    let lessons: Lessons = LESSONS.iter().map(|id| shipped(id)).collect();
    let (mut hands, mut interiors) = (Hands::default(), Interiors::default());
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("term");
    let _ = fs::remove_dir_all(&folder);
    let mut rows = Vec::new();
    // Rows of a learner and lesson, from 1: first and second try.
    let mut at: BTreeMap<(usize, &str), [usize; 2]> = BTreeMap::new();
    // The last learner's laptop is lost: nothing was handed in.
    for (n, code) in codes.iter().enumerate().take(LEARNERS - 1) {
        for id in LESSONS {
            let first = hands.receipt(id, n, code, 0);
            let own = hands.receipt(id, n, code, 1);
            let victims = hands.receipt(id, VICTIM, codes[VICTIM], 1);
            let second = cheated(n, id, &own, &victims, &first, &mut interiors).unwrap_or(own);
            for (which, receipt) in [first, second].into_iter().enumerate() {
                // As a platform exports it: a folder a learner.
                let path = format!("receipts/{n:02}/{id}-{which}.json");
                let text = receipt.to_json();
                fs::create_dir_all(folder.join(&path).parent().unwrap()).unwrap();
                fs::write(folder.join(&path), &text).unwrap();
                rows.push(row(&path, None, &text, &lessons, &mut interiors));
                at.entry((n, id)).or_default()[which] = rows.len();
            }
        }
    }
    let report = ClassReport::of(rows);
    let row = |n: usize, id: &str, which: usize| &report.rows[at[&(n, id)][which] - 1];
    assert_eq!(report.rows.len(), (LEARNERS - 1) * 6);

    // Each cheat was tried, and is reported.
    let claimed = row(1, "true-ap", 1);
    assert_eq!(claimed.status, Status::Altered);
    assert!(claimed.note.contains("the total is claimed as 99.99 %"), "{}", claimed.note);
    let foreign = row(2, "views-homework", 1);
    assert_eq!(foreign.status, Status::Altered);
    assert!(foreign.note.contains("this learner's code draws"), "{}", foreign.note);
    let copy = row(3, "few-pictures", 1);
    assert_eq!((copy.status, copy.same_log_as), (Status::Verified, Some(at[&(VICTIM, "few-pictures")][1])));
    let near = row(4, "few-pictures", 1);
    assert_eq!((near.status, near.same_log_as), (Status::Verified, None));
    let (like, share) = near.alike.expect("a near copy is reported");
    assert!(like == at[&(VICTIM, "few-pictures")][1] || like == at[&(3, "few-pictures")][1], "{like}");
    assert!((0.4..1.0).contains(&share), "{share}");
    let again = row(5, "few-pictures", 1);
    assert_eq!((again.status, again.repeat_of), (Status::Verified, Some(at[&(5, "few-pictures")][0])));
    assert_eq!(report.count(Status::Altered), 2);

    let class = Class::of(&report, &list);
    assert_eq!(class.missing, [codes[LEARNERS - 1]]);
    assert_eq!((class.learners.len(), class.lessons.len()), (LEARNERS, 3));
    let tries =
        |n: usize, id: &str| &class.learners[n].lessons[class.lessons.iter().position(|l| l == id).unwrap()];
    for (n, id) in [(1, "true-ap"), (2, "views-homework")] {
        assert_eq!(
            (tries(n, id).rows.len(), tries(n, id).totals.len()),
            (2, 1),
            "the altered one gives no marks"
        );
    }
    assert_eq!(tries(5, "few-pictures").rows.len(), 1, "the same receipt twice is one try");
    // Who cheated by another's work, and whose it is, are to be looked at; nobody else is, however careful all hands are.
    let looked_at: Vec<usize> = (0..LEARNERS).filter(|&n| !class.learners[n].look_at.is_empty()).collect();
    assert_eq!(looked_at, [VICTIM, 1, 2, 3, 4]);
    // An honest learner: two tries, the better one counts.
    for n in 6..LEARNERS - 1 {
        for id in LESSONS {
            let t = tries(n, id);
            assert_eq!(t.totals.len(), 2, "{n} {id}");
            assert!(t.total >= t.totals.iter().copied().reduce(f64::max) || t.passed == Some(true));
        }
    }
    // What the class looks like.
    for lesson in report.summary(&lessons) {
        assert_eq!(lesson.learners, LEARNERS - 1);
        assert_eq!(lesson.histogram.iter().sum::<usize>(), LEARNERS - 1);
        for step in &lesson.steps {
            assert!(step.quartiles.is_sorted() && step.quartiles[2] <= 1.0, "{step:?}");
        }
    }

    let style = CsvStyle { separator: Separator::Semicolon, byte_order_mark: true };
    let own = book(&class.gradebook(style));
    assert_eq!(own.len(), LEARNERS);
    assert_eq!(own[codes[7]][1], "Learner; 7");
    assert_eq!(own[codes[LEARNERS - 1]][2], "", "nothing handed in is an empty cell, not a zero");
    assert!(
        own[codes[20]][2].contains(',') || own[codes[20]][2].parse::<u32>().is_ok(),
        "a decimal comma: {}",
        own[codes[20]][2]
    );

    // The same from the command line, from the folder as it was exported.
    fs::write(folder.join("class.csv"), table::list(&list, CsvStyle::default())).unwrap();
    let done = Command::new(env!("CARGO_BIN_EXE_downbeam"))
        .args([
            "grade",
            "receipts",
            "--class",
            "class.csv",
            "--gradebook",
            "book.csv",
            "--separator",
            "semicolon",
            "--bom",
            "--strict",
        ])
        .current_dir(&folder)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&done.stdout).into_owned() + &String::from_utf8_lossy(&done.stderr);
    assert_eq!(done.status.code(), Some(3), "two are altered: {said}");
    assert_eq!(book(&fs::read_to_string(folder.join("book.csv")).unwrap()), own);
}
