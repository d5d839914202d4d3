//! Closing the record: who signs, the seal and its code, and the way back.

use leptos::prelude::*;

use super::open_things::{open_things, result, still_open};
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::setup::{DetailsForm, SignPad};
use crate::widgets::dialog::Drawer;
use crate::widgets::kept_words::KeptWords;
use app::drafts::Draft;
use game::entry::{Check, Protested};
use game::{Kind, Phase, Signer, Timeline};
use reports::{SealBox, Sheet, Signed};
use rules::Team;
use text::score_sheet as paper;
use text::sheet as words;

/// What is asked in the drawer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// Who of [`paper::SIGNERS`] signs.
    Sign(usize),
    /// What is missing in the heading.
    Details,
    /// Who says that a check is in order now.
    Clear {
        /// What was checked.
        item: String,
    },
    /// What the captain writes about the protest that an entry announced.
    Protest {
        /// The entry.
        entry: u32,
        /// Whose it is.
        team: Team,
    },
    /// A remark that tells what can be entered no more.
    Remark {
        /// What it is about.
        about: String,
    },
    /// Why the record is opened again.
    Reopen,
}

/// The card above the paper: open, sealed, or sealed and changed.
#[component]
pub fn Closing(
    /// The sheet as it stands.
    sheet: Memo<Sheet>,
) -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let asked = RwSignal::new(Asked::Reopen);
    let broken_off = RwSignal::new(false);
    let ask = Callback::new(move |what| {
        asked.set(what);
        open.set(true);
    });
    let title = move || -> String {
        match asked.get() {
            Asked::Sign(place) => paper::signer(paper::SIGNERS[place]),
            Asked::Details => words::details().into(),
            Asked::Clear { .. } => words::clear().into(),
            Asked::Protest { .. } => words::write_protest().into(),
            Asked::Remark { .. } => words::remark().into(),
            Asked::Reopen => words::reopen_ask().into(),
        }
    };
    view! {
        <section class="card stack sheet-closing" id="closing">
            {move || {
                let may_write = session.may_write();
                let sheet = sheet.read();
                if sheet.seal.holds {
                    return sealed(&sheet.seal, may_write, ask);
                }
                session.with_timeline(|timeline| {
                    if timeline.state().phase() == Phase::Finished || broken_off.get() {
                        signing(session, timeline, &sheet, may_write, ask)
                    } else {
                        not_over(may_write, broken_off)
                    }
                })
            }}
        </section>
        <Drawer open title=Signal::derive(title)>
            {move || view! { <Form asked=asked.get() open /> }}
        </Drawer>
    }
}

fn not_over(may_write: bool, broken_off: RwSignal<bool>) -> AnyView {
    view! {
        <p>{words::not_over()}</p>
        {may_write.then(|| view! {
            <div class="row">
                <button type="button" class="button" id="broken-off" on:click=move |_| broken_off.set(true)>
                    {words::broken_off()}
                </button>
            </div>
        })}
    }
    .into_any()
}

/// Who has signed after the match, and the button that seals.
fn signing(
    session: Session,
    timeline: &Timeline,
    sheet: &Sheet,
    may_write: bool,
    ask: Callback<Asked>,
) -> AnyView {
    let given = &sheet.signatures;
    // A match that was broken off before its first service has no signatures after it.
    let begun = !sheet.sets.is_empty();
    let of = |role: &str| -> Option<&Signed> {
        let after = given
            .iter()
            .rev()
            .filter(|s| !(s.outdated || s.before && begun));
        after.into_iter().find(|s| paper::same_role(&s.role, role))
    };
    let open = open_things(timeline);
    let missing: Vec<String> = paper::SIGNERS
        .iter()
        .filter(|role| of(role).is_none())
        .map(|role| paper::signer(role))
        .collect();
    let lines = paper::SIGNERS.iter().enumerate().map(|(place, role)| {
        let signed = of(role);
        let name = signed.and_then(|s| s.name.as_deref());
        let class = if signed.is_some() {
            "button signer signed"
        } else {
            "button signer"
        };
        let label = words::line(&paper::signer(role), name, signed.is_some());
        view! {
            <button type="button" class=class disabled=!may_write
                on:click=move |_| ask.run(Asked::Sign(place))
            >
                {label}
            </button>
        }
    });
    let seal = move |_| {
        let code = session.with_untracked(|timeline| record::seal_code(timeline.entries()));
        session.submit(Kind::Seal { code });
    };
    let all = missing.is_empty() && open.is_empty();
    view! {
        <h2>{words::closing()}</h2>
        {result(timeline.state())}
        {still_open(open, timeline, may_write, ask)}
        <p>{words::look_first()}</p>
        <div class="signers">{lines.collect_view()}</div>
        {(!missing.is_empty()).then(|| view! { <p class="sentence">{words::missing(&missing)}</p> })}
        {(!all).then(|| view! { <p>{words::seal_anyway_more()}</p> })}
        <div class="row">
            <button type="button" id="seal" class="button" class:primary=all disabled=!may_write on:click=seal>
                {if all { words::seal() } else { words::seal_anyway() }}
            </button>
        </div>
    }
    .into_any()
}

/// The code, large, and what it is good for.
fn sealed(seal: &SealBox, may_write: bool, ask: Callback<Asked>) -> AnyView {
    let last = seal.seals.last();
    let fits = last.is_some_and(record::Seal::fits);
    let code = last.map(|s| record::spaced(&s.code));
    let (heading, more) = if fits {
        (words::sealed(), words::write_down())
    } else {
        (words::broken(), words::broken_more())
    };
    view! {
        <h2 id="seal-state" class:bad=!fits>{heading}</h2>
        <p class="check-code tabular" id="check-code">{code}</p>
        <p class:bad=!fits class:sentence=!fits>{more}</p>
        <p class="muted">{paper::seal_shows()}</p>
        {may_write.then(|| view! {
            <div class="row">
                <button type="button" class="button" id="reopen" on:click=move |_| ask.run(Asked::Reopen)>
                    {words::reopen()}
                </button>
            </div>
        })}
    }
    .into_any()
}

/// What the drawer holds: the field to sign in under the result, the heading, or a few words.
#[component]
fn Form(asked: Asked, open: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    match asked {
        Asked::Sign(place) => Signer::of_role(paper::SIGNERS[place])
            .map(|signer| {
                let (result, open_count) =
                    session.with_untracked(|timeline| (result(timeline.state()), open_things(timeline).len()));
                view! {
                    {result}
                    {(open_count > 0).then(|| view! { <p class="sentence">{words::open_count(open_count)}</p> })}
                    <p>{words::sign_means()}</p>
                    <SignPad signer open />
                }
            })
            .into_any(),
        Asked::Details => {
            let done = Callback::new(move |()| open.set(false));
            view! { <DetailsForm done with_rules=false /> }.into_any()
        }
        Asked::Clear { .. } | Asked::Protest { .. } | Asked::Remark { .. } | Asked::Reopen => {
            view! { <Reason asked open /> }.into_any()
        }
    }
}

/// A few words: why the record is opened again, who has cleared a check, what a remark tells.
#[component]
fn Reason(asked: Asked, open: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    let missing = RwSignal::new(false);
    let (draft, more, label, go_on, needed) = match &asked {
        Asked::Clear { item } => (
            Draft::Clear,
            words::clear_more(item),
            words::clear_who(),
            words::clear_go(),
            words::clear_needs_who(),
        ),
        Asked::Protest { team, .. } => (
            Draft::Protest(*team),
            words::protest_more().to_owned(),
            words::protest_field(),
            words::write_protest(),
            words::protest_needs_words(),
        ),
        Asked::Remark { about } => (
            Draft::Remark(None),
            about.clone(),
            words::remark_field(),
            words::remark_go(),
            words::remark_needs_words(),
        ),
        Asked::Sign(_) | Asked::Details | Asked::Reopen => (
            Draft::Reopen,
            words::reopen_more().to_owned(),
            words::reopen_why(),
            words::reopen(),
            words::reopen_needs_why(),
        ),
    };
    let kept = KeptWords::of(draft);
    let go = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let typed = kept.typed();
        if typed.is_empty() {
            return missing.set(true);
        }
        open.set(false);
        let made = session.submit(match &asked {
            Asked::Clear { item } => Kind::Check(Check {
                item: item.clone(),
                ok: true,
                note: Some(typed),
            }),
            Asked::Protest { entry, .. } => Kind::ProtestStatement {
                about: Protested::Entry(*entry),
                text: typed,
            },
            Asked::Remark { .. } => Kind::Remark {
                text: typed,
                team: None,
            },
            Asked::Sign(_) | Asked::Details | Asked::Reopen => Kind::Reopen { why: Some(typed) },
        });
        if made {
            kept.entered();
        }
    };
    view! {
        <form class="stack" on:submit=go>
            <p>{more}</p>
            {kept.draw("closing-field", label)}
            {move || missing.get().then(|| view! {
                <p class="sentence bad" role="alert">{needed}</p>
            })}
            <button type="submit" class="button primary" id="closing-go">{go_on}</button>
        </form>
    }
}
