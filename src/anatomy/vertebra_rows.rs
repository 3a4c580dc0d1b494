//! What a row of a vertebra's shape is. The rows themselves stand in [`super::vertebra_table`].
//!
//! A part of the posterior arch is a smooth axis with sections along it (`geometry::sdf::Loft`); a row is one section, at the average's
//! size, left half. Places are [left, behind the line through the posterior rims, above mid-body], mm. The rows are carried to a
//! patient's dimensions by `posterior_arch`.

/// One section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Centre, mm.
    pub at: [f64; 3],
    /// Half the width along the part's wide direction and half the thickness across it, mm.
    pub half: [f64; 2],
    /// Wide direction turned about the axis, degrees.
    pub turn_deg: f64,
    /// 0 an ellipse, 1 a superellipse of power 4.
    pub square: f64,
}

/// A row, short.
pub const fn row(at: [f64; 3], half: [f64; 2], turn_deg: f64, square: f64) -> Row {
    Row { at, half, turn_deg, square }
}

/// A part: its rows in the order of its names, and the length of the caps before the first and after the last, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs, reason = "documented above")]
pub struct Bar<const N: usize> {
    pub rows: [Row; N],
    pub cap_mm: [f64; 2],
}

/// What a body's walls do between its plates (`geometry::sdf::Drum`).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walls {
    /// How much narrower and how much less deep the middle is than the rims.
    pub waist: [f64; 2],
    /// How long the waist is: at -1 the lips are long and the middle short.
    pub waist_flat: f64,
    /// How far the waist stands behind the rims' middle, mm.
    pub waist_shift_mm: f64,
    /// 0 an ellipse, 1 a superellipse of power 4.
    pub square: f64,
    /// Hollow of the posterior wall in the midline, mm.
    pub dent_mm: f64,
}

/// The superior facet: its middle, how hollow it is, and how far the process's rows are cut by it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FacetRow {
    /// Middle, mm.
    pub at: [f64; 3],
    /// Half the inverse radius, 1/mm.
    pub curvature: f64,
}

/// A bump: centre and half axes, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs, reason = "documented above")]
pub struct Bump {
    pub at: [f64; 3],
    pub half: [f64; 3],
}

/// A superior articular process.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProcessRows {
    /// From the pillar up. Sections are ellipses.
    pub bar: Bar<5>,
    /// Its facet.
    pub facet: FacetRow,
    /// Mamillary process, behind it.
    pub mamillary: Bump,
}

/// All of a vertebra.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rows {
    /// Where the rows were measured.
    pub source: &'static str,
    /// Body.
    pub walls: Walls,
    /// Pedicle, from the body back; the second row is the isthmus and stands for the table's own.
    pub pedicle: Bar<4>,
    /// Superior articular process.
    pub superior: ProcessRows,
    /// Articular pillar: from behind the pedicle through the pars down to the tip of the inferior articular process.
    pub pillar: Bar<7>,
    /// Lamina, from the pillar to the midline.
    pub lamina: Bar<4>,
    /// Transverse process, from the pedicle out.
    pub transverse: Bar<5>,
    /// Spinous process, from the laminae back.
    pub spinous: Bar<6>,
}

/// The rows' names, part by part.
pub mod names {
    #![allow(missing_docs, reason = "the names are the documentation")]
    pub const PEDICLE: [&str; 4] = ["in the body", "isthmus", "behind the isthmus", "at the pillar"];
    pub const SUPERIOR: [&str; 5] =
        ["root", "foot of the facet", "middle of the facet", "head of the facet", "ridge"];
    pub const PILLAR: [&str; 7] = [
        "behind the pedicle",
        "upper pars",
        "pars",
        "root of the inferior process",
        "head of its facet",
        "middle of its facet",
        "foot of its facet",
    ];
    pub const LAMINA: [&str; 4] = ["at the pillar", "outer half", "inner half", "midline"];
    pub const TRANSVERSE: [&str; 5] = ["root", "neck", "middle", "outer part", "end"];
    pub const SPINOUS: [&str; 6] = ["between the laminae", "root", "neck", "middle", "hatchet", "back edge"];
}

/// Wide directions of the parts' sections before their turn, left side: [left, back, up].
pub mod wide {
    #![allow(missing_docs, reason = "the names are the documentation")]
    pub const PEDICLE: [f64; 3] = [0.0, 0.0, 1.0];
    /// Along the facet.
    pub const SUPERIOR: [f64; 3] = [0.6, 0.8, 0.0];
    pub const PILLAR: [f64; 3] = [0.9, 0.35, 0.0];
    pub const LAMINA: [f64; 3] = [0.0, 0.0, 1.0];
    pub const TRANSVERSE: [f64; 3] = [0.0, 0.0, 1.0];
    pub const SPINOUS: [f64; 3] = [0.0, 0.0, 1.0];
}
