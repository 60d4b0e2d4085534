//! (to be written)

pub mod fair_copy;

pub mod shrink;

pub mod theme;
