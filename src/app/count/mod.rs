//! The teeth of a gear counted in a picture: taken or opened, a circle put on the tips, every tooth marked, the number taken.
//!
//! [`eye`] is what is looked at and what has come of it, [`board`] the picture with its circle and marks, [`picture`] reads a file. Nothing
//! is sent, and of the picture nothing is kept.

mod board;
mod eye;
mod picture;

use leptos::html::Input;
use leptos::prelude::*;

use crate::app::state::State;
use crate::job::{BenchField, Field, JobField, MeasureField};
use eye::Eye;

const TEETH: Field = Field::Job(JobField::Bench(BenchField::Measure(MeasureField::Teeth)));

/// What is pressed to count, the picture, and what it comes to.
pub fn view() -> AnyView {
    let state = State::here();
    let eye = Eye::new();
    let (camera, files) = (NodeRef::<Input>::new(), NodeRef::<Input>::new());
    let open = move |input: NodeRef<Input>, is_turned: bool| {
        if let Some(input) = input.get_untracked() {
            eye.is_turned.set(is_turned);
            input.click();
        }
    };
    let read = move |input: NodeRef<Input>| {
        let Some(input) = input.get_untracked() else { return };
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            picture::read(eye, file);
        }
        // The same file can be chosen again.
        input.set_value("");
    };
    let has_picture = Memo::new(move |_| eye.picture.with(Option::is_some));
    view! {
        <div class="count">
            <div class="count__acts">
                <button type="button" class="btn" id="count-camera" on:click=move |_| open(camera, false)>"Photograph the gear"</button>
                <button type="button" class="btn" id="count-open" on:click=move |_| open(files, false)>"Count the teeth in a picture"</button>
                <input type="file" hidden accept="image/*" capture="environment" aria-label="Photograph of the gear" node_ref=camera on:change=move |_| read(camera)/>
                <input type="file" id="count-file" hidden accept="image/*" aria-label="Picture of the gear" node_ref=files on:change=move |_| read(files)/>
            </div>
            <p class="words">"Lay the gear face up on plain paper, by a window, no flash. Hold the phone straight above it, three gear diameters away. Nothing is sent, and the picture is not kept."</p>
            <Show when=move || has_picture.get()>{board::view(eye)}</Show>
            <p class="count__says" id="count-says" role="status">{move || state.say(&eye.says())}</p>
            <Show when=move || eye.shown.get().is_some()>{number(state, eye)}</Show>
            <Show when=move || has_picture.get()>
                <div class="count__acts">
                    <Show when=move || eye.shown.get().is_some()>
                        <button type="button" class="btn" id="count-turned" on:click=move |_| open(files, true)>"Gear turned: a second picture"</button>
                    </Show>
                    <button type="button" class="btn" id="count-forget" on:click=move |_| eye.forget()>"Close the picture"</button>
                </div>
            </Show>
        </div>
    }
    .into_any()
}

/// The number with minus and plus beside it, and the way into its field.
fn number(state: State, eye: Eye) -> impl IntoView {
    let shown = move || eye.shown.get().map_or_else(String::new, |teeth| teeth.to_string());
    let take = move |_| {
        if let Some(teeth) = eye.shown.get_untracked() {
            state.type_text(TEETH, teeth.to_string());
            state.leave_field();
        }
    };
    view! {
        <div class="count__number" role="group" aria-label="Teeth counted">
            <button type="button" class="btn" id="count-less" aria-label="one tooth fewer" on:click=move |_| eye.step(false)>"−"</button>
            <output class="num" id="count-number">{shown}</output>
            <button type="button" class="btn" id="count-more" aria-label="one tooth more" on:click=move |_| eye.step(true)>"+"</button>
            <button type="button" class="btn count__take" id="count-take" on:click=take>{move || format!("Take {} teeth", shown())}</button>
        </div>
    }
}
