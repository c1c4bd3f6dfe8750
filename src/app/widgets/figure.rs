//! A figure that can be asked how it came about, and the pieces that stand beside it.

use leptos::prelude::*;

use crate::app::state::State;
use crate::job::SetupId;
use crate::sheet::{Figure, Piece, Size, Tone, Verdict};

/// One piece of a line.
pub fn piece(setup: SetupId, piece: &Piece) -> AnyView {
    match piece {
        Piece::Figure(figure) => shown_figure(setup, figure),
        Piece::Words(words) => view! { <span class="words">{words.clone()}</span> }.into_any(),
        Piece::Absent(why) => view! { <span class="absent">{why.clone()}</span> }.into_any(),
        Piece::Verdict(said) => verdict(said),
    }
}

fn verdict(verdict: &Verdict) -> AnyView {
    let (class, mark, word) = match verdict.tone {
        Tone::Good => ("verdict verdict--good", "✓ ", "good: "),
        Tone::Caution | Tone::Driving => ("verdict verdict--caution", "⚠ ", "caution: "),
        Tone::Stop => ("verdict verdict--stop", "✕ ", "not to be left so: "),
    };
    view! {
        <span class=class><span aria-hidden="true">{mark}</span><span class="unseen">{word}</span>{verdict.text.clone()}</span>
    }
    .into_any()
}

fn shown_figure(setup: SetupId, figure: &Figure) -> AnyView {
    let class = match figure.size {
        Size::Big => "figure figure--big",
        Size::Plain => "figure",
        Size::Small => "figure figure--small",
    };
    let text = figure.shown.clone();
    let unit = (!figure.unit.is_empty()).then(|| view! { <span class="figure__unit">{figure.unit.clone()}</span> });
    let diff = figure.difference.clone().map(|difference| view! { <span class="figure__diff">{difference}</span> });
    let inner = view! { <span>{text}</span>{unit}{diff} };
    if figure.working.is_none() {
        return view! { <span class=class data-figure=figure.key.clone()>{inner}</span> }.into_any();
    }
    let state = State::here();
    let asked = (setup, figure.key.clone());
    let press = {
        let asked = asked.clone();
        move |_| ask(state, &asked)
    };
    let open = move || state.asked.with(|open| open.as_ref() == Some(&asked)).to_string();
    view! { <button type="button" class=class data-figure=figure.key.clone() aria-expanded=open on:click=press>{inner}</button> }.into_any()
}

/// Opens the working of a figure, or closes it where it is open.
fn ask(state: State, figure: &(SetupId, String)) {
    state.asked.update(|open| *open = if open.as_ref() == Some(figure) { None } else { Some(figure.clone()) });
}

/// The working of whichever of a cell's figures is open.
pub fn working(state: State, setup: SetupId, pieces: &[&Figure]) -> Option<AnyView> {
    let key = state.asked.with(|asked| asked.as_ref().filter(|(of, _)| *of == setup).map(|(_, key)| key.clone()))?;
    let working = pieces.iter().find(|figure| figure.key == key)?.working.clone()?;
    Some(
        view! {
            <div class="working" role="note">
                <p>{working.formula}</p>
                <p class="num">{working.filled}</p>
                <p class="working__source">"Source: "{working.source}</p>
            </div>
        }
        .into_any(),
    )
}
