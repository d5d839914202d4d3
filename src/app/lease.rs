//! Who writes where the browser has no locks (a page over plain http): a mark in local storage with the
//! time it was last confirmed. A mark that nobody confirms any more lapses, so a tab that died keeps
//! nobody out for long. The database's own mark (`ports::Storage::claim`) still decides; this only keeps
//! a second tab from taking it unasked.

/// How often the writer confirms its mark, in milliseconds. Our own choice: a background tab is called
/// once a second at most, so this is kept there too.
pub const CONFIRM_MS: u32 = 2_000;

/// How long a mark holds that nobody confirms. Our own choice: several confirmations may be late.
pub const HOLDS_MS: i64 = 12_000;

/// A tab that writes, or did when it wrote its mark.
///
/// Local storage has no lock, and one process may read what another one wrote some time ago (HTML standard, Web
/// storage, note on the storage mutex): the tab that is robbed may confirm its mark over the one that robs it. The
/// term says whose is the later.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Claim {
    /// How many times the match was taken, this one included.
    pub term: u64,
    /// The tab's own name, without a space in it.
    pub tab: String,
}

/// A claim as it stands in storage, confirmed now.
#[must_use]
pub fn write(claim: &Claim, now: i64) -> String {
    format!("{} {now} {}", claim.tab, claim.term)
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

struct Mark {
    claim: Claim,
    at: i64,
}

/// A mark of an earlier release has no term.
fn parse(mark: &str) -> Option<Mark> {
    let mut words = mark.split(' ');
    let tab = words.next()?.to_owned();
    let at = words.next()?.parse().ok()?;
    let term = match words.next() {
        Some(term) => term.parse().ok()?,
        None => 0,
    };
    Some(Mark {
        claim: Claim { term, tab },
        at,
    })
}

/// What a mark says now to a tab that writes, with its claim, or that only looks on. A time from the future is one
/// from before the clock was set back, and holds no longer than any other.
#[must_use]
pub fn read(mark: Option<&str>, own: Option<&Claim>, now: i64) -> Lease {
    let Some(mark) = mark.and_then(parse) else {
        return Lease::Free;
    };
    if own.is_some_and(|own| mark.claim.tab == own.tab || mark.claim < *own) {
        return Lease::Mine;
    }
    if now.abs_diff(mark.at) < HOLDS_MS.unsigned_abs() {
        Lease::Held
    } else {
        Lease::Free
    }
}

/// The term of whoever takes the match after this mark.
#[must_use]
pub fn next_term(mark: Option<&str>) -> u64 {
    let last = mark.and_then(parse).map_or(0, |mark| mark.claim.term);
    last.saturating_add(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn claim(tab: &str, term: u64) -> Claim {
        Claim {
            term,
            tab: tab.into(),
        }
    }

    #[test]
    fn a_mark_keeps_others_out_until_nobody_confirms_it() {
        let mark = write(&claim("a", 1), 1_000_000);
        let looks_on = |mark, now| read(mark, None, now);
        assert_eq!(looks_on(None, 0), Lease::Free);
        let a = claim("a", 1);
        assert_eq!(read(Some(&mark), Some(&a), 9_000_000), Lease::Mine);
        assert_eq!(looks_on(Some(&mark), 1_000_000 + HOLDS_MS - 1), Lease::Held);
        assert_eq!(looks_on(Some(&mark), 1_000_000 + HOLDS_MS), Lease::Free);
        // The clock was set back by an hour.
        assert_eq!(looks_on(Some(&mark), 1_000_000 - 3_600_000), Lease::Free);
        assert_eq!(looks_on(Some("no time"), 0), Lease::Free);
        // What an earlier release wrote.
        assert_eq!(looks_on(Some("a 1000000"), 1_000_000), Lease::Held);
    }

    /// The robbed tab has not seen yet that it was robbed, and confirms once more.
    #[test]
    fn a_late_confirmation_takes_nothing_back() {
        let robbed = claim("z", 1);
        let first = write(&robbed, 1_000_000);
        let robber = claim("b", next_term(Some(&first)));
        let late = write(&robbed, 1_000_100);
        assert_eq!(read(Some(&late), Some(&robber), 1_000_200), Lease::Mine);
        // Whoever writes again says so to the robbed one.
        let again = write(&robber, 1_000_200);
        assert_eq!(read(Some(&again), Some(&robbed), 1_000_300), Lease::Held);
    }

    /// Two tabs that take the match at the same moment: one of them has it, whichever mark came last.
    #[test]
    fn of_two_that_take_it_at_once_one_has_it() {
        let [a, b] = [claim("a", 2), claim("b", 2)];
        for last in [&a, &b] {
            let mark = write(last, 1_000_000);
            assert_eq!(read(Some(&mark), Some(&b), 1_000_000), Lease::Mine);
        }
        let mark = write(&b, 1_000_000);
        assert_eq!(read(Some(&mark), Some(&a), 1_000_000), Lease::Held);
    }
}
