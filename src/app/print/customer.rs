//! The customer's page: job, car, the chosen setup and why, its gears, the shift chart, the speedometer, what to expect, cautions, the
//! offer, and a place to sign.

use leptos::prelude::*;

use super::pictures;
use crate::app::device;
use crate::app::state::State;
use crate::catalogue::money;
use crate::job::listing;
use crate::questions;
use crate::questions::customer::{self, CustomerPage, USUAL_CAUTION};
use crate::questions::quote::{Charge, Offer};
use crate::questions::road::pictures as of;

/// How high the shift chart stands, in CSS pixels, where nothing else asks for room; and the least at which it can be read.
const CHART_HEIGHT: (f64, f64) = (290.0, 150.0);
/// What a line of words takes of that.
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
                {lines("Why", "paper__why", &page.why)}
                {has_figures(&page).then(|| gears(&page))}
                {picture(state, &page)}
                {cautions(&page)}
                {lines("Note", "paper__note", &page.note)}
                {offer(&page.offer)}
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
                {page.setup.clone()}
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

/// Sentences under a heading; nothing where there are none.
fn lines(title: &'static str, class: &'static str, lines: &[String]) -> Option<AnyView> {
    let line = |line: &String| view! { <p>{line.clone()}</p> };
    (!lines.is_empty()).then(|| view! { <div class=class><h3>{title}</h3>{lines.iter().map(line).collect_view()}</div> }.into_any())
}

/// Whether any gear has a figure.
fn has_figures(page: &CustomerPage) -> bool {
    page.gears.iter().any(|line| line.iter().skip(1).any(|cell| cell.bytes().any(|b| b.is_ascii_digit())))
}

/// What is charged, with a total, how long that holds, and where it is signed: never parted by the end of a page.
fn offer(offer: &Offer) -> Option<AnyView> {
    if offer.is_empty() {
        return None;
    }
    let charge = |charge: &Charge| {
        let price = charge.hundredths.map(|price| money::shown(price, &charge.currency));
        view! { <tr><th scope="row">{charge.what.clone()}</th><td>{price}</td></tr> }
    };
    let total = |(sum, currency): &(i64, String)| {
        let label = if offer.totals.as_slice().len() > 1 { format!("Total in {currency}") } else { "Total".to_owned() };
        view! { <tr class="paper__total"><th scope="row">{label}</th><td>{money::shown(*sum, currency)}</td></tr> }
    };
    let valid = (!offer.valid.is_empty()).then(|| view! { <p>"Valid until "{offer.valid.clone()}</p> });
    Some(
        view! {
            <div class="paper__offer">
                <h3>"Quote"</h3>
                <table><tbody>{offer.charges.iter().map(charge).collect_view()}{offer.totals.as_slice().iter().map(total).collect_view()}</tbody></table>
                {valid}
                <div class="paper__sign"><span>"Date"</span><span>"Customer’s signature"</span></div>
            </div>
        }
        .into_any(),
    )
}

/// The shift chart, where there is a gear to draw.
fn picture(state: State, page: &CustomerPage) -> Option<AnyView> {
    let words = state.words.get_untracked();
    has_figures(page).then(|| {
        view! {
            <h3>{words.say("Shift chart")}</h3>
            <div class="paper__picture" inner_html=chart(state, page)></div>
        }
        .into_any()
    })
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
    let lines = page.cautions.iter().chain(&page.why).chain(&page.note).map(|_| ()).chain(page.offer.charges.iter().map(|_| ()));
    let taken = lines.fold(0.0, |taken, ()| taken + CAUTION_HEIGHT);
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
