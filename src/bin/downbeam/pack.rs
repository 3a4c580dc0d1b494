//! `pack`: the page as something to put elsewhere: a site, one file, a package for a learning platform, a package for npm.
//!
//! What comes out depends on what goes in and on nothing else: files in the order of their names, no time stamps.

mod bundle;
mod compressed;
mod course;
mod files;
mod head;
mod manifest;
mod module;
mod npm;
mod offline;
mod single;
mod specifiers;
mod xml;
mod zip_file;

use crate::build;
use crate::command::{Command, UsageError, print, text, unknown};
use crate::lesson_source;
use crate::out_file::{self, may_write};
use crate::project;
use anyhow::{Context, bail};
use course::Course;
use downbeam::lesson::file::Lesson;
use files::Files;
use lexopt::{Arg, Parser};
use std::fs;
use std::path::{Path, PathBuf};

pub(crate) const COMMAND: Command = Command {
    name: "pack",
    summary: "Pack the page: a site, one file, or lessons for a learning platform",
    usage: "Usage: downbeam pack FORM [--lesson FILE] --out OUT [OPTIONS]\n\n\
            Builds the WebAssembly and packs the page with it. FORM is one of\n\n\
            --site       A folder to put on any web server: the page, the frame's page player.html, all lessons\n\
            --single     One HTML file that runs without a server, with all lessons\n\
            --scorm12    A zip for a platform that takes SCORM 1.2, with one lesson or a course of several\n\
            --scorm2004  The same for SCORM 2004 4th edition\n\
            --cmi5       The same for cmi5\n\
            --npm        A folder that a bundler's user installs, with the custom element\n\n\
            --lesson FILE  The lesson of a package; with --site or --single the one lesson that it opens. For a\n\
            \x20              platform it may be given more than once, or name a folder: each lesson has its own marks there\n\
            --title TEXT   What a course of several lessons is called\n\
            --out OUT      Where to; a folder must be new or empty\n\
            --lrs ORIGIN   With --site: a record store elsewhere that xAPI launches may send to, such as\n\
            \x20              https://lrs.example.org\n\
            --no-build     Pack what was built before\n\
            --force        Write over a file that is there already; never over a lesson\n\n\
            The lesson is checked first, as by 'downbeam check'.\n",
    run,
};

/// What is packed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    Site,
    Single,
    Scorm12,
    Scorm2004,
    Cmi5,
    Npm,
}

impl Form {
    const ALL: [(&'static str, Self); 6] = [
        ("site", Self::Site),
        ("single", Self::Single),
        ("scorm12", Self::Scorm12),
        ("scorm2004", Self::Scorm2004),
        ("cmi5", Self::Cmi5),
        ("npm", Self::Npm),
    ];

    fn option(self) -> String {
        let name = Self::ALL.into_iter().find(|(_, form)| *form == self).map_or("", |(name, _)| name);
        format!("--{name}")
    }

    /// Whether it carries lessons for a platform.
    fn is_for_platform(self) -> bool {
        matches!(self, Self::Scorm12 | Self::Scorm2004 | Self::Cmi5)
    }
}

/// What was asked for.
struct Asked {
    form: Form,
    /// In the order given; with `Site` and `Single` one at most.
    lessons: Vec<Lesson>,
    title: Option<String>,
    /// What is read, other than the page.
    inputs: Vec<PathBuf>,
    out: PathBuf,
    lrs: Option<String>,
    build: bool,
    force: bool,
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let asked = asked(parser)?;
    let folder = project::folder("www")?;
    let out = &asked.out;
    if matches!(asked.form, Form::Site | Form::Npm) {
        must_be_empty(out)?;
    } else {
        may_write(&[("--out", out)], &asked.inputs, asked.force)?;
    }
    if asked.build {
        build::into_www(&folder)?;
    }
    let packed = packed(&asked, &folder)?;
    let said = match packed {
        Packed::Folder(files) => files.write(out).map(|()| files.summary())?,
        Packed::File(bytes) => {
            out_file::write_below(out, &bytes)?;
            files::size(bytes.len())
        }
    };
    print(&format!("Packed {} ({said})\n", out.display()))
}

fn asked(parser: &mut Parser) -> anyhow::Result<Asked> {
    let (mut form, mut title, mut out, mut lrs, mut build, mut force) = (None, None, None, None, true, false);
    let mut sources = Vec::new();
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("lesson") => sources.push(text(parser, "--lesson")?),
            Arg::Long("title") => title = Some(text(parser, "--title")?),
            Arg::Long("out") => out = Some(text(parser, "--out")?),
            Arg::Long("lrs") => lrs = Some(text(parser, "--lrs")?),
            Arg::Long("no-build") => build = false,
            Arg::Long("force") => force = true,
            Arg::Long(name) => match Form::ALL.into_iter().find(|(known, _)| *known == name) {
                Some((_, found)) if form.is_none_or(|f| f == found) => form = Some(found),
                Some(_) => return Err(UsageError("pack makes one form at a time".to_owned()).into()),
                None => return Err(unknown(&COMMAND, &argument).into()),
            },
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    let Some(form) = form else {
        let known = Form::ALL.map(|(_, form)| form.option()).join(", ");
        return Err(UsageError(format!("pack wants to know what to make: allowed are {known}")).into());
    };
    let Some(out) = out else {
        return Err(UsageError("pack wants --out, such as --out lesson.zip".to_owned()).into());
    };
    if form == Form::Npm && !sources.is_empty() {
        return Err(UsageError("--npm carries all lessons: leave --lesson out".to_owned()).into());
    }
    if lrs.is_some() && form != Form::Site {
        return Err(UsageError(
            "--lrs is for --site: a cmi5 package is told its store when it is launched".to_owned(),
        )
        .into());
    }
    if let Some(found) = lrs.as_deref().filter(|l| !is_origin(l)) {
        let sentence = format!("--lrs wants an origin such as https://lrs.example.org, not '{found}'");
        return Err(UsageError(sentence).into());
    }
    if form.is_for_platform() && sources.is_empty() {
        let sentence = format!("{} carries a lesson: say which with --lesson FILE", form.option());
        return Err(UsageError(sentence).into());
    }
    let lessons = lessons(&sources)?;
    if lessons.len() > 1 && !form.is_for_platform() {
        let sentence = format!("{} opens one lesson, not {}", form.option(), lessons.len());
        return Err(UsageError(sentence).into());
    }
    match (lessons.len() > 1, title.as_deref().map(str::trim)) {
        (true, None | Some("")) => {
            let sentence = "a course of several lessons wants a title: say it with --title TEXT";
            return Err(UsageError(sentence.to_owned()).into());
        }
        (_, Some(title)) if title.chars().any(char::is_control) => {
            let sentence = "--title wants one line of text without control characters";
            return Err(UsageError(sentence.to_owned()).into());
        }
        (false, Some(_)) => {
            let sentence = "--title is for a course of several lessons: one lesson has its own";
            return Err(UsageError(sentence.to_owned()).into());
        }
        _ => {}
    }
    let inputs = sources.iter().map(Path::new).filter(|p| p.is_file()).map(PathBuf::from);
    Ok(Asked { form, lessons, title, inputs: inputs.collect(), out: out.into(), lrs, build, force })
}

/// The lessons of all arguments, of which no two may have the same id.
fn lessons(sources: &[String]) -> anyhow::Result<Vec<Lesson>> {
    let mut all: Vec<Lesson> = Vec::new();
    for source in sources {
        for lesson in lesson_source::lessons(source)? {
            if all.iter().any(|other| other.id == lesson.id) {
                bail!("{source} holds lesson '{}' again: a package carries it once", lesson.id);
            }
            all.push(lesson);
        }
    }
    Ok(all)
}

/// Scheme, host and perhaps port, as they stand in a content security policy.
fn is_origin(text: &str) -> bool {
    let Some(host) = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://")) else {
        return false;
    };
    !host.is_empty() && host.chars().all(|c| c.is_ascii_alphanumeric() || "-.:[]".contains(c))
}

fn must_be_empty(folder: &Path) -> anyhow::Result<()> {
    if !folder.exists() {
        return Ok(());
    }
    let mut inside =
        fs::read_dir(folder).with_context(|| format!("cannot pack into {}", folder.display()))?;
    if inside.next().is_some() {
        bail!("{} is not empty: give a folder that is new or empty", folder.display());
    }
    Ok(())
}

enum Packed {
    Folder(Files),
    File(Vec<u8>),
}

fn packed(asked: &Asked, project: &Path) -> anyhow::Result<Packed> {
    let www = Files::of_www(&project.join("www"))?;
    let licences = Files::licences(project)?;
    Ok(match asked.form {
        Form::Site => Packed::Folder(site(asked, www, licences, project)?),
        Form::Npm => Packed::Folder(npm::package(&www, licences)?),
        Form::Single => Packed::File(single::page(&www, asked.lessons.first())?.into_bytes()),
        Form::Scorm12 | Form::Scorm2004 | Form::Cmi5 => {
            let course = Course::of(&asked.lessons, asked.title.as_deref());
            Packed::File(zip_file::zip(&lesson_package(asked.form, &course, &www, licences)?)?)
        }
    })
}

/// The page with its lessons, its documents and what makes it work offline.
fn site(asked: &Asked, www: Files, licences: Files, project: &Path) -> anyhow::Result<Files> {
    let mut files = www.without_workbench();
    for page in ["index.html", "player.html"] {
        let mut html = files.text(page)?;
        if let Some(lrs) = &asked.lrs {
            html = head::allowing_connections(&html, &format!("'self' {lrs}"))?;
        }
        if !asked.lessons.is_empty() {
            html = head::delivered_by(&html, "page")?;
        }
        files.put(page, html);
    }
    if let Some(lesson) = asked.lessons.first() {
        files.put("lesson.json", lesson.to_json());
    }
    files.put("index.html", head::working_offline(&files.text("index.html")?)?);
    bundle::bundled(&mut files, &["index.html", "player.html"])?;
    files.add(licences);
    files.add_documents(project)?;
    offline::stamp(&mut files)?;
    compressed::beside(&mut files)?;
    Ok(files)
}

/// What a platform unpacks: what the player needs and no more, its lessons, and the platform's table of contents.
fn lesson_package(form: Form, course: &Course<'_>, www: &Files, licences: Files) -> anyhow::Result<Files> {
    let mut files = www.needed_by("player.html")?;
    bundle::bundled(&mut files, &["player.html"])?;
    let name = form.option();
    let mut html = head::delivered_by(&files.text("player.html")?, name.trim_start_matches('-'))?;
    if form == Form::Cmi5 {
        // Where the store is, is known at launch only.
        html = head::allowing_connections(&html, "'self' https: http:")?;
    }
    files.remove("player.html");
    files.add(licences);
    let shared = files.clone();
    for item in &course.items {
        let page = if course.is_one() { html.clone() } else { head::with_lesson(&html, &item.file)? };
        files.put(&item.page, page);
        files.put(&item.file, item.lesson.to_json());
    }
    let (path, table) = match form {
        Form::Scorm12 => ("imsmanifest.xml", manifest::scorm12(course, &shared)),
        Form::Scorm2004 => ("imsmanifest.xml", manifest::scorm2004(course, &shared)),
        _ => ("cmi5.xml", manifest::cmi5(course)),
    };
    files.put(path, table);
    Ok(files)
}
