//! What a team asks for: time-outs, substitutions, liberos.

use super::Table;
use crate::entry::{Change, Forced, Scope};
use crate::{legal, Kind, Level, Timed, Who};
use rules::{Shirt, Team};

impl Table {
    pub(super) fn time_out(&mut self, team: Team) {
        if self.enter(Kind::TimeOut { team }, 2..6) {
            self.time(Timed::TimeOut, team, 2);
        } else if self.now_and_then(8) {
            self.insist(Kind::TimeOut { team }, "both coaches agreed");
        } else if self.now_and_then(3) {
            self.enter(Kind::ImproperRequest { team }, 1..3);
        }
    }

    pub(super) fn substitution(&mut self, team: Team) {
        let ways: Vec<Change> = legal(self.state())
            .into_iter()
            .filter_map(|k| match k {
                Kind::Substitution {
                    team: t,
                    changes,
                    reason: None,
                } if t == team => Some(changes[0]),
                _ => None,
            })
            .collect();
        let Some(first) = self.pick(&ways) else {
            return;
        };
        let apart = |c: &Change| c.out != first.out && c.into != first.into;
        let others: Vec<Change> = ways.into_iter().filter(apart).collect();
        let mut changes = vec![first];
        if self.now_and_then(3) {
            changes.extend(self.pick(&others));
        }
        self.enter(
            Kind::Substitution {
                team,
                changes,
                reason: None,
            },
            5..20,
        );
    }

    /// Somebody for a player who must leave; if nobody can come, recovery time or an incomplete team.
    pub(super) fn replace(&mut self, team: Team, player: Shirt, reason: Option<Forced>) {
        let conduct = self.state().team(team).heaviest(&Who::Player(player));
        let reason = reason.unwrap_or(match conduct {
            Some(Level::Disqualification) => Forced::Disqualified,
            Some(Level::Expulsion) => Forced::Expelled,
            _ => Forced::Injury,
        });
        let legal = legal(self.state());
        let fits = |k: &Kind| match k {
            Kind::Substitution {
                team: t,
                changes,
                reason: r,
            } => *t == team && *r == Some(reason) && changes[0].out == player,
            _ => false,
        };
        let ways: Vec<Kind> = legal.into_iter().filter(fits).collect();
        match self.pick(&ways) {
            Some(kind) => {
                self.enter(kind, 10..40);
            }
            None if reason == Forced::Injury => {
                if !self.enter(
                    Kind::Recovery {
                        team,
                        number: player,
                    },
                    1..5,
                ) {
                    self.enter(
                        Kind::Incomplete {
                            team,
                            scope: Scope::Set,
                        },
                        100..180,
                    );
                }
            }
            None => {
                self.enter(
                    Kind::Incomplete {
                        team,
                        scope: Scope::Set,
                    },
                    20..60,
                );
            }
        }
    }

    pub(super) fn libero(&mut self, team: Team) {
        let ways: Vec<Kind> = legal(self.state())
            .into_iter()
            .filter(|k| matches!(k, Kind::LiberoReplacement { team: t, .. } if *t == team))
            .collect();
        if let Some(kind) = self.pick(&ways) {
            self.enter(kind, 1..5);
        }
    }

    pub(super) fn new_libero(&mut self, team: Team) {
        let ways: Vec<Kind> = legal(self.state())
            .into_iter()
            .filter(|k| matches!(k, Kind::NewLibero { team: t, .. } if *t == team))
            .collect();
        if let Some(kind) = self.pick(&ways) {
            self.enter(kind, 10..40);
        }
    }
}
