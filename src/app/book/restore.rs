//! A backup beside the book: what is new, different or the same, and nothing written before it is confirmed.

use leptos::prelude::*;

use crate::app::device;
use crate::app::keep::{Kept, records, store};
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::job::backup::{Meeting, RestorePlan, Standing, Take};
use crate::job::listing;

/// The plan of a restore, where one is being made.
#[component]
pub(super) fn Restore(plan: RwSignal<Option<RestorePlan>>) -> impl IntoView {
    move || {
        plan.with(Option::is_some).then(|| {
            let refused = plan.with_untracked(|plan| plan.as_ref().map(|plan| plan.refused.clone()).unwrap_or_default());
            let many = plan.with_untracked(|plan| plan.as_ref().map_or(0, |plan| plan.meetings.len()));
            view! {
                <div class="restore" role="group" aria-label="Restore from a backup" id="restore">
                    <h3>"Restore from a backup"</h3>
                    <p>{move || plan.with(|plan| plan.as_ref().map(summary))}</p>
                    {refused.into_iter().map(|says| view! { <p class="restore__refused">{says}</p> }).collect_view()}
                    <ul class="restore__list">{(0..many).map(|at| view! { <MeetingRow plan at/> }).collect_view()}</ul>
                    <RestoreActs plan/>
                </div>
            }
        })
    }
}

fn summary(plan: &RestorePlan) -> String {
    let many = |standing| plan.many(standing);
    format!(
        "The file holds {} jobs: {} new here, {} different from what is kept here, {} the same; {} of its catalogue entries are new here or say something else, and are added beside yours. Nothing is written yet.",
        plan.meetings.len(),
        many(Standing::New),
        many(Standing::Different),
        many(Standing::Same),
        entries(plan)
    )
}

/// How many catalogue entries the file adds.
fn entries(plan: &RestorePlan) -> usize {
    plan.catalogue.as_ref().map_or(0, |(_, added)| *added)
}

#[component]
fn MeetingRow(plan: RwSignal<Option<RestorePlan>>, at: usize) -> impl IntoView {
    let meeting = plan.with_untracked(|plan| plan.as_ref().and_then(|plan| plan.meetings.get(at)).cloned());
    meeting.map(|meeting| {
        let is_different = meeting.standing == Standing::Different;
        view! {
            <li>
                <span class="job__title">{meeting.theirs.job.title.clone()}</span>
                <span class="words">{standing_words(&meeting)}</span>
                {is_different.then(|| view! { <TakeChoice plan at title=meeting.theirs.job.title.clone()/> })}
            </li>
        }
    })
}

fn standing_words(meeting: &Meeting) -> String {
    let now = device::now();
    let day = |time: &str| listing::when(time, &now);
    match (meeting.standing, &meeting.ours) {
        (Standing::Different, Some((ours, _))) => {
            format!("different: here changed {}, in the file {}", day(ours), day(&meeting.theirs.head.changed))
        }
        (Standing::Same, _) => "the same: stays as it is".into(),
        _ => format!("new, changed {}", day(&meeting.theirs.head.changed)),
    }
}

#[component]
fn TakeChoice(plan: RwSignal<Option<RestorePlan>>, at: usize, title: String) -> impl IntoView {
    let option = |(at, one): (usize, Take)| view! { <option value=at.to_string()>{one.words()}</option> };
    let choose = move |event| {
        let chosen = event_target_value(&event).parse().ok().and_then(|at: usize| Take::ALL.get(at).copied()).unwrap_or_default();
        plan.update(|plan| {
            if let Some(meeting) = plan.as_mut().and_then(|plan| plan.meetings.get_mut(at)) {
                meeting.take = chosen;
            }
        });
    };
    view! {
        <select class="select" aria-label=format!("What to do with {title}") on:change=choose>
            {Take::ALL.into_iter().enumerate().map(option).collect_view()}
        </select>
    }
}

#[component]
fn RestoreActs(plan: RwSignal<Option<RestorePlan>>) -> impl IntoView {
    let state = State::here();
    let many = move || plan.with(|plan| plan.as_ref().map_or((0, 0), |plan| (plan.writes(device::fresh_id).len(), entries(plan))));
    let words = move || match many() {
        (0, 0) => "Nothing to write".to_owned(),
        (jobs, 0) => format!("Write {}", jobs_words(jobs)),
        (0, entries) => format!("Write {entries} catalogue entries"),
        (jobs, entries) => format!("Write {} and {entries} catalogue entries", jobs_words(jobs)),
    };
    view! {
        <div class="panel__acts">
            <button type="button" class="btn" id="restore-write" disabled=move || many() == (0, 0) on:click=move |_| write(state, plan)>{words}</button>
            <button type="button" class="btn" on:click=move |_| plan.set(None)>"Cancel"</button>
        </div>
    }
}

fn jobs_words(many: usize) -> String {
    if many == 1 { "1 job".into() } else { format!("{many} jobs") }
}

/// Writes what was confirmed, all of it or nothing.
fn write(state: State, plan: RwSignal<Option<RestorePlan>>) {
    let Some(confirmed) = plan.get_untracked() else { return };
    plan.set(None);
    let writes = confirmed.writes(device::fresh_id);
    leptos::task::spawn_local(async move {
        writes.iter().for_each(records::write);
        if store::settled().await.is_err() {
            store::take_back(&writes.iter().flat_map(|record| records::keys(&record.head.id)).collect::<Vec<_>>());
            state.tell(Notice::caution(
                "Nothing was restored: the store of this device has no room. Delete jobs you no longer need, then restore again.",
            ));
            return;
        }
        if let Some((theirs, _)) = confirmed.catalogue {
            state.shop.catalogue.update(|here| *here = here.joined(&theirs).0);
        }
        let open = state.desk.head.with_untracked(|head| head.id.clone());
        let many = writes.len();
        if let Some(record) = writes.into_iter().find(|record| record.head.id == open) {
            state.lay_out(record, Kept::Safe);
        }
        state.tell(Notice::plain(format!("{} restored from the backup.", jobs_words(many))));
        state.desk.say_book_changed();
    });
}
