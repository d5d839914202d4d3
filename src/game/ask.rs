//! Where the rules leave it open, the state asks and an entry answers; nothing is decided silently.

use super::late_fault::{self, Beginning};
use super::set::SetPlay;
use super::stage::Stage;
use super::state::State;
use super::Refusal;
use rules::{ByTeam, Team};

/// A question to the first referee.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// The entry that raised it; the answer names it.
    pub entry: u32,
    /// What is asked.
    pub ask: QuestionKind,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuestionKind {
    /// Both teams were penalised between the sets (FIVB Casebook 2024, case 6.4, has 1-1 and both
    /// rotations, not the service). Until it is answered the team due to open serves; the first point
    /// of the set closes the question.
    WhoOpens {
        /// The team due to open.
        due: Team,
    },
    /// A player not on the list came in during an earlier set (7.3.5.4 speaks of points and sets
    /// gained since, not of a set begun before). Until it is answered the earlier sets stand.
    UnregisteredInside {
        /// Whose player.
        team: Team,
        /// The set.
        set: u8,
    },
    /// A player not on the list was found after the match: the match is lost (FIVB Casebook 2024, case
    /// 4.22), or the points and sets won since he or she came in (7.3.5.4). Until it is answered the
    /// result stands.
    UnregisteredAfter {
        /// Whose player.
        team: Team,
        /// The set in which he or she came in.
        set: u8,
        /// Whether that was inside an earlier set than the last one.
        inside: bool,
    },
}

impl QuestionKind {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            QuestionKind::WhoOpens { .. } => "who_opens",
            QuestionKind::UnregisteredInside { .. } => "unregistered_inside_set",
            QuestionKind::UnregisteredAfter { .. } => "unregistered_after_match",
        }
    }

    /// The codes of the choices.
    #[must_use]
    pub const fn choices(self) -> &'static [&'static str] {
        match self {
            QuestionKind::WhoOpens { .. } => &["A", "B"],
            // That set and all later ones are lost; or it stands and only those are.
            QuestionKind::UnregisteredInside { .. } => &["lose_set", "keep_set"],
            QuestionKind::UnregisteredAfter { inside: true, .. } => {
                &["lose_match", "lose_set", "keep_set"]
            }
            QuestionKind::UnregisteredAfter { inside: false, .. } => &["lose_match", "lose_set"],
        }
    }
}

/// Asks who opens, where both teams were penalised between the sets.
pub(super) fn who_opens(
    questions: &mut Vec<Question>,
    entry: u32,
    play: &SetPlay,
    penalties: &ByTeam<Vec<u32>>,
) {
    let both = penalties.iter().all(|(_, p)| !p.is_empty());
    if let (true, Some(due)) = (both, play.opener) {
        questions.push(Question {
            entry,
            ask: QuestionKind::WhoOpens { due },
        });
    }
}

/// Asks what becomes of a set in which an unregistered player came in.
pub(super) fn unregistered_inside(questions: &mut Vec<Question>, entry: u32, team: Team, set: u8) {
    questions.push(Question {
        entry,
        ask: QuestionKind::UnregisteredInside { team, set },
    });
}

/// Asks what becomes of a match in which an unregistered player took part.
pub(super) fn unregistered_after(
    questions: &mut Vec<Question>,
    entry: u32,
    team: Team,
    set: u8,
    inside: bool,
) {
    questions.push(Question {
        entry,
        ask: QuestionKind::UnregisteredAfter { team, set, inside },
    });
}

/// A point has been given: who opened the set is past asking.
pub(super) fn expire(questions: &mut Vec<Question>) {
    questions.retain(|q| !matches!(q.ask, QuestionKind::WhoOpens { .. }));
}

pub(super) fn check(state: &State, entry: u32, choice: &str) -> Result<(), Refusal> {
    let question = state
        .questions
        .iter()
        .find(|q| q.entry == entry)
        .ok_or(Refusal::NoQuestion { entry })?;
    let choices = question.ask.choices();
    if choices.contains(&choice) {
        Ok(())
    } else {
        Err(Refusal::NoSuchChoice {
            choices: choices.to_vec(),
        })
    }
}

pub(super) fn answer(state: &mut State, entry: u32, choice: &str) {
    let Some(i) = state.questions.iter().position(|q| q.entry == entry) else {
        return;
    };
    match state.questions.remove(i).ask {
        QuestionKind::WhoOpens { .. } => {
            if let Stage::Playing(play) = state.stage_beneath_mut() {
                play.serving = Some(if choice == "A" { Team::A } else { Team::B });
            }
        }
        QuestionKind::UnregisteredAfter { team, .. } if choice == "lose_match" => {
            late_fault::lose_match(state, team);
        }
        QuestionKind::UnregisteredInside { team, set }
        | QuestionKind::UnregisteredAfter { team, set, .. } => {
            let begin = if choice == "lose_set" {
                Beginning::ThatSet
            } else {
                Beginning::TheNext
            };
            late_fault::lose_earlier_sets(state, team, set, begin);
        }
    }
}
