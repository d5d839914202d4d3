//! The beginning of a set.

use super::Table;
use crate::entry::Scope;
use crate::{may_start, notices, Kind, Notice, Phase};
use rules::{Shirt, Team};

impl Table {
    pub(super) fn begin_set(&mut self) {
        if notices(self.state()).contains(&Notice::Toss) {
            self.toss();
        }
        if self.state().phase() == Phase::BetweenSets {
            if self.now_and_then(25) {
                let team = self.team();
                self.misconduct(team);
                if self.now_and_then(3) {
                    self.penalties_on_both();
                }
            }
            if self.now_and_then(25) {
                let team = self.team();
                self.enter(
                    Kind::Delay {
                        team,
                        request: false,
                    },
                    1..5,
                );
            }
        }
        for team in Team::BOTH {
            self.line_up(team);
        }
        if self.now_and_then(12) {
            let team = self.team();
            self.substitution(team);
        }
        for team in Team::BOTH {
            self.libero(team);
        }
        if !self.enter(Kind::BeginSet, 60..180) {
            // A team that cannot bring a line-up together is incomplete (6.4.3).
            let short = Team::BOTH
                .into_iter()
                .find(|&t| self.state().line_up_given(t).is_none());
            let team = short.unwrap_or(Team::A);
            self.enter(
                Kind::Incomplete {
                    team,
                    scope: Scope::Match,
                },
                60..120,
            );
        }
    }

    pub(super) fn line_up(&mut self, team: Team) {
        let state = self.state();
        if !state.rules().line_ups || state.line_up_given(team).is_some() {
            return;
        }
        let size = usize::from(state.rules().players_on_court);
        let mut may_start: Vec<Shirt> = state
            .team(team)
            .listed()
            .filter(|&n| may_start(state, team, n).is_ok())
            .collect();
        self.shuffle(&mut may_start);
        may_start.truncate(size);
        self.enter(
            Kind::LineUp {
                team,
                positions: may_start,
            },
            5..30,
        );
    }
}
