//! The page of the desk starts here, nothing else does.

#[cfg(target_arch = "wasm32")]
fn main() {
    ui::desk_page::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This program is a page. Run it with `sh tools/run`; on a command line use `desk`.");
    std::process::exit(2);
}
