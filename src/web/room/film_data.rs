//! The handle's part for a film that the graphics processor draws (`www/film/gpu.js`): meshes, a view's numbers, and the window of what it
//! has drawn. Nothing that is scored comes from there.

use super::{TeachingRoom, film_pixels};
use crate::anatomy::soft_tissue::Filling;
use crate::geometry::mesh::Mesh;
use crate::imaging::c_arm::CArm;
use crate::imaging::radiograph::{Developer, Radiograph, Scene, window_of};
use crate::imaging::trabeculae::{BLOCK, VOLUME};
use js_sys::{Array, Float32Array, Int8Array, Uint8Array, Uint32Array};
use wasm_bindgen::prelude::*;

/// Meshes one after the other, with a value a vertex.
#[derive(Default)]
struct Gathered<T> {
    positions: Vec<f32>,
    triangles: Vec<u32>,
    values: Vec<T>,
}

impl<T: Copy> Gathered<T> {
    fn add(&mut self, mesh: &Mesh, value: T) {
        let first = self.values.len() as u32;
        self.positions.extend(mesh.positions.iter().flat_map(|p| p.to_array()));
        self.triangles.extend(mesh.triangles.iter().flatten().map(|i| i + first));
        self.values.resize(self.values.len() + mesh.positions.len(), value);
    }
}

/// Number of a body's tissue in `filmView`'s weights: bone's cortex, marrow, then the fillings.
fn tissue(filling: Filling) -> u8 {
    2 + filling as u8
}

#[wasm_bindgen]
impl TeachingRoom {
    /// All bodies of the patient: `[positions, triangles, tissues]`; mm, three numbers a vertex and a triangle, and a vertex's tissue.
    #[wasm_bindgen(js_name = filmMeshes, unchecked_return_type = "[Float32Array, Uint32Array, Uint8Array]")]
    pub fn film_meshes(&self) -> Array {
        let mut all = Gathered::<u8>::default();
        for bone in &self.patient.bones {
            all.add(&bone.outer, 0);
            all.add(&bone.marrow, 1);
        }
        for body in &self.patient.soft_tissue.bodies {
            all.add(&body.mesh, tissue(body.filling));
        }
        Array::of3(
            &Float32Array::from(&all.positions[..]),
            &Uint32Array::from(&all.triangles[..]),
            &Uint8Array::from(&all.values[..]),
        )
    }

    /// Needle and contrast as of a tick: `[positions, triangles, weights]`, a vertex's weight being its attenuation a mm.
    #[wasm_bindgen(js_name = filmInclusions, unchecked_return_type = "[Float32Array, Uint32Array, Float32Array]")]
    pub fn film_inclusions(&mut self, tick: Option<u32>, energy_kev: f64) -> Array {
        self.show_needle_at(tick);
        let mut all = Gathered::<f32>::default();
        for body in self.procedure.inclusions() {
            all.add(&body.mesh, body.step_per_mm(energy_kev) as f32);
        }
        Array::of3(
            &Float32Array::from(&all.positions[..]),
            &Uint32Array::from(&all.triangles[..]),
            &Float32Array::from(&all.values[..]),
        )
    }

    /// The block of bone's texture, x fastest: `[values, side, height]`.
    #[wasm_bindgen(js_name = filmTexture, unchecked_return_type = "[Int8Array, number, number]")]
    pub fn film_texture() -> Array {
        Array::of3(&Int8Array::from(&VOLUME[..]), &(BLOCK[0] as u32).into(), &(BLOCK[1] as u32).into())
    }

    /// Numbers of the present view for a film of `pixels`: source, d, right, up (12), SID, SOD, half field, energy (4), weights by tissue
    /// (6), marrow over cortex, texture's strength (2), beam hardening (4 + 16), the texture's planes (5 times 9), then the trunk (33 x 33).
    #[wasm_bindgen(js_name = filmView)]
    pub fn film_view(&self, pixels: u32) -> Result<Float32Array, JsError> {
        let size = film_pixels(Some(pixels))?;
        let view = self.view_of(&self.arm);
        let Developer { weights, texture, hardening, trunk } = Developer::new(&self.patient, &view, size);
        let mut list: Vec<f32> = Vec::with_capacity(92 + trunk.len());
        for v in [view.source, view.d, view.right, view.up] {
            list.extend(v.as_vec3().to_array());
        }
        list.extend([view.sid_mm, view.sod_mm, view.half_field_mm, weights.energy_kev].map(|v| v as f32));
        let fillings = [Filling::MuscleInFat, Filling::Fat, Filling::Gas, Filling::Bulge];
        list.extend([weights.bone, 0.0]);
        list.extend(fillings.map(|filling| weights.of(filling)));
        list.extend([weights.marrow, texture.strength]);
        list.extend(hardening.trunk);
        list.extend(hardening.rest.iter().flatten());
        list.extend(texture.planes.iter().flatten().flat_map(|v| v.as_vec3().to_array()));
        list.extend(trunk);
        Ok(Float32Array::from(&list[..]))
    }

    /// Window and equalisation of a small square picture of attenuation: offset, gain, base and sign of `imaging::display::Window`, then what
    /// is taken off (33 x 33). Empty where there is nothing to show.
    #[wasm_bindgen(js_name = filmWindow)]
    pub fn film_window(&self, attenuation: &[f32], bone_dark: bool) -> Float32Array {
        let size = libm::sqrt(attenuation.len() as f64) as usize;
        let Some((window, removed)) = window_of(attenuation, size, &self.look(bone_dark)) else {
            return Float32Array::new_with_length(0);
        };
        let mut list = vec![window.offset, window.gain, window.base, window.sign];
        list.extend(removed);
        Float32Array::from(&list[..])
    }

    /// What the processor sums up where the graphics processor does so too, as of `pixels`: attenuation before slant, marrow and trunk.
    /// For comparing both.
    #[wasm_bindgen(js_name = filmSums)]
    pub fn film_sums(&self, pixels: u32) -> Result<Float32Array, JsError> {
        let mut radiograph = Radiograph::new(&CArm::default().sampled(film_pixels(Some(pixels))?));
        let view = self.view_of(&self.arm);
        let scene = Scene { patient: &self.patient, inclusions: self.procedure.inclusions() };
        radiograph.begin(scene, &view);
        while radiograph.add_next(scene, &view) {}
        radiograph.develop();
        Ok(Float32Array::from(radiograph.sums()))
    }
}
