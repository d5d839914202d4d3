//! In which order kinds of scenes are met.

use learn::{Case, Kind};
use rules::Cause;

/// The kinds in the order in which they are met: what a first match needs before the rest, each with its near
/// miss, and what is rare at the end (our own choice).
pub fn order() -> impl Iterator<Item = Kind> {
    const CAUSES: [Cause; 25] = [
        Cause::BallOut,
        Cause::BallIn,
        Cause::NetTouch,
        Cause::ServiceFoot,
        Cause::BallTouched,
        Cause::DoubleContact,
        Cause::ServiceNet,
        Cause::UnderNet,
        Cause::FourHits,
        Cause::ServiceOut,
        Cause::ServiceWinner,
        Cause::Catch,
        Cause::Antenna,
        Cause::AttackFault,
        Cause::PositionFault,
        Cause::OverNet,
        Cause::OutsideCrossing,
        Cause::BlockFault,
        Cause::ServiceTime,
        Cause::ServiceToss,
        Cause::RotationFault,
        Cause::OutsideCourt,
        Cause::LiberoFault,
        Cause::AssistedHit,
        Cause::Screen,
    ];
    let pairs = CAUSES.into_iter();
    let pairs = pairs.flat_map(|cause| [Kind::Ends(cause), Kind::GoesOn(cause)]);
    let cases = Case::ALL.into_iter();
    let cases = cases.flat_map(|case| [Kind::CaseEnds(case), Kind::CaseGoesOn(case)]);
    pairs
        .chain(Kind::all().filter(|kind| kind.cause().is_none()))
        .chain(cases)
}
