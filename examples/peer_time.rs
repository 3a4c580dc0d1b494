//! Times path lengths alone, one thread, for the comparison in `tests/reference/peers.py`:
//! `cargo run --release --example peer_time -- FOLDER OBLIQUE TILT`.
//!
//! Writes into FOLDER, for the bone of L4 and for all bones of the average patient, the outside as `bone.obj` and `scene.obj` (mm, axes
//! as a patient's, origin at the isocentre) and the picture as `bone.f32` and `scene.f32` (mm, rows from the top, 32-bit floats), and prints
//! a line for each: name, triangles, median milliseconds of a cleared, filled and finished picture.

use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::{Bone, Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::path_length::Raster;
use downbeam::imaging::projection::Projection;
use std::error::Error;
use std::fmt::Write;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

const REPEATS: usize = 41;

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [folder, oblique, tilt] = &arguments[..] else {
        return Err("give: FOLDER OBLIQUE TILT".into());
    };
    let patient = Patient::new(&PatientSpec::named("average")?);
    let arm = CArm::at_degrees(oblique.parse()?, tilt.parse()?)?;
    let view = Projection::new(&arm, patient.level(Level::L4).centre);
    let mut raster = Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm);
    let l4 = [patient.bone(Level::L4)];
    for (name, bones) in [("bone", &l4[..]), ("scene", &patient.bones.iter().collect::<Vec<_>>())] {
        let mut times: Vec<f64> = Vec::with_capacity(REPEATS);
        for _ in 0..REPEATS {
            let started = Instant::now();
            raster.clear();
            for bone in bones {
                raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, &view, 1.0);
            }
            raster.finish();
            black_box(raster.sums());
            times.push(started.elapsed().as_secs_f64() * 1e3);
        }
        times.sort_by(f64::total_cmp);
        let lengths =
            raster.sums().iter().zip(raster.slant()).flat_map(|(sum, slant)| (sum * slant).to_le_bytes());
        let file = Path::new(folder).join(name);
        std::fs::write(file.with_extension("f32"), lengths.collect::<Vec<u8>>())?;
        std::fs::write(file.with_extension("obj"), obj(bones, &view)?)?;
        let triangles: usize = bones.iter().map(|b| b.outer.triangles.len()).sum();
        println!("{name} {triangles} {:.3}", times[REPEATS / 2]);
    }
    Ok(())
}

/// The outsides as one Wavefront file.
fn obj(bones: &[&Bone], view: &Projection) -> Result<String, std::fmt::Error> {
    let (mut text, mut first) = (String::new(), 1);
    let isocentre = view.isocentre.as_vec3();
    for bone in bones {
        for p in &bone.outer.positions {
            let p = *p - isocentre;
            writeln!(text, "v {} {} {}", p.x, p.y, p.z)?;
        }
        for t in &bone.outer.triangles {
            writeln!(text, "f {} {} {}", t[0] + first, t[1] + first, t[2] + first)?;
        }
        first += bone.outer.positions.len() as u32;
    }
    Ok(text)
}
