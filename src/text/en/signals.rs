//! The words of the signals: what they are called, how they are made, and who makes them (FIVB
//! Official Volleyball Rules 2025-2028, chapter 30 and diagram 11; in our own words).

use crate::signals::*;
use rules::{Arm, Signal};

/// In English.
pub static WORDS: SignalsWords = SignalsWords {
    signals: "Signals",
    signals_more:
        "Every official hand signal, as in a mirror: the arm on the left of the picture is your \
         left arm. Make a signal with one arm on the side of the team it concerns (30.1).",
    learn_one_by_one: "Learn them one by one",
    show_name: "What is it?",
    next_signal: "Next signal",
    again: "Again",
    all_signals: "All signals",
    hidden_signal: "Which signal is this?",
    whistle_step: "Whistle",
    signal,
    signal_how,
    signal_for,
    signal_by,
    arm,
    to_serve,
    signal_with_number,
};

fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::AuthoriseService => "Authorise the service",
        Signal::TeamToServe => "Team to serve",
        Signal::ChangeOfCourts => "Change of courts",
        Signal::TimeOut => "Time-out",
        Signal::Substitution => "Substitution",
        Signal::Warning => "Warning",
        Signal::Penalty => "Penalty",
        Signal::Expulsion => "Expulsion",
        Signal::Disqualification => "Disqualification",
        Signal::EndOfSet => "End of set or match",
        Signal::NotTossed => "Ball not tossed",
        Signal::ServiceDelay => "Delay in service",
        Signal::BlockOrScreen => "Block fault or screen",
        Signal::Position => "Position or rotation fault",
        Signal::BallIn => "Ball in",
        Signal::BallOut => "Ball out",
        Signal::Catch => "Catch",
        Signal::DoubleContact => "Double contact",
        Signal::FourHits => "Four hits",
        Signal::NetTouch => "Net touch",
        Signal::OverNet => "Beyond the net",
        Signal::AttackFault => "Attack-hit fault",
        Signal::LineOrUnder => "Line fault or under the net",
        Signal::Replay => "Double fault, replay",
        Signal::BallTouched => "Ball touched",
        Signal::DelayWarning => "Delay warning",
        Signal::DelayPenalty => "Delay penalty",
    }
}

fn signal_how(signal: Signal) -> &'static str {
    match signal {
        Signal::AuthoriseService => {
            "Stretch the arm out to the team that serves. Then sweep the forearm across the chest, the \
             way the ball will go. Whistle at the same time."
        }
        Signal::TeamToServe => "Stretch the arm out to the team that will serve.",
        Signal::ChangeOfCourts => {
            "Hold one forearm in front of the body and one behind it. Turn both around the body."
        }
        Signal::TimeOut => {
            "Lay one flat hand on the fingertips of the other, so that they make a T. Then show the \
             team that asked."
        }
        Signal::Substitution => "Roll the forearms around each other in front of the chest.",
        Signal::Warning => "Show the yellow card on the side of the team.",
        Signal::Penalty => "Show the red card on the side of the team.",
        Signal::Expulsion => "Show both cards together in one hand.",
        Signal::Disqualification => "Show both cards, one in each hand.",
        Signal::EndOfSet => "Cross the forearms in front of the chest, hands open, palms facing you.",
        Signal::NotTossed => "Lift the stretched arm, palm up.",
        Signal::ServiceDelay => "Show eight fingers, spread.",
        Signal::BlockOrScreen => "Stretch both arms straight up, palms forward.",
        Signal::Position => "Point the forefinger down and draw a circle with it.",
        Signal::BallIn => "Point the stretched arm and open hand at the floor of that court.",
        Signal::BallOut => "Lift both forearms, hands open, palms facing you.",
        Signal::Catch => "Lift the forearm slowly, palm up.",
        Signal::DoubleContact => "Show two fingers, spread.",
        Signal::FourHits => "Show four fingers, spread.",
        Signal::NetTouch => "Show the net on the side at fault.",
        Signal::OverNet => "Hold a hand above the net, palm down.",
        Signal::AttackFault => "Raise the forearm with an open hand and fold it down.",
        Signal::LineOrUnder => "Point at the centre line, or at the line that was crossed.",
        Signal::Replay => "Raise both thumbs.",
        Signal::BallTouched => "Brush one palm over the fingertips of the other hand, held upright.",
        Signal::DelayWarning => "Cover the wrist with the yellow card.",
        Signal::DelayPenalty => "Cover the wrist with the red card.",
    }
}

fn signal_for(signal: Signal) -> Option<&'static str> {
    Some(match signal {
        Signal::BlockOrScreen => "Also for a libero who blocks, or tries to.",
        Signal::Position => "Also for a wrong server.",
        Signal::BallOut => "Also for a ball at the antenna or outside it.",
        Signal::Catch => "Also for a hit with the help of a team-mate or an object.",
        Signal::NetTouch => "Also for a service that stays in the net.",
        Signal::AttackFault => {
            "For a back-row player, a libero or an attack on the service. Also after the libero's finger \
             set in front."
        }
        Signal::LineOrUnder => {
            "For a foot over the centre line, a ball under the net or a foot fault at the service. Also \
             for a player outside the court at the service."
        }
        Signal::BallTouched => "The ball went out after a touch.",
        _ => return None,
    })
}

fn signal_by(signal: Signal) -> &'static str {
    match signal {
        Signal::TimeOut | Signal::Substitution => "Second referee",
        Signal::BlockOrScreen
        | Signal::Position
        | Signal::BallOut
        | Signal::NetTouch
        | Signal::AttackFault
        | Signal::LineOrUnder
        | Signal::Replay
        | Signal::TeamToServe => "First and second referee",
        Signal::BallIn | Signal::BallTouched | Signal::FourHits => {
            "First referee, with the second one's help"
        }
        _ => "First referee",
    }
}

fn arm(arm: Arm) -> &'static str {
    match arm {
        Arm::Left => "Left arm",
        Arm::Right => "Right arm",
        Arm::Both => "Both arms",
    }
}

fn to_serve(name: &str) -> String {
    format!("{name} to serve")
}

fn signal_with_number(of: Signal) -> String {
    format!("{} ({})", signal(of), of.number())
}
