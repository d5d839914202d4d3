//! The words of the screens before a match and between sets, in one place.
//!
//! A second language is a second file like this one.

pub mod briefing;
pub mod library;

use super::before::Field;
use crate::device::Face;
use crate::game::entry::{Player, TeamList};
use crate::game::{Choice, ListLack, Signer, Standing};
use crate::rules::{
    Height, Judged, NetFault, Preset, Pressure, Rules, Sets, Shirt, Step, SubstitutionPolicy,
    Timing, Unit, WarmUp, WarmUpStyle,
};
use crate::sheet::words::chosen;

// ---- Number pad and line-up court.

/// Name of the field that shows the digits.
pub const SHIRT_NUMBER: &str = "Shirt number";
/// In the field while it is empty.
pub const NUMBER: &str = "Number";
/// Name of the key that takes a digit away.
pub const DELETE_DIGIT: &str = "Delete the last digit";
/// The key that takes a number over.
pub const ADD: &str = "Add";

/// Name of a place for whoever listens.
#[must_use]
pub fn place_holds(place: usize, shown: &str) -> String {
    match shown {
        "" => format!("Place {place}, empty"),
        "\u{2022}" => format!("Place {place}, covered"),
        shirt => format!("Place {place}, number {shirt}"),
    }
}

// ---- New match.

/// Above the form.
pub const ALL_CAN_WAIT: &str = "Choose the rules. Everything else can stay empty.";
/// Over the presets.
pub const RULES: &str = "Rules";
/// Over the names.
pub const TEAMS: &str = "Teams";
/// Opens the rest of the form.
pub const MORE: &str = "More: competition, hall, rules in detail";
/// Over the adjustable rules.
pub const RULES_IN_DETAIL: &str = "Rules in detail";
/// In the place of the summary.
pub const RULES_NOT_USABLE: &str = "A rule below cannot be used as it stands.";
/// The form's button.
pub const OPEN_MATCH: &str = "Open the match";
/// Where a match could not be opened.
pub const NOT_OPENED: &str = "The match could not be opened. Nothing is lost: try once more.";

/// Over the form for what was left for later.
pub const MATCH_DETAILS: &str = "Names, start, hall, rules";
/// Beside the rules of an open match.
pub const RULES_CLEAR_LINE_UPS: &str =
    "If the rules change now, line-ups that are in have to be handed in again.";
/// Keeps it.
pub const KEEP_DETAILS: &str = "Keep the changes";

/// A preset by name.
#[must_use]
pub fn preset(preset: Preset) -> &'static str {
    match preset {
        Preset::SchoolJunior => "School, juniors",
        Preset::SchoolSenior => "School, seniors",
        Preset::International => "International",
        Preset::Tally => "Points only",
    }
}

/// What a preset is for.
#[must_use]
pub fn preset_is_for(preset: Preset) -> &'static str {
    match preset {
        Preset::SchoolJunior => "Shorter, no libero",
        Preset::SchoolSenior => "Full length, one libero",
        Preset::International => "The official text",
        Preset::Tally => "No line-ups, no limits",
    }
}

/// The most important rules in a line.
#[must_use]
pub fn rules_in_short(rules: &Rules) -> String {
    let mut parts = vec![sets(rules.sets), format!("to {}", rules.set.target)];
    if matches!(rules.sets, Sets::BestOf(n) if n > 1) {
        parts.push(format!("last set to {}", rules.decider.to.target));
    }
    parts.push(match rules.time_outs.per_set {
        Some(1) => "1 time-out a set".to_owned(),
        Some(n) => format!("{n} time-outs a set"),
        None => "time-outs without limit".to_owned(),
    });
    parts.push(match rules.substitutions.per_set {
        Some(n) => format!("{n} substitutions a set"),
        None => "substitutions without limit".to_owned(),
    });
    parts.push(liberos(&rules.liberos.to_string()));
    if rules.players_on_court != 6 {
        parts.push(format!("{} players on court", rules.players_on_court));
    }
    if !rules.line_ups {
        parts.push("line-ups not kept".to_owned());
    }
    parts.push(match rules.warm_up.style {
        WarmUpStyle::Shared => format!("warm-up {} min together", rules.warm_up.minutes),
        WarmUpStyle::Separate => format!("warm-up {} min each", rules.warm_up.minutes),
    });
    parts.join(", ") + "."
}

/// A format.
#[must_use]
pub fn sets(sets: Sets) -> String {
    match sets {
        Sets::BestOf(1) => "One set".to_owned(),
        Sets::BestOf(n) => format!("Best of {n}"),
        Sets::Fixed(n) => format!("All {n} sets are played"),
    }
}

/// Label of a field.
#[must_use]
pub fn field(field: Field) -> &'static str {
    match field {
        Field::Preset => "Rules",
        Field::NameA => "Team A",
        Field::NameB => "Team B",
        Field::Time => "Planned start",
        Field::Day => "Day",
        Field::Competition => "Competition",
        Field::Division => "Division",
        Field::Hall => "Hall",
        Field::Court => "Court",
        Field::MatchNumber => "Match number",
        Field::Edition => "Edition of the rules",
        Field::Sets => "Sets",
        Field::Target => "Points that win a set",
        Field::Lead => "Points ahead",
        Field::Cap => "Limit: wins with any lead (empty: none)",
        Field::DeciderTarget => "Points that win the deciding set",
        Field::DeciderLead => "Points ahead in the deciding set",
        Field::DeciderCap => "Limit of the deciding set (empty: none)",
        Field::ChangeCourts => "Deciding set: change courts at (empty: never)",
        Field::TimeOuts => "Time-outs a set for each team (empty: no limit)",
        Field::TimeOutSeconds => "Seconds of a time-out",
        Field::Policy => "Substitutions: who for whom",
        Field::Substitutions => "Substitutions a set for each team (empty: no limit)",
        Field::Entries => "Times on court for one player in a set (empty: no limit)",
        Field::Liberos => "Liberos",
        Field::OnCourt => "Players on court",
        Field::ListMost => "Players on a team list, at most",
        Field::LowestNumber => "Lowest shirt number",
        Field::HighestNumber => "Highest shirt number",
        Field::WarmUp => "Warm-up at the net",
        Field::WarmUpMinutes => "Minutes of warm-up (each team, or together)",
        Field::Interval => "Seconds between sets",
        Field::ServiceSeconds => "Seconds for the service",
        Field::UnderNet => "Feet and hands under the net",
    }
}

/// The part of an id that names a field.
#[must_use]
pub fn field_id(field: Field) -> String {
    format!("{field:?}").to_lowercase()
}

/// A field and what is wrong with it.
#[must_use]
pub fn field_says(wrong: Field, say: &str) -> String {
    format!("{}: {say}", field(wrong))
}

/// What a number field takes.
#[must_use]
pub fn number_wanted(lowest: u16, highest: u16, may_be_empty: bool) -> String {
    if may_be_empty {
        format!("Write a whole number from {lowest} to {highest}, or leave it empty.")
    } else {
        format!("Write a whole number from {lowest} to {highest}.")
    }
}

/// A policy of substitutions, by its value in the form.
#[must_use]
pub fn policy(code: &str) -> String {
    policy_words(match code {
        "paired" => SubstitutionPolicy::Paired,
        "free" => SubstitutionPolicy::Free,
        _ => SubstitutionPolicy::SamePlace,
    })
    .to_owned()
}

fn policy_words(policy: SubstitutionPolicy) -> &'static str {
    match policy {
        SubstitutionPolicy::Paired => "A starter and one substitute, once",
        SubstitutionPolicy::SamePlace => "Always back to the same place",
        SubstitutionPolicy::Free => "Anybody for anybody",
    }
}

/// A number of liberos.
#[must_use]
pub fn liberos(code: &str) -> String {
    match code {
        "0" => "no libero".to_owned(),
        "1" => "1 libero".to_owned(),
        n => format!("{n} liberos"),
    }
}

/// How many are on court.
#[must_use]
pub fn on_court(code: &str) -> String {
    match code {
        "0" => "Line-ups are not kept".to_owned(),
        n => format!("{n} players of each team"),
    }
}

/// How the teams warm up.
#[must_use]
pub fn warm_up_style(code: &str) -> String {
    match code {
        "shared" => "Both teams together",
        _ => "One team after the other",
    }
    .to_owned()
}

/// How strict the centre line is.
#[must_use]
pub fn under_net(code: &str) -> String {
    match code {
        "junior" => "Junior: stricter",
        _ => "As in the official text",
    }
    .to_owned()
}

/// An edition of the rules.
#[must_use]
pub fn edition(code: &str) -> String {
    match code {
        "2021" => "2021\u{2013}2024",
        _ => "2025\u{2013}2028",
    }
    .to_owned()
}

// ---- The plan.

/// Before the name of the next step.
pub const NEXT: &str = "Next";
/// Opens the next step.
pub const OPEN_STEP: &str = "Open";

/// A step by name.
#[must_use]
pub fn step(step: Step) -> &'static str {
    match step {
        Step::Kit => "Own kit",
        Step::Floor => "Floor and free zone",
        Step::Net => "Net and posts",
        Step::Ball => "Ball",
        Step::FirstAid => "First aid and way out",
        Step::Briefing => "Duty team briefed",
        Step::TeamLists => "Team lists",
        Step::Captains => "Captains' meeting",
        Step::Toss => TOSS,
        Step::WarmUp => "Warm-up",
        Step::LineUps => LINE_UPS,
        Step::LastCheck => LAST_CHECK,
    }
}

/// The toss.
pub const TOSS: &str = "Toss";
/// The line-ups.
pub const LINE_UPS: &str = "Line-ups";
/// The last check.
pub const LAST_CHECK: &str = "Last check";

/// What to look at in a step. The measures are those of the FIVB Official Volleyball Rules 2025-2028
/// (rule numbers beside them); the rest is common practice, no source.
#[must_use]
pub fn look_at(step: Step) -> &'static [&'static str] {
    match step {
        Step::Kit => &[
            "Two whistles, watch, coin, pen, cards; this phone charged and silent.",
            "You are at the court at least 15 minutes before the toss, the table is set up.",
            "The competition's regulations are at hand, and somebody to ask.",
        ],
        // 1.1, 1.2.1, 1.3.1, 1.5, 1.6
        Step::Floor => &[
            "Dry, level, not slippery, nothing loose, no hole or edge; wet spots are wiped.",
            "At least 3 m free on every side of the 18 \u{d7} 9 m court and 7 m above it; walls, \
             benches, doors and other games are out of reach, or padded.",
            "You can tell the lines of this court from the others.",
            "Light enough to follow the ball; not colder than 10 \u{b0}C.",
        ],
        // 2.2 to 2.5; torn mesh, rebound: Refereeing Guidelines 2024, rule 2; padding of the posts is
        // common practice, no source.
        Step::Net => &[
            "Tight: a ball thrown into it comes back. Nothing is torn.",
            "Antennas stand 80 cm above the net at the outer edge of the side bands, one on each face \
             of the net, and are firm.",
            "Posts stand 0.5 to 1 m outside the side lines, firm and padded; no wires or hooks stick \
             out.",
        ],
        // 3.1, 3.2
        Step::Ball => &[
            "Round, undamaged, 65 to 67 cm around, 260 to 280 g; younger ages may have a lighter one.",
            "A spare ball of the same kind is at the table.",
        ],
        Step::FirstAid => &[
            "Which adult gives first aid today, and where are the kit and the ice?",
            "Which adult calls for help, from which telephone, and what is the address of this hall?",
            "The ways out are open and not locked; everybody knows where to meet outside.",
            "Help can reach the court: which door, which way?",
        ],
        // 5.1, 4.3, 4.5, 19.2, 5.1.2
        Step::Captains => &[
            "Who is captain? Only the captain on court speaks to the referee, and only while the ball \
             is out of play.",
            "Numbers as on the list, liberos in another colour.",
            "Nothing worn that can hurt: rings, chains and watches off or taped, no hard casts.",
            "Which adult of each team is asked when somebody is hurt?",
            "Anything this hall or competition does its own way: ceiling, near walls, warm-up.",
            "Questions? Then shake hands, and the toss.",
        ],
        // 7.3.5, 12.3; order: Refereeing Guidelines 2024, protocol.
        Step::LastCheck => &[
            "Both teams stand as on their line-up sheets; then liberos go in.",
            "Benches are seated, line judges at their corners, the scorer has raised both hands.",
            "The ball is with the server, the second referee has given you the sign.",
        ],
        Step::Briefing | Step::TeamLists | Step::Toss | Step::WarmUp | Step::LineUps => &[],
    }
}

/// How a step stands, in a word.
#[must_use]
pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Done => "done",
        Standing::Failed => "not in order",
        Standing::Running => "running",
        Standing::Open(Timing::Ahead) => "",
        Standing::Open(Timing::Due) => "due now",
        Standing::Open(Timing::Late) => "late",
    }
}

/// The scheduled start, and how far it is away.
#[must_use]
pub fn start_at(time: &str, minutes_left: i64) -> String {
    match minutes_left {
        0 => format!("Start {time}: now"),
        1..=180 => format!("Start {time}, in {minutes_left} min"),
        -180..=-1 => format!("Start was {time}, {} min ago", -minutes_left),
        _ => format!("Start {time}"),
    }
}

/// From a finished step to the next.
#[must_use]
pub fn go_on_to(next: Step) -> String {
    format!("Next: {}", step(next))
}

/// Name of the tick.
#[must_use]
pub fn tick(of: Step) -> String {
    format!("Done: {}", step(of))
}

/// Where a safety check failed.
pub const DO_NOT_START: &str = "Do not start. Speak to the coach or the organiser.";
/// Where another check failed.
pub const NOT_DONE: &str = "Not in order yet.";
/// Label of the note that clears.
pub const WHO_CLEARED_IT: &str = "Who says it is safe now, and what was done?";
/// Label of a note nobody needs.
pub const NOTE_OPTIONAL: &str = "Note (can stay empty)";
/// Label of the note of a failed check.
pub const WHAT_IS_WRONG: &str = "What is wrong? (can stay empty)";
/// Records a failed check.
pub const NOT_IN_ORDER: &str = "Not in order";
/// Records that it is in order now.
pub const CLEARED: &str = "In order now";

/// What was written when a check was cleared.
#[must_use]
pub fn cleared_by(note: &str) -> String {
    format!("In order: {note}")
}

/// Records a measure that is in order.
#[must_use]
pub fn measured(ok: bool, words: &str) -> String {
    if ok {
        format!("In order: {words}")
    } else {
        format!("Not in order: {words}")
    }
}

/// Who may clear a check.
pub const CLEARERS: [&str; 3] = ["Coach", "Organiser", "Caretaker"];

/// What is late and what is due now.
#[must_use]
pub fn due_and_late(late: &[Step], due: &[Step]) -> String {
    let list = |steps: &[Step]| {
        steps
            .iter()
            .map(|s| step(*s))
            .collect::<Vec<_>>()
            .join(", ")
    };
    let mut words = String::new();
    if !late.is_empty() {
        words = format!("Late: {}. ", list(late));
    }
    if !due.is_empty() {
        words.push_str(&format!("Due now: {}.", list(due)));
    }
    words.trim_end().to_owned()
}

/// Without a start no step has a time.
pub const NO_START: &str = "With the planned start, below under \u{201c}Names, start, hall, \
    rules\u{201d}, each step gets its time.";

// ---- Ball.

/// Label of the reading.
pub const GAUGE: &str = "What the gauge shows";
/// Name of the choice of a unit.
pub const GAUGE_UNIT: &str = "Unit of the gauge";
/// Nothing that can be read.
pub const GAUGE_FORM: &str = "Write the number as the gauge shows it, such as 0.31 or 4.4.";
/// Opens the way without a gauge.
pub const NO_GAUGE: &str = "No gauge at hand?";
/// What to do without one: common practice, no source.
pub const WITHOUT_GAUGE: [&str; 3] = [
    "Press with both thumbs: it gives a little and springs back at once, without a dent or a wrinkle.",
    "Let both captains or coaches try it and the spare ball, and take the one both agree on.",
    "Write \u{201c}no gauge\u{201d} as a note below. This is common practice; no rule says so.",
];

/// The limits of a unit.
#[must_use]
pub fn limits(unit: Unit) -> String {
    let (low, high) = unit.limits();
    format!("{} to {}", low.number(), high.number())
}

/// A pressure.
#[must_use]
pub fn pressure(pressure: Pressure) -> String {
    format!("{} {}", pressure.number(), pressure.unit.symbol())
}

/// What a reading means.
#[must_use]
pub fn judged(judged: Judged) -> &'static str {
    match judged {
        Judged::Within => "Within the limits.",
        Judged::Below => "Too soft: pump it up.",
        Judged::Above => "Too hard: let some air out.",
    }
}

/// The gauge may have another unit.
#[must_use]
pub fn meant(unit: Unit) -> String {
    format!(
        "In {} this number would be right. Look at the gauge once more.",
        unit.symbol()
    )
}

/// For the note of the check.
#[must_use]
pub fn ball_note(found: Pressure) -> String {
    let words = match found.judge() {
        Judged::Within => "",
        Judged::Below => ", too soft",
        Judged::Above => ", too hard",
    };
    format!("{}{words}", pressure(found))
}

// ---- Net.

/// Name of the choice of a height.
pub const NET_HEIGHT: &str = "Height it must have";
/// Where the height comes from.
pub const NET_AGES: &str =
    "The official text has these two heights only. Those of age groups are your \
    competition's own: ask, and type it.";
/// The choice of an own height.
pub const NET_OWN: &str = "Age group";
/// Label of the own height.
pub const NET_OWN_HEIGHT: &str = "Height in your competition, in metres";
/// Over the measures.
pub const NET_MEASURED: &str = "Measured, in metres (what you do not measure can stay empty)";
/// Labels of the measures.
pub const NET_PLACES: [&str; 3] = ["Middle", "Left side line", "Right side line"];
/// Nothing that can be read.
pub const NET_FORM: &str = "Write a height such as 2.24 or 224.";
/// Nothing wrong was found.
pub const NET_RIGHT: &str = "The net is right.";

/// A class with its height.
#[must_use]
pub fn net_class(name: &str, height: Height) -> String {
    format!("{name}: {} m", height.metres())
}

/// What is wrong with a net, in words.
#[must_use]
pub fn net_fault(fault: NetFault) -> String {
    let cm = |mm: u16| match mm % 10 {
        0 => format!("{} cm", mm / 10),
        rest => format!("{}.{rest} cm", mm / 10),
    };
    match fault {
        NetFault::MiddleLow(by) => format!("{} too low in the middle", cm(by)),
        NetFault::MiddleHigh(by) => format!("{} too high in the middle", cm(by)),
        NetFault::SidesDiffer(by) => format!("the sides differ by {}", cm(by)),
        NetFault::SideHigh(by) => {
            format!(
                "a side is {} higher than the net has to be, 2 cm are allowed",
                cm(by)
            )
        }
        NetFault::SideLow(by) => format!("a side is {} too low", cm(by)),
    }
}

/// Several of them as a sentence.
#[must_use]
pub fn net_faults(faults: &[NetFault]) -> String {
    faults
        .iter()
        .map(|f| net_fault(*f))
        .collect::<Vec<_>>()
        .join("; ")
}

/// For the note of the check: the height it must have, and what was measured.
#[must_use]
pub fn net_note(wanted: Height, measured: [Option<Height>; 3], faults: &[NetFault]) -> String {
    let shown: Vec<String> = NET_PLACES
        .iter()
        .zip(measured)
        .filter_map(|(place, height)| {
            Some(format!("{} {}", place.to_lowercase(), height?.metres()))
        })
        .collect();
    let mut words = format!("{} m", wanted.metres());
    if !shown.is_empty() {
        words.push_str(&format!(", measured: {}", shown.join(", ")));
    }
    if !faults.is_empty() {
        words.push_str(&format!("; {}", net_faults(faults)));
    }
    words
}

// ---- Briefings and captains.

/// Name of the choice.
pub const WHOM: &str = "Who is briefed";
/// How to use it.
pub const READ_ALOUD: &str = "Read it aloud, about a minute each, and tick as you go.";
/// After the last tick.
pub const ALL_BRIEFED: &str = "All are briefed";
/// Before the rules in short.
pub const WE_PLAY: &str = "We play:";

/// After the last sentence.
#[must_use]
pub fn brief_next(name: &str) -> String {
    format!("Next: {name}")
}

// ---- Signatures.

/// Heading.
pub const SIGNATURES: &str = "Signatures under the list (can be left out)";
/// What the list is after them (4.1.3).
pub const SIGNED_LIST: &str =
    "After both have signed, nobody is added to the list any more (Rule 4.1.3).";
/// Opens the field.
pub const SIGN: &str = "Sign";
/// Again.
pub const SIGN_AGAIN: &str = "Sign again";
/// The list is another one.
pub const SIGNED_BEFORE_CHANGE: &str = "signed, but the list was changed afterwards";
/// Given.
pub const SIGNED: &str = "signed";
/// Over the field.
pub const DRAW_HERE: &str = "Sign here with a finger, or leave it empty";
/// Where it stays.
pub const DRAWING_STAYS: &str =
    "The drawing stays on this phone with the match; the record says only \
    that it was signed.";
/// Takes the drawing away.
pub const CLEAR_DRAWING: &str = "Clear";
/// Makes the entry.
pub const HAS_SIGNED: &str = "Signed";
/// Leaves it.
pub const NOT_NOW: &str = "Not now";

/// Who signs.
#[must_use]
pub fn signer(signer: Signer) -> &'static str {
    match signer {
        Signer::Captain(_) => "Captain",
        Signer::Coach(_) => "Coach",
        Signer::Scorer => "Scorer",
        Signer::SecondReferee => "Second referee",
        Signer::FirstReferee => "First referee",
    }
}

/// Name of a button about a signer.
#[must_use]
pub fn about_signer(what: &str, who: &str, team: Option<&str>) -> String {
    match team {
        Some(team) => format!("{what}: {}, {team}", who.to_lowercase()),
        None => format!("{what}: {}", who.to_lowercase()),
    }
}

/// What a list lacks.
#[must_use]
pub fn list_lacks(lack: ListLack) -> String {
    match lack {
        ListLack::Captain => {
            "Nobody is marked as captain. Ask the coach, and mark the captain under \u{201c}Change \
             this list\u{201d}."
                .to_owned()
        }
        ListLack::Players { there, needed } => format!(
            "Only {there} can start, and {needed} must be on court. The team may be incomplete: ask \
             the coach."
        ),
    }
}

// ---- A team that is not there.

/// Heading.
pub const LATE_TEAM: &str = "A team is not here";
/// The rule, and whose the minutes are.
pub const LATE_RULE: &str = "A team that is not on court on time without a good reason is in default \
    (Rule 6.4.2). The official text names no minutes to wait: your competition's own regulations count. \
    Ask the organiser, and tell the team that is here.";
/// Name of the choice.
pub const WHO_IS_LATE: &str = "Which team is not here?";
/// Label of the minutes.
pub const WAIT_MINUTES: &str = "Minutes your competition waits after the planned start";
/// Below it.
pub const WAIT_USUAL: &str = "Often 10 or 15: common practice, no source.";
/// Starts the clock.
pub const START_WAITING: &str = "Start the clock";
/// Ends it.
pub const THEY_ARE_HERE: &str = "They are here";
/// When it has run out.
pub const WAITED_ENOUGH: &str =
    "The time is over. Speak to the organiser; the first referee decides.";
/// Records it.
pub const RECORD_DEFAULT: &str = "Record the default";
/// Asked before.
#[must_use]
pub fn default_question(name: &str) -> String {
    format!(
        "{name} lose the match, every set without a point. Do the regulations and the organiser say so?"
    )
}

/// For whom the clock runs.
#[must_use]
pub fn waiting_for(name: &str) -> String {
    format!("Waiting for {name}")
}

/// After a default.
pub const MATCH_IS_OVER: &str = "This match is over.";
/// To its sheet.
pub const TO_THE_SHEET: &str = "To the sheet";

// ---- Liberos before the set.

/// Heading.
pub const LIBEROS_NOW: &str = "A libero may go in now";

/// A replacement.
#[must_use]
pub fn libero_for(into: Shirt, out: Shirt) -> String {
    format!("{into} for {out}")
}

/// The same for whoever listens.
#[must_use]
pub fn libero_for_of(into: Shirt, out: Shirt, name: &str) -> String {
    format!("{name}: {into} comes in for {out}")
}

/// Which checks failed.
#[must_use]
pub fn not_in_order(items: &[String]) -> String {
    let names: Vec<&str> = items
        .iter()
        .map(|item| match Step::from_code(item) {
            Some(known) => step(known),
            None => item.as_str(),
        })
        .collect();
    format!("Not in order: {}.", names.join(", "))
}

/// After the match has begun.
pub const MATCH_HAS_BEGUN: &str = "This match has begun.";
/// To the play screen.
pub const TO_THE_COURT: &str = "To the court";
/// Said to whoever listens.
pub const IS_DONE: &str = "done";

/// A refusal with its rule.
#[must_use]
pub fn refusal(say: &str, rule: &str) -> String {
    if rule.starts_with(|c: char| c.is_ascii_digit()) {
        format!("{say} (Rule {rule})")
    } else {
        say.to_owned()
    }
}

/// From one team to the other.
#[must_use]
pub fn now_team(name: &str) -> String {
    format!("Now: {name}")
}

// ---- Toss.

/// First question.
pub const WHO_IS_HEADS: &str = "Each captain gets a side of the coin. Who gets heads?";
/// Throws it.
pub const TOSS_THE_COIN: &str = "Toss the coin";
/// The other way.
pub const TOSSED_ALREADY: &str = "We have tossed already";
/// Back to the coin.
pub const USE_THE_COIN: &str = "Use the coin here";
/// Where the browser has no chance to give.
pub const NO_COIN: &str =
    "This browser cannot toss a fair coin. Toss a real one and enter it here.";
/// Goes back to the winner's choice.
pub const CHOOSE_AGAIN: &str = "Choose again";
/// Makes the entry.
pub const RECORD_TOSS: &str = "Record the toss";
/// Changes a recorded toss.
pub const TOSS_AGAIN: &str = "Change the toss";
/// First question by hand.
pub const WHO_SERVES_FIRST: &str = "Who serves first?";
/// Second question by hand.
pub const WHO_IS_LEFT: &str = "Who starts left, seen from the stand?";
/// Third question by hand.
pub const WHO_CHOSE: &str = "Who won, and what did that captain choose? (can be left out)";
/// On the half of the team that serves.
pub const SERVES_FIRST: &str = "serves first";
/// Under the drawn court.
pub const SEEN_FROM_THE_STAND: &str = "As seen from the stand";

/// A captain to give heads to.
#[must_use]
pub fn gets_heads(name: &str) -> String {
    format!("Heads: {name}")
}

/// Whose is which side of the coin.
#[must_use]
pub fn coin_sides(heads: &str, tails: &str) -> String {
    format!("Heads: {heads}. Tails: {tails}.")
}

/// A side of the coin.
#[must_use]
pub fn face(face: Face) -> &'static str {
    match face {
        Face::Heads => "Heads",
        Face::Tails => "Tails",
    }
}

/// What the coin says.
#[must_use]
pub fn won_the_toss(winner: &str) -> String {
    format!("{winner} won the toss")
}

/// Who is asked.
#[must_use]
pub fn what_does_choose(name: &str) -> String {
    format!("What does the captain of {name} choose?")
}

/// What can be chosen (7.1.2).
#[must_use]
pub fn toss_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Serve => "Serve",
        Choice::Receive => "Receive",
        Choice::Left => "Left side",
        Choice::Right => "Right side",
    }
}

/// Who won a recorded toss, and what was chosen.
#[must_use]
pub fn won_and_chose(name: &str, choice: Choice) -> String {
    format!("{name} won the toss and chose {}.", chosen(choice))
}

/// What a captain chose.
#[must_use]
pub fn chose(name: &str, choice: Choice) -> String {
    format!("{name} chose {}.", chosen(choice))
}

// ---- Team lists.

/// Name of the choice of a team.
pub const WHOSE_LIST: &str = "Whose list";
/// Name of the pad.
pub const SHIRT_NUMBERS: &str = "Shirt numbers of the players";
/// Fills the list.
pub const ONE_TO_TWELVE: &str = "Numbers 1 to 12";
/// Name of the list.
pub const PLAYERS_ON_THE_LIST: &str = "Players on the list";
/// While nobody is marked.
pub const MARK_THE_CAPTAIN: &str = "Tap a number to mark the captain.";
/// Opens the staff.
pub const STAFF: &str = "Coach and others on the bench";
/// A mark.
pub const CAPTAIN: &str = "Captain";
/// A mark.
pub const LIBERO: &str = "Libero";
/// Takes a player off the list.
pub const REMOVE: &str = "Remove";
/// Label of a name.
pub const NAME_OPTIONAL: &str = "Name (can stay empty)";
/// Opens the editor again.
pub const CHANGE_LIST: &str = "Change this list";
/// Against the advice of the rules.
pub const WRITE_IT_ANYWAY: &str = "Write it down anyway";

/// A player by number and marks.
#[must_use]
pub fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    if player.captain {
        words.push_str(" C");
    }
    if player.libero {
        words.push_str(" L");
    }
    words
}

/// The same for whoever listens.
#[must_use]
pub fn player_in_full(player: &Player) -> String {
    let mut words = format!("Number {}", player.number);
    if let Some(name) = &player.name {
        words.push_str(", ");
        words.push_str(name);
    }
    if player.captain {
        words.push_str(", captain");
    }
    if player.libero {
        words.push_str(", libero");
    }
    words
}

/// Over the marks of one player.
#[must_use]
pub fn number_is(number: Shirt) -> String {
    format!("Number {number}")
}

/// A list that is in.
#[must_use]
pub fn list_in_short(list: &TeamList) -> String {
    let players = match list.players.len() {
        1 => "1 player".to_owned(),
        n => format!("{n} players"),
    };
    let captain = list.players.iter().find(|p| p.captain);
    let captain = match captain {
        Some(p) => format!("captain {}", p.number),
        None => "no captain marked".to_owned(),
    };
    let staff = if list.staff.is_empty() {
        String::new()
    } else {
        let roles: Vec<&str> = list.staff.iter().map(|s| s.role.as_str()).collect();
        format!(", {}", roles.join(", "))
    };
    format!("The list is in: {players}, {captain}{staff}.")
}

/// Makes the entry.
#[must_use]
pub fn hand_in_list(players: usize) -> String {
    match players {
        1 => "Hand in the list (1 player)".to_owned(),
        n => format!("Hand in the list ({n} players)"),
    }
}

/// A member of the staff.
#[must_use]
pub fn staff(role: &str) -> &'static str {
    match role {
        "coach" => "Coach",
        "assistant coach" => "Assistant coach",
        "therapist" => "Therapist",
        _ => "Doctor",
    }
}

/// Label of that person's name.
#[must_use]
pub fn staff_name(role: &str) -> String {
    format!("{}: name, can stay empty", staff(role))
}

// ---- Line-ups.

/// Name of the choice of a team.
pub const WHOSE_LINE_UP: &str = "Whose line-up";
/// Before a list is there.
pub const LIST_FIRST: &str = "The list of this team is missing. Enter it first, under Team lists.";
/// After it was handed in.
pub const LINE_UP_IS_IN: &str = "The line-up is in.";
/// A mistake of the hand that typed.
pub const TAKE_LINE_UP_BACK: &str = "Typed wrong: take it back";
/// Covers.
pub const COVER_NUMBERS: &str = "Cover numbers";
/// Uncovers.
pub const SHOW_NUMBERS: &str = "Show numbers";
/// Fills in.
pub const SAME_AS_LAST_SET: &str = "Same as last set";
/// Takes the number out of the chosen place.
pub const EMPTY_PLACE: &str = "Empty place";
/// Makes the entry.
pub const HAND_IN_LINE_UP: &str = "Hand in the line-up";

/// Where the next number goes.
#[must_use]
pub fn number_for_place(place: usize) -> String {
    format!(
        "Tap the number for place {}.",
        crate::sheet::words::roman(place)
    )
}

/// Name of a number to put in.
#[must_use]
pub fn put_in(player: &Player, placed: bool, barred: bool) -> String {
    let mut words = player_in_full(player);
    if placed {
        words.push_str(", in the line-up");
    }
    if barred {
        words.push_str(", cannot start");
    }
    words
}

// ---- Warm-up.

/// Where the warm-up is shared.
pub const BOTH_TEAMS: &str = "Both teams";
/// Starts it.
pub const START_WARM_UP: &str = "Start";
/// Ends it early.
pub const END_WARM_UP: &str = "End now";
/// It is over.
pub const WARM_UP_OVER: &str = "Warm-up is over.";
/// Once more.
pub const WARM_UP_AGAIN: &str = "Start again";

/// How it goes (7.2).
#[must_use]
pub fn warm_up_is(warm_up: WarmUp, tossed: bool) -> String {
    let minutes = warm_up.minutes;
    match (warm_up.style, tossed) {
        (WarmUpStyle::Shared, _) => format!("{minutes} minutes, both teams together."),
        (WarmUpStyle::Separate, true) => {
            format!("{minutes} minutes each. The team that serves first begins.")
        }
        (WarmUpStyle::Separate, false) => {
            format!("{minutes} minutes each. The team that serves first begins: toss before it.")
        }
    }
}

/// Name of a button of one team's warm-up.
#[must_use]
pub fn warm_up_of(words: &str, name: &str) -> String {
    format!("{words}: warm-up, {name}")
}

// ---- Last check.

/// Against a failed safety check.
pub const BEGIN_ALL_THE_SAME: &str = "Begin all the same";
/// Asked before that.
pub const BEGIN_UNSAFE: &str =
    "A safety check failed and nobody has cleared it. Somebody may get hurt. Begin all the same?";

/// The button.
#[must_use]
pub fn begin_set(set: u8) -> String {
    format!("Begin set {set}")
}

/// Who serves.
#[must_use]
pub fn serves_with(name: &str, number: Option<Shirt>) -> String {
    match number {
        Some(number) => format!("{name} serve, number {number}"),
        None => format!("{name} serve"),
    }
}
