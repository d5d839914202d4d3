//! The words of the plan: its steps, what to look at in each, and what is said when one is not in order.

use crate::setup::plan::*;
use game::Standing;
use rules::{Rules, Step, Timing, COURTSIDE_MINUTES};

/// In English.
pub static WORDS: PlanWords = PlanWords {
    next,
    open_step: "Open",
    read_on: "Read more about it",
    step,
    first_service: "First service",
    toss: "Toss",
    line_ups: "Line-ups",
    last_check: "Last check",
    look_at,
    standing,
    start_at,
    go_on_to,
    tick,
    do_not_start: "Do not start. Speak to the coach or the organiser.",
    not_done: "Not done yet.",
    not_yours_alone:
        "You do not have to settle this alone. Ask an adult in charge to look at it: a coach, the \
         organiser, the caretaker. If none is here, send for one. Until then nobody plays or \
         warms up on this court. The rules of your competition and this hall count.",
    who_clears_it: "Which adult has looked at it and says that it is safe now?",
    what_was_done: "What was done? (optional)",
    what_is_wrong: "What is wrong? (optional)",
    problem: "Problem",
    record_problem: "Record the problem",
    cleared_label: "All good now",
    cleared_by,
    cleared,
    found,
    clearers: ["Coach", "Organiser", "Caretaker"],
    due_and_late,
    no_start:
        "Enter the planned start below, under \u{201c}Names, start, hall, rules\u{201d}. Then \
         each step gets its time.",
    not_in_order,
    we_play: "We play:",
};

fn next(standing_now: Standing) -> String {
    match standing(standing_now) {
        "" => "Next".to_owned(),
        words => format!("Next \u{b7} {words}"),
    }
}

fn step(step: Step) -> &'static str {
    match step {
        Step::Kit => "Own kit",
        Step::Floor => "Floor and free zone",
        Step::Net => "Net and posts",
        Step::Ball => "Ball",
        Step::FirstAid => "First aid and exits",
        Step::Briefing => "Duty team briefed",
        Step::TeamLists => "Team lists",
        Step::Captains => "Captains' meeting",
        Step::Toss => toss(),
        Step::WarmUp => "Warm-up",
        Step::LineUps => line_ups(),
        Step::LastCheck => last_check(),
    }
}

fn look_at(step: Step, rules: &Rules) -> Vec<String> {
    let with_liberos = rules.liberos > 0;
    let lines: &[&str] = match step {
        Step::Kit => {
            return vec![
                "You have two whistles, a watch, a coin, a pen and cards. This phone is charged and \
                 silent.".into(),
                format!(
                    "You are at the court at least {COURTSIDE_MINUTES} minutes before the toss. The table \
                     is set up."
                ),
                "You have the competition's regulations, and you know whom to ask.".into(),
            ]
        }
        // 1.1, 1.2.1, 1.3.1, 1.5, 1.6
        Step::Floor => &[
            "The floor is dry, level and not slippery, without loose parts, holes or edges. Wet spots are \
             wiped.",
            "At least 3 m are free on every side of the 18 \u{d7} 9 m court, and 7 m above it. Walls, \
             benches, doors and other games are out of reach or padded.",
            "You can tell the lines of this court from the others.",
            "There is enough light to follow the ball. It is not colder than 10 \u{b0}C.",
        ],
        // 2.2 to 2.5; torn mesh, rebound: Refereeing Guidelines 2024, rule 2; padding of the posts is
        // common practice, no source.
        Step::Net => &[
            "The net is tight: a ball thrown into it bounces back. Nothing is torn.",
            "Antennas stand 80 cm above the net at the outer edge of the side bands. They are firm, one \
             on each face of the net.",
            "Posts stand 0.5 to 1 m outside the side lines, firm and padded. No wires or hooks stick out.",
        ],
        // 3.1, 3.2
        Step::Ball => &[
            "The ball is round and undamaged, 65 to 67 cm around, 260 to 280 g. Younger age groups may \
             have a lighter one.",
            "A spare ball of the same kind is at the table.",
        ],
        Step::FirstAid => &[
            "Which adult gives first aid today, and where are the kit and the ice?",
            "Which adult calls for help, from which telephone, and what is the address of this hall?",
            "The exits are open and not locked. Everybody knows where to meet outside.",
            "How does help reach the court: which door, which way?",
        ],
        // 5.1, 4.3, 4.5, 19.2, 5.1.2
        Step::Captains => &[
            "Who is captain? Only the captain on court speaks to the referee, and only while the ball is \
             out of play. If the captain is off court, the team names a game captain.",
            if with_liberos {
                "Shirt numbers are as on the team list. Liberos wear another colour."
            } else {
                "Shirt numbers are as on the team list. All shirts are alike."
            },
            "Nobody wears anything that can hurt. Rings, chains and watches are off or taped. There are \
             no hard casts.",
            "Which adult of each team do we call when somebody is hurt?",
            "What does this hall or competition do its own way? Think of the ceiling, near walls and the \
             warm-up.",
            "Any questions? Then shake hands and hold the toss.",
        ],
        // 7.3.5, 12.3; order: Refereeing Guidelines 2024, protocol.
        Step::LastCheck => &[
            if with_liberos {
                "Both teams stand as on their line-up sheets. Then liberos go in."
            } else {
                "Both teams stand as on their line-up sheets."
            },
            "The benches are seated and the line judges are at their corners. The scorer has raised both \
             hands.",
            "The server has the ball. The second referee has given you the sign.",
        ],
        Step::Briefing | Step::TeamLists | Step::Toss | Step::WarmUp | Step::LineUps => &[],
    };
    lines.iter().map(|line| (*line).to_owned()).collect()
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Done => "done",
        Standing::Failed => "problem",
        Standing::Running => "running",
        Standing::Open(Timing::Ahead) => "",
        Standing::Open(Timing::Due) => "due now",
        Standing::Open(Timing::Late) => "late",
    }
}

fn start_at(time: &str, day: Option<&str>, minutes_left: i64) -> String {
    let day = day.map(|day| format!("{day}, ")).unwrap_or_default();
    match minutes_left {
        0 => format!("Start {day}{time}: now"),
        1..=180 => format!("Start {day}{time}, in {minutes_left} min"),
        -180..=-1 => format!("Start was {day}{time}, {} min ago", -minutes_left),
        _ => format!("Start {day}{time}"),
    }
}

fn go_on_to(next: Step) -> String {
    format!("Next: {}", step(next))
}

fn tick(of: Step) -> String {
    format!("Done: {}", step(of))
}

fn cleared_by(note: &str) -> String {
    format!("All good: {note}")
}

fn cleared(who: &str, what: &str) -> String {
    let parts = [who.trim(), what.trim()];
    let parts: Vec<&str> = parts.into_iter().filter(|p| !p.is_empty()).collect();
    parts.join(": ")
}

fn found(ok: bool, measured: &str) -> String {
    let words = if ok { "All good" } else { "Problem" };
    if measured.is_empty() {
        words.to_owned()
    } else {
        format!("{words}: {measured}")
    }
}

fn due_and_late(late: usize, due: usize) -> String {
    let of = |steps: usize, how: &str| (steps > 0).then(|| format!("{steps} {how}"));
    let parts: Vec<String> = [of(late, "late"), of(due, "due now")]
        .into_iter()
        .flatten()
        .collect();
    match parts.is_empty() {
        true => "Nothing is due now".to_owned(),
        false => format!("Steps: {}", parts.join(", ")),
    }
}

fn not_in_order(items: &[String]) -> String {
    let names: Vec<&str> = items
        .iter()
        .map(|item| match Step::from_code(item) {
            Some(known) => step(known),
            None => item.as_str(),
        })
        .collect();
    format!("Problem: {}.", names.join(", "))
}
