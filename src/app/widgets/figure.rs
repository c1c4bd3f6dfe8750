//! A figure that can be asked how it came about, and the pieces that stand beside it.

use leptos::html::Table;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use crate::app::address::At;
use crate::app::state::State;
use crate::job::SetupId;
use crate::sheet::{Cell, Figure, Piece, Size, Tone, Verdict, markup};

/// Shows the lines of a cell in an element, in place of what stood there. They are written as text: what changes at every key is put
/// into the page at once, and not attribute by attribute. A figure that had the focus keeps it.
pub fn put(place: &Element, setup: SetupId, cell: Option<&Cell>) {
    let mut text = String::new();
    for line in cell.iter().flat_map(|cell| &cell.lines) {
        text.push_str("<div class=\"cell__line\">");
        for piece in line {
            write(&mut text, setup, piece);
        }
        text.push_str("</div>");
    }
    let focused = place.query_selector("[data-figure]:focus").ok().flatten().and_then(|one| one.get_attribute("data-figure"));
    place.set_inner_html(&text);
    let again = focused.and_then(|key| place.query_selector(&format!("[data-figure=\"{key}\"]")).ok().flatten());
    if let Some(again) = again.and_then(|one| one.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = again.focus();
    }
}

/// One piece of a line.
fn write(text: &mut String, setup: SetupId, piece: &Piece) {
    match piece {
        Piece::Figure(figure) => write_figure(text, setup, figure),
        Piece::Words(words) => span(text, "words", words),
        Piece::Open(question, words) => match At::of_question(question) {
            Some(at) => {
                text.push_str("<a class=\"words\"");
                attribute(text, "href", &at.fragment());
                text.push('>');
                markup::push(text, words);
                text.push_str("</a>");
            }
            None => span(text, "words", words),
        },
        Piece::Absent(why) | Piece::Needed(why) => span(text, "absent", why),
        Piece::Verdict(said) => write_verdict(text, said),
    }
}

fn attribute(text: &mut String, name: &str, value: &str) {
    text.push(' ');
    text.push_str(name);
    text.push_str("=\"");
    markup::push(text, value);
    text.push('"');
}

fn span(text: &mut String, class: &str, words: &str) {
    text.push_str("<span");
    if !class.is_empty() {
        attribute(text, "class", class);
    }
    text.push('>');
    markup::push(text, words);
    text.push_str("</span>");
}

fn write_verdict(text: &mut String, verdict: &Verdict) {
    let (class, mark, word) = match verdict.tone {
        Tone::Good => ("verdict verdict--good", "✓ ", "good: "),
        Tone::Caution | Tone::Driving => ("verdict verdict--caution", "⚠ ", "caution: "),
        Tone::Stop => ("verdict verdict--stop", "✕ ", "fix before use: "),
    };
    text.push_str("<span");
    attribute(text, "class", class);
    text.push_str("><span aria-hidden=\"true\">");
    text.push_str(mark);
    text.push_str("</span>");
    span(text, "unseen", word);
    markup::push(text, &verdict.text);
    text.push_str("</span>");
}

fn write_figure(text: &mut String, setup: SetupId, figure: &Figure) {
    let element = if figure.working.is_some() { "button" } else { "span" };
    text.push('<');
    text.push_str(element);
    let class = match figure.size {
        Size::Big => "figure figure--big",
        Size::Plain => "figure",
        Size::Small => "figure figure--small",
    };
    attribute(text, "class", class);
    attribute(text, "data-figure", &figure.key);
    if figure.working.is_some() {
        let asked = State::here().view.asked;
        let is_open = asked.with_untracked(|open| open.as_ref().is_some_and(|(of, key)| *of == setup && *key == figure.key));
        attribute(text, "type", "button");
        attribute(text, "data-setup", &setup.0.to_string());
        attribute(text, "aria-expanded", if is_open { "true" } else { "false" });
    }
    text.push('>');
    span(text, "", &figure.shown);
    if !figure.unit.is_empty() {
        span(text, "figure__unit", &figure.unit);
    }
    if let Some(difference) = &figure.difference {
        span(text, "figure__diff", difference);
    }
    text.push_str("</");
    text.push_str(element);
    text.push('>');
}

/// Words that open a question; plain ones where no question has the id.
pub fn opens(class: &'static str, question: &str, words: &str) -> AnyView {
    match At::of_question(question) {
        Some(at) => view! { <a class=class href=at.fragment()>{words.to_owned()}</a> }.into_any(),
        None => view! { <span class=class>{words.to_owned()}</span> }.into_any(),
    }
}

const OF_FIGURE: &str = "button[data-figure]";

/// The setup and key of a figure's button.
fn named(button: &Element) -> Option<(SetupId, String)> {
    Some((SetupId(button.get_attribute("data-setup")?.parse().ok()?), button.get_attribute("data-figure")?))
}

/// Opens the working of the figure that was pressed inside a table, or closes it where it is open.
///
/// The table listens for all its figures: a figure comes anew at every change, and would else bring a listener each time.
pub fn press(state: State, event: &web_sys::MouseEvent) {
    let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    let button = element.and_then(|element| element.closest(OF_FIGURE).ok().flatten());
    if let Some(figure) = button.and_then(|button| named(&button)) {
        state.view.asked.update(|open| *open = if open.as_ref() == Some(&figure) { None } else { Some(figure) });
    }
}

/// Arrow keys go from figure to figure: up and down in a setup's column, left and right along the row. Tab follows what is typed, and
/// would pass most figures by.
pub fn step(event: &web_sys::KeyboardEvent) {
    let key = event.key();
    let is_upright = matches!(key.as_str(), "ArrowUp" | "ArrowDown");
    let back = match key.as_str() {
        "ArrowUp" | "ArrowLeft" => true,
        "ArrowDown" | "ArrowRight" => false,
        _ => return,
    };
    let figure = event.target().and_then(|target| target.dyn_into::<Element>().ok()).filter(|one| one.matches(OF_FIGURE).unwrap_or(false));
    let Some((figure, table)) = figure.and_then(|figure| Some((figure.clone(), figure.closest("table").ok()??))) else { return };
    let Ok(found) = table.query_selector_all(OF_FIGURE) else { return };
    let mut figures: Vec<web_sys::HtmlElement> = (0..found.length()).filter_map(|at| found.item(at)?.dyn_into().ok()).collect();
    let row = |one: &Element| one.closest("tr").ok().flatten();
    if is_upright {
        let setup = figure.get_attribute("data-setup");
        figures.retain(|one| one.get_attribute("data-setup") == setup);
        figures.dedup_by(|one, before| row(one) == row(before));
    }
    let at = figures.iter().position(|one| if is_upright { row(one) == row(&figure) } else { **one == figure });
    let next = at.and_then(|at| if back { at.checked_sub(1) } else { at.checked_add(1) });
    if let Some(next) = next.and_then(|next| figures.get(next)) {
        event.prevent_default();
        let _ = next.focus();
    }
}

/// Has the figures of a table say which of them is open.
pub fn follow_asked(state: State, table: NodeRef<Table>) {
    Effect::new(move || {
        let asked = state.view.asked.get();
        let Some(table) = table.get_untracked() else { return };
        let Ok(figures) = table.query_selector_all(OF_FIGURE) else { return };
        for figure in (0..figures.length()).filter_map(|at| figures.item(at)?.dyn_into::<Element>().ok()) {
            let is_open = (asked.is_some() && named(&figure) == asked).to_string();
            if figure.get_attribute("aria-expanded").as_ref() != Some(&is_open) {
                let _ = figure.set_attribute("aria-expanded", &is_open);
            }
        }
    });
}

/// The figure of a key in a cell.
pub fn of_key<'a>(cell: &'a Cell, key: &str) -> Option<&'a Figure> {
    cell.pieces().find_map(|piece| match piece {
        Piece::Figure(figure) if figure.key == key => Some(figure.as_ref()),
        _ => None,
    })
}
