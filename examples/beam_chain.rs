//! Sends test pictures through the receptor, and test thicknesses through the spectrum, for the checks in `tests/reference`:
//! `cargo run --example beam_chain -- FOLDER`.
//!
//! Writes 32-bit floats, rows from the top, attenuation as the receptor measures it: `flat-P-S.f32`, a flat field with P micrometres a
//! pixel and seed S; `edge-P.f32`, the edge of a step of one, 3 degrees off upright, without noise to speak of. Prints as JSON what the
//! chain says of itself: modulation transfer, the photons that were given, and the attenuation of bone behind soft tissue at each voltage.

use downbeam::imaging::attenuation::{Material, per_mm};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::detector::{DQE, Quanta, Receptor, Spread, transfer};
use downbeam::imaging::spectrum::Spectrum;
use downbeam::imaging::tube::output;
use serde_json::json;
use std::error::Error;
use std::path::Path;

const SIZE: usize = 512;
const PHOTONS: f32 = 94.0;
const SEEDS: u64 = 6;
/// Soft tissue that attenuates as 200 mm of water do at 55 keV.
const WATER_AS_SOFT_MM: f64 = 189.4;
const EDGE_DEGREES: f64 = 3.0;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).ok_or("give: FOLDER")?;
    let folder = Path::new(&folder);
    let write = |name: String, picture: &[f32]| {
        let bytes: Vec<u8> = picture.iter().flat_map(|v| v.to_le_bytes()).collect();
        std::fs::write(folder.join(name), bytes)
    };
    let mut chains = Vec::new();
    for micrometres in [400_u32, 200] {
        let spread = Spread::new(CArm::default().magnification(), f64::from(micrometres) * 1e-3);
        let mut receptor = Receptor::default();
        let mut take = |mut picture: Vec<f32>, photons_per_pixel: f32, seed: u64| {
            let quanta = Quanta {
                reference_attenuation: 5.0,
                photons_per_pixel,
                open_share: 0.0,
                spread,
                continues: false,
                seed,
            };
            receptor.detect(&mut picture, SIZE, &quanta);
            picture
        };
        for seed in 0..SEEDS {
            let picture = take(vec![5.0; SIZE * SIZE], PHOTONS, seed);
            write(format!("flat-{micrometres}-{seed}.f32"), &picture)?;
        }
        let lean = EDGE_DEGREES.to_radians();
        let edge = (0..SIZE * SIZE).map(|i| {
            let (x, y) = ((i % SIZE) as f64 - 255.5, (i / SIZE) as f64 - 255.5);
            if x * libm::cos(lean) + y * libm::sin(lean) < 0.0 { 5.0 } else { 4.0 }
        });
        write(format!("edge-{micrometres}.f32"), &take(edge.collect(), 1e9, 1))?;
        let cycles: Vec<f64> = (0..=50).map(|i| f64::from(i) * 0.01).collect();
        let of = |taps| cycles.iter().map(|&f| transfer(taps, f)).collect::<Vec<_>>();
        chains.push(json!({
            "micrometres": micrometres,
            "cycles_per_pixel": cycles,
            "focal": of(&spread.focal),
            "screen": of(&spread.screen),
        }));
    }
    let mut bone = Vec::new();
    for kvp in [70.0, 76.0, 90.0, 110.0] {
        let fast = Spectrum::at(kvp).hardening();
        let mean = output(kvp).energy_kev;
        let soft = per_mm(Material::SoftTissue, mean);
        let step = per_mm(Material::CorticalBone, mean) - soft;
        for trunk_mm in [150.0, WATER_AS_SOFT_MM, 200.0, 300.0] {
            // Bone in the place of as much soft tissue.
            for bone_mm in [0.0, 1.0, 3.0, 10.0, 20.0, 40.0, 60.0] {
                let a = fast.attenuation((soft * trunk_mm) as f32, (step * bone_mm) as f32);
                bone.push(json!([kvp, trunk_mm, bone_mm, a]));
            }
        }
    }
    println!("{}", json!({ "photons": PHOTONS, "dqe": DQE, "seeds": SEEDS, "chains": chains, "bone": bone }));
    Ok(())
}
