//! The words of the court: what a zone or a line is, who may be there, and which fault belongs to it (FIVB
//! Official Volleyball Rules 2025-2028; the number stands beside each).

use learn::{Mark, Topic};

words! { CourtWords in learn::court;
    /// The name of a part of the hall.
    mark(mark: Mark) -> &'static str;
    /// What it is, who may be there, and what to watch.
    mark_lines(mark: Mark) -> &'static [&'static str];
    /// The decisions that belong to it.
    mark_topics(mark: Mark) -> &'static [Topic];
    /// What the drawing shows.
    court_drawn -> &'static str;
    /// Above the names of all parts.
    all_marks -> &'static str;
    /// Heading of the heights.
    net_heights -> &'static str;
    /// Before them.
    net_heights_more -> &'static str;
    /// The heights of the international text.
    net_adults -> &'static str;
    /// Where the heights of the young come from.
    net_young -> &'static str;
    /// How it is measured (2.1.2).
    net_measured -> &'static str;
    /// The columns.
    net_columns -> [&'static str; 3];
    /// The name of an age group.
    under(age: u8) -> String;
    /// A height.
    height(metres: &str) -> String;
}
