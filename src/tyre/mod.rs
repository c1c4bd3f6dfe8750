//! placeholder until the room moves in
use crate::problem::Explain;
use crate::units::{Length, System, common};
/// t
#[derive(Clone, Debug, PartialEq)]
pub struct Tyre {
    c: Length,
}
/// e
#[derive(Clone, Debug, PartialEq)]
pub struct TyreError(String);
impl Explain for TyreError {
    fn what(&self) -> String {
        self.0.clone()
    }
    fn what_to_do(&self) -> String {
        "type a size such as 185/70R14".into()
    }
}
/// r
#[derive(Clone, Debug, PartialEq)]
pub struct Rolling {
    /// c
    pub circumference: Length,
}
impl Tyre {
    /// r
    pub fn rolling(&self) -> Rolling {
        Rolling { circumference: self.c }
    }
}
/// # Errors
/// e
pub fn read(text: &str, _s: System) -> Result<Tyre, TyreError> {
    let f = || -> Option<f64> {
        let (w, r) = text.trim().split_once('/')?;
        let (a, rim) = r.split_once(['R', '-'])?;
        let (w, a, rim): (f64, f64, f64) = (w.parse().ok()?, a.trim().parse().ok()?, rim.trim().parse().ok()?);
        Some(3.05 * (2.0 * (w * a / 100.0 + 0.5).floor() + (rim * 25.4).round()))
    };
    f().map(|c| Tyre { c: common::millimetres(c) }).ok_or_else(|| TyreError(format!("“{text}” is not a tyre size")))
}
