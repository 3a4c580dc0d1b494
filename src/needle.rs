//! The needle: what it is made of, how it moves through tissue, what it meets, where its tip is read to be, and what contrast shows.

pub mod aspirate;
pub mod compartment;
pub mod contact;
pub mod contrast;
pub mod device;
pub mod motion;
pub mod reading;
pub mod shaft;
pub mod shape;
