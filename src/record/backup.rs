//! Everything on a phone in one file: each match as its own file would have it, whether it was put
//! away, and the signatures drawn for it; the paper sheets and pools that lie on the desk.
//!
//! A match that cannot be read does not hide the others.

mod mending;
mod reading;

use std::collections::BTreeMap;

use serde::Serialize;

use super::file;
use super::unread::with_unread;
use super::{Log, Strokes};

pub use reading::{
    open, open_part, BackupReading, Opened, ReadMatch, MAX_BACKUP_BYTES, MAX_MATCHES,
};

/// What the file says of itself.
pub const NAME: &str = "volleyball-backup";
/// The version this program writes and reads.
const VERSION: u64 = 1;

/// One match with what is kept beside it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct KeptMatch {
    /// The log.
    pub log: Log,
    /// Whether it was put away.
    pub archived: bool,
    /// Signatures drawn with a finger, by the entry that signs.
    pub drawn: BTreeMap<u32, Strokes>,
    /// Lines of storage that could not be read, as they stand there.
    pub unread: Vec<String>,
    /// Whether the file that it came from lacked a part, which nobody sees in its log.
    pub lacks_a_part: bool,
}

/// What lies on the desk and is no match record, and what belongs to a learner, each as the text that is kept of
/// it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OnDesk {
    /// Paper sheets that are being keyed in.
    pub papers: Vec<String>,
    /// Results of pools.
    pub pools: Vec<String>,
    /// What somebody has practised; at most one.
    pub learner: Option<String>,
    /// The logbook of the phone's owner; at most one.
    pub logbook: Option<String>,
    /// Notes of observers.
    pub observed: Vec<String>,
}

impl OnDesk {
    /// Whether nothing lies there.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == OnDesk::default()
    }
}

#[derive(Serialize)]
struct Head<'a> {
    log: &'static str,
    version: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    made: Option<i64>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    papers: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    pools: &'a [String],
    #[serde(skip_serializing_if = "Option::is_none")]
    learner: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    logbook: Option<&'a str>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    observed: &'a [String],
}

#[derive(Serialize)]
struct Beside<'a> {
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    archived: bool,
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    lacks_a_part: bool,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    drawn: &'a BTreeMap<u32, String>,
}

/// All matches and what lies on the desk as one file, in the order given, made at this time.
#[must_use]
pub fn write_backup(matches: &[KeptMatch], desk: &OnDesk, made: Option<i64>) -> String {
    let head = Head {
        log: NAME,
        version: VERSION,
        made,
        papers: &desk.papers,
        pools: &desk.pools,
        learner: desk.learner.as_deref(),
        logbook: desk.logbook.as_deref(),
        observed: &desk.observed,
    };
    let mut out = open_object(&head);
    out.push_str("\"matches\":[");
    for (i, kept) in matches.iter().enumerate() {
        out.push_str(if i == 0 { "\n" } else { ",\n" });
        let drawn = kept.drawn.iter().map(|(n, s)| (*n, s.write())).collect();
        out.push_str(&open_object(&Beside {
            archived: kept.archived,
            lacks_a_part: kept.lacks_a_part,
            drawn: &drawn,
        }));
        out.push_str("\"match\":");
        let file = with_unread(file::write(&kept.log), &kept.unread);
        out.push_str(file.trim_end());
        out.push('}');
    }
    out.push_str("\n]}\n");
    out
}

/// An object that goes on: without its closing brace, with a comma where it has fields.
fn open_object(value: &impl Serialize) -> String {
    // Plain structs with string keys cannot fail to be written.
    let mut out = serde_json::to_string(value).unwrap_or_default();
    out.pop();
    if out.len() > 1 {
        out.push(',');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::reading::MAX_DESK_BYTES;
    use super::*;
    use crate::ProblemKind;
    use game::{simulate, Entry, Kind};
    use rules::Preset;

    pub(super) fn kept(seed: u64) -> KeptMatch {
        let drawn = Strokes::read("1,2 30,40;5,6").expect("a drawing");
        KeptMatch {
            log: Log {
                id: format!("m{seed}"),
                entries: simulate(Preset::SchoolSenior, seed),
            },
            archived: seed.is_multiple_of(2),
            lacks_a_part: seed.is_multiple_of(5),
            drawn: seed
                .is_multiple_of(3)
                .then_some((12, drawn))
                .into_iter()
                .collect(),
            ..KeptMatch::default()
        }
    }

    pub(super) fn backup(text: &str) -> BackupReading {
        match open(text) {
            Opened::Backup(backup) => backup,
            Opened::Match(reading) => panic!("read as a match: {:?}", reading.problems),
        }
    }

    #[test]
    fn everything_comes_back() {
        let all: Vec<KeptMatch> = (1..7).map(kept).collect();
        let read = backup(&write_backup(
            &all,
            &OnDesk::default(),
            Some(1_764_057_600_000),
        ));
        assert_eq!(read.problems, []);
        let back: Vec<KeptMatch> = read
            .matches
            .into_iter()
            .map(|m| {
                assert_eq!(m.reading.problems, []);
                KeptMatch {
                    log: m.reading.log,
                    archived: m.archived,
                    drawn: m.drawn,
                    lacks_a_part: m.lacks_a_part,
                    ..KeptMatch::default()
                }
            })
            .collect();
        assert_eq!(back, all);
    }

    #[test]
    fn what_lies_on_the_desk_comes_back_too() {
        let desk = OnDesk {
            papers: vec!["{}\nteam.A.name Otters".to_owned(), String::new()],
            pools: vec!["{\"log\":\"volleyball-pool\"}".to_owned()],
            learner: Some("{\"learner\":1}".to_owned()),
            logbook: Some("{\"log\":\"volleyball-logbook\"}".to_owned()),
            observed: vec!["{\"log\":\"volleyball-observer\"}".to_owned()],
        };
        let text = write_backup(&[kept(1)], &desk, None);
        let read = backup(&text);
        assert_eq!((read.problems, read.desk), (vec![], desk));
        assert_eq!(read.matches.len(), 1);

        let long = "x".repeat(MAX_DESK_BYTES + 1);
        let odd = text.replacen("\"papers\":[", &format!("\"papers\":[7,\"{long}\","), 1);
        let odd = odd.replacen("\"pools\":[", "\"pools\":{},\"x\":[", 1);
        let odd = odd.replacen("\"learner\":", "\"learner\":8,\"y\":", 1);
        let odd = odd.replacen("\"logbook\":", "\"logbook\":[],\"z\":", 1);
        let odd = odd.replacen("\"observed\":[", "\"observed\":[true,", 1);
        let read = backup(&odd);
        assert_eq!(read.desk.papers.len(), 2);
        let left_out = |field, count| ProblemKind::OnDesk { field, count };
        let kinds: Vec<ProblemKind> = read.problems.into_iter().map(|p| p.kind).collect();
        assert_eq!(
            kinds,
            [
                ProblemKind::UnknownField("x".to_owned()),
                ProblemKind::UnknownField("y".to_owned()),
                ProblemKind::UnknownField("z".to_owned()),
                left_out("papers", 2),
                left_out("pools", 1),
                left_out("observed", 1),
                ProblemKind::Learner,
            ]
        );
    }

    #[test]
    fn nothing_is_a_backup_too() {
        let read = backup(&write_backup(&[], &OnDesk::default(), None));
        assert_eq!(read, BackupReading::default());
    }

    #[test]
    fn one_match_is_one_match() {
        let log = kept(1).log;
        let Opened::Match(reading) = open(&file::write(&log)) else {
            panic!("a match was taken for a backup");
        };
        assert_eq!(reading.log, log);
        for text in ["", "[]", "{", "\"x\"", "{\"log\":3}"] {
            assert!(
                matches!(open(text), Opened::Match(r) if r.is_nothing()),
                "{text}"
            );
        }
    }

    #[test]
    fn a_backup_is_larger_than_one_match_may_be() {
        let long = Log {
            id: "long".to_owned(),
            entries: (1..=4_000)
                .map(|n| {
                    let text = "x".repeat(2_500);
                    Entry::new(n, Kind::Remark { text, team: None })
                })
                .collect(),
        };
        let all = [KeptMatch {
            log: long,
            ..KeptMatch::default()
        }];
        let text = write_backup(&all, &OnDesk::default(), None);
        assert!(text.len() > file::MAX_BYTES);
        assert_eq!(backup(&text).matches[0].reading.log, all[0].log);
    }
}
