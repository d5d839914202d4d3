//! The words of the sheet as lines to read, for the command line.

use game::Sanction;
use reports::{RemarkLine, ResultBox, Sheet, Signed};

words! { SheetTextWords in sheet_text;
    /// A set or match that is not over.
    not_finished -> &'static str;
    /// Before the scores at time-outs.
    time_outs -> &'static str;
    /// Before the totals of the service rounds.
    rounds -> &'static str;
    /// Before the game captains.
    game_captain -> &'static str;
    /// Before the libero replacements.
    liberos -> &'static str;
    /// A line of the sanctions box; its kind as in a file.
    sanction(sanction: &Sanction) -> String;
    /// A remark.
    remark(line: &RemarkLine, sheet: &Sheet) -> String;
    /// A signature, with the time in the hall.
    signed(signed: &Signed, time: Option<String>) -> String;
    /// The code of a seal that fits.
    check_code(code: &str) -> String;
    /// Sets, points and minutes of the match.
    totals(result: &ResultBox) -> String;
    /// How the match ended, with the name of the winner.
    end(is_over: bool, winner: Option<&str>) -> String;
}
