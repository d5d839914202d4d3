//! Blocks (14).

use super::attack::Row;
use super::court::End;
use super::ruling::{Margin, Ruling};
use rules::{Cause, Signal};

/// A player in a block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blocker {
    /// Who.
    pub row: Row,
    /// How high the highest part of the body is, in metres.
    pub reach: f64,
}

/// What is blocked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blocked {
    /// The opponents' service.
    Service,
    /// Any other ball that comes from the opponents.
    Other,
}

/// A block of one to three players who are close together, all of them close to the net (14.1).
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// Whose.
    pub by: End,
    /// The players.
    pub players: Vec<Blocker>,
    /// Whether one of them touches the ball, which completes the block (14.1.3, 14.1.4).
    pub touched: bool,
    /// What is blocked.
    pub ball: Blocked,
    /// How high the top of the net is, in metres.
    pub net_top: f64,
}

impl Block {
    /// By how many metres the highest of a row reaches above the net; none where nobody of it is there.
    fn reach_above(&self, row: Row) -> Option<f64> {
        let above = self.players.iter().filter(|p| p.row == row);
        above.map(|p| p.reach - self.net_top).reduce(f64::max)
    }
}

/// Decides on a block: a libero's attempt (14.6.6), one of the service (14.5), and one that is touched and
/// that a player of the back row takes part in (14.6.2). Only who reaches above the net takes part in a
/// block (14.1.1). It does not decide whether hands went over the net too early ([`super::hand_over_net`])
/// nor where the ball flies.
#[must_use]
pub fn block(action: &Block) -> Ruling {
    // The nearest that anybody who must not came to taking part.
    let mut short = f64::INFINITY;
    if let Some(above) = action.reach_above(Row::Libero) {
        if above > 0.0 {
            return Ruling::fault(
                action.by,
                Cause::LiberoFault,
                "14.6.6",
                Margin::Metres(above),
            )
            .shown_by(Signal::BlockOrScreen);
        }
        short = short.min(-above);
    }
    if action.touched {
        if action.ball == Blocked::Service {
            return Ruling::fault(action.by, Cause::BlockFault, "14.5", Margin::Seen);
        }
        if let Some(above) = action.reach_above(Row::Back) {
            if above > 0.0 {
                return Ruling::fault(
                    action.by,
                    Cause::BlockFault,
                    "14.6.2",
                    Margin::Metres(above),
                );
            }
            short = short.min(-above);
        }
    }
    if action.ball == Blocked::Service && !short.is_finite() {
        // Tried, and not made: nobody touched the ball.
        return Ruling::play_on("14.1.2", Margin::Seen);
    }
    let margin = if short.is_finite() {
        Margin::Metres(short)
    } else {
        Margin::Seen
    };
    Ruling::play_on("14.1", margin)
}
