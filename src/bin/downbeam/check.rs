//! `check`: whether lesson files can be used, and everything that is wrong with those that cannot.

use crate::command::{Command, UsageError, print, source, text, unknown};
use crate::lesson_source;
use downbeam::anatomy::names::Level;
use downbeam::imaging::c_arm::CArm;
use downbeam::lesson::check::{faults, problems};
use downbeam::lesson::draw::Interiors;
use downbeam::lesson::file::Lesson;
use downbeam::lesson::link;
use downbeam::lesson::read_error::ReadError;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use lexopt::{Arg, Parser};
use serde::Serialize;
use std::fmt::Write;
use std::path::Path;

pub(crate) const COMMAND: Command = Command {
    name: "check",
    summary: "Whether lesson files can be used, and what is wrong with them",
    usage: "Usage: downbeam check FILES|FOLDERS|LINKS [OPTIONS]\n\n\
            Reads lessons and says for each whether it can be used; of one that cannot, everything that is wrong, with its\n\
            place, what was found and what is allowed. Notes tell of views that a patient of the lesson does not give.\n\n\
            --json          One JSON object a lesson: source, id, sha256, problems, notes\n\
            --link ADDRESS  Also print the link that carries each lesson, such as --link https://example.org/course/\n\n\
            Exit code 1 when a lesson cannot be used.\n",
    run,
};

/// What is said of one lesson.
#[derive(Serialize)]
struct Said {
    source: String,
    id: Option<String>,
    sha256: Option<String>,
    problems: Vec<String>,
    notes: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    link: Option<String>,
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let (mut sources, mut json, mut address) = (Vec::new(), false, None);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("json") => json = true,
            Arg::Long("link") => address = Some(text(parser, "--link")?),
            Arg::Value(value) => sources.push(source(value)?.to_string_lossy().into_owned()),
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    if sources.is_empty() {
        return Err(UsageError("check wants lesson files, such as check www/lessons".to_owned()).into());
    }
    let mut all = Vec::new();
    for source in &sources {
        if lesson_source::is_link(source) {
            all.push(said("link", link::lesson(source).map_err(|e| vec![e]), address.as_deref()));
            continue;
        }
        for file in lesson_source::files(Path::new(source))? {
            let name = file.display().to_string();
            let parsed = lesson_source::text(&file)
                .map_err(|e| vec![ReadError::at("", format!("{e:#}"))])
                .and_then(|text| Lesson::parsed(&text).map_err(|_| faults(&text)));
            all.push(said(&name, parsed, address.as_deref()));
        }
    }
    if all.is_empty() {
        anyhow::bail!("there is no lesson in {}: allowed are files that end in .json", sources.join(", "));
    }
    print(&if json { as_json(&all)? } else { as_text(&all) })?;
    let bad = all.iter().filter(|s| !s.problems.is_empty()).count();
    if bad > 0 {
        anyhow::bail!("{bad} of {} lessons cannot be used", all.len());
    }
    Ok(())
}

fn said(source: &str, parsed: Result<Lesson, Vec<ReadError>>, address: Option<&str>) -> Said {
    let source = source.to_owned();
    let lesson = match parsed {
        Ok(lesson) => lesson,
        Err(errors) => {
            let problems = errors.iter().map(ToString::to_string).collect();
            return Said { source, id: None, sha256: None, problems, notes: Vec::new(), link: None };
        }
    };
    let problems: Vec<String> = problems(&lesson).iter().map(ToString::to_string).collect();
    let mut notes = if problems.is_empty() { unreached(&lesson) } else { Vec::new() };
    let link = address.filter(|_| problems.is_empty()).and_then(|address| match link::fragment(&lesson) {
        Ok(fragment) => Some(format!("{}#{fragment}", address.split('#').next().unwrap_or_default())),
        Err(error) => {
            notes.push(error.to_string());
            None
        }
    });
    Said { source, sha256: Some(lesson.hash()), id: Some(lesson.id), problems, notes, link }
}

/// Views that a patient of the lesson (with its fixed seed, or 0) does not give.
fn unreached(lesson: &Lesson) -> Vec<String> {
    let mut notes = Vec::new();
    let mut interiors = Interiors::default();
    for name in lesson.patient.names() {
        let Ok(spec) = lesson.patient.spec(name, lesson.patient.seed.unwrap_or(0)) else { continue };
        let interior = interiors.of(&spec);
        for level in lesson.level.all().iter().map(|&l| Level::from(l)) {
            for &side in lesson.side.all() {
                for kind in ViewKind::ALL {
                    let best = best_view(interior, Target { level, side }, kind, &CArm::default());
                    if !best.reached {
                        notes.push(format!(
                            "the {} view of {level} {side} cannot be made perfect on patient {name}",
                            kind.in_words()
                        ));
                    }
                }
            }
        }
    }
    notes
}

fn as_json(all: &[Said]) -> anyhow::Result<String> {
    let mut text = String::new();
    for said in all {
        text += &serde_json::to_string(said)?;
        text.push('\n');
    }
    Ok(text)
}

fn as_text(all: &[Said]) -> String {
    let mut text = String::new();
    for said in all {
        let verdict = if said.problems.is_empty() { "good" } else { "wrong" };
        let hash = said.sha256.as_deref().map_or(String::new(), |h| format!("  sha256 {}…", &h[..12]));
        let _ = writeln!(text, "{verdict:<6}{}{hash}", said.source);
        for (what, lines) in [("", &said.problems), ("note: ", &said.notes)] {
            for line in lines {
                let _ = writeln!(text, "      {what}{line}");
            }
        }
        if let Some(link) = &said.link {
            let _ = writeln!(text, "      {link}");
        }
    }
    text
}
