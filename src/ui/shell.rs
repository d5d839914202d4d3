//! The frame of every screen: which one shows, the bar above it, the marks in the bar, the sheet
//! for refusals, the news for screen readers, and light or dark. It knows the screens by name only;
//! `screens` says which code shows which.

mod bar;
mod frame;
mod opened;
mod screen;
mod warnings;

use std::collections::HashMap;

use leptos::prelude::*;

use super::imports::Imports;
use super::session::Session;
use super::widgets::deferred::after_the_frame;
use crate::memo::Memo;
use app::machine::Offline;
use app::setting::Setting;
use app::stored_match::RUNS_MS;
use app::theme::Theme;
use device::{Focus, Worker};

pub use frame::mount;
use opened::{Opened, Step};
pub use screen::Screen;

/// What every screen can reach. Copies are the same.
#[derive(Clone, Copy)]
pub struct Shell {
    session: Session,
    screen: RwSignal<Screen>,
    /// Whether the screen is locked against pockets.
    pub locked: RwSignal<bool>,
    news: RwSignal<String>,
    /// The files that come in.
    pub imports: Imports,
    theme: RwSignal<Theme>,
    offline: RwSignal<Offline>,
    worker: StoredValue<Option<Worker>, LocalStorage>,
    /// The screens behind this one, as the phone's back button would show them.
    trail: StoredValue<Vec<Screen>>,
    /// What is open on this screen: the phone's back button closes it first.
    pub opened: Opened,
    /// What the page of the learning screens that shows is called.
    lesson: RwSignal<&'static str>,
    /// How far down the screen that is gone back to was left; none once it is drawn.
    back_to: StoredValue<Option<f64>>,
    /// How far down each screen was scrolled when it was left, by its address.
    places: StoredValue<HashMap<String, f64>>,
    roomy: RwSignal<bool>,
    wide: RwSignal<bool>,
}

/// The shell of this page.
///
/// # Panics
/// Outside of the page's components.
#[must_use]
pub fn use_shell() -> Shell {
    expect_context::<Shell>()
}

/// From here on there is room beside the court for what a phone shows in turn: a tablet either way up, and
/// more. The style sheets ask the same (`style/wide.css`).
const ROOMY: &str = "(min-width: 45rem) and (min-height: 34rem)";

/// From here on the list, a match and its findings stand beside each other; asked in `style/wide.css` as well.
const WIDE: &str = "(min-width: 60rem) and (min-height: 34rem)";

impl Shell {
    fn begin(session: Session) -> Shell {
        let screen = Screen::of_hash(&device::hash());
        let kept = device::settings().get(Setting::Theme);
        let theme = Theme::ALL
            .into_iter()
            .find(|t| Some(t.code()) == kept.as_deref())
            .unwrap_or(Theme::System);
        let shell = Shell {
            session,
            screen: RwSignal::new(screen.clone()),
            locked: RwSignal::new(false),
            news: RwSignal::new(String::new()),
            imports: Imports::begin(session),
            theme: RwSignal::new(theme),
            offline: RwSignal::new(Offline::Installing),
            worker: StoredValue::new_local(None),
            trail: StoredValue::new(Vec::new()),
            opened: Opened::begin(),
            lesson: RwSignal::new(text::learn()),
            back_to: StoredValue::new(None),
            places: StoredValue::new(HashMap::new()),
            roomy: RwSignal::new(device::media_matches(ROOMY)),
            wide: RwSignal::new(device::media_matches(WIDE)),
        };
        device::keep_scroll_by_hand();
        let offline = shell.offline;
        let worker = Worker::register("./sw.js", move |now| offline.set(now.clone()));
        offline.set(worker.state());
        shell.worker.set_value(Some(worker));
        device::set_root_attribute("data-theme", theme.code());
        shell.show(screen);
        shell
    }

    /// Shows a screen; the phone's back button leads back here.
    pub fn go(self, screen: Screen) {
        let here = self.screen.get_untracked();
        if here == screen {
            return;
        }
        self.trail.update_value(|trail| trail.push(here));
        if self.opened.leave() {
            // What was open on the screen that is left has an entry of its own, which this one takes.
            device::replace_hash(&screen.hash());
        } else {
            device::push_hash(&screen.hash());
        }
        self.show(screen);
        device::scroll_to(0.0);
    }

    fn show(self, screen: Screen) {
        Focus::let_go();
        let left = self.screen.with_untracked(Screen::hash);
        let place = device::scrolled_to();
        self.places.update_value(|places| {
            places.insert(left, place);
        });
        self.screen.set(screen);
    }

    /// Scrolls to where the screen was left that is drawn now: any sooner, and the one that goes away may be
    /// long enough to be scrolled in its stead.
    pub fn scroll_back(self) {
        let place = self.back_to.get_value();
        self.back_to.set_value(None);
        if let Some(place) = place {
            scroll_once_long_enough(place);
        }
    }

    /// Shows a screen in the place of this one.
    pub fn replace(self, screen: Screen) {
        device::replace_hash(&screen.hash());
        self.opened.mark_again();
        self.show(screen);
    }

    /// To the screen above this one; by the way one came, if that was it.
    pub fn up(self) {
        let here = self.screen.get_untracked();
        let above = here.up();
        // What there is to learn is looked at from anywhere, and the desk opens any record.
        let from = |behind: &Screen| {
            *behind == above
                || matches!(here, Screen::Learn { .. })
                || matches!(behind, Screen::Desk(_))
        };
        if self
            .trail
            .with_value(|trail| trail.last().is_some_and(from))
        {
            device::go_in_history(-self.opened.steps_back());
        } else {
            self.replace(above);
        }
    }

    /// The phone's back or forward button was used, or an address typed.
    fn came_to(self, screen: Screen) {
        if self.opened.came() == Step::Within {
            let here = self.screen.get_untracked();
            if here != screen {
                // The screen was put in the place of another while an entry lay above that one.
                device::replace_hash(&here.hash());
                self.opened.mark_again();
            }
            return;
        }
        let place = self
            .places
            .with_value(|places| places.get(&screen.hash()).copied());
        self.back_to.set_value(place);
        self.trail.update_value(|trail| {
            if trail.last() == Some(&screen) {
                trail.pop();
            } else {
                // Nobody knows the way any more.
                trail.clear();
            }
        });
        self.show(screen);
    }

    /// The screen that shows.
    #[must_use]
    pub fn screen(self) -> Screen {
        self.screen.get()
    }

    /// What the bar and the window call the learning page that shows.
    pub fn name_lesson(self, name: &'static str) {
        self.lesson.set(name);
    }

    /// Tells screen readers, when they are next silent.
    pub fn news(self, text: String) {
        self.news.set(text);
    }

    /// Whether there is room beside the court for what a phone shows in turn.
    #[must_use]
    pub fn is_roomy(self) -> bool {
        self.roomy.get()
    }

    /// Whether there is room for several parts of the desk beside each other.
    #[must_use]
    pub fn is_wide(self) -> bool {
        self.wide.get()
    }

    /// Light or dark, as chosen.
    #[must_use]
    pub fn theme(self) -> Theme {
        self.theme.get()
    }

    /// Chooses light or dark; kept on this phone.
    pub fn set_theme(self, theme: Theme) {
        // Without storage the choice lasts as long as the page.
        device::settings().set(Setting::Theme, theme.code());
        device::set_root_attribute("data-theme", theme.code());
        self.theme.set(theme);
    }

    /// Whether the program opens without a network.
    #[must_use]
    pub fn offline(self) -> Offline {
        self.offline.get()
    }

    /// Lets the newer version that waits take over; the page loads again.
    pub fn take_new_version(self) {
        self.with_worker(Worker::take_over);
    }

    /// Loads the page again.
    pub fn load_again(self) {
        device::reload();
    }

    /// Of all matches on this phone only these are being played.
    pub fn only_these_run(self, ids: &[String]) {
        self.with_worker(|worker| worker.only_these_run(ids.iter().map(String::as_str)));
    }

    fn with_worker(self, act: impl FnOnce(&Worker)) {
        self.worker.with_value(|worker| {
            if let Some(worker) = worker {
                act(worker);
            }
        });
    }

    /// Keeps the version of the program for as long as the open match is being played. Said again with
    /// each set, and where the worker came into office only now.
    fn hold_version(self) {
        let session = self.session;
        let playing = Memo::new(move |_| {
            let state = session.state();
            Some((session.id()?, state.is_under_way(), state.set_number()))
        });
        Effect::new(move |_| {
            // A worker that comes into office hears of it then.
            self.offline.track();
            let Some((id, under_way, _)) = playing.get() else {
                return;
            };
            let until = session.time_now().saturating_add(RUNS_MS);
            self.with_worker(|worker| {
                if under_way {
                    worker.match_runs(&id, until);
                } else {
                    worker.match_over(&id);
                }
            });
        });
    }
}

/// So many frames a list may take until it is as long as it was.
const FRAMES: u8 = 60;

/// Scrolls down so far as soon as what shows is long enough.
fn scroll_once_long_enough(place: f64) {
    fn again(place: f64, frames: u8) {
        after_the_frame(move || {
            if !device::scroll_to(place) && frames > 0 {
                again(place, frames - 1);
            }
        });
    }
    again(place, FRAMES);
}
