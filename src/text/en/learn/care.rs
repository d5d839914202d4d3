//! Where somebody can be hurt, in English.

use crate::learn::*;
use crate::setup::{do_not_start, look_at, not_yours_alone};
use crate::{care_head, care_no_diagnosis, care_not_replaced, care_stop};
use rules::{Rules, Step};

/// In English.
pub static WORDS: CareWords = CareWords {
    care_name,
    care_lines,
};

fn care_name(care: Care) -> &'static str {
    match care {
        Care::Floor => "Floor",
        Care::Posts => "Net and posts",
        Care::Jewellery => "Hair and jewellery",
        Care::Head => "Head injury",
        Care::Blood => "Blood",
        Care::Heat => "Heat and cold",
        Care::Thunder => "Thunder",
        Care::Lights => "The lights go out",
    }
}

fn care_lines(care: Care, rules: &Rules) -> Vec<String> {
    let mut lines: Vec<String> = match care {
        Care::Floor => look_at(Step::Floor, rules),
        Care::Posts => look_at(Step::Net, rules),
        Care::Jewellery | Care::Head | Care::Blood | Care::Heat | Care::Thunder | Care::Lights => {
            Vec::new()
        }
    };
    let more: &[&str] = match care {
        // 1.2.1, 5.1.2.2
        Care::Floor => &[
            "A wet spot during play: stop, let the players wipe it, then go on.",
            do_not_start(),
            not_yours_alone(),
        ],
        Care::Posts => &[
            "Nobody hangs on the net or leans on a post. Only adults move heavy posts.",
            do_not_start(),
            not_yours_alone(),
        ],
        // 4.5.1; long hair and nails: common practice, no source
        Care::Jewellery => &[
            "Nothing may be worn that can hurt somebody (rule 4.5).",
            "Rings, chains and watches come off. What cannot come off is taped.",
            "Long hair is tied back with something soft.",
            "Glasses are at the player's own risk. Hard casts are not allowed.",
            "Something worn for faith or health? Ask the organiser kindly, before the match.",
        ],
        // 17.1.1 and public guidance
        Care::Head => &[
            care_stop(),
            care_no_diagnosis(),
            care_head(),
            "Somebody stays with the player all the time.",
            "Nobody has to look ill. It can come later, so an adult at home must know.",
            care_not_replaced(),
        ],
        // common practice of many schools, no rule of the international text
        Care::Blood => &[
            care_stop(),
            "A player who bleeds leaves the court. The adult in charge says when to come back.",
            "Only trained people with gloves touch blood. Wipe floor and ball before play.",
            "A shirt with blood on it is changed. If the number is new, tell the scorer.",
            care_not_replaced(),
        ],
        // 1.5; the rest is usual public guidance
        Care::Heat => &[
            "It must not be colder than 10 \u{b0}C (rule 1.5). The rules name no upper limit.",
            "In heat let the players drink in every pause. Ask the organiser for more pauses.",
            "Somebody is dizzy, sick or confused: stop. Get the adult in charge at once.",
            care_not_replaced(),
        ],
        // usual public guidance; 17.3
        Care::Thunder => &[
            "Outdoors: you hear thunder or see lightning, so stop. Everybody goes inside.",
            "Not under trees, not beside posts, not in tents.",
            "An adult in charge decides when it is safe to play again, by local rules.",
            "The referee writes down the score, the server and both line-ups.",
            care_not_replaced(),
        ],
        // 1.6, 17.3
        Care::Lights => &[
            "Stop play. Everybody stands still until there is light.",
            "A rally that was going on is played again.",
            "Write down the score, the server and both line-ups.",
            "The organiser decides with the first referee how to go on (rule 17.3).",
            not_yours_alone(),
        ],
    };
    lines.extend(more.iter().map(|line| (*line).to_owned()));
    lines
}
