//! Builds, serves and weighs the page: `cargo xtask help` says how.

mod compile;
mod icon;
mod module;
mod server;
#[cfg(test)]
mod server_tests;
mod site;
mod size;
mod split;
mod tree;

use std::path::PathBuf;
use std::process::ExitCode;

use compile::Build;
use server::{Habits, Server, Site};
use tree::Tree;

const HELP: &str = "\
cargo xtask dist  [--dev] [--out FOLDER]    build the page into FOLDER
cargo xtask serve [--dev] [--out FOLDER] [--port N]
                                            serve that folder on 127.0.0.1
cargo xtask run   [--dev] [--out FOLDER] [--port N]
                                            build, then serve
cargo xtask size  [--dev] [--out FOLDER]    raw, gzip and brotli bytes of what was built; fails
                                            where a published build weighs more than it may

--dev   quick build, not optimised, and the server hands out a service worker that
        keeps nothing, so that a reload always shows the newest build
--out   default: dist in the target folder (dist-dev with --dev)
--port  default: 8017";

/// A service worker that lets everything through and clears what an earlier one kept.
const KEEPS_NOTHING: &str = "\
addEventListener('install', () => skipWaiting());
addEventListener('activate', (event) => event.waitUntil(
  caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))));
";

/// Every failure ends as one sentence for the person at the keyboard.
type Outcome<T> = Result<T, String>;

struct Wish {
    build: Build,
    out: PathBuf,
    port: u16,
}

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let command = words.next().unwrap_or_else(|| "help".into());
    let tree = Tree::here();
    let done = wish(&tree, words).and_then(|wish| match command.as_str() {
        "dist" => site::dist(&tree, wish.build, &wish.out),
        "serve" => serve(&wish),
        "run" => site::dist(&tree, wish.build, &wish.out).and_then(|()| serve(&wish)),
        "size" => size::print(&wish.out, wish.build == Build::Release),
        "help" | "--help" | "-h" => {
            println!("{HELP}");
            Ok(())
        }
        other => Err(format!("There is no command {other:?}.\n\n{HELP}")),
    });
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("{sentence}");
            ExitCode::FAILURE
        }
    }
}

fn wish(tree: &Tree, mut words: impl Iterator<Item = String>) -> Outcome<Wish> {
    let mut build = Build::Release;
    let mut out = None;
    let mut port = 8017;
    while let Some(word) = words.next() {
        let mut value = || {
            words
                .next()
                .ok_or(format!("{word} needs a value after it.\n\n{HELP}"))
        };
        match word.as_str() {
            "--dev" => build = Build::Dev,
            "--out" => out = Some(PathBuf::from(value()?)),
            "--port" => {
                let text = value()?;
                port = text
                    .parse()
                    .map_err(|_| format!("{text:?} is not a port number."))?;
            }
            _ => return Err(format!("{word:?} is not understood.\n\n{HELP}")),
        }
    }
    let out = out.unwrap_or_else(|| tree.dist(build));
    Ok(Wish { build, out, port })
}

/// Serves until the process is ended.
fn serve(wish: &Wish) -> Outcome<()> {
    if !wish.out.join("index.html").is_file() {
        return Err(format!(
            "Nothing is built in {} yet: run `cargo xtask dist` first.",
            wish.out.display()
        ));
    }
    let site = || Site {
        folder: wish.out.clone(),
        prefix: "/".into(),
        instead: match wish.build {
            Build::Release => Vec::new(),
            Build::Dev => vec![("sw.js".into(), KEEPS_NOTHING.into())],
        },
        habits: Habits::default(),
    };
    // The wanted port may be taken by an earlier run; any free one will do then.
    let server = Server::start(site(), wish.port, |_| ())
        .or_else(|_| Server::start(site(), 0, |_| ()))
        .map_err(|trouble| format!("Cannot listen on 127.0.0.1: {trouble}."))?;
    println!(
        "Dutystand is at http://127.0.0.1:{}/ on this machine. End it with Ctrl-C.",
        server.port
    );
    loop {
        std::thread::park();
    }
}
