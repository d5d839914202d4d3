//! Checking a paper sheet: the rally order first, then every other box against it.

use super::finding::{Fault, Finding, InAll};
use super::rebuild::Table;
use super::rounds::{self, Order};
use super::{PaperResult, PaperSet, PaperSheet};
use crate::plausible;
use record::Log;
use rules::{ByTeam, Score, Sets, Team};

/// A paper sheet, checked.
#[derive(Clone, Debug)]
pub struct Checked {
    /// The winners of the points of each set in their order, as far as the rounds leave no doubt.
    pub rallies: Vec<Vec<Team>>,
    /// Every box that does not agree.
    pub findings: Vec<Finding>,
    /// The match as a record, up to where it can be rebuilt.
    pub log: Log,
    /// Whether that is all of it.
    pub whole: bool,
}

/// Checks every box of a sheet.
#[must_use]
pub fn check(sheet: &PaperSheet) -> Checked {
    let orders: Vec<Order> = sheet
        .sets
        .iter()
        .map(|set| rounds::order(set.first_service, &set.rounds))
        .collect();
    let mut table = Table::open(sheet);
    for (i, (set, order)) in sheet.sets.iter().zip(&orders).enumerate() {
        let number = u8::try_from(i + 1).unwrap_or(u8::MAX);
        table.findings.extend(boxes(number, set, order));
        table.set(number, set, order);
        let last = i.checked_sub(1).map(|i| &sheet.sets[i]);
        table.findings.extend(times(number, set, last));
    }
    table.findings.extend(result(sheet));
    let (findings, log, whole) = table.close();
    Checked {
        rallies: orders.into_iter().map(|o| o.letters).collect(),
        findings,
        log,
        whole,
    }
}

/// Rounds and final points.
fn boxes(number: u8, set: &PaperSet, order: &Order) -> Vec<Finding> {
    let finding = |place: String, fault: Fault| Finding {
        set: Some(number),
        place,
        fault,
    };
    let mut findings: Vec<Finding> = order
        .faults
        .iter()
        .map(|(team, i, fault)| finding(format!("rounds.{team}[{i}]"), fault.clone()))
        .collect();
    if set.rounds.iter().all(|(_, r)| r.is_empty()) {
        findings.push(finding("rounds".to_owned(), Fault::Missing));
    }
    let Some(points) = set.points else {
        findings.push(finding("final".to_owned(), Fault::Missing));
        return findings;
    };
    let totals = last_totals(set);
    for team in Team::BOTH {
        if points[team] != totals[team] {
            let fault = Fault::FinalMismatch {
                team,
                written: points[team],
                rounds: totals[team],
            };
            findings.push(finding(format!("final.{team}"), fault));
        }
    }
    findings
}

/// A team that has lost the service wins no point before it has it again, so its last total is its final
/// one.
fn last_totals(set: &PaperSet) -> Score {
    set.rounds.map(|_, r| r.last().copied().unwrap_or(0))
}

/// Who has won a set as it stands on the sheet, whether or not it was over.
pub(super) fn leader(set: &PaperSet) -> Option<Team> {
    set.points.unwrap_or_else(|| last_totals(set)).leader()
}

fn times(number: u8, set: &PaperSet, last: Option<&PaperSet>) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut add = |place: &str, fault: Fault| {
        findings.push(Finding {
            set: Some(number),
            place: place.to_owned(),
            fault,
        });
    };
    for (place, time) in [("start", set.start), ("end", set.end)] {
        if time.is_none() {
            add(place, Fault::Missing);
        }
    }
    if let (Some(start), Some(last_end)) = (set.start, last.and_then(|s| s.end)) {
        if last_end.until(start) < 0 {
            add("start", Fault::TimesOverlap { start, last_end });
        }
    }
    if let (Some(start), Some(end)) = (set.start, set.end) {
        let minutes = start.until(end);
        let totals = last_totals(set);
        let points = u32::from(totals.a) + u32::from(totals.b);
        if minutes < 0 {
            add("end", Fault::TimeBackwards { start, end });
        } else if !plausible::set_minutes(points).contains(&minutes) {
            add("end", Fault::ImplausibleTime { minutes, points });
        }
    }
    if let (Some(written), Some(by_clock)) = (set.minutes.map(i64::from), by_clock(set)) {
        // A clock without seconds is a minute out at most.
        if by_clock >= 0 && by_clock.abs_diff(written) > 1 {
            add("minutes", Fault::WrongMinutes { written, by_clock });
        }
    }
    findings
}

/// Minutes from the beginning of a set to its end.
fn by_clock(set: &PaperSet) -> Option<i64> {
    Some(set.start?.until(set.end?))
}

/// The result against the sets as they stand on the sheet.
fn result(sheet: &PaperSheet) -> Vec<Finding> {
    let add = |place: String, fault: Fault| Finding {
        set: None,
        place,
        fault,
    };
    let won = ByTeam::new(|team| {
        let sets = sheet.sets.iter().filter(|s| leader(s) == Some(team));
        u8::try_from(sets.count()).unwrap_or(u8::MAX)
    });
    let mut findings = Vec::new();
    let decided = match sheet.rules.sets {
        Sets::BestOf(n) => won.a.max(won.b) > n / 2,
        Sets::Fixed(n) => sheet.sets.len() >= usize::from(n),
    };
    if !decided {
        findings.push(add("sets".to_owned(), Fault::MatchNotFinished));
    }
    let Some(result) = sheet.result else {
        findings.push(add("result".to_owned(), Fault::Missing));
        return findings;
    };
    for team in Team::BOTH {
        if result.sets[team] != won[team] {
            let fault = Fault::WrongSetCount {
                team,
                counted: won[team],
            };
            findings.push(add(format!("result.sets.{team}"), fault));
        }
    }
    let counted = match won.a.cmp(&won.b) {
        std::cmp::Ordering::Greater => Some(Team::A),
        std::cmp::Ordering::Less => Some(Team::B),
        std::cmp::Ordering::Equal => None,
    };
    if result.winner != counted {
        findings.push(add(
            "result.winner".to_owned(),
            Fault::WrongWinner { counted },
        ));
    }
    let totals = totals(sheet, &result).into_iter();
    findings.extend(totals.map(|(place, fault)| add(place, fault)));
    findings
}

/// The totals of the result against what the sets add up to.
fn totals(sheet: &PaperSheet, result: &PaperResult) -> Vec<(String, Fault)> {
    let mut faults = Vec::new();
    let sum = |each: &dyn Fn(&PaperSet) -> usize| {
        u16::try_from(sheet.sets.iter().map(each).sum::<usize>()).unwrap_or(u16::MAX)
    };
    for team in Team::BOTH {
        let by_rounds = sum(&|s| usize::from(last_totals(s)[team]));
        let by_points = sum(&|s| usize::from(s.points.unwrap_or_else(|| last_totals(s))[team]));
        // A wrong box of a set is one finding, and not one of the total as well.
        let points = match result.points {
            Some(written) if written[team] == by_points => by_points,
            _ => by_rounds,
        };
        let time_outs = sum(&|s| s.time_outs.iter().filter(|t| t.team == team).count());
        let changes = sum(&|s| s.substitutions.iter().filter(|t| t.team == team).count());
        for (key, of, written, counted) in [
            ("points", InAll::Points, result.points, points),
            ("time_outs", InAll::TimeOuts, result.time_outs, time_outs),
            (
                "substitutions",
                InAll::Substitutions,
                result.substitutions,
                changes,
            ),
        ] {
            if let Some(written) = written.map(|w| w[team]).filter(|w| *w != counted) {
                let fault = Fault::WrongInAll {
                    of,
                    team,
                    written,
                    counted,
                };
                faults.push((format!("result.{key}.{team}"), fault));
            }
        }
    }
    if let Some(written) = result.minutes.map(i64::from) {
        faults.extend(match_minutes(sheet, written));
    }
    faults
}

/// Some add up the minutes of the sets, some take the clock from the first service to the last point
/// (score-sheet practice knows both): either will do, and each set may be a minute out.
fn match_minutes(sheet: &PaperSheet, written: i64) -> Option<(String, Fault)> {
    let sum = |of_set: &dyn Fn(&PaperSet) -> Option<i64>| -> Option<i64> {
        sheet.sets.iter().map(of_set).sum()
    };
    let by_boxes = sum(&|s| s.minutes.map(i64::from).or_else(|| by_clock(s)));
    let by_clocks = sum(&|s| by_clock(s));
    let start = sheet.sets.first().and_then(|s| s.start);
    let end = sheet.sets.last().and_then(|s| s.end);
    let whole = start.zip(end).map(|(start, end)| start.until(end));
    let ways = [by_clocks, by_boxes, whole];
    let sets = u64::try_from(sheet.sets.len()).unwrap_or(0);
    let fits = ways.iter().flatten().any(|n| n.abs_diff(written) <= sets);
    let by_clock = by_clocks.or(by_boxes).filter(|_| !fits)?;
    let fault = Fault::WrongMinutes { written, by_clock };
    Some(("result.minutes".to_owned(), fault))
}
