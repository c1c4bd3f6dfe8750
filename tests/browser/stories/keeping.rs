//! Nothing typed is lost: each way a store can fail is caused in the browser, and the page says what happened.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, button, field, visit, visit_blocked, visit_killed};
use serde_json::{Value, json};
use thirtyfour::WindowHandle;

const TITLE: &str = "Title of the job";
async fn title_is(page: &Page, title: &str) -> Result<()> {
    page.until_of(field(TITLE), &format!("one.value === {title:?} || one.value")).await
}

/// Types a title and waits until the store holds it.
async fn keep_title(page: &Page, title: &str) -> Result<()> {
    page.type_into(field(TITLE), title).await?;
    page.saved().await?;
    page.until(&format!("kept.job().then((text) => text.includes({title:?}))")).await
}

/// Has the browser refuse its database from the next page on, as some do in a private window.
async fn refuse_database(page: &Page) -> Result<()> {
    let source = "Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('', 'SecurityError'); } })";
    page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await.map(drop)
}

/// Waits until the page tells something that holds all of these.
pub(crate) async fn notice_says(page: &Page, parts: &[&str]) -> Result<()> {
    let parts = parts.iter().map(|part| format!("notice.innerText.includes({part:?})")).collect::<Vec<_>>().join(" && ");
    page.until(&format!("[...document.querySelectorAll('.notice')].some((notice) => {parts})")).await
}

/// Waits until the bar says how the job is kept.
async fn kept_is(page: &Page, words: &str) -> Result<()> {
    page.until_of("header [role=status]", &format!("one.textContent.includes({words:?}) || one.textContent")).await
}

/// The page in two tabs, the second of them before the person.
pub(crate) async fn two_tabs(page: &Page) -> Result<[WindowHandle; 2]> {
    page.open("").await?;
    let first = page.driver()?.window().await?;
    let second = page.driver()?.new_tab().await?;
    page.driver()?.switch_to_window(second.clone()).await?;
    page.open("").await?;
    Ok([first, second])
}

#[test]
fn what_is_typed_is_there_after_loading_again() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let tire = field("Tire").of("Setup A");
        page.type_into(field(TITLE), "Gearbox for the blue car").await?;
        page.type_into(&tire, "6.40-13").await?;
        page.saved().await?;
        page.reload().await?;
        title_is(page, "Gearbox for the blue car").await?;
        ensure!(page.value(&tire).await? == "6.40-13", "the tyre is {}", page.value(&tire).await?);
        Ok(())
    })
}

#[test]
fn a_tab_killed_in_mid_edit_loses_at_most_the_last_second() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        // Keys that never rest for as long as the pause before writing: the first of them are written all the same.
        page.js::<()>(
            "void (async () => { const field = document.getElementById('title'); field.value = 'key'; window.keys = 0;
              const press = () => { field.value += '.'; field.dispatchEvent(new Event('input', {bubbles: true})); window.keys += 1; };
              window.typing = setInterval(press, 60); })()",
        )
        .await?;
        page.until("kept.job().then((text) => window.keys < 40 && text.includes('key....'))").await?;
        page.js::<()>("void clearInterval(window.typing)").await
    })
}

#[test]
fn keys_that_never_pause_are_not_written_in_their_midst_before_a_second_is_over() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(
            "void (() => { const field = document.getElementById('title'); window.pressed = [];
              const write = IDBObjectStore.prototype.put;
              IDBObjectStore.prototype.put = function (text, key) {
                if (key.startsWith('layshaft.job.')) window.wrote ??= performance.now();
                return write.call(this, text, key); };
              const press = () => { window.pressed.push(performance.now()); field.value += '.'; field.dispatchEvent(new Event('input', {bubbles: true})); };
              window.typing = setInterval(press, 60); })()",
        )
        .await?;
        page.until("window.wrote !== undefined").await?;
        page.js::<()>("void clearInterval(window.typing)").await?;
        // A machine too busy to press in time did pause.
        let paused = "window.pressed.some((at, key) => at - (window.pressed[key - 1] ?? at) > 350)";
        let wrote: f64 = page.js("window.wrote - window.pressed[0]").await?;
        ensure!(page.js::<bool>(paused).await? || wrote > 900.0, "written {wrote} ms behind the first key");
        Ok(())
    })
}

#[test]
fn a_first_visit_to_a_full_store_is_told_so_and_kept_once_there_is_room() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>("kept.forget()").await?;
        page.fill_device(true).await?;
        page.reload().await?;
        page.until("document.getElementById('full') !== null && document.getElementById('held') === null").await?;
        page.type_into(field(TITLE), "My first job").await?;
        page.fill_device(false).await?;
        keep_title(page, "My first job, with room").await
    })
}

#[test]
fn a_store_that_refuses_for_a_while_is_tried_again_with_the_next_edit() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void (window.take = IDBObjectStore.prototype.put)").await?;
        let refuse = |name: &str| format!("void (IDBObjectStore.prototype.put = () => {{ throw new DOMException('', '{name}'); }})");
        page.js::<()>(&refuse("NS_ERROR_DOM_QUOTA_REACHED")).await?;
        page.type_into(field(TITLE), "No room").await?;
        page.until("document.getElementById('full') !== null").await?;
        page.js::<()>(&refuse("SecurityError")).await?;
        page.type_into(field(TITLE), "Blocked").await?;
        kept_is(page, "blocked").await?;
        page.js::<()>("void (IDBObjectStore.prototype.put = window.take)").await?;
        keep_title(page, "Free again").await
    })
}

#[test]
fn the_single_job_of_the_first_versions_becomes_one_of_the_book() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>(
            "kept.job().then((text) => { const job = JSON.parse(text).job; job.title = 'From before';
              return kept.forget().then(() => localStorage.setItem('layshaft.job', JSON.stringify(job))); })",
        )
        .await?;
        page.reload().await?;
        title_is(page, "From before").await?;
        page.until("kept.job().then((text) => localStorage.getItem('layshaft.job') === null && text.includes('From before'))").await
    })
}

/// Older versions kept all jobs in the store that the browser writes late.
#[test]
fn the_jobs_of_the_older_store_are_taken_over_whole() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>(
            "kept.job().then((text) => kept.forget().then(() => { const record = JSON.parse(text);
              for (const [id, title] of [['j1', 'First of two'], ['j2', 'Second of two']]) {
                record.id = id; record.job.title = title;
                localStorage.setItem('layshaft.job.' + id, JSON.stringify(record)); }
              localStorage.setItem('layshaft.catalogue', JSON.stringify({ schema: 1, axles: [{ id: 'own-1', drive: '41/11' }] }));
              localStorage.setItem('layshaft.open', 'j2'); }))",
        )
        .await?;
        page.reload().await?;
        title_is(page, "Second of two").await?;
        page.until("kept.keys('layshaft.job.').then((keys) => keys.join() === 'layshaft.job.j1,layshaft.job.j2')").await?;
        page.until("kept.get('layshaft.catalogue').then((text) => text.includes('41/11'))").await?;
        page.until("!Object.keys(localStorage).some((key) => /layshaft\\.(job|catalogue)/.test(key))").await?;
        page.go_to("jobs").await?;
        page.says("#jobs", "First of two").await
    })
}

/// The keys rest for less than the pause before writing when the page is left.
#[test]
fn what_was_typed_just_before_leaving_is_there() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into(field(TITLE), "Typed and gone").await?;
        page.reload().await?;
        title_is(page, "Typed and gone").await?;
        page.saved().await?;
        page.until("kept.job().then((text) => text.includes('Typed and gone'))").await?;
        page.until("!Object.values(localStorage).some((text) => text.includes('Typed and gone'))").await
    })
}

/// The browser is ended as a power cut would: it gets no chance to write anything more.
#[test]
fn a_killed_browser_loses_nothing_that_was_said_to_be_saved() -> Result<()> {
    visit_killed(
        async |page| {
            page.open("").await?;
            keep_title(page, "Before the power cut").await
        },
        async |page| {
            page.open("").await?;
            title_is(page, "Before the power cut").await
        },
    )
}

#[test]
fn a_browser_without_a_database_keeps_jobs_in_its_older_store() -> Result<()> {
    visit(async |page| {
        refuse_database(page).await?;
        page.open("").await?;
        page.type_into(field(TITLE), "Kept without it").await?;
        page.saved().await?;
        page.until("Object.values(localStorage).some((text) => text.includes('Kept without it'))").await?;
        page.reload().await?;
        title_is(page, "Kept without it").await
    })
}

#[test]
fn a_blocked_store_is_said_and_the_sheet_works() -> Result<()> {
    visit_blocked(async |page| {
        page.open("").await?;
        let axle = field("Ring and pinion").of("Setup A");
        notice_says(page, &["browser", "Save the job as a file"]).await?;
        page.type_into(&axle, "41/11").await?;
        kept_is(page, "blocked").await?;
        page.go_to("jobs").await?;
        page.click(button("New empty job")).await?;
        notice_says(page, &["is not", "first"]).await?;
        page.go_to("compare/gears").await?;
        ensure!(page.value(&axle).await? == "41/11", "the edit is gone");
        Ok(())
    })
}

#[test]
fn a_full_store_keeps_the_last_good_job_and_takes_the_new_one_once_there_is_room() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        keep_title(page, "Before").await?;
        page.fill_device(true).await?;
        page.type_into(field(TITLE), "After, and quite a bit longer than before").await?;
        page.until("document.getElementById('full') !== null").await?;
        let kept: String = page.js("kept.job().then((text) => JSON.parse(text).job.title)").await?;
        ensure!(kept == "Before", "the last good job is gone: {kept}");
        page.fill_device(false).await?;
        page.click(button("Try again")).await?;
        page.saved().await?;
        page.until("kept.job().then((text) => text.includes('After, and'))").await
    })
}

#[test]
fn a_damaged_record_is_set_aside_and_its_last_good_copy_opens() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        keep_title(page, "Good copy").await?;
        keep_title(page, "Written last").await?;
        page.js::<Value>("kept.job().then((text) => kept.put(kept.open(), text.slice(0, 200)))").await?;
        page.reload().await?;
        notice_says(page, &["damaged", "copy", "Save it as a file"]).await?;
        // The copy is from before the last write; autosave wrote while keys were still coming.
        page.until("document.getElementById('title').value !== '' && document.getElementById('title').value !== 'Written last'").await?;
        page.until("kept.keys('layshaft.set-aside.').then(([key]) => kept.get(key)).then((text) => text.length === 200)").await
    })
}

#[test]
fn a_damaged_record_without_a_copy_is_set_aside_and_offered() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        // Without the copy from before it was last written there is nothing to go back to.
        page.js::<Value>("kept.keys('layshaft.good.').then((keys) => Promise.all(keys.map(kept.remove)))").await?;
        page.js::<Value>("kept.put(kept.open(), '{\"schema\":1,')").await?;
        page.reload().await?;
        notice_says(page, &["set aside", "Save it as a file"]).await?;
        page.go_to("jobs").await?;
        page.element(button("Delete for good")).await?;
        page.element(button("Save it as a file").of("Jobs on this device")).await.map(drop)
    })
}

#[test]
fn a_record_of_a_newer_version_stays_as_it_is() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<Value>("(window.name = kept.open(), kept.put(window.name, '{\"schema\":99,\"id\":\"x\",\"revision\":1}'))").await?;
        page.reload().await?;
        notice_says(page, &["newer version", "Save it as a file"]).await?;
        page.type_into(field(TITLE), "Another job").await?;
        page.saved().await?;
        ensure!(
            page.js::<bool>("kept.get(window.name).then((text) => JSON.parse(text).schema === 99)").await?,
            "the newer record was written over"
        );
        Ok(())
    })
}

#[test]
fn two_tabs_on_one_job_ask_which_one_stays() -> Result<()> {
    visit(async |page| {
        let [first, second] = two_tabs(page).await?;
        keep_title(page, "From the second tab").await?;

        page.driver()?.switch_to_window(first.clone()).await?;
        page.click(button("Load theirs")).await?;
        title_is(page, "From the second tab").await?;

        keep_title(page, "From the first tab").await?;
        page.driver()?.switch_to_window(second).await?;
        page.element(button("Keep mine")).await?;
        page.type_into(field(TITLE), "Mine").await?;
        ensure!(page.js::<bool>("kept.job().then((text) => text.includes('From the first tab'))").await?, "written before it was decided");
        page.click(button("Keep mine")).await?;
        page.saved().await?;
        page.until("kept.job().then((text) => text.includes('\"title\":\"Mine\"'))").await?;

        page.driver()?.switch_to_window(first).await?;
        page.click(button("Keep both")).await?;
        title_is(page, "From the first tab, from this tab").await?;
        page.until("kept.keys('layshaft.job.').then((keys) => keys.length === 2)").await
    })
}
