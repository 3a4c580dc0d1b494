//! Dose: reference air kerma and kerma–area product, summed over a session. An estimate, not skin dose.
//!
//! Reference point: on the central ray 15 cm from the isocentre towards the source (DICOM code 113860; IEC 60601-2-43 names it
//! the patient entrance reference point). Free in air, no backscatter:
//! `K(d) = K_ref (d_ref / d)²`, `P_KA = K_ref · A_ref`, `A_ref = A_det (d_ref / SID)²`.

use super::c_arm::CArm;
use serde::Serialize;

/// Reference point from the isocentre towards the source, mm.
const REFERENCE_FROM_ISOCENTRE_MM: f64 = 150.0;

/// Distance of the reference point from the source, mm.
pub fn reference_distance_mm(arm: &CArm) -> f64 {
    arm.sod_mm - REFERENCE_FROM_ISOCENTRE_MM
}

/// Air kerma at a distance from the source, from that at the reference point; any unit.
pub fn kerma_at(reference_kerma: f64, reference_mm: f64, distance_mm: f64) -> f64 {
    let ratio = reference_mm / distance_mm;
    reference_kerma * ratio * ratio
}

/// Kerma–area product, mGy·cm², from the reference air kerma (mGy) and the field's area at the detector (cm²).
pub fn kerma_area_product(kerma_mgy: f64, detector_area_cm2: f64, reference_mm: f64, sid_mm: f64) -> f64 {
    let ratio = reference_mm / sid_mm;
    kerma_mgy * detector_area_cm2 * ratio * ratio
}

/// What one press of the pedal or one spot picture gave.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Irradiation {
    /// `spot` or `fluoroscopy`.
    pub kind: &'static str,
    /// Pulses in it.
    pub pulses: u32,
    /// Beam-on time as counted by fluoroscopy timers (pulses over pulse rate), s; 0 for a spot picture.
    pub beam_s: f64,
    /// Reference air kerma, mGy.
    pub kerma_mgy: f64,
    /// Kerma–area product, mGy·cm².
    pub kap_mgy_cm2: f64,
    /// What that would have been with the shutters closed to half the field ([`super::exposure::BeamSettings::half_field`]) and
    /// automatic brightness following; the same where no more than half was open.
    pub kap_half_field_mgy_cm2: f64,
    /// Tube voltage, kVp.
    pub kvp: f64,
    /// Tube current–time product of each pulse, mAs.
    pub mas_per_pulse: f64,
    /// Pulses a second.
    pub pulses_per_s: f64,
    /// Share of the receptor's area that the collimator left open.
    pub open_share: f64,
    /// Magnification mode, 1 = whole receptor.
    pub magnification: f64,
    /// Whether the low-dose mode was on.
    pub low_dose: bool,
}

impl Irradiation {
    /// The sums of the same irradiation `times` over.
    pub fn repeated(self, times: u32) -> Self {
        let k = f64::from(times);
        Self {
            pulses: self.pulses.saturating_mul(times),
            beam_s: self.beam_s * k,
            kerma_mgy: self.kerma_mgy * k,
            kap_mgy_cm2: self.kap_mgy_cm2 * k,
            kap_half_field_mgy_cm2: self.kap_half_field_mgy_cm2 * k,
            ..self
        }
    }

    /// Both as one entry, with the technique of the later one.
    fn and(&self, later: Self) -> Self {
        Self {
            pulses: self.pulses.saturating_add(later.pulses),
            beam_s: self.beam_s + later.beam_s,
            kerma_mgy: self.kerma_mgy + later.kerma_mgy,
            kap_mgy_cm2: self.kap_mgy_cm2 + later.kap_mgy_cm2,
            kap_half_field_mgy_cm2: self.kap_half_field_mgy_cm2 + later.kap_half_field_mgy_cm2,
            ..later
        }
    }

    /// Whether both are fluoroscopy with the same settings.
    fn continues(&self, earlier: &Self) -> bool {
        let settings = |e: &Self| (e.pulses_per_s, e.open_share, e.magnification, e.low_dose);
        [self, earlier].iter().all(|e| e.kind == "fluoroscopy") && settings(self) == settings(earlier)
    }
}

/// The session's sums. One entry a spot picture or press of the pedal.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct DoseLog {
    /// All irradiations in order.
    events: Vec<Irradiation>,
    /// Whether the pedal has been down since the last entry.
    #[serde(skip)]
    down: bool,
}

/// Sums for the display.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct DoseTotals {
    /// Presses and spot pictures.
    pub exposures: usize,
    /// Beam-on time of fluoroscopy, s.
    pub beam_s: f64,
    /// Reference air kerma, mGy.
    pub kerma_mgy: f64,
    /// Kerma–area product, mGy·cm².
    pub kap_mgy_cm2: f64,
    /// What it is and is not, for whoever reads the figures out of a file.
    pub label: &'static str,
    /// What would have saved most of it, where one habit would have saved two fifths or more.
    pub saving: Option<Saving>,
}

/// A habit, and how much of the kerma–area product it would have saved.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Saving {
    /// The habit.
    pub habit: Habit,
    /// Of what was spent.
    pub percent: f64,
}

/// A habit that saves dose.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Habit {
    /// Both pairs of shutters closed to half the field.
    HalfField,
    /// The low-dose mode.
    LowDose,
    /// Four pulses a second at most.
    SlowPulses,
    /// Half as many exposures.
    FewerExposures,
}

/// Says what the figures are, in English; the page's own words are in texts, in its languages.
pub const LABEL: &str = "Estimate at the reference point, free in air; not skin dose.";

impl DoseLog {
    /// All irradiations in order.
    pub fn events(&self) -> &[Irradiation] {
        &self.events
    }

    /// Writes an irradiation down. Pulses of fluoroscopy add to the last entry for as long as the pedal stays down
    /// ([`Self::release`]) and the settings stay the same.
    pub fn record(&mut self, new: Irradiation) {
        match self.events.last_mut() {
            Some(entry) if self.down && new.continues(entry) => *entry = entry.and(new),
            _ => self.events.push(new),
        }
        self.down = new.kind == "fluoroscopy";
    }

    /// The pedal is up: the next pulse begins another entry.
    pub fn release(&mut self) {
        self.down = false;
    }

    /// The sums.
    pub fn totals(&self) -> DoseTotals {
        let sum = |of: fn(&Irradiation) -> f64| self.events.iter().map(of).sum::<f64>();
        DoseTotals {
            exposures: self.events.len(),
            beam_s: sum(|e| e.beam_s),
            kerma_mgy: sum(|e| e.kerma_mgy),
            kap_mgy_cm2: sum(|e| e.kap_mgy_cm2),
            label: LABEL,
            saving: self.saving(),
        }
    }

    /// The habit that cost most: what share of the kerma–area product a better one would have saved.
    fn saving(&self) -> Option<Saving> {
        let total: f64 = self.events.iter().map(|e| e.kap_mgy_cm2).sum();
        if total <= 0.0 {
            return None;
        }
        let saved = |better: &dyn Fn(&Irradiation) -> f64| {
            self.events.iter().map(|e| e.kap_mgy_cm2 * (1.0 - better(e))).sum::<f64>() / total
        };
        let field = 1.0 - self.events.iter().map(|e| e.kap_half_field_mgy_cm2).sum::<f64>() / total;
        let rate = saved(&|e| {
            let slow = SLOW_PULSES_PER_S / e.pulses_per_s;
            if e.kind == "fluoroscopy" && slow < 1.0 { libm::pow(slow, RATE_POWER) } else { 1.0 }
        });
        let low = saved(&|e| if e.low_dose || e.kind == "spot" { 1.0 } else { LOW_DOSE_FACTOR });
        let fewer = if self.events.len() >= 6 { 0.5 } else { 0.0 };
        [
            (field, Habit::HalfField),
            (low, Habit::LowDose),
            (rate, Habit::SlowPulses),
            (fewer, Habit::FewerExposures),
        ]
        .into_iter()
        .filter(|(share, _)| *share >= LEAST_SAVED)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(share, habit)| Saving { habit, percent: share * 100.0 })
    }

    /// The session in DICOM's terms and units: rows of (code value, scheme, meaning, value, unit) as a radiation dose report has
    /// them, and the positioner-independent geometry.
    pub fn dicom(&self, arm: &CArm) -> Vec<DicomItem> {
        let totals = self.totals();
        let frames: u32 = self.events.iter().filter(|e| e.kind == "spot").map(|e| e.pulses).sum();
        let item = |code, meaning, value, unit| DicomItem { code, scheme: "DCM", meaning, value, unit };
        vec![
            item("113725", "Dose (RP) Total", totals.kerma_mgy * 1e-3, "Gy"),
            // 1 mGy·cm² = 1e-7 Gy·m².
            item("113722", "Dose Area Product Total", totals.kap_mgy_cm2 * 1e-7, "Gy.m2"),
            item("113730", "Total Fluoro Time", totals.beam_s, "s"),
            item("113731", "Total Number of Radiographic Frames", f64::from(frames), "1"),
            item("113812", "Total Number of Irradiation Events", totals.exposures as f64, "1"),
            item("113737", "Distance Source to Reference Point", reference_distance_mm(arm), "mm"),
            item("113748", "Distance Source to Isocenter", arm.sod_mm, "mm"),
            item("113750", "Distance Source to Detector", arm.sid_mm, "mm"),
        ]
    }
}

/// Kerma rate goes with the pulse rate to this power, so that half the pulses give 0.68 of the dose (Korean J Pain 2011;24(4):
/// pulsed -32 %): log 0.68 / log 0.5.
pub const RATE_POWER: f64 = 0.5564;
/// Low-dose mode (same source: -57 %).
pub const LOW_DOSE_FACTOR: f64 = 0.43;
/// A field of half the receptor's area is a habit that a lumbar level allows. Common practice, no source.
pub const HALF_FIELD: f64 = 0.5;
/// A habit that would have saved less than this share is not worth a sentence. Our choice.
const LEAST_SAVED: f64 = 0.40;
/// Slow pulses that setting up a view allows. Common practice, no source.
const SLOW_PULSES_PER_S: f64 = 4.0;

/// One numeric item of a dose report.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct DicomItem {
    /// Code value.
    pub code: &'static str,
    /// Coding scheme.
    pub scheme: &'static str,
    /// Code meaning.
    pub meaning: &'static str,
    /// Value in `unit`.
    pub value: f64,
    /// UCUM unit.
    pub unit: &'static str,
}

#[cfg(test)]
mod tests {
    use super::super::exposure::{BeamSettings, irradiation, technique};
    use super::*;

    /// Worked vectors of the physics reference, section 4: SOD 700, SID 1100.
    #[test]
    fn worked_vectors() {
        assert!((kerma_at(10.0, 550.0, 500.0) - 12.10).abs() < 1e-9);
        assert!((kerma_at(10.0, 550.0, 400.0) - 18.906).abs() < 1e-3);
        assert!((kerma_at(10.0, 550.0, 1100.0) - 2.50).abs() < 1e-9);
        assert!((kerma_area_product(5.0, 20.48 * 20.48, 550.0, 1100.0) - 524.288).abs() < 1e-6);
        assert_eq!(reference_distance_mm(&CArm::default()), 550.0);
    }

    /// Rows of published example dose reports (PySkinDose wheel 25.1.1; SOD 785): kerma mGy, product µGy·m², detector area m², SID
    /// mm. The formula holds within 1 %.
    #[test]
    fn published_dose_report_rows() {
        for (kerma, product, area, sid) in [
            (1.680, 65.370, 0.11053, 1071.0),
            (0.730, 28.230, 0.11053, 1071.0),
            (0.790, 30.840, 0.11053, 1071.0),
            (0.830, 7.930, 0.02707, 1071.0),
            (0.690, 14.850, 0.06136, 1071.0),
            (0.920, 15.780, 0.04879, 1071.0),
            (2.120, 17.830, 0.02465, 1083.0),
            (3.130, 26.390, 0.02465, 1083.0),
            (0.860, 5.380, 0.02246, 1198.0),
        ] {
            // 1 µGy·m² = 10 mGy·cm².
            let ours = kerma_area_product(kerma, area * 1e4, 785.0 - REFERENCE_FROM_ISOCENTRE_MM, sid) / 10.0;
            assert!((ours / product - 1.0).abs() < 0.01, "{ours} against {product}");
        }
    }

    fn press(pulses: u32) -> Irradiation {
        let arm = CArm::default();
        let settings = BeamSettings::default();
        let t = technique(&arm, &settings, 75.0, 5.0);
        irradiation(&arm, &settings, &t, &t, pulses)
    }

    #[test]
    fn pulses_of_one_press_are_one_entry() {
        let mut log = DoseLog::default();
        log.record(press(3));
        log.record(press(5));
        assert_eq!(log.events().len(), 1);
        assert_eq!(log.events()[0].pulses, 8);
        let (one, whole) = (&log.events()[0], press(8));
        for (a, b) in [
            (one.beam_s, whole.beam_s),
            (one.kerma_mgy, whole.kerma_mgy),
            (one.kap_mgy_cm2, whole.kap_mgy_cm2),
        ] {
            assert!((a / b - 1.0).abs() < 1e-12);
        }

        log.release();
        log.record(press(2));
        assert_eq!(log.events().len(), 2, "the pedal was up in between");
        log.record(Irradiation { low_dose: true, ..press(2) });
        assert_eq!(log.events().len(), 3, "the settings are others");
        let spot = Irradiation { kind: "spot", beam_s: 0.0, ..press(1) };
        log.record(spot);
        log.record(spot);
        assert_eq!(log.events().len(), 5, "spot pictures are never joined");
        log.record(press(1));
        assert_eq!(log.events().len(), 6, "a spot picture came in between");
    }

    #[test]
    fn repeating_a_pulse_is_the_sum_of_as_many() {
        let mut log = DoseLog::default();
        (0..7).for_each(|_| log.record(press(1)));
        let (sum, told) = (&log.events()[0], press(1).repeated(7));
        assert_eq!(sum.pulses, told.pulses);
        assert!((sum.kap_mgy_cm2 / told.kap_mgy_cm2 - 1.0).abs() < 1e-12);
        assert!((sum.beam_s / told.beam_s - 1.0).abs() < 1e-12);
    }

    /// A randomised trial of collimation (Korean J Pain 2013;26(2)): 67 % of the field gave 0.670 of the reading.
    #[test]
    fn product_is_proportional_to_the_field() {
        let full = kerma_area_product(2.0, 400.0, 550.0, 1100.0);
        let part = kerma_area_product(2.0, 268.0, 550.0, 1100.0);
        assert!((part / full - 0.670).abs() < 1e-12);
    }
}
