//! What a lesson must keep to beyond its types, and reading one that does.

use super::file::{AskedBone, FORMAT, Lesson, LessonApproach, LessonLevel, LessonPart, Mode, Texts};
use super::read_error::ReadError;
use crate::anatomy::names::{Level, Part};
use crate::anatomy::patient::PatientSpec;
use crate::procedure::pointing::has_part;
use crate::procedure::step::StepId;
use crate::score::gate::FURTHER;

/// Longest texts, characters.
const TITLE: usize = 120;
const INTRO: usize = 4000;
/// Most parts to name.
const MOST_PARTS: usize = 24;
/// Most things to draw from.
const MOST_DRAWN: usize = 64;
/// Highest par, pictures and seconds.
const MOST_PAR: u32 = 500;

impl Lesson {
    /// Reads a lesson, types and rules both.
    ///
    /// # Errors
    /// The first thing that is wrong, in one sentence with its place.
    pub fn from_json(text: &str) -> Result<Self, ReadError> {
        let lesson = Self::parsed(text)?;
        match problems(&lesson).into_iter().next() {
            Some(problem) => Err(problem),
            None => Ok(lesson),
        }
    }
}

/// Everything that is wrong with a lesson's text, types and rules; nothing when it can be used. After a text that is no JSON there is
/// nothing else to find.
pub fn faults(text: &str) -> Vec<ReadError> {
    let usual = serde_json::json!({
        "format": FORMAT, "id": "lesson", "title": { "en": "Lesson" }, "intro": { "en": "Lesson" }, "mode": "practice",
        "steps": ["true_ap"], "patient": { "name": "average" }, "level": "L4", "side": "left", "pass_mark": 75,
    });
    let (read, mut found) =
        super::read_error::read_all::<Lesson>(text, "lesson", FORMAT, super::file::MOST_BYTES, &usual);
    // What was put in place of a fault breaks no rule of its own, but a rule may join it with something else.
    let top = |path: &str| path.split(['.', '[']).next().unwrap_or_default().to_owned();
    let faulty: Vec<String> = found.iter().map(|f| top(&f.path)).collect();
    found.extend(read.iter().flat_map(problems).filter(|p| !faulty.contains(&top(&p.path))));
    found
}

/// Everything that is wrong with a lesson; nothing when it can be used.
pub fn problems(lesson: &Lesson) -> Vec<ReadError> {
    let mut found = Vec::new();
    let mut say = |path: &str, problem: String| found.push(ReadError::at(path, problem));
    if lesson.format != FORMAT {
        say("format", format!("{} is not known here: allowed is {FORMAT}", lesson.format));
    }
    if !is_id(&lesson.id) {
        let rule = "allowed are 1 to 64 small letters, digits and hyphens, a letter first";
        say("id", format!("'{}' is no id: {rule}", shortened(&lesson.id)));
    }
    for (name, texts, most) in [("title", &lesson.title, TITLE), ("intro", &lesson.intro, INTRO)] {
        for (path, problem) in text_problems(name, texts, most) {
            say(&path, problem);
        }
    }
    for (path, problem) in steps_problems(lesson) {
        say(path, problem);
    }
    for (path, problem) in patient_problems(lesson) {
        say(&path, problem);
    }
    if let Some(problem) = draw_problem(lesson.level.all()) {
        say("level.any_of", problem);
    }
    if let Some(problem) = draw_problem(lesson.side.all()) {
        say("side.any_of", problem);
    }
    if lesson.level.all().contains(&LessonLevel::S1)
        && matches!(lesson.approach, Some(LessonApproach::Infraneural | LessonApproach::Open))
    {
        say("approach", "S1 is entered through its posterior foramen: allowed is subpedicular".to_owned());
    }
    if lesson.mode == Mode::Assessment && !lesson.exposes() {
        say(
            "exposures",
            "found false: in an assessment allowed is true, nothing is seen without one".to_owned(),
        );
    }
    for (name, tolerance) in lesson.tolerances.unwrap_or_default().list() {
        let Some(t) = tolerance else { continue };
        let most = if name.ends_with("_percent") { 500.0 } else { 90.0 };
        // Said so that a NaN fails.
        if !(t.full >= 0.0 && t.full < t.none && t.none <= most) {
            let rule = format!("allowed are 0 <= full < none <= {most}");
            say(&format!("tolerances.{name}"), format!("found full {} and none {}: {rule}", t.full, t.none));
        }
    }
    if let Some(par) = lesson.par {
        if !lesson.exposes() {
            say(
                "par",
                "pars count exposures, and this lesson has none: leave par out or set exposures".to_owned(),
            );
        }
        for (name, value) in [("par.exposures", par.exposures), ("par.beam_s", par.beam_s)] {
            if let Some(value) = value.filter(|v| !(1..=MOST_PAR).contains(v)) {
                say(name, format!("found {value}: allowed are 1 to {MOST_PAR}"));
            }
        }
    }
    for (path, problem) in gate_problems(lesson) {
        say(&path, problem);
    }
    if !(1..=100).contains(&lesson.pass_mark) {
        say("pass_mark", format!("found {}: allowed are 1 to 100 percent", lesson.pass_mark));
    }
    found
}

fn gate_problems(lesson: &Lesson) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (i, id) in lesson.gates.iter().enumerate() {
        let path = format!("gates[{i}]");
        match FURTHER.iter().find(|(further, _)| further == id) {
            None => {
                let allowed: Vec<&str> = FURTHER.iter().map(|g| g.0.id()).collect();
                let held = "a lesson is held to it by its steps";
                found.push((path, format!("'{}': {held}: allowed are {}", id.id(), allowed.join(", "))));
            }
            Some((_, step)) if !lesson.steps.contains(step) => {
                let wants = format!("'{}' wants the step '{}'", id.id(), step.id());
                found.push((path, format!("{wants}: give both or neither")));
            }
            Some(_) if lesson.gates[..i].contains(id) => {
                found.push((path, format!("'{}' stands there twice: allowed is once", id.id())));
            }
            Some(_) => {}
        }
    }
    found
}

fn is_id(id: &str) -> bool {
    id.len() <= 64
        && id.starts_with(|c: char| c.is_ascii_lowercase())
        && id.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
}

fn shortened(text: &str) -> String {
    text.chars().take(64).map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// Whether a language tag has the outer form of BCP 47 (RFC 5646, section 2.1): subtags of letters and digits, the first of letters.
fn is_language(tag: &str) -> bool {
    let mut subtags = tag.split('-');
    subtags.next().is_some_and(|s| (2..=8).contains(&s.len()) && s.bytes().all(|b| b.is_ascii_alphabetic()))
        && subtags.all(|s| (1..=8).contains(&s.len()) && s.bytes().all(|b| b.is_ascii_alphanumeric()))
}

fn text_problems(name: &str, texts: &Texts, most: usize) -> Vec<(String, String)> {
    let mut found = Vec::new();
    if !texts.0.contains_key("en") {
        found.push((name.to_owned(), "there is no 'en': English is always wanted".to_owned()));
    }
    for (tag, text) in &texts.0 {
        let path = format!("{name}.{}", shortened(tag));
        let length = text.chars().count();
        if !is_language(tag) {
            let rule = "allowed are tags such as 'en', 'de' or 'pt-BR' (BCP 47)";
            found.push((path, format!("this is no language: {rule}")));
        } else if text.trim().is_empty() || length > most {
            found.push((path, format!("found {length} characters: allowed are 1 to {most}")));
        } else if text.chars().any(|c| c.is_control() && c != '\n') {
            found.push((path, "found a control character: allowed are text and line ends".to_owned()));
        }
    }
    found
}

fn steps_problems(lesson: &Lesson) -> Vec<(&'static str, String)> {
    let mut found = Vec::new();
    let steps = &lesson.steps;
    if steps.is_empty() {
        found.push(("steps", format!("there is no step: allowed are {}", step_names())));
    } else if let Some(pair) = steps.windows(2).find(|pair| pair[0] >= pair[1]) {
        let rule = format!("allowed is each once, in the order {}", step_names());
        found.push(("steps", format!("'{}' comes after '{}': {rule}", pair[1].id(), pair[0].id())));
    }
    if steps.contains(&StepId::Radiation) && !lesson.exposes() {
        let problem = "'radiation' needs exposures: set exposures to true or leave the step out";
        found.push(("steps", problem.to_owned()));
    }
    let named = steps.contains(&StepId::NameParts);
    if named == lesson.parts.is_empty() {
        let problem =
            if named { "'name_parts' wants parts to name" } else { "parts want the step 'name_parts'" };
        found.push(("parts", format!("{problem}: give both or neither")));
    }
    if lesson.parts.len() > MOST_PARTS {
        found.push(("parts", format!("found {}: allowed are at most {MOST_PARTS}", lesson.parts.len())));
    }
    for (i, asked) in lesson.parts.iter().take(MOST_PARTS).enumerate() {
        let part = Part::from(asked.part);
        if lesson.parts[..i].contains(asked) {
            found.push(("parts", format!("'{}' is asked twice: allowed is once", part.name())));
        }
        for level in lesson.level.all().iter().map(|&l| Level::from(l)) {
            let bone = if asked.bone == AskedBone::Below { level.below() } else { Some(level) };
            let problem = match bone {
                None => format!("there is no bone below {level}: allowed is the bone 'target'"),
                Some(bone) if !has_part(bone, part) => {
                    let allowed: Vec<&str> = LessonPart::ALL
                        .iter()
                        .map(|&p| Part::from(p))
                        .filter(|&p| has_part(bone, p))
                        .map(Part::name)
                        .collect();
                    format!("{bone} has no part '{}': allowed are {}", part.name(), allowed.join(", "))
                }
                Some(_) => continue,
            };
            found.push(("parts", problem));
        }
    }
    found
}

fn step_names() -> String {
    StepId::ALL.iter().map(|step| step.id()).collect::<Vec<_>>().join(", ")
}

fn patient_problems(lesson: &Lesson) -> Vec<(String, String)> {
    let draw = &lesson.patient;
    let mut found = Vec::new();
    if draw.name.is_some() == draw.any_of.is_some() {
        found.push((
            "patient".to_owned(),
            "allowed is one of 'name' and 'any_of', not both or neither".to_owned(),
        ));
    }
    if draw.seed.is_some() && draw.seed_from.is_some() {
        found.push(("patient".to_owned(), "allowed is one of 'seed' and 'seed_from', not both".to_owned()));
    }
    if let Some(problem) = draw.any_of.as_deref().and_then(draw_problem) {
        found.push(("patient.any_of".to_owned(), problem));
    }
    for (name, problem) in draw.changed.problems() {
        found.push((format!("patient.changed.{}", shortened(&name)), problem));
    }
    for name in draw.names() {
        if let Err(unknown) = PatientSpec::named(name) {
            let allowed = unknown.allowed;
            found.push((
                "patient".to_owned(),
                format!("unknown patient '{}': allowed are {allowed}", shortened(name)),
            ));
        }
    }
    found
}

fn draw_problem<T: PartialEq>(from: &[T]) -> Option<String> {
    if from.is_empty() || from.len() > MOST_DRAWN {
        return Some(format!("found {} to draw from: allowed are 1 to {MOST_DRAWN}", from.len()));
    }
    let twice = from.iter().enumerate().any(|(i, a)| from[..i].contains(a));
    twice.then(|| "the same stands there twice: allowed is once".to_owned())
}
