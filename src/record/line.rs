//! One entry as a line in storage, chained to the one before it by a check, and what to do when two
//! stores hold different lengths of the same log.

use std::collections::BTreeMap;

use super::chain::Link;
use super::file;
use crate::game::Entry;

/// Writes the lines of one match in order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LineWriter {
    last: Link,
}

impl LineWriter {
    /// The line of the next entry: its link, a space, its JSON.
    pub fn line(&mut self, entry: &Entry) -> String {
        let json = file::write_entry(entry);
        self.last = self.last.next(&json);
        format!("{} {json}", self.last.digits())
    }
}

/// The good beginning of a store's lines.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Beginning {
    entries: Vec<Entry>,
    writer: LineWriter,
    /// Why it ends before the last line, if it does.
    broken: Option<String>,
}

fn good_beginning(lines: &[(u32, String)]) -> Beginning {
    let mut good = Beginning::default();
    for (n, line) in lines {
        match next_entry(&good.writer.last, *n, good.entries.len(), line) {
            Ok((entry, last)) => {
                good.entries.push(entry);
                good.writer.last = last;
            }
            Err(why) => {
                good.broken = Some(why);
                break;
            }
        }
    }
    good
}

fn next_entry(last: &Link, n: u32, have: usize, line: &str) -> Result<(Entry, Link), String> {
    if usize::try_from(n) != Ok(have + 1) {
        return Err(format!("entry {} is missing in storage", have + 1));
    }
    let (given, json) = line
        .split_once(' ')
        .ok_or_else(|| format!("entry {n} is damaged"))?;
    let link = last.next(json);
    if given != link.digits() {
        return Err(format!("entry {n} is damaged, its check does not fit"));
    }
    let entry = file::read_entry(json).map_err(|e| format!("entry {n} cannot be read: {e}"))?;
    if entry.n == n {
        Ok((entry, link))
    } else {
        Err(format!("entry {n} carries the number {}", entry.n))
    }
}

/// What two stores of one match give together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Recovered {
    /// The entries that are good.
    pub entries: Vec<Entry>,
    /// Continues the chain.
    pub writer: LineWriter,
    /// Lines that the first store lacks, or has wrong.
    pub repair_first: Vec<(u32, String)>,
    /// Lines that the second store lacks, or has wrong.
    pub repair_second: Vec<(u32, String)>,
    /// What was found damaged, in words.
    pub problems: Vec<String>,
}

/// The longer valid copy wins and repairs the other. Lines are pairs of number and text, in order of
/// the numbers.
#[must_use]
pub fn recover(first: &[(u32, String)], second: &[(u32, String)]) -> Recovered {
    let (a, b) = (good_beginning(first), good_beginning(second));
    let problems: Vec<String> = [&a, &b].iter().filter_map(|g| g.broken.clone()).collect();
    let best = if b.entries.len() > a.entries.len() {
        b
    } else {
        a
    };
    let mut writer = LineWriter::default();
    let right: Vec<(u32, String)> = best.entries.iter().map(|e| (e.n, writer.line(e))).collect();
    let lacking = |have: &[(u32, String)]| {
        let have: BTreeMap<u32, &str> = have.iter().map(|(n, l)| (*n, l.as_str())).collect();
        let lacks = |(n, line): &&(u32, String)| have.get(n) != Some(&line.as_str());
        right.iter().filter(lacks).cloned().collect::<Vec<_>>()
    };
    Recovered {
        repair_first: lacking(first),
        repair_second: lacking(second),
        entries: best.entries,
        writer: best.writer,
        problems,
    }
}
