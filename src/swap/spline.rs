//! A spline as people tell it, `10 x 1 1/8 in`, `26 x 28.5 x 25.4 mm`, `10 straight x 28.6`, and how two of them agree.

use crate::units::{Length, System, UnitError, limits, number, read as read_quantity};

use super::with_shared_unit;

/// A spline, as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spline {
    /// How many teeth.
    pub count: u16,
    /// Over the tops of its teeth.
    pub outside: Option<Length>,
    /// Between them, at the root.
    pub root: Option<Length>,
    /// The form of its teeth, where that is said.
    pub form: Option<Form>,
}

/// The form of a spline's teeth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Sides side by side.
    Straight,
    /// Sides curved as a gear's.
    Involute,
}

/// How two splines agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Agreement {
    /// Count and size agree. The form of the teeth is not measured by that: one is slid onto the other before anything is ordered.
    BySize,
    /// The counts agree, and a size is missing.
    ByCount,
    /// Other counts.
    OtherCount,
    /// The same count on another diameter.
    OtherSize,
    /// Straight beside involute teeth.
    OtherForm,
}

/// Why a text is no spline.
#[derive(Clone, Debug, PartialEq)]
pub enum SplineError {
    /// No count stands in front, or one that no shaft has: what stands there.
    Count(String),
    /// More than an outside and a root, or both alike: what was typed.
    Sizes(String),
    /// A root far inside its outside: one of them is in another unit; what was typed.
    Units(String),
    /// A size that cannot be read.
    Size(UnitError),
}

explain! { SplineError:
    Self::Count(text) => format!("“{}” is no number of splines", number::clip(text)),
        "count them, 4 to 80, and type the count in front, as in 10 x 1 1/8 in";
    Self::Sizes(text) => format!("“{}” has no outside and root of its own", number::clip(text)),
        "type the count, the outside and, where it is measured, the root: 10 x 28.6 x 23.2 mm";
    Self::Units(text) => format!("“{}” has a root far inside its outside", number::clip(text)),
        "put the unit behind each size: 10 x 1 1/8 in x 23.2 mm";
    Self::Size(why) => why.what(), why.what_to_do();
}

/// Sizes further apart than this are two splines: 1 %, more than wear and a caliper's slip (common practice, no published source).
const SAME_WITHIN: f64 = 0.01;
/// No root is a smaller share of its outside: 4 teeth of a module have 2.2/5 (ISO 4156, from memory).
const LEAST_ROOT: f64 = 0.44;
/// Words that only say what it is.
const SILENT: [&str; 5] = ["spline", "splines", "tooth", "teeth", "sided"];

impl Spline {
    /// Reads a spline: its count, then outside and root in either order.
    ///
    /// # Errors
    /// When there is no count of 4 to 80, when there are more than two sizes, or one of them cannot be read.
    ///
    /// ```
    /// use layshaft::swap::Spline;
    /// use layshaft::units::{System, show, unit};
    /// let spline = Spline::read("10 x 1 1/8 in", System::Metric)?;
    /// // 1.125 × 25.4
    /// assert_eq!(spline.outside.map(|outside| show(&outside, &unit::MM, 3)).as_deref(), Some("28.575 mm"));
    /// # Ok::<(), layshaft::swap::SplineError>(())
    /// ```
    pub fn read(text: &str, system: System) -> Result<Self, SplineError> {
        let (form, plain) = form_of(text);
        let mut parts = plain.split(['x', '×', '*']).map(str::trim);
        let first = parts.next().unwrap_or_default();
        let count = first.parse().ok().filter(|count| (4..=80).contains(count));
        let count = count.ok_or_else(|| SplineError::Count(first.to_owned()))?;
        let sizes: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
        let size = |text: String| read_quantity(&text, system, &limits::FIT_DIAMETER).map_err(SplineError::Size);
        let sizes = with_shared_unit(&sizes).into_iter().map(size).collect::<Result<Vec<Length>, SplineError>>()?;
        let (outside, root) = match *sizes.as_slice() {
            [] => (None, None),
            [outside] => (Some(outside), None),
            [one, other] if one > other => (Some(one), Some(other)),
            [one, other] if one < other => (Some(other), Some(one)),
            _ => return Err(SplineError::Sizes(text.trim().to_owned())),
        };
        if outside.zip(root).is_some_and(|(outside, root)| root < outside * LEAST_ROOT) {
            return Err(SplineError::Units(text.trim().to_owned()));
        }
        Ok(Self { count, outside, root, form })
    }

    /// How it agrees with another.
    ///
    /// Model: counts alike, outsides within 1 % of each other, forms not said to differ (common practice, no published source).
    ///
    /// ```
    /// use layshaft::swap::{Agreement, Spline};
    /// use layshaft::units::System;
    /// let read = |text| Spline::read(text, System::Inch);
    /// assert_eq!(read("10 x 1 1/8")?.beside(&read("10 x 28.5 mm")?), Agreement::BySize);
    /// assert_eq!(read("10 x 1 1/8")?.beside(&read("10 x 1")?), Agreement::OtherSize);
    /// // By its count alone nothing is settled.
    /// assert_eq!(read("23")?.beside(&read("23 x 1")?), Agreement::ByCount);
    /// # Ok::<(), layshaft::swap::SplineError>(())
    /// ```
    pub fn beside(&self, other: &Self) -> Agreement {
        let apart = |pair: (Length, Length)| (pair.0 - pair.1).value.abs() > SAME_WITHIN * pair.1.value.max(pair.0.value);
        let sizes = self.outside.zip(other.outside);
        if self.count != other.count {
            Agreement::OtherCount
        } else if sizes.is_some_and(apart) {
            Agreement::OtherSize
        } else if self.form.zip(other.form).is_some_and(|(own, other)| own != other) {
            Agreement::OtherForm
        } else if sizes.is_none() {
            Agreement::ByCount
        } else {
            Agreement::BySize
        }
    }
}

/// The form that a text names, and the text without the words for it.
fn form_of(text: &str) -> (Option<Form>, String) {
    let mut form = None;
    let mut plain: Vec<String> = Vec::new();
    for word in text.to_ascii_lowercase().replace('-', " ").split_whitespace() {
        match word {
            "straight" => form = Some(Form::Straight),
            "involute" => form = Some(Form::Involute),
            word if SILENT.contains(&word) => {}
            word => plain.push(word.to_owned()),
        }
    }
    (form, plain.join(" "))
}
