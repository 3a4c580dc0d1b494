//! A careful hand: does a whole injection through the same actions that the page sends, looking only at what a learner sees.

#![allow(dead_code, reason = "not every test uses all of it")]
#![allow(unreachable_pub, reason = "a module that several tests include")]

pub mod learner;

use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::Level;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::needle::compartment::Pattern;
use downbeam::needle::contact::ContactKind;
use downbeam::needle::device::Gauge;
use downbeam::needle::reading::{coaxial, drift, hub_over_tip_deg, lateral};
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::beam::view_of;
use downbeam::procedure::case::Case;
use downbeam::procedure::record::Aspirate;
use downbeam::view::best_view::{ViewKind, best_view};
use glam::DVec3;

/// An attempt in the making.
pub struct Hand<'a> {
    pub interior: &'a Interior,
    pub attempt: Attempt,
    pub tick: u32,
    /// Which needle.
    pub gauge: Gauge,
    /// Whether it steers by what it sees; else it turns the hub half round every 5 mm.
    pub looks: bool,
}

impl<'a> Hand<'a> {
    pub fn new(case: Case, interior: &'a Interior) -> Self {
        Self { interior, attempt: Attempt::new(case), tick: 0, gauge: Gauge::G22, looks: true }
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
        self.act(Action::Orient {
            oblique_tenths: tenths(best.oblique_deg),
            tilt_tenths: tenths(best.tilt_deg),
        });
        self.act(Action::Spot);
        self.act(Action::Keep { view: kind });
    }

    /// Marks a point of the patient on the picture.
    pub fn mark(&mut self, p: DVec3) {
        let uv = self.beam(&self.attempt.state.arm).project(p) * 100.0;
        self.act(Action::Mark { u_mm_hundredths: uv.x.round() as i32, v_mm_hundredths: uv.y.round() as i32 });
    }

    /// A point of the target area that the beam reaches past all bone, as far from its border as can be.
    pub fn open_target(&self) -> DVec3 {
        self.open_targets()[0]
    }

    /// Such points, best first, each 2 mm or more from those before it.
    pub fn open_targets(&self) -> Vec<DVec3> {
        let area = self.attempt.state.area(&self.case(), self.interior).unwrap();
        let view = self.beam(&self.attempt.state.arm);
        let (centre, c) = (area.centre(), &area.corners);
        let (u, v) = ((c[1] - c[0]).normalize(), area.normal().cross((c[1] - c[0]).normalize()));
        let clear = |p: DVec3| {
            // Clear all around, so that a needle that strays a little still passes.
            [(0.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)].iter().all(|(a, b)| {
                let p = p + u * *a + v * *b;
                self.interior.tissues().bone_along(p, view.ray_to(p), 150.0).is_none()
            })
        };
        let mut points: Vec<DVec3> = (-20..=20)
            .flat_map(|i| (-20..=20).map(move |j| (f64::from(i) * 0.6, f64::from(j) * 0.6)))
            .map(|(a, b)| centre + u * a + v * b)
            .filter(|p| area.distance_mm(*p) < 0.3 && clear(*p))
            .collect();
        points.sort_by(|a, b| area.distance_mm(*a).total_cmp(&area.distance_mm(*b)));
        let mut apart: Vec<DVec3> = Vec::new();
        for p in points {
            if apart.iter().all(|q| q.distance(p) >= 2.0) {
                apart.push(p);
            }
        }
        if apart.is_empty() { vec![centre] } else { apart }
    }

    /// Puts the hub over the tip.
    pub fn align(&mut self) {
        for _ in 0..30 {
            let needle = self.attempt.state.needle.clone().unwrap();
            let view = self.beam(&self.attempt.state.arm);
            if coaxial(&view, &needle).angle_deg < 0.2 {
                break;
            }
            let [right_deg_tenths, up_deg_tenths] =
                hub_over_tip_deg(&view, &needle).map(|deg| (deg * 10.0).round() as i32);
            if right_deg_tenths == 0 && up_deg_tenths == 0 {
                break;
            }
            self.act(Action::Angle { right_deg_tenths, up_deg_tenths });
        }
    }

    /// Depth of the needle, mm.
    pub fn depth(&self) -> f64 {
        self.attempt.state.needle.as_ref().unwrap().depth_mm()
    }

    /// Whether the patient reports pain now.
    pub fn hurts(&self) -> bool {
        let root = |k| matches!(k, ContactKind::Root | ContactKind::Ganglion);
        self.attempt.state.contacts.iter().any(|m| root(m.contact.kind) && !m.drawn_back)
    }

    /// Advances to a depth under the skin in steps, looking where it strays and turning the notch towards that side. Stops and draws back
    /// on pain; returns whether it came there.
    pub fn advance_to(&mut self, depth_mm: f64, spin_percent: u8) -> bool {
        let mut turned_at = self.depth();
        loop {
            let left = depth_mm - self.depth();
            if left < 0.05 {
                return true;
            }
            if self.looks {
                self.steer();
            } else if self.depth() - turned_at >= 5.0 {
                turned_at = self.depth();
                self.act(Action::Roll { deg_tenths: 1800 });
            }
            let before = self.depth();
            self.act(Action::Advance {
                mm_tenths: (left.min(3.0) * 10.0).round().max(1.0) as u32,
                spin_percent,
            });
            if self.looks && self.hurts() {
                self.act(Action::Withdraw { mm_tenths: 30 });
                return false;
            }
            if self.depth() - before < 0.01 {
                return false;
            }
        }
    }

    /// Turns the notch towards the side that the tip strays to, once that can be seen.
    fn steer(&mut self) {
        let state = &self.attempt.state;
        let (needle, mark) = (state.needle.as_ref().unwrap(), state.mark.unwrap());
        if needle.depth_mm() < 6.0 {
            return;
        }
        let view = self.beam(&mark.arm);
        let Some(way) = drift(&view, mark.uv, needle).strays() else { return };
        let wanted = (view.right * way.x + view.up * way.y).normalize();
        if needle.notch().dot(wanted) > 0.6 {
            return;
        }
        let tip = needle.tip();
        let (x, y) = (wanted.dot(tip.across(0.0)), wanted.dot(tip.across(std::f64::consts::FRAC_PI_2)));
        let by = (libm::atan2(y, x) - needle.roll_rad).to_degrees() * 10.0;
        if self.case().exposures {
            self.act(Action::Spot);
        }
        self.act(Action::Roll { deg_tenths: by.round() as i32 });
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
        self.inject_carefully();
        self.act(Action::Finish);
    }

    /// The same up to the end.
    pub fn inject_carefully(&mut self) {
        self.set_up(ViewKind::TrueAp);
        self.set_up(ViewKind::Oblique);
        let targets = self.open_targets();
        for (i, &target) in targets.iter().take(4).enumerate() {
            if i > 0 {
                self.act(Action::Remove);
                self.act(Action::Recall { view: ViewKind::Oblique });
            }
            if self.inject_through(target) {
                break;
            }
        }
    }

    /// A needle of its own to one target; returns whether contrast spread as wanted.
    fn inject_through(&mut self, target: DVec3) -> bool {
        self.mark(target);
        self.act(Action::Place { gauge: self.gauge, length_mm: 127 });
        self.act(Action::Spot);
        self.align();
        self.act(Action::Spot);
        let entry = self.attempt.state.needle.as_ref().unwrap().entry;
        let reach = entry.distance(target);
        let mut free = self.advance_to(0.6 * reach, 0);
        self.act(Action::Spot);
        free =
            free && self.advance_to(reach - if self.case().target.level == Level::S1 { 1.0 } else { 8.0 }, 0);
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
            if !free {
                break;
            }
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
            free = self.advance_to(depth + (behind - wall).clamp(0.1, 1.0), 0);
        }
        self.set_up(ViewKind::TrueAp);
        // Until the spread is the one wanted: a little back from a vessel, and proven anew.
        for _ in 0..3 {
            self.act(Action::Aspirate);
            let state = &self.attempt.state;
            // Blood that came by itself counts as much as blood that was sucked.
            let dry = state.aspirated == Some(Aspirate::Nothing) && !state.blood;
            if dry && self.inject() == Pattern::Perineural {
                return true;
            }
            self.act(Action::Withdraw { mm_tenths: 15 });
        }
        false
    }

    /// Injects contrast live at the tip and names what it shows.
    pub fn inject(&mut self) -> Pattern {
        self.act(Action::Fluoroscopy { pulses: 16, pulses_per_s: 8 });
        self.act(Action::Inject { ml_hundredths: 80 });
        let pattern = self.attempt.state.injected.last().unwrap().bolus.compartment.pattern();
        self.act(Action::Name { pattern });
        pattern
    }
}
