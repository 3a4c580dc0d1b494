//! The outlines as SVG: user units are mm on the detector, one group a part with its name as title.

use crate::shown::Shown;
use anyhow::Context;
use downbeam::anatomy::names::{Label, Part};
use downbeam::imaging::outline::Outline;
use downbeam::view::criteria::Target;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

/// How much an outline stands out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Emphasis {
    /// Other levels, the pelvis, the ribs.
    Faint,
    /// The target vertebra.
    Plain,
    /// The parts that the oblique view is judged by: the target's on its side and the process of the level below.
    Strong,
}

/// How much an outline stands out for a target.
pub(crate) fn emphasis(label: &Label, target: Target) -> Emphasis {
    let near_side = label.side == Some(target.side);
    if near_side && label.level == target.level && label.part.dog_name().is_some()
        || near_side
            && Some(label.level) == target.level.below()
            && label.part == Part::SuperiorArticularProcess
    {
        Emphasis::Strong
    } else if label.level == target.level {
        Emphasis::Plain
    } else {
        Emphasis::Faint
    }
}

/// The name of a labelled part in words, such as `L4 left pedicle`.
fn in_words(label: &Label) -> String {
    let part = label.part.name().replace('_', " ");
    match label.side {
        Some(side) => format!("{} {side} {part}", label.level),
        None => format!("{} {part}", label.level),
    }
}

const STYLE: &str = "\
path{fill:none;stroke:#9aa3ab;stroke-width:.3;stroke-linejoin:round;stroke-linecap:round}\
.plain path{stroke:#27506b;stroke-width:.45}.strong path{stroke:#a34700;stroke-width:.8}\
text{font:4px system-ui,sans-serif;text-anchor:middle;fill:#111;stroke:#fff;stroke-width:.9;paint-order:stroke}\
.caution{font-size:3px;fill:#444}";

/// Writes the drawing; with `labels`, the parts of the oblique view are named in it.
pub(crate) fn write(path: &Path, shown: &Shown<'_>, labels: bool) -> anyhow::Result<()> {
    std::fs::write(path, drawing(shown, labels)).with_context(|| format!("cannot write {}", path.display()))
}

fn drawing(shown: &Shown<'_>, labels: bool) -> String {
    let report = &shown.report;
    let half = shown.arm.half_field_mm();
    let edge = 2.0 * half;
    let mut svg = String::new();
    let _ = writeln!(
        svg,
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{edge}mm" height="{edge}mm" viewBox="{} {} {edge} {edge}">"#,
        -half, -half
    );
    let _ = writeln!(
        svg,
        "<title>{} {}, oblique {:.1}, tilt {:.1} degrees</title>\n\
         <desc>Computed outlines of a teaching model, mm on the detector: not for planning or guiding a procedure.</desc>\n\
         <style>{STYLE}</style>\n<rect x=\"{}\" y=\"{}\" width=\"{edge}\" height=\"{edge}\" fill=\"#fff\"/>",
        report.level, report.side, report.orientation.oblique_deg, report.orientation.tilt_deg, -half, -half
    );
    let mut parts: BTreeMap<Label, Vec<&Outline>> = BTreeMap::new();
    for outline in &shown.outlines {
        parts.entry(outline.label).or_default().push(outline);
    }
    for (level, class) in
        [(Emphasis::Faint, "faint"), (Emphasis::Plain, "plain"), (Emphasis::Strong, "strong")]
    {
        let _ = writeln!(svg, r#"<g class="{class}">"#);
        for (label, lines) in parts.iter().filter(|(label, _)| emphasis(label, shown.target) == level) {
            let d: String = lines.iter().map(|outline| path_data(outline)).collect();
            let _ = writeln!(svg, r#"<g><title>{}</title><path d="{d}"/></g>"#, in_words(label));
        }
        svg += "</g>\n";
    }
    if labels {
        svg += &label_column(shown);
    }
    let _ = writeln!(
        svg,
        r#"<text class="caution" x="0" y="{:.1}">Teaching model: not for planning or guiding a procedure</text>"#,
        half - 2.0
    );
    svg + "</svg>\n"
}

/// The names of the oblique view's parts in a column at the edge on the target's side, each with a line to its part.
fn label_column(shown: &Shown<'_>) -> String {
    const SPACING_MM: f64 = 7.0;
    let half = shown.arm.half_field_mm();
    let inside = |[u, v]: [f64; 2]| u.abs() <= half && v.abs() <= half;
    let mut parts: Vec<_> = shown.report.dog.iter().filter(|part| inside(part.anchor_mm)).collect();
    parts.sort_by(|a, b| b.anchor_mm[1].total_cmp(&a.anchor_mm[1]));
    // The column is on the side of the picture where most parts lie.
    let sum: f64 = parts.iter().map(|part| part.anchor_mm[0]).sum();
    let (edge, anchor) = if sum < 0.0 { (2.0 - half, "start") } else { (half - 2.0, "end") };
    let mut svg = String::new();
    let mut y = f64::MIN;
    for (i, part) in parts.iter().enumerate() {
        let [u, v] = part.anchor_mm;
        // As near its part's height as the names above and the room for those below allow.
        let lowest = half - 8.0 - SPACING_MM * (parts.len() - 1 - i) as f64;
        y = (-v).max(y + SPACING_MM).min(lowest);
        let name = format!("{} {}", part.level, part.part.name().replace('_', " "));
        // Set at 4 mm, a letter is about half as wide.
        let end = edge - edge.signum() * (2.0 * name.len() as f64 + 1.0);
        let _ = writeln!(
            svg,
            r##"<path d="M{end:.2} {y:.2}L{u:.2} {:.2}" style="stroke:#111"/><circle cx="{u:.2}" cy="{:.2}" r=".9" fill="#111"/>
<text x="{edge}" y="{:.2}" style="text-anchor:{anchor}">{name}</text>"##,
            -v,
            -v,
            y + 1.4
        );
    }
    svg
}

/// A line as path data; SVG's y runs down.
fn path_data(outline: &Outline) -> String {
    let mut d = String::new();
    for (i, [u, v]) in outline.points.iter().enumerate() {
        let _ = write!(d, "{}{u:.2} {:.2}", if i == 0 { 'M' } else { 'L' }, -v);
    }
    if outline.closed() {
        d.push('Z');
    }
    d
}

#[cfg(test)]
mod tests {
    use super::*;
    use downbeam::anatomy::names::{Level, Side};

    #[test]
    fn the_target_and_the_process_below_stand_out() {
        let target = Target { level: Level::L4, side: Side::Left };
        let label = |level, part, side| Label { level, part, side };
        for (level, part, side, expected) in [
            (Level::L4, Part::Pedicle, Some(Side::Left), Emphasis::Strong),
            (Level::L4, Part::Pedicle, Some(Side::Right), Emphasis::Plain),
            (Level::L4, Part::Body, None, Emphasis::Plain),
            (Level::L5, Part::SuperiorArticularProcess, Some(Side::Left), Emphasis::Strong),
            (Level::L5, Part::SuperiorArticularProcess, Some(Side::Right), Emphasis::Faint),
            (Level::L3, Part::Pedicle, Some(Side::Left), Emphasis::Faint),
        ] {
            assert_eq!(emphasis(&label(level, part, side), target), expected, "{level} {part:?} {side:?}");
        }
    }
}
