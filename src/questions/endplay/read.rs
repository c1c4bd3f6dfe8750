//! What is typed about end play, as far as it can be read.

use crate::catalogue::{Entry, Part};
use crate::fits::several;
use crate::fits::shims;
use crate::fits::stack::Heat;
use crate::fits::{FitTextError, Material, PlayRange, Shim, ShimsGo, Stack, read, temperature, wanted};
use crate::job::{Bench, EndPlayField, InputProblem};
use crate::problem::Problem;
use crate::questions::reader::Reader;
use crate::questions::{Source, warmth};
use crate::sheet::catalogue::thickness_of;
use crate::units::{Length, ThermodynamicTemperature, Typed, limits};

/// What was measured, what is wanted, and what there is to reach it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measured {
    /// The stack; none where nothing is typed, or a line of it cannot be read.
    pub stack: Option<Stack>,
    /// The play wanted.
    pub wanted: Option<PlayRange>,
    /// The shims that are left.
    pub kit: Vec<Shim>,
    /// Whether they are those of the shelf.
    pub is_kit_of_shelf: bool,
    /// Where they go.
    pub go: Option<ShimsGo>,
    /// The play that was read once assembled, at each place.
    pub assembled: Vec<Length>,
    /// The case's material; what is inside is steel.
    pub case: Option<Material>,
    /// How warm the parts were, and how warm the box gets.
    pub temperatures: [ThermodynamicTemperature; 2],
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

impl Measured {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        let typed = &bench.endplay;
        let mut problems = Vec::new();
        let (stack, errors) = read::stack(&typed.stack);
        let is_whole = errors.is_empty() && !stack.parts.is_empty();
        refuse(&mut problems, EndPlayField::Stack, &errors);
        let wanted = Reader::new(&mut problems).read(&typed.wanted, EndPlayField::Wanted, wanted::play);
        let (kit, errors) = read::kit(&typed.kit);
        refuse(&mut problems, EndPlayField::Kit, &errors);
        let lengths = |typed: &Typed| several::lengths(typed, &limits::PLAY);
        let assembled = Reader::new(&mut problems).read(&typed.assembled, EndPlayField::Assembled, lengths);
        let temperatures = warmth::read(bench, &mut problems);
        Self {
            stack: is_whole.then_some(stack),
            wanted,
            kit,
            is_kit_of_shelf: false,
            assembled: assembled.unwrap_or_default(),
            go: typed.shims_go.value(),
            case: typed.case.value().map(|case| case.0),
            temperatures,
            problems,
        }
    }

    /// Reads what is typed; where no shims are, those of the shop's own shelf are there.
    pub fn of_source(source: Source<'_>) -> Self {
        let mut measured = Self::of(&source.job.bench);
        if source.job.bench.endplay.kit.is_blank() {
            measured.kit = kit_of(source.shelves.own);
            measured.is_kit_of_shelf = !measured.kit.is_empty();
        }
        measured
    }

    /// How much warmer than at the bench the box gets, and what it is made of.
    pub fn heat(&self) -> Option<Heat> {
        let [bench, working] = self.temperatures;
        Some(Heat { case: self.case?, inside: Material::Steel, warmer_k: temperature::warmer_k(working, bench) })
    }
}

/// The shims on a shelf; one that is there and not counted is there once.
fn kit_of(own: &[Entry]) -> Vec<Shim> {
    let mut kit = Vec::new();
    for entry in own {
        let left = entry.count().unwrap_or(u32::from(entry.in_stock()));
        if let (Ok(Part::SmallPart(Some(thickness))), 1..) = (entry.part(), left) {
            shims::lay(&mut kit, Shim { label: thickness_of(entry), thickness, left });
        }
    }
    kit
}

fn refuse(problems: &mut Vec<InputProblem>, field: EndPlayField, errors: &[FitTextError]) {
    problems.extend(errors.iter().map(|why| Problem::stop(field.into(), why)));
}
