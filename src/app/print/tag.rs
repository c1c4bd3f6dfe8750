//! The tag for the finished box: one small page to cut out and tie on.

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::job::{link, listing};
use crate::qr::Square;
use crate::questions;
use crate::questions::tag::{self, Tag};

/// The tag; none where no gear is typed.
pub(super) fn page(state: State) -> Option<AnyView> {
    let tag = untrack(|| state.with_source(|source| tag::tag(source, &questions::sheet_of(source))))?;
    Some(
        view! {
            <section class="paper__tag">
                <div class="paper__said">
                    {tag.about.iter().map(|line| view! { <p>{line.clone()}</p> }).collect_view()}
                    <dl>{tag.fitted.iter().map(|(part, what)| view! { <dt>{part.clone()}</dt><dd>{what.clone()}</dd> }).collect_view()}</dl>
                </div>
                {code(&tag)}
                <table><tbody>{tag.gears.iter().map(gear).collect_view()}</tbody></table>
                <p class="paper__by">{format!("{}.{}", listing::when(&device::now(), ""), tag.room_for_oil())}</p>
            </section>
        }
        .into_any(),
    )
}

fn gear([name, teeth, ratio]: &[String; 3]) -> impl IntoView + use<> {
    view! { <tr><th scope="row">{name.clone()}</th><td>{teeth.clone()}</td><td>{ratio.clone()}</td></tr> }
}

/// The link to this box as a code; nothing where it is longer than a code holds.
fn code(tag: &Tag) -> Option<AnyView> {
    let square = Square::of(&format!("{}{}", device::address(), link::short_fragment(&tag.carried)?))?;
    let side = square.side();
    Some(
        view! {
            <svg class="paper__code" viewBox=format!("0 0 {side} {side}") role="img" aria-label="Link to this box"><path d=square.path()/></svg>
        }
        .into_any(),
    )
}
