//! Measures of what lies between skin and spine: clearances of roots and sac, foramina, areas to aim at.
//!
//! `cargo run --release --example interior`

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::tissues::TissueKind;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::needle::reading::open_mm2;
use downbeam::view::criteria::{Target, facet_place};
use downbeam::view::image_axes::image_axes;
use glam::DVec3;

#[expect(clippy::too_many_lines, reason = "a list of what is printed")]
fn main() {
    let asked = std::env::args().nth(1);
    for spec in PatientSpec::all().iter().filter(|s| asked.as_deref().is_none_or(|a| a == s.name)) {
        let interior = Interior::of(spec);
        println!("{}", spec.name);
        let bone_mm = |p: DVec3| {
            interior
                .tissues()
                .of_kind(TissueKind::Bone)
                .map(|t| (t.distance_mm(p), t.level, t.part_at(p)))
                .min_by(|a, b| a.0.total_cmp(&b.0))
                .unwrap()
        };
        for root in &interior.nerves().roots {
            if root.side == Side::Right && spec.curve_deg == 0.0 {
                continue;
            }
            let mut worst = (f64::MAX, 0.0, None);
            for (i, pair) in root.course.windows(2).enumerate() {
                for step in 0..=40 {
                    let t = f64::from(step) / 40.0;
                    let p = pair[0].point.lerp(pair[1].point, t);
                    let radius = pair[0].radius_mm + t * (pair[1].radius_mm - pair[0].radius_mm);
                    let (d, level, part) = bone_mm(p);
                    if d - radius < worst.0 {
                        worst = (d - radius, i as f64 + t, Some((level, part)));
                    }
                }
            }
            let g = &root.ganglion;
            let ganglion = bone_mm(g.centre);
            let foramen = interior.foramen(root.level, root.side).unwrap();
            println!(
                "  {} {}: clearance {:.2} at {:.2} {:?}; ganglion {:.2} of {:.2} {:?}; foramen {:.1} x {:.1}; triangle {:.1} mm2; infraneural {:?}",
                root.level,
                root.side,
                worst.0,
                worst.1,
                worst.2,
                ganglion.0,
                g.half_width_mm,
                ganglion.2,
                2.0 * foramen.ring.up.length(),
                2.0 * foramen.ring.across.length(),
                foramen.subpedicular.area_mm2(),
                foramen.infraneural.as_ref().map(|a| a.area_mm2()),
            );
        }
        for pair in interior.nerves().sac.windows(2) {
            let p = pair[0].point;
            let dist: Vec<String> = [1.0, -1.0]
                .iter()
                .map(|s| {
                    let q = p + pair[0].left * (s * pair[0].half_width_mm);
                    let (d, _, part) = bone_mm(q);
                    format!("{d:.2} {:?}", part.map(|x| x.0))
                })
                .collect();
            let back = pair[0].left.cross(DVec3::Z).normalize();
            let front_back: Vec<String> = [1.0, -1.0]
                .iter()
                .map(|s| format!("{:.2}", bone_mm(p + back * (s * pair[0].half_depth_mm)).0))
                .collect();
            println!(
                "  sac half {:.1} x {:.1}: {dist:?} {front_back:?}",
                pair[0].half_width_mm, pair[0].half_depth_mm
            );
        }
        if spec.name == "average" {
            for level in [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5, Level::S1] {
                let area = &interior.foramen(level, Side::Left).unwrap().subpedicular;
                print!("  {level} open area:");
                for oblique in [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0] {
                    let l = interior.level(level);
                    let tilt = if level == Level::S1 {
                        20.0
                    } else {
                        libm::asin(-l.upper_plate.normal.y).to_degrees()
                    };
                    let arm = CArm::at_degrees(oblique, tilt).unwrap();
                    let view = Projection::new(&arm, l.centre);
                    print!(" {:.0}", open_mm2(&view, &interior, area));
                }
                println!();
                let Some(area) = interior.foramen(level, Side::Left).and_then(|f| f.infraneural.clone())
                else {
                    continue;
                };
                print!("  {level} infraneural open area:");
                for oblique in [20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0] {
                    let l = interior.level(level);
                    let below = interior.level(level.below().unwrap());
                    let tilt = libm::asin(-below.upper_plate.normal.y).to_degrees();
                    let arm = CArm::at_degrees(oblique, tilt).unwrap();
                    let view = Projection::new(&arm, l.centre);
                    let target = Target { level, side: Side::Left };
                    let place = facet_place(&view, &interior, target).unwrap();
                    let plate = below.upper_plate;
                    let axes = image_axes(&view, &plate);
                    let span = |x: f64| view.project(plate.centre + plate.left * x).dot(axes.left);
                    let tip = view.project(below.side(Side::Left).superior_process_tip).dot(axes.left);
                    let half = (span(plate.half_width) - span(-plate.half_width)) / 2.0;
                    print!(
                        " {oblique:.0}: {:.0} mm2 offset {:.0} mid {:.0};",
                        open_mm2(&view, &interior, &area),
                        place.offset_percent,
                        100.0 * (tip - span(0.0)) / half
                    );
                }
                println!();
            }
        }
    }
}
