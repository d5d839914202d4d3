//! Closing the record: who signs, the seal and its code, and the way back.

use leptos::html;
use leptos::prelude::*;

use super::words;
use crate::game::{Kind, Phase, Replay, Signer};
use crate::record;
use crate::sheet::words as paper;
use crate::sheet::{Sheet, Signed};
use crate::ui::before::SignPad;
use crate::ui::part::dialog::Drawer;
use crate::ui::session::{use_session, Session};

/// What is asked in the drawer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Asked {
    /// Who of [`paper::SIGNERS`] signs.
    Sign(usize),
    /// Why the record is opened again.
    Reopen,
}

/// The card above the paper: open, sealed, or sealed and changed.
#[component]
pub fn Closing() -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let asked = RwSignal::new(Asked::Reopen);
    let broken_off = RwSignal::new(false);
    let ask = Callback::new(move |what| {
        asked.set(what);
        open.set(true);
    });
    let title = move || match asked.get() {
        Asked::Sign(place) => paper::SIGNERS[place].1,
        Asked::Reopen => words::REOPEN_ASK,
    };
    view! {
        <section class="card stack sheet-closing" id="closing">
            {move || {
                let may_write = session.may_write();
                session.with_replay(|replay| match replay.state().sealed() {
                    Some(_) => sealed(replay, may_write, ask),
                    None if replay.state().phase() == Phase::Finished || broken_off.get() => {
                        signing(session, replay, may_write, ask)
                    }
                    None => not_over(may_write, broken_off),
                })
            }}
        </section>
        <Drawer open title=Signal::derive(move || title().to_owned())>
            {move || view! { <Form asked=asked.get() open /> }}
        </Drawer>
    }
}

fn not_over(may_write: bool, broken_off: RwSignal<bool>) -> AnyView {
    view! {
        <p>{words::NOT_OVER}</p>
        {may_write.then(|| view! {
            <div class="row">
                <button type="button" class="button" id="broken-off" on:click=move |_| broken_off.set(true)>
                    {words::BROKEN_OFF}
                </button>
            </div>
        })}
    }
    .into_any()
}

/// Who has signed after the match, and the button that seals.
fn signing(session: Session, replay: &Replay, may_write: bool, ask: Callback<Asked>) -> AnyView {
    let sheet = Sheet::of(replay);
    let given = &sheet.signatures;
    // A match that was broken off before its first service has no signatures after it.
    let begun = !sheet.sets.is_empty();
    let of = |role: &str| -> Option<&Signed> {
        let after = given.iter().rev().filter(|s| !(s.before && begun));
        after.into_iter().find(|s| paper::same_role(&s.role, role))
    };
    let missing: Vec<&str> = paper::SIGNERS
        .iter()
        .filter(|(role, _)| of(role).is_none())
        .map(|(_, who)| *who)
        .collect();
    let lines = paper::SIGNERS
        .iter()
        .enumerate()
        .map(|(place, (role, who))| {
            let signed = of(role);
            let name = signed.and_then(|s| s.name.as_deref());
            let class = if signed.is_some() {
                "button signer signed"
            } else {
                "button signer"
            };
            let label = words::line(who, name, signed.is_some());
            view! {
                <button type="button" class=class disabled=!may_write
                    on:click=move |_| ask.run(Asked::Sign(place))
                >
                    {label}
                </button>
            }
        });
    let seal = move |_| {
        let code = session.look(|replay| record::seal_code(replay.entries()));
        session.tell(Kind::Seal { code });
    };
    let all = missing.is_empty();
    view! {
        <h2>{words::CLOSING}</h2>
        <p>{words::LOOK_FIRST}</p>
        <div class="signers">{lines.collect_view()}</div>
        {(!all).then(|| view! { <p class="sentence">{words::missing(&missing)}</p> })}
        <div class="row">
            <button type="button" id="seal" class="button" class:primary=all disabled=!may_write on:click=seal>
                {if all { words::SEAL } else { words::SEAL_ANYWAY }}
            </button>
        </div>
        <p class="muted">{paper::SEAL_SHOWS}</p>
    }
    .into_any()
}

/// The code, large, and what it is good for.
fn sealed(replay: &Replay, may_write: bool, ask: Callback<Asked>) -> AnyView {
    let seals = record::seals(replay.entries());
    let fits = seals.last().is_some_and(record::Seal::fits);
    let code = seals.last().map(|s| record::spaced(&s.code));
    let (heading, more) = if fits {
        (words::SEALED, words::WRITE_DOWN)
    } else {
        (words::BROKEN, words::BROKEN_MORE)
    };
    view! {
        <h2 id="seal-state">{heading}</h2>
        <p class="check-code tabular" id="check-code">{code}</p>
        <p class:bad=!fits class:sentence=!fits>{more}</p>
        <p class="muted">{paper::SEAL_SHOWS}</p>
        {may_write.then(|| view! {
            <div class="row">
                <button type="button" class="button" id="reopen" on:click=move |_| ask.run(Asked::Reopen)>
                    {words::REOPEN}
                </button>
            </div>
        })}
    }
    .into_any()
}

/// What the drawer holds: the field to sign in, or a reason.
#[component]
fn Form(asked: Asked, open: RwSignal<bool>) -> impl IntoView {
    let signer = match asked {
        Asked::Sign(place) => Signer::of_role(paper::SIGNERS[place].0),
        Asked::Reopen => None,
    };
    match signer {
        Some(signer) => view! {
            <p>{words::SIGN_MEANS}</p>
            <SignPad signer open />
        }
        .into_any(),
        None => view! { <Reason open /> }.into_any(),
    }
}

/// Why the record is opened again.
#[component]
fn Reason(open: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    let field = NodeRef::<html::Input>::new();
    let missing = RwSignal::new(false);
    let go = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let typed = field.get_untracked().map(|input| input.value());
        let typed = typed.unwrap_or_default().trim().to_owned();
        if typed.is_empty() {
            return missing.set(true);
        }
        open.set(false);
        session.tell(Kind::Reopen { why: Some(typed) });
    };
    view! {
        <form class="stack" on:submit=go>
            <p>{words::REOPEN_MORE}</p>
            <label class="field">
                <span>{words::REOPEN_WHY}</span>
                <input type="text" id="closing-field" maxlength="200" autocomplete="off" node_ref=field />
            </label>
            {move || missing.get().then(|| view! {
                <p class="sentence bad" role="alert">{words::REOPEN_NEEDS_WHY}</p>
            })}
            <button type="submit" class="button primary" id="closing-go">{words::REOPEN}</button>
        </form>
    }
}
