//! The fields of a new match.

/// Everything that can be filled in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Name of a preset.
    Preset,
    /// Name of team A.
    NameA,
    /// Name of team B.
    NameB,
    /// Time of the scheduled start.
    Time,
    /// Its day.
    Day,
    /// Competition.
    Competition,
    /// Division.
    Division,
    /// Hall.
    Hall,
    /// Court in the hall.
    Court,
    /// Number of the match.
    MatchNumber,
    /// Text of the rules.
    Edition,
    /// How many sets.
    Sets,
    /// Points of a set.
    Target,
    /// Points ahead.
    Lead,
    /// Points that win with any lead.
    Cap,
    /// When courts are changed in an ordinary set.
    SetCourts,
    /// Minutes after which the organiser's clock ends a set.
    SetMinutes,
    /// Rallies after which a set ends.
    SetRallies,
    /// Points of the deciding set.
    DeciderTarget,
    /// Points ahead in it.
    DeciderLead,
    /// Points that win it with any lead.
    DeciderCap,
    /// When courts are changed in it.
    ChangeCourts,
    /// Time-outs for each team in each set.
    TimeOuts,
    /// Time-outs for each team in the match.
    TimeOutsInMatch,
    /// Their length.
    TimeOutSeconds,
    /// Who may come in for whom.
    Policy,
    /// Substitutions for each team in each set.
    Substitutions,
    /// How often one player may be on court.
    Entries,
    /// Liberos.
    Liberos,
    /// Players on court, or none where line-ups are not kept.
    OnCourt,
    /// Players on a list.
    ListMost,
    /// Lowest number.
    LowestNumber,
    /// Highest number.
    HighestNumber,
    /// Together or one after the other.
    WarmUp,
    /// How long.
    WarmUpMinutes,
    /// Pause between sets.
    Interval,
    /// Pause between sets 2 and 3.
    SecondInterval,
    /// From the whistle to the service hit.
    ServiceSeconds,
    /// Under the net.
    UnderNet,
}

impl Field {
    /// All of them, in the order in which a draft keeps them.
    pub const ALL: [Field; 39] = [
        Field::Preset,
        Field::NameA,
        Field::NameB,
        Field::Time,
        Field::Day,
        Field::Competition,
        Field::Division,
        Field::Hall,
        Field::Court,
        Field::MatchNumber,
        Field::Edition,
        Field::Sets,
        Field::Target,
        Field::Lead,
        Field::Cap,
        Field::SetCourts,
        Field::SetMinutes,
        Field::SetRallies,
        Field::DeciderTarget,
        Field::DeciderLead,
        Field::DeciderCap,
        Field::ChangeCourts,
        Field::TimeOuts,
        Field::TimeOutsInMatch,
        Field::TimeOutSeconds,
        Field::Policy,
        Field::Substitutions,
        Field::Entries,
        Field::Liberos,
        Field::OnCourt,
        Field::ListMost,
        Field::LowestNumber,
        Field::HighestNumber,
        Field::WarmUp,
        Field::WarmUpMinutes,
        Field::Interval,
        Field::SecondInterval,
        Field::ServiceSeconds,
        Field::UnderNet,
    ];

    /// The rules that a competition may set for itself, in the order in which they are asked for; the edition
    /// comes last (our own choice).
    pub fn rules() -> impl Iterator<Item = Field> {
        let from_the_sets = Field::ALL.into_iter().skip_while(|f| *f != Field::Sets);
        from_the_sets.chain([Field::Edition])
    }

    /// Whether a number is wanted.
    #[must_use]
    pub fn is_number(self) -> bool {
        self.range().is_some()
    }

    /// The smallest and the largest number the field takes, and whether it may stay empty. These are
    /// the ranges in which the core can reckon, and sensible lengths of time; no rule stands behind
    /// them.
    #[must_use]
    pub fn range(self) -> Option<(u16, u16, bool)> {
        Some(match self {
            Field::Target | Field::DeciderTarget => (1, 999, false),
            Field::Lead | Field::DeciderLead => (1, 99, false),
            Field::Cap | Field::DeciderCap | Field::ChangeCourts | Field::SetCourts => {
                (1, 999, true)
            }
            Field::SetMinutes => (1, 120, true),
            Field::SetRallies => (1, 999, true),
            Field::TimeOuts | Field::TimeOutsInMatch => (0, 20, true),
            Field::TimeOutSeconds => (1, 600, false),
            Field::Substitutions => (0, 99, true),
            Field::Entries => (1, 99, true),
            Field::ListMost => (4, 99, false),
            Field::LowestNumber => (0, 999, false),
            Field::HighestNumber => (1, 999, false),
            Field::WarmUpMinutes => (0, 60, false),
            Field::Interval => (0, 3600, false),
            Field::SecondInterval => (0, 3600, true),
            Field::ServiceSeconds => (1, 60, false),
            _ => return None,
        })
    }
}
