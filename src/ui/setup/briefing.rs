//! The briefings of the duty team: read aloud, ticked sentence by sentence.

use leptos::prelude::*;

use crate::session::use_session;
use app::drafts::Draft;
use device::{on_voices, Listeners, Voice};
use text::setup as words;

/// One for each of the duty team, and the tap that says that all have heard theirs.
#[component]
pub(super) fn Briefings(
    /// All are briefed: called with the number of the entry that says so.
    all: Callback<u32>,
) -> impl IntoView {
    let session = use_session();
    let id = StoredValue::new(untrack(|| session.id()).unwrap_or_default());
    // A letter for each sentence that was read: `x` or `-`.
    let kept = id
        .with_value(|id| device::settings().drafts(id).get(Draft::Briefed))
        .unwrap_or_default();
    let ticks = RwSignal::new(kept);
    let lines = StoredValue::new(words::briefings(session.state_now().rules()));
    let count = move |role: usize| lines.with_value(|lines| lines[role].len());
    let first = move |role: usize| (0..role).map(count).sum::<usize>();
    let is_read = move |at: usize| ticks.with(|t| t.as_bytes().get(at) == Some(&b'x'));
    let through = move |role: usize| {
        let from = first(role);
        (from..from + count(role)).all(is_read)
    };
    let role = RwSignal::new(
        (0..words::briefed().len())
            .find(|&r| !untrack(|| through(r)))
            .unwrap_or(0),
    );
    let tick = move |at: usize, read: bool| {
        ticks.update(|ticks| {
            let end = first(words::briefed().len());
            *ticks = (0..end)
                .map(|i| {
                    let was = ticks.as_bytes().get(i) == Some(&b'x');
                    if (i == at && read) || (i != at && was) {
                        'x'
                    } else {
                        '-'
                    }
                })
                .collect();
            id.with_value(|id| device::settings().drafts(id).keep(Draft::Briefed, ticks));
        });
    };
    let voice = RwSignal::new_local(None::<Voice>);
    let find = move || {
        // The card may be closed by now.
        voice.try_set(Voice::find(text::language().code()));
    };
    find();
    let _watch = StoredValue::new_local(on_voices(find));
    let reading = RwSignal::new_local(None::<Listeners>);
    let read = move |_| {
        let sentences = lines.with_value(|lines| lines[role.get_untracked()].clone());
        let begin = |voice: &Voice| voice.read(&sentences, move || drop(reading.try_set(None)));
        let begun = reading
            .with_untracked(Option::is_none)
            .then(|| voice.with_untracked(|voice| voice.as_ref().map(begin)));
        if begun.is_none() {
            voice.with_untracked(|voice| voice.iter().for_each(Voice::hush));
        }
        reading.set(begun.flatten());
    };
    // Whoever turns to another one does not hear the first one out.
    let look_at = move |own: usize| {
        voice.with_untracked(|voice| voice.iter().for_each(Voice::hush));
        reading.set(None);
        role.set(own);
    };
    let aloud = move || {
        voice.with(Option::is_some).then(|| {
            view! {
                <button type="button" class="button" on:click=read>
                    {move || match reading.with(Option::is_some) {
                        true => words::stop_reading(),
                        false => words::let_it_read(),
                    }}
                </button>
            }
        })
    };
    let tab = move |own: usize| {
        view! {
            <button
                type="button"
                class="button team-tab"
                aria-pressed=move || (role.get() == own).to_string()
                on:click=move |_| look_at(own)
            >
                <span class="team-tab-name">{words::briefed()[own]}</span>
                {move || through(own).then(|| view! {
                    <span class="mark-ok">
                        <span aria-hidden="true">"\u{2713}"</span>
                        <span class="visually-hidden">{words::is_done()}</span>
                    </span>
                })}
            </button>
        }
    };
    let sentences = move || {
        let own = role.get();
        let one = |(at, words): (usize, &String)| {
            let at = first(own) + at;
            view! {
                <li>
                    <label class="check briefing-line">
                        <input
                            type="checkbox"
                            prop:checked=move || is_read(at)
                            on:change:target=move |ev| tick(at, ev.target().checked())
                        />
                        <span>{words.clone()}</span>
                    </label>
                </li>
            }
        };
        view! {
            <ol class="briefing" aria-label=words::briefed()[own]>
                {lines.with_value(|lines| lines[own].iter().enumerate().map(one).collect_view())}
            </ol>
        }
    };
    let go_on = move || {
        let next = (0..words::briefed().len()).find(|&r| !through(r));
        match next {
            Some(next) if through(role.get()) => Some(
                view! {
                    <button type="button" class="button primary" on:click=move |_| look_at(next)>
                        {words::brief_next(words::briefed()[next])}
                    </button>
                }
                .into_any(),
            ),
            Some(_) => None,
            None => {
                let expected = session.next();
                Some(
                    view! {
                        <button
                            type="button"
                            class="button primary"
                            on:click=move |_| all.run(expected)
                        >
                            {words::all_briefed()}
                        </button>
                    }
                    .into_any(),
                )
            }
        }
    };
    view! {
        <p class="muted">{words::read_aloud()}</p>
        <div class="pair" role="group" aria-label=words::whom()>
            {(0..words::briefed().len()).map(tab).collect_view()}
        </div>
        {aloud}
        {sentences}
        {go_on}
    }
}
