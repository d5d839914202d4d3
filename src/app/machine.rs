//! What the machine answers when it is asked for more than storage: plain values, so that the words for them and
//! what is decided by them need no browser.

/// A moment as a clock and a calendar on the wall show it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LocalTime {
    /// Year of the common era.
    pub year: i32,
    /// 1 to 12.
    pub month: u32,
    /// 1 to 31.
    pub day: u32,
    /// 0 to 23.
    pub hour: u32,
    /// 0 to 59.
    pub minute: u32,
    /// 0 to 59.
    pub second: u32,
}

/// A side of the coin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The side with the head.
    Heads,
    /// The side with the number.
    Tails,
}

/// How far the program is from working without a network.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offline {
    /// This browser, or this window, cannot keep the program.
    NotSupported,
    /// The page came over a connection that is not secure, where no browser keeps a program.
    Insecure,
    /// The files are being fetched.
    Installing,
    /// Everything is kept: the program opens without a network.
    ReadyOffline,
    /// Everything is kept, and a newer version is too; it waits to be asked for.
    NewVersionWaiting,
    /// Another tab has taken a newer version; this page is still of the older one.
    NewVersionElsewhere,
    /// Not all files could be fetched. Opening the page again tries again.
    Incomplete,
    /// It could not be kept, in the browser's own words. Opening the page again tries again.
    Failed(String),
}

/// Whether the browser promised to keep this page's storage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoragePromise {
    /// It did; only a person clears it.
    Yes,
    /// It may clear it: when it wants room, or after a while without a visit.
    No,
    /// It does not say.
    Unknown,
}

/// How much of the room for this page is used, in bytes. Browsers round both on purpose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StorageRoom {
    /// In use.
    pub used: u64,
    /// What there is in all.
    pub quota: u64,
}

/// Why a picked file could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ReadTrouble {
    /// It is larger than anything of ours can be.
    TooBig {
        /// Its size in bytes.
        size: u64,
        /// The most that is read.
        cap: u64,
    },
    /// The browser could not read it, in its own words.
    Unreadable(String),
}

/// The machine has no source of randomness; a coin from somebody's pocket has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoRandom;

/// Why there is no picture to find a code in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CameraTrouble {
    /// The person, or the phone's settings, did not allow it.
    Refused,
    /// This device has no camera, or the browser gives none away.
    NoCamera,
    /// The reader could not be loaded, or a picture not be looked at, in the browser's words.
    Failed(String),
}

/// Why a file could not be handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HandOverTrouble {
    /// The browser forbade it, mostly because too much time went by since the tap.
    Refused,
    /// An installed app on iOS whose list of apps does not take the file, which is the only way there.
    NoWay,
    /// Anything else, in the browser's own words.
    Failed(String),
}
