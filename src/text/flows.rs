//! The words of what happens beside the rallies: hurt players, faults found late, conduct, teams that
//! are short, interruptions.

use super::team_name;
use app::delaying::Delaying;
use game::entry::{Fault, Level, LiberoWhy, Scope, SeenBy, Who};
use game::{Kind, State, RECOVERY_SECONDS};
use rules::{Shirt, Team};

// ---- Somebody is hurt.

/// The panel, and the button that opens it.
pub const HURT: &str = "Somebody hurt";
/// Whose player.
pub const HURT_TEAM: &str = "Which team's player?";
/// Which one.
pub const HURT_WHO: &str = "Which number? (optional)";
/// The number is not needed.
pub const NUMBER_LATER: &str = "Without a number";
/// Somebody else: an official, a spectator.
pub const NOT_A_PLAYER: &str = "Not a player";
/// What comes first; careful, and for an adult to take over.
pub const CARE_FIRST: [&str; 3] = [super::CARE_STOP, super::CARE_NO_DIAGNOSIS, super::CARE_HEAD];
/// What comes before anybody plays on.
pub const CARE_RETURN: [&str; 2] = [super::CARE_HEAD, super::CARE_NOT_REPLACED];
/// To the pages of the book about it.
pub const CARE_READ: &str = "Read about safety";
/// The legend.
pub const CARE_THEN: &str = "When the adult in charge has decided";
/// The player goes on.
pub const PLAYS_ON: &str = "The adult in charge lets the player continue: nothing to record";
/// A libero comes in for a hurt player, or gives way (19.3).
pub const LIBERO_WAY: &str =
    "This is a libero replacement, not a substitution. The player may come back after a completed rally.";
/// Recovery time (17.1.2).
#[must_use]
pub fn recovery_way() -> String {
    format!(
        "Nobody can come in. The player gets {} minutes to recover, once in the match. Without recovery \
         the team is incomplete.",
        RECOVERY_SECONDS / 60
    )
}
/// Somebody who does not play was hurt, and play goes on.
pub const GOES_ON: &str = "Play continues: nothing to record";
/// Who takes an official's place (Official Volleyball Rules 2025-2028, 24.2.1 and 26.2.2).
pub const OFFICIAL_HURT: &str =
    "If the first referee cannot continue, the second referee takes over. Write in a remark who was hurt \
     and who took over.";
/// Nobody can come in.
pub const NOBODY_CAN_COME: &str = "By the rules, nobody can come in for this player.";
/// Only the state of the court knows who could come.
pub const CARE_NO_NUMBER: &str =
    "To replace the player, tap \u{201c}Sub\u{201d} below the team's half.";
/// Starts it.
#[must_use]
pub fn recovery() -> String {
    format!("{} minutes to recover", RECOVERY_SECONDS / 60)
}
/// They did not suffice, or were used.
pub const CANNOT_GO_ON: &str = "The team is incomplete";

/// The panel about one player.
#[must_use]
pub fn care_title(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name}, number {number} is hurt"),
        None => format!("{name}: a player is hurt"),
    }
}

/// One way on for a hurt player.
#[must_use]
pub fn way_on(kind: &Kind) -> String {
    match kind {
        Kind::Substitution { changes, .. } => {
            let all: Vec<String> = changes.iter().map(super::one_change).collect();
            all.join(", ")
        }
        Kind::LiberoReplacement { change, .. } => super::one_change(change),
        Kind::Recovery { .. } => recovery(),
        Kind::NewLibero { number, .. } => format!("{number} becomes the libero"),
        _ => String::new(),
    }
}

/// A shirt.
#[must_use]
pub fn number(number: Shirt) -> String {
    format!("Number {number}")
}

// ---- More about a team.

/// While no set is on court.
pub const ASIDE: &str = "What else happened";
/// The legend.
pub const HAPPENED: &str = "What happened?";
/// A request that held play up.
pub const REQUEST_DELAY: &str = "Delaying request";
/// Any other delay.
pub const OTHER_DELAY: &str = "Other delay";
/// What tells the three apart (Official Volleyball Rules 2025-2028, 15.11 and 16.1).
pub const REQUESTS_MORE: &str =
    "A request that cannot be granted but does not delay play is improper. A team's first one in the \
     match is only noted. A request that delays play is a delay.";
/// What happened.
#[must_use]
pub const fn delaying(what: Delaying) -> &'static str {
    match what {
        Delaying::Improper => super::IMPROPER,
        Delaying::Request => REQUEST_DELAY,
        Delaying::Other => OTHER_DELAY,
        Delaying::LateReplacement => LATE_REPLACEMENT,
    }
}

/// What counts as that (15.11.1, 16.1).
#[must_use]
pub const fn delay_means(what: Delaying) -> &'static str {
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

/// The other half of the judgement, one tap away.
#[must_use]
pub const fn delay_instead(instead: Delaying) -> &'static str {
    match instead {
        Delaying::Improper => "It did not delay play: improper request",
        Delaying::Request | Delaying::Other | Delaying::LateReplacement => {
            "It delayed play: a delay"
        }
    }
}

/// The panel, and the button that opens it.
pub const LATE_REPLACEMENT: &str = "Late libero replacement";
/// The panel, and the button that opens it.
pub const CONDUCT: &str = "Misconduct";
/// The panel, and the button that opens it.
pub const LATE: &str = "Fault found late";
/// The panel, and the button that opens it.
pub const NEW_LIBERO: &str = "New libero";
/// The panel, and the button that opens it.
pub const SHORT: &str = "Incomplete or default";

/// A panel about a team.
#[must_use]
pub fn panel_title(what: &str, name: &str) -> String {
    format!("{what}, {name}")
}

// ---- Misconduct.

/// The legend.
pub const CONDUCT_WHO: &str = "Who?";
/// The team has had nothing.
pub const LADDER_CLEAR: &str = "No sanction so far in this match.";
/// Who decides (Official Volleyball Rules 2025-2028, 21.3 and 23.3.2.2).
pub const FIRST_REFEREE_DECIDES: &str = "The first referee decides.";
/// Back to the people.
pub const SOMEBODY_ELSE: &str = "Somebody else";
/// The lightest level that the ladder leaves open.
pub const NEXT_STEP: &str = "next step";

/// What the team has had so far, one line each.
#[must_use]
pub fn ladder(state: &State, team: Team) -> Vec<String> {
    state
        .team(team)
        .conduct
        .iter()
        .map(|(who, level)| format!("{}: {}", super::level(*level), person(who)))
        .collect()
}

/// A person, in a sentence.
#[must_use]
pub fn person(who: &Who) -> String {
    match who {
        Who::Player(number) => format!("number {number}"),
        Who::Staff(role) => role.clone(),
    }
}

/// What one person has had.
#[must_use]
pub fn had(level: Option<Level>) -> String {
    match level {
        Some(level) => format!("So far: {}.", super::level(level)),
        None => "No sanction so far.".into(),
    }
}

/// The button that enters it.
#[must_use]
pub fn record_sanction(level: Level, who: &Who) -> String {
    format!("{}, {}", super::level(level), person(who))
}

// ---- A fault found late.

/// The legend.
pub const LATE_WHAT: &str = "What was wrong?";
/// The legend.
pub const LATE_SINCE: &str = "Since which score?";
/// No moment.
pub const LATE_UNKNOWN: &str = "Nobody knows";
/// The legend.
pub const LATE_FOUND: &str = "When was it found?";
/// The rally was stopped.
pub const FOUND_RALLY: &str = "Play was stopped";
/// The rally had ended.
pub const FOUND_AFTER: &str = "The rally was over";
/// The legend.
pub const LATE_PLACES: &str =
    "Set the right places now. Tap two places to swap them, or a place and a number from the bench.";
/// Opens them.
pub const SET_PLACES: &str = "Correct the places";
/// Leaves them as recorded.
pub const KEEP_PLACES: &str = "Keep the places";
/// No set that could be put right.
pub const LATE_NOTHING: &str = "There is no set to correct.";
/// The legend, for a player who was never on the list.
pub const LATE_SET: &str = "In which set did it begin?";
/// Enters it.
pub const LATE_RECORD: &str = "Record the fault";

/// A kind of fault.
#[must_use]
pub const fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::Rotation => "Wrong server",
        Fault::IllegalSubstitution => "Illegal substitution",
        Fault::IllegalLibero => "Illegal libero",
        Fault::WrongLineUp => "Wrong line-up",
        Fault::UnregisteredPlayer => "Not on the list",
    }
}

/// A set.
#[must_use]
pub fn set_number(number: u8) -> String {
    format!("Set {number}")
}

/// A moment on the running score.
#[must_use]
pub fn since_score(score: &str) -> String {
    format!("Since {score}")
}

/// A place of the order.
#[must_use]
pub fn place_label(place: usize, number: Shirt) -> String {
    format!("Place {place}: {number}")
}

// ---- A new libero.

/// The legend.
pub const LIBERO_WHY: &str = "Why?";
/// The legend.
pub const LIBERO_OLD: &str = "Who stops playing as libero?";
/// The legend.
pub const LIBERO_NEW: &str = "Who becomes the libero?";
/// None can be named.
pub const NO_NEW_LIBERO: &str =
    "No new libero can be named now. There is none while a libero can still play, and nobody on court can \
     become one.";

/// The button that enters it.
#[must_use]
pub fn name_libero(number: Shirt) -> String {
    format!("{number} is the libero now")
}

/// Why there is a new one.
#[must_use]
pub fn libero_why_button(why: LiberoWhy) -> &'static str {
    match why {
        LiberoWhy::Unable => "Injured or ill",
        LiberoWhy::Declared => "Declared by the coach",
    }
}

// ---- A team cannot play on.

/// Above the choices.
pub const SHORT_MORE: &str =
    "This ends the set or the match. The regulations of your competition count \
    first. Ask the organiser if you can.";

/// A choice.
#[must_use]
pub const fn short_choice(scope: Option<Scope>) -> &'static str {
    match scope {
        Some(Scope::Set) => "Incomplete, this set",
        Some(Scope::Match) => "Incomplete, the match",
        None => "Not there or refuses",
    }
}

/// The button that enters it.
#[must_use]
pub fn record_short(scope: Option<Scope>, name: &str) -> String {
    match scope {
        Some(Scope::Set) => format!("{name} lose this set"),
        Some(Scope::Match) => format!("{name} lose the match, incomplete"),
        None => format!("{name} lose the match by default"),
    }
}

// ---- Interruptions.

/// The field.
pub const SUSPEND_WHY: &str = "Why? (optional)";
/// Reasons on offer, each a plain word for the sheet.
pub const SUSPEND_WHYS: [&str; 4] = ["Light", "Floor or net", "Hall alarm", "Crowd"];
/// Enters it.
pub const SUSPEND_NOW: &str = "Interrupt play now";
/// Told before it is chosen (Official Volleyball Rules 2025-2028, 17.3.2).
pub const RESUME_MORE: &str =
    "On this court, play continues as it stands. On another court, this set is played again from 0:0.";
/// Enters it.
pub const RESUME_OTHER_YES: &str = "Play this set again on the other court";

// ---- Who did it.

/// The legend.
pub const WHO_DID: &str = "Who? (optional)";

/// A number of that legend.
#[must_use]
pub fn did_it(number: Shirt) -> String {
    format!("It was number {number}")
}

/// The legend.
pub const WHO_SAW: &str = "Who showed it to the first referee? (optional)";

/// Somebody of the team of officials.
#[must_use]
pub const fn seen_by(who: SeenBy) -> &'static str {
    match who {
        SeenBy::SecondReferee => "Second referee",
        SeenBy::LineJudge => "Line judge",
        SeenBy::Scorer => "Scorer",
    }
}

// ---- Taking back.

/// The button of one rally in the list, and what it opens.
pub const REASON: &str = "Reason";

/// The same for whoever listens.
#[must_use]
pub fn reason_of(n: u32, words: &str) -> String {
    format!("Reason for entry {n}, {words}")
}

/// The field.
pub const STRIKE_WHY: &str = "Why? (optional)";

// ---- A tally grows.

/// The menu and the panel.
pub const NAME_TEAMS: &str = "Name the teams";
/// Enters them.
pub const NAMES_RECORD: &str = "Save names";
/// The menu and the panel.
pub const GROW: &str = "Make it a full match";
/// What it does.
pub const GROW_MORE: &str =
    "Every point stays. Before the next set, the app asks for team lists and line-ups.";

/// The label of a name.
#[must_use]
pub fn name_of(team: Team) -> String {
    format!("Team {team}")
}

/// The button that enters the rules.
#[must_use]
pub fn grow_to(preset: &str) -> String {
    format!("Play by: {preset}")
}

// ---- At a glance.

/// Only the court.
pub const GLANCE: &str = "Large court";
/// All of it again.
pub const WHOLE: &str = "All buttons";
/// Against pockets.
pub const LOCK: &str = "Lock";
/// How it opens.
pub const LOCKED: &str = "Locked. Press 1, then 2.";
/// The first corner.
pub const CORNER_1: &str = "Unlock, corner 1";
/// The second corner.
pub const CORNER_2: &str = "Unlock, corner 2";

// ---- The time for the service.

/// The button of the first referee's whistle.
pub const WHISTLE: &str = "Whistle: start";

/// The switch, with how it stands.
#[must_use]
pub fn service_clock(on: bool, seconds: u16) -> String {
    let how = if on { "on" } else { "off" };
    format!("Service clock, {seconds} seconds: {how}")
}

/// The clock of the service.
#[must_use]
pub fn service_left(seconds: i64) -> String {
    if seconds == 0 {
        "Time to serve is over".into()
    } else {
        format!("{seconds} s to serve")
    }
}

/// Both teams' names on one line, with the points.
#[must_use]
pub fn locked_score(state: &State, left: Team) -> String {
    let points = state.score();
    format!(
        "{} {} : {} {}",
        team_name(state, left),
        points[left],
        points[left.other()],
        team_name(state, left.other())
    )
}
