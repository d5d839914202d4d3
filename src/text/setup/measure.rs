//! The words of what is measured: ball and net.

use rules::{Height, Judged, NetFault, Pressure, Unit, SIDE_MORE};

/// Label of the reading.
pub const GAUGE: &str = "What the gauge shows";
/// Name of the choice of a unit.
pub const GAUGE_UNIT: &str = "Unit of the gauge";
/// Nothing that can be read.
pub const GAUGE_FORM: &str = "Write the number as the gauge shows it, such as 0.31 or 4.4.";
/// Opens the way without a gauge.
pub const NO_GAUGE: &str = "No gauge?";
/// What to do without one: common practice, no source.
pub const WITHOUT_GAUGE: [&str; 3] = [
    "Press the ball with both thumbs. A good ball gives a little and springs back at once, without a dent \
     or a wrinkle.",
    "Let both captains or coaches try it and the spare ball. Take the one they agree on.",
    "Write \u{201c}no gauge\u{201d} as a note below. This is common practice; no rule says so.",
];

/// The limits of a unit.
#[must_use]
pub fn limits(unit: Unit) -> String {
    let (low, high) = unit.limits();
    format!("{} to {}", low.number(), high.number())
}

/// A pressure.
#[must_use]
pub fn pressure(pressure: Pressure) -> String {
    format!("{} {}", pressure.number(), pressure.unit.symbol())
}

/// What a reading means.
#[must_use]
pub fn judged(judged: Judged) -> &'static str {
    match judged {
        Judged::Within => "Within the limits.",
        Judged::Below => "Too soft: pump it up.",
        Judged::Above => "Too hard: let some air out.",
    }
}

/// The gauge may have another unit.
#[must_use]
pub fn meant(unit: Unit) -> String {
    format!(
        "In {} this number would be right. Look at the gauge again.",
        unit.symbol()
    )
}

/// For the note of the check.
#[must_use]
pub fn ball_note(found: Pressure) -> String {
    let words = match found.judge() {
        Judged::Within => "",
        Judged::Below => ", too soft",
        Judged::Above => ", too hard",
    };
    format!("{}{words}", pressure(found))
}

/// Name of the choice of a height.
pub const NET_HEIGHT: &str = "Required height";
/// Where the height comes from.
pub const NET_AGES: &str =
    "The official rules have only these two heights. Age groups have the heights of your competition: \
     ask, and type yours in.";
/// The choice of an own height.
pub const NET_OWN: &str = "Age group";
/// Label of the own height.
pub const NET_OWN_HEIGHT: &str = "Height in your competition, in metres";
/// Over the measures.
pub const NET_MEASURED: &str = "Measured, in metres (optional)";
/// Labels of the measures.
pub const NET_PLACES: [&str; 3] = ["Middle", "Left side line", "Right side line"];
/// Nothing that can be read.
pub const NET_FORM: &str = "Write a height such as 2.24 or 224.";
/// Nothing wrong was found.
pub const NET_RIGHT: &str = "The net is right.";

/// A class with its height.
#[must_use]
pub fn net_class(name: &str, height: Height) -> String {
    format!("{name}: {} m", height.metres())
}

/// What is wrong with a net, in words.
#[must_use]
pub fn net_fault(fault: NetFault) -> String {
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

/// Several of them as a sentence.
#[must_use]
pub fn net_faults(faults: &[NetFault]) -> String {
    faults
        .iter()
        .map(|f| net_fault(*f))
        .collect::<Vec<_>>()
        .join("; ")
}

/// For the note of the check: the height it must have, and what was measured.
#[must_use]
pub fn net_note(wanted: Height, measured: [Option<Height>; 3], faults: &[NetFault]) -> String {
    let shown: Vec<String> = NET_PLACES
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
