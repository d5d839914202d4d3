//! The second copy, in IndexedDB: slower, but what it says is on disk survives the death of the
//! browser, which local storage does not promise. One record an entry, under the key `[id, n]`; beside
//! them, under names that are plain text, the mark of each match's writer and its summary. Earlier
//! versions of the program step over plain names.
//!
//! The standard's own words are used for its parts (W3C Indexed Database API 3.0): a request
//! succeeds before a transaction completes, and only the latter means safe.

mod keys;
mod opening;
mod request;
mod transaction;

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use js_sys::{Array, Promise};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbCursor, IdbCursorDirection, IdbKeyRange, IdbObjectStore};

use app::ports::{Claimed, Index, Lines, Put, StorageTrouble, Written};
use keys::{key, mark, range, split, summary_key, SUMMARIES};
use request::{answer, get, lines_of, records};

/// Its only store.
const LINES: &str = "lines";

/// So many lines are put in one task; a whole match would keep a slow phone busy for too long.
const AT_ONCE: usize = 64;

/// So many lines are looked at one by one before a write; more are read in one go.
const FEW: usize = 8;

/// The database, opened when first needed and again whenever it was lost.
#[derive(Clone, Default)]
pub(super) struct Durable {
    // The promise of the open database, shared by all who wait for it, and when it was asked for.
    opening: Rc<RefCell<Option<Promise>>>,
    asked_at: Rc<Cell<f64>>,
}

impl Durable {
    /// Puts the writer's mark on a match and reads all its lines.
    pub(super) async fn claim(&self, id: &str, writer: &str) -> Result<Claimed, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            let was_marked = !get(store, &mark(id)).await?.is_undefined();
            let lines = lines_of(store, id).await?;
            store.put_with_key(&JsValue::from_str(writer), &mark(id))?;
            Ok(Claimed { lines, was_marked })
        })
        .await
    }

    /// Every line of one match.
    pub(super) async fn lines(&self, id: &str) -> Result<Lines, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| lines_of(store, id).await)
            .await
    }

    /// Makes all changes or none.
    pub(super) async fn write(
        &self,
        id: &str,
        writer: &str,
        puts: &[Put],
    ) -> Result<Written, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            match get(store, &mark(id)).await?.as_string() {
                None => return Ok(Written::Gone),
                Some(mark) if mark != writer => return Ok(Written::Robbed),
                Some(_) => {}
            }
            let mut there = Lines::new();
            if puts.len() > FEW {
                there = lines_of(store, id).await?;
            } else {
                for put in puts {
                    if let Some(line) = get(store, &key(id, put.n)).await?.as_string() {
                        there.insert(put.n, line);
                    }
                }
            }
            let fits = |put: &Put| {
                let line = there.get(&put.n);
                line == put.found.as_ref() || line == put.line.as_ref()
            };
            if !puts.iter().all(fits) {
                return Ok(Written::Differs);
            }
            let new = puts
                .iter()
                .filter(|put| there.get(&put.n) != put.line.as_ref());
            for (count, put) in (1..).zip(new) {
                let asked = match &put.line {
                    Some(line) => store.put_with_key(&JsValue::from_str(line), &key(id, put.n))?,
                    None => store.delete(&key(id, put.n))?,
                };
                // A whole match is asked for in several tasks; the transaction lives on in the answer.
                if count % AT_ONCE == 0 {
                    answer(&asked).await?;
                }
            }
            Ok(Written::Done)
        })
        .await
    }

    /// Keeps a whole match with its summary; false where other lines stand under that id.
    pub(super) async fn insert(
        &self,
        id: &str,
        lines: &Lines,
        summary: &str,
    ) -> Result<bool, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            let there = lines_of(store, id).await?;
            if !there.is_empty() {
                return Ok(lines.iter().all(|(n, line)| there.get(n) == Some(line)));
            }
            for (n, line) in lines {
                store.put_with_key(&JsValue::from_str(line), &key(id, *n))?;
            }
            store.put_with_key(&JsValue::from_str(summary), &summary_key(id))?;
            Ok(true)
        })
        .await
    }

    /// The summaries, by id.
    pub(super) async fn summaries(&self) -> Result<BTreeMap<String, String>, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| {
            let range = IdbKeyRange::bound(
                &JsValue::from_str(SUMMARIES),
                &JsValue::from_str(&format!("{SUMMARIES}\u{ffff}")),
            )?;
            let found = records(store, &range).await?;
            let found = found.into_iter();
            Ok(rules::gather(found.filter_map(|(key, value)| {
                let id = key.as_string()?.strip_prefix(SUMMARIES)?.to_owned();
                Some((id, value.as_string()?))
            })))
        })
        .await
    }

    /// Writes the summary of a match.
    pub(super) async fn summarize(&self, id: &str, summary: &str) -> Result<(), StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            store.put_with_key(&JsValue::from_str(summary), &summary_key(id))?;
            Ok(())
        })
        .await
    }

    /// The last line of every match, found by leaping from one to the next, backwards.
    pub(super) async fn index(&self) -> Result<Index, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| {
            let all = IdbKeyRange::lower_bound(&Array::new())?;
            let request =
                store.open_key_cursor_with_range_and_direction(&all, IdbCursorDirection::Prev)?;
            let mut index = Index::default();
            while let Ok(cursor) = answer(&request).await?.dyn_into::<IdbCursor>() {
                let Some((id, n)) = split(&cursor.key()?) else {
                    // Not one of ours; step over it.
                    cursor.continue_()?;
                    continue;
                };
                // Below every key of this match.
                cursor.continue_with_key(&Array::of1(&JsValue::from_str(&id)))?;
                index.last.insert(id, n);
            }
            Ok(index)
        })
        .await
    }

    /// Forgets a match.
    pub(super) async fn forget(&self, id: &str) -> Result<(), StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            store.delete(&JsValue::from(range(id)?))?;
            store.delete(&mark(id))?;
            store.delete(&summary_key(id))?;
            Ok(())
        })
        .await
    }
}
