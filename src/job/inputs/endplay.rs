//! The inputs of end play: a stack of measured parts, the play wanted, the kit of shims.

use super::{Kind, Row, inputs, notation};
use crate::job::EndPlay;
use crate::units::{Length, Measured};

inputs! {
    /// The texts about end play.
    EndPlayField of endplay: EndPlay;

    /// The stack, a part a line.
    Stack at stack: Row::new("endplay-stack", "the stack, a part a line; a minus before what is taken off", Kind::Lines)
        .like("case depth 112.40 ±0.02 mm\n- cluster 105.91 ±0.02 mm\n- thrust washer 3.05 mm x2");
    /// The range of play wanted.
    Wanted at wanted: notation("endplay-wanted", "end play wanted", |_, system| Some(Length::usual(system).symbol)).like("0.002 to 0.006 in");
    /// The shims that are left.
    Kit at kit: notation("endplay-kit", "shims left", |_, system| Some(Length::usual(system).symbol)).like("0.10 mm x3, 0.15, 0.20 x2");
    /// The play read once assembled.
    Assembled at assembled: notation("endplay-assembled", "read once assembled, three places", |_, system| Some(Length::usual(system).symbol))
        .like("0.004 0.0045 0.004");
}
