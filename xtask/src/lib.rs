//! The project's own commands, as a library so that the browser tests build and serve in the same way.
//!
//! - [`toolchain`]: what compiles for the browser on this machine, installed where it is missing
//! - [`build`]: from sources to a folder any static host can serve
//! - [`serve`]: that folder over HTTP, with the headers a host should send
//! - [`check`]: the one command that says whether all is well
//! - [`mod@bench`]: how fast, beside what a person would otherwise use
//! - [`tidy`]: the rules of the house that no compiler checks
//!
//! Beneath them: [`shell`] runs other programs, [`say`] tells what is going on, [`debian`] installs packages.

pub mod bench;
pub mod build;
pub mod check;
pub mod debian;
pub mod options;
pub mod say;
pub mod serve;
pub mod shell;
pub mod tidy;
pub mod toolchain;
