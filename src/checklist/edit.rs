//! Changes of a list that are made by pressing and by typing into one step: every other line stays as it is written.

use super::{BAR, Line, Step};

/// A text of a step that is typed by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// A reading, counted from 0.
    Reading(usize),
    /// A note.
    Note,
}

impl Part {
    /// The text of a step.
    pub fn of(self, step: &Step) -> &str {
        match self {
            Self::Reading(at) => step.readings.get(at).map_or("", String::as_str),
            Self::Note => &step.note,
        }
    }
}

/// The list with one step ticked by someone on a day, or open again and by nobody; unchanged where there is no such step.
///
/// ```
/// use layshaft::checklist::edit::tick;
/// let list = "wash the case\ncount the needles | got 40";
/// assert_eq!(tick(list, 1, "JB", "28 Nov 2026"), "wash the case\n[x] count the needles | got 40 | by JB | on 28 Nov 2026");
/// ```
pub fn tick(list: &str, at: usize, by: &str, on: &str) -> String {
    changed(list, at, |step| {
        step.is_done = !step.is_done;
        let (by, on) = if step.is_done { (clean(by.trim(), false), clean(on, false)) } else { Default::default() };
        (step.by, step.on) = (by, on);
    })
}

/// The list with one step answered by someone on a day; answered the same once more it is open again, and nobody's.
///
/// ```
/// use layshaft::checklist::edit::answer;
/// let answered = answer("is the oil low?", 0, "no", "JB", "28 Nov 2026");
/// assert_eq!(answered, "[x] is the oil low? | got no | by JB | on 28 Nov 2026");
/// assert_eq!(answer(&answered, 0, "no", "JB", "28 Nov 2026"), "[ ] is the oil low?");
/// ```
pub fn answer(list: &str, at: usize, answer: &str, by: &str, on: &str) -> String {
    changed(list, at, |step| {
        step.is_done = step.last_reading() != Some(answer);
        step.is_read = step.is_done;
        step.readings = if step.is_done { vec![clean(answer, true)] } else { Vec::new() };
        let (by, on) = if step.is_done { (clean(by.trim(), false), clean(on, false)) } else { Default::default() };
        (step.by, step.on) = (by, on);
    })
}

/// The list with another text in one step.
pub fn put(list: &str, at: usize, part: Part, text: &str) -> String {
    changed(list, at, |step| match part {
        Part::Reading(place) => {
            if step.readings.len() <= place {
                step.readings.resize(place + 1, String::new());
            }
            if let Some(reading) = step.readings.get_mut(place) {
                *reading = clean(text, true);
            }
            while step.readings.last().is_some_and(String::is_empty) {
                step.readings.pop();
            }
        }
        Part::Note => step.note = clean(text, false),
    })
}

/// The list, ready to be reworded: each step that has photographs under its words says so, and keeps them whatever it is called then.
///
/// ```
/// use layshaft::checklist::edit::keep_photographs;
/// let list = keep_photographs("Case:\nwash the case\ntry the threads", |what| what == "wash the case");
/// assert_eq!(list, "Case:\n[ ] wash the case | photographs of wash the case\ntry the threads");
/// ```
pub fn keep_photographs(list: &str, has: impl Fn(&str) -> bool) -> String {
    let many = list.split('\n').count();
    (0..many).fold(list.to_owned(), |list, at| {
        let has_some = list
            .split('\n')
            .nth(at)
            .is_some_and(|line| matches!(Line::read(line), Line::Step(step) if step.photographs.is_empty() && has(step.what.trim())));
        if has_some { changed(&list, at, |step| step.photographs = step.what.trim().to_owned()) } else { list }
    })
}

fn changed(list: &str, at: usize, change: impl FnOnce(&mut Step)) -> String {
    let mut lines: Vec<String> = list.split('\n').map(str::to_owned).collect();
    if let Some(line) = lines.get_mut(at)
        && let Line::Step(mut step) = Line::read(line)
    {
        change(&mut step);
        *line = step.written();
    }
    lines.join("\n")
}

/// A text that does not part a line where it must not.
fn clean(text: &str, is_reading: bool) -> String {
    let parts = |c: char| matches!(c, '\n' | '\r' | BAR) || (is_reading && c == ';');
    text.chars().map(|c| if parts(c) { ' ' } else { c }).collect()
}
