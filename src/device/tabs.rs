//! What the tabs of one browser tell each other: that a match has a new line, so that a tab
//! which only reads can show it.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent, StorageEvent};

use super::listen::Listener;
use super::reach::{property, window};
use app::ports::{split_line_key, Peers};

/// A tab's seat among those that have the same match open. Dropping it leaves.
#[must_use = "the tab leaves when this is dropped"]
pub struct Tabs {
    channel: Option<BroadcastChannel>,
    // Held for its drop alone.
    _listener: Option<Listener>,
}

impl Tabs {
    /// Joins the tabs of a match; `on_written` hears of each line that another one
    /// announces. Where the browser has no channel between tabs, the storage events that it sends by
    /// itself stand in for the announcements.
    pub fn join(id: &str, on_written: impl Fn() + 'static) -> Tabs {
        let window = window();
        let channel = window
            .as_ref()
            .and_then(|window| property(window, "BroadcastChannel"))
            .and_then(|_| BroadcastChannel::new(&format!("dutystand/{id}")).ok());
        let listener = match (&channel, window) {
            (Some(channel), _) => Some(Listener::new(channel, "message", move |event| {
                let said = event.dyn_ref::<MessageEvent>().map(MessageEvent::data);
                if said.is_some_and(|said| said.as_f64().is_some()) {
                    on_written();
                }
            })),
            (None, Some(window)) => {
                let id = id.to_owned();
                Some(Listener::new(&window, "storage", move |event| {
                    let key = event.dyn_ref::<StorageEvent>().and_then(StorageEvent::key);
                    let line = key.as_deref().and_then(split_line_key);
                    if line.is_some_and(|(of, _)| of == id) {
                        on_written();
                    }
                }))
            }
            (None, None) => None,
        };
        Tabs {
            channel,
            _listener: listener,
        }
    }
}

impl Peers for Tabs {
    /// Tells the other tabs that line `n` can be read. To be said when the journal calls the line
    /// safe, because local storage may reach another tab a moment later than this does.
    fn announce(&self, n: u32) {
        if let Some(channel) = &self.channel {
            // Fails only on a closed channel, and this one is closed on drop.
            let _ = channel.post_message(&JsValue::from_f64(f64::from(n)));
        }
    }
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some(channel) = &self.channel {
            channel.close();
        }
    }
}
