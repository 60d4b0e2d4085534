//! (to be written)
pub mod view;
