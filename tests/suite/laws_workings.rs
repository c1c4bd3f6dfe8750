//! Every figure about gears and road speed can be asked how it came about, and the answer is right when it is worked out again
//! from the text alone, as with a pocket calculator.

use layshaft::job::{Job, demo};
use layshaft::questions::build;
use layshaft::sheet::{Cell, Figure, Filled, Piece, Sheet, Words, Worked};
use layshaft::units::System;
use proptest::prelude::*;
use proptest::test_runner::Config;

use crate::any_job;
use crate::golden::layouts;

/// The figures of the gears, of the road speeds and of the short row that stand on them.
fn asked(sheet: &Sheet) -> impl Iterator<Item = &Figure> {
    let rows = sheet.sections.iter().filter(|section| section.id == "gears" || section.id == "road").flat_map(|section| &section.rows);
    let cells = rows.filter(|row| row.key != "rolls" && !row.key.starts_with("tyre")).chain([&sheet.short]).flat_map(|row| &row.cells);
    cells.flat_map(Cell::pieces).filter_map(|piece| match piece {
        Piece::Figure(figure) if !figure.key.contains("speedometer") => Some(&**figure),
        _ => None,
    })
}

/// What one side of an equation comes to, its digits read from the text; `None` where it holds no number or a road speed's unit,
/// before which the unit changes.
fn worked_out(side: &str, before: Option<f64>) -> Option<f64> {
    let side = side.split(" by an idler").next()?.replace(',', "");
    if side.contains("mph") || side.contains("km/h") {
        return None;
    }
    let (mut sum, mut product, mut operator, mut any) = (0.0, before.unwrap_or(f64::NAN), None, before.is_some());
    for word in side.split_whitespace() {
        match word {
            "×" | "÷" | "+" | "−" => operator = word.chars().next(),
            "%" => product /= 100.0,
            _ => {
                let Some(value) = number(word) else { continue };
                product = match operator {
                    Some('×') => product * value,
                    Some('÷') => product / value,
                    Some(sign) => {
                        sum += product;
                        if sign == '−' { -value } else { value }
                    }
                    None => value,
                };
                any = true;
            }
        }
    }
    any.then_some(sum + product)
}

/// `2.4667` or `37/18`.
fn number(word: &str) -> Option<f64> {
    if let Some(word) = word.strip_prefix('−').filter(|word| !word.is_empty()) {
        return number(word).map(|value| -value);
    }
    match word.split_once('/') {
        Some((above, below)) => Some(above.parse::<f64>().ok()? / below.parse::<f64>().ok()?),
        None => word.parse().ok(),
    }
}

/// Units whose whole numbers are rounded; tooth counts and their sums, which have none, are exact.
const ROUNDED: [&str; 7] = ["/min", "rpm", "Hz", "mm", " in", "lbf", "N"];

/// Half of the last digit of every number in a text, as a share of that number, added up: how far the two sides may differ.
fn slack(text: &str) -> f64 {
    let rounded = ROUNDED.iter().any(|unit| text.contains(unit));
    let of = |word: &str| {
        let digits = word.trim_start_matches('−').replace(',', "");
        let value: f64 = digits.parse().ok()?;
        let behind = digits.split_once('.').map_or(0, |(_, behind)| behind.len());
        (value > 0.0 && (behind > 0 || rounded)).then(|| 0.5 * 10_f64.powi(-i32::try_from(behind).unwrap()) / value)
    };
    text.split_whitespace().filter_map(of).sum::<f64>() + 1e-9
}

/// Half of the last digit of every number in a text, added up: how far the two sides of a sum may differ.
fn slack_of_sum(text: &str) -> f64 {
    let behind = |word: &str| {
        word.trim_start_matches('−')
            .replace(',', "")
            .parse::<f64>()
            .ok()
            .map(|_| word.split_once('.').map_or(0, |(_, behind)| behind.len()))
    };
    text.split_whitespace().filter_map(behind).map(|behind| 0.5 * 10_f64.powi(-i32::try_from(behind).unwrap())).sum()
}

/// Operands that are written out come to the figure itself, not to what is shown of it.
fn come_to_it(figure: &Figure) -> Result<(), TestCaseError> {
    if let Some(Filled::Worked(worked, _)) = figure.working.as_ref().map(|working| &working.filled) {
        let (value, own) = (figure.value, worked.value());
        prop_assert!((own - value).abs() <= 1e-9 * value.abs().max(1.0), "{}: {} gives {own}, not {value}", figure.key, worked.text());
    }
    Ok(())
}

/// Every equation of a working holds between its neighbouring sides.
fn check(figure: &Figure) -> Result<(), TestCaseError> {
    let Some(working) = &figure.working else { return Err(TestCaseError::fail(format!("{} does not say how it came about", figure.key))) };
    let filled = working.filled();
    prop_assert!(!working.formula.is_empty() && !filled.is_empty() && !working.source.is_empty(), "{}", figure.key);
    // What an equation came to, and how far its own rounding may have put it off.
    let mut before: Option<(f64, f64)> = None;
    for equation in filled.split(';') {
        let taken_over = before.filter(|_| equation.trim_start().starts_with(['×', '÷']));
        let (carried, off) = (taken_over.map(|(value, _)| value), taken_over.map_or(0.0, |(_, off)| off));
        let mut last: Option<f64> = None;
        for side in equation.split('=') {
            let found = worked_out(side, carried.filter(|_| last.is_none()));
            if let (Some(left), Some(right)) = (last, found) {
                // A share taken from one is off by its own slack, however little of it is left.
                let whole = if equation.contains('−') { 1.0 + right.abs() } else { right.abs() };
                let is_sum = !equation.contains(['×', '÷', '%']) && ROUNDED.iter().any(|unit| equation.contains(unit));
                let may = if is_sum { slack_of_sum(equation) } else { whole * (slack(equation) + off) };
                prop_assert!((left - right).abs() <= may + 1e-9, "{}: {} gives {} and {}", figure.key, equation, left, right);
            }
            last = found.or(last.filter(|_| found.is_some()));
        }
        before = last.map(|value| (value, slack(equation)));
    }
    Ok(())
}

#[test]
fn workings_of_the_example_jobs() {
    let jobs: [fn() -> Job; 4] =
        [demo::job, || Job { units: System::Metric, ..demo::job() }, layouts, || Job { units: System::Inch, ..layouts() }];
    for job in jobs.into_iter().map(|job| job()) {
        let sheet = build(&job, Words::Us);
        let many = asked(&sheet).map(|figure| check(figure).map_err(|why| format!("{why}")).unwrap()).count();
        assert!(many > 60, "{many}");
    }
}

/// What of a working is plain arithmetic: no power, root, bracket or angle, and every side begins with a number.
fn is_plain(equation: &str) -> bool {
    let begins = |side: &str| side.trim().trim_start_matches('−').starts_with(|first: char| first.is_ascii_digit());
    !equation.contains(['(', '²', '³', '√', '∠', 'π', ':']) && equation.contains('=') && equation.split('=').all(begins)
}

/// Every figure of every question, on the page and at the bench.
#[test]
fn plain_workings_of_every_question_come_out() {
    let jobs: [fn() -> Job; 6] =
        [demo::job, layouts, crate::golden::bench, crate::golden::teeth, crate::golden::noise, crate::swap_by_hand::five_speed];
    let mut plain = std::collections::BTreeMap::<&str, usize>::new();
    let (mut wrong, mut written_out) = (Vec::new(), 0);
    for job in jobs.into_iter().flat_map(|job| [System::Metric, System::Inch].map(|units| Job { units, ..job() })) {
        let sheet = build(&job, Words::Us);
        for section in &sheet.sections {
            let is_of_reader = |equation: &&str| !(section.id == "road" && equation.ends_with(" in"));
            let figures = section.rows.iter().flat_map(|row| &row.cells).flat_map(Cell::pieces);
            let figures = figures.filter_map(|piece| if let Piece::Figure(figure) = piece { Some(&**figure) } else { None });
            for figure in figures {
                let Some(working) = &figure.working else { continue };
                if matches!(working.filled, Filled::Worked(..)) {
                    written_out += 1;
                    wrong.extend(come_to_it(figure).err().map(|why| format!("{}: {why}", section.id)));
                }
                let filled = working.filled();
                let filled = filled.split("; ").filter(|equation| is_plain(equation)).filter(is_of_reader).collect::<Vec<_>>().join("; ");
                if filled.is_empty() {
                    continue;
                }
                *plain.entry(section.id).or_default() += 1;
                let mut alone = figure.clone();
                alone.working = Some(layshaft::sheet::figure::Working { filled: Filled::Said(filled), ..working.clone() });
                wrong.extend(check(&alone).err().map(|why| format!("{}: {why}", section.id)));
            }
        }
    }
    wrong.sort();
    wrong.dedup();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(written_out > 800, "{written_out} figures come from operands that are written out");
    // Wherever something is worked out by multiplying and adding.
    for (question, least) in
        [("gears", 500), ("inside", 400), ("road", 300), ("speedometer", 280), ("driveline", 150), ("noise", 100), ("setting", 16)]
    {
        assert!(plain.get(question).is_some_and(|many| *many >= least), "{question}: {plain:?}");
    }
}

#[test]
fn a_wrong_working_is_found() {
    let figure = |filled: &str| Figure::number("test", 1.0, 0).by("formula", filled, "source");
    let operands = Figure::number("test", 2.5, 0).worked("formula", Worked::of(30.0, 0).over(25.0, 0), "source");
    assert!(come_to_it(&operands).is_err(), "30 ÷ 25 is not 2.5");
    for wrong in [
        "30/25 × 37/18 = 37/15 = 2.5667",
        "1 − 1.6696 ÷ 2.4667 = 42.3 %",
        "70 mph = 73,920 in/min; ÷ 73.97 in × 3.9091 = 3,607 rpm",
        "25 + 30 = 56",
    ] {
        assert!(check(&figure(wrong)).is_err(), "{wrong}");
    }
    for right in [
        "30/25 × 37/18 = 37/15 = 2.4667",
        "1 − 1.6696 ÷ 2.4667 = 32.3 %",
        "70 mph = 73,920 in/min; ÷ 73.97 in × 3.9091 = 3,907 rpm",
        "25 + 30 = 55",
    ] {
        assert!(check(&figure(right)).is_ok(), "{right}");
    }
}

proptest! {
    #![proptest_config(Config { cases: 48, failure_persistence: None, ..Config::default() })]

    #[test]
    fn workings_of_any_job(job in any_job::job()) {
        let sheet = build(&job, Words::Us);
        for figure in asked(&sheet) {
            check(figure)?;
            come_to_it(figure)?;
        }
    }
}
