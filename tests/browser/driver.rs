//! A browser, as a test wants it: go there, find that, tap it, wait until this is so.
//!
//! Our own small client: WebDriver (W3C Recommendation) over HTTP for Chromium and WebKit,
//! Firefox's Marionette (the same commands over a socket) for Firefox. It needs the standard
//! library and JSON, compiles in seconds and matches no version of anything.
//!
//! Every method panics when the browser does not do its part: the test has failed then.

mod command;
mod engine;
mod hands;
mod processes;
mod shown;
mod wire;

use std::path::Path;
use std::time::{Duration, Instant};

use serde_json::{json, Value};

use command::Command;
pub use engine::Engine;
use engine::Running;

/// How long anything may take before it counts as never. Generous, because it decides nothing
/// but how soon a failure is seen.
const PATIENCE: Duration = Duration::from_secs(20);

/// The key of an element reference (WebDriver, "Elements").
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// Finds what can be operated and is called so: by `aria-label`, label, or its own text, without
/// what is hidden from whoever listens.
const BY_NAME: &str = "
    const wanted = arguments[0];
    const said = (e) => {
      const texts = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
      const words = [];
      while (texts.nextNode()) {
        const { parentElement: around, data } = texts.currentNode;
        if (!around.closest('[aria-hidden=true], script, style')) words.push(data);
      }
      return words.join(' ');
    };
    const called = (e) => (e.getAttribute('aria-label')
        ?? (e.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean)
            .map((id) => document.getElementById(id)?.innerText).join(' '))
        || (e.labels?.[0] && said(e.labels[0])) || said(e) || e.value || '';
    const kinds = 'a[href], button, input, select, textarea, summary, [role], [tabindex]';
    const around = document.querySelector(arguments[1]);
    return [...around?.querySelectorAll(kinds) ?? []].filter((e) =>
        called(e).replace(/\\s+/g, ' ').trim() === wanted
        && e.getClientRects().length > 0 && !e.closest('[inert]'));
";

/// Of an element that the page has taken away.
const GONE: &str = "is gone";

/// A running browser with one page.
pub struct Browser {
    engine: Engine,
    running: Running,
    /// Whether it types as people do, one key after the other.
    by_key: bool,
    /// Where a finger was last, and when.
    finger: Option<((i64, i64), Instant)>,
}

/// One of the browser's open pages.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tab(String);

/// Something on the page.
#[derive(Clone, serde::Serialize)]
pub struct Element(Value);

impl Browser {
    /// Starts a browser on a profile folder, on a phone-sized screen with a touch surface as far
    /// as the engine allows; with further switches, which only Chromium takes.
    pub fn start(engine: Engine, profile: &Path, switches: &[String]) -> Browser {
        let running = engine.start(profile, switches);
        let mut browser = Browser {
            engine,
            running,
            by_key: false,
            finger: None,
        };
        browser.screen(360, 740);
        browser
    }

    /// Which engine this is.
    pub fn engine(&self) -> Engine {
        self.engine
    }

    /// Opens an address.
    pub fn goto(&mut self, url: &str) {
        self.must(Command::Goto(url));
    }

    /// One step back in the history, as the phone's own button does.
    pub fn back(&mut self) {
        self.run("history.back(); return null;", json!([]));
    }

    /// Loads the page again, as a person would, and waits until the old one is gone. The
    /// drivers' own reload will not do: Firefox's goes past the service worker.
    pub fn reload(&mut self) {
        // A mark on the document, not a variable: Firefox's driver runs scripts beside the page.
        self.run(
            "document.documentElement.dataset.old = ''; location.reload();",
            json!([]),
        );
        self.wait_until(
            "the old page is gone",
            "!('old' in document.documentElement.dataset)",
        );
    }

    /// Runs the body of a function in the page, with `arguments`, and gives what it returns.
    pub fn run(&mut self, script: &str, arguments: Value) -> Value {
        self.must(Command::Run { script, arguments })
    }

    /// The value of an expression; a promise is waited for.
    pub fn value(&mut self, expression: &str) -> Value {
        self.run(&format!("return ({expression});"), json!([]))
    }

    /// Waits until an expression is true.
    pub fn wait_until(&mut self, what: &str, expression: &str) {
        let begun = Instant::now();
        let script = format!("return Boolean({expression});");
        loop {
            // While a page gives way to the next one, a question may find neither.
            let answer = self.try_to(Command::Run {
                script: &script,
                arguments: json!([]),
            });
            if matches!(answer, Ok(Value::Bool(true))) {
                return;
            }
            if begun.elapsed() > PATIENCE {
                let page = self.try_to(Command::Run {
                    script: "return location.href + '\\n' + document.body.innerText;",
                    arguments: json!([]),
                });
                panic!("waited in vain until {what}; last answer {answer:?}; the page: {page:?}");
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// The first element that a CSS selector finds; waits for it.
    pub fn find(&mut self, css: &str) -> Element {
        self.wait_until(
            &format!("there is a {css}"),
            &format!("document.querySelector({}) !== null", json!(css)),
        );
        Element(self.run("return document.querySelector(arguments[0]);", json!([css])))
    }

    /// The one element that can be operated and is called so; waits for it.
    pub fn find_named(&mut self, name: &str) -> Element {
        self.find_named_in("body", name)
    }

    /// The same within the first element that a CSS selector finds.
    pub fn find_named_in(&mut self, css: &str, name: &str) -> Element {
        let begun = Instant::now();
        loop {
            let mut found = self.named_in(css, name);
            match found.len() {
                1 => return found.remove(0),
                0 if begun.elapsed() < PATIENCE => std::thread::sleep(Duration::from_millis(20)),
                0 => panic!(
                    "nothing on the page is called {name:?}: {}",
                    self.value("document.body.innerText")
                ),
                many => panic!("{many} things on the page are called {name:?}"),
            }
        }
    }

    /// Everything visible that can be operated and is called so, now.
    pub fn named(&mut self, name: &str) -> Vec<Element> {
        self.named_in("body", name)
    }

    fn named_in(&mut self, css: &str, name: &str) -> Vec<Element> {
        match self.run(BY_NAME, json!([name, css])) {
            Value::Array(found) => found.into_iter().map(Element).collect(),
            other => panic!("a list of elements was expected, not {other}"),
        }
    }

    /// The visible text of the first element that a CSS selector finds.
    pub fn text(&mut self, css: &str) -> String {
        let Element(element) = self.find(css);
        let text = self.run("return arguments[0].innerText;", json!([element]));
        text.as_str().unwrap_or_default().to_owned()
    }

    /// The page that everything goes to.
    pub fn tab(&mut self) -> Tab {
        let handle = self.must(Command::Tab);
        Tab(handle.as_str().expect("a page has a name").to_owned())
    }

    /// Opens an empty second page, with the same storage; everything goes to it from now on.
    pub fn open_tab(&mut self) -> Tab {
        let made = self.must(Command::NewTab);
        let tab = Tab(made["handle"]
            .as_str()
            .expect("a page has a name")
            .to_owned());
        self.switch_to(&tab);
        self.screen(360, 740);
        tab
    }

    /// From now on everything goes to this page.
    pub fn switch_to(&mut self, tab: &Tab) {
        self.must(Command::ToTab(&tab.0));
    }

    /// Kills every process of the browser and of its driver with SIGKILL.
    pub fn kill(&mut self) {
        self.running.processes.kill();
    }

    fn must(&mut self, command: Command) -> Value {
        let said = format!("{command:?}");
        self.try_to(command).unwrap_or_else(|trouble| {
            panic!("{} refused {said:.300}: {trouble}", self.engine.name())
        })
    }

    fn try_to(&mut self, command: Command) -> Result<Value, String> {
        self.running.wire.ask(&command)
    }
}

fn id(reference: &Value) -> &str {
    reference[ELEMENT]
        .as_str()
        .expect("a reference to an element")
}
