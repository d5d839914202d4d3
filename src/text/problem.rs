//! What is wrong with a file, a packed record or its codes: the words behind *file:* or *entry n:*, without
//! a capital and an end where they go on a sentence.

use record::{Broken, EntryProblem, Foreign, PackProblem, Problem, ProblemKind, MAX_BYTES};

/// Bytes of a megabyte, as phones count files.
pub(crate) const MB: usize = 1_000_000;
/// The most that is read of a match, in megabytes.
pub(crate) const MOST_MB: usize = MAX_BYTES / MB;

words! { ProblemWords in problem;
    /// What is wrong with a file, with the match of a backup that it is about.
    problem(problem: &Problem) -> String;
    /// What is wrong, in one sentence.
    kind(kind: &ProblemKind) -> String;
    /// A link or a seal that does not fit.
    broken(broken: &Broken) -> String;
    /// Why an entry cannot be read.
    entry(problem: &EntryProblem) -> String;
    /// Why bytes hold nothing that can be read here, with the way out.
    foreign(foreign: &Foreign) -> String;
    /// Why a record cannot be packed, or a packed one cannot be read, with the way out.
    packed(why: &PackProblem) -> String;
}
