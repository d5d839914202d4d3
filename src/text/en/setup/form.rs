//! The words of the forms for a match: names, circumstances, rules.

use crate::setup::form::*;
use app::field::Field;
use rules::{Preset, Rules, Sets, SubstitutionPolicy, WarmUpStyle};

/// In English.
pub static WORDS: SetupFormWords = SetupFormWords {
    all_can_wait: "Choose the rules. Everything else is optional.",
    rules: "Rules",
    teams: "Teams",
    more: "More: competition, hall, rules in detail",
    rules_in_detail: "Rules in detail",
    rules_differ,
    standard_rules: "Take the standard rules",
    rules_not_usable: "One of the rules below does not work yet.",
    open_match: "Open the match",
    not_opened: "The match could not be opened. Nothing is lost. Try again.",
    match_details: "Names, start, hall, rules",
    rules_clear_line_ups: "If you change the rules now, confirm the line-ups again.",
    keep_details: "Save changes",
    preset,
    preset_is_for,
    rules_in_short,
    sets,
    one_limit: "Limit a set by minutes or by rallies, not by both.",
    field,
    source,
    field_id,
    field_says,
    number_wanted,
    policy,
    liberos,
    on_court,
    warm_up_style,
    under_net,
    edition,
    day_empty: "If empty: today, or tomorrow if that time is long past.",
    starts,
};

fn preset(preset: Preset) -> &'static str {
    match preset {
        Preset::SchoolJunior => "School, juniors",
        Preset::SchoolSenior => "School, seniors",
        Preset::International => "International",
        Preset::Tally => "Points only",
    }
}

fn preset_is_for(preset: Preset) -> String {
    let with = match preset.rules().liberos {
        0 => "no libero".to_owned(),
        1 => "one libero".to_owned(),
        n => format!("{n} liberos"),
    };
    match preset {
        Preset::SchoolJunior => format!("Shorter, {with}"),
        Preset::SchoolSenior => format!("Full length, {with}"),
        Preset::International => "The official rules".to_owned(),
        Preset::Tally => "No line-ups, no limits".to_owned(),
    }
}

fn rules_differ(of: Preset) -> String {
    format!(
        "Not the standard rules of \u{201c}{}\u{201d}: somebody changed them here, or for the last match.",
        preset(of)
    )
}

fn rules_in_short(rules: &Rules) -> String {
    let mut parts = vec![sets(rules.sets), format!("to {}", rules.set.target)];
    if matches!(rules.sets, Sets::BestOf(n) if n > 1) {
        parts.push(format!("last set to {}", rules.decider.to.target));
    }
    parts.push(match rules.time_outs.per_set {
        Some(1) => "1 time-out a set".to_owned(),
        Some(n) => format!("{n} time-outs a set"),
        None => "time-outs without limit".to_owned(),
    });
    parts.push(match rules.substitutions.per_set {
        Some(n) => format!("{n} substitutions a set"),
        None => "substitutions without limit".to_owned(),
    });
    parts.push(liberos(&rules.liberos.to_string()));
    if rules.players_on_court != 6 {
        parts.push(format!("{} players on court", rules.players_on_court));
    }
    if !rules.line_ups {
        parts.push("no line-ups".to_owned());
    }
    parts.push(match rules.warm_up.style {
        WarmUpStyle::Shared => format!("warm-up {} min together", rules.warm_up.minutes),
        WarmUpStyle::Separate => format!("warm-up {} min each", rules.warm_up.minutes),
    });
    parts.join(", ") + "."
}

fn sets(sets: Sets) -> String {
    match sets {
        Sets::BestOf(1) => "One set".to_owned(),
        Sets::BestOf(n) => format!("Best of {n}"),
        Sets::Fixed(n) => format!("All {n} sets are played"),
    }
}

fn field(field: Field) -> &'static str {
    match field {
        Field::Preset => "Rules",
        Field::NameA => "Team A",
        Field::NameB => "Team B",
        Field::Time => "Planned start",
        Field::Day => "Day",
        Field::Competition => "Competition",
        Field::Division => "Division",
        Field::Hall => "Hall",
        Field::Court => "Court",
        Field::MatchNumber => "Match number",
        Field::Edition => "Edition of the rules",
        Field::Sets => "Sets",
        Field::Target => "Points that win a set",
        Field::Lead => "Lead needed to win",
        Field::Cap => "Cap: here any lead wins (empty: no cap)",
        Field::SetCourts => "Change of courts within a set at (empty: never)",
        Field::SetMinutes => "Minutes until a set ends (empty: only points end it)",
        Field::SetRallies => "Rallies until a set ends (empty: only points end it)",
        Field::DeciderTarget => "Points that win the deciding set",
        Field::DeciderLead => "Lead needed in the deciding set",
        Field::DeciderCap => "Cap in the deciding set (empty: no cap)",
        Field::ChangeCourts => "Deciding set: change of courts at (empty: never)",
        Field::TimeOuts => "Time-outs a set for each team (empty: no limit)",
        Field::TimeOutsInMatch => "Time-outs in the match for each team (empty: no limit)",
        Field::TimeOutSeconds => "Seconds of a time-out",
        Field::Policy => "Substitutions: who for whom",
        Field::Substitutions => "Substitutions a set for each team (empty: no limit)",
        Field::Entries => "Times on court for one player in a set (empty: no limit)",
        Field::Liberos => "Liberos",
        Field::OnCourt => "Players on court",
        Field::ListMost => "Players on a team list, at most",
        Field::LowestNumber => "Lowest shirt number",
        Field::HighestNumber => "Highest shirt number",
        Field::WarmUp => "Warm-up at the net",
        Field::WarmUpMinutes => "Minutes of warm-up (each team, or together)",
        Field::Interval => "Seconds between sets",
        Field::SecondInterval => "Seconds between sets 2 and 3 (empty: same as the others)",
        Field::ServiceSeconds => "Seconds for the service",
        Field::UnderNet => "Feet and hands under the net",
    }
}

fn source(rule: Field) -> Option<&'static str> {
    Some(match rule {
        Field::Sets => {
            "Official rules: best of 5 (6.3.1). Fewer sets are common practice in schools, no \
             source."
        }
        Field::Target | Field::Lead => "Official rules: 25 points, 2 ahead (6.2).",
        Field::Cap => "Official rules: no cap (6.2).",
        Field::SetCourts => "Official rules: only in the deciding set (18.2.2).",
        Field::SetMinutes | Field::SetRallies => {
            "Official rules: a set ends by points alone (6.2)."
        }
        Field::DeciderTarget | Field::DeciderLead => "Official rules: 15 points, 2 ahead (6.3.2).",
        Field::DeciderCap => "Official rules: no cap (6.3.2).",
        Field::ChangeCourts => "Official rules: 8 (18.2.2).",
        Field::TimeOuts => "Official rules: 2 (15.1).",
        Field::TimeOutsInMatch => "Official rules: counted in each set (15.1).",
        Field::TimeOutSeconds => "Official rules: 30 (15.4.1).",
        Field::Policy => {
            "Official rules: a starter and one substitute, once (15.6). The others are common \
             practice, no source."
        }
        Field::Substitutions => {
            "Official rules: 6 (15.1). Schools often allow 12: common practice, no source."
        }
        Field::Entries => {
            "Official rules: they bind the pair instead (15.6). A count is common practice, \
             no source."
        }
        Field::Liberos => {
            "Official rules: up to two (19.1.1). None for juniors is common practice, no \
             source."
        }
        Field::OnCourt => {
            "Official rules: six (7.3.1). Fewer is common practice for juniors, no source."
        }
        Field::ListMost => {
            "Official rules: 12. In official senior competitions 14, two of them liberos \
             (4.1.1, 19.1.1)."
        }
        Field::LowestNumber | Field::HighestNumber => {
            "Official rules: 1 to 20 (4.3.3). Seniors may go on to 99 (casebook 2024, 9.3)."
        }
        Field::WarmUp | Field::WarmUpMinutes => {
            "Official rules: 6 minutes together, 10 without another court before; 3 or 5 each \
             on request (7.2)."
        }
        Field::Interval => "Official rules: three minutes (18.1).",
        Field::SecondInterval => {
            "Official rules: ten minutes if the organiser asks for them (18.1)."
        }
        Field::ServiceSeconds => "Official rules: 8 (12.4.4).",
        Field::UnderNet => {
            "Official rules: 11.2. The stricter form is common practice for juniors, no \
             source."
        }
        Field::Edition => {
            "Official rules of the international federation, by the years they are in force."
        }
        _ => return None,
    })
}

fn field_id(field: Field) -> String {
    format!("{field:?}").to_lowercase()
}

fn field_says(wrong: Field, say: &str) -> String {
    format!("{}: {say}", field(wrong))
}

fn number_wanted(lowest: u16, highest: u16, may_be_empty: bool) -> String {
    if may_be_empty {
        format!("Write a whole number from {lowest} to {highest}, or leave it empty.")
    } else {
        format!("Write a whole number from {lowest} to {highest}.")
    }
}

fn policy(code: &str) -> String {
    policy_words(match code {
        "paired" => SubstitutionPolicy::Paired,
        "free" => SubstitutionPolicy::Free,
        _ => SubstitutionPolicy::SamePlace,
    })
    .to_owned()
}

fn policy_words(policy: SubstitutionPolicy) -> &'static str {
    match policy {
        SubstitutionPolicy::Paired => "A starter and one substitute, once",
        SubstitutionPolicy::SamePlace => "Always back to the same place",
        SubstitutionPolicy::Free => "Anybody for anybody",
    }
}

fn liberos(code: &str) -> String {
    match code {
        "0" => "no libero".to_owned(),
        "1" => "1 libero".to_owned(),
        n => format!("{n} liberos"),
    }
}

fn on_court(code: &str) -> String {
    match code {
        "0" => "No line-ups".to_owned(),
        n => format!("{n} players of each team"),
    }
}

fn warm_up_style(code: &str) -> String {
    match code {
        "shared" => "Both teams together",
        _ => "One team after the other",
    }
    .to_owned()
}

fn under_net(code: &str) -> String {
    match code {
        "junior" => "Junior: stricter",
        _ => "As in the official rules",
    }
    .to_owned()
}

fn edition(code: &str) -> String {
    match code {
        "2021" => "2021\u{2013}2024",
        _ => "2025\u{2013}2028",
    }
    .to_owned()
}

fn starts(tomorrow: bool, time: &str) -> String {
    let day = if tomorrow { "Tomorrow" } else { "Today" };
    format!("{day} at {time}.")
}
