//! Pull at the wheels: a measured curve is pasted, the car is changed, every setup follows.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{Screen, visit};

#[test]
fn a_pasted_curve_and_a_mass_are_enough() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("").await?;
            page.js::<()>("void document.querySelectorAll('#car details').forEach(one => one.open = true)").await?;
            let rows = "rpm;Nm\\n1000;95\\n2000;118\\n3000;132\\n3500;135\\n4500;130\\n5500;112\\n6500;80";
            page.js::<()>(&format!("void (() => {{ const area = document.querySelector('#dyno-rows'); area.value = '{rows}'; area.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()")).await?;
            page.until("document.querySelector('#car').innerText.includes('Measured curve, 1,000 to 6,500 rpm; most torque at 3,500 rpm')")
                .await?;
            page.until("document.querySelector('#car').innerText.includes('Columns taken: 1 for rpm, 2 for torque in N·m.')").await?;
            page.until("document.querySelectorAll('[data-figure=\"pull.to_speed_2_s\"]').length >= 1").await?;
            // More mass is never quicker.
            let before: f64 = page.js("parseFloat(document.querySelector('[data-figure=\"pull.to_speed_2_s\"]').innerText)").await?;
            page.type_into("#mass", "3,600").await?;
            page.until(&format!("parseFloat(document.querySelector('[data-figure=\"pull.to_speed_2_s\"]').innerText) > {before}")).await?;
            page.type_into("#mass", "0").await?;
            page.until("document.querySelector('#mass').getAttribute('aria-invalid') === 'true'").await?;
            page.until("document.querySelector('#pull').innerText.includes('needs the car’s mass')").await?;
            page.click("#undo").await?;
            page.click("#undo").await?;
        }
        Ok(())
    })
}

/// A clipboard that keeps what it is given, or refuses it.
const CLIPBOARD: &str = "void Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText: (text) => window.refuses ? Promise.reject(new Error('refused')) : Promise.resolve(void (window.copied = text)) } })";

#[test]
fn close_or_wide_is_copied_as_text() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("").await?;
            page.js::<()>(CLIPBOARD).await?;
            page.js::<()>("void document.querySelector('#pull-as-text').scrollIntoView()").await?;
            page.click("#copy-pull").await?;
            page.until("document.querySelector('#copied-pull').innerText.includes('Copied')").await?;
            for line in ["A: As it came", "Standing start", "1,261 lbf", "Against A"] {
                page.until(&format!("window.copied.includes('{line}')")).await?;
            }
            // The text follows the job, and where the browser refuses it is opened and marked.
            page.type_into("#mass", "3,600").await?;
            page.js::<()>("void (window.refuses = true)").await?;
            page.js::<()>("void document.querySelector('#pull-as-text').scrollIntoView()").await?;
            page.click("#copy-pull").await?;
            page.until("document.querySelector('#copied-pull').innerText.includes('copy it by hand')").await?;
            page.until("(() => { const area = document.querySelector('#pull-text'); return area.closest('details').open && area.selectionEnd === area.value.length && area.value !== window.copied; })()").await?;
            page.click("#undo").await?;
        }
        Ok(())
    })
}

#[test]
fn speed_is_drawn_over_time_and_over_distance() -> Result<()> {
    visit(async |page| {
        for screen in [Screen::DESK, Screen::PHONE] {
            page.set_screen(screen).await?;
            page.open("").await?;
            for (name, axis) in [("run", "time"), ("run-distance", "distance")] {
                page.js::<()>(&format!("void document.querySelector('#picture-{name}').scrollIntoView()")).await?;
                page.until(&format!("document.querySelector('#pull').innerHTML.includes('Standing start: speed over {axis}')")).await?;
                ensure!(!page.told(name).await?.is_empty(), "{name} says nothing");
            }
        }
        Ok(())
    })
}
