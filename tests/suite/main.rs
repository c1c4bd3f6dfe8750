//! One binary for everything that needs no browser.
#![expect(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod any_gearbox;
mod book_laws;
mod catalogue_data;
mod catalogue_laws;
mod charts_demo;
mod charts_demo_more;
mod charts_demo_trains;
mod charts_laws;
mod charts_palette;
mod laws_gears_identify;
mod laws_gears_loads;
mod laws_gears_speeds;
mod laws_motion;
mod laws_speedometer;
mod laws_tyre;
mod link_laws;
mod problems_catalogue;
mod problems_identify;
mod problems_job;
mod problems_mix;
mod problems_motion;
mod problems_tyre;
mod published_gears_geometry;
mod published_gears_loads;
mod published_gears_synchronisers;
mod published_gears_trains;
mod published_motion;
mod published_motion_books;
mod published_motion_forms;
mod published_motion_limits;
mod published_speedometer;
mod published_tyre;
mod published_tyre_rolling;
mod saved;
mod saved_schema;
