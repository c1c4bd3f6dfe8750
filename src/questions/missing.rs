//! What must still be typed, and what it would give: said once for all setups that lack it.

use super::alike::listed;
use super::{Analysis, Source};
use crate::sheet::said::marks;
use crate::sheet::{Cell, Row};

/// Something that must be typed, in words with their article, and whether a setup lacks it.
pub type Want<'a> = (&'a str, &'a dyn Fn(&Analysis) -> bool);

/// What a setup needs before its gears have road speeds.
pub const ON_THE_ROAD: [Want<'static>; 5] = [
    ("the missing tooth counts", &|analysis| analysis.gears().ladder.is_none()),
    ("the ring and pinion", &|analysis| analysis.setup.final_drive.is_none()),
    ("the extra stages", &|analysis| analysis.setup.stages.is_none()),
    ("the tyre", &|analysis| analysis.setup.tyre.is_none()),
    ("the tread worn off", &|analysis| analysis.setup.tyre.is_some() && analysis.setup.rolling.is_none()),
];

/// `Type the tyre of [B] to get road speeds.`; nothing where no setup lacks anything.
///
/// Where every setup lacks it, none is named.
pub fn said(source: Source<'_>, wants: &[Want<'_>], gives: &str) -> Option<String> {
    let mut lacks: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
    for (words, lacking) in wants {
        let columns: Vec<usize> = (0..).zip(source.setups).filter(|(_, analysis)| lacking(analysis)).map(|(column, _)| column).collect();
        match lacks.iter_mut().find(|(others, _)| *others == columns) {
            _ if columns.is_empty() => {}
            Some((_, fields)) => fields.push((*words).to_owned()),
            None => lacks.push((columns, vec![(*words).to_owned()])),
        }
    }
    let of = |columns: &[usize]| {
        if columns.len() == source.setups.len() { String::new() } else { format!(" of {}", marks(columns)) }
    };
    let fields: Vec<String> = lacks.iter().map(|(columns, fields)| format!("{}{}", listed(fields), of(columns))).collect();
    (!fields.is_empty()).then(|| format!("Type {} to get {gives}.", listed(&fields)))
}

/// The same as a row: each setup that lacks something says what, and what it would give.
pub fn row(source: Source<'_>, wants: &[Want<'_>], gives: &str) -> Option<Row> {
    let lacks = |analysis: &Analysis| wants.iter().filter(|(_, lacking)| lacking(analysis)).map(|(words, _)| (*words).to_owned()).collect();
    let row = source.row("missing", "Still needed", |analysis| {
        let fields: Vec<String> = lacks(analysis);
        if fields.is_empty() { Cell::default() } else { Cell::needed(format!("{}, for {gives}", listed(&fields))) }
    });
    row.cells.iter().any(|cell| !cell.lines.is_empty()).then_some(row)
}
