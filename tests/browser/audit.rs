//! The accessibility audit: axe-core, run in the page.

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::Page;

const AXE: &str = include_str!("vendor/axe.min.js");
const RUN: &str = "
const done = arguments[arguments.length - 1];
// The addresses of places and questions are fragments, which the rule takes for links within the page.
const options = { rules: { 'target-size': { enabled: true }, 'skip-link': { enabled: false } }, resultTypes: ['violations'] };
if (arguments[1]) options.runOnly = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] };
axe.run(arguments[0] ?? document, options).then((found) => done(found.violations.flatMap((rule) =>
  rule.nodes.map((node) => `${rule.id}: ${rule.help}\\n  ${node.html.slice(0, 200)}\\n  ${node.failureSummary.replaceAll('\\n', ' ')}`))),
  (fault) => done([`axe did not run: ${fault}`]));";

/// What of a page is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Audit {
    /// Every rule.
    Whole,
    /// What a theme changes: colours. Names, roles and sizes are the same in both.
    Colours,
}

impl Page {
    /// What the audit finds against the page as it stands, one text for each element.
    ///
    /// # Errors
    /// The audit cannot be run.
    pub async fn axe(&self, audit: Audit) -> Result<Vec<String>> {
        self.axe_within(None, audit).await
    }

    async fn axe_within(&self, part: Option<&str>, audit: Audit) -> Result<Vec<String>> {
        let driver = self.driver()?;
        if !self.js::<bool>("'axe' in window").await? {
            driver.execute(AXE, vec![]).await.context("axe-core does not load")?;
        }
        let given = vec![part.map_or(Value::Null, Value::from), Value::from(audit == Audit::Colours)];
        let found = driver.execute_async(RUN, given).await.context("the audit does not end")?;
        Ok(found.convert()?)
    }

    /// Fails where the audit finds anything in a part of the page; what an open menu lies over is left out by naming the menu.
    ///
    /// # Errors
    /// All that was found.
    pub async fn assert_part_accessible(&self, part: &str, where_: &str) -> Result<()> {
        none(&self.axe_within(Some(part), Audit::Whole).await?, where_)
    }

    /// Fails where the audit finds anything.
    ///
    /// # Errors
    /// All that was found.
    pub async fn assert_accessible(&self, where_: &str) -> Result<()> {
        none(&self.axe(Audit::Whole).await?, where_)
    }
}

fn none(found: &[String], where_: &str) -> Result<()> {
    ensure!(found.is_empty(), "{where_}: {} accessibility violations\n{}", found.len(), found.join("\n"));
    Ok(())
}
