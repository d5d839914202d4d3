//! Where somebody can be hurt: short, and for qualified people and local rules to decide. What an official does
//! with an injury stands in the same words as in a match (`CARE_STOP` and its neighbours).

use crate::setup::{look_at, DO_NOT_START, NOT_YOURS_ALONE};
use crate::{CARE_HEAD, CARE_NOT_REPLACED, CARE_NO_DIAGNOSIS, CARE_STOP};
use rules::{Rules, Step};

/// Something to take care of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Care {
    /// The floor and what is around it.
    Floor,
    /// Net and posts.
    Posts,
    /// Hair and jewellery.
    Jewellery,
    /// A blow to the head.
    Head,
    /// Blood.
    Blood,
    /// Heat.
    Heat,
    /// Thunder.
    Thunder,
    /// The lights go out.
    Lights,
}

impl Care {
    /// All of them.
    pub const ALL: [Care; 8] = [
        Care::Head,
        Care::Blood,
        Care::Floor,
        Care::Posts,
        Care::Jewellery,
        Care::Heat,
        Care::Thunder,
        Care::Lights,
    ];

    /// Its part of an address.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Care::Floor => "floor",
            Care::Posts => "posts",
            Care::Jewellery => "jewellery",
            Care::Head => "head",
            Care::Blood => "blood",
            Care::Heat => "heat",
            Care::Thunder => "thunder",
            Care::Lights => "lights",
        }
    }

    /// The page of that part of an address.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Care> {
        Care::ALL.into_iter().find(|care| care.code() == code)
    }

    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
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

    /// What is said of it.
    #[must_use]
    pub fn lines(self, rules: &Rules) -> Vec<String> {
        let mut lines: Vec<String> = match self {
            Care::Floor => look_at(Step::Floor, rules),
            Care::Posts => look_at(Step::Net, rules),
            Care::Jewellery
            | Care::Head
            | Care::Blood
            | Care::Heat
            | Care::Thunder
            | Care::Lights => Vec::new(),
        };
        let more: &[&str] = match self {
            // 1.2.1, 5.1.2.2
            Care::Floor => &[
                "A wet spot during play: stop, let the players wipe it, then go on.",
                DO_NOT_START,
                NOT_YOURS_ALONE,
            ],
            Care::Posts => &[
                "Nobody hangs on the net or leans on a post. Only adults move heavy posts.",
                DO_NOT_START,
                NOT_YOURS_ALONE,
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
                CARE_STOP,
                CARE_NO_DIAGNOSIS,
                CARE_HEAD,
                "Somebody stays with the player all the time.",
                "Nobody has to look ill. It can come later, so an adult at home must know.",
                CARE_NOT_REPLACED,
            ],
            // common practice of many schools, no rule of the international text
            Care::Blood => &[
                CARE_STOP,
                "A player who bleeds leaves the court. The adult in charge says when to come back.",
                "Only trained people with gloves touch blood. Wipe floor and ball before play.",
                "A shirt with blood on it is changed. If the number is new, tell the scorer.",
                CARE_NOT_REPLACED,
            ],
            // 1.5; the rest is usual public guidance
            Care::Heat => &[
                "It must not be colder than 10 \u{b0}C (rule 1.5). The rules name no upper limit.",
                "In heat let the players drink in every pause. Ask the organiser for more pauses.",
                "Somebody is dizzy, sick or confused: stop. Get the adult in charge at once.",
                CARE_NOT_REPLACED,
            ],
            // usual public guidance; 17.3
            Care::Thunder => &[
                "Outdoors: you hear thunder or see lightning, so stop. Everybody goes inside.",
                "Not under trees, not beside posts, not in tents.",
                "An adult in charge decides when it is safe to play again, by local rules.",
                "The referee writes down the score, the server and both line-ups.",
                CARE_NOT_REPLACED,
            ],
            // 1.6, 17.3
            Care::Lights => &[
                "Stop play. Everybody stands still until there is light.",
                "A rally that was going on is played again.",
                "Write down the score, the server and both line-ups.",
                "The organiser decides with the first referee how to go on (rule 17.3).",
                NOT_YOURS_ALONE,
            ],
        };
        lines.extend(more.iter().map(|line| (*line).to_owned()));
        lines
    }
}
