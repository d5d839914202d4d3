//! Puts the page together: hashed names, style sheets, icons, and the list that the service
//! worker keeps.
//!
//! Sources name each other plainly, as `"./loader.js"` in double quotes. Every file but the
//! three whose address must stay (`index.html`, `sw.js`, `manifest.webmanifest`) gets the
//! hash of its content into its name, and whoever mentions it is rewritten. A file that nobody
//! mentions, or a mention of no file, ends the build.

use std::fmt::Write as _;
use std::path::Path;

use base64::Engine as _;
use sha2::{Digest, Sha256};

use crate::compile::{compile, Build};
use crate::icon::Icon;
use crate::module::{bind, too_new, understood};
use crate::split::{joined, split};
use crate::tree::Tree;
use crate::Outcome;

/// The binaries that the browser loads: the page, and the reader of codes that only some phones need.
const MODULES: [&str; 2] = [PAGE, READER];
const PAGE: &str = "dutystand";
const READER: &str = "reader";

/// What stands in `assets/` and is not made by this program.
const SCRIPTS: [&str; 3] = ["early.js", "loader.js", "too-old.js"];

/// The typeface of scores, shirt numbers and clocks, which `tools/figures` makes.
const FIGURES: &str = "figures.woff2";

/// The icons, which `tools/icons` makes, and the line in `index.html` that gives way to them.
const ICONS: &str = "icons.svg";
const ICONS_MARK: &str = "<!-- icons -->";

/// Under which licences others let us use what stands beside it.
const LICENCES: &str = "licences";

/// The pictures of the screens that README.md shows; they are no part of the page.
const PICTURES: &str = "screens";

/// Sheets that must come before the others, if they are there; the rest follow by name.
const FIRST_SHEETS: [&str; 2] = ["tokens.css", "base.css"];

/// Sheets that stand alone: their part of the program loads them, and the start does without.
const LATER_SHEETS: [&str; 2] = ["desk.css", "learn.css"];

/// The line in `assets/sw.js` that gives way to the list.
const LIST_MARK: &str = "const FILES = [];";
/// The line in `assets/sw.js` that gives way to the version.
const VERSION_MARK: &str = "const VERSION = \"unbuilt\";";

/// Builds the page into `out`, which holds nothing else afterwards.
pub fn dist(tree: &Tree, build: Build, out: &Path) -> Outcome<()> {
    ours_to_replace(out)?;
    let mut site = Site::default();
    let assets = tree.root.join("assets");

    let [page, reader] = compile(tree, build, MODULES)?;
    let parts = split(&page, &tree.target.join("parts"))?;
    for (name, bytes) in parts.others {
        understood(&bytes).map_err(|e| too_new(&name, &e))?;
        site.add_hashed(&name, bytes);
    }
    let module = bind(parts.main, PAGE, build)?;
    let link = site.rewrite("the script that loads the parts", &parts.link)?;
    site.add_module(PAGE, joined(&module.glue, &link)?, module.wasm);
    let read_compiled =
        std::fs::read(&reader).map_err(|e| format!("Cannot read {}: {e}.", reader.display()))?;
    let module = bind(read_compiled, READER, build)?;
    site.add_module(READER, module.glue, module.wasm);
    let style = tree.root.join("style");
    site.add_hashed(FIGURES, read_bytes(&assets.join(FIGURES))?);
    let sheets = site.rewrite("the style sheets", &styles(&style)?)?;
    site.add_hashed("style.css", sheets.into_bytes());
    for name in LATER_SHEETS {
        site.add_hashed(name, read(&style.join(name))?.into_bytes());
    }
    let drawing = read(&assets.join("icon.svg"))?;
    for (name, png) in Icon::read(&drawing)?.pngs() {
        site.add_hashed(name, png);
    }
    site.add_hashed("icon.svg", drawing.into_bytes());
    for name in SCRIPTS {
        let text = site.rewrite(name, &read(&assets.join(name))?)?;
        site.add_hashed(name, text.into_bytes());
    }
    let page = with_icons(
        &read(&tree.root.join("index.html"))?,
        &read(&assets.join(ICONS))?,
    )?;
    let manifest = read(&assets.join("manifest.webmanifest"))?;
    for (name, text) in [("manifest.webmanifest", manifest), ("index.html", page)] {
        let text = site.rewrite(name, &text)?;
        site.add(name, text.into_bytes());
    }
    site.all_mentioned()?;
    nothing_left_out(&assets)?;

    let worker = site.worker(&read(&assets.join("sw.js"))?)?;
    site.add("sw.js", worker.into_bytes());
    site.write(out)?;
    println!("The page is in {}.", out.display());
    Ok(())
}

/// What is published, as it grows.
#[derive(Default)]
struct Site {
    files: Vec<File>,
}

struct File {
    /// As the sources name it.
    plain: String,
    /// As it is published.
    name: String,
    bytes: Vec<u8>,
    mentioned: bool,
}

impl Site {
    fn add(&mut self, name: &str, bytes: Vec<u8>) {
        self.files.push(File {
            plain: name.into(),
            name: name.into(),
            bytes,
            mentioned: true,
        });
    }

    fn add_module(&mut self, name: &str, glue: String, wasm: Vec<u8>) {
        self.add_hashed(&format!("{name}_bg.wasm"), wasm);
        self.add_hashed(&format!("{name}.js"), glue.into_bytes());
    }

    fn add_hashed(&mut self, plain: &str, bytes: Vec<u8>) {
        let (stem, extension) = plain
            .rsplit_once('.')
            .expect("every file here has an extension");
        let name = format!("{stem}-{}.{extension}", &hex(&Sha256::digest(&bytes))[..12]);
        self.files.push(File {
            plain: plain.into(),
            name,
            bytes,
            mentioned: false,
        });
    }

    /// Puts published names in the place of every `"./plain"`.
    fn rewrite(&mut self, who: &str, text: &str) -> Outcome<String> {
        let mut done = String::new();
        let mut rest = text;
        while let Some((before, after)) = rest.split_once("\"./") {
            let (plain, behind) = after
                .split_once('"')
                .ok_or(format!("{who} has a quotation mark without a second one."))?;
            // `"./"` alone is the page itself.
            let name = if plain.is_empty() {
                ""
            } else {
                let file = self
                    .files
                    .iter_mut()
                    .find(|file| file.plain == plain)
                    .ok_or(format!(
                        "{who} mentions ./{plain}, which is not part of the page."
                    ))?;
                file.mentioned = true;
                file.name.as_str()
            };
            write!(done, "{before}\"./{name}\"").expect("text takes text");
            rest = behind;
        }
        done.push_str(rest);
        Ok(done)
    }

    fn all_mentioned(&self) -> Outcome<()> {
        match self.files.iter().find(|file| !file.mentioned) {
            None => Ok(()),
            Some(file) => Err(format!(
                "Nobody mentions ./{}, so no browser would ever load it.",
                file.plain
            )),
        }
    }

    /// The service worker with its list: each file with the hash that its bytes must have.
    fn worker(&self, source: &str) -> Outcome<String> {
        let mut list = String::from("const FILES = [\n");
        let mut all = Sha256::new();
        for file in &self.files {
            let hash = Sha256::digest(&file.bytes);
            // Hosts differ in whether they redirect from index.html; none redirects the folder.
            let name = if file.name == "index.html" {
                ""
            } else {
                file.name.as_str()
            };
            let integrity = base64::engine::general_purpose::STANDARD.encode(hash);
            writeln!(list, "  [\"./{name}\", \"sha256-{integrity}\"],").expect("text takes text");
            all.update(name);
            all.update(hash);
        }
        list.push_str("];");
        let version = format!("const VERSION = \"{}\";", &hex(&all.finalize())[..12]);
        for mark in [LIST_MARK, VERSION_MARK] {
            if source.matches(mark).count() != 1 {
                return Err(format!(
                    "assets/sw.js must hold the line `{mark}` exactly once."
                ));
            }
        }
        Ok(source
            .replace(LIST_MARK, &list)
            .replace(VERSION_MARK, &version))
    }

    /// Writes beside the wanted folder first, so that a failure leaves the last good build.
    fn write(&self, out: &Path) -> Outcome<()> {
        let trouble = |e: std::io::Error| format!("Cannot write {}: {e}.", out.display());
        let mut fresh = out.as_os_str().to_owned();
        fresh.push(".new");
        let fresh = Path::new(&fresh);
        if fresh.exists() {
            std::fs::remove_dir_all(fresh).map_err(trouble)?;
        }
        std::fs::create_dir_all(fresh).map_err(trouble)?;
        for file in &self.files {
            std::fs::write(fresh.join(&file.name), &file.bytes).map_err(trouble)?;
        }
        if out.exists() {
            std::fs::remove_dir_all(out).map_err(trouble)?;
        }
        std::fs::rename(fresh, out).map_err(trouble)
    }
}

/// The page with the icons in it, so that none of them is ever on its way.
fn with_icons(page: &str, icons: &str) -> Outcome<String> {
    if page.matches(ICONS_MARK).count() != 1 {
        return Err(format!("index.html must hold `{ICONS_MARK}` exactly once."));
    }
    Ok(page.replace(ICONS_MARK, icons.trim_end()))
}

/// Never empties a folder that holds something else than an earlier build.
fn ours_to_replace(out: &Path) -> Outcome<()> {
    let empty = || std::fs::read_dir(out).is_ok_and(|mut entries| entries.next().is_none());
    if !out.exists() || out.join("sw.js").is_file() || empty() {
        return Ok(());
    }
    Err(format!(
        "{} holds something else: give another --out.",
        out.display()
    ))
}

/// All sheets that the start needs as one, each under its name.
fn styles(folder: &Path) -> Outcome<String> {
    let trouble = |e: std::io::Error| format!("Cannot read {}: {e}.", folder.display());
    let mut names = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(trouble)? {
        let name = entry
            .map_err(trouble)?
            .file_name()
            .to_string_lossy()
            .into_owned();
        if name.ends_with(".css") && !LATER_SHEETS.contains(&name.as_str()) {
            names.push(name);
        }
    }
    let rank = |name: &String| {
        FIRST_SHEETS
            .iter()
            .position(|first| first == name)
            .unwrap_or(FIRST_SHEETS.len())
    };
    names.sort_by(|a, b| (rank(a), a).cmp(&(rank(b), b)));
    let mut all = String::new();
    for name in names {
        write!(all, "/* {name} */\n{}\n", read(&folder.join(&name))?).expect("text takes text");
    }
    Ok(all)
}

/// A file in `assets/` that this program does not know would silently be missing from the page.
fn nothing_left_out(assets: &Path) -> Outcome<()> {
    let known = |name: &str| {
        SCRIPTS.contains(&name)
            || [PICTURES, LICENCES, FIGURES, ICONS].contains(&name)
            || ["icon.svg", "manifest.webmanifest", "sw.js"].contains(&name)
    };
    let trouble = |e: std::io::Error| format!("Cannot read {}: {e}.", assets.display());
    for entry in std::fs::read_dir(assets).map_err(trouble)? {
        let name = entry
            .map_err(trouble)?
            .file_name()
            .to_string_lossy()
            .into_owned();
        if !known(&name) {
            return Err(format!(
                "assets/{name} is not part of the page: name it in tools/xtask/src/site.rs."
            ));
        }
    }
    Ok(())
}

fn read(path: &Path) -> Outcome<String> {
    std::fs::read_to_string(path).map_err(|e| format!("Cannot read {}: {e}.", path.display()))
}

fn read_bytes(path: &Path) -> Outcome<Vec<u8>> {
    std::fs::read(path).map_err(|e| format!("Cannot read {}: {e}.", path.display()))
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        write!(text, "{byte:02x}").expect("text takes text");
        text
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with(plain: &str) -> Site {
        let mut site = Site::default();
        site.add_hashed(plain, b"content".to_vec());
        site
    }

    #[test]
    fn a_mention_becomes_the_published_name() {
        let mut site = with("loader.js");
        let text = site
            .rewrite("index.html", "<a href=\"./loader.js\"> <b href=\"./\">")
            .unwrap();
        // SHA-256 of "content", first twelve digits, by `printf content | sha256sum`.
        assert_eq!(
            text,
            "<a href=\"./loader-ed7002b439e9.js\"> <b href=\"./\">"
        );
        site.all_mentioned().unwrap();
    }

    #[test]
    fn a_mention_of_no_file_is_refused() {
        let trouble = with("loader.js")
            .rewrite("index.html", "\"./loder.js\"")
            .unwrap_err();
        assert_eq!(
            trouble,
            "index.html mentions ./loder.js, which is not part of the page."
        );
    }

    #[test]
    fn a_file_that_nobody_mentions_is_refused() {
        assert!(with("loader.js").all_mentioned().is_err());
    }

    #[test]
    fn one_changed_byte_changes_the_version_of_the_worker() {
        let source = format!("{LIST_MARK}\n{VERSION_MARK}\n");
        let version = |bytes: &[u8]| {
            let mut site = Site::default();
            site.add("index.html", bytes.to_vec());
            site.worker(&source)
                .unwrap()
                .lines()
                .last()
                .unwrap()
                .to_owned()
        };
        assert_ne!(version(b"a"), version(b"b"));
        assert_eq!(version(b"a"), version(b"a"));
    }

    #[test]
    fn a_worker_without_its_marks_is_refused() {
        assert!(Site::default().worker("const FILES = [1];").is_err());
    }
}
