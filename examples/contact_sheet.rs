//! Writes one PNG with several views of a level side by side: `cargo run --release --example contact_sheet -- L4 average out.png
//! 0,0 28,2 90,0` (each view is oblique,tilt in degrees).

use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [level, patient, file, views @ ..] = &arguments[..] else {
        return Err("give: LEVEL PATIENT FILE.png OBLIQUE,TILT ...".into());
    };
    let started = std::time::Instant::now();
    let patient = Patient::new(&PatientSpec::named(patient)?);
    eprintln!("patient: {:.1} ms", started.elapsed().as_secs_f64() * 1e3);
    let triangles: usize =
        patient.bones.iter().map(|b| b.outer.triangles.len() + b.marrow.triangles.len()).sum();
    eprintln!("{triangles} triangles");
    let centre = patient.level(level.parse()?).centre;
    let mut radiograph = Radiograph::new(&CArm::default());
    let size = radiograph.size();
    let mut sheet = vec![0_u8; size * size * views.len()];
    for (n, view) in views.iter().enumerate() {
        let (oblique, tilt) = view.split_once(',').ok_or("a view is OBLIQUE,TILT")?;
        let arm = CArm::at_degrees(oblique.parse()?, tilt.parse()?)?;
        let started = std::time::Instant::now();
        let picture =
            radiograph.render(Scene::of(&patient), &Projection::new(&arm, centre), &Look::default());
        eprintln!("view {view}: {:.1} ms", started.elapsed().as_secs_f64() * 1e3);
        for (y, row) in picture.chunks(size).enumerate() {
            let at = (y * views.len() + n) * size;
            sheet[at..at + size].copy_from_slice(row);
        }
    }
    let out = std::io::BufWriter::new(std::fs::File::create(file)?);
    let mut encoder = png::Encoder::new(out, (size * views.len()) as u32, size as u32);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.write_header()?.write_image_data(&sheet)?;
    Ok(())
}
