//! The words of the court screen.

use super::team_name;
use crate::score_sheet::side;
use game::entry::{Change, ReplayWhy, Timer, Who};
use game::{Kind, Notice, Phase, Refusal, Speaker, State, Timed};
use rules::{Cause, Group, Rules, Shirt, Team, CALL_BACK_SECONDS};

/// The court, and what lies below it.
pub const COURT: &str = "Court and what happens on it";
/// The turn of the court.
pub const STAND: &str = "Stand";
/// The turn of the court.
pub const TABLE: &str = "Table";
/// The list of further things.
pub const MENU: &str = "Menu";
/// Makes an entry not count.
pub const UNDO: &str = "Undo";
/// Nothing to undo.
pub const NO_ENTRY: &str = "Nothing recorded yet";
/// A time-out.
pub const TIME_OUT: &str = "Time-out";
/// A substitution.
pub const SUBSTITUTION: &str = "Substitution";
/// The same where there is no room.
pub const SUB: &str = "Sub";
/// Anything else.
pub const MORE: &str = "More";
/// A rally that does not count.
pub const REPLAY: &str = "Replay";

/// The heading of the court screen.
#[must_use]
pub fn play_title(state: &State) -> String {
    match state.phase() {
        Phase::Preparation => "Set 1".into(),
        Phase::BetweenSets => format!("After set {}", state.set_number()),
        Phase::Playing => format!("Set {}", state.set_number()),
        Phase::Suspended => "Interrupted".into(),
        Phase::Finished => "Match over".into(),
    }
}

/// The name of a half for those who do not see it.
#[must_use]
pub fn point_pad(state: &State, team: Team, left: bool) -> String {
    format!("Point, {} side, {}", side(left), team_name(state, team))
}

/// What a half shows, for those who do not see it.
#[must_use]
pub fn half_said(
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
    let speaks = super::speaks_said(speaker);
    format!("Points {score}, sets {sets}{service}{speaks}")
}

/// Why a rally ended.
#[must_use]
pub fn cause(cause: Cause, rules: &Rules) -> String {
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

/// The question that decides which signal shows a fault of the libero.
pub const LIBERO_WHICH: &str = "What did the libero do?";

/// One answer to it, with the number of its signal.
#[must_use]
pub fn libero_did(cause: Cause) -> String {
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

/// A group of reasons.
#[must_use]
pub const fn group(group: Group) -> &'static str {
    match group {
        Group::Ball => "Ball",
        Group::Hits => "Hits",
        Group::Net => "Net",
        Group::Service => "Serve",
        Group::Positions => "Places",
    }
}

/// Something due, in one short line.
#[must_use]
pub fn notice(notice: &Notice, state: &State) -> String {
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
        Notice::GameCaptain { team } => super::game_captain_missing(state, *team),
        Notice::Question { .. } => "A question for the first referee".into(),
        Notice::CauseDropped { .. } => {
            "The point counts, the reason does not: the serving team may stand anywhere in its court".into()
        }
    }
}

/// Beside the ball and the server's number.
pub const SERVES: &str = "serves";

/// Who serves, on the line above the court while nothing is due.
#[must_use]
pub fn serving_line(state: &State) -> String {
    match state.serving() {
        Some((team, Some(number))) => format!("{} to serve: {number}", team_name(state, team)),
        Some((team, None)) => format!("{} to serve", team_name(state, team)),
        None => "Tap the half of the team that wins the rally".into(),
    }
}

/// After a point, for those who do not see it.
#[must_use]
pub fn score_news(state: &State) -> String {
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

/// A used count, with its limit.
#[must_use]
pub fn used((used, most): (u8, Option<u8>)) -> String {
    match most {
        Some(most) => format!("{used}/{most}"),
        None => used.to_string(),
    }
}

/// A team's button for those who do not see where it is.
#[must_use]
pub fn tool_label(what: &str, name: &str, (used, most): (u8, Option<u8>)) -> String {
    match most {
        Some(most) => format!("{what} {name}, {used} of {most} used"),
        None => format!("{what} {name}, {used} used"),
    }
}

/// What a count-down is for.
#[must_use]
pub fn timer(timer: &Timer, state: &State) -> String {
    let what = match timer.what {
        Timed::TimeOut => TIME_OUT,
        Timed::Recovery => "Recovery",
        Timed::Interval => INTERVAL,
        _ => "Countdown",
    };
    match timer.team {
        Some(team) => format!("{what} {}", team_name(state, team)),
        None => what.to_owned(),
    }
}

/// Ends a count-down early, or puts it away.
pub const END_COUNT_DOWN: &str = "End";
/// In the deciding set.
pub const CHANGE_COURTS: &str = "Change of courts now";
/// It was done.
pub const COURTS_CHANGED: &str = "Courts changed";

/// After the change.
#[must_use]
pub fn changed_courts(state: &State, on_left: Team) -> String {
    format!(
        "Courts changed: {} left, {} right",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

/// The reasons of a point.
#[must_use]
pub fn why_point(name: &str) -> String {
    format!("Why the point for {name}?")
}

/// The groups of reasons.
pub const GROUPS: &str = "Groups of reasons";

/// A reason that cannot be.
#[must_use]
pub const fn cause_does_not_fit(server_lost: bool) -> &'static str {
    if server_lost {
        "The serving team lost this rally, so that cannot be the reason."
    } else {
        "The serving team won this rally, so that cannot be the reason."
    }
}

/// The card.
pub const SIGNAL: &str = "Signal";
/// Opens the reasons again.
pub const OTHER_REASON: &str = "Other reason";
/// To the page on which such a decision can be tried.
pub const HOW_TO_DECIDE: &str = "How to decide it";

/// The panel.
pub const REPLAY_TITLE: &str = "Replay the rally";
/// Why a team has no time-out now, in the place of the word.
#[must_use]
pub const fn no_time_out(why: &Refusal) -> &'static str {
    match why {
        Refusal::NoTimeOutLeft { .. } => "None left",
        Refusal::AfterReplay | Refusal::RequestBarred { .. } => "Not yet",
        _ => "Not now",
    }
}
/// What the rules name instead of what was asked for.
#[must_use]
pub const fn right_act(act: &Kind) -> &'static str {
    match act {
        Kind::ImproperRequest { .. } => "Reject it: improper request (15.11.1)",
        _ => "Reject it: delay (16.1.3)",
    }
}
/// A tap on the court while something is open below it.
pub const CLOSE_FIRST: &str = "No point: close the open panel first";
/// The same while a player is asked for.
pub const TAP_A_PLAYER: &str = "No point: tap the player you mean";
/// A second tap was held back.
pub const HELD_NEWS: &str = "Two taps at once. Did you mean both?";
/// Points that came sooner than a rally can be played.
#[must_use]
pub fn held_question(name: &str, more: usize, instead: bool) -> String {
    match (more, instead) {
        (1, true) => format!("Two taps at once. Also a point for {name}?"),
        (1, false) => format!("Two taps at once. Two points for {name}?"),
        // They may have come after several points.
        _ => format!("{more} taps came too soon after a point. Do they count as points?"),
    }
}
/// They are.
#[must_use]
pub fn held_yes(more: usize) -> String {
    match more {
        1 => "Yes, 2 points".to_owned(),
        _ => "Yes, all of them".to_owned(),
    }
}
/// They are not.
#[must_use]
pub fn held_no(name: &str, more: usize) -> String {
    match more {
        1 => format!("One point, {name}"),
        _ => "No, none of them".to_owned(),
    }
}
/// The second tap was to put the first one right.
#[must_use]
pub fn held_only(name: &str) -> String {
    format!("One point, {name}")
}
/// The line of the menu.
#[must_use]
pub const fn quick_taps(at_once: bool) -> &'static str {
    if at_once {
        "Two quick taps: both count at once"
    } else {
        "Two quick taps: ask first"
    }
}
/// Which one is meant.
pub const REPLAY_WHICH: &str = "Which rally?";
/// The last one, which was entered as a point.
#[must_use]
pub fn replay_last(score: &str) -> String {
    format!("This rally ({score}): its point is cancelled")
}
/// One that nobody has a point for yet.
pub const REPLAY_NEW: &str = "A new rally: no point was entered";
/// Why it does not count.
pub const REPLAY_WHY: &str = "Why?";
/// The score as it stands on the screen, the left half first.
#[must_use]
pub fn score_from(state: &State, left: Team) -> String {
    let score = state.score();
    format!("{}:{}", score[left], score[left.other()])
}
/// What it does.
pub const REPLAY_MORE: &str = "No point. The same player serves again.";
/// One reason for a replay.
#[must_use]
pub fn replay_button(why: ReplayWhy) -> String {
    let words = super::replay_why(why);
    let mut chars = words.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + chars.as_str()
}

/// The panel.
#[must_use]
pub fn substitution_title(name: &str) -> String {
    format!("Substitution, {name}")
}

/// Enters the request.
#[must_use]
pub fn record_substitutions(count: usize) -> String {
    if count == 1 {
        "Record the substitution".into()
    } else {
        format!("Record {count} substitutions")
    }
}

/// The legend.
pub const SUBSTITUTION_REASON: &str = "Why";
/// The legend.
pub const WHO_GOES: &str = "Who goes out?";
/// A set was begun without them, so nobody is followed.
pub const NO_LINE_UP: &str =
    "This team has no line-up, so you cannot choose players here. Write the substitution as a remark, \
     under \u{201c}More\u{201d}.";

/// A number that goes.
#[must_use]
pub fn goes_out(number: Shirt) -> String {
    format!("{number} goes out")
}

/// A number that comes.
#[must_use]
pub fn comes_in(number: Shirt) -> String {
    format!("{number} comes in")
}

/// The legend.
#[must_use]
pub fn who_comes(out: Option<Shirt>) -> String {
    match out {
        Some(out) => format!("Who comes in for {out}?"),
        None => "Who comes in?".into(),
    }
}

/// Takes one change out of the request.
#[must_use]
pub fn drop_change(change: &Change) -> String {
    format!("Remove: {}", super::one_change(change))
}

/// The same on its button.
#[must_use]
pub fn dropped(change: &Change) -> String {
    format!("{} \u{00d7}", super::one_change(change))
}

/// While play is interrupted.
pub const STOPPED: &str = "Play is interrupted";
/// It goes on.
pub const RESUME_SAME: &str = "Resume on this court";
/// It goes on elsewhere.
pub const RESUME_OTHER: &str = "Resume on another court";
/// Interrupts it.
pub const SUSPEND: &str = "Interrupt play";
/// Before the first point of a tally.
pub const TALLY_BEGIN: &str =
    "Who serves first? Or just tap the half of the team that wins the first \
    rally.";
/// A choice.
pub const LEFT_SERVES: &str = "Left serves first";
/// A choice.
pub const RIGHT_SERVES: &str = "Right serves first";
/// The column.
pub const SET: &str = "Set";
/// The pause.
pub const INTERVAL: &str = "Interval";
/// What comes next in the pause, with so many milliseconds left of it.
#[must_use]
pub fn interval_due(left_ms: i64) -> String {
    if left_ms <= 0 {
        "Check the line-ups, then whistle for the service.".into()
    } else if left_ms <= CALL_BACK_SECONDS * 1000 {
        "Whistle now: teams onto the court.".into()
    } else {
        format!(
            "At {} whistle the teams back.",
            super::minutes(CALL_BACK_SECONDS)
        )
    }
}

/// Starts it by hand.
pub const START_INTERVAL: &str = "Start the interval";
/// The legend.
pub const OR_WITH_SERVICE: &str = "Or say who serves first";
/// The way on.
pub const TO_SHEET: &str = "To the sheet";
/// The way on.
pub const TO_REVIEW: &str = "Review";
/// The way out.
pub const EXPORT_MATCH: &str = "Export the match as a file";
/// Above the list.
pub const LOG_MORE: &str =
    "The latest entry comes first. An entry that was undone stays in the list but \
    does not count.";
/// A request that cannot be granted.
pub const IMPROPER: &str = "Improper request";
/// The legend.
pub const LIBERO: &str = "Libero";
/// None is legal.
pub const NO_LIBERO_NOW: &str = "No libero replacement is possible now.";
/// The field.
pub const REMARK: &str = "Remark for the sheet";
/// Enters it.
pub const NOTE_IT: &str = "Add remark";

/// The result of the last set.
#[must_use]
pub fn set_over(state: &State) -> String {
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

/// The result of the match.
#[must_use]
pub fn match_over(state: &State) -> String {
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

/// Where the teams go for the next set.
#[must_use]
pub fn sides_to_come(state: &State, on_left: Team) -> String {
    format!(
        "{} on the left, {} on the right.",
        team_name(state, on_left),
        team_name(state, on_left.other())
    )
}

/// Begins a set.
#[must_use]
pub fn begin_set(number: u8) -> String {
    format!("Begin set {number}")
}

/// A choice.
#[must_use]
pub fn team_serves(name: &str) -> String {
    format!("{name} to serve")
}

/// The switch.
#[must_use]
pub const fn turn_label(turned: bool) -> &'static str {
    if turned {
        "Seen from the table. Turn the court for the stand"
    } else {
        "Seen from the stand. Turn the court for the table"
    }
}

/// Before an older entry is undone.
#[must_use]
pub fn undo_question(n: u32, words: &str) -> String {
    format!("Undo entry {n}, {words}?")
}

/// The button of one line.
#[must_use]
pub fn undo_label(n: u32, words: &str) -> String {
    format!("Undo entry {n}, {words}")
}

/// A person.
#[must_use]
pub fn who(who: &Who) -> String {
    match who {
        Who::Player(number) => number.to_string(),
        Who::Staff(role) => role.clone(),
    }
}

/// The legend.
#[must_use]
pub fn level_for(person: &Who) -> String {
    match person {
        Who::Player(number) => format!("Number {number}: which level?"),
        Who::Staff(role) => format!("The {role}: which level?"),
    }
}
