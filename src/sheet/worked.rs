//! A value worked out in the open: operands that say themselves in the digits and units they are shown in, and come to the value.

use crate::units::number;

/// How an operand is joined to what stands before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum By {
    Times,
    Over,
    Plus,
    Minus,
}

/// A value with the digits and the unit it is shown in.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Operand {
    by: By,
    value: f64,
    decimals: usize,
    unit: &'static str,
    is_in_brackets: bool,
}

impl Operand {
    fn new(by: By, value: f64, decimals: usize) -> Self {
        Self { by, value, decimals, unit: "", is_in_brackets: false }
    }

    fn text(&self) -> String {
        let shown = number::show(self.value, self.decimals);
        let shown = if self.unit.is_empty() { shown } else { format!("{shown} {}", self.unit) };
        if self.is_in_brackets { format!("({shown})") } else { shown }
    }
}

/// Products and quotients, added up in the order they are written. It is put into words when it is asked for.
///
/// ```
/// use layshaft::sheet::Worked;
/// // 6,500 × 1.670 ÷ 2.467 = 4,400.08; 1 − 1.670 ÷ 2.467 = 0.32306
/// let lands = Worked::of(6_500.0, 0).times(1.67, 3).over(2.467, 3);
/// assert_eq!((lands.text(), lands.value().round()), ("6,500 × 1.670 ÷ 2.467".into(), 4_400.0));
/// let lost = Worked::of(1.0, 0).minus(1.67, 3).over(2.467, 3).times_unseen(100.0);
/// assert_eq!((lost.text(), (lost.value() * 10.0).round()), ("1 − 1.670 ÷ 2.467".into(), 323.0));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    operands: Vec<Operand>,
    /// What it comes to in units of its own, before it is turned into those of the figure.
    between: Option<Operand>,
    /// What turns it into the figure's unit.
    turned: f64,
    /// How many digits it ends with behind the point, where they are not the figure's.
    digits: Option<usize>,
}

impl Worked {
    /// Begins with a value.
    pub fn of(value: f64, decimals: usize) -> Self {
        Self { operands: vec![Operand::new(By::Plus, value, decimals)], between: None, turned: 1.0, digits: None }
    }

    /// Times a value.
    #[must_use]
    pub fn times(self, value: f64, decimals: usize) -> Self {
        self.and(By::Times, value, decimals)
    }

    /// Divided by a value.
    #[must_use]
    pub fn over(self, value: f64, decimals: usize) -> Self {
        self.and(By::Over, value, decimals)
    }

    /// And a value added.
    #[must_use]
    pub fn plus(self, value: f64, decimals: usize) -> Self {
        self.and(By::Plus, value, decimals)
    }

    /// And a value taken away, with what it is multiplied or divided by behind it.
    #[must_use]
    pub fn minus(self, value: f64, decimals: usize) -> Self {
        self.and(By::Minus, value, decimals)
    }

    fn and(mut self, by: By, value: f64, decimals: usize) -> Self {
        self.operands.push(Operand::new(by, value, decimals));
        self
    }

    /// The unit of the value written last.
    #[must_use]
    pub fn in_unit(mut self, unit: &'static str) -> Self {
        if let Some(last) = self.operands.last_mut() {
            last.unit = unit;
        }
        self
    }

    /// The value written last stands in brackets, for it may be below nothing.
    #[must_use]
    pub fn in_brackets(mut self) -> Self {
        if let Some(last) = self.operands.last_mut() {
            last.is_in_brackets = true;
        }
        self
    }

    /// What it comes to is shown in a unit of its own, one of which is `turned` of the figure's.
    #[must_use]
    pub fn between(mut self, decimals: usize, unit: &'static str, turned: f64) -> Self {
        self.between = Some(Operand { unit, ..Operand::new(By::Plus, self.plain(), decimals) });
        self.turned = turned;
        self
    }

    /// Turned into the figure's unit without a word, as a share into percent.
    #[must_use]
    pub fn times_unseen(mut self, turned: f64) -> Self {
        self.turned = turned;
        self
    }

    /// Ends with so many digits behind the point, in place of the figure's.
    #[must_use]
    pub fn to(mut self, decimals: usize) -> Self {
        self.digits = Some(decimals);
        self
    }

    /// How its value is shown, where that is not as the figure is.
    pub(super) fn own_end(&self) -> Option<String> {
        self.digits.map(|decimals| number::show(self.value(), decimals))
    }

    /// What it comes to, in the figure's unit.
    pub fn value(&self) -> f64 {
        self.plain() * self.turned
    }

    fn plain(&self) -> f64 {
        let (sum, product) = self.operands.iter().fold((0.0, 0.0), |(sum, product), operand| match operand.by {
            By::Times => (sum, product * operand.value),
            By::Over => (sum, product / operand.value),
            By::Plus => (sum + product, operand.value),
            By::Minus => (sum + product, -operand.value),
        });
        sum + product
    }

    /// The operands as they are read.
    pub fn text(&self) -> String {
        let mut text = String::new();
        for operand in &self.operands {
            let sign = match operand.by {
                By::Times => " × ",
                By::Over => " ÷ ",
                By::Plus => " + ",
                By::Minus => " − ",
            };
            if !text.is_empty() {
                text.push_str(sign);
            }
            text.push_str(&operand.text());
        }
        if let Some(between) = &self.between {
            text.push_str(" = ");
            text.push_str(&between.text());
        }
        text
    }
}
