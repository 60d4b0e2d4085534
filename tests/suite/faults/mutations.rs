//! Mutations.
