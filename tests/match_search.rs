//! A match among many is found by words and by its day, the day as people of each language write it.

mod support;

use reports::fits;
use support::language::in_spanish;
use text::setup::library::date_words;

const DAY: &str = "2026-05-09, 14:00";

fn finds(scheduled: Option<&str>, day: &str, words: &str) -> bool {
    let parts = [
        "Otters",
        "Rote Füchse",
        "Hall by the river",
        "17/3",
        "Peñón",
    ];
    let mut parts: Vec<String> = parts.map(str::to_owned).into();
    parts.extend(scheduled.map(str::to_owned));
    fits(&parts, scheduled, day, words, date_words())
}

#[test]
fn every_word_must_stand_somewhere() {
    let finds = |words: &str| finds(None, "2026-05-09", words);
    assert!(finds("") && finds("otters") && finds("  OTT  river "));
    assert!(finds("FÜCHSE") && finds("2026-05") && finds("17"));
    assert!(!finds("herons") && !finds("otters herons"));
    // Words of two fields do not run together.
    assert!(!finds("river17"));
    // What looks like a date may be something else.
    assert!(finds("17/3 otters"));
    assert!(fits(&[], None, "2026-05-09", "05-09", date_words()));
}

/// Whoever types quickly on a phone leaves the accents out; what a computer wrote may hold them by themselves.
#[test]
fn an_accent_makes_no_difference() {
    let finds = |words: &str| finds(None, DAY, words);
    assert!(finds("penon") && finds("peñon") && finds("PEÑÓN") && finds("fuchse"));
    assert!(finds("Pen\u{303}o\u{301}n"));
    assert!(!finds("peson"));
    let parts = ["Pen\u{303}o\u{301}n".to_owned()];
    assert!(fits(&parts, None, DAY, "peñón", date_words()));
}

#[test]
fn a_day_is_found_as_people_write_it() {
    let finds = |words: &str| finds(None, DAY, words);
    for words in [
        "9 May",
        "may 9",
        "9. May 2026",
        "May 9th, 2026",
        "the 9th of May",
        "May the 9th 2026",
        "may",
        "9.5.",
        "9.5.26",
        "09.05.2026",
        "9/5",
        "5/9/2026",
        "2026-05-09",
        "otters 9 may river",
    ] {
        assert!(finds(words), "{words}");
    }
    for words in [
        "8 May",
        "9 June",
        "9.6.",
        "9.5.25",
        "2025-05-09",
        "may herons",
        "19 may",
        "the 8th of May",
        "the 9th of",
    ] {
        assert!(!finds(words), "{words}");
    }
}

#[test]
fn a_day_is_found_as_people_write_it_in_spanish() {
    let finds = |words: &str| in_spanish(|| finds(None, DAY, words));
    for words in [
        "9 de mayo de 2026",
        "el 9 de Mayo",
        "9 mayo",
        "9 may.",
        "mayo del 2026",
        "mayo",
        "9/5",
        "otters 9 de mayo river",
    ] {
        assert!(finds(words), "{words}");
    }
    for words in [
        "8 de mayo",
        "9 de junio",
        "9 de mayo de 2025",
        "mayo herons",
        "9 de",
    ] {
        assert!(!finds(words), "{words}");
    }
    // A word is a word where no date begins with it.
    let parts = ["Casa de la Juventud".to_owned()];
    let club = |words: &str| in_spanish(|| fits(&parts, None, DAY, words, date_words()));
    assert!(club("casa de la juventud") && club("la juventud 9 de mayo") && !club("del"));
}

/// Each month by its name, by what calendars make of it, and by the other name that it has; the first of a month
/// has a name as well.
#[test]
fn every_month_is_known_in_both_languages() {
    let english = "jan feb mar apr may jun jul aug sep oct nov dec";
    let spanish = "ene feb mar abr may jun jul ago sep oct nov dic";
    for (place, (english, spanish)) in english.split(' ').zip(spanish.split(' ')).enumerate() {
        let day = format!("2026-{:02}-01", place + 1);
        let other = format!("2026-{:02}-01", (place + 1) % 12 + 1);
        let english = format!("1st {english}");
        assert!(finds(None, &day, &english) && !finds(None, &other, &english));
        let spanish = format!("1 {spanish}");
        let finds = |day: &str| in_spanish(|| finds(None, day, &spanish));
        assert!(finds(&day) && !finds(&other), "{spanish}");
    }
    let finds = |words: &str| in_spanish(|| finds(None, "2026-09-01", words));
    for words in [
        "setiembre",
        "septiembre",
        "sept.",
        "1º de septiembre",
        "1.º de setiembre",
        "1ro de septiembre",
        "primero de septiembre",
    ] {
        assert!(finds(words), "{words}");
    }
    assert!(!finds("segundo de septiembre"));
}

#[test]
fn the_day_it_was_planned_for_counts_too() {
    let finds = |words: &str| finds(Some("2026-06-01T10:00"), "2026-05-31, 23:50", words);
    assert!(finds("1 June") && finds("31 May") && !finds("2 June"));
}
