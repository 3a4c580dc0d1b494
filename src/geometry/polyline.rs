//! Polylines on the detector: chaining and clipping.
