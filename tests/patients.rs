//! Any patient that can be asked for: named ones, their fields anywhere in the allowed ranges, any seed. What must hold of all of them
//! is asked of as many as `PROPTEST_CASES` says.

#[path = "common/marks.rs"]
mod marks;

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::landmarks::LevelLandmarks;
use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::anatomy::patient_field::FIELDS;
use downbeam::anatomy::tissues::{Tissue, TissueKind};
use downbeam::geometry::frame::Rigid;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use glam::{DMat3, DVec3};
use proptest::prelude::*;

/// Cases of a test: as many as asked for by PROPTEST_CASES, divided for those that build meshes.
fn cases(usual: u32, dearer: u32) -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|n| n.parse::<u32>().ok());
    ProptestConfig { cases: asked.map_or(usual, |n| (n / dearer).max(1)), ..ProptestConfig::default() }
}

fn named() -> impl Strategy<Value = PatientSpec> {
    prop::sample::select(PatientSpec::all().to_vec())
}

/// A named patient, or that with its dimensions varied, or one with each field where it was or anywhere in its range.
fn any_patient() -> impl Strategy<Value = PatientSpec> {
    let values = prop::collection::vec((prop::bool::weighted(0.4), 0.0..=1.0_f64), FIELDS.len());
    (named(), any::<u32>(), any::<bool>(), any::<bool>(), values).prop_map(
        |(spec, seed, varied, wild, values)| {
            let variation = f64::from(u8::from(varied));
            let spec = PatientSpec { seed: u64::from(seed), variation, ..spec };
            let changes = FIELDS.iter().zip(values).filter(|(_, (moved, _))| wild && *moved);
            spec.changed(
                changes.map(|(field, (_, t))| (field.name, field.low + t * (field.high - field.low))),
            )
            .unwrap()
        },
    )
}

/// A level's own frame, left, back, up.
fn frame(level: &LevelLandmarks) -> Rigid {
    let plate = level.upper_plate;
    let up = level.lower_plate.map_or(plate.normal, |lower| (plate.centre - lower.centre).normalize());
    Rigid { rotation: DMat3::from_cols(plate.left, up.cross(plate.left), up), translation: plate.centre }
}

fn bone(interior: &Interior, level: Level) -> &Tissue {
    interior.tissues().of_kind(TissueKind::Bone).find(|bone| bone.level == Some(level)).unwrap()
}

/// How far the sac, which gives way, may reach into bone, mm.
const SAC_TOUCHES_MM: f64 = 1.3;

/// What is wrong with how the parts lie, where a root may be squeezed by `squeezed_mm`; empty when nothing is.
#[expect(clippy::too_many_lines, reason = "one question after the other, each a few lines")]
fn misplaced(interior: &Interior, squeezed_mm: f64) -> Vec<String> {
    let mut wrong = Vec::new();
    for level in Level::VERTEBRAE {
        let (own, below) = (interior.level(level), interior.level(level.below().unwrap()));
        let f = frame(own).inverse();
        let lower = own.lower_plate.unwrap();
        let mut hold = |holds: bool, what: &str| {
            if !holds {
                wrong.push(format!("{level} {what}"));
            }
        };
        hold(own.upper_plate.normal.dot(lower.normal) > 0.9, "plates are nearly parallel");
        hold((own.upper_plate.centre - lower.centre).dot(lower.normal) > 15.0, "body is 15 mm high");
        // The disc, between the rims all around.
        for i in 0..16 {
            let (s, c) = libm::sincos(f64::from(i) * std::f64::consts::TAU / 16.0);
            let rim =
                lower.centre + lower.left * (lower.half_width * c) + lower.back * (lower.half_depth * s);
            let gap = (rim - below.upper_plate.centre).dot(below.upper_plate.normal);
            hold(gap > 1.0, &format!("disc is open, {gap:.1} mm"));
            let bare = bone(interior, below.level).distance_mm(rim);
            hold(bare > 0.3, &format!("body is clear of the one below, {bare:.1} mm"));
        }
        hold(
            f.point(own.spinous_tip).y > f.point(own.posterior_wall).y + 25.0,
            "spinous tip is far behind the wall",
        );
        for side in Side::BOTH {
            let (s, b) = (own.side(side), below.side(side));
            let at = |p: DVec3| {
                let q = f.point(p);
                DVec3::new(q.x * side.sign(), q.y, q.z)
            };
            let (pedicle, half) = (at(s.pedicle.centre), s.pedicle.across.length());
            let mut hold = |holds: bool, what: &str| hold(holds, &format!("{side} {what}"));
            hold(
                f.direction(s.pedicle.up).z > 0.0 && f.direction(s.pedicle.across).x * side.sign() > 0.0,
                "pedicle is upright",
            );
            hold(pedicle.x > half, "pedicle is on its side");
            // At L5 the isthmus stands beside the wall.
            hold(at(own.posterior_wall).y - 2.0 < pedicle.y, "pedicle leaves the back of the body");
            // At a wedge-shaped L5 the height of the plate's middle is about that of its posterior rim.
            hold(
                at(s.superior_process_tip).z > -1.0,
                &format!("superior process rises above the plate, {:.2} mm", at(s.superior_process_tip).z),
            );
            hold(at(s.pars.unwrap()).z < pedicle.z, "pars is below the pedicle's middle");
            hold(
                at(s.inferior_process_tip.unwrap()).z < at(s.pars.unwrap()).z - 8.0,
                "inferior process reaches down",
            );
            hold(
                // In a frontal joint the two stand behind each other.
                at(s.inferior_process_tip.unwrap()).x < at(b.superior_process_tip).x + 2.5,
                "inferior process is not lateral of the superior one below",
            );
            hold(
                at(b.superior_process_tip).z < pedicle.z,
                "superior process below ends under the pedicle's middle",
            );
            hold(at(b.superior_process_tip).y > pedicle.y, "superior process below is behind the pedicle");
            if level != Level::T12 {
                hold(
                    at(s.transverse_tip.unwrap()).x > pedicle.x + half + 3.0,
                    "transverse process stands out",
                );
            }
            let root = interior.nerves().root(level, side);
            for node in root.iter().flat_map(|root| &root.course) {
                let clear = interior.tissues().nearest_bone(node.point, 20.0).1 - node.radius_mm;
                // The fields of worn pairs may squeeze a root, which in life gives way: by so much and no more.
                hold(clear > -squeezed_mm, &format!("root is clear of bone, {clear:.2} mm"));
            }
            if let Some(foramen) = interior.foramen(level, side) {
                hold(
                    foramen.ring.up.length() > 4.0 && foramen.ring.across.dot(own.upper_plate.back) > 1.0,
                    "foramen is open",
                );
            }
        }
    }
    for (i, node) in interior.nerves().sac.iter().enumerate() {
        let back = interior.level(Level::ALL[(i / 2).min(6)]).upper_plate.back;
        for edge in [node.left * node.half_width_mm, back * node.half_depth_mm] {
            for way in [-1.0, 1.0] {
                let clear = interior.tissues().nearest_bone(node.point + edge * way, 20.0).1;
                if clear < -SAC_TOUCHES_MM {
                    wrong.push(format!("sac is clear of bone, {clear:.1} mm at section {i}"));
                }
            }
        }
    }
    wrong
}

/// Neighbours in a crowded patient may touch by as much as this, mm: found once in 4000, T12 in L1 by 0.05.
const TOUCHING_MM: f32 = 0.3;

/// Landmarks that are not on the bone that they name; the bone below may have worn pars and inferior tip,
/// so that they stand out of it by `worn_mm`.
fn off_the_bone(interior: &Interior, worn_mm: f64) -> Vec<String> {
    let mut wrong = Vec::new();
    for (level, side) in Level::VERTEBRAE.into_iter().flat_map(|l| Side::BOTH.map(|s| (l, s))) {
        let bone = bone(interior, level);
        for (part, point, on_surface) in marks::of_parts(interior.level(level), side) {
            let distance = bone.distance_mm(point);
            let there = match part {
                // The lamina below may have worn its tip.
                Part::InferiorArticularProcess => distance > -0.25 && distance < worn_mm.max(0.25),
                _ if on_surface => distance.abs() < 0.3,
                Part::Pars => distance < worn_mm,
                _ => distance < -0.2,
            };
            let nearest = bone.part_at(point).map(|(part, _)| part);
            // Deep in the pillar its parts have melted into one.
            let pillar =
                [Part::Pars, Part::SuperiorArticularProcess, Part::InferiorArticularProcess].map(Some);
            let named = nearest == Some(part) || part == Part::Pars && pillar.contains(&nearest);
            if !there || !named {
                wrong.push(format!("{level} {side} {part:?}: {distance:.2} mm, nearest {nearest:?}"));
            }
        }
    }
    wrong
}

/// Views that cannot be made, each with the reason: an end of the machine's range. One without a reason is an error.
fn unreached(interior: &Interior) -> Result<Vec<String>, String> {
    let mut list = Vec::new();
    for level in Level::TARGETS {
        for side in Side::BOTH {
            for kind in ViewKind::ALL {
                let best = best_view(interior, Target { level, side }, kind, &CArm::default());
                if best.reached {
                    continue;
                }
                let at = best.orientation;
                let ends = |value: f64, (low, high): (f64, f64)| value < low + 0.01 || value > high - 0.01;
                let said =
                    format!("{level} {side} {kind:?} ends at {:.1}, {:.1}", at.oblique_deg, at.tilt_deg);
                if ends(at.oblique_deg, CArm::OBLIQUE_RANGE_DEG) || ends(at.tilt_deg, CArm::TILT_RANGE_DEG) {
                    list.push(said);
                } else {
                    return Err(said);
                }
            }
        }
    }
    Ok(list)
}

#[test]
fn every_named_patient_is_whole() {
    for spec in PatientSpec::all() {
        let interior = Interior::of(spec);
        assert_eq!(misplaced(&interior, 0.0), Vec::<String>::new(), "{}", spec.name);
        assert_eq!(off_the_bone(&interior, -0.2), Vec::<String>::new(), "{}", spec.name);
        assert_eq!(unreached(&interior), Ok(Vec::new()), "{}", spec.name);
    }
}

proptest! {
    #![proptest_config(cases(192, 1))]

    #[test]
    fn every_patient_has_its_parts_in_place(spec in any_patient()) {
        let interior = Interior::of(&spec);
        prop_assert_eq!(misplaced(&interior, 2.2), Vec::<String>::new(), "{} seed {}", spec.title(), spec.seed);
        prop_assert_eq!(off_the_bone(&interior, 4.0), Vec::<String>::new(), "{} seed {}", spec.title(), spec.seed);
    }

    #[test]
    fn every_view_can_be_made_or_ends_where_the_machine_does(spec in any_patient()) {
        prop_assert!(unreached(&Interior::of(&spec)).is_ok(), "{} seed {}: {:?}", spec.title(), spec.seed, unreached(&Interior::of(&spec)));
    }

    /// A learner's own patient gives every view: only the seed and the spread of the dimensions.
    #[test]
    fn every_learner_s_patient_gives_every_view(spec in named(), seed in any::<u32>()) {
        let spec = PatientSpec { seed: u64::from(seed), variation: 1.0, ..spec };
        let interior = Interior::of(&spec);
        prop_assert_eq!(unreached(&interior), Ok(Vec::new()), "{} seed {}", spec.title(), spec.seed);
        prop_assert_eq!(misplaced(&interior, 1.8), Vec::<String>::new(), "{} seed {}", spec.title(), spec.seed);
        prop_assert_eq!(off_the_bone(&interior, 3.0), Vec::<String>::new(), "{} seed {}", spec.title(), spec.seed);
    }
}

proptest! {
    #![proptest_config(cases(8, 40))]

    /// Closed, outward, and no bone in another: every vertex of each bone is outside all other bones but those it grows beside (ribs).
    #[test]
    fn every_patient_is_meshed_closed_and_apart(spec in any_patient()) {
        let patient = Patient::new(&spec);
        for bone in &patient.bones {
            for (what, mesh) in [("outer", &bone.outer), ("marrow", &bone.marrow)] {
                prop_assert!(mesh.is_closed() && mesh.volume() > 200.0, "{} {what} of {}", bone.level, spec.title());
            }
            prop_assert!(bone.marrow.volume() < bone.outer.volume());
        }
        for upper in patient.bones.iter().filter(|b| b.axial && b.level != Level::S1) {
            let neighbours = patient.bones.iter().filter(|b| {
                Some(b.level) == upper.level.below() || (upper.level >= Level::L4 && b.level == Level::S1)
            });
            for other in neighbours {
                let frame = other.frame.inverse();
                let depth = |p: &glam::Vec3| {
                    let sample = other.solid.sample(frame.point(p.as_dvec3()).as_vec3());
                    (sample.distance, other.label(other.solid.pieces[usize::from(sample.nearest)].tag).part)
                };
                let (i, (deepest, part)) = upper.outer.positions.iter().map(depth).enumerate()
                    .min_by(|a, b| a.1.0.total_cmp(&b.1.0)).unwrap();
                let own = upper.label(upper.outer.tags[i]).part;
                prop_assert!(deepest > -TOUCHING_MM, "{} {own:?} in {} {part:?}: {deepest} mm, {} seed {}",
                    upper.level, other.level, spec.title(), spec.seed);
            }
        }
    }
}

/// The same specification gives the same patient, and another seed another one.
#[test]
fn seeds_decide() {
    let of = |seed, variation| {
        let spec = PatientSpec { seed, variation, ..PatientSpec::named("average").unwrap() };
        let level = *Interior::of(&spec).level(Level::L4);
        (level.side(Side::Left).pedicle.centre, level.upper_plate.half_width)
    };
    assert_eq!(of(3, 1.0), of(3, 1.0));
    assert_ne!(of(3, 1.0), of(4, 1.0));
    // Without variation the bones are those of the build, whatever the seed.
    assert_eq!(of(3, 0.0), of(4, 0.0));
}

/// Grade I ends at a quarter of the lower plate's depth (Meyerding 1932: memory). In the lateral view the posterior body line of L4
/// steps forward of L5's by the slip, and no other line steps.
#[test]
fn a_slip_steps_the_posterior_body_line() {
    for percent in [0.0, 10.0, 25.0] {
        let spec = PatientSpec::named("average").unwrap().changed([("slip_percent", percent)]).unwrap();
        let interior = Interior::of(&spec);
        for level in [Level::L3, Level::L4, Level::L5] {
            let (own, below) = (interior.level(level), interior.level(level.below().unwrap()));
            let lower = own.lower_plate.unwrap();
            let corner = lower.centre + lower.back * lower.half_depth;
            let plate = below.upper_plate;
            // Along the lower plate, against the same corners without the slip.
            let step = (plate.centre + plate.back * plate.half_depth - corner).dot(plate.back);
            let usual = {
                let spec = PatientSpec::named("average").unwrap();
                let interior = Interior::of(&spec);
                let (own, below) = (interior.level(level), interior.level(level.below().unwrap()));
                let lower = own.lower_plate.unwrap();
                (below.upper_plate.centre + below.upper_plate.back * below.upper_plate.half_depth
                    - lower.centre
                    - lower.back * lower.half_depth)
                    .dot(below.upper_plate.back)
            };
            let expected = if level == Level::L4 { percent / 100.0 * 2.0 * plate.half_depth } else { 0.0 };
            assert!(
                (step - usual - expected).abs() < 0.5,
                "{level} {percent} %: {step:.2}, usual {usual:.2}"
            );
        }
    }
}

/// The transverse processes of a joined L5 are at least 19 mm tall (Castellvi's least, as given in BMC Musculoskelet Disord 2020,
/// s12891-020-03358-3: read) and stand a joint's width from the sacrum's wing; those of the average do neither.
#[test]
fn transitional_processes_meet_the_wing() {
    for (name, tall, near) in [("average", false, false), ("transitional", true, true)] {
        let patient = Patient::new(&PatientSpec::named(name).unwrap());
        let (l5, s1) = (patient.bone(Level::L5), patient.bone(Level::S1));
        let process = patient.part_mesh(Level::L5, Part::TransverseProcess, Some(Side::Left)).unwrap();
        let own = l5.frame.inverse();
        // Outside of the pedicle, where a film shows it free.
        let free: Vec<f64> = process
            .positions
            .iter()
            .map(|p| own.point(p.as_dvec3()))
            .filter(|p| p.x > 36.0)
            .map(|p| p.z)
            .collect();
        let height =
            free.iter().copied().fold(f64::MIN, f64::max) - free.iter().copied().fold(f64::MAX, f64::min);
        let sacrum = s1.frame.inverse();
        let gap = process
            .positions
            .iter()
            .map(|p| s1.solid.sample(sacrum.point(p.as_dvec3()).as_vec3()).distance)
            .fold(f32::MAX, f32::min);
        assert_eq!(height >= 19.0, tall, "{name}: {height:.1} mm");
        assert_eq!(gap < 3.0, near, "{name}: {gap:.1} mm");
        assert!(gap > 0.5, "{name}: {gap:.1} mm");
    }
}

/// The crests' line in the true AP of L4, read from where the tops fall: at the L4-5 disc on the average (Chakraverty 2007: 86.7 percent
/// at L4 or L4-5: read), over the middle of L4's body on the one with high crests.
#[test]
fn high_crests_stand_over_the_fourth_disc() {
    for (name, over_body) in [("average", false), ("high-crest", true)] {
        let interior = Interior::of(&PatientSpec::named(name).unwrap());
        let target = Target { level: Level::L4, side: Side::Left };
        let best = best_view(&interior, target, ViewKind::TrueAp, &CArm::default()).orientation;
        let view = Projection::new(
            &CArm::at_degrees(best.oblique_deg, best.tilt_deg).unwrap(),
            interior.level(Level::L4).centre,
        );
        let l4 = interior.level(Level::L4);
        let z = |p: DVec3| view.project(p).y;
        let crest = z(interior.level(Level::S1).side(Side::Left).crest_top.unwrap());
        let (plate, middle) = (z(l4.lower_plate.unwrap().centre), z(l4.centre));
        assert!(
            if over_body { crest > plate } else { crest < middle && crest < plate + 5.0 },
            "{name}: {crest} {plate} {middle}"
        );
    }
}

#[test]
fn what_is_out_of_range_is_refused_with_what_is_allowed() {
    let ask =
        |name, value| PatientSpec::named("average").unwrap().changed([(name, value)]).map(|s| s.title());
    for (name, value, said) in [
        (
            "slip_percent",
            26.0,
            "slip_percent of 26 percent of the plate's depth is not possible: allowed are 0 to 25",
        ),
        ("curve_deg", f64::NAN, "curve_deg of NaN degrees is not possible: allowed are -12 to 12"),
        ("size", f64::INFINITY, "size of inf times the average is not possible: allowed are 0.85 to 1.15"),
    ] {
        assert_eq!(ask(name, value).unwrap_err().to_string(), said);
    }
    let unknown = ask("height", 1.0).unwrap_err().to_string();
    assert!(
        unknown.starts_with("unknown field 'height' of a patient: allowed are size, turned_deg,"),
        "{unknown}"
    );
    assert_eq!(ask("curve_deg", 9.0).unwrap(), "average with curve_deg 9");
    assert_eq!(ask("size", 1.0).unwrap(), "average");
}

/// Every named patient keeps to the ranges that it can be changed in.
#[test]
fn named_patients_are_in_range() {
    for spec in PatientSpec::all() {
        for field in &FIELDS {
            assert_eq!(field.check((field.get)(spec)), Ok(()), "{} {}", spec.name, field.name);
        }
    }
}
