//! The host tool.
fn main() {}
