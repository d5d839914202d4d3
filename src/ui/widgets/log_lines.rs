//! The entries of a log in words.

use game::{Kind, Timeline};
use reports::clock_doubts;

/// One entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LogLine {
    /// Its number.
    pub n: u32,
    /// When it was made.
    pub time: String,
    /// What it is.
    pub words: String,
    /// The score after it, where it is one of a set.
    pub score: Option<String>,
    /// What became of it, where that is not plain.
    pub became: Option<String>,
    /// Whether it counts.
    pub standing: bool,
    /// Whether it can be taken back.
    pub can_go: bool,
    /// A rally whose reason can be said or put right.
    pub rally: bool,
    /// A count-down, which comes and goes with what it times.
    pub quiet: bool,
    /// What is doubtful about its time.
    pub doubt: Option<String>,
}

/// All of them, the first one first.
pub fn log_lines(timeline: &Timeline) -> Vec<LogLine> {
    let state = timeline.state();
    let mut lines = Vec::new();
    let mut doubts = clock_doubts(timeline).into_iter().peekable();
    timeline.walk(|_, entry, outcome, after| {
        let standing = outcome.counts();
        let quiet = matches!(entry.kind, Kind::Timer(_));
        lines.push(LogLine {
            n: entry.n,
            time: text::clock_time(entry.at.map(device::local_time)),
            words: text::entry(entry, state),
            score: after
                .play()
                .filter(|_| standing && !quiet)
                .map(|p| p.score.marked()),
            became: text::outcome(outcome, state),
            standing,
            can_go: entry.n > 1 && standing && !quiet,
            rally: standing && state.rally(entry.n).is_some(),
            quiet,
            doubt: doubts
                .next_if(|(of, _)| *of == entry.n)
                .map(|(_, doubt)| text::score_sheet::clock_doubt(doubt)),
        });
    });
    lines
}
