//! The table of inputs tells the truth: what a field shows is what is read, taken and refused there.

use std::collections::{BTreeMap, BTreeSet};

use layshaft::finder::Given;
use layshaft::finder::design::Brief;
use layshaft::job::inputs::wishes::Ends;
use layshaft::job::inputs::{Blank, Kind};
use layshaft::job::wishes::MOST_WISHES;
use layshaft::job::{
    Choice, Field, InputId, InputProblem, InsideField, Job, JobChoice, JobField, PullField, SetupField, SetupId, Wish, WishKind, demo, file,
};
use layshaft::questions::find::Asked;
use layshaft::questions::{Conditions, bench, build, read_all};
use layshaft::sheet::Words;
use layshaft::units::System;

use crate::any_job::figures;

/// Everything that is said to be wrong anywhere in a job.
fn problems(job: &Job) -> Vec<InputProblem> {
    let (conditions, setups) = (Conditions::of(job), read_all(job));
    let given = Given::default();
    let asked = Asked::of(&job.wishes, &given, conditions.cruise);
    let setups = setups.into_iter().flat_map(|setup| setup.problems);
    let design = Brief::read(&job.wishes.design).err().unwrap_or_default();
    let bench = bench::problems(job);
    conditions.problems.into_iter().chain(setups).chain(asked.problems).chain(design).chain(bench).collect()
}

fn said(job: &Job, field: Field) -> Vec<String> {
    problems(job).into_iter().filter(|problem| problem.field == InputId::from(field)).map(|problem| problem.sentence()).collect()
}

/// A number in the middle of what a kind of input takes.
fn middle(kind: Kind, units: System) -> String {
    match kind {
        Kind::Quantity(limits) => format!("{:.6}", limits.value_at(0.5, units)),
        Kind::Number(_, (least, greatest)) => format!("{:.3}", f64::midpoint(least, greatest)),
        Kind::Whole((least, greatest)) => format!("{:.0}", f64::midpoint(least, greatest).floor()),
        _ => String::new(),
    }
}

/// The demo job in a system, with a wish of every kind that something is typed for, the pitch of its gears and the air of a test.
fn job(units: System) -> Job {
    let wish = |kind: WishKind| {
        let about = kind.about();
        let mut wish = Wish::new(kind, units).between(&middle(about.kind, units), "");
        wish.at.text = about.at.map_or_else(String::new, |at| middle(at.kind, units));
        wish
    };
    let mut job = demo::job();
    job.units = units;
    job.wishes.rows = WishKind::ALL.into_iter().filter(|kind| kind.about().ends != Ends::Neither).map(wish).collect();
    assert!(job.wishes.rows.len() <= MOST_WISHES);
    job.setups.truncate(1);
    job.type_text(Field::Setup(SetupId(1), SetupField::Inside(InsideField::Pitch)), "10 DP".into());
    job.choose(Choice::Job(JobChoice::PowerStandard), "sae-j1349");
    job.type_text(pull(PullField::AirPressure), "1,000 mbar".into());
    job.type_text(pull(PullField::AirTemperature), "20 °C".into());
    job
}

fn pull(field: PullField) -> Field {
    Field::Job(JobField::Pull(field))
}

/// What a blank field shows, with the unit behind it.
fn shown(job: &Job, field: Field) -> String {
    let mut blank = job.clone();
    blank.type_text(field, String::new());
    format!("{} {}", field.placeholder(&blank), field.unit(&blank).unwrap_or_default()).trim().to_owned()
}

/// Half the weight on driven rear wheels, 60 % on front ones, all of it on four: common practice, no published source.
#[test]
fn the_weight_on_the_driven_axle_goes_by_the_driven_wheels() {
    let mut job = demo::job();
    for (drive, share) in [("", "50 %"), ("rear", "50 %"), ("front", "60 %"), ("all", "100 %")] {
        job.choose(Choice::Job(JobChoice::Drive), drive);
        assert_eq!(shown(&job, pull(PullField::DrivenShare)), share, "{drive}");
    }
}

/// The usual limits of each pairing, from memory: sliding speed, pressure, work and power.
#[test]
fn the_limits_of_the_lining_are_those_of_the_one_chosen() {
    let mut job = demo::job();
    for (lining, limits) in [("", "5 3 0.09 0.45"), ("molybdenum", "7 6 0.53 0.84"), ("sintered", "9 7 1 1.5")] {
        job.choose(Choice::Job(JobChoice::Lining), lining);
        assert_eq!(Field::Job(JobField::LiningLimits).placeholder(&job), limits);
    }
}

/// By hand: 2.6 m = 102.36 in, 0.57 m = 22.44 in, 0.9 m² = 9.6875 ft²; the rest has no unit of length.
/// Peak torque is put at half the speed of peak power (5,600 rpm in the demo), else at 3,000 rpm.
#[test]
fn what_is_taken_stands_in_the_readers_units() {
    use PullField as F;
    let inside = |field| Field::Setup(SetupId(1), SetupField::Inside(field));
    let rows = [
        (pull(F::Wheelbase), "102 in", "2,600 mm"),
        (pull(F::GravityHeight), "22.4 in", "570 mm"),
        (pull(F::DragArea), "9.69 ft²", "0.9 m²"),
        (pull(F::Rolling), "0.01", "0.01"),
        (pull(F::Grip), "0.8", "0.8"),
        (pull(F::MeshEfficiency), "98 %", "98 %"),
        (pull(F::AxleEfficiency), "96 %", "96 %"),
        (pull(F::BandShare), "90 %", "90 %"),
        (pull(F::Launch), "2,500 rpm", "2,500 rpm"),
        (pull(F::ShiftTime), "0.5 s", "0.5 s"),
        (pull(F::PeakTorqueAt), "2,800 rpm", "2,800 rpm"),
        (pull(F::Speeds), "30; 60; 100 mph", "50; 100; 160 km/h"),
        (Field::Job(JobField::SyncTime), "0.25 s", "0.25 s"),
        (Field::Job(JobField::InsideAt), "6,500 rpm", "6,500 rpm"),
        (inside(InsideField::Helix), "0 °", "0 °"),
        (inside(InsideField::Pressure), "20 °", "20 °"),
    ];
    for (field, inch, metric) in rows {
        assert_eq!([System::Inch, System::Metric].map(|units| shown(&job(units), field)), [inch, metric], "{field:?}");
    }
    let mut without_power = demo::job();
    without_power.type_text(pull(F::PeakPower), String::new());
    assert_eq!(shown(&without_power, pull(F::PeakTorqueAt)), "3,000 rpm");
}

#[test]
fn every_input_has_a_name_of_its_own_and_a_word() {
    let job = job(System::Inch);
    let slugs: Vec<String> = Field::all(&job).into_iter().map(Field::slug).chain(Choice::all(&job).into_iter().map(Choice::slug)).collect();
    assert_eq!(slugs.iter().collect::<BTreeSet<_>>().len(), slugs.len(), "{slugs:?}");
    assert!(slugs.iter().all(|slug| !slug.is_empty() && slug.chars().all(|c| c.is_ascii_alphanumeric() || c == '-')), "{slugs:?}");
    for field in Field::all(&job) {
        let label = field.label(&job);
        assert!(!label.is_empty() && !label.contains('#'), "{field:?}: {label}");
    }
    assert_eq!(Field::Setup(SetupId(1), SetupField::Gear(2)).label(&job), "3rd gear");
    for choice in Choice::all(&job) {
        assert!(!choice.label().is_empty() && choice.options().len() > 1, "{choice:?}");
    }
}

#[test]
fn every_text_that_is_typed_is_kept_where_it_was_typed() {
    let empty = job(System::Metric);
    for field in Field::all(&empty) {
        let mut typed = empty.clone();
        typed.type_text(field, "a text".into());
        assert_eq!(typed.text(field), Some("a text"), "{field:?}");
        let others = Field::all(&empty).into_iter().filter(|other| *other != field);
        assert!(others.into_iter().all(|other| typed.text(other) == empty.text(other)), "{field:?}");
        assert_eq!(file::from_text(&file::to_text(&typed)), Ok(typed), "{field:?}");
    }
    assert_eq!(empty.text(Field::Setup(SetupId(1), SetupField::Gear(7))), None);
}

/// The bounds a row names are those its text is read by, so that no field is read with the row of another.
#[test]
fn a_row_names_the_bounds_its_text_is_read_by() {
    let good = job(System::Metric);
    for field in Field::all(&good) {
        let (inside, outside) = match field.row_in(&good).kind {
            Kind::Quantity(limits) => {
                let at = |share| format!("{:.6}", limits.value_at(share, good.units));
                (at(0.5), [at(-0.01), at(1.01)])
            }
            Kind::Number(_, (least, greatest)) if least.is_finite() => {
                (format!("{:.3}", f64::midpoint(least, greatest)), [format!("{:.3}", least - 0.01), format!("{:.3}", greatest + 0.01)])
            }
            Kind::Whole((least, greatest)) => {
                (format!("{:.0}", f64::midpoint(least, greatest).floor()), [format!("{}", least - 1.0), format!("{}", greatest + 1.0)])
            }
            _ => continue,
        };
        let refused = |text: &str| {
            let mut typed = good.clone();
            typed.type_text(field, text.into());
            let said = said(&typed, field);
            said.iter().any(|said| {
                [" is outside what the ", " is not a number from ", " was typed", "is no gear from"].iter().any(|of| said.contains(of))
            })
        };
        // What a design or a pair of peaks must fit together besides is not asked here; a gear the wish asks for is.
        assert!(!refused(&inside), "{field:?} refuses {inside}");
        for text in outside {
            assert!(refused(&text) || is_unread(field, &good), "{field:?} takes {text}");
        }
    }
}

/// A weight is not read where the wish must be met, an end not where the wish has none, a point not where it is asked at none.
fn is_unread(field: Field, job: &Job) -> bool {
    let Field::Wish(at, text) = field else { return false };
    let wish = &job.wishes.rows[at];
    match text {
        layshaft::job::WishText::Weight => wish.must,
        layshaft::job::WishText::At => wish.kind.about().at.is_none(),
        _ => false,
    }
}

/// What a blank field shows can be typed into it, and changes nothing but who chose it: three digits are within a hundredth.
#[test]
fn what_a_blank_field_shows_is_what_is_taken() {
    for units in [System::Inch, System::Metric] {
        let base = job(units);
        for field in Field::all(&base) {
            let row = field.row_in(&base);
            let mut blank = base.clone();
            blank.type_text(field, String::new());
            let Blank::Taken(taken) = row.blank else { continue };
            let text = taken(&blank);
            if !text.starts_with(|c: char| c.is_ascii_digit()) {
                continue;
            }
            let mut typed = blank.clone();
            typed.type_text(field, text.clone());
            assert_eq!(said(&typed, field), said(&blank, field), "{field:?}: {text}");
            let (with, without) = (values(&typed), values(&blank));
            assert_eq!(with.keys().collect::<Vec<_>>(), without.keys().collect::<Vec<_>>(), "{field:?}: {text}");
            for (key, value) in &without {
                assert!((with[key] - value).abs() <= 0.01 * value.abs().max(10.0), "{field:?}: {text}: {key} {value} {}", with[key]);
            }
        }
    }
}

fn values(job: &Job) -> BTreeMap<String, f64> {
    figures(&build(job, Words::Us), 0).map(|figure| (figure.key.clone(), figure.value)).collect()
}

#[test]
fn every_option_is_kept_and_read_again() {
    let job = demo::job();
    for choice in Choice::all(&job) {
        for (word, _) in choice.options() {
            let mut chosen = job.clone();
            chosen.choose(choice, word);
            assert_eq!(chosen.chosen(choice), word, "{choice:?}");
            assert!(chosen.unknown_choices(|_| true).is_empty());
            assert_eq!(file::from_text(&file::to_text(&chosen)), Ok(chosen), "{choice:?}");
        }
    }
}

/// A word of a file that is no option is kept, said beside its list, and never taken for another option.
#[test]
fn a_word_that_is_no_option_is_said_and_kept() {
    let job = demo::job();
    for choice in Choice::all(&job) {
        let mut strange = job.clone();
        strange.choose(choice, "from-a-newer-version");
        let again = file::from_text(&file::to_text(&strange)).unwrap();
        assert_eq!(again, strange);
        assert_eq!(again.chosen(choice), "from-a-newer-version");
        let said: Vec<String> =
            problems(&again).iter().filter(|one| one.field == InputId::from(choice)).map(InputProblem::sentence).collect();
        assert!(said.len() == 1 && said[0].starts_with("“from-a-newer-version” is not in the list beside"), "{choice:?}: {said:?}");
        let _ = build(&again, Words::Us);
    }
}

#[test]
fn an_unknown_rule_judges_nothing() {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::Law), "moon-1969");
    assert_eq!(Conditions::of(&job).speedo.law.value(), None);
    let sheet = build(&job, Words::Us);
    let text = format!("{sheet:?}");
    assert!(!text.contains("UN R39") && text.contains("not judged: choose a rule"));
    assert!(figures(&sheet, 0).any(|figure| figure.key.starts_with("speedometer.reads")));
    for (choice, said) in [(JobChoice::Drive, "pull is left out"), (JobChoice::Lining, "the lining is not judged")] {
        let mut job = demo::job();
        job.choose(Choice::Job(choice), "other");
        let conditions = Conditions::of(&job);
        assert!(conditions.problems[0].sentence().contains(said), "{:?}", conditions.problems);
        assert!(if choice == JobChoice::Drive { conditions.pull.car.is_none() } else { conditions.inside.lining.is_none() });
    }
}
