//! What is likely next: the reducer says what is possible, the model learns what is usual.
//!
//! Every function here runs in both directions: a writer passes the value that is there, a reader passes
//! nothing and gets it back. What cannot happen in a state costs nothing; what does not fit the patterns
//! below is written as its JSON, letter by letter.

mod before;
mod court;
mod number;
mod pattern;
mod rally;
mod time;

use self::before::{next_line_up, starters, ROLES};
use self::court::{replacement, replacements};
use self::number::{pick, small, Size};
use self::pattern::{listed, pattern_of, Pattern, PATTERNS};
use self::rally::REPLAYS;
use self::time::ends_at;
use super::coder::{Chance, Coder};
use super::custom;
use super::text::Text;
use crate::game::entry::{About, By, Change};
use crate::game::{Entry, Kind, Replay};
use crate::record::file;
use crate::record::seal::seal_code;
use crate::rules::{Cause, Shirt, Step, Team};
use std::collections::BTreeMap;

const ABOUT: [About; 2] = [About::Service, About::Side];

/// Yes-or-no decisions that need no more than a name.
#[derive(Clone, Copy)]
enum Flag {
    RandomId,
    Backwards,
    Exact,
    StruckWithWhy,
    TimerOfTeam,
    TimerStops,
    TimerAsExpected,
    UsualSeconds,
    Forced,
    MoreChanges,
    LegalChange,
    NamedList,
    NextNumber,
    Captain,
    Libero,
    Named,
    SamePlace,
    NextInList,
    CheckFailed,
    Noted,
    CodeFits,
    RemarkOfTeam,
    TossNoted,
    SinceKnown,
    FoundAfter,
    PutRight,
    WholeSeconds,
}

/// How many there are.
const FLAGS: usize = Flag::WholeSeconds as usize + 1;

/// Everything learnt so far.
pub(super) struct Model {
    last: usize,
    /// What comes next, whatever was before, and behind each pattern.
    next: [Chance; PATTERNS],
    next_behind: [[Chance; PATTERNS]; PATTERNS],
    insists: Chance,
    timed: Chance,
    /// Sizes of numbers by pattern, and by the one before it as well.
    sizes: Vec<Size>,
    sizes_behind: Vec<Size>,
    serving_side_wins: Chance,
    serving_team_wins: [Chance; 2],
    has_cause: Chance,
    cause: [[Chance; 32]; 2],
    has_by: Chance,
    has_by_with: [Chance; 26],
    by_loser: [Chance; 26],
    by_server: [Chance; 26],
    has_seen_by: [Chance; 26],
    has_number: Chance,
    on_court: Chance,
    /// Who served the last rally.
    served: Option<(Team, Option<Shirt>)>,
    /// How often a player was named, and a libero went in or out.
    named: BTreeMap<(Team, Shirt), u32>,
    replaced: BTreeMap<(Team, Change), u32>,
    side: [Chance; PATTERNS],
    flags: [Chance; FLAGS],
    signed: usize,
    checked: usize,
    time_out_of: Option<Team>,
    words: Text,
    now: i64,
}

/// A chance for each cause, and one for none.
fn by_cause(in_16: impl Fn(Option<Cause>) -> u16) -> [Chance; 26] {
    std::array::from_fn(|i| Chance::yes_in_16(in_16(Cause::ALL.get(i).copied())))
}

impl Model {
    /// Before the first entry.
    pub fn new() -> Model {
        let mut flags = [Chance::EVEN; FLAGS];
        for (flag, in_16) in [
            (Flag::Backwards, 0),
            (Flag::Exact, 1),
            (Flag::TimerAsExpected, 15),
            (Flag::UsualSeconds, 14),
            (Flag::Forced, 1),
            (Flag::MoreChanges, 2),
            (Flag::LegalChange, 15),
            (Flag::NextNumber, 12),
            (Flag::Captain, 1),
            (Flag::Libero, 2),
            (Flag::SamePlace, 8),
            (Flag::NextInList, 13),
            (Flag::CheckFailed, 1),
            (Flag::Noted, 1),
            (Flag::CodeFits, 15),
        ] {
            flags[flag as usize] = Chance::yes_in_16(in_16);
        }
        let mut model = Model {
            last: Pattern::Words.place(),
            next: [Chance::EVEN; PATTERNS],
            next_behind: [[Chance::EVEN; PATTERNS]; PATTERNS],
            insists: Chance::yes_in_16(1),
            timed: Chance::yes_in_16(15),
            sizes: vec![Size::NEW; PATTERNS + 1],
            sizes_behind: vec![Size::NEW; (PATTERNS + 1) * PATTERNS],
            serving_side_wins: Chance::taught(7, 16, 20),
            serving_team_wins: [Chance::EVEN; 2],
            has_cause: Chance::yes_in_16(2),
            cause: [custom::causes(true), custom::causes(false)],
            has_by: Chance::yes_in_16(10),
            has_by_with: [Chance::EVEN; 26],
            by_loser: by_cause(|c| c.map_or(8, custom::loser_named)),
            by_server: by_cause(custom::server_named),
            has_seen_by: by_cause(|_| 1),
            has_number: Chance::yes_in_16(14),
            on_court: Chance::yes_in_16(15),
            served: None,
            named: BTreeMap::new(),
            replaced: BTreeMap::new(),
            side: [Chance::EVEN; PATTERNS],
            flags,
            signed: ROLES.len(),
            checked: Step::ALL.len(),
            time_out_of: None,
            words: Text::new(),
            now: 0,
        };
        model.teach();
        model
    }

    /// Goes through a stretch of an ordinary match.
    fn teach(&mut self) {
        let known = |letter: char| Pattern::ALL.into_iter().find(|p| p.letter() == letter);
        let mut nowhere = super::coder::Writer::new();
        for pattern in custom::ORDINARY.chars().filter_map(known) {
            for asked in Pattern::ALL {
                let found = asked == pattern;
                self.is_next(&mut nowhere, asked, found);
                if found {
                    break;
                }
            }
            self.last = pattern.place();
        }
        self.last = Pattern::Words.place();
    }

    fn is_next<C: Coder>(&mut self, coder: &mut C, asked: Pattern, value: bool) -> bool {
        let place = asked.place();
        let behind = &mut self.next_behind[self.last][place];
        coder.both(&mut self.next[place], behind, value)
    }

    fn flag<C: Coder>(&mut self, coder: &mut C, flag: Flag, value: bool) -> bool {
        coder.bit(&mut self.flags[flag as usize], value)
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
        let kind = self.kind(coder, replay, pattern, given.map(|e| &e.kind))?;
        let insists = coder.bit(&mut self.insists, given.is_some_and(|e| e.insist.is_some()));
        let insist = if insists {
            let given = given.and_then(|e| e.insist.as_deref());
            Some(self.words.code(coder, given)?)
        } else {
            None
        };
        let at = self.time(
            coder,
            pattern,
            ends_at(replay.state(), &kind),
            given.map(|e| e.at),
        );
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
        for pattern in Pattern::ALL {
            if pattern == Pattern::Words {
                break;
            }
            if pattern.is_possible(replay) && self.is_next(coder, pattern, wanted == Some(pattern))
            {
                return pattern;
            }
        }
        Pattern::Words
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
                let stays = coder.both(
                    &mut self.serving_side_wins,
                    &mut self.serving_team_wins[serving as usize],
                    parts.is_some_and(|p| p.0 == serving),
                );
                let won_by = if stays { serving } else { serving.other() };
                let with_cause =
                    coder.bit(&mut self.has_cause, parts.is_some_and(|p| p.1.is_some()));
                let cause = if with_cause {
                    Some(self.cause(coder, stays, parts.and_then(|p| p.1))?)
                } else {
                    None
                };
                let server = state.serving();
                let by = self.by(coder, state, cause, won_by, server, parts.map(|p| p.2));
                self.served = server;
                Kind::Rally { won_by, cause, by }
            }
            Pattern::ExplainLast | Pattern::Explain => {
                let parts = match given {
                    Some(Kind::Explain {
                        entry,
                        cause,
                        by,
                        seen_by,
                    }) => Some((*entry, *cause, *by, *seen_by)),
                    _ => None,
                };
                let last = replay.last_rally().map_or(0, |e| e.n);
                let entry = if pattern == Pattern::ExplainLast {
                    last
                } else {
                    let entry = parts.map_or(0, |p| u64::from(p.0));
                    small(self.number(coder, pattern.place(), entry))?
                };
                let rally = state.rally(entry);
                let stays = rally.is_some_and(|p| p.served == Some(p.to));
                let won_by = rally.map_or(Team::A, |p| p.to);
                let cause = self.cause(coder, stays, parts.map(|p| p.1))?;
                let server = self.served.filter(|_| pattern == Pattern::ExplainLast);
                let by = self.by(
                    coder,
                    state,
                    Some(cause),
                    won_by,
                    server,
                    parts.map(|p| p.2),
                );
                let seen_by = self.seen_by(coder, cause, parts.and_then(|p| p.3));
                Kind::Explain {
                    entry,
                    cause,
                    by,
                    seen_by,
                }
            }
            Pattern::Timer => self.timer(coder, state, given)?,
            Pattern::Check => self.check(coder, given)?,
            Pattern::Sign => self.sign(coder, given)?,
            Pattern::Seal => {
                let given = match given {
                    Some(Kind::Seal { code }) => Some(code.as_str()),
                    _ => None,
                };
                let code = seal_code(replay.entries());
                if self.flag(coder, Flag::CodeFits, given == Some(&code)) {
                    Kind::Seal { code }
                } else {
                    let code = self.words.code(coder, given)?;
                    Kind::Seal { code }
                }
            }
            Pattern::Libero => {
                let ways = replacements(state);
                let place = given
                    .and_then(|g| ways.iter().position(|w| w == g))
                    .unwrap_or(0);
                let keys: Vec<(Team, Change)> = ways.iter().filter_map(replacement).collect();
                let often = |key| self.replaced.get(key).copied().unwrap_or(0);
                let weights: Vec<u32> = keys.iter().map(|key| 1 + 6 * often(key).min(50)).collect();
                let place = coder.choose(&weights, place);
                *self.replaced.entry(keys[place]).or_default() += 1;
                ways[place].clone()
            }
            Pattern::TimeOut => {
                let team = match given {
                    Some(Kind::TimeOut { team }) => Some(*team),
                    _ => None,
                };
                let team = self.team(coder, pattern, team);
                self.time_out_of = Some(team);
                Kind::TimeOut { team }
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
                let entry = small(self.number(coder, pattern.place(), entry))?;
                let why = parts.and_then(|p| p.1);
                let with_why = self.flag(coder, Flag::StruckWithWhy, why.is_some());
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
                let before = state.last_line_up(team).unwrap_or_default();
                let positions = (0..size)
                    .map(|i| {
                        let wanted = given.and_then(|g| g.get(i));
                        let same = before.get(i).and_then(|s| free.iter().position(|f| f == s));
                        if let Some(same) = same {
                            if self.flag(coder, Flag::SamePlace, wanted == Some(&free[same])) {
                                return free.remove(same);
                            }
                        }
                        let place = free.iter().position(|s| Some(s) == wanted).unwrap_or(0);
                        free.remove(pick(coder, free.len(), place))
                    })
                    .collect();
                Kind::LineUp { team, positions }
            }
            Pattern::BeginSet => Kind::BeginSet,
            Pattern::Toss => {
                let given = match given {
                    Some(Kind::Toss(toss)) => Some(*toss),
                    _ => None,
                };
                Kind::Toss(self.toss(coder, given))
            }
            Pattern::ChangeCourts => Kind::ChangeCourts,
            Pattern::TeamList => self.team_list(coder, given)?,
            Pattern::Remark => {
                let (text, of) = match given {
                    Some(Kind::Remark { text, team }) => (Some(text.as_str()), *team),
                    _ => (None, None),
                };
                let team = if self.flag(coder, Flag::RemarkOfTeam, of.is_some()) {
                    Some(self.team(coder, pattern, of))
                } else {
                    None
                };
                let text = self.words.code(coder, text)?;
                Kind::Remark { text, team }
            }
            Pattern::Hurt => {
                let (why, hurt) = match given {
                    Some(Kind::Replay { why, hurt, .. }) => (Some(*why), *hurt),
                    _ => (None, None),
                };
                let place = why.and_then(|why| REPLAYS.iter().position(|r| *r == why));
                let place = coder.choose(&[9, 1, 1, 1], place.unwrap_or(0));
                let of = self.team(coder, pattern, hurt.map(|h| h.team));
                let by = hurt.map(|h| h.number);
                let number = by.flatten();
                let numbered = coder.bit(&mut self.has_number, number.is_some());
                let number = numbered.then(|| self.player(coder, state, of, 25, None, number));
                Kind::Replay {
                    why: REPLAYS[place],
                    hurt: Some(By { team: of, number }),
                    rally: None,
                }
            }
            Pattern::LateFault => self.late_fault(coder, state, given),
            Pattern::Listed => {
                let all = listed(state);
                let place = given.and_then(|g| all.iter().position(|k| k == g));
                let place = pick(coder, all.len(), place.unwrap_or(0));
                let found = all.into_iter().nth(place);
                found.ok_or_else(|| "nothing is legal".to_owned())?
            }
            Pattern::Words => {
                let json = given.map(json_of);
                let json = self.words.code(coder, json.as_deref())?;
                file::read_entry(&format!("{JSON_HEAD}{json}"))?.kind
            }
        })
    }
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
