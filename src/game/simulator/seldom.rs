//! What a referee meets in one match of many.

use super::{below, Table};
use crate::entry::{By, Court, Fault, Forced, Found, LateFault, ReplayWhy, Since};
use crate::{Kind, Level, Who};
use rules::{Shirt, Team};

impl Table {
    /// What a referee meets in one match of many.
    pub(super) fn seldom(&mut self) {
        let team = self.team();
        match self.rng.u32(0..700) {
            0..=9 => {
                let why = [
                    ReplayWhy::DoubleFault,
                    ReplayWhy::Interference,
                    ReplayWhy::Other,
                ];
                let why = why[below(&mut self.rng, 3)];
                self.enter(
                    Kind::Replay {
                        why,
                        hurt: None,
                        rally: None,
                    },
                    5..30,
                );
            }
            10..=15 => self.misconduct(team),
            16..=21 => {
                self.enter(
                    Kind::Delay {
                        team,
                        request: false,
                    },
                    5..20,
                );
            }
            22..=25 => self.injury(team),
            26..=29 => self.late_fault(team),
            30..=31 => {
                self.enter(
                    Kind::Suspend {
                        why: "lights out".to_owned(),
                    },
                    5..20,
                );
            }
            32..=34 => {
                let text = "Shoelace tied, no delay.".to_owned();
                self.enter(
                    Kind::Remark {
                        text,
                        team: Some(team),
                    },
                    5..20,
                );
            }
            35..=37 => self.new_libero(team),
            38..=40 => {
                self.enter(Kind::ImproperRequest { team }, 1..3);
            }
            // A point was entered too soon. What was asked for in between would need it.
            41..=43 => {
                let why = ReplayWhy::Interference;
                let at_once = |rally: &u32| match self.timeline.last_standing() {
                    Some(last) => match last.kind {
                        Kind::Explain { entry, .. } => entry == *rally,
                        _ => last.n == *rally,
                    },
                    None => false,
                };
                let rally = self.timeline.replayable().filter(at_once);
                self.enter(
                    Kind::Replay {
                        why,
                        hurt: None,
                        rally,
                    },
                    5..30,
                );
            }
            44..=46 => {
                let text = "The block touch was not seen.".to_owned();
                let kind = Kind::Protest {
                    team,
                    number: None,
                    text,
                };
                self.enter_aside(kind, 12);
            }
            _ => {}
        }
    }

    pub(super) fn misconduct(&mut self, team: Team) {
        let level = [
            Level::Warning,
            Level::Warning,
            Level::Penalty,
            Level::Penalty,
        ];
        let heavy = [Level::Expulsion, Level::Disqualification];
        let sanction = match self.rng.u32(0..6) {
            5 => heavy[below(&mut self.rng, 2)],
            n => level[usize::try_from(n % 4).unwrap_or(0)],
        };
        let who = if self.rng.bool() {
            Who::Staff("coach".to_owned())
        } else {
            Who::Player(Shirt(self.rng.u16(1..7)))
        };
        self.enter(
            Kind::Misconduct {
                team,
                who,
                sanction,
            },
            5..30,
        );
    }

    /// A quarrel in the interval: each coach gets a penalty.
    pub(super) fn penalties_on_both(&mut self) {
        for team in Team::BOTH {
            let who = Who::Staff("coach".to_owned());
            let sanction = Level::Penalty;
            self.enter(
                Kind::Misconduct {
                    team,
                    who,
                    sanction,
                },
                5..30,
            );
        }
    }

    pub(super) fn injury(&mut self, team: Team) {
        let on_court: Vec<Shirt> = self
            .state()
            .on_floor()
            .map(|play| play.sides[team].slots.iter().map(|s| s.player).collect())
            .unwrap_or_default();
        let Some(number) = self.pick(&on_court) else {
            return;
        };
        let hurt = By {
            team,
            number: Some(number),
        };
        let why = ReplayWhy::Injury;
        self.enter(
            Kind::Replay {
                why,
                hurt: Some(hurt),
                rally: None,
            },
            5..20,
        );
        self.replace(team, number, Some(Forced::Injury));
    }

    pub(super) fn late_fault(&mut self, team: Team) {
        let Some(play) = self.state().play() else {
            return;
        };
        let scores: Vec<_> = play.scores().collect();
        let positions: Vec<Shirt> = play.sides[team].on_court().collect();
        let from = scores.len().saturating_sub(6);
        let since = self
            .pick(&scores[from..])
            .map(|score| Since { score, set: None });
        let faults = [
            Fault::Rotation,
            Fault::Rotation,
            Fault::IllegalSubstitution,
            Fault::WrongLineUp,
        ];
        let fault = faults[below(&mut self.rng, 4)];
        let during = if self.rng.bool() {
            Found::Rally
        } else {
            Found::AfterRally
        };
        let positions = (fault != Fault::Rotation && !positions.is_empty()).then_some(positions);
        let fault = LateFault {
            team,
            fault,
            since,
            during,
            positions,
        };
        self.enter(Kind::LateFault(fault), 20..90);
    }

    pub(super) fn resume(&mut self) {
        let court = if self.now_and_then(3) {
            Court::Other
        } else {
            Court::Same
        };
        self.enter(Kind::Resume { court }, 300..2400);
    }
}
