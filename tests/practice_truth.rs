//! The truth of practice questions, recomputed another way than they were drawn: by vectors in the patient and a pinhole of this file's own instead of
//! the criteria, by walking the controls instead of Newton's method, by the mesh's silhouettes instead of the fields, by the circle's formula
//! instead of the needle's steps, by distances to the courses of nerves and vessels instead of the spaces' rules.
//!
//! `PRACTICE_SEEDS` says how many questions, `PRACTICE_MESHES` every how many-th part is held against its mesh, `PRACTICE_KIND` of which kind
//! alone; DEVELOPERS.md has the command.

#![allow(clippy::disallowed_methods, reason = "recomputed with the standard library's functions on purpose")]

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::nerves::{Node, nearest};
use downbeam::anatomy::patient::Patient;
use downbeam::imaging::outline::silhouette;
use downbeam::imaging::projection::Projection;
use downbeam::needle::compartment::Pattern;
use downbeam::practice::ask::ask;
use downbeam::practice::contrast_question::ALIKE;
use downbeam::practice::kind::Kind;
use downbeam::practice::part_question::WELL_INSIDE_MM;
use downbeam::practice::question::{
    ApFinding, Asked, Choice, Decision, Fact, Move, OnScreen, Question, arm_at,
};
use downbeam::practice::stage::STAGES;
use downbeam::view::best_view::{Orientation, ViewKind};
use downbeam::view::criteria::Target;
use downbeam::view::report::{AskedView, view_score};
use glam::{DVec2, DVec3};

fn count(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

/// A pinhole by its definition: source 700 mm before the isocentre, detector 1100 mm from the source.
struct Pinhole {
    source: DVec3,
    d: DVec3,
    right: DVec3,
    up: DVec3,
}

impl Pinhole {
    fn new(at: Orientation, centre: DVec3) -> Self {
        let (theta, phi) = (at.oblique_deg.to_radians(), at.tilt_deg.to_radians());
        let d = DVec3::new(theta.sin() * phi.cos(), theta.cos() * phi.cos(), phi.sin());
        let right = (-d).cross(DVec3::Z).normalize();
        Self { source: centre - 700.0 * d, d, right, up: right.cross(-d) }
    }

    fn at(&self, p: DVec3) -> DVec2 {
        let r = p - self.source;
        DVec2::new(r.dot(self.right), r.dot(self.up)) * (1100.0 / r.dot(self.d))
    }
}

#[test]
fn truths_hold_when_computed_another_way() {
    let seeds = count("PRACTICE_SEEDS", 180);
    let every = count("PRACTICE_MESHES", 5);
    let only = std::env::var("PRACTICE_KIND");
    let mut asked = [0_u64; 9];
    let mut answers = std::collections::BTreeMap::<String, u64>::new();
    let (mut parts, mut wrong) = (0, 0);
    for seed in 0..seeds {
        let kind = Kind::ALL[(seed % 9) as usize];
        if only.as_ref().is_ok_and(|only| only != kind.name()) {
            continue;
        }
        let stage = (seed / 9 % STAGES.len() as u64) as u8;
        let level = kind.levels()[(seed / 54 + seed) as usize % kind.levels().len()];
        let target = Target { level, side: Side::BOTH[(seed / 3 % 2) as usize] };
        let q = ask(kind, stage, target, seed).unwrap_or_else(|| panic!("no {} of seed {seed}", kind.name()));
        asked[kind as usize] += 1;
        *answers.entry(format!("{} {:?}", kind.name(), q.right())).or_default() += 1;
        well_formed(&q);
        let interior = Interior::of(&q.spec);
        let place = format!(
            "{} of seed {seed}, stage {stage}, {} {}: {:?}",
            kind.name(),
            level,
            target.side,
            q.right()
        );
        parts += u64::from(kind == Kind::Part);
        let with_mesh = parts % every == 0;
        // All are gone through, so that one run says how many are wrong and which.
        let held = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| match q.asked {
            Asked::Way { wanted } => moves(&q, &interior, wanted, &place),
            Asked::Amount { wanted, to } => {
                moves(&q, &interior, wanted, &place);
                assert!(matches!(q.reason[..], [Fact::Needed { to: reason, .. }] if reason == to), "{place}");
            }
            Asked::Step => step(&q, &interior, &place),
            Asked::TrueAp => true_ap(&q, &interior, &place),
            Asked::Part if with_mesh => part(&q, &place),
            Asked::Part => {}
            Asked::Clock => clock(&q, &interior, &place),
            Asked::NotchAhead { .. } | Asked::NotchWanted { .. } => notch(&q, &interior, &place),
            Asked::Spread => spread(&q, &interior, &place),
            Asked::Stop { contrast } => stop(&q, &interior, contrast, &place),
        }));
        wrong += u32::from(held.is_err());
    }
    assert_eq!(wrong, 0, "wrong truths of {seeds}; see above");
    println!("{answers:#?}");
    // No answer of a kind is the right one so often that it could be guessed.
    if seeds >= 9_000 && only.is_err() {
        for kind in Kind::ALL {
            let of_kind = answers.iter().filter(|(name, _)| name.starts_with(&format!("{} ", kind.name())));
            let most = of_kind.map(|(_, n)| *n).max().unwrap();
            assert!(most as f64 <= 0.5 * asked[kind as usize] as f64, "{}: {most}", kind.name());
        }
    }
}

fn well_formed(q: &Question) {
    assert_eq!(q.choices.len(), 4);
    for (i, choice) in q.choices.iter().enumerate() {
        assert!(!q.choices[..i].contains(choice), "{:?}", q.choices);
    }
    assert!(q.margin.has >= q.margin.least, "{:?}", q.margin);
    assert_eq!(q.needle.is_some(), matches!(q.kind, Kind::Clock | Kind::Notch | Kind::Spread | Kind::Stop));
}

/// How far off full marks a move of one control ends, by walking it in half degrees: the middle of the nearest stretch of full marks.
fn walked(q: &Question, interior: &Interior, wanted: ViewKind, turning: bool) -> Option<f64> {
    let asked = AskedView::usual(q.target);
    let full = |by: f64| {
        let (turn, tilt) = if turning {
            (by, q.truth.tilt_deg - q.view.tilt_deg)
        } else {
            (q.truth.oblique_deg - q.view.oblique_deg, by)
        };
        let at = Orientation { oblique_deg: q.view.oblique_deg + turn, tilt_deg: q.view.tilt_deg + tilt };
        view_score(interior, &asked, wanted, &arm_at(at)).score >= 1.0
    };
    let steps: Vec<f64> = (-90..=90).map(|i| f64::from(i) * 0.5).collect();
    let first = steps.iter().copied().filter(|by| full(*by)).min_by(|a, b| a.abs().total_cmp(&b.abs()))?;
    let mut last = first;
    while full(last + 0.5 * first.signum()) && last.abs() < 60.0 {
        last += 0.5 * first.signum();
    }
    Some((first + last) / 2.0)
}

/// Where a function of an angle crosses zero, degrees, by halving.
fn crossing(f: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (-60.0, 60.0);
    assert!(f(low) * f(high) < 0.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if f(middle) * f(low) > 0.0 { low = middle } else { high = middle }
    }
    low
}

/// The turn after which one point stands over another across the sacrum's image, degrees, in this file's own picture; the tilt is that of the truth.
fn turn_onto(q: &Question, interior: &Interior, front: DVec3, back: DVec3) -> f64 {
    let level = interior.level(q.target.level);
    crossing(|oblique_deg| {
        let eye = Pinhole::new(Orientation { oblique_deg, tilt_deg: q.truth.tilt_deg }, level.centre);
        let plate = &level.upper_plate;
        let left = (eye.at(plate.centre + plate.left) - eye.at(plate.centre - plate.left)).normalize();
        (eye.at(front) - eye.at(back)).dot(left)
    }) - q.view.oblique_deg
}

/// The wanted turn or tilt, degrees, by vectors for a true AP and for every tilt, by walking for an oblique's turn.
fn moves(q: &Question, interior: &Interior, wanted: ViewKind, place: &str) {
    let level = interior.level(q.target.level);
    let (to, degrees) = match q.reason.last() {
        Some(Fact::Needed { to, degrees }) => (*to, *degrees),
        other => panic!("{place}: {other:?}"),
    };
    let d = Pinhole::new(q.view, level.centre).d;
    // The way under the root squares the plate below.
    let below = q.target.level.below().filter(|_| wanted == ViewKind::SteepOblique);
    let n = below.map_or(level, |below| interior.level(below)).upper_plate.normal;
    let signed = match to {
        Move::Left | Move::Cephalad => degrees,
        Move::Right | Move::Caudad => -degrees,
    };
    let turning = matches!(to, Move::Left | Move::Right);
    let (found, within) = match (turning, wanted) {
        // The sacrum lies so oblique that a turn of the C-arm is none about its own axis.
        (true, _) if q.target.level == Level::S1 => {
            let side = level.side(q.target.side);
            let middle = level.sides.iter().map(|s| s.pedicle.centre).sum::<DVec3>() / 2.0;
            let found = match wanted {
                ViewKind::TrueAp => turn_onto(q, interior, level.spinous_tip, middle),
                _ => {
                    let openings = [side.anterior_foramen, side.posterior_foramen].map(|o| o.unwrap().centre);
                    turn_onto(q, interior, openings[0], openings[1])
                }
            };
            (found, 1.5)
        }
        (true, ViewKind::TrueAp) => {
            let middle = level.sides.iter().map(|s| s.pedicle.centre).sum::<DVec3>() / 2.0;
            let back = level.spinous_tip - middle;
            let (back, ahead) = (back - n * back.dot(n), d - n * d.dot(n));
            // About the vertebra's own axis, to the patient's left.
            let turn = ahead.cross(back).dot(-n).atan2(ahead.dot(back)).to_degrees();
            (turn, 2.5)
        }
        (true, _) => {
            (walked(q, interior, wanted, true).unwrap_or_else(|| panic!("{place}: no full marks")), 5.0)
        }
        // The plate below is so far from the middle of the picture that its own ray counts.
        (false, ViewKind::SteepOblique) => {
            let plate = &interior.level(q.target.level.below().unwrap()).upper_plate;
            let edge_on = crossing(|tilt_deg| {
                let at = Orientation { oblique_deg: q.view.oblique_deg, tilt_deg };
                (plate.centre - Pinhole::new(at, level.centre).source).dot(n)
            });
            (edge_on - q.view.tilt_deg, 1.5)
        }
        // In the plane of the beam and the long axis the plate must be seen on edge: tilt until d is at right angles to n.
        (false, _) => {
            let (s, c) = q.view.oblique_deg.to_radians().sin_cos();
            let level_d = DVec3::new(s, c, 0.0);
            let edge_on = (-(level_d.dot(n))).atan2(n.z).to_degrees();
            (edge_on - q.view.tilt_deg, 2.5)
        }
    };
    assert!((found - signed).abs() < within, "{place}: {found} for {signed}");
    match q.right() {
        Choice::Turn { to: answer } => assert_eq!(answer, to, "{place}"),
        Choice::Degrees { about } => {
            let nearest = [4_u32, 8, 16, 32].into_iter().min_by(|a, b| {
                (degrees / f64::from(*a)).ln().abs().total_cmp(&(degrees / f64::from(*b)).ln().abs())
            });
            assert_eq!(nearest, Some(about), "{place}");
            // Measured the other way it is still nearer to its answer than to any other.
            let ratio = found.abs() / f64::from(about);
            assert!((0.4..2.2).contains(&ratio), "{place}: {found}");
        }
        other => panic!("{place}: {other:?}"),
    }
}

/// Spinous tip off the middle of the pedicles over their spacing, percent to the patient's left; plate against the ray, degrees.
fn ap_values(q: &Question, interior: &Interior) -> (f64, f64) {
    let level = interior.level(q.target.level);
    let eye = Pinhole::new(q.view, level.centre);
    let [left, right] = level.sides.map(|s| eye.at(s.pedicle.centre));
    let tip = eye.at(level.spinous_tip);
    let l = left - right;
    let offset = (tip - (left + right) / 2.0).dot(l) / l.length_squared();
    let ray = (level.upper_plate.centre - eye.source).normalize();
    (100.0 * offset, -ray.dot(level.upper_plate.normal).asin().to_degrees())
}

fn true_ap(q: &Question, interior: &Interior, place: &str) {
    let (offset, plate) = ap_values(q, interior);
    let found = if plate.abs() > 8.0 {
        ApFinding::NotSquared
    } else if offset.abs() > 15.0 {
        if offset > 0.0 { ApFinding::SpinousToLeft } else { ApFinding::SpinousToRight }
    } else {
        ApFinding::TrueAp
    };
    assert_eq!(q.right(), Choice::Ap { ap: found }, "{place}: {offset} {plate}");
    // And nothing that is called good is near the limit.
    if found == ApFinding::TrueAp {
        assert!(offset.abs() < 3.0 && plate.abs() < 2.0, "{place}: {offset} {plate}");
    }
}

/// The scores that a kept view would get: full for the answer, at most two fifths for all others.
fn step(q: &Question, interior: &Interior, place: &str) {
    let asked = AskedView::usual(q.target);
    for view in [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral] {
        let score = view_score(interior, &asked, view, &arm_at(q.view)).score;
        if q.right() == (Choice::View { view }) {
            assert_eq!(score, 1.0, "{place}: {view:?}");
        } else {
            assert!(score <= 0.4 + 1e-9, "{place}: {view:?} {score}");
        }
    }
}

/// By the shadows of the parts' own meshes.
fn part(q: &Question, place: &str) {
    let patient = Patient::new(&q.spec);
    let view = Projection::new(&arm_at(q.view), patient.level(q.target.level).centre);
    let dot = q.dot_mm.unwrap();
    for (i, choice) in q.choices.iter().enumerate() {
        let Choice::Part { part, level } = *choice else { panic!("{place}: {choice:?}") };
        let paired = patient.part_mesh(level, part, Some(q.target.side));
        let mesh = paired
            .or_else(|| patient.part_mesh(level, part, None))
            .unwrap_or_else(|| panic!("{place}: {part:?}"));
        let rings = silhouette(&mesh, &view);
        let under = rings.iter().any(|ring| holds(ring, dot));
        assert_eq!(under, i == q.answer, "{place}: {part:?} of {level}");
        // Nobody's border is so near that the eye could not tell.
        let border = rings.iter().map(|ring| to_border_mm(ring, dot)).fold(f64::INFINITY, f64::min);
        assert!(border > 0.5 * WELL_INSIDE_MM, "{place}: border of {part:?} at {border}");
    }
}

/// Even–odd rule.
fn holds(ring: &[[f32; 2]], [x, y]: [f64; 2]) -> bool {
    let mut inside = false;
    for i in 0..ring.len() {
        let ([ax, ay], [bx, by]) = (ring[i].map(f64::from), ring[(i + 1) % ring.len()].map(f64::from));
        if (ay > y) != (by > y) && x < ax + (bx - ax) * (y - ay) / (by - ay) {
            inside = !inside;
        }
    }
    inside
}

fn to_border_mm(ring: &[[f32; 2]], p: [f64; 2]) -> f64 {
    let p = DVec2::from_array(p);
    (0..ring.len())
        .map(|i| {
            let at = |i: usize| DVec2::from_array(ring[i % ring.len()].map(f64::from));
            let (a, b) = (at(i), at(i + 1));
            let t = ((p - a).dot(b - a) / (b - a).length_squared().max(1e-12)).clamp(0.0, 1.0);
            p.distance(a.lerp(b, t))
        })
        .fold(f64::INFINITY, f64::min)
}

/// The hour in this file's own picture, up being the image of the plate's normal.
fn clock(q: &Question, interior: &Interior, place: &str) {
    let level = interior.level(q.target.level);
    let eye = Pinhole::new(q.view, level.centre);
    let pedicle = level.side(q.target.side).pedicle.centre;
    let off = eye.at(q.needle.as_ref().unwrap().tip().position) - eye.at(pedicle);
    let plate = &level.upper_plate;
    let up = (eye.at(plate.centre + plate.normal) - eye.at(plate.centre)).normalize();
    // Clockwise from up: to the screen's right.
    let angle = off.dot(DVec2::new(up.y, -up.x)).atan2(off.dot(up));
    let hour = (angle / std::f64::consts::TAU * 12.0).rem_euclid(12.0);
    let Choice::Hour { hour: right } = q.right() else { panic!("{place}") };
    let apart = |h: u32| {
        let gap = (hour - f64::from(h % 12)).abs();
        gap.min(12.0 - gap)
    };
    assert!(apart(right) < 0.45, "{place}: {hour}");
    for choice in &q.choices {
        let Choice::Hour { hour: other } = *choice else { panic!("{place}") };
        assert!(other == right || apart(other) > apart(right) + 1.1, "{place}: {hour} for {other}");
    }
}

fn on_screen(to: OnScreen) -> DVec2 {
    match to {
        OnScreen::Head => DVec2::Y,
        OnScreen::PatientsRight => DVec2::X,
        OnScreen::Feet => DVec2::NEG_Y,
        OnScreen::PatientsLeft => DVec2::NEG_X,
    }
}

/// A circle of 250 mm (22 G in muscle) away from the notch: `(1 - cos κL) / κ` aside.
fn notch(q: &Question, interior: &Interior, place: &str) {
    let eye = Pinhole::new(q.view, interior.level(q.target.level).centre);
    let (before, after) = (q.needle.as_ref().unwrap(), q.needle_after.as_ref().unwrap());
    let length = after.depth_mm() - before.depth_mm();
    let radius = 250.0;
    let aside = radius * (1.0 - (length / radius).cos());
    // Straight until then: at the tip as at the hub.
    let away = -after.notch_at_hub();
    let drift = DVec2::new(away.dot(eye.right), away.dot(eye.up)) * aside;
    let Some(Fact::Drifted { to, mm }) = q.reason.last().copied() else { panic!("{place}") };
    assert!((drift.length() - mm).abs() < 0.25 && aside > 1.0, "{place}: {} for {mm}", drift.length());
    assert!(drift.normalize().dot(on_screen(to)) > 28.0_f64.to_radians().cos(), "{place}: {drift}");
    match (q.asked, q.right()) {
        (Asked::NotchAhead { notch }, Choice::Screen { to: answer }) => {
            assert_eq!((answer, on_screen(answer)), (to, -on_screen(notch)), "{place}");
        }
        (Asked::NotchWanted { to: wanted }, Choice::Screen { to: looks }) => {
            assert_eq!((wanted, on_screen(looks)), (to, -on_screen(to)), "{place}");
        }
        other => panic!("{place}: {other:?}"),
    }
}

/// Inside of the tube of a course, mm, negative outside.
fn inside_mm(course: &[Node], p: DVec3) -> f64 {
    let radius = course.iter().map(|n| n.radius_mm).fold(0.0, f64::max);
    radius - nearest(course, p).1
}

/// Into which section of the sac a point falls, by interpolation between its two neighbours: below 1 inside.
fn sac_share(interior: &Interior, p: DVec3) -> f64 {
    interior
        .nerves()
        .sac
        .windows(2)
        .map(|pair| {
            let (a, b) = (pair[0], pair[1]);
            let along = b.point - a.point;
            let t = ((p - a.point).dot(along) / along.length_squared()).clamp(0.0, 1.0);
            let r = p - a.point.lerp(b.point, t);
            let x = r.dot(a.left) / (a.half_width_mm + (b.half_width_mm - a.half_width_mm) * t);
            let rest = r - a.left * r.dot(a.left);
            let y = rest.length() / (a.half_depth_mm + (b.half_depth_mm - a.half_depth_mm) * t);
            x.hypot(y)
        })
        .fold(f64::INFINITY, f64::min)
}

/// What distances alone say of a place.
fn pattern_is(q: &Question, interior: &Interior, pattern: Pattern, place: &str) {
    let tip = q.needle.as_ref().unwrap().tip().position;
    let in_vessel = |artery: bool| {
        let of_kind = interior.vessels().iter().filter(|v| v.kind.is_artery() == artery);
        of_kind.map(|v| inside_mm(&v.course, tip)).fold(f64::NEG_INFINITY, f64::max)
    };
    let level = interior.level(q.target.level);
    let plate = &level.upper_plate;
    let out = (tip - level.centre).dot(plate.left) * q.target.side.sign();
    let back = (tip - level.posterior_wall).dot(plate.back);
    let sac = sac_share(interior, tip);
    if q.target.level == Level::S1 {
        return sacral_pattern_is(interior, q.target.side, tip, pattern, in_vessel(false), place);
    }
    let ring = &interior.foramen(q.target.level, q.target.side).unwrap().ring;
    let in_foramen = tip.distance(ring.centre) < 2.0 * ring.up.length();
    match pattern {
        Pattern::Arterial => assert!(in_vessel(true) > -0.3, "{place}: {}", in_vessel(true)),
        Pattern::Venous => assert!(in_vessel(false) > 0.0, "{place}: {}", in_vessel(false)),
        Pattern::Intrathecal => assert!(sac < 1.0 && back > 0.0, "{place}: {sac} {back}"),
        Pattern::Perineural => {
            assert!(
                sac > 0.9 && in_foramen && in_vessel(true) < 0.05 && in_vessel(false) < 0.05,
                "{place}: {sac}"
            );
        }
        Pattern::Muscular => {
            assert!(back > 8.0 && sac > 1.2 && !(in_foramen && back < 12.0), "{place}: {back}")
        }
        Pattern::Intradiscal => {
            let below = interior.level(q.target.level.below().unwrap()).upper_plate;
            let (above, upper) = (level.lower_plate.unwrap(), below);
            let (over, under) =
                ((tip - above.centre).dot(above.normal), (tip - upper.centre).dot(upper.normal));
            assert!(
                over < 1.5 && under > -1.5 && out.abs() < above.half_width + 2.0,
                "{place}: {over} {under}"
            );
        }
        Pattern::FacetJoint => {
            let facet = interior.level(q.target.level.below().unwrap()).side(q.target.side).superior_facet;
            assert!(tip.distance(facet) < 9.5, "{place}: {}", tip.distance(facet));
        }
        other => panic!("{place}: {other:?} is not asked"),
    }
}

/// At S1: before or behind the rim of the posterior opening, and how far from the root.
fn sacral_pattern_is(interior: &Interior, side: Side, tip: DVec3, pattern: Pattern, vein: f64, place: &str) {
    let opening = interior.level(Level::S1).side(side).posterior_foramen.unwrap();
    let out = opening.across.cross(opening.up).normalize();
    let back = if out.y > 0.0 { out } else { -out };
    let behind = (tip - opening.centre).dot(back);
    let root = nearest(&interior.nerves().root(Level::S1, side).unwrap().course, tip).1;
    match pattern {
        Pattern::Perineural => {
            assert!(behind < 1.5 && root < 14.0 && vein < 0.05, "{place}: {behind} {root}")
        }
        Pattern::Muscular => assert!(behind > 2.0 && vein < 0.05, "{place}: {behind}"),
        Pattern::Venous => assert!(vein > 0.0, "{place}: {vein}"),
        other => panic!("{place}: {other:?} is not asked at S1"),
    }
}

fn spread(q: &Question, interior: &Interior, place: &str) {
    let Choice::Pattern { pattern } = q.right() else { panic!("{place}") };
    pattern_is(q, interior, pattern, place);
    // Of patterns that look alike only one is offered.
    for row in ALIKE {
        let offered =
            q.choices.iter().filter(|c| matches!(c, Choice::Pattern { pattern } if row.contains(pattern)));
        assert!(offered.count() <= 1, "{place}");
    }
    assert!(
        q.injection
            .unwrap()
            .bolus
            .spread(interior, q.injection.unwrap().during_s)
            .iter()
            .any(|s| s.share > 0.0)
    );
}

fn stop(q: &Question, interior: &Interior, contrast: bool, place: &str) {
    let Choice::Decide { decision } = q.right() else { panic!("{place}") };
    assert_eq!(contrast, q.injection.is_some());
    if q.target.level == Level::S1 {
        // The contrast alone decides there.
        assert!(contrast, "{place}");
        return match decision {
            Decision::GoOn => pattern_is(q, interior, Pattern::Perineural, place),
            Decision::StopVessel => pattern_is(q, interior, Pattern::Venous, place),
            other => panic!("{place}: {other:?}"),
        };
    }
    let level = interior.level(q.target.level);
    let eye = Pinhole::new(q.view, level.centre);
    let tip = q.needle.as_ref().unwrap().tip().position;
    let pedicle = level.side(q.target.side).pedicle.centre;
    let other = level.side(q.target.side.other()).pedicle.centre;
    // Towards the other pedicle is medial.
    let inwards = (eye.at(other) - eye.at(pedicle)).normalize();
    let medial = (eye.at(tip) - eye.at(pedicle)).dot(inwards) * 700.0 / 1100.0;
    match (decision, contrast) {
        (Decision::GoOn, _) => {
            assert!(medial < -1.0, "{place}: {medial}");
            pattern_is(q, interior, Pattern::Perineural, place);
        }
        (Decision::StopMedial, false) => assert!(medial > 1.0, "{place}: {medial}"),
        (Decision::StopSac, true) => pattern_is(q, interior, Pattern::Intrathecal, place),
        (Decision::StopVessel, true) => {
            let is = [Pattern::Arterial, Pattern::Venous]
                .map(|pattern| pattern == q.injection.unwrap().bolus.compartment.pattern());
            pattern_is(q, interior, if is[0] { Pattern::Arterial } else { Pattern::Venous }, place);
            assert!(is[0] || is[1], "{place}");
        }
        other => panic!("{place}: {other:?}"),
    }
}

/// The same seed gives the same question, another one another.
#[test]
fn questions_are_repeatable() {
    let target = Target { level: Level::L4, side: Side::Right };
    for kind in Kind::ALL {
        let [a, b, c] = [5, 5, 6].map(|seed| ask(kind, 1, target, seed).unwrap());
        let same = |x: &Question, y: &Question| {
            x.spec.key() == y.spec.key() && x.view == y.view && x.choices == y.choices
        };
        assert!(same(&a, &b) && !same(&a, &c), "{}", kind.name());
    }
}
