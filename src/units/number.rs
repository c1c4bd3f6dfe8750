//! Bare numbers: how they are typed (`2 1/4`, `19,05`, `6,500`, `1 250`) and how they are shown.

/// The readings a text's leading number can have, likeliest first.
pub type Readings = [Option<f64>; 2];

/// Splits a text into the readings of its leading number and what stands behind it.
///
/// Accepts a sign, decimal point or comma, thousands marked by comma, blank or apostrophe, and a trailing fraction (`2 1/4`).
/// Answers `None` where the text does not begin with a number.
///
/// ```
/// use layshaft::units::number::leading;
/// assert_eq!(leading("2 1/4 in"), Some(([Some(2.25), None], " in")));
/// // Thousands first, then decimals.
/// assert_eq!(leading("3,909"), Some(([Some(3_909.0), Some(3.909)], "")));
/// assert_eq!(leading("direct"), None);
/// ```
pub fn leading(text: &str) -> Option<(Readings, &str)> {
    let text = text.trim();
    let (sign, body) = sign(text);
    if let Some((value, rest)) = fraction(body) {
        return Some(([Some(sign * value), None], rest));
    }
    let end = body.char_indices().find(|&(at, c)| !belongs(body, at, c)).map_or(body.len(), |(at, _)| at);
    let (digits, rest) = body.split_at(end);
    let readings = decimal(digits);
    readings[0].or(readings[1])?;
    Some((readings.map(|reading| reading.map(|value| sign * value)), rest))
}

fn sign(text: &str) -> (f64, &str) {
    match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    }
}

/// Whether the character at `at` belongs to the number: a digit, a mark, or a blank before a whole group of three digits.
///
/// A blank before fewer digits parts two numbers, as in `600 1/min`.
fn belongs(text: &str, at: usize, c: char) -> bool {
    let group_follows = || text.get(at + c.len_utf8()..).is_some_and(|rest| rest.bytes().take_while(u8::is_ascii_digit).count() == 3);
    match c {
        '0'..='9' | '.' | ',' => true,
        ' ' | '\u{a0}' | '\u{202f}' | '\'' | '’' => at > 0 && group_follows(),
        _ => false,
    }
}

/// `2 1/4`, `1/4` or `2-1/4`, with the rest behind it.
fn fraction(text: &str) -> Option<(f64, &str)> {
    let slash = text.find('/')?;
    let (before, after) = (text.get(..slash)?.trim_end(), text.get(slash + 1..)?.trim_start());
    let end = after.find(|c: char| !c.is_ascii_digit()).unwrap_or(after.len());
    let (below, rest) = (after.get(..end)?, after.get(end..)?);
    let (whole, above) = match before.rsplit_once([' ', '-']) {
        Some((whole, above)) => (plain(whole.trim())?, above),
        None => (0.0, before),
    };
    let (above, below) = (plain(above)?, plain(below)?);
    (below > 0.0).then(|| (whole + above / below, rest))
}

/// A run of digits and nothing else.
fn plain(text: &str) -> Option<f64> {
    (!text.is_empty() && text.len() <= 15 && text.bytes().all(|b| b.is_ascii_digit())).then(|| read_decimal(text)).flatten()
}

/// Digits with at most one decimal point, to the nearest `f64`; none for anything else, or where more than 38 digits stand behind the point.
///
/// Model: the digits as a whole number over a power of ten, divided in binary until 64 places are known and whether anything is left, so
/// that the value is rounded once, as `f64::from_str` does. That one reads any float there is and brings 12 kB of tables into the program
/// that a page waits for.
///
/// ```
/// use layshaft::units::number::read_decimal;
/// assert_eq!(read_decimal("19.05"), Some(19.05));
/// assert_eq!(read_decimal("1e3"), None);
/// ```
pub fn read_decimal(text: &str) -> Option<f64> {
    let (whole, behind) = text.split_once('.').unwrap_or((text, ""));
    if whole.is_empty() && behind.is_empty() {
        return None;
    }
    let mut digits = 0_u128;
    for byte in whole.bytes().chain(behind.bytes()) {
        let digit = byte.is_ascii_digit().then(|| byte - b'0')?;
        digits = digits.checked_mul(10)?.checked_add(digit.into())?;
    }
    let below = 10_u128.checked_pow(u32::try_from(behind.len()).ok().filter(|places| *places <= 38)?)?;
    Some(nearest(digits, below))
}

/// `above / below`, rounded once to the nearest value, half of the last place to the even one. `below` is at least 1 and below 2^127.
#[expect(clippy::cast_precision_loss, reason = "this is the one rounding")]
fn nearest(above: u128, below: u128) -> f64 {
    let (mut quotient, mut left) = (above / below, above % below);
    let mut scale = 1.0;
    while left > 0 && quotient < 1 << 63 {
        left *= 2;
        quotient = quotient * 2 + u128::from(left >= below);
        left %= below;
        scale *= 0.5;
    }
    (quotient | u128::from(left > 0)) as f64 * scale
}

/// The readings of digits with marks: thousands first, then decimals.
fn decimal(text: &str) -> Readings {
    let dense: String = text.chars().filter(|c| c.is_ascii_digit() || matches!(c, '.' | ',')).collect();
    if dense.len() > 24 || !dense.bytes().any(|b| b.is_ascii_digit()) {
        return [None, None];
    }
    let thousands = groups_of_three(&dense).then(|| read_decimal(&dense.replace(',', ""))).flatten();
    let decimals = match (dense.matches('.').count(), dense.matches(',').count()) {
        (_, 0) => read_decimal(&dense),
        (0, 1) => read_decimal(&dense.replace(',', ".")),
        // 1.234,5: the European way round
        (1.., 1) => dense
            .split_once(',')
            .filter(|(whole, _)| groups(whole, '.'))
            .and_then(|(whole, behind)| read_decimal(&format!("{}.{behind}", whole.replace('.', "")))),
        _ => None,
    };
    if thousands.is_some() && thousands != decimals { [thousands, decimals] } else { [decimals, None] }
}

/// Whether the commas can mark thousands: each before exactly three digits, none behind the point.
fn groups_of_three(text: &str) -> bool {
    let (whole, behind) = text.split_once('.').unwrap_or((text, ""));
    groups(whole, ',') && !behind.contains([',', '.'])
}

/// Whether `mark` parts the digits into groups of three, the first of them shorter at will but not a lone nought.
fn groups(whole: &str, mark: char) -> bool {
    let mut groups = whole.split(mark);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len()) && first != "0" && groups.all(|group| group.len() == 3)
}

/// A number as [`show`] shows it, with a plus where it is above nothing: `+1.9`, `−4.3`, `0.0`.
///
/// ```
/// use layshaft::units::number::show_signed;
/// assert_eq!(show_signed(1.94, 1), "+1.9");
/// assert_eq!(show_signed(-4.3, 1), "−4.3");
/// assert_eq!(show_signed(0.04, 1), "0.0");
/// ```
pub fn show_signed(value: f64, decimals: usize) -> String {
    let shown = show(value, decimals);
    let is_more = value > 0.0 && shown.bytes().any(|byte| (b'1'..=b'9').contains(&byte));
    if is_more { format!("+{shown}") } else { shown }
}

/// A number as it is shown: a comma at the thousands, a true minus sign, `decimals` digits behind the point.
///
/// ```
/// assert_eq!(layshaft::units::number::show(6500.0, 0), "6,500");
/// assert_eq!(layshaft::units::number::show(-1.3149, 2), "−1.31");
/// ```
pub fn show(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let text = format!("{:.*}", decimals, value.abs());
    let (whole, behind) = text.split_once('.').map_or((text.as_str(), None), |(whole, behind)| (whole, Some(behind)));
    let mut shown = String::with_capacity(text.len() + 4);
    if value < 0.0 && text.bytes().any(|b| (b'1'..=b'9').contains(&b)) {
        shown.push('−');
    }
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            shown.push(',');
        }
        shown.push(digit);
    }
    if let Some(behind) = behind {
        shown.push('.');
        shown.push_str(behind);
    }
    shown
}

/// A typed text cut to a length that fits a sentence.
pub fn clip(text: &str) -> String {
    const LONGEST: usize = 40;
    let mut flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    if let Some((cut, _)) = flat.char_indices().nth(LONGEST) {
        flat.truncate(cut);
        flat.push('…');
    }
    flat
}

/// A place counted from 0 as it is spoken.
///
/// ```
/// use layshaft::units::number::ordinal;
/// assert_eq!([0, 2, 4, 10, 20].map(ordinal), ["1st", "3rd", "5th", "11th", "21st"]);
/// ```
pub fn ordinal(place: usize) -> String {
    let number = place.saturating_add(1);
    match (number % 10, number % 100) {
        (1, rest) if rest != 11 => format!("{number}st"),
        (2, rest) if rest != 12 => format!("{number}nd"),
        (3, rest) if rest != 13 => format!("{number}rd"),
        _ => format!("{number}th"),
    }
}
