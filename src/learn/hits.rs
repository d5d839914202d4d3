//! Counting hits (9): four hits, double contact, catch, assisted hit.

use super::court::End;
use super::ruling::{Margin, Ruling};
use rules::Cause;

/// One contact of a player with the ball.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Touch {
    /// Whose player.
    pub by: End,
    /// Which player, by whatever number.
    pub player: u8,
    /// In what.
    pub kind: TouchKind,
    /// How.
    pub manner: Manner,
    /// Whether it happens at the very moment of the one before: two team-mates, or two opponents above the
    /// net.
    pub with_last: bool,
    /// Whether it belongs to the same action of the same player as the one before.
    pub same_action: bool,
}

/// What a contact is part of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TouchKind {
    /// A block.
    Block,
    /// Any other contact.
    Hit,
}

/// How the ball was met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// It rebounds.
    Rebounds,
    /// It is caught or thrown, as the referee saw it (9.2.2).
    Caught,
    /// A team-mate or a thing inside the playing area helps the player to reach it (9.1.3).
    Helped,
}

/// Where the counting stands.
#[derive(Clone, Copy)]
struct Count {
    side: End,
    hits: u8,
    last: Touch,
    /// Whether all contacts so far belong to the first hit of the team.
    in_first: bool,
}

/// Decides on a row of contacts after the service; the first fault counts (6.1.2.1). A block is no hit
/// (14.4.1), and whoever blocked may hit next (14.4.2). In the first hit of a team one player may touch the
/// ball several times in one action (9.2.3.2). Team-mates who touch it at once have hit twice (9.1.2.1);
/// opponents who touch it at once above the net leave three new hits to the side that gets it (9.1.2.2),
/// and that may end in a held ball (9.1.2.3).
#[must_use]
pub fn hits(touches: &[Touch]) -> Ruling {
    let mut count: Option<Count> = None;
    for touch in touches {
        let fault = |cause, rule| Ruling::fault(touch.by, cause, rule, Margin::Seen);
        let opponents_at_once =
            touch.with_last && count.is_some_and(|count| count.side != touch.by);
        match touch.manner {
            Manner::Helped => return fault(Cause::AssistedHit, "9.1.3"),
            Manner::Caught if !opponents_at_once => return fault(Cause::Catch, "9.2.2"),
            Manner::Caught | Manner::Rebounds => {}
        }
        let same_side = count.filter(|count| count.side == touch.by);
        if touch.kind == TouchKind::Block || opponents_at_once {
            count = Some(Count {
                side: touch.by,
                hits: 0,
                last: *touch,
                in_first: true,
            });
            continue;
        }
        let Some(before) = same_side else {
            count = Some(Count {
                side: touch.by,
                hits: 1,
                last: *touch,
                in_first: true,
            });
            continue;
        };
        let same_player = before.last.player == touch.player && before.hits > 0;
        if same_player {
            if before.in_first && before.hits == 1 && touch.same_action {
                count = Some(Count {
                    last: *touch,
                    ..before
                });
                continue;
            }
            // Also where it would be the fourth (FIVB Refereeing Guidelines 2024, rule 28, point 14).
            return fault(Cause::DoubleContact, "9.3.4");
        }
        if before.hits == 3 {
            return fault(Cause::FourHits, "9.3.1");
        }
        count = Some(Count {
            side: touch.by,
            hits: before.hits + 1,
            last: *touch,
            in_first: before.hits == 0,
        });
    }
    Ruling::play_on("9.1", Margin::Seen)
}

/// Decides on a player whom a team-mate holds back from a fault, such as from touching the net: no help to
/// reach the ball (9.1.3).
#[must_use]
pub fn held_back() -> Ruling {
    Ruling::play_on("9.1.3", Margin::Seen)
}
