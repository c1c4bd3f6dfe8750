//! The build record: how lines are read, ticked and judged, what stays open, and what End play and Fits give to it.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::checklist::edit::{Part, keep_photographs, put, tick};
use layshaft::checklist::range::Slip;
use layshaft::checklist::{Amount, Line, Range, Step, lines};
use layshaft::job::{BenchField, BuildField, EndPlayField, Field, Job, JobField, demo};
use layshaft::questions::record::answer::open_steps;
use layshaft::questions::{Input, LIST, OnShelf, Source, analyse_job, bench, of_id};
use layshaft::sheet::{Piece, Reader, Tone, Words};
use layshaft::units::System;
use proptest::prelude::*;

use crate::any_job::{figure, near, sheet};

fn with(steps: &str) -> Job {
    let mut job = demo::empty(System::Inch);
    job.type_text(Field::Job(JobField::Bench(BenchField::Build(BuildField::Steps))), steps.into());
    job
}

fn section(job: &Job) -> layshaft::sheet::Section {
    sheet(job).sections.into_iter().find(|section| section.id == "record").unwrap()
}

fn said(job: &Job) -> String {
    section(job).answer.plain()
}

/// What is said of a row, its tones before its words.
fn row(job: &Job, key: &str) -> String {
    let section = section(job);
    let row = section.rows.iter().find(|row| row.key == key).unwrap();
    let piece = |piece: &Piece| match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(words) | Piece::Open(_, words) | Piece::Absent(words) | Piece::Needed(words) => words.clone(),
        Piece::Verdict(verdict) => {
            let tone = match verdict.tone {
                Tone::Good => '+',
                Tone::Caution | Tone::Driving => '!',
                Tone::Stop => 'x',
            };
            format!("{tone} {}", verdict.text)
        }
    };
    row.cells[0].pieces().map(piece).collect::<Vec<_>>().join(" | ")
}

#[test]
fn a_line_is_read_as_it_would_be_written() {
    let line = "[x] Cluster end play | want 0.002 to 0.006 in | got 0.004 in; 0.005 in | by JB | on 28 Nov 2026 | burr dressed off";
    let Line::Step(step) = Line::read(line) else { panic!() };
    assert!(step.is_done && step.is_read);
    assert_eq!(
        [&step.what, &step.wanted, &step.by, &step.on, &step.note],
        ["Cluster end play", "0.002 to 0.006 in", "JB", "28 Nov 2026", "burr dressed off"]
    );
    assert_eq!(step.readings, ["0.004 in", "0.005 in"]);
    assert_eq!(step.written(), line.replace("| burr", "| note burr"));
    assert_eq!(Line::read("Cluster:"), Line::Heading("Cluster".into()));
    assert_eq!(Line::read("  "), Line::Blank);
    // A word that only begins like one of the list's is a note.
    let Line::Step(step) = Line::read("✓wash|gotten from the shelf|wanting") else { panic!() };
    assert_eq!(
        (step.is_done, step.what.as_str(), step.note.as_str(), step.is_read),
        (true, "wash", "gotten from the shelf; wanting", false)
    );
}

#[test]
fn ticking_names_who_and_when_and_leaves_the_other_lines() {
    let list = "Cluster:\nneedles | got\n\n  end play|want 0.002 to 0.006 in";
    let ticked = tick(list, 1, " JB ", "28 Nov 2026");
    assert_eq!(ticked, "Cluster:\n[x] needles | got  | by JB | on 28 Nov 2026\n\n  end play|want 0.002 to 0.006 in");
    assert_eq!(tick(&ticked, 1, "JB", ""), "Cluster:\n[ ] needles | got \n\n  end play|want 0.002 to 0.006 in");
    // A heading is no step, and there is no line 9.
    assert_eq!((tick(list, 0, "JB", ""), tick(list, 9, "JB", "")), (list.to_owned(), list.to_owned()));
    let read = put(&put(list, 3, Part::Reading(0), "0.004"), 3, Part::Reading(1), "0.0045");
    assert!(read.ends_with("\n[ ] end play | want 0.002 to 0.006 in | got 0.004; 0.0045"), "{read}");
    // What would part the line does not.
    let noted = put(list, 1, Part::Note, "tight | pressed\nagain");
    assert!(noted.contains("| note tight   pressed again\n"), "{noted}");
}

#[test]
fn ranges_are_read_as_people_write_them() {
    let rows = [
        ("0.002 to 0.006 in", "0.004", true),
        ("0.002 to 0.006 in", "0.10 mm", true),
        ("0.002-0.006 in", "0.0061", false),
        ("0.05…0.10 mm", "0.05", true),
        ("2 ± 0.1 mm", "2.09", true),
        ("2 +/- 0.1 mm", "1.89 mm", false),
        ("at least 0.8 mm", "0.79", false),
        ("at least 0,8 mm", "0,8", true),
        ("max 0.06 mm", "0.002 in", true),
        ("40", "40", true),
        ("40 rollers", "39", false),
        // 12 lbf·in are 1.356 N·m (1 lbf·in = 0.112985 N·m).
        ("20-32 lbf-in", "2.5 N·m", true),
        ("1.3 to 1.4 Nm", "12 lb in", true),
        ("4 thou to 0.2 mm", "0.15 mm", true),
    ];
    for (wanted, read, is_inside) in rows {
        let range = Range::read(wanted).unwrap_or_else(|why| panic!("{wanted}: {why:?}"));
        let amount = Amount::read(read, Some(&range)).unwrap_or_else(|why| panic!("{wanted}, {read}: {why:?}"));
        assert_eq!(range.holds(&amount), is_inside, "{wanted}: {read}");
    }
}

/// 17 lbf·in is 1.92 N·m, 17 lbf·ft is 23: twelve times out. 0.05 mm read as 0.5, and mm for inches, are the other slips of the trade.
#[test]
fn a_slip_is_told() {
    let rows = [
        ("15 to 25 lbf·in", "17 lbf·ft", Some(Slip::FeetForInches)),
        ("0.05 to 0.10 mm", "0.7", Some(Slip::Point)),
        ("0.002 to 0.006 in", "0.10", Some(Slip::OtherSystem)),
        ("0.002 to 0.006 in", "0.0075", None),
        ("at most 0.06 mm", "0.5", None),
        ("40", "400", None),
    ];
    for (wanted, read, slip) in rows {
        let range = Range::read(wanted).unwrap();
        assert_eq!(range.slip(&Amount::read(read, Some(&range)).unwrap()), slip, "{wanted}: {read}");
    }
}

#[test]
fn what_is_out_of_range_stays_open_until_it_is_answered() {
    let list = "[x] wash the case\n[x] end play | want 0.002 to 0.006 in | got 0.008 in\nseals";
    let job = with(list);
    assert_eq!(open_steps(&job), Some(2));
    assert_eq!(said(&job), "2 steps open, of 3 in all. “end play” is out of range: 0.002 to 0.006 in is wanted. Next: seals.");
    assert_eq!(
        row(&job, "outside-2"),
        "0.008 in, 0.002 to 0.006 in wanted | x out of range: put it right, or say in the note why it may stay"
    );
    near(&job, "record.done", 1.0, 0.0);
    near(&job, "record.step_2.reading_1_in", 0.008, 1e-12);
    let answered = with(&put(list, 1, Part::Note, "owner wants it so"));
    assert_eq!(open_steps(&answered), Some(1));
    assert_eq!(said(&answered), "1 step open, of 3 in all. Next: seals.");
    // Read again and right: both stand, the last one counts.
    let again = with(&put(list, 1, Part::Reading(1), "0.005 in"));
    assert_eq!(open_steps(&again), Some(1));
    assert_eq!(row(&again, "step-2"), "+ done | 0.008 in | again | 0.005 in | wanted 0.002 to 0.006 in | + inside");
    assert_eq!(figure(&sheet(&again), 0, "record.step_2.reading_2_in").text(), "0.005 in");
    assert_eq!(said(&with("[x] all of it")), "The one step is done.");
    assert_eq!(open_steps(&with("  \nCluster:")), None);
}

/// 112.40 − 105.91 − 2 × 3.05 = 0.39 mm without shims, as in *End play and shims*.
#[test]
fn end_play_gives_its_range_and_its_shims() {
    let mut job = with("cluster end play | want as End play | got 0.0035 in");
    assert!(section(&job).rows.iter().all(|row| row.key != "end-play"));
    assert!(row(&job, "step-1").ends_with("wanted what End play has; nothing is typed there yet"));
    let fields = [
        (EndPlayField::Stack, "case depth 112.40 mm\n- cluster 105.91 mm\n- thrust washer 3.05 mm x2"),
        (EndPlayField::Wanted, "0.05 to 0.15 mm"),
        (EndPlayField::Kit, "0.10 x3, 0.15, 0.20 x2 mm"),
    ];
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Bench(BenchField::EndPlay(field))), text.into());
    }
    assert!(row(&job, "end-play").starts_with("Fit 0.20 + 0.10 mm"), "{}", row(&job, "end-play"));
    // 0.05 mm = 0.00197 in, 0.15 mm = 0.00591 in.
    assert_eq!(row(&job, "step-1"), "open | 0.0035 in | wanted 0.00197 to 0.00591 in, from End play | + inside");
}

#[test]
fn what_cannot_be_read_is_said_and_kept() {
    let rows = [
        ("end play | want tight", "“tight” is not a range. Behind want, type both ends, as 0.002 to 0.006 in, or at least 0.8 mm."),
        ("end play | got loose", "“loose” is not a reading. Type a number with its unit, such as 0.004 in, 2 N·m or 40."),
        (
            "end play | want 1 to 2 mm | got 3 lbf·in",
            "“3 lbf·in” cannot be held against “1 to 2 mm”. Read it in a unit of the same kind, or change what is wanted.",
        ),
        ("end play | want 1 mm to 2 lbf·in", "“1 mm to 2 lbf·in” is not a range."),
    ];
    for (list, says) in rows {
        let job = with(list);
        let problems = bench::problems(&job);
        assert!(problems.len() == 1 && problems[0].sentence().starts_with(says), "{list}: {problems:?}");
        assert_eq!(job.bench.build.steps, list);
    }
}

/// Every list to begin with can be read, and none is done before it is begun.
#[test]
fn the_lists_to_begin_with_can_be_read() {
    let question = LIST.iter().find(|question| question.id == "record").unwrap();
    let mut inputs = question.groups.iter().flat_map(|group| group.inputs);
    let steps = inputs.find_map(|input| if let Input::Steps(steps) = input { Some(*steps) } else { None }).unwrap();
    assert_eq!(steps.begin.len(), 4);
    for template in steps.begin {
        let job = with(template.steps);
        let many = lines(template.steps).iter().filter(|line| matches!(line, Line::Step(_))).count();
        assert!((12..=30).contains(&many), "{}: {many}", template.name);
        assert_eq!(open_steps(&job), Some(many), "{}", template.name);
        assert!(bench::problems(&job).is_empty(), "{}: {:?}", template.name, bench::problems(&job));
    }
}

fn step() -> impl Strategy<Value = Step> {
    let text = "[a-z0-9.,]([ a-zé0-9.,]{0,12})";
    (any::<bool>(), text, text, proptest::collection::vec("[0-9.]{1,4} ?", 0..3), text, text).prop_map(
        |(is_done, what, wanted, readings, by, note)| Step {
            is_done,
            what,
            wanted,
            readings,
            is_read: true,
            by,
            on: "28 Nov 2026".into(),
            note: note.clone(),
            photographs: note,
        },
    )
}

proptest! {
    /// What is written is read again, blanks included: nothing moves under whoever types.
    #[test]
    fn a_step_that_is_written_is_read_again(step in step()) {
        prop_assert_eq!(Line::read(&step.written()), Line::Step(step));
    }

    /// Any text is a list, ticking twice opens again, and no other line is touched.
    #[test]
    fn any_text_is_a_list(text in "[ -~|\\[\\]x\n:;]{0,60}", at in 0_usize..4) {
        let ticked = tick(&text, at, "JB", "today");
        let (before, after): (Vec<_>, Vec<_>) = (text.split('\n').collect(), ticked.split('\n').collect());
        prop_assert_eq!(before.len(), after.len());
        for (line, (before, after)) in before.iter().zip(&after).enumerate() {
            prop_assert!(line == at || before == after);
        }
        let was_done = |text: &str| matches!(lines(text).get(at), Some(Line::Step(step)) if step.is_done);
        let is_step = matches!(lines(&text).get(at), Some(Line::Step(_)));
        prop_assert_eq!(was_done(&ticked), is_step && !was_done(&text));
    }
}

/// A job with these parts listed, and a shelf of the shop's own.
fn with_parts(parts: &str) -> (Job, OnShelf) {
    let mut job = demo::empty(System::Metric);
    job.type_text(Field::Job(JobField::Bench(BenchField::Build(BuildField::Parts))), parts.into());
    let gear = [(Column::Name, "Corner 25"), (Column::Role, "driven"), (Column::Teeth, "25"), (Column::Housing, "Corner")];
    let shelf = [
        (Column::PartNumber, "S-25"),
        (Column::Price, "12.50"),
        (Column::Currency, "EUR"),
        (Column::Quantity, "1"),
        (Column::Place, "rack 3"),
    ];
    let entry =
        gear.into_iter().chain(shelf).fold(Entry::started(PartKind::SpeedometerGear), |entry, (column, text)| entry.with(column, text));
    (job, OnShelf::of(&Catalogue::built_in().add(entry).0))
}

/// By hand: 2 × 12.50 = 25.00; 14.50; 25 + 14.50 = 39.50. Of two wanted one is on the shelf: one to order.
#[test]
fn parts_are_used_on_the_shelf_or_to_order_with_the_shelfs_numbers_and_prices() {
    let (job, shelf) = with_parts("Box:\n2 x speedometer gear S-25\n[x] Front seal: 14.50 EUR | by JB\nrear seal x2, S-9");
    let needed = job.parts_needed(shelf.shelves().own);
    let told: Vec<_> = needed.iter().map(|part| (part.what.as_str(), part.many, part.there(), part.to_order(), part.is_used)).collect();
    assert_eq!(told, [("speedometer gear S-25", 2, 1, 1, false), ("Front seal", 1, 0, 0, true), ("rear seal x2, S-9", 1, 0, 1, false)]);
    assert_eq!(job.quote_lines(shelf.shelves().own), ["speedometer gear S-25, 2 at 12.50 EUR: 25.00 EUR", "Front seal: 14.50 EUR"]);
    let answers = analyse_job(&job, shelf.shelves());
    let source = Source::new(&job, &answers, shelf.shelves(), Reader { units: job.units, words: Words::Us });
    let told = format!("{:?}", of_id("record").unwrap().section(source).rows);
    for said in
        ["1 used, 2 to order", "order speedometer gear S-25; rear seal", "1 in stock, rack 3, 12.50 EUR each", "39.50 EUR", "order 1"]
    {
        assert!(told.contains(said), "“{said}” is not in {told}");
    }
}

#[test]
fn a_reworded_step_keeps_its_photographs_and_an_older_list_reads_as_it_was() {
    let list = "Case:\n[x] wash the case | by JB\ncount the needles | got 40";
    let kept = keep_photographs(list, |what| what == "wash the case");
    assert_eq!(kept, "Case:\n[x] wash the case | by JB | photographs of wash the case\ncount the needles | got 40");
    let reworded = kept.replacen("wash the case", "case washed and dried", 1);
    let Line::Step(step) = &lines(&reworded)[1] else { panic!() };
    assert_eq!((step.what.trim(), step.photographed()), ("case washed and dried", "wash the case"));
    // Ticked and opened again, the words of its photographs stay.
    assert!(tick(&reworded, 1, "", "").ends_with("photographs of wash the case\ncount the needles | got 40"));
    assert_eq!(keep_photographs(&reworded, |_| true).matches("photographs of").count(), 2);
    let Line::Step(step) = Line::read("wash the case | photographs taken") else { panic!() };
    assert_eq!((step.photographed(), step.note.as_str()), ("wash the case", "photographs taken"));
}
