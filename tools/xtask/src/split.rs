//! Cuts the compiled page into the part that starts it and those that are loaded later.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::Module;
use wasm_split_cli_support::{transform, Options};
use wasmparser::{CustomSectionReader, Parser};

use crate::Outcome;

/// The module under which the main part asks for the loaders of the others.
pub const LINK: &str = "./__wasm_split.js";

/// A page in parts.
pub struct Parts {
    /// What starts the page; its glue is still to be made.
    pub main: Vec<u8>,
    /// The script that loads the others. It names them as `"./name.wasm"`.
    pub link: String,
    /// The others, each with its name.
    pub others: Vec<(String, Vec<u8>)>,
}

/// Cuts a compiled page at its split points. Writes into an empty folder, since the splitter does.
pub fn split(compiled: &Path, folder: &Path) -> Outcome<Parts> {
    let trouble = |e: &dyn std::fmt::Display| format!("The page could not be cut into parts: {e}.");
    let whole = std::fs::read(compiled).map_err(|e| trouble(&e))?;
    if folder.exists() {
        std::fs::remove_dir_all(folder).map_err(|e| trouble(&e))?;
    }
    let main = folder.join("main.wasm");
    let mut options = Options::new(&whole);
    options.output_dir = folder;
    options.main_out_path = &main;
    options.link_name = LINK;
    let cut = transform(options).map_err(|e| trouble(&format!("{e:#}")))?;
    let read = |path: &PathBuf| std::fs::read(path).map_err(|e| trouble(&e));
    let mut others = Vec::new();
    for path in &cut.split_modules {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let bytes = lean(&read(path)?).map_err(|e| trouble(&e))?;
        others.push((name.into_owned(), bytes));
    }
    others.sort();
    let link = String::from_utf8(read(&folder.join(LINK))?).map_err(|e| trouble(&e))?;
    // What it imports is the main part's own start, beside which it will stand.
    let link = link
        .lines()
        .filter(|line| !line.starts_with("import "))
        .map(|line| format!("{line}\n"))
        .collect();
    Ok(Parts {
        main: read(&main)?,
        link,
        others,
    })
}

/// A part with its numbers as short as they can be (the linker leaves room for five bytes in each) and
/// without names and other sections that no browser reads.
fn lean(part: &[u8]) -> Result<Vec<u8>, Error> {
    struct Lean;
    impl Reencode for Lean {
        type Error = std::convert::Infallible;
        fn parse_custom_section(
            &mut self,
            _: &mut Module,
            _: CustomSectionReader<'_>,
        ) -> Result<(), Error> {
            Ok(())
        }
    }
    let mut module = Module::new();
    Lean.parse_core_module(&mut module, Parser::new(0), part)?;
    Ok(module.finish())
}

/// The glue of the main part with the script that loads the others in it: two scripts that import each
/// other could not carry hashes of what they hold in their names.
pub fn joined(glue: &str, link: &str) -> Outcome<String> {
    let import = |line: &str| {
        let name = line.strip_prefix("import * as ")?;
        line.contains(LINK)
            .then(|| name.split(' ').next().unwrap_or_default().to_owned())
    };
    let export = |line: &str| {
        let name = line.strip_prefix("export const ")?;
        Some(name.split(' ').next().unwrap_or_default().to_owned())
    };
    let loaders: Vec<String> = link.lines().filter_map(export).collect();
    let names: Vec<String> = glue.lines().filter_map(import).collect();
    if loaders.is_empty() || names.is_empty() {
        return Err(
            "The glue of the page loads no part; look at the splitter's version.".to_owned(),
        );
    }
    let mut text = String::new();
    for line in glue.lines().filter(|line| import(line).is_none()) {
        writeln!(text, "{line}").expect("text takes text");
    }
    text.push_str(&link.replace("export const ", "const "));
    let all = loaders.join(", ");
    for name in names {
        writeln!(text, "const {name} = {{ {all} }};").expect("text takes text");
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::joined;

    #[test]
    fn the_loaders_stand_in_the_glue_under_the_name_that_it_uses() {
        let glue = "import * as links from \"./__wasm_split.js\"\nuse(links);";
        let link = "const fetcher = 1;\nexport const load_desk = fetcher;\n";
        assert_eq!(
            joined(glue, link).unwrap(),
            "use(links);\nconst fetcher = 1;\nconst load_desk = fetcher;\nconst links = { load_desk };\n"
        );
    }

    #[test]
    fn glue_without_parts_is_refused() {
        assert!(joined("export default init;", "").is_err());
    }
}
