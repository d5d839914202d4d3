//! Which code shows which screen, and in which part of the program it stands. The splitter makes a file for
//! every set of parts that share code, so the parts are few.

use leptos::prelude::*;
use wasm_split_helpers::{wasm_split, SplitLoaderError};

use super::hand_over::{HandOver, Receive};
use super::learn;
use super::parts::{of_part, Part};
use super::play::{self, Grow, LogList, Menu, Names, Panel, Play, Tools};
use super::review;
use super::session::Refused;
use super::setup::{Before, BetweenSets, NewMatch};
use super::sheet_view::SheetScreen;
use super::shell::Screen;
use super::start::{self, About, Known, Start, ThisPhone};
use super::widgets::refusal::RefusedEntry;
use crate::desk::{self, Place};

/// A screen; one of a match is asked for when that match is open.
pub fn show(screen: &Screen) -> AnyView {
    match screen {
        Screen::Start => view! { <Start /> }.into_any(),
        Screen::Play { .. } => view! { <Play /> }.into_any(),
        Screen::NewMatch => around(Around::NewMatch),
        Screen::Before { .. } => around(Around::Before),
        Screen::Log { .. } => of_part(Part::Record, || record(Record::Log)),
        Screen::Sheet { .. } => of_part(Part::Record, || record(Record::Sheet)),
        Screen::HandOver { .. } => of_part(Part::Record, || record(Record::HandOver)),
        Screen::Receive => of_part(Part::Record, || record(Record::Receive)),
        Screen::ThisPhone => of_part(Part::Record, || record(Record::ThisPhone)),
        Screen::About => of_part(Part::Record, || record(Record::About)),
        Screen::Learn { place } => {
            let place = place.clone();
            of_part(Part::Learn, move || learn_screen(place.clone()))
        }
        Screen::Review { .. } => of_part(Part::Desk, || desk_screen(DeskScreen::Review)),
        Screen::Desk(place) => {
            let place = place.clone();
            of_part(Part::Desk, move || {
                desk_screen(DeskScreen::At(place.clone()))
            })
        }
    }
}

/// What opens around the court: before a match, between its sets, after it, and below and beside the halves.
#[derive(Clone)]
pub enum Around {
    /// The form of a new match.
    NewMatch,
    /// The plan before the first whistle.
    Before,
    /// What has to be done between two sets of a match with line-ups.
    BetweenSets,
    /// The screen between two sets.
    SetOver,
    /// The screen after the last point.
    MatchOver,
    /// What the strip shows while nothing else is asked for.
    AfterRally,
    /// What stays below the halves while only the court shows.
    GlanceFoot,
    /// The latest entries, where there is room.
    LogBeside,
    /// What the teams may ask for.
    Tools,
    /// A panel below the court.
    Panel(Panel),
    /// The lines of the menu.
    Menu(Menu),
    /// The names of the teams of a tally.
    Names(RwSignal<bool>),
    /// What a tally can become.
    Grow(RwSignal<bool>),
    /// A refused entry, and the way past it.
    Refusal(Refused, RwSignal<bool>),
    /// Hands the open match over, where it is not safe here.
    Export,
}

/// Draws it.
pub fn around(what: Around) -> AnyView {
    of_part(Part::Around, move || draw_around(what.clone()))
}

#[wasm_split(around, preload(load_around), fallible)]
pub(crate) fn draw_around(what: Around) -> Result<AnyView, SplitLoaderError> {
    Ok(match what {
        Around::NewMatch => view! { <NewMatch /> }.into_any(),
        Around::Before => view! { <Before /> }.into_any(),
        Around::BetweenSets => view! { <BetweenSets /> }.into_any(),
        Around::SetOver => play::set_over(),
        Around::MatchOver => play::match_over(),
        Around::AfterRally => play::after_rally(),
        Around::GlanceFoot => play::glance_foot(),
        Around::LogBeside => play::log_beside(),
        Around::Tools => view! { <Tools /> }.into_any(),
        Around::Panel(panel) => play::opened(panel),
        Around::Menu(menu) => play::menu_lines(menu),
        Around::Names(open) => view! { <Names open /> }.into_any(),
        Around::Grow(open) => view! { <Grow open /> }.into_any(),
        Around::Refusal(refused, open) => view! { <RefusedEntry refused open /> }.into_any(),
        Around::Export => start::export_open_match(),
    })
}

/// What is open below the court.
pub fn panel(panel: Panel) -> AnyView {
    match panel {
        Panel::Rally => ().into_any(),
        opened => around(Around::Panel(opened)),
    }
}

/// What the start screen shows below its first ways: the matches of this phone, files that come in.
pub fn library(known: Known) -> AnyView {
    of_part(Part::Record, move || library_below(known))
}

#[wasm_split(record, preload(load_library), fallible)]
pub(crate) fn library_below(known: Known) -> Result<AnyView, SplitLoaderError> {
    Ok(start::below(known))
}

pub(crate) enum Record {
    Log,
    Sheet,
    HandOver,
    Receive,
    ThisPhone,
    About,
}

#[wasm_split(record, preload(load_record), fallible)]
pub(crate) fn record(what: Record) -> Result<AnyView, SplitLoaderError> {
    Ok(match what {
        Record::Log => view! { <LogList /> }.into_any(),
        Record::Sheet => view! { <SheetScreen /> }.into_any(),
        Record::HandOver => view! { <HandOver /> }.into_any(),
        Record::Receive => view! { <Receive /> }.into_any(),
        Record::ThisPhone => view! { <ThisPhone /> }.into_any(),
        Record::About => view! { <About /> }.into_any(),
    })
}

/// What is told beside the court of a practice match.
pub fn practice() -> AnyView {
    of_part(Part::Learn, practice_told)
}

#[wasm_split(learn, preload(load_practice), fallible)]
pub(crate) fn practice_told() -> Result<AnyView, SplitLoaderError> {
    Ok(learn::told())
}

#[wasm_split(learn, preload(load_learn), fallible)]
pub(crate) fn learn_screen(place: String) -> Result<AnyView, SplitLoaderError> {
    Ok(learn::show(&place))
}

pub(crate) enum DeskScreen {
    At(Place),
    Review,
}

#[wasm_split(desk, preload(load_desk), fallible)]
pub(crate) fn desk_screen(what: DeskScreen) -> Result<AnyView, SplitLoaderError> {
    Ok(match what {
        DeskScreen::At(place) => desk::show(&place),
        DeskScreen::Review => review::review(),
    })
}
