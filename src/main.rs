//! The app's door: in the browser it mounts the sheet, elsewhere it says how to start it.

#[cfg(target_arch = "wasm32")]
fn main() {
    layshaft::app::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Layshaft runs in the browser: `cargo xtask serve` builds it and names the page to open.");
}
