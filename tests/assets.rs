//! What others made and the page brings along: small, whole, and with its licence beside it.

use std::path::Path;

fn asset(name: &str) -> Vec<u8> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("assets")
        .join(name);
    std::fs::read(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// Made by `tools/figures`, which also says whether the kept file is what it makes.
#[test]
fn the_figures_are_small_and_have_their_licence() {
    let figures = asset("figures.woff2");
    // WOFF File Format 2.0, section 4: the signature, and at 8 the length of the whole file.
    assert_eq!(&figures[..4], b"wOF2");
    let says = u32::from_be_bytes(figures[8..12].try_into().expect("four bytes"));
    assert_eq!(usize::try_from(says).expect("a length"), figures.len());
    assert!(figures.len() <= 10 * 1024, "{} bytes", figures.len());
    let licence = String::from_utf8(asset("licences/barlow-condensed.txt")).expect("text");
    for words in [
        "The Barlow Project Authors",
        "SIL Open Font License, Version 1.1",
    ] {
        assert!(licence.contains(words), "{words}");
    }
}
