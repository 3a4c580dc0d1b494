//! What must hold for a needle however it is moved: the way back is the way in, nothing passes through bone, and the mirror-image
//! patient gives the mirror-image path; and contrast that stays is conserved in closed bodies.
//!
//! A few hundred cases each run; more with `PROPTEST_CASES=20000 cargo test --test needle_motion`.

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::tissues::TissueKind;
use downbeam::needle::compartment::Compartment;
use downbeam::needle::contact::{Contact, ContactKind};
use downbeam::needle::contrast::Bolus;
use downbeam::needle::device::{Device, Gauge, Medium};
use downbeam::needle::shaft::Needle;
use glam::DVec3;
use proptest::prelude::*;
use std::f64::consts::TAU;
use std::sync::LazyLock;

static AVERAGE: LazyLock<Interior> = LazyLock::new(|| interior("average"));
/// The average patient without her vessels, which her seed lays otherwise on the left than on the right: her own mirror image.
static SYMMETRIC: LazyLock<Interior> = LazyLock::new(|| interior("average").without_vessels());
/// Bones that are neither straight nor symmetric.
static CURVED: LazyLock<Interior> = LazyLock::new(|| interior("curved"));

fn interior(name: &str) -> Interior {
    Interior::of(&PatientSpec::named(name).unwrap())
}

/// A step of a hand.
#[derive(Clone, Copy, Debug)]
enum Move {
    Advance { mm: f64, duty: f64 },
    Turn(f64),
}

fn moves() -> impl Strategy<Value = Vec<Move>> {
    let step = prop_oneof![
        // From a tremor to more than any needle is long.
        3 => ((-1.0_f64..2.18).prop_map(|p| libm::pow(10.0, p)), prop::sample::select(vec![0.0, 0.0, 0.5, 1.0]))
            .prop_map(|(mm, duty)| Move::Advance { mm, duty }),
        1 => (-7.0_f64..7.0).prop_map(Move::Turn),
    ];
    prop::collection::vec(step, 1..24)
}

/// Where a needle goes in over a lumbar level and where it aims at: left mm, level, mm up of its centre, and a point near the spine.
fn aim() -> impl Strategy<Value = (Level, [f64; 2], [f64; 3])> {
    (
        prop::sample::select(vec![Level::L2, Level::L3, Level::L4, Level::L5, Level::S1]),
        [-90.0_f64..90.0, -40.0_f64..40.0],
        [-35.0_f64..35.0, -25.0_f64..45.0, -25.0_f64..25.0],
    )
}

fn device() -> impl Strategy<Value = Device> {
    (prop::sample::select(Gauge::ALL.to_vec()), prop::sample::select(vec![90, 127]))
        .prop_map(|(gauge, length_mm)| Device { gauge, length_mm })
}

/// At the back's skin, or where it would be.
fn put_in(interior: &Interior, device: Device, aim: (Level, [f64; 2], [f64; 3])) -> Needle {
    let (level, [left, up], to) = aim;
    let centre = interior.level(level).centre;
    let entry = centre + DVec3::new(left, 100.0 - 0.002 * left * left, up);
    Needle::at_skin(device, entry, centre + DVec3::from_array(to) - entry)
}

fn act(needle: &mut Needle, interior: &Interior, medium: Medium, moves: &[Move]) -> bool {
    let mut met_bone = false;
    for step in moves {
        match *step {
            Move::Advance { mm, duty } => {
                let contacts = needle.advance(interior, medium, mm, duty);
                met_bone |= contacts.iter().any(|c| c.kind == ContactKind::Bone);
            }
            Move::Turn(radians) => needle.turn(radians),
        }
    }
    met_bone
}

/// Nearest bone, mm, from the fields themselves: no shortcuts as the needle takes.
fn bone_mm(interior: &Interior, p: DVec3) -> f64 {
    interior.tissues().of_kind(TissueKind::Bone).map(|t| t.distance_mm(p)).fold(f64::MAX, f64::min)
}

/// The deepest that the path is in bone, nodes and the way between, mm, as a distance (< 0 inside).
fn clearance_mm(interior: &Interior, needle: &Needle) -> f64 {
    const APART_MM: f64 = 0.1;
    let mut least = f64::MAX;
    for pair in needle.path().windows(2) {
        let (a, b) = (pair[0].tip.position, pair[1].tip.position);
        let count = (a.distance(b) / APART_MM).ceil().max(1.0) as u32;
        for i in 0..=count {
            let p = a.lerp(b, f64::from(i) / f64::from(count));
            let bone = interior.tissues().nearest_bone(p, 0.5).1;
            // Far from bone the bound is enough.
            least = least.min(if bone < 0.5 { bone_mm(interior, p) } else { bone });
        }
    }
    least
}

/// A path may touch bone by this much, mm: the sagitta of a 2 mm step is 0.002 mm, and the fields are first-order.
const TOUCH_MM: f64 = 0.02;

fn mirrored(interior: &Interior, p: DVec3) -> DVec3 {
    let x = interior.level(Level::L4).centre.x;
    DVec3::new(2.0 * x - p.x, p.y, p.z)
}

proptest! {
    #[test]
    fn the_way_back_is_the_way_in(aim in aim(), device in device(), before in moves(), lengths in prop::collection::vec(0.01_f64..40.0, 1..6)) {
        let interior = &*AVERAGE;
        let mut needle = put_in(interior, device, aim);
        act(&mut needle, interior, Medium::Muscle, &before);
        // In pieces, each drawn back again at once: with the bone in the way a piece may be shorter than asked for.
        for length in lengths {
            let (tip, depth) = (needle.tip(), needle.depth_mm());
            needle.advance(interior, Medium::Muscle, length, 0.0);
            let made = needle.depth_mm() - depth;
            needle.withdraw(interior, made);
            prop_assert!((needle.depth_mm() - depth).abs() < 1e-9);
            prop_assert!(needle.tip().position.distance(tip.position) < 1e-9);
            prop_assert!(needle.tip().axis().distance(tip.axis()) < 1e-9);
            needle.advance(interior, Medium::Muscle, length / 3.0, 0.0);
        }
        needle.withdraw(interior, 1e3);
        prop_assert_eq!(needle.tip().position, needle.entry);
    }

    /// Back by any length, every point that is left was on the way in.
    #[test]
    fn drawn_back_it_lies_in_its_own_track(aim in aim(), before in moves(), share in 0.0_f64..1.0) {
        let interior = &*CURVED;
        let mut needle = put_in(interior, Device::default(), aim);
        act(&mut needle, interior, Medium::Gel, &before);
        let track: Vec<(f64, DVec3)> = needle.path().iter().map(|n| (n.arc_mm, n.tip.position)).collect();
        needle.withdraw(interior, share * needle.depth_mm());
        let (tip, depth) = (needle.tip().position, needle.depth_mm());
        let after = track.partition_point(|(arc, _)| *arc < depth).clamp(1, track.len().max(2) - 1);
        if let (Some(a), Some(b)) = (track.get(after - 1), track.get(after)) {
            let along = (depth - a.0) / (b.0 - a.0);
            // An arc of 2 mm and 200 mm radius is 0.0025 mm off its chord.
            prop_assert!(tip.distance(a.1.lerp(b.1, along)) < 0.003);
        }
        for (node, (arc, p)) in needle.path().iter().zip(&track).rev().skip(1) {
            prop_assert!(node.arc_mm == *arc && node.tip.position == *p);
        }
    }

    #[test]
    fn no_step_passes_through_bone(aim in aim(), device in device(), gel in any::<bool>(), moves in moves(), curved in any::<bool>()) {
        let interior = if curved { &*CURVED } else { &*AVERAGE };
        let mut needle = put_in(interior, device, aim);
        prop_assume!(bone_mm(interior, needle.entry) > 1.0);
        act(&mut needle, interior, if gel { Medium::Gel } else { Medium::Muscle }, &moves);
        let clear = clearance_mm(interior, &needle);
        prop_assert!(clear > -TOUCH_MM, "{clear} mm");
        let tip = bone_mm(interior, needle.tip().position);
        prop_assert!(tip > -TOUCH_MM, "tip {tip} mm");
    }

    #[test]
    fn re_angling_leaves_the_path_outside_bone(
        aim in aim(),
        before in moves(),
        turns in prop::collection::vec(([-1.0_f64..1.0, -1.0_f64..1.0, -1.0_f64..1.0], -0.5_f64..0.5, 0.0_f64..8.0), 1..5),
    ) {
        let interior = &*AVERAGE;
        let mut needle = put_in(interior, Device::default(), aim);
        prop_assume!(bone_mm(interior, needle.entry) > 1.0);
        act(&mut needle, interior, Medium::Muscle, &before);
        for (axis, radians, onwards) in turns {
            let axis = DVec3::from_array(axis).normalize_or(DVec3::X);
            let made = needle.re_angle(interior, axis, radians);
            prop_assert!(made.abs() <= radians.abs() + 1e-12 && made * radians >= 0.0);
            let clear = clearance_mm(interior, &needle);
            prop_assert!(clear > -TOUCH_MM, "turned by {made}: {clear} mm");
            needle.advance(interior, Medium::Muscle, onwards, 0.0);
        }
        let clear = clearance_mm(interior, &needle);
        prop_assert!(clear > -TOUCH_MM, "{clear} mm");
    }

    /// Up to the first bone. From there a threshold of the slide may fall to one side in the one and to the other in the other.
    #[test]
    fn the_mirror_image_gives_the_mirror_image(aim in aim(), device in device(), moves in moves()) {
        let interior = &*SYMMETRIC;
        let mut needle = put_in(interior, device, aim);
        let d = needle.direction();
        let mut image = Needle::at_skin(device, mirrored(interior, needle.entry), DVec3::new(-d.x, d.y, d.z));
        for step in &moves {
            let turned = if let Move::Turn(r) = *step { Move::Turn(-r) } else { *step };
            let touched = act(&mut needle, interior, Medium::Muscle, &[*step]);
            let image_touched = act(&mut image, interior, Medium::Muscle, &[turned]);
            if touched || image_touched {
                break;
            }
            // Both in the open: arcs of the same screws, in however many pieces.
            let apart = image.tip().position.distance(mirrored(interior, needle.tip().position));
            prop_assert!(apart < 1e-9, "{apart} mm in the open");
            let rolled = (image.roll_rad + needle.roll_rad).rem_euclid(TAU);
            prop_assert!(rolled.min(TAU - rolled) < 1e-9);
        }
    }

    /// Straight on to the first bone, and no further: the same depth on both sides.
    #[test]
    fn the_mirror_image_meets_bone_as_deep(aim in aim(), roll in 0.0_f64..TAU) {
        let interior = &*SYMMETRIC;
        let mut needle = put_in(interior, Device { length_mm: 127, ..Device::default() }, aim);
        let d = needle.direction();
        let mut image = Needle::at_skin(needle.device, mirrored(interior, needle.entry), DVec3::new(-d.x, d.y, d.z));
        needle.turn(roll);
        image.turn(-roll);
        let landing = |needle: &mut Needle| {
            let contacts = needle.advance(interior, Medium::Muscle, 127.0, 0.0);
            contacts.into_iter().find(|c| c.kind == ContactKind::Bone)
        };
        let contacts: Vec<Contact> = landing(&mut needle).into_iter().chain(landing(&mut image)).collect();
        // Where the first of the two lands, the other is as near to bone, if it may just pass there.
        if let Some(first) = contacts.iter().min_by(|a, b| a.depth_mm.total_cmp(&b.depth_mm)) {
            let p = first.position;
            let near = bone_mm(interior, mirrored(interior, p));
            // Where left and right meet in the midline the fields blend one side after the other: 0.03 mm apart at L2's
            // laminae, 0.12 mm at the sacrum's.
            let midline = (p.x - interior.level(Level::L4).centre.x).abs() < 12.0;
            prop_assert!((near - 0.01).abs() < if midline { 0.25 } else { 0.02 }, "{near} mm from bone at {p:.1}");
        } else {
            prop_assert!((needle.depth_mm() - image.depth_mm()).abs() < 1e-9);
        }
    }

    #[test]
    fn contrast_that_stays_is_conserved(
        space in prop::sample::select(vec![
            Compartment::Perineural { level: Level::L4, side: Side::Left },
            Compartment::Perineural { level: Level::L1, side: Side::Right },
            Compartment::Perineural { level: Level::S1, side: Side::Left },
            Compartment::Intraneural { level: Level::L5, side: Side::Right },
            Compartment::Intrathecal,
            Compartment::Intradiscal { level: Level::L3 },
            Compartment::Intradiscal { level: Level::L5 },
            Compartment::Peritoneal,
            Compartment::Subcutaneous,
            Compartment::Muscular,
        ]),
        ml in 0.01_f64..3.0,
        seconds in 0.0_f64..60.0,
        aside in [-3.0_f64..3.0, -3.0_f64..3.0, -3.0_f64..3.0],
    ) {
        let interior = &*CURVED;
        let tip = typical(interior, space) + DVec3::from_array(aside);
        let bolus = Bolus { tip, compartment: space, volume_ml: ml, begun_s: 0.0, ended_s: 1.0 };
        let bodies = bolus.spread(interior, 1.0 + seconds);
        prop_assert!(!bodies.is_empty());
        let mut held = 0.0;
        for body in &bodies {
            prop_assert!(body.mesh.is_closed());
            prop_assert!(body.mesh.volume() > 0.0);
            held += body.share * body.mesh.volume();
        }
        prop_assert!((held - 1000.0 * ml).abs() < 1e-6 * 1000.0 * ml, "{held} mm3 of {ml} ml");
    }
}

/// A place about where such an injection is made.
fn typical(interior: &Interior, space: Compartment) -> DVec3 {
    let l4 = interior.level(Level::L4).centre;
    match space {
        Compartment::Perineural { level, side } | Compartment::Intraneural { level, side } => {
            interior.nerves().root(level, side).unwrap().course[1].point
        }
        Compartment::Intradiscal { level } => interior.level(level).lower_plate.unwrap().centre,
        Compartment::Intrathecal => l4 + DVec3::new(0.0, 34.0, 0.0),
        Compartment::Peritoneal => l4 + DVec3::new(20.0, -60.0, 0.0),
        _ => l4 + DVec3::new(40.0, 50.0, 0.0),
    }
}

/// The checks above are of needles that meet bone, not of needles that pass it by.
#[test]
fn many_of_the_needles_meet_bone() {
    let interior = &*AVERAGE;
    let mut touched = 0;
    for i in 0..60 {
        let (across, up) = (f64::from(i % 10), f64::from(i / 10));
        let aim = (Level::L4, [14.0 * across - 63.0, 0.0], [5.0 * across - 22.0, 20.0, 8.0 * up - 20.0]);
        let mut needle = put_in(interior, Device { length_mm: 127, ..Device::default() }, aim);
        touched +=
            u32::from(act(&mut needle, interior, Medium::Muscle, &[Move::Advance { mm: 150.0, duty: 0.0 }]));
    }
    assert!(touched > 30, "{touched} of 60");
}
