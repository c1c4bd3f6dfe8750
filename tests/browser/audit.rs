//! The accessibility audit: axe-core, run in the page.

use anyhow::{Context, Result, bail};
use serde_json::Value;

use crate::Page;

const AXE: &str = include_str!("vendor/axe.min.js");
const RUN: &str = "
const done = arguments[arguments.length - 1];
// The addresses of places and questions are fragments, which the rule takes for links within the page.
const options = { rules: { 'target-size': { enabled: true }, 'skip-link': { enabled: false } }, resultTypes: ['violations'] };
axe.run(arguments[0] ?? document, options).then((found) => done(found.violations.flatMap((rule) =>
  rule.nodes.map((node) => `${rule.id}: ${rule.help}\\n  ${node.html.slice(0, 200)}\\n  ${node.failureSummary.replaceAll('\\n', ' ')}`))),
  (fault) => done([`axe did not run: ${fault}`]));";

impl Page {
    /// What the audit finds against the page as it stands, one text for each element.
    ///
    /// # Errors
    /// The audit cannot be run.
    pub async fn axe(&self) -> Result<Vec<String>> {
        self.axe_within(None).await
    }

    async fn axe_within(&self, part: Option<&str>) -> Result<Vec<String>> {
        let driver = self.driver()?;
        driver.execute(AXE, vec![]).await.context("axe-core does not load")?;
        let found = driver.execute_async(RUN, vec![part.map_or(Value::Null, Value::from)]).await.context("the audit does not end")?;
        Ok(found.convert()?)
    }

    /// Fails where the audit finds anything in a part of the page; what an open menu lies over is left out by naming the menu.
    ///
    /// # Errors
    /// All that was found.
    pub async fn assert_part_accessible(&self, part: &str, where_: &str) -> Result<()> {
        let found = self.axe_within(Some(part)).await?;
        if !found.is_empty() {
            bail!("{where_}: {} accessibility violations\n{}", found.len(), found.join("\n"));
        }
        Ok(())
    }

    /// Fails where the audit finds anything.
    ///
    /// # Errors
    /// All that was found.
    pub async fn assert_accessible(&self, where_: &str) -> Result<()> {
        let found = self.axe().await?;
        if !found.is_empty() {
            bail!("{where_}: {} accessibility violations\n{}", found.len(), found.join("\n"));
        }
        Ok(())
    }
}
