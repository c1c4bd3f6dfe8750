//! A text as a square of dark and light that a phone reads: a QR code as in ISO/IEC 18004, drawn up by a library.

use qrcodegen::{QrCode, QrCodeEcc};

/// The blank margin around a code, in modules, without which it is not found (ISO/IEC 18004).
pub const MARGIN: usize = 4;

/// A square of dark and light modules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Square {
    /// Rows from top to bottom; a module is `true` where it is dark.
    pub rows: Vec<Vec<bool>>,
}

impl Square {
    /// The code of a text, a seventh of which may be smudged; none where the text is longer than a code holds (2,331 bytes).
    ///
    /// ```
    /// use layshaft::qr::Square;
    /// // The smallest code has 21 modules to a side; each of its three finder marks begins with seven dark modules.
    /// let square = Square::of("2.467").ok_or("too long")?;
    /// assert_eq!((square.rows.len(), &square.rows[0][..8]), (21, &[true, true, true, true, true, true, true, false][..]));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn of(text: &str) -> Option<Self> {
        let code = QrCode::encode_text(text, QrCodeEcc::Medium).ok()?;
        let side = 0..code.size();
        Some(Self { rows: side.clone().map(|y| side.clone().map(|x| code.get_module(x, y)).collect()).collect() })
    }

    /// Modules to a side, the margin included.
    pub fn side(&self) -> usize {
        self.rows.len() + 2 * MARGIN
    }

    /// The dark modules as the outline of an SVG path, one unit a module, the margin around it.
    pub fn path(&self) -> String {
        self.rows.iter().enumerate().flat_map(|(y, row)| runs(row).map(move |(x, many)| bar(x + MARGIN, y + MARGIN, many))).collect()
    }
}

/// The dark runs of a row: where each begins, and how many modules it has.
fn runs(row: &[bool]) -> impl Iterator<Item = (usize, usize)> {
    let run = |x: &mut usize, run: &[bool]| {
        let from = *x;
        *x += run.len();
        Some((from, run.len(), run.first() == Some(&true)))
    };
    row.chunk_by(|one, next| one == next).scan(0, run).filter(|(.., is_dark)| *is_dark).map(|(from, many, _)| (from, many))
}

fn bar(x: usize, y: usize, many: usize) -> String {
    format!("M{x} {y}h{many}v1h-{many}z")
}
