//! The words of the score sheet.

use crate::audit;
use crate::score_sheet::*;
use game::entry::Change;
use game::{Choice, DecidedBy, Level, Sanction, SanctionKind, Who};
use record::{spaced, Broken, Seal};
use reports::{ClockDoubt, LiberoTurn, SealBox, SetSheet, Sheet};
use rules::{ByTeam, Score, Shirt, Team};

/// In English.
pub static WORDS: ScoreSheetWords = ScoreSheetWords {
    practice: "Practice: nobody played this match.",
    nothing_played: "Nothing has been played yet. The sheet fills itself in.",
    result: "Result",
    set: "Set",
    minutes: "Min",
    columns: [
        ("P", "Points"),
        ("W", "Sets won"),
        ("T", "Time-outs"),
        ("S", "Substitutions"),
    ],
    time_outs: "Time-outs",
    none: "none",
    substitutions: "Substitutions",
    liberos: "Libero replacements",
    place_columns: [
        "Place",
        "Starts",
        "Comes in, at",
        "Total when the service ended",
    ],
    no_turn: "no first turn",
    running_score: "Running score",
    total: "Total",
    sanctions: "Sanctions",
    remarks: "Remarks",
    signatures: "Signatures",
    players: "Players",
    key_result:
        "P points, W sets won, T time-outs, S substitutions (with exceptional ones). S or R \
         beside a team: serves or receives first.",
    key_rounds:
        "Totals and scores at time-outs, substitutions and libero replacements show own points \
         first. Every other score has the letters of the teams.",
    key_rounds_no_libero:
        "Totals and scores at time-outs and substitutions show own points first. Every other \
         score has the letters of the teams.",
    key_places:
        "Ringed total: end of the set, dashed if it was won on the other team's service. Small \
         number: who served, if not the starter. Cross: no first turn, because the team \
         received.",
    key_entered: "Ringed number: the starter came back for that substitute.",
    key_exceptional: "E: exceptional substitution.",
    key_penalty: "Boxed point: for a penalty or a fault found late.",
    key_cancelled: "Crossed-out point: cancelled.",
    second_page: "page 2",
    not_over: "The match is not over.",
    level_end: "The match ended level.",
    signer,
    signed_before: "Before the match",
    signed_after: "After the match",
    not_signed: "Not signed after the match in the record.",
    sign_open: "not signed",
    signed_by_tap: "signed",
    signed_another_result: "signed another result",
    drawn: "drawn signature",
    seal_label: "Seal",
    seal_shows:
        "Compare this code with the one that was written down or read out at the time. If they \
         are the same, no entry before it was changed since. The code does not show who sealed \
         the record, or that what was entered is true.",
    changed: "This record was changed after it was written",
    broken,
    seal,
    left_open,
    competition: "Competition",
    division: "Division",
    match_no: "Match",
    venue: "Hall",
    court: "Court",
    scheduled: "Scheduled",
    date: "Date",
    began: "Start",
    ended: "End",
    lasted_label: "Lasted",
    clock: "Times in",
    chosen,
    won_toss,
    side,
    captain: ("C", "captain"),
    libero: ("L", "libero"),
    opens,
    won_by,
    how,
    set_heading,
    times,
    kept_from,
    lasted,
    courts_changed,
    own_first,
    change,
    changes,
    libero_turn,
    exceptional: " E",
    game_captains_label: "Game captain",
    game_captains,
    sanction,
    at,
    round,
    running,
    days,
    clock_doubt,
};

fn signer(role: &str) -> String {
    const KNOWN: [(&str, &str); 7] = [
        ("captain A", "Captain A"),
        ("captain B", "Captain B"),
        ("coach A", "Coach A"),
        ("coach B", "Coach B"),
        ("scorer", "Scorer"),
        ("second referee", "Second referee"),
        ("first referee", "First referee"),
    ];
    let known = KNOWN.iter().find(|known| same_role(role, known.0));
    known.map_or_else(|| role.replace('_', " "), |known| known.1.to_owned())
}

fn broken(broken: &[Broken]) -> Vec<String> {
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

fn seal(of: &SealBox, last: &Seal, at: Option<&str>) -> String {
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

fn left_open(sheet: &Sheet) -> Option<String> {
    let open = &sheet.seal.left_open;
    let sentences: Vec<String> = open
        .iter()
        .map(|f| audit::finding(f, sheet.into()))
        .collect();
    (!sentences.is_empty())
        .then(|| format!("Sealed although this was open: {}", sentences.join(" ")))
}

fn chosen(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "to serve",
        Choice::Receive => "to receive",
        Choice::Left => "the left side",
        Choice::Right => "the right side",
    }
}

fn won_toss(name: &str, choice: Choice) -> String {
    format!("Toss won by {name}, who chose {}", chosen(choice))
}

fn side(left: bool) -> &'static str {
    if left {
        "left"
    } else {
        "right"
    }
}

fn opens(serves: bool) -> (&'static str, &'static str) {
    if serves {
        ("S", "serves first")
    } else {
        ("R", "receives first")
    }
}

fn won_by(name: &str, sets: ByTeam<u8>, winner: Team) -> String {
    format!("{name} won {}:{}", sets[winner], sets[winner.other()])
}

fn how(how: DecidedBy) -> Option<&'static str> {
    match how {
        DecidedBy::Played => None,
        DecidedBy::Incomplete => Some("incomplete team"),
        DecidedBy::Default => Some("default"),
        DecidedBy::Joined => Some("before this record began"),
        DecidedBy::Unregistered => Some("player not on the list"),
    }
}

fn set_heading(number: u8) -> String {
    format!("Set {number}")
}

fn times(began: Option<&str>, ended: Option<&str>, minutes: Option<i64>) -> Vec<String> {
    let clock = match (began, ended) {
        (Some(began), Some(ended)) => Some(format!("{began}\u{2013}{ended}")),
        (Some(began), None) => Some(format!("from {began}")),
        (None, _) => None,
    };
    let minutes = minutes.map(|minutes| format!("{minutes} min"));
    clock.into_iter().chain(minutes).collect()
}

fn kept_from(set: &SetSheet, time: &dyn Fn(Option<i64>) -> Option<String>) -> Option<String> {
    let (at, score) = set.taken_over?;
    Some(match time(at) {
        Some(at) => format!("recorded from {at} at {}", score.marked()),
        None => format!("recorded from {}", score.marked()),
    })
}

fn lasted(minutes: i64) -> String {
    format!("{} h {:02} min", minutes / 60, minutes % 60)
}

fn courts_changed(at: Score) -> String {
    format!("courts changed at {}", at.marked())
}

fn own_first(score: Score, team: Team) -> String {
    format!("{}:{}", score[team], score[team.other()])
}

fn change(out: Shirt, into: Shirt) -> String {
    format!("{into} for {out}")
}

fn changes(all: &[Change]) -> String {
    let all: Vec<String> = all.iter().map(|c| change(c.out, c.into)).collect();
    all.join(", ")
}

fn libero_turn(turn: &LiberoTurn, team: Team) -> String {
    let from = own_first(turn.from, team);
    let change = change(turn.change.out, turn.change.into);
    match turn.to {
        Some(to) => format!("{change} {from}\u{2013}{}", own_first(to, team)),
        None => format!("{change} {from}"),
    }
}

fn game_captains(set: &SetSheet, team: Team) -> Vec<String> {
    let of = set.game_captains.iter().filter(|named| named.team == team);
    of.map(|named| format!("{} from {}", named.number, own_first(named.score, team)))
        .collect()
}

fn sanction(sanction: &Sanction) -> String {
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

fn at(set: u8, at: Score) -> String {
    format!("Set {set}, {}:", at.marked())
}

fn round(server: Option<Shirt>, total: u16) -> String {
    match server {
        Some(server) => format!("Number {server} served until {total}"),
        None => format!("final score {total}"),
    }
}

fn running(name: &str, last: u16) -> String {
    format!("{name}: {last} points")
}

fn days(count: i64) -> String {
    format!("{count} days")
}

fn clock_doubt(doubt: ClockDoubt) -> String {
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
