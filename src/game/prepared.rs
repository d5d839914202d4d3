//! How the steps before a match stand, as the log says it; whoever asks brings the time.

use crate::fold::Timeline;
use crate::model::count_down::Timed;
use crate::model::entry::Timer;
use crate::model::signer::Signer;
use crate::model::stage::Phase;
use crate::model::state::{RunningTimer, Signature, State};
use crate::{Kind, Outcome};
use rules::{Moment, Step, Team, Timing, WarmUpStyle};

/// How a step stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It is done.
    Done,
    /// It is under way.
    Running,
    /// It was found wrong and not cleared.
    Failed,
    /// It is still to come.
    Open(Timing),
}

/// How a step of the plan stands at a time, so many whole minutes before the start where one is
/// planned.
#[must_use]
pub fn standing(state: &State, moment: Moment, minutes_left: Option<i64>, now: i64) -> Standing {
    let timing = || minutes_left.map_or(Timing::Ahead, |left| moment.timing(left));
    settled(state, moment.step, now).unwrap_or_else(|| Standing::Open(timing()))
}

/// What the log says of a step, if it says anything.
fn settled(state: &State, step: Step, now: i64) -> Option<Standing> {
    let begun = state.phase() != Phase::Preparation;
    let done = |yes: bool| yes.then_some(Standing::Done);
    let both = |has: &dyn Fn(Team) -> bool| Team::BOTH.into_iter().all(has);
    match step {
        Step::TeamLists => done(both(&|t| state.team(t).list.is_some())),
        Step::Toss => done(begun || state.opener_to_come().is_some()),
        Step::WarmUp => warm_up(state, now),
        Step::LineUps => done(begun || both(&|t| state.line_up_given(t).is_some())),
        Step::LastCheck => done(begun),
        _ => {
            let check = state.checks().iter().find(|c| c.item == step.code())?;
            Some(if check.ok {
                Standing::Done
            } else {
                Standing::Failed
            })
        }
    }
}

fn warm_up(state: &State, now: i64) -> Option<Standing> {
    let all = warm_ups(state);
    let over = |team: &Option<Team>| warmed_up(state, *team, now);
    let begun = |team: &Option<Team>| over(team) || warm_up_running(state, *team).is_some();
    if all.iter().all(over) {
        Some(Standing::Done)
    } else {
        all.iter().any(begun).then_some(Standing::Running)
    }
}

/// Whose warm-ups there are: one for both, or one for each team, the first server's first (7.2.3).
#[must_use]
pub fn warm_ups(state: &State) -> Vec<Option<Team>> {
    match state.rules().warm_up.style {
        WarmUpStyle::Shared => vec![None],
        WarmUpStyle::Separate => {
            let first = state.opener_to_come().unwrap_or(Team::A);
            vec![Some(first), Some(first.other())]
        }
    }
}

/// The warm-up count-down that was started for a team, or for both together.
#[must_use]
pub fn warm_up_running(state: &State, team: Option<Team>) -> Option<&RunningTimer> {
    running(state, |timer| {
        timer.what == Timed::WarmUp && timer.team == team
    })
}

/// The count-down for a team that is not there.
#[must_use]
pub fn late_team(state: &State) -> Option<&RunningTimer> {
    running(state, |timer| timer.what == Timed::LateTeam)
}

fn running(state: &State, is: impl Fn(&Timer) -> bool) -> Option<&RunningTimer> {
    state.timers().iter().find(|t| is(&t.timer))
}

/// Whether a count-down has run out.
#[must_use]
pub fn is_over(timer: &RunningTimer, now: i64) -> bool {
    let lasts = i64::from(timer.timer.seconds) * 1000;
    timer.since.is_some_and(|since| now - since >= lasts)
}

/// Whether a team (or both together) has had its warm-up: the count-down ran out or was ended.
#[must_use]
pub fn warmed_up(state: &State, team: Option<Team>, now: i64) -> bool {
    match warm_up_running(state, team) {
        Some(timer) => is_over(timer, now),
        None => state.warmed_up(team),
    }
}

/// What a list that was handed in lacks; it counts all the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListLack {
    /// Nobody is marked as team captain (4.1.2).
    Captain,
    /// Fewer can start than must be on court (7.3.1), liberos not among them (19.1.1, 7.3.2).
    Players {
        /// Who can start.
        there: usize,
        /// How many must.
        needed: usize,
    },
}

/// What the list of a team lacks, once it is in.
#[must_use]
pub fn list_lacks(state: &State, team: Team) -> Vec<ListLack> {
    let Some(list) = &state.team(team).list else {
        return Vec::new();
    };
    let mut lacks = Vec::new();
    if !list.players.iter().any(|p| p.captain) {
        lacks.push(ListLack::Captain);
    }
    let there = list.players.iter().filter(|p| !p.libero).count();
    let needed = usize::from(state.rules().players_on_court);
    if there < needed {
        lacks.push(ListLack::Players { there, needed });
    }
    lacks
}

/// A signature under a team's list (4.1.3).
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Signed {
    /// There is none.
    No,
    /// It stands under a list that was changed afterwards.
    ListChanged(Signature),
    /// It stands under the list that counts.
    Yes(Signature),
}

/// Whether a captain or a coach has signed the list of the team as it is now.
#[must_use]
pub fn signed(timeline: &Timeline, signer: Signer) -> Signed {
    let signatures = timeline.state().signatures();
    let Some(last) = signatures
        .iter()
        .rev()
        .find(|s| Signer::of_role(&s.role) == Some(signer))
    else {
        return Signed::No;
    };
    let changed = |entry: &super::Entry, outcome: &Outcome| {
        entry.n > last.entry
            && outcome.counts()
            && matches!(&entry.kind, Kind::TeamList(list) if Some(list.team) == signer.team())
    };
    if timeline
        .outcomes()
        .any(|(entry, outcome)| changed(entry, outcome))
    {
        Signed::ListChanged(last.clone())
    } else {
        Signed::Yes(last.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entry::{Check, Heading, Player, TeamList, TimerAction, Toss};
    use crate::Entry;
    use rules::{plan, ByTeam, Preset, Shirt};

    fn told(preset: Preset, kinds: Vec<Kind>) -> Timeline {
        let heading = Heading::new(ByTeam::default(), preset.rules());
        let mut entries = vec![Entry::new(1, Kind::Match(Box::new(heading)))];
        for (n, kind) in (2..).zip(kinds) {
            let at = Some(i64::from(n) * 1000);
            entries.push(Entry {
                at,
                ..Entry::new(n, kind)
            });
        }
        Timeline::of(entries)
    }

    fn at(timeline: &Timeline, step: Step, minutes: Option<i64>, now: i64) -> Standing {
        let state = timeline.state();
        let moments = plan(state.rules());
        let moment = moments.iter().find(|m| m.step == step).expect("planned");
        standing(state, *moment, minutes, now)
    }

    fn check(ok: bool) -> Kind {
        Kind::Check(Check {
            item: "net".to_owned(),
            ok,
            note: None,
        })
    }

    fn timer(what: Timed, team: Option<Team>, action: TimerAction) -> Kind {
        Kind::Timer(Timer {
            what,
            team,
            seconds: 180,
            action,
        })
    }

    fn list(numbers: &[u16]) -> Kind {
        let player = |&n: &u16| Player {
            number: Shirt(n),
            name: None,
            captain: n == numbers[0],
            libero: false,
        };
        Kind::TeamList(TeamList {
            team: Team::A,
            players: numbers.iter().map(player).collect(),
            staff: Vec::new(),
        })
    }

    fn sign(role: &str) -> Kind {
        Kind::Sign {
            role: role.to_owned(),
            name: None,
        }
    }

    #[test]
    fn a_check_is_open_then_done_or_failed() {
        let junior = Preset::SchoolJunior;
        let none = told(junior, vec![]);
        assert_eq!(at(&none, Step::Net, None, 0), Standing::Open(Timing::Ahead));
        let late = at(&none, Step::Net, Some(0), 0);
        assert_eq!(late, Standing::Open(Timing::Late));
        let failed = told(junior, vec![check(false)]);
        assert_eq!(at(&failed, Step::Net, Some(0), 0), Standing::Failed);
        let cleared = told(junior, vec![check(false), check(true)]);
        assert_eq!(at(&cleared, Step::Net, Some(0), 0), Standing::Done);
    }

    #[test]
    fn warm_ups_run_one_after_the_other_the_first_server_first() {
        let toss = Kind::Toss(Toss::new(Team::B, Team::A));
        let (a, b) = (Some(Team::A), Some(Team::B));
        let start = |team| timer(Timed::WarmUp, team, TimerAction::Start);
        let stop = |team| timer(Timed::WarmUp, team, TimerAction::Stop);
        let junior = Preset::SchoolJunior;
        let one = told(junior, vec![toss.clone(), start(b)]);
        assert_eq!(warm_ups(one.state()), [b, a]);
        assert_eq!(at(&one, Step::WarmUp, None, 10_000), Standing::Running);
        assert!(!warmed_up(one.state(), b, 182_999));
        assert!(warmed_up(one.state(), b, 183_000));
        let both = told(junior, vec![toss, start(b), stop(b), start(a), stop(a)]);
        assert_eq!(at(&both, Step::WarmUp, None, 10_000), Standing::Done);
        let shared = told(Preset::International, vec![start(None)]);
        assert_eq!(warm_ups(shared.state()), [None]);
        assert_eq!(at(&shared, Step::WarmUp, None, 183_000), Standing::Done);
    }

    #[test]
    fn the_clock_for_a_late_team_runs_until_it_is_stopped() {
        let start = timer(Timed::LateTeam, Some(Team::B), TimerAction::Start);
        let stop = timer(Timed::LateTeam, Some(Team::B), TimerAction::Stop);
        let waiting = told(Preset::SchoolJunior, vec![start.clone()]);
        let clock = late_team(waiting.state()).expect("it runs");
        assert!(!is_over(clock, 181_999) && is_over(clock, 182_000));
        let came = told(Preset::SchoolJunior, vec![start, stop]);
        assert_eq!(late_team(came.state()), None);
    }

    #[test]
    fn a_list_says_what_it_lacks() {
        let lacks = |kinds| list_lacks(told(Preset::SchoolJunior, kinds).state(), Team::A);
        assert_eq!(lacks(vec![]), []);
        assert_eq!(lacks(vec![list(&[1, 2, 3, 4, 5, 6])]), []);
        let few = ListLack::Players {
            there: 2,
            needed: 6,
        };
        assert_eq!(lacks(vec![list(&[1, 2])]), [few]);
        let Kind::TeamList(mut none) = list(&[1, 2]) else {
            unreachable!("a list");
        };
        none.players[0].captain = false;
        none.players[1].libero = true;
        let few = ListLack::Players {
            there: 1,
            needed: 6,
        };
        let senior = told(Preset::SchoolSenior, vec![Kind::TeamList(none)]);
        assert_eq!(
            list_lacks(senior.state(), Team::A),
            [ListLack::Captain, few]
        );
    }

    #[test]
    fn a_signature_stands_under_the_list_it_was_given_for() {
        let junior = Preset::SchoolJunior;
        let captain = Signer::Captain(Team::A);
        let first = list(&[1, 2, 3, 4, 5, 6]);
        let second = list(&[1, 2, 3, 4, 5, 7]);
        let none = told(junior, vec![first.clone(), sign("captain B")]);
        assert_eq!(signed(&none, captain), Signed::No);
        let given = told(junior, vec![first.clone(), sign("captain A")]);
        assert!(matches!(signed(&given, captain), Signed::Yes(s) if s.entry == 3));
        let changed = told(
            junior,
            vec![first.clone(), sign("captain A"), second.clone()],
        );
        assert!(matches!(signed(&changed, captain), Signed::ListChanged(_)));
        let again = vec![first, sign("captain A"), second, sign("captain A")];
        assert!(matches!(
            signed(&told(junior, again), captain),
            Signed::Yes(_)
        ));
    }
}
