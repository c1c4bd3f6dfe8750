//! Benchmarks on this machine.
#![expect(missing_docs, reason = "criterion's macro writes a function of its own")]

mod ours;

use std::hint::black_box;
use std::sync::Arc;
use std::time::Duration;

use criterion::{Criterion, criterion_group, criterion_main};
use layshaft::catalogue::Catalogue;
use layshaft::chart::{self, LIGHT};
use layshaft::finder::{Given, Search, Table, Wish};
use layshaft::job::{Field, Job, JobField, PullField, demo};
use layshaft::questions::Source;
use layshaft::questions::road::pictures as of;
use layshaft::questions::{self, OnShelf};
use layshaft::sheet::{Reader, Words};
use measurements::{car, ground};

fn run(table: &Arc<Table>, wishes: &[Wish], given: &Given, every_one: bool) -> Search {
    let mut search = Search::new(Arc::clone(table), wishes.to_vec(), given.clone());
    if every_one {
        search = search.exhaustive();
    }
    search.advance(u64::MAX);
    search
}

fn searches(criterion: &mut Criterion) {
    let table = Arc::new(ground::table());
    let given = ground::given();
    let mut group = criterion.benchmark_group("search");
    group.sample_size(10).measurement_time(Duration::from_secs(5));
    group.bench_function("ten-million-each-judged", |b| b.iter(|| black_box(run(&table, &ground::preferences(), &given, true).progress())));
    group
        .bench_function("ten-million-preferences", |b| b.iter(|| black_box(run(&table, &ground::preferences(), &given, false).progress())));
    group.bench_function("ten-million-typical", |b| b.iter(|| black_box(run(&table, &ground::typical(), &given, false).progress())));
    if let Some(given) = car::given() {
        let table = Arc::new(car::table());
        group.bench_function("forty-thousand-runs", |b| b.iter(|| black_box(run(&table, &car::wishes(), &given, true).progress())));
    }
    let catalogue = Catalogue::built_in();
    group.bench_function("built-in-catalogue-read", |b| b.iter(|| black_box(Table::of(&catalogue))));
    group.finish();
}

fn sheet(criterion: &mut Criterion) {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let shelves = shelf.shelves();
    let job = demo::job();
    let one = Job { setups: job.setups.iter().take(1).cloned().collect(), ..job.clone() };
    let mut group = criterion.benchmark_group("sheet");
    group.bench_function("analysis-of-one-setup", |b| b.iter(|| black_box(questions::analyse_job(black_box(&one), shelves))));
    let answers = questions::analyse_job(&job, shelves);
    let reader = Reader { units: job.units, words: Words::Us };
    let source = Source::new(&job, &answers, shelves, reader);
    group.bench_function("rows-of-three-setups", |b| b.iter(|| black_box(layshaft::questions::sheet_of(source))));
    for (name, job) in [("setup-of-four-steps", one), ("setup-of-32-steps", car::of_32_steps())] {
        group.bench_function(name, |b| {
            b.iter(|| {
                let answers = questions::analyse_job(black_box(&job), shelves);
                black_box(layshaft::questions::sheet_of(Source::new(&job, &answers, shelves, reader)))
            });
        });
    }
    let shift = of::shift_chart(source, None);
    group.bench_function("shift-chart-as-svg", |b| b.iter(|| black_box(chart::svg_text(&shift, &LIGHT, (1_180, 460)).is_ok())));
    group.finish();
}

/// What an edit of the mass works out anew while Pull stands open on six setups, and its first picture laid out and written.
fn pull_open(criterion: &mut Criterion) {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let shelves = shelf.shelves();
    let mut job = demo::job();
    while let Some(first) = job.setups.first().map(|setup| setup.id) {
        if job.setups.len() == layshaft::job::MOST_SETUPS || job.copy_setup_to_end(first).is_none() {
            break;
        }
    }
    let reader = Reader { units: job.units, words: Words::Us };
    let question = &questions::pull::QUESTION;
    let mut group = criterion.benchmark_group("pull-open");
    let mut heavier = 0_u32;
    group.bench_function("six-setups-answered", |b| {
        b.iter(|| {
            heavier = (heavier + 1) % 10;
            job.type_text(Field::Job(JobField::Pull(PullField::Mass)), format!("{} kg", 1_200 + heavier));
            let answers = questions::analyse_job(&job, shelves);
            let source = Source::new(&job, &answers, shelves, reader);
            black_box(((question.answer)(source), (question.deciding)(source)))
        });
    });
    let answers = questions::analyse_job(&job, shelves);
    let source = Source::new(&job, &answers, shelves, reader);
    group.bench_function("thrust-of-six-setups", |b| b.iter(|| black_box(questions::pull::pictures::thrust(source, None))));
    let thrust = questions::pull::pictures::thrust(source, None);
    group.bench_function("thrust-laid-out", |b| b.iter(|| black_box(chart::Picture::scene(&thrust, &LIGHT, (880.0, 330.0)))));
    group.bench_function("thrust-as-svg", |b| b.iter(|| black_box(chart::svg_text(&thrust, &LIGHT, (880, 330)).is_ok())));
    let shift = of::shift_chart(source, None);
    group.bench_function("shift-chart-laid-out", |b| b.iter(|| black_box(chart::Picture::scene(&shift, &LIGHT, (880.0, 460.0)))));
    group.finish();
}

/// What the peers are given, written beside the measurements.
fn for_peers(_: &mut Criterion) {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/bench");
    if let Err(why) = ours::write(&folder) {
        eprintln!("cannot write {}: {why}", folder.display());
    }
}

criterion_group!(benches, for_peers, searches, sheet, pull_open);
criterion_main!(benches);
