//! The customer's page: job, car, the chosen setup, its gears, the shift chart, the speedometer, what to expect, cautions.

use leptos::prelude::*;

use super::pictures;
use crate::app::device;
use crate::app::state::State;
use crate::job::listing;
use crate::questions;
use crate::questions::customer::{self, CustomerPage, USUAL_CAUTION};
use crate::questions::road::pictures as of;

/// How high the shift chart stands, in CSS pixels, where nothing else asks for room; and the least at which it can be read.
const CHART_HEIGHT: (f64, f64) = (290.0, 170.0);
/// What a caution takes of that.
const CAUTION_HEIGHT: f64 = 24.0;

/// The page; none where the job has no setup.
pub(super) fn page(state: State) -> Option<AnyView> {
    let page = untrack(|| state.with_source(|source| customer::page(source, &questions::sheet_of(source))))?;
    Some(
        view! {
            <section class="paper__customer">
                {head(state, &page)}
                <div class="paper__pair">
                    <div>
                        {answers("What is fitted", page.fitted.clone())}
                        {(!page.speedometer.is_empty()).then(|| answers("Speedometer", page.speedometer.clone()))}
                    </div>
                    {answers("What to expect", page.expect.clone())}
                </div>
                {gears(&page)}
                <h3>{state.words.get_untracked().say("Shift chart")}</h3>
                <div class="paper__picture" inner_html=chart(state, &page)></div>
                {cautions(&page)}
                <p class="paper__foot">{state.words.get_untracked().say(USUAL_CAUTION)}</p>
            </section>
        }
        .into_any(),
    )
}

fn head(state: State, page: &CustomerPage) -> AnyView {
    let job = state.job.get_untracked();
    let about = [job.customer, job.car].into_iter().filter(|text| !text.trim().is_empty()).collect::<Vec<_>>().join(" · ");
    view! {
        <header class="paper__head">
            <h1>{job.title}</h1>
            <p class="paper__date">{listing::when(&device::now(), "")}</p>
            <p>{about}</p>
            <p class="paper__setup">
                <span class=format!("badge badge--{}", page.letter.to_ascii_lowercase())>{page.letter.to_string()}</span>
                " Setup "{page.letter.to_string()}": "{page.setup.clone()}
            </p>
        </header>
    }
    .into_any()
}

fn answers(title: &'static str, answers: Vec<(String, String)>) -> AnyView {
    let line = |(question, answer): (String, String)| view! { <tr><th scope="row">{question}</th><td>{answer}</td></tr> };
    view! {
        <div class="paper__answers">
            <h3>{title}</h3>
            <table><tbody>{answers.into_iter().map(line).collect_view()}</tbody></table>
        </div>
    }
    .into_any()
}

fn gears(page: &CustomerPage) -> AnyView {
    let head = |head: String| view! { <th scope="col">{head}</th> };
    let line = |cells: Vec<String>| {
        let cell = |(at, text): (usize, String)| {
            if at == 0 { view! { <th scope="row">{text}</th> }.into_any() } else { view! { <td>{text}</td> }.into_any() }
        };
        view! { <tr>{cells.into_iter().enumerate().map(cell).collect_view()}</tr> }
    };
    view! {
        <table class="paper__gears">
            <thead><tr>{page.heads.clone().into_iter().map(head).collect_view()}</tr></thead>
            <tbody>{page.gears.clone().into_iter().map(line).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

/// The shift chart of the chosen setup alone, lower where there are cautions: the page must hold everything.
fn chart(state: State, page: &CustomerPage) -> String {
    let mut chart = untrack(|| state.with_source(|source| of::shift_chart(source, None)));
    chart.setups.retain(|climb| crate::job::Job::letter(climb.slot) == page.letter);
    let taken = page.cautions.iter().fold(0.0, |taken, _| taken + CAUTION_HEIGHT);
    pictures::drawn_at(&chart, (CHART_HEIGHT.0 - taken).max(CHART_HEIGHT.1)).unwrap_or_default()
}

fn cautions(page: &CustomerPage) -> Option<AnyView> {
    (!page.cautions.is_empty()).then(|| {
        view! {
            <div class="paper__cautions">
                <h3>"Cautions"</h3>
                <ul>{page.cautions.iter().map(|caution| view! { <li>"⚠ "{caution.clone()}</li> }).collect_view()}</ul>
            </div>
        }
        .into_any()
    })
}
