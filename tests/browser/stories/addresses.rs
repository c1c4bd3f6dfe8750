//! Where one is stands in the address: links, the way back and forward, addresses that were kept, and those that name nothing.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Page, Screen, link, visit};

async fn back(page: &Page) -> Result<()> {
    Ok(page.driver()?.back().await?)
}

#[test]
fn the_navigation_leads_there_and_back_and_forward_again() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.stands("compare/gears").await?;
        page.click(link("Road speed").of("Questions")).await?;
        page.stands("compare/road").await?;
        page.click(link("Shelf").of("Places")).await?;
        page.stands("shelf").await?;
        // A place is found as it was left.
        page.click(link("Compare").of("Places")).await?;
        page.stands("compare/road").await?;
        back(page).await?;
        page.stands("shelf").await?;
        back(page).await?;
        page.stands("compare/road").await?;
        // The first page of all had no fragment.
        back(page).await?;
        page.stands("compare/gears").await?;
        page.driver()?.forward().await?;
        page.stands("compare/road").await
    })
}

#[test]
fn every_address_opens_what_it_names_and_nothing_else_is_in_the_tree() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        for at in page.everywhere().await? {
            page.go(&format!("?from={}#{at}", at.replace('/', "-"))).await?;
            page.ready().await?;
            page.stands(&at).await?;
            let sections: usize = page.count("main > section.question").await?;
            ensure!(sections == if at == "jobs" { 2 } else { 1 }, "at {at} {sections} sections stand");
        }
        Ok(())
    })
}

#[test]
fn an_address_that_names_nothing_says_so_and_what_was_open_stays() -> Result<()> {
    visit(async |page| {
        page.open("#compare/road").await?;
        page.stands("compare/road").await?;
        for wrong in ["#compare/nothing", "#nowhere", "#compare/road/deeper", "#%E0%A4%A", "#bench/gears"] {
            page.js::<()>(&format!("void (location.hash = {wrong:?})")).await?;
            page.until("document.querySelector('.notices').innerText.includes('address')").await?;
            page.until("document.querySelector('main h2').innerText === 'Road speed'").await?;
            page.close_notices().await?;
        }
        // So does the page that is opened with one: it begins where it always does.
        page.go("?wrong#compare/nothing").await?;
        page.ready().await?;
        page.until("document.querySelector('main h2').innerText === 'Gears'").await?;
        page.until("document.querySelector('.notices').innerText.includes('address')").await
    })
}

#[test]
fn a_phone_has_the_places_below_and_the_questions_above() -> Result<()> {
    visit(async |page| {
        page.set_screen(Screen::PHONE).await?;
        page.open("").await?;
        page.click(link("Speedometer").of("Questions")).await?;
        page.stands("compare/speedometer").await?;
        page.click(link("Jobs").of("Places, below")).await?;
        page.stands("jobs").await?;
        page.click(link("Compare").of("Places, below")).await?;
        page.stands("compare/speedometer").await?;
        // The strip shows which question is open.
        let (left, right): (f64, f64) = page
            .js("(({ left, right }) => [left, right])(document.querySelector('nav li a[aria-current=page]').getBoundingClientRect())")
            .await?;
        ensure!(left > -1.0 && right < 391.0, "the open question's name stands from {left} to {right} px");
        Ok(())
    })
}
