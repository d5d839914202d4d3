//! Every word of the screens, in one place; a second language is a second folder like this one.

// The words say themselves what they are.
#![allow(missing_docs)]

pub mod audit;
mod captains;
pub mod command_help;
pub mod command_line;
pub mod comparison;
mod consequence;
mod corrected;
mod entry;
mod flows;
mod form;
pub mod machine;
pub mod paper;
mod play;
pub mod problem;
mod question;
mod refusal;
mod remark;
mod sanctions;
mod score;
pub mod score_sheet;
mod signals;
pub mod standings;
mod teams;

pub mod desk;
pub mod hand_over;
pub mod learn;
pub mod review;
pub mod setup;
pub mod sheet;
pub mod sheet_text;

pub use captains::*;
pub use consequence::*;
pub use corrected::*;
pub use entry::*;
pub use flows::*;
pub use form::form_problem;
pub use play::*;
pub use question::question;
pub use refusal::refusal;
pub use remark::remark;
pub use sanctions::*;
pub use score::*;
pub use signals::*;
pub use teams::Teams;

use crate::score_sheet::span;
use app::keeper::{Saved, StorageNotice};
use app::machine::{LocalTime, Offline, ReadTrouble};
use app::merge::{Damage, What};
use app::ports::{Health, Standing};
use app::snapshot::SessionNotice;
use app::summary::{Stage, Summary};
use app::theme::Theme;
use game::{isolated, Refusal, State};
use record::{Foreign, Reading};
use reports::ClockDoubt;
use rules::Team;

/// The name of the program.
pub const APP: &str = "Dutystand";
/// The way back.
pub const BACK: &str = "Back";
/// Closes a sheet of choices.
pub const CLOSE: &str = "Close";
/// Leaves everything as it is.
pub const LEAVE_IT: &str = "Cancel";
/// A sentence has been read.
pub const UNDERSTOOD: &str = "Understood";
/// While a match is read.
pub const OPENING: &str = "Opening the match …";
/// While a part of the program is loaded.
pub const LOADING: &str = "Loading …";
/// A part of the program did not come.
pub const PART_NOT_LOADED: &str =
    "This part of Dutystand could not be loaded. Check the connection, then try again. Your matches are safe.";
/// Loads it once more.
pub const TRY_AGAIN: &str = "Try again";
/// A match that is not in storage.
pub const NOT_HERE: &str = "This match is not on this phone";
/// What may have happened to it.
pub const NOT_HERE_MORE: &str = "It may have been deleted here, or recorded on another phone. \
    If you have its file, open it from the start screen.";
/// To the start screen.
pub const TO_START: &str = "To the start screen";
/// What the app is for, and for whom.
pub const LEAD: &str =
    "School and junior volleyball: on the stand, at the table, without a network.";
/// Title of a screen.
pub const NEW_MATCH: &str = "New match";
/// The way to it.
pub const REFEREE_A_MATCH: &str = "Referee a match";
/// What it is for.
pub const NEW_MATCH_MORE: &str = "Lists, toss, score and sheet";
/// The quick way.
pub const QUICK_TALLY: &str = "Keep a tally";
/// What it is for.
pub const QUICK_TALLY_MORE: &str = "Only the points";
/// Goes on with the running match.
pub const CONTINUE: &str = "Continue";
/// To the coordinator's desk.
pub const DESK: &str = "Desk";
/// To what there is to learn, and the title of its first page.
pub const LEARN: &str = "Learn";
/// What it is.
pub const LEARN_MORE: &str = "Signals, decisions, court, jobs";
/// What the signals are.
pub const SIGNALS_ARE: &str = "All hand signals";
/// Heading.
pub const SHEETS: &str = "Matches on this phone";
/// While they are read.
pub const READING: &str = "Reading …";
/// There are none.
pub const NO_SHEETS: &str = "None yet. Every match you record stays here until you delete it.";
/// Opens one.
pub const OPEN: &str = "Open";
/// Makes a file of one.
pub const EXPORT: &str = "Export";
/// Removes one.
pub const DELETE: &str = "Delete";
/// Heading.
pub const IMPORT: &str = "Import";
/// The field.
pub const IMPORT_CHOOSE: &str = "Open a file";
/// To the screen that takes a record in by camera, and its title.
pub const RECEIVE: &str = "Scan a match";
/// Title of a screen.
pub const HAND_OVER: &str = "Share";
/// What came by camera and has no file name.
pub const THE_RECORD: &str = "The record";
/// Heading.
pub const THIS_PHONE: &str = "This phone";
/// Legend.
pub const THEME: &str = "Colours";
/// Title of a screen.
pub const ABOUT_TITLE: &str = "About";
/// The way to it.
pub const ABOUT: &str = "What this app does not replace";
/// Title of a screen.
pub const BEFORE: &str = "Before the match";
/// Title of a screen.
pub const LOG: &str = "Match log";
/// From its latest entries to all of them.
pub const WHOLE_LOG: &str = "Show all";
/// Title of a screen.
pub const SHEET: &str = "Sheet";
/// A newer version waits.
pub const NEW_VERSION: &str = "A newer version of Dutystand is on this phone.";
/// Takes it.
pub const NEW_VERSION_TAKE: &str = "Use it now";
/// It waits for a match that is being played.
pub const NEW_VERSION_LATER: &str =
    "A newer version of Dutystand is on this phone. You can use it when the match is over. Until then \
     this version stays.";
/// Another tab has taken it.
pub const NEW_VERSION_ELSEWHERE: &str =
    "A newer version of Dutystand is open in another tab. Load this \
                                         page again before the next match.";
/// Loads this page again.
pub const LOAD_AGAIN: &str = "Load again";
/// Makes this tab the writer.
pub const TAKE_OVER: &str = "Take over here";
/// A refused entry.
pub const REFUSED_TITLE: &str = "Not allowed by the rules";
/// The way past the advice.
pub const INSIST: &str = "Record it anyway";
/// Its reason.
pub const INSIST_WHY: &str = "Your reason (it goes on the sheet)";
/// The reason is missing.
pub const INSIST_NEEDS_WHY: &str = "Write a short reason first. It goes on the sheet.";
/// A count-down has ended.
pub const TIME_OVER: &str = "time is over";

/// The careful words, the same wherever somebody may be hurt. Stopping play for a serious accident is
/// rule 17.1.1 (Official Volleyball Rules 2025-2028); the rest is usual public guidance for officials of
/// young players: recognise, remove, and leave the judgement to qualified people.
pub const CARE_STOP: &str = "Stop play at once. Get the adult in charge and first aid.";
/// What an official does not do.
pub const CARE_NO_DIAGNOSIS: &str = "Do not make a diagnosis. Do not touch or move anybody.";
/// A suspected head injury.
pub const CARE_HEAD: &str =
    "After a blow to the head, or if there is any doubt: off the court. Nobody comes back without \
     clearance by a licensed medical person under your local rules.";
/// What counts first.
pub const CARE_NOT_REPLACED: &str =
    "This app does not replace a qualified person or the rules of your competition. They count first.";

/// What the app is for and what it is not.
pub const ABOUT_PARTS: [(&str, &[&str]); 5] = [
    (
        "The rules that count",
        &[
            "Dutystand knows the Official Volleyball Rules and some common school limits. Your \
             competition may have its own regulations. They count first, and this app does not \
             replace them.",
            "The app advises. The first referee decides.",
        ],
    ),
    (
        "When somebody is hurt",
        &[
            CARE_STOP,
            CARE_NO_DIAGNOSIS,
            CARE_HEAD,
            CARE_NOT_REPLACED,
        ],
    ),
    (
        "What stays on this phone",
        &[
            "Everything stays here. Names are optional: shirt numbers are enough. Nothing leaves the \
             phone unless you share it yourself.",
            "If the browser clears its data, the records go too. Export what matters.",
        ],
    ),
    (
        "Without a network",
        &[
            "Once the app has been opened with a network, it works without one.",
            "The screen stays on during a match where the phone allows it.",
        ],
    ),
    (
        "With a keyboard",
        &[
            "On the court, the left and right arrow keys choose a half, and Enter gives it the point. Tab \
             reaches everything else. Escape closes an open panel.",
        ],
    ),
];

/// The title of the window.
#[must_use]
pub fn page_title(heading: &str) -> String {
    if heading == APP {
        APP.into()
    } else {
        format!("{heading} – {APP}")
    }
}

/// The name of a team, or "Team A".
#[must_use]
pub fn team_name(state: &State, team: Team) -> String {
    name_or_letter(state.heading().map_or("", |h| h.names[team].as_str()), team)
}

fn name_or_letter(name: &str, team: Team) -> String {
    if name.trim().is_empty() {
        format!("Team {team}")
    } else {
        isolated(name)
    }
}

/// Both teams.
#[must_use]
pub fn teams(state: &State) -> String {
    if state.heading().is_none() {
        return UNREADABLE.into();
    }
    format!(
        "{} – {}",
        team_name(state, Team::A),
        team_name(state, Team::B)
    )
}

const UNREADABLE: &str = "Unreadable record";

/// The same of a match in a list.
#[must_use]
pub fn listed_teams(summary: &Summary) -> String {
    if !summary.is_readable {
        return UNREADABLE.into();
    }
    let name = |team| name_or_letter(summary.name(team), team);
    let teams = format!("{} – {}", name(Team::A), name(Team::B));
    if summary.is_practice {
        format!("{}: {teams}", learn::PRACTICE_MARK)
    } else {
        teams
    }
}

/// A button about one match of a list.
#[must_use]
pub fn of_teams(what: &str, teams: &str) -> String {
    format!("{what} {teams}")
}

/// Where a match stands, on one line.
#[must_use]
pub fn standing(state: &State) -> String {
    listed_standing(&Summary::of_state(state))
}

/// The same of a match in a list.
#[must_use]
pub fn listed_standing(summary: &Summary) -> String {
    let (won, set) = (summary.sets_won().marked(), summary.set);
    match summary.stage {
        Stage::Preparation => "Not started".into(),
        Stage::Playing => format!("{won} in sets, set {set}: {}", summary.score().marked()),
        Stage::BetweenSets => format!("{won} after set {set}"),
        Stage::Finished => {
            let sets: Vec<String> = summary.sets().map(|score| score.to_string()).collect();
            format!("{won} ({})", sets.join(", "))
        }
    }
}

/// A date and a time.
#[must_use]
pub fn when(at: Option<LocalTime>) -> String {
    at.map_or_else(String::new, |at| format!("{}, {}", day_of(at), time_of(at)))
}

/// The day of a moment; written so, days sort as text.
#[must_use]
pub fn day_of(t: LocalTime) -> String {
    format!("{:04}-{:02}-{:02}", t.year, t.month, t.day)
}

/// The time of the day of a moment.
#[must_use]
pub fn time_of(t: LocalTime) -> String {
    format!("{:02}:{:02}", t.hour, t.minute)
}

/// The time of the day of an entry, to the second.
#[must_use]
pub fn clock_time(at: Option<LocalTime>) -> String {
    at.map_or_else(String::new, |at| {
        format!("{}:{:02}", time_of(at), at.second)
    })
}

/// Minutes and seconds.
#[must_use]
pub fn minutes(seconds: i64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// The name of an exported file: the teams, never a person.
#[must_use]
pub fn file_name(state: &State, ending: &str) -> String {
    let plain = |team: Team| -> String {
        let name = state.name(team).to_lowercase();
        let plain: String = name
            .chars()
            .map(|c| if c.is_alphanumeric() { c } else { '-' })
            .take(24)
            .collect();
        plain.trim_matches('-').to_owned()
    };
    format!("match-{}-{}.{ending}", plain(Team::A), plain(Team::B))
}

/// How well the last entry is kept.
#[must_use]
pub const fn saved(saved: Saved) -> &'static str {
    match saved {
        Saved::Safe => "saved",
        Saved::Saving => "saving",
        Saved::OneCopy => "one copy",
        Saved::MemoryOnly => "not saved",
    }
}

/// What is wrong with the storage, and the way out.
#[must_use]
pub fn storage_trouble(health: &Health) -> Option<String> {
    if health.memory_only() {
        let trouble = health.local.as_ref().err()?;
        return Some(format!(
            "{} You can continue: the match is kept while this page stays open. Export it before \
             you close the page.",
            machine::storage(trouble)
        ));
    }
    match (&health.local, &health.durable) {
        (Ok(()), Ok(())) => None,
        (Err(trouble), _) | (_, Err(trouble)) => Some(format!(
            "{} Only one of the two copies on this phone can be written. Export the match when you \
             can.",
            machine::storage(trouble)
        )),
    }
}

/// Why nothing can be entered here, where that is so.
#[must_use]
pub const fn stands_still(standing: Standing) -> Option<&'static str> {
    match standing {
        Standing::ReadOnly { robbed: true } => {
            Some("Another tab has taken over this match. Here you can only look.")
        }
        Standing::ReadOnly { robbed: false } => {
            Some("This match is open in another tab. Here you can only look.")
        }
        Standing::Waiting => Some(
            "One of the two copies of this match has not been read yet. It may hold newer entries. The \
             app is trying again, so wait a moment.",
        ),
        Standing::Asking | Standing::Writer => None,
    }
}

/// What makes entries possible there.
#[must_use]
pub const fn go_on(standing: Standing) -> &'static str {
    match standing {
        Standing::Waiting => "Continue without it",
        Standing::ReadOnly { .. } | Standing::Asking | Standing::Writer => TAKE_OVER,
    }
}

/// What has to be said of the open match, one after the other.
#[must_use]
pub fn session_notices(notices: &[SessionNotice]) -> String {
    notices
        .iter()
        .map(session_notice)
        .collect::<Vec<_>>()
        .join(" ")
}

/// What has to be said of the open match.
#[must_use]
pub fn session_notice(notice: &SessionNotice) -> String {
    match notice {
        SessionNotice::Damaged(damage) => line_damage(damage),
        SessionNotice::RecordChanged => RECORD_CHANGED.to_owned(),
        SessionNotice::Storage(notice) => storage_notice(notice),
    }
}

/// Something that happened to the storage of the open match.
#[must_use]
fn storage_notice(notice: &StorageNotice) -> String {
    match notice {
        StorageNotice::Emptied => "The storage of this browser was emptied while this match was open. The match \
            was saved again from memory."
            .into(),
        StorageNotice::CameLate(1) => "One copy was read late and had 1 entry more. It is here now.".into(),
        StorageNotice::CameLate(more) => {
            format!("One copy was read late and had {more} entries more. They are here now.")
        }
        StorageNotice::Beside { entries, .. } => format!(
            "Another version of this match was found, with {entries} of its own. Both are kept. Look for \
             the other one in the list of matches.",
            entries = match entries {
                1 => "1 entry".to_owned(),
                n => format!("{n} entries"),
            }
        ),
        StorageNotice::Mended(all) => match all[..] {
            [n] => format!(
                "Entry {n} is damaged in one of the two copies on this phone. It was repaired from the \
                 other."
            ),
            _ => format!(
                "Entries {} are damaged in one of the two copies on this phone. They were repaired from \
                 the other.",
                all.iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
            ),
        },
    }
}

/// A line that cannot be read or proved.
#[must_use]
pub fn line_damage(damage: &Damage) -> String {
    let n = damage.n;
    match damage.what {
        What::Missing => format!("Entry {n} is missing in both copies on this phone."),
        What::Damaged => format!(
            "Entry {n} is damaged in both copies on this phone and does not count. It stays as it is."
        ),
        What::Newer => format!(
            "Entry {n} was written by a newer version of this app. It does not count here and stays as it \
             is. The newer version can read it."
        ),
        What::Unproved => format!(
            "Entry {n} counts, but an entry before it is damaged, so nothing proves it. Check it."
        ),
    }
}

/// Of a record in a list: a link or a seal does not fit.
pub const RECORD_CHANGED: &str =
    "This record was changed after it was written. The sheet shows where.";

/// The same of a match in a list.
#[must_use]
pub fn unreadable_lines(count: usize) -> String {
    match count {
        1 => "1 entry cannot be read or proved.".into(),
        n => format!("{n} entries cannot be read or proved."),
    }
}

/// What is doubtful about the phone's clock when a match is opened again.
#[must_use]
pub fn clock_doubt(doubt: ClockDoubt) -> String {
    match doubt {
        ClockDoubt::Back { seconds } => format!(
            "This phone's clock was set back: it is {} behind the last entry. Score and order are safe. The \
             sheet marks the times.",
            span(seconds)
        ),
        ClockDoubt::Forward { seconds } => format!(
            "This phone's clock says that {} have passed in this set. If not, it was set forward. Score and \
             order are safe. The sheet marks the times.",
            span(seconds)
        ),
    }
}

/// Whether the program opens without a network.
#[must_use]
pub fn offline(offline: &Offline) -> String {
    match offline {
        Offline::ReadyOffline | Offline::NewVersionWaiting | Offline::NewVersionElsewhere => {
            "Works offline.".into()
        }
        Offline::Insecure => "This address is not secure (it begins with http, not https). The app works \
            while this page stays open. It cannot open without a network or keep the screen on. Open the \
            address that begins with https."
            .into(),
        Offline::Installing => "Getting ready to work offline …".into(),
        Offline::NotSupported => {
            "This browser or private window cannot keep the app for use without a network.".into()
        }
        Offline::Incomplete => {
            "The app could not be kept for use without a network: not all of its files came. Open it again \
             with a network."
                .into()
        }
        Offline::Failed(why) => format!(
            "The app could not be kept for use without a network{}. Open it again with a network.",
            machine::in_its_words(why)
        ),
    }
}

/// Light or dark.
#[must_use]
pub const fn theme(theme: Theme) -> &'static str {
    match theme {
        Theme::System => "Same as the phone",
        Theme::Light => "Light",
        Theme::Dark => "Dark",
        Theme::Sunlight => "Sunlight",
    }
}

/// The rule of a refusal.
#[must_use]
pub fn rule_of(refusal: &Refusal) -> String {
    match refusal.rule() {
        "log" => "How a record is kept".into(),
        "school" => "A limit of this competition".into(),
        rule => format!("Official Volleyball Rules, {rule}"),
    }
}

/// A file that could not be opened.
#[must_use]
pub fn unreadable_file(name: &str, trouble: &ReadTrouble) -> String {
    match trouble {
        ReadTrouble::TooBig { .. } => {
            format!("{name} is far too large for a match. Choose another file.")
        }
        ReadTrouble::Unreadable(why) => {
            format!(
                "{name} could not be read{}. Choose it again.",
                machine::in_its_words(why)
            )
        }
    }
}

/// A file that holds nothing of ours.
#[must_use]
pub fn foreign_file(name: &str, foreign: &Foreign) -> String {
    format!("{name}: {}", problem::foreign(foreign))
}

/// What was wrong in a file, line by line.
#[must_use]
pub fn reading_problems(name: &str, reading: &Reading) -> Vec<String> {
    const MOST: usize = 5;
    let mut words: Vec<String> = reading
        .problems
        .iter()
        .take(MOST)
        .map(|p| {
            let say = problem::problem(p);
            let say = say.trim_end_matches('.');
            match p.entry {
                Some(entry) => format!("{name}, entry {entry}: {say}."),
                None => format!("{name}: {say}."),
            }
        })
        .collect();
    if reading.problems.len() > MOST {
        words.push(format!(
            "{name}: {} more like this.",
            reading.problems.len() - MOST
        ));
    }
    words
}

/// Entries with impossible numbers.
#[must_use]
pub fn left_out(name: &str, count: usize) -> String {
    format!("{name}: {count} entries have impossible numbers and were left out.")
}

/// The storage did not take it.
#[must_use]
pub fn import_not_saved(name: &str) -> String {
    format!("Not all of {name} could be saved on this phone. Keep the file.")
}
