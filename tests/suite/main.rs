//! The one integration-test program. A comment above each module says what belongs there.

// How the repository is kept: layers, outside crates, file lengths, what the program may not call.
mod tidy;

// Helpers the other modules share: the repository's root, a fresh folder, files in order.
mod kit;

// What an author is told about every fault, where, and in which words; bad input never panics.
mod faults;
