//! A new libero: why, who plays libero no more, who does from now on. Only what the core allows is
//! offered.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::picker::{asked, buttons, fixed, Choice, Layout};
use game::entry::LiberoWhy;
use game::Kind;
use rules::{Shirt, Team};

const WHYS: [LiberoWhy; 2] = [LiberoWhy::Unable, LiberoWhy::Declared];

/// The panel.
#[component]
pub fn NewLibero(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let title = text::panel_title(
        text::new_libero(),
        &text::team_name(&session.state_now(), team),
    );
    let why = RwSignal::new(LiberoWhy::Unable);
    let leaves = RwSignal::new(Vec::<Shirt>::new());
    let old = Memo::new(move |_| session.state().team(team).liberos.clone());
    // A team with one libero has no choice to make.
    if let [only] = untrack(|| old.get())[..] {
        leaves.set(vec![only]);
    }
    let kind = move |number: Shirt| Kind::NewLibero {
        team,
        replaces: leaves.get(),
        number,
        why: Some(why.get()),
    };
    let new = Memo::new(move |_| {
        let state = session.state();
        let mut numbers: Vec<Shirt> = state
            .team(team)
            .listed()
            .filter(|&number| session.check(&kind(number)).is_ok())
            .collect();
        numbers.sort_unstable();
        numbers
    });
    let toggle = Callback::new(move |i: usize| {
        let Some(shirt) = old.with_untracked(|old| old.get(i).copied()) else {
            return;
        };
        leaves.update(|all| {
            if all.contains(&shirt) {
                all.retain(|s| *s != shirt);
            } else {
                all.push(shirt);
            }
        });
    });
    let is_answer = move |of, shirt: Shirt| of == team && old.read().contains(&shirt);
    court.ask_for_player(is_answer, move |_, shirt| {
        if let Some(place) = old.with_untracked(|old| old.iter().position(|s| *s == shirt)) {
            toggle.run(place);
        }
    });
    let goes = Callback::new(move |i: usize| {
        let shirt = old.read().get(i).copied();
        shirt.is_some_and(|shirt| leaves.read().contains(&shirt))
    });
    let olds = Signal::derive(move || {
        let one = |shirt: Shirt| Choice::number(shirt, text::number(shirt));
        old.get().into_iter().map(one).collect()
    });
    let news = Signal::derive(move || {
        let one = |shirt: Shirt| Choice::number(shirt, text::name_libero(shirt));
        new.get().into_iter().map(one).collect()
    });
    let name = Callback::new(move |i: usize| {
        if let Some(number) = new.with_untracked(|new| new.get(i).copied()) {
            court.submit(untrack(|| kind(number)));
        }
    });
    let is_why = Callback::new(move |i: usize| why.get() == WHYS[i]);
    let set_why = Callback::new(move |i: usize| why.set(WHYS[i]));
    let whys = fixed(WHYS.map(text::libero_why_button));
    view! {
        <Frame title>
            {asked(text::libero_why(), buttons(Layout::Row, whys, Some(is_why), set_why))}
            {asked(text::libero_old(), buttons(Layout::Numbers, olds, Some(goes), toggle))}
            {asked(text::libero_new(), buttons(Layout::Numbers, news, None, name))}
            {move || {
                let none = new.read().is_empty();
                none.then(|| view! { <p class="muted">{text::no_new_libero()}</p> })
            }}
        </Frame>
    }
}
