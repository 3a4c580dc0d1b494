//! Lesson files: what ships can be done and passed, what is wrong is reported with its place, and the schema is that of the types.

mod common;

use common::learner::{course, lessons_folder, log, log_with, shipped};
use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::lesson::check::problems;
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::{Lesson, LessonPart, Mode};
use downbeam::lesson::link;
use downbeam::lesson::marks::{lesson_score, replay};
use downbeam::lesson::parts::{Exercise, label};
use downbeam::needle::device::Gauge;
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::pointing::has_part;
use downbeam::procedure::step::StepId;
use downbeam::view::criteria::Target;
use serde_json::{Value, json};
use std::collections::BTreeSet;

#[test]
fn the_course_lists_every_lesson_and_grows_harder() {
    let course = course();
    let files: BTreeSet<String> = std::fs::read_dir(lessons_folder())
        .unwrap()
        .map(|f| f.unwrap().file_name().into_string().unwrap())
        .filter(|name| name != "index.json" && !name.ends_with(".schema.json"))
        .collect();
    assert_eq!(files, course.iter().map(|id| format!("{id}.json")).collect());
    assert!(course.len() >= 10);
    for id in &course {
        assert_eq!(&shipped(id).id, id);
    }
    let first = shipped(&course[0]);
    assert_eq!((first.mode, first.steps.as_slice()), (Mode::Guided, &[StepId::NameParts][..]));
    let last = shipped(course.last().unwrap());
    assert_eq!(last.mode, Mode::Assessment);
    assert_eq!(last.steps, StepId::OF_PROCEDURE);
}

/// How many learners more than three do each lesson: LESSON_CODES, none when it is not set.
fn lesson_codes() -> u32 {
    std::env::var("LESSON_CODES").ok().and_then(|n| n.parse().ok()).unwrap_or(0)
}

#[test]
fn every_lesson_is_passed_by_a_careful_learner_and_not_by_an_idle_one() {
    let mut interiors = Interiors::default();
    for id in course() {
        let lesson = shipped(&id);
        let more = (0..lesson_codes()).map(|i| format!("learner {i}"));
        for code in ["a", "b17", "Jo Ü."].map(str::to_owned).into_iter().chain(more) {
            let code = code.as_str();
            let drawn = drawn(&lesson, code).unwrap();
            let interior = interiors.of(&drawn.spec);
            for &gauge in Gauge::ALL {
                let log = log_with(&lesson, &drawn, interior, 0, gauge);
                let attempt = replay(&lesson, &drawn, interior, &log).unwrap();
                let score = lesson_score(&lesson, &drawn, interior, &attempt.state);
                let remarks: Vec<String> = score
                    .steps
                    .iter()
                    .map(|s| format!("{} {:?}: {:?}", s.id.id(), s.score, s.reasons))
                    .collect();
                let target = drawn.case.target;
                if score.total < 1.0 {
                    println!(
                        "{id} {code} {} {} {}: {:.3}",
                        drawn.spec.name, target.level, target.side, score.total
                    );
                }
                let failed: Vec<_> = score.gates.iter().filter(|g| !g.passed).collect();
                assert!(
                    score.passed,
                    "{id} {code} {gauge:?}: {}\n{}\n{failed:?}",
                    score.total,
                    remarks.join("\n")
                );
                assert_eq!(score.steps.iter().map(|s| s.id).collect::<Vec<_>>(), lesson.steps);
            }

            let idle = replay(&lesson, &drawn, interior, &[Event(0, Action::Finish)]).unwrap();
            let score = lesson_score(&lesson, &drawn, interior, &idle.state);
            assert!(!score.complete && !score.passed && score.total == 0.0);
        }
    }
}

#[test]
fn a_step_done_badly_costs_the_lesson_its_share() {
    let lesson = shipped("square-the-plate");
    let drawn = drawn(&lesson, "").unwrap();
    let mut interiors = Interiors::default();
    let interior = interiors.of(&drawn.spec);
    let log: Vec<Event> = log(&lesson, &drawn, interior, 0)
        .into_iter()
        .map(|Event(tick, action)| match action {
            // The oblique is left 20 degrees short and unsquared.
            Action::Orient { oblique_tenths, .. } if oblique_tenths > 100 => {
                Event(tick, Action::Orient { oblique_tenths: oblique_tenths - 200, tilt_tenths: 0 })
            }
            other => Event(tick, other),
        })
        .collect();
    let attempt = replay(&lesson, &drawn, interior, &log).unwrap();
    let score = lesson_score(&lesson, &drawn, interior, &attempt.state);
    // The true AP has a weight of 1, the oblique of 1.5.
    assert_eq!(score.steps.iter().map(|s| s.score).collect::<Vec<_>>(), [Some(1.0), Some(0.0)]);
    assert!((score.total - 1.0 / 2.5).abs() < 1e-12 && score.complete && !score.passed);
}

#[test]
fn missed_parts_come_back_after_two_others_and_count_less() {
    let lesson = shipped("name-the-parts");
    let drawn = drawn(&lesson, "kim").unwrap();
    let fresh = Exercise::new(&lesson.parts, drawn.case.target, drawn.order_seed);
    let first = fresh.asks().unwrap();
    let mut exercise = fresh.clone();
    let wrong = label(lesson.parts[0], Target { level: Level::L2, side: Side::Right }).unwrap();
    assert!(!exercise.answer(wrong));
    let mut asked = Vec::new();
    while let Some(label) = exercise.asks() {
        asked.push(label);
        assert!(exercise.answer(label));
    }
    assert_eq!(asked.iter().position(|l| *l == first), Some(2));
    assert_eq!(asked.len(), lesson.parts.len());
    assert!(!exercise.answer(first), "nothing is asked any more");

    let mut interiors = Interiors::default();
    let interior = interiors.of(&drawn.spec);
    let score_with = |interior, misses| {
        let attempt = replay(&lesson, &drawn, interior, &log(&lesson, &drawn, interior, misses)).unwrap();
        lesson_score(&lesson, &drawn, interior, &attempt.state).total
    };
    let all = lesson.parts.len() as f64;
    assert_eq!(score_with(interior, 0), 1.0);
    assert!((score_with(interior, 1) - (all - 0.5) / all).abs() < 1e-12);
    assert!((score_with(interior, 3) - (all - 1.5) / all).abs() < 1e-12);
    // Of one who only missed it is nought, and not minus nought, which a receipt would print as such.
    let missed = log(&lesson, &drawn, interior, 1);
    let attempt = replay(&lesson, &drawn, interior, &missed[..1]).unwrap();
    let step = lesson_score(&lesson, &drawn, interior, &attempt.state).steps.swap_remove(0);
    assert_eq!((step.id, step.score.map(f64::to_bits)), (StepId::NameParts, Some(0.0_f64.to_bits())));

    // Another learner is asked in another order.
    let orders: BTreeSet<String> = (0..20_u64)
        .map(|seed| format!("{:?}", Exercise::new(&lesson.parts, drawn.case.target, seed).asks()))
        .collect();
    assert!(orders.len() > 3, "{orders:?}");
}

#[test]
fn parts_that_can_be_asked_have_an_outline_on_that_bone() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    for level in Level::TARGETS {
        let bone = patient.bone(level);
        let drawn: BTreeSet<Part> = bone.outer.tags.iter().map(|&tag| bone.label(tag).part).collect();
        for part in LessonPart::ALL.iter().map(|&part| Part::from(part)) {
            assert_eq!(has_part(level, part), drawn.contains(&part), "{level} {part:?}");
        }
        for side in Side::BOTH {
            for &part in LessonPart::ALL {
                let asked = serde_json::from_value(json!({ "part": part })).unwrap();
                let label = label(asked, Target { level, side }).unwrap();
                let there = bone.outer.tags.iter().any(|&tag| bone.label(tag) == label);
                assert_eq!(there, has_part(level, label.part), "{label:?}");
            }
        }
    }
}

#[test]
fn draws_are_even_and_the_same_for_the_same_code() {
    let lesson = shipped("views-homework");
    let mut counts = std::collections::BTreeMap::new();
    for i in 0..6000 {
        let code = format!("learner {i}");
        let d = drawn(&lesson, &code).unwrap();
        assert_eq!(d, drawn(&lesson, &format!("  {code} ")).unwrap());
        *counts.entry((d.spec.name, d.case.target.level.name(), d.case.target.side.name())).or_insert(0) += 1;
    }
    // Thirty equally likely outcomes: 200 each, give or take four standard deviations.
    assert_eq!(counts.len(), 30);
    assert!(counts.values().all(|n| (144..=256).contains(n)), "{counts:?}");
}

#[test]
fn a_lesson_reads_back_from_file_and_link() {
    for id in course() {
        let lesson = shipped(&id);
        assert_eq!(Lesson::from_json(&lesson.to_json()).unwrap(), lesson);
        let fragment = link::fragment(&lesson).unwrap();
        let without_schema = Lesson { schema: None, ..lesson.clone() };
        for address in [
            fragment.clone(),
            format!("#{fragment}"),
            format!("https://example.org/a/?x=1#level=L4&{fragment}"),
            format!("https://example.org/a/#{fragment}&level=L4"),
            fragment.trim_start_matches("lesson=").to_owned(),
        ] {
            assert_eq!(link::lesson(&address).unwrap(), without_schema, "{address}");
        }
        assert_eq!(without_schema.hash(), lesson.hash());
    }
}

#[test]
fn the_hash_is_of_what_is_asked_and_not_of_its_texts() {
    let lesson = shipped("true-ap");
    let mut same = lesson.clone();
    same.title.0.insert("de".to_owned(), "Die echte a.-p. Aufnahme".to_owned());
    same.intro.0.insert("en".to_owned(), "Other words".to_owned());
    assert_eq!(same.hash(), lesson.hash());
    for other in [
        Lesson { pass_mark: 91, ..lesson.clone() },
        Lesson { id: "true-ap-2".to_owned(), ..lesson.clone() },
        Lesson { exposures: Some(true), ..lesson.clone() },
    ] {
        assert_ne!(other.hash(), lesson.hash());
    }
}

/// What a lesson changes is in its hash and in its patient; one that changes nothing keeps the hash that it had before there were changes.
#[test]
fn a_lesson_may_change_its_patient() {
    let lesson = Lesson::from_json(&with("patient", json!({ "name": "curved", "seed": 7 }))).unwrap();
    assert!(!lesson.to_json().contains("changed"));
    let changed = json!({ "name": "curved", "seed": 7, "changed": { "curve_deg": 9, "size": 0.95 } });
    let other = Lesson::from_json(&with("patient", changed)).unwrap();
    assert_ne!(lesson.hash(), other.hash());
    assert_eq!(Lesson::from_json(&other.to_json()).unwrap(), other);
    let spec = drawn(&other, "kim").unwrap().spec;
    assert_eq!((spec.curve_deg, spec.size, spec.seed, spec.variation), (9.0, 0.95, 7, 0.0));
    let mut interiors = Interiors::default();
    let l4 = |interior: &downbeam::anatomy::interior::Interior| interior.level(Level::L4).centre;
    let (a, b) = (drawn(&lesson, "kim").unwrap().spec, spec);
    assert_ne!(l4(interiors.of(&a)), l4(interiors.of(&b)));
    assert_eq!(l4(interiors.of(&a)), l4(interiors.of(&a)));

    // A patient drawn by the learner's code has dimensions of its own, unless the lesson says otherwise.
    let own = json!({ "name": "average", "seed_from": "learner" });
    let own = drawn(&Lesson::from_json(&with("patient", own)).unwrap(), "kim").unwrap().spec;
    assert_eq!(own.variation, 1.0);
    let alike = json!({ "name": "average", "seed_from": "learner", "changed": { "variation": 0 } });
    let alike = drawn(&Lesson::from_json(&with("patient", alike)).unwrap(), "kim").unwrap().spec;
    assert_eq!(alike.variation, 0.0);
}

#[test]
fn texts_fall_back_by_language() {
    let mut lesson = shipped("true-ap");
    lesson.title.0.insert("de".to_owned(), "Deutsch".to_owned());
    lesson.title.0.insert("pt-BR".to_owned(), "Brasil".to_owned());
    let in_language = |tag| lesson.title.in_language(tag).to_owned();
    assert_eq!(
        ["de-AT", "de", "pt-br", "pt", "fr"].map(in_language),
        ["Deutsch", "Deutsch", "Brasil", "A true AP", "A true AP"]
    );
}

/// A good lesson with one thing changed.
fn with(path: &str, value: Value) -> String {
    let mut lesson = json!({
        "format": 1, "id": "x", "title": { "en": "X" }, "intro": { "en": "Do it." }, "mode": "practice",
        "steps": ["true_ap", "oblique"], "patient": { "name": "average" }, "level": "L4", "side": "left", "pass_mark": 80
    });
    let mut place = &mut lesson;
    for key in path.split('.') {
        place = &mut place[key];
    }
    *place = value;
    lesson.to_string()
}

#[test]
#[expect(clippy::too_many_lines, reason = "a table of faults")]
fn what_is_wrong_is_one_sentence_with_place_found_and_allowed() {
    assert!(Lesson::from_json(&with("side", json!("right"))).is_ok());
    for (text, said) in [
        (with("colour", json!(1)), "colour: unknown field 'colour': allowed are '$schema', 'format'"),
        (with("format", json!(2)), "format: 2 is no lesson format that is known here: allowed is 1"),
        (with("id", json!("Über")), "id: 'Über' is no id: allowed are 1 to 64 small letters"),
        (with("id", json!(7)), "id: found integer '7': allowed is a string"),
        (with("title", json!({ "de": "X" })), "title: there is no 'en'"),
        (with("title", json!({ "en": " " })), "title.en: found 1 characters: allowed are 1 to 120"),
        (with("title", json!({ "en": "X", "e n": "X" })), "title.e n: this is no language"),
        (with("intro", json!({ "en": "a\u{7}" })), "intro.en: found a control character"),
        (
            with("mode", json!("exam")),
            "mode: unknown variant 'exam': allowed are 'guided', 'practice', 'assessment'",
        ),
        (
            with("steps", json!([])),
            "steps: there is no step: allowed are name_parts, target_centred, true_ap",
        ),
        (
            with("steps", json!(["oblique", "flight"])),
            "steps[1]: unknown variant 'flight': allowed are 'name_parts'",
        ),
        (
            with("steps", json!(["oblique", "true_ap"])),
            "steps: 'true_ap' comes after 'oblique': allowed is each once",
        ),
        (with("steps", json!(["oblique", "oblique"])), "steps: 'oblique' comes after 'oblique'"),
        (with("steps", json!(["radiation"])), "steps: 'radiation' needs exposures"),
        (with("steps", json!(["name_parts"])), "parts: 'name_parts' wants parts to name"),
        (with("parts", json!([{ "part": "pars" }])), "parts: parts want the step 'name_parts'"),
        (
            with("parts", json!([{ "part": "tail" }])),
            "parts[0].part: unknown variant 'tail': allowed are 'body'",
        ),
        (with("patient", json!({})), "patient: allowed is one of 'name' and 'any_of'"),
        (with("patient.any_of", json!(["average"])), "patient: allowed is one of 'name' and 'any_of'"),
        (with("patient.name", json!("nobody")), "patient: unknown patient 'nobody': allowed are average"),
        (
            with("patient", json!({ "any_of": [] })),
            "patient.any_of: found 0 to draw from: allowed are 1 to 64",
        ),
        (
            with("patient", json!({ "any_of": ["small", "small"] })),
            "patient.any_of: the same stands there twice",
        ),
        (
            with("patient.seed", json!(-1)),
            "patient.seed: found integer '-1': allowed is a whole number from 0 to 4294967295",
        ),
        (
            with("patient", json!({ "name": "small", "changed": { "curve_deg": 40 } })),
            "patient.changed.curve_deg: curve_deg of 40 degrees is not possible: allowed are -12 to 12",
        ),
        (
            with("patient", json!({ "name": "small", "changed": { "height": 1 } })),
            "patient.changed.height: unknown field 'height' of a patient: allowed are size, turned_deg,",
        ),
        (
            with("patient", json!({ "name": "small", "changed": { "size": "big" } })),
            "patient.changed.size: found string \"big\": allowed is a number",
        ),
        (
            with("patient", json!({ "name": "small", "seed": 1, "seed_from": "learner" })),
            "patient: allowed is one of 'seed' and 'seed_from'",
        ),
        (
            with("level", json!("T12")),
            "level: unknown variant 'T12': allowed are 'L1', 'L2', 'L3', 'L4', 'L5', 'S1'",
        ),
        (with("level", json!(4)), "level: found integer '4': allowed is a name or {\"any_of\": [names]}"),
        (with("level", json!({ "any_of": ["L4", "L9"] })), "level.any_of[1]: unknown variant 'L9'"),
        (with("level", json!({ "any": ["L4"] })), "level.any: unknown field 'any': allowed is 'any_of'"),
        (with("side", json!({ "any_of": ["left", "left"] })), "side.any_of: the same stands there twice"),
        (with("exposures", json!("yes")), "exposures: found string \"yes\": allowed is a boolean"),
        (
            with("tolerances", json!({ "speed": 1 })),
            "tolerances.speed: unknown field 'speed': allowed are 'squared_deg'",
        ),
        (
            with("tolerances", json!({ "squared_deg": { "full": 8, "none": 2 } })),
            "tolerances.squared_deg: found full 8 and none 2: allowed are 0 <= full < none <= 90",
        ),
        (
            with("tolerances", json!({ "depth_mm": { "full": 1 } })),
            "tolerances.depth_mm: missing field 'none'",
        ),
        (with("par", json!({ "exposures": 5 })), "par: pars count exposures, and this lesson has none"),
        (with("pass_mark", json!(0)), "pass_mark: found 0: allowed are 1 to 100 percent"),
        (with("pass_mark", json!(70.5)), "pass_mark: found floating point '70.5': allowed is a whole number"),
        ("[]".to_owned(), "found a list: a lesson is an object, in braces"),
        ("".to_owned(), "the JSON ends too early (line 1, column 0"),
        ("{\"format\": 1,".to_owned(), "the JSON ends too early (line 1, column 13"),
        ("not json".to_owned(), "this is no JSON (line 1, column 2"),
        (with("side", json!("left")) + "x", "after the lesson: this is no JSON"),
        (" ".repeat(40_000), "the lesson is longer than 32768 bytes, the most that is allowed"),
    ] {
        let error = Lesson::from_json(&text).unwrap_err().to_string();
        assert!(error.contains(said), "wanted: {said}\nfound:  {error}");
        assert_eq!(error.lines().count(), 1, "{error}");
    }
}

#[test]
fn rules_across_keys() {
    let lesson = |change: Value| {
        let mut lesson: Value = serde_json::from_str(&with("side", json!("left"))).unwrap();
        lesson.as_object_mut().unwrap().extend(change.as_object().unwrap().clone());
        problems(&Lesson::parsed(&lesson.to_string()).unwrap())
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
    };
    assert_eq!(lesson(json!({})), Vec::<String>::new());
    for (change, said) in [
        (
            json!({ "level": "S1", "approach": "infraneural" }),
            "approach: S1 is entered through its posterior foramen",
        ),
        (json!({ "level": { "any_of": ["L5", "S1"] }, "approach": "open" }), "approach: S1 is entered"),
        (json!({ "mode": "assessment", "exposures": false }), "exposures: found false: in an assessment"),
        (
            json!({ "exposures": true, "par": { "exposures": 0 } }),
            "par.exposures: found 0: allowed are 1 to 500",
        ),
        (
            json!({ "steps": ["name_parts"], "level": "S1", "parts": [{ "part": "pars" }] }),
            "parts: S1 has no part 'pars': allowed are body, lamina, superior_articular_process, ala, median_crest",
        ),
        (
            json!({ "steps": ["name_parts"], "level": "S1", "parts": [{ "part": "body", "bone": "below" }] }),
            "parts: there is no bone below S1",
        ),
        (
            json!({ "steps": ["name_parts"], "parts": [{ "part": "body" }, { "part": "body" }] }),
            "parts: 'body' is asked twice",
        ),
    ] {
        let found = lesson(change);
        assert!(found.len() == 1 && found[0].starts_with(said), "wanted: {said}\nfound: {found:?}");
    }
    // All faults are reported at once.
    let found = lesson(json!({ "pass_mark": 101, "id": "", "steps": [], "patient": {} }));
    assert_eq!(found.len(), 4, "{found:?}");
}

#[test]
fn a_link_that_holds_no_lesson_says_why() {
    let good = link::fragment(&shipped("true-ap")).unwrap();
    for (link, said) in [
        (String::new(), "there is no lesson in the link"),
        ("https://example.org/#level=L4".to_owned(), "there is no lesson in the link"),
        ("#lesson=".to_owned(), "there is no lesson in the link"),
        ("#lesson=a+b".to_owned(), "the link is broken"),
        (good[..good.len() - 9].to_owned(), "the "),
        ("#lesson=e30".to_owned(), "missing field 'format'"),
        ("#lesson=_w".to_owned(), "the link is broken"),
        (format!("#lesson={}", "A".repeat(9000)), "the link has 9000 characters"),
    ] {
        let error = link::lesson(&link).unwrap_err().to_string();
        assert!(error.contains(said), "wanted: {said}\nfound:  {error}");
    }
    let mut long = shipped("true-ap");
    long.intro.0.insert("de".to_owned(), "ä".repeat(3500));
    assert!(link::fragment(&long).unwrap_err().to_string().contains("a link holds 6144"));
}
