//! The one integration-test program. A comment above each module says what belongs there.

// How the repository is kept: layers, outside crates, file lengths, what the program may not call.
mod tidy;

// Helpers the other modules share: the repository's root, a fresh folder, files in order.
mod kit;

// The program as a teacher runs it: exit codes, streams, what it writes and what it leaves alone.
mod cli;
mod combined;

// The demo: `site` is `content` pressed, and its figures are those the library works out.
mod cost;
mod demo;

// Every page of the demo as a browser reads it: structure, names, links, mathematics, weight.
mod pages;

// What an author is told about every fault, where, and in which words; bad input never panics.
mod faults;

// A small book in memory and recipes worked through the real path, for the two modules below.
mod bench;

// The sums against what is printed elsewhere: units, pharmacopoeias, food tables, class notes, a registry crate.
mod outside;

// Amounts for a wanted result, against what the trade works out on paper.
mod wanted;

// Exercises: versions, answers held back, and every answer of the demo against a sum by hand.
mod exercises;

// The pages' scripts, run by an engine of another hand: formulas to the bit, and what a reader is shown.
mod reader;
mod script;

// The specimens behind the generated tables.
mod specimens;

// The trade's tables and worked examples, every row of every preparation.
mod trade;

// Figures printed elsewhere beside ours, as the site prints them: each agrees, each has its source.
mod checks;

// What holds for every recipe: balances, ranges, growth, rounding, over random recipes.
mod laws;

// Whether it keeps: the trade's table, each rung of the ladder, what would move it, the kitchen's own figures.
mod keeping;

// Cautions and what they hang on: rules, ceilings, people, plants, pantry.
mod cautions;

// Variations by a word, and crossed.
mod varied;

// Turned round on a declared number, measured, and what matters most.
mod aimed;
