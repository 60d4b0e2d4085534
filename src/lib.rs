//! Stillroom works an herbal teacher's recipes out in full and presses them into a static site.
//!
//! The modules below stand in reading order: each uses only modules above it
//! (`tests/suite/tidy.rs` holds that). Read [`press`] first: it is the pipeline, call by call.

// Tests may stop at the first surprise.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod bibliography;

pub mod span;

pub mod diagnostic;

pub mod measure;

pub mod calendar;

pub mod people;

pub mod materia;

pub mod formula;

pub mod working;

pub mod batch;

pub mod yaml;

pub mod manuscript;

pub mod claims;

pub mod cited;

pub mod pantry;

pub mod recipe;

pub mod formulary;

pub mod method;

pub mod variation;

pub mod wanted;

pub mod aim;

pub mod compare;

pub mod cost;

pub mod proportion;

pub mod specimens;

pub mod spirits;

pub mod keeping;

pub mod caution;

pub mod exercise;

pub mod reader;

pub mod day;

pub mod checks;

pub mod tables;

pub mod page;

pub mod site;

pub mod press;

pub mod cli;
