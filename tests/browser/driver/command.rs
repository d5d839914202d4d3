//! What a browser is told, and how each of the two protocols spells it.

use serde_json::{json, Value};

/// A command to the browser.
#[derive(Debug)]
pub enum Command<'a> {
    Goto(&'a str),
    Run { script: &'a str, arguments: Value },
    Act(Value),
    LetGo,
    Clear(&'a str),
    Write { element: &'a str, text: &'a str },
    Window { width: u32, height: u32 },
    NewTab,
    Tab,
    ToTab(&'a str),
    Picture,
    Cdp { method: &'a str, parameters: Value },
    Log(&'a str),
}

impl Command<'_> {
    /// Method, path below the session, and body, as in the table "Endpoints" of WebDriver. The last
    /// two are Chromium's own.
    pub fn over_http(&self) -> (&'static str, String, Value) {
        let post = |path: &str, body| ("POST", path.to_owned(), body);
        match self {
            Command::Goto(url) => post("url", json!({ "url": url })),
            Command::Run { script, arguments } => post(
                "execute/sync",
                json!({ "script": script, "args": arguments }),
            ),
            Command::Act(actions) => post("actions", json!({ "actions": actions })),
            Command::LetGo => ("DELETE", "actions".into(), Value::Null),
            Command::Clear(element) => post(&format!("element/{element}/clear"), json!({})),
            Command::Write { element, text } => {
                post(&format!("element/{element}/value"), json!({ "text": text }))
            }
            Command::Window { width, height } => {
                post("window/rect", json!({ "width": width, "height": height }))
            }
            Command::NewTab => post("window/new", json!({ "type": "tab" })),
            Command::Tab => ("GET", "window".into(), Value::Null),
            Command::ToTab(handle) => post("window", json!({ "handle": handle })),
            Command::Picture => ("GET", "screenshot".into(), Value::Null),
            Command::Cdp { method, parameters } => post(
                "goog/cdp/execute",
                json!({ "cmd": method, "params": parameters }),
            ),
            Command::Log(kind) => post("se/log", json!({ "type": kind })),
        }
    }

    /// Name and parameters for Marionette.
    pub fn over_marionette(&self) -> (&'static str, Value) {
        match self {
            Command::Goto(url) => ("WebDriver:Navigate", json!({ "url": url })),
            Command::Run { script, arguments } => (
                "WebDriver:ExecuteScript",
                json!({ "script": script, "args": arguments }),
            ),
            Command::Act(actions) => ("WebDriver:PerformActions", json!({ "actions": actions })),
            Command::LetGo => ("WebDriver:ReleaseActions", json!({})),
            Command::Clear(element) => ("WebDriver:ElementClear", json!({ "id": element })),
            Command::Write { element, text } => (
                "WebDriver:ElementSendKeys",
                json!({ "id": element, "text": text }),
            ),
            Command::Window { width, height } => (
                "WebDriver:SetWindowRect",
                json!({ "width": width, "height": height }),
            ),
            Command::NewTab => ("WebDriver:NewWindow", json!({ "type": "tab" })),
            Command::Tab => ("WebDriver:GetWindowHandle", json!({})),
            Command::ToTab(handle) => ("WebDriver:SwitchToWindow", json!({ "handle": handle })),
            Command::Picture => ("WebDriver:TakeScreenshot", json!({ "full": false })),
            Command::Cdp { method, .. } => panic!("Firefox does not know {method}"),
            Command::Log(kind) => panic!("Firefox has no log called {kind}"),
        }
    }
}
