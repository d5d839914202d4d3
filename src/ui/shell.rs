//! The frame of every screen: which one shows, the bar above it, the marks in the bar, the sheet
//! for refusals, the news for screen readers, and light or dark.

use leptos::html;
use leptos::prelude::*;

use super::before::{Before, NewMatch};
use super::desk;
use super::hand_over::{HandOver, Receive};
use super::part::dialog::Confirm;
use super::part::refusal::RefusalSheet;
use super::play::{use_court, BarTools, Court, LogList, Play};
use super::review;
use super::session::{use_session, Saved, Session};
use super::sheet_view::SheetScreen;
use super::signals::Signals;
use super::start::{About, Start};
use super::text;
use crate::device::{self, Offline, Standing, Worker};

/// The screens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Screen {
    /// Continue, begin, look back.
    Start,
    /// The form for a new match.
    NewMatch,
    /// Before the first whistle.
    Before {
        /// The match.
        id: String,
    },
    /// The court.
    Play {
        /// The match.
        id: String,
    },
    /// Every entry in words.
    Log {
        /// The match.
        id: String,
    },
    /// The computed sheet.
    Sheet {
        /// The match.
        id: String,
    },
    /// The record leaves the phone.
    HandOver {
        /// The match.
        id: String,
    },
    /// A record comes in by camera.
    Receive,
    /// The official hand signals.
    Signals,
    /// The look back on a match.
    Review {
        /// The match.
        id: String,
    },
    /// The coordinator's desk.
    Desk(desk::Place),
    /// What the app does not replace.
    About,
}

impl Screen {
    /// The part of the address after `#/`.
    #[must_use]
    pub fn hash(&self) -> String {
        match self {
            Screen::Start => "/start".into(),
            Screen::NewMatch => "/new".into(),
            Screen::Before { id } => format!("/before/{id}"),
            Screen::Play { id } => format!("/play/{id}"),
            Screen::Log { id } => format!("/log/{id}"),
            Screen::Sheet { id } => format!("/sheet/{id}"),
            Screen::HandOver { id } => format!("/hand-over/{id}"),
            Screen::Receive => "/receive".into(),
            Screen::Signals => "/signals".into(),
            Screen::Review { id } => format!("/review/{id}"),
            Screen::Desk(place) => format!("/desk{}", place.hash()),
            Screen::About => "/about".into(),
        }
    }

    /// The screen of an address; the start screen for one that is none.
    #[must_use]
    pub fn of_hash(hash: &str) -> Screen {
        let mut words = hash.trim_start_matches('/').splitn(2, '/');
        let name = words.next().unwrap_or_default();
        match (name, words.next().map(str::to_owned)) {
            ("new", None) => Screen::NewMatch,
            ("signals", None) => Screen::Signals,
            ("about", None) => Screen::About,
            ("receive", None) => Screen::Receive,
            ("hand-over", Some(id)) => Screen::HandOver { id },
            ("before", Some(id)) => Screen::Before { id },
            ("play", Some(id)) => Screen::Play { id },
            ("log", Some(id)) => Screen::Log { id },
            ("sheet", Some(id)) => Screen::Sheet { id },
            ("review", Some(id)) => Screen::Review { id },
            ("desk", place) => Screen::Desk(desk::Place::of_hash(&place.unwrap_or_default())),
            _ => Screen::Start,
        }
    }

    /// The match it shows.
    #[must_use]
    pub fn match_id(&self) -> Option<&str> {
        match self {
            Screen::Before { id }
            | Screen::Play { id }
            | Screen::Log { id }
            | Screen::HandOver { id }
            | Screen::Sheet { id }
            | Screen::Review { id } => Some(id),
            Screen::Start
            | Screen::NewMatch
            | Screen::Receive
            | Screen::Signals
            | Screen::Desk(_)
            | Screen::About => None,
        }
    }

    /// Where the arrow in the bar leads.
    fn up(&self) -> Screen {
        match self {
            Screen::Log { id } | Screen::Sheet { id } => Screen::Play { id: id.clone() },
            Screen::HandOver { id } => Screen::Sheet { id: id.clone() },
            Screen::Review { id } => Screen::Sheet { id: id.clone() },
            Screen::Desk(place) if *place != desk::Place::List => Screen::Desk(desk::Place::List),
            _ => Screen::Start,
        }
    }

    const fn code(&self) -> &'static str {
        match self {
            Screen::Start => "start",
            Screen::NewMatch => "new",
            Screen::Before { .. } => "before",
            Screen::Play { .. } => "play",
            Screen::Log { .. } => "log",
            Screen::Sheet { .. } => "sheet",
            Screen::HandOver { .. } => "hand-over",
            Screen::Receive => "receive",
            Screen::Signals => "signals",
            Screen::Review { .. } => "review",
            Screen::Desk(_) => "desk",
            Screen::About => "about",
        }
    }
}

/// Light or dark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the phone has it.
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Theme {
    /// All of them.
    pub const ALL: [Theme; 3] = [Theme::System, Theme::Light, Theme::Dark];

    /// The name in the settings and in the style sheets.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Theme::System => "system",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }
}

/// What every screen can reach. Copies are the same.
#[derive(Clone, Copy)]
pub struct Shell {
    screen: RwSignal<Screen>,
    news: RwSignal<String>,
    theme: RwSignal<Theme>,
    offline: RwSignal<Offline>,
    worker: StoredValue<Option<Worker>, LocalStorage>,
    /// The screens behind this one, as the phone's back button would show them.
    trail: StoredValue<Vec<Screen>>,
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

impl Shell {
    fn begin() -> Shell {
        let kept = device::setting(THEME);
        let theme = Theme::ALL
            .into_iter()
            .find(|t| Some(t.code()) == kept.as_deref())
            .unwrap_or(Theme::System);
        let shell = Shell {
            screen: RwSignal::new(Screen::of_hash(&device::hash())),
            news: RwSignal::new(String::new()),
            theme: RwSignal::new(theme),
            offline: RwSignal::new(Offline::Installing),
            worker: StoredValue::new_local(None),
            trail: StoredValue::new(Vec::new()),
        };
        let offline = shell.offline;
        let worker = Worker::register("./sw.js", move |now| offline.set(now.clone()));
        offline.set(worker.state());
        shell.worker.set_value(Some(worker));
        device::set_root_attribute("data-theme", theme.code());
        shell
    }

    /// Shows a screen; the phone's back button leads back here.
    pub fn go(self, screen: Screen) {
        let here = self.screen.get_untracked();
        if here != screen {
            self.trail.update_value(|trail| trail.push(here));
            device::push_hash(&screen.hash());
            self.screen.set(screen);
        }
    }

    /// Shows a screen in the place of this one.
    pub fn replace(self, screen: Screen) {
        device::replace_hash(&screen.hash());
        self.screen.set(screen);
    }

    /// As the phone's back button.
    pub fn back(self) {
        device::back();
    }

    /// To the screen above this one; by the way one came, if that was it.
    fn up(self) {
        let here = self.screen.get_untracked();
        let above = here.up();
        // The signals are looked at from anywhere.
        let from = |behind: &Screen| *behind == above || here == Screen::Signals;
        if self
            .trail
            .with_value(|trail| trail.last().is_some_and(from))
        {
            self.back();
        } else {
            self.replace(above);
        }
    }

    /// The phone's back or forward button was used, or an address typed.
    fn came_to(self, screen: Screen) {
        self.trail.update_value(|trail| {
            if trail.last() == Some(&screen) {
                trail.pop();
            } else {
                // Nobody knows the way any more.
                trail.clear();
            }
        });
        self.screen.set(screen);
    }

    /// The screen that shows.
    #[must_use]
    pub fn screen(self) -> Screen {
        self.screen.get()
    }

    /// Tells screen readers, when they are next silent.
    pub fn news(self, text: String) {
        self.news.set(text);
    }

    /// Light or dark, as chosen.
    #[must_use]
    pub fn theme(self) -> Theme {
        self.theme.get()
    }

    /// Chooses light or dark; kept on this phone.
    pub fn set_theme(self, theme: Theme) {
        // Without storage the choice lasts as long as the page.
        let _ = device::set_setting(THEME, theme.code());
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
        self.worker.with_value(|worker| {
            if let Some(worker) = worker {
                worker.take_over();
            }
        });
    }
}

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    let session = Session::begin();
    let shell = Shell::begin();
    provide_context(session);
    provide_context(shell);
    provide_context(Court::begin());

    let screen = shell.screen;
    let listening = device::on_hash_change(move |hash| shell.came_to(Screen::of_hash(&hash)));
    let _listening = StoredValue::new_local(listening);

    // Outward only: the storage is asked for what the address names, the window is named.
    Effect::new(move |_| {
        if let Some(id) = screen.read().match_id() {
            session.open(id);
        }
    });
    Effect::new(move |_| device::set_title(&text::page_title(&heading(session, &screen.read()))));
    let code = Memo::new(move |_| screen.read().code());

    view! {
        <div class="page" data-screen=move || code.get()>
            <Bar />
            <Keeper />
            <main id="main">{move || show(session, screen)}</main>
            <RefusalSheet />
            <Confirm
                open=session.looking_on()
                question=Signal::stored(text::read_only(false).to_owned())
                yes=Signal::stored(text::TAKE_OVER.to_owned())
                on_yes=Callback::new(move |()| session.take_over())
            />
            <p id="news" class="visually-hidden" role="status" aria-live="polite">
                {move || shell.news.get()}
            </p>
        </div>
    }
}

/// One screen; those of a match once that match is open.
fn show(session: Session, screen: RwSignal<Screen>) -> AnyView {
    let screen = screen.get();
    if let Some(id) = screen.match_id() {
        // Only whether it is there, or every entry would draw the screen anew.
        let of = id.to_owned();
        let open = Memo::new(move |_| session.id().as_ref() == Some(&of));
        let known = Memo::new(move |_| session.state().heading().is_some());
        return view! {
            {move || match (open.get(), known.get()) {
                (false, _) => view! { <p class="card">{text::OPENING}</p> }.into_any(),
                (true, false) => view! { <NotHere /> }.into_any(),
                (true, true) => of_match(&screen),
            }}
        }
        .into_any();
    }
    match screen {
        Screen::NewMatch => view! { <NewMatch /> }.into_any(),
        Screen::Receive => view! { <Receive /> }.into_any(),
        Screen::Signals => view! { <Signals /> }.into_any(),
        Screen::About => view! { <About /> }.into_any(),
        Screen::Desk(place) => desk::show(&place),
        _ => view! { <Start /> }.into_any(),
    }
}

fn of_match(screen: &Screen) -> AnyView {
    match screen {
        Screen::Before { .. } => view! { <Before /> }.into_any(),
        Screen::Log { .. } => view! { <LogList /> }.into_any(),
        Screen::Sheet { .. } => view! { <SheetScreen /> }.into_any(),
        Screen::HandOver { .. } => view! { <HandOver /> }.into_any(),
        Screen::Review { .. } => review::review(),
        _ => view! { <Play /> }.into_any(),
    }
}

/// A match that is not in this phone's storage.
#[component]
fn NotHere() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    view! {
        <section class="card stack">
            <h2>{text::NOT_HERE}</h2>
            <p>{text::NOT_HERE_MORE}</p>
            <For each=move || session.problems() key=Clone::clone let:problem>
                <p class="sentence bad">{text::problem(&problem)}</p>
            </For>
            <button type="button" class="button primary" on:click=move |_| shell.go(Screen::Start)>
                {text::TO_START}
            </button>
        </section>
    }
}

fn heading(session: Session, screen: &Screen) -> String {
    match screen {
        Screen::Start => text::APP.into(),
        Screen::NewMatch => text::NEW_MATCH.into(),
        Screen::Signals => text::SIGNALS.into(),
        Screen::About => text::ABOUT_TITLE.into(),
        Screen::Before { .. } => text::BEFORE.into(),
        Screen::Log { .. } => text::LOG.into(),
        Screen::Sheet { .. } => text::SHEET.into(),
        Screen::HandOver { .. } => text::HAND_OVER.into(),
        Screen::Receive => text::RECEIVE.into(),
        Screen::Review { .. } => review::REVIEW.into(),
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
    let title = Memo::new(move |_| heading(session, &shell.screen()));
    // Whoever listens to the page begins anew at the heading of each new screen.
    let h1 = NodeRef::<html::H1>::new();
    Effect::new(move |before: Option<Screen>| {
        let screen = shell.screen();
        if before.is_some_and(|before| before != screen) {
            if let Some(h1) = h1.get_untracked() {
                let _ = h1.focus();
            }
        }
        screen
    });
    let up = move |_| shell.up();
    let court = use_court();
    view! {
        <header class="bar" inert=move || court.locked.get()>
            <Show when=move || !at_start.get()>
                <button type="button" class="bar-button" id="up" aria-label=text::BACK on:click=up>
                    <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                        <path d="M15 4 L7 12 L15 20" />
                    </svg>
                </button>
            </Show>
            <h1 tabindex="-1" node_ref=h1>
                {title}
            </h1>
            <Show when=move || in_match.get()>
                <SavedMark />
            </Show>
            <Show when=move || on_court.get()>
                <div class="bar-tools">
                    <BarTools />
                </div>
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
            <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                {move || match saved.get() {
                    Saved::Safe => view! { <path d="M4 13 L10 19 L20 6" /> }.into_any(),
                    Saved::Saving => view! { <path d="M5 12 H7 M11 12 H13 M17 12 H19" /> }.into_any(),
                    Saved::OneCopy | Saved::MemoryOnly => {
                        view! { <path d="M12 4 V14 M12 19 V20" /> }.into_any()
                    }
                }}
            </svg>
            <span class="saved-word">{move || text::saved(saved.get())}</span>
        </span>
    }
}

/// What has to be said about the storage or another tab, in a sentence, with the way out.
#[component]
fn Keeper() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let in_match = Memo::new(move |_| shell.screen().match_id().is_some());
    let read_only = Memo::new(move |_| match session.standing() {
        Standing::ReadOnly { robbed } => Some(robbed),
        _ => None,
    });
    let trouble = Memo::new(move |_| text::storage_trouble(&session.health()));
    let problems = Memo::new(move |_| session.problems());
    view! {
        <Show when=move || in_match.get() && read_only.get().is_some()>
            <div class="keeper" role="alert">
                <p>{move || text::read_only(read_only.get() == Some(true))}</p>
                <button type="button" class="button" on:click=move |_| session.take_over()>
                    {text::TAKE_OVER}
                </button>
            </div>
        </Show>
        <Show when=move || trouble.get().is_some()>
            <div class="keeper bad" role="alert" id="storage-trouble">
                <p>{move || trouble.get()}</p>
                <Show when=move || in_match.get()>
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| super::start::export(&session.log(), &session.state_now())
                    >
                        {text::EXPORT}
                    </button>
                </Show>
            </div>
        </Show>
        <Show when=move || in_match.get() && !problems.get().is_empty()>
            <div class="keeper bad" role="alert" id="damaged">
                <p>{move || text::damaged(&problems.get())}</p>
                <button type="button" class="button" on:click=move |_| session.problems_read()>
                    {text::UNDERSTOOD}
                </button>
            </div>
        </Show>
    }
}
