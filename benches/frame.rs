//! Placeholder until the picture exists.
fn main() {}
