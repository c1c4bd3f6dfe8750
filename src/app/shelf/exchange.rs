//! A shelf handed to another shop as a file, and one of another shop beside one's own: what differs stands side by side, and nothing is
//! written before it is told to.

use leptos::prelude::*;

use super::Desk;
use super::file::{Plan, Planned, list};
use crate::app::device;
use crate::app::notices::{Act, Notice};
use crate::app::state::State;
use crate::catalogue::exchange::{self, Exchange, Meeting, Take};
use crate::catalogue::{Catalogue, Column, Entry};
use crate::job::incoming;
use crate::problem::capital;
use crate::sheet::catalogue::{counted, differing, told};

/// Saves the shop's own parts for another shop, under the name that stands on its paper.
pub(super) fn save(state: State) {
    let shop = state.shop.letterhead.with_untracked(|head| head.trim().lines().next().unwrap_or_default().to_owned());
    let (text, left) = state.shop.catalogue.with_untracked(|catalogue| exchange::to_text(catalogue, &shop, &device::now()));
    device::save_file(&incoming::file_name(&format!("shelf of {shop}"), "json"), "application/json", &text);
    let name = if shop.is_empty() { "It names no shop: type yours under Print, then save it again. " } else { "" };
    let left = match left {
        0 => String::new(),
        1 => "1 part that is not counted to the end was left out. ".into(),
        left => format!("{left} parts that are not counted to the end were left out. "),
    };
    state.tell(Notice::plain(format!("{left}{name}The file holds no prices, quantities or places.")));
}

/// What another shop's shelf would do here.
pub(super) fn report(desk: Desk, planned: Planned, plan: Exchange) -> impl IntoView {
    let state = State::here();
    let sentence = format!("{}. Nothing is written yet.", capital(&plan.sentence()));
    let takes = RwSignal::new(vec![Take::default(); plan.meetings.len()]);
    let lists = [("Cannot be used", plan.refused.clone()), ("New", plan.new.iter().map(|entry| new(state, entry)).collect())];
    let from = plan.from.clone();
    let meetings = plan.meetings.iter().enumerate().map(|(at, meeting)| side_by_side(state, takes, at, meeting, &from)).collect_view();
    let has_meetings = !plan.meetings.is_empty();
    let plan = StoredValue::new(plan);
    let many = move || takes.with(|takes| plan.with_value(|plan| plan.writes(takes)));
    let take = move |_| {
        let before = state.shop.catalogue.get_untracked();
        let (after, from) = plan.with_value(|plan| (takes.with_untracked(|takes| before.exchanged(plan, takes)), plan.from.clone()));
        let many = untrack(many);
        planned.set(None);
        desk.sought.set(String::new());
        put_on(
            state,
            before,
            after,
            &format!("{} on your shelf, from {from}.", if many == 1 { "1 part is".to_owned() } else { format!("{many} parts are") }),
        );
        device::focus("shelf-search");
    };
    view! {
        <div class="notice" id="shelf-report" role="group" aria-label="What the file would do">
            <p role="status">{sentence}</p>
            {has_meetings.then(|| view! { <h3 class="shelf__sort">"Different"</h3><ul class="shelf__report meets">{meetings}</ul> })}
            {lists.into_iter().map(|(title, lines)| list(state, title, lines.into_iter().map(|line| (None, line)).collect())).collect_view()}
            <div class="notice__acts">
                <button type="button" class="btn" id="shelf-take" disabled=move || many() == 0 on:click=take>"Import"</button>
                <button type="button" class="btn" on:click=move |_| planned.set(None::<Plan>)>"Cancel"</button>
            </div>
        </div>
    }
}

/// Puts what came in onto the shelf, and offers the way back.
pub(super) fn put_on(state: State, before: Catalogue, after: Catalogue, says: &str) {
    state.shop.catalogue.set(after.clone());
    state.tell_done(Notice::plain(state.say(says)), Act::Reshelve(Box::new((before, after))));
}

/// A part that is new here, and who signs for its counts.
fn new(state: State, entry: &Entry) -> String {
    let told = told(entry, state.job.with_untracked(|job| job.units));
    format!("“{}”, {}{}", told.name, told.figures.first().cloned().unwrap_or_default(), signed(entry))
}

/// Who signs for the counts of a part that has some.
fn signed(entry: &Entry) -> String {
    let has_counts = entry.kind.columns().any(|column| column == Column::CountedBy);
    match counted(entry) {
        Some(counted) => format!(" · ✓ {counted}"),
        None if has_counts => " · nobody signed for the count".into(),
        None => String::new(),
    }
}

/// Mine and theirs where they differ, and what is to be done.
fn side_by_side(state: State, takes: RwSignal<Vec<Take>>, at: usize, meeting: &Meeting, from: &str) -> impl IntoView + use<> {
    let taken = meeting.taken();
    let origin = Column::Origin.about().word;
    let row = |[word, mine, theirs]: [&str; 3]| {
        let [mine, theirs] = [mine, theirs].map(|text| if text.is_empty() { "–".to_owned() } else { text.to_owned() });
        view! { <tr><th scope="row">{state.say(word)}</th><td class="num">{mine}</td><td class="num">{theirs}</td></tr> }
    };
    let rows = differing(&meeting.mine, &taken).into_iter().filter(|[word, ..]| *word != origin).map(row).collect_view();
    let choose = move |event| {
        let chosen = event_target_value(&event).parse().ok().and_then(|at: usize| Take::ALL.get(at).copied()).unwrap_or_default();
        takes.update(|takes| {
            if let Some(take) = takes.get_mut(at) {
                *take = chosen;
            }
        });
    };
    let option = |(at, take): (usize, Take)| view! { <option value=at.to_string()>{take.words()}</option> };
    let name = meeting.mine.title().to_owned();
    view! {
        <li>
            <table class="meets__sides">
                <thead><tr><th scope="col">{name.clone()}</th><th scope="col">"mine"</th><th scope="col">{from.to_owned()}</th></tr></thead>
                <tbody>{rows}</tbody>
            </table>
            <select class="select" aria-label=format!("What to do with {name}") on:change=choose>{Take::ALL.into_iter().enumerate().map(option).collect_view()}</select>
            <span class="words">{signed(&meeting.theirs).trim_start_matches(" · ").to_owned()}</span>
        </li>
    }
}
