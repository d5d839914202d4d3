//! The sets of a sheet, written entry by entry.

use super::{Named, PointMark, Replacement, Requested, Round, SetSheet, Substitution};
use game::entry::{Change, Court};
use game::{Kind, SetPlay, SetRecord, Side, State};
use rules::{Score, Team};

/// What was written so far, the sets in their order.
#[derive(Default)]
pub(super) struct Writer {
    pub sets: Vec<SetSheet>,
}

impl Writer {
    pub fn see(&mut self, before: &State, kind: &Kind, at: Option<i64>, after: &State) {
        let floor = before.play().or_else(|| before.ready());
        let score = floor.map_or_else(Score::default, |p| p.score);
        let number = floor.map_or_else(|| before.set_at_hand(), |p| p.number);
        match kind {
            Kind::BeginSet => {
                let number = before.set_at_hand();
                // Of a set that was taken over the first service was seen by nobody here.
                if self.set(number).taken_over.is_none() {
                    self.set(number).began = at;
                }
                self.set(number).won_toss = before.toss_to_come().and_then(|t| t.chosen());
                // A penalty between the sets can end the opener's turn before it began.
                if let (Some(opener), Some(play)) =
                    (before.opener_to_come(), play_of(after, number))
                {
                    if play.serving != Some(opener) {
                        let server = play.sides[opener].on_court().next();
                        let total = play.score[opener];
                        self.set(number).rounds[opener].push(Round { server, total });
                    }
                }
            }
            Kind::Joined(joined) => {
                if let Some(score) = joined.score {
                    let number = after.set_number();
                    self.set(number).taken_over = Some((at, score));
                }
            }
            Kind::Discrepancy {
                team,
                changes,
                kept: true,
            } => {
                self.substituted(number, *team, changes, score, None);
            }
            Kind::TimeOut { team } => {
                self.set(number)
                    .time_outs
                    .push(Requested { team: *team, score });
            }
            Kind::Substitution { team, changes, .. } => {
                let side = after.shown().map(|play| &play.sides[*team]);
                self.substituted(number, *team, changes, score, side);
            }
            Kind::LiberoReplacement { team, change } => {
                self.set(number).liberos.push(Replacement {
                    team: *team,
                    change: *change,
                    score,
                });
            }
            Kind::GameCaptain { team, number: who } => {
                self.set(number).game_captains.push(Named {
                    team: *team,
                    number: *who,
                    score,
                });
            }
            Kind::ChangeCourts => self.set(number).courts_changed = Some(score),
            Kind::Resume {
                court: Court::Other,
            } => {
                // The interrupted set is cancelled and played again (17.3.2.2).
                self.sets.retain(|s| s.number < number);
            }
            _ => {}
        }
        self.service(before, after);
        if let Some(set) = after.sets().last() {
            if before.sets().count() < after.sets().count() {
                self.set(set.number).ended = at;
            }
        }
    }

    /// Writes the total of a team that has just lost the service.
    fn service(&mut self, before: &State, after: &State) {
        let Some(was) = before.play() else { return };
        let Some(is) = play_of(after, was.number) else {
            return;
        };
        let (Some(lost), Some(has)) = (was.serving, is.serving) else {
            return;
        };
        if lost != has {
            let round = Round {
                server: was.server(),
                total: is.score[lost],
            };
            self.set(was.number).rounds[lost].push(round);
        }
    }

    fn substituted(
        &mut self,
        number: u8,
        team: Team,
        changes: &[Change],
        score: Score,
        after: Option<&Side>,
    ) {
        let one = |&change: &Change| Substitution {
            team,
            change,
            score,
            exceptional: after.is_some_and(|side| side.came_exceptionally(change.into)),
        };
        let made = changes.iter().map(one);
        self.set(number).substitutions.extend(made);
    }

    fn set(&mut self, number: u8) -> &mut SetSheet {
        let place = match self.sets.iter().position(|s| s.number == number) {
            Some(place) => place,
            None => {
                self.sets.push(SetSheet {
                    number,
                    ..SetSheet::default()
                });
                self.sets.len() - 1
            }
        };
        &mut self.sets[place]
    }
}

/// The set of that number, being played or over.
fn play_of(state: &State, number: u8) -> Option<&SetPlay> {
    state.play().filter(|p| p.number == number).or_else(|| {
        state
            .sets()
            .find(|s| s.number == number)
            .and_then(|s| s.play.as_ref())
    })
}

/// Adds what only the end knows: the last service totals, the running score, the result.
pub(super) fn finish(mut sets: Vec<SetSheet>, state: &State) -> Vec<SetSheet> {
    for record in state
        .sets()
        .filter(|r| !sets_have(&sets, r.number))
        .collect::<Vec<_>>()
    {
        sets.push(SetSheet {
            number: record.number,
            ..SetSheet::default()
        });
    }
    // A set that is not over and not being played was wiped by a default.
    sets.retain(|s| {
        state.sets().any(|r| r.number == s.number)
            || state
                .play()
                .or_else(|| state.ready())
                .is_some_and(|p| p.number == s.number)
    });
    rules::sort_by_key(&mut sets, |s| s.number);
    for set in &mut sets {
        let record = state.sets().find(|r| r.number == set.number);
        if let Some(play) = play_of(state, set.number).or_else(|| state.ready()) {
            if play.number == set.number {
                fill(set, play, record);
            }
        }
        if let Some(record) = record {
            set.score = record.score;
            set.won = Some((record.winner, record.how));
        }
    }
    sets
}

fn sets_have(sets: &[SetSheet], number: u8) -> bool {
    sets.iter().any(|s| s.number == number)
}

fn fill(set: &mut SetSheet, play: &SetPlay, record: Option<&SetRecord>) {
    set.line_ups = play.sides.map(|_, side| side.line_up());
    set.first_service = play.opener;
    set.left = Some(if play.changed_courts {
        play.left.other()
    } else {
        play.left
    });
    set.score = play.score;
    let mut totals = play.base;
    set.running = play
        .points
        .iter()
        .map(|p| {
            if p.cancelled_by.is_none() {
                totals = totals.plus(p.to);
            }
            PointMark {
                entry: p.entry,
                team: p.to,
                given_for: p.why,
                total: p.cancelled_by.is_none().then_some(totals[p.to]),
                cancelled_by: p.cancelled_by,
            }
        })
        .collect();
    // The last total of whoever has the service when the set is over; a set won on the opponent's
    // service gives the winner one more number, without a server.
    if let (Some(record), Some(last)) = (record, play.serving) {
        let on_own_service = play.points.last().is_none_or(|p| p.served == Some(last));
        let server = if on_own_service { play.server() } else { None };
        set.rounds[last].push(Round {
            server,
            total: record.score[last],
        });
    }
}
