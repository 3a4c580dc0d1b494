//! Path lengths against closed forms, and properties of the signed sum.

use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::geometry::chunks::chunks;
use downbeam::geometry::lattice::Lattice;
use downbeam::geometry::mesh::Mesh;
use downbeam::geometry::sdf::{Ellipsoid, Shape};
use downbeam::geometry::solid::{Piece, Solid};
use downbeam::geometry::surface_nets::{Surface, extract};
use downbeam::imaging::attenuation::{Material, per_mm};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::path_length::Raster;
use downbeam::imaging::projection::Projection;
use glam::{DVec2, DVec3, Mat3, Vec3};
use proptest::prelude::*;

const SIZE: usize = 128;

fn raster(arm: &CArm) -> Raster {
    Raster::new(SIZE, 2.0 * arm.half_field_mm() / SIZE as f64, arm.sid_mm)
}

fn pixel(arm: &CArm, x: usize, y: usize) -> DVec2 {
    let half = arm.half_field_mm();
    let at = |i: usize| (i as f64 + 0.5) / SIZE as f64 * 2.0 * half - half;
    DVec2::new(at(x), -at(y))
}

fn lengths(raster: &Raster) -> Vec<f64> {
    raster.sums().iter().zip(raster.slant()).map(|(s, k)| f64::from(s * k)).collect()
}

/// A box with its corners at ±half, outward triangles.
fn slab(half: Vec3) -> Mesh {
    let corner = |i: u32| {
        Vec3::new(
            if i & 1 == 0 { -half.x } else { half.x },
            if i & 2 == 0 { -half.y } else { half.y },
            if i & 4 == 0 { -half.z } else { half.z },
        )
    };
    let quads = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
    let triangles = quads.iter().flat_map(|q| [[q[0], q[1], q[2]], [q[0], q[2], q[3]]]).collect();
    Mesh { positions: (0..8).map(corner).collect(), triangles, ..Mesh::default() }
}

/// A wide slab square to the central ray is crossed over thickness / cos(angle to it) everywhere.
#[test]
fn slab_is_its_thickness_over_the_cosine() {
    let arm = CArm::default();
    let view = Projection::new(&arm, DVec3::ZERO);
    let mut raster = raster(&arm);
    let mesh = slab(Vec3::new(120.0, 10.0, 120.0));
    raster.add(&mesh, &mesh.edges(), &chunks(&mesh, &mesh.edges()), &view, 1.0);
    raster.finish();
    for (i, length) in lengths(&raster).into_iter().enumerate() {
        let exact = 20.0 / view.ray_through(pixel(&arm, i % SIZE, i / SIZE)).dot(view.d);
        assert!((length - exact).abs() < 2e-3, "pixel {i}: {length} against {exact}");
    }
}

/// Worked case of the physics reference: semi-axes 20/15/12 mm; chord of an ellipsoid in closed form, compared where it is longer
/// than 4 mm, and the whole shadow's sum.
#[test]
fn ellipsoid_is_its_chord() {
    let radii = Vec3::new(20.0, 15.0, 12.0);
    let shape = Shape::Ellipsoid(Ellipsoid { centre: Vec3::ZERO, axes: Mat3::IDENTITY, radii });
    let solid = Solid { pieces: vec![Piece::new(shape, 0, 1.0, 1.0)], carves: Vec::new() };
    let mesh = extract(&solid, &Lattice::sample(&solid, 0.6), Surface::Outer);
    for (oblique_deg, tilt_deg) in [(0.0, 0.0), (33.0, -17.0), (90.0, 0.0)] {
        let arm = CArm::at_degrees(oblique_deg, tilt_deg).unwrap();
        let view = Projection::new(&arm, DVec3::ZERO);
        let mut raster = raster(&arm);
        raster.add(&mesh, &mesh.edges(), &chunks(&mesh, &mesh.edges()), &view, 1.0);
        raster.finish();
        let (mut worst, mut sum, mut exact_sum) = (0.0_f64, 0.0, 0.0);
        for (i, length) in lengths(&raster).into_iter().enumerate() {
            let r = view.ray_through(pixel(&arm, i % SIZE, i / SIZE)) / radii.as_dvec3();
            let o = view.source / radii.as_dvec3();
            let (a, b, c) = (r.length_squared(), o.dot(r), o.length_squared() - 1.0);
            let disc = b * b - a * c;
            let exact = if disc > 0.0 { 2.0 * libm::sqrt(disc) / a } else { 0.0 };
            sum += length;
            exact_sum += exact;
            if exact > 4.0 {
                worst = worst.max((length - exact).abs());
            }
        }
        assert!(worst < 0.12, "{oblique_deg}/{tilt_deg}: {worst}");
        assert!((sum / exact_sum - 1.0).abs() < 2e-3, "{oblique_deg}/{tilt_deg}: {sum} against {exact_sum}");
    }
}

/// Worked test of the physics reference, section 1 (60 keV): 18 cm soft tissue and 2 cm cortical bone let 5.995e-3 through, 20 cm of
/// soft tissue 1.3010e-2.
#[test]
fn beer_lambert_of_the_worked_case() {
    let mu = |m| per_mm(m, 60.0);
    let bone = libm::exp(-(mu(Material::SoftTissue) * 180.0 + mu(Material::CorticalBone) * 20.0));
    let soft = libm::exp(-mu(Material::SoftTissue) * 200.0);
    assert!((bone / 5.995e-3 - 1.0).abs() < 2e-3, "{bone}");
    assert!((soft / 1.3010e-2 - 1.0).abs() < 2e-3, "{soft}");
}

/// The real bones: entries and exits balance at every pixel, so that where there is no bone the sum is nothing, and nowhere is it
/// negative beyond rounding.
#[test]
fn real_bones_balance_at_every_pixel() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    for (oblique_deg, tilt_deg) in [(0.0, 0.0), (26.0, -3.0), (91.0, 1.0), (-37.0, 22.0)] {
        let arm = CArm::at_degrees(oblique_deg, tilt_deg).unwrap();
        let view = Projection::new(&arm, patient.level(Level::L4).centre);
        let mut raster = Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm);
        for bone in &patient.bones {
            raster.clear();
            raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, &view, 1.0);
            raster.finish();
            let least = raster.sums().iter().copied().fold(f32::MAX, f32::min);
            let most = raster.sums().iter().copied().fold(f32::MIN, f32::max);
            assert!(least > -1e-3, "{oblique_deg}/{tilt_deg} {}: {least}", bone.level);
            assert!(most < 190.0, "{oblique_deg}/{tilt_deg} {}: {most}", bone.level);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Moving a body along the beam's axis or across it does not change its volume as seen: sum of length times the area that a
    /// pixel covers at its depth. Checked on a small ball, where one depth stands for all of it.
    #[test]
    fn moving_an_object_keeps_its_volume(x in -30.0_f32..30.0, y in -60.0_f32..60.0, z in -30.0_f32..30.0) {
        let shape = Shape::Ellipsoid(Ellipsoid { centre: Vec3::new(x, y, z), axes: Mat3::IDENTITY, radii: Vec3::splat(9.0) });
        let solid = Solid { pieces: vec![Piece::new(shape, 0, 1.0, 1.0)], carves: Vec::new() };
        let mesh = extract(&solid, &Lattice::sample(&solid, 0.9), Surface::Outer);
        let arm = CArm::default();
        let view = Projection::new(&arm, DVec3::ZERO);
        let mut raster = raster(&arm);
        raster.add(&mesh, &mesh.edges(), &chunks(&mesh, &mesh.edges()), &view, 1.0);
    raster.finish();
        let pixel_mm = 2.0 * arm.half_field_mm() / SIZE as f64;
        let scale = view.magnification_at(DVec3::new(f64::from(x), f64::from(y), f64::from(z)));
        // Depth along the central ray times the pixel's area at the ball's plane.
        let volume: f64 = raster.sums().iter().map(|&s| f64::from(s)).sum::<f64>() * (pixel_mm / scale) * (pixel_mm / scale);
        prop_assert!((volume / mesh.volume() - 1.0).abs() < 0.01, "{} {}", volume, mesh.volume());
    }

    /// The order of the triangles does not matter.
    #[test]
    fn order_of_triangles_does_not_matter(seed in any::<u64>()) {
        let mut mesh = slab(Vec3::new(21.0, 14.0, 17.0));
        let arm = CArm::at_degrees(31.0, 12.0).unwrap();
        let view = Projection::new(&arm, DVec3::ZERO);
        let mut first = raster(&arm);
        first.add(&mesh, &mesh.edges(), &chunks(&mesh, &mesh.edges()), &view, 1.0);
        first.finish();
        let mut state = seed | 1;
        for i in (1..mesh.triangles.len()).rev() {
            state = state.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
            mesh.triangles.swap(i, (state >> 33) as usize % (i + 1));
        }
        let mut second = raster(&arm);
        second.add(&mesh, &mesh.edges(), &chunks(&mesh, &mesh.edges()), &view, 1.0);
        second.finish();
        for (a, b) in first.sums().iter().zip(second.sums()) {
            prop_assert!((a - b).abs() < 1e-3);
        }
    }
}
