//! Several copies of one match put together line by line.
//!
//! A line is its link, a space and its JSON; the link is made of the link before and the JSON
//! (`record::Link`). So each line can be proved by itself against whichever copy has a good line
//! before it, and damage in one place hides nothing in another. Nothing that cannot be understood is
//! ever replaced: a damaged line is only where a proved one takes its place, and a proved line that
//! this program cannot read (a newer kind) counts as good.

use std::collections::BTreeMap;

use super::ports::{Lines, Put};
use game::Entry;
use record::{read_entry, LineWriter, Link};

/// What several copies give together.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// The lines of the log, as they stand in storage.
    pub lines: Lines,
    /// The entries that can be read.
    pub entries: Vec<Entry>,
    /// Continues the chain.
    pub writer: LineWriter,
    /// The number of the next entry: behind every line, read or not.
    pub next: u32,
    /// Lines that cannot be read or proved.
    pub damage: Vec<Damage>,
    /// Numbers of lines that one copy has damaged, or lacks in its middle, and another has whole.
    pub mended: Vec<u32>,
    /// What each copy lacks or has damaged, in the order of the copies.
    pub repairs: Vec<Vec<Put>>,
    /// Whole logs that part from this one, each beginning with the first entry.
    pub branches: Vec<Lines>,
}

/// A line that is not simply good.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    /// Its number.
    pub n: u32,
    /// What is wrong with it.
    pub what: What,
    /// Its bytes as every copy has them.
    pub raw: Vec<String>,
}

/// What is wrong with a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// No copy has it.
    Missing,
    /// It is not as it was written, or cannot be read.
    Damaged,
    /// It is as it was written; a newer version of the program can read it.
    Newer,
    /// It can be read, but what would prove it is damaged.
    Unproved,
}

impl Merged {
    /// The bytes of every line that this program cannot read, once each.
    #[must_use]
    pub fn unread(&self) -> Vec<String> {
        unread(&self.damage)
    }
}

/// The bytes of every line among these that cannot be read, once each.
#[must_use]
pub fn unread(damage: &[Damage]) -> Vec<String> {
    let unread = damage.iter().filter(|d| match d.what {
        What::Damaged | What::Newer => true,
        What::Missing | What::Unproved => false,
    });
    unread.flat_map(|d| d.raw.iter().cloned()).collect()
}

/// One copy's line, taken apart.
struct Candidate<'a> {
    copy: usize,
    raw: &'a str,
    link: Option<Link>,
    json: &'a str,
}

impl<'a> Candidate<'a> {
    fn of(copy: usize, raw: &'a str) -> Candidate<'a> {
        let (link, json) = raw.split_once(' ').unwrap_or(("", raw));
        Candidate {
            copy,
            raw,
            link: Link::read(link),
            json,
        }
    }

    /// Whether the line follows on one of these links.
    fn follows(&self, on: &[Link]) -> bool {
        let made = |before: &Link| Some(before.next(self.json)) == self.link;
        on.iter().any(made)
    }

    /// Whether it looks like a line, be it of a kind that this program does not know. A line ends where its
    /// object ends; what stands behind it is damage that a reader of JSON would forgive.
    fn is_whole(&self) -> bool {
        self.link.is_some() && self.json.starts_with('{') && self.json.ends_with('}')
    }

    /// The entry of this number.
    fn entry(&self, n: u32) -> Option<Entry> {
        if !self.json.ends_with('}') {
            return None;
        }
        read_entry(self.json).ok().filter(|entry| entry.n == n)
    }

    /// Whether this is no damaged copy of the good line but a line of another log: it follows on what came
    /// before as well, or it can be read and shares neither link nor words with the good line. What proved
    /// the other log may be damaged, so a line that can be read is never thrown away for want of proof.
    fn is_of_another_log(&self, n: u32, good: &Candidate<'_>, before: &[Link]) -> bool {
        let shares = self.link == good.link || self.json == good.json;
        self.follows(before) || (!shares && self.entry(n).is_some())
    }
}

/// A copy that went its own way.
struct Branch {
    last: Link,
    lines: Lines,
}

/// Puts copies together. The first ones weigh more: where two good copies part, the first keeps the
/// name and the other is a branch.
#[must_use]
pub fn merge(copies: &[&Lines]) -> Merged {
    let mut all: BTreeMap<u32, Vec<Candidate<'_>>> = BTreeMap::new();
    for (copy, lines) in copies.iter().enumerate() {
        for (n, raw) in *lines {
            let here = all.entry(*n).or_default();
            here.push(Candidate::of(copy, raw));
        }
    }
    let mut merged = Merged {
        next: 1,
        repairs: vec![Vec::new(); copies.len()],
        ..Merged::default()
    };
    let mut branches: Vec<Option<Branch>> = copies.iter().map(|_| None).collect();
    // The links that the next line may follow on, and whether the right one is surely among them.
    let mut before = vec![Link::default()];
    let mut sure = true;
    let numbers: Vec<u32> = all.keys().copied().filter(|n| *n > 0).collect();
    for n in numbers {
        let mut here = all.remove(&n).unwrap_or_default();
        // Lines of a copy that has parted from the log belong to its branch alone.
        here.retain(|line| {
            let Some(branch) = branches.get_mut(line.copy).and_then(Option::as_mut) else {
                return true;
            };
            let goes_on = line.follows(std::slice::from_ref(&branch.last));
            if goes_on {
                branch.last = line.link.clone().unwrap_or_default();
                branch.lines.insert(n, line.raw.to_owned());
                merged.repairs[line.copy].push(Put {
                    n,
                    found: Some(line.raw.to_owned()),
                    line: None,
                });
            }
            !goes_on
        });
        if here.is_empty() {
            continue;
        }
        for missing in merged.next..n {
            merged.damage.push(Damage {
                n: missing,
                what: What::Missing,
                raw: Vec::new(),
            });
            sure = false;
        }
        merged.next = n.saturating_add(1);
        let proved = here.iter().position(|line| line.follows(&before));
        let next_follows = |line: &Candidate<'_>| {
            let on = line.link.clone();
            on.is_some_and(|on| {
                let later = all.get(&(n + 1)).into_iter().flatten();
                later
                    .into_iter()
                    .any(|next| next.follows(std::slice::from_ref(&on)))
            })
        };
        let chosen = match proved {
            Some(at) => Some(at),
            None if sure => None,
            // Nothing can prove it; what goes on from it speaks for it, then whether it can be read, with its link
            // or without.
            None => {
                let first = |fits: &dyn Fn(&Candidate<'_>) -> bool| {
                    here.iter()
                        .position(|line| line.entry(n).is_some() && fits(line))
                };
                first(&next_follows)
                    .or_else(|| first(&|line| line.link.is_some()))
                    .or_else(|| first(&|_| true))
            }
        };
        let raw = || {
            let mut raw: Vec<String> = here.iter().map(|line| line.raw.to_owned()).collect();
            raw.dedup();
            raw
        };
        let Some(line) = chosen.map(|at| &here[at]) else {
            // The one that is whole, as far as anybody can see, stands for all.
            let whole = here.iter().find(|line| line.is_whole());
            let shown = whole.unwrap_or(&here[0]);
            merged.lines.insert(n, shown.raw.to_owned());
            merged.damage.push(Damage {
                n,
                what: What::Damaged,
                raw: raw(),
            });
            before.extend(here.iter().filter_map(|line| line.link.clone()));
            sure = false;
            continue;
        };
        let is_proved = proved.is_some();
        let entry = line.entry(n);
        let what = match (&entry, is_proved) {
            (Some(_), true) => None,
            (Some(_), false) => Some(What::Unproved),
            (None, _) => Some(What::Newer),
        };
        if let Some(what) = what {
            merged.damage.push(Damage {
                n,
                what,
                raw: raw(),
            });
        }
        merged.lines.insert(n, line.raw.to_owned());
        merged.entries.extend(entry);
        let text = line.raw;
        for (copy, lines) in copies.iter().enumerate() {
            let has = here.iter().find(|line| line.copy == copy);
            match has {
                Some(other) if other.raw == text => {}
                Some(other) if is_proved && other.is_of_another_log(n, line, &before) => {
                    let branch = branches[copy].get_or_insert_with(|| Branch {
                        last: Link::default(),
                        lines: merged.lines.clone(),
                    });
                    branch.last = other.link.clone().unwrap_or_default();
                    branch.lines.insert(n, other.raw.to_owned());
                    merged.repairs[copy].push(Put {
                        n,
                        found: Some(other.raw.to_owned()),
                        line: Some(text.to_owned()),
                    });
                }
                Some(other) if is_proved => {
                    merged.mended.push(n);
                    merged.repairs[copy].push(Put {
                        n,
                        found: Some(other.raw.to_owned()),
                        line: Some(text.to_owned()),
                    });
                }
                // What cannot be proved overwrites nothing.
                Some(_) => {}
                None => {
                    // A copy that merely ends earlier is not damaged.
                    if lines.keys().next_back().is_some_and(|last| *last > n) {
                        merged.mended.push(n);
                    }
                    put_or_replace(&mut merged.repairs[copy], n, lines.get(&n), text);
                }
            }
        }
        let link = line.link.clone();
        if is_proved {
            before.clear();
            sure = true;
        }
        before.extend(link);
    }
    merged.mended.dedup();
    let last = before.pop().unwrap_or_default();
    merged.writer = LineWriter::after(last);
    for branch in branches.into_iter().flatten() {
        if !merged.branches.contains(&branch.lines) {
            merged.branches.push(branch.lines);
        }
    }
    merged
}

/// A line that a copy lacks; where its branch had one, that one gives way.
fn put_or_replace(puts: &mut Vec<Put>, n: u32, found: Option<&String>, text: &str) {
    let line = Some(text.to_owned());
    match puts.iter_mut().find(|put| put.n == n) {
        Some(put) => put.line = line,
        None => puts.push(Put {
            n,
            found: found.cloned(),
            line,
        }),
    }
}
