//! Are the invented parts that come with the program offered beside the shop's own?

worded! {
    /// What the shop says about the demo's parts.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
    pub enum DemoParts {
        /// Nothing: they are offered in the demo job, and elsewhere until the shop has an entry of its own.
        #[default]
        Unsaid => "";
        /// They are offered in every job.
        Shown => "shown";
        /// They are offered nowhere.
        Hidden => "hidden";
    }
    /// As it is kept on the device; nothing where nothing was said.
    pub fn id;
}

/// What decides where nothing was said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Whether the shop has any entry of its own.
    pub has_own: bool,
    /// Whether the open job is the demo's.
    pub is_demo_job: bool,
}

impl DemoParts {
    /// Whether they are offered.
    ///
    /// ```
    /// use layshaft::catalogue::{DemoParts, demo::Standing};
    /// let shop = Standing { has_own: true, is_demo_job: false };
    /// assert!(!DemoParts::Unsaid.are_offered(shop));
    /// assert!(DemoParts::Unsaid.are_offered(Standing { has_own: false, ..shop }));
    /// ```
    pub fn are_offered(self, standing: Standing) -> bool {
        match self {
            Self::Unsaid => standing.is_demo_job || !standing.has_own,
            Self::Shown => true,
            Self::Hidden => false,
        }
    }

    /// Why they are offered or not, in a sentence.
    pub fn reason(self, standing: Standing) -> &'static str {
        match (self, standing) {
            (Self::Unsaid, Standing { is_demo_job: true, .. }) => "On, because this is the demo job. Your own jobs use your own parts.",
            (Self::Unsaid, Standing { has_own: false, .. }) => {
                "On until you have a part of your own. With your first one they go from every job but the demo’s."
            }
            (Self::Unsaid, _) => "Off, because you have parts of your own.",
            (Self::Shown, _) => "On in every job. They are invented: do not quote them.",
            (Self::Hidden, _) => "Off in every job. A job keeps what it already uses.",
        }
    }

    /// What is kept under that text; any other says nothing.
    pub fn read(text: &str) -> Self {
        [Self::Shown, Self::Hidden].into_iter().find(|said| said.id() == text).unwrap_or_default()
    }
}
