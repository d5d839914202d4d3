//! How the court lies on the screen, and what is open below it.

mod quick;
mod tap;

use leptos::prelude::*;

use super::replay::Which;
use crate::session::{use_session, Session};
use crate::shell::{use_shell, Shell};
use app::delaying::Delaying;
use app::setting::Setting;
use device::Focus;
use game::entry::By;
use game::{interval, Kind, State};
use rules::{Shirt, Team};

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
    /// Somebody is hurt; which rally was stopped for it, and whose player, as far as known.
    Hurt {
        /// The rally whose replay is still to be entered.
        replay: Option<Which>,
        /// Whose player.
        team: Option<Team>,
    },
    /// What becomes of whoever is hurt; none for somebody who is no player.
    Care(Option<By>),
    /// A request that could not be granted, or a delay.
    Delay {
        /// Whose.
        team: Team,
        /// What.
        what: Delaying,
    },
    /// Misconduct.
    Conduct(Team),
    /// A fault found late.
    Late(Team),
    /// A new libero.
    NewLibero(Team),
    /// A team is incomplete, or does not play.
    Short(Team),
    /// Who speaks for the team.
    GameCaptain(Team),
    /// A protest.
    Protest(Team),
    /// The score was miscounted.
    Correct,
    /// The officials gave wrong information.
    WrongInformation,
    /// Play is interrupted for longer.
    Suspend,
}

/// What a question asks about a player, or does with one.
type Asks<T> = Callback<(Team, Shirt), T>;

/// A question for a player: its number, whether a player is an answer, and who takes the answer.
type Asked = (u32, Asks<bool>, Asks<()>);

/// The court on this screen. Copies are the same.
#[derive(Clone, Copy)]
pub struct Court {
    session: Session,
    shell: Shell,
    turned: RwSignal<bool>,
    glance: RwSignal<bool>,
    service_clock: RwSignal<bool>,
    /// What had the keys before a panel was opened.
    opener: StoredValue<Focus, LocalStorage>,
    panel: RwSignal<Panel>,
    /// Fires when the open panel goes on to its next question.
    question: Trigger,
    /// Who wants to know a player, the last one first to be answered.
    asks: RwSignal<Vec<Asked>>,
    /// What a tap on the court has not done, and before which entry.
    hint: RwSignal<Option<(u32, &'static str)>>,
    /// The player under the finger.
    pressed: StoredValue<Option<Shirt>>,
    /// The last point and when it was tapped.
    tapped: StoredValue<Option<(u32, f64)>>,
    /// Behind which entry of which match taps that were held back are asked about.
    held: RwSignal<Option<(String, u32)>>,
    /// Whether taps count at once however quick they are, where this page was told; without storage that
    /// lasts as long as the page.
    quick: RwSignal<Option<bool>>,
    /// Whether the screen is locked against pockets.
    pub locked: RwSignal<bool>,
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
            turned: RwSignal::new(
                device::settings().get(Setting::CourtTurned).as_deref() == Some(TABLE),
            ),
            glance: RwSignal::new(device::settings().is_on(Setting::CourtAlone)),
            service_clock: RwSignal::new(device::settings().is_on(Setting::ServiceClock)),
            opener: StoredValue::new_local(Focus::default()),
            panel: RwSignal::new(Panel::Rally),
            question: Trigger::new(),
            asks: RwSignal::new(Vec::new()),
            hint: RwSignal::new(None),
            pressed: StoredValue::new(None),
            tapped: StoredValue::new(None),
            held: RwSignal::new(device::settings().get(Setting::HeldPoint).and_then(|held| {
                let (id, since) = held.rsplit_once(' ')?;
                Some((id.to_owned(), since.parse().ok()?))
            })),
            quick: RwSignal::new(None),
            locked: use_shell().locked,
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
        device::settings().set(
            Setting::CourtTurned,
            if for_table { TABLE } else { "stand" },
        );
        self.turned.set(for_table);
    }

    /// What is open below the halves.
    #[must_use]
    pub fn panel(self) -> Panel {
        self.panel.get()
    }

    /// Whether only the court shows: score, server and what is due. Whatever is opened shows the rest.
    #[must_use]
    pub fn is_glance(self) -> bool {
        self.wants_glance() && self.panel() == Panel::Rally
    }

    /// Whether that is all somebody wants to see while nothing is open.
    #[must_use]
    pub fn wants_glance(self) -> bool {
        self.glance.get()
    }

    /// Shows only the court, or everything; kept on this phone.
    pub fn set_glance(self, only_court: bool) {
        device::settings().switch(Setting::CourtAlone, only_court);
        self.glance.set(only_court);
    }

    /// Whether the time for the service is counted; off unless somebody wants it.
    #[must_use]
    pub fn has_service_clock(self) -> bool {
        self.service_clock.get()
    }

    /// Counts the time for the service, or not; kept on this phone.
    pub fn set_service_clock(self, wanted: bool) {
        device::settings().switch(Setting::ServiceClock, wanted);
        self.service_clock.set(wanted);
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

    /// How a score is written here: as the halves are drawn while they are, with letters otherwise.
    #[must_use]
    pub fn score_order(self) -> text::ScoreOrder {
        if self.session.state().play().is_some() {
            text::ScoreOrder::Screen {
                left: self.team_at(true),
            }
        } else {
            text::ScoreOrder::Marked
        }
    }

    /// Whether the last entry is the change of courts.
    #[must_use]
    pub fn just_changed(self) -> bool {
        self.session
            .with_timeline(|r| matches!(r.last_standing(), Some(e) if e.kind == Kind::ChangeCourts))
    }

    /// Makes an entry. Says whether it was made.
    pub fn submit(self, kind: Kind) -> bool {
        self.submit_at(self.session.next_now(), kind)
    }

    /// The same for a tap that knows which entry it makes.
    pub fn submit_at(self, number: u32, kind: Kind) -> bool {
        if !self.session.submit_at(number, kind) {
            return false;
        }
        self.close_panel();
        self.tell_score();
        true
    }

    /// Tells those who do not see it how it stands now.
    pub fn tell_score(self) {
        let state = self.session.state_now();
        self.shell.news(text::score_news(&state));
    }

    /// Opens a panel. The keys go back to where they were once the last one is closed.
    pub fn open(self, panel: Panel) {
        if self.panel.get_untracked() == Panel::Rally {
            self.opener.set_value(Focus::here());
        }
        self.show(panel);
    }

    /// The open panel goes on to its next question, which is read from its beginning.
    pub fn next_question(self) {
        self.question.notify();
    }

    /// Follows the questions of the open panel.
    pub fn follow_questions(self) {
        self.question.track();
    }

    /// Gives the keys back after the last panel.
    pub fn give_keys_back(self) {
        let opener = self.opener.get_value();
        request_animation_frame(move || opener.back());
    }

    /// Back to the last rally.
    pub fn close_panel(self) {
        self.show(Panel::Rally);
    }

    /// Every tap on a half closes what is open, and mostly nothing is: then nobody hears of it.
    fn show(self, panel: Panel) {
        if self.panel.get_untracked() != panel {
            Focus::let_go();
            // What a tap has not done was said of what was open then.
            self.hint.set(None);
            self.panel.set(panel);
        }
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
            .or_else(|| state.shown().map(|play| play.left))
            .unwrap_or(Team::A),
    }
}

/// Starts the pause between sets.
pub fn start_interval(session: Session) {
    session.submit(Kind::Timer(interval(&session.state_now())));
}
