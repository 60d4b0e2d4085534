//! (to be written)

pub mod levels;

pub mod view;
