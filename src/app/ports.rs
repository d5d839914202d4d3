//! What the program asks of the machine it runs on.

use super::machine::ReadTrouble;
use std::collections::BTreeMap;
use std::future::Future;
use std::pin::Pin;
use std::rc::Rc;

/// An answer that comes later.
pub type Pending<T> = Pin<Box<dyn Future<Output = T>>>;

/// The lines of one match by their numbers.
pub type Lines = BTreeMap<u32, String>;

/// Why a line could not be kept or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageTrouble {
    /// The browser forbids storage here: blocked by its settings, or by a private window.
    Refused,
    /// There is no room left.
    Full,
    /// The connection to the store broke, or the store has not opened yet.
    Lost,
    /// Anything else, in the browser's own words.
    Unknown(String),
}

/// A change of one line, made only where the store still holds what was found there: so nothing is
/// written over that nobody has looked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Put {
    /// The number of the line.
    pub n: u32,
    /// What was found there.
    pub found: Option<String>,
    /// What is to stand there; none takes the line away.
    pub line: Option<String>,
}

/// What a match held when a writer put its mark on it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Claimed {
    /// Its lines.
    pub lines: Lines,
    /// Whether it had a mark, whoever's.
    pub was_marked: bool,
}

/// What came of a write to the database.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// All of it is on the disk.
    Done,
    /// Nothing was written: the match's mark is gone, so the store was emptied.
    Gone,
    /// Nothing was written: another tab has put its mark on the match since.
    Robbed,
    /// Nothing was written: a line is not what was found there before.
    Differs,
}

/// One match in the database, for a list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Index {
    /// The number of the last line of each match.
    pub last: BTreeMap<String, u32>,
}

/// Texts under names. It answers at once and may forget.
pub trait LocalStorage {
    /// What it holds under a name.
    ///
    /// # Errors
    /// Where it cannot be read.
    fn get(&self, key: &str) -> Result<Option<String>, StorageTrouble>;

    /// Writes a text under a name.
    ///
    /// # Errors
    /// Where it was not taken.
    fn set(&self, key: &str, value: &str) -> Result<(), StorageTrouble>;

    /// Forgets a name.
    ///
    /// # Errors
    /// Where storage is refused.
    fn remove(&self, key: &str) -> Result<(), StorageTrouble>;

    /// Every name that begins so.
    ///
    /// # Errors
    /// Where it cannot be read.
    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageTrouble>;
}

/// The stores of the browser and the little else that the program needs of it: local storage, and the
/// database, which answers late and keeps.
pub trait Storage: LocalStorage {
    /// Puts the writer's mark on a match and reads all its lines, in one transaction.
    fn claim(&self, id: &str, writer: &str) -> Pending<Result<Claimed, StorageTrouble>>;

    /// Reads all lines of a match.
    fn lines(&self, id: &str) -> Pending<Result<Lines, StorageTrouble>>;

    /// Makes all changes or none, in one transaction, and only under the writer's own mark.
    /// [`Written::Done`] means on the disk as far as the browser can tell.
    fn write(
        &self,
        id: &str,
        writer: &str,
        puts: Vec<Put>,
    ) -> Pending<Result<Written, StorageTrouble>>;

    /// Keeps a whole match that nobody has open, with its summary; true where its lines stand under that id
    /// already, with or without more behind them, and false where others do.
    fn insert(
        &self,
        id: &str,
        lines: Lines,
        summary: String,
    ) -> Pending<Result<bool, StorageTrouble>>;

    /// The summaries of matches, by their ids.
    fn summaries(&self) -> Pending<Result<BTreeMap<String, String>, StorageTrouble>>;

    /// Writes the summary of a match.
    fn summarize(&self, id: &str, summary: String) -> Pending<Result<(), StorageTrouble>>;

    /// The last line of every match, found without reading one.
    fn index(&self) -> Pending<Result<Index, StorageTrouble>>;

    /// Forgets a match, its mark and its summary.
    fn forget(&self, id: &str) -> Pending<Result<(), StorageTrouble>>;

    /// Does something by and by.
    fn spawn(&self, work: Pending<()>);

    /// Waits so many milliseconds.
    fn wait(&self, ms: u32) -> Pending<()>;

    /// A name that nobody else has.
    fn unique(&self) -> String;
}

/// Who writes a match, as the browser says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// It has not answered yet.
    Asking,
    /// This tab does.
    Here,
    /// Another tab does.
    Elsewhere {
        /// Whether this tab did until then.
        robbed: bool,
    },
}

/// The wish to be the writer of a match; dropping it gives the match back.
pub trait Lock {
    /// What the browser said last.
    fn held(&self) -> Held;

    /// Becomes the writer by force, or makes sure of it where this tab is the writer already. The tab that was one
    /// is told by its browser.
    fn take_over(&self);
}

/// The other tabs that have a match open; dropping it leaves them.
pub trait Peers {
    /// Tells them that the log is that long now.
    fn announce(&self, last: u32);
}

/// What the program asks of the machine beside its stores.
pub trait Machine {
    /// The time in milliseconds since 1970 (UTC); it runs on where somebody sets the clock.
    fn now(&self) -> i64;

    /// What the clock was set by counts no more: nothing that was stamped before is compared with it.
    fn settle_clock(&self);

    /// Keeps the screen on, or no more.
    fn keep_awake(&self, wanted: bool);

    /// Asks the browser to keep the storage of this page. It may ask the person in turn.
    fn ask_to_keep(&self);

    /// Asks to be the writer of a match. `on_answer` hears every answer; a browser without locks gives the first
    /// one before this has returned.
    fn lock(&self, id: &str, on_answer: Box<dyn Fn(Held)>) -> Rc<dyn Lock>;

    /// The lock of a match that nobody else has; none where another tab has it. One that this tab has given back
    /// is free.
    fn lock_at_once(&self, id: &str) -> Pending<Option<Rc<dyn Lock>>>;

    /// Hears of every line that another tab writes to a match.
    fn join(&self, id: &str, on_written: Box<dyn Fn()>) -> Box<dyn Peers>;
}

/// A file that somebody picked.
pub trait PickedFile {
    /// Its name.
    fn name(&self) -> String;

    /// Reads its bytes; one that is larger than so many is not read at all.
    fn read(&self, max_bytes: u64) -> Pending<Result<Vec<u8>, ReadTrouble>>;
}

/// A key that was pressed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct KeyPress {
    /// The key, as the browser names it.
    pub key: String,
    /// Whether Control, Alt or Meta was held: then the browser or the machine is meant.
    pub modified: bool,
    /// Whether something is being typed or chosen where the keys go.
    pub typing: bool,
    /// Whether the keys go to the list of matches.
    pub in_list: bool,
}

/// How the two copies fare.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Health {
    /// Local storage: written at once.
    pub local: Result<(), StorageTrouble>,
    /// The database: safe on disk.
    pub durable: Result<(), StorageTrouble>,
}

impl Health {
    /// Whether both copies are being kept.
    #[must_use]
    pub fn is_fine(&self) -> bool {
        self.local.is_ok() && self.durable.is_ok()
    }

    /// Whether new lines are in memory alone, so that closing the page loses them.
    #[must_use]
    pub fn memory_only(&self) -> bool {
        self.local.is_err() && self.durable.is_err()
    }
}

/// What this tab may do with the match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The browser has not answered yet; nothing may be written.
    Asking,
    /// This tab would write, but the database has not been read yet: what is shown may lack the last
    /// entries.
    Waiting,
    /// This tab writes, and no other.
    Writer,
    /// Another tab writes.
    ReadOnly {
        /// Whether this tab was the writer until another one took over.
        robbed: bool,
    },
}

impl Standing {
    /// Whether lines may be written.
    #[must_use]
    pub fn may_write(self) -> bool {
        self == Standing::Writer
    }
}

/// Every name this program uses in local storage begins with this, so that other pages of the same
/// origin stay untouched.
pub const OURS: &str = "dutystand/";

/// Every line of every match is under a name that begins with this.
pub const LINES: &str = "dutystand/m/";

/// The name of a line. Five digits, so that the names sort as the numbers do wherever somebody looks
/// at them.
#[must_use]
pub fn line_key(id: &str, n: u32) -> String {
    format!("{LINES}{id}/{n:05}")
}

/// The match and the number in the name of a line. An id may have any character, a slash too.
#[must_use]
pub fn split_line_key(key: &str) -> Option<(&str, u32)> {
    let (id, n) = key.strip_prefix(LINES)?.rsplit_once('/')?;
    Some((id, n.parse().ok()?))
}

/// The name of the mark of a match's writer in local storage.
#[must_use]
pub fn mark_key(id: &str) -> String {
    format!("dutystand/w/{id}")
}
