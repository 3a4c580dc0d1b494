//! Lessons, receipts, links and log lines from outside never make a reader panic, and whatever is accepted can be used.
//!
//! A few thousand inputs each run, the same ones, by a fixed seed; more than a million, others each time, with
//! `PROPTEST_RNG_SEED=$RANDOM PROPTEST_CASES=250000 cargo test --release --test readers` (six readers).

mod common;

use common::learner::{receipt, shipped};
use downbeam::class::list::ClassList;
use downbeam::class::receipt::{Lessons, Receipt};
use downbeam::class::report::{ClassReport, row};
use downbeam::class::{log_likeness, receipt_text};
use downbeam::lesson::check::{faults, problems};
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::link;
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
}

/// A text in a link, so that the reader behind the base64 is reached.
fn encoded(text: &str) -> String {
    use base64::Engine;
    format!("#lesson={}", base64::engine::general_purpose::URL_SAFE_NO_PAD.encode(text))
}
