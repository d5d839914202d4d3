//! The state of a match: what a fold of the log knows after each entry.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::ask::Question;
use super::entry::{By, Check, Heading, Level, SeenBy, TeamList, Timer, Toss, Who};
use super::set::{SetPlay, Side};
use crate::rules::{ByTeam, Cause, Preset, Rules, Score, Shirt, Team};

/// A match after some entries.
#[derive(Clone, Debug)]
pub struct State {
    pub(super) heading: Option<Arc<Heading>>,
    pub(super) rules: Rules,
    pub(super) stage: Stage,
    pub(super) sets: Vec<Arc<SetRecord>>,
    pub(super) teams: ByTeam<TeamState>,
    pub(super) sanctions: Arc<Vec<Sanction>>,
    pub(super) causes: Arc<BTreeMap<u32, Said>>,
    pub(super) checks: Arc<Vec<Check>>,
    pub(super) signatures: Arc<Vec<Signature>>,
    pub(super) timers: Vec<RunningTimer>,
    pub(super) questions: Vec<Question>,
    pub(super) warmed_up: Vec<Option<Team>>,
    /// Milliseconds of all interruptions that are over (17.3: their sum counts).
    pub(super) interrupted: i64,
    /// Penalties for the coming set, kept while a finished one is on court again.
    pub(super) carried: ByTeam<Vec<u32>>,
    /// The entry of the seal, while it holds.
    pub(super) sealed: Option<u32>,
}

/// Where the match stands.
#[derive(Clone, Debug)]
pub(super) enum Stage {
    /// Before a set.
    Coming(Coming),
    /// A set is being played.
    Playing(Box<SetPlay>),
    /// Play is interrupted; the stage it left.
    Suspended {
        then: Box<Stage>,
        since: Option<i64>,
    },
    /// The match is over.
    Finished(Ending),
}

/// What is known of the set to come.
#[derive(Clone, Debug, Default)]
pub(super) struct Coming {
    pub toss: Option<Toss>,
    pub line_ups: ByTeam<Option<Vec<Shirt>>>,
    /// Entries whose penalty counts when the set begins, by the team at fault (16.2.4, 21.5).
    pub penalties: ByTeam<Vec<u32>>,
    /// Teams that may ask for nothing until a rally is completed (15.2.4).
    pub barred: ByTeam<bool>,
    /// The set as it stands ready, once both line-ups are in.
    pub ready: Option<Box<SetPlay>>,
    /// Sides that stood ready when the other team's line-up was withdrawn.
    pub kept: ByTeam<Option<Side>>,
    /// After an interruption the set starts again here: its number shows, and who opens it.
    pub again: Option<Again>,
}

/// A set that is played again on another court (17.3.2.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Again {
    pub opener: Option<Team>,
    pub left: Team,
}

/// How a match ended.
#[derive(Clone, Debug)]
pub(super) struct Ending {
    pub how: How,
    /// The team that loses the match whatever sets it has won: incomplete for the match (6.4.3).
    pub lost_by: Option<Team>,
    /// The set that was on court, where the ending cut it off.
    pub left_over: Option<Box<SetPlay>>,
    /// Sets that were played for nothing: wiped by a default (6.4.1), or after the match was lost
    /// (7.3.5.4). What was said about their rallies can still be put right.
    pub wiped: Vec<Arc<SetRecord>>,
    /// What was known of the set that did not come: a fault found late can bring it back.
    pub waiting: Coming,
}

/// How a set or a match was decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// By play.
    Played,
    /// One team was incomplete (6.4.3).
    Incomplete,
    /// One team did not appear or refused to play (6.4.1, 6.4.2).
    Default,
    /// Lost for an unregistered player (7.3.5.4).
    Unregistered,
}

/// A set that is over.
#[derive(Clone, Debug)]
pub struct SetRecord {
    /// From 1.
    pub number: u8,
    /// Points.
    pub score: Score,
    /// Who won it.
    pub winner: Team,
    /// How.
    pub how: How,
    /// Who was due to open it; unknown only without a toss.
    pub opener: Option<Team>,
    /// Who started it on the left, as far as settled; after a change of courts, who ended it there.
    pub left: Option<Team>,
    /// The set as it stood at its end; none where it was never played.
    pub play: Option<SetPlay>,
}

/// Where a match stands, for whoever reads a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Before the first set.
    Preparation,
    /// Between two sets.
    BetweenSets,
    /// A set is being played.
    Playing,
    /// Play is interrupted.
    Suspended,
    /// The match is over.
    Finished,
}

impl Phase {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Phase::Preparation => "preparation",
            Phase::BetweenSets => "between_sets",
            Phase::Playing => "playing",
            Phase::Suspended => "suspended",
            Phase::Finished => "finished",
        }
    }
}

/// What lasts the whole match for one team.
#[derive(Clone, Debug, Default)]
pub struct TeamState {
    /// Its list.
    pub list: Option<Arc<TeamList>>,
    /// Its liberos, re-designated ones among them.
    pub liberos: Vec<Shirt>,
    /// Whether its one improper request without consequence is used (15.11.2).
    pub improper_noted: bool,
    /// Delays sanctioned so far (16.2).
    pub delays: u8,
    /// Misconduct sanctions so far.
    pub conduct: Vec<(Who, Level)>,
    /// Players expelled, with the set (21.3.2.1).
    pub expelled: Vec<(Shirt, u8)>,
    /// Players out for the match, and why.
    pub out: Vec<(Shirt, OutFor)>,
    /// Players who have had their recovery time (17.1.2).
    pub recovered: Vec<Shirt>,
    /// A libero who was hurt in a stopped rally and may leave at once.
    pub hurt_libero: Option<Shirt>,
}

/// Why a player is out for the rest of the match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutFor {
    /// Disqualified (21.3.3.1).
    Disqualified,
    /// Taken out by an exceptional substitution (15.7).
    Exceptional,
    /// A libero replaced by a re-designated one (19.4.2.2).
    Redesignated,
}

/// Why a player may not be on court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Barred {
    /// Expelled for this set.
    Expelled,
    /// Out for the match.
    Out(OutFor),
}

impl TeamState {
    /// Whether a number is on the list; anybody is, where there is no list.
    #[must_use]
    pub fn lists(&self, number: Shirt) -> bool {
        self.list
            .as_ref()
            .is_none_or(|l| l.player(number).is_some())
    }

    /// Why a player may not be on court in the given set.
    #[must_use]
    pub fn barred(&self, number: Shirt, set: u8) -> Option<Barred> {
        self.out
            .iter()
            .find(|(s, _)| *s == number)
            .map(|(_, why)| Barred::Out(*why))
            .or_else(|| {
                self.expelled
                    .contains(&(number, set))
                    .then_some(Barred::Expelled)
            })
    }

    /// Whether a number is a libero's.
    #[must_use]
    pub fn is_libero(&self, number: Shirt) -> bool {
        self.liberos.contains(&number)
    }

    /// The heaviest sanction a person has had.
    #[must_use]
    pub fn heaviest(&self, who: &Who) -> Option<Level> {
        self.conduct
            .iter()
            .filter(|(w, _)| w == who)
            .map(|(_, l)| *l)
            .max()
    }
}

/// What was said about a rally.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Said {
    /// Why it ended.
    pub cause: Cause,
    /// Who did it.
    pub by: Option<By>,
    /// Who of the other officials showed it.
    pub seen_by: Option<SeenBy>,
}

/// A line of the sanctions box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sanction {
    /// The entry it came from.
    pub entry: u32,
    /// The set it counts in.
    pub set: u8,
    /// The team at fault.
    pub team: Team,
    /// What.
    pub kind: SanctionKind,
    /// The person, for misconduct.
    pub who: Option<Who>,
    /// The score before it.
    pub score: Score,
}

/// What a line of the sanctions box says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SanctionKind {
    /// First improper request of a team in the match.
    ImproperRequest,
    /// Delay warning.
    DelayWarning,
    /// Delay penalty.
    DelayPenalty,
    /// Misconduct.
    Misconduct(Level),
}

impl SanctionKind {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            SanctionKind::ImproperRequest => "improper_request",
            SanctionKind::DelayWarning => "delay_warning",
            SanctionKind::DelayPenalty => "delay_penalty",
            SanctionKind::Misconduct(Level::Warning) => "warning",
            SanctionKind::Misconduct(Level::Penalty) => "penalty",
            SanctionKind::Misconduct(Level::Expulsion) => "expulsion",
            SanctionKind::Misconduct(Level::Disqualification) => "disqualification",
        }
    }
}

/// A signature.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signature {
    /// The entry.
    pub entry: u32,
    /// Whose.
    pub role: String,
    /// The name.
    pub name: Option<String>,
}

/// A count-down that was started and not stopped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunningTimer {
    /// The entry that started it.
    pub entry: u32,
    /// When.
    pub since: Option<i64>,
    /// What, for whom, how long.
    pub timer: Timer,
}

impl Default for State {
    fn default() -> Self {
        State::new()
    }
}

impl State {
    /// Before the first entry.
    #[must_use]
    pub fn new() -> State {
        State {
            heading: None,
            rules: Preset::International.rules(),
            stage: Stage::Coming(Coming::default()),
            sets: Vec::new(),
            teams: ByTeam::default(),
            sanctions: Arc::default(),
            causes: Arc::default(),
            checks: Arc::default(),
            signatures: Arc::default(),
            timers: Vec::new(),
            questions: Vec::new(),
            warmed_up: Vec::new(),
            interrupted: 0,
            carried: ByTeam::default(),
            sealed: None,
        }
    }

    /// The heading, once the match is opened.
    #[must_use]
    pub fn heading(&self) -> Option<&Heading> {
        self.heading.as_deref()
    }

    /// The entry of the seal, while it holds.
    #[must_use]
    pub fn sealed(&self) -> Option<u32> {
        self.sealed
    }

    /// What is played by.
    #[must_use]
    pub fn rules(&self) -> &Rules {
        &self.rules
    }

    /// Where the match stands.
    #[must_use]
    pub fn phase(&self) -> Phase {
        match &self.stage {
            Stage::Coming(_) if self.sets.is_empty() => Phase::Preparation,
            Stage::Coming(_) => Phase::BetweenSets,
            Stage::Playing(_) => Phase::Playing,
            Stage::Suspended { .. } => Phase::Suspended,
            Stage::Finished(_) => Phase::Finished,
        }
    }

    /// Finished sets.
    pub fn sets(&self) -> impl Iterator<Item = &SetRecord> {
        self.sets.iter().map(Arc::as_ref)
    }

    /// Sets won so far.
    #[must_use]
    pub fn sets_won(&self) -> ByTeam<u8> {
        let mut won = ByTeam::default();
        for set in &self.sets {
            won[set.winner] += 1;
        }
        won
    }

    /// The set that is being played, interrupted or not.
    #[must_use]
    pub fn play(&self) -> Option<&SetPlay> {
        match self.stage_beneath() {
            Stage::Playing(play) => Some(play),
            _ => None,
        }
    }

    /// The set to come once both line-ups are in, before its first service.
    #[must_use]
    pub fn ready(&self) -> Option<&SetPlay> {
        self.coming()?.ready.as_deref()
    }

    /// The set whose players are on court: the one played, the one ready, else the last one.
    #[must_use]
    pub fn shown(&self) -> Option<&SetPlay> {
        match self.stage_beneath() {
            Stage::Playing(play) => Some(play),
            Stage::Coming(c) => c.ready.as_deref().or_else(|| self.last_play()),
            Stage::Finished(e) => e.left_over.as_deref().or_else(|| self.last_play()),
            Stage::Suspended { .. } => None,
        }
    }

    /// The set being played or ready to be: where players may come and go.
    #[must_use]
    pub fn on_floor(&self) -> Option<&SetPlay> {
        match &self.stage {
            Stage::Playing(play) => Some(play),
            Stage::Coming(c) => c.ready.as_deref(),
            _ => None,
        }
    }

    pub(super) fn on_floor_mut(&mut self) -> Option<&mut SetPlay> {
        match &mut self.stage {
            Stage::Playing(play) => Some(play),
            Stage::Coming(c) => c.ready.as_deref_mut(),
            _ => None,
        }
    }

    fn last_play(&self) -> Option<&SetPlay> {
        self.sets.iter().rev().find_map(|s| s.play.as_ref())
    }

    /// The stage, or the one that an interruption has left.
    pub(super) fn stage_beneath(&self) -> &Stage {
        match &self.stage {
            Stage::Suspended { then, .. } => then,
            stage => stage,
        }
    }

    pub(super) fn stage_beneath_mut(&mut self) -> &mut Stage {
        match &mut self.stage {
            Stage::Suspended { then, .. } => then,
            stage => stage,
        }
    }

    pub(super) fn coming(&self) -> Option<&Coming> {
        match self.stage_beneath() {
            Stage::Coming(c) => Some(c),
            _ => None,
        }
    }

    /// The set that a sanction given now counts in: the one played, else the one to come.
    #[must_use]
    pub fn set_at_hand(&self) -> u8 {
        match self.play() {
            Some(play) => play.number,
            None if self.phase() == Phase::Finished => self.set_number(),
            None => self.next_number(),
        }
    }

    /// Whether a set has begun, though its first one may have to be played again on another court.
    pub(super) fn begun(&self) -> bool {
        self.phase() != Phase::Preparation || self.coming().is_some_and(|c| c.again.is_some())
    }

    /// The number of the set after the finished ones.
    pub(super) fn next_number(&self) -> u8 {
        u8::try_from(self.sets.len())
            .unwrap_or(u8::MAX)
            .saturating_add(1)
    }

    /// The set an output shows: the one played, else the last one, 1 before the first.
    #[must_use]
    pub fn set_number(&self) -> u8 {
        if let Some(play) = self.play() {
            return play.number;
        }
        if self.coming().is_some_and(|c| c.again.is_some()) {
            return self.next_number();
        }
        self.sets.last().map_or(1, |s| s.number)
    }

    /// Points of the set that [`State::set_number`] names.
    #[must_use]
    pub fn score(&self) -> Score {
        if let Some(play) = self.play() {
            return play.score;
        }
        if self.coming().is_some_and(|c| c.again.is_some()) {
            return Score::default();
        }
        self.sets.last().map_or_else(Score::default, |s| s.score)
    }

    /// Who serves next while a set is on, and with which player where line-ups are kept.
    #[must_use]
    pub fn serving(&self) -> Option<(Team, Option<Shirt>)> {
        if let Some(play) = self.play() {
            return play.serving.map(|team| (team, play.server()));
        }
        let coming = self.coming()?;
        let opener = coming.again?.opener?;
        Some((opener, coming.ready.as_ref().and_then(|r| r.server())))
    }

    /// Who opens the set to come, as far as that is settled (12.1).
    #[must_use]
    pub fn opener_to_come(&self) -> Option<Team> {
        let coming = self.coming()?;
        coming
            .again
            .map_or_else(|| super::toss::opener(self, coming), |again| again.opener)
    }

    /// Who starts the set to come on the left, as far as that is settled (18.2.1).
    #[must_use]
    pub fn left_to_come(&self) -> Option<Team> {
        let coming = self.coming()?;
        coming
            .again
            .map_or_else(|| super::toss::left(self, coming), |again| Some(again.left))
    }

    /// The toss for the set to come, once it was made (7.1).
    #[must_use]
    pub fn toss_to_come(&self) -> Option<Toss> {
        self.coming()?.toss
    }

    /// The line-up handed in for the set to come.
    #[must_use]
    pub fn line_up_given(&self, team: Team) -> Option<&[Shirt]> {
        self.coming()?.line_ups[team].as_deref()
    }

    /// The line-up that a team started the last set with.
    #[must_use]
    pub fn last_line_up(&self, team: Team) -> Option<Vec<Shirt>> {
        let side = &self.sets.iter().rev().find_map(|s| s.play.as_ref())?.sides[team];
        let line_up = side.line_up();
        (!line_up.is_empty()).then_some(line_up)
    }

    /// Whether a warm-up count-down was stopped: a team's, or the shared one.
    #[must_use]
    pub fn warmed_up(&self, team: Option<Team>) -> bool {
        self.warmed_up.contains(&team)
    }

    /// Who is on the left, once a set has begun.
    #[must_use]
    pub fn left(&self) -> Option<Team> {
        match self.stage_beneath() {
            Stage::Playing(play) => Some(play.left),
            Stage::Finished(Ending {
                left_over: Some(play),
                ..
            }) => Some(play.left),
            _ => self
                .sets
                .iter()
                .rev()
                .find_map(|s| s.play.as_ref().map(|p| p.left)),
        }
    }

    /// What lasts the match for a team.
    #[must_use]
    pub fn team(&self, team: Team) -> &TeamState {
        &self.teams[team]
    }

    /// The name of a team; its letter where none was given.
    #[must_use]
    pub fn name(&self, team: Team) -> &str {
        match self.heading() {
            Some(h) if !h.names[team].is_empty() => &h.names[team],
            _ => team.letter(),
        }
    }

    /// The sanctions box.
    #[must_use]
    pub fn sanctions(&self) -> &[Sanction] {
        &self.sanctions
    }

    /// What was said about the rally of an entry.
    #[must_use]
    pub fn said(&self, entry: u32) -> Option<Said> {
        self.causes.get(&entry).copied()
    }

    /// Checks made so far, the last of each item.
    #[must_use]
    pub fn checks(&self) -> &[Check] {
        &self.checks
    }

    /// Signatures so far.
    #[must_use]
    pub fn signatures(&self) -> &[Signature] {
        &self.signatures
    }

    /// Count-downs that were started and not stopped.
    #[must_use]
    pub fn timers(&self) -> &[RunningTimer] {
        &self.timers
    }

    /// Questions that the rules leave open and somebody has to answer.
    #[must_use]
    pub fn questions(&self) -> &[Question] {
        &self.questions
    }

    /// How the match ended.
    #[must_use]
    pub fn ended(&self) -> Option<How> {
        match &self.stage {
            Stage::Finished(ending) => Some(ending.how),
            _ => None,
        }
    }

    /// Who won the match; none while it goes on, or where it ended level.
    #[must_use]
    pub fn winner(&self) -> Option<Team> {
        let Stage::Finished(ending) = &self.stage else {
            return None;
        };
        if let Some(loser) = ending.lost_by {
            return Some(loser.other());
        }
        let won = self.sets_won();
        match won.a.cmp(&won.b) {
            std::cmp::Ordering::Greater => Some(Team::A),
            std::cmp::Ordering::Less => Some(Team::B),
            std::cmp::Ordering::Equal => None,
        }
    }

    /// Every rally that counts, by entry, with the team that won it and the one that served.
    #[must_use]
    pub fn rally(&self, entry: u32) -> Option<&super::set::Point> {
        let (left_over, wiped) = match &self.stage {
            Stage::Finished(e) => (e.left_over.as_deref(), &e.wiped[..]),
            _ => (None, &[][..]),
        };
        let records = wiped.iter().rev().chain(self.sets.iter().rev());
        // The last ones first: what is asked about is mostly the last rally.
        self.play()
            .into_iter()
            .chain(left_over)
            .chain(records.filter_map(|s| s.play.as_ref()))
            .flat_map(|play| play.points.iter().rev())
            .find(|p| p.entry == entry && p.why == super::set::PointFor::Rally)
    }
}
