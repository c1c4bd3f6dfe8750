//! Swap beside figures worked by hand: the driveshaft, mount and lever of another box, its splines, its room, and what is asked for next.

use layshaft::catalogue::Catalogue;
use layshaft::job::{Choice, Field, InsideField, Job, JobField, SetupChoice, SetupField, ShaftField, SwapField, demo};
use layshaft::problem::Explain;
use layshaft::questions::{OnShelf, Shelves, Source, analyse_job, of_id, problems_of};
use layshaft::sheet::said::Bit;
use layshaft::sheet::{Figure, Piece, Reader, Section, Words};
use layshaft::swap::{Outline, Spline};
use layshaft::units::System;
use layshaft::units::common::in_millimetres;

/// A four-speed that came out as A, and sizes for both boxes.
pub(crate) fn coupe(of_a: &[(SwapField, &str)], of_b: &[(SwapField, &str)]) -> Job {
    let mut job = demo::empty(System::Metric);
    job.add_setup();
    for (column, sizes) in [of_a, of_b].into_iter().enumerate() {
        let id = job.setups[column].id;
        for (field, text) in sizes {
            job.type_text(Field::Setup(id, SetupField::Swap(*field)), (*text).into());
        }
    }
    job
}

/// The four-speed of an invented coupé and a five-speed, as they would be taped.
pub(crate) fn five_speed() -> Job {
    use SwapField as S;
    let mut job = coupe(
        &[
            (S::Length, "600"),
            (S::Mount, "420"),
            (S::Lever, "310"),
            (S::InputSpline, "23 x 25.4"),
            (S::Spigot, "15"),
            (S::Outline, "0: 170; 250: 110; 600: 60"),
        ],
        &[
            (S::Length, "638"),
            (S::Mount, "441"),
            (S::Lever, "325"),
            (S::InputSpline, "10 x 1 1/8 in"),
            (S::Spigot, "15"),
            (S::Outline, "0: 170; 300: 130; 638: 60"),
        ],
    );
    let old = job.setups[0].id;
    job.type_text(Field::Setup(old, SetupField::Shaft(ShaftField::Lengths)), "1,250".into());
    job.type_text(Field::Job(JobField::Tunnel), "0: 200; 300: 150; 700: 80".into());
    job
}

fn section(job: &Job) -> Section {
    let answers = analyse_job(job, Shelves::default());
    let reader = Reader { units: job.units, words: Words::Uk };
    of_id("swap").unwrap().section(Source::new(job, &answers, Shelves::default(), reader))
}

fn figure(section: &Section, column: usize, key: &str) -> Figure {
    let pieces = section.rows.iter().flat_map(|row| row.cells[column].pieces());
    let mut figures = pieces.filter_map(|piece| if let Piece::Figure(figure) = piece { Some((**figure).clone()) } else { None });
    figures.find(|figure| figure.key == key).unwrap()
}

#[track_caller]
fn says(job: &Job, parts: &[&str]) {
    let said = section(job).answer.plain();
    for part in parts {
        assert!(said.contains(part), "{part} in {said}");
    }
}

/// By hand: 638 − 600 = 38 mm longer, 1,250 − 38 = 1,212 mm between joint centres; 441 − 420 = 21 mm; 325 − 310 = 15 mm.
#[test]
fn a_longer_box_shortens_the_shaft_and_moves_mount_and_lever() {
    let job = five_speed();
    says(
        &job,
        &[
            "B: driveshaft 38 mm shorter: 1,212 mm joint to joint, 25 mm of slip left; mount 21 mm further back; \
             the lever comes up 15 mm behind the hole;",
            "a clutch plate with 10 splines of 28.6 mm",
        ],
    );
    let section = section(&job);
    for (key, wanted) in
        [("swap.joints_mm", 1_212.0), ("swap.length_off_mm", 38.0), ("swap.mount_off_mm", 21.0), ("swap.lever_off_mm", 15.0)]
    {
        assert!((figure(&section, 1, key).value - wanted).abs() < 1e-6, "{key}");
    }
    // With the old shaft: 25 − 38 = 13 mm too long.
    assert_eq!(figure(&section, 1, "swap.slip_mm").text(), "13 mm");
    // What is to be made is no caution.
    assert_eq!(section.cautions().count(), 0);
}

/// By hand, at 300 mm: tunnel 150, case of B 130: 20 mm. At 638: tunnel 150 − 338/400 × 70 = 90.85, case 60: 30.85. At 0: 30. So 20 mm
/// is least. A: at 250 tunnel 200 − 250/300 × 50 = 158.3 less 110; at 600 tunnel 97.5 less 60 = 37.5; at 0 it is 30.
#[test]
fn the_room_below_the_tunnel_is_least_at_a_station() {
    let section = section(&five_speed());
    assert!((figure(&section, 1, "swap.room_mm").value - 20.0).abs() < 1e-6);
    assert!((figure(&section, 0, "swap.room_mm").value - 30.0).abs() < 1e-6);
    let mut job = five_speed();
    job.type_text(Field::Job(JobField::Tunnel), "0: 200; 300: 125; 700: 80".into());
    says(&job, &["B: tunnel 5 mm too low 300 mm behind the face; driveshaft 38 mm shorter"]);
    assert_eq!(self::section(&job).cautions().count(), 1);
}

/// By hand: 1 1/2 in is 38.1 mm, a box that much shorter wants a shaft of 49.2 + 1.5 = 50.7 in.
#[test]
fn lengths_in_mixed_units_are_each_read_in_their_own() {
    let mut job = coupe(&[(SwapField::Length, "600 mm")], &[(SwapField::Length, "22.122 in")]);
    job.units = System::Inch;
    job.type_text(Field::Setup(job.setups[0].id, SetupField::Shaft(ShaftField::Lengths)), "49.2".into());
    // 600 mm = 23.622 in.
    says(&job, &["driveshaft 1.50 in longer: 50.70 in joint to joint, 1.00 in of slip left"]);
}

#[test]
fn what_is_as_the_old_one_is_said_and_tried_on() {
    use SwapField as S;
    let sizes = [(S::Length, "600"), (S::InputSpline, "23 x 25.4"), (S::Holes, "-120: 60; 120: 60; 0: -110"), (S::Spigot, "15")];
    // Every size alike is a setup copied from A, and no box of its own.
    let copy = coupe(&sizes, &sizes);
    says(&copy, &["B has the sizes of A: measure it if it is another box."]);
    assert!(!format!("{:?}", section(&copy).rows).contains("serves"));
    let own = [(S::Length, "600"), (S::InputSpline, "23 x 25.4"), (S::Holes, "-120: 60; 120: 60; 0: -110"), (S::Spigot, "15.05")];
    let job = coupe(&sizes, &own);
    says(&job, &["the old driveshaft serves", "the old clutch plate by count and size: slide it on", "every bolt hole meets"]);
    // One hole 2 mm off: two of three meet.
    let other = [(S::Holes, "-120: 60; 120: 62; 0: -110")];
    says(&coupe(&sizes, &other), &["2 of 3 bolt holes meet"]);
    says(&coupe(&[(S::Holes, "Curlew four"), (S::Mount, "420")], &[(S::Holes, "curlew four")]), &["the same bolt pattern by name"]);
    says(&coupe(&[(S::Holes, "Curlew four")], &[(S::Holes, "Redshank")]), &["another bolt pattern"]);
}

/// By count alone nothing is settled, and nothing is made by it.
#[test]
fn splines_by_count_alone_ask_for_a_caliper() {
    let job = coupe(&[(SwapField::InputSpline, "23")], &[(SwapField::InputSpline, "23 x 1 in")]);
    says(&job, &["23 splines as before: measure over them before the clutch plate is called right"]);
    assert!(section(&job).cautions().next().is_none());
    let job = coupe(&[(SwapField::InputSpline, "23 x 1 in")], &[(SwapField::InputSpline, "23 x 29")]);
    says(&job, &["a clutch plate with 23 splines of 29.0 mm"]);
}

#[test]
fn the_cheapest_measurement_that_is_missing_is_named_first() {
    says(&coupe(&[], &[]), &["Cheapest to measure next, on A and B: count the splines of the input."]);
    let job = coupe(&[(SwapField::InputSpline, "23")], &[]);
    says(&job, &["Cheapest to measure next, on B: count the splines of the input."]);
    let job = coupe(&[(SwapField::InputSpline, "23")], &[(SwapField::InputSpline, "10")]);
    says(&job, &["Cheapest to measure next, on A and B: a tape from the case face to the output flange."]);
    assert!(section(&demo::empty(System::Metric)).answer.plain().contains("add the other one as a setup"));
}

#[test]
fn sides_are_compared_once_both_are_chosen() {
    let mut job = five_speed();
    let [old, new] = [0, 1].map(|at: usize| job.setups[at].id);
    job.choose(Choice::Setup(old, SetupChoice::ForkSide), "left");
    assert!(!section(&job).answer.plain().contains("fork"));
    job.choose(Choice::Setup(new, SetupChoice::ForkSide), "right");
    job.choose(Choice::Setup(old, SetupChoice::SpeedoTap), "left-up");
    job.choose(Choice::Setup(new, SetupChoice::SpeedoTap), "left-down");
    // Driveshaft, mount, lever, clutch plate, then the fork; the cable leaves on the same side.
    says(&job, &["clutch fork on the right"]);
    let row = section(&job).rows.into_iter().find(|row| row.key == "speedo-side").unwrap();
    assert!(row.cells[1].pieces().any(|piece| *piece == Piece::good("speedometer cable on the left as before")));
}

/// What cannot be read is said beside its field with what to type, keeps its text, and leaves the rest standing.
#[test]
fn bad_input_is_named_and_kept() {
    use SwapField as S;
    for (field, text, said) in [
        (S::InputSpline, "ten x 28", "is no number of splines"),
        (S::InputSpline, "10 x 28 x 28", "has no outside and root of its own"),
        (S::InputSpline, "200 x 28", "is no number of splines"),
        (S::OutputSpline, "10 x wide", "cannot be read as the diameter"),
        (S::Length, "38 bananas", "is no unit for the distance from the case face"),
        (S::Outline, "0: 170", "one station makes no outline"),
        (S::Outline, "170; 160", "is no pair of lengths"),
        (S::Holes, "0: 10; 12", "is no pair of lengths"),
    ] {
        let mut job = five_speed();
        let id = job.setups[1].id;
        job.type_text(Field::Setup(id, SetupField::Swap(field)), text.into());
        let problems = problems_of(&job);
        assert!(problems.iter().any(|problem| problem.sentence().to_lowercase().contains(&said.to_lowercase())), "{text}: {problems:?}");
        assert_eq!(job.text(Field::Setup(id, SetupField::Swap(field))), Some(text));
        if field != S::Length {
            says(&job, &["driveshaft 38 mm shorter"]);
        }
    }
}

/// Driveline has the same field: once the new length is typed there, nothing is said against it.
#[test]
fn the_new_length_goes_to_driveline() {
    let mut job = five_speed();
    let id = job.setups[1].id;
    let field = Field::Setup(id, SetupField::Shaft(ShaftField::Lengths));
    let is_stale = |job: &Job| section(job).cautions().any(|(_, row, _)| row.key == "joints");
    job.type_text(field, "1,250".into());
    assert!(is_stale(&job));
    job.type_text(field, "1,212".into());
    assert!(!is_stale(&job));
}

/// By hand: (1,320 − 1,280) ÷ 2 = 20 mm out; wheels with 8 mm more backspace leave 12; 35 mm to the arch become 23, under the usual 30.
#[test]
fn a_wider_axle_moves_the_wheels_out_by_half() {
    use SwapField as S;
    let axles = |of_a: &[(S, &str)], of_b: &[(S, &str)], arch: &str| {
        let mut job = coupe(of_a, of_b);
        job.type_text(Field::Job(JobField::Arch), arch.into());
        job
    };
    let job = axles(&[(S::AxleWidth, "1,280")], &[(S::AxleWidth, "1,320")], "");
    says(&job, &["each rear wheel 20 mm further out"]);
    let (a, b) = ([(S::AxleWidth, "1,280"), (S::Backspace, "100")], [(S::AxleWidth, "1,320"), (S::Backspace, "108")]);
    let job = axles(&a, &b, "35");
    assert!((figure(&section(&job), 1, "swap.outwards_mm").value - 12.0).abs() < 1e-6);
    let verdict = |job: &Job| format!("{:?}", section(job).rows.into_iter().find(|row| row.key == "axle-width").unwrap().cells[1].lines);
    assert!(verdict(&job).contains("23 mm left to the arch, 30 mm is usual"), "{}", verdict(&job));
    assert!(verdict(&axles(&a, &b, "10")).contains("the tyre meets its arch"));
    assert!(verdict(&axles(&a, &b, "60")).contains("room to the arch"));
    // A backspace of one alone says nothing of where its wheels stand.
    let job = axles(&a, &b[..1], "35");
    assert!(!section(&job).answer.plain().contains("wheel"));
    says(&axles(&[(S::HalfShaft, "18 x 28")], &[(S::HalfShaft, "24 x 28")], ""), &["a side gear with 24 splines of 28.0 mm"]);
}

/// What a class does is said beside the sump it is filled into. By hand: 100 mm × tan 1° = 100 × 0.017455 = 1.7 mm.
#[test]
fn the_class_of_an_oil_is_cautioned_by_its_sump() {
    use SwapField as S;
    let cautions = |sump: S, oil: &str| {
        let job = coupe(&[(sump, oil)], &[]);
        section(&job).cautions().filter(|(_, row, _)| row.key == sump.row().id).count()
    };
    for (sump, oils, wanted) in [
        (S::Oil, ["GL-5 75W-90, 1.6 l", "GL-4 80W, 1.6 l", "GL-4/GL-5", ""], [1, 0, 0, 0]),
        (S::OverdriveOil, ["GL-5 80W", "30 engine oil", "limited slip 90", ""], [1, 0, 1, 0]),
        (S::AxleOil, ["GL-4 EP 80", "GL-5 85W-140", "gl4 / gl5", ""], [1, 0, 0, 0]),
    ] {
        assert_eq!(oils.map(|oil| cautions(sump, oil)), wanted, "{sump:?}");
    }
    let oiled = section(&coupe(&[(S::AxleOil, "GL-5 90, 1.4 l")], &[]));
    assert_eq!(figure(&oiled, 0, "swap.oil_level_mm").text(), "1.7 mm");
    for label in ["Gear oil and bronze rings", "Gear oil of axles", "Oil level"] {
        assert!(oiled.rests.iter().any(|rest| rest.label == label && !rest.source.is_empty()), "{label}");
    }
}

/// By hand: 14 − 11.5 = 2.5 mm more travel; 228 − 216 = 12 mm wider.
#[test]
fn clutch_and_flange_are_held_against_the_old_ones() {
    use SwapField as S;
    let mut job = coupe(
        &[(S::Travel, "11.5"), (S::Flange, "4 holes on 3 in"), (S::Length, "600")],
        &[(S::Travel, "14"), (S::Flange, "4 holes on 2 3/4 in"), (S::Length, "600")],
    );
    let [old, new] = [0, 1].map(|at: usize| job.setups[at].id);
    for (id, plate, hand) in [(old, "216 mm", "left"), (new, "228 mm", "right")] {
        job.type_text(Field::Setup(id, SetupField::Inside(InsideField::ClutchDiameter)), plate.into());
        job.choose(Choice::Setup(id, SetupChoice::SpeedoHand), hand);
    }
    says(
        &job,
        &[
            "an output flange with other holes; 2.5 mm more release travel; a clutch plate of 228 mm across; speedometer drive gear right-handed",
        ],
    );
}

/// The demo's first gear set names its case, whose sizes lie on the shelf: offered once, and said once they are taken.
#[test]
fn the_sizes_of_the_case_family_are_offered_where_they_are_needed() {
    let mut job = demo::job();
    let cell = |job: &Job| {
        let shelf = OnShelf::of(&Catalogue::built_in());
        let answers = analyse_job(job, shelf.shelves());
        let reader = Reader { units: job.units, words: Words::Uk };
        let section = of_id("swap").unwrap().section(Source::new(job, &answers, shelf.shelves(), reader));
        section.rows.into_iter().find(|row| row.key == "box-family").unwrap().cells.remove(0)
    };
    let offer = cell(&job).offer.unwrap();
    assert_eq!(offer.title(), "Curlew short case");
    job.setups[0].take_part(&offer);
    assert_eq!(cell(&job).offer, None);
    assert!(cell(&job).pieces().any(|piece| *piece == Piece::words("as on the shelf")));
    // Sizes of a box that the shelf does not know are offered to it.
    let own = coupe(&[(SwapField::Length, "600")], &[]);
    let row = section(&own).rows.into_iter().find(|row| row.key == "box-family").unwrap();
    assert!(row.cells[0].offer.as_ref().is_some_and(|entry| entry.id.is_empty()) && row.cells[1].offer.is_none());
}

/// The words about the shaft open Driveline, those about the speedometer Dial.
#[test]
fn the_answer_opens_what_it_names() {
    let mut job = five_speed();
    for (at, side) in [(0, "left-up"), (1, "right-up")] {
        let id = job.setups[at].id;
        job.choose(Choice::Setup(id, SetupChoice::SpeedoTap), side);
        // Room in the sentence for the last part.
        for field in [SwapField::Mount, SwapField::Lever] {
            job.type_text(Field::Setup(id, SetupField::Swap(field)), String::new());
        }
    }
    let answer = section(&job).answer;
    let opens: Vec<(&str, &str)> = answer
        .bits()
        .into_iter()
        .filter_map(|bit| if let Bit::Open { question, words } = bit { Some((question, words)) } else { None })
        .collect();
    assert_eq!(opens, [("driveline", "1,212 mm joint to joint"), ("speedometer", "speedometer cable on the right")]);
    assert!(opens.iter().all(|(question, _)| of_id(question).is_some()));
}

/// By hand: 12 in = 304.8 mm and 4 1/2 in = 114.3 mm; a bare size takes the unit of its pair, else the job's. A root in another unit than
/// its outside is asked about.
#[test]
fn lengths_of_other_units_in_one_line_are_each_read_in_their_own() {
    let outline = Outline::read("0: 170; 12: 4 1/2 in; 60 cm: 60 mm", System::Metric).unwrap();
    let read: Vec<[f64; 2]> =
        outline.stations().iter().map(|(at, height)| [at, height].map(|one| (in_millimetres(*one) * 10.0).round() / 10.0)).collect();
    assert_eq!(read, [[0.0, 170.0], [304.8, 114.3], [600.0, 60.0]]);
    let spline =
        |text: &str| Spline::read(text, System::Inch).map(|spline| [spline.outside, spline.root].map(|size| size.map(in_millimetres)));
    let [outside, root] = spline("10 x 1 1/8 in x 23.2 mm").unwrap();
    assert!((outside.unwrap() - 28.575).abs() < 1e-9 && (root.unwrap() - 23.2).abs() < 1e-9);
    let why = spline("10 x 1 1/8 x 23.2 mm").unwrap_err();
    assert_eq!(why.what(), "“10 x 1 1/8 x 23.2 mm” has a root far inside its outside");
    assert!(why.what_to_do().starts_with("put the unit behind each size"));
}
