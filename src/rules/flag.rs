//! The signals that line judges make with a flag.
//!
//! FIVB Official Volleyball Rules 2025-2028, 29.2 and diagram 12.

/// One official flag signal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FlagSignal {
    /// 1: ball in.
    In,
    /// 2: ball out.
    Out,
    /// 3: ball touched.
    Touched,
    /// 4: crossing-space fault, outside object, foot fault of any player at the service.
    Line,
    /// 5: judgement impossible.
    NotSeen,
}

impl FlagSignal {
    /// All of them, in the order of the diagram.
    pub const ALL: [FlagSignal; 5] = [
        FlagSignal::In,
        FlagSignal::Out,
        FlagSignal::Touched,
        FlagSignal::Line,
        FlagSignal::NotSeen,
    ];

    /// The number in diagram 12, with an L before it.
    #[must_use]
    pub const fn number(self) -> &'static str {
        match self {
            FlagSignal::In => "L1",
            FlagSignal::Out => "L2",
            FlagSignal::Touched => "L3",
            FlagSignal::Line => "L4",
            FlagSignal::NotSeen => "L5",
        }
    }
}
