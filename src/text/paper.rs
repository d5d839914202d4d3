//! The words of every finding on a paper sheet.

use crate::Teams;
use reports::paper::{Finding, Mark};

words! { PaperWords in paper;
    /// Nothing is wrong.
    all_agrees -> &'static str;
    /// What is wrong, in one sentence or two.
    finding(finding: &Finding, teams: Teams) -> String;
    /// A box that does not agree, while a sheet is keyed in.
    mark(mark: &Mark, teams: Teams) -> String;
}
