//! Asks cargo for the WebAssembly binary.

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

/// Compiles one binary of the page's crate and says where it lies.
pub fn compile(tree: &Tree, build: Build, binary: &str) -> Outcome<PathBuf> {
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
            "--bin",
            binary,
        ])
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
    Ok(tree
        .target
        .join(TARGET)
        .join(folder)
        .join(format!("{binary}.wasm")))
}
