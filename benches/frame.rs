//! What a frame and a new patient cost: `cargo bench --bench frame`.

use criterion::{Criterion, criterion_group, criterion_main};
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::outline::OutlineTracer;
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use downbeam::view::criteria::Target;
use downbeam::view::report::{AskedView, report};
use std::hint::black_box;
use std::time::Duration;

/// Orientations of a slow sweep from AP to oblique, one a frame.
fn sweep() -> impl Iterator<Item = CArm> {
    (0..).map(|i| CArm {
        oblique_rad: f64::from(i % 60) * 0.01,
        tilt_rad: f64::from(i % 17) * 0.01 - 0.08,
        ..CArm::default()
    })
}

fn frame(c: &mut Criterion) {
    let spec = PatientSpec::named("average").expect("the average patient is in the list");
    let patient = Patient::new(&spec);
    let target = Target { level: Level::L4, side: Side::Left };
    let centre = patient.level(target.level).centre;
    let triangles: usize =
        patient.bones.iter().map(|b| b.outer.triangles.len() + b.marrow.triangles.len()).sum();
    println!("triangles in the scene, both surfaces: {triangles}");

    let mut group = c.benchmark_group("frame");
    let mut radiograph = Radiograph::new(&CArm::default());
    let mut tracer = OutlineTracer::default();
    let mut arms = sweep();
    group.bench_function("radiograph 512", |b| {
        b.iter(|| {
            let view = Projection::new(&arms.next().unwrap_or_default(), centre);
            black_box(radiograph.render(Scene::of(&patient), &view, &Look::default()));
        });
    });
    group.bench_function("outlines", |b| {
        b.iter(|| {
            let view = Projection::new(&arms.next().unwrap_or_default(), centre);
            black_box(tracer.trace(&patient, &view));
        });
    });
    group.bench_function("criteria and report", |b| {
        b.iter(|| black_box(report(&patient, &AskedView::usual(target), &arms.next().unwrap_or_default())));
    });
    group.bench_function("whole frame", |b| {
        b.iter(|| {
            let arm = arms.next().unwrap_or_default();
            let view = Projection::new(&arm, centre);
            black_box(radiograph.render(Scene::of(&patient), &view, &Look::default()));
            black_box(tracer.trace(&patient, &view));
            black_box(report(&patient, &AskedView::usual(target), &arm));
        });
    });
    group.finish();

    let mut group = c.benchmark_group("patient");
    group.sample_size(10).measurement_time(Duration::from_secs(5));
    group.bench_function("new, all meshes", |b| b.iter(|| black_box(Patient::new(&spec))));
    group.finish();
}

criterion_group!(benches, frame);
criterion_main!(benches);
