//! What can be set in a situation, and how it stands, in words that can be heard as well.

use crate::learn::decisions::{length, side};
use crate::learn::dials::*;
use learn::{Dial, End, Situation};

/// In English.
pub static WORDS: DialsWords = DialsWords {
    dial,
    row_mark,
    choices,
    set_to,
    mover,
};

fn dial(dial: Dial) -> String {
    let words = match dial {
        Dial::AlongNet => "Where the hand touches",
        Dial::NetContact => "What happened?",
        Dial::HandBeyond => "Hand of the block",
        Dial::AfterAttack => "Touch of the block",
        Dial::HandDoes => "What does the hand do?",
        Dial::Opponents => "Can the left team still attack the ball?",
        Dial::Heel => "Heel of the foot",
        Dial::Hinders => "Is an opponent hindered?",
        Dial::BodyPart => "What touches the other court?",
        Dial::BallBeyond => "Middle of the ball",
        Dial::Contact => "What did you see?",
        Dial::OwnBlock => "Did the left team block the ball before?",
        Dial::Hitter(n) => return format!("Who plays touch {n}?"),
        Dial::OneAction => "Touch 1 and 2 by the same player?",
        Dial::ServerDepth => "Toe of the front foot",
        Dial::ServerRight => "Place along the end line",
        Dial::ServiceAfter => "Service hit",
        Dial::ServiceHow => "What happened?",
        Dial::Server => "Who serves?",
        Dial::PlayerDepth(n) => return format!("Player {n}, from the net"),
        Dial::PlayerRight(n) => return format!("Player {n}, to the side"),
        Dial::Serves => "Which team is it?",
        Dial::Edition => "Which edition of the rules?",
        Dial::Row(1) => "The player",
        Dial::Row(_) => "The other player",
        Dial::AttackedBall => "What ball is it?",
        Dial::TakeOff => "Take-off foot",
        Dial::BallDepth => "Ball, from the net",
        Dial::BallHeight => "Height of the ball",
        Dial::NetTop => "Height of the net",
        Dial::Completed => "Does the ball cross the net?",
        Dial::LiberoDepth => "Libero, from the net",
        Dial::LiberoPass => "How does the libero pass?",
        Dial::Reach(1) => "Hands of the first player",
        Dial::Reach(_) => "Hands of the other player",
        Dial::BlockTouches => "Does the block touch the ball?",
        Dial::BlockedBall => "What ball is it?",
        Dial::LandsAlong => "Ball, along the court",
        Dial::LandsAcross => "Ball, across the court",
        Dial::Patch => "Size of the contact with the floor",
        Dial::LastTouch => "Who touched it last?",
        Dial::CrossesAside => "Ball, from the middle of the net",
        Dial::CrossesHeight => "Height of the ball",
        Dial::Tall => "Height of these two players",
        Dial::TeamHit => "Which hit sent it?",
        Dial::Towards => "Where does it fly?",
        Dial::HandsUp => "Hands above the head?",
        Dial::ServiceFlight => "How does the service fly?",
        Dial::LeftFaultAt => "Net touch of the left team",
        Dial::RightFaultAt => "Foot of the right team",
        Dial::ServerOnLine => "At the hit: is the server's foot on the end line?",
        Dial::ReceiversSwapped => "At the hit: do the receivers stand in the wrong order?",
        Dial::ServiceWide => "After the hit: does the ball fly outside the antenna?",
    };
    words.to_owned()
}

fn row_mark(row: usize) -> &'static str {
    ["F", "B", "L"].get(row).copied().unwrap_or_default()
}

const ROWS: &[&str] = &["In the front row", "In the back row", "The libero"];

const NO_YES: &[&str] = &["No", "Yes"];

fn choices(dial: Dial) -> &'static [&'static str] {
    match dial {
        Dial::NetContact => &[
            "Plays the ball, jumps or lands",
            "Has landed and turns away",
            "The ball drives the net into the hand",
            "Holds the net, or hinders an opponent",
            "Only hair touches it",
        ],
        Dial::HandDoes => &["Blocks", "Hits it like an attack"],
        Dial::Opponents => &["Yes", "No, nobody can reach it"],
        Dial::Hinders
        | Dial::OwnBlock
        | Dial::Completed
        | Dial::BlockTouches
        | Dial::HandsUp
        | Dial::ServerOnLine
        | Dial::ReceiversSwapped
        | Dial::ServiceWide => NO_YES,
        Dial::BodyPart => &["A hand", "A knee, the back"],
        Dial::Contact => &[
            "It rebounds at once",
            "It rests, or is thrown",
            "Two opponents hold it above the net",
            "A team-mate lifts the player to it",
        ],
        Dial::Hitter(_) => &[
            "Player 1",
            "Player 2",
            "Player 3",
            "Player 4",
            "Across the net",
        ],
        Dial::OneAction => &["In two actions", "In one action"],
        Dial::ServiceHow => &[
            "Tosses it once, one hand",
            "Bounces it first, then tosses",
            "Hits it out of the other hand",
            "Lets it drop, tosses it again",
            "Hits it with both hands",
        ],
        Dial::Server => &[
            "Position 1",
            "Position 2",
            "Position 3",
            "Position 4",
            "Position 5",
            "Position 6",
        ],
        Dial::Serves => &["It receives", "It serves"],
        Dial::Edition => &["2025 to 2028", "2021 to 2024"],
        Dial::Row(_) => ROWS,
        Dial::AttackedBall => &["Any other ball", "The other team's service"],
        Dial::LiberoPass => &["With the forearms", "With fingers, hands raised"],
        Dial::BlockedBall => &["An attack", "The service"],
        Dial::LastTouch => &[
            "Left team: service",
            "Left team: attack",
            "Right team: block",
            "Right team: defence",
        ],
        Dial::TeamHit => &["Service", "First hit", "Second hit", "Third hit"],
        Dial::Towards => &["To the court", "To the free zone"],
        Dial::ServiceFlight => &["Flat", "High"],
        Dial::AlongNet
        | Dial::HandBeyond
        | Dial::AfterAttack
        | Dial::Heel
        | Dial::BallBeyond
        | Dial::ServerDepth
        | Dial::ServerRight
        | Dial::ServiceAfter
        | Dial::PlayerDepth(_)
        | Dial::PlayerRight(_)
        | Dial::TakeOff
        | Dial::BallDepth
        | Dial::BallHeight
        | Dial::NetTop
        | Dial::LiberoDepth
        | Dial::Reach(_)
        | Dial::LandsAlong
        | Dial::LandsAcross
        | Dial::Patch
        | Dial::CrossesAside
        | Dial::CrossesHeight
        | Dial::Tall
        | Dial::LeftFaultAt
        | Dial::RightFaultAt => &[],
    }
}

fn set_to(dial: Dial, value: f64) -> String {
    let time = |moment: Moment, by: f64, when: &str| match moment {
        Moment::AttackHit => format!("{by:.2}\u{a0}s {when} the attack hit"),
        Moment::Whistle => format!("{by:.1}\u{a0}s {when} the whistle"),
    };
    match stands(dial, value) {
        Stands::Beyond(edge, by) => format!("{} {}", length(by), sides(edge).0),
        Stands::Within(edge, by) => format!("{} {}", length(by), sides(edge).1),
        Stands::Before(moment, by) => time(moment, by, "before"),
        Stands::After(moment, by) => time(moment, by, "after"),
        Stands::FromBeginning(at) => format!("after {at:.2}\u{a0}s"),
        Stands::FromNet(by) => format!("{by:.2}\u{a0}m from the net"),
        Stands::High(by) => format!("{by:.2}\u{a0}m high"),
        Stands::Around(by) => format!("{} around its middle", length(by)),
        Stands::Choice(choice) => {
            let words = choices(dial).get(choice);
            words.copied().unwrap_or_default().to_owned()
        }
    }
}

/// Beyond what a control is measured from, and on this side of it.
fn sides(edge: Edge) -> (&'static str, &'static str) {
    match edge {
        Edge::EndLineOfServer => ("behind the end line", "over the end line"),
        Edge::ServiceZone => ("beside the zone", "inside the zone"),
        Edge::EndLine => ("outside the end line", "inside its edge"),
        Edge::SideLine => ("outside the side line", "inside its edge"),
        Edge::Antenna => ("outside the antenna", "inside the antenna"),
        Edge::PlayersMiddle => ("to the player's right", "to the player's left"),
        Edge::NetOfBall => ("beyond the net", "before the net"),
        Edge::CentreLine => ("inside its own court", "beyond the middle of the line"),
        Edge::NetOfAttack => ("from the net", "beyond the net"),
        Edge::NetOfHand => ("beyond the net", "on its own side"),
    }
}

fn mover(of: Situation, n: u8) -> String {
    match (of, n) {
        (Situation::DoubleContact | Situation::FourHits, _) => format!("Touch {n}"),
        (Situation::Screen, 3) => format!("Receiver, {}", side(End::Right)),
        (Situation::Screen, _) => format!("Player {n}, {}", side(End::Left)),
        (_, _) => format!("Position {n}"),
    }
}
