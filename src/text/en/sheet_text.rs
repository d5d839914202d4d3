//! The words of the sheet as lines to read, for the command line.

use crate::score_sheet::signer;
use crate::sheet_text::*;
use game::{Sanction, Who};
use record::spaced;
use reports::{RemarkLine, ResultBox, Sheet, Signed};

/// In English.
pub static WORDS: SheetTextWords = SheetTextWords {
    not_finished: "not finished",
    time_outs: "time-outs",
    rounds: "rounds",
    game_captain: "game captain",
    liberos: "liberos",
    sanction,
    remark,
    signed,
    check_code,
    totals,
    end,
};

fn sanction(sanction: &Sanction) -> String {
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

fn remark(line: &RemarkLine, sheet: &Sheet) -> String {
    format!(
        "Remark (set {}, {}): {}",
        line.set,
        line.score.marked(),
        crate::remark(&line.remark, sheet.into())
    )
}

fn signed(signed: &Signed, time: Option<String>) -> String {
    let when = if signed.before { "before" } else { "after" };
    let name = signed.name.as_ref().map(|name| format!(" {name}"));
    let time = time.map(|time| format!(" {time}"));
    let outdated = signed
        .outdated
        .then(|| format!(", {}", crate::score_sheet::signed_another_result()));
    format!(
        "Signed {when} the match: {}{}{}{}",
        signer(&signed.role),
        name.unwrap_or_default(),
        time.unwrap_or_default(),
        outdated.unwrap_or_default()
    )
}

fn check_code(code: &str) -> String {
    format!("Check code: {}", spaced(code))
}

fn totals(result: &ResultBox) -> String {
    let minutes = result.minutes.map(|m| format!(", {m} min"));
    format!(
        "Sets {}, points {}{}",
        result.sets.marked(),
        result.points.marked(),
        minutes.unwrap_or_default()
    )
}

fn end(is_over: bool, winner: Option<&str>) -> String {
    match (is_over, winner) {
        (true, Some(name)) => format!("Winner: {name}"),
        (true, None) => "Ended level".to_owned(),
        (false, _) => "Not finished".to_owned(),
    }
}
