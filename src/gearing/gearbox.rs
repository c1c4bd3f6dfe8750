//! Gearboxes: their layouts, the path of each gear, and the exact ratio it gives.

use super::printed::PrintedRatio;
use super::teeth::{Mesh, Ratio, Teeth};
use crate::gearing::GearNumber;

worded! {
    /// How a gearbox is laid out.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
    #[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
    #[serde(rename_all = "kebab-case")]
    pub enum Layout {
        /// Input and output in line, a countershaft beside them, its constant pair at the input.
        #[default]
        InputReduced => "input-reduced", "countershaft, reduced at the input";
        /// Input and output in line, a countershaft beside them, its constant pair at the output.
        OutputReduced => "output-reduced", "countershaft, reduced at the output";
        /// An input and an output shaft side by side, one mesh a gear.
        TwoShaft => "two-shaft", "two shafts";
    }
    /// How it is written in a file.
    pub fn id;
    /// How it is said.
    pub fn words;
}

impl Layout {
    /// Every layout, the usual one first.
    pub const ALL: [Self; 3] = [Self::InputReduced, Self::OutputReduced, Self::TwoShaft];

    /// What the pair is called that joins the countershaft to the input or output.
    pub const fn constant_pair(self) -> &'static str {
        match self {
            Self::InputReduced => "input pair",
            Self::OutputReduced | Self::TwoShaft => "constant pair",
        }
    }
}

/// How one forward gear takes its power.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Gear {
    /// Through its own pair of gears.
    Mesh(Mesh),
    /// Input and output locked together; only where they are in line.
    Direct,
    /// Through pairs that are not counted: only the whole ratio is known, as it was printed.
    Printed(PrintedRatio),
}

impl Gear {
    /// Its own pair; none for direct, and where it is not counted.
    pub fn mesh(self) -> Option<Mesh> {
        match self {
            Self::Mesh(mesh) => Some(mesh),
            Self::Direct | Self::Printed(_) => None,
        }
    }

    /// Its ratio as printed, where no more is known of it.
    pub fn printed(self) -> Option<PrintedRatio> {
        match self {
            Self::Printed(printed) => Some(printed),
            Self::Mesh(_) | Self::Direct => None,
        }
    }

    /// Whether input and output are locked together.
    pub fn is_direct(self) -> bool {
        self == Self::Direct
    }

    /// How many meshes carry the power in a box of that layout.
    pub fn meshes_under_load(self, layout: Layout) -> u8 {
        match layout {
            _ if self.is_direct() => 0,
            Layout::TwoShaft => 1,
            Layout::InputReduced | Layout::OutputReduced => 2,
        }
    }

    /// Input turns for one output turn: the product of driven over driver along its path, signed (a two-shaft box turns its output
    /// against its input). `None` where it needs the constant pair and that is not known.
    pub fn ratio(self, layout: Layout, constant: Option<Mesh>) -> Option<Ratio> {
        match (self, layout) {
            (Self::Direct, _) => Some(Ratio::from_integer(1)),
            (Self::Printed(printed), Layout::TwoShaft) => Some(-printed.value),
            (Self::Printed(printed), Layout::InputReduced | Layout::OutputReduced) => Some(printed.value),
            (Self::Mesh(mesh), Layout::TwoShaft) => Some(-mesh.ratio()),
            (Self::Mesh(mesh), Layout::InputReduced | Layout::OutputReduced) => Some(constant?.ratio() * mesh.ratio()),
        }
    }
}

/// What stands between the two gears of reverse to turn the direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Idler {
    /// One gear; its count does not change the ratio, and may be unknown.
    Plain(Option<Teeth>),
    /// Two gears on one spindle.
    Compound {
        /// The gear that meshes with the driver.
        entry: Teeth,
        /// The gear that meshes with the driven gear.
        exit: Teeth,
    },
}

/// How the box goes backwards: what is known of its gears.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reverse {
    /// Through gears.
    Geared(ReverseGears),
    /// Through gears that are not counted: only the whole ratio is known, as it was printed.
    Printed(PrintedRatio),
}

/// The gears of reverse: a driver and a driven gear that do not touch, and the idler between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ReverseGears {
    /// The driving and the driven gear.
    pub pair: Mesh,
    /// What stands between them.
    pub idler: Idler,
}

impl ReverseGears {
    /// Turns of the driver for one turn of the driven gear, without regard to direction.
    pub fn ratio(self) -> Ratio {
        match self.idler {
            Idler::Plain(_) => self.pair.ratio(),
            Idler::Compound { entry, exit } => {
                Ratio::new(entry.exact(), self.pair.driver.exact()) * Ratio::new(self.pair.driven.exact(), exit.exact())
            }
        }
    }
}

impl Reverse {
    /// Its gears, where they are counted.
    pub fn gears(self) -> Option<ReverseGears> {
        match self {
            Self::Geared(gears) => Some(gears),
            Self::Printed(_) => None,
        }
    }

    /// Its ratio as printed, where no more is known of it.
    pub fn printed(self) -> Option<PrintedRatio> {
        match self {
            Self::Printed(printed) => Some(printed),
            Self::Geared(_) => None,
        }
    }

    /// Input turns for one output turn, signed against the forward direction of the same box. `None` where it needs the constant pair
    /// and that is not known.
    pub fn ratio(self, layout: Layout, constant: Option<Mesh>) -> Option<Ratio> {
        let size = match (self, layout) {
            (Self::Printed(printed), _) => printed.value,
            (Self::Geared(gears), Layout::TwoShaft) => gears.ratio(),
            (Self::Geared(gears), Layout::InputReduced | Layout::OutputReduced) => constant?.ratio() * gears.ratio(),
        };
        Some(if layout == Layout::TwoShaft { size } else { -size })
    }
}

/// Why parts make no gearbox.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GearboxError {
    /// A countershaft box without its constant pair.
    NoConstantPair,
    /// A two-shaft box has no constant pair.
    NeedlessConstantPair,
    /// Direct drive where input and output are not in line: the gear.
    DirectInTwoShaft(GearNumber),
    /// Fewer than one or more than eight forward gears: how many were given.
    GearCount(usize),
}

/// A gearbox with 1 to 8 forward gears, lowest first.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Gearbox {
    layout: Layout,
    constant: Option<Mesh>,
    gears: Vec<Gear>,
    reverse: Option<Reverse>,
}

impl Gearbox {
    /// The most forward gears a box can have here.
    pub const MOST_GEARS: usize = 8;

    /// Puts a gearbox together. `constant` is the pair that joins the countershaft to the input or output; a two-shaft box has none,
    /// and it may be unknown where gears are known by their printed ratio and none by its own pair.
    ///
    /// # Errors
    /// When the parts do not make a box of that layout.
    ///
    /// ```
    /// use layshaft::gearing::GearNumber;
    /// use layshaft::gearing::gearbox::{Gear, Gearbox, GearboxError, Layout};
    /// let direct = Gearbox::new(Layout::TwoShaft, None, vec![Gear::Direct], None);
    /// assert_eq!(direct, Err(GearboxError::DirectInTwoShaft(GearNumber::FIRST)));
    /// ```
    pub fn new(layout: Layout, constant: Option<Mesh>, gears: Vec<Gear>, reverse: Option<Reverse>) -> Result<Self, GearboxError> {
        match (layout, constant) {
            (Layout::TwoShaft, Some(_)) => return Err(GearboxError::NeedlessConstantPair),
            (Layout::InputReduced | Layout::OutputReduced, None) if needs_constant(&gears) => return Err(GearboxError::NoConstantPair),
            _ => {}
        }
        if gears.is_empty() || gears.len() > Self::MOST_GEARS {
            return Err(GearboxError::GearCount(gears.len()));
        }
        if layout == Layout::TwoShaft
            && let Some(at) = gears.iter().position(|gear| gear.is_direct())
        {
            return Err(GearboxError::DirectInTwoShaft(GearNumber::at(at)));
        }
        Ok(Self { layout, constant, gears, reverse })
    }

    /// Whether every gear is counted or direct, so that what hangs on teeth can be said of the whole box.
    pub fn is_counted(&self) -> bool {
        !self.gears.iter().any(|gear| gear.printed().is_some())
    }

    /// How the box is laid out.
    pub fn layout(&self) -> Layout {
        self.layout
    }

    /// The pair that joins the countershaft to the input or to the output.
    pub fn constant(&self) -> Option<Mesh> {
        self.constant
    }

    /// The forward gears, lowest first.
    pub fn gears(&self) -> &[Gear] {
        &self.gears
    }

    /// The numbers of its forward gears, lowest first.
    pub fn numbers(&self) -> impl DoubleEndedIterator<Item = GearNumber> + ExactSizeIterator + Clone + use<> {
        GearNumber::lowest(self.gears.len())
    }

    /// Reverse, where its teeth or its ratio are known.
    pub fn reverse(&self) -> Option<Reverse> {
        self.reverse
    }

    /// Input turns for one output turn in a forward gear, as [`Gear::ratio`]. `None` where there is no such gear.
    ///
    /// ```
    /// use layshaft::gearing::{Gear, GearNumber, Gearbox, Layout, Mesh, Ratio};
    /// # fn example() -> Option<()> {
    /// let gears = vec![Gear::Mesh(Mesh::new(18, 37)?), Gear::Direct];
    /// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), gears, None).ok()?;
    /// // 30/25 × 37/18 = 1,110/450
    /// assert_eq!(gearbox.ratio(GearNumber::FIRST), Some(Ratio::new(37, 15)));
    /// assert_eq!(gearbox.ratio(GearNumber::SECOND), Some(Ratio::new(1, 1)));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn ratio(&self, gear: GearNumber) -> Option<Ratio> {
        gear.of(&self.gears)?.ratio(self.layout, self.constant)
    }

    /// Every pair whose counts are known, the constant pair first, reverse left out.
    pub fn pairs(&self) -> impl Iterator<Item = Mesh> + '_ {
        self.pairs_of_gears().map(|(_, mesh)| mesh)
    }

    /// As [`Gearbox::pairs`], each with the forward gear it belongs to; none for the constant pair.
    pub fn pairs_of_gears(&self) -> impl Iterator<Item = (Option<GearNumber>, Mesh)> + '_ {
        let forward = GearNumber::each(&self.gears).filter_map(|(at, gear)| Some((Some(at), gear.mesh()?)));
        self.constant.map(|mesh| (None, mesh)).into_iter().chain(forward)
    }

    /// The ratios of all forward gears, lowest gear first, signed as in [`Gearbox::ratio`].
    pub fn ratios(&self) -> Vec<Ratio> {
        self.numbers().filter_map(|gear| self.ratio(gear)).collect()
    }

    /// Input turns for one output turn in reverse, signed against the forward direction of the same box. `None` without reverse, and
    /// where its pair needs a constant pair that is not known.
    ///
    /// ```
    /// use layshaft::gearing::{Gear, Gearbox, Idler, Layout, Mesh, Ratio, Reverse, ReverseGears};
    /// # fn example() -> Option<()> {
    /// let reverse = Reverse::Geared(ReverseGears { pair: Mesh::new(16, 33)?, idler: Idler::Plain(None) });
    /// let gearbox = Gearbox::new(Layout::InputReduced, Mesh::new(25, 30), vec![Gear::Direct], Some(reverse)).ok()?;
    /// // 30/25 × 33/16 = 990/400, against the forward direction
    /// assert_eq!(gearbox.reverse_ratio(), Some(Ratio::new(-99, 40)));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn reverse_ratio(&self) -> Option<Ratio> {
        self.reverse?.ratio(self.layout, self.constant)
    }

    /// The gears of reverse, where they are counted.
    pub fn reverse_gears(&self) -> Option<ReverseGears> {
        self.reverse?.gears()
    }
}

/// Whether a box in line with these gears cannot be without its constant pair: a gear's own pair needs it, and where every gear is
/// direct it is all there is.
pub fn needs_constant(gears: &[Gear]) -> bool {
    gears.iter().any(|gear| gear.mesh().is_some()) || gears.iter().all(|gear| gear.is_direct())
}

explain! { GearboxError:
    Self::NoConstantPair => "a box with a countershaft needs its constant pair", "type the input or output pair, such as 25/30";
    Self::NeedlessConstantPair => "a two-shaft box has no constant pair", "leave the constant pair blank, or choose another layout";
    Self::DirectInTwoShaft(gear) => format!("gear {} of a two-shaft box cannot be direct", gear.number()),
        "type both counts of the pair, such as 31/30";
    Self::GearCount(0) => "no forward gears are given", format!("type from 1 to {} gears", Gearbox::MOST_GEARS);
    Self::GearCount(given) => format!("{given} forward gears are more than a box can have here"),
        format!("type from 1 to {} gears", Gearbox::MOST_GEARS);
}
