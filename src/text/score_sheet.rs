//! The words of the score sheet.

use crate::audit;
use game::entry::Change;
use game::{Choice, DecidedBy, Level, Sanction, SanctionKind, Who};
use record::{spaced, Broken, Seal};
use reports::{ClockDoubt, LiberoTurn, SealBox, SetSheet, Sheet};
use rules::{ByTeam, Score, Shirt, Team};

/// On the sheet of a practice match.
pub const PRACTICE: &str = "Practice: nobody played this match.";
/// Before anything was played.
pub const NOTHING_PLAYED: &str = "Nothing has been played yet. The sheet fills itself in.";
/// Name of the results box.
pub const RESULT: &str = "Result";
/// Its first column.
pub const SET: &str = "Set";
/// Its second column.
pub const MINUTES: &str = "Min";
/// Its columns for each team, short and long.
pub const COLUMNS: [(&str, &str); 4] = [
    ("P", "Points"),
    ("W", "Sets won"),
    ("T", "Time-outs"),
    ("S", "Substitutions"),
];
/// Before the boxes for them.
pub const TIME_OUTS: &str = "Time-outs";
/// Where none was taken.
pub const NONE: &str = "none";
/// Before substitutions that stand with no place.
pub const SUBSTITUTIONS: &str = "Substitutions";
/// Heading.
pub const LIBEROS: &str = "Libero replacements";
/// The columns of a team's half of a set.
pub const PLACE_COLUMNS: [&str; 4] = [
    "Place",
    "Starts",
    "Comes in, at",
    "Total when the service ended",
];
/// A team that receives first rotates before it serves.
pub const NO_TURN: &str = "no first turn";
/// Before the points in their order.
pub const RUNNING_SCORE: &str = "Running score";
/// Last row of the table.
pub const TOTAL: &str = "Total";
/// Heading.
pub const SANCTIONS: &str = "Sanctions";
/// Heading.
pub const REMARKS: &str = "Remarks";
/// Heading.
pub const SIGNATURES: &str = "Signatures";
/// Heading.
pub const PLAYERS: &str = "Players";
/// How to read the results box. Exceptional substitutions count among them (FIVB Official Volleyball
/// Rules 2025-2028, 15.7).
pub const KEY_RESULT: &str =
    "P points, W sets won, T time-outs, S substitutions (with exceptional ones). S or R beside a team: \
     serves or receives first.";
/// How to read the service rounds.
pub const KEY_ROUNDS: &str =
    "Totals and scores at time-outs, substitutions and libero replacements show own points first. Every \
     other score has the letters of the teams.";
/// The same where there is no libero.
pub const KEY_ROUNDS_NO_LIBERO: &str =
    "Totals and scores at time-outs and substitutions show own points first. Every other score has the \
     letters of the teams.";
/// How to read the places.
pub const KEY_PLACES: &str =
    "Ringed total: end of the set, dashed if it was won on the other team's service. Small number: who \
     served, if not the starter. Cross: no first turn, because the team received.";
/// How to read substitutions.
pub const KEY_ENTERED: &str = "Ringed number: the starter came back for that substitute.";
/// How to read an exceptional one.
pub const KEY_EXCEPTIONAL: &str = "E: exceptional substitution.";
/// How to read the running score.
pub const KEY_PENALTY: &str = "Boxed point: for a penalty or a fault found late.";
/// How to read the running score.
pub const KEY_CANCELLED: &str = "Crossed-out point: cancelled.";
/// On the second page of paper.
pub const SECOND_PAGE: &str = "page 2";
/// Not over yet.
pub const NOT_OVER: &str = "The match is not over.";
/// Over, and nobody has won.
pub const LEVEL_END: &str = "The match ended level.";

/// Who signs a sheet after the match, by role in the record and in words: the captains by FIVB
/// Official Volleyball Rules 2025-2028, 5.1.3; the officials from memory.
pub const SIGNERS: [(&str, &str); 5] = [
    ("captain A", "Captain A"),
    ("captain B", "Captain B"),
    ("scorer", "Scorer"),
    ("second referee", "Second referee"),
    ("first referee", "First referee"),
];

/// Who signs the lists before the match (FIVB Official Volleyball Rules 2025-2028, 4.1.3, 5.1.1, 5.2.1).
pub const SIGNERS_BEFORE: [(&str, &str); 4] = [
    ("captain A", "Captain A"),
    ("coach A", "Coach A"),
    ("captain B", "Captain B"),
    ("coach B", "Coach B"),
];

/// Whether two roles are the same but for the way they are written.
#[must_use]
pub fn same_role(one: &str, other: &str) -> bool {
    let plain = |s: &str| s.to_ascii_lowercase().replace('_', " ");
    plain(one) == plain(other)
}

/// A role in words.
#[must_use]
pub fn signer(role: &str) -> String {
    let all = || SIGNERS.iter().chain(&SIGNERS_BEFORE);
    let known = all().find(|s| same_role(role, s.0));
    known.map_or_else(|| role.replace('_', " "), |s| s.1.to_owned())
}

/// Before signatures.
pub const SIGNED_BEFORE: &str = "Before the match";
/// Before signatures.
pub const SIGNED_AFTER: &str = "After the match";
/// Where there is none.
pub const NOT_SIGNED: &str = "Not signed after the match in the record.";
/// In a box that nobody has signed.
pub const SIGN_OPEN: &str = "not signed";
/// In a box that was signed without a drawing.
pub const SIGNED_BY_TAP: &str = "signed";
/// Name of a drawn signature for whoever listens.
pub const DRAWN: &str = "drawn signature";

/// Heading.
pub const SEAL: &str = "Seal";

/// What a seal proves, and what it does not.
pub const SEAL_SHOWS: &str = "Compare this code with the one that was written down or read out at the \
    time. If they are the same, no entry before it was changed since. The code does not show who sealed \
    the record, or that what was entered is true.";

/// Heading of what was changed after it was written.
pub const CHANGED: &str = "This record was changed after it was written";

/// What was changed, a sentence each; where it is a lot, the rest is counted.
#[must_use]
pub fn broken(broken: &[Broken]) -> Vec<String> {
    const MOST: usize = 5;
    let say = |broken: &Broken| {
        match broken {
        Broken::Link { entry } => format!(
            "Entry {entry} does not fit its link. It was changed, or something before it was changed or \
             removed."
        ),
        Broken::Seal(seal) => format!("The seal of entry {} does not fit.", seal.entry),
    }
    };
    let mut sentences: Vec<String> = broken.iter().take(MOST).map(say).collect();
    if broken.len() > MOST {
        sentences.push(format!("And {} more.", broken.len() - MOST));
    }
    sentences
}

/// The state of the seal.
#[must_use]
pub fn seal(of: &SealBox, last: &Seal, at: Option<&str>) -> String {
    let at = at.map(|at| format!(" on {at}")).unwrap_or_default();
    let again = match of.seals.len() {
        0 | 1 => String::new(),
        n => format!(" It was sealed {n} times and reopened in between."),
    };
    match (last.fits(), of.holds) {
        (false, _) => format!(
            "THE SEAL DOES NOT FIT: it was set{at} with the code {}, and what stands here gives {}. \
             Something was changed.{again}",
            spaced(&last.code),
            spaced(&last.found)
        ),
        (true, true) => format!("Sealed{at} with this code.{again}"),
        (true, false) => format!(
            "Sealed{at} with the code {}, then reopened and not sealed again.",
            spaced(&last.code)
        ),
    }
}

/// What was left undone when the record was sealed; nothing where nothing was.
#[must_use]
pub fn left_open(sheet: &Sheet) -> Option<String> {
    let open = &sheet.seal.left_open;
    let sentences: Vec<String> = open.iter().map(|f| audit::finding(f, sheet)).collect();
    (!sentences.is_empty())
        .then(|| format!("Sealed although this was open: {}", sentences.join(" ")))
}

/// A place of the rotation in its custom writing.
#[must_use]
pub fn roman(place: usize) -> &'static str {
    ["", "I", "II", "III", "IV", "V", "VI"]
        .get(place)
        .copied()
        .unwrap_or_default()
}

/// Before a fact of the match.
pub const COMPETITION: &str = "Competition";
/// Before a fact of the match.
pub const DIVISION: &str = "Division";
/// Before a fact of the match.
pub const MATCH_NO: &str = "Match";
/// Before a fact of the match.
pub const VENUE: &str = "Hall";
/// Before a fact of the match.
pub const COURT: &str = "Court";
/// Before a fact of the match.
pub const SCHEDULED: &str = "Scheduled";
/// Before a fact of the match.
pub const DATE: &str = "Date";
/// Before a fact of the match.
pub const BEGAN: &str = "Start";
/// Before a fact of the match.
pub const ENDED: &str = "End";
/// Before the time from the first service to the last point.
pub const LASTED: &str = "Lasted";
/// Before the offset of the clock.
pub const CLOCK: &str = "Times in";
/// What a captain chose after the toss.
#[must_use]
pub const fn chosen(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "to serve",
        Choice::Receive => "to receive",
        Choice::Left => "the left side",
        Choice::Right => "the right side",
    }
}

/// Who won the toss, and what was chosen.
#[must_use]
pub fn won_toss(name: &str, choice: Choice) -> String {
    format!("Toss won by {name}, who chose {}", chosen(choice))
}

/// Which side of the first referee a team has at the start of a set.
#[must_use]
pub const fn side(left: bool) -> &'static str {
    if left {
        "left"
    } else {
        "right"
    }
}
/// Behind a captain's number, short and long.
pub const CAPTAIN: (&str, &str) = ("C", "captain");
/// Behind a libero's number, short and long.
pub const LIBERO: (&str, &str) = ("L", "libero");

/// Whether a team serves first: the sign by custom, and its meaning.
#[must_use]
pub const fn opens(serves: bool) -> (&'static str, &'static str) {
    if serves {
        ("S", "serves first")
    } else {
        ("R", "receives first")
    }
}

/// The winner and the sets.
#[must_use]
pub fn won_by(name: &str, sets: ByTeam<u8>, winner: Team) -> String {
    format!("{name} won {}:{}", sets[winner], sets[winner.other()])
}

/// How a set or match was decided, where not by play.
#[must_use]
pub fn how(how: DecidedBy) -> Option<&'static str> {
    match how {
        DecidedBy::Played => None,
        DecidedBy::Incomplete => Some("incomplete team"),
        DecidedBy::Default => Some("default"),
        DecidedBy::Joined => Some("before this record began"),
        DecidedBy::Unregistered => Some("player not on the list"),
    }
}

/// Over the block of a set.
#[must_use]
pub fn set_heading(number: u8) -> String {
    format!("Set {number}")
}

/// When a set was played and how long.
#[must_use]
pub fn times(began: Option<&str>, ended: Option<&str>, minutes: Option<i64>) -> Vec<String> {
    let clock = match (began, ended) {
        (Some(began), Some(ended)) => Some(format!("{began}\u{2013}{ended}")),
        (Some(began), None) => Some(format!("from {began}")),
        (None, _) => None,
    };
    let minutes = minutes.map(|minutes| format!("{minutes} min"));
    clock.into_iter().chain(minutes).collect()
}

/// From when on, and from what score, a set was kept that this record took over.
#[must_use]
pub fn kept_from(set: &SetSheet, time: impl Fn(Option<i64>) -> Option<String>) -> Option<String> {
    let (at, score) = set.taken_over?;
    Some(match time(at) {
        Some(at) => format!("recorded from {at} at {}", score.marked()),
        None => format!("recorded from {}", score.marked()),
    })
}

/// How long a match lasted.
#[must_use]
pub fn lasted(minutes: i64) -> String {
    format!("{} h {:02} min", minutes / 60, minutes % 60)
}

/// When the teams changed courts within a set.
#[must_use]
pub fn courts_changed(at: Score) -> String {
    format!("courts changed at {}", at.marked())
}

/// A score, the own team's points first.
#[must_use]
pub fn own_first(score: Score, team: Team) -> String {
    format!("{}:{}", score[team], score[team.other()])
}

/// Who comes for whom.
#[must_use]
pub fn change(out: Shirt, into: Shirt) -> String {
    format!("{into} for {out}")
}

/// Several of them.
#[must_use]
pub fn changes(all: &[Change]) -> String {
    let all: Vec<String> = all.iter().map(|c| change(c.out, c.into)).collect();
    all.join(", ")
}

/// A libero's time on court.
#[must_use]
pub fn libero_turn(turn: &LiberoTurn, team: Team) -> String {
    let from = own_first(turn.from, team);
    let change = change(turn.change.out, turn.change.into);
    match turn.to {
        Some(to) => format!("{change} {from}\u{2013}{}", own_first(to, team)),
        None => format!("{change} {from}"),
    }
}

/// Marks an exceptional substitution.
pub const EXCEPTIONAL: &str = " E";

/// Who spoke for a team while its captain was not on court.
pub const GAME_CAPTAINS: &str = "Game captain";

/// Each of them in a set, with the score since when.
#[must_use]
pub fn game_captains(set: &SetSheet, team: Team) -> Vec<String> {
    let of = set.game_captains.iter().filter(|named| named.team == team);
    of.map(|named| format!("{} from {}", named.number, own_first(named.score, team)))
        .collect()
}

/// A line of the sanctions box.
#[must_use]
pub fn sanction(sanction: &Sanction) -> String {
    let kind = match sanction.kind {
        SanctionKind::ImproperRequest => "improper request",
        SanctionKind::DelayWarning => "delay warning",
        SanctionKind::DelayPenalty => "delay penalty",
        SanctionKind::Misconduct(Level::Warning) => "warning",
        SanctionKind::Misconduct(Level::Penalty) => "penalty",
        SanctionKind::Misconduct(Level::Expulsion) => "expulsion",
        SanctionKind::Misconduct(Level::Disqualification) => "disqualification",
    };
    let who = match &sanction.who {
        Some(Who::Player(number)) => format!(", number {number}"),
        Some(Who::Staff(role)) => format!(", {role}"),
        None => String::new(),
    };
    format!("{kind}{who}")
}

/// Where a remark or a sanction belongs.
#[must_use]
pub fn at(set: u8, at: Score) -> String {
    format!("Set {set}, {}:", at.marked())
}

/// Name of a service round for whoever listens.
#[must_use]
pub fn round(server: Option<Shirt>, total: u16) -> String {
    match server {
        Some(server) => format!("Number {server} served until {total}"),
        None => format!("final score {total}"),
    }
}

/// Name of the running score for whoever listens.
#[must_use]
pub fn running(name: &str, last: u16) -> String {
    format!("{name}: {last} points")
}

/// How long something took: seconds below a minute, minutes below an hour, then hours and minutes.
#[must_use]
pub fn span(seconds: i64) -> String {
    match (seconds / 3600, seconds / 60 % 60) {
        (0, 0) => format!("{seconds} s"),
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

/// What is doubtful about the time of an entry, as a remark and in the log.
#[must_use]
pub fn clock_doubt(doubt: ClockDoubt) -> String {
    match doubt {
        ClockDoubt::Back { seconds } => format!(
            "The clock of the phone was set back by {} before this entry. The order of the entries is \
             right.",
            span(seconds)
        ),
        ClockDoubt::Forward { seconds } => format!(
            "By the clock of the phone, {} passed before this entry during the set. The clock may have \
             been set forward.",
            span(seconds)
        ),
    }
}
