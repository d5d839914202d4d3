//! Asks cargo for the WebAssembly binaries.

use std::path::PathBuf;
use std::process::Command;

use crate::tree::Tree;
use crate::Outcome;

const TARGET: &str = "wasm32-unknown-unknown";

/// How much work goes into the build.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Build {
    /// As it is published.
    Release,
    /// As quick as it can be had.
    Dev,
}

/// Compiles binaries of the page's crate, side by side, and says where each lies.
pub fn compile<const N: usize>(
    tree: &Tree,
    build: Build,
    binaries: [&str; N],
) -> Outcome<[PathBuf; N]> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(cargo);
    command
        .current_dir(&tree.root)
        .args([
            "build",
            "--locked",
            "--package",
            "dutystand",
            "--target",
            TARGET,
        ])
        .args(binaries.iter().flat_map(|binary| ["--bin", binary]))
        .env("CARGO_TARGET_DIR", &tree.target);
    // Only this one call may see the other compiler: with RUSTC set for everything, doctests
    // would mix two versions of the standard library.
    match std::env::var_os("WASM_RUSTC") {
        Some(rustc) => command.env("RUSTC", rustc),
        None => command.env_remove("RUSTC"),
    };
    let folder = match build {
        Build::Release => {
            command.arg("--release");
            "release"
        }
        Build::Dev => {
            // Without any optimising a page of this kind takes seconds to start; without debug
            // information the later steps have a tenth of the bytes to read.
            command
                .env("CARGO_PROFILE_DEV_OPT_LEVEL", "1")
                .env("CARGO_PROFILE_DEV_DEBUG", "0");
            "debug"
        }
    };
    let ended = command
        .status()
        .map_err(|trouble| format!("Cannot start cargo: {trouble}."))?;
    if !ended.success() {
        return Err(format!(
            "The page did not compile for {TARGET}; the reason stands above."
        ));
    }
    let folder = tree.target.join(TARGET).join(folder);
    Ok(binaries.map(|binary| folder.join(format!("{binary}.wasm"))))
}
