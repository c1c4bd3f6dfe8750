//! A field: the raw text, the unit of a bare number, and beneath it what is wrong.

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::suggestions::list_of;
use crate::job::{Field, InsideField, Job, JobField, PullField, SetupField, WishKind, WishText};
use crate::units::{
    AngularVelocity, Area, Length, Mass, Measured, MomentOfInertia, Power, Pressure, System, ThermodynamicTemperature, Torque,
    TurnsPerDistance, Typed, Velocity,
};

/// A text of the job, edited where it is read.
#[component]
pub fn TextField(
    /// Which text.
    field: Field,
    /// What it is called.
    #[prop(into)]
    label: String,
    /// Whether the label is seen; it is always there for those who listen.
    #[prop(optional)]
    visible_label: bool,
    /// Whether it holds a number: aligned to the right, a number keyboard on phones.
    #[prop(optional)]
    number: bool,
    /// A wider field, for sizes and names.
    #[prop(optional)]
    wide: bool,
    /// What a blank field is taken for.
    #[prop(optional)]
    blank_means: &'static str,
) -> impl IntoView {
    let state = State::here();
    let slug = field.slug();
    let problem = Memo::new(move |_| state.wrong_with(field).map(|problem| problem.sentence()));
    let taken = Memo::new(move |_| state.job.with(|job| job.taken(field)));
    let typed = Memo::new(move |_| state.job.with(|job| (job.text(field).unwrap_or_default().to_owned(), unit(job, field))));
    let class = match (number, wide, is_words(field)) {
        (_, _, true) => "field field--words",
        (true, _, _) => "field field--number",
        (_, true, _) => "field field--wide",
        _ => "field",
    };
    let said = format!("{slug}-problem");
    let described = said.clone();
    let spoken = label.clone();
    view! {
        <span class=class>
            {visible_label.then(|| view! { <label for=slug.clone()>{move || state.say(&label)}</label> })}
            <input class="field__input" id=slug.clone() type="text" inputmode=if number { "decimal" } else { "text" }
                placeholder=blank_means list=list_of(field) autocomplete="off" autocapitalize="off" spellcheck="false"
                aria-label=(!visible_label).then_some(move || state.say(&spoken))
                aria-invalid=move || problem.with(Option::is_some).to_string()
                aria-describedby=move || problem.with(Option::is_some).then(|| described.clone())
                prop:value=move || typed.with(|(text, _)| text.clone())
                on:focus=super::select_text
                on:input=move |event| state.type_text(field, event_target_value(&event))
                on:blur=move |_| state.leave_field()/>
            <span class="field__unit">{move || typed.with(|(_, unit)| *unit)}</span>
            {move || taken.get().map(|taken| view! { <span class="field__taken">{taken}</span> })}
            {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
        </span>
    }
}

/// Whether the field holds words, in the face of the text, and not figures.
fn is_words(field: Field) -> bool {
    matches!(
        field,
        Field::Job(JobField::Title | JobField::Customer | JobField::Car | JobField::Notes)
            | Field::Setup(_, SetupField::Name | SetupField::StageName(_))
    )
}

/// The unit a bare number in the field is read in; none where the text names its own.
fn unit(job: &Job, field: Field) -> Option<&'static str> {
    let text = job.text(field)?;
    if text.chars().any(char::is_alphabetic) {
        return None;
    }
    // What is typed into a blank field is meant in the units of the sheet.
    let meant = |typed: &Typed| if typed.text.trim().is_empty() { job.units } else { typed.units };
    match field {
        Field::Job(JobField::Shift) => Some(symbol::<AngularVelocity>(meant(&job.shift))),
        Field::Job(JobField::Cruise) => Some(symbol::<Velocity>(meant(&job.cruise))),
        Field::Job(JobField::InsideAt) => Some("rpm"),
        Field::Job(JobField::SyncTime) => Some("s"),
        Field::Job(JobField::LiningLimits) => Some("m/s N/mm² J/mm² W/mm²"),
        Field::Setup(_, SetupField::Idler) => Some("idler"),
        Field::Setup(id, SetupField::Inside(field)) => Some(inside_unit(field, meant(field.typed(&job.setup(id)?.inside)))),
        Field::Job(JobField::Pull(field)) => pull_unit(field, meant(field.typed(&job.pull))),
        Field::Job(JobField::SpeedoCheck) => Some(symbol::<Velocity>(meant(&job.speedo.check))),
        Field::Job(JobField::Dial) => Some(symbol::<TurnsPerDistance>(meant(&job.speedo.dial))),
        Field::Wish(row, text) => {
            let wish = job.wishes.rows.get(row)?;
            let typed = match text {
                WishText::At => &wish.at,
                WishText::Least => &wish.least,
                WishText::Greatest | WishText::Weight => &wish.greatest,
            };
            wish_unit(wish.kind, text, meant(typed))
        }
        Field::Setup(id, SetupField::TreadLost) => Some(symbol::<Length>(meant(&job.setup(id)?.tread_lost))),
        Field::Setup(_, SetupField::Tyre) => text.trim().parse::<f64>().ok().map(|_| symbol::<Length>(job.units)),
        _ => None,
    }
}

/// The unit of a bare number of a wish.
fn wish_unit(kind: WishKind, text: WishText, units: System) -> Option<&'static str> {
    use WishKind as K;
    match (text, kind) {
        (WishText::At, K::CruiseRpm | K::TimeToSpeed) => Some(symbol::<Velocity>(units)),
        (WishText::At, K::TimeOverDistance) => Some("m"),
        (WishText::At | WishText::Weight, _) => None,
        (_, K::CruiseRpm | K::Landing) => Some("rpm"),
        (_, K::StartGrade | K::LargestDrop | K::Speedometer) => Some("%"),
        (_, K::SpeedAtShift | K::TopSpeed) => Some(symbol::<Velocity>(units)),
        (_, K::TimeToSpeed | K::TimeOverDistance) => Some("s"),
        (_, K::TyreDiameter) => Some(symbol::<Length>(units)),
        _ => None,
    }
}

/// The unit of a bare number about the inside of the box.
fn inside_unit(field: InsideField, units: System) -> &'static str {
    match field {
        InsideField::Pitch if units == System::Inch => "pitch or mm",
        InsideField::Pitch => "mm",
        InsideField::Helix | InsideField::Pressure => "°",
        InsideField::Centre | InsideField::Face | InsideField::ConeDiameter | InsideField::ConeWidth => symbol::<Length>(units),
        InsideField::Inertia => symbol::<MomentOfInertia>(units),
    }
}

/// The unit of a bare number about engine, car or run.
fn pull_unit(field: PullField, units: System) -> Option<&'static str> {
    use PullField as F;
    Some(match field {
        F::Mass | F::Trailer => symbol::<Mass>(units),
        F::DrivenShare | F::MeshEfficiency | F::AxleEfficiency | F::BandShare | F::AirHumidity => "%",
        F::Wheelbase | F::GravityHeight => symbol::<Length>(units),
        F::DragArea => symbol::<Area>(units),
        F::EngineInertia | F::BoxInertia | F::WheelInertia => symbol::<MomentOfInertia>(units),
        F::PeakTorque => symbol::<Torque>(units),
        F::PeakPower => symbol::<Power>(units),
        F::PeakTorqueAt | F::PeakPowerAt | F::Limit | F::Launch => "rpm",
        F::AirPressure => symbol::<Pressure>(units),
        F::AirTemperature => symbol::<ThermodynamicTemperature>(units),
        F::ShiftTime => "s",
        F::RollFrom | F::RollTo | F::Speeds => symbol::<Velocity>(units),
        F::Rolling | F::Grip | F::Rows | F::RollGear => return None,
    })
}

fn symbol<Q: Measured>(units: System) -> &'static str {
    Q::usual(units).symbol
}

/// A text of several lines.
#[component]
pub fn TextArea(
    /// Which text.
    field: Field,
    /// What it is called.
    #[prop(into)]
    label: String,
) -> impl IntoView {
    let state = State::here();
    let slug = field.slug();
    let problem = Memo::new(move |_| state.problem_of(field).map(|problem| problem.sentence()));
    let said = format!("{slug}-problem");
    let described = said.clone();
    view! {
        <div class="area">
            <label for=slug.clone()>{move || state.say(&label)}</label>
            <textarea class="area__input" id=slug rows="7" spellcheck="false" autocomplete="off"
                aria-invalid=move || problem.with(Option::is_some).to_string()
                aria-describedby=move || problem.with(Option::is_some).then(|| described.clone())
                prop:value=move || state.job.with(|job| job.text(field).unwrap_or_default().to_owned())
                on:input=move |event| state.type_text(field, event_target_value(&event))
                on:blur=move |_| state.leave_field()></textarea>
            {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
        </div>
    }
}
