//! What must be decided: a job that came with a link, a job that another tab changed, a store that is full, a version that waits.

use leptos::prelude::*;

use crate::app::device;
use crate::app::keep::{Kept, autosave};
use crate::app::state::State;

/// Every banner that stands now.
pub(in crate::app) fn view() -> AnyView {
    let state = State::here();
    let kept = Memo::new(move |_| state.desk.kept.get());
    view! {
        <div aria-live="polite">
            {move || match kept.get() {
                Kept::Linked => view! { <Linked/> }.into_any(),
                Kept::Held => view! { <Held/> }.into_any(),
                Kept::Full => view! { <Full/> }.into_any(),
                Kept::Safe | Kept::Soon | Kept::Blocked => ().into_any(),
            }}
            <Update/>
        </div>
    }
    .into_any()
}

#[component]
fn Linked() -> impl IntoView {
    let state = State::here();
    view! {
        <div class="notice" id="linked">
            <p>"This job came with a link and is only shown: nothing of it is kept on this device. Keep a copy to work on it; the first change you make keeps one too."</p>
            <div class="notice__acts">
                <button type="button" class="btn" id="keep-copy" on:click=move |_| state.keep_copy()>"Keep a copy"</button>
                <button type="button" class="btn" id="leave-link" on:click=move |_| state.leave_link()>"Back to my jobs"</button>
            </div>
        </div>
    }
}

#[component]
fn Held() -> impl IntoView {
    let state = State::here();
    let is_there = autosave::is_kept_elsewhere(state);
    let says = if is_there {
        "This job was changed in another tab. What you type here is not kept until you decide which one stays."
    } else {
        "This job was deleted in another tab. What stands here is not kept until you decide."
    };
    view! {
        <div class="notice notice--caution" id="held">
            <p>{says}</p>
            <div class="notice__acts">
                {is_there.then(|| view! {
                    <button type="button" class="btn" id="load-theirs" on:click=move |_| autosave::load_theirs(state)>"Load theirs"</button>
                })}
                <button type="button" class="btn" id="keep-mine" on:click=move |_| autosave::keep_mine(state)>"Keep mine"</button>
                {is_there.then(|| view! {
                    <button type="button" class="btn" id="keep-both" on:click=move |_| autosave::keep_both(state)>"Keep both"</button>
                })}
            </div>
        </div>
    }
}

#[component]
fn Full() -> impl IntoView {
    let state = State::here();
    view! {
        <div class="notice notice--caution" id="full">
            <p>"The store of this device is full: your last changes are on this page only, the job as it was before them is still kept. Save the job as a file, then delete jobs you no longer need."</p>
            <div class="notice__acts">
                <button type="button" class="btn" on:click=move |_| state.save_as_file()>"Save the job as a file"</button>
                <button type="button" class="btn" id="try-again" on:click=move |_| autosave::write(state)>"Try again"</button>
            </div>
        </div>
    }
}

/// A newer version waits; it takes over when asked to, with everything typed written first.
#[component]
fn Update() -> impl IntoView {
    let state = State::here();
    let is_waiting = RwSignal::new(device::root().is_some_and(|root| root.has_attribute("data-update")));
    device::on_window("layshaft:update", move |_: web_sys::Event| is_waiting.set(true));
    let take_over = move |_| {
        autosave::flush(state);
        if state.job.with_untracked(|job| state.desk.is_unkept(job)) {
            state.tell(crate::app::notices::Notice::store_blocked());
        } else {
            device::announce("layshaft:take-over");
        }
    };
    move || {
        is_waiting.get().then(|| {
            view! {
                <div class="notice" id="update">
                    <p>"A new version of Layshaft waits. Your job is written first and opens again in it."</p>
                    <div class="notice__acts">
                        <button type="button" class="btn" id="take-over" on:click=take_over>"Take the new version"</button>
                        <button type="button" class="btn" on:click=move |_| is_waiting.set(false)>"Later"</button>
                    </div>
                </div>
            }
        })
    }
}
