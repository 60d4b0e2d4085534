//! Whole folders.
