//! The words of every finding of an audit.

use crate::Teams;
use reports::audit::Finding;

words! { AuditWords in audit;
    /// What there is to look at, in one sentence or two.
    finding(finding: &Finding, teams: Teams) -> String;
}
