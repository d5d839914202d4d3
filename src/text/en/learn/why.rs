//! Why something is decided as it is: a sentence for each rule that a decision names.

use crate::learn::why::*;
use learn::{Call, Decided, Judged, Margin, Ruling};
use rules::Cause;

/// In English.
pub static WORDS: WhyWords = WhyWords {
    why,
    why_in_scene,
    why_of,
};

fn why(decided: &Decided) -> &'static str {
    why_of(decided.ruling)
}

fn why_in_scene(judged: &Judged) -> (&'static str, &'static str) {
    match (judged.about, judged.ruling.rule, judged.ruling.call) {
        (Cause::FourHits, "9.1", _) => ("14.4.1", "A block is no hit, so three more are allowed."),
        (Cause::DoubleContact, "9.1", _) => (
            "9.2.3.2",
            "In the first hit of a team one player may touch it more than once in one action.",
        ),
        (Cause::Catch, "9.1", _) => ("9.2.2", "It was a long touch, but the ball rebounded."),
        (Cause::BallTouched, "8.4.1", _) => (
            "8.4.1",
            "The block touched it last, and it falls outside on the side of the block.",
        ),
        (Cause::ServiceNet, "12.6.2", _) => ("12.6.2", "A service must cross the net."),
        (Cause::LiberoFault, "13.2.1", _) => (
            "13.3.6",
            "The libero was behind the front zone. Then everybody may attack the ball.",
        ),
        (Cause::LiberoFault, "14.1", _) => ("14.6.6", "Below the top of the net nobody blocks."),
        (_, rule, _) => (rule, why_of(judged.ruling)),
    }
}

fn why_of(ruling: Ruling) -> &'static str {
    let Ruling { call, rule, margin } = ruling;
    match (rule, call) {
        ("6.1.2.1", _) => "The first fault counts. The other one came too late to matter.",
        ("6.1.2.2", _) => "Nobody can tell which was first. The rally is played again.",
        ("7.4", Call::Fault { .. }) => {
            "A foot touches the floor outside the court. Only the server may stand there."
        }
        ("7.4", _) if margin == Margin::Seen => {
            "The serving team may stand in any order inside its court."
        }
        ("7.4", _) => "All feet are inside. The lines are part of the court.",
        ("7.4.3", _) => "Each pair stands rightly. Level with each other is right too.",
        ("7.5.1", _) => "Two players stand in the wrong order at the moment of the service hit.",
        ("7.7.1", Call::Fault { .. }) => "The rotation says who serves. It was somebody else's turn.",
        ("7.7.1", _) => "The player whose turn it was has served.",
        ("8.3", Call::PlayOn) => "The ball has not touched the floor, so it is in play.",
        ("8.3", _) => "Some part of the ball touches the court. The line is part of it.",
        ("8.4.1", _) => "All of the ball touches the floor outside the lines.",
        ("8.4.3", _) => "The ball touches the antenna. That is out, wherever it falls.",
        ("8.4.4", _) => "The ball crosses the net outside the antenna.",
        ("8.4.5", _) => "All of the ball has passed below the net.",
        ("9.1", _) => "The ball rebounds, three hits at most, and nobody twice running.",
        ("9.1.3", Call::PlayOn) => "A team-mate may hold a player back from a fault.",
        ("9.1.3", _) => "Inside the playing area nobody may help a player to reach the ball.",
        ("9.2.2", _) => "The ball has to rebound. It may not be caught or thrown.",
        ("9.3.1", _) => "A team has three hits. This was one more.",
        ("9.3.4", _) => "The same player touched it twice running. That is allowed only in the first hit.",
        ("10.1.1", _) => "All of the ball crosses between the antennas.",
        ("10.1.2", _) => {
            "It flies outside the antenna to the free zone. A team-mate may run and play it from there."
        }
        ("10.1.2.3", _) => "Only a first hit may be brought back from there.",
        ("10.2", _) => "A ball may touch the net while it crosses, the service too.",
        ("10.1.3", _) => "Part of the ball is still before the net. It may be saved.",
        ("11.1.2", _) => "The ball is touched on the own side. The hand may follow through.",
        ("11.2.2.1", Call::Fault { .. }) => "The foot hinders an opponent.",
        ("11.2.2.1", _) => "Part of the foot is on or above the line, and nobody is hindered.",
        ("11.2.2.2", Call::Fault { .. }) => "An opponent is hindered. Then any touch is a fault.",
        ("11.2.2.2", _) => "Any part above the feet may touch it, if nobody is hindered.",
        ("school", _) => {
            "Some school rules let only feet and hands touch the other court. Ask your organiser."
        }
        ("11.3.1", Call::Fault { .. }) => {
            "The touch is between the antennas, while playing the ball. Even a light one counts."
        }
        ("11.3.1", _) => "It is not part of playing the ball, so it does not count.",
        ("11.3.2", _) => "Outside the antennas the net, ropes and posts may be touched.",
        ("11.3.3", _) => "The ball pushed the net. The player did nothing.",
        ("11.4.1", _) => "The block touched the ball before the attack hit, beyond the net.",
        ("11.4.3", _) => "All of the foot is beyond the line. That is a fault, hindered or not.",
        ("11.4.4", _) => "Using the net, or hindering an opponent with it, is always a fault.",
        ("12.4", _) => "Tossed or let go once, hit with one hand or arm. Bouncing it before is free.",
        ("12.4.1", _) => "The ball must leave the hand first. Then one hand or arm hits it.",
        ("12.4.2", _) => "Only one toss is allowed.",
        ("12.4.3", Call::Fault { .. }) => {
            "At the hit or the jump a foot touches the line, or the floor beside the zone."
        }
        ("12.4.3", _) => "Both feet are in the service zone. After the hit they may land anywhere.",
        ("12.4.4", Call::Fault { .. }) => "The time from the whistle is over.",
        ("12.4.4", _) => "The service was hit in time after the whistle.",
        ("12.4.5", _) => "It was hit before your whistle. The same player serves again.",
        ("12.5.2", Call::Fault { .. }) => "The receiver could see neither the hit nor the flight.",
        ("12.5.2", _) => "The receiver saw the hit or part of the flight. One of them is enough.",
        ("12.6.2", _) => "A service must cross the net between the antennas.",
        ("13.1.3", _) => "The ball did not cross and nobody over there touched it. It is no attack yet.",
        ("13.2.1", _) => "A front-row player may attack at any height on the own side.",
        ("13.3.1", _) => "The ball is hit on the other team's side of the net.",
        ("13.3.3", Call::Fault { .. }) => {
            "A back-row player took off in the front zone and hit a ball wholly above the net."
        }
        ("13.3.3", _) => {
            "Either the take-off was behind the line, or part of the ball was below the top of the net."
        }
        ("13.3.4", Call::Fault { .. }) => {
            "Nobody may attack the service in the front zone while all of it is above the net."
        }
        ("13.3.4", _) => "The ball was behind the line, or part of it was below the top of the net.",
        ("13.3.5", Call::Fault { .. }) => "All of the ball was above the net. A libero may never hit that.",
        ("13.3.5", _) => "Part of the ball was below the top of the net. That is allowed.",
        ("13.3.6", Call::Fault { .. }) => {
            "The libero set it with fingers in the front zone, and it was hit above the net. Point at \
             the libero."
        }
        ("13.3.6", _) => "Part of the ball was below the top of the net, so the hit is allowed.",
        ("14.1.2", _) => "The block of a service is a fault once the ball is touched. Here nobody touched it.",
        ("14.1", _) => "Only front-row players reached above the net, or no back-row player's block touched.",
        ("14.3", _) => "The block waited for the attack hit. At the same moment is no fault.",
        ("14.5", _) => "The service may not be blocked.",
        ("14.6.2", _) => "A back-row player took part in a block that touched the ball.",
        ("14.6.6", _) => "A libero may not even try to block.",
        _ => "",
    }
}
