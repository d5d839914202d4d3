//! The rules of a match as JSON: a preset and what differs from it.

use serde_json::{Map, Value};

use super::rules_v1;
use crate::entry_problem::EntryProblem;
use crate::fields::Fields;
use rules::{
    Decider, Preset, Roster, Rules, SetLimit, SetTarget, Sets, Substitutions, TimeOuts, WarmUp,
};

/// Rules from what a record says of them. One of version 2 gives every value, and the preset's name is a
/// label that decides nothing. One of version 1 gives a preset and the fields that differ from it: nested
/// fields merge one by one, `sets` is replaced whole, and the preset is the one of that time.
///
/// # Errors
/// What cannot be read.
pub fn read(given: &Map<String, Value>) -> Result<Rules, EntryProblem> {
    let preset = match given.get("preset") {
        None => Preset::International,
        Some(Value::String(code)) => match Preset::from_code(code) {
            Some(preset) => preset,
            // A label that a newer program has put there.
            None if gives_everything(given) => Preset::International,
            None => return Err(EntryProblem::UnknownPreset(code.clone())),
        },
        Some(_) => return Err(EntryProblem::PresetNoName),
    };
    let mut full = without_values(full_map(&preset.rules()));
    merge(&mut full, &rules_v1::preset(preset))?;
    merge(&mut full, given)?;
    rules_of(preset, &Fields(&full)).map_err(|e| EntryProblem::InRules(Box::new(e)))
}

/// Whether the text of an entry has rules that leave values to a preset, as version 1 wrote them.
pub(crate) fn rules_lack_values(json: &str) -> bool {
    let entry: Value = serde_json::from_str(json).unwrap_or_default();
    let rules = entry.get("rules").and_then(Value::as_object);
    rules.is_some_and(|rules| !gives_everything(rules))
}

/// Whether no value has to be taken from a preset.
fn gives_everything(given: &Map<String, Value>) -> bool {
    let first = rules_v1::preset(Preset::International);
    first.keys().all(|key| given.contains_key(key))
}

/// The same rules with nothing said. A rule that is younger than version 1 is off where nobody gives it.
fn without_values(full: Map<String, Value>) -> Map<String, Value> {
    let fields = full.into_iter().map(|(key, value)| match value {
        Value::Object(fields) => (key, Value::Object(without_values(fields))),
        _ => (key, Value::Null),
    });
    rules::gather(fields)
}

/// Lays fields over others; what is not a rule is refused.
fn merge(full: &mut Map<String, Value>, given: &Map<String, Value>) -> Result<(), EntryProblem> {
    for (key, value) in given.iter().filter(|(key, _)| *key != "preset") {
        let Some(base) = full.get_mut(key) else {
            return Err(EntryProblem::UnknownRule(key.clone()));
        };
        match (base, value) {
            (Value::Object(base), Value::Object(fields)) if key != "sets" => {
                for (name, field) in fields {
                    match base.get_mut(name) {
                        Some(slot) => *slot = field.clone(),
                        None => return Err(EntryProblem::UnknownRule(format!("{key}.{name}"))),
                    }
                }
            }
            // A year may stand there as a number.
            (base, Value::Number(year)) if key == "edition" => *base = year.to_string().into(),
            (base, value) => *base = value.clone(),
        }
    }
    Ok(())
}

fn rules_of(preset: Preset, f: &Fields) -> Result<Rules, EntryProblem> {
    let target = |f: &Fields| {
        Ok::<_, EntryProblem>(SetTarget {
            target: f.u16("target")?,
            lead: f.u16("lead")?,
            cap: f.some_u16("cap")?,
        })
    };
    let sets = f.object("sets")?;
    let decider = f.object("decider")?;
    let time_outs = f.object("time_outs")?;
    let substitutions = f.object("substitutions")?;
    let roster = f.object("roster")?;
    let warm_up = f.object("warm_up")?;
    Ok(Rules {
        preset,
        edition: f.code("edition")?,
        sets: match (sets.has("best_of"), sets.has("fixed")) {
            (true, false) => Sets::BestOf(sets.u8("best_of")?),
            (false, true) => Sets::Fixed(sets.u8("fixed")?),
            _ => {
                return Err(EntryProblem::OneNumber {
                    rule: "sets",
                    of: ["best_of", "fixed"],
                })
            }
        },
        set: target(&f.object("set")?)?,
        set_change_courts_at: f.object("set")?.some_u16("change_courts_at")?,
        set_limit: read_limit(f)?,
        decider: Decider {
            to: target(&decider)?,
            change_courts_at: decider.some_u16("change_courts_at")?,
        },
        time_outs: TimeOuts {
            per_set: time_outs.some_u8("per_set")?,
            per_match: time_outs.some_u8("per_match")?,
            seconds: time_outs.u16("seconds")?,
        },
        substitutions: Substitutions {
            policy: substitutions.code("policy")?,
            per_set: substitutions.some_u8("per_set")?,
            entries_per_player: substitutions.some_u8("entries_per_player")?,
        },
        liberos: f.u8("liberos")?,
        line_ups: f.given_flag("line_ups")?,
        players_on_court: f.u8("players_on_court")?,
        roster: Roster {
            max: roster.u8("max")?,
            min_number: roster.u16("min_number")?,
            max_number: roster.u16("max_number")?,
        },
        warm_up: WarmUp {
            style: warm_up.code("style")?,
            minutes: warm_up.u8("minutes")?,
        },
        interval_seconds: f.u16("interval_seconds")?,
        second_interval_seconds: f.some_u16("second_interval_seconds")?,
        service_seconds: f.u16("service_seconds")?,
        under_net: f.code("under_net")?,
    })
}

fn read_limit(f: &Fields) -> Result<Option<SetLimit>, EntryProblem> {
    let Some(limit) = f.some_object("set_limit")? else {
        return Ok(None);
    };
    Ok(Some(match (limit.has("minutes"), limit.has("rallies")) {
        (true, false) => SetLimit::Minutes(limit.u8("minutes")?),
        (false, true) => SetLimit::Rallies(limit.u16("rallies")?),
        _ => {
            return Err(EntryProblem::OneNumber {
                rule: "set_limit",
                of: ["minutes", "rallies"],
            })
        }
    }))
}

/// The preset as a label, and every value.
#[must_use]
pub fn write(rules: &Rules) -> Value {
    let mut out = full_map(rules);
    out.insert("preset".to_owned(), rules.preset.code().into());
    out.into()
}

fn full_map(r: &Rules) -> Map<String, Value> {
    let some = |n: Option<u16>| n.map_or(Value::Null, Value::from);
    let small = |n: Option<u8>| some(n.map(u16::from));
    let target = |t: &SetTarget| {
        [
            ("target", Value::from(t.target)),
            ("lead", t.lead.into()),
            ("cap", some(t.cap)),
        ]
    };
    let sets = match r.sets {
        Sets::BestOf(n) => ("best_of", Value::from(n)),
        Sets::Fixed(n) => ("fixed", n.into()),
    };
    let limit = match r.set_limit {
        None => Value::Null,
        Some(SetLimit::Minutes(n)) => map(&[("minutes", n.into())]).into(),
        Some(SetLimit::Rallies(n)) => map(&[("rallies", n.into())]).into(),
    };
    let mut set = map(&target(&r.set));
    let change = some(r.set_change_courts_at);
    set.insert("change_courts_at".to_owned(), change);
    let mut decider = map(&target(&r.decider.to));
    let change = some(r.decider.change_courts_at);
    decider.insert("change_courts_at".to_owned(), change);
    let time_outs = [
        ("per_set", small(r.time_outs.per_set)),
        ("per_match", small(r.time_outs.per_match)),
        ("seconds", r.time_outs.seconds.into()),
    ];
    let limits = r.substitutions;
    let substitutions = [
        ("policy", limits.policy.code().into()),
        ("per_set", small(limits.per_set)),
        ("entries_per_player", small(limits.entries_per_player)),
    ];
    let roster = [
        ("max", r.roster.max.into()),
        ("min_number", r.roster.min_number.into()),
        ("max_number", r.roster.max_number.into()),
    ];
    let warm_up = [
        ("style", r.warm_up.style.code().into()),
        ("minutes", r.warm_up.minutes.into()),
    ];
    map(&[
        ("edition", r.edition.code().into()),
        ("sets", map(&[sets]).into()),
        ("set", set.into()),
        ("set_limit", limit),
        ("decider", decider.into()),
        ("time_outs", map(&time_outs).into()),
        ("substitutions", map(&substitutions).into()),
        ("liberos", r.liberos.into()),
        ("line_ups", r.line_ups.into()),
        ("players_on_court", r.players_on_court.into()),
        ("roster", map(&roster).into()),
        ("warm_up", map(&warm_up).into()),
        ("interval_seconds", r.interval_seconds.into()),
        ("second_interval_seconds", some(r.second_interval_seconds)),
        ("service_seconds", r.service_seconds.into()),
        ("under_net", r.under_net.code().into()),
    ])
}

fn map(fields: &[(&str, Value)]) -> Map<String, Value> {
    let own = |(key, value): &(&str, Value)| ((*key).to_owned(), value.clone());
    rules::gather(fields.iter().map(own))
}
