//! Pull at the wheels: a measured curve is pasted, the car is changed, every setup follows.

use browser_tests::anyhow::Result;
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
