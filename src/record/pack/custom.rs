//! What is usual, before anything was seen: so that the first rallies of a match are as cheap as the
//! later ones. Common practice and memory, no source; a match that is otherwise costs more and comes
//! back all the same. Any change here is a new version of the packed form.

use super::coder::Chance;
use crate::rules::Cause;

/// How often a rally ends so, in a thousand, where it fits the side that won.
pub(super) const fn weight_of(cause: Cause) -> u16 {
    match cause {
        Cause::BallIn => 250,
        Cause::BallOut => 230,
        Cause::BallTouched => 120,
        Cause::ServiceOut | Cause::ServiceNet => 90,
        Cause::ServiceWinner => 100,
        Cause::NetTouch => 40,
        Cause::DoubleContact => 35,
        Cause::Catch => 30,
        Cause::UnderNet | Cause::ServiceFoot | Cause::Antenna | Cause::FourHits => 15,
        Cause::OverNet | Cause::OutsideCrossing | Cause::AttackFault | Cause::PositionFault => 10,
        Cause::RotationFault | Cause::NotSaid => 8,
        Cause::AssistedHit
        | Cause::ServiceTime
        | Cause::ServiceToss
        | Cause::BlockFault
        | Cause::LiberoFault
        | Cause::Screen => 4,
    }
}

/// Who is named with a cause: how often somebody of the side that lost the rally, in sixteenths.
pub(super) const fn loser_named(cause: Cause) -> u16 {
    match cause {
        Cause::BallIn | Cause::ServiceWinner => 1,
        Cause::BallTouched => 8,
        _ => 15,
    }
}

/// Whether the one who is named is the server, in sixteenths.
pub(super) const fn server_named(cause: Option<Cause>) -> u16 {
    match cause {
        Some(
            Cause::ServiceWinner
            | Cause::ServiceNet
            | Cause::ServiceOut
            | Cause::ServiceFoot
            | Cause::ServiceTime
            | Cause::ServiceToss,
        ) => 15,
        _ => 2,
    }
}

/// The causes as leaves of a tree of yes-or-no, by how often each is met; for a rally that the serving
/// side won or lost.
pub(super) fn causes(serving_side_lost: bool) -> [Chance; 32] {
    let weight = |place: usize| match Cause::ALL.get(place) {
        Some(cause) if cause.fits(serving_side_lost) => u32::from(weight_of(*cause)),
        _ => 1,
    };
    tree(weight)
}

/// The chances of a tree of 32 leaves from the weights of its leaves; more weight, more trust.
fn tree(weight: impl Fn(usize) -> u32) -> [Chance; 32] {
    let mut chances = [Chance::EVEN; 32];
    let mut sums = [0u32; 64];
    for (place, sum) in sums[32..].iter_mut().enumerate() {
        *sum = weight(place);
    }
    for node in (1..32).rev() {
        sums[node] = sums[2 * node] + sums[2 * node + 1];
        // About thirty rallies' worth of trust in all.
        let trust = u8::try_from(sums[node] / 32).unwrap_or(40).clamp(2, 40);
        chances[node] = Chance::taught(sums[2 * node + 1], sums[node], trust);
    }
    chances
}

/// What follows upon what: a stretch of an ordinary match, one letter an entry, as in
/// [`super::model::Pattern::letter`].
pub(super) const ORDINARY: &str = "wwkkkkkkuuhnnnnttttbbllg\
    rererererrlererellrererllrererererelrerererrlererlrerottrererrellrererlerererellrererexrelrerere\
    relrerersererelrerererlrererlrererelrerererottrerellrererererlrererelrererexrererererllrerer\
    bblgrererelrerererllererrrerlrererererlerererlererottrerelreresrererererellrererelrererecrell\
    nnnnnz";
