//! A gear set: the teeth of one gearbox as they were typed, and the gearbox they make.

use serde::{Deserialize, Serialize};

use super::entry::{Entry, Kind, kept};
use super::line::{self, LineError};
use super::table::Row;
use crate::gearing::{Gearbox, Layout, Reverse, check, read};
use crate::problem::Problem;

pub(super) const COLUMNS: &[&str] = &[
    "id", "name", "maker", "layout", "constant", "gear_1", "gear_2", "gear_3", "gear_4", "gear_5", "gear_6", "gear_7", "gear_8", "reverse",
    "idler", "note", "in_stock",
];

/// A gear set, its tooth counts kept exactly as they were typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct GearSet {
    /// The id, which stays when the set is edited.
    pub id: String,
    /// The name people know it by.
    pub name: String,
    /// Who made it.
    pub maker: String,
    /// How the box is laid out.
    pub layout: Layout,
    /// The constant pair: the gear on the input or output line over the countershaft's. Blank in a two-shaft box.
    pub constant: String,
    /// The forward gears, lowest first, each as [`read::gear`] takes it.
    pub gears: Vec<String>,
    /// The two gears of reverse in the same order, blank where they are not known.
    pub reverse: String,
    /// The reverse idler: nothing, its count, or entry and exit counts of a compound idler.
    pub idler: String,
    /// A word on its use.
    pub note: String,
    /// Whether one is on the shelf.
    pub in_stock: bool,
    /// Whether it is the shop's own, not built in.
    #[serde(skip)]
    pub own: bool,
}

impl GearSet {
    /// The gearbox these teeth make.
    ///
    /// # Errors
    /// One problem for each field that cannot be used: `constant`, `gear.1` and so on, `reverse`, `idler`, `layout`.
    pub fn gearbox(&self) -> Result<Gearbox, Vec<Problem>> {
        let mut problems = Vec::new();
        let mut keep = |field: String, why: &read::GearTextError| problems.push(Problem::stop(field, why));
        let constant = match self.layout {
            Layout::TwoShaft if self.constant.trim().is_empty() => None,
            layout => read::constant(&self.constant, layout).map_err(|why| keep("constant".into(), &why)).ok(),
        };
        let gears: Vec<_> = self
            .gears
            .iter()
            .enumerate()
            .filter_map(|(at, text)| read::gear(text, self.layout).map_err(|why| keep(format!("gear.{}", at + 1), &why)).ok())
            .collect();
        let pair = (!self.reverse.trim().is_empty()).then(|| read::pair(&self.reverse, self.layout));
        let pair = pair.and_then(|pair| pair.map_err(|why| keep("reverse".into(), &why)).ok());
        let idler = read::idler(&self.idler).map_err(|why| keep("idler".into(), &why)).ok();
        if !problems.is_empty() {
            return Err(problems);
        }
        let reverse = pair.zip(idler).map(|(pair, idler)| Reverse { pair, idler });
        Gearbox::new(self.layout, constant, gears, reverse).map_err(|why| vec![Problem::stop("layout", &why)])
    }
}

impl Entry for GearSet {
    const KIND: Kind = Kind::GearSets;
    const NAMED: bool = true;
    const KEY: &'static [&'static str] = &["name"];

    kept!(in_stock, name);

    fn cells(&self) -> Vec<String> {
        let gears = (0..Gearbox::MOST_GEARS).map(|at| self.gears.get(at).cloned().unwrap_or_default());
        let head = [&self.id, &self.name, &self.maker].map(Clone::clone).into_iter();
        head.chain([self.layout.id().to_owned(), self.constant.clone()])
            .chain(gears)
            .chain([self.reverse.clone(), self.idler.clone(), self.note.clone(), line::yes_or_no(self.in_stock)])
            .collect()
    }

    fn from_row(row: &Row) -> Result<Self, Vec<Problem>> {
        let mut problems = row.too_long();
        let name = row.needed("name", &mut problems);
        let layout = layout(&row.text("layout")).map_err(|why| problems.push(Problem::stop("layout", &why)));
        let in_stock = row.in_stock(&mut problems);
        let mut gears: Vec<String> = COLUMNS.iter().filter(|column| column.starts_with("gear_")).map(|column| row.text(column)).collect();
        gears.truncate(gears.iter().rposition(|gear| !gear.is_empty()).map_or(0, |last| last + 1));
        let set = Self {
            id: row.text("id"),
            name,
            maker: row.text("maker"),
            layout: layout.unwrap_or_default(),
            constant: row.text("constant"),
            gears,
            reverse: row.text("reverse"),
            idler: row.text("idler"),
            note: row.text("note"),
            in_stock,
            own: false,
        };
        if layout.is_ok() {
            problems.extend(set.gearbox().err().unwrap_or_default());
        }
        if problems.is_empty() { Ok(set) } else { Err(problems) }
    }

    fn problems(&self) -> Vec<Problem> {
        match self.gearbox() {
            Ok(gearbox) => check::doubts(&gearbox).iter().map(|doubt| Problem::caution("gears", doubt)).collect(),
            Err(problems) => problems,
        }
    }

    fn built_in() -> &'static [Self] {
        super::built_in::gear_sets()
    }
}

/// The layout a cell names, without regard to case, blanks and dashes.
fn layout(text: &str) -> Result<Layout, LineError> {
    let plain = |text: &str| text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_lowercase();
    let wanted = plain(text);
    Layout::ALL
        .into_iter()
        .find(|layout| plain(layout.id()) == wanted)
        .ok_or_else(|| if wanted.is_empty() { LineError::Blank { column: "layout" } } else { LineError::Layout { text: text.to_owned() } })
}
