//! What a tap on a half is taken for while something is open: no point, but perhaps the answer to a question.

use leptos::prelude::*;

use super::{Court, Panel};
use rules::{Shirt, Team};

impl Court {
    /// Whether something is open: then the court gives no points.
    #[must_use]
    pub fn is_shut(self) -> bool {
        self.panel() != Panel::Rally || self.shell.opened.any()
    }

    /// The same within a tap, also where it is not drawn yet.
    fn is_shut_now(self) -> bool {
        self.panel.get_untracked() != Panel::Rally
            || self.shell.opened.any_now()
            || self.session.refused().with_untracked(Option::is_some)
    }

    /// Whether a question waits for a player; asked first, because it seldom does.
    #[must_use]
    pub fn is_asking(self) -> bool {
        !self.asks.read().is_empty()
    }

    /// Whether a question waits for this player.
    #[must_use]
    pub fn is_answer(self, team: Team, shirt: Shirt) -> bool {
        let asks = self.asks.read();
        let last = asks.last();
        last.is_some_and(|(_, is_answer, _)| is_answer.run((team, shirt)))
    }

    /// Whether a question waits for a player of this team who is on court.
    #[must_use]
    pub fn asks_for(self, team: Team) -> bool {
        if !self.is_asking() {
            return false;
        }
        let state = self.session.state();
        let on_floor = state.play().or_else(|| state.ready());
        on_floor.is_some_and(|play| {
            let mut there = play.sides[team].on_court();
            there.any(|shirt| self.is_answer(team, shirt))
        })
    }

    /// A question waits for a player until its component is gone: which players are an answer, and what becomes
    /// of one.
    pub fn ask_for_player(
        self,
        is_answer: impl Fn(Team, Shirt) -> bool + Send + Sync + 'static,
        answer: impl Fn(Team, Shirt) + Send + Sync + 'static,
    ) {
        let is_answer = Callback::new(move |(team, shirt)| is_answer(team, shirt));
        let answer = Callback::new(move |(team, shirt)| answer(team, shirt));
        let id = self
            .asks
            .with_untracked(|asks| asks.last().map_or(0, |(id, ..)| id + 1));
        self.asks.update(|asks| asks.push((id, is_answer, answer)));
        on_cleanup(move || {
            // The page itself may be going.
            self.asks
                .try_update(|asks| asks.retain(|(asked, ..)| *asked != id));
        });
    }

    /// A finger comes down on a player.
    pub fn press(self, shirt: Option<Shirt>) {
        self.pressed.set_value(shirt);
    }

    /// Whether a tap on a half is none for a point because something is open. A question takes the player
    /// under the finger; else it is said why nothing has happened.
    pub fn answers(self, team: Team) -> bool {
        let pressed = self.pressed.get_value();
        self.pressed.set_value(None);
        if !self.is_shut_now() {
            return false;
        }
        if let Some(shirt) = pressed.filter(|shirt| untrack(|| self.is_answer(team, *shirt))) {
            let answer = self
                .asks
                .with_untracked(|asks| asks.last().map(|(.., answer)| *answer));
            if let Some(answer) = answer {
                self.hint.set(None);
                answer.run((team, shirt));
                return true;
            }
        }
        let asks = untrack(|| Team::BOTH.into_iter().any(|team| self.asks_for(team)));
        let words = if asks {
            text::tap_a_player()
        } else {
            text::close_first()
        };
        self.hint.set(Some((self.session.next_now(), words)));
        self.shell.news(words.to_owned());
        true
    }

    /// What a tap has not done, while that is still so.
    #[must_use]
    pub fn hint(self) -> Option<&'static str> {
        let (before, words) = self.hint.get()?;
        (self.is_shut() && before == self.session.next()).then_some(words)
    }
}
