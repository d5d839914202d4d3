//! The rules of one competition: every adjustable value, and what makes a combination unusable.

use super::{Preset, Score, Team};

/// Seconds before the end of an interval at which the teams are whistled onto the court (FIVB
/// Refereeing Guidelines and Instructions 2024, intervals: at 2:30 of 3:00).
pub const CALL_BACK_SECONDS: i64 = 30;

/// Which text of the Official Volleyball Rules applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edition {
    /// Official Volleyball Rules 2025-2028.
    E2025,
    /// Official Volleyball Rules 2021-2024.
    E2021,
}

crate::codes!(Edition {
    E2025 = "2025",
    E2021 = "2021",
});

/// How many sets a match has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sets {
    /// The first to win more than half of this many (an odd number).
    BestOf(u8),
    /// All of this many are played, whatever their results.
    Fixed(u8),
}

/// When a set is won.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SetTarget {
    /// Points needed.
    pub target: u16,
    /// Points needed ahead of the other team.
    pub lead: u16,
    /// Points that win the set with any lead, where a competition has such a limit.
    pub cap: Option<u16>,
}

impl SetTarget {
    /// Who has won a set that stands so, if anybody.
    #[must_use]
    pub fn winner(&self, score: Score) -> Option<Team> {
        let leader = score.leader()?;
        let (won, lost) = (score[leader], score[leader.other()]);
        let by_lead = won >= self.target && won - lost >= self.lead;
        let by_cap = self.cap.is_some_and(|cap| won >= cap);
        (by_lead || by_cap).then_some(leader)
    }

    /// The points that win the set against a team that stays at `lost` points
    /// (incomplete team: Official Volleyball Rules 2025-2028, 6.4.3).
    #[must_use]
    pub fn points_to_win_against(&self, lost: u16) -> u16 {
        let by_lead = self.target.max(lost.saturating_add(self.lead));
        self.cap.map_or(by_lead, |cap| by_lead.min(cap))
    }
}

/// What else ends a set, where a competition says so: the team that leads then wins it, and where the
/// teams are level one more rally decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SetLimit {
    /// The organiser's clock after so many minutes; somebody enters it.
    Minutes(u8),
    /// So many points of both teams together: every rally gives one.
    Rallies(u16),
}

/// The deciding set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Decider {
    /// When it is won.
    pub to: SetTarget,
    /// Points of the leading team at which the teams change courts; none: they do not.
    pub change_courts_at: Option<u16>,
}

impl Decider {
    /// When the teams change courts in a deciding set to so many points: at its half, the next whole point
    /// where that is none. At 8 of 15 by 18.2.2; for other targets common practice, no source.
    #[must_use]
    pub const fn half_of(target: u16) -> u16 {
        target.div_ceil(2)
    }
}

/// Time-outs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TimeOuts {
    /// For each team in each set; none: no limit.
    pub per_set: Option<u8>,
    /// For each team in the whole match; none: no limit of its own.
    pub per_match: Option<u8>,
    /// Length of one.
    pub seconds: u16,
}

/// Who may come in for whom.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SubstitutionPolicy {
    /// A starter leaves and returns once, with one substitute.
    Paired,
    /// A player is bound to one place of the line-up, any number may share it.
    SamePlace,
    /// Anybody for anybody.
    Free,
}

crate::codes!(SubstitutionPolicy {
    Paired = "paired",
    SamePlace = "same_place",
    Free = "free",
});

/// Substitutions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Substitutions {
    /// Who may come in for whom.
    pub policy: SubstitutionPolicy,
    /// For each team in each set; none: no limit.
    pub per_set: Option<u8>,
    /// How often one player may be on court in a set, starting counted; none: no limit of its own.
    pub entries_per_player: Option<u8>,
}

/// The team list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Roster {
    /// Players at most, liberos among them.
    pub max: u8,
    /// Lowest shirt number.
    pub min_number: u16,
    /// Highest shirt number.
    pub max_number: u16,
}

/// Whether the teams warm up at the net together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WarmUpStyle {
    /// Both at the same time.
    Shared,
    /// One after the other, the team with the first service first.
    Separate,
}

crate::codes!(WarmUpStyle {
    Shared = "shared",
    Separate = "separate",
});

/// The official warm-up at the net.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WarmUp {
    /// Together or one after the other.
    pub style: WarmUpStyle,
    /// Minutes for both together, or for each team.
    pub minutes: u8,
}

/// How far a player may come under the net; advice only, it changes no count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum UnderNet {
    /// As in the international text.
    Standard,
    /// Stricter, for juniors: only feet and hands may touch the opponents' court.
    Junior,
}

crate::codes!(UnderNet {
    Standard = "standard",
    Junior = "junior",
});

/// Everything a competition plays by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rules {
    /// The preset these rules started from.
    pub preset: Preset,
    /// Text of the rules.
    pub edition: Edition,
    /// Sets of a match.
    pub sets: Sets,
    /// An ordinary set.
    pub set: SetTarget,
    /// Points of the leading team at which the teams change courts in an ordinary set; none: they do not.
    pub set_change_courts_at: Option<u16>,
    /// What else ends a set, the deciding one too.
    pub set_limit: Option<SetLimit>,
    /// The deciding set.
    pub decider: Decider,
    /// Time-outs.
    pub time_outs: TimeOuts,
    /// Substitutions.
    pub substitutions: Substitutions,
    /// Liberos a team may name.
    pub liberos: u8,
    /// Whether line-ups are kept; if not, only the serving team is.
    pub line_ups: bool,
    /// Players of a team on court.
    pub players_on_court: u8,
    /// Team list.
    pub roster: Roster,
    /// Official warm-up.
    pub warm_up: WarmUp,
    /// Pause between sets.
    pub interval_seconds: u16,
    /// Pause between sets 2 and 3, where it is another one.
    pub second_interval_seconds: Option<u16>,
    /// Time from the whistle to the service hit.
    pub service_seconds: u16,
    /// Under the net.
    pub under_net: UnderNet,
}

/// Why a combination of rules cannot be played.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Invalid {
    /// `best_of` must be odd, 1 to 9; `fixed` 1 to 9.
    Sets,
    /// A target and a lead are at least 1, a cap is not below its target.
    Target,
    /// Four to six players are on court.
    PlayersOnCourt,
    /// No, one or two liberos.
    Liberos,
    /// The team list is smaller than the team on court, or its numbers run backwards.
    Roster,
    /// A limit of a set is at least 1.
    SetLimit,
}

/// No match has more sets (ours, no source).
pub const MAX_SETS: u8 = 9;

impl Rules {
    /// Whether a match can be played by these rules.
    ///
    /// # Errors
    /// The first thing that cannot be.
    pub fn check(&self) -> Result<(), Invalid> {
        let sets = match self.sets {
            Sets::BestOf(n) => n % 2 == 1 && n <= MAX_SETS,
            Sets::Fixed(n) => (1..=MAX_SETS).contains(&n),
        };
        let target = |t: &SetTarget| {
            t.target >= 1
                && t.target <= 999
                && t.lead >= 1
                && t.lead <= 99
                && t.cap.is_none_or(|cap| cap >= t.target && cap <= 999)
        };
        if !sets {
            Err(Invalid::Sets)
        } else if !target(&self.set) || !target(&self.decider.to) {
            Err(Invalid::Target)
        } else if !(4..=6).contains(&self.players_on_court) {
            Err(Invalid::PlayersOnCourt)
        } else if self.liberos > 2 {
            Err(Invalid::Liberos)
        } else if self.roster.max < self.players_on_court
            || self.roster.min_number > self.roster.max_number
        {
            Err(Invalid::Roster)
        } else if matches!(
            self.set_limit,
            Some(SetLimit::Minutes(0) | SetLimit::Rallies(0))
        ) {
            Err(Invalid::SetLimit)
        } else {
            Ok(())
        }
    }

    /// Sets a team needs to win the match; none where all sets are played.
    #[must_use]
    pub fn sets_to_win(&self) -> Option<u8> {
        match self.sets {
            Sets::BestOf(n) => Some(n / 2 + 1),
            Sets::Fixed(_) => None,
        }
    }

    /// The most sets a match can have.
    #[must_use]
    pub fn sets_at_most(&self) -> u8 {
        match self.sets {
            Sets::BestOf(n) | Sets::Fixed(n) => n,
        }
    }

    /// Whether set `number` (from 1) is the deciding set. One set alone is an ordinary one.
    #[must_use]
    pub fn is_decider(&self, number: u8) -> bool {
        matches!(self.sets, Sets::BestOf(n) if n > 1 && n == number)
    }

    /// When set `number` (from 1) is won.
    #[must_use]
    pub fn target_of(&self, number: u8) -> SetTarget {
        if self.is_decider(number) {
            self.decider.to
        } else {
            self.set
        }
    }

    /// Who has won set `number` at this score; `time_up` where the clock has ended it.
    #[must_use]
    pub fn winner_of(&self, number: u8, score: Score, time_up: bool) -> Option<Team> {
        let played = u32::from(score.a) + u32::from(score.b);
        let at_limit = match self.set_limit {
            Some(SetLimit::Rallies(most)) => played >= u32::from(most),
            Some(SetLimit::Minutes(_)) | None => false,
        };
        let leads = (time_up || at_limit).then(|| score.leader()).flatten();
        leads.or_else(|| self.target_of(number).winner(score))
    }

    /// Points of the leading team at which the teams change courts in set `number` (18.2.2).
    #[must_use]
    pub fn courts_change_at(&self, number: u8) -> Option<u16> {
        if self.is_decider(number) {
            self.decider.change_courts_at
        } else {
            self.set_change_courts_at
        }
    }

    /// Seconds of the interval after so many sets (18.1).
    #[must_use]
    pub fn interval_after(&self, sets: usize) -> u16 {
        let second = self.second_interval_seconds.filter(|_| sets == 2);
        second.unwrap_or(self.interval_seconds)
    }
}
