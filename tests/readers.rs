//! Lessons, receipts, links and log lines from outside never make a reader panic, and whatever is accepted can be used.
//!
//! Here is every reader of the crate: lessons, their links, receipts in all the forms that platforms give out, class lists, names of files, log
//! lines, attempts new and old, patients, rows of a report, practice files and receipts, names of class rounds and answer codes. Needle files are read by the
//! command line alone (`needle_file` there), logs of platforms and attempts in addresses by the page alone (`tests/browser/readers.test.mjs`).
//!
//! A few thousand inputs each run, the same ones, by a fixed seed; a million in all, others each time:
//! `tests/million` (DEVELOPERS.md has the counts).

mod common;

use common::learner::{receipt, shipped};
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient_spec::PatientSpec;
use downbeam::class::list::ClassList;
use downbeam::class::receipt::{Lessons, Receipt};
use downbeam::class::report::{ClassReport, Status, row};
use downbeam::class::{log_likeness, receipt_text, table};
use downbeam::lesson::check::{faults, problems};
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::link;
use downbeam::practice::answer_code::{self, Answers};
use downbeam::practice::class_round::Intake;
use downbeam::practice::kind::{Kind, Skill};
use downbeam::practice::practice_receipt::{PracticeReceipt, PracticeVerdict, curves_csv, shared};
use downbeam::practice::progress::{Answer, AskedFilm, Progress};
use downbeam::practice::round::ClassRound;
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::attempt_file::AttemptFile;
use downbeam::procedure::log_line;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::cell::RefCell;
use std::sync::LazyLock;

static LESSON: LazyLock<String> = LazyLock::new(|| shipped("curved-assessment").to_json());
static LINK: LazyLock<String> = LazyLock::new(|| link::fragment(&shipped("views-homework")).unwrap());
static RECEIPT: LazyLock<String> = LazyLock::new(|| receipt(&shipped("views-homework"), "anna").to_json());
static LESSONS: LazyLock<Lessons> = LazyLock::new(|| [shipped("views-homework")].into_iter().collect());

static LIST: LazyLock<String> =
    LazyLock::new(|| "Name;Code\r\n\"Müller; Anna\";am1\r\nBo Ek;be2\r\n".to_owned());
static STATEMENT: LazyLock<String> = LazyLock::new(|| {
    let receipt = receipt(&shipped("views-homework"), "anna").to_json();
    serde_json::json!({"verb": {}, "result": {"extensions": {"urn:downbeam:receipt": receipt}}}).to_string()
});

/// What the page hands on of an attempt: that of a receipt, on its own patient.
static ATTEMPT: LazyLock<String> = LazyLock::new(|| {
    let lesson = shipped("few-pictures");
    let receipt = receipt(&lesson, "anna");
    let drawn = drawn(&lesson, "anna").unwrap();
    serde_json::to_string(&AttemptFile::of(&drawn.spec, drawn.case, receipt.events().unwrap())).unwrap()
});
static KNOWN: LazyLock<PatientSpec> = LazyLock::new(|| drawn(&shipped("few-pictures"), "anna").unwrap().spec);
/// The log as earlier versions wrote it.
static OLD_ATTEMPT: LazyLock<String> = LazyLock::new(|| {
    let file: AttemptFile = serde_json::from_str(&ATTEMPT).unwrap();
    let mut old: serde_json::Value = serde_json::from_str(&ATTEMPT).unwrap();
    old["log"] = serde_json::to_value(&file.log).unwrap();
    old.to_string()
});
static PATIENT: LazyLock<String> = LazyLock::new(|| {
    r#"{"patient":"average","seed":7,"changed":{"turned_deg":5.5,"girth":1.2,"bone_density":0.6}}"#.to_owned()
});
static ROW: LazyLock<String> = LazyLock::new(|| {
    let text = receipt(&shipped("views-homework"), "anna").to_json();
    let row = INTERIORS.with_borrow_mut(|interiors| row("a.json", Some(3), &text, &LESSONS, interiors));
    table::ndjson(&ClassReport::of(vec![row]))
});
static PRACTICE: LazyLock<String> = LazyLock::new(|| {
    r#"{"format":"downbeam-practice-1","answers":[{"at":1,"day":0,"kind":"way","level":"L4","side":"left","stage":0,"right":true},{"at":2,"day":1,"kind":"true_ap","level":"L5","side":"right","stage":5,"right":false}]}"#.to_owned()
});
static PRACTICE_RECEIPT: LazyLock<String> = LazyLock::new(|| {
    let answer = |at| Answer {
        at,
        day: 1,
        kind: Kind::Way,
        level: Level::S1,
        side: Side::Left,
        stage: 1,
        right: at % 3 == 0,
        asked: Some(AskedFilm { seed: 77, index: at as u16, choice: 1 }),
    };
    PracticeReceipt::of(&Progress::of((0..4).map(answer)), "anna").unwrap().to_json()
});
static ROUND: LazyLock<String> = LazyLock::new(|| "3.48213.2.8".to_owned());
static CODES: LazyLock<String> = LazyLock::new(|| {
    let round: ClassRound = ROUND.parse().unwrap();
    let code = |tag| {
        let choices = (0..8).map(|i| (i != 3).then_some(i % 4)).collect();
        answer_code::write(&round, &Answers { tag, choices })
    };
    format!("{}\n{};{}", code(1), code(2), code(3).to_lowercase())
});

/// The seed that is asked for, or always the same.
fn seeded() -> ProptestConfig {
    let asked = std::env::var("PROPTEST_RNG_SEED").ok().and_then(|seed| seed.parse().ok());
    ProptestConfig { rng_seed: RngSeed::Fixed(asked.unwrap_or(22)), ..ProptestConfig::default() }
}

thread_local! {
    /// Planned once a thread: a million receipts of one patient.
    static INTERIORS: RefCell<Interiors> = RefCell::default();
}

/// Bits of JSON and of the files' own words.
fn scrap() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "{",
            "}",
            "[",
            "]",
            "\"",
            ":",
            ",",
            "null",
            "true",
            "-1",
            "0",
            "1e999",
            "1e-999",
            "4294967296",
            "NaN",
            "\\u0000",
            "\\ud800",
            "\"any_of\"",
            "\"steps\"",
            "\"log\"",
            "\"S1\"",
            "\"radiation\"",
            "\"infraneural\"",
            "\"learner\"",
            "20 spot",
            "\u{feff}",
            "é",
            "\n",
            "=",
            "#",
            "-",
            "_",
            "lesson=",
        ])
        .prop_map(str::to_owned),
        any::<String>(),
        "[0-9a-z_ -]{0,12}",
    ]
}

/// A good text with some pieces cut out and others put in.
fn spoilt(good: &'static LazyLock<String>) -> impl Strategy<Value = String> {
    prop::collection::vec((any::<prop::sample::Index>(), 0_usize..24, scrap()), 1..5).prop_map(
        move |changes| {
            let mut chars: Vec<char> = good.chars().collect();
            for (at, cut, put) in changes {
                let at = at.index(chars.len() + 1);
                let end = (at + cut).min(chars.len());
                chars.splice(at..end, put.chars());
            }
            chars.into_iter().collect()
        },
    )
}

fn scraps() -> impl Strategy<Value = String> {
    prop::collection::vec(scrap(), 0..40).prop_map(|all| all.concat())
}

fn one_line(error: &str) -> Result<(), TestCaseError> {
    prop_assert!(!error.trim().is_empty() && !error.contains('\n'), "{error:?}");
    Ok(())
}

/// A lesson that was accepted can be written, drawn from and put in a link.
fn usable(lesson: &Lesson) -> Result<(), TestCaseError> {
    prop_assert!(problems(lesson).is_empty());
    prop_assert_eq!(&Lesson::from_json(&lesson.to_json()).unwrap(), lesson);
    prop_assert!(drawn(lesson, "anybody").is_ok());
    if let Ok(fragment) = link::fragment(lesson) {
        prop_assert_eq!(link::lesson(&fragment).unwrap().hash(), lesson.hash());
    }
    Ok(())
}

proptest! {
    #![proptest_config(seeded())]

    #[test]
    fn lessons(text in prop_oneof![4 => spoilt(&LESSON), 1 => scraps()]) {
        match Lesson::from_json(&text) {
            Ok(lesson) => usable(&lesson)?,
            Err(error) => one_line(&error.to_string())?,
        }
        let all = faults(&text);
        prop_assert_eq!(all.is_empty(), Lesson::from_json(&text).is_ok(), "{:?}", all);
        for fault in all {
            one_line(&fault.to_string())?;
        }
    }

    /// Found by a million: a key with a line's end in it stood in its place as it was.
    #[test]
    fn a_key_is_told_on_one_line(key in prop::sample::select(vec!["i\\ntro", "\\u0007steps"])) {
        let text = LESSON.replacen("\"intro\"", &format!("\"{key}\""), 1);
        one_line(&Lesson::from_json(&text).unwrap_err().to_string())?;
        faults(&text).iter().try_for_each(|fault| one_line(&fault.to_string()))?;
    }

    #[test]
    fn links(text in prop_oneof![2 => spoilt(&LINK), 1 => spoilt(&LESSON).prop_map(|l| encoded(&l)), 1 => scraps()]) {
        match link::lesson(&text) {
            Ok(lesson) => usable(&lesson)?,
            Err(error) => one_line(&error.to_string())?,
        }
    }

    #[test]
    fn receipts(text in prop_oneof![4 => spoilt(&RECEIPT), 2 => spoilt(&STATEMENT), 1 => scraps()]) {
        if let Ok(receipt) = Receipt::from_json(&receipt_text::receipt_in(&text)) {
            prop_assert_eq!(&Receipt::from_json(&receipt.to_json()).unwrap(), &receipt);
            prop_assert!(log_likeness::effective(&receipt.log).len() <= receipt.log.len());
        }
        let found = INTERIORS.with_borrow_mut(|interiors| row("a.json", None, &text, &LESSONS, interiors));
        let report = ClassReport::of(vec![found.clone(), found]);
        prop_assert_eq!(report.rows.len(), 2);
    }

    #[test]
    fn class_lists(text in prop_oneof![4 => spoilt(&LIST), 1 => scraps()], seed in any::<u64>()) {
        for read in [ClassList::from_csv(&text), ClassList::dealt(&text, seed)] {
            match read {
                Ok(list) => prop_assert!(!list.members().is_empty()),
                Err(error) => one_line(&error.to_string())?,
            }
        }
    }

    #[test]
    fn kinds_of_files(name in "[a-z./]{0,8}\\.(txt|TXT|json|ndjson|csv|)", bytes in prop::collection::vec(any::<u8>(), 0..64), text in spoilt(&RECEIPT)) {
        let lines = receipt_text::is_lines(&name, &bytes) || receipt_text::is_lines(&name, text.as_bytes());
        // A receipt a line in a file that a folder would leave out would be one that is lost.
        prop_assert!(!lines || receipt_text::may_hold(&name, text.as_bytes()) || receipt_text::Kind::of(&name) == receipt_text::Kind::Text);
    }

    #[test]
    fn log_lines(text in prop_oneof!["[0-9]{1,11} [a-z_]{1,12}( -?[0-9]{1,12}| [a-zA-Z0-9_]{1,12}){0,4}", scraps()]) {
        if let Ok(event) = log_line::read(&text) {
            prop_assert_eq!(log_line::read(&log_line::write(&event)), Ok(event));
        }
    }

    #[test]
    fn attempts(text in prop_oneof![2 => spoilt(&ATTEMPT), 2 => spoilt(&OLD_ATTEMPT), 1 => scraps()]) {
        match serde_json::from_str::<AttemptFile>(&text) {
            Ok(file) => {
                let again: AttemptFile = serde_json::from_str(&serde_json::to_string(&file).unwrap()).unwrap();
                prop_assert_eq!(&again, &file);
                // Replayed where the patient is planned already, or one time in twenty.
                let known = file.spec().filter(|spec| spec.title() == KNOWN.title() || text.len().is_multiple_of(20));
                if let Some(spec) = known {
                    let done = INTERIORS.with_borrow_mut(|all| Attempt::replay(file.case, all.of(&spec), &file.log).map(|a| a.log));
                    match done {
                        Ok(log) => prop_assert_eq!(log, file.log),
                        Err(error) => one_line(&error.to_string())?,
                    }
                }
            }
            // The page says it by the readers' own sentence, which `lessons` holds to one line.
            Err(error) => prop_assert!(!error.to_string().is_empty()),
        }
    }

    #[test]
    fn patients(text in prop_oneof![4 => spoilt(&PATIENT), 1 => scraps()]) {
        #[derive(serde::Deserialize)]
        struct Asked { patient: String, seed: Option<u64>, changed: std::collections::BTreeMap<String, f64> }
        if let Ok(Asked { patient, seed, changed }) = serde_json::from_str(&text) {
            match PatientSpec::asked(&patient, seed, &changed) {
                Ok(spec) => {
                    let own = spec.differences().into_iter().map(|(name, value)| (name.to_owned(), value)).collect();
                    prop_assert_eq!(PatientSpec::asked(spec.name, Some(spec.seed), &own).unwrap().key(), spec.key());
                }
                Err(error) => one_line(&error.to_string())?,
            }
        }
    }

    #[test]
    fn rows_given_as_receipts(text in spoilt(&ROW)) {
        // A teacher who drops the report among the receipts gets a row that says so, in every line.
        for line in text.lines() {
            let found = INTERIORS.with_borrow_mut(|interiors| row("class.ndjson", Some(1), line, &LESSONS, interiors));
            prop_assert!(found.status != Status::Verified);
            one_line(&found.note)?;
        }
    }

    #[test]
    fn practice_files(text in prop_oneof![4 => spoilt(&PRACTICE), 1 => scraps()]) {
        match Progress::from_json(&text) {
            Ok(progress) => {
                prop_assert_eq!(&Progress::from_json(&progress.to_json()).unwrap(), &progress);
                prop_assert_eq!(progress.schedule().round(20_000, 9, 1).len(), 9);
                for &skill in Skill::ALL {
                    prop_assert!(progress.curve(skill).learning.iter().all(|s| s.is_finite()));
                }
            }
            Err(error) => one_line(&error.to_string())?,
        }
    }

    #[test]
    fn practice_receipts(text in prop_oneof![4 => spoilt(&PRACTICE_RECEIPT), 1 => scraps()]) {
        match PracticeReceipt::from_json(&text) {
            Ok(receipt) => {
                prop_assert_eq!(&PracticeReceipt::from_json(&receipt.to_json()).unwrap(), &receipt);
                // Questions take some ms: one time in two hundred.
                let verdict = if text.len().is_multiple_of(200) { receipt.verify() } else { receipt.at_once() };
                if let PracticeVerdict::Altered(why) = &verdict {
                    one_line(why)?;
                }
                prop_assert_eq!(curves_csv(&[(receipt.clone(), verdict)], table::CsvStyle::default()).lines().count(), 5);
                prop_assert_eq!(shared(&[&receipt, &receipt]), [None, None]);
            }
            Err(error) => one_line(&error.to_string())?,
        }
    }

    #[test]
    fn class_rounds(name in prop_oneof![4 => spoilt(&ROUND), 1 => scraps()], codes in prop_oneof![4 => spoilt(&CODES), 1 => scraps()]) {
        match name.parse::<ClassRound>() {
            Ok(round) => {
                prop_assert_eq!(round.to_string().parse::<ClassRound>().unwrap(), round);
                prop_assert_eq!(round.cards().len(), usize::from(round.count));
            }
            Err(error) => one_line(&error.to_string())?,
        }
        let round: ClassRound = ROUND.parse().unwrap();
        let mut intake = Intake::default();
        intake.take(&round, &codes);
        for sentence in &intake.refused {
            one_line(sentence)?;
        }
        let (counts, none) = intake.counts(0);
        prop_assert_eq!(counts.iter().sum::<u32>() + none, intake.learners() as u32);
    }
}

/// A text in a link, so that the reader behind the base64 is reached.
fn encoded(text: &str) -> String {
    use base64::Engine;
    format!("#lesson={}", base64::engine::general_purpose::URL_SAFE_NO_PAD.encode(text))
}
