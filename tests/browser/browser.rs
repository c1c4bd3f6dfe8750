//! The processes: chromedriver on a port it chooses, Chromium with a profile that is new and goes away.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use anyhow::{Context, Result, anyhow, bail};
use thirtyfour::common::capabilities::chromium::ChromiumLikeCapabilities;
use thirtyfour::{DesiredCapabilities, LoggingPrefsLogLevel, WebDriver};
use xtask::{debian, shell};

const PACKAGES: [&str; 2] = ["chromium-headless-shell", "chromium-driver"];
/// Chromium without windows of its own: it starts at once, and draws nothing but the page. Taken where it is there. The file itself, since
/// what stands in the path is a script that would stay between it and the one who ends it.
const BARE: &str = "/usr/lib/chromium/chromium-headless-shell";
const FLAGS: [&str; 14] = [
    "--headless",
    // Containers give no sandbox, and the pages are our own.
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-scrollbars",
    // A microphone that beeps, given to whoever asks.
    "--use-fake-device-for-media-stream",
    "--use-fake-ui-for-media-stream",
    "--lang=en-US",
    "--window-size=1440,900",
];

/// Whether pages may keep anything on the device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Storage {
    /// As browsers come.
    Allowed,
    /// As browsers come, in a profile that outlives the browser.
    OnDisk,
    /// Forbidden for every site.
    Blocked,
}

/// A browser with one window. Dropping it ends the processes and removes the profile.
pub struct Browser {
    // The session ends before the process that keeps it.
    driver: Option<WebDriver>,
    chromedriver: Child,
    profile: PathBuf,
}

impl Browser {
    /// Starts both processes, installing them first where that is needed and possible.
    ///
    /// # Errors
    /// There is no browser and none can be installed, or it does not start.
    pub async fn start(storage: Storage) -> Result<Self> {
        Self::start_in(new_profile(), storage).await
    }

    /// Kills the browser as a power cut would, and starts another with the same profile.
    ///
    /// # Errors
    /// It cannot be found, or the next does not start.
    pub async fn kill_and_start_again(&mut self) -> Result<()> {
        let profile = self.profile.clone();
        kill_browser_of(&profile)?;
        if let Some(driver) = self.driver.take() {
            // There is no browser behind it any more to be told that it ends.
            let _ = driver.leak();
        }
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
        let _ = std::fs::remove_file(profile.join("SingletonLock"));
        let next = Self::start_in(profile, Storage::OnDisk).await?;
        // What is dropped removes the profile it has, which is not to be that of the next.
        std::mem::replace(self, next).profile.clear();
        Ok(())
    }

    async fn start_in(profile: PathBuf, storage: Storage) -> Result<Self> {
        ready()?;
        let (chromedriver, port) = start_chromedriver()?;
        // From here on dropping the value ends the process.
        let mut browser = Self { driver: None, chromedriver, profile };
        let mut wishes = DesiredCapabilities::chrome();
        for flag in FLAGS {
            wishes.add_arg(flag)?;
        }
        match bare().filter(|_| storage == Storage::Allowed) {
            // It takes only a profile that chromedriver makes, and knows no settings.
            Some(bare) => wishes.set_binary(&bare.to_string_lossy())?,
            None => wishes.add_arg(&format!("--user-data-dir={}", browser.profile.display()))?,
        }
        if storage == Storage::Blocked {
            // What a visitor does who forbids all cookies and site data.
            wishes.add_experimental_option("prefs", serde_json::json!({"profile.default_content_setting_values.cookies": 2}))?;
        }
        wishes.set_browser_log_level(LoggingPrefsLogLevel::All)?;
        wishes.set_logging_prefs("performance", LoggingPrefsLogLevel::All)?;
        let driver = WebDriver::new(format!("http://127.0.0.1:{port}"), wishes).await.context("Chromium does not start")?;
        driver.set_script_timeout(Duration::from_mins(1)).await?;
        browser.driver = Some(driver);
        Ok(browser)
    }

    /// The session.
    ///
    /// # Errors
    /// It has been closed.
    pub fn driver(&self) -> Result<&WebDriver> {
        self.driver.as_ref().ok_or_else(|| anyhow!("the browser has been closed"))
    }

    /// Ends the session in good order.
    ///
    /// # Errors
    /// The browser does not answer any more.
    pub async fn close(mut self) -> Result<()> {
        match self.driver.take() {
            Some(driver) => driver.quit().await.context("the browser does not close"),
            None => Ok(()),
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        drop(self.driver.take());
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

/// Kills the browser that works in a profile, and no other: the process that was started with it and is no part of another.
fn kill_browser_of(profile: &Path) -> Result<()> {
    let flag = format!("--user-data-dir={}", profile.display());
    let is_it = |process: &PathBuf| {
        let line = std::fs::read(process.join("cmdline")).unwrap_or_default();
        let words: Vec<_> = line.split(|byte| *byte == 0).map(String::from_utf8_lossy).collect();
        words.iter().any(|word| *word == flag) && !words.iter().any(|word| word.starts_with("--type="))
    };
    let found: Vec<PathBuf> = std::fs::read_dir("/proc")?.flatten().map(|entry| entry.path()).filter(is_it).collect();
    let ids = found.iter().filter_map(|process| process.file_name()?.to_str());
    let killed = ids.map(|id| Command::new("kill").args(["-KILL", id]).status()).collect::<Result<Vec<_>, _>>()?;
    if killed.is_empty() { Err(anyhow!("no browser works in {}", profile.display())) } else { Ok(()) }
}

/// Sees once that the browser and its driver are there.
fn ready() -> Result<()> {
    static READY: OnceLock<Result<(), String>> = OnceLock::new();
    let ready = READY.get_or_init(|| {
        let there = || shell::output(Command::new("chromedriver").arg("--version")).is_some();
        if there() && (bare().is_some() || !debian::can_install()) {
            return Ok(());
        }
        if debian::can_install() {
            debian::install(&PACKAGES).map_err(|problem| format!("{problem:#}"))?;
        }
        if there() {
            Ok(())
        } else {
            Err(format!("the browser tests need Chromium and chromedriver. On Debian, as root, type `{}`", debian::by_hand(&PACKAGES)))
        }
    });
    ready.clone().map_err(|problem| anyhow!(problem))
}

/// How often chromedriver is started before it is given up: the port it chooses may be taken by another before it listens there.
const TRIES: usize = 3;

/// Starts chromedriver on a port of its choice.
fn start_chromedriver() -> Result<(Child, u16)> {
    (1..TRIES).find_map(|_| try_chromedriver().ok()).map_or_else(try_chromedriver, Ok)
}

/// Starts chromedriver once, and reads from its first lines which port it chose.
fn try_chromedriver() -> Result<(Child, u16)> {
    let mut child = Command::new("chromedriver")
        .args(["--port=0", "--log-level=SEVERE"])
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .context("chromedriver does not start")?;
    let output = child.stdout.take().context("chromedriver has no output")?;
    let mut lines = BufReader::new(output).lines();
    let port = lines.by_ref().map_while(Result::ok).find_map(|line| port_in(&line));
    let Some(port) = port else {
        let _ = child.kill();
        let _ = child.wait();
        bail!("chromedriver ended without naming its port");
    };
    // What it says later must be read, or it would wait for a reader.
    std::thread::spawn(move || lines.for_each(drop));
    Ok((child, port))
}

/// `ChromeDriver was started successfully on port 40123.`
fn port_in(line: &str) -> Option<u16> {
    let (_, rest) = line.split_once("successfully on port ")?;
    rest.trim_end_matches('.').parse().ok()
}

fn bare() -> Option<PathBuf> {
    Some(PathBuf::from(BARE)).filter(|file| file.is_file())
}

fn new_profile() -> PathBuf {
    static NEXT: AtomicUsize = AtomicUsize::new(0);
    let number = NEXT.fetch_add(1, Ordering::Relaxed);
    std::env::temp_dir().join(format!("layshaft-browser-{}-{number}", std::process::id()))
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_port_is_read_from_what_chromedriver_says() {
        assert_eq!(super::port_in("ChromeDriver was started successfully on port 40123."), Some(40123));
        assert_eq!(super::port_in("Starting ChromeDriver 156.0 on port 0"), None);
    }
}
