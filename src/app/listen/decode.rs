//! Reading a recording: whatever the browser decodes, its channels mixed to one.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

use super::ear::{Doing, Ear};
use crate::questions::noise::recorded::ClipError;

/// Samples a second that recordings are read at: what phones and cameras record, or a little more.
const RATE: f32 = 48_000.0;
/// No larger file is read: two minutes of two channels at 96,000 samples of 24 bits a second are smaller, a film is larger.
pub(super) const LARGEST_BYTES: f64 = 80e6;

/// Reads what was recorded or chosen, and takes it in.
pub(super) fn read(ear: Ear, name: String, blob: &web_sys::Blob) {
    if blob.size() > LARGEST_BYTES {
        ear.say("The file is too large to be listened to. Cut out 20 to 30 s at a steady speed, 2 min at most.".into());
        return;
    }
    ear.doing.set(Doing::Reading);
    let bytes = blob.array_buffer();
    spawn_local(async move {
        let samples = samples(bytes).await;
        // Whoever pressed Stop meanwhile wants none of it.
        if ear.doing.get_untracked() != Doing::Reading {
            return;
        }
        match samples {
            Some(samples) => ear.take(name, samples, f64::from(RATE)),
            None => ear.refuse(&ClipError::NoSound),
        }
    });
}

async fn samples(bytes: js_sys::Promise) -> Option<Vec<f32>> {
    let bytes: js_sys::ArrayBuffer = JsFuture::from(bytes).await.ok()?.dyn_into().ok()?;
    let context = web_sys::OfflineAudioContext::new_with_number_of_channels_and_length_and_sample_rate(1, 1, RATE).ok()?;
    let decoded = context.decode_audio_data(&bytes).ok()?;
    let buffer: web_sys::AudioBuffer = JsFuture::from(decoded).await.ok()?.dyn_into().ok()?;
    let mut channels = (0..buffer.number_of_channels()).filter_map(|channel| buffer.get_channel_data(channel).ok());
    let mut mixed = channels.next()?;
    let mut many = 1.0_f32;
    for channel in channels {
        mixed.iter_mut().zip(channel).for_each(|(sum, sample)| *sum += sample);
        many += 1.0;
    }
    for sample in &mut mixed {
        *sample /= many;
    }
    Some(mixed)
}
