//! The outline of a superior articular process in the picture, taken from the landmarks, against what the meshed bone shows.
//!
//! The landmarks know the process's own shape; the mesh is what the film is made of, with everything that is melted onto the process. That the two
//! agree is no work of the construction.

use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::view::criteria::UNDER_TOP_MM;
use downbeam::view::image_axes::image_axes;
use downbeam::view::silhouette::{Silhouette, silhouette};

/// The outline of the process in the mesh's projection, by every edge of its triangles; mm on the detector.
fn seen(patient: &Patient, level: Level, side: Side, view: &Projection, target: Level) -> Silhouette {
    let axes = image_axes(view, &patient.level(target).upper_plate);
    let bone = patient.bone(level);
    let mesh = &bone.outer;
    let own = mesh
        .tags
        .iter()
        .map(|&t| bone.label(t))
        .map(|l| l.part == Part::SuperiorArticularProcess && l.side == Some(side));
    let own: Vec<bool> = own.collect();
    let points: Vec<[f64; 2]> = mesh
        .positions
        .iter()
        .map(|p| {
            let q = view.project(p.as_dvec3());
            [q.dot(axes.left), q.dot(axes.cranial)]
        })
        .collect();
    let tip = patient.level(level).side(side).superior_process_tip;
    let triangles =
        mesh.triangles.iter().map(|t| t.map(|i| i as usize)).filter(|t| t.iter().all(|&i| own[i]));
    let triangles: Vec<[usize; 3]> = triangles.collect();
    let top = triangles.iter().flatten().map(|&i| points[i][1]).fold(f64::MIN, f64::max);
    let line = top - UNDER_TOP_MM * view.magnification_at(tip);
    let mut span = (f64::MAX, f64::MIN);
    for t in &triangles {
        for (a, b) in [(t[0], t[1]), (t[1], t[2]), (t[2], t[0])] {
            let (a, b) = (points[a], points[b]);
            if (a[1] > line) != (b[1] > line) {
                let x = a[0] + (b[0] - a[0]) * (line - a[1]) / (b[1] - a[1]);
                span = (span.0.min(x), span.1.max(x));
            }
        }
    }
    Silhouette { top, line, span }
}

#[test]
fn the_landmarks_outline_is_the_mesh_s() {
    let average = PatientSpec::named("average").unwrap();
    let varied = (0..4).map(|seed| PatientSpec { seed, variation: 1.0, ..average.clone() });
    let mut worst = [0.0_f64; 3];
    for spec in PatientSpec::all().iter().cloned().chain(varied) {
        let patient = Patient::new(&spec);
        let mut here = [0.0_f64; 3];
        for target in Level::VERTEBRAE {
            let level = target.below().unwrap();
            for (side, oblique) in
                Side::BOTH.into_iter().flat_map(|s| [-10.0, 0.0, 10.0, 20.0, 30.0, 45.0].map(|o| (s, o)))
            {
                for off_square in [-8.0, 0.0, 8.0] {
                    let (centre, plate) = (patient.level(target).centre, patient.level(target).upper_plate);
                    let tilt = libm::asin(-plate.normal.y).to_degrees() + off_square;
                    let view =
                        Projection::new(&CArm::at_degrees(oblique * side.sign(), tilt).unwrap(), centre);
                    let axes = image_axes(&view, &patient.level(target).upper_plate);
                    let process = &patient.level(level).side(side).superior_process_top;
                    let by = silhouette(&view, &axes, process, UNDER_TOP_MM);
                    let mesh = seen(&patient, level, side, &view, target);
                    let scale = view.magnification_at(process.sections[0].centre);
                    let off = [by.top - mesh.top, by.span.0 - mesh.span.0, by.span.1 - mesh.span.1]
                        .map(|x| x / scale);
                    let middle = (by.middle() - mesh.middle()) / scale;
                    here = [
                        here[0].max(off[0].abs()),
                        here[1].max(off[1].abs()).max(off[2].abs()),
                        here[2].max(middle.abs()),
                    ];
                }
            }
        }
        worst = std::array::from_fn(|i| worst[i].max(here[i]));
    }
    println!("top {:.2}, ends {:.2}, middle {:.2} mm", worst[0], worst[1], worst[2]);
    // Half a millimetre is 3 to 6 percent of a pedicle's width.
    assert!(worst[0] < 0.4 && worst[1] < 0.9 && worst[2] < 0.6, "{worst:.2?}");
}
