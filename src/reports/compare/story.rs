//! What a record says in the end, set by set: its points in order, and what happened between them.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Bound;

use game::entry::{Court, Toss};
use game::{Entry, Kind, SanctionKind, SetPlay, State, Timeline};
use rules::{ByTeam, Cause, Score, Team};

/// A whole record: its sets by number and attempt. A set that is played again on another court (FIVB
/// Official Volleyball Rules 2025-2028, 17.3.2.2) is a second attempt.
pub(super) struct Story {
    pub sets: BTreeMap<(u8, u8), SetStory>,
}

/// One set.
#[derive(Default)]
pub(super) struct SetStory {
    pub begun: bool,
    pub points: Vec<Point>,
    pub others: Vec<Happening>,
    pub winner: Option<Team>,
}

/// One point, cancelled or not.
pub(super) struct Point {
    pub to: Team,
    pub code: &'static str,
    pub kind: Kind,
    pub entry: u32,
    pub score: Score,
    pub cause: Option<Cause>,
}

/// Something that gave no point.
pub(super) struct Happening {
    pub code: &'static str,
    pub team: Option<Team>,
    pub kind: Kind,
    pub entry: u32,
    /// After how many points of the set.
    pub after: usize,
    pub score: Score,
}

impl Story {
    /// The story of a log, with A and B exchanged or not.
    pub fn of(timeline: &Timeline, exchanged: bool) -> Story {
        let mut teller = Teller {
            timeline,
            exchanged,
            sets: BTreeMap::new(),
            attempts: BTreeMap::new(),
            score_at: BTreeMap::new(),
        };
        let state = timeline.state();
        let plays = plays(state);
        // A penalty between the sets gives its point when the next one begins.
        let given_later = plays.iter().flat_map(|p| p.points.iter().map(|p| p.entry));
        let given_later: BTreeSet<u32> = rules::gather(given_later);
        timeline.walk(|before, entry, outcome, after| {
            if outcome.counts() {
                teller.see(before, entry, after, &given_later);
            }
        });
        for play in plays {
            teller.points(play);
        }
        for record in state.sets() {
            teller.set(record.number).winner = Some(teller.turn(record.winner));
        }
        Story { sets: teller.sets }
    }

    /// Whether a set was begun after that one.
    pub fn goes_on_after(&self, key: (u8, u8)) -> bool {
        let later = (Bound::Excluded(key), Bound::Unbounded);
        self.sets.range(later).any(|(_, set)| set.begun)
    }
}

struct Teller<'a> {
    timeline: &'a Timeline,
    exchanged: bool,
    sets: BTreeMap<(u8, u8), SetStory>,
    attempts: BTreeMap<u8, u8>,
    /// The score before each entry that gave a point.
    score_at: BTreeMap<u32, Score>,
}

impl Teller<'_> {
    fn turn(&self, team: Team) -> Team {
        if self.exchanged {
            team.other()
        } else {
            team
        }
    }

    fn turned(&self, score: Score) -> Score {
        ByTeam::new(|team| score[self.turn(team)])
    }

    /// An entry as the rules have it: a further improper request is a delay (15.11.3), and where it was
    /// written down as one that is no difference.
    fn by_rule(&self, entry: &Entry) -> Kind {
        let sanctions = self.timeline.state().sanctions();
        let kind = sanctions
            .iter()
            .find(|s| s.entry == entry.n)
            .map(|s| s.kind);
        match (&entry.kind, kind) {
            (
                Kind::ImproperRequest { team },
                Some(SanctionKind::DelayWarning | SanctionKind::DelayPenalty),
            ) => Kind::Delay {
                team: *team,
                request: false,
            },
            (kind, _) => kind.clone(),
        }
    }

    fn set(&mut self, number: u8) -> &mut SetStory {
        let attempt = self.attempts.get(&number).copied().unwrap_or(0);
        self.sets.entry((number, attempt)).or_default()
    }

    fn see(&mut self, before: &State, entry: &Entry, after: &State, given_later: &BTreeSet<u32>) {
        let floor = before.play().or_else(|| before.ready());
        let score = floor.map_or_else(Score::default, |p| p.score);
        let number = before.set_at_hand();
        let may_wipe = matches!(
            entry.kind,
            Kind::Default { .. }
                | Kind::Incomplete { .. }
                | Kind::LateFault(_)
                | Kind::Answer { .. }
                | Kind::Resume { .. }
        );
        if may_wipe {
            // What was played of a set that is lost, or cancelled, by this is in no later state.
            plays(before).into_iter().for_each(|play| self.points(play));
        }
        if given_later.contains(&entry.n) || gives(after, entry.n) {
            self.score_at.insert(entry.n, score);
            return;
        }
        self.set(number).begun |= matches!(entry.kind, Kind::BeginSet);
        if let Some((code, kind)) = told(&self.by_rule(entry), |team| self.turn(team)) {
            let happening = Happening {
                code,
                team: team_of(&kind),
                kind,
                entry: entry.n,
                after: before.play().map_or(0, |p| p.points.len()),
                score: self.turned(score),
            };
            self.set(number).others.push(happening);
        }
        let elsewhere = matches!(
            entry.kind,
            Kind::Resume {
                court: Court::Other
            }
        );
        if elsewhere && before.play().is_some() {
            *self.attempts.entry(number).or_default() += 1;
        }
    }

    /// The points of a set as it stood in the end.
    fn points(&mut self, play: &SetPlay) {
        let mut points = Vec::new();
        for p in &play.points {
            let entry = self.timeline.entry(p.entry);
            let told = entry.and_then(|e| point_told(&self.by_rule(e), |team| self.turn(team)));
            let Some((code, kind)) = told else {
                continue;
            };
            let score = self.score_at.get(&p.entry).copied().unwrap_or_default();
            points.push(Point {
                to: self.turn(p.to),
                code,
                kind,
                entry: p.entry,
                score: self.turned(score),
                cause: self.timeline.state().said(p.entry).map(|said| said.cause),
            });
        }
        let set = self.set(play.number);
        set.begun = true;
        set.points = points;
    }
}

/// Whether an entry has just given a point.
fn gives(after: &State, entry: u32) -> bool {
    let last = after.sets().last().and_then(|s| s.play.as_ref());
    let plays = after.play().into_iter().chain(last);
    // A fault found late gives one point; whatever it cancels came before.
    plays
        .into_iter()
        .any(|p| p.points.last().is_some_and(|p| p.entry == entry))
}

/// Every set that was on court to its end, or still is, in order.
fn plays(state: &State) -> Vec<&SetPlay> {
    let mut plays: Vec<&SetPlay> = state.sets().filter_map(|s| s.play.as_ref()).collect();
    // The set being played, or cut off by the end of the match.
    if let Some(play) = state.shown() {
        if plays.iter().all(|p| p.number != play.number) && !play.points.is_empty() {
            plays.push(play);
        }
    }
    plays
}

/// The kind of a point and its name.
fn point_told(kind: &Kind, turn: impl Fn(Team) -> Team) -> Option<(&'static str, Kind)> {
    match kind {
        Kind::Rally { won_by, .. } => Some((
            "rally",
            Kind::Rally {
                won_by: turn(*won_by),
                cause: None,
                by: None,
            },
        )),
        other => told(other, turn),
    }
}

/// An entry that is compared, by the name of its kind in the log, without what is no part of the match.
/// None for notes, count-downs, signatures and what only explains.
fn told(kind: &Kind, turn: impl Fn(Team) -> Team) -> Option<(&'static str, Kind)> {
    let mut kind = kind.clone();
    let code = match &mut kind {
        Kind::Toss(toss) => {
            // Sides are not on every record, and do not change the result.
            *toss = Toss::new(turn(toss.first_service), Team::A);
            "toss"
        }
        Kind::FirstService { team, .. } => {
            kind = Kind::Toss(Toss::new(turn(*team), Team::A));
            "toss"
        }
        Kind::ScoreCorrection { score, serving, .. } => {
            *score = ByTeam::new(|team| score[turn(team)]);
            *serving = serving.map(&turn);
            "score_correction"
        }
        Kind::WrongInformation { score, why } => {
            *score = ByTeam::new(|team| score[turn(team)]);
            why.clear();
            "wrong_information"
        }
        // Put right without a sanction it changes nothing; kept it is a substitution.
        Kind::Discrepancy {
            team,
            changes,
            kept: true,
        } => {
            rules::sort_by(changes, Ord::cmp);
            kind = Kind::Substitution {
                team: turn(*team),
                changes: std::mem::take(changes),
                reason: None,
            };
            "substitution"
        }
        Kind::LateReplacement { team } => named("late_replacement", team, turn),
        Kind::TimeUp => "time_up",
        Kind::LineUp { team, .. } => named("line_up", team, turn),
        Kind::Replay { hurt, rally, .. } => {
            *hurt = None;
            *rally = None;
            "replay"
        }
        Kind::TimeOut { team } => named("time_out", team, turn),
        Kind::Substitution {
            team,
            changes,
            reason,
        } => {
            rules::sort_by(changes, Ord::cmp);
            *reason = None;
            named("substitution", team, turn)
        }
        Kind::LiberoReplacement { team, .. } => named("libero_replacement", team, turn),
        Kind::NewLibero { team, why, .. } => {
            *why = None;
            named("new_libero", team, turn)
        }
        Kind::ImproperRequest { team } => named("improper_request", team, turn),
        Kind::Delay { team, request } => {
            *request = false;
            named("delay", team, turn)
        }
        Kind::Misconduct { team, .. } => named("misconduct", team, turn),
        Kind::LateFault(fault) => {
            if turn(Team::A) == Team::B {
                if let Some(since) = &mut fault.since {
                    std::mem::swap(&mut since.score.a, &mut since.score.b);
                }
            }
            fault.positions = None;
            named("late_fault", &mut fault.team, turn)
        }
        Kind::Recovery { team, .. } => named("recovery", team, turn),
        Kind::Incomplete { team, .. } => named("incomplete", team, turn),
        Kind::Default { team } => named("default", team, turn),
        Kind::ChangeCourts => "change_courts",
        Kind::Suspend { why } => {
            why.clear();
            "suspend"
        }
        Kind::Resume { .. } => "resume",
        _ => return None,
    };
    Some((code, kind))
}

fn named(code: &'static str, team: &mut Team, turn: impl Fn(Team) -> Team) -> &'static str {
    *team = turn(*team);
    code
}

fn team_of(kind: &Kind) -> Option<Team> {
    match kind {
        Kind::LineUp { team, .. }
        | Kind::TimeOut { team }
        | Kind::Substitution { team, .. }
        | Kind::LiberoReplacement { team, .. }
        | Kind::NewLibero { team, .. }
        | Kind::ImproperRequest { team }
        | Kind::Delay { team, .. }
        | Kind::LateReplacement { team }
        | Kind::Misconduct { team, .. }
        | Kind::Recovery { team, .. }
        | Kind::Incomplete { team, .. }
        | Kind::Default { team } => Some(*team),
        Kind::LateFault(fault) => Some(fault.team),
        _ => None,
    }
}
