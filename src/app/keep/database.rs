//! The browser's database: a store of texts and one of photographs. What is written is on the disk before it is said to be: every change is
//! made in a strict transaction, whole or not at all.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use idb::{DatabaseEvent, Factory, ObjectStore, ObjectStoreParams, Transaction, TransactionMode, TransactionResult};
use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

use super::local::StoreError;
use crate::app::device;
use crate::ledger::Change;

/// Its name and version.
const NAME: &str = "layshaft";
const VERSION: u32 = 1;
/// The store of texts, each under its key.
const TEXTS: &str = "texts";
/// The store of photographs, each under its name.
const PHOTOGRAPHS: &str = "photographs";
/// How long it may take to open, in milliseconds: some browsers never answer.
const PATIENCE: u32 = 3_000;

/// An open database.
#[derive(Clone)]
pub struct Database {
    inner: web_sys::IdbDatabase,
}

impl Database {
    /// Opens it; none where the browser refuses, or does not answer.
    pub async fn open() -> Option<Self> {
        let found = Rc::new(RefCell::new(None));
        let answered = Promise::new(&mut |done: Function, _| {
            let (late, found) = (done.clone(), Rc::clone(&found));
            spawn_local(async move {
                let opened = opened().await.ok();
                found.replace(opened);
                let _ = done.call0(&JsValue::NULL);
            });
            device::after(PATIENCE, move || {
                let _ = late.call0(&JsValue::NULL);
            });
        });
        let _ = JsFuture::from(answered).await;
        found.take()
    }

    /// Every text.
    ///
    /// # Errors
    /// When the browser does not give them.
    pub async fn texts(&self) -> Result<BTreeMap<String, String>, idb::Error> {
        let store = self.reading(TEXTS)?;
        // Both are asked for before either answers: the transaction ends when it has nothing to do.
        let (keys, texts) = (store.get_all_keys(None, None)?, store.get_all(None, None)?);
        let (keys, texts) = (keys.await?, texts.await?);
        Ok(keys.iter().zip(&texts).filter_map(|(key, text)| Some((key.as_string()?, text.as_string()?))).collect())
    }

    /// The text under a key.
    ///
    /// # Errors
    /// When the browser does not give it.
    pub async fn text(&self, key: &str) -> Result<Option<String>, idb::Error> {
        text_of(&self.reading(TEXTS)?, key).await
    }

    /// Writes changes, all of them or none. Answers what stands where another page was quicker: that stays as it is.
    ///
    /// # Errors
    /// When the database takes nothing; what stood there still stands there.
    pub async fn write(&self, changes: &[Change]) -> Result<Vec<(String, Option<String>)>, StoreError> {
        let begun = self.begin(TEXTS)?;
        let mut theirs = Vec::new();
        let put = async {
            let store = Transaction::from(begun.clone()).object_store(TEXTS)?;
            for change in changes {
                let there = text_of(&store, &change.key).await?;
                match &change.now {
                    _ if !change.fits(there.as_deref()) => theirs.push((change.key.clone(), there)),
                    Some(text) => drop(store.put(&JsValue::from_str(text), Some(&JsValue::from_str(&change.key)))?),
                    None => drop(store.delete(JsValue::from_str(&change.key))?),
                }
            }
            Ok(())
        };
        finish(&begun, put.await).await.map(|()| theirs)
    }

    fn reading(&self, store: &str) -> Result<ObjectStore, idb::Error> {
        idb::Database::from(self.inner.clone()).transaction(&[store], TransactionMode::ReadOnly)?.object_store(store)
    }

    /// Begins a transaction that is on the disk once it is complete. The crate knows no durability, so the browser is asked itself; one
    /// that knows none either leaves the wish unread.
    fn begin(&self, store: &str) -> Result<web_sys::IdbTransaction, StoreError> {
        let begin = || {
            let options = Object::new();
            Reflect::set(&options, &"durability".into(), &"strict".into())?;
            let begin: Function = Reflect::get(&self.inner, &"transaction".into())?.dyn_into()?;
            begin.call3(&self.inner, &store.into(), &"readwrite".into(), &options)?.dyn_into()
        };
        begin().map_err(|why: JsValue| why.dyn_ref().map_or(StoreError::Blocked, StoreError::of))
    }
}

/// Waits for the end of a transaction in which all was asked for; where that failed, nothing of it stays.
async fn finish(begun: &web_sys::IdbTransaction, asked: Result<(), idb::Error>) -> Result<(), StoreError> {
    let transaction = Transaction::from(begun.clone());
    let ended = match asked {
        // An older browser has no commit, and ends the transaction by itself.
        Ok(()) => {
            let _ = Transaction::from(begun.clone()).commit();
            transaction.await
        }
        Err(why) => {
            let _ = transaction.abort();
            Err(why)
        }
    };
    match ended {
        Ok(TransactionResult::Committed) => Ok(()),
        ended => Err(match (begun.error(), ended) {
            (Some(why), _) | (None, Err(idb::Error::DomException(why))) => StoreError::of(&why),
            (None, Err(idb::Error::UpdateFailed(why))) => why.dyn_ref().map_or(StoreError::Blocked, StoreError::of),
            // What ends without a word found no room, or a disk that failed.
            (None, _) => StoreError::Full,
        }),
    }
}

async fn text_of(store: &ObjectStore, key: &str) -> Result<Option<String>, idb::Error> {
    Ok(store.get(JsValue::from_str(key))?.await?.and_then(|text| text.as_string()))
}

async fn opened() -> Result<Database, idb::Error> {
    let mut request = Factory::new()?.open(NAME, Some(VERSION))?;
    request.on_upgrade_needed(|event| {
        if let Ok(database) = event.database() {
            for store in [TEXTS, PHOTOGRAPHS] {
                let _ = database.create_object_store(store, ObjectStoreParams::new());
            }
        }
    });
    let inner = web_sys::IdbDatabase::from(request.await?);
    Ok(Database { inner })
}
