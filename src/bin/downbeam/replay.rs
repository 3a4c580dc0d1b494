//! `replay`: an attempt or a receipt as a run of films, evenly spaced in time, for a video encoder of one's own.
//!
//! The log is replayed as far as each frame; the film is the free one of where the C-arm stood then, with needle and contrast. Pauses are
//! cut as on the page. No video is written: rav1e, the kept encoder in Rust alone, and a muxer beside it would weigh more than the rest of this
//! tool, and any encoder takes numbered PNG files.

use crate::command::{Command, UsageError, missing, print, source, text, unknown};
use crate::out_file::{self, may_write};
use crate::shown::Shown;
use crate::{lesson_source, png_file, project};
use anyhow::{Context, bail};
use downbeam::anatomy::patient::Patient;
use downbeam::class::receipt::{Lessons, Receipt};
use downbeam::class::receipt_text::receipt_in;
use downbeam::imaging::outline::OutlineTracer;
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use downbeam::lesson::draw::drawn;
use downbeam::procedure::action::{Event, TICKS_PER_S, seconds};
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::attempt_file::AttemptFile;
use downbeam::procedure::log_line;
use downbeam::view::report::{AskedView, report};
use lexopt::{Arg, Parser};
use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};

pub(crate) const COMMAND: Command = Command {
    name: "replay",
    summary: "An attempt or a receipt as numbered films",
    usage: "Usage: downbeam replay FILE --out FOLDER [OPTIONS]\n\n\
            FILE is an attempt as the page saves it, or a receipt. Each frame is the film from where the C-arm stood then, with\n\
            needle and contrast, exposed or not; pauses of more than 2 s are cut short. FOLDER gets frame-0001.png and so on,\n\
            and frames.csv: of each frame its time, where the C-arm stood, how deep the needle was, and what was done. Any\n\
            video encoder takes the frames.\n\n\
            --out FOLDER   Where to; it is made if it is not there\n\
            --rate R       Frames a second, 1 to 25. Default 5.\n\
            --pixels N     Size of a frame, 128 to 1024 in steps of 32. Default 512.\n\
            --bone-white   Bone white, as on film\n\
            --outlines     Draw the outlines of the bones' parts too\n\
            --lesson L     For a receipt: its lesson's file, a folder of them, or a homework link. Default: the lessons that\n\
            \x20              come with the project.\n\
            --force        Write over files that are there already, never over FILE, and remove frame-NNNN.png of a longer\n\
            \x20              run before\n\n\
            A teaching model: not for planning or guiding a procedure.\n",
    run,
};

/// A pause is shown no longer than this, ticks. As on the page.
const PAUSE_TICKS: u32 = 2 * TICKS_PER_S;
/// The last picture stands so long, ticks. As on the page.
const END_TICKS: u32 = TICKS_PER_S;
/// Longest attempt that is read, bytes.
const MOST_BYTES: u64 = 2_000_000;
/// The most frames that are written: over half an hour at the usual rate.
const MOST_FRAMES: usize = 9999;

struct Asked {
    file: PathBuf,
    out: PathBuf,
    rate: u32,
    pixels: usize,
    bone_white: bool,
    outlines: bool,
    lesson: Option<String>,
    force: bool,
}

/// A frame: so many actions were done, and it was this tick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Frame {
    done: usize,
    tick: u32,
}

fn asked(parser: &mut Parser) -> anyhow::Result<Asked> {
    let (mut file, mut out, mut lesson) = (None, None, None);
    let (mut rate, mut pixels, mut bone_white, mut outlines, mut force) = (5, 512, false, false, false);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("out") => out = Some(PathBuf::from(text(parser, "--out")?)),
            Arg::Long("rate") => rate = frames_a_second(&text(parser, "--rate")?)?,
            Arg::Long("pixels") => pixels = png_file::pixels(&text(parser, "--pixels")?)?,
            Arg::Long("bone-white") => bone_white = true,
            Arg::Long("outlines") => outlines = true,
            Arg::Long("lesson") => lesson = Some(text(parser, "--lesson")?),
            Arg::Long("force") => force = true,
            Arg::Value(value) if file.is_none() => file = Some(source(value)?),
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    let Some(file) = file else {
        return Err(UsageError(
            "replay wants an attempt or a receipt, such as replay attempt.json".to_owned(),
        )
        .into());
    };
    let out = out.ok_or_else(|| missing(&COMMAND, "--out", "frames"))?;
    Ok(Asked { file, out, rate, pixels, bone_white, outlines, lesson, force })
}

fn frames_a_second(found: &str) -> Result<u32, UsageError> {
    let wrong = || UsageError(format!("--rate wants 1 to 25, not '{found}'"));
    found.trim().parse().ok().filter(|n| (1..=25).contains(n)).ok_or_else(wrong)
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let asked = asked(parser)?;
    let file = attempt_in(&asked.file, asked.lesson.as_deref())?;
    let frames = frames(&file.log, asked.rate);
    if frames.len() > MOST_FRAMES {
        bail!("{} frames would be written: {MOST_FRAMES} are allowed, so give a lower --rate", frames.len());
    }
    if asked.out.is_file() {
        bail!("{} is a file: --out wants a folder", asked.out.display());
    }
    let names: Vec<PathBuf> =
        (1..=frames.len()).map(|n| asked.out.join(format!("frame-{n:04}.png"))).collect();
    let table = asked.out.join("frames.csv");
    let outputs: Vec<(&str, &Path)> =
        names.iter().chain([&table]).map(|path| ("--out", path.as_path())).collect();
    may_write(&outputs, std::slice::from_ref(&asked.file), asked.force)?;
    let spec = file.spec().with_context(|| {
        format!("{} names a patient that there is not: '{}'", asked.file.display(), file.patient)
    })?;
    let patient = Patient::new(&spec);
    // What cannot be replayed is told before anything is written.
    Attempt::replay(file.case, &patient.interior, &file.log)
        .with_context(|| format!("{} cannot be replayed", asked.file.display()))?;
    let older = frames_beyond(&asked.out, frames.len());
    if let Some(first) = older.first().filter(|_| !asked.force) {
        bail!(
            "{} is there already, of a longer run: give another folder, or --force to remove it",
            first.display()
        );
    }
    fs::create_dir_all(&asked.out).with_context(|| format!("cannot make {}", asked.out.display()))?;
    let rows = draw(&asked, &file, &patient, &frames, &names)?;
    out_file::write(&table, rows.as_bytes())?;
    // What a longer run has left behind would be taken for the end of this one.
    for path in &older {
        fs::remove_file(path).with_context(|| format!("cannot remove {}", path.display()))?;
    }
    let long_s = frames.len() as f64 / f64::from(asked.rate);
    print(&format!(
        "{} frames in {}, {long_s:.1} s at {} a second{}\nA teaching model: not for planning or guiding a procedure.\n",
        frames.len(),
        asked.out.display(),
        asked.rate,
        if older.is_empty() {
            String::new()
        } else {
            format!("; {} frames of a longer run removed", older.len())
        }
    ))
}

/// Frames in a folder beyond the last that is to be written, by their names: `frame-` and four digits.
fn frames_beyond(folder: &Path, count: usize) -> Vec<PathBuf> {
    let number = |name: &str| -> Option<usize> {
        let digits = name.strip_prefix("frame-")?.strip_suffix(".png")?;
        (digits.len() == 4 && digits.bytes().all(|b| b.is_ascii_digit())).then(|| digits.parse().ok())?
    };
    let files = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut found: Vec<PathBuf> = files
        .filter(|file| file.file_name().to_str().and_then(number).is_some_and(|n| n > count))
        .map(|file| file.path())
        .filter(|path| path.is_file())
        .collect();
    found.sort();
    found
}

/// Draws the frames; returns the table.
fn draw(
    asked: &Asked,
    file: &AttemptFile,
    patient: &Patient,
    frames: &[Frame],
    names: &[PathBuf],
) -> anyhow::Result<String> {
    let mut attempt = Attempt::new(file.case);
    let mut radiograph = None;
    let mut rows = "frame,seconds,oblique_deg,tilt_deg,depth_mm,done\n".to_owned();
    let look = Look { bone_dark: !asked.bone_white, ..Look::default() };
    for (i, (frame, name)) in frames.iter().zip(names).enumerate() {
        let before = attempt.log.len();
        for &event in &file.log[before..frame.done] {
            attempt.apply(&patient.interior, event)?;
        }
        let arm = attempt.state.arm.sampled(asked.pixels);
        let (oblique, tilt) = (arm.oblique_rad.to_degrees(), arm.tilt_rad.to_degrees());
        let depth = attempt.state.needle.as_ref().map_or(String::new(), |n| format!("{:.1}", n.depth_mm()));
        let done: Vec<String> = file.log[before..frame.done].iter().map(log_line::write).collect();
        let _ = writeln!(
            rows,
            "{},{:.2},{oblique:.1},{tilt:.1},{depth},{}",
            i + 1,
            seconds(frame.tick),
            done.join("; ")
        );
        if i > 0 && done.is_empty() && attempt.state.injected.is_empty() {
            fs::copy(&names[i - 1], name).with_context(|| format!("cannot write {}", name.display()))?;
            continue;
        }
        let target = attempt.case.target;
        let projection = Projection::new(&arm, patient.level(target.level).centre);
        let mut inclusions = attempt.state.needle_bodies();
        inclusions.extend(attempt.state.contrast_bodies(&patient.interior, frame.tick));
        let radiograph = radiograph.get_or_insert_with(|| Radiograph::new(&arm));
        let grey = radiograph.render(Scene { patient, inclusions: &inclusions }, &projection, &look);
        let outlines =
            if asked.outlines { OutlineTracer::default().trace(patient, &projection) } else { Vec::new() };
        let shown = Shown {
            report: report(patient, &AskedView::usual(target), &arm),
            outlines,
            patient,
            target,
            arm,
            projection,
        };
        png_file::write(name, grey, &shown, asked.outlines)?;
    }
    Ok(rows)
}

/// The frames of a log at so many a second: each action stands until the next, pauses cut.
fn frames(log: &[Event], rate: u32) -> Vec<Frame> {
    let step = f64::from(TICKS_PER_S) / f64::from(rate);
    let mut list = Vec::new();
    // Of the next frame, in ticks as they are played.
    let mut next = 0.0;
    let mut begun = 0.0;
    let mut last_tick = 0;
    for done in 0..=log.len() {
        let length = match log.get(done) {
            Some(event) => (event.0.saturating_sub(last_tick)).min(PAUSE_TICKS),
            None => END_TICKS,
        };
        let end = begun + f64::from(length);
        while next < end - 1e-9 {
            list.push(Frame { done, tick: last_tick + libm::floor(next - begun) as u32 });
            next += step;
        }
        begun = end;
        if let Some(event) = log.get(done) {
            last_tick = event.0.max(last_tick);
        }
    }
    list
}

/// The attempt of a file: itself, or that of a receipt, on the patient that the learner's code draws.
fn attempt_in(path: &Path, lesson: Option<&str>) -> anyhow::Result<AttemptFile> {
    let cannot = || format!("cannot read {}", path.display());
    let size = fs::metadata(path).with_context(cannot)?.len();
    if size > MOST_BYTES {
        bail!("{} has {size} bytes: an attempt has at most {MOST_BYTES}", path.display());
    }
    let text = fs::read_to_string(path).with_context(cannot)?;
    let text = receipt_in(&text);
    let holds =
        |key: &str| serde_json::from_str::<serde_json::Value>(&text).is_ok_and(|v| v.get(key).is_some());
    if holds("case") {
        return serde_json::from_str(&text).with_context(|| format!("{} is no attempt", path.display()));
    }
    let receipt = Receipt::from_json(&text)
        .with_context(|| format!("{} is neither an attempt nor a receipt", path.display()))?;
    let mut lessons = Lessons::default();
    let source = match lesson {
        Some(given) => given.to_owned(),
        None => project::folder("www/lessons")?.join("www/lessons").to_string_lossy().into_owned(),
    };
    lesson_source::lessons(&source)?.into_iter().for_each(|l| lessons.add(l));
    let found = lessons.named(&receipt.lesson).with_context(|| {
        format!("the lesson of {} is not there: give its file with --lesson", path.display())
    })?;
    let drawn = drawn(found, &receipt.learner)?;
    Ok(AttemptFile::of(&drawn.spec, drawn.case, receipt.events()?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use downbeam::procedure::action::Action;

    #[test]
    fn frames_are_even_in_time_and_pauses_are_cut() {
        let log = [Event(20, Action::Spot), Event(24, Action::Spot), Event(20_000, Action::Finish)];
        // A second before the first, a fifth between, two for the long pause, and one at the end.
        let all = frames(&log, 5);
        assert_eq!(all.len(), 5 + 1 + 10 + 5);
        assert_eq!(all[0], Frame { done: 0, tick: 0 });
        assert_eq!(all[5], Frame { done: 1, tick: 20 });
        assert_eq!(all[6], Frame { done: 2, tick: 24 });
        assert_eq!(all[15], Frame { done: 2, tick: 24 + 36 });
        assert_eq!(all[16], Frame { done: 3, tick: 20_000 });
        assert_eq!(frames(&[], 5).len(), 5);
    }
}
