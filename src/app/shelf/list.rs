//! The entries that are found, the shop's own first; no more of them on the page than are asked for.

use leptos::prelude::*;

use super::{Desk, row};
use crate::app::state::State;
use crate::catalogue::search::Found;
use crate::catalogue::{Entry, PartKind};
use crate::units::number;

/// How many more are shown when they are asked for.
const MORE: usize = 60;

/// The entries that fit what is sought.
pub(super) fn table(desk: Desk) -> impl IntoView {
    let state = State::here();
    let found = Memo::new(move |_| {
        let kept = desk.editing.with(|editing| editing.as_ref().and_then(|editing| editing.id.clone()));
        let (kind, most) = (desk.kind.get(), desk.shown.get());
        state.shop.offered().answering(kind, &desk.query(), most, kept.as_deref())
    });
    let names = move || found.with(|found| found.entries.iter().map(|entry| (entry.kind, entry.id.clone())).collect::<Vec<_>>());
    let one = move |(kind, id): (PartKind, String)| {
        let entry = Memo::new(move |before: Option<&Option<Entry>>| {
            let now = found.with(|found| found.entries.iter().find(|entry| entry.kind == kind && entry.id == id).cloned());
            // A row that is about to leave the list keeps its last entry until it is gone.
            now.or_else(|| before.cloned().flatten())
        });
        row::one(desk, entry)
    };
    let left = move || found.with(|found| found.many.saturating_sub(found.entries.len()));
    view! {
        <p class="words shelf__count" role="status" id="shelf-count">{move || state.say(&count(state, desk, found))}</p>
        <ul class="shelf__list" id="shelf-list"><For each=names key=Clone::clone children=one/></ul>
        <button type="button" class="btn shelf__more" id="shelf-more" hidden=move || left() == 0 on:click=move |_| desk.shown.update(|shown| *shown += MORE)>
            {move || format!("Show more of {} others", left())}
        </button>
    }
}

/// How many are shown of how many, and what was understood of what is sought.
fn count(state: State, desk: Desk, found: Memo<Found>) -> String {
    let kind = desk.kind.get();
    let own = state.shop.catalogue.with(|catalogue| catalogue.own(kind).count());
    #[expect(clippy::cast_precision_loss, reason = "a shelf holds far fewer than 2^52 entries")]
    let shown = |count: usize| number::show(count as f64, 0);
    let understood = desk.query().understood();
    found.with(|found| match (found.many, found.of) {
        (_, 0) if !state.shop.offers_demo() => {
            format!("No {} on your shelf yet. Add one, bring in a CSV file, or turn the demo parts on.", kind.plural())
        }
        (0, _) if understood.is_some() => format!("Nothing on the shelf fits {}.", understood.unwrap_or_default()),
        (0, _) => "Nothing on the shelf fits these words. Try one of them alone, or look under another kind.".into(),
        (many, of) if many == of && understood.is_none() => format!("{} {}, {} of them your own.", shown(of), kind.plural(), shown(own)),
        (many, of) => match understood {
            Some(understood) => format!("{} of {} {} fit: {understood}.", shown(many), shown(of), kind.plural()),
            None => format!("{} of {} {} fit.", shown(many), shown(of), kind.plural()),
        },
    })
}
