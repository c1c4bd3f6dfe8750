//! How gears are written: the texts that [`super::read`] takes, the gear on the input or output line over the countershaft's.

use super::gearbox::{Gear, Idler, Layout, Reverse};
use super::teeth::Mesh;
use super::{PrintedRatio, read};

/// A forward gear: `direct`, its counts, or its printed ratio.
pub fn gear(gear: Gear, layout: Layout) -> String {
    match gear {
        Gear::Direct => "direct".to_owned(),
        Gear::Mesh(mesh) => pair(mesh, layout),
        Gear::Printed(ratio) => printed(ratio),
    }
}

/// A printed ratio, with `:1` behind it where it could be taken for two counts.
fn printed(ratio: PrintedRatio) -> String {
    let shown = ratio.shown();
    if read::counts(&shown).is_ok() { format!("{shown}:1") } else { shown }
}

/// A pair of gears on the same two shafts as a forward gear's.
///
/// ```
/// use layshaft::gearing::{Layout, Mesh, write};
/// let typed = Mesh::new(18, 37).map(|mesh| write::pair(mesh, Layout::InputReduced));
/// assert_eq!(typed.as_deref(), Some("37/18"));
/// ```
pub fn pair(mesh: Mesh, layout: Layout) -> String {
    over(mesh, layout == Layout::OutputReduced)
}

/// Reverse: its pair, or its printed ratio.
pub fn reverse(reverse: Reverse, layout: Layout) -> String {
    match reverse {
        Reverse::Geared(gears) => pair(gears.pair, layout),
        Reverse::Printed(ratio) => printed(ratio),
    }
}

/// The constant pair.
pub fn constant(mesh: Mesh, layout: Layout) -> String {
    over(mesh, layout != Layout::OutputReduced)
}

/// The reverse idler; nothing where its count is not known.
pub fn idler(idler: Idler) -> String {
    match idler {
        Idler::Plain(teeth) => teeth.map(|teeth| teeth.to_string()).unwrap_or_default(),
        Idler::Compound { entry, exit } => format!("{entry}/{exit}"),
    }
}

fn over(mesh: Mesh, driver_first: bool) -> String {
    let Mesh { driver, driven } = mesh;
    if driver_first { format!("{driver}/{driven}") } else { format!("{driven}/{driver}") }
}
