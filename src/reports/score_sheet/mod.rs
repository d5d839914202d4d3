//! The sheet of a match, computed from its log alone: per set the line-ups, service rounds, running
//! score, interruptions and times; sanctions, remarks, signatures and the result.

mod sets;

use std::collections::BTreeMap;

use crate::audit::{self, Finding};
use crate::remark::{self, RemarkLine};
use game::entry::{Change, Heading, Player, Staff};
use game::{Choice, DecidedBy, Kind, Outcome, PointFor, Sanction, State, Timeline};
use record::{broken, seals, Broken, Seal, Strokes};
use rules::{ByTeam, Rules, Score, Shirt, Team};
use sets::{finish, Writer};

/// The sheet of a match.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// The heading; none before the match is opened.
    pub heading: Option<Heading>,
    /// What is played by.
    pub rules: Rules,
    /// The teams.
    pub teams: ByTeam<TeamBlock>,
    /// The sets, finished ones and the one being played.
    pub sets: Vec<SetSheet>,
    /// The sanctions box.
    pub sanctions: Vec<Sanction>,
    /// The remarks, in the order of the log.
    pub remarks: Vec<RemarkLine>,
    /// Signatures.
    pub signatures: Vec<Signed>,
    /// The result.
    pub result: ResultBox,
    /// The seal.
    pub seal: SealBox,
    /// What was changed after it was written.
    pub broken: Vec<Broken>,
    /// Time-outs that a team may take in a set, where there is a limit and line-ups are kept.
    pub time_outs: Option<u8>,
}

/// A signature as it stands on the sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signed {
    /// The entry that signs.
    pub entry: u32,
    /// Whose.
    pub role: String,
    /// The name.
    pub name: Option<String>,
    /// When.
    pub at: Option<i64>,
    /// Whether it was given before the first service.
    pub before: bool,
    /// Whether it was given under another result than that of the record.
    pub outdated: bool,
    /// As it was drawn with a finger. That is in no log: see [`Sheet::with_drawn`].
    pub drawn: Option<Strokes>,
}

/// The state of the seal.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SealBox {
    /// Every seal that the record has had, the last one last.
    pub seals: Vec<Seal>,
    /// Whether the last one was not opened again.
    pub holds: bool,
    /// What was left undone when it was set. Under a seal nothing is entered, so it follows from the
    /// record.
    pub left_open: Vec<Finding>,
}

/// A team as it stands on the sheet.
#[derive(Clone, Debug, Default)]
pub struct TeamBlock {
    /// Its name, or its letter.
    pub name: String,
    /// Its players.
    pub players: Vec<Player>,
    /// Its staff.
    pub staff: Vec<Staff>,
}

/// One set.
#[derive(Clone, Debug, Default)]
pub struct SetSheet {
    /// From 1.
    pub number: u8,
    /// Line-ups, place 1 first; empty where they are not kept.
    pub line_ups: ByTeam<Vec<Shirt>>,
    /// Who was due to serve first.
    pub first_service: Option<Team>,
    /// Who started on the left, seen from the stand.
    pub left: Option<Team>,
    /// Who won the toss before it and what that captain chose, where it was noted.
    pub won_toss: Option<(Team, Choice)>,
    /// The score at which the teams changed courts in it, where they did.
    pub courts_changed: Option<Score>,
    /// Service rounds: who served, and the own total when the turn ended. The last number of a team
    /// that won the set on the opponent's service is its final total, without a server.
    pub rounds: ByTeam<Vec<Round>>,
    /// Every point as it was given, cancelled ones among them.
    pub running: Vec<PointMark>,
    /// Substitutions.
    pub substitutions: Vec<Substitution>,
    /// Time-outs.
    pub time_outs: Vec<Requested>,
    /// Libero replacements.
    pub liberos: Vec<Replacement>,
    /// Who was named to speak for a team while its captain was not on court (5.1.2).
    pub game_captains: Vec<Named>,
    /// When and at what score this record took the set over while it was played.
    pub taken_over: Option<(Option<i64>, Score)>,
    /// When the first service was authorised, milliseconds since 1970.
    pub began: Option<i64>,
    /// When the last point was entered.
    pub ended: Option<i64>,
    /// Points.
    pub score: Score,
    /// Who won it, once it is over, and how.
    pub won: Option<(Team, DecidedBy)>,
}

impl SetSheet {
    /// Whole minutes from the first service to the last point, a minute begun counting as one.
    #[must_use]
    pub fn minutes(&self) -> Option<i64> {
        whole_minutes(self.began?, self.ended?)
    }
}

/// One turn at service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// Who served, where known.
    pub server: Option<Shirt>,
    /// The team's own points when the turn ended.
    pub total: u16,
}

/// One point on the running score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PointMark {
    /// The entry that gave it.
    pub entry: u32,
    /// Whose.
    pub team: Team,
    /// What for.
    pub given_for: PointFor,
    /// The team's total with it; none for a cancelled point.
    pub total: Option<u16>,
    /// The entry that cancelled it.
    pub cancelled_by: Option<u32>,
}

/// A substitution with the score at which it was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Substitution {
    /// Whose.
    pub team: Team,
    /// Who left, who came.
    pub change: Change,
    /// The score then.
    pub score: Score,
    /// Whether it was an exceptional one.
    pub exceptional: bool,
}

/// A time-out with the score at which it was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Requested {
    /// Whose.
    pub team: Team,
    /// The score then.
    pub score: Score,
}

/// A libero replacement with its score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Replacement {
    /// Whose.
    pub team: Team,
    /// Who left, who came.
    pub change: Change,
    /// The score then.
    pub score: Score,
}

/// A game captain with the score at which he or she was named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named {
    /// Whose.
    pub team: Team,
    /// Who.
    pub number: Shirt,
    /// The score then.
    pub score: Score,
}

impl ResultBox {
    /// Minutes from the first service of the match to its last point, once it is over; a minute begun
    /// counts as one.
    #[must_use]
    pub fn lasted(&self) -> Option<i64> {
        self.ended?;
        whole_minutes(self.times.0?, self.times.1?)
    }
}

/// Whole minutes between two moments, a minute begun counting as one.
fn whole_minutes(began: i64, ended: i64) -> Option<i64> {
    let lasted = ended.checked_sub(began)?;
    (lasted >= 0).then(|| lasted.saturating_add(59_999) / 60_000)
}

/// The results box.
#[derive(Clone, Copy, Debug, Default)]
pub struct ResultBox {
    /// Sets won.
    pub sets: ByTeam<u8>,
    /// Points of all sets.
    pub points: ByTeam<u32>,
    /// Time-outs of all sets.
    pub time_outs: ByTeam<u32>,
    /// Substitutions of all sets, exceptional ones included (15.7).
    pub substitutions: ByTeam<u32>,
    /// Minutes of all sets, where all were timed.
    pub minutes: Option<i64>,
    /// When the first set began and the last one ended.
    pub times: (Option<i64>, Option<i64>),
    /// How the match ended, once it has.
    pub ended: Option<DecidedBy>,
    /// Who won it.
    pub winner: Option<Team>,
}

impl Sheet {
    /// The sheet of a log.
    #[must_use]
    pub fn of(timeline: &Timeline) -> Sheet {
        let mut writer = Writer::default();
        timeline.walk(|before, entry, outcome, after| {
            if outcome.counts() {
                writer.see(before, &entry.kind, entry.at, after);
            }
        });
        let state = timeline.state();
        let sets: Vec<SetSheet> = finish(writer.sets, state);
        let result = result(&sets, state);
        Sheet {
            heading: state.heading().cloned(),
            rules: *state.rules(),
            teams: ByTeam::new(|team| block(state, team)),
            sets,
            sanctions: state.sanctions().to_vec(),
            remarks: remark::lines(timeline),
            signatures: signed(timeline),
            result,
            seal: seal_box(timeline),
            broken: broken(timeline.entries()),
            time_outs: state.heading().and_then(|heading| {
                let rules = &heading.rules;
                rules.time_outs.per_set.filter(|_| rules.line_ups)
            }),
        }
    }

    /// Whether a list of a team is on it, so that captains and coaches had something to sign before the
    /// match.
    #[must_use]
    pub fn has_lists(&self) -> bool {
        Team::BOTH
            .iter()
            .any(|&team| !self.teams[team].players.is_empty())
    }

    /// With the signatures that were drawn on this phone, by the entry that signs. They are kept beside
    /// the log, never in it, so a sheet of a record that was handed over has none.
    #[must_use]
    pub fn with_drawn(mut self, drawn: &BTreeMap<u32, Strokes>) -> Sheet {
        for signed in &mut self.signatures {
            signed.drawn = drawn.get(&signed.entry).cloned();
        }
        self
    }
}

/// Every signature, by whether a set had begun before it.
fn signed(timeline: &Timeline) -> Vec<Signed> {
    let begun = timeline.outcomes().find_map(|(entry, outcome)| {
        let counts = outcome.counts();
        (counts && matches!(entry.kind, Kind::BeginSet)).then_some(entry.n)
    });
    let outdated = audit::outdated_signatures(timeline);
    let given = timeline.state().signatures().iter();
    given
        .map(|s| Signed {
            role: s.role.clone(),
            name: s.name.clone(),
            at: timeline.entry(s.entry).and_then(|e| e.at),
            // Until a set has begun every signature is one before the match.
            before: begun.is_none_or(|begun| s.entry < begun),
            outdated: outdated.contains(&s.entry),
            entry: s.entry,
            drawn: None,
        })
        .collect()
}

/// Seals that were refused do not count.
fn seal_box(timeline: &Timeline) -> SealBox {
    let mut seals = seals(timeline.entries());
    seals.retain(|s| timeline.outcome(s.entry).is_some_and(Outcome::counts));
    let holds = timeline.state().sealed().is_some();
    let left_open = if holds {
        audit::left_open(timeline)
    } else {
        Vec::new()
    };
    SealBox {
        seals,
        holds,
        left_open,
    }
}

fn block(state: &State, team: Team) -> TeamBlock {
    let list = state.team(team).list.as_deref();
    TeamBlock {
        name: state.name(team).to_owned(),
        players: list.map(|l| l.players.clone()).unwrap_or_default(),
        staff: list.map(|l| l.staff.clone()).unwrap_or_default(),
    }
}

fn result(sets: &[SetSheet], state: &State) -> ResultBox {
    let over = || sets.iter().filter(|s| s.won.is_some());
    let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    ResultBox {
        sets: state.sets_won(),
        points: ByTeam::new(|team| sets.iter().map(|s| u32::from(s.score[team])).sum()),
        time_outs: ByTeam::new(|team| {
            let of = |s: &SetSheet| s.time_outs.iter().filter(|t| t.team == team).count();
            sets.iter().map(|s| count(of(s))).sum()
        }),
        substitutions: ByTeam::new(|team| {
            let of = |s: &SetSheet| s.substitutions.iter().filter(|t| t.team == team).count();
            sets.iter().map(|s| count(of(s))).sum()
        }),
        minutes: over().map(SetSheet::minutes).sum(),
        times: (
            sets.iter().find_map(|s| s.began),
            over().next_back().and_then(|s| s.ended),
        ),
        ended: state.ended(),
        winner: state.winner(),
    }
}
