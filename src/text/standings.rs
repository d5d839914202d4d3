//! The words of the standings: the reason for each place, and each finding.

use reports::standings::{Criterion, Doubt, Finding, Pool, Row, Scheme};

words! { StandingsWords in standings;
    /// Why a team stands where it does, in one sentence.
    reason(row: &Row) -> String;
    /// A criterion in words.
    criterion(criterion: Criterion) -> &'static str;
    /// What is wrong, in one sentence with the way out.
    finding(finding: &Finding, pool: &Pool) -> String;
    /// Why the result of a record or sheet of this name may not be what was played.
    doubt(name: &str, doubt: Doubt) -> String;
    /// A way to give match points.
    scheme(scheme: Scheme) -> &'static str;
}
