//! `view --needle FILE`: a needle put in by a list of moves, and what it then reads.
//!
//! The file is JSON: where it goes in (a mark on the picture that `view` shows, or a point of the skin with a direction), which needle,
//! and the moves in order. Lengths in mm, angles in degrees; patient axes are DICOM's, from the target's centre.

use crate::command::UsageError;
use anyhow::Context;
use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::patient::Patient;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::inclusion::Inclusion;
use downbeam::imaging::projection::Projection;
use downbeam::needle::compartment::{Compartment, compartment_at};
use downbeam::needle::contact::Contact;
use downbeam::needle::contrast::Bolus;
use downbeam::needle::device::{Device, Gauge, Medium};
use downbeam::needle::shaft::Needle;
use downbeam::needle::shape;
use downbeam::procedure::beam::skin_entry;
use downbeam::procedure::case::Case;
use downbeam::procedure::record::Mark;
use downbeam::procedure::state::State;
use downbeam::score::report::{NeedleReport, needle_report};
use downbeam::view::criteria::Target;
use glam::{DVec2, DVec3};
use serde::{Deserialize, Serialize};
use std::fmt::Write;
use std::path::Path;

/// The file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct NeedleFile {
    #[serde(default = "subpedicular")]
    approach: Approach,
    #[serde(default = "muscle")]
    medium: Medium,
    #[serde(default = "g22")]
    gauge: Gauge,
    #[serde(default = "short")]
    length_mm: u32,
    entry: Entry,
    /// C-arm of the picture that the entry is marked on, [oblique, tilt], degrees; that of `view` when it is left out.
    beam_deg: Option<[f64; 2]>,
    #[serde(default)]
    moves: Vec<Move>,
    /// How long after the last injection the picture is, s.
    #[serde(default)]
    seconds_after: f64,
}

fn subpedicular() -> Approach {
    Approach::Subpedicular
}

fn muscle() -> Medium {
    Medium::Muscle
}

fn g22() -> Gauge {
    Gauge::G22
}

fn short() -> u32 {
    Device::default().length_mm
}

/// Where it goes in.
#[derive(Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Entry {
    /// Over a point of the picture, [right, up] from its middle on the detector, down the beam.
    MarkMm([f64; 2]),
    /// Over the middle of the area that the approach aims at, down the beam.
    AreaCentre {},
    /// Anywhere.
    Free { patient_mm: [f64; 3], direction: [f64; 3] },
}

/// One move.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Move {
    Advance {
        mm: f64,
        #[serde(default)]
        spin: f64,
    },
    WithdrawMm(f64),
    RollDeg(f64),
    /// The hub on the screen, [right, up].
    AngleDeg([f64; 2]),
    InjectMl(f64),
}

/// The needle in the JSON: where it ended, what it touched, and what it was aimed at.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct NeedleResult {
    needle: NeedleReport,
    /// From the skin to the tip, patient frame.
    path_patient_mm: Vec<[f64; 3]>,
    contacts: Vec<Contact>,
    compartment: Compartment,
    /// What the approach aims at: corners in the patient frame and on the detector, mm, and its size.
    area: AimedArea,
    #[serde(skip)]
    pub(crate) inclusions: Vec<Inclusion>,
}

#[derive(Serialize, schemars::JsonSchema)]
struct AimedArea {
    corners_patient_mm: Vec<[f64; 3]>,
    corners_detector_mm: Vec<[f64; 2]>,
    area_mm2: f64,
}

/// Reads the file.
pub(crate) fn read(file: &Path) -> anyhow::Result<NeedleFile> {
    let text = std::fs::read_to_string(file).with_context(|| format!("cannot read '{}'", file.display()))?;
    serde_json::from_str(&text).with_context(|| format!("'{}' is not a needle file", file.display()))
}

/// The longest single move, mm or degrees: enough for anything, and no endless loop.
const LARGEST: f64 = 4000.0;

impl NeedleFile {
    /// Puts the needle in.
    pub(crate) fn put_in(
        &self,
        patient: &Patient,
        target: Target,
        arm: &CArm,
        view: &Projection,
    ) -> anyhow::Result<NeedleResult> {
        let interior = &patient.interior;
        let device = Device { gauge: self.gauge, length_mm: self.length_mm }.checked()?;
        let case = Case { approach: self.approach, medium: self.medium, ..Case::new(target) };
        let mut state = State::new(&case);
        let foramen = interior.foramen(target.level, target.side).context("the level has no foramen")?;
        let area = foramen.area(self.approach);
        let centre = interior.level(target.level).centre;
        let shown = |p: DVec3| (p - centre).to_array();
        let marked = match self.beam_deg {
            Some([oblique_deg, tilt_deg]) => arm.turned_to(oblique_deg, tilt_deg)?,
            None => *arm,
        };
        let beam = Projection::new(&marked, centre);
        let (entry, direction) = self.entry(interior, &beam, area.centre(), centre)?;
        if !matches!(self.entry, Entry::Free { .. }) {
            state.mark = Some(Mark { uv: beam.project(entry), arm: marked });
        }
        let mut needle = Needle::at_skin(device, entry, direction);
        let (mut contacts, mut inclusions) = (Vec::new(), Vec::new());
        for (i, step) in self.moves.iter().enumerate() {
            step.checked().with_context(|| format!("moves[{i}]"))?;
            match *step {
                Move::Advance { mm, spin } => {
                    contacts.extend(needle.advance(interior, self.medium, mm, spin));
                }
                Move::WithdrawMm(mm) => needle.withdraw(interior, mm),
                Move::RollDeg(deg) => needle.turn(deg.to_radians()),
                Move::AngleDeg([right, up]) => {
                    for (axis, deg) in [(beam.up, right), (-beam.right, up)] {
                        needle.re_angle(interior, axis, deg.to_radians());
                    }
                }
                Move::InjectMl(ml) => {
                    state.stylet = false;
                    let mut bolus = Bolus::at(interior, needle.tip().position, 0.0);
                    (bolus.volume_ml, bolus.ended_s) = (ml, 1.0);
                    inclusions.extend(shape::contrast(bolus.spread(interior, 1.0 + self.seconds_after)));
                }
            }
        }
        inclusions.extend(shape::needle(&needle, state.stylet));
        let tip = needle.tip().position;
        Ok(NeedleResult {
            needle: needle_report(&case, &state, interior, &needle, view),
            path_patient_mm: needle.path().iter().map(|n| shown(n.tip.position)).collect(),
            contacts,
            compartment: compartment_at(interior, tip),
            area: AimedArea {
                corners_patient_mm: area.corners.iter().map(|&p| shown(p)).collect(),
                corners_detector_mm: area.corners.iter().map(|&p| view.project(p).to_array()).collect(),
                area_mm2: area.area_mm2(),
            },
            inclusions,
        })
    }

    fn entry(
        &self,
        interior: &Interior,
        view: &Projection,
        aim: DVec3,
        centre: DVec3,
    ) -> anyhow::Result<(DVec3, DVec3)> {
        let uv = match self.entry {
            Entry::MarkMm(uv) => DVec2::from_array(uv),
            Entry::AreaCentre {} => view.project(aim),
            Entry::Free { patient_mm, direction } => {
                let direction = DVec3::from_array(direction);
                let direction = direction
                    .try_normalize()
                    .ok_or_else(|| UsageError("the needle's direction must not be zero".to_owned()))?;
                return Ok((centre + DVec3::from_array(patient_mm), direction));
            }
        };
        let entry = skin_entry(interior, view, uv)
            .ok_or_else(|| UsageError("the mark's ray does not meet the patient's back".to_owned()))?;
        Ok((entry, -view.ray_through(uv)))
    }
}

impl Move {
    fn checked(self) -> Result<(), UsageError> {
        let within = |what: &str, value: f64, low: f64, high: f64| {
            // A NaN is inside no range.
            if value >= low && value <= high {
                Ok(())
            } else {
                Err(UsageError(format!("{what} of {value} is not possible: allowed are {low} to {high}")))
            }
        };
        match self {
            Self::Advance { mm, spin } => {
                within("a spin", spin, 0.0, 1.0)?;
                within("an advance", mm, 0.0, LARGEST)
            }
            Self::WithdrawMm(mm) => within("a withdrawal", mm, 0.0, LARGEST),
            Self::RollDeg(deg) => within("a roll", deg, -LARGEST, LARGEST),
            Self::AngleDeg(by) => by.into_iter().try_for_each(|deg| within("an angle", deg, -90.0, 90.0)),
            Self::InjectMl(ml) => within("an injection", ml, 0.0, 10.0),
        }
    }
}

impl NeedleResult {
    /// As lines of text.
    pub(crate) fn in_words(&self) -> String {
        let n = &self.needle;
        let [x, y, z] = n.tip_patient_mm;
        let mut text = String::from("\nNeedle:\n");
        let _ = writeln!(
            text,
            "  Tip at ({x:.1}, {y:.1}, {z:.1}) mm from the target's centre, {:.1} mm under the skin",
            n.depth_mm
        );
        let [right, up] = n.coaxial.hub_offset_mm;
        let _ = writeln!(
            text,
            "  {:.1} degrees off the beam, hub {right:.1} mm right and {up:.1} mm above the tip on the detector",
            n.coaxial.angle_deg
        );
        let (clock, lateral) = (&n.clock, &n.lateral);
        let _ = writeln!(
            text,
            "  Read as AP: {:.1} o'clock, {:.1} mm {} of 6 o'clock, {:.1} mm below the pedicle",
            clock.hour,
            clock.medial_mm.abs(),
            if clock.medial_mm > 0.0 { "medial" } else { "lateral" },
            clock.below_mm
        );
        let _ = writeln!(
            text,
            "  Read as lateral: {:.0} % down the foramen, {:.1} mm {} the posterior body line",
            100.0 * lateral.height,
            lateral.behind_wall_mm.abs(),
            if lateral.behind_wall_mm > 0.0 { "behind" } else { "in front of" }
        );
        for c in &self.contacts {
            let level = c.level.map_or(String::new(), |l| format!(" of {l}"));
            let _ = writeln!(text, "  At {:.1} mm: {:?}{level}: {}", c.depth_mm, c.kind, c.kind.sign());
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use downbeam::anatomy::names::{Level, Side};
    use downbeam::anatomy::patient::PatientSpec;
    use proptest::prelude::*;
    use std::sync::LazyLock;

    static PATIENT: LazyLock<Patient> =
        LazyLock::new(|| Patient::new(&PatientSpec::named("average").unwrap()));

    /// A needle file, or nearly one: numbers of every size, keys now and then wrong.
    fn files() -> impl Strategy<Value = String> {
        let number = || prop_oneof![4 => (-90.0..90.0_f64).prop_map(|x| x.to_string()), 1 => any::<f64>().prop_map(|x| format!("{x:e}")), 1 => "[-0-9e.]{0,6}"];
        let pair = move || (number(), number()).prop_map(|(a, b)| format!("[{a},{b}]"));
        let entry = prop_oneof![
            Just("{\"area_centre\":{}}".to_owned()),
            pair().prop_map(|p| format!("{{\"mark_mm\":{p}}}")),
            (number(), number(), number()).prop_map(|(a, b, c)| format!(
                "{{\"free\":{{\"patient_mm\":[{a},{b},{c}],\"direction\":[{c},{a},{b}]}}}}"
            )),
        ];
        let step = prop_oneof![
            (number(), number())
                .prop_map(|(mm, spin)| format!("{{\"advance\":{{\"mm\":{mm},\"spin\":{spin}}}}}")),
            number().prop_map(|n| format!("{{\"withdraw_mm\":{n}}}")),
            number().prop_map(|n| format!("{{\"roll_deg\":{n}}}")),
            pair().prop_map(|p| format!("{{\"angle_deg\":{p}}}")),
            number().prop_map(|n| format!("{{\"inject_ml\":{n}}}")),
            "[a-z{}\":]{0,12}",
        ];
        (entry, prop::collection::vec(step, 0..6), number(), any::<prop::sample::Index>(), any::<bool>())
            .prop_map(|(entry, moves, after, at, cut)| {
                let mut text = format!(
                    "{{\"entry\":{entry},\"moves\":[{}],\"seconds_after\":{after}}}",
                    moves.join(",")
                );
                if cut {
                    text.truncate(at.index(text.len()));
                }
                text
            })
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases.min(100_000), ..ProptestConfig::default() })]

        #[test]
        fn no_file_makes_it_panic(text in files()) {
            let Ok(file) = serde_json::from_str::<NeedleFile>(&text) else { return Ok(()) };
            let target = Target { level: Level::L4, side: Side::Left };
            let arm = CArm::default();
            let view = Projection::new(&arm, PATIENT.interior.level(Level::L4).centre);
            if let Ok(exposed) = file.put_in(&PATIENT, target, &arm, &view) {
                prop_assert!(exposed.needle.depth_mm.is_finite());
            }
        }
    }
}
