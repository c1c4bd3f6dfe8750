//! Gears: its picture.

use leptos::prelude::*;

use crate::questions::Answers;

use crate::app::state::State;
use crate::app::widgets::Chart;
use crate::questions::gears::pictures as of;
use crate::units::common::in_rpm;
use crate::units::number;

/// The gear ladder.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let ladder = Memo::new(move |_| state.picture(of::ladder));
    let caption = Signal::derive(move || {
        let shift = state.answers.with(|Answers { conditions, .. }| conditions.shift);
        let at = shift.map_or_else(String::new, |shift| format!(" at {}", number::show(in_rpm(shift), 0)));
        state.say(&format!(
            "Gear ladder. Equal distance is an equal percentage step; the figure between two rungs is the rpm lost on that upshift{at}."
        ))
    });
    view! { <Chart picture=ladder name="gear-ladder" caption/> }
}
