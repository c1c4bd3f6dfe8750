//! The car, its engine and how it is driven: typed once for all setups.

use leptos::prelude::*;

use crate::questions::Answers;

use crate::app::state::State;
use crate::app::widgets::{SelectField, TextArea, TextField};
use crate::job::{Choice, Field, JobChoice, JobField, PullField};
use crate::motion::car::{Origin, Sourced};
use crate::questions::pull::engine_words as engine;
use crate::questions::pull::read::RunTyped;
use crate::units::number;

/// Everything about car, engine and run.
pub(super) fn panel() -> impl IntoView {
    view! {
        <div class="car" id="car">
            {what_matters()}
            <details class="car__more"><summary>"The rest of the car: a blank field takes the value shown in it"</summary>{the_rest()}</details>
            <details class="car__more"><summary>"How it is driven"</summary>{driving()}</details>
            <details class="car__more"><summary>"Measured power curve"</summary>{measured()}</details>
        </div>
    }
}

fn field(field: PullField, label: &'static str, blank_means: &'static str) -> impl IntoView {
    view! { <TextField field=Field::Job(JobField::Pull(field)) label visible_label=true number=true blank_means/> }
}

fn what_matters() -> impl IntoView {
    let state = State::here();
    let name = Field::Job(JobField::Car);
    let engine = Memo::new(move |_| {
        let said = state.job.with(|job| state.answers.with(|Answers { conditions, .. }| engine::words(job, conditions)));
        state.say(&said)
    });
    view! {
        <div class="car__fields">
            <TextField field=name label="car" visible_label=true/>
            {field(PullField::Mass, "mass with driver", "")}
            <SelectField choice=Choice::Job(JobChoice::Drive) label="driven" visible_label=true/>
            {field(PullField::PeakTorque, "peak torque", "")}
            {field(PullField::PeakTorqueAt, "at", "")}
            {field(PullField::PeakPower, "peak power", "")}
            {field(PullField::PeakPowerAt, "at", "")}
            {field(PullField::Limit, "rev limit", "")}
        </div>
        <p class="words" role="status">{engine}</p>
    }
}

fn the_rest() -> impl IntoView {
    let state = State::here();
    let defaults = Memo::new(move |_| {
        state.answers.with(|Answers { conditions, .. }| conditions.pull.car.map(|car| default_words(&car)).unwrap_or_default())
    });
    view! {
        <div class="car__fields">
            {field(PullField::DrivenShare, "weight on the driven axle", "50")}
            {field(PullField::Wheelbase, "wheelbase", "")}
            {field(PullField::GravityHeight, "height of the centre of gravity", "")}
            {field(PullField::DragArea, "drag area", "")}
            {field(PullField::Rolling, "rolling resistance", "0.015")}
            {field(PullField::Grip, "grip", "0.8")}
            {field(PullField::MeshEfficiency, "a gear mesh passes on", "98")}
            {field(PullField::AxleEfficiency, "the axle passes on", "96")}
            {field(PullField::EngineInertia, "inertia of engine and flywheel", "")}
            {field(PullField::BoxInertia, "of the box, at its input", "")}
            {field(PullField::WheelInertia, "of all wheels together", "")}
            {field(PullField::Trailer, "trailer", "none")}
        </div>
        <ul class="words">{move || defaults.get().into_iter().map(|line| view! { <li>{state.say(&line)}</li> }).collect_view()}</ul>
    }
}

/// What stands in for each value that was not typed, and why.
fn default_words(car: &crate::motion::Car) -> Vec<String> {
    fn why<T>(name: &str, sourced: &Sourced<T>, shown: &str) -> Option<String> {
        match sourced.origin {
            Origin::Given => None,
            Origin::Default(why) => Some(format!("{name} {shown}: {why}")),
        }
    }
    let mm = |length: crate::units::Length| format!("{} mm", number::show(crate::units::common::in_millimetres(length), 0));
    let percent = |share: f64| format!("{} %", number::show(share * 100.0, 0));
    [
        why("weight on the driven axle", &car.driven_share, &percent(car.driven_share.value)),
        why("wheelbase", &car.wheelbase, &mm(car.wheelbase.value)),
        why("height of the centre of gravity", &car.gravity_height, &mm(car.gravity_height.value)),
        why("drag area", &car.drag_area, &format!("{} m²", number::show(car.drag_area.value.value, 2))),
        why("rolling resistance", &car.rolling, &number::show(car.rolling.value, 3)),
        why("grip", &car.grip, &number::show(car.grip.value, 2)),
        why("each gear mesh passes on", &car.efficiencies.mesh, &percent(car.efficiencies.mesh.value)),
        why("the axle passes on", &car.efficiencies.final_drive, &percent(car.efficiencies.final_drive.value)),
        why("turning parts", &car.rotating, "by rule"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn driving() -> impl IntoView {
    let state = State::here();
    let units = Memo::new(move |_| state.job.with(|job| job.units));
    let speeds = move || {
        let blank_means = RunTyped::usual_speeds(units.get());
        view! { <TextField field=Field::Job(JobField::Pull(PullField::Speeds)) label="speeds asked, parted by ;" visible_label=true wide=true blank_means/> }
    };
    view! {
        <div class="car__fields">
            {field(PullField::Launch, "standing start at", "2,500")}
            {field(PullField::ShiftTime, "each shift takes", "0.5")}
            <SelectField choice=Choice::Job(JobChoice::ShiftRule) label="shift by" visible_label=true/>
            {field(PullField::BandShare, "power band from", "90")}
            {speeds}
            {field(PullField::RollFrom, "rolling start from", "")}
            {field(PullField::RollTo, "to", "")}
            {field(PullField::RollGear, "in gear", "lowest")}
        </div>
    }
}

fn measured() -> impl IntoView {
    view! {
        <TextArea field=Field::Job(JobField::Pull(PullField::Rows)) label="Rows of rpm and torque or power, pasted from a dynamometer or typed; a head line names the units"/>
        <div class="car__fields">
            <SelectField choice=Choice::Job(JobChoice::PowerStandard) label="correct" visible_label=true/>
            {field(PullField::AirPressure, "air pressure of the test", "")}
            {field(PullField::AirTemperature, "air temperature", "")}
            {field(PullField::AirHumidity, "relative humidity", "0")}
        </div>
    }
}
