//! The fields of a new match, and how what was typed becomes a heading.

mod codes;

use leptos::prelude::*;

use app::field::Field;
use app::machine::LocalTime;
use codes::{
    edition, edition_code, policy, policy_code, sets, style, style_code, under_net, under_net_code,
};
use device::{local_time, ms_of};
use game::entry::{Detail, Details, Heading};
use game::{Refusal, State};
use rules::{
    is_tomorrow, ByTeam, Decider, Preset, Roster, Rules, SetLimit, SetTarget, Sets, Substitutions,
    TimeOuts, WarmUp,
};
use text::day_of;
use text::setup as words;

pub use codes::sets_code;

/// The fields that are details of the heading as they stand.
const DETAILS: [(Field, Detail); 5] = [
    (Field::Competition, Detail::Competition),
    (Field::Division, Detail::Division),
    (Field::Hall, Detail::Venue),
    (Field::Court, Detail::Court),
    (Field::MatchNumber, Detail::MatchNo),
];

/// A field that cannot be used as it stands, and one sentence about it.
pub type Wrong = (Field, String);

/// What was typed, as text, whatever it is.
#[derive(Clone, Copy)]
pub struct Fields {
    values: StoredValue<Vec<RwSignal<String>>>,
}

impl Fields {
    /// All empty.
    pub fn new() -> Fields {
        Fields {
            values: StoredValue::new(Field::ALL.map(|_| RwSignal::new(String::new())).to_vec()),
        }
    }

    /// What stands in a field.
    pub fn at(self, field: Field) -> RwSignal<String> {
        self.values.with_value(|v| v[field as usize])
    }

    fn get(self, field: Field) -> String {
        self.at(field).get()
    }

    #[allow(clippy::needless_pass_by_value)] // Numbers and texts are both given as they are.
    fn set(self, field: Field, value: impl ToString) {
        self.at(field).set(value.to_string());
    }

    /// Puts the values of some rules into the fields.
    pub fn take_rules(self, rules: &Rules) {
        let some = |n: Option<u16>| n.map(|n| n.to_string()).unwrap_or_default();
        self.set(Field::Preset, rules.preset.code());
        self.set(Field::Edition, edition_code(rules.edition));
        self.set(Field::Sets, sets_code(rules.sets));
        self.set(Field::Target, rules.set.target);
        self.set(Field::Lead, rules.set.lead);
        self.set(Field::Cap, some(rules.set.cap));
        self.set(Field::SetCourts, some(rules.set_change_courts_at));
        let (minutes, rallies) = match rules.set_limit {
            None => (None, None),
            Some(SetLimit::Minutes(n)) => (Some(u16::from(n)), None),
            Some(SetLimit::Rallies(n)) => (None, Some(n)),
        };
        self.set(Field::SetMinutes, some(minutes));
        self.set(Field::SetRallies, some(rallies));
        self.set(Field::DeciderTarget, rules.decider.to.target);
        self.set(Field::DeciderLead, rules.decider.to.lead);
        self.set(Field::DeciderCap, some(rules.decider.to.cap));
        self.set(Field::ChangeCourts, some(rules.decider.change_courts_at));
        self.set(
            Field::TimeOuts,
            some(rules.time_outs.per_set.map(u16::from)),
        );
        self.set(
            Field::TimeOutsInMatch,
            some(rules.time_outs.per_match.map(u16::from)),
        );
        self.set(Field::TimeOutSeconds, rules.time_outs.seconds);
        self.set(Field::Policy, policy_code(rules.substitutions.policy));
        self.set(
            Field::Substitutions,
            some(rules.substitutions.per_set.map(u16::from)),
        );
        self.set(
            Field::Entries,
            some(rules.substitutions.entries_per_player.map(u16::from)),
        );
        self.set(Field::Liberos, rules.liberos);
        self.set(
            Field::OnCourt,
            if rules.line_ups {
                rules.players_on_court
            } else {
                0
            },
        );
        self.set(Field::ListMost, rules.roster.max);
        self.set(Field::LowestNumber, rules.roster.min_number);
        self.set(Field::HighestNumber, rules.roster.max_number);
        self.set(Field::WarmUp, style_code(rules.warm_up.style));
        self.set(Field::WarmUpMinutes, rules.warm_up.minutes);
        self.set(Field::Interval, rules.interval_seconds);
        self.set(Field::SecondInterval, some(rules.second_interval_seconds));
        self.set(Field::ServiceSeconds, rules.service_seconds);
        self.set(Field::UnderNet, under_net_code(rules.under_net));
    }

    /// Puts a heading into the fields.
    pub fn take_heading(self, heading: &Heading) {
        self.take_rules(&heading.rules);
        self.set(Field::NameA, &heading.names.a);
        self.set(Field::NameB, &heading.names.b);
        for (field, detail) in DETAILS {
            let known = heading.details[detail].as_deref();
            self.set(field, known.unwrap_or_default());
        }
        let scheduled = heading.details[Detail::Scheduled].as_deref();
        if let Some((day, time)) = scheduled.and_then(|s| s.split_once('T')) {
            self.set(Field::Day, day);
            self.set(Field::Time, time);
        }
    }

    /// The same as lines of text, for a draft.
    pub fn written(self) -> String {
        Field::ALL
            .map(|f| self.at(f).get_untracked().replace('\n', " "))
            .join("\n")
    }

    /// Fills the fields from such lines.
    pub fn take_written(self, lines: &str) {
        for (field, line) in Field::ALL.into_iter().zip(lines.split('\n')) {
            self.set(field, line);
        }
    }

    /// What is wrong with the number in a field.
    pub fn trouble(self, field: Field) -> Option<String> {
        self.number(field).err().map(|(_, say)| say)
    }

    /// The change of courts follows the target of the deciding set, from the last one that was a number, until
    /// somebody has written another score for it. Gives the target that holds now.
    pub fn halve(self, last: Option<u16>) -> Option<u16> {
        let Ok(Some(target)) = self.number(Field::DeciderTarget) else {
            return last;
        };
        let at = untrack(|| self.number(Field::ChangeCourts).ok().flatten());
        if last.is_some_and(|last| at == Some(Decider::half_of(last))) {
            self.set(Field::ChangeCourts, Decider::half_of(target));
        }
        Some(target)
    }

    fn number(self, field: Field) -> Result<Option<u16>, Wrong> {
        let Some((lowest, highest, may_be_empty)) = field.range() else {
            return Ok(None);
        };
        let typed = self.get(field);
        let typed = typed.trim();
        if typed.is_empty() && may_be_empty {
            return Ok(None);
        }
        match typed.parse() {
            Ok(n) if (lowest..=highest).contains(&n) => Ok(Some(n)),
            _ => Err((field, words::number_wanted(lowest, highest, may_be_empty))),
        }
    }

    fn given(self, field: Field) -> Result<u16, Wrong> {
        // Only asked of fields that may not be empty.
        Ok(self.number(field)?.unwrap_or_default())
    }

    fn small(self, field: Field) -> Result<Option<u8>, Wrong> {
        Ok(self.number(field)?.and_then(|n| u8::try_from(n).ok()))
    }

    /// The rules as they stand in the fields.
    ///
    /// # Errors
    /// The first field that cannot be used.
    pub fn rules(self) -> Result<Rules, Wrong> {
        let preset = Preset::from_code(&self.get(Field::Preset)).unwrap_or(Preset::SchoolJunior);
        let on_court: u8 = self.get(Field::OnCourt).parse().unwrap_or(6);
        let set_limit = match (
            self.small(Field::SetMinutes)?,
            self.number(Field::SetRallies)?,
        ) {
            (None, None) => None,
            (Some(minutes), None) => Some(SetLimit::Minutes(minutes)),
            (None, Some(rallies)) => Some(SetLimit::Rallies(rallies)),
            (Some(_), Some(_)) => return Err((Field::SetRallies, words::one_limit().to_owned())),
        };
        let rules = Rules {
            preset,
            edition: edition(&self.get(Field::Edition)),
            sets: sets(&self.get(Field::Sets)).unwrap_or(preset.rules().sets),
            set: SetTarget {
                target: self.given(Field::Target)?,
                lead: self.given(Field::Lead)?,
                cap: self.number(Field::Cap)?,
            },
            set_change_courts_at: self.number(Field::SetCourts)?,
            set_limit,
            decider: Decider {
                to: SetTarget {
                    target: self.given(Field::DeciderTarget)?,
                    lead: self.given(Field::DeciderLead)?,
                    cap: self.number(Field::DeciderCap)?,
                },
                change_courts_at: self.number(Field::ChangeCourts)?,
            },
            time_outs: TimeOuts {
                per_set: self.small(Field::TimeOuts)?,
                per_match: self.small(Field::TimeOutsInMatch)?,
                seconds: self.given(Field::TimeOutSeconds)?,
            },
            substitutions: Substitutions {
                policy: policy(&self.get(Field::Policy)),
                per_set: self.small(Field::Substitutions)?,
                entries_per_player: self.small(Field::Entries)?,
            },
            liberos: self.get(Field::Liberos).parse().unwrap_or(0),
            line_ups: on_court > 0,
            players_on_court: if on_court > 0 {
                on_court
            } else {
                preset.rules().players_on_court
            },
            roster: Roster {
                max: self.small(Field::ListMost)?.unwrap_or_default(),
                min_number: self.given(Field::LowestNumber)?,
                max_number: self.given(Field::HighestNumber)?,
            },
            warm_up: WarmUp {
                style: style(&self.get(Field::WarmUp)),
                minutes: self.small(Field::WarmUpMinutes)?.unwrap_or_default(),
            },
            interval_seconds: self.given(Field::Interval)?,
            second_interval_seconds: self.number(Field::SecondInterval)?,
            service_seconds: self.given(Field::ServiceSeconds)?,
            under_net: under_net(&self.get(Field::UnderNet)),
        };
        match rules.check() {
            Ok(()) => Ok(rules),
            Err(why) => {
                use rules::Invalid as I;
                let field = match why {
                    I::Sets => Field::Sets,
                    I::Target if rules.set.cap.is_some_and(|c| c < rules.set.target) => Field::Cap,
                    I::Target => Field::DeciderCap,
                    I::PlayersOnCourt => Field::OnCourt,
                    I::Liberos => Field::Liberos,
                    I::Roster if rules.roster.max < rules.players_on_court => Field::ListMost,
                    I::SetLimit => Field::SetMinutes,
                    I::Roster => Field::HighestNumber,
                };
                Err((
                    field,
                    text::refusal(&Refusal::BadRules(why), (&State::new()).into()),
                ))
            }
        }
    }

    /// When the match starts, where a time is given without a day: whether tomorrow, and on which day.
    pub fn day_meant(self, now: i64) -> Option<(bool, String)> {
        let time = self.get(Field::Time);
        if !self.get(Field::Day).is_empty() || time.is_empty() {
            return None;
        }
        let today = local_time(now);
        let tomorrow = is_tomorrow(
            scheduled_ms(&format!("{}T{time}", day_of(local_time(now))))?,
            now,
        );
        let day = LocalTime {
            day: today.day + u32::from(tomorrow),
            hour: 12,
            ..today
        };
        Some((tomorrow, day_of(local_time(ms_of(day)))))
    }

    /// The heading of the match.
    ///
    /// # Errors
    /// The first field that cannot be used.
    pub fn heading(self, now: i64) -> Result<Heading, Wrong> {
        let words = |field| {
            let typed = self.get(field);
            let typed = typed.trim();
            (!typed.is_empty()).then(|| typed.to_owned())
        };
        let mut details = Details::default();
        for (field, detail) in DETAILS {
            details[detail] = words(field);
        }
        let day = words(Field::Day).or_else(|| self.day_meant(now).map(|(_, day)| day));
        details[Detail::Scheduled] = words(Field::Time).map(|time| match day {
            Some(day) => format!("{day}T{time}"),
            None => time,
        });
        Ok(Heading {
            details,
            names: ByTeam {
                a: words(Field::NameA).unwrap_or_default(),
                b: words(Field::NameB).unwrap_or_default(),
            },
            rules: self.rules()?,
            practice: false,
        })
    }
}

/// The scheduled start as milliseconds, where it was written as this app writes it.
pub fn scheduled_ms(scheduled: &str) -> Option<i64> {
    let (day, time) = scheduled.split_once('T')?;
    let mut day = day.splitn(3, '-');
    let mut time = time.split(':');
    let number = |part: Option<&str>| part?.parse::<u32>().ok();
    let year = number(day.next())?;
    let month = number(day.next()).filter(|m| (1..=12).contains(m))?;
    let date = number(day.next()).filter(|d| (1..=31).contains(d))?;
    let hour = number(time.next()).filter(|h| *h < 24)?;
    let minute = number(time.next()).filter(|m| *m < 60)?;
    Some(ms_of(LocalTime {
        year: i32::try_from(year).ok()?,
        month,
        day: date,
        hour,
        minute,
        second: 0,
    }))
}

/// The formats on offer: everything the rules can be, the usual ones first.
pub fn all_sets() -> impl Iterator<Item = Sets> {
    let best_of = [3, 5, 1, 7, 9].map(Sets::BestOf);
    // One fixed set alone is the same as best of one.
    best_of.into_iter().chain((2..=9).map(Sets::Fixed))
}
