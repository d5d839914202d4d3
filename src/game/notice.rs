//! What is due, said once at the moment it matters.

use crate::model::entry::Check;
use crate::model::stage::{Phase, Stage};
use crate::model::state::State;
use crate::play::game_captain;
use crate::play::libero;
use rules::{Shirt, Step, Team};

/// Something that is due, or worth knowing now.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields say whom it concerns.
pub enum Notice {
    /// A check for safety failed and nobody has cleared it.
    DoNotStart { item: String },
    /// A team list is missing.
    TeamList { team: Team },
    /// The toss is due (7.1).
    Toss,
    /// A line-up is due (7.3.2).
    LineUp { team: Team },
    /// The teams change courts (18.2.2).
    ChangeCourts,
    /// The next point wins the set.
    SetPoint { team: Team },
    /// The next point wins the match.
    MatchPoint { team: Team },
    /// A player must leave: expelled, disqualified or out for the match (15.8).
    MustSubstitute { team: Team, player: Shirt },
    /// A libero must leave: in the front row, about to serve, or sent off (19.3.1).
    LiberoMustLeave { team: Team, player: Shirt },
    /// A team has taken its last time-out; the coach is told (24.2.7).
    LastTimeOut { team: Team },
    /// A team has one substitution left, or none; the coach is told (24.2.7).
    SubstitutionsLeft { team: Team, left: u8 },
    /// The captain is not on court and nobody is named who speaks for the team (5.1.2).
    GameCaptain { team: Team },
    /// A question waits for an answer.
    Question { entry: u32 },
    /// The reason given with the last rally was dropped: the serving team may stand anywhere (7.4).
    CauseDropped { entry: u32 },
}

impl Notice {
    /// The name in an output.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Notice::DoNotStart { .. } => "do_not_start",
            Notice::TeamList { .. } => "team_list",
            Notice::Toss => "toss",
            Notice::LineUp { .. } => "line_up",
            Notice::ChangeCourts => "change_courts",
            Notice::SetPoint { .. } => "set_point",
            Notice::MatchPoint { .. } => "match_point",
            Notice::MustSubstitute { .. } => "must_substitute",
            Notice::LiberoMustLeave { .. } => "libero_must_leave",
            Notice::LastTimeOut { .. } => "last_time_out",
            Notice::SubstitutionsLeft { .. } => "substitutions_left",
            Notice::GameCaptain { .. } => "game_captain",
            Notice::Question { .. } => "question",
            Notice::CauseDropped { .. } => "cause_dropped",
        }
    }

    /// The team it concerns.
    #[must_use]
    pub const fn team(&self) -> Option<Team> {
        match self {
            Notice::TeamList { team }
            | Notice::LineUp { team }
            | Notice::SetPoint { team }
            | Notice::MatchPoint { team }
            | Notice::MustSubstitute { team, .. }
            | Notice::LiberoMustLeave { team, .. }
            | Notice::LastTimeOut { team }
            | Notice::GameCaptain { team }
            | Notice::SubstitutionsLeft { team, .. } => Some(*team),
            Notice::DoNotStart { .. }
            | Notice::Toss
            | Notice::ChangeCourts
            | Notice::Question { .. }
            | Notice::CauseDropped { .. } => None,
        }
    }
}

/// Everything due in a state, the most urgent first.
#[must_use]
pub fn notices(state: &State) -> Vec<Notice> {
    let mut due = Vec::new();
    due.extend(questions(state));
    let dropped = state.dropped_cause();
    due.extend(dropped.map(|entry| Notice::CauseDropped { entry }));
    if state.heading().is_none() || state.phase() == Phase::Finished {
        return due;
    }
    due.extend(leavers(state));
    match &state.stage {
        Stage::Playing(play) => {
            if play.change_of_courts_due(&state.rules) {
                due.push(Notice::ChangeCourts);
            }
            due.extend(
                Team::BOTH
                    .into_iter()
                    .filter_map(|team| point_that_wins(state, team)),
            );
            due.extend(Team::BOTH.into_iter().flat_map(|team| counts(state, team)));
        }
        Stage::NextSet(_) => {
            due.extend(before_set(state));
        }
        Stage::Suspended { .. } | Stage::Finished(_) => {}
    }
    due.extend(
        Team::BOTH
            .into_iter()
            .filter(|&team| game_captain::is_missing(state, team))
            .map(|team| Notice::GameCaptain { team }),
    );
    due
}

fn questions(state: &State) -> impl Iterator<Item = Notice> + '_ {
    state
        .questions()
        .iter()
        .map(|q| Notice::Question { entry: q.entry })
}

fn before_set(state: &State) -> Vec<Notice> {
    let mut due = Vec::new();
    if state.phase() == Phase::Preparation {
        // Where nobody can be hurt a failed check is no reason not to start.
        let safety = |c: &&Check| Step::from_code(&c.item).is_none_or(Step::is_safety);
        let failed = state.checks().iter().filter(|c| !c.ok).filter(safety);
        due.extend(failed.map(|Check { item, .. }| Notice::DoNotStart { item: item.clone() }));
    }
    if !state.rules.line_ups {
        return due;
    }
    let missing = Team::BOTH
        .into_iter()
        .filter(|&t| state.team(t).list.is_none());
    due.extend(missing.map(|team| Notice::TeamList { team }));
    if state.server_to_come().is_none() {
        due.push(Notice::Toss);
    }
    let missing = Team::BOTH
        .into_iter()
        .filter(|&t| state.line_up_given(t).is_none());
    due.extend(missing.map(|team| Notice::LineUp { team }));
    due
}

/// Players on court, or holding a place there, who may not be.
fn leavers(state: &State) -> Vec<Notice> {
    let mut due = Vec::new();
    let Some(play) = state.on_floor() else {
        return due;
    };
    for team in Team::BOTH {
        for (place, slot) in play.sides[team].slots.iter().enumerate() {
            let known = state.team(team);
            if known.barred(slot.player, play.number).is_some() {
                due.push(Notice::MustSubstitute {
                    team,
                    player: slot.player,
                });
            }
            if let Some(player) = slot.libero {
                let serves = place == 0 && play.serving == Some(team);
                let barred = known.barred(player, play.number).is_some();
                if libero::is_front(place) || serves || barred {
                    due.push(Notice::LiberoMustLeave { team, player });
                }
            }
        }
    }
    due
}

fn point_that_wins(state: &State, team: Team) -> Option<Notice> {
    let play = state.play()?;
    let next = play.score.plus(team);
    let wins = state.rules.winner_of(play.number, next, play.time_up);
    (wins == Some(team)).then_some(())?;
    let won = state.sets_won();
    let match_point = match state.rules.sets_to_win() {
        Some(needed) => won[team] + 1 >= needed,
        None => play.number >= state.rules.sets_at_most() && won[team] + 1 > won[team.other()],
    };
    Some(if match_point {
        Notice::MatchPoint { team }
    } else {
        Notice::SetPoint { team }
    })
}

/// The counts that the second referee reports (24.2.7).
fn counts(state: &State, team: Team) -> Vec<Notice> {
    let mut due = Vec::new();
    let Some(play) = state.play() else { return due };
    let side = &play.sides[team];
    let limits = &state.rules.time_outs;
    let reached = |taken: u8, most: Option<u8>| most.is_some_and(|most| most > 0 && taken >= most);
    if reached(side.time_outs, limits.per_set)
        || reached(state.time_outs_in_match(team), limits.per_match)
    {
        due.push(Notice::LastTimeOut { team });
    }
    if let Some(most) = state.rules.substitutions.per_set {
        let left = most.saturating_sub(side.substitutions);
        if left <= 1 && side.substitutions > 0 {
            due.push(Notice::SubstitutionsLeft { team, left });
        }
    }
    due
}
