//! The page as a person meets it: open, press, type, read, and one way to wait.

use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use thirtyfour::{By, Key, WebDriver, WebElement};

use crate::Site;
use crate::browser::{Browser, Storage};

/// How long a state may take to come about on a busy machine.
const PATIENCE: Duration = Duration::from_secs(15);
const EVERY: Duration = Duration::from_millis(25);
/// The program has mounted the sheet and has all its parts: it says so itself, and the opening words are gone.
const READY: &str = "['ready', 'whole'].every((mark) => mark in document.documentElement.dataset) && !document.getElementById('boot')";

/// One browser window on one served site.
pub struct Page {
    browser: Browser,
    site: Site,
    /// Parts of messages the test expects, which are then no faults.
    pub(crate) expected: Vec<String>,
    pub(crate) seen: Vec<String>,
}

impl Page {
    pub(crate) async fn start(site: Site, storage: Storage) -> Result<Self> {
        let browser = Browser::start(storage).await?;
        Ok(Self { browser, site, expected: Vec::new(), seen: Vec::new() })
    }

    pub(crate) async fn close(self) -> Result<()> {
        self.browser.close().await
    }

    /// The WebDriver session, for what has no method here.
    ///
    /// # Errors
    /// The browser has been closed.
    pub fn driver(&self) -> Result<&WebDriver> {
        self.browser.driver()
    }

    /// The site the page is served from.
    pub fn site(&mut self) -> &mut Site {
        &mut self.site
    }

    /// Opens a path of the site, `""` for the page itself, and waits until the program is ready.
    ///
    /// # Errors
    /// The page does not load or the program does not get ready.
    pub async fn open(&self, path: &str) -> Result<()> {
        self.go(path).await?;
        self.ready().await
    }

    /// Opens a path of the site and waits for nothing.
    ///
    /// # Errors
    /// The page does not load.
    pub async fn go(&self, path: &str) -> Result<()> {
        let address = format!("{}{path}", self.site.address());
        self.driver()?.goto(&address).await.with_context(|| format!("cannot open {address}"))
    }

    /// Loads the page again and waits until the program is ready.
    ///
    /// # Errors
    /// As [`Page::open`].
    pub async fn reload(&self) -> Result<()> {
        self.driver()?.refresh().await.context("cannot load the page again")?;
        self.ready().await
    }

    /// Waits until the program is ready.
    ///
    /// # Errors
    /// It is not, in time.
    pub async fn ready(&self) -> Result<()> {
        self.until(READY).await
    }

    /// Waits until a JavaScript expression is true. The only way to wait: for a state, never for a time.
    ///
    /// # Errors
    /// It has not become true in time; the error says what it was instead.
    pub async fn until(&self, expression: &str) -> Result<()> {
        let began = Instant::now();
        let mut last = Ok(Value::Null);
        while began.elapsed() < PATIENCE {
            last = self.js::<Value>(expression).await;
            if matches!(last, Ok(Value::Bool(true))) {
                return Ok(());
            }
            tokio::time::sleep(EVERY).await;
        }
        let was = last.map_or_else(|problem| format!("{problem:#}"), |value| value.to_string());
        let shows: String = self.js("document.body.innerText.slice(0, 600)").await.unwrap_or_default();
        bail!("after {} s this was not true but {was}:\n  {expression}\nThe page shows:\n{shows}", PATIENCE.as_secs())
    }

    /// The value of a JavaScript expression.
    ///
    /// # Errors
    /// It throws, or its value is of another kind.
    pub async fn js<T: DeserializeOwned>(&self, expression: &str) -> Result<T> {
        let answer = self.driver()?.execute(format!("return ({expression});"), vec![]).await;
        answer.and_then(|value| value.convert()).with_context(|| format!("cannot evaluate `{expression}`"))
    }

    /// The element a selector finds, waited for, in the middle of the window.
    ///
    /// # Errors
    /// There is none in time.
    pub async fn element(&self, css: &str) -> Result<WebElement> {
        self.until(&format!("document.querySelector({}) !== null", json!(css))).await?;
        let element = self.driver()?.find(By::Css(css)).await?;
        let args = vec![element.to_json()?];
        self.driver()?.execute("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", args).await?;
        Ok(element)
    }

    /// Presses an element.
    ///
    /// # Errors
    /// It is not there, or something covers it.
    pub async fn click(&self, css: &str) -> Result<()> {
        self.element(css).await?.click().await.with_context(|| format!("cannot press `{css}`"))
    }

    /// Replaces a field's text as a person does: press it, select all, type. Waits until the field holds the text.
    ///
    /// # Errors
    /// The field is not there or does not take the text.
    pub async fn type_into(&self, css: &str, text: &str) -> Result<()> {
        self.click(css).await?;
        let field = self.driver()?.find(By::Css(css)).await?;
        field.send_keys(Key::Control + "a").await?;
        if text.is_empty() {
            field.send_keys(Key::Delete).await?;
        } else {
            field.send_keys(text).await?;
        }
        self.until(&format!("document.querySelector({}).value === {}", json!(css), json!(text))).await
    }

    /// Presses keys where the focus is. With one held down: `Key::Control + "z"`.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn press(&self, keys: impl Into<thirtyfour::TypingData>) -> Result<()> {
        self.driver()?.active_element().await?.send_keys(keys).await.context("cannot press keys")
    }

    /// An element's text as it is shown.
    ///
    /// # Errors
    /// The element is not there.
    pub async fn text(&self, css: &str) -> Result<String> {
        Ok(self.element(css).await?.text().await?)
    }

    /// A picture in words, line by line, once its words are opened.
    ///
    /// # Errors
    /// The picture is not there, or is not told.
    pub async fn told(&self, picture: &str) -> Result<Vec<String>> {
        let details = format!("#picture-{picture} details");
        if self.count(&format!("{details}[open]")).await? == 0 {
            self.click(&format!("{details} summary")).await?;
        }
        self.until(&format!("document.querySelector('{details} li') !== null")).await?;
        self.js(&format!("[...document.querySelectorAll('{details} li')].map((line) => line.textContent)")).await
    }

    /// A field's value.
    ///
    /// # Errors
    /// The field is not there.
    pub async fn value(&self, css: &str) -> Result<String> {
        self.js(&format!("document.querySelector({}).value", json!(css))).await
    }

    /// How many elements a selector finds.
    ///
    /// # Errors
    /// The selector is not one.
    pub async fn count(&self, css: &str) -> Result<usize> {
        self.js(&format!("document.querySelectorAll({}).length", json!(css))).await
    }

    /// The figure with a key, as it is shown.
    ///
    /// # Errors
    /// The sheet has no figure of that key.
    pub async fn figure(&self, key: &str) -> Result<String> {
        self.text(&format!("[data-figure=\"{key}\"]")).await
    }

    /// The figures with a key in all setups, in the setups' order, as they are shown.
    ///
    /// # Errors
    /// The key is not one.
    pub async fn figures(&self, key: &str) -> Result<Vec<String>> {
        let css = json!(format!("[data-figure=\"{key}\"]"));
        self.js(&format!("[...document.querySelectorAll({css})].map((figure) => figure.innerText.trim())")).await
    }

    /// Waits until the figure with a key shows a text.
    ///
    /// # Errors
    /// It shows another one.
    pub async fn figure_is(&self, key: &str, text: &str) -> Result<()> {
        let css = json!(format!("[data-figure=\"{key}\"]"));
        self.until(&format!(
            "document.querySelector({css})?.innerText.trim() === {} || document.querySelector({css})?.innerText",
            json!(text)
        ))
        .await
    }
}
