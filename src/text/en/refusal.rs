//! Every refusal in words: what is wrong, and what would be legal.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use crate::refusal::*;
use crate::Teams;
use game::{Barred, InSet, Level, OutFor, Refusal, Who, RECOVERY_SECONDS};
use rules::{Invalid, Shirt, Team};

/// In English.
pub static WORDS: RefusalWords = RefusalWords { refusal };

fn refusal(refused: &Refusal, teams: Teams) -> String {
    let name = |team: Team| teams.name(team);
    use Refusal as R;
    match refused {
        R::NoMatch => "No match is open yet. The first entry opens it.".into(),
        R::MatchOpen => "The match is already open. Start a new record for another match.".into(),
        R::BadRules(why) => bad_rules(*why).into(),
        R::MatchOver => "The match is over. A remark or a signature can still be added.".into(),
        R::Suspended => "Play is interrupted. Resume it first.".into(),
        R::NotSuspended => "Play is not interrupted, so there is nothing to resume.".into(),
        R::NoSetRunning { asked: InSet::Recovery } => {
            "The line-ups are missing, so nobody is on court. Recovery time is for a player on court.".into()
        }
        R::NoSetRunning { asked: InSet::Rally | InSet::TimeOut | InSet::ChangeOfCourts } => {
            "No set is running. Begin the set first.".into()
        }
        R::SetRunning => "A set is running. You can do this before the next one.".into(),
        R::NobodyOnCourt => "Players come and go only when both line-ups are confirmed.".into(),
        R::LiberoBeforeLineUps => {
            "The libero comes in only when both line-ups are confirmed and checked.".into()
        }
        R::StrikeFirst => {
            "The entry that opened the match cannot be undone. Delete the match instead.".into()
        }
        R::StrikeLater { entry } => {
            format!("Entry {entry} is not an earlier one. Only earlier entries can be undone.")
        }
        R::AlreadyStruck { entry } => {
            format!("Entry {entry} is already undone. To restore it, undo that step.")
        }
        R::Sealed { entry } => format!(
            "The record is sealed by entry {entry}. Reopen it first. The reopening goes on the sheet."
        ),
        R::NotSealed => "The record is not sealed, so there is nothing to reopen.".into(),
        R::SealStands { entry } => format!(
            "Entry {entry} cannot be undone: seals and reopenings stay on the sheet. Reopen the record, \
             or seal it again."
        ),
        R::NoSuchRally { entry } => {
            format!("Entry {entry} is not a rally that counts. Choose a rally from the list.")
        }
        R::NotLastRally { entry } => format!(
            "Entry {entry} is not the last rally, or more than a request has come after it. Only the last \
             rally can be replayed. First undo what came after it."
        ),
        R::BeforeReplay { replay } => format!(
            "This entry would come between a rally and its replay, entry {replay}. Undo entry {replay} \
             first."
        ),
        R::NoQuestion { entry } => format!("Entry {entry} asks no question."),
        R::NoSuchChoice { choices } => format!("Answer one of: {}.", choices.join(", ")),

        R::RulesSettled => {
            "The match is already being played by its rules, or a set would be over by the new ones. \
             Start a new record for other rules."
                .into()
        }
        R::ListClosed => {
            "The match has begun, so the team lists are closed. Write the change as a remark.".into()
        }
        R::TooManyPlayers { players, most } => {
            format!("{players} players are too many: the list may have {most}.")
        }
        R::NumberTwice { number } => {
            format!("Number {number} is on the list twice. Give each player a different number.")
        }
        R::NumberOutOfRange { number, lowest, highest } => {
            format!("Number {number} is not allowed here. Numbers run from {lowest} to {highest}.")
        }
        R::TwoCaptains { first, second } => {
            format!("Both {first} and {second} are marked as captain. A team has one.")
        }
        R::TooManyLiberos { most: 0, .. } => {
            "This competition plays without a libero. Take the mark off the list.".into()
        }
        R::TooManyLiberos { liberos, most } => {
            format!("{liberos} liberos are too many: this competition allows {most}.")
        }
        R::TossInSet => "A set is running. The toss was held before it.".into(),
        R::TossNotDue { set } => format!(
            "There is no toss before set {set}. The team that did not serve first in the last set serves \
             first."
        ),
        R::TossMissing { set } => format!("The toss for set {set} is missing. Record it first."),
        R::NoTeamList { team } => {
            format!("The team list of {} is missing. Enter it before the line-up.", name(*team))
        }
        R::LineUpGiven { team } => format!(
            "The line-up of {} is confirmed. A change now is a substitution.",
            name(*team)
        ),
        R::LineUpPlayed { team } => format!(
            "The line-up of {} is confirmed and the set is running. A change now is a substitution.",
            name(*team)
        ),
        R::LineUpMissing { team } => {
            format!("The line-up of {} is missing. Ask the coach for it.", name(*team))
        }
        R::SeveralMissing { line_ups, toss_for } => {
            let line_ups = match line_ups[..] {
                [team] => refusal(&R::LineUpMissing { team }, teams),
                _ => "The line-ups of both teams are missing. Ask the coaches for them.".to_owned(),
            };
            let toss = toss_for.map(|set| refusal(&R::TossMissing { set }, teams));
            [Some(line_ups), toss].into_iter().flatten().collect::<Vec<_>>().join(" ")
        }
        R::LineUpSize { numbers, needed } => {
            format!("A line-up has {needed} numbers. This one has {numbers}.")
        }
        R::NotListed { team, number } => format!(
            "Number {number} is not on the list of {}. Only listed players may play.",
            name(*team)
        ),
        R::UnlistedSubstitute { team, number } => format!(
            "Number {number} is not on the list of {} and cannot come in. Only listed players may play.",
            name(*team)
        ),
        R::TwiceInLineUp { number } => {
            format!("Number {number} is in this line-up twice. Every place needs a different player.")
        }
        R::LiberoInLineUp { number } => format!(
            "Number {number} is a libero and cannot start. Choose a regular player. The libero comes in \
             afterwards."
        ),
        R::PlayerBarred { number, why } => barred(*number, *why),

        R::ServingTeamStandsFree { serving } => format!(
            "{} were serving, and the serving team may stand anywhere in its court. Choose another \
             reason. The point stays.",
            name(*serving)
        ),

        R::PlayedHere => {
            "This record has already begun. Sets and score can only be entered as its first step.".into()
        }
        R::NothingToTakeOver => {
            "Nothing has been played yet, so there is no score to enter. Begin the match.".into()
        }
        R::SetNotOver { set, score } => format!("Set {set} cannot have ended {}.", score.marked()),
        R::SetLevel { set, score } => {
            format!(
                "Set {set} cannot have ended level, {}. Enter it as the running set.",
                score.marked()
            )
        }
        R::SetOver { set, score } => {
            format!(
                "At {} set {set} is over. Enter it with the sets that are over.",
                score.marked()
            )
        }
        R::TossDecides { set } => {
            format!("A toss decides who serves first in set {set}. Enter the toss.")
        }
        R::FoundTooLate => {
            "The set has begun. A difference from the line-up is now a fault found late.".into()
        }
        R::NotInLineUp { number } => {
            format!("Number {number} is not in the line-up. Choose the player who should be on court.")
        }
        R::ScoreFollowsPoints => {
            "Service and rotation follow from the points. Undo the wrong rally, then enter the right \
             one."
            .into()
        }
        R::ScoreStands { score } => format!("The score is already {}.", score.marked()),
        R::ScoreTooHigh { most } => format!("A set has at most {most} points."),
        R::NotByTime => {
            "Sets are not played by time in this match. A set ends by points.".into()
        }
        R::NoTimeOutLeftInMatch { team, most } => format!(
            "{} have used their {most} time-outs in this match. Reject the request and record it as \
             improper.",
            name(*team)
        ),
        R::NoReplacementNow { team } => format!(
            "No libero of {} has come or gone since the last rally. Record the replacement first.",
            name(*team)
        ),
        R::NoSuchMoment { asked, nearest } => format!(
            "The score was never {} in this set. The nearest score is {}.",
            asked.marked(),
            nearest.marked()
        ),

        R::NoTimeOutLeft { team, most } => format!(
            "{} have used their {most} time-outs in this set. Reject the request and record it as \
             improper.",
            name(*team)
        ),
        R::AfterReplay => {
            "The last rally is replayed first. No regular request is allowed until a rally is completed. \
             A forced substitution is possible."
                .into()
        }
        R::RequestBarred { team } => format!(
            "{} had a request rejected with a delay warning. They may ask again after the next \
             completed rally.",
            name(*team)
        ),
        R::SecondRequest { team } => format!(
            "{} have already made a request in this interruption. The next one is possible after a \
             completed rally.",
            name(*team)
        ),
        R::NoChange => "Say who goes out and who comes in.".into(),
        R::NotOnCourt { number, .. } => {
            format!("Number {number} is not on court. Choose a player who is.")
        }
        R::OnCourt { number, .. } => {
            format!("Number {number} is already on court. Choose somebody from the bench.")
        }
        R::NamedTwice { number } => {
            format!("Number {number} is named twice in this request. Each player changes once.")
        }
        R::LiberoNotSubstituted { number } | R::LiberoNoSubstitute { number } => format!(
            "Number {number} is a libero and takes no part in substitutions. Use a libero replacement."
        ),
        R::NoSubstitutionLeft { used, wanted, most } => format!(
            "{used} of {most} substitutions are used. In this set {wanted} more cannot be granted."
        ),
        R::PlaceClosed { number } => format!(
            "The starter in the place of number {number} has left and come back. No more substitutions \
             are possible there in this set."
        ),
        R::ClosedByExceptional { number } => format!(
            "Number {number} came in by an exceptional substitution. No regular substitution is possible \
             there in this set."
        ),
        R::OnlyStarterReturns { out, starter } => {
            format!("Only number {starter} can come back for number {out}.")
        }
        R::OtherPlace { number, now_held_by } => format!(
            "Number {number} belongs to another place of this line-up and can come in only for \
             number {now_held_by}."
        ),
        R::SubstituteUsed { number } => {
            format!("Number {number} has already come in once in this set. Choose somebody who has not.")
        }
        R::EntriesUsed { number, most } => {
            format!("Number {number} has been on court {most} times in this set. More is not allowed.")
        }
        R::LegalChangeExists { out, into } => format!(
            "There is a regular substitute for number {out}: {}. An exceptional substitution is possible \
             only when there is none.",
            numbers(into)
        ),
        R::NotSentOff { number } => format!(
            "Number {number} was not sent off. Choose another reason, or record the sanction first."
        ),
        R::PartlyIllegal { legal, because } => format!(
            "{} You can grant: {}.",
            refusal(because, teams),
            crate::score_sheet::changes(legal)
        ),

        R::NotALibero { number } => format!("Number {number} is not a libero of this team."),
        R::LiberoOnCourt { number } => {
            format!("Libero {number} is on court. Only one libero plays at a time.")
        }
        R::BackRowOnly { number } => format!(
            "Number {number} is in the front row. The libero comes in only for {}.",
            back_row(teams.on_court)
        ),
        R::LeavesBySubstitution { number } => format!(
            "Number {number} may not be on court and leaves by a substitution. A libero cannot fill the \
             place."
        ),
        R::LiberoServes { number } => {
            format!("Number {number} is a libero and may not serve. The server stays on court.")
        }
        R::RallyBetween => {
            "A rally must be completed between two libero replacements. Wait for the next one.".into()
        }
        R::NotForLibero { libero, replaced } => format!(
            "Only number {replaced} or another libero of the team comes in for libero {libero}."
        ),
        R::RegularReturnsFirst { libero, replaced } => format!(
            "Libero {libero} was only declared unable, so number {replaced} comes back first. The new \
             libero comes in after the next completed rally."
        ),
        R::ReplacedPlayer { number } => format!(
            "The libero is in for number {number}, who cannot become the libero."
        ),
        R::OtherLibero { number } => {
            format!("Libero {number} can still play, so no new libero is named.")
        }
        R::AlreadyLibero { number } => format!("Number {number} is already a libero."),

        R::TeamWarned { team } => format!(
            "{} have already had their one warning. The next step is a penalty.",
            name(*team)
        ),
        R::NotHeavier { who, had: Level::Disqualification } => format!(
            "{} is disqualified. There is no heavier sanction. Write what happened as a remark.",
            person(who)
        ),
        R::NotHeavier { who, had } => format!(
            "{} has had {}. The next sanction for the same person is a heavier one.",
            person(who),
            level(*had)
        ),

        R::NoSetForGameCaptain => {
            "A game captain speaks for the set. Enter both line-ups first.".into()
        }
        R::CaptainSpeaks { captain } => format!(
            "Captain {captain} is on court and speaks for the team. Nobody else is named."
        ),
        R::LeavesCourt { number } => format!(
            "Number {number} has to leave the court and cannot speak for the team. Choose a player who \
             stays."
        ),
        R::NotGameCaptain { number, speaker } => format!(
            "Number {number} does not speak for the team. Only the game captain, number {speaker}, \
             announces a protest."
        ),
        R::NotAnnounced { team } => format!(
            "{} announced no protest at the time, so none is written on the sheet.",
            name(*team)
        ),
        R::NoSuchProtest { entry } => format!("Entry {entry} announces no protest that stands."),
        R::ProtestWritten { entry } => format!(
            "This protest is already written, in entry {entry}. Undo that entry to write it again."
        ),
        R::ProtestAfterMatch => {
            "A protest is written on the sheet after the match. Until then its announcement is enough.".into()
        }

        R::ScoreNeverStood { asked, nearest, .. } => format!(
            "The score was never {} in this set. The nearest score is {}.",
            asked.marked(),
            nearest.marked()
        ),
        R::SetNotPlayed { set, .. } => {
            format!("Set {set} has not been played yet. Choose a score of a set that has.")
        }
        R::EarlierSet { set, now, .. } => format!(
            "Set {set} is closed: this can be corrected only until the next set begins. Choose a score of \
             set {now}."
        ),
        R::NothingPlayed { .. } => "No set has been played yet, so there is nothing to correct.".into(),
        R::RallyBeganBefore { asked, before } => format!(
            "Nobody has served since {asked}. The rally that just ended began at {before}. Choose \
             {before}, so that the fault costs one point."
        ),
        R::NoRallyYet => {
            "No rally has been completed in this set, so no fault was found after one.".into()
        }
        R::DidNotServe { team } => format!(
            "{} did not serve then, so they had no wrong server. Choose the team that served or an \
             earlier score.",
            name(*team)
        ),
        R::NotByPlay { set } => {
            format!("Set {set} was not decided by play in this record, so there are no points to correct.")
        }

        R::RecoveryUsed { number } => format!(
            "Number {number} has already used the {} minutes in this match. Without a substitute the team \
             is incomplete.",
            RECOVERY_SECONDS / 60
        ),
        R::SomebodyCanComeIn { number, into } => {
            format!("There is somebody who can come in for number {number}: {}.", numbers(into))
        }
        R::OverFourHours => {
            "The interruptions last more than four hours in all, so the whole match is played again. \
             Close this record with a remark and start a new one."
                .into()
        }
        R::NotDecider => "A change of courts within a set happens only in the deciding set.".into(),
        R::CourtsChanged => "The change of courts in this set is done.".into(),
        R::CourtsNotDue { at } => format!("The change of courts is due when the first team has {at} \
            points."),
    }
}

/// The places of the back row: with fewer than six on court place 6 falls away first, then 5 (our choice, no
/// source).
fn back_row(players_on_court: u8) -> &'static str {
    match players_on_court {
        4 => "place 1",
        5 => "places 1 and 5",
        _ => "places 1, 6 and 5",
    }
}

fn bad_rules(why: Invalid) -> &'static str {
    match why {
        Invalid::Sets => {
            "A match is the best of an odd number of sets, or a fixed number of sets, up to 9."
        }
        Invalid::Target => {
            "A set needs a target and a lead of at least 1. A cap must not be below the target."
        }
        Invalid::PlayersOnCourt => "Four to six players of a team are on court.",
        Invalid::SetLimit => "A set that ends by time or by rallies needs at least 1.",
        Invalid::Liberos => "A team has no, one or two liberos.",
        Invalid::Roster => {
            "The team list must have room for all players on court. Its lowest number must not be above \
             its highest."
        }
    }
}

fn barred(number: Shirt, why: Barred) -> String {
    match why {
        Barred::Expelled => {
            format!("Number {number} is expelled and may play again in the next set.")
        }
        Barred::Out(OutFor::Disqualified) => {
            format!("Number {number} is disqualified and may not play again in this match.")
        }
        Barred::Out(OutFor::Exceptional) => format!(
            "Number {number} was taken out by an exceptional substitution and may not play again in \
             this match."
        ),
        Barred::Out(OutFor::Redesignated) => format!(
            "Number {number} was replaced by a new libero and may not play again in this match."
        ),
    }
}

fn person(who: &Who) -> String {
    match who {
        Who::Player(number) => format!("Number {number}"),
        Who::Staff(role) => format!("The {role}"),
    }
}

/// A level of misconduct, in words that fit behind *has had*.
pub(super) fn level(level: Level) -> &'static str {
    match level {
        Level::Warning => "a warning",
        Level::Penalty => "a penalty",
        Level::Expulsion => "an expulsion",
        Level::Disqualification => "a disqualification",
    }
}

fn numbers(list: &[Shirt]) -> String {
    list.iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join(", ")
}
