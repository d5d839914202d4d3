//! Where things lie on this machine.

use std::path::PathBuf;

use crate::compile::Build;

/// The source tree and the folder that builds go to.
pub struct Tree {
    /// The folder of the workspace's `Cargo.toml`.
    pub root: PathBuf,
    /// Cargo's target folder.
    pub target: PathBuf,
}

impl Tree {
    /// The tree that this program belongs to.
    pub fn here() -> Tree {
        // Cargo says it when it runs a program; what was true when the program was compiled may
        // not be, if two checkouts share one target folder.
        let mine = std::env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = mine
            .ancestors()
            .nth(2)
            .expect("xtask lies two folders below the root")
            .to_path_buf();
        let target = match std::env::var_os("CARGO_TARGET_DIR") {
            Some(folder) => root.join(folder),
            None => root.join("target"),
        };
        Tree { root, target }
    }

    /// Where a build of the page goes unless another folder is asked for.
    pub fn dist(&self, build: Build) -> PathBuf {
        self.target.join(match build {
            Build::Release => "dist",
            Build::Dev => "dist-dev",
        })
    }
}
