//! What a reader is shown: views, templates, and the markup made in Rust.

pub mod fair_copy;

pub mod shrink;

pub mod theme;

pub mod view;
