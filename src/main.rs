//! The app's door: in the browser it mounts the sheet, elsewhere it says how to start it, and prints a job file's figures.

#[cfg(target_arch = "wasm32")]
fn main() {
    layshaft::app::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    let mut given = std::env::args().skip(1);
    if let (Some("figures"), Some(file)) = (given.next().as_deref(), given.next()) {
        return figures(&file, given.any(|option| option == "--strict"));
    }
    println!("Layshaft runs in the browser: `cargo xtask serve` builds it and names the page to open.");
    println!("`cargo xtask figures FILE` prints every figure of a job file as JSON.");
    std::process::ExitCode::SUCCESS
}

/// Prints every figure of a job file's sheet and every problem of its fields as JSON, or says what is wrong with the file. With `strict`
/// a problem is a failure.
#[cfg(not(target_arch = "wasm32"))]
fn figures(file: &str, strict: bool) -> std::process::ExitCode {
    let read = std::fs::read_to_string(file).map_err(|why| format!("{file} cannot be read: {why}"));
    match read.and_then(|text| layshaft::questions::figures_of_file(&text)) {
        Ok(figures) => {
            println!("{}", figures.json);
            if strict && !figures.is_sound { std::process::ExitCode::FAILURE } else { std::process::ExitCode::SUCCESS }
        }
        Err(why) => {
            eprintln!("{why}");
            std::process::ExitCode::FAILURE
        }
    }
}
