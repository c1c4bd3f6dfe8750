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
use layshaft::job::{Job, demo};
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

/// What the peers are given, written beside the measurements.
fn for_peers(_: &mut Criterion) {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/bench");
    if let Err(why) = ours::write(&folder) {
        eprintln!("cannot write {}: {why}", folder.display());
    }
}

criterion_group!(benches, for_peers, searches, sheet);
criterion_main!(benches);
