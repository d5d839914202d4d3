//! Every screen once: a picture in each size and theme for whoever looks at them (`shots/`), and
//! what a machine can say about it: accessibility, the size of what is tapped, nothing wider than
//! the phone.

use game::{notices, simulate_by, Entry, Kind, Notice, Phase, Timeline};
use learn::Topic;
use rules::{Preset, Sets, Signal, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Skipped, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "every_screen_before_a_match_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: before_a_match,
    },
    Test {
        name: "every_learning_page_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: to_learn,
    },
    Test {
        name: "every_screen_of_the_trainer_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: of_the_trainer,
    },
    Test {
        name: "every_screen_of_play_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: of_play,
    },
    Test {
        name: "every_screen_after_a_set_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: after_a_set,
    },
];

/// An ordinary phone, the smallest one, a large one, the first one lying, a tablet both ways, and a desk.
const SIZES: [(u32, u32); 7] = [
    (360, 740),
    (320, 568),
    (390, 844),
    (740, 360),
    (820, 1180),
    (1180, 820),
    (1440, 900),
];

/// Those of them on which a machine looks for hindrances: one where things stand below each other, one where
/// they stand beside each other.
const CLASSES: [(u32, u32); 2] = [(1180, 820), (360, 740)];

/// What is too small for a thumb, by its words: less than 48 CSS pixels either way (our own
/// measure, product principle). A label counts as part of its field, a line of text as text.
const SMALL: &str = "
    const kinds = 'a[href], button, input, select, summary, [role=button]';
    return [...document.querySelectorAll(kinds)].filter((e) => {
      if (e.closest('[inert]') || !e.checkVisibility()) return false;
      const whole = e.closest('label') ?? e;
      const box = whole.getBoundingClientRect();
      return box.width > 1 && (box.width < 47.5 || box.height < 47.5);
    }).map((e) => {
      const box = (e.closest('label') ?? e).getBoundingClientRect();
      const words = (e.getAttribute('aria-label') || e.innerText || e.id || e.outerHTML).slice(0, 60);
      return `${words.replace(/\\s+/g, ' ')}: ${Math.round(box.width)} x ${Math.round(box.height)}`;
    });";

/// What is wider than the screen, and words that are cut off without a sign.
pub const WIDE: &str = "
    const out = [];
    const root = document.documentElement;
    if (root.scrollWidth > Math.min(innerWidth, screen.width)) out.push(`the page is ${root.scrollWidth} wide`);
    for (const e of document.body.querySelectorAll('*')) {
      if (e.closest('svg') || e.closest('.visually-hidden') || !e.checkVisibility()) continue;
      const { overflowX, textOverflow, webkitLineClamp } = getComputedStyle(e);
      // Shown to screen readers only.
      if (e.clientWidth <= 1 || e.getBoundingClientRect().width <= 1) continue;
      const cut = overflowX === 'hidden' && textOverflow !== 'ellipsis' && webkitLineClamp === 'none' && e.scrollWidth > e.clientWidth + 1;
      const box = e.getBoundingClientRect();
      const outside = box.width > 0 && (box.right > innerWidth + 1 || box.left < -1) && !e.closest('.running-score, .rounds, .numbers');
      if (cut || outside) out.push(`${e.tagName}.${e.className}: ${e.innerText?.slice(0, 40)}`);
    }
    return out.slice(0, 5);";

/// Walks through screens and gathers what is wrong with them.
pub struct Look {
    wrong: Vec<String>,
    without_rules: Option<String>,
    /// Whether letters twice as large may make nothing wider than the screen.
    large: bool,
}

impl Look {
    /// Nothing was looked at yet.
    pub fn new() -> Look {
        Look {
            wrong: Vec::new(),
            without_rules: None,
            large: false,
        }
    }

    /// The same; letters twice as large are to fit as well.
    pub fn with_large_letters() -> Look {
        Look {
            large: true,
            ..Look::new()
        }
    }

    /// Looks at the screen as it is, in every size and theme, and leaves it upright and light.
    pub fn at(&mut self, referee: &mut Referee, name: &str) {
        referee.still();
        let browser = referee.browser();
        for theme in ["sunlight", "dark", "light"] {
            browser.run(
                "document.documentElement.dataset.theme = arguments[0];",
                json!([theme]),
            );
            for (width, height) in SIZES.into_iter().rev() {
                let in_class = CLASSES.contains(&(width, height));
                // Neither of the measures depends on the theme.
                if theme != "light" && !in_class {
                    continue;
                }
                browser.screen(width, height);
                for (what, script) in [("small", SMALL), ("wide", WIDE)] {
                    let found = browser.run(script, json!([]));
                    for line in found.as_array().into_iter().flatten() {
                        let line = line.as_str().unwrap_or_default();
                        self.wrong
                            .push(format!("{name} {width}x{height}, {what}: {line}"));
                    }
                }
                browser.picture(&format!("{name}-{width}x{height}-{theme}"));
                if !in_class {
                    continue;
                }
                match browser.hindrances() {
                    Ok(all) => self.wrong.extend(all.into_iter().map(|line| {
                        format!("{name} {width}x{height} {theme}, accessibility: {line}")
                    })),
                    Err(why) => self.without_rules = Some(why),
                }
            }
        }
        self.with_colours_of_the_system(referee, name);
        self.twice_as_large(referee, name);
    }

    /// A picture where the system chooses the colours: what is told apart by tone alone is gone there.
    fn with_colours_of_the_system(&mut self, referee: &mut Referee, name: &str) {
        let media =
            |value: &str| json!({ "features": [{ "name": "forced-colors", "value": value }] });
        let browser = referee.browser();
        browser.cdp("Emulation.setEmulatedMedia", media("active"));
        browser.screen(360, 740);
        browser.picture(&format!("{name}-360x740-forced"));
        browser.cdp("Emulation.setEmulatedMedia", media("none"));
    }

    /// Letters twice as large: a picture, and whether they make anything wider than the screen or cut a word.
    fn twice_as_large(&mut self, referee: &mut Referee, name: &str) {
        let browser = referee.browser();
        let size = "document.documentElement.style.fontSize = arguments[0]; return null;";
        browser.run(size, json!(["200%"]));
        for (width, height) in CLASSES {
            browser.screen(width, height);
            let found = browser.run(WIDE, json!([]));
            let found = found.as_array().filter(|_| self.large);
            for line in found.into_iter().flatten() {
                let line = line.as_str().unwrap_or_default();
                self.wrong
                    .push(format!("{name} {width}x{height} at 200 %, wide: {line}"));
            }
            browser.picture(&format!("{name}-{width}x{height}-large"));
        }
        browser.run(size, json!([""]));
    }

    /// What was wrong.
    pub fn done(self) -> Ran {
        assert!(self.wrong.is_empty(), "\n{}", self.wrong.join("\n"));
        self.without_rules.map_or(Ok(()), |why| Err(Skipped(why)))
    }
}

fn before_a_match(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::with_large_letters();
    referee.reads("None yet.");
    look.at(referee, "start-empty");
    referee.tap_at("#to-phone");
    referee.reads("Works offline.");
    referee.reads_at("#promise", "browser");
    look.at(referee, "this-phone");
    referee.tap("What this app does not replace");
    look.at(referee, "about");
    referee.tap("Back");
    referee.tap("Back");
    referee.tap_at("#to-signals");
    look.at(referee, "signals");
    referee.tap("1 Authorise the service");
    look.at(referee, "signal-learned");
    referee.tap("Back");
    referee.tap("Back");
    referee.tap_at("#new-match");
    look.at(referee, "new-match");
    referee.tap("More: competition, hall, rules in detail");
    let field = referee.browser().find_named("Points that win a set");
    referee.browser().write(&field, "none");
    look.at(referee, "new-match-more");
    referee.browser().write(&field, "25");
    referee.tap("School, seniors Full length, one libero");
    for (field, name) in [("Team A", A), ("Team B", B)] {
        let field = referee.browser().find_named(field);
        referee.browser().write(&field, name);
    }
    let time = referee.browser().find_named("Planned start");
    referee.browser().run(
        "arguments[0].value = '23:59'; arguments[0].dispatchEvent(new Event('input', { bubbles: true }));",
        json!([time]),
    );
    referee.tap("Open the match");
    referee.reads("Before the match");
    look.at(referee, "plan");
    referee.tap("Done: Own kit");
    referee.tap_at("#step-net");
    referee.tap("Problem");
    referee.tap("Record the problem");
    referee.reads("Do not start. Speak to the coach or the organiser.");
    look.at(referee, "check-failed");
    referee.tap("Caretaker");
    let note = referee.browser().find_named("What was done? (optional)");
    referee.browser().write(&note, "antenna changed");
    referee.tap("All good now");
    referee.tap_at("#step-net");
    referee.tap("Age group");
    for (field, height) in [
        ("Height in your competition, in metres", "2.15"),
        ("Middle", "2.15"),
        ("Left side line", "2.19"),
    ] {
        let field = referee.browser().find_named(field);
        referee.browser().write(&field, height);
    }
    referee.reads("2 cm are allowed");
    look.at(referee, "check-net");
    referee.tap_at("#step-ball");
    let gauge = referee.browser().find_named("What the gauge shows");
    referee.browser().write(&gauge, "4.4");
    referee.tap("No gauge?");
    look.at(referee, "check-ball");
    for step in ["briefing", "captains"] {
        referee.tap_at(&format!("#step-{step}"));
        look.at(referee, &format!("check-{step}"));
    }
    referee.tap_at("#late-team");
    look.at(referee, "late-team");
    referee.tap_at("#late-team");
    for check in [
        "Floor and free zone",
        "Ball",
        "First aid and exits",
        "Duty team briefed",
        "Captains' meeting",
    ] {
        referee.tap(&format!("Done: {check}"));
    }
    referee.tap("Open");
    for key in ["1", "2", "Add", "7", "Add"] {
        referee.tap(key);
    }
    referee.tap("Number 7");
    look.at(referee, "team-list");
    referee.tap("Remove");
    referee.tap("Number 12");
    referee.tap("Remove");
    referee.list(A, &[1, 2, 3, 4, 5, 6, 7], 4);
    referee.tap("Sign: captain, Otters");
    look.at(referee, "team-list-in");
    referee.list(B, &[11, 12, 13, 14, 15, 16, 17, 18], 16);
    referee.tap("Next: Toss");
    referee.tap(&format!("Heads: {A}"));
    look.at(referee, "toss");
    referee.tap("Toss the coin");
    look.at(referee, "toss-fell");
    referee.tap("Serve");
    referee.tap("Left side");
    look.at(referee, "toss-chosen");
    referee.tap("Record the toss");
    let timeline = referee.timeline();
    let first = timeline.state().opener_to_come().expect("a toss");
    let second = timeline.state().name(first.other()).to_owned();
    let first = timeline.state().name(first).to_owned();
    referee.tap("Next: Warm-up");
    referee.tap(&format!("Start: warm-up, {first}"));
    look.at(referee, "warm-up");
    referee.tap(&format!("End now: warm-up, {first}"));
    referee.tap(&format!("Start: warm-up, {second}"));
    referee.tap(&format!("End now: warm-up, {second}"));
    referee.tap("Next: Line-ups");
    for number in [7, 2, 3] {
        referee.tap(&format!("Number {number}"));
    }
    look.at(referee, "line-up");
    for place in [1, 2, 3] {
        referee.tap_at(&format!(".line-up-court .place-{place}"));
        referee.tap("Clear this place");
    }
    referee.tap_at(".line-up-court .place-1");
    referee.line_up(A, &[1, 2, 3, 4, 5, 6]);
    look.at(referee, "line-up-in");
    referee.line_up(B, &[11, 12, 13, 14, 15, 16]);
    referee.tap("Next: Last check");
    look.at(referee, "last-check");
    look.done()
}

/// A simulated match, cut off before the first entry at which something holds.
fn simulated(seed: u64, holds: impl Fn(&Timeline) -> bool) -> Option<Vec<Entry>> {
    let entries = simulate_by(Preset::International.rules(), seed);
    let mut timeline = Timeline::new();
    for entry in entries {
        timeline.push(entry);
        if holds(&timeline) {
            return Some(timeline.entries().to_vec());
        }
    }
    None
}

/// The first simulated match in which it does.
pub fn first_simulated(holds: impl Fn(&Timeline) -> bool) -> Vec<Entry> {
    (1..500)
        .find_map(|seed| simulated(seed, &holds))
        .expect("a simulated match comes there")
}

/// Notes as an observer makes them.
pub const NOTES: &str = r#"{"log":"volleyball-observer","version":1,"id":"n1","began":1764057600000,
    "teams":{"A":"Blue","B":"White"},"events":[{"at":20,"kind":"rally","won_by":"A"},
    {"at":25,"kind":"late_whistle","words":"The ball was down"},{"at":50,"kind":"rally","won_by":"B"},
    {"at":60,"kind":"good_calm"}]}"#;

/// A logbook with matches and goals.
pub const LOGBOOK: &str = r#"{"log":"volleyball-logbook","version":1,"matches":[
    {"id":"m1","date":"2026-11-28","role":"first_referee","level":"U14 girls","teams":"Otters, Herons",
     "minutes":62,"talk":"Late twice. Good calm.","next":"Look at the line judge first"},
    {"id":"m0","date":"2026-11-21","role":"scorer"}],"goals":[
    {"what":"matches","role":"scorer","count":3,"from":"School league"},
    {"what":"task","words":"A test of signals","done":"2026-11-20"}]}"#;

fn to_learn(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::new();
    let here = referee.stage.url();
    let mut places = vec![
        (String::new(), text::learn::book_more().to_owned()),
        ("decisions".into(), text::learn::decisions_more().into()),
        ("signals".into(), text::signals_more().into()),
        (
            "signals/19".into(),
            text::signal_how(Signal::NetTouch).into(),
        ),
        ("court".into(), text::learn::net_measured().into()),
        ("jobs".into(), text::learn::roles_more().into()),
        ("jobs/table".into(), text::learn::print().into()),
        (
            "jobs/first_referee".into(),
            text::learn::role_more(text::learn::Role::FirstReferee).into(),
        ),
        ("safety".into(), text::learn::care_more().into()),
        ("safety/head".into(), text::care_head().into()),
        ("observer".into(), text::learn::observer_how()[0].into()),
        ("observer/watch/n1".into(), "Good calm".into()),
        ("observer/notes/n1".into(), "2 notes".into()),
        ("logbook".into(), text::learn::goals().into()),
        ("logbook/match/m1".into(), text::learn::logged_kept().into()),
        ("logbook/goal".into(), text::learn::goal_what().into()),
    ];
    referee.open_file("notes.json", NOTES.as_bytes());
    referee.reads("notes.json: the notes of an observer are on this phone.");
    referee.open_file("logbook.json", LOGBOOK.as_bytes());
    referee.reads("logbook.json: 2 matches and 2 goals are new in your logbook.");
    for topic in Topic::ALL {
        let reads = text::learn::look_for(topic)[0];
        places.push((format!("decisions/{}", topic.code()), reads.into()));
    }
    for (place, reads) in places {
        referee.browser().goto(&format!("{here}#/learn/{place}"));
        referee.reads(&reads);
        let name = place.replace('/', "-");
        look.at(referee, &format!("learn-{name}"));
        referee.browser().screen(1180, 820);
        for theme in ["dark", "light"] {
            referee.browser().run(
                "document.documentElement.dataset.theme = arguments[0];",
                json!([theme]),
            );
            referee
                .browser()
                .full_picture(&format!("learn-{name}-1180x820-{theme}"));
        }
        referee.browser().screen(360, 740);
        referee
            .browser()
            .full_picture(&format!("learn-{name}-long"));
    }
    look.done()
}

fn of_the_trainer(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::new();
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/learn/trainer"));
    referee.reads(text::learn::trainer_how()[0]);
    look.at(referee, "trainer-choice");
    // The first session begins with a ball that goes out, then with one that is saved.
    referee.tap(text::learn::moving());
    referee.tap(text::learn::begin());
    referee.browser().find("#next");
    // The slow film has come to its end, and the margin is drawn in.
    std::thread::sleep(std::time::Duration::from_secs(4));
    look.at(referee, "trainer-margin");
    referee.tap(text::learn::stop());
    referee.tap(text::learn::once_more());
    referee.browser().find("#next");
    std::thread::sleep(std::time::Duration::from_secs(4));
    look.at(referee, "trainer-near-miss");
    referee.tap(text::learn::stop());
    look.at(referee, "trainer-end");
    for (place, name) in [
        (learn::Place::SecondReferee, "second"),
        (learn::Place::LineJudge, "line"),
    ] {
        referee.browser().goto(&format!("{here}#/learn"));
        referee.reads(text::learn::book_more());
        // A session that was left goes on, unless the page is loaded anew.
        referee.stage.reload();
        referee.browser().goto(&format!("{here}#/learn/trainer"));
        referee.tap(text::learn::place(place));
        referee.tap(text::learn::in_steps());
        referee.tap(text::learn::begin());
        for _ in 0..2 {
            referee.tap_at("#step");
        }
        look.at(referee, &format!("trainer-from-{name}"));
    }
    look.done()
}

fn of_play(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::new();
    let entries = first_simulated(|timeline| {
        let state = timeline.state();
        let calm = notices(state).is_empty();
        calm && state.phase() == Phase::Playing
            && state.set_number() == 2
            && state.score().a > 9
            && state.score().b > 9
            && timeline
                .check(&Entry::new(
                    timeline.next_number(),
                    Kind::TimeOut { team: Team::A },
                ))
                .is_ok()
    });
    referee.go_on_with("play", entries);
    referee.browser().find("#half-left");
    referee.point(Side::Left);
    look.at(referee, "play-reasons");
    referee.tap("Ball");
    referee.tap("Ball in");
    referee.reads("Ball in (14)");
    look.at(referee, "play-signal");
    let court = referee.court();
    assert!(court[0].places.len() == 6 && court[1].places.len() == 6);
    referee.tap_at("#time-out-left");
    referee.browser().find(".count-down");
    look.at(referee, "play-time-out");
    referee.tap_at("#change-right");
    referee.tap_at(".panel .numbers button");
    look.at(referee, "play-change");
    referee.tap_at("#panel-close");
    referee.tap_at("#more-left");
    look.at(referee, "play-more");
    for (panel, name) in [
        ("Misconduct", "conduct"),
        ("Somebody hurt", "hurt"),
        ("Fault found late", "late-fault"),
        ("New libero", "new-libero"),
        ("Incomplete or default", "cannot-play-on"),
    ] {
        referee.tap(panel);
        look.at(referee, &format!("play-{name}"));
        referee.tap_at("#panel-close");
        referee.tap_at("#more-left");
    }
    referee.tap_at("#panel-close");
    referee.tap_at("#replay");
    look.at(referee, "play-replay");
    referee.tap_at("#panel-close");
    referee.tap_at("#more-left");
    referee.tap("Misconduct");
    referee.tap_at(".panel .numbers button");
    look.at(referee, "play-conduct-level");
    referee.tap_at("#panel-close");
    referee.tap_at("#more-left");
    referee.tap("Somebody hurt");
    referee.tap("Without a number");
    look.at(referee, "play-care");
    referee.tap_at("#panel-close");
    referee.tap("Menu");
    look.at(referee, "play-menu");
    referee.tap("Name the teams");
    look.at(referee, "play-names");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap("Menu");
    referee.tap("Interrupt play");
    look.at(referee, "play-interrupt");
    referee.tap_at("#panel-close");
    referee.tap("Menu");
    referee.tap("Service clock, 8 seconds: off");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap_at("#whistle");
    look.at(referee, "play-service-clock");
    referee.tap("Menu");
    referee.tap("Large court");
    look.at(referee, "play-only-the-court");
    referee.tap_at("#lock");
    look.at(referee, "play-locked");
    referee.tap_at("#corner-1");
    referee.tap_at("#corner-2");
    referee.tap_at("#whole");
    referee.tap("Menu");
    referee.tap("Match log");
    look.at(referee, "log");
    referee.tap_at(".log .button");
    look.at(referee, "log-question");
    referee.tap_in("[role=dialog]", "Cancel");
    referee.tap_at(".log [aria-label^=Reason]");
    look.at(referee, "log-reason");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap("Back");
    referee.browser().find("#half-left");
    // One more request than there are, so that the advice is seen.
    while referee
        .browser()
        .value("document.querySelector('#refusal-sentence') === null")
        == json!(true)
    {
        referee.tap_at("#time-out-left");
    }
    look.at(referee, "refusal");
    referee.tap("Record it anyway");
    look.at(referee, "refusal-anyway");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap("Menu");
    referee.tap("Interrupt play");
    look.at(referee, "play-interrupted");
    look.done()
}

fn after_a_set(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::new();
    let rules = Preset::International.rules();
    assert_eq!(rules.sets, Sets::BestOf(5));
    let between = first_simulated(|timeline| timeline.state().phase() == Phase::BetweenSets);
    referee.go_on_with("between", between);
    referee.reads("After set 1");
    look.at(referee, "between-sets");
    referee.tap("Ball");
    look.at(referee, "between-reasons");

    referee.stage.open();
    let change =
        first_simulated(|timeline| notices(timeline.state()).contains(&Notice::ChangeCourts));
    referee.go_on_with("change", change);
    referee.reads("Change of courts now");
    look.at(referee, "play-change-courts");
    referee.tap("Courts changed");
    look.at(referee, "play-courts-changed");

    referee.stage.open();
    let over = first_simulated(|timeline| {
        timeline.state().phase() == Phase::Finished && timeline.state().sets().count() == 5
    });
    referee.go_on_with("over", over);
    look.at(referee, "sheet");
    referee.browser().full_picture("sheet-whole");
    // As on paper, A4 at 96 dots an inch.
    let media = |of: &str| json!({ "media": of });
    referee
        .browser()
        .cdp("Emulation.setEmulatedMedia", media("print"));
    referee.browser().screen(794, 1123);
    referee.browser().picture("sheet-paper");
    referee.browser().screen(360, 740);
    referee
        .browser()
        .cdp("Emulation.setEmulatedMedia", media(""));
    referee.tap("Back");
    referee.reads(" win ");
    look.at(referee, "match-over");
    referee.tap("Back");
    referee.reads("Matches on this phone");
    look.at(referee, "start");
    referee.tap_at("#quick-tally");
    look.at(referee, "tally");
    referee.point(Side::Left);
    look.at(referee, "tally-point");
    referee.tap("Menu");
    referee.tap("Make it a full match");
    referee.tap("School, juniors");
    look.at(referee, "tally-grows");
    look.done()
}
