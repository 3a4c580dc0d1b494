//! An injection into each space: a log that the page about the model replays for its films. Tips are searched in a block of points about
//! the foramen, and each is tried with a needle that is spun all the way, which goes straight (`needle::motion`); what the log's own
//! replay gives is what counts. Signs of the patterns: common practice, no source.

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::imaging::c_arm::CArm;
use downbeam::needle::compartment::{Pattern, compartment_at};
use downbeam::needle::device::Gauge;
use downbeam::needle::reading::hub_over_tip_deg;
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::beam::view_of;
use downbeam::procedure::case::Case;
use downbeam::procedure::log_line;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use glam::DVec3;
use serde_json::{Value, json};

const CASE: Target = Target { level: Level::L4, side: Side::Left };
/// A needle of 127 mm leaves the back in this patient alone.
const SLIGHT: &str = "small";
/// Points of the block, mm from the pedicle's middle: left, back, head; and their spacing.
const BLOCK_MM: [(i32, i32); 3] = [(-30, 36), (-81, 30), (-40, 8)];
const SPACING_MM: usize = 3;
/// Points tried before a pattern is given up.
const MOST_TRIED: usize = 400;
/// What goes in, hundredths of a millilitre, and how long after it the film is taken, ticks: a vessel is empty soon. A choice, no source.
const VOLUME_ML_HUNDREDTHS: u32 = 50;
const LATER: u32 = 4;

/// `{pattern, patient, log, tick}` for each pattern, L4 left: the log's lines, and when the film is taken.
pub(super) fn numbers(average: &Interior) -> Value {
    let slight = PatientSpec::named(SLIGHT).map(|spec| Interior::of(&spec));
    let shown = |pattern| {
        let (patient, interior) = match (pattern, &slight) {
            (Pattern::Peritoneal, Ok(slight)) => (SLIGHT, slight),
            _ => ("average", average),
        };
        let attempt = injected(interior, pattern)?;
        let log: Vec<String> = attempt.log.iter().map(log_line::write).collect();
        Some(
            json!({ "pattern": pattern, "patient": patient, "log": log, "tick": attempt.state.tick + LATER }),
        )
    };
    Pattern::ALL.iter().copied().filter_map(shown).collect()
}

/// The first injection that spreads so, from the points nearest to the triangle's middle on.
fn injected(interior: &Interior, pattern: Pattern) -> Option<Attempt> {
    let aimed_at = interior.foramen(CASE.level, CASE.side)?.subpedicular.centre();
    let middle = interior.level(CASE.level).side(CASE.side).pedicle.centre;
    let axis = |i: usize| (BLOCK_MM[i].0..=BLOCK_MM[i].1).step_by(SPACING_MM).map(f64::from);
    let mut points: Vec<DVec3> = axis(0)
        .flat_map(|x| axis(1).flat_map(move |y| axis(2).map(move |z| DVec3::new(x, y, z))))
        .map(|offset| middle + offset * interior.scale)
        .filter(|p| compartment_at(interior, *p).pattern() == pattern)
        .collect();
    points.sort_by(|a, b| a.distance(aimed_at).total_cmp(&b.distance(aimed_at)));
    let best = best_view(interior, CASE, ViewKind::Oblique, &CArm::default()).orientation;
    let beam = [best.oblique_deg, best.tilt_deg].map(|deg| libm::round(10.0 * deg) as i32);
    points
        .into_iter()
        .take(MOST_TRIED)
        .filter_map(|aim| straight_to(interior, aim, beam))
        .find(|a| a.state.injected.last().is_some_and(|i| i.bolus.compartment.pattern() == pattern))
}

/// An injection at the end of a needle that goes straight down a beam to a point, or as far as bone lets it.
fn straight_to(interior: &Interior, aim: DVec3, [oblique_tenths, tilt_tenths]: [i32; 2]) -> Option<Attempt> {
    let mut attempt = Attempt::new(Case::new(CASE));
    let mut tick = 0;
    let mut act = |attempt: &mut Attempt, action| {
        tick += 20;
        attempt.apply(interior, Event(tick, action)).ok()
    };
    act(&mut attempt, Action::Orient { oblique_tenths, tilt_tenths })?;
    let view = view_of(&attempt.state.arm, &attempt.case, interior);
    let uv = view.project(aim) * 100.0;
    act(
        &mut attempt,
        Action::Mark { u_mm_hundredths: libm::round(uv.x) as i32, v_mm_hundredths: libm::round(uv.y) as i32 },
    )?;
    act(&mut attempt, Action::Place { gauge: Gauge::G22, length_mm: 127 })?;
    for _ in 0..10 {
        let needle = attempt.state.needle.as_ref()?;
        let [right_deg_tenths, up_deg_tenths] =
            hub_over_tip_deg(&view, needle).map(|deg| libm::round(deg * 10.0) as i32);
        if right_deg_tenths == 0 && up_deg_tenths == 0 {
            break;
        }
        act(&mut attempt, Action::Angle { right_deg_tenths, up_deg_tenths })?;
    }
    let way_mm = attempt.state.needle.as_ref()?.entry.distance(aim);
    act(&mut attempt, Action::Advance { mm_tenths: libm::round(10.0 * way_mm) as u32, spin_percent: 100 })?;
    act(&mut attempt, Action::Inject { ml_hundredths: VOLUME_ML_HUNDREDTHS })?;
    Some(attempt)
}
