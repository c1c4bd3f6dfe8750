//! Tyre and speedometer texts that cannot be read, and the sentences they get.

use layshaft::problem::{Explain, Problem};
use layshaft::speedometer::read;
use layshaft::tyre;
use layshaft::units::System;

#[track_caller]
fn check(text: &str, sentence: &str) {
    let error = tyre::read(text, System::Inch).unwrap_err();
    assert_eq!(Problem::stop("tyre", &error).sentence(), sentence);
}

const MEASURED: &str = "“rolls 1,878 mm”, “circumference 74 in”, “diameter 616 mm”, “loaded radius 11.4 in”, “856 turns/mile”, “532 rev/km” or “10 turns 18.79 m”";

#[test]
fn sizes_that_are_none() {
    check("185/70Q14", "In “185/70Q14” the part “14” was not understood. Type it like 185/70R14.");
    check("185/70", "“185/70” ends before the size is complete. Type it like 185/70R14.");
    check("205/60R15 91VV", "In “205/60R15 91VV” the part “91VV” was not understood. Type it like 185/70R14.");
    check("185/70R14 88S 91H", "In “185/70R14 88S 91H” the part “91H” was not understood. Type it like 185/70R14.");
    // A lone letter is a slip, a word is passed over.
    check("185/70R14 I", "In “185/70R14 I” the part “I” was not understood. Type it like 185/70R14.");
    check("30x3 1/2-23", "In “30x3 1/2-23” the part “-23” was not understood. Type it like 30x3 1/2.");
    check("6.50/6.00-16", "In “6.50/6.00-16” the part “6.00-16” was not understood. Type it like 6.00-16 or 6.00/6.50-16.");
    check("E78-", "“E78-” ends before the size is complete. Type it like E78-14 or GR70-15.");
    check("205/60R99", "In “205/60R99” the part “99” was not understood. Type it like 185/70R14.");
    check(
        "hello",
        &format!(
            "“hello” is not a tyre size. Type the size as moulded, such as 185/70R14, 165R13, E78-14 or 6.00-16, or a measurement such as {MEASURED}."
        ),
    );
    check(
        "K78-14",
        &format!(
            "The dimensions of K78-14 are not known here: a letter size names a load, not a width. Measure the tyre and type {MEASURED}."
        ),
    );
    check("20x8.00-24", "20x8.00-24 would be no larger than its rim. Check the diameter and the rim.");
}

#[test]
fn measurements_that_are_none() {
    check("1,878 mm", &format!("“1,878 mm” does not say what was measured. Say what it is: {MEASURED}."));
    check(
        "diameter 6 mm",
        "“6 mm” is outside what the tyre diameter can be. Type 200 to 1,900 mm (smaller than a cart's or larger than a tractor's wheel).",
    );
    check(
        "rolls far",
        "“far” cannot be read as the rolling circumference. Type a number such as 6,500 or 2 1/4 or 19,05, with its unit if it is not the one shown.",
    );
    check(
        "turns 18 m",
        "“turns 18 m” does not say both how many turns and how far. Type it like “10 turns 18.79 m”, “856 turns/mile” or “532 rev/km”.",
    );
    check(
        "100 turns 18 m",
        "“100 turns 18 m” is outside what the rolling circumference can be. Type 0.5 to 6 m a turn (smaller than a cart's or larger than a tractor's wheel).",
    );
}

#[track_caller]
fn say<T: std::fmt::Debug, E: Explain + std::fmt::Debug>(result: Result<T, E>, what: &str) {
    assert_eq!(result.unwrap_err().what(), what);
}

#[test]
fn speedometer_texts() {
    say(read::train("7"), "“7” is not a drive and a driven gear");
    say(read::train("7/170"), "a speedometer gear cannot have 170 teeth");
    say(read::train("seven/17"), "“seven/17” is not a drive and a driven gear");
    say(read::train(" "), "no speedometer gears are given");
    say(read::dial("0 pulses/turn 8000", System::Inch), "“0” is not a number of pulses for each turn");
    say(read::dial("ten", System::Inch), "“ten” cannot be read as the dial constant");
    say(read::readings("60", System::Inch), "“60” is not a reading of the dial with the true speed");
    say(read::readings("60 0", System::Inch), "“0” is outside what the speed of a road check can be");
    // A mile in a second: 3,600 mph; a kilometre in a second: 3,600 km/h.
    say(read::readings("60 in 1 s", System::Inch), "“60 in 1 s” comes to a true speed of 3,600.0 mph");
    let too_quick = read::readings("60 in 1 s", System::Metric).unwrap_err();
    assert_eq!(too_quick.what_to_do(), "check the seconds between the posts, a kilometre apart");
    say(read::readings(&"60 57;".repeat(201), System::Inch), "there are more than 200 readings");
}
