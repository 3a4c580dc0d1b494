//! Moves the rows of a vertebra's shape towards a real bone, and prints them. Run by hand; its result is reviewed and rounded.
use downbeam::geometry::sdf::{Drum, Loft, Section, Shape, smooth_max};
use downbeam::geometry::solid::{Facet, Piece, Solid};
use glam::{DQuat, DVec3, Vec3};
use std::fmt::Write as _;

/// One parameter of the shape.
struct Free { name: String, start: f64, spread: f64 }

const PARTS: [(&str, usize, [f64; 3], f64); 6] = [
    ("pedicle", 4, [0.0, 0.0, 1.0], 2.6),
    ("superior", 5, [0.6, 0.8, 0.0], 3.0),
    ("pillar", 7, [0.9, 0.35, 0.0], 3.0),
    ("lamina", 4, [0.0, 0.0, 1.0], 3.0),
    ("transverse", 5, [0.0, 0.0, 1.0], 3.0),
    ("spinous", 6, [0.0, 0.0, 1.0], 3.0),
];
const CORTEX: f32 = 1.0;

fn rows(part: &str) -> Vec<[f64; 7]> {
    // x, y behind the wall, z, half wide, half thin, turn in degrees, squareness
    match part {
        "transverse" if std::env::args().any(|a| a.contains("/L5")) => vec![[17.,4.,2.,7.,9.,0.,0.2],[24.,3.,1.,7.,10.,0.,0.2],[31.,4.,0.5,6.5,9.5,0.,0.2],[38.,7.,1.,5.5,6.5,0.,0.1],[44.,8.5,2.,4.,3.,0.,0.]],
        "pillar" if std::env::args().any(|a| a.contains("/L5")) => vec![[17.,11.,4.,7.,4.,0.,0.],[17.,11.,-1.,7.,4.,0.,0.],[17.,12.,-6.,6.6,4.2,0.,0.],[17.5,15.,-10.5,7.,4.,0.,0.],[18.,17.,-15.,7.,4.2,0.,0.],[18.,17.5,-18.5,6.2,3.8,0.,0.],[17.5,18.,-21.,4.5,3.,0.,0.]],
        "pedicle" => vec![[18.0,-6.0,5.0,7.6,6.6,0.,0.2],[18.4,0.0,5.0,7.4,6.2,0.,0.1],[18.6,5.0,4.5,7.2,6.2,0.,0.1],[18.5,10.0,4.0,7.4,6.8,0.,0.1]],
        "superior" => vec![[17.,12.,-2.,8.,5.,0.,0.],[17.2,13.5,4.,8.3,5.,0.,0.],[17.2,15.,9.5,8.3,4.5,0.,0.],[17.4,16.,14.5,7.8,4.,0.,0.],[18.,15.,18.,5.5,2.5,0.,0.]],
        "pillar" => vec![[17.,11.,4.,7.,5.,0.,0.],[16.5,13.,-1.,6.5,5.,0.,0.],[16.,14.,-6.,6.5,5.,0.,0.],[16.,15.,-11.,7.,5.5,0.,0.],[15.5,16.,-16.,7.5,5.5,0.,0.],[15.,17.,-20.,7.,5.,0.,0.],[14.5,18.,-24.,5.,4.,0.,0.]],
        "lamina" => vec![[15.,14.,-6.,9.,4.,0.,0.2],[10.,17.,-7.,11.,4.2,0.,0.2],[5.,20.,-8.,12.,4.4,0.,0.2],[0.3,23.,-9.,12.,4.,0.,0.2]],
        "transverse" => vec![[17.,8.,3.,7.,5.,0.,0.],[24.,10.,3.,6.,3.6,0.,0.],[31.,12.,3.,5.2,3.0,0.,0.],[38.,14.,3.5,5.,2.8,0.,0.],[43.,15.,3.5,4.,2.3,0.,0.]],
        _ if std::env::args().any(|a| a.contains("/L5")) => vec![[0.,18.,-5.,7.,4.5,0.,0.3],[0.,22.,-7.,7.,3.4,0.,0.3],[0.,26.,-9.,7.,3.,0.,0.4],[0.,30.,-11.,7.,3.,0.,0.4],[0.,34.,-13.,7.,3.2,0.,0.4],[0.,38.,-15.,6.,3.5,0.,0.3]],
        _ => vec![[0.,19.,-8.,10.,4.5,0.,0.3],[0.,24.,-9.5,9.5,3.4,0.,0.3],[0.,29.,-10.5,9.,3.,0.,0.4],[0.,35.,-11.5,8.8,3.,0.,0.4],[0.,41.,-12.5,8.5,3.2,0.,0.4],[0.,45.,-13.,7.5,3.5,0.,0.3]],
    }
}

fn mirrored(v: DVec3, side: f64) -> DVec3 { DVec3::new(v.x * side, v.y, v.z) }

/// The loft of a part from its parameters.
fn loft(x: &[f64], wide: [f64; 3], cap: [f64; 2], wall: f64, side: f64) -> Loft {
    let count = x.len() / 7;
    let at = |i: usize| DVec3::new(x[7 * i], x[7 * i + 1] + wall, x[7 * i + 2]);
    let chord = (at(count - 1) - at(0)).normalize();
    let base = DVec3::from_array(wide);
    let sections: Vec<Section> = (0..count).map(|i| {
        let r = &x[7 * i..7 * i + 7];
        Section {
            centre: mirrored(at(i), side),
            wide: mirrored(DQuat::from_axis_angle(chord, r[5].to_radians()) * (base - chord * base.dot(chord)).normalize(), side),
            half_wide: r[3].max(1.0), half_thin: r[4].max(1.0), squareness: r[6].clamp(-0.6, 1.0),
        }
    }).collect();
    Loft::new(&sections, cap)
}

struct Model { free: Vec<Free>, wall: f64 }

const BODY: usize = 13;

impl Model {
    fn new(wall: f64, body: [f64; 6]) -> Self {
        let mut free = Vec::new();
        let mut add = |name: String, start: f64, spread: f64| free.push(Free { name, start, spread });
        for (n, v, s) in [("upper_width", body[0], 6.), ("lower_width", body[1], 6.), ("upper_depth", body[2], 6.), ("lower_depth", body[3], 6.),
            ("posterior_height", body[4], 3.), ("anterior_height", body[5], 3.), ("waist_w", 0.16, 0.1), ("waist_d", 0.12, 0.1), ("flat", 0.3, 0.5), ("shift", 0.3, 2.),
            ("square", 0.45, 0.4), ("dent", 1.6, 2.), ("tilt_y", 0.0, 3.)] { add(format!("body {n}"), v, s); }
        for (part, count, _, _) in PARTS {
            for (i, r) in rows(part).iter().enumerate().take(count) {
                for (j, n) in ["x", "y", "z", "wide", "thin", "turn", "square"].iter().enumerate() {
                    let spread = [4., 4., 4., 3., 2.5, 25., 0.4][j];
                    add(format!("{part} {i} {n}"), r[j], spread);
                }
            }
            add(format!("{part} cap a"), 3.0, 1.5);
            add(format!("{part} cap b"), if part == "pedicle" || part == "lamina" { 1.5 } else { 3.0 }, 1.5);
        }
        for (n, v, s) in [("fx", 17.5, 3.), ("fy", 16.0, 3.), ("plane", 40.0, 20.), ("curve", 0.03, 0.02), ("lean", 0.0, 0.3)] { add(format!("facet {n}"), v, s); }
        for (n, v, s) in [("x", 22.0, 3.), ("y", 16.0, 3.), ("z", 8.0, 4.), ("rx", 3.0, 1.), ("ry", 3.5, 1.), ("rz", 5.0, 1.5)] { add(format!("mamillary {n}"), v, s); }
        Self { free, wall }
    }

    /// The parameters as they are used: stations between the ends at their shares, the spinous process in the midline.
    fn kept(&self, x: &[f64]) -> Vec<f64> {
        let mut x = x.to_vec();
        let mut from = BODY;
        for (part, count, _, _) in PARTS {
            let axis = match part { "pedicle" | "spinous" => 1, "lamina" | "transverse" => 0, _ => 2 };
            let start = rows(part);
            let (a, b) = (start[0][axis], start[count - 1][axis]);
            let (xa, xb) = (x[from + axis], x[from + 7 * (count - 1) + axis]);
            for i in 0..count {
                let share = (start[i][axis] - a) / (b - a);
                x[from + 7 * i + axis] = xa + share * (xb - xa);
                if part == "spinous" { x[from + 7 * i] = 0.0; x[from + 7 * i + 5] = 0.0; }
                if part == "lamina" && i == count - 1 { x[from + 7 * i] = 0.3; }
                x[from + 7 * i + 6] = x[from + 7 * i + 6].clamp(0.0, 0.9);
            }
            from += 7 * count + 2;
        }
        x
    }

    fn solid(&self, x: &[f64]) -> Solid {
        let x = &self.kept(x)[..];
        let b = &x[..BODY];
        let body = Drum {
            half_width: [b[1] / 2.0, b[0] / 2.0].map(|v| v as f32), half_depth: [b[3] / 2.0, b[2] / 2.0].map(|v| v as f32),
            posterior_height: b[4] as f32, anterior_height: b[5] as f32, waist: [b[6] as f32, b[7] as f32], waist_flat: b[8].clamp(-1.0, 3.0) as f32, waist_shift: b[9] as f32,
            squareness: b[10].clamp(0.0, 1.0) as f32, plate_sag: [1.5, 0.7], posterior_dent: b[11] as f32, plate_cortex_ratio: 1.0,
        };
        let mut solid = Solid::default();
        solid.pieces.push(Piece::hung(Shape::Drum(body), 0, CORTEX, 2.0, Vec3::new(0.0, (self.wall - (b[2] + b[3]) / 4.0 + b[12]) as f32, 0.0)));
        let tail = &x[x.len() - 11..];
        for side in [1.0, -1.0] {
            let mut from = BODY;
            for (k, (part, count, wide, blend)) in PARTS.iter().enumerate() {
                let slice = &x[from..from + 7 * count];
                let cap = [x[from + 7 * count].max(0.5), x[from + 7 * count + 1].max(0.5)];
                from += 7 * count + 2;
                if *part == "spinous" && side < 0.0 { continue; }
                let shape = Shape::Loft(Box::new(loft(slice, *wide, cap, self.wall, side)));
                let mut piece = Piece::new(shape, k as u8 + 1, CORTEX, *blend as f32);
                if *part == "superior" {
                    let a = tail[2].to_radians();
                    let n = mirrored(DVec3::new(-a.cos(), a.sin(), tail[4]).normalize(), side);
                    let t = mirrored(DVec3::new(a.sin(), a.cos(), 0.0), side);
                    piece = piece.with_facet(Facet {
                        point: mirrored(DVec3::new(tail[0], tail[1] + self.wall, 10.0), side).as_vec3(), normal: n.as_vec3(), tangent: t.as_vec3(), curvature: tail[3] as f32 });
                }
                solid.pieces.push(piece);
            }
            let m = &tail[5..];
            solid.pieces.push(Piece::new(Shape::Ellipsoid(downbeam::geometry::sdf::Ellipsoid {
                centre: mirrored(DVec3::new(m[0], m[1] + self.wall, m[2]), side).as_vec3(), axes: glam::Mat3::IDENTITY,
                radii: Vec3::new(m[3].max(1.0) as f32, m[4].max(1.0) as f32, m[5].max(1.0) as f32) }), 9, CORTEX, 3.0));
        }
        solid
    }
}

fn main() {
    let args: Vec<String> = std::env::args().collect();
    let wall: f64 = args[2].parse().unwrap();
    let rounds: usize = args[3].parse().unwrap();
    let body: Vec<f64> = args[4].split(',').map(|v| v.parse().unwrap()).collect();
    let points: Vec<(Vec3, f64)> = std::fs::read_to_string(&args[1]).unwrap().lines().step_by(2).map(|l| {
        let v: Vec<f64> = l.split(' ').map(|x| x.parse().unwrap()).collect();
        (Vec3::new(v[0] as f32, v[1] as f32, v[2] as f32), v[3])
    }).collect();
    let model = Model::new(wall, body.try_into().unwrap());
    let mut x: Vec<f64> = model.free.iter().map(|f| f.start).collect();
    if let Some(file) = args.get(5) && let Ok(text) = std::fs::read_to_string(file) {
        for line in text.lines() { let (name, value) = line.rsplit_once(' ').unwrap(); if let Some(i) = model.free.iter().position(|f| f.name == name) { x[i] = value.parse().unwrap(); } }
    }
    let n = x.len();
    let clamp = |d: f64| d.clamp(-3.0, 3.0);
    let residuals = |x: &[f64]| -> Vec<f64> {
        let solid = model.solid(x);
        let kept = model.kept(x);
        let mut bends = Vec::new();
        let mut from = BODY;
        for (_, count, _, _) in PARTS {
            for i in 1..count - 1 {
                for j in 0..7 {
                    let at = |n: usize| kept[from + 7 * (i + n - 1) + j];
                    let second = at(0) - 2.0 * at(1) + at(2);
                    bends.push(second / [3.0, 3.0, 3.0, 2.5, 2.5, 20.0, 0.5][j] * if i == 1 || i == count - 2 { 2.2 } else { 1.5 });
                }
            }
            from += 7 * count + 2;
        }
        points.iter().map(|&(p, d)| {
            let ours = f64::from(solid.distance_within(p, 12.0));
            let e = clamp(ours) - clamp(d);
            // Far errors count like near ones (Huber at 1.5).
            if e.abs() > 1.5 { e.signum() * (1.5 * (2.0 * e.abs() - 1.5)).sqrt() } else { e }
        }).chain(bends).collect()
    };
    let pull = 0.7; // weight of the start, in points a parameter
    let cost = |r: &[f64], x: &[f64]| r.iter().map(|e| e * e).sum::<f64>() + model.free.iter().zip(x).map(|(f, v)| pull * pull * ((v - f.start) / f.spread).powi(2) * 20.0).sum::<f64>();
    let mut r = residuals(&x);
    let mut now = cost(&r, &x);
    let mut damp = 1e-1;
    let on = |r: &[f64]| (r.iter().zip(&points).filter(|(_, p)| p.1.abs() < 1e-3).map(|(e, _)| e.abs()).sum::<f64>()) / points.iter().filter(|p| p.1.abs() < 1e-3).count() as f64;
    eprintln!("{n} parameters, start {now:.0}, on surface {:.3}", on(&r));
    for round in 0..rounds {
        let mut normal = vec![0.0; n * n];
        let mut right = vec![0.0; n];
        let columns: Vec<Vec<(usize, f64)>> = {
            let work = |j: usize| {
                let h = 0.02 * model.free[j].spread;
                let mut y = x.clone();
                y[j] += h;
                let moved = residuals(&y);
                moved.iter().zip(&r).enumerate().filter(|(_, (a, b))| a != b).map(|(i, (a, b))| (i, (a - b) / h)).collect::<Vec<_>>()
            };
            std::thread::scope(|s| {
                let half = n / 2;
                let other = s.spawn(move || (half..n).map(work).collect::<Vec<_>>());
                let mut mine: Vec<_> = (0..half).map(work).collect();
                mine.extend(other.join().unwrap());
                mine
            })
        };
        let mut dense = vec![0.0f64; r.len()];
        for a in 0..n {
            dense.fill(0.0);
            for &(i, v) in &columns[a] { dense[i] = v; }
            right[a] = -columns[a].iter().map(|&(i, v)| v * r[i]).sum::<f64>() - 20.0 * pull * pull * (x[a] - model.free[a].start) / model.free[a].spread.powi(2);
            for b in a..n {
                let v: f64 = columns[b].iter().map(|&(i, v)| v * dense[i]).sum();
                normal[a * n + b] = v; normal[b * n + a] = v;
            }
            normal[a * n + a] += 20.0 * pull * pull / model.free[a].spread.powi(2);
        }
        let mut better = false;
        for _ in 0..8 {
            let mut m = normal.clone();
            for a in 0..n { m[a * n + a] *= 1.0 + damp; m[a * n + a] += 1e-6; }
            let step = solve(&mut m, &right, n);
            let y: Vec<f64> = x.iter().zip(&step).zip(&model.free).map(|((v, s), f)| v + s.clamp(-f.spread, f.spread)).collect();
            let moved = residuals(&y);
            let then = cost(&moved, &y);
            if then < now { let gain = (now - then) / now; x = y; r = moved; now = then; damp = (damp * 0.4f64).max(1e-5); better = gain > 5e-4; break; }
            damp *= 4.0;
        }
        eprintln!("round {round}: {now:.0}, on surface {:.3}, damp {damp:.1e}", on(&r));
        if !better { break; }
    }
    let mut out = String::new();
    let x = model.kept(&x);
    for (f, v) in model.free.iter().zip(&x) { writeln!(out, "{} {v:.3}", f.name).unwrap(); }
    std::fs::write(format!("{}.rows", args[1]), out).unwrap();
    let _ = smooth_max;
    // The mesh, to measure.
    let solid = model.solid(&x);
    let lattice = downbeam::geometry::lattice::Lattice::sample(&solid, 1.0);
    let mesh = downbeam::geometry::surface_nets::extract(&solid, &lattice, downbeam::geometry::surface_nets::Surface::Outer);
    let mut obj = String::new();
    for v in &mesh.positions { writeln!(obj, "v {} {} {}", v.x, v.y, v.z).unwrap(); }
    for t in &mesh.triangles { writeln!(obj, "f {} {} {}", t[0] + 1, t[1] + 1, t[2] + 1).unwrap(); }
    std::fs::write(format!("{}.obj", args[1]), obj).unwrap();
}

/// Cholesky.
fn solve(m: &mut [f64], right: &[f64], n: usize) -> Vec<f64> {
    for i in 0..n {
        for j in 0..=i {
            let mut s = m[i * n + j];
            for k in 0..j { s -= m[i * n + k] * m[j * n + k]; }
            m[i * n + j] = if i == j { s.max(1e-12).sqrt() } else { s / m[j * n + j] };
        }
    }
    let mut y = right.to_vec();
    for i in 0..n { for k in 0..i { y[i] -= m[i * n + k] * y[k]; } y[i] /= m[i * n + i]; }
    for i in (0..n).rev() { for k in i + 1..n { y[i] -= m[k * n + i] * y[k]; } y[i] /= m[i * n + i]; }
    y
}
