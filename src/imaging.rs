//! What the C-arm sees.
