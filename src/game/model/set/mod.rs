//! A set on court: the places, who stands in them, the points and what the interruption allows.

mod point;
mod side;

pub use point::{Point, PointFor};
pub use side::{CameBy, CameIn, Side, Slot};

use rules::{ByTeam, Rules, Score, Shirt, Team};

/// A score that stood at some moment of the set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct ScoreSnapshot {
    score: Score,
    points: usize,
}

/// A set being played, or as it was when it ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetPlay {
    /// From 1.
    pub number: u8,
    /// Who was due to open it; unknown only in a tally without a toss.
    pub opener: Option<Team>,
    /// Who is on the left, seen from the stand.
    pub left: Team,
    /// Whether the change of courts of the deciding set is done.
    pub changed_courts: bool,
    /// Points with which this record took the set over; what was played before is not known.
    pub base: Score,
    /// Whether the organiser's clock has ended the set: the next lead wins it.
    pub time_up: bool,
    /// Points.
    pub score: Score,
    /// Who serves next.
    pub serving: Option<Team>,
    /// The teams on court.
    pub sides: ByTeam<Side>,
    /// All points in order.
    pub points: Vec<Point>,
    /// Completed rallies so far; a penalty is one, a replay is not (6.1.3).
    pub completed: u16,
    /// Whether the last rally was stopped and not yet replayed.
    pub replay_open: bool,
    stood: Vec<ScoreSnapshot>,
}

impl SetPlay {
    /// A set before its first service.
    #[must_use]
    pub fn start(
        number: u8,
        opener: Option<Team>,
        left: Team,
        line_ups: &ByTeam<Vec<Shirt>>,
    ) -> SetPlay {
        SetPlay {
            number,
            opener,
            left,
            changed_courts: false,
            base: Score::default(),
            time_up: false,
            score: Score::default(),
            serving: opener,
            sides: line_ups.map(|_, l| Side::start(l)),
            points: Vec::new(),
            completed: 0,
            replay_open: false,
            stood: vec![ScoreSnapshot {
                score: Score::default(),
                points: 0,
            }],
        }
    }

    /// Whether it is followed who of a team stands where; not where line-ups are not kept, nor where the
    /// set was begun without this one.
    #[must_use]
    pub fn follows_places(&self, team: Team) -> bool {
        !self.sides[team].slots.is_empty()
    }

    /// Whether the score is more than a number: service and rotation of a team follow from it, so that it
    /// changes by its points alone.
    #[must_use]
    pub fn score_is_followed(&self) -> bool {
        Team::BOTH.into_iter().any(|team| self.follows_places(team))
    }

    /// The player who serves next.
    #[must_use]
    pub fn server(&self) -> Option<Shirt> {
        let side = &self.sides[self.serving?];
        side.slots.first().map(Slot::on_court)
    }

    /// Who has won the set as it stands.
    #[must_use]
    pub fn winner(&self, rules: &Rules) -> Option<Team> {
        rules.winner_of(self.number, self.score, self.time_up)
    }

    /// Goes on from a score that stood before this record began.
    pub(crate) fn take_over(&mut self, score: Score, serving: Option<Team>) {
        self.base = score;
        self.score = score;
        self.serving = serving;
        self.stood = vec![ScoreSnapshot { score, points: 0 }];
    }

    /// How many points the set has given, with cancelled ones, once its score is made this one.
    pub(crate) fn given_by_then(&self, score: Score) -> usize {
        let missing = |team: Team| score[team].saturating_sub(self.score[team]);
        self.points.len()
            + Team::BOTH
                .map(|team| usize::from(missing(team)))
                .iter()
                .sum::<usize>()
    }

    /// Makes the score another one: the last points of a team that has too many are cancelled, points that
    /// are missing are added. Nobody rotates.
    pub(crate) fn correct(&mut self, score: Score, by: u32) {
        for team in Team::BOTH {
            while self.score[team] > score[team] {
                let standing = |p: &Point| p.to == team && p.cancelled_by.is_none();
                match self.points.iter().rposition(standing) {
                    Some(last) => self.cancel_one(team, last, by),
                    // What was taken over was miscounted.
                    None => {
                        self.base[team] = score[team];
                        self.score[team] = score[team];
                        self.stood.clear();
                    }
                }
            }
            while self.score[team] < score[team] {
                self.points.push(Point {
                    entry: by,
                    to: team,
                    why: PointFor::Correction,
                    served: None,
                    cancelled_by: None,
                });
                self.score = self.score.plus(team);
            }
        }
        self.note_score();
    }

    /// Goes back to a score that stood: every point since then is cancelled and both sides turn back.
    pub(crate) fn go_back(&mut self, score: Score, by: u32) {
        let Some(from) = self.moment(score) else {
            return;
        };
        for i in (from..self.points.len()).rev() {
            let point = self.points[i];
            if point.served == Some(point.to.other()) {
                self.sides[point.to].rotate_back();
            }
            self.serving = point.served.or(self.serving);
        }
        for team in Team::BOTH {
            self.cancel(team, from, by);
        }
        self.note_score();
        self.replay_open = false;
    }

    /// Gives a point and the service; the team that gains the service rotates (6.1.3.2).
    pub(crate) fn award(&mut self, to: Team, why: PointFor, entry: u32) {
        self.point(to, why, entry);
        self.give_service(to);
    }

    /// A point is a completed rally, whatever it was given for (6.1.3): a new interruption begins.
    fn point(&mut self, to: Team, why: PointFor, entry: u32) {
        self.points.push(Point {
            entry,
            to,
            why,
            served: self.serving,
            cancelled_by: None,
        });
        self.score = self.score.plus(to);
        self.stood.push(ScoreSnapshot {
            score: self.score,
            points: self.points.len(),
        });
        self.completed = self.completed.saturating_add(1);
        self.replay_open = false;
        for team in Team::BOTH {
            let side = &mut self.sides[team];
            side.request_used = false;
            side.barred = false;
            side.open_part.clear();
        }
    }

    /// Gives the service to a team, which rotates where the other had it.
    pub(crate) fn give_service(&mut self, to: Team) {
        if self.serving == Some(to.other()) {
            self.sides[to].rotate();
        }
        self.serving = Some(to);
    }

    /// Points for penalties given between the sets, counted at the first service (FIVB Casebook
    /// 2024, case 6.4): `penalties` holds the entries by the team at fault. Gives back those that a
    /// set won by the others has no room for: they count in the next one.
    pub(crate) fn open_with_penalties(
        &mut self,
        penalties: &ByTeam<Vec<u32>>,
        rules: &Rules,
    ) -> ByTeam<Vec<u32>> {
        let mut left = penalties.clone();
        let at_fault = |team: Team| !penalties[team].is_empty();
        if at_fault(Team::A) && at_fault(Team::B) {
            // 1-1 and both rotate; that the team due to open still serves is our choice, the text
            // is silent.
            for team in Team::BOTH {
                for entry in left[team].drain(..) {
                    self.point(team.other(), PointFor::Penalty, entry);
                }
                self.sides[team].rotate();
            }
            // They count together: 1-0 and 0-1 never stood.
            self.stood.truncate(1);
            self.note_score();
        } else if let Some(team) = Team::BOTH.into_iter().find(|&t| at_fault(t)) {
            while !left[team].is_empty() && self.winner(rules).is_none() {
                let entry = left[team].remove(0);
                self.award(team.other(), PointFor::Penalty, entry);
            }
        }
        left
    }

    /// How many points had been given when the score last stood so.
    #[must_use]
    pub fn moment(&self, score: Score) -> Option<usize> {
        self.stood
            .iter()
            .rev()
            .find(|s| s.score == score)
            .map(|s| s.points)
    }

    /// The score that stood and is nearest to one that never did.
    #[must_use]
    pub fn nearest(&self, score: Score) -> Score {
        let apart = |s: &ScoreSnapshot| {
            u32::from(s.score.a.abs_diff(score.a)) + u32::from(s.score.b.abs_diff(score.b))
        };
        self.stood
            .iter()
            .rev()
            .min_by_key(|s| apart(s))
            .map_or_else(Score::default, |s| s.score)
    }

    /// All scores that stood, the first first.
    pub fn scores(&self) -> impl Iterator<Item = Score> + '_ {
        self.stood.iter().map(|s| s.score)
    }

    /// Each point that counts, by the entry that gave it, with the score that it led to.
    pub fn scores_by_entry(&self) -> impl Iterator<Item = (u32, Score)> + '_ {
        let counts = self.points.iter().filter(|p| p.cancelled_by.is_none());
        counts.scan(self.base, |score, point| {
            *score = score.plus(point.to);
            Some((point.entry, *score))
        })
    }

    /// The last rally that still counts, one stopped for a fault found late among them: its place
    /// among the points.
    #[must_use]
    pub fn last_rally(&self) -> Option<usize> {
        self.points
            .iter()
            .rposition(|p| p.why != PointFor::Penalty && p.cancelled_by.is_none())
    }

    /// Who served the rallies from that place among the points on, as far as known; penalties are no
    /// rallies.
    pub fn servers_from(&self, from: usize) -> impl Iterator<Item = Option<Team>> + '_ {
        let rallies = self.points.iter().skip(from);
        rallies
            .filter(|p| p.why != PointFor::Penalty)
            .map(|p| p.served)
    }

    /// The score at which the last rally began, if one was completed.
    #[must_use]
    pub fn before_last_rally(&self) -> Option<Score> {
        let last = self
            .points
            .iter()
            .rposition(|p| p.why != PointFor::Penalty)?;
        self.stood
            .iter()
            .rev()
            .find(|s| s.points <= last)
            .map(|s| s.score)
    }

    /// Cancels the points of `team` from the given place on, and the scores that contained them.
    pub(crate) fn cancel(&mut self, team: Team, from: usize, by: u32) {
        self.cancel_within(team, from..self.points.len(), by);
    }

    /// The same for one point, if it is that team's.
    pub(crate) fn cancel_one(&mut self, team: Team, place: usize, by: u32) {
        self.cancel_within(team, place..place + 1, by);
    }

    fn cancel_within(&mut self, team: Team, places: std::ops::Range<usize>, by: u32) {
        let mut first = None;
        for i in places {
            let point = &mut self.points[i];
            if point.to == team && point.cancelled_by.is_none() {
                point.cancelled_by = Some(by);
                self.score[team] -= 1;
                first.get_or_insert(i);
            }
        }
        if let Some(first) = first {
            self.stood.retain(|s| s.points <= first);
        }
    }

    /// The score as it is after a correction is one that stood.
    pub(crate) fn note_score(&mut self) {
        if self.stood.last().map(|s| s.score) != Some(self.score) {
            self.stood.push(ScoreSnapshot {
                score: self.score,
                points: self.points.len(),
            });
        }
    }

    /// Whether the teams have to change courts now (18.2.2).
    #[must_use]
    pub fn change_of_courts_due(&self, rules: &Rules) -> bool {
        !self.changed_courts
            && rules
                .courts_change_at(self.number)
                .is_some_and(|at| self.score.a.max(self.score.b) >= at)
    }
}
