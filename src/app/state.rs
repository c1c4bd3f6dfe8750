//! The job and what is derived from it: one signal that is changed, everything else a memo.

use leptos::prelude::*;

use super::keep::Opened;
use super::shop::Shop;
use super::slices::Slices;
use super::view::View;
use super::{device, parts};
use crate::job::{Choice, Field, History, InputId, InputProblem, Job, JobField, Setup, SetupId};
use crate::questions::identify::LadderSearch;
use crate::questions::{self, Answers, Long, Source};
use crate::sheet::{Reader, Sheet, Words};

/// The work of the search back to teeth between two looks at the clock.
const TEETH_STEP: u64 = 400;

/// What the page is about, shared by everything on it.
#[derive(Clone, Copy)]
pub struct State {
    /// The job as typed; changed through [`State::type_text`] and [`State::change`] alone.
    pub job: RwSignal<Job>,
    history: RwSignal<History>,
    /// What was done last outside the job, as the act that takes it back; nothing once the job was changed since.
    done: RwSignal<Option<super::notices::Act>>,
    /// The job with every answer, each worked out when it is asked for.
    pub answers: Memo<Answers>,
    /// What is wrong with what is typed at the bench; nothing before what reads it has come.
    bench_problems: Memo<Vec<InputProblem>>,
    /// The setups as typed: what hangs on them alone is not asked when something else is typed.
    pub setups: Memo<Vec<Setup>>,
    /// The setups in the order of their columns: of its own, so that a cell is not asked again at every keystroke.
    columns: Memo<Vec<SetupId>>,
    /// What the shop has.
    pub shop: Shop,
    /// The search from printed ratios back to teeth.
    pub teeth: Slices<LadderSearch>,
    slices: Memo<questions::Slices>,
    /// The trade's words.
    pub words: RwSignal<Words>,
    /// The theme of the page.
    pub theme: super::theme::ThemeSignal,
    /// What is looked at.
    pub view: View,
    /// The record that lies open, and how it is kept.
    pub desk: super::keep::Desk,
    /// What the page has to tell: plain sentences with acts.
    pub notices: RwSignal<Vec<super::notices::Notice>>,
}

impl State {
    /// The state of a page that opens with a job.
    pub fn new(opened: Opened) -> Self {
        let desk = super::keep::Desk::new(&opened.record, opened.kept);
        let job = RwSignal::new(opened.record.job);
        let shop = Shop::new(opened.catalogue, opened.settled, job);
        let answers = Memo::new(move |before: Option<&Answers>| match parts::ANSWERS.get() {
            Some(answers) => job.with(|job| shop.shelf.with(|shelf| (answers.analyse)(job, shelf.shelves(), before))),
            None => job.with(questions::analyse_first),
        });
        let bench_problems = Memo::new(move |_| {
            let problems =
                |answers: parts::Answers| job.with(|job| shop.shelf.with(|shelf| (answers.bench_problems)(job, shelf.shelves())));
            parts::ANSWERS.get().map(problems).unwrap_or_default()
        });
        let setups = Memo::new(move |_| job.with(|job| job.setups.clone()));
        let teeth: Slices<LadderSearch> = Slices::new(TEETH_STEP, || ());
        Self {
            job,
            history: RwSignal::new(History::default()),
            done: RwSignal::new(None),
            answers,
            bench_problems,
            setups,
            columns: Memo::new(move |_| setups.with(|setups| setups.iter().map(|setup| setup.id).collect())),
            shop,
            teeth,
            slices: Memo::new(move |_| questions::Slices { teeth: teeth.found.get().map(|found| (*found).clone()) }),
            words: RwSignal::new(device::words()),
            theme: super::theme::ThemeSignal::follow_system(),
            view: View::new(),
            desk,
            notices: RwSignal::new(opened.notices),
        }
    }

    /// The state of the page this is called in.
    pub fn here() -> Self {
        expect_context()
    }

    /// Whatever is made of the job with every answer.
    pub fn with_source<T>(self, make: impl FnOnce(Source<'_>) -> T) -> T {
        let words = self.words.get();
        self.job.with(|job| {
            self.shop.shelf.with(|shelf| {
                self.answers.with(|answers| {
                    let source = Source::new(job, answers, shelf.shelves(), Reader { units: job.units, words });
                    self.slices.with(|slices| make(Source { long: Long::InSlices(slices), ..source }))
                })
            })
        })
    }

    /// The column of the setup that is brought forward.
    pub fn forward(self) -> Option<usize> {
        self.view.focus.get().map(|id| self.column_of(id))
    }

    /// The whole sheet as it stands now, for paper and files.
    pub fn sheet_now(self) -> Sheet {
        untrack(|| self.with_source(|source| questions::sheet_of(Source { long: Long::AtOnce, ..source })))
    }

    /// Puts a text into a field: one step of undo until the field is left.
    pub fn type_text(self, field: Field, text: String) {
        self.is_in_job();
        self.job.with_untracked(|job| self.history.update(|history| history.before_typing(job, field)));
        self.job.update(|job| job.type_text(field, text));
    }

    /// Fills a setup from the whole line that stands in the field of one of its gears, in the same step of undo as its typing.
    pub fn take_line(self, field: Field) {
        let holds_line = self.job.with_untracked(|job| job.text(field).is_some_and(|text| job.line_at(field, text).is_some()));
        if !holds_line {
            return;
        }
        self.job.with_untracked(|job| self.history.update(|history| history.before_typing(job, field)));
        if let Some(said) = self.job.try_update(|job| job.fill_line(field)).flatten() {
            self.tell_for_a_moment(super::notices::Notice::plain(format!("{said}.")));
        }
    }

    /// Changes the job otherwise: one step of undo.
    pub fn change(self, change: impl FnOnce(&mut Job)) {
        self.is_in_job();
        self.job.with_untracked(|job| self.history.update(|history| history.before_change(job)));
        self.job.update(change);
    }

    /// Puts another job on the page; there is nothing to undo in it yet.
    pub fn show(self, job: Job) {
        self.history.set(History::default());
        self.view.asked.set(None);
        self.view.picking.set(None);
        self.view.focus.set(None);
        self.view.moment.set(None);
        self.job.set(job);
    }

    /// Tells something; the same sentence stands once.
    pub fn tell(self, notice: super::notices::Notice) {
        self.notices.update(|notices| {
            notices.retain(|other| other.says != notice.says);
            notices.push(notice);
        });
    }

    /// Ends the step of the field that was typed into.
    pub fn leave_field(self) {
        self.history.update(History::close);
    }

    /// Goes one step back: what was done last outside the job, or else a step in it.
    pub fn undo(self) {
        match self.done.get_untracked() {
            Some(act) => {
                self.notices.update(|notices| notices.retain(|notice| !notice.acts.contains(&act)));
                act.act(self);
                self.tell_for_a_moment(super::notices::Notice::plain(act.undone()));
            }
            None => self.undo_in_job(),
        }
    }

    /// Goes one step back in the job.
    pub fn undo_in_job(self) {
        self.step(History::undo);
    }

    /// Tells what was done outside the job, with the act that takes it back: here, and by the undo of the bar.
    pub fn tell_done(self, notice: super::notices::Notice, act: super::notices::Act) {
        self.note_done(act.clone());
        // One way back at a time: what was told of the shelf before goes.
        self.notices.update(|notices| notices.retain(|notice| !notice.acts.iter().any(super::notices::Act::is_of_shelf)));
        self.tell(notice.with(act));
    }

    /// Notes what was done outside the job, so that the undo of the bar takes it back.
    pub fn note_done(self, act: super::notices::Act) {
        self.done.set(Some(act));
    }

    /// Forgets what was done outside the job, for it is taken back.
    pub fn forget_done(self, act: &super::notices::Act) {
        if self.done.with_untracked(|done| done.as_ref() == Some(act)) {
            self.done.set(None);
        }
    }

    /// From now on a step back is one in the job.
    fn is_in_job(self) {
        if self.done.with_untracked(Option::is_some) {
            self.done.set(None);
        }
    }

    /// Goes one step forward again.
    pub fn redo(self) {
        self.step(History::redo);
    }

    fn step(self, step: impl FnOnce(&mut History, &Job) -> Option<Job>) {
        let now = self.job.get_untracked();
        if let Some(job) = self.history.try_update(|history| step(history, &now)).flatten() {
            let what = job.what_differs(&now);
            self.job.set(job);
            self.tell_for_a_moment(super::notices::Notice::plain(format!("Changed back: {what}.")));
        }
    }

    /// Tells something that needs no answer; it goes by itself.
    fn tell_for_a_moment(self, notice: super::notices::Notice) {
        let says = notice.says.clone();
        self.notices.update(|notices| notices.retain(|other| !other.is_passing));
        self.tell(super::notices::Notice { is_passing: true, ..notice });
        device::after(super::notices::PASSING_MS, move || {
            let _ = self.notices.try_update(|notices| notices.retain(|other| other.says != says));
        });
    }

    /// Whether there is a step to undo.
    pub fn can_undo(self) -> bool {
        self.done.with(Option::is_some) || self.history.with(History::can_undo)
    }

    /// Whether there is a step to redo.
    pub fn can_redo(self) -> bool {
        self.history.with(History::can_redo)
    }

    /// A text in the reader's words.
    pub fn say(self, text: &str) -> String {
        self.words.get().say(text)
    }

    /// The ids of the setups in the order of their columns.
    pub fn setup_ids(self) -> Vec<SetupId> {
        self.columns.get()
    }

    /// The column of a setup, counted from 0.
    pub fn column_of(self, id: SetupId) -> usize {
        self.columns.with(|columns| columns.iter().position(|each| *each == id).unwrap_or(0))
    }

    /// The name of a setup.
    pub fn name_of(self, id: SetupId) -> Option<String> {
        self.setups.with(|setups| setups.iter().find(|setup| setup.id == id).map(|setup| setup.name.clone()))
    }

    /// What is wrong with what stands in a field; an empty one is not wrong, whatever needs it says so.
    pub fn wrong_with(self, field: Field) -> Option<InputProblem> {
        if self.is_blank(field) { None } else { self.problem_of(field) }
    }

    /// Whether nothing is typed in a field.
    pub fn is_blank(self, field: Field) -> bool {
        self.job.with(|job| job.text(field).is_none_or(|text| text.trim().is_empty()))
    }

    /// The gravest problem of an input.
    pub fn problem_of(self, input: impl Into<InputId>) -> Option<InputProblem> {
        let input = input.into();
        let gravest = |problems: &[InputProblem]| {
            // Of several as grave, the first.
            problems.iter().rev().filter(|problem| problem.field == input).max_by_key(|problem| problem.severity).cloned()
        };
        match input {
            InputId::Text(Field::Job(JobField::Bench(_))) => self.bench_problems.with(|problems| gravest(problems)),
            InputId::Text(Field::Job(_)) | InputId::Choice(Choice::Job(_)) => {
                self.answers.with(|Answers { conditions, .. }| gravest(&conditions.problems))
            }
            InputId::Text(Field::Setup(id, _)) | InputId::Choice(Choice::Setup(id, _)) => {
                self.answers.with(|Answers { setups, .. }| {
                    let analysis = setups.iter().find(|each| each.setup.id == id)?;
                    gravest(&analysis.setup.problems)
                })
            }
            // Known to the search alone, which gives it to its fields.
            InputId::Text(Field::Wish(..) | Field::Design(_)) => None,
        }
    }
}
