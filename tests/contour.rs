//! Outlines against closed forms: under a cone beam the outline of an ellipsoid (and so of a sphere) is a conic.
//!
//! For `|A (p - c)|² = 1` and the source s, the grazing rays p = s + t r satisfy `(r·M e)² = (r·M r)(e·M e - 1)` with e = s - c,
//! M = AᵀA: a quadratic form in the detector coordinates of r.

use downbeam::geometry::lattice::Lattice;
use downbeam::geometry::mesh::Mesh;
use downbeam::geometry::sdf::{Ellipsoid, Shape};
use downbeam::geometry::solid::{Piece, Solid};
use downbeam::geometry::surface_nets::{Surface, extract};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::contour::ContourTracer;
use downbeam::imaging::outline::silhouette;
use downbeam::imaging::projection::Projection;
use glam::{DMat3, DVec2, DVec3, Mat3, Vec3};

fn mesh_of(ellipsoid: &Ellipsoid, spacing: f32) -> Mesh {
    let solid = Solid {
        pieces: vec![Piece::new(Shape::Ellipsoid(ellipsoid.clone()), 0, 1.0, 1.0)],
        carves: Vec::new(),
    };
    extract(&solid, &Lattice::sample(&solid, spacing), Surface::Outer)
}

/// The value of the conic at a detector point, scaled to mm by its gradient.
fn conic_distance_mm(e: &Ellipsoid, view: &Projection, uv: DVec2) -> f64 {
    let axes = e.axes.as_dmat3();
    let inverse = DMat3::from_diagonal(DVec3::ONE / (e.radii.as_dvec3() * e.radii.as_dvec3()));
    let m = axes * inverse * axes.transpose();
    let to = view.source - e.centre.as_dvec3();
    let value = |uv: DVec2| {
        let r = view.d * view.sid_mm + view.right * uv.x + view.up * uv.y;
        let a = r.dot(m * to);
        a * a - r.dot(m * r) * (to.dot(m * to) - 1.0)
    };
    let h = 1e-4;
    let gradient = DVec2::new(
        value(uv + DVec2::X * h) - value(uv - DVec2::X * h),
        value(uv + DVec2::Y * h) - value(uv - DVec2::Y * h),
    ) / (2.0 * h);
    value(uv) / gradient.length()
}

fn cases() -> [Ellipsoid; 2] {
    let turned = Mat3::from_cols(
        Vec3::new(0.936, 0.342, 0.094).normalize(),
        Vec3::new(-0.342, 0.940, 0.0).normalize(),
        Vec3::ZERO,
    );
    let x = turned.x_axis;
    let y = (turned.y_axis - x * x.dot(turned.y_axis)).normalize();
    [
        Ellipsoid { centre: Vec3::new(12.0, -8.0, 15.0), axes: Mat3::IDENTITY, radii: Vec3::splat(18.0) },
        Ellipsoid {
            centre: Vec3::new(-5.0, 9.0, -11.0),
            axes: Mat3::from_cols(x, y, x.cross(y)),
            radii: Vec3::new(20.0, 15.0, 12.0),
        },
    ]
}

#[test]
fn outlines_of_sphere_and_ellipsoid_are_their_conics() {
    for (n, ellipsoid) in cases().iter().enumerate() {
        let mesh = mesh_of(ellipsoid, 1.4);
        for (oblique_deg, tilt_deg) in [(0.0, 0.0), (28.0, -12.0), (-90.0, 5.0)] {
            let view = Projection::new(&CArm::at_degrees(oblique_deg, tilt_deg).unwrap(), DVec3::ZERO);
            let mut loops = 0;
            let all = std::iter::once(0..mesh.triangles.len());
            ContourTracer::default().trace(&mesh, &mesh.edges(), view.source.as_vec3(), all, |ring| {
                loops += 1;
                assert!(ring.len() > 40);
                assert_eq!(ring[0].position, ring[ring.len() - 1].position);
                for point in ring {
                    let off = conic_distance_mm(ellipsoid, &view, view.project(point.position.as_dvec3()));
                    // On the detector, where a pixel is 0.4 mm.
                    assert!(off.abs() < 0.05, "case {n}, {oblique_deg}/{tilt_deg}: {off}");
                }
            });
            assert_eq!(loops, 1);
        }
    }
}

#[test]
fn silhouette_is_the_same_conic_and_has_its_area() {
    for ellipsoid in &cases() {
        let mesh = mesh_of(ellipsoid, 1.4);
        let view = Projection::new(&CArm::at_degrees(20.0, 10.0).unwrap(), DVec3::ZERO);
        let rings = silhouette(&mesh, &view);
        assert_eq!(rings.len(), 1);
        for p in &rings[0] {
            let off = conic_distance_mm(ellipsoid, &view, DVec2::new(f64::from(p[0]), f64::from(p[1])));
            assert!(off.abs() < 0.05, "{off}");
        }
    }
}

/// Two balls side by side along the beam: their contours cross, the silhouette is one ring around both.
#[test]
fn silhouette_of_two_overlapping_shadows_is_their_union() {
    let ball = |x: f32, y: f32| {
        mesh_of(
            &Ellipsoid { centre: Vec3::new(x, y, 0.0), axes: Mat3::IDENTITY, radii: Vec3::splat(10.0) },
            1.4,
        )
    };
    let mut both = ball(-6.0, -15.0);
    let other = ball(6.0, 15.0);
    let first = both.positions.len() as u32;
    both.positions.extend(&other.positions);
    both.normals.extend(&other.normals);
    both.tags.extend(&other.tags);
    both.triangles.extend(other.triangles.iter().map(|t| t.map(|i| i + first)));
    let view = Projection::new(&CArm::default(), DVec3::ZERO);
    let rings = silhouette(&both, &view);
    assert_eq!(rings.len(), 1);
    let (low, high) = rings[0].iter().fold((f32::MAX, f32::MIN), |(l, h), p| (l.min(p[0]), h.max(p[0])));
    // Each ball's half shadow is its radius at its own magnification (1100/685, 1100/715), a little more for the cone.
    assert!((high - 6.0 * 1.606 - 10.0 * 1.606).abs() < 0.3, "{high}");
    assert!((low + 6.0 * 1.538 + 10.0 * 1.538).abs() < 0.3, "{low}");
}
