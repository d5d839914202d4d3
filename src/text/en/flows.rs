//! The words of what happens beside the rallies: hurt players, faults found late, conduct, teams that
//! are short, interruptions.

use crate::flows::*;
use crate::team_name;
use app::delaying::Delaying;
use game::entry::{Fault, Level, LiberoWhy, Scope, SeenBy, Who};
use game::{Kind, State, RECOVERY_SECONDS};
use rules::{Shirt, Team};

/// In English.
pub static WORDS: FlowsWords = FlowsWords {
    // ---- Somebody is hurt.
    hurt: "Somebody hurt",
    hurt_team: "Which team's player?",
    hurt_who: "Which number? (optional)",
    number_later: "Without a number",
    not_a_player: "Not a player",
    care_read: "Read about safety",
    care_then: "When the adult in charge has decided",
    plays_on: "The adult in charge lets the player continue: nothing to record",
    libero_way:
        "This is a libero replacement, not a substitution. The player may come back after a \
         completed rally.",
    recovery_way,
    goes_on: "Play continues: nothing to record",
    official_hurt:
        "If the first referee cannot continue, the second referee takes over. Write in a remark \
         who was hurt and who took over.",
    nobody_can_come: "By the rules, nobody can come in for this player.",
    care_no_number: "To replace the player, tap \u{201c}Sub\u{201d} below the team's half.",
    was_hurt,
    recovery,
    cannot_go_on: "The team is incomplete",
    care_title,
    way_on,
    number,
    // ---- More about a team.
    aside: "What else happened",
    happened: "What happened?",
    request_delay: "Delaying request",
    other_delay: "Other delay",
    requests_more:
        "A request that cannot be granted but does not delay play is improper. A team's first one \
         in the match is only noted. A request that delays play is a delay.",
    delaying,
    delay_means,
    delay_instead,
    late_libero: "Late libero",
    late_replacement: "Late libero replacement",
    conduct: "Misconduct",
    late: "Fault found late",
    new_libero: "New libero",
    short: "Incomplete or default",
    panel_title,
    // ---- Misconduct.
    conduct_who: "Who?",
    ladder_clear: "No sanction so far in this match.",
    first_referee_decides: "The first referee decides.",
    somebody_else: "Somebody else",
    next_step: "next step",
    ladder,
    person,
    had,
    record_sanction,
    // ---- A fault found late.
    late_what: "What was wrong?",
    late_since: "Since which score?",
    late_unknown: "Nobody knows",
    late_found: "When was it found?",
    found_rally: "Play was stopped",
    found_after: "The rally was over",
    late_places:
        "Set the right places now. Tap two places to swap them, or a place and a number from the \
         bench.",
    set_places: "Correct the places",
    keep_places: "Keep the places",
    late_nothing: "There is no set to correct.",
    late_set: "In which set did it begin?",
    late_record: "Record the fault",
    fault,
    set_number,
    since_score,
    place_label,
    // ---- A new libero.
    libero_why: "Why?",
    libero_old: "Who stops playing as libero?",
    libero_new: "Who becomes the libero?",
    no_new_libero:
        "No new libero can be named now. There is none while a libero can still play, and nobody \
         on court can become one.",
    name_libero,
    libero_why_button,
    // ---- A team cannot play on.
    short_more:
        "This ends the set or the match. The regulations of your competition count first. Ask the \
         organiser if you can.",
    short_choice,
    record_short,
    // ---- Interruptions.
    suspend_why: "Why? (optional)",
    suspend_whys: ["Light", "Floor or net", "Hall alarm", "Crowd"],
    suspend_now: "Interrupt play now",
    resume_more:
        "On this court, play continues as it stands. On another court, this set is played again \
         from 0:0.",
    resume_other_yes: "Play this set again on the other court",
    // ---- Who did it.
    who_did: "Who? (optional)",
    did_it,
    who_saw: "Who showed it to the first referee? (optional)",
    seen_by,
    // ---- Taking back.
    reason: "Reason",
    reason_of,
    strike_why: "Why? (optional)",
    // ---- A tally grows.
    name_teams: "Name the teams",
    names_record: "Save names",
    grow: "Make it a full match",
    grow_more: "Every point stays. Before the next set, the app asks for team lists and line-ups.",
    name_of,
    grow_to,
    // ---- At a glance.
    glance: "Large court",
    whole: "All buttons",
    lock: "Lock",
    locked: "Locked. Press 1, then 2.",
    corner_1: "Unlock, corner 1",
    corner_2: "Unlock, corner 2",
    // ---- The time for the service.
    whistle: "Whistle: start",
    service_clock,
    service_left,
    locked_score,
};

fn recovery_way() -> String {
    format!(
        "Nobody can come in. The player gets {} minutes to recover, once in the match. Without recovery \
         the team is incomplete.",
        RECOVERY_SECONDS / 60
    )
}

fn was_hurt(number: Shirt) -> String {
    format!(
        "Number {number} was hurt or ill in this match. After a blow to the head nobody comes back \
         without clearance by a licensed medical person."
    )
}

fn recovery() -> String {
    format!("{} minutes to recover", RECOVERY_SECONDS / 60)
}

fn care_title(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name}, number {number} is hurt"),
        None => format!("{name}: a player is hurt"),
    }
}

fn way_on(kind: &Kind) -> String {
    match kind {
        Kind::Substitution { changes, .. } => {
            let all: Vec<String> = changes.iter().map(crate::one_change).collect();
            all.join(", ")
        }
        Kind::LiberoReplacement { change, .. } => crate::one_change(change),
        Kind::Recovery { .. } => recovery(),
        Kind::NewLibero { number, .. } => format!("{number} becomes the libero"),
        _ => String::new(),
    }
}

fn number(number: Shirt) -> String {
    format!("Number {number}")
}

fn delaying(what: Delaying) -> &'static str {
    match what {
        Delaying::Improper => crate::improper(),
        Delaying::Request => request_delay(),
        Delaying::Other => other_delay(),
        Delaying::LateReplacement => late_replacement(),
    }
}

fn delay_means(what: Delaying) -> &'static str {
    match what {
        Delaying::Improper => {
            "A request that cannot be granted but does not delay play. It was too late, one too many, the \
             second in one interruption, or made by somebody who may not ask."
        }
        Delaying::Request => {
            "A request that delayed play: the referee rejected it, or it was for an illegal substitution."
        }
        Delaying::Other => "Somebody of the team delays play. For example, the team is slow to come back \
            or slow to serve.",
        Delaying::LateReplacement => {
            "The libero came or went after the whistle and before the service hit. The replacement stands."
        }
    }
}

fn delay_instead(instead: Delaying) -> &'static str {
    match instead {
        Delaying::Improper => "It did not delay play: improper request",
        Delaying::Request | Delaying::Other | Delaying::LateReplacement => {
            "It delayed play: a delay"
        }
    }
}

fn panel_title(what: &str, name: &str) -> String {
    format!("{what}, {name}")
}

fn ladder(state: &State, team: Team) -> Vec<String> {
    state
        .team(team)
        .conduct
        .iter()
        .map(|(who, level)| format!("{}: {}", crate::level(*level), person(who)))
        .collect()
}

fn person(who: &Who) -> String {
    match who {
        Who::Player(number) => format!("number {number}"),
        Who::Staff(role) => role.clone(),
    }
}

fn had(level: Option<Level>) -> String {
    match level {
        Some(level) => format!("So far: {}.", crate::level(level)),
        None => "No sanction so far.".into(),
    }
}

fn record_sanction(level: Level, who: &Who) -> String {
    format!("{}, {}", crate::level(level), person(who))
}

fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::Rotation => "Wrong server",
        Fault::IllegalSubstitution => "Illegal substitution",
        Fault::IllegalLibero => "Illegal libero",
        Fault::WrongLineUp => "Wrong line-up",
        Fault::UnregisteredPlayer => "Not on the list",
    }
}

fn set_number(number: u8) -> String {
    format!("Set {number}")
}

fn since_score(score: &str) -> String {
    format!("Since {score}")
}

fn place_label(place: usize, number: Shirt) -> String {
    format!("Place {place}: {number}")
}

fn name_libero(number: Shirt) -> String {
    format!("{number} is the libero now")
}

fn libero_why_button(why: LiberoWhy) -> &'static str {
    match why {
        LiberoWhy::Unable => "Injured or ill",
        LiberoWhy::Declared => "Declared by the coach",
    }
}

fn short_choice(scope: Option<Scope>) -> &'static str {
    match scope {
        Some(Scope::Set) => "Incomplete, this set",
        Some(Scope::Match) => "Incomplete, the match",
        None => "Not there or refuses",
    }
}

fn record_short(scope: Option<Scope>, name: &str) -> String {
    match scope {
        Some(Scope::Set) => format!("{name} lose this set"),
        Some(Scope::Match) => format!("{name} lose the match, incomplete"),
        None => format!("{name} lose the match by default"),
    }
}

fn did_it(number: Shirt) -> String {
    format!("It was number {number}")
}

fn seen_by(who: SeenBy) -> &'static str {
    match who {
        SeenBy::SecondReferee => "Second referee",
        SeenBy::LineJudge => "Line judge",
        SeenBy::Scorer => "Scorer",
    }
}

fn reason_of(n: u32, words: &str) -> String {
    format!("Reason for entry {n}, {words}")
}

fn name_of(team: Team) -> String {
    format!("Team {team}")
}

fn grow_to(preset: &str) -> String {
    format!("Play by: {preset}")
}

fn service_clock(on: bool, seconds: u16) -> String {
    let how = if on { "on" } else { "off" };
    format!("Service clock, {seconds} seconds: {how}")
}

fn service_left(seconds: i64) -> String {
    if seconds == 0 {
        "Time to serve is over".into()
    } else {
        format!("{seconds} s to serve")
    }
}

fn locked_score(state: &State, left: Team) -> String {
    let points = state.score();
    format!(
        "{} {} : {} {}",
        team_name(state, left),
        points[left],
        points[left.other()],
        team_name(state, left.other())
    )
}
