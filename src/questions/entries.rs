//! What is typed about a gearbox and its extra stages, in the rows where it is read.

use super::alike::listed as listed_words;
use super::gears::rows::equation;
use crate::gearing::{FinalDrive, GearNumber, Layout, Place, StageKind};
use crate::job::choice::Options;
use crate::job::{Choice, Chosen, SetupChoice, SetupField};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::sheet::{Cell, EntryKind, Figure, Piece, Row};
use crate::units::number::ordinal;

/// A cell with one of the setup's texts in it, where the setup has such a text.
pub fn entry(source: Source<'_>, analysis: &Analysis, cell: Cell, field: SetupField, label: &str) -> Cell {
    match source.job.text(crate::job::Field::Setup(analysis.setup.id, field)) {
        Some(text) => cell.with_entry(EntryKind::Text(field), format!("{label}, setup {}", analysis.setup.letter), text),
        None => cell,
    }
}

/// A cell with one of the setup's choices in it; the entry's text is the option's words.
pub fn choice(source: Source<'_>, analysis: &Analysis, cell: Cell, choice: SetupChoice, label: &str) -> Cell {
    let of_setup = Choice::Setup(analysis.setup.id, choice);
    let chosen = source.job.chosen(of_setup);
    let words = of_setup.options().into_iter().find(|(word, _)| *word == chosen).map_or(chosen, |(_, says)| says);
    cell.with_entry(EntryKind::Choice(choice), format!("{label}, setup {}", analysis.setup.letter), words)
}

/// A place in words.
pub fn place_words(place: Place) -> &'static str {
    match place {
        Place::BeforeAxle => "before the axle",
        Place::BehindAxle => "behind the axle",
    }
}

/// What a stage is, in words.
pub fn kind_words(kind: &Chosen<StageKind>) -> &'static str {
    kind.value().map_or("extra stage", StageKind::says)
}

/// How it is switched: `switched in every gear`; nothing of one that is always in.
fn switched_words(analysis: &Analysis, at: usize) -> Option<String> {
    let stage = analysis.setup.stages.as_ref()?.get(at)?;
    let used_in = stage.switch?.used_in;
    let many = analysis.setup.gears.len();
    let gears: Vec<String> = GearNumber::lowest(many).filter(|gear| used_in.contains(*gear)).map(String::from).collect();
    Some(match gears.len() {
        0 => "switched in no gear".to_owned(),
        all if all == many => "switched in every gear".to_owned(),
        _ => format!("switched in {}", listed_words(&gears)),
    })
}

/// The layout, and the pair that joins the countershaft.
pub fn constant_rows(source: Source<'_>) -> Vec<Row> {
    let layouts = || source.setups.iter().map(|analysis| analysis.setup.layout);
    let label = if layouts().all(|layout| layout == Layout::InputReduced) { "Input pair" } else { "Constant pair" };
    let layout = source.row("layout", "Layout", |analysis| {
        let label = format!("layout, setup {}", analysis.setup.letter);
        Cell::default().with_entry(EntryKind::Layout, label, analysis.setup.layout.words())
    });
    let constant = source.row("constant", label, |analysis| match (analysis.setup.layout, analysis.setup.constant) {
        (Layout::TwoShaft, _) => Cell::absent("none: one mesh a gear"),
        (_, Some(mesh)) => entry(source, analysis, ratio_of_pair(mesh), SetupField::Constant, "constant pair"),
        (_, None) => entry(source, analysis, Cell::default(), SetupField::Constant, "constant pair"),
    });
    vec![layout, constant]
}

fn ratio_of_pair(mesh: crate::gearing::Mesh) -> Cell {
    let figure = Figure::ratio("constant.ratio", mesh.ratio(), 3);
    Cell::line([drive_working(figure, FinalDrive::Pair(mesh)).into()])
}

/// The figure of two gears or of a typed ratio with how it came about.
fn drive_working(figure: Figure, drive: FinalDrive) -> Figure {
    match drive {
        FinalDrive::Pair(mesh) => {
            let filled = equation(&format!("{}/{}", mesh.driven, mesh.driver), mesh.ratio());
            figure.by("i = driven teeth ÷ driving teeth", filled, "plain kinematics")
        }
        FinalDrive::Plain(ratio) => figure.by("i as typed", equation(&ratio.to_string(), ratio), "typed, not counted"),
    }
}

/// The extra stages, and the way to one more.
pub fn stage_rows(source: Source<'_>) -> Vec<Row> {
    let stages = |analysis: &Analysis| source.job.setup(analysis.setup.id).map_or(0, |setup| setup.stages.len());
    let most = source.setups.iter().map(stages).max().unwrap_or(0);
    let stage_row = |at: usize| {
        source.row(format!("stage-{}", at + 1), format!("{} extra stage", ordinal(at)), |analysis| stage_cell(source, analysis, at))
    };
    let mut rows: Vec<Row> = (0..most).map(stage_row).collect();
    rows.push(source.row("stages", "Overdrive, other stages", |analysis| {
        let many = stages(analysis);
        let cell = Cell::line([Piece::words(if many == 0 { "none".to_owned() } else { format!("{many} given above") })]);
        if many < crate::job::MOST_STAGES {
            cell.with_entry(EntryKind::AddStage, format!("add a stage, setup {}", analysis.setup.letter), "")
        } else {
            cell
        }
    }));
    rows
}

fn stage_cell(source: Source<'_>, analysis: &Analysis, at: usize) -> Cell {
    let Some(typed) = source.job.setup(analysis.setup.id).and_then(|setup| setup.stages.get(at)) else { return Cell::absent("none") };
    let drive = analysis.setup.stages.as_ref().and_then(|stages| stages.get(at)).map(|stage| stage.drive);
    let cell = match drive {
        Some(drive) => {
            let figure = Figure::ratio(format!("stage_{}.ratio", at + 1), drive.ratio(), 3);
            Cell::line([drive_working(figure, drive).into()]).and_maybe(switched_words(analysis, at).map(Piece::words))
        }
        None => Cell::needed("needs its teeth or ratio"),
    };
    let cell = entry(source, analysis, cell, SetupField::StageName(at), "name of the stage");
    let cell = entry(source, analysis, cell, SetupField::Stage(at), "teeth or ratio of the stage, driven over driver");
    let cell = entry(source, analysis, cell, SetupField::StageGears(at), "gears it is switched in");
    let cell = entry(source, analysis, cell, SetupField::StageRest(at), "teeth or ratio when it is out");
    let label = format!("what the stage is, setup {}", analysis.setup.letter);
    let cell = cell.with_entry(EntryKind::StageKind(at), label, kind_words(&typed.kind));
    cell.with_entry(EntryKind::StagePlace(at), format!("place of the stage, setup {}", analysis.setup.letter), place_words(typed.place))
}
