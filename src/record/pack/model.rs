//! What is likely next: the reducer says what is possible, the model learns what is usual.
//!
//! Every function here runs in both directions: a writer passes the value that is there, a reader passes
//! nothing and gets it back. What cannot happen in a state costs nothing; what does not fit the patterns
//! below is written as its JSON, letter by letter.

use std::collections::BTreeMap;

use super::coder::{Chance, Coder};
use super::custom;
use super::text::Text;
use crate::game::entry::{
    About, By, Change, Check, Fault, Forced, Found, LateFault, Player, ReplayWhy, SeenBy, Since,
    Staff, TeamList, Timer, TimerAction, Toss, Won,
};
use crate::game::{legal, may, may_start, Entry, Kind, Phase, Replay, RunningTimer, State, Timed};
use crate::record::file;
use crate::record::seal::seal_code;
use crate::rules::{Cause, Score, Shirt, Step, Team};

/// The patterns, in the order in which they are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pattern {
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
    Check,
    Sign,
    Seal,
    Explain,
    Strike,
    Remark,
    Hurt,
    LateFault,
    /// Anything else of what the reducer lists as legal.
    Listed,
    Words,
}

/// How many there are.
const PATTERNS: usize = Pattern::ALL.len();

impl Pattern {
    const ALL: [Pattern; 22] = [
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
        Pattern::Check,
        Pattern::Sign,
        Pattern::Seal,
        Pattern::Explain,
        Pattern::Strike,
        Pattern::Remark,
        Pattern::Hurt,
        Pattern::LateFault,
        Pattern::Listed,
        Pattern::Words,
    ];

    fn place(self) -> usize {
        self as usize
    }

    /// Its sign in [`custom::ORDINARY`].
    const fn letter(self) -> char {
        match self {
            Pattern::Rally => 'r',
            Pattern::ExplainLast => 'e',
            Pattern::Timer => 't',
            Pattern::Libero => 'l',
            Pattern::TimeOut => 'o',
            Pattern::Substitution => 's',
            Pattern::StrikeLast => 'x',
            Pattern::LineUp => 'b',
            Pattern::BeginSet => 'g',
            Pattern::Toss => 'h',
            Pattern::ChangeCourts => 'c',
            Pattern::TeamList => 'u',
            Pattern::Check => 'k',
            Pattern::Sign => 'n',
            Pattern::Seal => 'z',
            Pattern::Explain => '?',
            Pattern::Strike => '!',
            Pattern::Remark => 'm',
            Pattern::Hurt => 'i',
            Pattern::LateFault => 'f',
            Pattern::Listed => 'a',
            Pattern::Words => 'w',
        }
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
            Pattern::Toss => can(Kind::Toss(Toss::new(Team::A, Team::A))),
            Pattern::ChangeCourts => can(Kind::ChangeCourts),
            Pattern::TeamList => state.heading().is_some() && state.phase() == Phase::Preparation,
            Pattern::Check | Pattern::Sign => state.heading().is_some(),
            Pattern::Seal => state.heading().is_some() && state.sealed().is_none(),
            Pattern::Explain | Pattern::Strike => replay.entries().len() > 1,
            Pattern::Listed => state.heading().is_some() && state.sealed().is_none(),
            Pattern::Hurt | Pattern::LateFault => state.play().is_some(),
            Pattern::Timer | Pattern::Remark | Pattern::Words => true,
        }
    }
}

const ABOUT: [About; 2] = [About::Service, About::Side];

/// Milliseconds of a second.
const SECOND: i64 = 1000;

/// The count-downs that have a place of their own.
const TIMERS: [Timed; 6] = [
    Timed::TimeOut,
    Timed::Interval,
    Timed::WarmUp,
    Timed::Recovery,
    Timed::Service,
    Timed::LateTeam,
];

/// Who signs, in a usual order.
const ROLES: [&str; 9] = [
    "captain A",
    "captain B",
    "coach A",
    "coach B",
    "scorer",
    "captain A",
    "captain B",
    "second referee",
    "first referee",
];

/// Chances of a number: how many bits it has, and the first of them.
#[derive(Clone)]
struct Size {
    bits: [Chance; 128],
    first: [Chance; 128],
}

impl Size {
    const NEW: Size = Size {
        bits: [Chance::EVEN; 128],
        first: [Chance::EVEN; 128],
    };
}

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

    /// Nobody is more likely to win it, or to choose one thing, than the other.
    fn toss<C: Coder>(&mut self, coder: &mut C, given: Option<Toss>) -> Toss {
        let team = |coder: &mut C, given: Option<Team>| {
            Team::BOTH[pick(coder, 2, usize::from(given == Some(Team::B)))]
        };
        let first_service = team(coder, given.map(|t| t.first_service));
        let left = team(coder, given.map(|t| t.left));
        let won = given.and_then(|t| t.won);
        let noted = self.flag(coder, Flag::TossNoted, won.is_some());
        let won = noted.then(|| Won {
            by: team(coder, won.map(|w| w.by)),
            chose: ABOUT[pick(coder, 2, won.map_or(0, |w| w.chose as usize))],
        });
        Toss {
            first_service,
            left,
            won,
        }
    }

    fn flag<C: Coder>(&mut self, coder: &mut C, flag: Flag, value: bool) -> bool {
        coder.bit(&mut self.flags[flag as usize], value)
    }

    /// The id of a record; most are sixteen random bytes in the usual writing.
    ///
    /// # Errors
    /// A reader found no text.
    pub fn id<C: Coder>(&mut self, coder: &mut C, given: Option<&str>) -> Result<String, String> {
        let random = given.and_then(random_id);
        if self.flag(coder, Flag::RandomId, random.is_some()) {
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

    /// Whole seconds since the last entry where they are whole; a count-down that was stopped by its
    /// distance from its end.
    fn time<C: Coder>(
        &mut self,
        coder: &mut C,
        pattern: Pattern,
        expected: Option<i64>,
        given: Option<Option<i64>>,
    ) -> Option<i64> {
        let at = given.flatten();
        if !coder.bit(&mut self.timed, at.is_some()) {
            return None;
        }
        let at = at.unwrap_or(0);
        self.now = if let Some(expected) = expected {
            let apart = at.wrapping_sub(expected);
            // By hand and in whole seconds, or by the clock of a screen.
            let whole = self.flag(coder, Flag::WholeSeconds, apart % SECOND == 0);
            let unit = if whole { SECOND } else { 1 };
            let step = self.signed(coder, PATTERNS, apart / unit);
            expected.wrapping_add(step.wrapping_mul(unit))
        } else {
            let second = self.now.div_euclid(SECOND);
            let step = self.signed(coder, pattern.place(), at.div_euclid(SECOND) - second);
            let mut found = second.wrapping_add(step).wrapping_mul(SECOND);
            let rest = at.rem_euclid(SECOND);
            if self.flag(coder, Flag::Exact, rest != 0) {
                let rest = u32::try_from(rest).unwrap_or(0);
                found = found.wrapping_add(i64::from(coder.uniform(1000, rest)));
            }
            found
        };
        Some(self.now)
    }

    #[allow(clippy::cast_possible_wrap)] // The way back from the unsigned size.
    fn signed<C: Coder>(&mut self, coder: &mut C, place: usize, step: i64) -> i64 {
        let backwards = self.flag(coder, Flag::Backwards, step < 0);
        let size = self.number(coder, place, step.unsigned_abs());
        if backwards {
            (size as i64).wrapping_neg()
        } else {
            size as i64
        }
    }

    /// A number by its length in bits, the highest bits learnt, the others plain.
    fn number<C: Coder>(&mut self, coder: &mut C, place: usize, value: u64) -> u64 {
        let general = &mut self.sizes[place];
        let behind = &mut self.sizes_behind[place * PATTERNS + self.last];
        let length = 64 - value.leading_zeros();
        let mut node = 1usize;
        for below in (0..7).rev() {
            let bit = length >> below & 1 == 1;
            let bit = coder.both(&mut general.bits[node], &mut behind.bits[node], bit);
            node = node << 1 | usize::from(bit);
        }
        let length = (node - 128).min(64);
        let mut found = u64::from(length > 0);
        for below in (0..length.saturating_sub(1)).rev() {
            let bit = value >> below & 1 == 1;
            let depth = length - 1 - below;
            let bit = if depth <= 2 && length <= 30 {
                // The first bit by the length alone, the second by the first as well.
                let at = length * 4 + usize::from(depth == 2) * (1 + usize::from(found & 1 == 1));
                coder.both(&mut general.first[at], &mut behind.first[at], bit)
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
                    Some(Kind::Replay { why, hurt }) => (Some(*why), *hurt),
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

    /// Who did it: as a rule the side at fault, for a winner the other one; for a service the server.
    fn by<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        cause: Option<Cause>,
        won_by: Team,
        server: Option<(Team, Option<Shirt>)>,
        given: Option<Option<By>>,
    ) -> Option<By> {
        let by = given.flatten();
        let place = cause
            .and_then(|c| Cause::ALL.iter().position(|a| *a == c))
            .unwrap_or(25);
        let has_by = &mut self.has_by_with[place];
        if !coder.both(&mut self.has_by, has_by, by.is_some()) {
            return None;
        }
        let by_loser = coder.bit(
            &mut self.by_loser[place],
            by.is_some_and(|b| b.team != won_by),
        );
        let team = if by_loser { won_by.other() } else { won_by };
        let number = by.and_then(|b| b.number);
        if !coder.bit(&mut self.has_number, number.is_some()) {
            return Some(By { team, number: None });
        }
        let number = self.player(coder, state, team, place, server, number);
        Some(By {
            team,
            number: Some(number),
        })
    }

    /// Who of the other officials showed it; seldom said.
    fn seen_by<C: Coder>(
        &mut self,
        coder: &mut C,
        cause: Cause,
        given: Option<SeenBy>,
    ) -> Option<SeenBy> {
        let place = Cause::ALL.iter().position(|c| *c == cause).unwrap_or(25);
        if !coder.bit(&mut self.has_seen_by[place], given.is_some()) {
            return None;
        }
        let place = SeenBy::ALL.iter().position(|s| Some(*s) == given);
        Some(SeenBy::ALL[pick(coder, SeenBy::ALL.len(), place.unwrap_or(0))])
    }

    /// A player of a team: the server, somebody on court, or any number.
    fn player<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        team: Team,
        cause: usize,
        server: Option<(Team, Option<Shirt>)>,
        number: Option<Shirt>,
    ) -> Shirt {
        let server = server.filter(|s| s.0 == team).and_then(|s| s.1);
        if let Some(server) = server {
            if coder.bit(&mut self.by_server[cause], number == Some(server)) {
                return server;
            }
        }
        let on_court: Vec<Shirt> = state
            .shown()
            .map(|p| {
                p.sides[team]
                    .on_court()
                    .filter(|s| Some(*s) != server)
                    .collect()
            })
            .unwrap_or_default();
        let place = number.and_then(|n| on_court.iter().position(|s| *s == n));
        let number = if !on_court.is_empty() && coder.bit(&mut self.on_court, place.is_some()) {
            let often = |s: &Shirt| self.named.get(&(team, *s)).copied().unwrap_or(0);
            let weights: Vec<u32> = on_court.iter().map(|s| 2 + often(s).min(500)).collect();
            on_court[coder.choose(&weights, place.unwrap_or(0))]
        } else {
            shirt(coder, number)
        };
        *self.named.entry((team, number)).or_default() += 1;
        number
    }

    fn timer<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        if let Some(expected) = self.expected_timer(state) {
            let as_expected = given == Some(&expected);
            if self.flag(coder, Flag::TimerAsExpected, as_expected) {
                return Ok(expected);
            }
        }
        let given = match given {
            Some(Kind::Timer(timer)) => Some(timer),
            _ => None,
        };
        let place = given
            .and_then(|t| TIMERS.iter().position(|w| *w == t.what))
            .unwrap_or(TIMERS.len());
        let place = pick(coder, TIMERS.len() + 1, place);
        let what = match TIMERS.get(place) {
            Some(what) => what.clone(),
            None => Timed::of_code(&self.words.code(coder, given.map(|t| t.what.code()))?),
        };
        let of = given.and_then(|t| t.team);
        let team = if self.flag(coder, Flag::TimerOfTeam, of.is_some()) {
            Some(self.team(coder, Pattern::Timer, of))
        } else {
            None
        };
        let stops = given.is_some_and(|t| t.action == TimerAction::Stop);
        let action = if self.flag(coder, Flag::TimerStops, stops) {
            TimerAction::Stop
        } else {
            TimerAction::Start
        };
        let usual = what.seconds(state.rules());
        let is_usual = given.map(|t| t.seconds) == usual;
        let seconds = match usual {
            Some(usual) if self.flag(coder, Flag::UsualSeconds, is_usual) => usual,
            _ => {
                let seconds = given.map_or(0, |t| u64::from(t.seconds));
                small(self.number(coder, Pattern::Timer.place(), seconds))?
            }
        };
        Ok(Kind::Timer(Timer {
            what,
            team,
            seconds,
            action,
        }))
    }

    /// The count-down that is running is stopped; one for a time-out follows upon it.
    fn expected_timer(&self, state: &State) -> Option<Kind> {
        if let Some(running) = state.timers().last() {
            return Some(Kind::Timer(running.timer.stopped()));
        }
        let timed = self.last == Pattern::TimeOut.place();
        let start = || Timed::TimeOut.start(self.time_out_of, state.rules());
        timed.then(start).flatten().map(Kind::Timer)
    }

    /// A fault found late whose moment, if it is given, is a score of the set that is on.
    fn late_fault<C: Coder>(&mut self, coder: &mut C, state: &State, given: Option<&Kind>) -> Kind {
        let given = match given {
            Some(Kind::LateFault(fault)) => Some(fault),
            _ => None,
        };
        let team = self.team(coder, Pattern::LateFault, given.map(|f| f.team));
        let place = given.and_then(|f| FAULTS.iter().position(|k| *k == f.fault));
        let fault = FAULTS[coder.choose(&[8, 3, 2, 2, 1], place.unwrap_or(0))];
        // Counted back from now, as somebody remembers it.
        let stood: Vec<Score> = stood(state);
        let since = given.and_then(|f| f.since);
        let back = since.and_then(|s| stood.iter().position(|score| *score == s.score));
        let since = if self.flag(coder, Flag::SinceKnown, since.is_some()) && !stood.is_empty() {
            let score = stood[pick(coder, stood.len(), back.unwrap_or(0))];
            Some(Since { score, set: None })
        } else {
            None
        };
        let after = given.is_some_and(|f| f.during == Found::AfterRally);
        let during = if self.flag(coder, Flag::FoundAfter, after) {
            Found::AfterRally
        } else {
            Found::Rally
        };
        let put_right = given.is_some_and(|f| f.positions.is_some());
        let positions = self.flag(coder, Flag::PutRight, put_right).then(|| {
            let play = state.play();
            play.map(|p| p.sides[team].on_court().collect())
                .unwrap_or_default()
        });
        Kind::LateFault(LateFault {
            team,
            fault,
            since,
            during,
            positions,
        })
    }

    fn check<C: Coder>(&mut self, coder: &mut C, given: Option<&Kind>) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::Check(check)) => Some(check),
            _ => None,
        };
        let place = |c: &Check| Step::ALL.iter().position(|s| s.code() == c.item);
        let place = given.and_then(place).unwrap_or(0);
        let place = self.next_in_list(coder, self.checked, Step::ALL.len(), place);
        self.checked = place;
        let failed = self.flag(coder, Flag::CheckFailed, given.is_some_and(|c| !c.ok));
        let note = given.and_then(|c| c.note.as_deref());
        let note = if self.flag(coder, Flag::Noted, note.is_some()) {
            Some(self.words.code(coder, note)?)
        } else {
            None
        };
        Ok(Kind::Check(Check {
            item: Step::ALL[place].code().to_owned(),
            ok: !failed,
            note,
        }))
    }

    fn sign<C: Coder>(&mut self, coder: &mut C, given: Option<&Kind>) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::Sign { role, name }) => Some((role, name.as_deref())),
            _ => None,
        };
        // Captains sign twice: of two equal ones the one that comes next.
        let from = self.signed + 1;
        let order = (0..ROLES.len()).map(|i| (from + i) % ROLES.len());
        let place = given.and_then(|(role, _)| order.into_iter().find(|&i| ROLES[i] == role));
        let place = place.unwrap_or(0);
        let place = self.next_in_list(coder, self.signed, ROLES.len(), place);
        self.signed = place;
        let name = given.and_then(|g| g.1);
        let name = if self.flag(coder, Flag::Named, name.is_some()) {
            Some(self.words.code(coder, name)?)
        } else {
            None
        };
        Ok(Kind::Sign {
            role: ROLES[place].to_owned(),
            name,
        })
    }

    /// A place in a list that is mostly gone through in its order.
    fn next_in_list<C: Coder>(
        &mut self,
        coder: &mut C,
        last: usize,
        length: usize,
        place: usize,
    ) -> usize {
        let next = if last >= length {
            0
        } else {
            (last + 1) % length
        };
        if self.flag(coder, Flag::NextInList, place == next) {
            next
        } else {
            pick(coder, length, place)
        }
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
        let forced = self.flag(coder, Flag::Forced, reason > 0);
        let reason = if forced {
            1 + pick(coder, 3, reason.saturating_sub(1))
        } else {
            0
        };
        let reason = reasons[reason];
        let mut changes = Vec::new();
        loop {
            let change = parts.and_then(|p| p.1.get(changes.len())).copied();
            let change = self.change(coder, state, team, &changes, reason, change)?;
            changes.push(change);
            let more = parts.is_some_and(|p| p.1.len() > changes.len());
            let full = changes.len() >= holders(state, team).len().min(bench(state, team).len());
            if full || !self.flag(coder, Flag::MoreChanges, more) {
                break;
            }
        }
        Ok(Kind::Substitution {
            team,
            changes,
            reason,
        })
    }

    /// One more change of a request: as a rule one of those that the reducer would grant.
    fn change<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        team: Team,
        before: &[Change],
        reason: Option<Forced>,
        given: Option<Change>,
    ) -> Result<Change, String> {
        let free = |list: Vec<Shirt>| -> Vec<Shirt> {
            let gone = |s: &Shirt| before.iter().any(|c| c.out == *s || c.into == *s);
            list.into_iter().filter(|s| !gone(s)).collect()
        };
        let (out, into) = (free(holders(state, team)), free(bench(state, team)));
        let pairs = out
            .iter()
            .flat_map(|&out| into.iter().map(move |&into| Change { out, into }));
        let grants = |change: &Change| {
            let changes = before.iter().chain([change]).copied().collect();
            let kind = Kind::Substitution {
                team,
                changes,
                reason,
            };
            may(state, &Entry::new(u32::MAX, kind)).is_ok()
        };
        let legal: Vec<Change> = pairs.filter(grants).collect();
        let place = legal.iter().position(|c| Some(*c) == given);
        if !legal.is_empty() && self.flag(coder, Flag::LegalChange, place.is_some()) {
            return Ok(legal[pick(coder, legal.len(), place.unwrap_or(0))]);
        }
        if out.is_empty() || into.is_empty() {
            return Err("a substitution without players".to_owned());
        }
        let place = |list: &[Shirt], s: Option<Shirt>| {
            s.and_then(|s| list.iter().position(|l| *l == s))
                .unwrap_or(0)
        };
        Ok(Change {
            out: out[pick(coder, out.len(), place(&out, given.map(|c| c.out)))],
            into: into[pick(coder, into.len(), place(&into, given.map(|c| c.into)))],
        })
    }

    fn team_list<C: Coder>(&mut self, coder: &mut C, given: Option<&Kind>) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::TeamList(list)) => Some(list),
            _ => None,
        };
        let team = self.team(coder, Pattern::TeamList, given.map(|l| l.team));
        let count = given.map_or(0, |l| l.players.len() as u64);
        let count: u32 = small(self.number(coder, Pattern::TeamList.place(), count))?;
        let named = self.flag(
            coder,
            Flag::NamedList,
            given.is_some_and(|l| l.players.iter().any(|p| p.name.is_some())),
        );
        let mut players = Vec::new();
        let mut last = Shirt(0);
        for i in 0..count.min(400) {
            let player = given.and_then(|l| l.players.get(i as usize));
            // By custom numbers rise, by one more often than not.
            let number = player.map_or(0, |p| p.number.0);
            let next = self.flag(coder, Flag::NextNumber, number == last.0.wrapping_add(1));
            let number = if next {
                Shirt(last.0.wrapping_add(1))
            } else {
                shirt(coder, player.map(|p| p.number))
            };
            let captain = self.flag(coder, Flag::Captain, player.is_some_and(|p| p.captain));
            let libero = self.flag(coder, Flag::Libero, player.is_some_and(|p| p.libero));
            let name = if named {
                let name = player.and_then(|p| p.name.as_deref());
                let has = self.flag(coder, Flag::Named, name.is_some());
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
        let count: u32 = small(self.number(coder, Pattern::TeamList.place(), count))?;
        let mut staff = Vec::new();
        for i in 0..count.min(100) {
            let person = given.and_then(|l| l.staff.get(i as usize));
            let role = self.words.code(coder, person.map(|p| p.role.as_str()))?;
            let name = person.and_then(|p| p.name.as_deref());
            let has = self.flag(coder, Flag::Named, name.is_some());
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

/// Why a rally is replayed after which somebody is named.
const REPLAYS: [ReplayWhy; 4] = [
    ReplayWhy::Injury,
    ReplayWhy::Interference,
    ReplayWhy::DoubleFault,
    ReplayWhy::Other,
];

/// Faults found late.
const FAULTS: [Fault; 5] = [
    Fault::Rotation,
    Fault::IllegalSubstitution,
    Fault::WrongLineUp,
    Fault::IllegalLibero,
    Fault::UnregisteredPlayer,
];

/// The scores that stood in the set that is on, the last one first.
fn stood(state: &State) -> Vec<Score> {
    let mut stood: Vec<Score> = state
        .play()
        .map(|p| p.scores().collect())
        .unwrap_or_default();
    stood.reverse();
    stood
}

/// Whether a fault found late can be written by what is on court.
fn is_near(state: &State, fault: &LateFault) -> bool {
    let Some(play) = state.play() else {
        return false;
    };
    let there: Vec<Shirt> = play.sides[fault.team].on_court().collect();
    let since = fault
        .since
        .is_none_or(|s| s.set.is_none() && stood(state).contains(&s.score));
    since && fault.positions.as_ref().is_none_or(|p| *p == there)
}

/// What is legal and has no pattern of its own.
fn listed(state: &State) -> Vec<Kind> {
    let mut all = legal(state);
    all.retain(|kind| {
        !matches!(
            kind,
            Kind::Rally { .. }
                | Kind::TimeOut { .. }
                | Kind::Substitution { .. }
                | Kind::LiberoReplacement { .. }
                | Kind::Toss(_)
                | Kind::BeginSet
                | Kind::ChangeCourts
        )
    });
    all
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
        Kind::Check(check) if Step::ALL.iter().any(|s| s.code() == check.item) => Pattern::Check,
        Kind::Sign { role, .. } if ROLES.contains(&role.as_str()) => Pattern::Sign,
        Kind::Seal { .. } => Pattern::Seal,
        Kind::TeamList(list) if list.players.len() <= 400 && list.staff.len() <= 100 => {
            Pattern::TeamList
        }
        Kind::Remark { .. } => Pattern::Remark,
        Kind::Replay { hurt: Some(_), .. } => Pattern::Hurt,
        Kind::LateFault(fault) if is_near(state, fault) => Pattern::LateFault,
        Kind::Replay { .. }
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::Misconduct { .. }
        | Kind::Recovery { .. }
        | Kind::NewLibero { .. }
        | Kind::Incomplete { .. }
        | Kind::Default { .. }
        | Kind::Suspend { .. }
        | Kind::Resume { .. }
        | Kind::Answer { .. }
            if listed(state).contains(kind) =>
        {
            Pattern::Listed
        }
        _ => Pattern::Words,
    };
    if wanted.is_possible(replay) {
        wanted
    } else {
        Pattern::Words
    }
}

/// When a count-down that is stopped was to end.
fn ends_at(state: &State, kind: &Kind) -> Option<i64> {
    let Kind::Timer(timer) = kind else {
        return None;
    };
    let same = |t: &&RunningTimer| t.timer.what == timer.what && t.timer.team == timer.team;
    let running = state.timers().iter().find(same)?;
    let lasts = i64::from(timer.seconds).wrapping_mul(SECOND);
    let stops = timer.action == TimerAction::Stop;
    stops.then_some(running.since?.wrapping_add(lasts))
}

/// The team and the change of a libero replacement.
fn replacement(kind: &Kind) -> Option<(Team, Change)> {
    match kind {
        Kind::LiberoReplacement { team, change } => Some((*team, *change)),
        _ => None,
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
