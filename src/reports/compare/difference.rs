//! What two records differ in.

use crate::one_match::Part;
use game::Kind;
use rules::{ByTeam, Cause, Score, Team};

/// One of the two records.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The one named first.
    First,
    /// The one named second.
    Second,
}

impl Which {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Which {
        match self {
            Which::First => Which::Second,
            Which::Second => Which::First,
        }
    }
}

/// Two records, compared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparison {
    /// Names of the teams, for the sentences.
    pub names: ByTeam<String>,
    /// Every difference in the order of the match.
    pub differences: Vec<Difference>,
}

impl Comparison {
    /// The first point that is not the same in both.
    #[must_use]
    pub fn parting(&self) -> Option<&Difference> {
        self.differences
            .iter()
            .find(|d| matches!(d.what, What::Point { .. } | What::Stops { .. }))
    }

    /// What speaks against these being records of one match.
    #[must_use]
    pub fn other_match(&self) -> Option<&Difference> {
        let mut all = self.differences.iter();
        all.find(|d| matches!(d.what, What::OtherMatch { .. }))
    }

    /// What differs apart from that, in the order of the match.
    pub fn within(&self) -> impl Iterator<Item = &Difference> {
        let all = self.differences.iter();
        all.filter(|d| !matches!(d.what, What::OtherMatch { .. }))
    }

    /// Whether A of the first record is B of the second.
    #[must_use]
    pub fn is_exchanged(&self) -> bool {
        let all = self.differences.iter();
        all.into_iter()
            .any(|d| matches!(d.what, What::LettersExchanged))
    }
}

/// One difference.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// The kind of entry that differs.
    pub code: &'static str,
    /// The set, from 1; none for the heading.
    pub set: Option<u8>,
    /// The rally in its set, from 1: the one that differs, or the one that came next. Penalty points are
    /// completed rallies (FIVB Official Volleyball Rules 2025-2028, 6.1.3) and count.
    pub rally: Option<usize>,
    /// The score at that moment in the first record, or in the only one.
    pub score: Option<Score>,
    /// Numbers of the entries in the first and in the second record.
    pub entries: (Option<u32>, Option<u32>),
    /// What differs.
    pub what: What,
}

/// What differs.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the sentence names.
pub enum What {
    /// What speaks against one match: what each record says of this part. `certain` where nothing speaks
    /// for it.
    OtherMatch {
        part: Part,
        certain: bool,
        first: String,
        second: String,
    },
    /// A and B are exchanged; compared with that put right.
    LettersExchanged,
    /// Other rules.
    Rules,
    /// A point: to the other team, given for something else, or only in one record. `longer` says in
    /// which record the set goes on for how many points because of it.
    Point {
        first: Option<(Team, Kind)>,
        second: Option<(Team, Kind)>,
        longer: Option<(Which, usize)>,
    },
    /// One record ends here, the other has so many points more in this set.
    Stops { which: Which, more: usize },
    /// Another cause of the same rally.
    Cause { first: Cause, second: Cause },
    /// Something only one record has.
    OnlyIn { which: Which, kind: Kind },
    /// Something one record never has and the other several times.
    NeverIn { which: Which, times: usize },
    /// The same at another score.
    Moved { kind: Kind, second: Score },
    /// Something else at the same moment.
    Otherwise { first: Kind, second: Kind },
    /// A set only one record has; `again` where it has it twice, the second time on another court.
    SetOnlyIn { which: Which, again: bool },
}
