//! A backup beside the book: what is new, different or the same, and nothing written before it is confirmed.

use leptos::prelude::*;

use crate::app::device;
use crate::app::keep::{Kept, records, store};
use crate::app::notices::Notice;
use crate::app::photographs::album;
use crate::app::state::State;
use crate::job::backup::{Meeting, RestorePlan, Standing, Take};
use crate::job::listing;
use crate::questions::faults::own;

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
    let many = Memo::new(move |_| plan.with(|plan| plan.as_ref().map(|plan| counts(state, plan)).unwrap_or_default()));
    let words = move || match many.get() {
        [0, 0, 0, 0] => "Nothing to write".to_owned(),
        many => format!("Write {}", counts_words(many)),
    };
    view! {
        <div class="panel__acts">
            <button type="button" class="btn" id="restore-write" disabled=move || many.get() == [0; 4] on:click=move |_| write(state, plan)>{words}</button>
            <button type="button" class="btn" on:click=move |_| plan.set(None)>"Cancel"</button>
        </div>
    }
}

/// How many jobs, catalogue entries, photographs and rows about faults are to be written.
fn counts(state: State, plan: &RestorePlan) -> [usize; 4] {
    let writes = plan.writes_of(device::fresh_id);
    let there = album::names();
    let photographs = plan.photographs_of(&writes);
    let new = there.with(|there| photographs.iter().filter(|photograph| !there.contains(&photograph.name)).count());
    [writes.len(), entries(plan), new, state.shop.faults.with(|ours| own::new_rows(ours, &plan.faults))]
}

fn counts_words(many: [usize; 4]) -> String {
    let words = [
        ("job", "jobs"),
        ("catalogue entry", "catalogue entries"),
        ("photograph", "photographs"),
        ("row about faults", "rows about faults"),
    ];
    let said = many.into_iter().zip(words).filter(|(many, _)| *many > 0);
    let said: Vec<String> = said.map(|(many, (one, more))| format!("{many} {}", if many == 1 { one } else { more })).collect();
    match said.split_last() {
        None => "nothing".to_owned(),
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}

/// Writes what was confirmed, all of it or nothing.
fn write(state: State, plan: RwSignal<Option<RestorePlan>>) {
    let Some(confirmed) = plan.get_untracked() else { return };
    plan.set(None);
    let (writes, many) = (confirmed.writes_of(device::fresh_id), untrack(|| counts(state, &confirmed)));
    let photographs = confirmed.photographs_of(&writes);
    leptos::task::spawn_local(async move {
        for (_, record) in &writes {
            records::write(record);
        }
        if store::settled().await.is_err() {
            store::take_back(&writes.iter().flat_map(|(_, record)| records::keys(&record.head.id)).collect::<Vec<_>>());
            state.tell(Notice::caution(
                "Nothing was restored: the store of this device has no room. Delete jobs you no longer need, then restore again.",
            ));
            return;
        }
        let are_shown = album::restore(photographs).await.is_ok();
        if let Some((theirs, _)) = confirmed.catalogue {
            state.shop.catalogue.update(|here| *here = here.joined(&theirs).0);
        }
        if own::new_rows(&state.shop.faults.get_untracked(), &confirmed.faults) > 0 {
            state.shop.faults.update(|ours| *ours = own::joined(ours, &confirmed.faults));
        }
        let open = state.desk.head.with_untracked(|head| head.id.clone());
        if let Some((_, record)) = writes.into_iter().find(|(_, record)| record.head.id == open) {
            state.lay_out(record, Kept::Safe);
        }
        state.tell(if are_shown {
            Notice::plain(format!("Restored from the backup: {}.", counts_words(many)))
        } else {
            Notice::caution("The backup is restored but for its photographs: the store of this device has no room for them. Delete what you no longer need, then restore again.")
        });
        state.desk.say_book_changed();
    });
}
