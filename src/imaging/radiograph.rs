//! The radiograph: Beer–Lambert attenuation through trunk and bones, as the free live picture or as an exposure with its dose.
//!
//! `A = -ln(I / I0) = Σ Δμ · L`: each body adds its path length times the step of attenuation from what surrounds it (fat for the
//! inner trunk, soft tissue for bones, muscle and gas, cortex for the marrow). Path lengths of meshes are signed sums over edges;
//! those of the trunk's two elliptic cylinders are in closed form on a coarse grid. The sums are at the picture's effective energy;
//! [`super::trabeculae`] adds the marrow's texture, and [`super::spectrum`] makes of the sums what the spectrum gives. [`super::detector`] is what an exposure adds.

use super::attenuation::{Material, marrow_per_mm, per_mm};
use super::c_arm::CArm;
use super::detector::{Quanta, Receptor, Spread};
use super::display::{COARSE, COARSE_POINTS, Display, Shutters, Window, along_coarse_row};
use super::dose::Irradiation;
use super::exposure::{BeamSettings, ExposureKind, Technique, irradiation, kvp_for, technique};
use super::inclusion::Inclusion;
use super::path_length::Raster;
use super::projection::Projection;
use super::spectrum::{Hardening, Spectrum};
use super::trabeculae::Texture;
use super::tube::{KVP_RANGE, output};
use crate::anatomy::patient::Patient;
use crate::anatomy::soft_tissue::{Cylinder, Filling, Trunk};
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
    /// How far each ray runs through marrow, mm.
    marrow: Vec<f32>,
    /// Of the picture that was begun last: what its sums go through, and how many bodies are in.
    developer: Option<Developer>,
    added: usize,
    /// Rows that are attenuation.
    developed: usize,
    attenuation: Vec<f32>,
    received: Vec<f32>,
    held: Vec<f32>,
    holds: bool,
    receptor: Receptor,
    trunk_row: Vec<f32>,
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

/// Rows whose sums are run before they are developed.
const ROWS_AT_ONCE: usize = 8;

/// Share of a new frame in the running mean of fluoroscopy. Common practice, no source.
const NEW_FRAME_SHARE: f32 = 0.5;

impl Radiograph {
    /// For the detector of `arm` (its orientation does not matter).
    pub fn new(arm: &CArm) -> Self {
        let count = arm.pixels * arm.pixels;
        Self {
            arm: *arm,
            raster: Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm),
            marrow: vec![0.0; count],
            developer: None,
            added: 0,
            developed: 0,
            attenuation: vec![0.0; count],
            received: Vec::new(),
            held: Vec::new(),
            holds: false,
            receptor: Receptor::default(),
            trunk_row: vec![0.0; arm.pixels],
            display: Display::new(arm.pixels),
            shutters: [0, arm.pixels, 0, arm.pixels],
            grey: vec![0; count],
        }
    }

    /// Pixels along an edge.
    pub fn size(&self) -> usize {
        self.raster.size()
    }

    /// Sums of the last picture at the effective energy, without the marrow's, to be multiplied by the rays' slant; row 0 at the top.
    pub fn sums(&self) -> &[f32] {
        self.raster.sums()
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
        self.show_attenuation(look)
    }

    /// Begins a free picture that is made in steps: [`Self::add_next`] until there is no more, [`Self::develop`],
    /// [`Self::show_attenuation`].
    pub fn begin(&mut self, scene: Scene<'_>, view: &Projection) {
        let grid = self.developer.take().map_or_else(Vec::new, |before| before.trunk);
        self.developer = Some(Developer::with(grid, scene.patient, view, self.size()));
        self.added = 0;
        self.developed = 0;
        self.raster.clear();
    }

    /// Sums the next body up; `false` when all are in, or none was begun.
    pub fn add_next(&mut self, Scene { patient, inclusions }: Scene<'_>, view: &Projection) -> bool {
        let (bones, bodies) = (&patient.bones, &patient.soft_tissue.bodies);
        let Some(Developer { weights: w, .. }) = &self.developer else { return false };
        // All marrow first, by itself: the raster is then free for the rest.
        let marrows = bones.len();
        let i = self.added;
        self.added += 1;
        if let Some(bone) = bones.get(i) {
            self.raster.add(&bone.marrow, &bone.marrow_edges, &bone.marrow_chunks, view, 1.0);
        } else if i == marrows {
            self.raster.finish_into(&mut self.marrow);
        } else if let Some(bone) = bones.get(i - marrows - 1) {
            self.raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, view, w.bone);
        } else if let Some(body) = bodies.get(i - 2 * marrows - 1) {
            self.raster.add(&body.mesh, &body.edges, &body.chunks, view, w.of(body.filling));
        } else if let Some(body) = inclusions.get(i - 2 * marrows - 1 - bodies.len()) {
            let step = body.step_per_mm(w.energy_kev) as f32;
            self.raster.add(&body.mesh, &body.edges, &body.chunks, view, step);
        } else {
            return false;
        }
        true
    }

    /// Makes the attenuation of what has been summed up.
    pub fn develop(&mut self) {
        while self.develop_some(usize::MAX) {}
    }

    /// Does up to `rows` more rows of it; `false` when none are left, or none was begun.
    pub fn develop_some(&mut self, rows: usize) -> bool {
        let size = self.raster.size();
        let Some(Developer { weights, texture, hardening, trunk: grid }) = &self.developer else {
            return false;
        };
        let hollow = weights.marrow;
        let end = self.developed.saturating_add(rows).min(size);
        for y in self.developed..end {
            // A few rows at a time, while they are at hand.
            if (y - self.developed).is_multiple_of(ROWS_AT_ONCE) {
                self.raster.finish_rows(y..(y + ROWS_AT_ONCE).min(end));
            }
            let row = y * size..(y + 1) * size;
            let (sums, slant) = (&self.raster.sums()[row.clone()], &self.raster.slant()[row.clone()]);
            let marrow = &self.marrow[row.clone()];
            let line = &mut self.attenuation[row];
            for (((a, sum), marrow), slant) in line.iter_mut().zip(sums).zip(marrow).zip(slant) {
                *a = (sum + hollow * marrow) * slant;
            }
            texture.add(y, marrow, line);
            // The trunk's row by itself first: the polynomial then runs over whole vectors.
            let trunk = &mut self.trunk_row[..size];
            along_coarse_row(grid, y, trunk);
            for (a, t) in line.iter_mut().zip(trunk) {
                *a = hardening.attenuation(*t, *a);
            }
        }
        self.developed = end;
        end < size
    }

    /// Shows the free picture that was developed last.
    pub fn show_attenuation(&mut self, look: &Look) -> &[u8] {
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
        self.received.clear();
        self.received.extend_from_slice(&self.attenuation);
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
            self.held.clear();
            self.held.extend_from_slice(&self.received);
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
    fn attenuate(&mut self, scene: Scene<'_>, view: &Projection) -> f64 {
        self.begin(scene, view);
        while self.add_next(scene, view) {}
        self.develop();
        self.developer.as_ref().map_or(KVP_RANGE.0, |developer| developer.weights.kvp)
    }
}

/// All that a picture's sums go through until they are attenuation: what a graphics processor needs to develop them.
#[derive(Clone, Debug)]
pub struct Developer {
    /// Of the tissues.
    pub weights: Weights,
    /// Of the marrow.
    pub texture: Texture,
    /// Of the beam.
    pub hardening: Hardening,
    /// The trunk at the points of the coarse grid.
    pub trunk: Vec<f32>,
}

impl Developer {
    /// For free pictures of `size` pixels a side.
    pub fn new(patient: &Patient, view: &Projection, size: usize) -> Self {
        Self::with(Vec::new(), patient, view, size)
    }

    /// The same with a buffer for the grid.
    fn with(mut grid: Vec<f32>, patient: &Patient, view: &Projection, size: usize) -> Self {
        let trunk = &patient.soft_tissue.trunk;
        let kvp = kvp_for(chord_mm(&trunk.skin, view, DVec2::ZERO));
        let weights = Weights::at(kvp, patient.spec.bone_density);
        let texture = Texture::new(view, size, patient.spec.bone_density);
        grid.resize(COARSE_POINTS, 0.0);
        trunk_grid(trunk, view, &weights, &texture, size, &mut grid);
        Self { weights, texture, hardening: Spectrum::at(kvp).hardening(), trunk: grid }
    }
}

/// Where the window of a small picture of attenuation lies, `size` pixels a side, and what equalisation takes off at the points of the
/// coarse grid.
pub fn window_of(attenuation: &[f32], size: usize, look: &Look) -> Option<(Window, Vec<f32>)> {
    let mut display = Display::new(size);
    let window = display.window(attenuation, size, [0, size, 0, size], look)?;
    Some((window, display.removed().to_vec()))
}

/// What the tissues of a picture add to the attenuation, at its effective energy, 1/mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weights {
    /// Voltage, kVp.
    pub kvp: f64,
    /// Effective energy, keV.
    pub energy_kev: f64,
    /// Inside of the skin.
    pub fat: f64,
    /// Inside of the fascia, over fat.
    pub within: f64,
    /// Cortex over soft tissue.
    pub bone: f32,
    /// Marrow over cortex.
    pub marrow: f32,
    fillings: [f32; 4],
}

impl Weights {
    /// At a voltage, for a bone density.
    pub fn at(kvp: f64, density: f64) -> Self {
        let energy_kev = output(kvp).energy_kev;
        let of = |material| per_mm(material, energy_kev);
        let (soft, fat, cortex) =
            (of(Material::SoftTissue), of(Material::Adipose), of(Material::CorticalBone));
        let fillings = [of(Material::Muscle) - fat, fat - soft, of(Material::Air) - soft, fat];
        Self {
            kvp,
            energy_kev,
            fat,
            within: soft - fat,
            bone: (cortex - soft) as f32,
            marrow: (marrow_per_mm(density, energy_kev) - cortex) as f32,
            fillings: fillings.map(|w| w as f32),
        }
    }

    /// A body's step over what surrounds it.
    pub fn of(&self, filling: Filling) -> f32 {
        self.fillings[filling as usize]
    }
}

/// Attenuation of the trunk at the effective energy at the points of the coarse grid.
fn trunk_grid(
    trunk: &Trunk,
    view: &Projection,
    weights: &Weights,
    texture: &Texture,
    size: usize,
    grid: &mut [f32],
) {
    for j in 0..=COARSE {
        for i in 0..=COARSE {
            let share = DVec2::new(i as f64 / COARSE as f64 - 0.5, 0.5 - j as f64 / COARSE as f64);
            let uv = share * (2.0 * view.half_field_mm);
            let inside = chord_mm(&trunk.fascia, view, uv);
            let mottle = texture.mottle(DVec2::new(share.x, -share.y) * size as f64);
            let a = weights.fat * chord_mm(&trunk.skin, view, uv) + weights.within * inside;
            grid[j * (COARSE + 1) + i] = (a + mottle * (inside / 180.0).min(1.5)) as f32;
        }
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
