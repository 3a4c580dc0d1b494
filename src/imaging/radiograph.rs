//! The radiograph: Beer–Lambert attenuation through trunk and bones, as the free live picture or as an exposure with its dose.
//!
//! `A = -ln(I / I0) = Σ Δμ · L`: each body adds its path length times the step of attenuation from what surrounds it (fat for the
//! inner trunk, soft tissue for bones, muscle and gas, cortex for the marrow). Path lengths of meshes are signed sums over edges;
//! those of the trunk's two elliptic cylinders are in closed form on a coarse grid. The sums are at the picture's effective energy;
//! [`super::spectrum`] makes of them what the spectrum gives. [`super::detector`] is what an exposure adds.

use super::attenuation::{Material, marrow_per_mm, per_mm};
use super::c_arm::CArm;
use super::detector::{Quanta, Receptor, Spread};
use super::display::{COARSE, COARSE_POINTS, Display, Shutters, along_coarse_row};
use super::dose::Irradiation;
use super::exposure::{BeamSettings, ExposureKind, Technique, irradiation, kvp_for, technique};
use super::inclusion::Inclusion;
use super::path_length::Raster;
use super::projection::Projection;
use super::spectrum::Spectrum;
use super::tube::output;
use crate::anatomy::patient::Patient;
use crate::anatomy::soft_tissue::{Cylinder, Filling};
use glam::DVec2;

pub use super::display::Look;

/// What the beam goes through.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// The patient.
    pub patient: &'a Patient,
    /// Needle and contrast.
    pub inclusions: &'a [Inclusion],
}

impl<'a> Scene<'a> {
    /// A patient with nothing in it.
    pub fn of(patient: &'a Patient) -> Self {
        Self { patient, inclusions: &[] }
    }
}

/// A picture and its buffers; nothing is allocated from frame to frame.
#[derive(Clone, Debug)]
pub struct Radiograph {
    arm: CArm,
    raster: Raster,
    attenuation: Vec<f32>,
    received: Vec<f32>,
    held: Vec<f32>,
    holds: bool,
    receptor: Receptor,
    trunk: Vec<f32>,
    display: Display,
    shutters: Shutters,
    grey: Vec<u8>,
}

/// What an exposure was made with and what it cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// What automatic brightness chose.
    pub technique: Technique,
    /// The record for the dose log.
    pub irradiation: Irradiation,
}

/// Share of a new frame in the running mean of fluoroscopy. Common practice, no source.
const NEW_FRAME_SHARE: f32 = 0.5;

impl Radiograph {
    /// For the detector of `arm` (its orientation does not matter).
    pub fn new(arm: &CArm) -> Self {
        let count = arm.pixels * arm.pixels;
        Self {
            arm: *arm,
            raster: Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm),
            attenuation: vec![0.0; count],
            received: vec![0.0; count],
            held: vec![0.0; count],
            holds: false,
            receptor: Receptor::default(),
            trunk: vec![0.0; COARSE_POINTS],
            display: Display::new(arm.pixels),
            shutters: [0, arm.pixels, 0, arm.pixels],
            grey: vec![0; count],
        }
    }

    /// Pixels along an edge.
    pub fn size(&self) -> usize {
        self.raster.size()
    }

    /// Attenuation integral of every pixel of the last picture before scatter, blur and noise, row 0 at the top.
    pub fn attenuation(&self) -> &[f32] {
        &self.attenuation
    }

    /// Attenuation integrals of the held exposure as the receptor measured them, row 0 at the top.
    pub fn held(&self) -> &[f32] {
        &self.held
    }

    /// Grey values of the last picture, row 0 at the top.
    pub fn grey(&self) -> &[u8] {
        &self.grey
    }

    /// The free live picture, without noise or dose: grey values, row 0 at the top.
    pub fn render(&mut self, scene: Scene<'_>, view: &Projection, look: &Look) -> &[u8] {
        self.attenuate(scene, view);
        let size = self.size();
        self.shutters = [0, size, 0, size];
        self.holds = false;
        self.display.show(&self.attenuation, size, self.shutters, look, &mut self.grey);
        &self.grey
    }

    /// One exposure of `pulses` pulses; a run of fluoroscopy frames is averaged until [`Self::release`]. The magnification of the
    /// settings is that of the detector this was made for: make it for [`BeamSettings::magnified`].
    pub fn expose(
        &mut self,
        scene: Scene<'_>,
        view: &Projection,
        look: &Look,
        settings: &BeamSettings,
        pulses: u32,
        seed: u64,
    ) -> Exposure {
        let kvp = self.attenuate(scene, view);
        let size = self.size();
        self.shutters = shutters(size, settings);
        let field = measuring_field(&self.attenuation, size, self.shutters);
        // The settings' own magnification shrinks the pixel; this detector already has.
        let whole = CArm { pixel_mm: self.arm.pixel_mm * settings.magnification, ..self.arm };
        let technique = technique(&whole, settings, kvp, f64::from(field));
        let half_field = {
            let settings = settings.half_field();
            let field = measuring_field(&self.attenuation, size, shutters(size, &settings));
            super::exposure::technique(&whole, &settings, kvp, f64::from(field))
        };
        let irradiation = irradiation(&whole, settings, &technique, &half_field, pulses);
        self.received.copy_from_slice(&self.attenuation);
        let quanta = Quanta {
            reference_attenuation: field,
            photons_per_pixel: technique.photons_per_pixel as f32,
            open_share: settings.open_share() as f32,
            spread: Spread::new(self.arm.magnification(), self.arm.pixel_mm),
            continues: settings.kind == ExposureKind::Fluoroscopy && self.holds,
            seed,
        };
        self.receptor.detect(&mut self.received, size, &quanta);
        if quanta.continues {
            for (held, new) in self.held.iter_mut().zip(&self.received) {
                *held += NEW_FRAME_SHARE * (new - *held);
            }
        } else {
            self.held.copy_from_slice(&self.received);
        }
        self.holds = settings.kind == ExposureKind::Fluoroscopy;
        self.display.show(&self.held, size, self.shutters, look, &mut self.grey);
        Exposure { technique, irradiation }
    }

    /// Ends a run of fluoroscopy: the last picture stays, the next one is not averaged with it.
    pub fn release(&mut self) {
        self.holds = false;
    }

    /// Shows the held exposure again with another look.
    pub fn show_held(&mut self, look: &Look) -> &[u8] {
        let size = self.size();
        self.display.show(&self.held, size, self.shutters, look, &mut self.grey);
        &self.grey
    }

    /// Computes the attenuation and returns the voltage that automatic brightness chose for it, kVp.
    fn attenuate(&mut self, Scene { patient, inclusions }: Scene<'_>, view: &Projection) -> f64 {
        let trunk = &patient.soft_tissue.trunk;
        let kvp = kvp_for(chord_mm(&trunk.skin, view, DVec2::ZERO));
        let energy = output(kvp).energy_kev;
        let soft = per_mm(Material::SoftTissue, energy);
        let fat = per_mm(Material::Adipose, energy);
        let cortex = per_mm(Material::CorticalBone, energy);
        let marrow = marrow_per_mm(patient.spec.bone_density, energy);
        self.raster.clear();
        for bone in &patient.bones {
            self.raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, view, (cortex - soft) as f32);
            let weight = (marrow - cortex) as f32;
            self.raster.add(&bone.marrow, &bone.marrow_edges, &bone.marrow_chunks, view, weight);
        }
        for body in &patient.soft_tissue.bodies {
            let weight = match body.filling {
                Filling::MuscleInFat => per_mm(Material::Muscle, energy) - fat,
                Filling::Fat => fat - soft,
                Filling::Gas => per_mm(Material::Air, energy) - soft,
                Filling::Trabeculae => (cortex - marrow) * patient.spec.bone_density,
            };
            self.raster.add(&body.mesh, &body.edges, &body.chunks, view, weight as f32);
        }
        for body in inclusions {
            let weight = body.step_per_mm(energy) as f32;
            self.raster.add(&body.mesh, &body.edges, &body.chunks, view, weight);
        }
        self.raster.finish();
        for j in 0..=COARSE {
            for i in 0..=COARSE {
                let uv = DVec2::new(i as f64 / COARSE as f64 - 0.5, 0.5 - j as f64 / COARSE as f64);
                let uv = uv * (2.0 * view.half_field_mm);
                let a =
                    fat * chord_mm(&trunk.skin, view, uv) + (soft - fat) * chord_mm(&trunk.fascia, view, uv);
                self.trunk[j * (COARSE + 1) + i] = a as f32;
            }
        }
        let hardening = Spectrum::at(kvp).hardening();
        let size = self.raster.size();
        for y in 0..size {
            let row = y * size;
            let (sums, slant) = (&self.raster.sums()[row..row + size], &self.raster.slant()[row..row + size]);
            let line = &mut self.attenuation[row..row + size];
            along_coarse_row(&self.trunk, size, y, |x, trunk| {
                line[x] = hardening.attenuation(trunk, sums[x] * slant[x]);
            });
        }
        kvp
    }
}

/// Chord of a pixel's ray through an elliptic cylinder, mm.
fn chord_mm(cylinder: &Cylinder, view: &Projection, uv: DVec2) -> f64 {
    cylinder.crossings_mm(view.source, view.ray_through(uv)).map_or(0.0, |[enters, leaves]| leaves - enters)
}

/// The open rectangle of the collimator in pixels.
fn shutters(size: usize, settings: &BeamSettings) -> Shutters {
    let side = |open: f64| {
        let half = (size as f64 * open / 2.0) as usize;
        [size / 2 - half, size / 2 + half]
    };
    let ([left, right], [top, bottom]) = (side(settings.open[0]), side(settings.open[1]));
    [left, right, top, bottom]
}

/// Attenuation of the measuring field: the mean intensity over the middle half of what is open, as an attenuation.
fn measuring_field(attenuation: &[f32], size: usize, [left, right, top, bottom]: Shutters) -> f32 {
    let inner = |low: usize, high: usize| low + (high - low) / 4..high - (high - low) / 4;
    let (mut sum, mut count) = (0.0_f32, 0.0_f32);
    let first = attenuation[(size / 2) * size + size / 2];
    for y in inner(top, bottom).step_by(4) {
        for x in inner(left, right).step_by(4) {
            sum += libm::expf(first - attenuation[y * size + x]);
            count += 1.0;
        }
    }
    first - libm::logf((sum / count).max(1e-6))
}
