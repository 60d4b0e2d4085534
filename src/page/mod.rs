//! What a reader is shown: views, templates, and the markup made in Rust. Nothing here computes a
//! recipe's figures; it writes those of the working.

pub mod fair_copy;
pub mod levels;
pub mod shrink;
pub mod theme;
pub mod view;

pub mod leaf;
pub mod reference;

pub mod keeping;
pub mod ledger;

mod batch_picture;
mod label;
mod monograph;
mod timeline;

pub mod cautions_page;
pub mod changes_page;
pub mod children_page;
pub mod company;
pub mod cost;
pub mod day_page;
pub mod figures_page;
pub mod glossary_page;
pub mod pantry_page;

pub mod checks_page;
pub mod exercises;
pub mod lesson;
pub mod linked_data;
pub mod look_up;
pub mod method_page;
pub mod plant;
pub mod recipe;
pub mod recipes_page;
pub mod sheet;
pub mod show;
pub mod sides_page;
mod slate;
pub mod spirits_page;
pub mod tables_page;
pub mod variations;
pub mod wanted;
