//! Receipts: an honest one is verified, and whatever is changed in one is found.

mod common;

use common::learner::{receipt, shipped};
use downbeam::class::receipt::{Lessons, Receipt, Verdict, verify, verify_text};
use downbeam::class::report::{ClassReport, Row, Status, row};
use downbeam::class::table::{CsvStyle, csv, ndjson};
use downbeam::lesson::draw::Interiors;
use downbeam::lesson::file::Lesson;
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::log_line;
use downbeam::procedure::step::StepId;
use downbeam::score::engine;
use std::sync::LazyLock;

static LESSON: LazyLock<Lesson> = LazyLock::new(|| shipped("views-homework"));
static LESSONS: LazyLock<Lessons> = LazyLock::new(|| {
    [LESSON.clone(), shipped("curved-assessment"), shipped("lateral-view")].into_iter().collect()
});
static ANNA: LazyLock<Receipt> = LazyLock::new(|| receipt(&LESSON, "anna"));
static FULL: LazyLock<Receipt> = LazyLock::new(|| receipt(&shipped("curved-assessment"), "anna"));

fn checked(receipt: &Receipt) -> Verdict {
    verify(receipt, &LESSONS, &mut Interiors::default())
}

/// The reasons for which a receipt counts as altered.
fn reasons(receipt: &Receipt) -> Vec<String> {
    match checked(receipt) {
        Verdict::Altered(reasons, _) => reasons,
        other => panic!("not altered: {other:?}"),
    }
}

fn changed(from: &Receipt, change: impl FnOnce(&mut Receipt)) -> Receipt {
    let mut receipt = from.clone();
    change(&mut receipt);
    receipt
}

#[test]
fn an_honest_receipt_is_verified_and_survives_its_file() {
    for receipt in [&*ANNA, &*FULL] {
        let Verdict::Verified(replayed) = checked(receipt) else { panic!("{:?}", checked(receipt)) };
        assert_eq!(replayed.score.total.to_bits(), receipt.claim.total.to_bits());
        assert!(replayed.score.passed);
        let text = receipt.to_json();
        assert_eq!(&Receipt::from_json(&text).unwrap(), receipt);
        // As one line of a large class's file.
        let line = serde_json::to_string(receipt).unwrap();
        let (_, verdict) = verify_text(&line, &LESSONS, &mut Interiors::default());
        assert!(matches!(verdict, Verdict::Verified(_)));
    }
    let Verdict::Verified(full) = checked(&FULL) else { unreachable!() };
    assert!(full.pictures > 5 && full.beam_s == 2.0 && full.duration_s > 60.0, "{full:?}");
}

#[test]
fn a_receipt_cannot_be_made_of_what_the_lesson_does_not_allow() {
    let mut interiors = Interiors::default();
    let mut make =
        |log: &[Event], code: &str| Receipt::of(&LESSON, code, log, &mut interiors).unwrap_err().to_string();
    let choose = Action::Choose { approach: downbeam::anatomy::foramen::Approach::Infraneural };
    assert!(make(&[Event(1, choose)], "a").contains("action 1 (choose) is not part of the lesson: the way"));
    let back = [Event(5, Action::Spot), Event(4, Action::Spot)];
    assert!(make(&back, "a").contains("action 2 cannot be done: time runs backwards"));
    assert!(make(&[], &"x".repeat(65)).contains("of 65 characters"));
    assert!(make(&[], "a\u{1b}[2J").contains("control characters"));
    assert!(make(&vec![Event(0, Action::Spot); 7201], "a").contains("7201 actions: a receipt holds 7200"));
}

#[test]
fn whatever_is_claimed_above_the_log_is_found() {
    let poor = changed(&ANNA, |r| {
        // The learner keeps the oblique where it does not belong, and claims the marks all the same.
        let oblique = r.log.iter().rposition(|l| l.contains("orient")).unwrap();
        r.log[oblique] = format!("{} orient 0 0", r.log[oblique].split(' ').next().unwrap());
    });
    let said = reasons(&poor);
    assert!(said[0].starts_with("Oblique, squared is claimed as 100.00 %, and the log gives"), "{said:?}");
    assert!(said.iter().any(|s| s.starts_with("the total is claimed as 100.00 %")), "{said:?}");
    let Verdict::Altered(_, Some(replayed)) = checked(&poor) else { panic!() };
    assert!(replayed.score.total < 0.75);

    for (what, receipt) in [
        ("the total is claimed as", changed(&ANNA, |r| r.claim.total = 0.99)),
        (
            "a little more or less",
            changed(&ANNA, |r| r.claim.total = f64::from_bits(r.claim.total.to_bits() - 1)),
        ),
        ("the total is claimed as", changed(&ANNA, |r| r.claim.total = -0.0)),
        ("passed is claimed as false", changed(&ANNA, |r| r.claim.passed = false)),
        ("complete is claimed as false", changed(&ANNA, |r| r.claim.complete = false)),
        (
            "True AP is claimed as nothing",
            changed(&ANNA, |r| {
                r.claim.steps.insert(StepId::TrueAp, None);
            }),
        ),
        (
            "True AP is missing",
            changed(&ANNA, |r| {
                r.claim.steps.remove(&StepId::TrueAp);
            }),
        ),
        (
            "Depth is claimed, and",
            changed(&ANNA, |r| {
                r.claim.steps.insert(StepId::Depth, Some(1.0));
            }),
        ),
    ] {
        let said = reasons(&receipt);
        assert!(said.len() == 1 && said[0].contains(what), "wanted: {what}\nfound: {said:?}");
    }
}

#[test]
fn a_changed_log_is_found() {
    for (what, receipt) in [
        ("log[2]: unknown action 'fly'", changed(&ANNA, |r| r.log[2] = "60 fly".to_owned())),
        ("log[0]: '' is no tick", changed(&ANNA, |r| r.log[0] = String::new())),
        ("time runs backwards", changed(&ANNA, |r| r.log.swap(0, 3))),
        ("the attempt is finished", changed(&ANNA, |r| r.log.push(r.log.last().unwrap().clone()))),
        ("oblique of", changed(&ANNA, |r| r.log[0] = "20 orient 4000 0".to_owned())),
        ("is not part of the lesson", changed(&ANNA, |r| r.log[0] = "20 choose infraneural".to_owned())),
        ("is claimed as", changed(&ANNA, |r| r.log.truncate(3))),
        ("is claimed as", changed(&ANNA, |r| r.log.clear())),
        ("is claimed as", changed(&FULL, |r| r.log.retain(|l| !l.ends_with(" aspirate")))),
    ] {
        let said = reasons(&receipt).join("; ");
        assert!(said.contains(what), "wanted: {what}\nfound: {said}");
    }
    // Every single line of a long log counts, or is found by its last bit: taking any one out is found or changes no score.
    let mut found = 0;
    for i in 0..FULL.log.len() {
        let shorter = changed(&FULL, |r| drop(r.log.remove(i)));
        match checked(&shorter) {
            Verdict::Altered(..) => found += 1,
            Verdict::Verified(r) => assert_eq!(r.score.total.to_bits(), FULL.claim.total.to_bits()),
            other => panic!("{other:?}"),
        }
    }
    assert!(found * 3 > FULL.log.len(), "{found} of {}", FULL.log.len());
}

#[test]
fn another_learners_log_meets_another_patient() {
    let mut caught = 0;
    for i in 0..40 {
        let code = format!("copier {i}");
        let copy = changed(&ANNA, |r| r.learner = code.clone());
        match checked(&copy) {
            Verdict::Altered(said, _) => {
                assert!(said[0].contains("and this learner's code draws"), "{said:?}");
                caught += 1;
            }
            other => panic!("{other:?}"),
        }
        // Even with the copier's own patient written into it, the log is of another: unless the views are alike by chance.
        let drawn = downbeam::lesson::draw::drawn(&LESSON, &code).unwrap();
        let forged = changed(&copy, |r| {
            r.drawn.patient = drawn.spec.name.to_owned();
            r.drawn.seed = drawn.spec.seed;
            r.drawn.level = drawn.case.target.level;
            r.drawn.side = drawn.case.target.side;
        });
        if let Verdict::Verified(_) = checked(&forged) {
            assert_eq!(drawn.case.target.level, ANNA.drawn.level);
            assert_eq!(drawn.case.target.side, ANNA.drawn.side);
        }
    }
    assert_eq!(caught, 40);
}

#[test]
fn other_engines_and_lessons_are_told_apart() {
    let other = changed(&ANNA, |r| r.engine.scoring = "0123456789abcdef".to_owned());
    let Verdict::UnknownEngine(said) = checked(&other) else { panic!() };
    assert!(said.contains("0123456789abcdef") && said.contains(engine::SCORING), "{said}");
    // A release that scores alike is the same engine.
    assert!(matches!(
        checked(&changed(&ANNA, |r| r.engine.version = "9.9.9".to_owned())),
        Verdict::Verified(_)
    ));

    let easier = Lesson { pass_mark: 10, ..LESSON.clone() };
    let of_easier = receipt(&easier, "anna");
    let Verdict::UnknownLesson(said) = checked(&of_easier) else { panic!() };
    assert!(said.contains("is here, but asks something else"), "{said}");
    let Verdict::UnknownLesson(said) = checked(&receipt(&shipped("true-ap"), "anna")) else { panic!() };
    assert!(said.contains("'true-ap' is not among those given"), "{said}");
    // The right hash under another id is another lesson too.
    assert!(matches!(
        checked(&changed(&ANNA, |r| r.lesson.id = "true-ap".to_owned())),
        Verdict::UnknownLesson(_)
    ));
}

#[test]
fn what_is_no_receipt_is_unreadable_and_says_why() {
    let text = ANNA.to_json();
    for cut in (0..text.len() - 2).step_by(7) {
        let Some(part) = text.get(..cut) else { continue };
        let (_, verdict) = verify_text(part, &LESSONS, &mut Interiors::default());
        assert!(matches!(verdict, Verdict::Unreadable(_)), "cut at {cut}");
    }
    for (text, said) in [
        (text.replace("\"learner\"", "\"student\""), "student: unknown field 'student'"),
        (text.replace("\"format\": 1", "\"format\": 3"), "format: 3 is no receipt format that is known here"),
        (
            text.replace("\"anna\"", &format!("\"{}\"", "x".repeat(65))),
            "learner: a learner's code of 65 characters",
        ),
        (text.replace("\"claim\": {", "\"claim\": {\"total\": 1e999, "), "number out of range"),
        (text.replace("\"true_ap\":", "\"sleep\":"), "unknown variant 'sleep'"),
        ("[1]".to_owned(), "found a list: a receipt is an object"),
        ("{}".to_owned(), "missing field 'format'"),
        (String::new(), "ends too early"),
        ("{\"a\":".repeat(100_000), "the JSON is nested too deeply"),
        (text.replace("\"format\": 1", "\"format\": 1, \"format\": 1"), "the key 'format' stands twice"),
        (" ".repeat(600_000), "the receipt is longer than 524288 bytes, the most that is allowed"),
    ] {
        let error = Receipt::from_json(&text).unwrap_err().to_string();
        assert!(error.contains(said), "wanted: {said}\nfound:  {error}");
        assert_eq!(error.lines().count(), 1);
    }
}

/// Rows of receipts as they lie in a folder.
fn rows(receipts: &[(&str, String)]) -> Vec<Row> {
    let mut interiors = Interiors::default();
    receipts.iter().map(|(source, text)| row(source, None, text, &LESSONS, &mut interiors)).collect()
}

/// A class with one of each.
fn class() -> ClassReport {
    // The same patient for everybody, so that a copied log scores as the first one did.
    let lateral = shipped("lateral-view");
    let ben = receipt(&lateral, "ben");
    let copy = changed(&ben, |r| r.learner = "=cmd".to_owned());
    ClassReport::of(rows(&[
        ("anna.json", ANNA.to_json()),
        ("anna (1).json", ANNA.to_json()),
        ("bad.json", ANNA.to_json()[..300].to_owned()),
        ("cheat.json", changed(&ANNA, |r| r.claim.total = 2.0).to_json()),
        ("full.json", FULL.to_json()),
        ("ben.json", ben.to_json()),
        ("copy.json", copy.to_json()),
        ("old.json", changed(&FULL, |r| r.engine.scoring = "0".to_owned()).to_json()),
        ("foreign.json", receipt(&shipped("true-ap"), "dora, \"d\"").to_json()),
    ]))
}

#[test]
fn a_class_has_a_row_each_and_its_doubles_stand_out() {
    let class = class();
    let status: Vec<Status> = class.rows.iter().map(|r| r.status).collect();
    use Status::{Altered, UnknownEngine, UnknownLesson, Unreadable, Verified};
    assert_eq!(
        status,
        [Verified, Verified, Unreadable, Altered, Verified, Verified, Verified, UnknownEngine, UnknownLesson]
    );
    let doubles: Vec<_> = class.rows.iter().map(|r| (r.same_log_as, r.repeat_of)).collect();
    let none = (None, None);
    assert_eq!(
        doubles,
        [
            none,
            (None, Some(1)),
            none,
            (None, Some(1)),
            none,
            (Some(7), None),
            (Some(6), None),
            (None, Some(5)),
            none
        ]
    );
    assert_eq!(class.copies(), 2);
    for &status in Status::ALL {
        assert_eq!(class.count(status), class.rows.iter().filter(|r| r.status == status).count());
    }
}

#[test]
fn a_shifted_clock_does_not_hide_a_copied_long_log() {
    let later = |r: &mut Receipt| {
        for line in &mut r.log {
            let Event(tick, action) = log_line::read(line).unwrap();
            *line = log_line::write(&Event(tick + 3, action));
        }
    };
    assert_eq!(changed(&FULL, later).log_hash(), FULL.log_hash());
    // Of a short log that could be chance.
    assert!(ANNA.log.len() < 24);
    assert_ne!(changed(&ANNA, later).log_hash(), ANNA.log_hash());
}

#[test]
fn the_summary_says_which_step_fails_whom() {
    let poor = {
        let mut receipt = ANNA.clone();
        receipt.learner = "poor".to_owned();
        receipt
    };
    // A learner who does only the true AP, honestly.
    let mut interiors = Interiors::default();
    let only_ap: Vec<Event> = receipt(&LESSON, "bo").events().unwrap().into_iter().take(3).collect();
    let bo = Receipt::of(&LESSON, "bo", &only_ap, &mut interiors).unwrap();
    let class = ClassReport::of(rows(&[
        ("1", ANNA.to_json()),
        ("2", bo.to_json()),
        ("3", poor.to_json()),
        ("4", receipt(&LESSON, "cy").to_json()),
        // A second, better try counts in place of the first.
        ("5", receipt(&LESSON, "di").to_json()),
        ("6", Receipt::of(&LESSON, "di", &[], &mut interiors).unwrap().to_json()),
    ]));
    let summary = class.summary(&LESSONS);
    assert_eq!(summary.len(), 1);
    let s = &summary[0];
    assert_eq!((s.receipts, s.verified, s.learners, s.passed), (6, 5, 4, 3));
    let [ap, oblique] = &s.steps[..] else { panic!() };
    assert_eq!((ap.mean, ap.below_pass.len()), (1.0, 0));
    assert_eq!((oblique.mean, &oblique.below_pass[..]), (0.75, &["bo".to_owned()][..]));
    assert_eq!((ap.bands, oblique.bands), ([0, 0, 0, 4], [1, 0, 0, 3]));
    assert!((s.mean_total - (3.0 + 0.4) / 4.0).abs() < 1e-12);
}

#[test]
fn tables_have_a_row_a_receipt_and_the_same_numbers() {
    let class = class();
    let (csv, ndjson) = (csv(&class, CsvStyle::default()), ndjson(&class));
    assert_eq!(csv.matches("\r\n").count(), class.rows.len() + 1);
    assert!(csv.contains("\"'=cmd\"") && csv.contains("\"dora, \"\"d\"\"\""));
    let objects: Vec<serde_json::Value> = ndjson.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    assert_eq!(objects.len(), class.rows.len());
    for (object, row) in objects.iter().zip(&class.rows) {
        assert_eq!(object["status"], row.status.id());
        let total = row.replayed.as_ref().map(|p| p.score.total);
        assert_eq!(object["total"].as_f64().map(f64::to_bits), total.map(f64::to_bits));
        assert_eq!(object["depth"].is_null(), row.replayed.as_ref().is_none_or(|p| p.score.steps.len() < 9));
    }
    assert_eq!(objects[6]["learner"], "=cmd");
}
