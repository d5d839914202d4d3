//! The words of the pages on which decisions can be tried (FIVB Official Volleyball Rules 2025-2028; in our
//! own words).

use crate::learn::decisions::*;
use learn::{Call, Decided, End, Margin, Reading, Ruling, Situation, Topic};
use rules::{Group, Preset, Signal};

/// In English.
pub static WORDS: DecisionsWords = DecisionsWords {
    topic,
    topic_more,
    look_for,
    situation,
    drawn,
    reading,
    side,
    call,
    rule,
    margin,
    margin_of,
    length,
    show_signal,
    as_at_first: "Reset",
    less: "Less",
    more_of_it: "More",
    which_mover,
};

fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::InOut => "In and out",
        Topic::Antenna => "Antenna",
        Topic::NetTouch => "Net touch",
        Topic::UnderNet => "Under the net",
        Topic::OverNet => "Over the net",
        Topic::DoubleContact => "Double contact",
        Topic::Catch => "Catch",
        Topic::FourHits => "Four hits",
        Topic::Service => "Service faults",
        Topic::Screen => "Screen",
        Topic::Positions => "Positions",
        Topic::BackRow => "Back-row attack",
        Topic::Block => "Block",
        Topic::Libero => "Libero",
        Topic::TwoFaults => "Two faults",
    }
}

fn topic_more(topic: Topic) -> &'static str {
    match topic {
        Topic::InOut => "Did any part of the ball touch a line, even a little?",
        Topic::Antenna => "Did the ball cross the net between the antennas?",
        Topic::NetTouch => "Who touched the net while playing the ball?",
        Topic::UnderNet => "How far may a foot, a hand or the ball go?",
        Topic::OverNet => "Was the hand on the other side too soon?",
        Topic::DoubleContact => "One player, two touches: when is it a fault?",
        Topic::Catch => "Did the ball rebound, or did it rest?",
        Topic::FourHits => "Count the hits, but not the block.",
        Topic::Service => "Foot, time and toss of the server.",
        Topic::Screen => "Could the receiver see the service?",
        Topic::Positions => "Who stands where when the service is hit?",
        Topic::BackRow => "Foot before or behind the line, ball above or below the net?",
        Topic::Block => "Who may block, and which ball?",
        Topic::Libero => "What a libero may not do.",
        Topic::TwoFaults => "Which came first? Which one counts at a service?",
    }
}

fn look_for(topic: Topic) -> &'static [&'static str] {
    match topic {
        // 8.3, 29.2.1.1
        Topic::InOut => &[
            "Look at the line, not at the ball in the air. The line is part of the court.",
            "A ball is soft. It spreads when it lands, and all that touches the floor counts.",
        ],
        // 10.1.1, 8.4.3; Casebook 2024, 3.13.2
        Topic::Antenna => &[
            "Each referee watches the antenna on the own side.",
            "Call a touch of the antenna only if you have seen it. Line judges help.",
        ],
        // 11.3, 11.4.4
        Topic::NetTouch => &[
            "Watch the net where the ball is played. Stay there a moment after the hit.",
            "The action begins with the jump. It ends with a safe landing.",
        ],
        // 11.2, 11.4.2, 24.3.2.1
        Topic::UnderNet => &[
            "The second referee watches the line below the net.",
            "Ask two things. Is all of the foot beyond the line? Was somebody hindered?",
        ],
        // 11.4.1, 14.3
        Topic::OverNet => &[
            "Watch two things at once: the attack hit and the hands of the block.",
            "Hands may wait beyond the net. They may not touch the ball there too soon.",
        ],
        // 9.1.1, 9.2.3.2, 9.3.4
        Topic::DoubleContact => &[
            "Watch the hands at the hit. A spin of the ball alone is no fault.",
            "At the first team hit a player may touch the ball more than once, in one action.",
        ],
        // 9.2.2; what to look at is common practice, no source.
        Topic::Catch => &[
            "No drawing can show a catch. It is what you see, so decide alike for both teams.",
            "Does the ball rebound at once? Or does it come to rest and is carried or thrown?",
            "Watch the contact, not how the player looks or sounds.",
            "If you are not sure, let them play on.",
        ],
        // 9.1, 14.4.1
        Topic::FourHits => &[
            "Say the hits to yourself: one, two, three.",
            "A block is no hit. After it the team has three more.",
        ],
        // 12.4
        Topic::Service => &[
            "Look at the foot at the hit, or at the jump before it. Line judges help.",
            "Count the time from your whistle.",
        ],
        // 12.5.1 to 12.5.3; how to prevent one: FIVB Refereeing Guidelines 2024, rule 12.
        Topic::Screen => &[
            "Stand in the receiver's place with your eyes.",
            "It is a screen only if both the hit and the flight are hidden, until the ball reaches the net.",
            "One player can make a screen, or a group. They stand close together, wave, jump or move \
             sideways.",
            "Since 2025 the server's team must keep its hands below the head until the ball is over the net.",
            "Do they crowd together before the service? Tell the captain, or whistle so that they move apart.",
            "You call it after the service. The receiving team gets the point.",
        ],
        // 7.4, 24.3.2.2
        Topic::Positions => &[
            "Since 2025 only the receiving team must keep its order. The second referee watches it.",
            "Only feet count, and only at the moment of the service hit.",
            "A wrong server is another fault. The scorer waits for the hit, then tells you.",
        ],
        // 13.2, 13.3
        Topic::BackRow => &[
            "It takes three things: feet in the front zone, all of the ball above the net, a ball that \
             crosses.",
            "If one of them is missing, play goes on.",
        ],
        // 14.1, 14.6
        Topic::Block => &[
            "Know who is in the back row before each service.",
            "Only who reaches above the net takes part in a block.",
        ],
        // 19.3.1
        Topic::Libero => &[
            "The libero wears another shirt. Find it before each service.",
            "A libero may not block or try to. A libero may not attack a ball above the net.",
        ],
        // 6.1.2, 7.5.2, 7.5.3, 12.7
        Topic::TwoFaults => &[
            "The first fault counts. What comes later does not.",
            "Both teams at the same moment: no point, play it again.",
            "At a service the order is fixed. First comes a fault of the server at the hit, such as a foot \
             on the line.",
            "Then comes a wrong order of the receivers. Last comes what the ball does after the hit.",
        ],
    }
}

fn situation(situation: Situation) -> &'static str {
    match situation {
        Situation::Foot => "A foot on the line",
        Situation::Body => "A hand or the body",
        Situation::BallUnder => "The ball below the net",
        Situation::ServiceFoot => "The foot",
        Situation::ServiceTime => "The time",
        Situation::ServiceHit => "Toss and hit",
        Situation::ServiceNet => "At the net",
        Situation::ServerOrder => "Who serves",
        Situation::LiberoAttack => "The libero attacks",
        Situation::LiberoPass => "The libero passes",
        Situation::LiberoBlock => "The libero at the net",
        Situation::AtTheService => "Several faults at one service",
        Situation::NetTouch
        | Situation::OverNet
        | Situation::Catch
        | Situation::DoubleContact
        | Situation::FourHits
        | Situation::Positions
        | Situation::Attack
        | Situation::Block
        | Situation::Landing
        | Situation::Crossing
        | Situation::Screen
        | Situation::TwoFaults => "Try it",
    }
}

fn drawn(situation: Situation) -> &'static str {
    match situation {
        Situation::NetTouch => "The net from the right court. Drag the hand of the left team along it.",
        Situation::OverNet => {
            "The net from the side. The left team attacks, the right team blocks. Drag the hand."
        }
        Situation::Foot => "The centre line from above. Drag the foot of the left team.",
        Situation::Body => "A player of the left team touches the right court.",
        Situation::BallUnder => "The net from the side. Drag the ball that comes from the left.",
        Situation::Catch => "There is nothing to drag here. Choose below what you saw.",
        Situation::DoubleContact | Situation::FourHits => {
            "Four players of the left team. Drag each numbered ball to who plays it, or across the net."
        }
        Situation::ServiceFoot => "A corner of the left court from above. Drag the foot of the server.",
        Situation::ServiceTime => "Time from your whistle. Drag the hit.",
        Situation::ServiceHit => "How was the ball put into play?",
        Situation::ServiceNet => "A service touches the net. Drag the ball to where it drops.",
        Situation::ServerOrder => "The left team has the service. Drag the ball to who serves.",
        Situation::Positions => "The left court from above. Drag the players. Below it, four times as large: the feet of the two who \
             are nearest to a fault.",
        Situation::Attack => "The left court from the side. Drag the take-off foot and the ball.",
        Situation::LiberoAttack => "The left court from the side. Drag the ball that the libero hits.",
        Situation::LiberoPass => {
            "The left court from the side. Drag the libero, and the ball that a front-row player hits."
        }
        Situation::Block => "The net from the left court. Drag the hands of the block up and down.",
        Situation::LiberoBlock => "The net from the left court. Drag the hands up and down.",
        Situation::Landing => "A corner of the right court from above. Drag the ball.",
        Situation::Crossing => "The net near an antenna. Drag the ball that the left team sends over.",
        Situation::Screen => {
            "The court from above. The left team serves. Drag two of its players and the receiver."
        }
        Situation::TwoFaults => {
            "The left team touches the net, the right team lands beyond the line. Drag both in time."
        }
        Situation::AtTheService => "The left team serves. What did you see?",
    }
}

fn reading(reading: Reading) -> &'static str {
    match reading {
        Reading::Only => "",
        Reading::Standard => "Standard rule",
        Reading::Junior => "Junior rule in some schools",
        Reading::Order => "The order",
        Reading::InsideCourt => "Inside the court",
    }
}

fn side(end: End) -> &'static str {
    match end {
        End::Left => "left team",
        End::Right => "right team",
    }
}

fn call(decided: &Decided) -> String {
    match decided.ruling.call {
        Call::PlayOn => match decided.reading {
            Reading::Order | Reading::InsideCourt => "All right: no fault".to_owned(),
            Reading::Only | Reading::Standard | Reading::Junior => "Play on: no fault".to_owned(),
        },
        Call::Replay => "Nobody gets the point: play it again".to_owned(),
        Call::Fault { by, cause, .. } => {
            let cause = crate::cause(cause, &Preset::International.rules());
            format!("{cause}: point for the {}", side(by.other()))
        }
    }
}

fn rule(rule: &str) -> String {
    if rule == "school" {
        "School rule, no international number".to_owned()
    } else {
        format!("Rule {rule}")
    }
}

fn margin(decided: &Decided) -> String {
    margin_of(decided.ruling)
}

fn margin_of(ruling: Ruling) -> String {
    let away = match ruling.margin {
        Margin::Metres(metres) => length(metres),
        Margin::Seconds(seconds) => format!("{seconds:.2}\u{a0}s"),
        Margin::Seen => return "Nothing to measure: you see it or you do not".to_owned(),
    };
    match ruling.call {
        Call::PlayOn => format!("{away} away from a fault"),
        // In or out, or first of two: either way somebody has the point, or it is played again.
        Call::Fault { cause, .. }
            if cause.group() == Some(Group::Ball)
                || ruling.rule == "6.1.2.1"
                || ruling.rule.starts_with("8.") =>
        {
            format!("{away} away from the other answer")
        }
        Call::Fault { .. } => format!("{away} away from being allowed"),
        Call::Replay => format!("{away} away from the other answer"),
    }
}

fn length(metres: f64) -> String {
    let halves = (metres * 200.0).round();
    if halves.abs() >= 200.0 {
        format!("{:.2}\u{a0}m", metres.abs())
    } else if halves % 2.0 == 0.0 {
        format!("{:.0}\u{a0}cm", (halves / 2.0).abs())
    } else {
        format!("{:.1}\u{a0}cm", (halves / 2.0).abs())
    }
}

fn show_signal(signal: Signal) -> String {
    format!("Signal {}: {}", signal.number(), crate::signal(signal))
}

fn which_mover(of: Situation) -> &'static str {
    match of {
        Situation::DoubleContact | Situation::FourHits => "Which touch do you change?",
        _ => "Which player do you move?",
    }
}
