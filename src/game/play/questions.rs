//! Where the rules leave it open, the state asks and an entry answers; nothing is decided silently.

use super::late_fault::{self, Beginning};
use crate::model::question::{Question, QuestionKind};
use crate::model::set::SetPlay;
use crate::model::stage::Stage;
use crate::model::state::State;
use crate::Refusal;
use rules::{ByTeam, Team};

/// Asks who opens, where both teams were penalised between the sets.
pub(crate) fn who_opens(
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
pub(crate) fn unregistered_inside(questions: &mut Vec<Question>, entry: u32, team: Team, set: u8) {
    questions.push(Question {
        entry,
        ask: QuestionKind::UnregisteredInside { team, set },
    });
}

/// Asks what becomes of a match in which an unregistered player took part.
pub(crate) fn unregistered_after(
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
pub(crate) fn expire(questions: &mut Vec<Question>) {
    questions.retain(|q| !matches!(q.ask, QuestionKind::WhoOpens { .. }));
}

pub(crate) fn check(state: &State, entry: u32, choice: &str) -> Result<(), Refusal> {
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

pub(crate) fn answer(state: &mut State, entry: u32, choice: &str) {
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
