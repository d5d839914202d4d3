//! What is likely next: the reducer says what is possible, the model learns what is usual.
//!
//! Every function here runs in both directions: a writer passes the value that is there, a reader passes
//! nothing and gets it back. What cannot happen in a state costs nothing; what does not fit the patterns
//! below is written as its JSON, letter by letter.

use super::coder::{Chance, Coder};
use super::text::Text;
use crate::game::entry::{By, Change, Forced, Player, Staff, TeamList, Timer, TimerAction, Toss};
use crate::game::{may, may_start, Entry, Kind, Phase, Replay, State};
use crate::record::file;
use crate::rules::{Cause, Shirt, Team};

/// The patterns, in the order in which they are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Pattern {
    Rally,
    ExplainLast,
    Timer,
    Libero,
    TimeOut,
    Substitution,
    StrikeLast,
    LineUp,
    BeginSet,
    Toss,
    ChangeCourts,
    TeamList,
    Explain,
    Strike,
    Words,
}

impl Pattern {
    const ALL: [Pattern; 15] = [
        Pattern::Rally,
        Pattern::ExplainLast,
        Pattern::Timer,
        Pattern::Libero,
        Pattern::TimeOut,
        Pattern::Substitution,
        Pattern::StrikeLast,
        Pattern::LineUp,
        Pattern::BeginSet,
        Pattern::Toss,
        Pattern::ChangeCourts,
        Pattern::TeamList,
        Pattern::Explain,
        Pattern::Strike,
        Pattern::Words,
    ];

    fn place(self) -> usize {
        Pattern::ALL.iter().position(|p| *p == self).unwrap_or(0)
    }

    /// Whether an entry of this pattern can come next.
    fn is_possible(self, replay: &Replay) -> bool {
        let state = replay.state();
        let can = |kind: Kind| may(state, &Entry::new(u32::MAX, kind)).is_ok();
        match self {
            Pattern::Rally => state.phase() == Phase::Playing,
            Pattern::ExplainLast => replay.last_rally().is_some(),
            Pattern::Libero => !replacements(state).is_empty(),
            Pattern::TimeOut => Team::BOTH
                .into_iter()
                .any(|team| can(Kind::TimeOut { team })),
            Pattern::Substitution => state.rules().line_ups && state.on_floor().is_some(),
            Pattern::StrikeLast => replay.last_standing().is_some(),
            Pattern::LineUp => next_line_up(state).is_some(),
            Pattern::BeginSet => can(Kind::BeginSet),
            Pattern::Toss => TOSSES.into_iter().any(|toss| can(Kind::Toss(toss))),
            Pattern::ChangeCourts => can(Kind::ChangeCourts),
            Pattern::TeamList => state.heading().is_some() && state.phase() == Phase::Preparation,
            Pattern::Explain | Pattern::Strike => replay.entries().len() > 1,
            Pattern::Timer | Pattern::Words => true,
        }
    }
}

const TOSSES: [Toss; 4] = [
    Toss {
        first_service: Team::A,
        left: Team::A,
    },
    Toss {
        first_service: Team::A,
        left: Team::B,
    },
    Toss {
        first_service: Team::B,
        left: Team::A,
    },
    Toss {
        first_service: Team::B,
        left: Team::B,
    },
];

/// The count-downs that have a place of their own.
const TIMERS: [&str; 5] = ["time_out", "interval", "warm_up", "recovery", "service"];

/// Everything learnt so far.
pub(super) struct Model {
    last: usize,
    next: [[Chance; 15]; 15],
    insists: Chance,
    timed: Chance,
    size_of_step: [[Chance; 64]; 15],
    late_digit: [[Chance; 32]; 15],
    serving_side_wins: Chance,
    has_cause: [Chance; 2],
    cause: [[Chance; 32]; 2],
    has_by: [Chance; 2],
    by_fault: [Chance; 26],
    has_number: Chance,
    on_court: Chance,
    side: [Chance; 15],
    flags: [Chance; 12],
    words: Text,
    now: i64,
}

impl Model {
    /// Before the first entry.
    pub fn new() -> Model {
        Model {
            last: 0,
            next: [[Chance::EVEN; 15]; 15],
            insists: Chance::yes_in_16(1),
            timed: Chance::yes_in_16(12),
            size_of_step: [[Chance::EVEN; 64]; 15],
            late_digit: [[Chance::EVEN; 32]; 15],
            serving_side_wins: Chance::EVEN,
            has_cause: [Chance::yes_in_16(4); 2],
            cause: [[Chance::EVEN; 32]; 2],
            has_by: [Chance::EVEN; 2],
            by_fault: [Chance::EVEN; 26],
            has_number: Chance::yes_in_16(12),
            on_court: Chance::yes_in_16(15),
            side: [Chance::EVEN; 15],
            flags: [Chance::EVEN; 12],
            words: Text::new(),
            now: 0,
        }
    }

    /// The id of a record; most are sixteen random bytes in the usual writing.
    ///
    /// # Errors
    /// A reader found no text.
    pub fn id<C: Coder>(&mut self, coder: &mut C, given: Option<&str>) -> Result<String, String> {
        let random = given.and_then(random_id);
        if coder.bit(&mut self.flags[0], random.is_some()) {
            let random = random.unwrap_or_default();
            let bytes: Vec<String> = random
                .map(|byte| coder.uniform(256, u32::from(byte)))
                .iter()
                .map(|byte| format!("{byte:02x}"))
                .collect();
            let part = |from: usize, to: usize| bytes[from..to].concat();
            let parts = [
                part(0, 4),
                part(4, 6),
                part(6, 8),
                part(8, 10),
                part(10, 16),
            ];
            return Ok(parts.join("-"));
        }
        self.words.code(coder, given)
    }

    /// One entry behind those of `replay`.
    ///
    /// # Errors
    /// A reader found something that no writer writes.
    pub fn entry<C: Coder>(
        &mut self,
        coder: &mut C,
        replay: &Replay,
        given: Option<&Entry>,
    ) -> Result<Entry, String> {
        let pattern = self.pattern(coder, replay, given);
        let at = self.time(coder, pattern, given.map(|e| e.at));
        let insists = coder.bit(&mut self.insists, given.is_some_and(|e| e.insist.is_some()));
        let insist = if insists {
            let given = given.and_then(|e| e.insist.as_deref());
            Some(self.words.code(coder, given)?)
        } else {
            None
        };
        let kind = self.kind(coder, replay, pattern, given.map(|e| &e.kind))?;
        self.last = pattern.place();
        Ok(Entry {
            n: replay.next_number(),
            at,
            insist,
            kind,
        })
    }

    fn pattern<C: Coder>(
        &mut self,
        coder: &mut C,
        replay: &Replay,
        given: Option<&Entry>,
    ) -> Pattern {
        let wanted = given.map(|e| pattern_of(replay, &e.kind));
        for (place, pattern) in Pattern::ALL.into_iter().enumerate() {
            if pattern == Pattern::Words {
                break;
            }
            if pattern.is_possible(replay)
                && coder.bit(&mut self.next[self.last][place], wanted == Some(pattern))
            {
                return pattern;
            }
        }
        Pattern::Words
    }

    /// Whole seconds since the last entry where they are whole, milliseconds otherwise.
    fn time<C: Coder>(
        &mut self,
        coder: &mut C,
        pattern: Pattern,
        given: Option<Option<i64>>,
    ) -> Option<i64> {
        let at = given.flatten();
        if !coder.bit(&mut self.timed, at.is_some()) {
            return None;
        }
        let step = at.unwrap_or(0).wrapping_sub(self.now);
        let backwards = coder.bit(&mut self.flags[0], step < 0);
        let exact = coder.bit(&mut self.flags[1], step % 1000 != 0);
        let size = step.unsigned_abs();
        let size = if exact {
            self.number(coder, pattern, size)
        } else {
            self.number(coder, pattern, size / 1000).wrapping_mul(1000)
        };
        #[allow(clippy::cast_possible_wrap)] // The way back from the unsigned size.
        let step = if backwards {
            (size as i64).wrapping_neg()
        } else {
            size as i64
        };
        self.now = self.now.wrapping_add(step);
        Some(self.now)
    }

    /// A number by its length in bits, the highest bits learnt, the others plain.
    fn number<C: Coder>(&mut self, coder: &mut C, pattern: Pattern, value: u64) -> u64 {
        let place = pattern.place();
        let bits = tree(
            coder,
            &mut self.size_of_step[place],
            6,
            64 - value.leading_zeros(),
        );
        let mut found = u64::from(bits > 0);
        for below in (0..bits.saturating_sub(1)).rev() {
            let bit = value >> below & 1 == 1;
            let bit = if below + 2 >= bits && bits < 32 {
                coder.bit(&mut self.late_digit[place][bits as usize], bit)
            } else {
                coder.uniform(2, u32::from(bit)) == 1
            };
            found = found << 1 | u64::from(bit);
        }
        found
    }

    fn team<C: Coder>(&mut self, coder: &mut C, pattern: Pattern, given: Option<Team>) -> Team {
        if coder.bit(&mut self.side[pattern.place()], given == Some(Team::B)) {
            Team::B
        } else {
            Team::A
        }
    }

    fn kind<C: Coder>(
        &mut self,
        coder: &mut C,
        replay: &Replay,
        pattern: Pattern,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let state = replay.state();
        Ok(match pattern {
            Pattern::Rally => {
                let parts = match given {
                    Some(Kind::Rally { won_by, cause, by }) => Some((*won_by, *cause, *by)),
                    _ => None,
                };
                let serving = state.serving().map_or(Team::A, |s| s.0);
                let stays = coder.bit(
                    &mut self.serving_side_wins,
                    parts.is_some_and(|p| p.0 == serving),
                );
                let won_by = if stays { serving } else { serving.other() };
                let with_cause =
                    coder.bit(&mut self.has_cause[0], parts.is_some_and(|p| p.1.is_some()));
                let cause = if with_cause {
                    Some(self.cause(coder, stays, parts.and_then(|p| p.1))?)
                } else {
                    None
                };
                let by = self.by(coder, state, cause, won_by, parts.map(|p| p.2));
                Kind::Rally { won_by, cause, by }
            }
            Pattern::ExplainLast | Pattern::Explain => {
                let parts = match given {
                    Some(Kind::Explain { entry, cause, by }) => Some((*entry, *cause, *by)),
                    _ => None,
                };
                let last = replay.last_rally().map_or(0, |e| e.n);
                let entry = if pattern == Pattern::ExplainLast {
                    last
                } else {
                    let entry = parts.map_or(0, |p| u64::from(p.0));
                    small(self.number(coder, pattern, entry))?
                };
                let rally = state.rally(entry);
                let stays = rally.is_some_and(|p| p.served == Some(p.to));
                let won_by = rally.map_or(Team::A, |p| p.to);
                let cause = self.cause(coder, stays, parts.map(|p| p.1))?;
                let by = self.by(coder, state, Some(cause), won_by, parts.map(|p| p.2));
                Kind::Explain { entry, cause, by }
            }
            Pattern::Timer => self.timer(coder, given)?,
            Pattern::Libero => {
                let ways = replacements(state);
                let place = given
                    .and_then(|g| ways.iter().position(|w| w == g))
                    .unwrap_or(0);
                ways[pick(coder, ways.len(), place)].clone()
            }
            Pattern::TimeOut => {
                let team = match given {
                    Some(Kind::TimeOut { team }) => Some(*team),
                    _ => None,
                };
                Kind::TimeOut {
                    team: self.team(coder, pattern, team),
                }
            }
            Pattern::Substitution => self.substitution(coder, state, given)?,
            Pattern::StrikeLast => {
                let entry = replay.last_standing().map_or(0, |e| e.n);
                Kind::Strike { entry, why: None }
            }
            Pattern::Strike => {
                let parts = match given {
                    Some(Kind::Strike { entry, why }) => Some((*entry, why.as_deref())),
                    _ => None,
                };
                let entry = parts.map_or(0, |p| u64::from(p.0));
                let entry = small(self.number(coder, pattern, entry))?;
                let why = parts.and_then(|p| p.1);
                let with_why = coder.bit(&mut self.flags[2], why.is_some());
                let why = if with_why {
                    Some(self.words.code(coder, why)?)
                } else {
                    None
                };
                Kind::Strike { entry, why }
            }
            Pattern::LineUp => {
                let team = next_line_up(state).unwrap_or(Team::A);
                let mut free = starters(state, team);
                let given = match given {
                    Some(Kind::LineUp { positions, .. }) => Some(positions),
                    _ => None,
                };
                let size = usize::from(state.rules().players_on_court).min(free.len());
                let positions = (0..size)
                    .map(|i| {
                        let place = given
                            .and_then(|g| free.iter().position(|s| Some(s) == g.get(i)))
                            .unwrap_or(0);
                        free.remove(pick(coder, free.len(), place))
                    })
                    .collect();
                Kind::LineUp { team, positions }
            }
            Pattern::BeginSet => Kind::BeginSet,
            Pattern::Toss => {
                let place = given.and_then(|g| TOSSES.iter().position(|t| *g == Kind::Toss(*t)));
                Kind::Toss(TOSSES[pick(coder, 4, place.unwrap_or(0))])
            }
            Pattern::ChangeCourts => Kind::ChangeCourts,
            Pattern::TeamList => self.team_list(coder, given)?,
            Pattern::Words => {
                let json = given.map(json_of);
                let json = self.words.code(coder, json.as_deref())?;
                file::read_entry(&format!("{JSON_HEAD}{json}"))?.kind
            }
        })
    }

    fn cause<C: Coder>(
        &mut self,
        coder: &mut C,
        stays: bool,
        given: Option<Cause>,
    ) -> Result<Cause, String> {
        let place = given
            .and_then(|g| Cause::ALL.iter().position(|c| *c == g))
            .unwrap_or(0);
        let place = u32::try_from(place).unwrap_or(0);
        let place = tree(coder, &mut self.cause[usize::from(stays)], 5, place);
        let cause = usize::try_from(place).ok().and_then(|p| Cause::ALL.get(p));
        cause
            .copied()
            .ok_or_else(|| "a cause that does not exist".to_owned())
    }

    /// Who did it: as a rule the side at fault, for a winner the other one.
    fn by<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        cause: Option<Cause>,
        won_by: Team,
        given: Option<Option<By>>,
    ) -> Option<By> {
        let by = given.flatten();
        let asked = usize::from(cause.is_some());
        if !coder.bit(&mut self.has_by[asked], by.is_some()) {
            return None;
        }
        let place = cause
            .and_then(|c| Cause::ALL.iter().position(|a| *a == c))
            .unwrap_or(25);
        let at_fault = coder.bit(
            &mut self.by_fault[place],
            by.is_some_and(|b| b.team != won_by),
        );
        let team = if at_fault { won_by.other() } else { won_by };
        let number = by.and_then(|b| b.number);
        if !coder.bit(&mut self.has_number, number.is_some()) {
            return Some(By { team, number: None });
        }
        let on_court: Vec<Shirt> = state
            .shown()
            .map(|p| p.sides[team].on_court().collect())
            .unwrap_or_default();
        let place = number.and_then(|n| on_court.iter().position(|s| *s == n));
        let number = if !on_court.is_empty() && coder.bit(&mut self.on_court, place.is_some()) {
            on_court[pick(coder, on_court.len(), place.unwrap_or(0))]
        } else {
            shirt(coder, number)
        };
        Some(By {
            team,
            number: Some(number),
        })
    }

    fn timer<C: Coder>(&mut self, coder: &mut C, given: Option<&Kind>) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::Timer(timer)) => Some(timer),
            _ => None,
        };
        let place = given
            .and_then(|t| TIMERS.iter().position(|w| *w == t.what))
            .unwrap_or(5);
        let place = pick(coder, 6, place);
        let what = match TIMERS.get(place) {
            Some(what) => (*what).to_owned(),
            None => self.words.code(coder, given.map(|t| t.what.as_str()))?,
        };
        let of = given.and_then(|t| t.team);
        let team = if coder.bit(&mut self.flags[3], of.is_some()) {
            Some(self.team(coder, Pattern::Timer, of))
        } else {
            None
        };
        let stops = given.is_some_and(|t| t.action == TimerAction::Stop);
        let action = if coder.bit(&mut self.flags[4], stops) {
            TimerAction::Stop
        } else {
            TimerAction::Start
        };
        let seconds = given.map_or(0, |t| u64::from(t.seconds));
        let seconds = small(self.number(coder, Pattern::Timer, seconds))?;
        Ok(Kind::Timer(Timer {
            what,
            team,
            seconds,
            action,
        }))
    }

    fn substitution<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let parts = match given {
            Some(Kind::Substitution {
                team,
                changes,
                reason,
            }) => Some((*team, changes, *reason)),
            _ => None,
        };
        let team = self.team(coder, Pattern::Substitution, parts.map(|p| p.0));
        let reasons = [
            None,
            Some(Forced::Injury),
            Some(Forced::Expelled),
            Some(Forced::Disqualified),
        ];
        let reason = parts
            .and_then(|p| reasons.iter().position(|r| *r == p.2))
            .unwrap_or(0);
        let forced = coder.bit(&mut self.flags[5], reason > 0);
        let reason = if forced {
            1 + pick(coder, 3, reason.saturating_sub(1))
        } else {
            0
        };
        let mut out = holders(state, team);
        let mut into = bench(state, team);
        let mut changes = Vec::new();
        loop {
            let change = parts.and_then(|p| p.1.get(changes.len())).copied();
            let place = |list: &[Shirt], s: Option<Shirt>| {
                s.and_then(|s| list.iter().position(|l| *l == s))
                    .unwrap_or(0)
            };
            if out.is_empty() || into.is_empty() {
                return Err("a substitution without players".to_owned());
            }
            let leaves = out.remove(pick(coder, out.len(), place(&out, change.map(|c| c.out))));
            let comes = into.remove(pick(
                coder,
                into.len(),
                place(&into, change.map(|c| c.into)),
            ));
            changes.push(Change {
                out: leaves,
                into: comes,
            });
            let more = parts.is_some_and(|p| p.1.len() > changes.len());
            if out.is_empty() || into.is_empty() || !coder.bit(&mut self.flags[6], more) {
                break;
            }
        }
        Ok(Kind::Substitution {
            team,
            changes,
            reason: reasons[reason],
        })
    }

    fn team_list<C: Coder>(&mut self, coder: &mut C, given: Option<&Kind>) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::TeamList(list)) => Some(list),
            _ => None,
        };
        let team = self.team(coder, Pattern::TeamList, given.map(|l| l.team));
        let count = given.map_or(0, |l| l.players.len() as u64);
        let count: u32 = small(self.number(coder, Pattern::TeamList, count))?;
        let named = coder.bit(
            &mut self.flags[7],
            given.is_some_and(|l| l.players.iter().any(|p| p.name.is_some())),
        );
        let mut players = Vec::new();
        let mut last = Shirt(0);
        for i in 0..count.min(400) {
            let player = given.and_then(|l| l.players.get(i as usize));
            // By custom numbers rise, by one more often than not.
            let number = player.map_or(0, |p| p.number.0);
            let next = coder.bit(&mut self.flags[8], number == last.0.wrapping_add(1));
            let number = if next {
                Shirt(last.0.wrapping_add(1))
            } else {
                shirt(coder, player.map(|p| p.number))
            };
            let captain = coder.bit(&mut self.flags[9], player.is_some_and(|p| p.captain));
            let libero = coder.bit(&mut self.flags[10], player.is_some_and(|p| p.libero));
            let name = if named {
                let name = player.and_then(|p| p.name.as_deref());
                let has = coder.bit(&mut self.flags[11], name.is_some());
                if has {
                    Some(self.words.code(coder, name)?)
                } else {
                    None
                }
            } else {
                None
            };
            last = number;
            players.push(Player {
                number,
                name,
                captain,
                libero,
            });
        }
        let count = given.map_or(0, |l| l.staff.len() as u64);
        let count: u32 = small(self.number(coder, Pattern::TeamList, count))?;
        let mut staff = Vec::new();
        for i in 0..count.min(100) {
            let person = given.and_then(|l| l.staff.get(i as usize));
            let role = self.words.code(coder, person.map(|p| p.role.as_str()))?;
            let name = person.and_then(|p| p.name.as_deref());
            let has = coder.bit(&mut self.flags[11], name.is_some());
            let name = if has {
                Some(self.words.code(coder, name)?)
            } else {
                None
            };
            staff.push(Staff { role, name });
        }
        Ok(Kind::TeamList(TeamList {
            team,
            players,
            staff,
        }))
    }
}

/// The pattern that brings an entry back exactly.
fn pattern_of(replay: &Replay, kind: &Kind) -> Pattern {
    let state = replay.state();
    let wanted = match kind {
        Kind::Rally { .. } if state.phase() == Phase::Playing => Pattern::Rally,
        Kind::Explain { entry, .. } => {
            if replay.last_rally().is_some_and(|e| e.n == *entry) {
                Pattern::ExplainLast
            } else {
                Pattern::Explain
            }
        }
        Kind::Timer(_) => Pattern::Timer,
        Kind::LiberoReplacement { .. } if replacements(state).contains(kind) => Pattern::Libero,
        Kind::TimeOut { .. } => Pattern::TimeOut,
        Kind::Substitution { team, changes, .. } => {
            let (out, into) = (holders(state, *team), bench(state, *team));
            let fits = !changes.is_empty()
                && changes.iter().enumerate().all(|(i, c)| {
                    let again = |d: &Change| d.out == c.out || d.into == c.into;
                    out.contains(&c.out)
                        && into.contains(&c.into)
                        && !changes[..i].iter().any(again)
                });
            if fits {
                Pattern::Substitution
            } else {
                Pattern::Words
            }
        }
        Kind::Strike { entry, why } => {
            if why.is_none() && replay.last_standing().is_some_and(|e| e.n == *entry) {
                Pattern::StrikeLast
            } else {
                Pattern::Strike
            }
        }
        Kind::LineUp { team, positions } => {
            let free = starters(state, *team);
            let size = usize::from(state.rules().players_on_court).min(free.len());
            let fits = next_line_up(state) == Some(*team)
                && positions.len() == size
                && positions
                    .iter()
                    .enumerate()
                    .all(|(i, s)| free.contains(s) && !positions[..i].contains(s));
            if fits {
                Pattern::LineUp
            } else {
                Pattern::Words
            }
        }
        Kind::BeginSet => Pattern::BeginSet,
        Kind::Toss(_) => Pattern::Toss,
        Kind::ChangeCourts => Pattern::ChangeCourts,
        Kind::TeamList(list) if list.players.len() <= 400 && list.staff.len() <= 100 => {
            Pattern::TeamList
        }
        _ => Pattern::Words,
    };
    if wanted.is_possible(replay) {
        wanted
    } else {
        Pattern::Words
    }
}

/// The next team whose line-up is due.
fn next_line_up(state: &State) -> Option<Team> {
    let waits = matches!(state.phase(), Phase::Preparation | Phase::BetweenSets);
    let missing = |team: &Team| state.line_up_given(*team).is_none();
    Team::BOTH
        .into_iter()
        .filter(|_| waits && state.rules().line_ups)
        .find(missing)
}

/// Who may stand in a line-up, in the order of the list.
fn starters(state: &State, team: Team) -> Vec<Shirt> {
    let list = state.team(team).list.as_deref();
    let players = list
        .into_iter()
        .flat_map(|l| l.players.iter().map(|p| p.number));
    players
        .filter(|&s| may_start(state, team, s).is_ok())
        .collect()
}

/// Who holds a place on court.
fn holders(state: &State, team: Team) -> Vec<Shirt> {
    let play = state.on_floor();
    play.map(|p| p.sides[team].slots.iter().map(|s| s.player).collect())
        .unwrap_or_default()
}

/// Listed players who hold none.
fn bench(state: &State, team: Team) -> Vec<Shirt> {
    let Some(play) = state.on_floor() else {
        return Vec::new();
    };
    let list = state.team(team).list.as_deref();
    let players = list
        .into_iter()
        .flat_map(|l| l.players.iter().map(|p| p.number));
    players
        .filter(|&s| !play.sides[team].holds(s) && !state.team(team).is_libero(s))
        .collect()
}

/// Every legal libero replacement, both teams'.
fn replacements(state: &State) -> Vec<Kind> {
    let Some(play) = state.on_floor() else {
        return Vec::new();
    };
    let mut ways = Vec::new();
    for team in Team::BOTH {
        let side = &play.sides[team];
        let liberos = state.team(team).liberos.clone();
        for slot in &side.slots {
            let back = slot.libero.map(|_| slot.player);
            for into in liberos.iter().copied().chain(back) {
                let change = Change {
                    out: slot.on_court(),
                    into,
                };
                let kind = Kind::LiberoReplacement { team, change };
                if may(state, &Entry::new(u32::MAX, kind.clone())).is_ok() {
                    ways.push(kind);
                }
            }
        }
    }
    ways
}

/// The bytes of an id in the usual writing of random ids, eight, four, four, four and twelve digits.
fn random_id(id: &str) -> Option<[u8; 16]> {
    let digits: Vec<u8> = id.bytes().filter(|b| *b != b'-').collect();
    let lower = |b: &u8| b.is_ascii_digit() || (b'a'..=b'f').contains(b);
    let dashes: Vec<usize> = id
        .bytes()
        .enumerate()
        .filter(|b| b.1 == b'-')
        .map(|b| b.0)
        .collect();
    if digits.len() != 32 || !digits.iter().all(lower) || dashes != [8, 13, 18, 23] {
        return None;
    }
    let mut bytes = [0; 16];
    for (byte, pair) in bytes.iter_mut().zip(digits.chunks(2)) {
        *byte = u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok()?;
    }
    Some(bytes)
}

/// A small number by a tree of yes-or-no.
fn tree<C: Coder>(coder: &mut C, chances: &mut [Chance], bits: u32, value: u32) -> u32 {
    let mut node = 1usize;
    for below in (0..bits).rev() {
        let bit = coder.bit(&mut chances[node], value >> below & 1 == 1);
        node = node << 1 | usize::from(bit);
    }
    u32::try_from(node - (1 << bits)).unwrap_or(0)
}

/// One of a list, all equally likely.
fn pick<C: Coder>(coder: &mut C, total: usize, place: usize) -> usize {
    let total = u32::try_from(total).unwrap_or(1);
    coder.uniform(total, u32::try_from(place).unwrap_or(0)) as usize
}

fn shirt<C: Coder>(coder: &mut C, given: Option<Shirt>) -> Shirt {
    let given = u32::from(given.map_or(0, |s| s.0));
    let usual = coder.uniform(2, u32::from(given >= 128)) == 0;
    let total = if usual { 128 } else { 65536 };
    Shirt(u16::try_from(coder.uniform(total, given)).unwrap_or(0))
}

fn small(value: u64) -> Result<u32, String> {
    u32::try_from(value).map_err(|_| "a number that is too large".to_owned())
}

/// How the JSON of an entry without number, time and insisting begins.
const JSON_HEAD: &str = "{\"n\":1,\"kind\":\"";

/// The JSON of a kind, without its beginning.
fn json_of(kind: &Kind) -> String {
    let json = file::write_entry(&Entry::new(1, kind.clone()));
    json.strip_prefix(JSON_HEAD).unwrap_or_default().to_owned()
}

/// Whether a log can be packed at all: numbers in order from 1.
pub(super) fn is_in_order(entries: &[Entry]) -> bool {
    (1u32..).zip(entries).all(|(n, e)| e.n == n)
}
