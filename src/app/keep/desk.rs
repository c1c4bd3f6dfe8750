//! The job that lies open: which record it is, how it is kept, and how another one takes its place.

use leptos::prelude::*;

use super::{Kept, autosave, local, opening, records, store};
use crate::app::device;
use crate::app::notices::{Act, Notice};
use crate::app::state::State;
use crate::catalogue::Entry;
use crate::catalogue::stock::{self, OffShelf};
use crate::job::book::{Head, Progress, Record, RecordId};
use crate::job::{Job, demo, link};
use crate::problem::{Explain, capital};

/// The record that lies open.
#[derive(Clone, Copy)]
pub struct Desk {
    /// What the shop notes about the job.
    pub head: RwSignal<Head>,
    /// How the job is kept.
    pub kept: RwSignal<Kept>,
    /// The jobs that were deleted: each stands in the list where it stood, with the way back.
    pub gone: RwSignal<Vec<Record>>,
    /// Grows whenever the book changed, here or in another tab.
    pub book_changed: RwSignal<u32>,
    /// The job as it was last handed over to be written, opened or saved as a file.
    as_kept: StoredValue<Job>,
}

impl Desk {
    /// The desk of a page that opens with a record.
    pub fn new(record: &Record, kept: Kept) -> Self {
        Self {
            head: RwSignal::new(record.head.clone()),
            kept: RwSignal::new(kept),
            gone: RwSignal::new(Vec::new()),
            book_changed: RwSignal::new(0),
            as_kept: StoredValue::new(record.job.clone()),
        }
    }

    /// Whether a job says something that was not handed over to be written.
    pub fn is_unkept(self, job: &Job) -> bool {
        self.as_kept.with_value(|kept| kept != job)
    }

    /// Notes that a job was handed over as it stands.
    pub fn note_safe(self, job: &Job) {
        self.as_kept.set_value(job.clone());
    }

    /// Tells whoever shows the book that it changed.
    pub fn say_book_changed(self) {
        self.book_changed.update(|times| *times = times.wrapping_add(1));
    }
}

impl State {
    /// The open job as a record.
    pub fn record(self) -> Record {
        Record::new(self.desk.head.get_untracked(), self.job.get_untracked())
    }

    /// Opens a job of the book; says why where that cannot be.
    pub fn open_record(self, id: &RecordId) {
        if *id == self.desk.head.with_untracked(|head| head.id.clone()) || !self.may_leave() {
            return;
        }
        match records::read(id.as_str()) {
            Ok(Some(record)) => self.lay_out(record, Kept::Safe),
            Ok(None) => self.desk.say_book_changed(),
            Err(why) => self.tell(Notice::unreadable(why)),
        }
    }

    /// Begins a new job in the book.
    pub fn begin(self, job: Job) {
        if !self.may_leave() {
            return;
        }
        let record = Record::new(Head::new(device::fresh_id(), &device::now()), job);
        let blocked = !local::is_there();
        self.lay_out(record, if blocked { Kept::Blocked } else { Kept::Soon });
        if !blocked {
            autosave::write(self);
        }
    }

    /// Begins an empty job, read as this one is.
    pub fn begin_empty(self) {
        self.begin(demo::empty(self.job.with_untracked(|job| job.units)));
    }

    /// Shows the job of a link; nothing of it is kept.
    pub fn open_link(self, fragment: &str) {
        match link::open(fragment) {
            Ok(job) if self.may_leave() => {
                local::note_in_tab(opening::LINKED, Some(fragment));
                self.lay_out(Record::new(Head::new(device::fresh_id(), &device::now()), job), Kept::Linked);
            }
            Ok(_) => {}
            Err(why) => self.tell(Notice::caution(format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())))),
        }
    }

    /// Keeps the job of a link as one of the book.
    pub fn keep_copy(self) {
        super::drop_link();
        local::note_in_tab(opening::LINKED, None);
        self.desk.kept.set(Kept::Soon);
        autosave::write(self);
    }

    /// Leaves the job of a link and shows the one that lay open before.
    pub fn leave_link(self) {
        super::drop_link();
        local::note_in_tab(opening::LINKED, None);
        self.desk.kept.set(Kept::Safe);
        self.show_next();
    }

    /// Changes what the shop notes about a job, the open one or another.
    pub fn note(self, id: &RecordId, change: impl FnOnce(&mut Head)) {
        if *id == self.desk.head.with_untracked(|head| head.id.clone()) {
            self.desk.head.update(change);
            autosave::write(self);
        } else {
            records::change(id, change);
        }
        self.desk.say_book_changed();
    }

    /// Sets how far a job has come. With one that is done, its parts leave the shelf.
    pub fn set_progress(self, id: &RecordId, progress: Progress) {
        self.note(id, |head| head.progress = progress);
        if progress == Progress::Done {
            self.take_off_shelf(id);
        }
    }

    /// Takes what a job fits off the shop's own shelf, once; the notice that says so puts it back.
    fn take_off_shelf(self, id: &RecordId) {
        autosave::flush(self);
        let Ok(Some(Record { head, job, .. })) = records::read(id.as_str()) else { return };
        let Some(setup) = job.setup_for_customer().filter(|_| !head.off_shelf) else { return };
        let (after, taken) = self.shop.catalogue.with_untracked(|catalogue| {
            let is_there = |entry: &Entry| entry.count().is_some_and(|count| count > 0);
            catalogue.take_off(&setup.own_parts(catalogue.all_own(), is_there))
        });
        if !taken.is_empty() {
            self.shop.catalogue.set(after);
            self.note(id, |head| head.off_shelf = true);
            self.tell_done(Notice::plain(stock::said(&taken)), Act::PutOnShelf(id.clone(), taken));
        }
    }

    /// Puts parts back onto the shelf that a job took off it.
    pub fn put_on_shelf(self, id: &RecordId, taken: &[OffShelf]) {
        self.shop.catalogue.update(|catalogue| *catalogue = catalogue.put_back(taken));
        self.note(id, |head| head.off_shelf = false);
    }

    /// Copies a job of the book and opens the copy.
    pub fn copy_record(self, id: &RecordId) {
        autosave::flush(self);
        if let Ok(Some(record)) = records::read(id.as_str()) {
            self.begin(Job { title: format!("{}, copy", record.job.title), ..record.job });
        }
    }

    /// Deletes a job of the book; what stands in its place puts it back, and so does the undo of the bar.
    pub fn delete_record(self, id: &RecordId) {
        autosave::flush(self);
        let Ok(Some(record)) = records::read(id.as_str()) else { return };
        records::remove(id);
        self.desk.gone.update(|gone| gone.push(record.clone()));
        self.note_done(Act::PutBack(Box::new(record)));
        if *id == self.desk.head.with_untracked(|head| head.id.clone()) {
            self.desk.note_safe(&self.job.get_untracked());
            self.show_next();
        }
        self.desk.say_book_changed();
    }

    /// Puts a deleted job back into the book.
    pub fn put_back(self, record: &Record) {
        records::write(record);
        self.desk.gone.update(|gone| gone.retain(|each| each.head.id != record.head.id));
        self.desk.say_book_changed();
    }

    /// Saves the open job as a file of the device.
    pub fn save_as_file(self) {
        let job = self.job.get_untracked();
        device::save_file(&crate::job::incoming::file_name(&job.title, "json"), "application/json", &crate::job::file::to_text(&job));
        if self.desk.kept.get_untracked() != Kept::Safe {
            self.desk.note_safe(&job);
        }
    }

    /// Shows the newest job of the book, or an empty one.
    pub(super) fn show_next(self) {
        match opening::newest() {
            Some(record) => self.lay_out(record, Kept::Safe),
            None => self.begin_empty(),
        }
    }

    /// Hands the open job over to be written; where there is no store and it is in no file either, says so and answers no.
    fn may_leave(self) -> bool {
        autosave::flush(self);
        let is_lost = self.job.with_untracked(|job| self.desk.is_unkept(job));
        if is_lost {
            let says = "The open job is not kept on this device. Save it as a file first, then open the other one.";
            self.tell(Notice::caution(says).with(Act::SaveJob));
        }
        !is_lost
    }

    /// Puts a record on the page.
    pub fn lay_out(self, record: Record, kept: Kept) {
        if kept != Kept::Linked {
            records::note_open(&record.head.id);
            super::drop_link();
            local::note_in_tab(opening::LINKED, None);
        }
        self.desk.note_safe(&record.job);
        self.desk.kept.set(kept);
        self.desk.head.set(record.head);
        self.show(record.job);
        autosave::note_health(self, store::health().get_untracked());
    }
}
