//! A whole job in the fragment of a link: `#j=1.` and the job's compact JSON, deflated (RFC 1951), in base64url (RFC 4648 section 5).
//!
//! A browser never sends the fragment to a server, so the job travels from reader to reader alone.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::{deflate, inflate};
use serde_json::Value;

use super::file::{self, FileError};
use super::{Job, Quote};

/// What the fragment begins with.
pub const MARK: &str = "#j=";
/// The version this program writes.
const VERSION: &str = "1";
/// The longest fragment that is offered as a link: mail and chat programs cut longer ones (common practice, no published source).
pub const LONGEST: usize = 8_000;
/// The hardest of deflate's ten levels.
const LEVEL: u8 = 9;

/// Why there is no link, or no job in one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// The job makes a link that programs would cut: its length in characters.
    TooLong(usize),
    /// Written by a newer version: the version it names.
    Newer(String),
    /// Cut or changed on its way.
    Damaged,
    /// What it carries is no job.
    NoJob(FileError),
}

explain! { LinkError:
    Self::TooLong(characters) =>
        format!("this job makes a link of {characters} characters, and many programs cut links longer than {LONGEST}"),
        "save the job as a file and send that";
    Self::Newer(version) => format!("the link was made by a newer version (shape {version}, this one knows {VERSION})"),
        "load the page again to get the newer version, then open the link again";
    Self::Damaged => "the link was cut or changed on its way", "ask for the link again, or for the job as a file";
    Self::NoJob(why) => format!("the link carries no job that can be opened: {}", why.what()),
        "ask for the link again, or for the job as a file";
}

/// What of the shop's own words a link carries beside the job. Neither, where nobody says so.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Carries {
    /// Whose job it is.
    pub customer: bool,
    /// Notes, the note to the customer and the quote.
    pub notes: bool,
}

impl Carries {
    /// The job as a link takes it along.
    ///
    /// ```
    /// use layshaft::job::demo;
    /// use layshaft::job::link::Carries;
    /// let sent = Carries::default().of(&demo::job());
    /// assert_eq!((sent.customer.as_str(), sent.notes.as_str(), sent.title), ("", "", demo::job().title));
    /// ```
    pub fn of(self, job: &Job) -> Job {
        let mut sent = job.clone();
        if !self.customer {
            sent.customer.clear();
        }
        if !self.notes {
            sent.notes.clear();
            sent.quote = Quote::default();
        }
        sent
    }

    /// What goes along and what stays, in a sentence.
    pub fn words(self) -> &'static str {
        match (self.customer, self.notes) {
            (false, false) => "Customer, notes and quote stay here; title and car go along.",
            (true, false) => "The customer’s name goes along; notes and quote stay here.",
            (false, true) => "Notes and quote go along; the customer’s name stays here.",
            (true, true) => "Everything goes along: the customer’s name, notes and quote.",
        }
    }
}

/// The fragment that carries a job, all of it, `#` included; see [`Carries::of`].
///
/// # Errors
/// When it would be longer than [`LONGEST`].
pub fn fragment(job: &Job) -> Result<String, LinkError> {
    packed(&serde_json::to_string(job).unwrap_or_default())
}

/// The fragment that carries a document.
fn packed(text: &str) -> Result<String, LinkError> {
    let packed = URL_SAFE_NO_PAD.encode(deflate::compress_to_vec(text.as_bytes(), LEVEL));
    let fragment = format!("{MARK}{VERSION}.{packed}");
    if fragment.len() > LONGEST { Err(LinkError::TooLong(fragment.len())) } else { Ok(fragment) }
}

/// The fragment that carries a job in as few characters as can be, for a code on paper: without what opens as before where it is left
/// out. None where it would be longer than [`LONGEST`].
pub fn short_fragment(job: &Job) -> Option<String> {
    let mut value = serde_json::to_value(job).ok()?;
    let bare = Job { setups: Vec::new(), ..job.clone() };
    let empty = opened_without(serde_json::to_value(bare).ok()?)?;
    let setup = serde_json::to_value(super::Setup::default()).ok()?;
    if let Some(Value::Array(setups)) = value.get_mut("setups") {
        for own in setups {
            leave_out(own, &setup, &NEEDED_OF_A_SETUP);
        }
    }
    leave_out(&mut value, &empty, &NEEDED);
    packed(&value.to_string()).ok()
}

/// What a job opens as that has nothing but the members it needs.
fn opened_without(mut value: Value) -> Option<Value> {
    if let Value::Object(members) = &mut value {
        members.retain(|name, _| NEEDED.contains(&name.as_str()));
    }
    serde_json::to_value(serde_json::from_value::<Job>(value).ok()?).ok()
}

/// The members without which a document is no job.
const NEEDED: [&str; 7] = ["schema", "title", "units", "shift", "cruise", "setups", "next_setup"];
/// Those without which a member of it is no setup.
const NEEDED_OF_A_SETUP: [&str; 5] = ["id", "name", "gearbox", "final_drive", "tyre"];

/// Leaves out the members that are as in another value, but for those that are needed.
fn leave_out(value: &mut Value, other: &Value, needed: &[&str]) {
    let (Value::Object(members), Value::Object(others)) = (value, other) else { return };
    members.retain(|name, member| needed.contains(&name.as_str()) || others.get(name) != Some(member));
}

/// Whether a fragment means to carry a job.
pub fn is_link(fragment: &str) -> bool {
    fragment.starts_with(MARK)
}

/// The job that a fragment carries.
///
/// # Errors
/// When the fragment is damaged, from a newer version, or carries no job.
///
/// ```
/// use layshaft::job::demo;
/// use layshaft::job::link::{LinkError, fragment, open};
/// let job = demo::job();
/// let link = fragment(&job)?;
/// assert_eq!(open(&link)?, job);
/// assert_eq!(open("#j=1.cut"), Err(LinkError::Damaged));
/// # Ok::<(), LinkError>(())
/// ```
pub fn open(fragment: &str) -> Result<Job, LinkError> {
    let (version, packed) = fragment.strip_prefix(MARK).and_then(|rest| rest.split_once('.')).ok_or(LinkError::Damaged)?;
    if version != VERSION {
        let is_number = !version.is_empty() && version.len() < 10 && version.chars().all(|c| c.is_ascii_digit());
        return Err(if is_number { LinkError::Newer(version.to_owned()) } else { LinkError::Damaged });
    }
    let packed = URL_SAFE_NO_PAD.decode(packed.trim_end()).map_err(|_| LinkError::Damaged)?;
    let text = inflate::decompress_to_vec_with_limit(&packed, file::LONGEST).map_err(|_| LinkError::Damaged)?;
    let text = String::from_utf8(text).map_err(|_| LinkError::Damaged)?;
    file::from_text(&text).map_err(LinkError::NoJob)
}
