//! The microphone: asked for when its button is pressed, let go of as soon as the recording ends.

use std::cell::RefCell;

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::decode;
use super::ear::{Doing, Ear};
use crate::app::device;

/// How long is recorded, in seconds: as long as the trial asked for, and no longer than a quiet road lasts.
pub(super) const SECONDS: u32 = 20;
const NONE: &str = "This browser gives the page no microphone. Record with the phone’s own recorder, then open that recording here.";
const REFUSED: &str = "The microphone was refused. Allow it for this page in the browser’s settings, or open a recording instead.";

thread_local! {
    /// What records now.
    static RECORDER: RefCell<Option<web_sys::MediaRecorder>> = const { RefCell::new(None) };
}

/// Begins to record, once the browser lets it.
pub(super) fn record(ear: Ear) {
    let devices = web_sys::window().map(|window| window.navigator()).filter(|navigator| device::has(navigator, "mediaDevices"));
    let asked = devices.and_then(|navigator| navigator.media_devices().ok()).and_then(|devices| {
        let wishes = web_sys::MediaStreamConstraints::new();
        let track = web_sys::MediaTrackConstraints::new();
        // What makes speech clear takes tones away.
        track.set_echo_cancellation_bool(false);
        track.set_noise_suppression_bool(false);
        track.set_auto_gain_control_bool(false);
        wishes.set_audio(&track);
        devices.get_user_media_with_constraints(&wishes).ok()
    });
    let Some(asked) = asked else {
        ear.say(NONE.into());
        return;
    };
    ear.doing.set(Doing::Asking);
    spawn_local(async move {
        match JsFuture::from(asked).await.ok().and_then(|stream| stream.dyn_into::<web_sys::MediaStream>().ok()) {
            // Whoever has left meanwhile, or opened a file, is not recorded.
            Some(stream) if ear.doing.get_untracked() != Doing::Asking => let_go(&stream),
            Some(stream) if begin(ear, &stream).is_none() => {
                let_go(&stream);
                ear.say(NONE.into());
            }
            Some(_) => {}
            None => ear.say(REFUSED.into()),
        }
    });
}

fn begin(ear: Ear, stream: &web_sys::MediaStream) -> Option<()> {
    let recorder = web_sys::MediaRecorder::new_with_media_stream(stream).ok()?;
    let held = stream.clone();
    let done = Closure::once_into_js(move |event: web_sys::BlobEvent| {
        let_go(&held);
        RECORDER.take();
        // Forgotten meanwhile: what was recorded is dropped.
        if let (Doing::Recording(_), Some(blob)) = (ear.doing.get_untracked(), event.data()) {
            decode::read(ear, "the microphone".into(), &blob);
        }
    });
    recorder.set_ondataavailable(Some(done.unchecked_ref()));
    recorder.start().ok()?;
    RECORDER.set(Some(recorder));
    ear.forget();
    ear.doing.set(Doing::Recording(0));
    count(ear, 0);
    Some(())
}

/// Counts the seconds, and stops at the last.
fn count(ear: Ear, seconds: u32) {
    device::after(1_000, move || {
        if ear.doing.try_get_untracked() != Some(Doing::Recording(seconds)) {
            return;
        }
        let next = seconds.saturating_add(1);
        ear.doing.set(Doing::Recording(next));
        if next >= SECONDS { stop() } else { count(ear, next) }
    });
}

/// Ends the recording; what there is of it is read.
pub(super) fn stop() {
    RECORDER.with_borrow(|recorder| {
        if let Some(recorder) = recorder.as_ref().filter(|recorder| recorder.state() != web_sys::RecordingState::Inactive) {
            let _ = recorder.stop();
        }
    });
}

/// Ends the recording and drops it: its question is left.
pub(super) fn give_up(ear: Ear) {
    if matches!(ear.doing.get_untracked(), Doing::Asking | Doing::Recording(_)) {
        ear.doing.set(Doing::Nothing);
    }
    stop();
}

fn let_go(stream: &web_sys::MediaStream) {
    for track in stream.get_tracks() {
        if let Ok(track) = track.dyn_into::<web_sys::MediaStreamTrack>() {
            track.stop();
        }
    }
}
