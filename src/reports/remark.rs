//! The remarks of a sheet: what was written, what was insisted on, what was taken back, and what the
//! rules want noted (Official Volleyball Rules 2025-2028, 19.4.2.6 and 27.2.2.7).

use game::entry::{Entry, Forced, Protested};
use game::{say, Joined, Kind, Outcome, State, Timeline};
use rules::{Score, Team};

use super::{clock_doubts, words};

/// One remark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemarkLine {
    /// The entry it comes from.
    pub entry: u32,
    /// The set at that moment.
    pub set: u8,
    /// The score at that moment.
    pub score: Score,
    /// The words.
    pub text: String,
}

/// The remarks of a log in its order.
#[must_use]
pub fn lines(timeline: &Timeline) -> Vec<RemarkLine> {
    let mut lines = Vec::new();
    let mut doubts = clock_doubts(timeline).into_iter().peekable();
    timeline.walk(|before, entry, outcome, after| {
        let doubt = doubts.next_if(|(of, _)| *of == entry.n);
        let texts = match outcome {
            Outcome::Struck(by) => taken_back(timeline, entry, *by).into_iter().collect(),
            _ => texts(before, entry, outcome, after, timeline.state()),
        };
        for text in doubt
            .map(|(_, doubt)| words::clock_doubt(doubt))
            .into_iter()
            .chain(texts)
        {
            // A protest comes after the point that it is about, which may have ended the set.
            let is_protest = matches!(entry.kind, Kind::Protest { .. });
            lines.push(RemarkLine {
                entry: entry.n,
                set: if is_protest {
                    before.set_number()
                } else {
                    before.set_at_hand()
                },
                score: if is_protest {
                    before.score()
                } else {
                    before.play().map_or_else(Score::default, |p| p.score)
                },
                text,
            });
        }
    });
    lines
}

fn texts(
    before: &State,
    entry: &Entry,
    outcome: &Outcome,
    after: &State,
    end: &State,
) -> Vec<String> {
    let mut texts = Vec::new();
    match outcome {
        Outcome::Accepted | Outcome::Insisted(_) => {
            let protest = end.protests().iter().find(|p| p.entry == entry.n);
            texts.extend(match protest {
                Some(protest) => Some(words::protest(protest, before, end)),
                None => noted(before, &entry.kind, after),
            });
        }
        Outcome::Struck(_) => {}
        Outcome::Refused(refusal) => texts.push(format!(
            "Entry {} does not count ({}): {}",
            entry.n,
            refusal.rule(),
            say(refusal, before)
        )),
    }
    if let (Outcome::Insisted(advice), Some(why)) = (outcome, &entry.insist) {
        texts.push(format!(
            "Recorded against rule {} on the first referee's decision: {why}. The advice was: {}",
            advice.rule(),
            say(advice, before)
        ));
    }
    texts
}

/// A slip of the finger taken back at once is no remark; one taken back with a reason, or after play
/// went on, is.
fn taken_back(timeline: &Timeline, entry: &Entry, by: u32) -> Option<String> {
    let aside = |e: &Entry| {
        matches!(
            e.kind,
            Kind::Explain { .. } | Kind::Timer(_) | Kind::Strike { .. }
        )
    };
    let went_on = timeline
        .entries()
        .iter()
        .any(|e| e.n > entry.n && e.n < by && !aside(e));
    let why = match &timeline.entry(by)?.kind {
        // The replay stands on the sheet for itself.
        Kind::Replay { .. } => return None,
        Kind::Strike { why, .. } => why.as_deref(),
        _ => None,
    };
    if aside(entry) || (!went_on && why.is_none()) {
        return None;
    }
    let why = why.map(|w| format!(": {w}")).unwrap_or_default();
    Some(format!("Entry {} was undone by entry {by}{why}.", entry.n))
}

/// What the rules, or the official, want noted of an entry that counts.
fn noted(before: &State, kind: &Kind, after: &State) -> Option<String> {
    let name = |team: Team| before.name(team);
    Some(match kind {
        Kind::Remark {
            text,
            team: Some(team),
        } => format!("{}: {text}", name(*team)),
        Kind::Remark { text, team: None } => text.clone(),
        Kind::Check(check) if !check.ok => match &check.note {
            Some(note) => format!("Check failed: {} ({note}).", check.item),
            None => format!("Check failed: {}.", check.item),
        },
        Kind::Check(check) => {
            let failed = before
                .checks()
                .iter()
                .any(|c| c.item == check.item && !c.ok);
            failed.then_some(())?;
            format!(
                "Cleared: {} ({}).",
                check.item,
                check.note.as_deref().unwrap_or("no note")
            )
        }
        Kind::Substitution {
            team,
            changes,
            reason: Some(reason),
        } => {
            let why = match reason {
                Forced::Injury => "injury",
                Forced::Expelled => "expulsion",
                Forced::Disqualified => "disqualification",
            };
            let changes: Vec<String> = changes
                .iter()
                .map(|c| format!("{} for {}", c.into, c.out))
                .collect();
            let exceptional = after
                .shown()
                .zip(before.shown())
                .is_some_and(|(after, before)| {
                    after.sides[*team].exceptional > before.sides[*team].exceptional
                });
            let sort = if exceptional {
                "Exceptional substitution"
            } else {
                "Substitution"
            };
            format!("{sort}, {}: {} ({why}).", name(*team), changes.join(", "))
        }
        Kind::Recovery { team, number } => {
            format!("Recovery time, {}: number {number}.", name(*team))
        }
        Kind::NewLibero {
            team,
            number,
            replaces,
            ..
        } => {
            let old: Vec<String> = replaces.iter().map(ToString::to_string).collect();
            format!(
                "New libero, {}: number {number} for {}.",
                name(*team),
                old.join(", ")
            )
        }
        Kind::LateFault(fault) => {
            let changed = put_right(before, after);
            let what = if changed.is_empty() {
                "no score changes so far".to_owned()
            } else {
                changed.join("; ")
            };
            format!("Fault found late, {}: {what}.", name(fault.team))
        }
        Kind::Rally { cause: Some(_), .. } => {
            after.dropped_cause()?;
            "Position fault of the serving team: the point counts, the reason does not (rule 7.4)."
                .to_owned()
        }
        Kind::ProtestStatement { about, text } => {
            let team = match about {
                Protested::Unannounced(team) => *team,
                Protested::Entry(entry) => {
                    before.protests().iter().find(|p| p.entry == *entry)?.team
                }
            };
            words::protest_written(name(team), text)
        }
        Kind::FirstService { team, left } => format!(
            "Set {}: {} served first, {} stood on the left, as seen on court. No toss was recorded.",
            before.set_at_hand(),
            name(*team),
            name(*left)
        ),
        Kind::Joined(joined) => taken_over(joined),
        Kind::ScoreCorrection { score, why, .. } => {
            let was = before.score();
            format!("Score corrected from {} to {}: {why}", was.marked(), score.marked())
        }
        Kind::WrongInformation { score, why } => {
            let was = before.score();
            format!(
                "Wrong information by the officials: {why} Play went back from {} to {}.",
                was.marked(),
                score.marked()
            )
        }
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => {
            let wrong: Vec<String> = changes
                .iter()
                .map(|c| format!("{} for {}", c.into, c.out))
                .collect();
            let wrong = match (wrong.is_empty(), kept) {
                (true, _) => "places corrected".to_owned(),
                (false, true) => format!("{} kept by substitution", wrong.join(", ")),
                (false, false) => format!("{} corrected", wrong.join(", ")),
            };
            format!("Line-up of {} checked before the set: {wrong}, no sanction.", name(*team))
        }
        Kind::LateReplacement { team } => {
            let again = before.team(*team).late_replacement_noted;
            let then = if again { "a delay" } else { "the captain was told" };
            format!("Late libero replacement, {}: {then}.", name(*team))
        }
        Kind::TimeUp if after.play().is_some() => {
            "Time was up with the teams level: one more rally decides.".to_owned()
        }
        Kind::TimeUp => "Time was up: the set ended as it stood.".to_owned(),
        Kind::Suspend { why } => format!("Play was interrupted: {why}."),
        Kind::Resume { .. } => "Play was resumed.".to_owned(),
        Kind::Incomplete { team, .. } => format!("{} incomplete.", name(*team)),
        Kind::Default { team } => format!("{} in default.", name(*team)),
        Kind::Reopen { why: None } => "The sealed record was reopened.".to_owned(),
        Kind::Reopen { why: Some(why) } => format!("The sealed record was reopened: {why}."),
        Kind::Answer { entry, choice } => {
            let question = before.questions().iter().find(|q| q.entry == *entry)?;
            let (_, words) = game::say_question(question, before);
            let at = question.ask.choices().iter().position(|c| c == choice)?;
            format!("Decided by the first referee: {}.", words[at])
        }
        _ => return None,
    })
}

/// What a fault found late has done to the score of each set so far.
fn put_right(before: &State, after: &State) -> Vec<String> {
    let score = |state: &State, number: u8| {
        let play = state.play().filter(|play| play.number == number);
        let set = state.sets().find(|set| set.number == number);
        play.map(|play| play.score).or(set.map(|set| set.score))
    };
    let now = before.set_number();
    let one = |number: u8| {
        let of = if number == now {
            "score".to_owned()
        } else {
            format!("set {number}")
        };
        match (score(before, number)?, score(after, number)) {
            (was, Some(is)) if was == is => None,
            (was, Some(is)) => Some(format!(
                "{of} {} corrected to {}",
                was.marked(),
                is.marked()
            )),
            (was, None) => Some(format!("set {number}, {}, no longer counts", was.marked())),
        }
    };
    (1..=now).filter_map(one).collect()
}

/// What was played before this record began.
fn taken_over(joined: &Joined) -> String {
    let sets: Vec<String> = joined.sets.iter().map(ToString::to_string).collect();
    let before = match sets.is_empty() {
        true => String::new(),
        false => format!(" Sets before: {}.", sets.join(", ")),
    };
    let set = joined.sets.len() + 1;
    match joined.score {
        Some(score) => format!(
            "This record was begun in set {set}, at {}.{before}",
            score.marked()
        ),
        None => format!("This record was begun before set {set}.{before}"),
    }
}
