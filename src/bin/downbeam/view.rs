//! `view`: what the C-arm shows of a patient at one orientation: measures as text or JSON, the radiograph (free, or as an
//! exposure with its dose) as PNG, the outlines as SVG or JSON.

use crate::asked_patient::AskedPatient;
use crate::command::{Command, UsageError, missing, number, print, text, unknown};
use crate::exposure::{Asked, ExposureResult};
use crate::needle_file::{self, NeedleResult};
use crate::out_file::may_write;
use crate::shown::Shown;
use crate::{npy_file, outline_file, png_file, svg_file};
use downbeam::anatomy::names::{Level, Side, UnknownName};
use downbeam::anatomy::patient::Patient;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::outline::OutlineTracer;
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use downbeam::lesson::schema::schema_of_output;
use downbeam::view::best_view::{BestView, ViewKind, best_view};
use downbeam::view::criteria::Target;
use downbeam::view::report::{AskedView, Report, report};
use lexopt::{Arg, Parser};
use serde::Serialize;
use std::fmt::Write;
use std::path::{Path, PathBuf};

pub(crate) const COMMAND: Command = Command {
    name: "view",
    summary: "What the C-arm shows at an orientation: measures, PNG, SVG",
    usage: "Usage: downbeam view --level L4 --side left [--oblique DEG] [--tilt DEG] [OPTIONS]\n\n\
            --level L           L1, L2, L3, L4, L5 or S1\n\
            --side S            left or right: the side that the needle will come from\n\
            --oblique DEG       Receptor towards the patient's left (> 0) or right (< 0). Default 0.\n\
            --tilt DEG          Receptor cephalad (> 0) or caudad (< 0). Default 0.\n\
            --best              Take the best view instead of --oblique and --tilt\n\
            --view V            Which best view: ap, oblique, lateral, or steep-oblique for the way under the root.\n\
            \x20                   Default oblique.\n\
            --patient NAME      One of the patients by name. Default average.\n\
            --with FIELD=NUMBER Change a field of it, such as --with curve_deg=9; more than one may be given.\n\
            \x20                   'downbeam patients' lists names and fields\n\
            --patient-seed N    Which of the patients of that build, a whole number. Default the named one's.\n\
            --image-rotation D  Turn of the picture, degrees clockwise. Default 0.\n\
            --needle FILE       Put a needle in as a JSON file says: entry, needle, moves. Text and JSON tell its\n\
            \x20                   readings, the radiograph shows it\n\
            --json              Print everything that was measured as JSON\n\
            --png FILE          Write the radiograph, grey, 204.8 mm a side at the detector: 512 x 512, of a spot picture\n\
            \x20                   1024 x 1024\n\
            --pixels N          Another size for the free radiograph, 128 to 1024 in steps of 32\n\
            --bone-white        Bone white in the radiograph, as on film; fluoroscopy shows it dark\n\
            --outlines          Draw the outlines of the bones' parts into the radiograph\n\
            --svg FILE          Write the outlines of the bones' parts, to the scale of the detector\n\
            --labels            Name the parts of the oblique view in the SVG\n\
            --outline-json FILE Write the outlines as points in mm on the detector\n\
            --path-length FILE  Write how far each pixel's ray runs through the level's bone, mm (.npy, 32-bit floats)\n\
            --attenuation FILE  Write each pixel's attenuation integral before scatter, blur and noise (.npy likewise)\n\
            --force             Write over files that are there already; never over the needle file\n\n\
            Without an exposure the radiograph is free and without noise. With one it is what the receptor gave, and\n\
            text and JSON tell its technique and dose:\n\
            --spot              One picture of full quality\n\
            --fluoro N          A run of N pulses; the picture is the last one held\n\
            --pulse-rate R      1, 2, 4, 8, 15 or 30 pulses a second. Default 8.\n\
            --low-dose          Low-dose fluoroscopy\n\
            --open W,H          Width and height that the collimator leaves open, shares of the field, 0.2 to 1\n\
            --magnification M   1, 1.4 or 2: a smaller field, spread over all pixels. Default 1.\n\
            --seed N            Seed of the noise, a whole number. Default 0.\n\n\
            A teaching model: not for planning or guiding a procedure.\n",
    run,
};

/// The command line, read.
#[derive(Default)]
struct Options {
    level: Option<Level>,
    side: Option<Side>,
    patient: AskedPatient,
    oblique_deg: Option<f64>,
    tilt_deg: Option<f64>,
    image_rotation_deg: f64,
    best: bool,
    kind: Option<ViewKind>,
    json: bool,
    bone_white: bool,
    outlines: bool,
    labels: bool,
    png: Option<PathBuf>,
    pixels: Option<usize>,
    svg: Option<PathBuf>,
    outline_json: Option<PathBuf>,
    path_length: Option<PathBuf>,
    attenuation: Option<PathBuf>,
    needle: Option<PathBuf>,
    force: bool,
    exposure: Asked,
}

impl Options {
    /// Files that are to be written, by option.
    fn files(&self) -> Vec<(&'static str, &Path)> {
        [
            ("--png", &self.png),
            ("--svg", &self.svg),
            ("--outline-json", &self.outline_json),
            ("--path-length", &self.path_length),
            ("--attenuation", &self.attenuation),
        ]
        .into_iter()
        .filter_map(|(option, file)| Some((option, file.as_deref()?)))
        .collect()
    }
}

fn read(parser: &mut Parser) -> anyhow::Result<Options> {
    let mut options = Options::default();
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("level") => options.level = Some(text(parser, "--level")?.parse()?),
            Arg::Long("side") => options.side = Some(text(parser, "--side")?.parse()?),
            Arg::Long("oblique") => options.oblique_deg = Some(number(parser, "--oblique", "degrees")?),
            Arg::Long("tilt") => options.tilt_deg = Some(number(parser, "--tilt", "degrees")?),
            Arg::Long("image-rotation") => {
                options.image_rotation_deg = number(parser, "--image-rotation", "degrees")?;
            }
            Arg::Long("best") => options.best = true,
            Arg::Long("view") => options.kind = Some(kind_named(&text(parser, "--view")?)?),
            Arg::Long("json") => options.json = true,
            Arg::Long("bone-white") => options.bone_white = true,
            Arg::Long("outlines") => options.outlines = true,
            Arg::Long("labels") => options.labels = true,
            Arg::Long("force") => options.force = true,
            Arg::Long("png") => options.png = Some(text(parser, "--png")?.into()),
            Arg::Long("pixels") => options.pixels = Some(png_file::pixels(&text(parser, "--pixels")?)?),
            Arg::Long("svg") => options.svg = Some(text(parser, "--svg")?.into()),
            Arg::Long("outline-json") => options.outline_json = Some(text(parser, "--outline-json")?.into()),
            Arg::Long("path-length") => options.path_length = Some(text(parser, "--path-length")?.into()),
            Arg::Long("attenuation") => options.attenuation = Some(text(parser, "--attenuation")?.into()),
            Arg::Long("needle") => options.needle = Some(text(parser, "--needle")?.into()),
            Arg::Long(name) => {
                let name = name.to_owned();
                if !options.patient.read(&name, parser)? && !options.exposure.read(&name, parser)? {
                    return Err(unknown(&COMMAND, &Arg::Long(&name)).into());
                }
            }
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    for (useless, why) in [
        (
            options.best && (options.oblique_deg.is_some() || options.tilt_deg.is_some()),
            "--best finds the orientation itself: leave out --oblique and --tilt, or --best",
        ),
        (options.kind.is_some() && !options.best, "--view says which view --best takes: give --best too"),
        (
            options.bone_white && options.png.is_none(),
            "--bone-white is for the radiograph: give --png FILE too",
        ),
        (options.outlines && options.png.is_none(), "--outlines is for the radiograph: give --png FILE too"),
        (
            options.pixels.is_some() && (options.png.is_none() && options.attenuation.is_none()),
            "--pixels is for the radiograph: give --png FILE or --attenuation FILE too",
        ),
        (options.labels && options.svg.is_none(), "--labels is for the SVG: give --svg FILE too"),
    ] {
        if useless {
            return Err(UsageError(why.to_owned()).into());
        }
    }
    Ok(options)
}

fn kind_named(name: &str) -> Result<ViewKind, UnknownName> {
    const KINDS: [(&str, ViewKind); 4] = [
        ("ap", ViewKind::TrueAp),
        ("oblique", ViewKind::Oblique),
        ("lateral", ViewKind::Lateral),
        ("steep-oblique", ViewKind::SteepOblique),
    ];
    KINDS.into_iter().find(|(n, _)| n.eq_ignore_ascii_case(name)).map(|(_, kind)| kind).ok_or_else(|| {
        UnknownName { kind: "view", found: name.to_owned(), allowed: KINDS.map(|(n, _)| n).join(", ") }
    })
}

/// The JSON: the report, and exposure and needle where there are any.
#[derive(Serialize, schemars::JsonSchema)]
struct Printed<'a> {
    #[serde(flatten)]
    report: &'a Report,
    #[serde(flatten)]
    exposed: Option<&'a ExposureResult>,
    #[serde(flatten)]
    needle: Option<&'a NeedleResult>,
}

/// The JSON Schema of what `--json` prints.
pub(crate) fn schema() -> String {
    schema_of_output::<Printed<'static>>("What the C-arm shows, as view --json prints it")
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let options = read(parser)?;
    let inputs: Vec<PathBuf> = options.needle.iter().cloned().collect();
    may_write(&options.files(), &inputs, options.force)?;
    let level = options.level.ok_or_else(|| missing(&COMMAND, "--level", "L4"))?;
    let side = options.side.ok_or_else(|| missing(&COMMAND, "--side", "left"))?;
    let target = Target { level, side };
    // Orientations and settings are refused before the patient is built.
    let beam = options.exposure.beam()?;
    let whole = CArm::at_degrees(options.oblique_deg.unwrap_or(0.0), options.tilt_deg.unwrap_or(0.0))?
        .with_image_rotation(options.image_rotation_deg)?;
    let free = options.pixels.map_or(whole, |pixels| whole.sampled(pixels));
    let asked = beam.as_ref().map_or(free, |beam| beam.arm(&whole));
    let spec = options.patient.spec()?;
    let needle = options.needle.as_deref().map(needle_file::read).transpose()?;
    let patient = Patient::new(&spec);
    let arm = if options.best {
        let kind = options.kind.unwrap_or(ViewKind::Oblique);
        let BestView { orientation, reached } = best_view(&patient.interior, target, kind, &asked);
        if !reached {
            eprintln!("The machine does not reach the best view of {level} {side}: this is the nearest.");
        }
        asked.turned_to(orientation.oblique_deg, orientation.tilt_deg)?
    } else {
        asked
    };
    let projection = Projection::new(&arm, patient.level(level).centre);
    let shown = Shown {
        report: report(&patient, &AskedView::usual(target), &arm),
        outlines: OutlineTracer::default().trace(&patient, &projection),
        patient: &patient,
        target,
        arm,
        projection,
    };
    let needle = needle.map(|file| file.put_in(&patient, target, &arm, &shown.projection)).transpose()?;
    let scene = Scene { patient: &patient, inclusions: needle.as_ref().map_or(&[], |n| &n.inclusions) };
    let mut exposed = None;
    if beam.is_some() || options.png.is_some() || options.attenuation.is_some() {
        let mut radiograph = Radiograph::new(&arm);
        let look = Look { bone_dark: !options.bone_white, ..Look::default() };
        match &beam {
            Some(beam) => exposed = Some(beam.take(&mut radiograph, scene, &projection, &look, &whole)),
            None => drop(radiograph.render(scene, &projection, &look)),
        }
        if let Some(file) = &options.png {
            png_file::write(file, radiograph.grey(), &shown, options.outlines)?;
        }
        if let Some(file) = &options.attenuation {
            npy_file::write(file, arm.pixels, radiograph.attenuation())?;
        }
    }
    if let Some(file) = &options.svg {
        svg_file::write(file, &shown, options.labels)?;
    }
    if let Some(file) = &options.outline_json {
        outline_file::write(file, &shown)?;
    }
    if let Some(file) = &options.path_length {
        npy_file::write(file, arm.pixels, &npy_file::path_length(&shown))?;
    }
    if options.json {
        let all = Printed { report: &shown.report, exposed: exposed.as_ref(), needle: needle.as_ref() };
        print(&(serde_json::to_string_pretty(&all)? + "\n"))
    } else {
        print(&in_words(&shown.report, exposed.as_ref(), needle.as_ref()))
    }
}

/// The report as a short text.
fn in_words(report: &Report, exposed: Option<&ExposureResult>, needle: Option<&NeedleResult>) -> String {
    let mut text = String::new();
    let at = &report.orientation;
    let _ = writeln!(text, "{} {}, patient '{}'", report.level, report.side, report.patient);
    let _ = writeln!(
        text,
        "Receptor at {} (DICOM primary angle {:.1}, secondary {:.1})",
        orientation(at.oblique_deg, at.tilt_deg),
        report.dicom.primary_deg,
        report.dicom.secondary_deg
    );
    let _ = writeln!(text, "\nCriteria (score 0 to 100):");
    for c in &report.criteria {
        let value =
            c.value.map_or_else(|| "not defined here".to_owned(), |v| format!("{:.1} {}", tenths(v), c.unit));
        let _ = writeln!(text, "  {:>3.0}  {}: {value}. {}", 100.0 * c.score, c.name, c.sentence);
    }
    let _ = writeln!(text, "\nViews (score 0 to 100):");
    for v in &report.views {
        let name = match v.view {
            ViewKind::TrueAp => "True AP",
            ViewKind::Oblique => "Oblique",
            ViewKind::Lateral => "Lateral",
            ViewKind::SteepOblique => "Steep oblique",
        };
        let best = orientation(v.best.oblique_deg, v.best.tilt_deg);
        let nearest = if v.reached { "best" } else { "nearest that the machine reaches" };
        let _ = writeln!(text, "  {:>3.0}  {name}: {nearest} at {best}", 100.0 * v.score);
    }
    text += &needle.map(NeedleResult::in_words).unwrap_or_default();
    text += &exposed.map(ExposureResult::in_words).unwrap_or_default();
    let _ = writeln!(text, "\nA teaching model: not for planning or guiding a procedure.");
    text
}

/// An orientation in the trade's words, to a tenth of a degree.
fn orientation(oblique_deg: f64, tilt_deg: f64) -> String {
    let amount = |degrees: f64, positive: &str, negative: &str, none: &str| match tenths(degrees) {
        0.0 => none.to_owned(),
        d => format!("{:.1} degrees {}", d.abs(), if d > 0.0 { positive } else { negative }),
    };
    format!(
        "{}, {}",
        amount(oblique_deg, "oblique to the patient's left", "oblique to the patient's right", "no oblique"),
        amount(tilt_deg, "cephalad", "caudad", "no tilt")
    )
}

/// Rounded to tenths, without a minus before zero.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0 + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn orientations_are_said_in_words() {
        assert_eq!(
            orientation(25.0, -5.04),
            "25.0 degrees oblique to the patient's left, 5.0 degrees caudad"
        );
        assert_eq!(orientation(-0.01, 12.0), "no oblique, 12.0 degrees cephalad");
        assert_eq!(format!("{:.1}", tenths(-1e-9)), "0.0");
    }
}
