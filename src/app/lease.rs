//! Who writes where the browser has no locks (a page over plain http): a mark in local storage with the
//! time it was last confirmed. A mark that nobody confirms any more lapses, so a tab that died keeps
//! nobody out for long. The database's own mark (`ports::Storage::claim`) still decides; this only keeps
//! a second tab from taking it unasked.

/// How often the writer confirms its mark, in milliseconds. Our own choice: a background tab is called
/// once a second at most, so this is kept there too.
pub const CONFIRM_MS: u32 = 2_000;

/// How long a mark holds that nobody confirms. Our own choice: several confirmations may be late.
pub const HOLDS_MS: i64 = 12_000;

/// A mark as it stands in storage.
#[must_use]
pub fn write(tab: &str, now: i64) -> String {
    format!("{tab} {now}")
}

/// What a tab finds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lease {
    /// Nobody writes.
    Free,
    /// This tab does.
    Mine,
    /// Another one does.
    Held,
}

/// What a mark says to a tab now. A time from the future is one from before the clock was set back, and
/// holds no longer than any other.
#[must_use]
pub fn read(mark: Option<&str>, tab: &str, now: i64) -> Lease {
    let Some((by, at)) = mark.and_then(|mark| mark.rsplit_once(' ')) else {
        return Lease::Free;
    };
    if by == tab {
        return Lease::Mine;
    }
    let fresh = at
        .parse()
        .is_ok_and(|at: i64| now.abs_diff(at) < HOLDS_MS.unsigned_abs());
    if fresh {
        Lease::Held
    } else {
        Lease::Free
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_keeps_others_out_until_nobody_confirms_it() {
        let mark = write("a", 1_000_000);
        assert_eq!(read(None, "b", 0), Lease::Free);
        assert_eq!(read(Some(&mark), "a", 9_000_000), Lease::Mine);
        assert_eq!(
            read(Some(&mark), "b", 1_000_000 + HOLDS_MS - 1),
            Lease::Held
        );
        assert_eq!(read(Some(&mark), "b", 1_000_000 + HOLDS_MS), Lease::Free);
        // The clock was set back by an hour.
        assert_eq!(read(Some(&mark), "b", 1_000_000 - 3_600_000), Lease::Free);
        assert_eq!(read(Some("no time"), "b", 0), Lease::Free);
    }
}
