//! What is wrong with it, beside points added by hand, twenty faults whose cause people found, and what cannot be used.

use layshaft::faults::{Table, TableError, Told, rank};
use layshaft::job::{Bench, Faults, Job, demo};
use layshaft::problem::Explain;
use layshaft::questions::{Shelves, Source, analyse_job, bench, build, of_id};
use layshaft::sheet::{Piece, Reader, Section, Words};
use layshaft::units::System;

use crate::nth;

/// The question, asked of an empty job.
pub(crate) fn section(said: &str, tried: &str) -> Section {
    let job = job(said, tried);
    let answers = analyse_job(&job, Shelves::default());
    let reader = Reader { units: job.units, words: Words::Uk };
    of_id("faults").unwrap().section(Source::new(&job, &answers, Shelves::default(), reader))
}

fn job(said: &str, tried: &str) -> Job {
    let faults = Faults { said: said.into(), tried: tried.into(), ..Faults::default() };
    Job { bench: Bench { faults, ..Bench::default() }, ..demo::empty(System::Metric) }
}

/// The causes by name, the likeliest first.
fn causes(said: &str, tried: &[(&str, &str)]) -> Vec<String> {
    let table = Table::built_in();
    let ask = |id: &str| table.tests.iter().find(|test| test.id == id).unwrap().ask.clone();
    let lines: Vec<String> = tried.iter().map(|(id, answer)| format!("[x] {} | got {answer}", ask(id))).collect();
    let rows = section(said, &lines.join("\n")).rows.into_iter();
    let names: Vec<(String, String)> = rows.filter_map(|row| Some((row.key.strip_prefix("cause-")?.to_owned(), row.label))).collect();
    let places = names.iter().map(|(_, label)| label.split_once(". ").unwrap().0.parse::<usize>().unwrap());
    assert!(places.eq(1..=names.len()), "{names:?}");
    names.into_iter().map(|(id, _)| id).collect()
}

#[track_caller]
fn points(said: &str, cause: &str, points: f64, filled: &str) {
    let section = section(said, "");
    let row = section.rows.iter().find(|row| row.key == format!("cause-{cause}")).unwrap();
    let figure = row.cells[0].pieces().find_map(|piece| if let Piece::Figure(figure) = piece { Some(figure) } else { None }).unwrap();
    assert!((figure.value - points).abs() < 1e-9, "{}", figure.value);
    assert_eq!(figure.working.as_ref().unwrap().filled(), filled);
}

/// By hand, from the weights: 2 points for each of three steps of how usual, 3 for what fits, 4 off for what speaks against it, one off for
/// each step further in and for each step of what the test costs.
#[test]
fn points_are_added_as_by_hand() {
    let said = "jumps-out; g3; overrun";
    points(said, "mounts", 7.0, "6 jumps out of gear + 3 on the overrun − 1 bolted on outside − 1 a tool or a helper = 7");
    points(said, "dogs", 7.0, "6 jumps out of gear + 3 in one gear + 3 on the overrun − 3 inside − 2 a part comes off = 7");
    points(said, "detent", 2.0, "4 jumps out of gear + 3 in one gear − 4 on the overrun − 1 bolted on outside = 2");
}

/// What happened, what is said of it, what was tried, and the causes that were found.
type Case = (&'static str, &'static str, &'static [(&'static str, &'static str)], &'static [&'static str]);

/// The cause found comes first or second in at least sixteen of twenty; what does not is printed. The rows are those of a collection of
/// what owners, clubs and workshops ask in public, in general words; the table was written with them known.
#[test]
fn twenty_faults_whose_cause_was_found() {
    let cases: [Case; 20] = [
        ("rebuilt three times, alignment never looked at", "jumps-out; g4; overrun; rebuild", &[], &["housing-off"]),
        ("rings renewed, hub and sleeve not", "jumps-out; g2; overrun; slowly", &[], &["dogs"]),
        ("a hand on the lever wore the fork", "jumps-out; g3; g4; both; slowly", &[], &["fork", "hand-on-lever"]),
        ("box overhauled for a crunch into 2nd, fault is hydraulic", "crunches; g2; pumping", &[], &["hydraulics", "clutch-seals"]),
        ("new ring on a worn cone", "crunches; g2; hot; rebuild; twice", &[], &["cone-worn"]),
        ("no synchroniser there: waiting cures it", "grates; reverse; waits", &[], &["no-synchroniser"]),
        ("grates after waiting: master or slave", "grates; reverse", &[("wait-ten", "yes")], &["hydraulics", "clutch-seals"]),
        ("the spigot", "grates; pedal-noise; comes-down", &[], &["spigot"]),
        ("noisy gears, quiet in direct: the cluster", "indirect-noisy; slowly", &[], &["cluster-worn"]),
        ("solenoid changed first, earth was broken", "od-not-in; sudden", &[], &["od-wire"]),
        ("blocked bleed hole hangs between gears", "od-slow; sudden", &[], &["od-hole"]),
        ("oil level, looks like a slip", "od-slips; hot", &[], &["od-oil"]),
        ("used pair disturbed", "axle-whine; pulling; rebuild", &[], &["mesh-off"]),
        ("centre bearing off sideways", "judders; swap", &[], &["centre-bearing"]),
        ("shaft changed three times, angles never checked", "shakes; swap; pulling", &[], &["joint-angles"]),
        ("tapered sliding teeth, read as a spring fault", "jumps-out; g1; overrun; slowly", &[], &["sliding-teeth"]),
        ("new dog box leaves gear", "jumps-out; g3; both; rebuild", &[], &["half-engaged"]),
        ("dry ring stuck on its cone", "tight", &[], &["ring-stuck"]),
        ("spigot rollers forgotten", "jumps-out; all-noisy; g4; rebuild", &[], &["spigot-rollers"]),
        ("filled at a tilt", "leak-breather; oil", &[], &["oil-over"]),
    ];
    let mut missed = Vec::new();
    for (what, said, tried, found) in cases {
        let causes = causes(said, tried);
        if !causes.iter().take(2).any(|cause| found.contains(&cause.as_str())) {
            missed.push(format!("{what}: {:?}", causes.iter().take(4).collect::<Vec<_>>()));
        }
    }
    println!("not first or second: {missed:#?}");
    assert!(missed.len() <= 4, "{missed:#?}");
}

#[test]
fn the_table_is_whole() {
    let table = Table::built_in();
    assert!(table.symptoms.len() >= 30 && table.causes.len() >= 100, "{} symptoms, {} causes", table.symptoms.len(), table.causes.len());
    for (at, symptom) in table.symptoms.iter().enumerate() {
        let causes = table.causes.iter().filter(|cause| cause.symptoms.iter().any(|(made, _)| *made == at)).count();
        assert!(causes >= 2, "{} has {causes} causes", symptom.id);
        assert!(symptom.branch.is_empty() || of_id(&symptom.branch).is_some(), "{}", symptom.branch);
    }
    for cause in &table.causes {
        assert!(!cause.shows.is_empty() && !cause.symptoms.is_empty(), "{} has no test or no symptom", cause.id);
        assert!(cause.measure.is_empty() || of_id(&cause.measure).is_some(), "{} is measured in no question: {}", cause.id, cause.measure);
        assert!(cause.fits.iter().all(|fits| !cause.against.contains(fits)), "{} fits and speaks against", cause.id);
    }
    for test in &table.tests {
        assert!(test.ask.ends_with('?') && !test.ask.contains('|'), "{}", test.ask);
        assert!(test.yes.starts_with(char::is_lowercase) && test.no.starts_with(char::is_lowercase), "{}", test.id);
        assert!(table.causes.iter().any(|cause| cause.shows.iter().any(|(shown, _)| table.tests[*shown].id == test.id)), "{}", test.id);
    }
}

/// Each table that is not whole says where and what to do.
#[test]
fn a_broken_table_says_why() {
    use layshaft::faults::Texts;
    let broken = |change: fn(Texts<'static>) -> Texts<'static>| Table::read(change(Texts::BUILT_IN)).unwrap_err();
    assert_eq!(broken(|texts| Texts { tests: "", ..texts }), TableError::Empty("tests"));
    let cells = broken(|texts| Texts { conditions: "condition;group;pick;said\ng1;gear;many", ..texts });
    assert_eq!(cells.what(), "line 2 (conditions) has not as many cells as its head");
    let unknown = broken(|texts| Texts { conditions: "condition;group;pick;said\ng1;gear;all;1st", ..texts });
    assert_eq!(unknown.what(), "line 2 (conditions): “all” is not known");
    let twice = broken(|texts| Texts { conditions: "condition;group;pick;said\ng1;gear;many;1st\ng1;gear;many;2nd", ..texts });
    assert_eq!(twice.what_to_do(), "give each line a name of its own");
}

#[test]
fn what_is_tried_ranks_again() {
    let said = "jumps-out; g3; overrun";
    let before = causes(said, &[]);
    let after = causes(said, &[("mounts", "no"), ("bore-clock", "yes")]);
    assert_eq!(after[0], "housing-off");
    let place = |causes: &[String], cause: &str| causes.iter().position(|each| each == cause).unwrap();
    assert!(place(&after, "mounts") > place(&before, "mounts"), "{after:?}");
    let answer = section(
        said,
        "[x] Box out: clock the bore of the clutch housing from the crank. Is the total reading over 0.13 mm (0.005 in)? | got yes",
    )
    .answer;
    assert!(
        answer.plain().starts_with("Its test shows it: clutch housing out of line with the crank. Look at these with it: spigot"),
        "{answer:?}"
    );
}

#[test]
fn what_does_not_go_together_is_said() {
    let said = |said: &str| section(said, "").answer.plain();
    assert!(
        said("slips; drags")
            .starts_with("“slips: revs rise, the car does not follow” and “creeps with the clutch down” do not go together"),
        "{}",
        said("slips; drags")
    );
    assert!(
        said("grates; fast").contains("“grates into 1st or reverse standing still” and “fast” do not go together"),
        "{}",
        said("grates; fast")
    );
    assert!(said("jumps-out; cold; hot").contains("“cold” and “hot” do not go together"));
    assert_eq!(said("cold"), "Choose what it does first.");
    assert_eq!(said(""), "");
}

#[test]
fn nothing_typed_is_lost_and_all_that_cannot_be_used_is_said() {
    let problems = |said: &str, tried: &str| -> Vec<String> {
        bench::problems(&job(said, tried)).iter().map(layshaft::problem::Problem::sentence).collect()
    };
    assert_eq!(
        problems("jumps-out; wobbly", ""),
        ["“wobbly” is neither a symptom nor a condition here: it is left out. Choose from the list."]
    );
    assert!(problems("", "[x] ask the neighbour | got yes")[0].contains("is no test of this list: it is kept, and not used"));
    let test = &Table::built_in().tests[0].ask;
    assert!(problems("", &format!("[x] {test} | got maybe"))[0].contains("“maybe” is neither yes nor no"));
    assert!(problems("", &format!("[ ] {test}")).is_empty());
}

/// A setup whose 4th is no straight-through gear: the direct gear is what its ratios say.
#[test]
fn the_direct_gear_is_that_of_the_first_setup() {
    let faults = Faults { said: "jumps-out; g4".into(), ..Faults::default() };
    let in_demo = Job { bench: Bench { faults, ..Bench::default() }, ..demo::job() };
    let rests = |job: &Job| {
        let sheet = build(job, Words::Uk);
        let section = sheet.sections.into_iter().find(|section| section.id == "faults").unwrap();
        section.rests.into_iter().find(|rest| rest.label == "So it is").unwrap().value
    };
    assert_eq!(rests(&in_demo), "in one gear, in the direct gear");
    assert_eq!(rests(&job("jumps-out; g3", "")), "in one gear, not in the direct gear");
    let table = Table::built_in();
    let mut told = Told::default();
    ["jumps-out", "g3", "g4"].into_iter().filter_map(|id| table.given(id)).for_each(|given| told.take(given));
    told.imply(table, Some(nth(5)));
    assert!(told.has(table, "several") && told.has(table, "indirect") && !told.has(table, "one-gear"));
    assert!(!rank(table, &told).is_empty());
}
