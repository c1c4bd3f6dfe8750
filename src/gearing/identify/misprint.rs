//! Printed ratios that cannot be as they stand: one that the counted teeth contradict, or a list the wrong way round.

use super::counts::Counted;
use super::printed::Figure;
use crate::gearing::part::Part;
use crate::gearing::teeth::{Mesh, Ratio, decimal};
use crate::gearing::{GearNumber, Layout};
use crate::units::number;

/// A printed ratio that the counts contradict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Misprint {
    /// The gear.
    pub gear: GearNumber,
    /// The figure in the list.
    pub printed: Figure,
    /// What the counts make.
    pub counted: Ratio,
    /// Whether two neighbouring digits of it were swapped.
    pub is_swapped: bool,
}

/// Every printed ratio whose gear is counted whole and comes to another.
pub fn misprints(printed: &[Figure], counted: &[Counted], layout: Layout) -> Vec<Misprint> {
    let teeth = |part: Part| counted.iter().find(|count| count.at == Some(part)).map(|count| count.teeth);
    let mesh = |driver: Part, driven: Part| Some(Mesh { driver: teeth(driver)?, driven: teeth(driven)? }.ratio());
    let constant = if layout == Layout::TwoShaft { Some(Ratio::from_integer(1)) } else { mesh(Part::ConstantDriver, Part::ConstantDriven) };
    let wrong = |(gear, figure): (GearNumber, &Figure)| {
        let counted = super::reading::size(mesh(Part::Driver(gear), Part::Driven(gear))? * constant?);
        let is_wrong = !figure.prints(counted);
        is_wrong.then(|| Misprint { gear, printed: *figure, counted, is_swapped: is_swapped(*figure, counted) })
    };
    GearNumber::each(printed).filter_map(wrong).collect()
}

/// Whether two neighbouring digits of a printed ratio, swapped, make another.
fn is_swapped(printed: Figure, counted: Ratio) -> bool {
    let decimals = usize::try_from(printed.decimals).unwrap_or_default();
    let (printed, counted) = (digits(&printed.shown()), digits(&number::show(decimal(counted), decimals)));
    (1..printed.len()).any(|at| {
        let mut swapped = printed.clone();
        swapped.swap(at - 1, at);
        swapped == counted
    })
}

fn digits(shown: &str) -> Vec<char> {
    shown.chars().filter(char::is_ascii_digit).collect()
}

/// How a list of printed ratios runs where it cannot be one from 1st up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WrongOrder {
    /// Turns of the output for one of the input.
    OutputPerInput,
    /// Top gear stands first.
    TopFirst,
}

/// Whether a list runs the wrong way: ratios that grow, gear by gear.
pub fn wrong_order(printed: &[Figure]) -> Option<WrongOrder> {
    let grows = printed.len() > 1 && printed.windows(2).all(|pair| matches!(pair, [lower, upper] if lower.value < upper.value));
    let first = printed.first()?.value;
    grows.then_some(if first < Ratio::new(6, 10) { WrongOrder::OutputPerInput } else { WrongOrder::TopFirst })
}

/// The ratio that a figure is the other way round, as it would be printed: to two decimals.
pub fn inverted(figure: &Figure) -> String {
    number::show(1.0 / decimal(figure.value), 2)
}
