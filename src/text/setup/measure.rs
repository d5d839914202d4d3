//! The words of what is measured: ball and net.

use rules::{Height, Judged, NetFault, Pressure, Unit};

words! { MeasureWords in setup::measure;
    /// Label of the reading.
    gauge -> &'static str;
    /// Name of the choice of a unit.
    gauge_unit -> &'static str;
    /// Nothing that can be read.
    gauge_form -> &'static str;
    /// Opens the way without a gauge.
    no_gauge -> &'static str;
    /// What to do without one: common practice, no source.
    without_gauge -> [&'static str; 3];
    /// The limits of a unit.
    limits(unit: Unit) -> String;
    /// A pressure.
    pressure(pressure: Pressure) -> String;
    /// What a reading means.
    judged(judged: Judged) -> &'static str;
    /// The gauge may have another unit.
    meant(unit: Unit) -> String;
    /// For the note of the check.
    ball_note(found: Pressure) -> String;
    /// Name of the choice of a height.
    net_height -> &'static str;
    /// Where the height comes from.
    net_ages -> &'static str;
    /// The choice of an own height.
    net_own -> &'static str;
    /// Label of the own height.
    net_own_height -> &'static str;
    /// Over the measures.
    net_measured -> &'static str;
    /// Labels of the measures.
    net_places -> [&'static str; 3];
    /// Nothing that can be read.
    net_form -> &'static str;
    /// Nothing wrong was found.
    net_right -> &'static str;
    /// A class with its height.
    net_class(name: &str, height: Height) -> String;
    /// What is wrong with a net, in words.
    net_fault(fault: NetFault) -> String;
    /// Several of them as a sentence.
    net_faults(faults: &[NetFault]) -> String;
    /// For the note of the check: the height it must have, and what was measured.
    net_note(wanted: Height, measured: [Option<Height>; 3], faults: &[NetFault]) -> String;
}
