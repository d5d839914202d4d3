//! Signing on the screen: with a finger, by a name, or by a plain tap; all of it can be left out.

use leptos::ev::PointerEvent;
use leptos::html;
use leptos::prelude::*;

use super::drawn::Drawing;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use game::{signed, Kind, Signature, Signed, Signer};
use record::{Strokes, HEIGHT, WIDTH};
use rules::Team;
use text::setup as words;
use text::team_name;

/// Captain and coach of a team, under its list.
#[component]
pub(super) fn ListSignatures(team: Team) -> impl IntoView {
    view! {
        <section class="stack">
            <h4>{words::signatures()}</h4>
            <SignRow signer=Signer::Captain(team) />
            <SignRow signer=Signer::Coach(team) />
            <p class="muted">{words::signed_list()}</p>
        </section>
    }
}

/// One who signs: whether it was done, and the field for it.
#[component]
pub fn SignRow(
    /// Who.
    signer: Signer,
) -> impl IntoView {
    let session = use_session();
    let stands = Memo::new(move |_| session.with_timeline(|timeline| signed(timeline, signer)));
    let open = RwSignal::new(false);
    let who = words::signer(signer);
    let team = move || signer.team().map(|t| team_name(&session.state(), t));
    let label = move |what: &str| words::about_signer(what, who, team().as_deref());
    let given = move |signature: &Signature| {
        let drawn = session.id().and_then(|id| {
            device::settings()
                .drafts(&id)
                .drawn()
                .remove(&signature.entry)
        });
        let name = signature.name.clone();
        view! {
            <span class="sign-name">{name}</span>
            {drawn.map(|strokes| view! { <Drawing strokes=Signal::stored(strokes) /> })}
        }
    };
    let status = move || {
        match stands.get() {
        Signed::No => None,
        Signed::Yes(s) => Some(
            view! {
                <span class="mark-ok"><span aria-hidden="true">"\u{2713} "</span>{words::signed()}</span>
                {given(&s)}
            }
            .into_any(),
        ),
        Signed::ListChanged(_) => {
            Some(view! { <span class="muted">{words::signed_before_change()}</span> }.into_any())
        }
    }
    };
    let words = move || match stands.get() {
        Signed::No => words::sign(),
        _ => words::sign_again(),
    };
    view! {
        <div class="sign-row">
            <strong>{who}</strong>
            <span class="sign-status">{status}</span>
            <button
                type="button"
                class="button"
                aria-expanded=move || open.get().to_string()
                aria-label=move || label(words())
                on:click=move |_| open.update(|o| *o = !*o)
            >
                {words}
            </button>
        </div>
        {move || open.get().then(|| view! { <SignPad signer open /> })}
    }
}

/// The name that the list has for whoever signs.
fn listed_name(signer: Signer) -> Option<String> {
    let state = use_session().state_now();
    let list = state.team(signer.team()?).list.as_ref()?;
    match signer {
        Signer::Captain(_) => list.players.iter().find(|p| p.captain)?.name.clone(),
        _ => list.staff.iter().find(|s| s.role == "coach")?.name.clone(),
    }
}

/// The field for a finger, the name, and the tap that makes the entry.
#[component]
pub fn SignPad(
    /// Who signs.
    signer: Signer,
    /// Goes to false when it is done, or given up.
    open: RwSignal<bool>,
) -> impl IntoView {
    let session = use_session();
    let strokes = RwSignal::new(Strokes::default());
    let drawing = StoredValue::new(false);
    let field = NodeRef::<html::Div>::new();
    let name = RwSignal::new(listed_name(signer).unwrap_or_default());
    let id = format!("sign-name-{}", signer.role().replace(' ', "-"));
    // Where the finger is, on the field of a drawing.
    let at = move |event: &PointerEvent| {
        let of = |at: i32, size: i32, whole: u16| {
            let at = i64::from(at.clamp(0, size)) * i64::from(whole) / i64::from(size.max(1));
            u16::try_from(at).unwrap_or(whole)
        };
        let (width, height) = field
            .get_untracked()
            .map_or((1, 1), |f| (f.client_width(), f.client_height()));
        (
            of(event.offset_x(), width, WIDTH),
            of(event.offset_y(), height, HEIGHT),
        )
    };
    let down = move |event: PointerEvent| {
        // A palm beside the finger does not write.
        if event.button() == 0 && event.is_primary() {
            let (x, y) = at(&event);
            drawing.set_value(true);
            strokes.update(|s| s.begin(x, y));
        }
    };
    let slide = move |event: PointerEvent| {
        if drawing.get_value() && event.is_primary() {
            let (x, y) = at(&event);
            strokes.maybe_update(|s| s.go_on(x, y));
        }
    };
    let up = move |_| drawing.set_value(false);
    let too_small = RwSignal::new(false);
    let sign = move |expected: u32| {
        let dot = strokes.with_untracked(|s| !s.is_empty() && s.is_small());
        too_small.set(dot);
        if dot {
            return;
        }
        let typed = name.with_untracked(|n| n.trim().to_owned());
        let made = session.submit_at(
            expected,
            Kind::Sign {
                role: signer.role(),
                name: (!typed.is_empty()).then_some(typed),
            },
        );
        if !made {
            return;
        }
        let strokes = strokes.get_untracked();
        if let (Some(match_id), false) = (untrack(|| session.id()), strokes.is_empty()) {
            let drafts = device::settings().drafts(&match_id);
            let mut all = drafts.drawn();
            all.insert(expected, strokes);
            drafts.keep_drawn(&all);
        }
        open.set(false);
    };
    view! {
        <div class="sign-field stack">
            <p>{words::draw_here()}</p>
            <div
                class="sign-pad"
                node_ref=field
                on:pointerdown=down
                on:pointermove=slide
                on:pointerup=up
                on:pointerleave=up
                on:pointercancel=up
            >
                <Drawing strokes />
            </div>
            {text_field(&id, named(words::name_optional()), InputKind::Words(60), name, FieldOptions::default())}
            {move || too_small.get().then(|| view! {
                <p class="sentence bad" role="alert">{words::too_small()}</p>
            })}
            <div class="row">
                {move || {
                    let expected = session.next();
                    view! {
                        <button type="button" class="button primary" on:click=move |_| sign(expected)>
                            {words::save_signature()}
                        </button>
                    }
                }}
                <button
                    type="button"
                    class="button"
                    disabled=move || strokes.with(Strokes::is_empty)
                    on:click=move |_| {
                        too_small.set(false);
                        strokes.set(Strokes::default());
                    }
                >
                    {words::clear_drawing()}
                </button>
                <button type="button" class="button quiet" on:click=move |_| open.set(false)>
                    {words::not_now()}
                </button>
            </div>
            <p class="muted">{words::drawing_stays()}</p>
        </div>
    }
}
