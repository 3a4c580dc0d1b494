//! A careful hand: does a whole injection through the same actions that the page sends, looking only at what a learner sees.

#![allow(dead_code, reason = "not every test uses all of it")]
#![allow(unreachable_pub, reason = "a module that several tests include")]

pub mod learner;

use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::Level;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::lesson::action::{Action, Event};
use downbeam::lesson::attempt::{Attempt, view_of};
use downbeam::lesson::case::Case;
use downbeam::needle::device::Gauge;
use downbeam::needle::reading::{coaxial, hub_over_tip_deg, lateral, off_mark_mm};
use downbeam::view::best_view::{ViewKind, best_view};
use glam::DVec3;

/// An attempt in the making.
pub struct Hand<'a> {
    pub interior: &'a Interior,
    pub attempt: Attempt,
    pub tick: u32,
}

impl<'a> Hand<'a> {
    pub fn new(case: Case, interior: &'a Interior) -> Self {
        Self { interior, attempt: Attempt::new(case), tick: 0 }
    }

    /// Does an action, a second after the last.
    pub fn act(&mut self, action: Action) {
        self.tick += 20;
        self.attempt
            .apply(self.interior, Event(self.tick, action))
            .unwrap_or_else(|e| panic!("{action:?}: {e}"));
    }

    fn case(&self) -> Case {
        self.attempt.case
    }

    pub fn beam(&self, arm: &CArm) -> Projection {
        view_of(arm, &self.case(), self.interior)
    }

    /// Goes to the best view of a kind, in whole tenths of a degree, takes a picture and keeps it.
    pub fn set_up(&mut self, kind: ViewKind) {
        let wanted = self.case().asked(self.attempt.state.approach).measured(kind);
        let best = best_view(self.interior, self.case().target, wanted, &CArm::default()).orientation;
        let tenths = |deg: f64| (deg * 10.0).round() as i32;
        self.act(Action::Orient { oblique: tenths(best.oblique_deg), tilt: tenths(best.tilt_deg) });
        self.act(Action::Spot);
        self.act(Action::Keep { view: kind });
    }

    /// Marks a point of the patient on the picture.
    pub fn mark(&mut self, p: DVec3) {
        let uv = self.beam(&self.attempt.state.arm).project(p) * 100.0;
        self.act(Action::Mark { u: uv.x.round() as i32, v: uv.y.round() as i32 });
    }

    /// A point of the target area that the beam reaches past all bone, as far from its border as can be.
    pub fn open_target(&self) -> DVec3 {
        let area = self.attempt.state.area(&self.case(), self.interior).unwrap();
        let view = self.beam(&self.attempt.state.arm);
        let (centre, c) = (area.centre(), &area.corners);
        let (u, v) = ((c[1] - c[0]).normalize(), area.normal().cross((c[1] - c[0]).normalize()));
        let clear = |p: DVec3| {
            // Clear all around, so that a needle that strays a little still passes.
            [(0.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)].iter().all(|(a, b)| {
                let p = p + u * *a + v * *b;
                self.interior.tissues.bone_along(p, view.ray_to(p), 150.0).is_none()
            })
        };
        (-20..=20)
            .flat_map(|i| (-20..=20).map(move |j| (f64::from(i) * 0.6, f64::from(j) * 0.6)))
            .map(|(a, b)| centre + u * a + v * b)
            .filter(|p| area.distance_mm(*p) < 0.3 && clear(*p))
            .min_by(|a, b| area.distance_mm(*a).total_cmp(&area.distance_mm(*b)))
            .unwrap_or(centre)
    }

    /// Puts the hub over the tip.
    pub fn align(&mut self) {
        for _ in 0..30 {
            let needle = self.attempt.state.needle.clone().unwrap();
            let view = self.beam(&self.attempt.state.arm);
            if coaxial(&view, &needle).angle_deg < 0.2 {
                break;
            }
            let [right, up] = hub_over_tip_deg(&view, &needle).map(|deg| (deg * 10.0).round() as i32);
            if right == 0 && up == 0 {
                break;
            }
            self.act(Action::Angle { right, up });
        }
    }

    /// Advances to a depth under the skin in steps, turning the notch towards the side that the tip has strayed to.
    pub fn advance_to(&mut self, depth_mm: f64, spin: u8) {
        loop {
            let state = &self.attempt.state;
            let needle = state.needle.as_ref().unwrap();
            let left = depth_mm - needle.depth_mm();
            if left < 0.05 {
                break;
            }
            let mark = state.mark.unwrap();
            let view = self.beam(&mark.arm);
            let off = off_mark_mm(&view, mark.uv, needle.tip().position);
            let stray = libm::hypot(off[0], off[1]);
            if stray > 0.15 {
                // Where the notch should look: to the side the tip has strayed to.
                let wanted = view.right * off[0] + view.up * off[1];
                let tip = needle.tip();
                let (x, y) =
                    (wanted.dot(tip.across(0.0)), wanted.dot(tip.across(std::f64::consts::FRAC_PI_2)));
                let by = (libm::atan2(y, x) - needle.roll).to_degrees() * 10.0;
                self.act(Action::Roll { by: by.round() as i32 });
            }
            let before = self.attempt.state.needle.as_ref().unwrap().depth_mm();
            let by = (left.min(3.0) * 10.0).round().max(1.0) as u32;
            self.act(Action::Advance { by, spin });
            if self.attempt.state.needle.as_ref().unwrap().depth_mm() - before < 0.01 {
                break;
            }
        }
    }

    /// Sets a needle over a point of the patient down the present beam, and drives it there.
    pub fn drive_to(&mut self, gauge: Gauge, aim: DVec3) {
        self.mark(aim);
        self.act(Action::Place { gauge, length_mm: 127 });
        self.align();
        let reach = self.attempt.state.needle.as_ref().unwrap().entry.distance(aim);
        self.advance_to(reach, 0);
    }

    /// A whole injection, as taught.
    pub fn inject_everything(&mut self) {
        self.set_up(ViewKind::TrueAp);
        self.set_up(ViewKind::Oblique);
        let target = self.open_target();
        self.mark(target);
        self.act(Action::Place { gauge: Gauge::G22, length_mm: 127 });
        self.act(Action::Spot);
        self.align();
        self.act(Action::Spot);
        let entry = self.attempt.state.needle.as_ref().unwrap().entry;
        let reach = entry.distance(target);
        self.advance_to(0.6 * reach, 0);
        self.act(Action::Spot);
        self.advance_to(reach - if self.case().target.level == Level::S1 { 1.0 } else { 8.0 }, 0);
        for kind in [ViewKind::Lateral, ViewKind::TrueAp] {
            self.set_up(kind);
        }
        self.act(Action::Recall { view: ViewKind::Oblique });
        // On to the depth that the lateral view asks for.
        let wall = match self.attempt.state.approach {
            Approach::Subpedicular => 3.0,
            Approach::Infraneural => 2.5,
        };
        let best =
            best_view(self.interior, self.case().target, ViewKind::Lateral, &CArm::default()).orientation;
        let from_side = self.beam(&CArm::at_degrees(best.oblique_deg, best.tilt_deg).unwrap());
        for _ in 0..40 {
            let (target, tip) =
                (self.case().target, self.attempt.state.needle.as_ref().unwrap().tip().position);
            let behind = if target.level == Level::S1 {
                let area = self.attempt.state.area(&self.case(), self.interior).unwrap();
                (tip - area.centre()).dot(area.normal()) + 10.0
            } else {
                lateral(&from_side, self.interior, target.level, target.side, tip).behind_wall_mm
            };
            if behind < wall + 0.3 {
                break;
            }
            let depth = self.attempt.state.needle.as_ref().unwrap().depth_mm();
            self.advance_to(depth + (behind - wall).clamp(0.1, 1.0), 0);
        }
        self.set_up(ViewKind::TrueAp);
        self.act(Action::Aspirate);
        self.act(Action::Fluoroscopy { pulses: 16, rate: 8 });
        self.act(Action::Inject { volume: 80 });
        let pattern = self.attempt.state.injected.last().unwrap().bolus.compartment.pattern();
        self.act(Action::Name { pattern });
        self.act(Action::Finish);
    }
}
