//! The words of what is measured: ball and net.

use crate::setup::measure::*;
use rules::{Height, Judged, NetFault, Pressure, Unit, SIDE_MORE};

/// In English.
pub static WORDS: MeasureWords = MeasureWords {
    gauge: "What the gauge shows",
    gauge_unit: "Unit of the gauge",
    gauge_form: "Write the number as the gauge shows it, such as 0.31 or 4.4.",
    no_gauge: "No gauge?",
    without_gauge: [
        "Press the ball with both thumbs. A good ball gives a little and springs back at once, \
         without a dent or a wrinkle.",
        "Let both captains or coaches try it and the spare ball. Take the one they agree on.",
        "Write \u{201c}no gauge\u{201d} as a note below. This is common practice; no rule says so.",
    ],
    limits,
    pressure,
    judged,
    meant,
    ball_note,
    net_height: "Required height",
    net_ages:
        "The official rules have only these two heights. Age groups have the heights of your \
         competition: ask, and type yours in.",
    net_own: "Age group",
    net_own_height: "Height in your competition, in metres",
    net_measured: "Measured, in metres (optional)",
    net_places: ["Middle", "Left side line", "Right side line"],
    net_form: "Write a height such as 2.24 or 224.",
    net_right: "The net is right.",
    net_class,
    net_fault,
    net_faults,
    net_note,
};

fn limits(unit: Unit) -> String {
    let (low, high) = unit.limits();
    format!("{} to {}", low.number(), high.number())
}

fn pressure(pressure: Pressure) -> String {
    format!("{} {}", pressure.number(), pressure.unit.symbol())
}

fn judged(judged: Judged) -> &'static str {
    match judged {
        Judged::Within => "Within the limits.",
        Judged::Below => "Too soft: pump it up.",
        Judged::Above => "Too hard: let some air out.",
    }
}

fn meant(unit: Unit) -> String {
    format!(
        "In {} this number would be right. Look at the gauge again.",
        unit.symbol()
    )
}

fn ball_note(found: Pressure) -> String {
    let words = match found.judge() {
        Judged::Within => "",
        Judged::Below => ", too soft",
        Judged::Above => ", too hard",
    };
    format!("{}{words}", pressure(found))
}

fn net_class(name: &str, height: Height) -> String {
    format!("{name}: {} m", height.metres())
}

fn net_fault(fault: NetFault) -> String {
    let cm = |mm: u16| match mm % 10 {
        0 => format!("{} cm", mm / 10),
        rest => format!("{}.{rest} cm", mm / 10),
    };
    match fault {
        NetFault::MiddleLow(by) => format!("{} too low in the middle", cm(by)),
        NetFault::MiddleHigh(by) => format!("{} too high in the middle", cm(by)),
        NetFault::SidesDiffer(by) => format!("the sides differ by {}", cm(by)),
        NetFault::SideHigh(by) => {
            format!(
                "one side is {} above the required height ({} are allowed)",
                cm(by),
                cm(SIDE_MORE)
            )
        }
        NetFault::SideLow(by) => format!("one side is {} too low", cm(by)),
    }
}

fn net_faults(faults: &[NetFault]) -> String {
    faults
        .iter()
        .map(|f| net_fault(*f))
        .collect::<Vec<_>>()
        .join("; ")
}

fn net_note(wanted: Height, measured: [Option<Height>; 3], faults: &[NetFault]) -> String {
    let shown: Vec<String> = net_places()
        .iter()
        .zip(measured)
        .filter_map(|(place, height)| {
            Some(format!("{} {}", place.to_lowercase(), height?.metres()))
        })
        .collect();
    let mut words = format!("{} m", wanted.metres());
    if !shown.is_empty() {
        words.push_str(&format!(", measured: {}", shown.join(", ")));
    }
    if !faults.is_empty() {
        words.push_str(&format!("; {}", net_faults(faults)));
    }
    words
}
