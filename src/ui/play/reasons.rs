//! Why the last rally ended: for as long as one likes, and never in the way of the next rally.

use leptos::prelude::*;

use super::signal_card::SignalCard;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::shell::use_shell;
use crate::widgets::picker::{buttons, Choice, Layout};
use game::{Kind, Phase, RallyNote};
use rules::{Cause, Group, Team};

/// The rally that is talked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RallyContext {
    /// Its entry.
    pub entry: u32,
    /// Who won it.
    pub won_by: Team,
    /// Whether the side that lost it had served.
    pub server_lost: bool,
    /// What was said about it.
    pub said: Option<RallyNote>,
}

/// What is known of a rally, where its reason can still be said.
fn talked_of(session: Session, entry: u32) -> Option<RallyContext> {
    let not_said = Kind::Explain {
        entry,
        cause: Cause::NotSaid,
        by: None,
        seen_by: None,
    };
    session.check(&not_said).ok()?;
    session.with_timeline(|replay| {
        let rally = replay.state().rally(entry)?;
        Some(RallyContext {
            entry,
            won_by: rally.to,
            server_lost: rally.served.is_some_and(|t| t != rally.to),
            said: replay.state().said(entry),
        })
    })
}

/// The reasons of the last rally of the set at hand, or the signal of the one that was chosen; none after a
/// replay, which would be taken for that rally. After a set there are other things to do, so the groups stay
/// closed then.
#[component]
pub fn Reasons() -> impl IntoView {
    let session = use_session();
    let talked = Memo::new(move |_| {
        let entry = session.with_timeline(|replay| {
            let entry = replay.last_played()?.n;
            let set = replay.state().correctable()?;
            set.points.iter().any(|p| p.entry == entry).then_some(entry)
        })?;
        talked_of(session, entry)
    });
    // Built once for a whole set: between two rallies only what differs is drawn anew.
    let opens = Memo::new(move |_| {
        let playing = session.state().phase() == Phase::Playing;
        talked.get().map(|_| if playing { FIRST } else { None })
    });
    // The last entry stands in words above the reasons. Where it is about something else, they say what they are
    // about.
    let titled = Memo::new(move |_| {
        let rally = talked.get().map(|talked| talked.entry);
        let last = session.with_timeline(|replay| {
            replay.last_standing().map(|e| match e.kind {
                Kind::Explain { entry, .. } => entry,
                _ => e.n,
            })
        });
        opens.get() == Some(None) || rally != last
    });
    move || {
        opens
            .get()
            .map(|opens| of_rally(talked, opens, titled.into()))
    }
}

/// The group that is open while nobody has chosen one.
const FIRST: Option<Group> = Some(Group::ALL[0]);

/// The reason of any rally that is still in the log.
pub fn of_entry(entry: u32) -> AnyView {
    let session = use_session();
    let talked = Memo::new(move |_| talked_of(session, entry));
    of_rally(talked, FIRST, Signal::stored(false))
}

/// What is shown of a rally.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shows {
    /// The signal of its reason.
    Card(u32, Cause),
    /// The reasons.
    Choice,
    /// Nothing: its reason can no longer be said.
    Nothing,
}

/// What was tapped about a rally. Another rally begins anew; another reason for the same one does not.
#[derive(Clone, Copy)]
struct Tapped {
    talked: Memo<Option<RallyContext>>,
    /// The rally whose reasons are open once more.
    again: RwSignal<Option<u32>>,
    /// The rally and the group that was opened for it.
    group: RwSignal<Option<(u32, Group)>>,
}

impl Tapped {
    fn entry(self) -> Option<u32> {
        self.talked.get().map(|t| t.entry)
    }

    fn shows(self) -> Shows {
        let Some(talked) = self.talked.get() else {
            return Shows::Nothing;
        };
        match talked.said {
            Some(said) if self.again.get() != Some(talked.entry) => {
                Shows::Card(talked.entry, said.cause)
            }
            _ => Shows::Choice,
        }
    }
}

fn of_rally(
    talked: Memo<Option<RallyContext>>,
    opens: Option<Group>,
    titled: Signal<bool>,
) -> AnyView {
    let tapped = Tapped {
        talked,
        again: RwSignal::new(None),
        group: RwSignal::new(None),
    };
    // The number to a reason leaves its signal as it is.
    let shows = Memo::new(move |_| tapped.shows());
    let card = move || match shows.get() {
        Shows::Card(_, cause) => {
            let again = tapped.again;
            view! { <SignalCard talked cause again /> }.into_any()
        }
        Shows::Choice | Shows::Nothing => ().into_any(),
    };
    // Wanted again after every rally, so it stays once it has been there.
    let wanted =
        Memo::new(move |was: Option<&bool>| was == Some(&true) || shows.get() == Shows::Choice);
    view! {
        {card}
        <div class="rally-reasons" hidden=move || shows.get() != Shows::Choice>
            {move || wanted.get().then(|| choice(tapped, opens, titled))}
        </div>
    }
    .into_any()
}

/// All reasons in their groups, always in the same places.
fn choice(tapped: Tapped, opens: Option<Group>, titled: Signal<bool>) -> AnyView {
    let session = use_session();
    let open = Memo::new(move |_| {
        let entry = tapped.entry();
        let chosen = tapped.group.get();
        chosen
            .filter(|(of, _)| Some(*of) == entry)
            .map_or(opens, |(_, group)| Some(group))
    });
    let words = Memo::new(move |_| {
        let winner = tapped.talked.get()?.won_by;
        Some(text::why_point(&text::team_name(&session.state(), winner)))
    });
    let tab = move |group: Group| {
        let tap = move |_| {
            let entry = tapped.talked.get_untracked().map(|t| t.entry);
            tapped.group.set(entry.map(|entry| (entry, group)));
        };
        view! {
            <button
                type="button"
                class="group"
                aria-pressed=move || (open.get() == Some(group)).to_string()
                on:click=tap
            >
                {text::group(group)}
            </button>
        }
        .into_any()
    };
    let shell = use_shell();
    // Where there is room all groups stand open, each under its name.
    let whole = move |group: Group| {
        view! {
            <section class="whole-group" aria-label=text::group(group)>
                <h2>{text::group(group)}</h2>
                {causes(tapped, group)}
            </section>
        }
        .into_any()
    };
    view! {
        <section class="reasons" aria-label=move || words.get()>
            <p class="muted" hidden=move || !titled.get()>
                {move || words.get()}
            </p>
            {move || {
                if shell.is_roomy() {
                    return Vec::from(Group::ALL.map(whole)).into_any();
                }
                view! {
                    <div class="groups" role="group" aria-label=text::groups()>
                        {Group::ALL.map(tab).into_iter().collect_view()}
                    </div>
                    {move || open.get().map(|group| causes(tapped, group))}
                }
                    .into_any()
            }}
        </section>
    }
    .into_any()
}

/// The reasons of one group. One that cannot have ended this rally says so.
fn causes(tapped: Tapped, group: Group) -> AnyView {
    let session = use_session();
    let rules = *session.state_now().rules();
    let shell = use_shell();
    let of_group: Vec<Cause> = Cause::ALL
        .into_iter()
        .filter(|cause| cause.group() == Some(group) && cause.occurs_under(&rules))
        .collect();
    let explain = |talked: &RallyContext, cause: Cause| Kind::Explain {
        entry: talked.entry,
        cause,
        by: None,
        seen_by: talked.said.and_then(|said| said.seen_by),
    };
    let all = of_group.clone();
    let choices = Memo::new(move |_| {
        let talked = tapped.talked.get();
        let one = |cause: &Cause| {
            let why_not = talked.as_ref().and_then(|talked| {
                if !cause.fits(talked.server_lost) {
                    return Some(text::cause_does_not_fit(talked.server_lost).to_owned());
                }
                let why = session.check(&explain(talked, *cause)).err()?;
                Some(text::refusal(&why, (&*session.state()).into()))
            });
            Choice::new(text::cause(*cause, &rules)).unless(why_not)
        };
        all.iter().map(one).collect::<Vec<_>>()
    });
    let tap = Callback::new(move |i: usize| {
        let (Some(&cause), Some(talked)) = (of_group.get(i), tapped.talked.get_untracked()) else {
            return;
        };
        if !cause.fits(talked.server_lost) {
            shell.news(text::cause_does_not_fit(talked.server_lost).to_owned());
        } else if session.submit(explain(&talked, cause)) {
            tapped.again.set(None);
        }
    });
    buttons(Layout::Grid, choices.into(), None, tap)
}
