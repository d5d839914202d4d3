//! The words of the signals that only learning needs: from where they are seen, what goes wrong with them, and
//! the flags of the line judges (FIVB Official Volleyball Rules 2025-2028, 29.2, diagrams 11 and 12).

use rules::{FlagSignal, Signal};

/// From where a signal is seen.
pub const SEEN_FROM: &str = "How do you see it?";
/// As in a mirror, from the front as players see it, from behind as the referee feels it.
pub const VIEWS: [&str; 3] = ["In a mirror", "As players see you", "From behind"];
/// Which side it is for.
pub const AT_FAULT: &str = "Which team is it about?";
/// The team on the referee's left, and the other one.
pub const SIDES: [&str; 2] = ["Team on your left", "Team on your right"];
/// Before what goes wrong often.
pub const MISTAKE: &str = "Often wrong:";
/// The decisions that lead to it.
pub const DECIDED_BY: &str = "How to decide it";
/// Heading of the flags.
pub const FLAGS: &str = "Flags of the line judges";

/// What goes wrong often with a signal. Common practice, no source, but for the rule numbers.
#[must_use]
pub const fn mistake(signal: Signal) -> Option<&'static str> {
    Some(match signal {
        Signal::AuthoriseService => "To whistle before both teams and the server are ready.",
        // 22.2.3
        Signal::TeamToServe => "To show the team at fault. Show who serves next, first of all.",
        Signal::TimeOut => "To forget the second part: show which team asked.",
        Signal::Warning | Signal::Penalty => {
            "To show the card to the wrong side. Look first, then show."
        }
        Signal::Expulsion => "One card in each hand: that is something else.",
        Signal::Disqualification => "Both cards in one hand: that is something else.",
        Signal::NotTossed => "To lift it like a catch. Here the arm stays straight.",
        Signal::ServiceDelay => "To count too fast. Practise with a watch.",
        Signal::BlockOrScreen => "To forget to show the player after it.",
        Signal::Position => "To point up. The finger points down.",
        Signal::BallIn => "To point with a finger. The hand is open.",
        // Guidelines 2024, rule 28, point 11
        Signal::BallOut => "To use it when the ball was touched on its way out.",
        Signal::Catch => "To lift it fast. Lift it slowly, palm up.",
        Signal::DoubleContact | Signal::FourHits => "Fingers too close to count. Spread them.",
        // Diagram 11 (19)
        Signal::NetTouch => "To touch the net on the wrong side. The side tells who did it.",
        Signal::OverNet => "To hold the palm up. It points down.",
        Signal::AttackFault => "To make it like a hit. Fold the forearm, open hand.",
        Signal::LineOrUnder => "To point at the wrong line. Point at the one it was about.",
        Signal::Replay => "To forget who serves: show that team after it.",
        Signal::BallTouched => "To brush many times. Once is enough.",
        Signal::DelayWarning | Signal::DelayPenalty => {
            "To take the other card. First yellow, then red."
        }
        Signal::ChangeOfCourts | Signal::Substitution | Signal::EndOfSet => return None,
    })
}

/// The name of a flag signal.
#[must_use]
pub const fn flag(flag: FlagSignal) -> &'static str {
    match flag {
        FlagSignal::In => "Ball in",
        FlagSignal::Out => "Ball out",
        FlagSignal::Touched => "Ball touched",
        FlagSignal::Line => "Antenna, line or outside object",
        FlagSignal::NotSeen => "I could not see it",
    }
}

/// How it is made and what for.
#[must_use]
pub const fn flag_how(flag: FlagSignal) -> &'static str {
    match flag {
        FlagSignal::In => "Point the flag at the floor in front of you, arm straight.",
        FlagSignal::Out => "Raise the flag straight up.",
        FlagSignal::Touched => "Hold the flag up and lay the free palm on its top.",
        FlagSignal::Line => {
            "Wave the flag above the head and point at the antenna or the line. Also for a foot fault at \
             the service."
        }
        FlagSignal::NotSeen => "Cross both forearms in front of the chest. That is a good answer.",
    }
}
