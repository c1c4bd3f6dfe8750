//! A whole job in the fragment of a link: `#j=1.` and the job's compact JSON, deflated (RFC 1951), in base64url (RFC 4648 section 5).
//!
//! A browser never sends the fragment to a server, so the job travels from reader to reader alone.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::{deflate, inflate};

use super::file::{self, FileError};
use super::{Job, Quote};
use crate::problem::Explain;

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
    /// The job makes a link that programs would cut.
    TooLong {
        /// Its length in characters.
        characters: usize,
    },
    /// Written by a newer version.
    Newer {
        /// The version it names.
        version: String,
    },
    /// Cut or changed on its way.
    Damaged,
    /// What it carries is no job.
    NoJob(FileError),
}

impl Explain for LinkError {
    fn what(&self) -> String {
        match self {
            Self::TooLong { characters } => {
                format!("this job makes a link of {characters} characters, and many programs cut links longer than {LONGEST}")
            }
            Self::Newer { version } => format!("the link was made by a newer version (shape {version}, this one knows {VERSION})"),
            Self::Damaged => "the link was cut or changed on its way".into(),
            Self::NoJob(why) => format!("the link carries no job that can be opened: {}", why.what()),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::TooLong { .. } => "save the job as a file and send that".into(),
            Self::Newer { .. } => "load the page again to get the newer version, then open the link again".into(),
            Self::Damaged | Self::NoJob(_) => "ask for the link again, or for the job as a file".into(),
        }
    }
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
    let text = serde_json::to_string(job).unwrap_or_default();
    let packed = URL_SAFE_NO_PAD.encode(deflate::compress_to_vec(text.as_bytes(), LEVEL));
    let fragment = format!("{MARK}{VERSION}.{packed}");
    if fragment.len() > LONGEST { Err(LinkError::TooLong { characters: fragment.len() }) } else { Ok(fragment) }
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
        return Err(if is_number { LinkError::Newer { version: version.to_owned() } } else { LinkError::Damaged });
    }
    let packed = URL_SAFE_NO_PAD.decode(packed.trim_end()).map_err(|_| LinkError::Damaged)?;
    let text = inflate::decompress_to_vec_with_limit(&packed, file::LONGEST).map_err(|_| LinkError::Damaged)?;
    let text = String::from_utf8(text).map_err(|_| LinkError::Damaged)?;
    file::from_text(&text).map_err(LinkError::NoJob)
}
