//! The device around the page: the screen, the theme, paper, and pictures of what is seen.

use anyhow::{Context, Result};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use serde_json::{Value, json};

use crate::Page;

/// A screen in CSS pixels.
#[derive(Debug, Clone, Copy)]
pub struct Screen {
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Device pixels for each.
    pub ratio: f64,
    /// Does it behave as a phone: touch, and a viewport that follows the page's meta element?
    pub mobile: bool,
}

impl Screen {
    /// A desk.
    pub const DESK: Self = Self { width: 1440, height: 900, ratio: 1.0, mobile: false };
    /// A phone.
    pub const PHONE: Self = Self { width: 390, height: 844, ratio: 2.0, mobile: true };
}

/// What the system asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Theme {
    /// Ink on paper.
    Light,
    /// Paper on ink.
    Dark,
}

impl Theme {
    /// The word the style sheets know.
    pub fn word(self) -> &'static str {
        match self {
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }
}

/// A sheet of paper, in inches as the browser wants them.
#[derive(Debug, Clone, Copy)]
pub struct Paper(f64, f64);

impl Paper {
    /// 210 by 297 mm.
    pub const A4: Self = Self(210.0 / 25.4, 297.0 / 25.4);
    /// 8.5 by 11 in.
    pub const LETTER: Self = Self(8.5, 11.0);
}

/// A part of the page, in CSS pixels from its top left corner.
#[derive(Debug, Clone, Copy, serde::Deserialize)]
pub struct Frame {
    x: f64,
    y: f64,
    width: f64,
    height: f64,
}

impl Page {
    /// Sends a command of the Chrome DevTools Protocol.
    ///
    /// # Errors
    /// The browser refuses it.
    pub async fn cdp(&self, method: &str, params: Value) -> Result<Value> {
        self.driver()?.cdp().send_raw(method, params).await.with_context(|| format!("{method} is refused"))
    }

    /// Gives the page another screen.
    ///
    /// # Errors
    /// The browser refuses it.
    pub async fn set_screen(&self, screen: Screen) -> Result<()> {
        let Screen { width, height, ratio, mobile } = screen;
        let params = json!({"width": width, "height": height, "deviceScaleFactor": ratio, "mobile": mobile});
        self.cdp("Emulation.setDeviceMetricsOverride", params).await?;
        self.cdp("Emulation.setTouchEmulationEnabled", json!({"enabled": mobile})).await?;
        Ok(())
    }

    /// Asks the page for a theme, as the system does.
    ///
    /// # Errors
    /// The browser refuses it.
    pub async fn set_theme(&self, theme: Theme) -> Result<()> {
        let features =
            json!([{"name": "prefers-color-scheme", "value": theme.word()}, {"name": "prefers-reduced-motion", "value": "reduce"}]);
        self.cdp("Emulation.setEmulatedMedia", json!({"features": features})).await?;
        Ok(())
    }

    /// Tells the page that the network is gone, or back.
    ///
    /// # Errors
    /// The browser refuses it.
    pub async fn set_offline(&self, offline: bool) -> Result<()> {
        self.cdp("Network.enable", json!({})).await?;
        let params = json!({"offline": offline, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1});
        self.cdp("Network.emulateNetworkConditions", params).await?;
        Ok(())
    }

    /// From now on keeps what the page hands to the browser to be saved.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn catch_saved(&self) -> Result<()> {
        self.js("void (() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.saved = blob; return make(blob); }; })()").await
    }

    /// Has the page's database refuse whatever is put into it, as one on a full device does, on the pages that come too; or take it again.
    /// Not by the browser's quota: it looks at that only now and then.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn fill_device(&self, is_full: bool) -> Result<()> {
        const REFUSE: &str = "(() => { if (IDBObjectStore.prototype.takes) return;
            const put = IDBObjectStore.prototype.takes = IDBObjectStore.prototype.put;
            IDBObjectStore.prototype.put = function (...all) {
              if (localStorage.getItem('full')) throw new DOMException('', 'QuotaExceededError');
              return put.apply(this, all); }; })()";
        self.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": REFUSE })).await?;
        self.js::<()>(&format!("void {REFUSE}")).await?;
        self.js(if is_full { "void localStorage.setItem('full', 'yes')" } else { "void localStorage.removeItem('full')" }).await
    }

    /// The text of the file that was saved last, waited for.
    ///
    /// # Errors
    /// Nothing was saved.
    pub async fn caught(&self) -> Result<String> {
        self.until("window.saved !== undefined").await?;
        self.js::<()>("void window.saved.text().then((text) => { window.caught = text; delete window.saved; })").await?;
        self.until("window.caught !== undefined").await?;
        let text = self.js("window.caught").await?;
        self.js::<()>("void delete window.caught").await?;
        Ok(text)
    }

    /// The page printed, as a PDF file.
    ///
    /// # Errors
    /// The browser cannot print.
    pub async fn pdf(&self, paper: Paper) -> Result<Vec<u8>> {
        let Paper(width, height) = paper;
        let params = json!({"paperWidth": width, "paperHeight": height, "printBackground": true, "preferCSSPageSize": false});
        decoded(&self.cdp("Page.printToPDF", params).await?)
    }

    /// A picture of the whole page.
    ///
    /// # Errors
    /// The browser cannot take it.
    pub async fn picture(&self) -> Result<Vec<u8>> {
        let frame = "(() => { const e = document.documentElement; return {x: 0, y: 0, width: e.clientWidth, height: e.scrollHeight}; })()";
        self.picture_in(self.js(frame).await?).await
    }

    /// A picture of what is in the window.
    ///
    /// # Errors
    /// The browser cannot take it.
    pub async fn picture_of_window(&self) -> Result<Vec<u8>> {
        let params = json!({"format": "png"});
        decoded(&self.cdp("Page.captureScreenshot", params).await?)
    }

    async fn picture_in(&self, frame: Frame) -> Result<Vec<u8>> {
        let Frame { x, y, width, height } = frame;
        let clip = json!({"x": x, "y": y, "width": width, "height": height, "scale": 1});
        let params = json!({"format": "png", "captureBeyondViewport": true, "clip": clip});
        decoded(&self.cdp("Page.captureScreenshot", params).await?)
    }
}

fn decoded(answer: &Value) -> Result<Vec<u8>> {
    let data = answer.get("data").and_then(Value::as_str).context("the browser's answer has no data")?;
    BASE64_STANDARD.decode(data).context("the browser's answer is not base64")
}
