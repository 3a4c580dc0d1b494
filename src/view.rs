//! How good a view is.
