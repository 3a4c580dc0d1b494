//! The lumbar spine from published numbers: named parts as signed distance fields, stacked into a column.

pub mod names;
