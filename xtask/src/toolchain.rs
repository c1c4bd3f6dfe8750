//! What compiles for the browser on this machine.
//!
//! Two ways: rustup's wasm32 target, or Debian's second Rust (`rustc-web`), which builds the standard library too.
//! What is missing is installed where that can be done; where it cannot, the error says what to type.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use anyhow::{Result, bail};

use crate::{debian, say, shell};

/// The target every browser runs.
pub const TARGET: &str = "wasm32-unknown-unknown";

const DEBIAN_PACKAGES: [&str; 5] = ["rustc-web", "cargo-web", "rust-web-src", "rust-web-llvm", "lld-22"];
const DEBIAN_CLIPPY: [&str; 1] = ["rust-web-clippy"];
/// A network that answers needs some seconds; one that does not must not hold up the other way.
const RUSTUP_PATIENCE: Duration = Duration::from_secs(90);

/// A way to compile for the browser.
#[derive(Debug, Clone)]
pub enum Toolchain {
    /// The compiler cargo uses anyway has the target's standard library.
    Native,
    /// Debian's second Rust, with the linker to use.
    Debian {
        /// A `wasm-ld` that is new enough.
        linker: PathBuf,
    },
}

impl Toolchain {
    /// Finds a way, installing what is missing.
    ///
    /// # Errors
    /// Neither way can be had; the error says what to install.
    pub fn ready() -> Result<Self> {
        if native_has_target() {
            return Ok(Self::Native);
        }
        if let Some(toolchain) = debian_installed() {
            return Ok(toolchain);
        }
        if rustup_adds_target() && native_has_target() {
            return Ok(Self::Native);
        }
        if debian::can_install() {
            debian::install(&debian::missing(&DEBIAN_PACKAGES))?;
            if let Some(toolchain) = debian_installed() {
                return Ok(toolchain);
            }
        }
        bail!(
            "Rust's standard library for {TARGET} is missing and could not be installed from here. Type `rustup target add {TARGET}`, \
             or on Debian 12, as root, `{}`; then give this command again.",
            debian::by_hand(&DEBIAN_PACKAGES)
        )
    }

    /// Makes sure that the lints can be run for the browser code too.
    ///
    /// # Errors
    /// Clippy is missing and cannot be installed; the error says what to type.
    pub fn ready_for_clippy(&self) -> Result<()> {
        if matches!(self, Self::Native) || debian::missing(&DEBIAN_CLIPPY).is_empty() {
            return Ok(());
        }
        if debian::can_install() {
            return debian::install(&DEBIAN_CLIPPY);
        }
        bail!("the lints for the browser code need Debian's clippy. As root, type `{}`.", debian::by_hand(&DEBIAN_CLIPPY))
    }

    /// A cargo command that compiles for the browser, with a target folder of its own so that two compilers do not share one.
    pub fn cargo(&self, subcommand: &str) -> Command {
        let mut command = match self {
            Self::Native => shell::cargo(subcommand),
            Self::Debian { linker } => debian_cargo(subcommand, linker),
        };
        command.env("CARGO_TARGET_DIR", shell::target().join("web")).args(["--target", TARGET]);
        command
    }
}

fn debian_cargo(subcommand: &str, linker: &Path) -> Command {
    let mut command = Command::new("/usr/bin/cargo");
    command.arg(subcommand).current_dir(shell::project());
    shell::forget_outer_cargo(&mut command);
    for inherited in ["RUSTUP_TOOLCHAIN", "RUSTUP_HOME", "CARGO", "RUSTC_WRAPPER", "LD_LIBRARY_PATH"] {
        command.env_remove(inherited);
    }
    let path = std::env::var("PATH").unwrap_or_default();
    command
        .env("PATH", format!("/usr/bin:{path}"))
        .env("RUSTC", "/usr/bin/rustc")
        .env("RUSTC_BOOTSTRAP", "1")
        .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker);
    command
}

/// Asks the compiler where the target's libraries would be, and looks whether they are.
fn native_has_target() -> bool {
    let mut rustc = Command::new("rustc");
    rustc.args(["--print", "target-libdir", "--target", TARGET]).current_dir(shell::project());
    let Some(folder) = shell::output(&mut rustc) else { return false };
    let Ok(files) = std::fs::read_dir(folder) else { return false };
    files.flatten().any(|file| file.file_name().to_string_lossy().starts_with("libstd-"))
}

fn rustup_adds_target() -> bool {
    if shell::output(Command::new("rustup").arg("--version")).is_none() {
        return false;
    }
    say::step(&format!("Ask rustup for the target {TARGET}"), || {
        let added = shell::succeeds_within(Command::new("rustup").args(["target", "add", TARGET]), RUSTUP_PATIENCE);
        println!("  {}", if added { "rustup has it" } else { "rustup cannot fetch it here; trying Debian's packages" });
        Ok(added)
    })
    .unwrap_or(false)
}

fn debian_installed() -> Option<Toolchain> {
    if !debian::missing(&DEBIAN_PACKAGES).is_empty() {
        return None;
    }
    Some(Toolchain::Debian { linker: newest_linker()? })
}

/// Several LLVM versions may stand side by side; the oldest ones cannot link what a current compiler writes.
fn newest_linker() -> Option<PathBuf> {
    let version = |name: &str| name.strip_prefix("llvm-").and_then(|v| v.parse::<u32>().ok());
    let folders = std::fs::read_dir("/usr/lib").ok()?.flatten();
    let linkers = folders.filter_map(|folder| Some((version(&folder.file_name().to_string_lossy())?, folder.path().join("bin/wasm-ld"))));
    linkers.filter(|(_, linker)| linker.exists()).max().map(|(_, linker)| linker)
}
