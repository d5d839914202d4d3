//! The words of the sheet as lines to read, for the command line.

use crate::score_sheet::signer;
use game::{Sanction, Who};
use record::spaced;
use reports::{RemarkLine, ResultBox, Sheet, Signed};

/// A set or match that is not over.
pub const NOT_FINISHED: &str = "not finished";
/// Before the scores at time-outs.
pub const TIME_OUTS: &str = "time-outs";
/// Before the totals of the service rounds.
pub const ROUNDS: &str = "rounds";
/// Before the game captains.
pub const GAME_CAPTAIN: &str = "game captain";
/// Before the libero replacements.
pub const LIBEROS: &str = "liberos";

/// A line of the sanctions box; its kind as in a file.
#[must_use]
pub fn sanction(sanction: &Sanction) -> String {
    let who = match &sanction.who {
        Some(Who::Player(n)) => format!(" number {n}"),
        Some(Who::Staff(role)) => format!(" {role}"),
        None => String::new(),
    };
    format!(
        "{}: {}{who}, set {} at {}",
        sanction.kind.code(),
        sanction.team,
        sanction.set,
        sanction.score.marked()
    )
}

/// A remark.
#[must_use]
pub fn remark(line: &RemarkLine, sheet: &Sheet) -> String {
    format!(
        "Remark (set {}, {}): {}",
        line.set,
        line.score.marked(),
        crate::remark(&line.remark, sheet)
    )
}

/// A signature, with the time in the hall.
#[must_use]
pub fn signed(signed: &Signed, time: Option<String>) -> String {
    let when = if signed.before { "before" } else { "after" };
    let name = signed.name.as_ref().map(|name| format!(" {name}"));
    let time = time.map(|time| format!(" {time}"));
    format!(
        "Signed {when} the match: {}{}{}",
        signer(&signed.role),
        name.unwrap_or_default(),
        time.unwrap_or_default()
    )
}

/// The code of a seal that fits.
#[must_use]
pub fn check_code(code: &str) -> String {
    format!("Check code: {}", spaced(code))
}

/// Sets, points and minutes of the match.
#[must_use]
pub fn totals(result: &ResultBox) -> String {
    let minutes = result.minutes.map(|m| format!(", {m} min"));
    format!(
        "Sets {}, points {}{}",
        result.sets.marked(),
        result.points.marked(),
        minutes.unwrap_or_default()
    )
}

/// How the match ended, with the name of the winner.
#[must_use]
pub fn end(is_over: bool, winner: Option<&str>) -> String {
    match (is_over, winner) {
        (true, Some(name)) => format!("Winner: {name}"),
        (true, None) => "Ended level".to_owned(),
        (false, _) => "Not finished".to_owned(),
    }
}
