//! A record that comes to a phone on which others are: nothing there is lost, and nothing is kept
//! twice.

use super::{Log, Reading};
use game::{Entry, Kind};

/// An id may be so long; ours have far less.
const MAX_ID: usize = 48;
/// Between an id and the number of a further record under it.
const COPY: char = '_';

/// What to do with a record that comes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MergeDecision {
    /// Keep it under this id.
    New(String),
    /// It is here, or what is here goes further.
    Here(String),
    /// It goes on where the record of this id ends: keep the longer one.
    Longer(String),
    /// It parts from what is here: keep both, this one under a new id.
    Beside(String),
}

impl MergeDecision {
    /// The id under which the record is then found.
    #[must_use]
    pub fn id(&self) -> &str {
        match self {
            MergeDecision::New(id)
            | MergeDecision::Here(id)
            | MergeDecision::Longer(id)
            | MergeDecision::Beside(id) => id,
        }
    }

    /// Whether there is something to write.
    #[must_use]
    pub const fn writes(&self) -> bool {
        !matches!(self, MergeDecision::Here(_))
    }
}

/// What to do with a log, given the ids and entries of those that are here.
#[must_use]
pub fn take_in<'a>(log: &Log, here: impl Iterator<Item = (&'a str, &'a [Entry])>) -> MergeDecision {
    let here: Vec<_> = here.collect();
    let given = &log.entries;
    if let Some((id, _)) = here
        .iter()
        .find(|(_, entries)| *entries == given.as_slice())
    {
        return MergeDecision::Here((*id).to_owned());
    }
    let id = plain_id(&log.id);
    let family: Vec<_> = here.iter().filter(|(of, _)| is_of(of, &id)).collect();
    if let Some((of, _)) = family
        .iter()
        .find(|(_, entries)| entries.starts_with(given))
    {
        return MergeDecision::Here((*of).to_owned());
    }
    if let Some((of, _)) = family
        .iter()
        .find(|(_, entries)| given.starts_with(entries))
    {
        return MergeDecision::Longer((*of).to_owned());
    }
    let taken = |id: &str| here.iter().any(|(of, _)| *of == id);
    if !taken(&id) {
        return MergeDecision::New(id);
    }
    let mut number = 2;
    loop {
        let copy = format!("{id}{COPY}{number}");
        if !taken(&copy) {
            return MergeDecision::Beside(copy);
        }
        number += 1;
    }
}

/// Whether a record under this id may be another course of the record that calls itself `log_id`.
#[must_use]
pub fn is_of_record(of: &str, log_id: &str) -> bool {
    is_of(of, &plain_id(log_id))
}

/// Whether an id is this one, or that of a further record of the same match.
fn is_of(of: &str, id: &str) -> bool {
    of.strip_prefix(id).is_some_and(|rest| {
        let number = rest.strip_prefix(COPY);
        rest.is_empty()
            || number.is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()))
    })
}

/// An id that can stand in an address as it is.
fn plain_id(id: &str) -> String {
    let plain = |c: char| {
        let is_plain = c.is_ascii_alphanumeric() || matches!(c, '-' | '_');
        if is_plain {
            c
        } else {
            '-'
        }
    };
    let id: String = id.chars().take(MAX_ID).map(plain).collect();
    if id.is_empty() {
        "match".to_owned()
    } else {
        id
    }
}

impl Reading {
    /// The log without gaps, as it can be kept: where an entry could not be read a remark says so, and
    /// the numbers that others refer to stay.
    #[must_use]
    pub fn without_gaps(self) -> Log {
        let mut entries: Vec<Entry> = Vec::new();
        for entry in self.log.entries {
            for n in entries.len() as u32 + 1..entry.n {
                let text = format!("Entry {n} of the file could not be read.");
                entries.push(Entry::new(n, Kind::Remark { text, team: None }));
            }
            entries.push(entry);
        }
        let id = self.log.id;
        Log { id, entries }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use game::simulate;
    use proptest::prelude::*;
    use rules::Preset;

    fn log(id: &str, entries: &[Entry]) -> Log {
        Log {
            id: id.to_owned(),
            entries: entries.to_vec(),
        }
    }

    fn taken(given: &Log, here: &[Log]) -> MergeDecision {
        take_in(given, here.iter().map(|l| (l.id.as_str(), &l.entries[..])))
    }

    #[test]
    fn the_longer_of_one_match_wins_and_those_that_part_are_both_kept() {
        let all = simulate(Preset::SchoolSenior, 3);
        let (short, long) = (&all[..20], &all[..40]);
        let mut other = all[..30].to_vec();
        other[29].at = Some(1);
        let here = [log("m", short)];
        assert_eq!(
            taken(&log("m", short), &here),
            MergeDecision::Here("m".into())
        );
        assert_eq!(
            taken(&log("m", &all[..9]), &here),
            MergeDecision::Here("m".into())
        );
        assert_eq!(
            taken(&log("m", long), &here),
            MergeDecision::Longer("m".into())
        );
        assert_eq!(
            taken(&log("n", long), &here),
            MergeDecision::New("n".into())
        );
        let here = [log("m", long)];
        assert_eq!(
            taken(&log("m", &other), &here),
            MergeDecision::Beside("m_2".into())
        );
        // Again, and longer: each finds its own.
        let here = [log("m", long), log("m_2", &other)];
        assert_eq!(
            taken(&log("m", &other), &here),
            MergeDecision::Here("m_2".into())
        );
        other.push(Entry::new(31, Kind::ChangeCourts));
        assert_eq!(
            taken(&log("m", &other), &here),
            MergeDecision::Longer("m_2".into())
        );
        other[28].at = Some(2);
        assert_eq!(
            taken(&log("m", &other), &here),
            MergeDecision::Beside("m_3".into())
        );
    }

    #[test]
    fn the_same_record_under_another_id_is_not_kept_twice() {
        let all = simulate(Preset::SchoolSenior, 4);
        let here = [log("m", &all)];
        assert_eq!(
            taken(&log("x", &all), &here),
            MergeDecision::Here("m".into())
        );
        // But a beginning alone says nothing: two tallies may begin alike.
        assert_eq!(
            taken(&log("x", &all[..1]), &here),
            MergeDecision::New("x".into())
        );
    }

    #[test]
    fn ids_can_stand_in_an_address() {
        let all = simulate(Preset::SchoolSenior, 1);
        let id = |given: &str| taken(&log(given, &all), &[]).id().to_owned();
        assert_eq!(id("a-B_9"), "a-B_9");
        assert_eq!(id(""), "match");
        assert_eq!(id("../a b/\u{e9}?#"), "---a-b----");
        assert_eq!(id(&"x".repeat(500)).len(), MAX_ID);
        assert!(is_of("m_12", "m") && !is_of("m_x", "m") && !is_of("mm", "m") && !is_of("m_", "m"));
    }

    #[test]
    fn gaps_are_filled_and_far_numbers_left_out() {
        let file = r#"{"log":"volleyball-match","version":2,"id":"x","entries":[
            {"n":1,"kind":"change_courts"},
            {"n":4,"kind":"begin_set"},
            {"n":4294967295,"kind":"begin_set"}]}"#;
        let reading = crate::read(file);
        assert!(reading
            .problems
            .iter()
            .any(|p| p.kind == crate::ProblemKind::NoNumber));
        let log = reading.without_gaps();
        let numbers: Vec<u32> = log.entries.iter().map(|e| e.n).collect();
        assert_eq!(numbers, [1, 2, 3, 4]);
        assert!(matches!(&log.entries[1].kind, Kind::Remark { text, .. } if text.contains('2')));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn nothing_is_lost_whatever_comes_in_whatever_order(
            seed in 1u64..4,
            parts in prop::collection::vec((2usize..30, prop::option::of(0usize..29)), 1..8)
        ) {
            let all = simulate(Preset::SchoolSenior, seed);
            let mut here: Vec<Log> = Vec::new();
            let mut given: Vec<Vec<Entry>> = Vec::new();
            for (length, change) in parts {
                let mut entries = all[..length.min(all.len())].to_vec();
                if let Some(entry) = change.and_then(|at| entries.get_mut(at)) {
                    entry.at = Some(0);
                }
                given.push(entries.clone());
                let came = log("m", &entries);
                let what = taken(&came, &here);
                if what.writes() {
                    here.retain(|l| l.id != what.id());
                    here.push(log(what.id(), &entries));
                }
            }
            for entries in given {
                prop_assert!(here.iter().any(|l| l.entries.starts_with(&entries)));
            }
        }
    }
}
