//! The state of a match: what a fold of the log knows after each entry.

mod at_hand;

use std::collections::BTreeMap;
use std::sync::Arc;

use super::ending::{DecidedBy, SetRecord};
use super::entry::{By, Check, Heading, SeenBy, Timer};
use super::isolated::isolated;
use super::protest::Protest;
use super::question::Question;
use super::sanction::Sanction;
use super::set::SetPlay;
use super::stage::{NextSet, Phase, Stage};
use super::team_state::TeamState;
use rules::{ByTeam, Cause, Preset, Rules, Score, Shirt, Team};

/// A match after some entries.
#[derive(Clone, Debug)]
pub struct State {
    pub(crate) heading: Option<Arc<Heading>>,
    pub(crate) rules: Rules,
    pub(crate) stage: Stage,
    pub(crate) sets: Vec<Arc<SetRecord>>,
    pub(crate) teams: ByTeam<TeamState>,
    pub(crate) sanctions: Arc<Vec<Sanction>>,
    pub(crate) causes: Arc<BTreeMap<u32, RallyNote>>,
    pub(crate) checks: Arc<Vec<Check>>,
    pub(crate) signatures: Arc<Vec<Signature>>,
    pub(crate) protests: Arc<Vec<Protest>>,
    pub(crate) timers: Vec<RunningTimer>,
    pub(crate) questions: Vec<Question>,
    pub(crate) warmed_up: Vec<Option<Team>>,
    /// Milliseconds of all interruptions that are over (17.3: their sum counts).
    pub(crate) interrupted: i64,
    /// Penalties for the coming set, kept while a finished one is on court again.
    pub(crate) carried: ByTeam<Vec<u32>>,
    /// The entry of the seal, while it holds.
    pub(crate) sealed: Option<u32>,
    /// Who is on the left: by the toss before the first set, then as the last set began and the teams
    /// changed courts; unknown without any toss.
    pub(crate) left: Option<Team>,
    /// Sets that another court has cancelled (17.3.2.2): they count for nothing, and why their rallies
    /// ended can still be said.
    pub(crate) cancelled: Vec<Arc<SetPlay>>,
    /// The last rally, where the reason given with it was dropped because the rules do not know it.
    pub(crate) dropped_cause: Option<u32>,
    /// The entry with which this record took the match over.
    pub(crate) joined: Option<u32>,
    /// Whether a toss is in this record.
    pub(crate) tossed: bool,
}

/// What was said about a rally.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RallyNote {
    /// Why it ended.
    pub cause: Cause,
    /// Who did it.
    pub by: Option<By>,
    /// Who of the other officials showed it.
    pub seen_by: Option<SeenBy>,
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
            stage: Stage::NextSet(NextSet::default()),
            sets: Vec::new(),
            teams: ByTeam::default(),
            sanctions: Arc::default(),
            causes: Arc::default(),
            checks: Arc::default(),
            signatures: Arc::default(),
            protests: Arc::default(),
            timers: Vec::new(),
            questions: Vec::new(),
            warmed_up: Vec::new(),
            interrupted: 0,
            carried: ByTeam::default(),
            sealed: None,
            left: None,
            cancelled: Vec::new(),
            dropped_cause: None,
            joined: None,
            tossed: false,
        }
    }

    /// The heading, once the match is opened.
    #[must_use]
    pub fn heading(&self) -> Option<&Heading> {
        self.heading.as_deref()
    }

    /// Whether the match is being played: it has begun, is not over, and was not broken off and sealed.
    #[must_use]
    pub fn is_under_way(&self) -> bool {
        self.phase().is_under_way() && self.sealed.is_none()
    }

    /// The entry of the seal, while it holds.
    #[must_use]
    pub fn sealed(&self) -> Option<u32> {
        self.sealed
    }

    /// The entry with which this record took over a match that was being played; none where it was kept
    /// from its beginning.
    #[must_use]
    pub fn joined(&self) -> Option<u32> {
        self.joined
    }

    /// The score of a running set that was taken over and waits for its line-ups.
    #[must_use]
    pub fn score_taken_over(&self) -> Option<Score> {
        Some(self.coming()?.joined?.score)
    }

    /// Time-outs of a team in the whole match, as far as this record knows.
    #[must_use]
    pub fn time_outs_in_match(&self, team: Team) -> u8 {
        let over = self.sets.iter().filter_map(|s| s.play.as_ref());
        over.chain(self.play()).fold(0, |sum, play| {
            sum.saturating_add(play.sides[team].time_outs)
        })
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
            Stage::NextSet(_) if self.sets.is_empty() => Phase::Preparation,
            Stage::NextSet(_) => Phase::BetweenSets,
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

    /// Who is on the left, where a toss has settled it: the toss's before the first set, then as the
    /// last set began. It changes with the first service of a set and with a change of courts.
    #[must_use]
    pub fn left(&self) -> Option<Team> {
        self.left
    }

    /// The last rally, where the reason given with it was dropped: under the 2025 text the serving
    /// team has no positions to be wrong in (7.4).
    #[must_use]
    pub fn dropped_cause(&self) -> Option<u32> {
        self.dropped_cause
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

    /// The same as it stands in a sentence.
    #[must_use]
    pub fn name_in_words(&self, team: Team) -> String {
        isolated(self.name(team))
    }

    /// The sanctions box.
    #[must_use]
    pub fn sanctions(&self) -> &[Sanction] {
        &self.sanctions
    }

    /// The line of the sanctions box that an entry has left: what it became.
    #[must_use]
    pub fn sanction_of(&self, entry: u32) -> Option<&Sanction> {
        self.sanctions.iter().rfind(|s| s.entry == entry)
    }

    /// What was said about the rally of an entry.
    #[must_use]
    pub fn said(&self, entry: u32) -> Option<RallyNote> {
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

    /// Protests that were announced.
    #[must_use]
    pub fn protests(&self) -> &[Protest] {
        &self.protests
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
    pub fn ended(&self) -> Option<DecidedBy> {
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
        let (left_over, voided) = match &self.stage {
            Stage::Finished(e) => (e.left_over.as_deref(), &e.voided[..]),
            _ => (None, &[][..]),
        };
        let records = voided.iter().rev().chain(self.sets.iter().rev());
        // The last ones first: what is asked about is mostly the last rally.
        self.play()
            .into_iter()
            .chain(left_over)
            .chain(records.filter_map(|s| s.play.as_ref()))
            .chain(self.cancelled.iter().rev().map(Arc::as_ref))
            .flat_map(|play| play.points.iter().rev())
            .find(|p| p.entry == entry && p.why == super::set::PointFor::Rally)
    }
}
