//! What moves on the court, each once: the six numbers at a side-out, a score at a point. It is drawn by the
//! style sheet from a class that changes; where less movement is asked for, it marks what has changed instead.

use leptos::prelude::*;

use crate::memo::Memo;

use rules::{Shirt, Team};

/// Which of two classes that draw the same movement is set. They take turns, because a browser begins a
/// movement anew only when its name changes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Moves {
    /// Nothing moves.
    #[default]
    Not,
    /// The first of them.
    One,
    /// The other one.
    Other,
}

impl Moves {
    const fn once_more(self) -> Moves {
        match self {
            Moves::One => Moves::Other,
            Moves::Not | Moves::Other => Moves::One,
        }
    }
}

/// Whoever stood at places 2 to 6 and 1 stands at places 1 to 6 now (FIVB Official Volleyball Rules 2025-2028,
/// 7.6.2: one place clockwise). Fewer players turn in another picture, which does not move.
fn one_place_clockwise(was: &[Shirt], now: &[Shirt]) -> bool {
    was.len() == 6 && now.len() == 6 && (0..6).all(|i| now[i] == was[(i + 1) % 6])
}

/// A movement until it has been seen: what is hidden and shown again does not move once more.
#[derive(Clone, Copy)]
pub(super) struct Movement {
    moves: Memo<Moves>,
    seen: RwSignal<Moves>,
}

impl Movement {
    fn of(moves: Memo<Moves>) -> Movement {
        Movement {
            moves,
            seen: RwSignal::new(Moves::Not),
        }
    }

    /// Whether this one of the two classes is set.
    pub(super) fn is(self, which: Moves) -> bool {
        self.moves.get() == which && self.seen.get() != which
    }

    /// It has come to its end.
    pub(super) fn ended(self) {
        self.seen.set(self.moves.get_untracked());
    }
}

/// Moves whenever the team in this half turns.
pub(super) fn turns(standing: impl Fn() -> (Team, Vec<Shirt>) + Send + Sync + 'static) -> Movement {
    let turned = Memo::new(move |was: Option<&(Team, Vec<Shirt>, Moves)>| {
        let (team, now) = standing();
        let moves = match was {
            Some((of, shirts, moves)) if *of == team && *shirts == now => *moves,
            Some((of, shirts, moves)) if *of == team && one_place_clockwise(shirts, &now) => {
                moves.once_more()
            }
            Some(_) | None => Moves::Not,
        };
        (team, now, moves)
    });
    Movement::of(Memo::new(move |_| turned.read().2))
}

/// Moves whenever the team in this half gets a point; and the score that goes.
pub(super) fn rolls(
    score: impl Fn() -> (Team, u16) + Send + Sync + 'static,
) -> (Movement, Memo<u16>) {
    let rolled = Memo::new(move |was: Option<&(Team, u16, Moves, u16)>| {
        let (team, now) = score();
        let (moves, before) = match was {
            Some((of, score, moves, before)) if *of == team && *score == now => (*moves, *before),
            Some((of, score, moves, _)) if *of == team && *score + 1 == now => {
                (moves.once_more(), *score)
            }
            Some(_) | None => (Moves::Not, now),
        };
        (team, now, moves, before)
    });
    let movement = Movement::of(Memo::new(move |_| rolled.read().2));
    (movement, Memo::new(move |_| rolled.read().3))
}
