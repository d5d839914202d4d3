//! The set at hand: the one that is played, ready or to come, its score, and who serves.

use super::State;
use crate::model::set::{SetPlay, Side};
use crate::model::stage::{NextSet, Phase, Stage};
use rules::{Score, Shirt, Team};

impl State {
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
            Stage::NextSet(c) => c.ready.as_deref().or_else(|| self.last_play()),
            Stage::Finished(e) => e.left_over.as_deref().or_else(|| self.last_play()),
            Stage::Suspended { .. } => None,
        }
    }

    /// The set being played or ready to be: where players may come and go.
    #[must_use]
    pub fn on_floor(&self) -> Option<&SetPlay> {
        match &self.stage {
            Stage::Playing(play) => Some(play),
            Stage::NextSet(c) => c.ready.as_deref(),
            _ => None,
        }
    }

    pub(crate) fn on_floor_mut(&mut self) -> Option<&mut SetPlay> {
        match &mut self.stage {
            Stage::Playing(play) => Some(play),
            Stage::NextSet(c) => c.ready.as_deref_mut(),
            _ => None,
        }
    }

    fn last_play(&self) -> Option<&SetPlay> {
        self.sets.iter().rev().find_map(|s| s.play.as_ref())
    }

    /// The stage, or the one that an interruption has left.
    pub(crate) fn stage_beneath(&self) -> &Stage {
        match &self.stage {
            Stage::Suspended { then, .. } => then,
            stage => stage,
        }
    }

    pub(crate) fn stage_beneath_mut(&mut self) -> &mut Stage {
        match &mut self.stage {
            Stage::Suspended { then, .. } => then,
            stage => stage,
        }
    }

    pub(crate) fn coming(&self) -> Option<&NextSet> {
        match self.stage_beneath() {
            Stage::NextSet(c) => Some(c),
            _ => None,
        }
    }

    pub(crate) fn coming_mut(&mut self) -> Option<&mut NextSet> {
        match self.stage_beneath_mut() {
            Stage::NextSet(c) => Some(c),
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
    pub(crate) fn begun(&self) -> bool {
        self.phase() != Phase::Preparation || self.coming().is_some_and(|c| c.again.is_some())
    }

    /// The number of the set after the finished ones.
    pub(crate) fn next_number(&self) -> u8 {
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
        if self
            .coming()
            .is_some_and(|c| c.again.is_some() || c.joined.is_some())
        {
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
        if let Some(score) = self.score_taken_over() {
            return score;
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
        if let Some(joined) = coming.joined {
            let team = joined.serving?;
            return Some((team, coming.ready.as_ref().and_then(|r| r.server())));
        }
        let opener = coming.again?.opener?;
        // Known once that side's line-up stands, whether the other's does or not.
        let first = |side: &Side| side.on_court().next();
        let ready = coming.ready.as_ref().map(|r| &r.sides[opener]);
        let server = match ready.or(coming.kept[opener].as_ref()) {
            Some(side) => first(side),
            None => coming.line_ups[opener]
                .as_ref()
                .filter(|_| self.rules.line_ups)
                .and_then(|l| l.first().copied()),
        };
        Some((opener, server))
    }
}
