//! Scratch.
use downbeam::anatomy::dimensions::vertebra;
use downbeam::anatomy::names::{Level, Part, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::anatomy::vertebra::as_written;
use downbeam::anatomy::vertebra_table::ROWS;
use std::fmt::Write as _;
fn main() {
    let t = std::time::Instant::now();
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let triangles: usize =
        patient.bones.iter().map(|b| b.outer.triangles.len() + b.marrow.triangles.len()).sum();
    println!("patient {:.0} ms, {triangles} triangles", t.elapsed().as_secs_f64() * 1e3);
    for bone in patient.bones.iter().filter(|b| b.axial) {
        let mesh = bone.outer.clone().moved(&bone.frame.inverse());
        let mut obj = String::new();
        for v in &mesh.positions {
            writeln!(obj, "v {} {} {}", v.x, v.y, v.z).unwrap();
        }
        for t in &mesh.triangles {
            writeln!(obj, "f {} {} {}", t[0] + 1, t[1] + 1, t[2] + 1).unwrap();
        }
        std::fs::write(format!("/tmp/bv-own-{}.obj", bone.level), obj).unwrap();
        let own = bone.frame.inverse();
        let marks = patient.level(bone.level);
        let s = marks.side(Side::Left);
        let p = |v: glam::DVec3| {
            let q = own.point(v);
            format!("[{:.1} {:.1} {:.1}]", q.x, q.y, q.z)
        };
        print!(
            "{} tip {} facet {} spinous {}",
            bone.level,
            p(s.superior_process_tip),
            p(s.superior_facet),
            p(marks.spinous_tip)
        );
        if let Some(v) = s.inferior_process_tip {
            print!(
                " inferior {} pars {} transverse {}",
                p(v),
                p(s.pars.unwrap()),
                p(s.transverse_tip.unwrap())
            );
        }
        if bone.level >= Level::L1 && bone.level <= Level::L5 {
            let d = vertebra(bone.level).unwrap();
            let solid = as_written(&ROWS[bone.level.index() - 1], &d);
            let piece = solid
                .pieces
                .iter()
                .find(|p| bone.label(p.tag).part == Part::InferiorArticularProcess)
                .unwrap();
            if let downbeam::geometry::sdf::Shape::Loft(l) = &piece.shape {
                let t = l.tip();
                print!(" written [{:.1} {:.1} {:.1}]", t.x, t.y, t.z);
            }
            print!(" wall {:.1} rims {:.1}", d.posterior_wall_mm(), d.posterior_rims_mm());
        }
        println!();
        for (a, list) in [("", bone)].iter() {
            let _ = a;
            for part in Part::ALL {
                let n = list.outer.tags.iter().filter(|&&t| bone.label(t).part == part).count();
                if n > 0 {
                    print!("{}:{n} ", part.name());
                }
            }
            println!();
        }
    }
    for spec in PatientSpec::all() {
        let patient = Patient::new(spec);
        for level in [Level::T12, Level::L1, Level::L2, Level::L3, Level::L4, Level::L5] {
            let below = patient.bone(level.below().unwrap());
            let frame = below.frame.inverse();
            let bone = patient.bone(level);
            let (i, deepest, near) = bone
                .outer
                .positions
                .iter()
                .enumerate()
                .map(|(i, p)| {
                    let s = below.solid.sample(frame.point(p.as_dvec3()).as_vec3());
                    (i, s.distance, s.nearest)
                })
                .min_by(|a, b| a.1.total_cmp(&b.1))
                .unwrap();
            if deepest < 0.7 {
                println!(
                    "{} {level}: {deepest:.2} {:?} in {:?}",
                    spec.name,
                    bone.label(bone.outer.tags[i]),
                    below.label(below.solid.pieces[usize::from(near)].tag)
                );
            }
            for side in Side::BOTH {
                let s = patient.level(level).side(side);
                for (what, part, point, surface) in [
                    ("pars", Part::Pars, s.pars.unwrap(), false),
                    ("lamina", Part::Lamina, s.lamina.unwrap(), false),
                    ("tp", Part::TransverseProcess, s.transverse_tip.unwrap(), true),
                    ("iap", Part::InferiorArticularProcess, s.inferior_process_tip.unwrap(), true),
                    ("sap", Part::SuperiorArticularProcess, s.superior_process_tip, true),
                    ("sp", Part::SpinousProcess, patient.level(level).spinous_tip, true),
                ] {
                    let own = bone.frame.inverse().point(point).as_vec3();
                    let sample = bone.solid.sample(own);
                    let found = bone.label(bone.solid.pieces[usize::from(sample.nearest)].tag).part;
                    if found != part
                        || (surface && sample.distance.abs() > 0.15)
                        || (!surface && sample.distance > -0.3)
                    {
                        println!(
                            "{} {level} {side} {what}: {:.2} nearest {found:?}",
                            spec.name, sample.distance
                        );
                    }
                }
            }
        }
    }
}
