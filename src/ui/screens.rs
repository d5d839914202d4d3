//! Which code shows which screen, and in which part of the program it stands. The splitter makes a file for
//! every set of parts that share code, so the parts are few.

use leptos::prelude::*;
use wasm_split_helpers::{wasm_split, SplitLoaderError};

use super::hand_over::{HandOver, Receive};
use super::learn;
use super::parts::{of_part, Part};
use super::play::{self, LogList, Panel, Play};
use super::review;
use super::setup::{Before, BetweenSets, NewMatch};
use super::sheet_view::SheetScreen;
use super::shell::Screen;
use super::start::{self, About, Library, Start, ThisPhone};
use crate::desk::{self, Place};

/// A screen; one of a match is asked for when that match is open.
pub fn show(screen: &Screen) -> AnyView {
    match screen {
        Screen::Start => view! { <Start /> }.into_any(),
        Screen::Play { .. } => view! { <Play /> }.into_any(),
        Screen::NewMatch => of_part(Part::Around, || set_up(SetUp::NewMatch)),
        Screen::Before { .. } => of_part(Part::Around, || set_up(SetUp::Before)),
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

/// What is open below the court.
pub fn panel(panel: Panel) -> AnyView {
    match panel {
        Panel::Rally => ().into_any(),
        opened => of_part(Part::Around, move || panel_below(opened)),
    }
}

#[wasm_split(around, preload(load_panels), fallible)]
pub(crate) fn panel_below(panel: Panel) -> Result<AnyView, SplitLoaderError> {
    Ok(play::opened(panel))
}

/// What the start screen shows beside its first ways: the matches of this phone, files that come in.
pub fn library(library: Library) -> AnyView {
    of_part(Part::Record, move || library_below(library))
}

#[wasm_split(record, preload(load_library), fallible)]
pub(crate) fn library_below(library: Library) -> Result<AnyView, SplitLoaderError> {
    Ok(start::below(library))
}

/// What has to be done between two sets, on the court's screen.
pub fn between_sets() -> AnyView {
    of_part(Part::Around, || set_up(SetUp::BetweenSets))
}

pub(crate) enum SetUp {
    NewMatch,
    Before,
    BetweenSets,
}

#[wasm_split(around, preload(load_set_up), fallible)]
pub(crate) fn set_up(what: SetUp) -> Result<AnyView, SplitLoaderError> {
    Ok(match what {
        SetUp::NewMatch => view! { <NewMatch /> }.into_any(),
        SetUp::Before => view! { <Before /> }.into_any(),
        SetUp::BetweenSets => view! { <BetweenSets /> }.into_any(),
    })
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
