//! How the court lies on the screen, and what is open below it.

use leptos::prelude::*;

use super::time_out::{INTERVAL, TIME_OUT};
use crate::device;
use crate::game::entry::{Timer, TimerAction};
use crate::game::{Kind, Phase, State};
use crate::rules::Team;
use crate::ui::session::{use_session, Session};
use crate::ui::shell::{use_shell, Shell};
use crate::ui::text;

const TURN: &str = "turn";
const TABLE: &str = "table";

/// What is open below the halves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Panel {
    /// The last rally and its reason.
    Rally,
    /// Who goes and who comes.
    Substitution(Team),
    /// Everything else about a team.
    More(Team),
    /// A rally that does not count.
    Replay,
}

/// The court on this screen. Copies are the same.
#[derive(Clone, Copy)]
pub struct Court {
    session: Session,
    shell: Shell,
    turned: RwSignal<bool>,
    /// What is open below the halves.
    pub panel: RwSignal<Panel>,
}

/// The court of this page.
///
/// # Panics
/// Outside of the page's components.
#[must_use]
pub fn use_court() -> Court {
    expect_context::<Court>()
}

impl Court {
    /// As it was last turned on this phone.
    #[must_use]
    pub fn begin() -> Court {
        Court {
            session: use_session(),
            shell: use_shell(),
            turned: RwSignal::new(device::setting(TURN).as_deref() == Some(TABLE)),
            panel: RwSignal::new(Panel::Rally),
        }
    }

    /// Whether it is seen from the table, which faces the stand.
    #[must_use]
    pub fn is_turned(self) -> bool {
        self.turned.get()
    }

    /// Turns it for the table, or back; kept on this phone.
    pub fn turn(self, for_table: bool) {
        // Without storage the choice lasts as long as the page.
        let _ = device::set_setting(TURN, if for_table { TABLE } else { "stand" });
        self.turned.set(for_table);
    }

    /// The team in one half of the screen.
    #[must_use]
    pub fn team_at(self, left: bool) -> Team {
        let on_left = stand_left(&self.session.state());
        if left == self.turned.get() {
            on_left.other()
        } else {
            on_left
        }
    }

    /// Whether the last entry is the change of courts.
    #[must_use]
    pub fn just_changed(self) -> bool {
        self.session
            .with_replay(|r| matches!(r.last_standing(), Some(e) if e.kind == Kind::ChangeCourts))
    }

    /// Makes an entry, and starts what follows from it. Says whether it was made.
    pub fn tell_as(self, number: u32, kind: Kind) -> bool {
        if !self.session.tell_as(number, kind.clone()) {
            return false;
        }
        self.close_panel();
        follow(self.session, &kind);
        let state = self.session.state_now();
        self.shell.news(text::score_news(&state));
        true
    }

    /// Back to the last rally.
    pub fn close_panel(self) {
        self.panel.set(Panel::Rally);
    }
}

/// Who is on the left as the first referee sees it, or will be. A tally without a toss begins with
/// team A there.
#[must_use]
pub fn stand_left(state: &State) -> Team {
    match state.play() {
        Some(play) => play.left,
        None => state
            .left_to_come()
            .or_else(|| state.left())
            .unwrap_or(Team::A),
    }
}

/// Starts the count-downs that an entry brings with it: a time-out's, and the interval's where the
/// entry has ended a set (Official Volleyball Rules 2025-2028, 15.4.1 and 18.1).
pub fn follow(session: Session, kind: &Kind) {
    let state = session.state_now();
    if let Kind::TimeOut { team } = kind {
        let seconds = state.rules().time_outs.seconds;
        start(session, TIME_OUT, Some(*team), seconds);
    }
    let resting = state.timers().iter().any(|t| t.timer.what == INTERVAL);
    let over = matches!(state.phase(), Phase::BetweenSets) && state.ready().is_none();
    if over && !resting && can_end_a_set(kind) {
        start_interval(session);
    }
}

/// Whether an entry can give a point.
const fn can_end_a_set(kind: &Kind) -> bool {
    matches!(
        kind,
        Kind::Rally { .. }
            | Kind::Delay { .. }
            | Kind::Misconduct { .. }
            | Kind::LateFault(_)
            | Kind::Incomplete { .. }
    )
}

/// Starts the pause between sets.
pub fn start_interval(session: Session) {
    let seconds = session.state_now().rules().interval_seconds;
    start(session, INTERVAL, None, seconds);
}

fn start(session: Session, what: &str, team: Option<Team>, seconds: u16) {
    session.tell(Kind::Timer(Timer {
        what: what.into(),
        team,
        seconds: u32::from(seconds),
        action: TimerAction::Start,
    }));
}
