//! The page of a match: everything that a referee and the duty team need, before, in and after it.

use leptos::prelude::*;

use super::before::{Before, NewMatch};
use super::hand_over::{HandOver, Receive};
use super::play::{BarTools, Court, LogList, Play};
use super::sheet_view::SheetScreen;
use super::shell::{mount, Document, Page, Screen};
use super::signals::Signals;
use super::start::{About, Start};
use super::turns::take_turns;

/// Puts the page together. Called once.
pub fn start() {
    take_turns();
    mount(Page {
        document: Document::Match,
        begin: || provide_context(Court::begin()),
        show,
        tools: || view! { <BarTools /> }.into_any(),
    });
}

fn show(screen: &Screen) -> AnyView {
    match screen {
        Screen::NewMatch => view! { <NewMatch /> }.into_any(),
        Screen::Receive => view! { <Receive /> }.into_any(),
        Screen::Signals => view! { <Signals /> }.into_any(),
        Screen::About => view! { <About /> }.into_any(),
        Screen::Before { .. } => view! { <Before /> }.into_any(),
        Screen::Play { .. } => view! { <Play /> }.into_any(),
        Screen::Log { .. } => view! { <LogList /> }.into_any(),
        Screen::Sheet { .. } => view! { <SheetScreen /> }.into_any(),
        Screen::HandOver { .. } => view! { <HandOver /> }.into_any(),
        // The frame asks for no screen of the other page.
        Screen::Start | Screen::Desk(_) | Screen::Review { .. } => view! { <Start /> }.into_any(),
    }
}
