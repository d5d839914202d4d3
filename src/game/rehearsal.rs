//! Rehearsals: plausible invented matches from a seed, for tests, benches and demonstrations.
//!
//! The same seed gives the same match everywhere. How often things happen is common practice, no
//! source.

use fastrand::Rng;

use super::entry::{
    About, Amendment, By, Change, Check, Court, Detail, Entry, Fault, Forced, Found, Heading, Kind,
    LateFault, Level, Player, Scope, SeenBy, Since, Staff, TeamList, Timer, TimerAction, Toss, Who,
    Won,
};
use super::fold::Replay;
use super::legal::legal;
use super::notice::{notices, Notice};
use super::state::{Phase, State};
use crate::rules::{ByTeam, Cause, Group, Preset, Rules, Shirt, Team};

/// Invented names of teams.
const NAMES: [&str; 8] = [
    "Otters", "Herons", "Badgers", "Voles", "Newts", "Swifts", "Hares", "Owls",
];

/// A whole invented match by the rules of a preset.
#[must_use]
pub fn rehearse(preset: Preset, seed: u64) -> Vec<Entry> {
    rehearse_by(preset.rules(), seed)
}

/// The same by any rules.
#[must_use]
pub fn rehearse_by(rules: Rules, seed: u64) -> Vec<Entry> {
    let mut table = Table {
        rng: Rng::with_seed(seed),
        replay: Replay::new(),
        // A Saturday afternoon in May 2026, a quarter of an hour apart for each seed.
        now: 1_778_335_200_000 + i64::try_from(seed % 1000).unwrap_or(0) * 900_000,
    };
    table.prepare(rules);
    // No rehearsal needs more turns; a match of five long sets takes about 600.
    for _ in 0..5000 {
        match table.replay.state().phase() {
            Phase::Finished => break,
            Phase::Playing => table.rally(),
            Phase::Suspended => table.resume(),
            Phase::Preparation | Phase::BetweenSets => table.begin_set(),
        }
    }
    table.sign();
    table.replay.entries().to_vec()
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

/// A number below another one. The generator's own `usize` and `shuffle` give other matches on a
/// phone, which has 32 bits, than here.
fn below(rng: &mut Rng, end: usize) -> usize {
    usize::try_from(rng.u64(0..end as u64)).unwrap_or(0)
}

/// The scorer's table of the rehearsal.
struct Table {
    rng: Rng,
    replay: Replay,
    now: i64,
}

impl Table {
    fn state(&self) -> &State {
        self.replay.state()
    }

    /// One time in `times`.
    fn now_and_then(&mut self, times: u32) -> bool {
        self.rng.u32(0..times) == 0
    }

    fn pick<T: Clone>(&mut self, list: &[T]) -> Option<T> {
        (!list.is_empty()).then(|| list[below(&mut self.rng, list.len())].clone())
    }

    fn shuffle<T>(&mut self, list: &mut [T]) {
        for i in 1..list.len() {
            list.swap(i, below(&mut self.rng, i + 1));
        }
    }

    fn team(&mut self) -> Team {
        if self.rng.bool() {
            Team::A
        } else {
            Team::B
        }
    }

    /// Enters what is legal; a thing that is not is left out.
    fn enter(&mut self, kind: Kind, seconds: std::ops::Range<i64>) -> bool {
        self.now += self.rng.i64(seconds) * 1000;
        let entry = Entry {
            n: self.replay.next_number(),
            at: Some(self.now),
            insist: None,
            kind,
        };
        let taken = self.replay.may(&entry).is_ok();
        if taken {
            self.replay.push(entry);
        }
        taken
    }

    fn prepare(&mut self, rules: Rules) {
        let first = below(&mut self.rng, NAMES.len());
        let second = (first + 1 + below(&mut self.rng, NAMES.len() - 1)) % NAMES.len();
        let match_no = self.rng.u32(1..99).to_string();
        let names = ByTeam {
            a: NAMES[first].to_owned(),
            b: NAMES[second].to_owned(),
        };
        let mut heading = Heading::new(names, rules);
        heading.details[Detail::Competition] = Some("Spring rehearsal".to_owned());
        heading.details[Detail::Court] = Some("2".to_owned());
        heading.details[Detail::MatchNo] = Some(match_no);
        self.enter(Kind::Match(Box::new(heading)), 0..1);
        let mut later = Amendment::default();
        later.details[Detail::Venue] = Some("North hall".to_owned());
        self.enter(Kind::Heading(Box::new(later)), 1..5);
        for item in ["kit", "floor", "net", "ball", "first_aid", "briefing"] {
            let ok = !self.now_and_then(20);
            let note = (!ok).then(|| "seen before the match".to_owned());
            self.enter(
                Kind::Check(Check {
                    item: item.to_owned(),
                    ok,
                    note,
                }),
                20..90,
            );
            if !ok {
                let note = Some("put right, cleared by the coach in charge".to_owned());
                self.enter(
                    Kind::Check(Check {
                        item: item.to_owned(),
                        ok: true,
                        note,
                    }),
                    60..300,
                );
            }
        }
        if rules.line_ups {
            for team in Team::BOTH {
                let list = self.list(team, &rules);
                self.enter(Kind::TeamList(list), 60..120);
            }
        }
        if self.now_and_then(40) {
            let team = self.team();
            self.enter(Kind::Default { team }, 900..1200);
            return;
        }
        self.toss();
        for role in ["captain A", "captain B", "coach A", "coach B"] {
            self.enter(
                Kind::Sign {
                    role: role.to_owned(),
                    name: None,
                },
                5..20,
            );
        }
        for team in Team::BOTH {
            let seconds = u32::from(rules.warm_up.minutes) * 60;
            for (action, lasts) in [
                (TimerAction::Start, 0),
                (TimerAction::Stop, i64::from(seconds)),
            ] {
                let timer = Timer {
                    what: "warm_up".to_owned(),
                    team: Some(team),
                    seconds,
                    action,
                };
                self.enter(Kind::Timer(timer), lasts..lasts + 3);
            }
        }
    }

    fn list(&mut self, team: Team, rules: &Rules) -> TeamList {
        // Now and then a team comes with nobody on the bench.
        let least = u16::from(rules.players_on_court);
        let players = if self.now_and_then(12) {
            least
        } else {
            self.rng
                .u16(least + 2..=12.min(u16::from(rules.roster.max)))
        };
        let liberos = u16::from(rules.liberos).min(players.saturating_sub(least + 1));
        let players = (1..=players)
            .map(|n| Player {
                number: Shirt(n),
                name: None,
                captain: n == 2,
                libero: n > players - liberos,
            })
            .collect();
        let staff = vec![Staff {
            role: "coach".to_owned(),
            name: None,
        }];
        TeamList {
            team,
            players,
            staff,
        }
    }

    fn toss(&mut self) {
        let (first_service, left) = (self.team(), self.team());
        // Noted now and then, and always fitting the outcome.
        let chose = if first_service == left {
            About::Service
        } else {
            About::Side
        };
        let toss = Toss {
            first_service,
            left,
            won: (first_service == Team::A).then_some(Won { by: left, chose }),
        };
        self.enter(Kind::Toss(toss), 30..120);
    }

    fn begin_set(&mut self) {
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

    fn line_up(&mut self, team: Team) {
        let state = self.state();
        if !state.rules().line_ups || state.line_up_given(team).is_some() {
            return;
        }
        let size = usize::from(state.rules().players_on_court);
        let mut may_start: Vec<Shirt> = state
            .team(team)
            .list
            .iter()
            .flat_map(|l| l.players.iter().map(|p| p.number))
            .filter(|&n| super::may_start(state, team, n).is_ok())
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

    /// Everything around one rally.
    fn rally(&mut self) {
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
        let rally = self.replay.next_number() - 1;
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
    fn named(&self, chance: &mut Rng, cause: Cause, won_by: Team) -> Option<By> {
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
    fn due(&mut self) {
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
                Notice::Question { entry } => {
                    let asked = self
                        .state()
                        .questions()
                        .iter()
                        .find(|q| q.entry == entry)
                        .cloned();
                    if let Some(question) = asked {
                        let choice = self.pick(&question.ask.choices()).unwrap_or_default();
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

    /// Somebody for a player who must leave; if nobody can come, recovery time or an incomplete team.
    fn replace(&mut self, team: Team, player: Shirt, reason: Option<Forced>) {
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

    fn time_out(&mut self, team: Team) {
        if self.enter(Kind::TimeOut { team }, 2..6) {
            let seconds = u32::from(self.state().rules().time_outs.seconds);
            for (action, lasts) in [
                (TimerAction::Start, 0),
                (TimerAction::Stop, i64::from(seconds)),
            ] {
                let timer = Timer {
                    what: "time_out".to_owned(),
                    team: Some(team),
                    seconds,
                    action,
                };
                self.enter(Kind::Timer(timer), lasts..lasts + 2);
            }
        } else if self.now_and_then(8) {
            self.insist(Kind::TimeOut { team }, "both coaches agreed");
        } else if self.now_and_then(3) {
            self.enter(Kind::ImproperRequest { team }, 1..3);
        }
    }

    /// Enters what the rules are against, as the first referee's decision.
    fn insist(&mut self, kind: Kind, why: &str) {
        let insist = Some(why.to_owned());
        let entry = Entry {
            n: self.replay.next_number(),
            at: Some(self.now),
            insist,
            kind,
        };
        if self
            .replay
            .may(&entry)
            .is_err_and(|refusal| !refusal.is_final())
        {
            self.replay.push(entry);
        }
    }

    fn substitution(&mut self, team: Team) {
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

    fn libero(&mut self, team: Team) {
        let ways: Vec<Kind> = legal(self.state())
            .into_iter()
            .filter(|k| matches!(k, Kind::LiberoReplacement { team: t, .. } if *t == team))
            .collect();
        if let Some(kind) = self.pick(&ways) {
            self.enter(kind, 1..5);
        }
    }

    fn misconduct(&mut self, team: Team) {
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
    fn penalties_on_both(&mut self) {
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

    /// What a referee meets in one match of many.
    fn seldom(&mut self) {
        let team = self.team();
        match self.rng.u32(0..700) {
            0..=9 => {
                let why = [
                    super::entry::ReplayWhy::DoubleFault,
                    super::entry::ReplayWhy::Interference,
                    super::entry::ReplayWhy::Other,
                ];
                let why = why[below(&mut self.rng, 3)];
                self.enter(Kind::Replay { why, hurt: None }, 5..30);
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
            _ => {}
        }
    }

    fn injury(&mut self, team: Team) {
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
        let why = super::entry::ReplayWhy::Injury;
        self.enter(
            Kind::Replay {
                why,
                hurt: Some(hurt),
            },
            5..20,
        );
        self.replace(team, number, Some(Forced::Injury));
    }

    fn late_fault(&mut self, team: Team) {
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

    fn new_libero(&mut self, team: Team) {
        let ways: Vec<Kind> = legal(self.state())
            .into_iter()
            .filter(|k| matches!(k, Kind::NewLibero { team: t, .. } if *t == team))
            .collect();
        if let Some(kind) = self.pick(&ways) {
            self.enter(kind, 10..40);
        }
    }

    fn resume(&mut self) {
        let court = if self.now_and_then(3) {
            Court::Other
        } else {
            Court::Same
        };
        self.enter(Kind::Resume { court }, 300..2400);
    }

    fn sign(&mut self) {
        for role in [
            "scorer",
            "captain A",
            "captain B",
            "second referee",
            "first referee",
        ] {
            self.enter(
                Kind::Sign {
                    role: role.to_owned(),
                    name: None,
                },
                10..40,
            );
        }
    }
}
