//! The page's own things: places and questions by their address, folds, figures, pictures, notices, the job.

use anyhow::{Result, ensure};
use serde_json::json;
use thirtyfour::Key;

use crate::{Page, button, field, group, tab};

impl Page {
    /// Goes where an address leads, `compare/pull` or `shelf`, and waits until what it names stands.
    ///
    /// # Errors
    /// It does not.
    pub async fn go_to(&self, at: &str) -> Result<()> {
        self.js::<()>(&format!("void (location.hash = {})", json!(format!("#{at}")))).await?;
        self.stands(at).await
    }

    /// Waits until the place or question of an address stands: the navigation says so, and a heading is called as its link is.
    ///
    /// # Errors
    /// It does not.
    pub async fn stands(&self, at: &str) -> Result<()> {
        let links = json!(format!("nav a[href=\"#{at}\"][aria-current=\"page\"]"));
        self.until(&format!(
            "(() => {{ const plain = (one) => one.textContent.trim();
               const links = [...document.querySelectorAll({links})].map(plain);
               const heads = [...document.querySelectorAll('main h2')].map(plain);
               const is_same = links.some((link) => heads.some((head) => link.startsWith(head) || head.startsWith(link)));
               return is_same && document.querySelector('main .later[aria-busy=true]') === null; }})()"
        ))
        .await
    }

    /// The addresses of all questions of a place, `compare/gears` and so on.
    ///
    /// # Errors
    /// The place does not open.
    pub async fn questions_of(&self, place: &str) -> Result<Vec<String>> {
        self.js::<()>(&format!("void (location.hash = {})", json!(format!("#{place}")))).await?;
        let links = json!(format!("nav li a[href^=\"#{place}/\"]"));
        self.until(&format!("document.querySelectorAll({links}).length > 0 && document.querySelector('main h2') !== null")).await?;
        self.js(&format!("[...document.querySelectorAll({links})].map((link) => link.getAttribute('href').slice(1))")).await
    }

    /// The addresses of all questions, then of the places without questions.
    ///
    /// # Errors
    /// A place does not open.
    pub async fn everywhere(&self) -> Result<Vec<String>> {
        let mut all = self.questions_of("compare").await?;
        all.extend(self.questions_of("bench").await?);
        all.extend(["shelf", "jobs"].map(str::to_owned));
        Ok(all)
    }

    /// Opens a fold, where it is not open.
    ///
    /// # Errors
    /// There is no such fold.
    pub async fn open_fold(&self, title: &str) -> Result<()> {
        let fold = button(title);
        if !self.of::<bool>(&fold, "one.parentElement.open").await? {
            self.click(&fold).await?;
        }
        self.until_of(&fold, "one.parentElement.open && one.parentElement.children.length > 1").await
    }

    /// Opens *All figures* where a figure does not stand among those that decide.
    async fn unfold_for(&self, key: &str) -> Result<()> {
        let figure = json!(format!("main [data-figure=\"{key}\"]"));
        let is_there = format!("document.querySelector({figure}) !== null");
        let folded = "[...document.querySelectorAll('main summary')].some((one) => one.innerText.startsWith('All figures'))";
        self.until(&format!("{is_there} || {folded}")).await?;
        if !self.js::<bool>(&is_there).await? {
            self.open_fold("All figures").await?;
        }
        Ok(())
    }

    /// The figure of a key in the column of a setup, as it is shown; opens the fold where it stands folded.
    ///
    /// # Errors
    /// The open question has no such figure.
    pub async fn figure(&self, letter: &str, key: &str) -> Result<String> {
        self.unfold_for(key).await?;
        let figure = figure_js(letter, key);
        self.until(&format!("Boolean({figure})")).await?;
        self.js(&format!("{figure}.innerText.replace(/\\s+/g, ' ').trim()")).await
    }

    /// Waits until the figure of a key in a setup's column begins with a text; opens the fold where it stands folded.
    ///
    /// # Errors
    /// It shows another one.
    pub async fn shows(&self, letter: &str, key: &str, text: &str) -> Result<()> {
        self.unfold_for(key).await?;
        let figure = figure_js(letter, key);
        let shown = format!("{figure}?.innerText.replace(/\\s+/g, ' ').trim()");
        self.until(&format!("{shown}?.startsWith({}) || String({shown})", json!(text))).await
    }

    /// Presses a figure, so that its card opens, and waits for the card.
    ///
    /// # Errors
    /// The figure is not there or opens no card.
    pub async fn ask_figure(&self, letter: &str, key: &str) -> Result<()> {
        self.unfold_for(key).await?;
        let at: String = self
            .js(&format!("((one) => {{ one.id ||= 'asked-by-the-test'; return `#${{one.id}}`; }})({})", figure_js(letter, key)))
            .await?;
        self.click(&at).await?;
        self.element(".card").await.map(drop)
    }

    /// A picture of the open question in words, line by line: its tab is chosen and its words are opened.
    ///
    /// # Errors
    /// There is no such picture, or it is not told.
    pub async fn told(&self, picture: &str) -> Result<Vec<String>> {
        self.choose_tab(picture).await?;
        let words = button("In words");
        if !self.of::<bool>(&words, "one.ariaExpanded === 'true'").await? {
            self.click(&words).await?;
        }
        self.until("document.querySelector('figure.picture ul li') !== null").await?;
        let told: Vec<String> = self.js("[...document.querySelectorAll('figure.picture ul li')].map((line) => line.textContent)").await?;
        ensure!(told.iter().all(|line| !line.trim().is_empty()), "“{picture}” has an empty line in words");
        Ok(told)
    }

    /// Chooses the tab of a picture.
    ///
    /// # Errors
    /// There is no such tab.
    pub async fn choose_tab(&self, picture: &str) -> Result<()> {
        let tab = tab(picture);
        if !self.of::<bool>(&tab, "one.ariaSelected === 'true'").await? {
            self.click(&tab).await?;
        }
        self.until_of(&tab, "one.ariaSelected === 'true'").await
    }

    /// What the picture of the open question says about the place pointed at.
    ///
    /// # Errors
    /// There is no picture.
    pub async fn read_out(&self) -> Result<String> {
        self.of(".picture__said", "one.innerText.replace(/\\s+/g, ' ').trim()").await
    }

    /// Opens a menu of the bar or of a head and presses one of its acts.
    ///
    /// # Errors
    /// There is no such menu or act.
    pub async fn in_menu(&self, menu: &str, act: &str) -> Result<()> {
        let act = button(act);
        if !self.is_there(&act).await? {
            self.click(button(menu)).await?;
        }
        self.click(act).await
    }

    /// Opens the panel that a menu leads to.
    ///
    /// # Errors
    /// It does not open.
    pub async fn hand_over(&self, act: &str) -> Result<()> {
        self.in_menu("Hand over", act).await
    }

    /// Reads the page in other units or words: `km/h · mm`, `UK words`.
    ///
    /// # Errors
    /// There is no such choice.
    pub async fn read_in(&self, choice: &str) -> Result<()> {
        self.click("#read-in").await?;
        self.click(button(choice)).await?;
        self.until_of(button(choice), "one.ariaPressed === 'true'").await?;
        self.press(Key::Escape).await
    }

    /// Switches to the other theme, or back to the system's.
    ///
    /// # Errors
    /// There is no such switch.
    pub async fn switch_theme(&self) -> Result<()> {
        let switch = button("Switch between light and dark");
        if !self.is_there(&switch).await? {
            self.click("#read-in").await?;
        }
        self.click(switch).await
    }

    /// Closes whatever the page tells, as one does to see what is behind it.
    ///
    /// # Errors
    /// A notice stays.
    pub async fn close_notices(&self) -> Result<()> {
        self.js::<()>("void [...document.querySelectorAll('.notices .notice__acts .btn:last-child')].forEach((button) => button.click())")
            .await?;
        self.until("document.querySelector('.notices .notice') === null").await
    }

    /// What the page tells now, each notice in one line.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn notices(&self) -> Result<Vec<String>> {
        self.js("[...document.querySelectorAll('.notices .notice')].map((notice) => notice.innerText.replace(/\\s+/g, ' '))").await
    }

    /// Waits until the open job is kept as it stands.
    ///
    /// # Errors
    /// It is not.
    pub async fn saved(&self) -> Result<()> {
        self.until("document.querySelector('.bar__kept').textContent.startsWith('Saved')").await
    }

    /// How many setups stand side by side.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn setups(&self, many: usize) -> Result<()> {
        self.until(&format!("document.querySelectorAll('[role=group][aria-label^=\"Setup \"]').length === {many}")).await
    }

    /// Presses *Add a setup* until there are as many; each takes the name of its letter.
    ///
    /// # Errors
    /// They do not come.
    pub async fn add_setups(&self, many: usize) -> Result<()> {
        while self.count("[role=group][aria-label^=\"Setup \"]").await? < many {
            let before = self.count("[role=group][aria-label^=\"Setup \"]").await?;
            self.click(button("Add a setup")).await?;
            self.setups(before + 1).await?;
        }
        Ok(())
    }

    /// The name of a setup.
    ///
    /// # Errors
    /// There is no such setup.
    pub async fn name_of(&self, letter: &str) -> Result<String> {
        self.value(field(format!("Name of setup {letter}"))).await
    }

    /// Waits until a setup has a gear set of this name.
    ///
    /// # Errors
    /// It has another.
    pub async fn has_gear_set(&self, letter: &str, name: &str) -> Result<()> {
        self.says(button(format!("Gear set of setup {letter}")).of(format!("Setup {letter}")), name).await
    }

    /// Waits until the open question shows these words.
    ///
    /// # Errors
    /// It does not.
    pub async fn question_says(&self, words: &str) -> Result<()> {
        self.says("main section.question", words).await
    }

    /// Begins an empty job.
    ///
    /// # Errors
    /// The book does not open.
    pub async fn begin_empty(&self) -> Result<()> {
        self.go_to("jobs").await?;
        self.click(button("New empty job")).await?;
        self.until_of(field("Title of the job"), "one.value === 'New job'").await?;
        self.go_to("compare/gears").await?;
        self.element(group("Setup A")).await.map(drop)
    }
}

/// The element of a figure in the column of a setup; the first with the key where no letter is given.
fn figure_js(letter: &str, key: &str) -> String {
    let (figures, letter) = (json!(format!("main [data-figure=\"{key}\"]")), json!(letter));
    format!(
        "[...document.querySelectorAll({figures})].find((one) => {{ const cell = one.closest('td');
           return {letter} === '' || cell?.closest('table').tHead?.rows[0].cells[cell.cellIndex]?.textContent.trim()[0] === {letter}; }})"
    )
}
