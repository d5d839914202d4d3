//! The icons, out of one family: a sprite in the page itself (`assets/icons.svg`, which `tools/icons` makes).
//! What only the trade has, such as the T of a time-out, is drawn where it is used.

use leptos::prelude::*;

/// One of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// The way back.
    Back,
    /// Safely kept.
    Done,
    /// Under way.
    Busy,
    /// Something is wrong.
    Trouble,
    /// More of it.
    More,
    /// The menu.
    Menu,
    /// Closes what is open.
    Close,
    /// Opens what is folded away.
    Unfold,
    /// Turns the court.
    Turn,
    /// One goes, one comes; so do the teams.
    Exchange,
    /// The ball.
    Ball,
}

impl Icon {
    /// As the family calls it.
    const fn name(self) -> &'static str {
        match self {
            Icon::Back => "chevron-left",
            Icon::Done => "check",
            Icon::Busy => "dots",
            Icon::Trouble => "exclamation-mark",
            Icon::More => "dots",
            Icon::Menu => "menu-2",
            Icon::Close => "x",
            Icon::Unfold => "chevron-down",
            Icon::Turn => "refresh",
            Icon::Exchange => "arrows-exchange",
            Icon::Ball => "ball-volleyball",
        }
    }

    /// What stands in the drawing.
    fn used(self) -> String {
        format!("<use href='#icon-{}'/>", self.name())
    }
}

/// The icon; what it means stands beside it in words, or in the name of its button.
pub fn icon(icon: Icon) -> AnyView {
    icon_as("icon", icon)
}

/// The same with classes of its own.
pub fn icon_as(class: &'static str, icon: Icon) -> AnyView {
    view! { <svg viewBox="0 0 24 24" class=class aria-hidden="true" inner_html=icon.used()></svg> }
        .into_any()
}
