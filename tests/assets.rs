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

/// Made by `tools/icons`; each icon that the screens name is one of the sprite, and none is there for nobody.
#[test]
fn every_icon_is_in_the_sprite_and_is_used() {
    let sprite = String::from_utf8(asset("icons.svg")).expect("text");
    let names = |text: &str, begins: &str| {
        let all = text.split(begins).skip(1);
        let mut names: Vec<String> = all
            .filter_map(|rest| Some(rest.split_once('"')?.0.to_owned()))
            .collect();
        names.sort();
        names.dedup();
        names
    };
    let kept = names(&sprite, "<symbol id=\"icon-");
    let used = names(include_str!("../src/ui/widgets/icon.rs"), " => \"");
    assert_eq!(kept, used);
    assert!(kept.len() > 5, "{kept:?}");
    assert_eq!(
        sprite.matches("<path d=").count(),
        sprite.matches("<path").count()
    );
    let licence = String::from_utf8(asset("licences/tabler-icons.txt")).expect("text");
    assert!(licence.contains("MIT License"));
}
