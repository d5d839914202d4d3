//! The page of the desk: what a coordinator does with many records, and the look back on one.

use leptos::prelude::*;

use super::sheet_view::SheetScreen;
use super::shell::{mount, Document, Page, Screen};
use super::{desk, review};

/// Puts the page together. Called once.
pub fn start() {
    mount(Page {
        document: Document::Desk,
        begin: || {},
        show,
        tools: || ().into_any(),
    });
}

fn show(screen: &Screen) -> AnyView {
    match screen {
        Screen::Desk(place) => desk::show(place),
        Screen::Review { .. } => review::review(),
        Screen::Sheet { .. } => view! { <SheetScreen /> }.into_any(),
        // The frame asks for no screen of the other page.
        _ => desk::show(&desk::Place::List),
    }
}
