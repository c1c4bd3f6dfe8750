//! What is pressed to listen: record, open, stop, forget; how far it is, and what is in the way.

use leptos::html::Input;
use leptos::prelude::*;

use super::ear::{Doing, Ear};
use super::{decode, microphone, tone};
use crate::app::state::State;
use crate::sliced::Progress;

/// The buttons and what is said beside them.
pub(in crate::app) fn view() -> AnyView {
    let state = State::here();
    let ear = Ear::here();
    let chosen = NodeRef::<Input>::new();
    on_cleanup(move || {
        microphone::give_up(ear);
        ear.player.plays.set(None);
    });
    let open = move |_| {
        if let Some(input) = chosen.get_untracked() {
            input.click();
        }
    };
    let take = move |_| {
        let Some(input) = chosen.get_untracked() else { return };
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            decode::read(ear, file.name(), &file);
        }
        // The same file can be chosen again.
        input.set_value("");
    };
    let is_recording = Memo::new(move |_| ear.doing.with(|doing| matches!(doing, Doing::Asking | Doing::Recording(_))));
    let is_running = Memo::new(move |_| running(ear).is_some());
    let record = move |_| if is_recording.get_untracked() { microphone::stop() } else { microphone::record(ear) };
    let words =
        move || if is_recording.get() { "■ Stop recording".to_owned() } else { format!("● Record {} seconds", microphone::SECONDS) };
    view! {
        <div class="listen">
            <div class="listen__acts">
                <button type="button" class="btn listen__record" id="listen-record" on:click=record>{words}</button>
                <button type="button" class="btn" id="listen-open" on:click=open>"Open a recording"</button>
                <input type="file" id="listen-file" hidden accept="audio/*,video/*" aria-label="Recording" node_ref=chosen on:change=take/>
            </div>
            <p class="listen__says" id="listen-says" role="status">{move || state.say(&says(ear))}</p>
            <Show when=move || is_running.get()>
                <div class="listen__progress">
                    <progress max="1" aria-label="How far it has listened" prop:value=move || running(ear).map_or(1.0, Progress::share)></progress>
                    <button type="button" class="btn btn--small" on:click=move |_| ear.forget()>"Stop"</button>
                </div>
            </Show>
            <p class="words">"20 s at a steady speed, or a slow rise. A passenger holds the phone. Nothing is sent; nothing is kept unless you press it."</p>
            {tone::view(ear)}
        </div>
    }
    .into_any()
}

/// How far the work is; none while nothing is done.
fn running(ear: Ear) -> Option<Progress> {
    if ear.doing.with(|doing| *doing == Doing::Reading) {
        return Some(Progress { done: 0, of: 1, is_finished: false });
    }
    let has_clip = ear.clip.with(Option::is_some);
    ear.intake.progress.get().or_else(|| ear.listening.progress.get().filter(|_| has_clip && ear.asked.with(Result::is_ok)))
}

fn says(ear: Ear) -> String {
    match ear.doing.get() {
        Doing::Asking => return "The browser asks for the microphone.".into(),
        Doing::Recording(seconds) => return format!("Recording: {seconds} of {} s", microphone::SECONDS),
        Doing::Reading => return "Reading the recording …".into(),
        Doing::Refused(why) => return why,
        Doing::Nothing => {}
    }
    if ear.intake.progress.with(Option::is_some) {
        return "Reading the recording …".into();
    }
    let Some(clip) = ear.clip.get() else { return String::new() };
    if let Err(missing) = ear.asked.get() {
        return missing;
    }
    if ear.listening.progress.with(Option::is_some) {
        return "Listening …".into();
    }
    let name = ear.name.get();
    format!("Heard {:.0} s from {name}.", clip.seconds())
}
