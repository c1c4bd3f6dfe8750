//! What a test presses, types into or reads: by role and accessible name, as someone who listens finds it; by selector where it has neither.

use serde_json::json;

/// Finds one element by role and name; see the file.
const FIND: &str = include_str!("names.js");

/// Reads and changes what is kept on the device; see the file.
const KEPT: &str = include_str!("kept.js");

/// What stands before every script, so that it can find things by name, and what is kept.
pub(crate) fn prelude() -> String {
    format!("window.named ??= {};\nwindow.kept ??= {};\n", FIND.trim(), KEPT.trim())
}

/// Something on the page that can be found.
pub trait Target {
    /// A JavaScript expression of the element; null or an error where it is not there.
    fn element_js(&self) -> String;

    /// What it is called in a message.
    fn called(&self) -> String;
}

impl Target for str {
    fn element_js(&self) -> String {
        format!("document.querySelector({})", json!(self))
    }

    fn called(&self) -> String {
        format!("`{self}`")
    }
}

impl Target for String {
    fn element_js(&self) -> String {
        self.as_str().element_js()
    }

    fn called(&self) -> String {
        self.as_str().called()
    }
}

impl<T: Target + ?Sized> Target for &T {
    fn element_js(&self) -> String {
        (**self).element_js()
    }

    fn called(&self) -> String {
        (**self).called()
    }
}

/// Something with a role and a name, perhaps inside something else that has a name.
///
/// Its name is the one sought; where nothing is called exactly so, it begins with it or holds it. Several that fit are an error.
#[derive(Debug, Clone)]
pub struct Named {
    role: &'static str,
    name: String,
    around: Vec<String>,
}

impl Named {
    fn new(role: &'static str, name: impl Into<String>) -> Self {
        Self { role, name: name.into(), around: Vec::new() }
    }

    /// The one inside a group, section, row or fold of this name; said again, the outer one of two.
    #[must_use]
    pub fn of(mut self, group: impl Into<String>) -> Self {
        self.around.insert(0, group.into());
        self
    }
}

impl Target for Named {
    fn element_js(&self) -> String {
        let Self { role, name, around } = self;
        format!("named({}, {}, {})", json!(role), json!(name), json!(around))
    }

    fn called(&self) -> String {
        let around = self.around.iter().rev().fold(String::new(), |said, group| said + " of “" + group.as_str() + "”");
        format!("the {} “{}”{around}", self.role, self.name)
    }
}

/// A button, a fold's handle too.
pub fn button(name: impl Into<String>) -> Named {
    Named::new("button", name)
}

/// A link.
pub fn link(name: impl Into<String>) -> Named {
    Named::new("link", name)
}

/// The tab of a picture.
pub fn tab(name: impl Into<String>) -> Named {
    Named::new("tab", name)
}

/// Whatever is typed into or chosen from: a field, a text of several lines, a list that drops down.
pub fn field(name: impl Into<String>) -> Named {
    Named::new("field", name)
}

/// A box that is ticked.
pub fn checkbox(name: impl Into<String>) -> Named {
    Named::new("checkbox", name)
}

/// A group, section, row or fold.
pub fn group(name: impl Into<String>) -> Named {
    Named::new("group", name)
}

/// A heading.
pub fn heading(name: impl Into<String>) -> Named {
    Named::new("heading", name)
}
