//! What a page measures: how wide and how high it is, what is too small for a finger, what is cut off, and what text it holds.

use anyhow::{Result, bail, ensure};

use crate::{Page, Screen};

/// The least side of what is pressed, in CSS pixels, less what rounding may take.
const FINGER: f64 = 43.5;
/// The least size of type in a field: below it a phone zooms into the page.
const FIELD_TYPE: f64 = 16.0;

impl Page {
    /// Fails where the page scrolls sideways.
    ///
    /// # Errors
    /// What stands outside.
    pub async fn assert_no_sideways(&self, where_: &str) -> Result<()> {
        let (needed, there): (f64, f64) = self.js("[document.documentElement.scrollWidth, document.documentElement.clientWidth]").await?;
        if needed <= there {
            return Ok(());
        }
        let widest: Vec<String> = self
            .js("[...document.querySelectorAll('body *')].filter((one) => one.getBoundingClientRect().right > innerWidth + 1 && one.checkVisibility())
                 .map((one) => `${one.tagName}.${one.className} #${one.id} “${one.textContent.slice(0, 30)}” to ${Math.round(one.getBoundingClientRect().right)}`).slice(0, 8)")
            .await?;
        bail!("{where_}: the page needs {needed} px of {there}\n  {}", widest.join("\n  "))
    }

    /// How high the page is, in screens.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn screens_high(&self) -> Result<f64> {
        self.js("document.documentElement.scrollHeight / innerHeight").await
    }

    /// Fails where something that is pressed is too small for a finger, or a field's type so small that a phone zooms in.
    ///
    /// # Errors
    /// What is too small.
    pub async fn assert_for_fingers(&self, where_: &str) -> Result<()> {
        // A figure stands in a line of text, and a link in a sentence: both are spared, as WCAG 2.5.8 spares them.
        let small: Vec<String> = self
            .js(&format!(
                "(() => {{ const about = (one, what) => `${{one.outerHTML.slice(0, 110)}}: ${{what}}`;
                   const seen = (css) => [...document.querySelectorAll(css)].filter((one) => one.checkVisibility({{ visibilityProperty: true }}));
                   const low = seen('button:not([data-figure]), select, summary, nav a, .field__input, input[type=text], input[type=search], textarea')
                     .filter((one) => one.getBoundingClientRect().height < {FINGER} && !one.closest('.unseen'))
                     .map((one) => about(one, `${{Math.round(one.getBoundingClientRect().height)}} px high`));
                   const fine = seen('input:not([type=checkbox], [type=file]), select, textarea').filter((one) => parseFloat(getComputedStyle(one).fontSize) < {FIELD_TYPE})
                     .map((one) => about(one, getComputedStyle(one).fontSize));
                   return [...low, ...fine]; }})()"
            ))
            .await?;
        ensure!(small.is_empty(), "{where_}: too small for a finger:\n  {}", small.join("\n  "));
        Ok(())
    }

    /// Fails where a word of a head, a button or a row is broken inside, or a value of a head is cut off.
    ///
    /// # Errors
    /// What is broken or cut.
    pub async fn assert_whole_words(&self, where_: &str) -> Result<()> {
        let broken: Vec<String> = self
            .js("(() => { const found = [];
                 const range = document.createRange();
                 const walk = document.createTreeWalker(document.querySelector('#heads, main'), NodeFilter.SHOW_TEXT);
                 for (let node = walk.nextNode(); node; node = walk.nextNode()) {
                   if (!node.parentElement.checkVisibility() || node.parentElement.closest('.unseen')) continue;
                   for (const word of node.data.matchAll(/[\\p{L}\\p{N}]{2,}/gu)) {
                     range.setStart(node, word.index); range.setEnd(node, word.index + word[0].length);
                     const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top)));
                     if (lines.size > 1 && word[0].length < 20) found.push(`“${word[0]}” in “${node.data.slice(0, 40)}” stands on ${lines.size} lines`);
                   }
                 }
                 for (const field of document.querySelectorAll('#heads .field__input')) {
                   if (field.scrollWidth > field.clientWidth + 1) found.push(`“${field.value}” needs ${field.scrollWidth} px of ${field.clientWidth}`);
                 }
                 return found; })()")
            .await?;
        ensure!(broken.is_empty(), "{where_}: broken or cut off:\n  {}", broken.join("\n  "));
        Ok(())
    }

    /// Fails where a text of the page, or what is said of an element, holds the program's source.
    ///
    /// # Errors
    /// The texts.
    pub async fn assert_no_code(&self, where_: &str) -> Result<()> {
        let code: Vec<String> = self
            .js("(() => { const is_code = (text) => /move \\|\\||\\|_\\||=>|->|::|[{}]|\\.get\\(\\)|&mut |\\bNaN\\b|\\bundefined\\b|Some\\(|None\\b(?= *\\))/.test(text);
                 const found = [];
                 const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                 for (let node = walk.nextNode(); node; node = walk.nextNode())
                   if (!node.parentElement.closest('script, style, noscript, #crash') && is_code(node.data)) found.push(node.data.slice(0, 120));
                 for (const one of document.querySelectorAll('[aria-label], [title], [placeholder]'))
                   for (const name of ['aria-label', 'title', 'placeholder'])
                     if (is_code(one.getAttribute(name) ?? '')) found.push(`${name}: ${one.getAttribute(name).slice(0, 120)}`);
                 return found; })()")
            .await?;
        ensure!(code.is_empty(), "{where_}: code stands on the page:\n  {}", code.join("\n  "));
        Ok(())
    }

    /// Screens to be looked at: two phones, two tablets, and desks of three widths.
    pub const WIDTHS: [Screen; 7] = [
        Screen { width: 320, height: 640, ratio: 2.0, mobile: true },
        Screen::PHONE,
        Screen { width: 768, height: 1024, ratio: 1.0, mobile: true },
        Screen { width: 820, height: 1180, ratio: 1.0, mobile: true },
        Screen { width: 1024, height: 768, ratio: 1.0, mobile: false },
        Screen::DESK,
        Screen { width: 1920, height: 1080, ratio: 1.0, mobile: false },
    ];
}
