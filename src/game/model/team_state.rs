//! What lasts the whole match for one team, and who of it may not play.

use std::sync::Arc;

use super::entry::{Level, TeamList, Who};
use rules::Shirt;

/// What lasts the whole match for one team.
#[derive(Clone, Debug, Default)]
pub struct TeamState {
    /// Its list.
    pub list: Option<Arc<TeamList>>,
    /// Its liberos, re-designated ones among them.
    pub liberos: Vec<Shirt>,
    /// Improper requests so far; the first one has no consequence (15.11.2).
    pub improper_requests: u8,
    /// Whether its one late libero replacement without consequence is used (19.3.2.5).
    pub late_replacement_noted: bool,
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
    /// Players who were hurt or ill in this match, as the log says.
    pub hurt: Vec<Shirt>,
    /// Who was named game captain last (5.1.2).
    pub spoke_last: Option<Shirt>,
    /// The acting libero who has become unable to play, hurt in a stopped rally or said so with the new
    /// libero's name, and may leave at once (19.3.2.1).
    pub unable_libero: Option<Shirt>,
    /// The acting libero who was only declared unable: the regular player returns first (19.4.2.2).
    pub declared_libero: Option<Shirt>,
}

impl TeamState {
    /// The numbers on the list, in its order; none where there is no list.
    pub fn listed(&self) -> impl Iterator<Item = Shirt> + '_ {
        let list = self.list.iter();
        list.flat_map(|list| list.players.iter().map(|player| player.number))
    }

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

    /// Whether a player was sent off: expelled for the given set, or disqualified.
    #[must_use]
    pub fn is_sent_off(&self, number: Shirt, set: u8) -> bool {
        self.expelled.contains(&(number, set))
            || self
                .conduct
                .contains(&(Who::Player(number), Level::Disqualification))
    }

    /// Notes that a player was hurt or ill.
    pub(crate) fn note_hurt(&mut self, number: Shirt) {
        if !self.hurt.contains(&number) {
            self.hurt.push(number);
        }
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
            .filter(|(w, _)| w.is_same(who))
            .map(|(_, l)| *l)
            .max()
    }
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
