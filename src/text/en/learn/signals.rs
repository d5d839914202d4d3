//! The words of the signals that only learning needs: from where they are seen, what goes wrong with them, and
//! the flags of the line judges (FIVB Official Volleyball Rules 2025-2028, 29.2, diagrams 11 and 12).

use crate::learn::signals::*;
use rules::{FlagSignal, Signal};

/// In English.
pub static WORDS: LearnSignalsWords = LearnSignalsWords {
    seen_from: "How do you see it?",
    views: ["In a mirror", "As players see you", "From behind"],
    at_fault: "Which team is it about?",
    sides: ["Team on your left", "Team on your right"],
    mistake_label: "Often wrong:",
    decided_by: "How to decide it",
    flags: "Flags of the line judges",
    mistake,
    flag,
    flag_how,
};

fn mistake(signal: Signal) -> Option<&'static str> {
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

fn flag(flag: FlagSignal) -> &'static str {
    match flag {
        FlagSignal::In => "Ball in",
        FlagSignal::Out => "Ball out",
        FlagSignal::Touched => "Ball touched",
        FlagSignal::Line => "Antenna, line or outside object",
        FlagSignal::NotSeen => "I could not see it",
    }
}

fn flag_how(flag: FlagSignal) -> &'static str {
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
