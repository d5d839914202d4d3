//! What a request, a delay or misconduct becomes, in words: before it is recorded, and in the log
//! afterwards. Rule numbers are those of the FIVB Official Volleyball Rules 2025-2028.

use crate::sanctions::*;
use crate::{person, team_name};
use game::entry::Forced;
use game::{
    Absence, Conduct, Kind, Level, MayReturn, Sanction, SanctionEffect, SanctionKind,
    SanctionPreview, State, SubstitutionPreview, Who,
};
use rules::{Arm, Shirt};

/// In English.
pub static WORDS: SanctionsWords = SanctionsWords {
    this_player: "This player",
    sanction,
    cards,
    cards_and_arm,
    becomes,
    cost,
    row_cost,
    sanction_effect,
    not_alone:
        "A young person does not wait alone: ask the adult in charge. Your competition may want a \
         report.",
    how_to_give,
    for_what,
    record_it,
    other_level: "Another level",
    became,
    sort,
    sort_means,
};

fn sanction(kind: SanctionKind) -> &'static str {
    match kind {
        SanctionKind::ImproperRequest => "Improper request",
        SanctionKind::DelayWarning => "Delay warning",
        SanctionKind::DelayPenalty => "Delay penalty",
        SanctionKind::Misconduct(level) => crate::level(level),
    }
}

fn cards(kind: SanctionKind) -> &'static str {
    match kind {
        SanctionKind::ImproperRequest => "No card",
        SanctionKind::DelayWarning => "Yellow card on the wrist",
        SanctionKind::DelayPenalty => "Red card on the wrist",
        SanctionKind::Misconduct(Level::Warning) => "Yellow card",
        SanctionKind::Misconduct(Level::Penalty) => "Red card",
        SanctionKind::Misconduct(Level::Expulsion) => "Both cards in one hand",
        SanctionKind::Misconduct(Level::Disqualification) => "One card in each hand",
    }
}

fn cards_and_arm(kind: SanctionKind, arm: Option<Arm>) -> String {
    match arm {
        Some(arm @ (Arm::Left | Arm::Right)) => {
            format!("{}, {}", cards(kind), lower(crate::arm(arm)))
        }
        Some(Arm::Both) | None => cards(kind).to_owned(),
    }
}

fn ordinal(n: u8) -> String {
    match n {
        1 => "First".into(),
        2 => "Second".into(),
        3 => "Third".into(),
        4 => "Fourth".into(),
        n => format!("{n}th"),
    }
}

/// The same within a sentence.
fn lower(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_lowercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

fn becomes(preview: &SanctionPreview, before: &State) -> String {
    let line = &preview.sanction;
    match (&line.who, line.improper) {
        (Some(who), _) => format!("{}, {}", sanction(line.kind), person(who)),
        (None, Some(1)) => "First improper request in this match: only noted".into(),
        (None, Some(n)) => format!(
            "{} improper request in this match: {}",
            ordinal(n),
            lower(sanction(line.kind))
        ),
        (None, None) => format!(
            "{} delay in this match: {}",
            ordinal(before.team(line.team).delays.saturating_add(1)),
            lower(sanction(line.kind))
        ),
    }
}

fn cost(preview: &SanctionPreview, state: &State) -> String {
    match preview.point {
        Some(to) if preview.in_coming_set => format!(
            "When set {} begins: point and service to {}",
            preview.sanction.set,
            team_name(state, to)
        ),
        Some(to) => format!("Point and service to {}", team_name(state, to)),
        None => "No point, service stays".into(),
    }
}

fn row_cost(preview: &SanctionPreview, state: &State) -> String {
    match preview.sanction.kind {
        SanctionKind::Misconduct(Level::Expulsion) => {
            "No point. Out for the rest of the set".into()
        }
        SanctionKind::Misconduct(Level::Disqualification) => {
            "No point. Out for the rest of the match".into()
        }
        _ => cost(preview, state),
    }
}

fn sanction_effect(effect: SanctionEffect, line: &Sanction, state: &State) -> String {
    let team = || team_name(state, line.team);
    match effect {
        SanctionEffect::NoMoreRequests => {
            format!("{} may make no more requests until the next rally is over", team())
        }
        SanctionEffect::OnlyWarning => format!(
            "This is the only yellow card of {} in this match. From now on, minor misconduct is a penalty",
            team()
        ),
        SanctionEffect::SubstitutedAtOnce(number) => {
            format!("Number {number} is substituted at once")
        }
        SanctionEffect::Leaves(absence) => {
            let how_long = match absence {
                Absence::Set => "the set",
                Absence::Match => "the match",
            };
            format!("Goes to the team's dressing room for the rest of {how_long}")
        }
        SanctionEffect::Returns(absence) => {
            let until = match absence {
                Absence::Set => "May come back in the next set",
                Absence::Match => "No way back in this match",
            };
            match &line.who {
                Some(Who::Staff(role)) => format!(
                    "{until}. Until then the {role} may not lead the team. For a coach, the assistant may, \
                     if the game captain asks"
                ),
                Some(Who::Player(_)) | None => until.into(),
            }
        }
        SanctionEffect::Next(next) => {
            let next = lower(sanction(next));
            match (&line.who, line.kind) {
                (Some(who), _) => format!("Next for {}: {next}", person(who)),
                (None, SanctionKind::ImproperRequest) => {
                    format!("Next improper request of {}: {next}", team())
                }
                (None, _) => format!("Next delay of {}: {next}", team()),
            }
        }
        SanctionEffect::CardShownIn(set) => format!("The card is shown when set {set} begins"),
        SanctionEffect::CoachToldCardsShownIn(set) => format!(
            "Tell the coach at once, through the game captain. The cards are shown when set {set} begins"
        ),
    }
}

fn how_to_give(who: &Who) -> &'static str {
    match who {
        Who::Player(_) => "Whistle, call the player to the stand and show it.",
        Who::Staff(_) => "Whistle, tell the person through the game captain and show it.",
    }
}

fn for_what(level: Level, conducts: &[Conduct]) -> String {
    if conducts.len() == Conduct::ALL.len() {
        return "Any misconduct again".into();
    }
    if conducts.is_empty() {
        return ONLY_IF_DECIDED.into();
    }
    let one = |conduct: &Conduct| match (conduct, level) {
        (Conduct::Minor, Level::Warning) => {
            "minor misconduct that goes on after a word through the game captain"
        }
        (Conduct::Minor, _) => "minor misconduct again",
        (Conduct::Rude, Level::Penalty) => "rude: against good manners",
        (Conduct::Rude, _) => "rude again",
        (Conduct::Offensive, Level::Expulsion) => "offensive: insult or contempt",
        (Conduct::Offensive, _) => "offensive again",
        (Conduct::Aggressive, _) => "aggressive: an attack or a threat",
    };
    let all: Vec<&str> = conducts.iter().map(one).collect();
    let all = all.join("; ");
    let mut letters = all.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

/// Nothing leads there now, and yet it may be given.
const ONLY_IF_DECIDED: &str = "Only if the first referee decides it";

fn record_it(preview: &SanctionPreview) -> String {
    let what = lower(sanction(preview.sanction.kind));
    match &preview.sanction.who {
        Some(who) => format!("Record the {what}, {}", person(who)),
        None => format!("Record the {what}"),
    }
}

fn became(kind: &Kind, line: &Sanction, state: &State) -> Option<String> {
    let improper = match kind {
        Kind::ImproperRequest { .. } => line.improper?,
        Kind::Delay { .. } => 0,
        _ => return None,
    };
    let name = team_name(state, line.team);
    let what = sanction(line.kind);
    let point = match line.kind {
        SanctionKind::DelayPenalty => format!(
            ": point and service to {}",
            team_name(state, line.team.other())
        ),
        _ => String::new(),
    };
    Some(match improper {
        0 => format!("{what} {name}{point}"),
        1 => format!("{what} {name}, the first: only noted"),
        n => format!(
            "{what} {name}, {} improper request{point}",
            lower(&ordinal(n))
        ),
    })
}

fn sort(preview: SubstitutionPreview) -> &'static str {
    if preview.exceptional {
        "Exceptional substitution"
    } else {
        "Regular substitution"
    }
}

fn sort_means(preview: SubstitutionPreview, out: Shirt, reason: Option<Forced>) -> String {
    let is_hurt = reason == Some(Forced::Injury);
    let back = match preview.may_return {
        // Whether somebody who was hurt may play is not for the rules of substitution to say.
        MayReturn::ThisSet if is_hurt => "may come back in this set, if cleared to play",
        MayReturn::NextSet if is_hurt => {
            "may come back in the next set, if cleared to play, not in this one"
        }
        MayReturn::ThisSet => "may come back in this set",
        MayReturn::NextSet => "may come back in the next set, not in this one",
        MayReturn::Never => "may not come back in this match",
    };
    let counts = if preview.exceptional {
        "It does not count as one of the set's substitutions."
    } else {
        "It counts as one of the set's substitutions."
    };
    format!("{}: number {out} {back}. {counts}", sort(preview))
}
