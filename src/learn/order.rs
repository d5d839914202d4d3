//! Which of several faults counts (6.1.2, 7.5.2, 7.5.3, 12.7).

use super::ruling::{Call, Margin, Ruling};

/// Two opponents' faults that are no farther apart than this happen at once, in seconds: one picture of a
/// film of 25 pictures a second, which is about what an eye beside the net can part. Our own choice.
pub const AT_ONCE: f64 = 0.04;

/// A ruling with the moment of what it rules on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Timed {
    /// The moment, in seconds from any beginning.
    pub at: f64,
    /// The ruling.
    pub ruling: Ruling,
}

/// Decides between several things that happened: the first fault counts (6.1.2.1), and where opponents
/// commit faults at once the rally is played again (6.1.2.2). The margin says how much earlier the fault
/// was than the first one of the other side.
#[must_use]
pub fn first_fault(happened: &[Timed]) -> Ruling {
    let faults = || happened.iter().filter(|one| one.ruling.is_fault());
    let earliest = |of: &mut dyn Iterator<Item = &Timed>| {
        of.copied().reduce(|a, b| if b.at < a.at { b } else { a })
    };
    let Some(first) = earliest(&mut faults()) else {
        return Ruling::play_on("6.1.3", Margin::Seen);
    };
    let Call::Fault { by, .. } = first.ruling.call else {
        return first.ruling;
    };
    let of_the_other =
        |one: &&Timed| matches!(one.ruling.call, Call::Fault { by: of, .. } if of != by);
    match earliest(&mut faults().filter(of_the_other)) {
        Some(other) if other.at - first.at <= AT_ONCE => {
            Ruling::replay("6.1.2.2", Margin::Seconds(AT_ONCE - (other.at - first.at)))
        }
        Some(other) => Ruling {
            rule: "6.1.2.1",
            margin: Margin::Seconds(other.at - first.at - AT_ONCE),
            ..first.ruling
        },
        None => first.ruling,
    }
}

/// Decides what counts at a service: a fault of the server at the hit beats a positional fault of the
/// receivers (7.5.2, 12.7.1), which beats a service that goes wrong after the hit (7.5.3, 12.7.2).
#[must_use]
pub fn at_the_service(at_the_hit: Ruling, receivers: Ruling, after_the_hit: Ruling) -> Ruling {
    [at_the_hit, receivers, after_the_hit]
        .into_iter()
        .find(|ruling| ruling.call != Call::PlayOn)
        .unwrap_or(after_the_hit)
}
