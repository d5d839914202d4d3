//! The page starts here, nothing else does.

#[cfg(target_arch = "wasm32")]
fn main() {
    ui::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!(
        "This program is the page. Run it with `sh tools/run`; on a command line use `desk`."
    );
    std::process::exit(2);
}
