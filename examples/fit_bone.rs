//! Moves the rows of a vertebra's shape towards a real bone and prints them; run by hand, its result is reviewed and rounded into
//! `anatomy::vertebra_table`.
//!
//! usage: fit_bone LEVEL SAMPLES ROUNDS [--from LEVEL] [--obj FILE]
//!   SAMPLES  lines "x y z distance", mm: points on and around a real bone with their signed distance to it, as
//!            `tests/reference/bone_samples.py` writes them (x left, y posterior with 0 at the middle of the posterior wall, z cranial)
//!
//! What is fitted: all rows of a level at the dimensions of the table (which stay), and where the bone lies in the vertebra's frame.
//! How: damped Gauss-Newton (Levenberg-Marquardt) on the difference of the two signed distances, cut at 3 mm and counted linearly from
//! 1.5 mm on (Huber), with a pull towards the rows as they stand and towards smooth axes. Points in a band around the surface count
//! as well as points on it, so that bone of ours where there is none is seen too.

use downbeam::anatomy::dimensions::{Vertebra, vertebra};
use downbeam::anatomy::names::Level;
use downbeam::anatomy::vertebra::as_written;
use downbeam::anatomy::vertebra_rows::{Bar, Rows};
use downbeam::anatomy::vertebra_table::ROWS;
use downbeam::geometry::lattice::Lattice;
use downbeam::geometry::surface_nets::{Surface, extract};
use glam::{DVec3, Vec3};
use std::fmt::Write as _;

/// Facet's middle below the process's tip, mm: facets are 15–17 high (within Panjabi 1993: read).
const FACET_BELOW_TIP_MM: f64 = 7.5;
/// Weight of the pull towards the start, in points.
const PULL: f64 = 10.0;
/// Weight of the bends.
const SMOOTH: f64 = 4.0;

type Visitor<'a> = dyn FnMut(&str, &mut f64, f64) + 'a;

/// Calls `f` with name, value and usual spread of every number of a part that is free.
fn visit_bar<const N: usize>(part: &str, bar: &mut Bar<N>, f: &mut Visitor<'_>) {
    for (i, row) in bar.rows.iter_mut().enumerate() {
        let (pedicle, spinous) = (part == "pedicle", part == "spinous");
        if pedicle && i == 1 {
            continue;
        }
        for (axis, name) in ["x", "y", "z"].into_iter().enumerate() {
            let held = (axis == 0 && (pedicle || spinous || part == "lamina" && i == N - 1))
                || (axis == 1 && pedicle);
            if !held {
                f(&format!("{part} {i} {name}"), &mut row.at[axis], 4.0);
            }
        }
        f(&format!("{part} {i} wide"), &mut row.half[0], 3.0);
        f(&format!("{part} {i} thin"), &mut row.half[1], 2.5);
        if !pedicle && !spinous {
            f(&format!("{part} {i} turn"), &mut row.turn_deg, 20.0);
        }
        if part != "superior" && part != "pillar" && part != "transverse" {
            f(&format!("{part} {i} square"), &mut row.square, 0.4);
        }
    }
    for (i, cap) in bar.cap_mm.iter_mut().enumerate() {
        f(&format!("{part} cap {i}"), cap, 1.0);
    }
}

fn visit(rows: &mut Rows, place: &mut [f64; 2], f: &mut Visitor<'_>) {
    let w = &mut rows.walls;
    f("waist across", &mut w.waist[0], 0.1);
    f("waist along", &mut w.waist[1], 0.1);
    f("waist flat", &mut w.waist_flat, 0.5);
    f("waist shift", &mut w.waist_shift_mm, 1.0);
    f("walls square", &mut w.square, 0.4);
    f("walls dent", &mut w.dent_mm, 1.0);
    visit_bar("pedicle", &mut rows.pedicle, f);
    visit_bar("superior", &mut rows.superior.bar, f);
    visit_bar("pillar", &mut rows.pillar, f);
    visit_bar("lamina", &mut rows.lamina, f);
    visit_bar("transverse", &mut rows.transverse, f);
    visit_bar("spinous", &mut rows.spinous, f);
    let facet = &mut rows.superior.facet;
    f("facet x", &mut facet.at[0], 3.0);
    f("facet y", &mut facet.at[1], 3.0);
    f("facet curvature", &mut facet.curvature, 0.02);
    let bump = &mut rows.superior.mamillary;
    for i in 0..3 {
        f(&format!("mamillary at {i}"), &mut bump.at[i], 2.0);
        f(&format!("mamillary half {i}"), &mut bump.half[i], 0.7);
    }
    f("place y", &mut place[0], 10.0);
    f("place z", &mut place[1], 10.0);
}

/// Holds a part's sections at their shares of the way between its ends along `axis`, as in `start`.
fn hold_shares<const N: usize>(bar: &mut Bar<N>, start: &Bar<N>, axis: usize) {
    let (a, b) = (start.rows[0].at[axis], start.rows[N - 1].at[axis]);
    let (xa, xb) = (bar.rows[0].at[axis], bar.rows[N - 1].at[axis]);
    for i in 1..N - 1 {
        bar.rows[i].at[axis] = xa + (start.rows[i].at[axis] - a) / (b - a) * (xb - xa);
    }
}

/// Half widths and half thicknesses stay within these, squareness under `square`.
fn within<const N: usize>(bar: &mut Bar<N>, wide: [f64; 2], thin: [f64; 2], square: f64) {
    for row in &mut bar.rows {
        row.half = [row.half[0].clamp(wide[0], wide[1]), row.half[1].clamp(thin[0], thin[1])];
        row.square = row.square.clamp(0.0, square);
        row.turn_deg = row.turn_deg.clamp(-40.0, 40.0);
    }
    bar.cap_mm = bar.cap_mm.map(|c| c.clamp(1.5, 6.0));
}

/// The rows as they are used: what the dimensions name stands there.
fn held(mut rows: Rows, start: &Rows, d: &Vertebra) -> Rows {
    rows.walls.waist = rows.walls.waist.map(|w| w.clamp(0.06, 0.22));
    rows.walls.waist_flat = rows.walls.waist_flat.clamp(-1.0, 1.0);
    rows.walls.square = rows.walls.square.clamp(0.0, 0.8);
    rows.walls.dent_mm = rows.walls.dent_mm.clamp(0.0, 3.0);
    let [x, y, z] = d.pedicle_centre_mm();
    let slope = libm::tan(d.pedicle_axial_deg.to_radians());
    let isthmus = &mut rows.pedicle.rows[1];
    isthmus.at = [x, y - d.posterior_rims_mm(), z];
    isthmus.half = [d.pedicle_height_mm / 2.0, d.pedicle_width_mm / 2.0];
    (isthmus.turn_deg, isthmus.square) = (0.0, 0.1);
    for (row, dy) in rows.pedicle.rows.iter_mut().zip([-13.0, 0.0, 4.5, 9.0]) {
        row.at[1] = y - d.posterior_rims_mm() + dy;
        row.at[0] = x + slope * dy;
        row.at[2] = row.at[2].clamp(z - 1.2, z + 1.2);
        row.turn_deg = 0.0;
    }
    // Its root lies in the pedicle and not in the canal.
    rows.transverse.rows[0].at[0] = rows.transverse.rows[0].at[0].max(x + 1.0);
    hold_shares(&mut rows.superior.bar, &start.superior.bar, 2);
    hold_shares(&mut rows.pillar, &start.pillar, 2);
    hold_shares(&mut rows.lamina, &start.lamina, 0);
    hold_shares(&mut rows.transverse, &start.transverse, 0);
    hold_shares(&mut rows.spinous, &start.spinous, 1);
    within(&mut rows.pedicle, [4.5, 12.0], [3.0, 12.0], 0.3);
    within(&mut rows.superior.bar, [4.0, 10.0], [2.5, 8.0], 0.0);
    within(&mut rows.pillar, [3.5, 9.0], [3.0, 7.0], 0.0);
    within(&mut rows.lamina, [5.0, 16.0], [2.4, 6.0], 0.5);
    within(&mut rows.transverse, [2.2, 9.0], [1.8, 9.0], 0.0);
    within(&mut rows.spinous, [4.0, 12.0], [1.8, 6.0], 0.7);
    // The ridge: no broader than what carries it, and not bent off.
    let [.., head, ridge] = &mut rows.superior.bar.rows;
    ridge.half[0] = ridge.half[0].min(0.75 * head.half[0]);
    ridge.half[1] = ridge.half[1].min(head.half[1]);
    ridge.at[1] = ridge.at[1].max(head.at[1] - 1.8);
    ridge.turn_deg = ridge.turn_deg.clamp(head.turn_deg - 12.0, head.turn_deg + 12.0);
    rows.superior.facet.at[2] =
        rows.superior.bar.rows[4].at[2] + rows.superior.bar.cap_mm[1] - FACET_BELOW_TIP_MM;
    let [.., ridge] = &mut rows.superior.bar.rows;
    // It ends behind the facet that cuts the process.
    let facet = &rows.superior.facet;
    let (sin, cos) = libm::sincos(d.facet_plane_deg.to_radians());
    let (x, y) = (ridge.at[0] - facet.at[0], ridge.at[1] - facet.at[1]);
    let (out, along) = (sin * y - cos * x, sin * x + cos * y);
    let over = (out - facet.curvature * along * along + 1.0).max(0.0);
    ridge.at[0] += cos * over;
    ridge.at[1] -= sin * over;
    // The chord stands upright, so that the ridge's section lies level.
    let [foot, .., ridge] = &mut rows.superior.bar.rows;
    for axis in 0..2 {
        foot.at[axis] = foot.at[axis].clamp(ridge.at[axis] - 1.5, ridge.at[axis] + 1.5);
    }
    rows.superior.mamillary.half = rows.superior.mamillary.half.map(|h| h.max(1.5));
    rows
}

/// Second differences along a part.
fn bends<const N: usize>(bar: &Bar<N>, out: &mut Vec<f64>) {
    for three in bar.rows.windows(3) {
        let second = |f: &dyn Fn(usize) -> f64| f(0) - 2.0 * f(1) + f(2);
        for axis in 0..3 {
            out.push(SMOOTH * second(&|i| three[i].at[axis]) / 3.0);
        }
        out.push(SMOOTH * second(&|i| three[i].half[0]) / 2.5);
        out.push(SMOOTH * second(&|i| three[i].half[1]) / 2.0);
        out.push(SMOOTH * second(&|i| three[i].turn_deg) / 20.0);
        out.push(SMOOTH * second(&|i| three[i].square) / 0.5);
    }
}

fn main() {
    let args: Vec<String> = std::env::args().collect();
    let [_, level, samples, rounds, ..] = &args[..] else {
        eprintln!("usage: fit_bone LEVEL SAMPLES ROUNDS [--from LEVEL] [--obj FILE]");
        return;
    };
    let after = |flag: &str| args.iter().position(|a| a == flag).and_then(|i| args.get(i + 1));
    let level: Level = level.parse().expect("a level such as L4");
    let from: Level = after("--from").map_or(level, |name| name.parse().expect("a level such as L4"));
    let d = vertebra(level).expect("a vertebra");
    let start = ROWS[from.index() - 1];
    let points: Vec<(DVec3, f64)> = std::fs::read_to_string(samples)
        .expect("the samples")
        .lines()
        .map(|line| {
            let v: Vec<f64> = line.split_whitespace().map(|x| x.parse().expect("a number")).collect();
            (DVec3::new(v[0], v[1], v[2]), v[3])
        })
        .collect();

    let place = [d.posterior_wall_mm(), 0.0];
    let read = |rows: &Rows, place: [f64; 2]| {
        let (mut rows, mut place, mut list) = (*rows, place, Vec::new());
        visit(&mut rows, &mut place, &mut |name, value, spread| list.push((name.to_owned(), *value, spread)));
        list
    };
    let free = read(&held(start, &start, &d), place);
    let write = |x: &[f64]| {
        let (mut rows, mut place, mut next) = (start, place, x.iter());
        visit(&mut rows, &mut place, &mut |_, value, _| *value = *next.next().expect("as many as read"));
        (held(rows, &start, &d), place)
    };
    let cut = |d: f64| d.clamp(-3.0, 3.0);
    let residuals = |x: &[f64]| -> Vec<f64> {
        let (rows, [y, z]) = write(x);
        let solid = as_written(&rows, &d);
        let shift = DVec3::new(0.0, y, z);
        let mut list: Vec<f64> = points
            .iter()
            .map(|&(p, real)| {
                let e = cut(f64::from(solid.distance_within((p + shift).as_vec3(), 6.0))) - cut(real);
                if e.abs() > 1.5 { e.signum() * (1.5 * (2.0 * e.abs() - 1.5)).sqrt() } else { e }
            })
            .collect();
        bends(&rows.pedicle, &mut list);
        bends(&rows.superior.bar, &mut list);
        bends(&rows.pillar, &mut list);
        bends(&rows.lamina, &mut list);
        bends(&rows.transverse, &mut list);
        bends(&rows.spinous, &mut list);
        for (f, v) in free.iter().zip(x) {
            list.push(PULL.sqrt() * (v - f.1) / f.2);
        }
        list
    };
    let x = descend(&free, &residuals, &points, rounds.parse().expect("a number of rounds"));
    let (rows, place) = write(&x);
    println!("{}", printed(level, &rows));
    eprintln!("place {place:.2?}");
    if let Some(file) = after("--obj") {
        std::fs::write(file, object(&rows, &d)).expect("the mesh can be written");
    }
}

/// Mean distance of the points on the real surface from ours, mm.
fn on_surface(r: &[f64], points: &[(DVec3, f64)]) -> f64 {
    let on = || r.iter().zip(points).filter(|(_, p)| p.1.abs() < 1e-3).map(|(e, _)| e.abs());
    on().sum::<f64>() / on().count().max(1) as f64
}

fn descend(
    free: &[(String, f64, f64)],
    residuals: &(dyn Fn(&[f64]) -> Vec<f64> + Sync),
    points: &[(DVec3, f64)],
    rounds: usize,
) -> Vec<f64> {
    let n = free.len();
    let mut x: Vec<f64> = free.iter().map(|f| f.1).collect();
    let mut r = residuals(&x);
    let cost = |r: &[f64]| r.iter().map(|e| e * e).sum::<f64>();
    let (mut now, mut damp) = (cost(&r), 0.03);
    eprintln!(
        "{n} numbers, {} points, start {now:.0}, on the surface {:.3} mm",
        points.len(),
        on_surface(&r, points)
    );
    for round in 0..rounds {
        let column = |j: usize| {
            let h = 0.02 * free[j].2;
            let mut y = x.clone();
            y[j] += h;
            let moved = residuals(&y);
            let change = moved.iter().zip(&r).enumerate().filter(|(_, (a, b))| a != b);
            change.map(|(i, (a, b))| (i, (a - b) / h)).collect::<Vec<_>>()
        };
        let columns: Vec<Vec<(usize, f64)>> = std::thread::scope(|s| {
            let other = s.spawn(|| (n / 2..n).map(column).collect::<Vec<_>>());
            let mut list: Vec<_> = (0..n / 2).map(column).collect();
            list.extend(other.join().expect("the other half"));
            list
        });
        let (mut normal, mut right, mut dense) = (vec![0.0; n * n], vec![0.0; n], vec![0.0; r.len()]);
        for a in 0..n {
            dense.fill(0.0);
            columns[a].iter().for_each(|&(i, v)| dense[i] = v);
            right[a] = -columns[a].iter().map(|&(i, v)| v * r[i]).sum::<f64>();
            for b in a..n {
                let v: f64 = columns[b].iter().map(|&(i, v)| v * dense[i]).sum();
                (normal[a * n + b], normal[b * n + a]) = (v, v);
            }
        }
        let mut gain = 0.0;
        for _ in 0..8 {
            let mut m = normal.clone();
            (0..n).for_each(|a| m[a * n + a] *= 1.0 + damp);
            let step = solved(&mut m, &right, n);
            let y: Vec<f64> =
                x.iter().zip(&step).zip(free).map(|((v, s), f)| v + s.clamp(-f.2, f.2)).collect();
            let moved = residuals(&y);
            let then = cost(&moved);
            if then < now {
                gain = (now - then) / now;
                (x, r, now, damp) = (y, moved, then, (damp * 0.4f64).max(1e-5));
                break;
            }
            damp *= 4.0;
        }
        eprintln!(
            "round {round}: {now:.0}, on the surface {:.3} mm, damped {damp:.0e}",
            on_surface(&r, points)
        );
        if gain < 3e-3 {
            break;
        }
    }
    x
}

/// Cholesky.
fn solved(m: &mut [f64], right: &[f64], n: usize) -> Vec<f64> {
    for i in 0..n {
        for j in 0..=i {
            let mut s = m[i * n + j];
            for k in 0..j {
                s -= m[i * n + k] * m[j * n + k];
            }
            m[i * n + j] = if i == j { s.max(1e-9).sqrt() } else { s / m[j * n + j] };
        }
    }
    let mut y = right.to_vec();
    for i in 0..n {
        for k in 0..i {
            y[i] -= m[i * n + k] * y[k];
        }
        y[i] /= m[i * n + i];
    }
    for i in (0..n).rev() {
        for k in i + 1..n {
            y[i] -= m[k * n + i] * y[k];
        }
        y[i] /= m[i * n + i];
    }
    y
}

/// A level's rows as they stand in the table, rounded.
fn printed(level: Level, rows: &Rows) -> String {
    fn tenth(x: f64) -> String {
        format!("{:.1}", (x * 10.0).round() / 10.0 + 0.0)
    }
    fn three(v: [f64; 3]) -> String {
        v.map(tenth).join(", ")
    }
    fn bar<const N: usize>(out: &mut String, indent: &str, name: &str, bar: &Bar<N>) {
        writeln!(out, "{indent}{name}: Bar {{\n{indent}    rows: [").expect("a string");
        for r in &bar.rows {
            let (half, turn) = (r.half.map(tenth).join(", "), r.turn_deg.round() + 0.0);
            writeln!(
                out,
                "{indent}        row([{}], [{half}], {turn:.1}, {:.2}),",
                three(r.at),
                r.square + 0.0
            )
            .expect("a string");
        }
        let caps = bar.cap_mm.map(tenth).join(", ");
        writeln!(out, "{indent}    ],\n{indent}    cap_mm: [{caps}],\n{indent}}},").expect("a string");
    }
    let source = if level == Level::L1 { "ONE_MAN" } else { "MEAN_OF_87" };
    let w = &rows.walls;
    let mut out = format!(
        "/// {level}.\npub const {level}: Rows = Rows {{\n    source: {source},\n    walls: Walls {{\n"
    );
    writeln!(
        out,
        "        waist: [{:.3}, {:.3}],\n        waist_flat: {:.2},",
        w.waist[0], w.waist[1], w.waist_flat
    )
    .expect("a string");
    writeln!(
        out,
        "        waist_shift_mm: {},\n        square: {:.2},\n        dent_mm: {},\n    }},",
        tenth(w.waist_shift_mm),
        w.square,
        tenth(w.dent_mm)
    )
    .expect("a string");
    bar(&mut out, "    ", "pedicle", &rows.pedicle);
    out += "    superior: ProcessRows {\n";
    bar(&mut out, "        ", "bar", &rows.superior.bar);
    let (facet, bump) = (&rows.superior.facet, &rows.superior.mamillary);
    writeln!(
        out,
        "        facet: FacetRow {{ at: [{}], curvature: {:.3} }},",
        three(facet.at),
        facet.curvature
    )
    .expect("a string");
    writeln!(
        out,
        "        mamillary: Bump {{ at: [{}], half: [{}] }},\n    }},",
        three(bump.at),
        three(bump.half)
    )
    .expect("a string");
    bar(&mut out, "    ", "pillar", &rows.pillar);
    bar(&mut out, "    ", "lamina", &rows.lamina);
    bar(&mut out, "    ", "transverse", &rows.transverse);
    bar(&mut out, "    ", "spinous", &rows.spinous);
    out + "};\n"
}

/// The mesh as OBJ, to measure.
fn object(rows: &Rows, d: &Vertebra) -> String {
    let solid = as_written(rows, d);
    let mesh = extract(&solid, &Lattice::sample(&solid, 1.0), Surface::Outer);
    let mut out = String::new();
    let vertex = |out: &mut String, v: &Vec3| writeln!(out, "v {} {} {}", v.x, v.y, v.z).expect("a string");
    mesh.positions.iter().for_each(|v| vertex(&mut out, v));
    for t in &mesh.triangles {
        writeln!(out, "f {} {} {}", t[0] + 1, t[1] + 1, t[2] + 1).expect("a string");
    }
    out
}
