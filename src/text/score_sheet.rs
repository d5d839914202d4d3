//! The words of the score sheet.

use game::entry::Change;
use game::{Choice, DecidedBy, Sanction};
use record::{Broken, Seal};
use reports::{ClockDoubt, LiberoTurn, SealBox, SetSheet, Sheet};
use rules::{ByTeam, Score, Shirt, Team};

/// Who signs a sheet after the match, by role in the record: the captains by FIVB Official Volleyball
/// Rules 2025-2028, 5.1.3; the officials from memory.
pub const SIGNERS: [&str; 5] = [
    "captain A",
    "captain B",
    "scorer",
    "second referee",
    "first referee",
];

/// Who signs the lists before the match (FIVB Official Volleyball Rules 2025-2028, 4.1.3, 5.1.1, 5.2.1).
pub const SIGNERS_BEFORE: [&str; 4] = ["captain A", "coach A", "captain B", "coach B"];

/// Whether two roles are the same but for the way they are written.
#[must_use]
pub fn same_role(one: &str, other: &str) -> bool {
    let plain = |s: &str| s.to_ascii_lowercase().replace('_', " ");
    plain(one) == plain(other)
}

/// A place of the rotation in its custom writing.
#[must_use]
pub fn roman(place: usize) -> &'static str {
    ["", "I", "II", "III", "IV", "V", "VI"]
        .get(place)
        .copied()
        .unwrap_or_default()
}

words! { ScoreSheetWords in score_sheet;
    /// On the sheet of a practice match.
    practice -> &'static str;
    /// Before anything was played.
    nothing_played -> &'static str;
    /// Name of the results box.
    result -> &'static str;
    /// Its first column.
    set -> &'static str;
    /// Its second column.
    minutes -> &'static str;
    /// Its columns for each team, short and long.
    columns -> [(&'static str, &'static str); 4];
    /// Before the boxes for them.
    time_outs -> &'static str;
    /// Where none was taken.
    none -> &'static str;
    /// Before substitutions that stand with no place.
    substitutions -> &'static str;
    /// Heading.
    liberos -> &'static str;
    /// The columns of a team's half of a set.
    place_columns -> [&'static str; 4];
    /// A team that receives first rotates before it serves.
    no_turn -> &'static str;
    /// Before the points in their order.
    running_score -> &'static str;
    /// Last row of the table.
    total -> &'static str;
    /// Heading.
    sanctions -> &'static str;
    /// Heading.
    remarks -> &'static str;
    /// Heading.
    signatures -> &'static str;
    /// Heading.
    players -> &'static str;
    /// How to read the results box. Exceptional substitutions count among them (FIVB Official Volleyball
    /// Rules 2025-2028, 15.7).
    key_result -> &'static str;
    /// How to read the service rounds.
    key_rounds -> &'static str;
    /// The same where there is no libero.
    key_rounds_no_libero -> &'static str;
    /// How to read the places.
    key_places -> &'static str;
    /// How to read substitutions.
    key_entered -> &'static str;
    /// How to read an exceptional one.
    key_exceptional -> &'static str;
    /// How to read the running score.
    key_penalty -> &'static str;
    /// How to read the running score.
    key_cancelled -> &'static str;
    /// On the second page of paper.
    second_page -> &'static str;
    /// Not over yet.
    not_over -> &'static str;
    /// Over, and nobody has won.
    level_end -> &'static str;
    /// A role in words.
    signer(role: &str) -> String;
    /// Before signatures.
    signed_before -> &'static str;
    /// Before signatures.
    signed_after -> &'static str;
    /// Where there is none.
    not_signed -> &'static str;
    /// In a box that nobody has signed.
    sign_open -> &'static str;
    /// In a box that was signed without a drawing.
    signed_by_tap -> &'static str;
    /// In a box that was signed before the result became another one.
    signed_another_result -> &'static str;
    /// Name of a drawn signature for whoever listens.
    drawn -> &'static str;
    /// Heading.
    seal_label -> &'static str;
    /// What a seal proves, and what it does not.
    seal_shows -> &'static str;
    /// Heading of what was changed after it was written.
    changed -> &'static str;
    /// What was changed, a sentence each; where it is a lot, the rest is counted.
    broken(broken: &[Broken]) -> Vec<String>;
    /// The state of the seal.
    seal(of: &SealBox, last: &Seal, at: Option<&str>) -> String;
    /// What was left undone when the record was sealed; nothing where nothing was.
    left_open(sheet: &Sheet) -> Option<String>;
    /// Before a fact of the match.
    competition -> &'static str;
    /// Before a fact of the match.
    division -> &'static str;
    /// Before a fact of the match.
    match_no -> &'static str;
    /// Before a fact of the match.
    venue -> &'static str;
    /// Before a fact of the match.
    court -> &'static str;
    /// Before a fact of the match.
    scheduled -> &'static str;
    /// Before a fact of the match.
    date -> &'static str;
    /// Before a fact of the match.
    began -> &'static str;
    /// Before a fact of the match.
    ended -> &'static str;
    /// Before the time from the first service to the last point.
    lasted_label -> &'static str;
    /// Before the offset of the clock.
    clock -> &'static str;
    /// What a captain chose after the toss.
    chosen(choice: Choice) -> &'static str;
    /// Who won the toss, and what was chosen.
    won_toss(name: &str, choice: Choice) -> String;
    /// Which side of the first referee a team has at the start of a set.
    side(left: bool) -> &'static str;
    /// Behind a captain's number, short and long.
    captain -> (&'static str, &'static str);
    /// Behind a libero's number, short and long.
    libero -> (&'static str, &'static str);
    /// Whether a team serves first: the sign by custom, and its meaning.
    opens(serves: bool) -> (&'static str, &'static str);
    /// The winner and the sets.
    won_by(name: &str, sets: ByTeam<u8>, winner: Team) -> String;
    /// How a set or match was decided, where not by play.
    how(how: DecidedBy) -> Option<&'static str>;
    /// Over the block of a set.
    set_heading(number: u8) -> String;
    /// When a set was played and how long.
    times(began: Option<&str>, ended: Option<&str>, minutes: Option<i64>) -> Vec<String>;
    /// From when on, and from what score, a set was kept that this record took over.
    kept_from(set: &SetSheet, time: &dyn Fn(Option<i64>) -> Option<String>) -> Option<String>;
    /// How long a match lasted.
    lasted(minutes: i64) -> String;
    /// When the teams changed courts within a set.
    courts_changed(at: Score) -> String;
    /// A score, the own team's points first.
    own_first(score: Score, team: Team) -> String;
    /// Who comes for whom.
    change(out: Shirt, into: Shirt) -> String;
    /// Several of them.
    changes(all: &[Change]) -> String;
    /// A libero's time on court.
    libero_turn(turn: &LiberoTurn, team: Team) -> String;
    /// Marks an exceptional substitution.
    exceptional -> &'static str;
    /// Who spoke for a team while its captain was not on court.
    game_captains_label -> &'static str;
    /// Each of them in a set, with the score since when.
    game_captains(set: &SetSheet, team: Team) -> Vec<String>;
    /// A line of the sanctions box.
    sanction(sanction: &Sanction) -> String;
    /// Where a remark or a sanction belongs.
    at(set: u8, at: Score) -> String;
    /// Name of a service round for whoever listens.
    round(server: Option<Shirt>, total: u16) -> String;
    /// Name of the running score for whoever listens.
    running(name: &str, last: u16) -> String;
    /// So many whole days, two or more.
    days(count: i64) -> String;
    /// What is doubtful about the time of an entry, as a remark and in the log.
    clock_doubt(doubt: ClockDoubt) -> String;
}

/// How long something took: seconds below a minute, minutes below an hour, hours and minutes below two days, then days.
#[must_use]
pub fn span(seconds: i64) -> String {
    match (seconds / 86_400, seconds / 3600, seconds / 60 % 60) {
        (2.., _, _) => days(seconds / 86_400),
        (_, 0, 0) => format!("{seconds} s"),
        (_, 0, minutes) => format!("{minutes} min"),
        (_, hours, 0) => format!("{hours} h"),
        (_, hours, minutes) => format!("{hours} h {minutes} min"),
    }
}
