//! The build on a phone: measured, shims chosen, steps ticked with a thumb, the record kept and printed.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::pdf::pages;
use browser_tests::{Paper, Screen, button, field, group, visit};

use crate::paper::print_what;

/// A phone of common width.
const PHONE: Screen = Screen { width: 390, height: 844, ratio: 2.0, mobile: true };

#[test]
fn measure_choose_the_shim_tick_the_step_print_the_record() -> Result<()> {
    visit(async |page| {
        page.set_screen(PHONE).await?;
        page.open("#bench/endplay").await?;
        // 112.40 − 105.91 − 2 × 3.05 = 0.39 mm without shims: 0.20 + 0.10 mm leave 0.09 mm = 0.0035 in.
        page.paste_into(field("the stack"), "case depth 112.40 mm\n- cluster 105.91 mm\n- thrust washer 3.05 mm x2").await?;
        page.type_into(field("end play wanted"), "0.05 to 0.15 mm").await?;
        page.type_into(field("shims left"), "0.10 x3, 0.15, 0.20 x2 mm").await?;
        page.question_says("Fit 0.20 + 0.10 mm").await?;
        page.go_to("bench/record").await?;
        // The strip of questions is longer than the screen: the open one is scrolled into it.
        page.until("(({ left, right }) => left > -1 && right < innerWidth + 1)(document.querySelector('nav.line [aria-current]').getBoundingClientRect())").await?;
        page.type_into(field("ticked by"), "JB").await?;
        page.click(button("countershaft, reduced at the input")).await?;
        page.question_says("steps open").await?;
        page.element(group("End play and shims")).await?;
        // Ticked with a thumb, by whom and when; ticked again it is open again.
        // The third line: a heading, the manual, the case.
        let washed = ".steps > li:nth-of-type(3) .step__tick";
        let thumb: bool = page.of(washed, "one.getBoundingClientRect().height >= 44").await?;
        ensure!(thumb, "the button is smaller than a thumb");
        page.click(washed).await?;
        page.until_of(washed, "one.ariaChecked === 'true' && one.parentElement.innerText.includes('JB, ')").await?;
        page.click(washed).await?;
        page.until_of(washed, "one.ariaChecked === 'false'").await?;
        // A reading out of its range is marked; read again and right it is not.
        let step = "[...document.querySelectorAll('.step')].find((step) => step.innerText.includes('end play, dry'))";
        let reading = |at: usize| format!("{step}.querySelectorAll('.step__readings input')[{at}]");
        page.js::<()>(&format!("void {}.setAttribute('id', 'first-reading')", reading(0))).await?;
        page.js::<()>(&format!("void {}.setAttribute('id', 'second-reading')", reading(1))).await?;
        page.type_into("#first-reading", "0.35 mm").await?;
        page.until(&format!("{step}.innerText.includes('out of range')")).await?;
        page.question_says("is out of range").await?;
        page.type_into("#second-reading", "0.09 mm").await?;
        page.until(&format!("{step}.innerText.includes('inside')")).await?;
        page.assert_no_sideways("the build record on a phone").await?;
        // It is kept, and stands on the job's row.
        page.saved().await?;
        page.reload().await?;
        page.stands("bench/record").await?;
        page.until(&format!("{step}?.querySelectorAll('.step__readings input')[1]?.value === '0.09 mm'")).await?;
        page.go_to("jobs").await?;
        page.until("/\\d+ steps open/.test(document.querySelector('.job__about').innerText)").await?;
        // A part is ticked as the steps are, and what it costs goes with the record.
        page.go_to("bench/record").await?;
        let parts = group("Parts used and to order");
        page.click(button("what is usually renewed")).await?;
        page.until_of(&parts, "one.querySelectorAll('.step').length > 10 && one.innerText.includes('order 1')").await?;
        page.until_of(&parts, "(one.querySelector('.step__tick').click(), true)").await?;
        page.until_of(&parts, "one.querySelector('.step').innerText.includes('used')").await?;
        // The record goes with the box by itself.
        print_what(page, "Build record").await?;
        let pages = pages(&page.pdf(Paper::A4).await?)?.join(" ");
        for said in ["Build record", "0.35 mm", "0.09 mm", "Hubs:", "Front bearing of the ✓ used case"] {
            ensure!(pages.contains(said), "“{said}” is not on paper: {pages}");
        }
        ensure!(!pages.contains("Comparison"), "more than the record is printed: {pages}");
        Ok(())
    })
}
