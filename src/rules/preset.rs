//! The presets as data in one place, each value with its source.
//!
//! "OVR" is the FIVB Official Volleyball Rules 2025-2028.

use super::{
    Decider, Edition, Roster, Rules, SetTarget, Sets, SubstitutionPolicy, Substitutions, TimeOuts,
    UnderNet, WarmUp, WarmUpStyle,
};

/// A named set of rules to start from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Preset {
    /// The international text.
    International,
    /// School matches of seniors.
    SchoolSenior,
    /// School matches of juniors.
    SchoolJunior,
    /// Points only, for a tally beside the match.
    Tally,
}

// As offered on a screen.
crate::codes!(Preset {
    SchoolJunior = "school_junior",
    SchoolSenior = "school_senior",
    International = "international",
    Tally = "tally",
});

impl Preset {
    /// The rules of the preset.
    #[must_use]
    pub const fn rules(self) -> Rules {
        match self {
            Preset::International => INTERNATIONAL,
            Preset::SchoolSenior => SCHOOL_SENIOR,
            Preset::SchoolJunior => SCHOOL_JUNIOR,
            Preset::Tally => TALLY,
        }
    }
}

const INTERNATIONAL: Rules = Rules {
    preset: Preset::International,
    edition: Edition::E2025,
    // OVR 6.3.1
    sets: Sets::BestOf(5),
    // OVR 6.2
    set: SetTarget {
        target: 25,
        lead: 2,
        cap: None,
    },
    // OVR 18.2.2: in the deciding set only
    set_change_courts_at: None,
    // OVR 6.2: points alone end a set
    set_limit: None,
    decider: Decider {
        // OVR 6.3.2
        to: SetTarget {
            target: 15,
            lead: 2,
            cap: None,
        },
        // OVR 18.2.2
        change_courts_at: Some(8),
    },
    // OVR 15.1 and 15.4.1
    time_outs: TimeOuts {
        per_set: Some(2),
        per_match: None,
        seconds: 30,
    },
    // OVR 15.1 and 15.6
    substitutions: Substitutions {
        policy: SubstitutionPolicy::Paired,
        per_set: Some(6),
        entries_per_player: None,
    },
    // OVR 19.1.1
    liberos: 2,
    line_ups: true,
    // OVR 7.3.1
    players_on_court: 6,
    // 14 players: OVR 4.1.1, for official senior competitions; the widest range of numbers seen in
    // the FIVB Casebook 2024, case 9.3 (the text itself: 1 to 20, OVR 4.3.3).
    roster: Roster {
        max: 14,
        min_number: 1,
        max_number: 99,
    },
    // OVR 7.2.1, where the teams had no court before
    warm_up: WarmUp {
        style: WarmUpStyle::Shared,
        minutes: 10,
    },
    // OVR 18.1
    interval_seconds: 180,
    // OVR 18.1: ten minutes between sets 2 and 3 only at the organiser's request
    second_interval_seconds: None,
    // OVR 12.4.4
    service_seconds: 8,
    under_net: UnderNet::Standard,
};

/// Common to both school presets: common practice, no source.
const SCHOOL_SUBSTITUTIONS: Substitutions = Substitutions {
    policy: SubstitutionPolicy::SamePlace,
    per_set: Some(12),
    entries_per_player: Some(3),
};

const SCHOOL_SENIOR: Rules = Rules {
    preset: Preset::SchoolSenior,
    substitutions: SCHOOL_SUBSTITUTIONS,
    // Common practice, no source.
    liberos: 1,
    // Five minutes a team: OVR 7.2.2 names 3 or 5 minutes each.
    warm_up: WarmUp {
        style: WarmUpStyle::Separate,
        minutes: 5,
    },
    ..INTERNATIONAL
};

const SCHOOL_JUNIOR: Rules = Rules {
    preset: Preset::SchoolJunior,
    // Best of three: school tournament practice, no single source.
    sets: Sets::BestOf(3),
    substitutions: SCHOOL_SUBSTITUTIONS,
    // National youth tables leave the libero out for the youngest; common practice, no source.
    liberos: 0,
    // Three minutes a team: OVR 7.2.2.
    warm_up: WarmUp {
        style: WarmUpStyle::Separate,
        minutes: 3,
    },
    // Common practice, no source.
    under_net: UnderNet::Junior,
    ..INTERNATIONAL
};

const TALLY: Rules = Rules {
    preset: Preset::Tally,
    // A tally counts; it limits nothing (project design).
    time_outs: TimeOuts {
        per_set: None,
        per_match: None,
        seconds: 30,
    },
    substitutions: Substitutions {
        policy: SubstitutionPolicy::Free,
        per_set: None,
        entries_per_player: None,
    },
    line_ups: false,
    // As wide as a list can be entered.
    roster: Roster {
        max: 99,
        min_number: 0,
        max_number: 999,
    },
    ..INTERNATIONAL
};
