//! The door of `cargo xtask look`.

use std::process::ExitCode;

use xtask::options::Options;

fn main() -> ExitCode {
    let given = std::env::args().skip(1).collect();
    let taken = Options::parse(given, &[], &["--only"]).and_then(|options| browser_tests::look::take(options.value("--only")));
    match taken {
        Ok(folder) => {
            println!("The pictures are in {}", folder.display());
            ExitCode::SUCCESS
        }
        Err(problem) => {
            eprintln!("\nlook: {problem:#}");
            ExitCode::FAILURE
        }
    }
}
