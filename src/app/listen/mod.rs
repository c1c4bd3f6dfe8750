//! A noise that is listened to: a recording opened or made, what it says, and tones that are played to match it by ear.
//!
//! What is recorded is of the page, not of the job: it lives as long as the page shows the same job, is never written and never sent.
//! [`controls`] stands beside the inputs of the question, [`found`] beside its answer; both look at one [`ear`].

mod controls;
mod decode;
mod ear;
mod found;
mod microphone;
mod player;
mod tone;

pub(super) use controls::view as controls;
pub(super) use found::view as found;
