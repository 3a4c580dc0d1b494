//! `view`'s exposures: a spot picture or a run of fluoroscopy as the machine would take it, with its technique and dose.
//!
//! A run is one press of the pedal. Its picture is the one that stays when the pedal is let go: the last pulses, averaged.

use crate::command::{UsageError, number, text};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::detector::Random;
use downbeam::imaging::dose::{DicomItem, DoseLog, DoseTotals, Habit, Irradiation, Saving};
use downbeam::imaging::exposure::{BeamSettings, ExposureKind, Technique};
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use lexopt::Parser;
use serde::Serialize;
use std::fmt::Write;

/// The longest run that is taken: ten minutes at the highest rate.
const MOST_PULSES: u32 = 18_000;
/// Pulses that are computed: with half of each new frame in the running mean, those before them count for less than 1 %.
const PULSES_SEEN: u32 = 8;

/// What was asked for, option by option.
#[derive(Default)]
pub(crate) struct Asked {
    spot: bool,
    pulses: Option<u32>,
    pulses_per_s: Option<u32>,
    low_dose: bool,
    open: Option<[f64; 2]>,
    magnification: Option<f64>,
    seed: Option<u64>,
}

/// An exposure to be taken.
pub(crate) struct Beam {
    settings: BeamSettings,
    pulses: u32,
    seed: u64,
}

/// An exposure in the JSON: technique, dose, and the dose as DICOM items.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct ExposureResult {
    exposure: ExposureMade,
    dose: DoseTotals,
    dicom_dose: Vec<DicomItem>,
}

#[derive(Serialize, schemars::JsonSchema)]
struct ExposureMade {
    technique: Technique,
    irradiation: Irradiation,
    /// Of the noise.
    seed: u64,
}

impl Asked {
    /// Reads the value of the option `name` if it is one of an exposure's; `false` if it is not.
    pub(crate) fn read(&mut self, name: &str, parser: &mut Parser) -> anyhow::Result<bool> {
        match name {
            "spot" => self.spot = true,
            "fluoro" => self.pulses = Some(pulses(&text(parser, "--fluoro")?)?),
            "pulse-rate" => {
                self.pulses_per_s = Some(whole(&text(parser, "--pulse-rate")?, "--pulse-rate")?);
            }
            "low-dose" => self.low_dose = true,
            "open" => self.open = Some(shares(&text(parser, "--open")?)?),
            "magnification" => self.magnification = Some(number(parser, "--magnification", "times")?),
            "seed" => self.seed = Some(whole(&text(parser, "--seed")?, "--seed")?),
            _ => return Ok(false),
        }
        Ok(true)
    }

    /// The exposure, if one was asked for.
    pub(crate) fn beam(&self) -> anyhow::Result<Option<Beam>> {
        let refuse = |why: &str| Err(UsageError(why.to_owned()).into());
        if self.spot && self.pulses.is_some() {
            return refuse("--spot is one picture and --fluoro a run of pulses: give one of them");
        }
        if self.pulses.is_none() && (self.pulses_per_s.is_some() || self.low_dose) {
            return refuse("--pulse-rate and --low-dose are for fluoroscopy: give --fluoro N too");
        }
        let set = self.open.is_some() || self.magnification.is_some() || self.seed.is_some();
        let (kind, pulses) = match self.pulses {
            Some(pulses) => (ExposureKind::Fluoroscopy, pulses),
            None if self.spot => (ExposureKind::Spot, 1),
            None if set => {
                return refuse(
                    "--open, --magnification and --seed are for an exposure: give --spot or --fluoro N too",
                );
            }
            None => return Ok(None),
        };
        let usual = BeamSettings::default();
        let settings = BeamSettings {
            kind,
            pulses_per_s: self.pulses_per_s.unwrap_or(usual.pulses_per_s),
            low_dose: self.low_dose,
            open: self.open.unwrap_or(usual.open),
            magnification: self.magnification.unwrap_or(usual.magnification),
        };
        Ok(Some(Beam { settings: settings.checked()?, pulses, seed: self.seed.unwrap_or(0) }))
    }
}

fn whole<T: std::str::FromStr>(found: &str, option: &str) -> Result<T, UsageError> {
    found.trim().parse().map_err(|_| UsageError(format!("{option} wants a whole number, not '{found}'")))
}

fn pulses(found: &str) -> Result<u32, UsageError> {
    let wrong =
        || UsageError(format!("--fluoro wants a number of pulses from 1 to {MOST_PULSES}, not '{found}'"));
    found.trim().parse().ok().filter(|n| (1..=MOST_PULSES).contains(n)).ok_or_else(wrong)
}

fn shares(found: &str) -> Result<[f64; 2], UsageError> {
    let wrong =
        || UsageError(format!("--open wants two shares of the field as W,H, such as 0.5,0.8, not '{found}'"));
    let (width, height) = found.split_once(',').ok_or_else(wrong)?;
    let share = |text: &str| text.trim().parse().map_err(|_| wrong());
    Ok([share(width)?, share(height)?])
}

impl Beam {
    /// The machine with the field of the magnification mode and the pixels of the kind of exposure.
    pub(crate) fn arm(&self, arm: &CArm) -> CArm {
        self.settings.on_detector(arm)
    }

    /// Takes the exposure with `radiograph`, made for [`Self::arm`] of `whole`; its picture stays in `radiograph`.
    pub(crate) fn take(
        &self,
        radiograph: &mut Radiograph,
        scene: Scene<'_>,
        view: &Projection,
        look: &Look,
        whole: &CArm,
    ) -> ExposureResult {
        let mut seeds = Random::new(self.seed);
        let mut pulse = || radiograph.expose(scene, view, look, &self.settings, 1, seeds.next_bits());
        let mut last = pulse();
        for _ in 1..self.pulses.min(PULSES_SEEN) {
            last = pulse();
        }
        let event = last.irradiation.repeated(self.pulses);
        let mut log = DoseLog::default();
        log.record(event);
        ExposureResult {
            exposure: ExposureMade { technique: last.technique, irradiation: event, seed: self.seed },
            dose: log.totals(),
            dicom_dose: log.dicom(whole),
        }
    }
}

impl ExposureResult {
    /// Technique and dose as lines of text.
    pub(crate) fn in_words(&self) -> String {
        let (technique, event) = (&self.exposure.technique, &self.exposure.irradiation);
        let mut text = String::from("\nExposure:\n");
        let kind = if event.pulses_per_s > 0.0 {
            let (s, rate, mode) =
                (event.beam_s, event.pulses_per_s, if event.low_dose { ", low dose" } else { "" });
            let noun = if event.pulses == 1 { "pulse" } else { "pulses" };
            format!("fluoroscopy, {} {noun} at {rate} a second, {s:.2} s{mode}", event.pulses)
        } else {
            "spot picture".to_owned()
        };
        let _ = writeln!(text, "  {kind}: {:.0} kVp, {:.3} mAs a pulse", technique.kvp, technique.mas);
        let _ = writeln!(
            text,
            "  Reference air kerma {:.3} mGy, kerma-area product {:.2} mGy cm2. {}",
            self.dose.kerma_mgy, self.dose.kap_mgy_cm2, self.dose.label
        );
        if let Some(Saving { habit, percent }) = self.dose.saving {
            let what = match habit {
                Habit::HalfField => "Closing both pairs of shutters to half the field",
                Habit::LowDose => "The low-dose mode",
                Habit::SlowPulses => "Four pulses a second",
                Habit::FewerExposures => "Half as many exposures",
            };
            let _ = writeln!(text, "  {what} would have saved about {percent:.0} %.");
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_and_pulses_are_read_or_refused_in_words() {
        assert_eq!(shares("0.5, 0.8").unwrap(), [0.5, 0.8]);
        for wrong in ["", "0.5", "0.5,", "a,b", "1,1,1"] {
            assert!(shares(wrong).unwrap_err().to_string().starts_with("--open wants two shares"), "{wrong}");
        }
        assert_eq!(pulses("18000").unwrap(), MOST_PULSES);
        for wrong in ["0", "-1", "18001", "2.5", "many"] {
            assert!(pulses(wrong).unwrap_err().to_string().ends_with(&format!("18000, not '{wrong}'")));
        }
    }
}
