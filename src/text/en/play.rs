//! The words of the court screen.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use crate::play::*;
use crate::score_sheet::side;
use crate::team_name;
use game::entry::{Change, ReplayWhy, Timer, Who};
use game::{Kind, Notice, Phase, Refusal, Speaker, State, Timed};
use rules::{Cause, Group, Rules, Shirt, Team, CALL_BACK_SECONDS};

/// In English.
pub static WORDS: PlayWords = PlayWords {
    court: "Court and what happens on it",
    stand: "Stand",
    table: "Table",
    menu: "Menu",
    undo: "Undo",
    no_entry: "Nothing recorded yet",
    undo_in_the_log: "To undo an earlier entry, open the match log.",
    time_out: "Time-out",
    substitution: "Substitution",
    sub: "Sub",
    more: "More",
    replay: "Replay",
    play_title,
    point_pad,
    half_said,
    cause,
    libero_which: "What did the libero do?",
    libero_did,
    group,
    notice,
    serves: "serves",
    serving_line,
    score_news,
    tool_label,
    timer,
    end_count_down: "End",
    change_courts: "Change of courts now",
    courts_changed: "Courts changed",
    changed_courts,
    why_point,
    groups: "Groups of reasons",
    cause_does_not_fit,
    signal_label: "Signal",
    other_reason: "Other reason",
    how_to_decide: "How to decide it",
    replay_title: "Replay the rally",
    no_time_out,
    right_act,
    close_first: "No point: close the open panel first",
    tap_a_player: "No point: tap the player you mean",
    held_news: "Two taps at once. Did you mean both?",
    held_question,
    held_yes,
    held_no,
    held_only,
    quick_taps,
    replay_which: "Which rally?",
    replay_last,
    replay_new: "A new rally: no point was entered",
    replay_why_label: "Why?",
    score_from,
    replay_more: "No point. The same player serves again.",
    replay_button,
    substitution_title,
    record_substitutions,
    substitution_reason: "Why",
    who_goes: "Who goes out?",
    who_else_goes: "Somebody else as well?",
    no_line_up:
        "This team has no line-up, so you cannot choose players here. Write the substitution as a \
         remark, under \u{201c}More\u{201d}.",
    goes_out,
    comes_in,
    who_comes,
    drop_change,
    dropped,
    stopped: "Play is interrupted",
    resume_same: "Resume on this court",
    resume_other: "Resume on another court",
    suspend: "Interrupt play",
    tally_begin: "Who serves first? Or just tap the half of the team that wins the first rally.",
    left_serves: "Left serves first",
    right_serves: "Right serves first",
    set: "Set",
    interval: "Interval",
    interval_due,
    start_interval: "Start the interval",
    or_with_service: "Or say who serves first",
    to_sheet: "To the sheet",
    to_review: "Review",
    export_match: "Export the match as a file",
    log_more:
        "The latest entry comes first. An entry that was undone stays in the list but does not \
         count.",
    improper: "Improper request",
    libero: "Libero",
    remark_label: "Remark for the sheet",
    note_it: "Add remark",
    set_over,
    match_over,
    sides_to_come,
    begin_set,
    team_serves,
    turn_label,
    undo_question,
    undo_label,
    who,
    level_for,
};

fn play_title(state: &State) -> String {
    match state.phase() {
        Phase::Preparation => "Set 1".into(),
        Phase::BetweenSets => format!("After set {}", state.set_number()),
        Phase::Playing => format!("Set {}", state.set_number()),
        Phase::Suspended => "Interrupted".into(),
        Phase::Finished => "Match over".into(),
    }
}

fn point_pad(state: &State, team: Team, left: bool) -> String {
    format!("Point, {} side, {}", side(left), team_name(state, team))
}

fn half_said(
    score: u16,
    sets: u8,
    serves: Option<Option<Shirt>>,
    speaker: Option<Speaker>,
) -> String {
    let service = match serves {
        Some(Some(number)) => format!(", {number} serves"),
        Some(None) => ", serves".to_owned(),
        None => String::new(),
    };
    let speaks = crate::speaks_said(speaker);
    format!("Points {score}, sets {sets}{service}{speaks}")
}

fn cause(cause: Cause, rules: &Rules) -> String {
    let words = match cause {
        Cause::BallIn => "Ball in",
        Cause::BallOut => "Ball out",
        Cause::BallTouched => "Ball touched",
        Cause::FourHits => "Four hits",
        Cause::DoubleContact => "Double contact",
        Cause::Catch => "Catch",
        Cause::AssistedHit => "Assisted hit",
        Cause::NetTouch => "Net touch",
        Cause::UnderNet => "Under the net",
        Cause::OverNet => "Beyond the net",
        Cause::AttackFault => "Attack fault",
        Cause::BlockFault => "Block fault",
        Cause::LiberoFault => "Libero fault",
        // 12.4.4
        Cause::ServiceTime => return format!("Over {} seconds", rules.service_seconds),
        Cause::ServiceFoot => "Foot fault",
        Cause::ServiceToss => "Not tossed",
        Cause::ServiceNet => "Service in net",
        Cause::ServiceOut => "Service out",
        Cause::Screen => "Screen",
        Cause::PositionFault => "Position fault",
        Cause::RotationFault => "Wrong server",
        Cause::OutsideCourt => "Outside court",
        Cause::Antenna => "Antenna",
        Cause::OutsideCrossing => "Outside antenna",
        Cause::ServiceWinner => "Ace",
        Cause::NotSaid => "Not said",
    };
    words.to_owned()
}

fn libero_did(cause: Cause) -> String {
    let did = if cause == Cause::BlockFault {
        "Blocked or tried to block"
    } else {
        "Attacked, or set in the front zone"
    };
    match cause.signal() {
        Some(signal) => format!("{did}: signal {}", signal.number()),
        None => did.to_owned(),
    }
}

fn group(group: Group) -> &'static str {
    match group {
        Group::Ball => "Ball",
        Group::Hits => "Hits",
        Group::Net => "Net",
        Group::Service => "Serve",
        Group::Positions => "Places",
    }
}

fn notice(notice: &Notice, state: &State) -> String {
    let name = |team: &Team| team_name(state, *team);
    match notice {
        Notice::DoNotStart { item } => {
            format!("Do not start: problem with {}", item.replace('_', " "))
        }
        Notice::TeamList { team } => format!("Team list of {} is missing", name(team)),
        Notice::Toss => "Toss".into(),
        Notice::LineUp { team } => format!("Line-up of {} is missing", name(team)),
        Notice::ChangeCourts => "Change of courts now".into(),
        Notice::SetPoint { team } => format!("Set point {}", name(team)),
        Notice::MatchPoint { team } => format!("Match point {}", name(team)),
        Notice::MustSubstitute { team, player } => {
            format!("{} {player} must leave: substitute now", name(team))
        }
        Notice::LiberoMustLeave { team, player } => {
            format!("Libero {player} of {} must leave now", name(team))
        }
        Notice::LastTimeOut { team } => format!("{}: no time-out left", name(team)),
        Notice::SubstitutionsLeft { team, left: 0 } => {
            format!("{}: no substitution left", name(team))
        }
        Notice::SubstitutionsLeft { team, left: 1 } => {
            format!("{}: 1 substitution left", name(team))
        }
        Notice::SubstitutionsLeft { team, left } => {
            format!("{}: {left} substitutions left", name(team))
        }
        Notice::GameCaptain { team } => crate::game_captain_missing(state, *team),
        Notice::Question { .. } => "A question for the first referee".into(),
        Notice::CauseDropped { .. } => {
            "The point counts, the reason does not: the serving team may stand anywhere in its court".into()
        }
    }
}

fn serving_line(state: &State) -> String {
    match state.serving() {
        Some((team, Some(number))) => format!("{} to serve: {number}", team_name(state, team)),
        Some((team, None)) => format!("{} to serve", team_name(state, team)),
        None => "Tap the half of the team that wins the rally".into(),
    }
}

fn score_news(state: &State) -> String {
    match state.phase() {
        Phase::BetweenSets => set_over(state),
        Phase::Finished => match_over(state),
        _ => {
            let score = state.score();
            let a = format!("{} {}", team_name(state, Team::A), score.a);
            let b = format!("{} {}", team_name(state, Team::B), score.b);
            format!("{a}, {b}. {}", serving_line(state))
        }
    }
}

fn tool_label(what: &str, name: &str, count: (u8, Option<u8>)) -> String {
    let (used, most) = count;
    match most {
        Some(most) => format!("{what} {name}, {used} of {most} used"),
        None => format!("{what} {name}, {used} used"),
    }
}

fn timer(timer: &Timer, state: &State) -> String {
    let what = match timer.what {
        Timed::TimeOut => time_out(),
        Timed::Recovery => "Recovery",
        Timed::Interval => interval(),
        _ => "Countdown",
    };
    match timer.team {
        Some(team) => format!("{what} {}", team_name(state, team)),
        None => what.to_owned(),
    }
}

fn changed_courts(state: &State, on_left: Team) -> String {
    format!(
        "Courts changed: {} left, {} right",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

fn why_point(name: &str) -> String {
    format!("Why the point for {name}?")
}

fn cause_does_not_fit(server_lost: bool) -> &'static str {
    if server_lost {
        "The serving team lost this rally, so that cannot be the reason."
    } else {
        "The serving team won this rally, so that cannot be the reason."
    }
}

fn no_time_out(why: &Refusal) -> &'static str {
    match why {
        Refusal::NoTimeOutLeft { .. } => "None left",
        Refusal::AfterReplay | Refusal::RequestBarred { .. } => "Not yet",
        _ => "Not now",
    }
}

fn right_act(act: &Kind) -> &'static str {
    match act {
        Kind::ImproperRequest { .. } => "Reject it: improper request (15.11.1)",
        _ => "Reject it: delay (16.1.3)",
    }
}

fn held_question(name: &str, more: usize, instead: bool) -> String {
    match (more, instead) {
        (1, true) => format!("Two taps at once. Also a point for {name}?"),
        (1, false) => format!("Two taps at once. Two points for {name}?"),
        // They may have come after several points.
        _ => format!("{more} taps came too soon after a point. Do they count as points?"),
    }
}

fn held_yes(more: usize) -> String {
    match more {
        1 => "Yes, 2 points".to_owned(),
        _ => "Yes, all of them".to_owned(),
    }
}

fn held_no(name: &str, more: usize) -> String {
    match more {
        1 => format!("One point, {name}"),
        _ => "No, none of them".to_owned(),
    }
}

fn held_only(name: &str) -> String {
    format!("One point, {name}")
}

fn quick_taps(at_once: bool) -> &'static str {
    if at_once {
        "Two quick taps: both count at once"
    } else {
        "Two quick taps: ask first"
    }
}

fn replay_last(score: &str) -> String {
    format!("This rally ({score}): its point is cancelled")
}

fn score_from(state: &State, left: Team) -> String {
    let score = state.score();
    format!("{}:{}", score[left], score[left.other()])
}

fn replay_button(why: ReplayWhy) -> String {
    let words = crate::replay_why(why);
    let mut chars = words.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + chars.as_str()
}

fn substitution_title(name: &str) -> String {
    format!("Substitution, {name}")
}

fn record_substitutions(count: usize) -> String {
    if count == 1 {
        "Record the substitution".into()
    } else {
        format!("Record {count} substitutions")
    }
}

fn goes_out(number: Shirt) -> String {
    format!("{number} goes out")
}

fn comes_in(number: Shirt) -> String {
    format!("{number} comes in")
}

fn who_comes(out: Option<Shirt>) -> String {
    match out {
        Some(out) => format!("Who comes in for {out}?"),
        None => "Who comes in?".into(),
    }
}

fn drop_change(change: &Change) -> String {
    format!("Remove: {}", crate::one_change(change))
}

fn dropped(change: &Change) -> String {
    format!("{} \u{00d7}", crate::one_change(change))
}

fn interval_due(left_ms: i64) -> String {
    if left_ms <= 0 {
        "Check the line-ups, then whistle for the service.".into()
    } else if left_ms <= CALL_BACK_SECONDS * 1000 {
        "Whistle now: teams onto the court.".into()
    } else {
        format!(
            "At {} whistle the teams back.",
            crate::minutes(CALL_BACK_SECONDS)
        )
    }
}

fn set_over(state: &State) -> String {
    state.sets().last().map_or_else(String::new, |set| {
        format!(
            "{} win set {}, {}:{}",
            team_name(state, set.winner),
            set.number,
            set.score[set.winner],
            set.score[set.winner.other()]
        )
    })
}

fn match_over(state: &State) -> String {
    let won = state.sets_won();
    match state.winner() {
        Some(team) => format!(
            "{} win {}:{}",
            team_name(state, team),
            won[team],
            won[team.other()]
        ),
        None => format!("The match ends level, {}:{}", won.a, won.b),
    }
}

fn sides_to_come(state: &State, on_left: Team) -> String {
    format!(
        "{} on the left, {} on the right.",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

fn begin_set(number: u8) -> String {
    format!("Begin set {number}")
}

fn team_serves(name: &str) -> String {
    format!("{name} to serve")
}

fn turn_label(turned: bool) -> &'static str {
    if turned {
        "Seen from the table. Turn the court for the stand"
    } else {
        "Seen from the stand. Turn the court for the table"
    }
}

fn undo_question(n: u32, words: &str) -> String {
    format!("Undo entry {n}, {words}?")
}

fn undo_label(n: u32, words: &str) -> String {
    format!("Undo entry {n}, {words}")
}

fn who(who: &Who) -> String {
    match who {
        Who::Player(number) => number.to_string(),
        Who::Staff(role) => role.clone(),
    }
}

fn level_for(person: &Who) -> String {
    match person {
        Who::Player(number) => format!("Number {number}: which level?"),
        Who::Staff(role) => format!("The {role}: which level?"),
    }
}
