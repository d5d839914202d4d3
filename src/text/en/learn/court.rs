//! The words of the court: what a zone or a line is, who may be there, and which fault belongs to it (FIVB
//! Official Volleyball Rules 2025-2028; the number stands beside each).

use crate::learn::court::*;
use learn::{Mark, Topic};

/// In English.
pub static WORDS: CourtWords = CourtWords {
    mark,
    mark_lines,
    mark_topics,
    court_drawn: "The court from above, as the first referee sees it.",
    all_marks: "Or choose here",
    net_heights: "How high is the net?",
    net_heights_more: "The rules of your competition say it. Ask before you measure.",
    net_adults: "Adults (rule 2.1.1)",
    net_young:
        "Young players: one example, a regional youth table in Central Europe. Other places have \
         other heights, so there is no height for all.",
    net_measured:
        "Measure in the middle of the court. Over both side lines it must be equally high, and at \
         most 2 cm higher than in the middle (2.1.2).",
    net_columns: ["Age", "Boys, men", "Girls, women"],
    under,
    height,
};

fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::FrontZone => "Front zone",
        Mark::BackZone => "Back zone",
        Mark::ServiceZone => "Service zone",
        Mark::FreeZone => "Free zone",
        Mark::SubstitutionZone => "Substitution zone",
        Mark::LiberoZone => "Libero replacement zone",
        Mark::EndLine => "End line",
        Mark::SideLine => "Side line",
        Mark::CentreLine => "Centre line",
        Mark::AttackLine => "Attack line",
        Mark::Net => "Net, antennas, posts",
        Mark::Stand => "First referee",
        Mark::SecondReferee => "Second referee",
        Mark::Table => "Scorer's table",
        Mark::Bench => "Team bench",
        Mark::LineJudge => "Line judge",
    }
}

fn mark_lines(mark: Mark) -> &'static [&'static str] {
    match mark {
        // 1.4.1, 13.2, 19.3.1
        Mark::FrontZone => &[
            "From the centre line to the attack line, 3 m. That line is part of it. It goes on to both \
             sides, to the end of the free zone.",
            "Everybody may be here. A back-row player may not jump here to attack a ball above the net.",
            "A libero's finger set from here may not be attacked above the net.",
        ],
        // 1.3.4, 13.2.2
        Mark::BackZone => &[
            "From the attack line to the end line.",
            "A back-row player may jump here, attack at any height and land in front.",
        ],
        // 1.4.2, 12.4.3
        Mark::ServiceZone => &[
            "9 m wide, behind the end line. Two short marks show where it ends, and they are part of it. It \
             reaches back to the end of the free zone.",
            "Only the server is here at the service hit. The foot may not touch the line.",
        ],
        // 1.1, 7.4, 9
        Mark::FreeZone => &[
            "At least 3 m wide all around. Keep it free of bags, balls and people.",
            "Players may run here to save a ball. At the service hit only the server may be outside the \
             court.",
        ],
        // 1.4.3, 15.10
        Mark::SubstitutionZone => &[
            "Between the two attack lines, up to the table.",
            "Substitutes enter and leave here. The second referee lets them in.",
        ],
        // 1.4.4, 19.3.2.7
        Mark::LiberoZone => &[
            "On the bench side, from the attack line to the end line.",
            "The libero goes in and out here, without asking, before the whistle for the service.",
        ],
        // 1.3.2, 8.3, 12.4.3
        Mark::EndLine => &[
            "9 m from the middle of the centre line. The line is part of the court, so a ball on it is in.",
            "The server may not touch it at the hit.",
        ],
        // 1.3.2, 8.3
        Mark::SideLine => &[
            "4.5 m from the middle. The line is part of the court, so a ball on it is in.",
        ],
        // 1.3.3, 11.2.2, 11.4.3
        Mark::CentreLine => &[
            "It lies under the net. All of its 5 cm belongs to both courts.",
            "A foot may go over it while some part stays on or above it, and nobody is hindered.",
        ],
        // 1.3.4, 13.3.3
        Mark::AttackLine => &[
            "Its rear edge is 3 m from the middle of the centre line. The line is part of the front zone.",
            "A back-row player whose foot touches it at the jump is in the front zone.",
        ],
        // 2.1 to 2.5, 10.1.1
        Mark::Net => &[
            "The ball must cross above the net and between the antennas. They stand 80 cm above the net.",
            "The posts stand 0.5 to 1 m outside the side lines.",
        ],
        // 23.1
        Mark::Stand => &[
            "The first referee stands at one end of the net, with the eyes about 50 cm above it.",
            "This court is drawn as seen from there.",
        ],
        // 24.1, 22.2.3
        Mark::SecondReferee => &[
            "The second referee stands near the post on the table's side and faces the first.",
            "For signals the second referee moves to the side of the team at fault.",
        ],
        // 27.1, 28.1
        Mark::Table => &[
            "The scorer and the assistant sit here and face the first referee.",
            "Seen from here, left and right are swapped.",
        ],
        // 4.2, 5.2.3.4
        Mark::Bench => &[
            "Coach, staff and substitutes of a team, beside the table and outside the free zone.",
            "The coach may walk in front of the bench, but not delay or disturb the match.",
        ],
        // 29.1
        Mark::LineJudge => &[
            "Two line judges stand at the corners to the right of each referee, 1 to 2 m away.",
            "Each watches one end line and one side line.",
        ],
    }
}

fn mark_topics(mark: Mark) -> &'static [Topic] {
    match mark {
        Mark::FrontZone | Mark::AttackLine | Mark::BackZone => &[Topic::BackRow, Topic::Libero],
        Mark::ServiceZone => &[Topic::Service],
        Mark::FreeZone => &[Topic::Antenna, Topic::Positions],
        Mark::EndLine => &[Topic::InOut, Topic::Service],
        Mark::SideLine | Mark::LineJudge => &[Topic::InOut],
        Mark::CentreLine => &[Topic::UnderNet],
        Mark::Net => &[Topic::NetTouch, Topic::OverNet, Topic::Antenna],
        Mark::LiberoZone => &[Topic::Libero],
        Mark::SecondReferee => &[Topic::Positions, Topic::UnderNet],
        Mark::SubstitutionZone | Mark::Stand | Mark::Table | Mark::Bench => &[],
    }
}

fn under(age: u8) -> String {
    format!("Under {age}")
}

fn height(metres: &str) -> String {
    format!("{metres} m")
}
