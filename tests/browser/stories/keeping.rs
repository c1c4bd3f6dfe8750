//! Nothing typed is lost: each way a store can fail is caused in the browser, and the page says what happened.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, button, field, visit, visit_blocked};
use thirtyfour::WindowHandle;

const TITLE: &str = "Title of the job";
/// The key of the job that lies open.
const KEY: &str = "('layshaft.job.' + localStorage.getItem('layshaft.open'))";

/// Fills the store to the last byte.
pub(crate) const FILL: &str = "void (() => { let piece = 'x'.repeat(1 << 20); let at = 0;
    while (piece.length > 0) { try { localStorage.setItem('filler' + at++, piece); } catch { piece = piece.slice(piece.length / 2 + 1); } } })()";
/// Makes room again.
pub(crate) const MAKE_ROOM: &str =
    "void Object.keys(localStorage).filter((key) => key.startsWith('filler')).forEach((key) => localStorage.removeItem(key))";

async fn title_is(page: &Page, title: &str) -> Result<()> {
    page.until_of(field(TITLE), &format!("one.value === {title:?} || one.value")).await
}

/// Types a title and waits until the store holds it.
async fn keep_title(page: &Page, title: &str) -> Result<()> {
    page.type_into(field(TITLE), title).await?;
    page.saved().await?;
    page.until(&format!("localStorage.getItem({KEY}).includes({title:?})")).await
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
        page.until(&format!("window.keys < 40 && localStorage.getItem({KEY}).includes('key....')")).await?;
        page.js::<()>("void clearInterval(window.typing)").await
    })
}

#[test]
fn keys_that_never_pause_are_not_written_in_their_midst_before_a_second_is_over() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(
            "void (() => { const field = document.getElementById('title'); window.pressed = [];
              const write = Storage.prototype.setItem;
              Storage.prototype.setItem = function (key, text) {
                if (key.startsWith('layshaft.job.')) window.wrote ??= performance.now();
                return write.call(this, key, text); };
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
        page.js::<()>("void (localStorage.clear(), sessionStorage.clear())").await?;
        page.js::<()>(FILL).await?;
        page.reload().await?;
        page.until("document.getElementById('full') !== null && document.getElementById('held') === null").await?;
        page.type_into(field(TITLE), "My first job").await?;
        page.js::<()>(MAKE_ROOM).await?;
        keep_title(page, "My first job, with room").await
    })
}

#[test]
fn a_store_that_refuses_for_a_while_is_tried_again_with_the_next_edit() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void (window.take = Storage.prototype.setItem)").await?;
        let refuse = |name: &str| format!("void (Storage.prototype.setItem = () => {{ throw new DOMException('', '{name}'); }})");
        page.js::<()>(&refuse("NS_ERROR_DOM_QUOTA_REACHED")).await?;
        page.type_into(field(TITLE), "No room").await?;
        page.until("document.getElementById('full') !== null").await?;
        page.js::<()>(&refuse("SecurityError")).await?;
        page.type_into(field(TITLE), "Blocked").await?;
        kept_is(page, "blocked").await?;
        page.js::<()>("void (Storage.prototype.setItem = window.take)").await?;
        keep_title(page, "Free again").await
    })
}

#[test]
fn the_single_job_of_the_first_versions_becomes_one_of_the_book() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(&format!(
            "void (() => {{ const job = JSON.parse(localStorage.getItem({KEY})).job; job.title = 'From before'; localStorage.clear();
              sessionStorage.clear(); localStorage.setItem('layshaft.job', JSON.stringify(job)); }})()"
        ))
        .await?;
        page.reload().await?;
        title_is(page, "From before").await?;
        page.until(&format!("localStorage.getItem('layshaft.job') === null && localStorage.getItem({KEY}).includes('From before')")).await
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
        page.js::<()>(
            "void Object.keys(localStorage).filter((key) => key.startsWith('layshaft.good.')).forEach((key) => localStorage.removeItem(key))",
        )
        .await?;
        page.js::<()>(FILL).await?;
        page.type_into(field(TITLE), "After, and quite a bit longer than before").await?;
        page.until("document.getElementById('full') !== null").await?;
        // A beginning no longer than the old title still had room; what stands there is whole.
        let kept: String = page.js(&format!("JSON.parse(localStorage.getItem({KEY})).job.title")).await?;
        ensure!(kept == "Before" || (!kept.is_empty() && "After,".starts_with(&kept)), "the last good job is gone: {kept}");
        page.js::<()>(MAKE_ROOM).await?;
        page.click(button("Try again")).await?;
        page.saved().await?;
        page.until(&format!("localStorage.getItem({KEY}).includes('After, and')")).await
    })
}

#[test]
fn a_damaged_record_is_set_aside_and_its_last_good_copy_opens() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        keep_title(page, "Good copy").await?;
        keep_title(page, "Written last").await?;
        page.js::<()>(&format!("void localStorage.setItem({KEY}, localStorage.getItem({KEY}).slice(0, 200))")).await?;
        page.reload().await?;
        notice_says(page, &["damaged", "copy", "Save it as a file"]).await?;
        // The copy is from before the last write; autosave wrote while keys were still coming.
        page.until("document.getElementById('title').value !== '' && document.getElementById('title').value !== 'Written last'").await?;
        page.until(
            "Object.keys(localStorage).some((key) => key.startsWith('layshaft.set-aside.') && localStorage.getItem(key).length === 200)",
        )
        .await
    })
}

#[test]
fn a_damaged_record_without_a_copy_is_set_aside_and_offered() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>(&format!("void localStorage.setItem({KEY}, '{{\"schema\":1,')")).await?;
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
        page.js::<()>(&format!(
            "void (() => {{ window.name = {KEY}; localStorage.setItem({KEY}, '{{\"schema\":99,\"id\":\"x\",\"revision\":1}}'); }})()"
        ))
        .await?;
        page.reload().await?;
        notice_says(page, &["newer version", "Save it as a file"]).await?;
        page.type_into(field(TITLE), "Another job").await?;
        page.saved().await?;
        ensure!(page.js::<bool>("JSON.parse(localStorage.getItem(window.name)).schema === 99").await?, "the newer record was written over");
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
        ensure!(
            page.js::<bool>(&format!("localStorage.getItem({KEY}).includes('From the first tab')")).await?,
            "written before it was decided"
        );
        page.click(button("Keep mine")).await?;
        page.saved().await?;
        page.until(&format!("localStorage.getItem({KEY}).includes('\"title\":\"Mine\"')")).await?;

        page.driver()?.switch_to_window(first).await?;
        page.click(button("Keep both")).await?;
        title_is(page, "From the first tab, from this tab").await?;
        page.until("Object.keys(localStorage).filter((key) => key.startsWith('layshaft.job.')).length === 2").await
    })
}
