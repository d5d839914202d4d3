//! A rally and everything around it.

use fastrand::Rng;

use super::{below, Table};
use crate::entry::{By, Change, SeenBy};
use crate::{can_be_named, notices, Kind, Notice, Phase};
use rules::{Cause, Group, Shirt, Team};

impl Table {
    /// Everything around one rally.
    pub(super) fn rally(&mut self) {
        self.due();
        for team in Team::BOTH {
            if self.now_and_then(40) {
                self.time_out(team);
            }
            if self.now_and_then(30) {
                self.substitution(team);
            }
            if self.now_and_then(5) {
                self.libero(team);
            }
        }
        self.seldom();
        if self.state().phase() != Phase::Playing {
            return;
        }
        // The serving side wins about two rallies of five in junior play: common practice, no source.
        let serving = self.state().serving().map(|s| s.0);
        let won_by = match serving {
            Some(team) if self.rng.u32(0..10) < 6 => team.other(),
            Some(team) => team,
            None => self.team(),
        };
        if !self.enter(
            Kind::Rally {
                won_by,
                cause: None,
                by: None,
            },
            8..40,
        ) {
            return;
        }
        let rally = self.timeline.next_number() - 1;
        if self.now_and_then(60) {
            // A wrong tap, taken back and put right.
            self.enter(
                Kind::Strike {
                    entry: rally,
                    why: None,
                },
                1..4,
            );
            let won_by = won_by.other();
            self.enter(
                Kind::Rally {
                    won_by,
                    cause: None,
                    by: None,
                },
                1..4,
            );
            return;
        }
        if !self.now_and_then(4) {
            let server_lost = serving == Some(won_by.other());
            // A chance of its own: what is said about a rally does not change how play goes on.
            let mut chance = Rng::with_seed(self.rng.u64(..));
            let cause = cause(&mut chance, server_lost);
            let by = self.named(&mut chance, cause, won_by);
            self.enter(
                Kind::Explain {
                    entry: rally,
                    cause,
                    by,
                    seen_by: seen_by(&mut chance, cause),
                },
                1..6,
            );
        }
    }

    /// Who did it, four times out of five: the server of a service, otherwise somebody on court, those
    /// in the front row more often.
    pub(super) fn named(&self, chance: &mut Rng, cause: Cause, won_by: Team) -> Option<By> {
        let play = self.state().play()?;
        let of_winner = matches!(cause, Cause::BallIn | Cause::ServiceWinner);
        let team = if of_winner { won_by } else { won_by.other() };
        // The rally is entered: a side that has gained the service has rotated, and its server is new.
        let by_server = cause.group() == Some(Group::Service);
        let on_court: Vec<Shirt> = play.sides[team].on_court().collect();
        let places = if by_server { 0..1 } else { 0..on_court.len() };
        let front = if chance.u8(0..3) > 0 {
            1..4
        } else {
            places.clone()
        };
        let places = if by_server || on_court.len() < 4 {
            places
        } else {
            front
        };
        let number = *on_court.get(places.start + below(chance, places.len().max(1)))?;
        (chance.u8(0..5) > 0).then_some(By {
            team,
            number: Some(number),
        })
    }

    /// What is due comes first: change of courts, players who must leave, questions.
    pub(super) fn due(&mut self) {
        for notice in notices(self.state()) {
            match notice {
                Notice::ChangeCourts => {
                    self.enter(Kind::ChangeCourts, 10..40);
                }
                Notice::LiberoMustLeave { team, player } => {
                    let slot = self.state().on_floor().and_then(|play| {
                        play.sides[team]
                            .slots
                            .iter()
                            .find(|s| s.libero == Some(player))
                            .copied()
                    });
                    if let Some(slot) = slot {
                        let change = Change {
                            out: player,
                            into: slot.player,
                        };
                        self.enter(Kind::LiberoReplacement { team, change }, 1..4);
                    }
                }
                Notice::MustSubstitute { team, player } => self.replace(team, player, None),
                // Somebody else may have been asked first, and the captain be back.
                Notice::GameCaptain { team } => {
                    if let Some(&number) = can_be_named(self.state(), team).first() {
                        self.enter_aside(Kind::GameCaptain { team, number }, 4);
                    }
                }
                Notice::Question { entry } => {
                    let asked = self
                        .state()
                        .questions()
                        .iter()
                        .find(|q| q.entry == entry)
                        .cloned();
                    if let Some(question) = asked {
                        let choice = self.pick(question.ask.choices()).unwrap_or_default();
                        self.enter(
                            Kind::Answer {
                                entry,
                                choice: choice.to_owned(),
                            },
                            5..20,
                        );
                    }
                }
                _ => {}
            }
        }
    }
}

/// A cause that fits, by how often each is met: common practice and memory, no source.
fn cause(chance: &mut Rng, server_lost: bool) -> Cause {
    let weight = |cause: &Cause| match cause {
        Cause::BallIn => 300,
        Cause::BallOut => 190,
        Cause::BallTouched => 100,
        Cause::ServiceNet => 110,
        Cause::ServiceOut => 80,
        Cause::ServiceWinner => 130,
        Cause::NetTouch => 45,
        Cause::DoubleContact => 30,
        Cause::Catch => 35,
        Cause::UnderNet | Cause::ServiceFoot => 20,
        Cause::NotSaid => 0,
        Cause::FourHits | Cause::Antenna | Cause::OverNet | Cause::AttackFault => 12,
        _ => 5,
    };
    let fits: Vec<Cause> = Cause::ALL
        .into_iter()
        .filter(|c| c.fits(server_lost))
        .collect();
    let mut left = chance.u32(0..fits.iter().map(weight).sum());
    for cause in fits {
        if left < weight(&cause) {
            return cause;
        }
        left -= weight(&cause);
    }
    Cause::BallOut
}

/// Who showed it: seldom anybody, and then whose task it is. How often is memory, no source.
fn seen_by(chance: &mut Rng, cause: Cause) -> Option<SeenBy> {
    let (whose, times) = match cause {
        Cause::NetTouch | Cause::UnderNet | Cause::PositionFault => (SeenBy::SecondReferee, 2),
        Cause::BallOut | Cause::BallTouched | Cause::ServiceFoot => (SeenBy::LineJudge, 6),
        Cause::RotationFault => (SeenBy::Scorer, 2),
        _ => return None,
    };
    (chance.u32(0..times) == 0).then_some(whose)
}
