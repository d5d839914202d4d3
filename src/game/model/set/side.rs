//! A team on court in a set: who holds which place, and who came in how.

use crate::model::entry::Change;
use rules::Shirt;

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
    pub(super) fn rotate(&mut self) {
        if !self.slots.is_empty() {
            self.slots.rotate_left(1);
        }
    }

    /// Back by one place.
    pub(super) fn rotate_back(&mut self) {
        if !self.slots.is_empty() {
            self.slots.rotate_right(1);
        }
    }

    /// Whether this player came on court last by an exceptional substitution (15.7).
    #[must_use]
    pub fn came_exceptionally(&self, player: Shirt) -> bool {
        let last = self.entered.iter().rfind(|came| came.player == player);
        last.is_some_and(|came| came.by == CameBy::Exceptional)
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
