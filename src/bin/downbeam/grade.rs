//! `grade`: replays receipts and says of each whether its log gives the score that it claims; for a class, which step fails whom.

use crate::all_processors::{in_order, states};
use crate::command::{Command, NotVerified, UsageError, print, printable, source, text, unknown};
use crate::out_file::{self, may_write};
use crate::practice_receipts::{Practised, is_practice};
use crate::receipt_source::{Found, each};
use crate::{lesson_source, list_source, project};
use anyhow::Context;
use downbeam::class::gradebook::Class;
use downbeam::class::list::ClassList;
use downbeam::class::receipt::Lessons;
use downbeam::class::report::{ClassReport, LessonSummary, Row, Status, place, row, unreadable};
use downbeam::class::table::{CsvStyle, Separator, csv, failed, ndjson};
use downbeam::lesson::draw::Interiors;
use lexopt::{Arg, Parser};
use std::fmt::Write;
use std::path::{Path, PathBuf};

pub(crate) const COMMAND: Command = Command {
    name: "grade",
    summary: "Replay receipts: verified or altered, scores by step, the class",
    usage: "Usage: downbeam grade FILES|FOLDERS [OPTIONS]\n\n\
            A file holds one receipt; one that ends in .ndjson or .jsonl holds one a line; of a folder all files below it\n\
            that end in .json, .ndjson, .jsonl or .txt are taken. What platforms give out counts too: a copied field, statements.\n\
            Each gives a row; a bad one stops nothing.\n\n\
            --lesson L     A lesson file, a folder of them, or a homework link; may be given several times. Default: the\n\
            \x20              lessons that come with the project.\n\
            --csv FILE     Write the rows for a spreadsheet\n\
            --ndjson FILE  Write the rows as JSON, one object a line\n\
            --class FILE   The class list, CSV of code and name: names beside codes, and who has handed in nothing\n\
            --gradebook FILE  Write a row a learner: best try of each lesson in percent, passed, tries\n\
            --curves FILE  Write the learning curves of receipts of practice, a row a learner and skill\n\
            --separator S  Of the tables: comma (default), semicolon (with decimal commas) or tab\n\
            --bom          Begin the tables with a byte order mark, which some spreadsheets want\n\
            --force        Write over files that are there already; never over what is read\n\
            --strict       End with exit code 3 unless every receipt is verified\n\
            --summary      Also print each lesson's class: mean by step, and who stays under the pass mark in it\n\n\
            Exit code 0: every path was read, whatever its receipts are; 1: a path is missing or cannot be read; 2: wrong use;\n\
            3: with --strict, a receipt is not verified.\n\n\
            verified        the log gives the score that is claimed, on this learner's own patient\n\
            altered         it does not; the row has the score that the log gives, where it can be replayed\n\
            unknown engine  another version scored it: check it with that one\n\
            unknown lesson  the lesson is not among those given, or asks something else: give its file with --lesson\n\
            unreadable      no receipt\n\n\
            A receipt proves that its log gives its score. It does not prove who did it, that a person did it, or when:\n\
            that comes from where it was handed in. Equal logs under different codes are pointed out.\n",
    run,
};

/// What was asked for.
#[derive(Default)]
struct Asked {
    /// Files and folders of receipts.
    sources: Vec<PathBuf>,
    lessons: Lessons,
    /// What is read, other than receipts.
    inputs: Vec<PathBuf>,
    csv: Option<PathBuf>,
    ndjson: Option<PathBuf>,
    class: Option<PathBuf>,
    gradebook: Option<PathBuf>,
    curves: Option<PathBuf>,
    style: CsvStyle,
    force: bool,
    strict: bool,
    summary: bool,
}

fn asked(parser: &mut Parser) -> anyhow::Result<Asked> {
    let (mut asked, mut given) = (Asked::default(), false);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("lesson") => {
                given = true;
                let source = text(parser, "--lesson")?;
                asked.inputs.push(PathBuf::from(&source));
                lesson_source::lessons(&source)?.into_iter().for_each(|l| asked.lessons.add(l));
            }
            Arg::Long("csv") => asked.csv = Some(PathBuf::from(text(parser, "--csv")?)),
            Arg::Long("ndjson") => asked.ndjson = Some(PathBuf::from(text(parser, "--ndjson")?)),
            Arg::Long("separator") => asked.style.separator = separator(&text(parser, "--separator")?)?,
            Arg::Long("bom") => asked.style.byte_order_mark = true,
            Arg::Long("force") => asked.force = true,
            Arg::Long("class") => asked.class = Some(PathBuf::from(text(parser, "--class")?)),
            Arg::Long("gradebook") => asked.gradebook = Some(PathBuf::from(text(parser, "--gradebook")?)),
            Arg::Long("curves") => asked.curves = Some(PathBuf::from(text(parser, "--curves")?)),
            Arg::Long("strict") => asked.strict = true,
            Arg::Long("summary") => asked.summary = true,
            Arg::Value(value) => asked.sources.push(source(value)?),
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    if asked.sources.is_empty() {
        return Err(UsageError("grade wants receipts, such as grade receipts/".to_owned()).into());
    }
    if !given {
        let folder = project::folder("www/lessons")?.join("www/lessons");
        lesson_source::lessons(&folder.to_string_lossy())?.into_iter().for_each(|l| asked.lessons.add(l));
    }
    Ok(asked)
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let asked = asked(parser)?;
    let missing: Vec<String> =
        asked.sources.iter().filter(|s| !s.exists()).map(|s| s.display().to_string()).collect();
    let list = asked.class.as_deref().map(class_list).transpose()?;
    let outputs: Vec<(&str, &Path)> = [
        ("--csv", &asked.csv),
        ("--ndjson", &asked.ndjson),
        ("--gradebook", &asked.gradebook),
        ("--curves", &asked.curves),
    ]
    .into_iter()
    .filter_map(|(option, file)| Some((option, file.as_deref()?)))
    .collect();
    let inputs: Vec<PathBuf> =
        asked.inputs.iter().chain(&asked.sources).chain(&asked.class).cloned().collect();
    may_write(&outputs, &inputs, asked.force)?;
    let (rows, practised) = rows(&asked.sources, &asked.lessons);
    let report = ClassReport::of(rows);
    if report.rows.is_empty() && practised.is_empty() {
        let names: Vec<String> = asked.sources.iter().map(|s| s.display().to_string()).collect();
        anyhow::bail!(
            "there is no receipt in {}: allowed are .json, .ndjson, .jsonl and .txt files",
            names.join(", ")
        );
    }
    let class = Class::of(&report, &list.clone().unwrap_or_default());
    write_tables(&asked, &report, &class)?;
    if let Some(file) = &asked.curves {
        out_file::write(file, practised.csv(asked.style).as_bytes())?;
    }
    let mut text = rows_in_words(&report);
    if let Some(list) = &list {
        text += &list_in_words(&class, list);
    }
    if asked.summary {
        for class in report.summary(&asked.lessons) {
            text += &summary_in_words(&class);
        }
    }
    text += &totals_in_words(&report);
    if !practised.is_empty() {
        text += &practised.in_words();
    }
    print(&text)?;
    if !missing.is_empty() {
        anyhow::bail!("there is no {}", missing.join(", "));
    }
    let (practice, bad_practice) = practised.counts();
    let bad = report.rows.len() - report.count(Status::Verified) + bad_practice;
    if asked.strict && bad > 0 {
        let all = report.rows.len() + practice;
        return Err(NotVerified(format!("{bad} of {all} receipts are not verified")).into());
    }
    Ok(())
}

fn write_tables(asked: &Asked, report: &ClassReport, class: &Class) -> anyhow::Result<()> {
    if let Some(file) = &asked.csv {
        out_file::write(file, csv(report, asked.style).as_bytes())?;
    }
    if let Some(file) = &asked.ndjson {
        out_file::write(file, ndjson(report).as_bytes())?;
    }
    if let Some(file) = &asked.gradebook {
        out_file::write(file, class.gradebook(asked.style).as_bytes())?;
    }
    Ok(())
}

fn class_list(file: &Path) -> anyhow::Result<ClassList> {
    let text = list_source::text(file)?;
    ClassList::from_csv(&text).with_context(|| format!("cannot use {}", file.display()))
}

/// Who has handed in nothing, and codes that are on no list.
fn list_in_words(class: &Class, list: &ClassList) -> String {
    let who =
        |code: &String| format!("{} ({})", printable(list.name(code).unwrap_or_default()), printable(code));
    let missing: Vec<String> = class.missing.iter().map(who).collect();
    let strange: Vec<String> =
        class.learners.iter().filter(|l| l.name.is_none()).map(|l| printable(&l.code)).collect();
    let mut text = format!("\n{} learners on the list; handed in nothing: ", list.members().len());
    text += &if missing.is_empty() {
        "nobody".to_owned()
    } else {
        format!("{}: {}", missing.len(), missing.join(", "))
    };
    if !strange.is_empty() {
        let _ = write!(text, "\nCodes that are not on it: {}", strange.join(", "));
    }
    text + "\n"
}

fn separator(found: &str) -> Result<Separator, UsageError> {
    Separator::ALL
        .into_iter()
        .find(|(name, _)| *name == found)
        .map(|(_, separator)| separator)
        .ok_or_else(|| UsageError(format!("--separator wants comma, semicolon or tab, not '{found}'")))
}

/// Receipts that are held in memory at once.
const BATCH: usize = 1024;

/// A row a receipt, in order; batch by batch, so that a large class needs little memory. Receipts of practice are taken apart.
fn rows(sources: &[PathBuf], lessons: &Lessons) -> (Vec<Row>, Practised) {
    let mut interiors: Vec<Interiors> = states();
    let mut rows = Vec::new();
    let mut batch: Vec<Found> = Vec::new();
    let mut practice: Vec<Found> = Vec::new();
    for source in sources {
        each(Path::new(source), &mut |found| {
            if is_practice(&found) {
                return practice.push(found);
            }
            batch.push(found);
            if batch.len() == BATCH {
                rows.append(&mut graded(&std::mem::take(&mut batch), lessons, &mut interiors));
            }
        });
    }
    rows.append(&mut graded(&batch, lessons, &mut interiors));
    (rows, Practised::of(&practice))
}

/// Grades a batch on all processors.
fn graded(batch: &[Found], lessons: &Lessons, interiors: &mut [Interiors]) -> Vec<Row> {
    in_order(batch, interiors, |interiors, Found { source, line, text }| match text {
        Ok(text) => row(source, *line, text, lessons, interiors),
        Err(why) => unreadable(source, *line, why.clone()),
    })
}

fn rows_in_words(report: &ClassReport) -> String {
    let mut text = String::new();
    for (i, row) in report.rows.iter().enumerate() {
        let score =
            row.replayed.as_ref().map_or(String::new(), |p| format!("{:.1} %", 100.0 * p.score.total));
        let passed = match &row.replayed {
            Some(p) if p.score.passed => "passed",
            Some(p) if !p.score.complete => "not complete",
            Some(_) => "not passed",
            None => "",
        };
        let (learner, lesson) = row.declared.as_ref().map_or(("", ""), |t| (&t.learner, &t.lesson));
        let _ = write!(
            text,
            "{:>5}  {:<14} {score:>8}  {passed:<12}  {:<16}  {:<28}  {}",
            i + 1,
            row.status.name(),
            printable(learner),
            printable(lesson),
            printable(&place(row))
        );
        for note in [
            (!row.note.is_empty()).then(|| printable(&row.note)),
            row.replayed
                .as_ref()
                .map(|p| failed(&p.score.gates).join(", "))
                .filter(|f| !f.is_empty())
                .map(|f| format!("gates failed: {f}")),
            row.same_log_as.map(|n| format!("same log as row {n}, of another learner")),
            row.alike.map(|(n, share)| {
                format!("{:.0} % in common with row {n}, of another learner", 100.0 * share)
            }),
            row.repeat_of.map(|n| format!("row {n} again")),
        ]
        .into_iter()
        .flatten()
        {
            let _ = write!(text, "\n         {note}");
        }
        text.push('\n');
    }
    text
}

fn summary_in_words(class: &LessonSummary) -> String {
    let mut text = format!(
        "\n{} ({})\n{} receipts, {} verified; {} learners, {} passed; mean {:.1} %\n",
        class.title,
        class.lesson,
        class.receipts,
        class.verified,
        class.learners,
        class.passed,
        100.0 * class.mean_total
    );
    for step in &class.steps {
        let who: Vec<String> = step.below_pass.iter().map(|code| printable(code)).collect();
        let _ = writeln!(
            text,
            "  {:<22} {:>6.1} %  under the pass mark: {}",
            step.name,
            100.0 * step.mean,
            if who.is_empty() { "none".to_owned() } else { format!("{} ({})", who.len(), named(&who)) }
        );
    }
    for gate in class.gates.iter().filter(|gate| !gate.failed.is_empty()) {
        let who: Vec<String> = gate.failed.iter().map(|code| printable(code)).collect();
        let _ = writeln!(text, "  gate {:<17} failed by {} ({})", gate.id.id(), who.len(), named(&who));
    }
    text
}

/// Names, as many as fit on a line; the files have all of them.
fn named(who: &[String]) -> String {
    const SHOWN: usize = 8;
    let more = who.len().saturating_sub(SHOWN);
    let shown = who[..who.len().min(SHOWN)].join(", ");
    if more == 0 { shown } else { format!("{shown} and {more} more") }
}

fn totals_in_words(report: &ClassReport) -> String {
    let counts: Vec<String> = Status::ALL
        .iter()
        .copied()
        .filter(|&s| s == Status::Verified || report.count(s) > 0)
        .map(|s| format!("{} {}", report.count(s), s.name()))
        .collect();
    let (copies, alike) = (report.copies(), report.alike());
    let lesson = if report.count(Status::UnknownLesson) > 0 {
        "A lesson of your own is given with --lesson FILE, FOLDER or LINK.\n"
    } else {
        ""
    };
    format!(
        "\n{} receipts: {}; {copies} with the same log as another learner's, {alike} much like one.\n{lesson}\
         A receipt proves that its log gives its score, not who did it.\n",
        report.rows.len(),
        counts.join(", ")
    )
}
