//! One binary for everything that needs no browser.
mod any_gearbox;
mod laws_gears_speeds;
mod published_gears_trains;
