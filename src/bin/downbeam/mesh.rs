//! `mesh`: the surface of a bone or of one of its parts as a file.
//!
//! Coordinates are mm in the patient frame of the level: origin at its centre, +x to the patient's left, +y posterior,
//! +z cranial: the isocentre of `view` for the same level.

use crate::asked_patient::AskedPatient;
use crate::command::{Command, UsageError, missing, print, text, unknown};
use crate::mesh_file::{Format, write};
use crate::out_file::may_write;
use anyhow::Context;
use downbeam::anatomy::names::{Label, Level, Part, Side, UnknownName};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::anatomy::tissues::{Tissue, TissueKind};
use downbeam::geometry::frame::Rigid;
use downbeam::geometry::mesh::Mesh;
use lexopt::{Arg, Parser};
use std::collections::BTreeSet;
use std::path::PathBuf;

pub(crate) const COMMAND: Command = Command {
    name: "mesh",
    summary: "The surface of a bone or a part of it, as OBJ or STL",
    usage: "Usage: downbeam mesh --level L4 [--part P] [--side S] [--patient NAME] --out FILE.obj|FILE.stl\n\n\
            --level L       T12, L1, L2, L3, L4, L5 or S1 (the sacrum)\n\
            --part P        One part alone, such as pedicle or superior_articular_process; ribs count to T12,\n\
            \x20               iliac wings to S1. Default: the whole vertebra, or the sacrum.\n\
            --tissue T      In place of a part: disc (below the level), dura (whole), root, ganglion or vessel\n\
            --side S        left or right. Default: both sides of a paired part.\n\
            --patient NAME  One of the patients by name. Default average. --with FIELD=NUMBER and --patient-seed N\n\
            \x20               change it, as in view.\n\
            --out FILE      Wavefront OBJ or binary STL, by the end of the name\n\
            --force         Write over a file that is there already\n\
            --list          Print the parts of the level and write nothing\n\n\
            mm; origin at the level's centre, +x to the patient's left, +y posterior, +z cranial.\n",
    run,
};

#[derive(Default)]
struct Options {
    level: Option<Level>,
    part: Option<Part>,
    tissue: Option<TissueKind>,
    side: Option<Side>,
    patient: AskedPatient,
    out: Option<(PathBuf, Format)>,
    list: bool,
    force: bool,
}

fn read(parser: &mut Parser) -> anyhow::Result<Options> {
    let mut options = Options::default();
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("level") => options.level = Some(level_named(&text(parser, "--level")?)?),
            Arg::Long("part") => options.part = Some(text(parser, "--part")?.parse()?),
            Arg::Long("tissue") => options.tissue = Some(tissue_named(&text(parser, "--tissue")?)?),
            Arg::Long("side") => options.side = Some(text(parser, "--side")?.parse()?),
            Arg::Long("out") => {
                let path = PathBuf::from(text(parser, "--out")?);
                let format = Format::of(&path)?;
                options.out = Some((path, format));
            }
            Arg::Long("list") => options.list = true,
            Arg::Long("force") => options.force = true,
            Arg::Long(name) => {
                let name = name.to_owned();
                if !options.patient.read(&name, parser)? {
                    return Err(unknown(&COMMAND, &Arg::Long(&name)).into());
                }
            }
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    for (useless, why) in [
        (
            options.side.is_some() && options.part.is_none() && options.tissue.is_none(),
            "--side picks one of a paired part: give --part or --tissue too",
        ),
        (
            options.tissue.is_some() && options.part.is_some(),
            "a mesh is of a bone's part or of a tissue: give --part or --tissue",
        ),
        (
            options.list && (options.part.is_some() || options.out.is_some()),
            "--list writes nothing: give only --level",
        ),
    ] {
        if useless {
            return Err(UsageError(why.to_owned()).into());
        }
    }
    Ok(options)
}

/// Unlike a lesson's target, a mesh may be of T12 too.
fn level_named(name: &str) -> Result<Level, UnknownName> {
    Level::ALL.into_iter().find(|l| l.name().eq_ignore_ascii_case(name)).ok_or_else(|| UnknownName {
        kind: "level",
        found: name.to_owned(),
        allowed: Level::ALL.map(Level::name).join(", "),
    })
}

/// The parts of a level that have a mesh of their own, with that mesh (column frame).
pub(crate) fn parts(patient: &Patient, level: Level) -> Vec<(Label, Mesh)> {
    let labels: BTreeSet<Label> = patient
        .bones
        .iter()
        .filter(|bone| bone.level == level)
        .flat_map(|bone| bone.outer.tags.iter().map(|&tag| bone.label(tag)))
        .collect();
    labels
        .into_iter()
        .filter_map(|label| Some((label, patient.part_mesh(level, label.part, label.side)?)))
        .collect()
}

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let options = read(parser)?;
    let level = options.level.ok_or_else(|| missing(&COMMAND, "--level", "L4"))?;
    if !options.list && options.out.is_none() {
        return Err(missing(&COMMAND, "--out", "L4.stl").into());
    }
    if let Some((path, _)) = &options.out {
        may_write(&[("--out", path)], &[], options.force)?;
    }
    let spec = options.patient.spec()?;
    let patient = Patient::new(&spec);
    if options.list {
        return print(&list(&patient, level));
    }
    let mesh = match options.tissue {
        Some(kind) => tissue_mesh(&patient, level, kind, options.side)?,
        None => mesh_of(&patient, level, options.part, options.side)?,
    };
    let mesh = in_patient_frame(mesh, &patient, level);
    if let Some((path, format)) = options.out {
        let what = options.part.map(Part::name).or(options.tissue.map(TissueKind::name));
        let title = title(level, what, options.side, &spec);
        write(&path, format, &mesh, &title).with_context(|| format!("cannot write {}", path.display()))?;
        print(&format!(
            "Wrote {} with {} triangles, {:.0} mm3\n",
            path.display(),
            mesh.triangles.len(),
            mesh.volume()
        ))?;
    }
    Ok(())
}

fn mesh_of(
    patient: &Patient,
    level: Level,
    part: Option<Part>,
    side: Option<Side>,
) -> Result<Mesh, UsageError> {
    let Some(part) = part else {
        return Ok(patient.bone(level).outer.clone());
    };
    patient.part_mesh(level, part, side).ok_or_else(|| {
        let mut names: Vec<&str> = parts(patient, level).iter().map(|(label, _)| label.part.name()).collect();
        names.dedup();
        UsageError(format!("{level} has no part '{}': allowed are {}", part.name(), names.join(", ")))
    })
}

fn tissue_named(name: &str) -> Result<TissueKind, UnknownName> {
    TissueKind::SOFT.into_iter().find(|k| k.name().eq_ignore_ascii_case(name)).ok_or_else(|| UnknownName {
        kind: "tissue",
        found: name.to_owned(),
        allowed: TissueKind::SOFT.map(TissueKind::name).join(", "),
    })
}

/// Fine enough for a root, mm.
const TISSUE_SPACING_MM: f32 = 0.5;

/// All of a kind at a level, in one mesh.
fn tissue_mesh(
    patient: &Patient,
    level: Level,
    kind: TissueKind,
    side: Option<Side>,
) -> Result<Mesh, UsageError> {
    let mut whole = Mesh::default();
    // The sac is one for all levels.
    let wanted = |t: &&Tissue| {
        let here = t.level == Some(level) || (t.level.is_none() && kind == TissueKind::Dura);
        here && (side.is_none() || t.side == side)
    };
    for tissue in patient.interior.tissues().of_kind(kind).filter(wanted) {
        whole.append(&tissue.mesh(TISSUE_SPACING_MM));
    }
    if whole.triangles.is_empty() {
        let side = side.map_or_else(String::new, |s| format!(" on the {s}"));
        return Err(UsageError(format!("{level} has no tissue '{}'{side}", kind.name())));
    }
    Ok(whole)
}

fn in_patient_frame(mesh: Mesh, patient: &Patient, level: Level) -> Mesh {
    mesh.moved(&Rigid { translation: -patient.level(level).centre, ..Rigid::IDENTITY })
}

/// One line a part: `pedicle left`, or `body` in the midline.
fn list(patient: &Patient, level: Level) -> String {
    let line = |(label, _): (Label, Mesh)| match label.side {
        Some(side) => format!("{} {side}\n", label.part.name()),
        None => format!("{}\n", label.part.name()),
    };
    parts(patient, level).into_iter().map(line).collect()
}

fn title(level: Level, what: Option<&str>, side: Option<Side>, spec: &PatientSpec) -> String {
    let side = side.map_or_else(String::new, |s| format!(" {s}"));
    let what = what.map_or_else(String::new, |name| format!(" {name}"));
    format!("downbeam {level}{side}{what}, patient {}, mm, LPS; not for clinical use", spec.name)
}
