//! A set on court: the places, who stands in them, the points and what the interruption allows.

use super::entry::Change;
use rules::{ByTeam, Rules, Score, Shirt, Team};

/// One place of the line-up, wherever rotation has brought it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// The player who started the set here.
    pub starter: Shirt,
    /// The player who holds the place now, on court or on the bench for a libero.
    pub player: Shirt,
    /// The libero who stands in for that player.
    pub libero: Option<Shirt>,
    /// Whether an exceptional substitution has closed it to regular ones
    /// (Official Volleyball Rules 2025-2028, 15.7).
    pub closed: bool,
}

impl Slot {
    /// Who really stands there.
    #[must_use]
    pub fn on_court(&self) -> Shirt {
        self.libero.unwrap_or(self.player)
    }
}

/// A player who came on court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CameIn {
    /// The player.
    pub player: Shirt,
    /// The starter of the place.
    pub starter: Shirt,
    /// How.
    pub by: CameBy,
}

/// How a player came on court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CameBy {
    /// In the line-up.
    LineUp,
    /// By a regular substitution.
    Substitution,
    /// By an exceptional one (15.7).
    Exceptional,
    /// Put there when a fault found late was put right.
    PutRight,
}

/// One team in a set.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Side {
    /// The places in order, place 1 first; empty where line-ups are not kept.
    pub slots: Vec<Slot>,
    /// Every time a player came on court; starters first.
    pub entered: Vec<CameIn>,
    /// Time-outs taken.
    pub time_outs: u8,
    /// Regular substitutions made.
    pub substitutions: u8,
    /// Exceptional substitutions made.
    pub exceptional: u8,
    /// Whether the substitution request of this interruption is used (15.2.2).
    pub request_used: bool,
    /// Whether a request rejected with a delay warning bars any further one (15.2.4).
    pub barred: bool,
    /// The legal part of a request that was rejected because of the other part: it stays open until the
    /// next completed rally, whatever the rejection cost (15.10.4).
    pub open_part: Vec<Change>,
    /// Completed rallies of the set when a libero last came or went (19.3.2.1).
    pub libero_moved: Option<u16>,
    /// Who was named to speak for the team while its captain is not on court (5.1.2).
    pub game_captain: Option<Shirt>,
}

impl Side {
    /// The side at the start of a set.
    #[must_use]
    pub fn start(line_up: &[Shirt]) -> Side {
        Side {
            slots: line_up
                .iter()
                .map(|&s| Slot {
                    starter: s,
                    player: s,
                    libero: None,
                    closed: false,
                })
                .collect(),
            entered: line_up.iter().map(|&s| CameIn::starting(s)).collect(),
            ..Side::default()
        }
    }

    /// The line-up that the side started the set with, place 1 first.
    #[must_use]
    pub fn line_up(&self) -> Vec<Shirt> {
        self.entered[..self.slots.len().min(self.entered.len())]
            .iter()
            .map(|e| e.player)
            .collect()
    }

    /// Who stands on court, place 1 first.
    pub fn on_court(&self) -> impl Iterator<Item = Shirt> + '_ {
        self.slots.iter().map(Slot::on_court)
    }

    /// Whether a shirt holds or fills a place, on court or benched for a libero.
    #[must_use]
    pub fn holds(&self, shirt: Shirt) -> bool {
        self.slots
            .iter()
            .any(|s| s.player == shirt || s.libero == Some(shirt))
    }

    /// The index of the place that a regular player holds (0 is place 1).
    #[must_use]
    pub fn place_of(&self, shirt: Shirt) -> Option<usize> {
        self.slots.iter().position(|s| s.player == shirt)
    }

    /// The index of the place where a libero stands, with the libero.
    #[must_use]
    pub fn acting_libero(&self) -> Option<(usize, Shirt)> {
        self.slots
            .iter()
            .enumerate()
            .find_map(|(i, s)| s.libero.map(|l| (i, l)))
    }

    /// How often a player has come on court in this set, starting counted.
    #[must_use]
    pub fn entries_of(&self, shirt: Shirt) -> usize {
        self.entered.iter().filter(|e| e.player == shirt).count()
    }

    /// The starter of the place that a player is bound to, if he or she has been on court.
    #[must_use]
    pub fn bound_to(&self, shirt: Shirt) -> Option<Shirt> {
        self.entered
            .iter()
            .find(|e| e.player == shirt)
            .map(|e| e.starter)
    }

    /// One place clockwise (7.6.2): the player of place 2 comes to place 1.
    fn rotate(&mut self) {
        if !self.slots.is_empty() {
            self.slots.rotate_left(1);
        }
    }

    /// Back by one place.
    fn rotate_back(&mut self) {
        if !self.slots.is_empty() {
            self.slots.rotate_right(1);
        }
    }

    /// Puts a player in for the holder of a place, by a substitution, and counts it; an exceptional one
    /// closes the place to regular ones.
    pub(crate) fn bring_in(&mut self, change: Change, exceptional: bool) {
        if let Some(place) = self.place_of(change.out) {
            let slot = &mut self.slots[place];
            slot.player = change.into;
            slot.closed |= exceptional;
            self.entered.push(CameIn {
                player: change.into,
                starter: slot.starter,
                by: if exceptional {
                    CameBy::Exceptional
                } else {
                    CameBy::Substitution
                },
            });
        }
        let count = if exceptional {
            &mut self.exceptional
        } else {
            &mut self.substitutions
        };
        *count = count.saturating_add(1);
    }

    /// Puts the side into the given order; each shirt keeps the place it holds, a shirt that holds
    /// none takes over a place that would be left without one. In a `revised` line-up such a shirt
    /// starts the set there. Gives back whom an exceptional substitution had taken out that counts no
    /// more.
    pub(crate) fn put_right(
        &mut self,
        positions: &[Shirt],
        revised: bool,
        is_libero: impl Fn(Shirt) -> bool,
    ) -> Vec<Shirt> {
        let before = std::mem::take(&mut self.slots);
        let mut left = before.clone();
        let mut take =
            |test: &dyn Fn(&Slot) -> bool| left.iter().position(test).map(|i| left.remove(i));
        let mut placed: Vec<Option<Slot>> = positions
            .iter()
            .map(|&shirt| {
                take(&|s| s.libero == Some(shirt)).or_else(|| take(&|s| s.player == shirt))
            })
            .collect();
        // A shirt that is nowhere: its own starting place first, then whatever is left.
        for own_place in [true, false] {
            for (slot, &shirt) in placed.iter_mut().zip(positions) {
                if slot.is_none() {
                    *slot = take(&|s| !own_place || s.starter == shirt);
                }
            }
        }
        // Who held a place that somebody else takes over.
        let displaced: Vec<(Shirt, Shirt)> = placed
            .iter()
            .zip(positions)
            .filter_map(|(slot, &shirt)| slot.map(|s| (shirt, s.player)))
            .collect();
        let instead_of = |player: Shirt| {
            displaced
                .iter()
                .find(|(shirt, _)| *shirt == player)
                .map_or(player, |(_, held)| *held)
        };
        let right: Vec<Slot> = placed
            .into_iter()
            .zip(positions)
            .filter_map(|(slot, &shirt)| {
                let mut slot = slot?;
                if slot.libero == Some(shirt) || (is_libero(shirt) && slot.player != shirt) {
                    // The player on the bench for the libero may stand in another place now; then
                    // the holder of that place has gone to the bench for him or her.
                    slot.libero = Some(shirt);
                    slot.player = instead_of(slot.player);
                } else {
                    slot.libero = None;
                    slot.player = shirt;
                }
                Some(slot)
            })
            .collect();
        let held: Vec<(Shirt, Shirt)> = before.iter().map(|s| (s.starter, s.player)).collect();
        self.slots = right;
        held.into_iter()
            .flat_map(|(starter, old)| self.note_put_right(starter, old, revised))
            .collect()
    }

    /// Where putting right has changed the holder of a place: what has brought the wrong one in never was
    /// and counts no more (15.9.2.2, 7.3.5.4); a player who was not there before is put there.
    fn note_put_right(&mut self, starter: Shirt, old: Shirt, revised: bool) -> Vec<Shirt> {
        let Some(place) = self.slots.iter().position(|s| s.starter == starter) else {
            return Vec::new();
        };
        let new = self.slots[place].player;
        if new == old {
            return Vec::new();
        }
        let in_place: Vec<usize> = (0..self.entered.len())
            .filter(|&i| self.entered[i].starter == starter)
            .collect();
        let came = in_place
            .iter()
            .rposition(|&i| self.entered[i].player == new);
        let starts = revised && self.bound_to(new).is_none();
        // What stays of the history of the place: up to the right player, or, where nobody knows how the
        // right one came, all but the wrong one.
        let stays = match came {
            Some(came) => came + 1,
            None if starts => 1,
            None if revised => in_place.len().saturating_sub(1).max(1),
            None => in_place.len(),
        };
        let freed = self.take_out(&in_place[stays.min(in_place.len())..]);
        if starts {
            self.slots[place].starter = new;
            if let Some(first) = self.entered.iter_mut().find(|e| e.starter == starter) {
                *first = CameIn::starting(new);
            }
        } else if came.is_none() {
            self.entered.push(CameIn {
                player: new,
                starter,
                by: CameBy::PutRight,
            });
        }
        let starter = self.slots[place].starter;
        self.slots[place].closed = self
            .entered
            .iter()
            .any(|e| e.starter == starter && e.by == CameBy::Exceptional);
        freed
    }

    /// Takes entries out of the history, and out of the counts. Gives back who had left by the
    /// exceptional ones among them.
    fn take_out(&mut self, entries: &[usize]) -> Vec<Shirt> {
        let mut freed = Vec::new();
        for &i in entries.iter().rev() {
            let gone = self.entered.remove(i);
            match gone.by {
                CameBy::Substitution => self.substitutions = self.substitutions.saturating_sub(1),
                CameBy::Exceptional => {
                    self.exceptional = self.exceptional.saturating_sub(1);
                    let before = &self.entered[..i];
                    let left = before.iter().rev().find(|e| e.starter == gone.starter);
                    freed.extend(left.map(|e| e.player));
                }
                CameBy::LineUp | CameBy::PutRight => {}
            }
        }
        freed
    }
}

impl CameIn {
    /// A player who starts the set in his or her own place.
    const fn starting(player: Shirt) -> CameIn {
        CameIn {
            player,
            starter: player,
            by: CameBy::LineUp,
        }
    }
}

/// What a point was given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointFor {
    /// A rally.
    Rally,
    /// A misconduct or delay penalty.
    Penalty,
    /// A fault found late.
    LateFault,
    /// A score that had been miscounted.
    Correction,
}

/// One point of a set, in the order given; a cancelled one stays and says what cancelled it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Point {
    /// The entry that gave it.
    pub entry: u32,
    /// Whose.
    pub to: Team,
    /// What for.
    pub why: PointFor,
    /// Who served, where known.
    pub served: Option<Team>,
    /// The entry that cancelled it.
    pub cancelled_by: Option<u32>,
}

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
