//! The frame of every screen: which one shows, the bar above it, the marks in the bar, the sheet
//! for refusals, the news for screen readers, and light or dark. It knows the screens by name only;
//! `screens` says which code shows which.

mod opened;
mod screen;

use std::collections::HashMap;

use leptos::prelude::*;

use super::desk::Desk;
use super::language::Languages;
use super::parts::Parts;
use super::play::{BarTools, Court};
use super::screens::{self, Around};
use super::session::{use_session, Saved, Session};
use super::start::remember_open_match;
use super::widgets::deferred::after_the_frame;
use super::widgets::dialog::Confirm;
use super::widgets::keys::go_on_at;
use super::widgets::refusal::RefusalSheet;
use crate::memo::Memo;
use crate::widgets::icon::{icon, Icon};
use app::machine::Offline;
use app::ports::Standing;
use app::stored_match::RUNS_MS;
use app::theme::Theme;
use device::{Focus, Worker};
use reports::ClockDoubt;

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
    /// Speaks when matches have come that no list asked for.
    unasked_matches: Trigger,
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

const THEME: &str = "theme";

/// From here on there is room beside the court for what a phone shows in turn: a tablet either way up, and
/// more. The style sheets ask the same (`style/wide.css`).
const ROOMY: &str = "(min-width: 45rem) and (min-height: 34rem)";

/// From here on the list, a match and its findings stand beside each other; asked in `style/wide.css` as well.
const WIDE: &str = "(min-width: 60rem) and (min-height: 34rem)";

impl Shell {
    fn begin(session: Session) -> Shell {
        let screen = Screen::of_hash(&device::hash());
        let kept = device::settings().get(THEME);
        let theme = Theme::ALL
            .into_iter()
            .find(|t| Some(t.code()) == kept.as_deref())
            .unwrap_or(Theme::System);
        let shell = Shell {
            session,
            screen: RwSignal::new(screen.clone()),
            locked: RwSignal::new(false),
            news: RwSignal::new(String::new()),
            unasked_matches: Trigger::new(),
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

    /// Says what came of an import whose screen was left, and lets the list that shows now be read again.
    pub fn matches_came(self, says: String) {
        self.news(says);
        self.unasked_matches.notify();
    }

    /// Listens for such matches.
    pub fn track_unasked_matches(self) {
        self.unasked_matches.track();
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
        device::settings().set(THEME, theme.code());
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

/// Puts the page into the document. Called once.
pub fn mount(languages: Languages) {
    leptos::mount::mount_to_body(move || view! { <Frame languages /> });
}

/// The whole page.
#[component]
fn Frame(languages: Languages) -> impl IntoView {
    provide_context(languages);
    let session = Session::begin();
    let shell = Shell::begin(session);
    provide_context(session);
    provide_context(shell);
    shell.hold_version();
    remember_open_match(session);
    provide_context(Court::begin());
    provide_context(Desk::begin());
    let parts = Parts::begin();
    provide_context(parts);
    parts.load_all_soon();

    let screen = shell.screen;
    // What another page has written meanwhile is not in the memory of one that comes back from it.
    let restored = device::on_restored(move || {
        if untrack(|| session.saved()) != Saved::MemoryOnly {
            device::reload();
        }
    });
    let listening = device::on_hash_change(move |hash| shell.came_to(Screen::of_hash(&hash)));
    let room = device::on_media_change(ROOMY, move |roomy| shell.roomy.set(roomy));
    let more_room = device::on_media_change(WIDE, move |wide| shell.wide.set(wide));
    let presses = device::drop_stray_presses();
    let _listening = StoredValue::new_local((restored, listening, room, more_room, presses));

    // Outward only: the storage is asked for what the address names, the window is named.
    Effect::new(move |_| {
        let screen = screen.read();
        if let Some(id) = screen.match_id() {
            session.open(id);
        }
    });
    let title = Memo::new(move |_| {
        languages.track();
        text::page_title(&heading(session, shell, &screen.read()))
    });
    // After the frame: a browser computes the style of everything new before it takes a title.
    Effect::new(move |_| {
        let title = title.get();
        after_the_frame(move || device::set_title(&title));
    });
    // Another language draws everything anew: words are no signals.
    (move || {
        languages.track();
        untrack(|| {
            // What was told before was told in another language.
            shell.news(String::new());
            let page = view! { <Page session shell /> };
            languages.drawn();
            page
        })
    })
    .into_any()
}

/// The bar, the screen, and what may lie over them.
#[component]
fn Page(session: Session, shell: Shell) -> impl IntoView {
    let screen = shell.screen;
    let code = Memo::new(move |_| screen.read().code());
    let drawn = Memo::new(move |_| screen.read().drawn_as());
    view! {
        <div class="page" data-screen=move || code.get()>
            <Bar />
            <main id="main">
                {move || {
                    let view = show(session, &drawn.read());
                    shell.scroll_back();
                    view
                }}
            </main>
            <Keeper />
            <RefusalSheet />
            <Confirm
                open=session.looking_on()
                question=Signal::derive(move || {
                    text::stands_still(session.standing()).unwrap_or_default().to_owned()
                })
                yes=Signal::derive(move || text::go_on(session.standing()).to_owned())
                on_yes=Callback::new(move |()| go_on(session))
            />
            <p id="news" class="visually-hidden" role="status" aria-live="polite">
                {move || shell.news.get()}
            </p>
        </div>
    }
}

/// One screen; those of a match once that match is open.
fn show(session: Session, screen: &Screen) -> AnyView {
    let opening = || view! { <p class="card">{text::opening()}</p> }.into_any();
    let Some(id) = screen.match_id() else {
        return screens::show(screen);
    };
    let screen = screen.clone();
    // Only whether it is there, or every entry would draw the screen anew.
    let of = id.to_owned();
    let open = Memo::new(move |_| session.id().as_ref() == Some(&of));
    let known = Memo::new(move |_| session.state().heading().is_some());
    (move || match (open.get(), known.get()) {
        (false, _) => opening(),
        (true, false) => view! { <NotHere /> }.into_any(),
        (true, true) => screens::show(&screen),
    })
    .into_any()
}

/// A match that is not in this phone's storage.
#[component]
fn NotHere() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    view! {
        <section class="card stack">
            <h2>{text::not_here()}</h2>
            <p>{text::not_here_more()}</p>
            <For each=move || session.notices() key=text::session_notice let:notice>
                <p class="sentence bad">{text::session_notice(&notice)}</p>
            </For>
            <button type="button" class="button primary" on:click=move |_| shell.go(Screen::Start)>
                {text::to_start()}
            </button>
        </section>
    }
}

fn heading(session: Session, shell: Shell, screen: &Screen) -> String {
    match screen {
        Screen::Start => text::APP.into(),
        Screen::NewMatch => text::new_match().into(),
        Screen::Learn { .. } => shell.lesson.get().into(),
        Screen::ThisPhone => text::this_phone().into(),
        Screen::About => text::about_title().into(),
        Screen::Before { .. } => text::before().into(),
        Screen::Log { .. } => text::log().into(),
        Screen::Sheet { .. } => text::sheet().into(),
        Screen::HandOver { .. } => text::hand_over().into(),
        Screen::Receive => text::receive().into(),
        Screen::Review { .. } => text::review::review().into(),
        Screen::Desk(place) => place.heading().into(),
        Screen::Play { .. } => text::play_title(&session.state()),
    }
}

/// The bar: the way back, where one is, how well the last entry is kept.
#[component]
fn Bar() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let at_start = Memo::new(move |_| shell.screen() == Screen::Start);
    let in_match = Memo::new(move |_| shell.screen().match_id().is_some());
    let on_court = Memo::new(move |_| {
        matches!(shell.screen(), Screen::Play { .. }) && session.state().heading().is_some()
    });
    let title = Memo::new(move |_| heading(session, shell, &shell.screen()));
    // Whoever listens to the page begins anew at the heading of each new screen.
    Effect::new(move |before: Option<Screen>| {
        let screen = shell.screen();
        // Beside a list that stays nobody is taken away from it.
        let stays =
            |before: &Screen| shell.wide.get_untracked() && before.drawn_as() == screen.drawn_as();
        if before.is_some_and(|before| before != screen && !stays(&before)) {
            go_on_at("heading");
        }
        screen
    });
    let up = move |_| shell.up();
    view! {
        <header class="bar" inert=move || shell.locked.get()>
            <Show when=move || !at_start.get()>
                <button type="button" class="bar-button" id="up" aria-label=text::back() on:click=up>
                    {icon(Icon::Back)}
                </button>
            </Show>
            <h1 tabindex="-1" id="heading">
                {move || title.get()}
            </h1>
            <Show when=move || in_match.get()>
                <SavedMark />
            </Show>
            <Show when=move || on_court.get()>
                <div class="bar-tools"><BarTools /></div>
            </Show>
        </header>
    }
}

/// Whether the last entry is safely on disk.
#[component]
fn SavedMark() -> impl IntoView {
    let session = use_session();
    let saved = Memo::new(move |_| session.saved());
    view! {
        <span
            id="saved"
            class="saved"
            class:safe=move || saved.get() == Saved::Safe
            class:trouble=move || matches!(saved.get(), Saved::OneCopy | Saved::MemoryOnly)
        >
            // All three stand there: what every entry changes is shown and hidden, not built.
            <span class="saved-icon" hidden=move || saved.get() != Saved::Safe>
                {icon(Icon::Done)}
            </span>
            <span class="saved-icon" hidden=move || saved.get() != Saved::Saving>
                {icon(Icon::Busy)}
            </span>
            <span
                class="saved-icon"
                hidden=move || !matches!(saved.get(), Saved::OneCopy | Saved::MemoryOnly)
            >
                {icon(Icon::Trouble)}
            </span>
            <span class="saved-word">{move || text::saved(saved.get())}</span>
        </span>
    }
}

/// Lets this tab write after all.
fn go_on(session: Session) {
    if untrack(|| session.standing()) == Standing::Waiting {
        session.go_on();
    } else {
        session.take_over();
    }
}

/// What has to be said about the storage or another tab, in a sentence, with the way out.
#[component]
fn Keeper() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let in_match = Memo::new(move |_| shell.screen().match_id().is_some());
    let standing = Memo::new(move |_| session.standing());
    let stands_still = Memo::new(move |_| text::stands_still(standing.get()));
    let trouble = Memo::new(move |_| text::storage_trouble(&session.health()));
    // Read once for each match that is opened: what is entered then has times of its own.
    let clock_doubt = RwSignal::new(None::<ClockDoubt>);
    Effect::new(move |_| {
        let opened = session.id().is_some();
        let now = session.time_now();
        clock_doubt.set(
            opened
                .then(|| session.with_untracked(|timeline| ClockDoubt::on_opening(timeline, now)))
                .flatten(),
        );
    });
    let notices = Memo::new(move |_| session.notices());
    view! {
        <div class="keepers" inert=move || shell.locked.get()>
            <Show when=move || in_match.get() && stands_still.get().is_some()>
                <div class="keeper" role="alert" id="stands-still">
                    <p>{move || stands_still.get()}</p>
                    <button type="button" class="button" on:click=move |_| go_on(session)>
                        {move || text::go_on(standing.get())}
                    </button>
                </div>
            </Show>
            <Show when=move || trouble.get().is_some()>
                <div class="keeper bad" role="alert" id="storage-trouble">
                    <p>{move || trouble.get()}</p>
                    <Show when=move || in_match.get()>
                        {screens::around(Around::Export)}
                    </Show>
                </div>
            </Show>
            <Show when=move || in_match.get() && clock_doubt.get().is_some()>
                <div class="keeper bad" role="alert" id="clock-doubt">
                    <p>{move || clock_doubt.get().map(text::clock_doubt_on_opening)}</p>
                    <button type="button" class="button" on:click=move |_| clock_doubt.set(None)>
                        {text::understood()}
                    </button>
                </div>
            </Show>
            <Show when=move || in_match.get() && !notices.get().is_empty()>
                <div class="keeper bad" role="alert" id="damaged">
                    <p>{move || text::session_notices(&notices.get())}</p>
                    <button type="button" class="button" on:click=move |_| session.notices_read()>
                        {text::understood()}
                    </button>
                </div>
            </Show>
        </div>
    }
}
