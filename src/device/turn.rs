//! A turn of the page: what is done after the browser has ended whatever it is about, and before it waits
//! for anything else.

use wasm_bindgen::closure::Closure;
use wasm_bindgen::JsCast;
use web_sys::{MessageChannel, MessageEvent, MessagePort};

/// Work that gets a turn each time one is asked for. Time-outs would wait longer, the more of them follow
/// each other, and a page that is out of sight would get one a second.
pub struct Turn {
    ask: MessagePort,
    // Held for their drop alone.
    _answer: (MessagePort, Closure<dyn FnMut(MessageEvent)>),
}

impl Turn {
    /// Prepares it; nothing where this browser has no channels.
    #[must_use]
    pub fn new(mut work: impl FnMut() + 'static) -> Option<Turn> {
        let channel = MessageChannel::new().ok()?;
        let callback = Closure::<dyn FnMut(MessageEvent)>::new(move |_| work());
        let answer = channel.port2();
        answer.set_onmessage(Some(callback.as_ref().unchecked_ref()));
        Some(Turn {
            ask: channel.port1(),
            _answer: (answer, callback),
        })
    }

    /// Asks for one.
    pub fn ask(&self) {
        // Fails only for a message that cannot be copied; this one is empty.
        let _ = self.ask.post_message(&wasm_bindgen::JsValue::UNDEFINED);
    }
}
