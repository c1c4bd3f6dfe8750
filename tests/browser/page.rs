//! The page as a person meets it: open, press, type, read, and one way to wait.

use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use thirtyfour::{Key, WebDriver, WebElement};

use crate::browser::{Browser, Storage};
use crate::{Site, Target, named};

/// How long a state may take to come about on a busy machine.
const PATIENCE: Duration = Duration::from_secs(15);
/// How long the program may take to be there, a build for development included.
const PATIENCE_TO_OPEN: Duration = Duration::from_mins(1);
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

    /// Kills the browser, which gets no chance to write anything more, and starts another on what is on the disk.
    ///
    /// # Errors
    /// It cannot be found, or the next does not start.
    pub async fn kill_browser(&mut self) -> Result<()> {
        self.browser.kill_and_start_again().await
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
        self.until_within(PATIENCE_TO_OPEN, READY).await
    }

    /// Waits until a JavaScript expression is true. The only way to wait: for a state, never for a time.
    ///
    /// # Errors
    /// It has not become true in time; the error says what it was instead.
    pub async fn until(&self, expression: &str) -> Result<()> {
        self.until_within(PATIENCE, expression).await
    }

    async fn until_within(&self, patience: Duration, expression: &str) -> Result<()> {
        let began = Instant::now();
        let mut last = Ok(Value::Null);
        while began.elapsed() < patience {
            last = self.js::<Value>(expression).await;
            if matches!(last, Ok(Value::Bool(true))) {
                return Ok(());
            }
            tokio::time::sleep(EVERY).await;
        }
        let was = last.map_or_else(|problem| thrown(&format!("{problem:#}")), |value| value.to_string());
        let shows: String = self
            .js("(document.querySelector('main') ?? document.body).innerText.slice(0, 600).replaceAll('\\n', ' | ')")
            .await
            .unwrap_or_default();
        bail!("after {} s this was not true but {was}:\n  {expression}\nThe page shows:\n{shows}", patience.as_secs())
    }

    /// The value of a JavaScript expression, of a promise what it comes to.
    ///
    /// # Errors
    /// It throws, or its value is of another kind.
    pub async fn js<T: DeserializeOwned>(&self, expression: &str) -> Result<T> {
        let answer = self.driver()?.execute(format!("{}return ({expression});", named::prelude()), vec![]).await;
        answer.and_then(|value| value.convert()).with_context(|| format!("cannot evaluate `{expression}`"))
    }

    /// An element, waited for, in the middle of the window.
    ///
    /// # Errors
    /// It is not there in time.
    pub async fn element(&self, target: impl Target) -> Result<WebElement> {
        let element = target.element_js();
        self.until(&format!("Boolean({element})")).await?;
        let scroll =
            format!("{}const one = {element}; one.scrollIntoView({{block: 'center', behavior: 'instant'}}); return one;", named::prelude());
        Ok(self.driver()?.execute(scroll, Vec::<Value>::new()).await?.element()?)
    }

    /// The value of a JavaScript expression in which `one` is an element, waited for.
    ///
    /// # Errors
    /// The element is not there in time, or the expression throws.
    pub async fn of<T: DeserializeOwned>(&self, target: impl Target, expression: &str) -> Result<T> {
        let element = target.element_js();
        self.until(&format!("Boolean({element})")).await?;
        self.js(&format!("((one) => {expression})({element})")).await
    }

    /// Waits until a JavaScript expression, in which `one` is an element, is true.
    ///
    /// # Errors
    /// It has not become true in time, or the element is not there.
    pub async fn until_of(&self, target: impl Target, expression: &str) -> Result<()> {
        self.until(&format!("((one) => {expression})({})", target.element_js())).await
    }

    /// Whether the element is on the page and seen there now.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn is_there(&self, target: impl Target) -> Result<bool> {
        self.js(&format!("(() => {{ try {{ return Boolean({}?.checkVisibility()); }} catch {{ return false; }} }})()", target.element_js()))
            .await
    }

    /// Waits until the element is gone.
    ///
    /// # Errors
    /// It stays.
    pub async fn gone(&self, target: impl Target) -> Result<()> {
        self.until(&format!("(() => {{ try {{ return !{}?.checkVisibility(); }} catch {{ return true; }} }})()", target.element_js())).await
    }

    /// Presses an element.
    ///
    /// # Errors
    /// It is not there, or something covers it.
    pub async fn click(&self, target: impl Target) -> Result<()> {
        if self.element(&target).await?.click().await.is_ok() {
            return Ok(());
        }
        // What the page tells may stand above it: a person reads that and closes it.
        self.close_notices().await?;
        self.element(&target).await?.click().await.with_context(|| format!("cannot press {}", target.called()))
    }

    /// Replaces a field's text as a person does: press it, select all, type. Waits until the field holds the text.
    ///
    /// # Errors
    /// The field is not there or does not take the text.
    pub async fn type_into(&self, target: impl Target, text: &str) -> Result<()> {
        let holds = format!("{}?.value === {}", target.element_js(), json!(text));
        self.click(&target).await?;
        let field = self.element(&target).await?;
        field.send_keys(Key::Control + "a").await?;
        if text.is_empty() {
            field.send_keys(Key::Delete).await?;
        } else {
            field.send_keys(text).await?;
        }
        self.until(&holds).await
    }

    /// Puts a text into a field at once, as pasting does; tabs and signs beyond the keyboard too.
    ///
    /// # Errors
    /// The field is not there.
    pub async fn paste_into(&self, target: impl Target, text: &str) -> Result<()> {
        let put = format!("void (one.focus(), one.value = {}, one.dispatchEvent(new Event('input', {{ bubbles: true }})))", json!(text));
        self.of(target, &put).await
    }

    /// Chooses the line of a list that drops down whose words are these, or begin so.
    ///
    /// # Errors
    /// There is no such list or no such line.
    pub async fn choose(&self, target: impl Target, words: &str) -> Result<()> {
        let choose = format!(
            "(() => {{ const lines = [...one.options]; const words = {};
               const line = lines.find((line) => line.text === words) ?? lines.find((line) => line.text.startsWith(words));
               if (!line) throw new Error(`no line “${{words}}” among ${{lines.map((line) => line.text).join(' | ')}}`);
               one.focus(); one.value = line.value; one.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()",
            json!(words)
        );
        self.of::<Value>(target, &choose).await.map(drop)
    }

    /// Presses keys where the focus is. With one held down: `Key::Control + "z"`.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn press(&self, keys: impl Into<thirtyfour::TypingData>) -> Result<()> {
        self.driver()?.active_element().await?.send_keys(keys).await.context("cannot press keys")
    }

    /// Goes on by Tab until an element has the focus; answers how many presses that took.
    ///
    /// # Errors
    /// It is not reached within as many presses as the page may ever need.
    pub async fn tab_to(&self, target: impl Target) -> Result<usize> {
        const MOST: usize = 200;
        let has_focus =
            format!("(() => {{ try {{ return {} === document.activeElement; }} catch {{ return false; }} }})()", target.element_js());
        for pressed in 0..MOST {
            if self.js(&has_focus).await? {
                return Ok(pressed);
            }
            self.press(Key::Tab).await?;
        }
        bail!("{} is not reached within {MOST} presses of Tab", target.called())
    }

    /// Waits until an element has the focus.
    ///
    /// # Errors
    /// Something else has it.
    pub async fn has_focus(&self, target: impl Target) -> Result<()> {
        self.until_of(target, "one === document.activeElement || document.activeElement.outerHTML.slice(0, 200)").await
    }

    /// An element's text as it is shown.
    ///
    /// # Errors
    /// The element is not there.
    pub async fn text(&self, target: impl Target) -> Result<String> {
        Ok(self.element(target).await?.text().await?)
    }

    /// Waits until an element shows these words somewhere in it.
    ///
    /// # Errors
    /// It does not.
    pub async fn says(&self, target: impl Target, words: &str) -> Result<()> {
        let words = json!(words);
        self.until_of(target, &format!("one.innerText.replace(/\\s+/g, ' ').includes({words}) || one.innerText.slice(0, 400)")).await
    }

    /// A field's value.
    ///
    /// # Errors
    /// The field is not there.
    pub async fn value(&self, target: impl Target) -> Result<String> {
        self.of(target, "one.value").await
    }

    /// How many elements a selector finds.
    ///
    /// # Errors
    /// The selector is not one.
    pub async fn count(&self, css: &str) -> Result<usize> {
        self.js(&format!("document.querySelectorAll({}).length", json!(css))).await
    }
}

/// What a script threw, without what the driver says around it.
fn thrown(problem: &str) -> String {
    let line = problem.lines().find_map(|line| line.split_once("javascript error: "));
    line.map_or_else(|| problem.to_owned(), |(_, thrown)| thrown.to_owned())
}
