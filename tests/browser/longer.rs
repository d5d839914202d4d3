//! A language that nobody speaks: every word longer by 40 %, and lines that run from right to left. Nothing is wider
//! than its place, no word leaves its button, and no court is turned round.

use game::{Phase, Timeline};
use rules::Preset;
use serde_json::{json, Value};

use crate::driver::{Browser, Engine};
use crate::kept::begun;
use crate::pictures::{first_simulated, LOGBOOK, NOTES, WIDE};
use crate::referee::{Referee, Side, A, B};
use crate::sealed::played;
use crate::stage::Stage;
use crate::support::{numbered, opening};
use crate::{Ran, Test};

/// The tests of this file. Another engine's window has a least size of its own.
pub const TESTS: &[Test] = &[
    Test {
        name: "longer_words_fit_on_the_court",
        engines: &[Engine::Chromium],
        run: on_the_court,
    },
    Test {
        name: "longer_words_fit_before_and_after_a_match",
        engines: &[Engine::Chromium],
        run: around_a_match,
    },
    Test {
        name: "longer_words_fit_where_there_is_to_learn_and_on_the_desk",
        engines: &[Engine::Chromium],
        run: to_learn_and_on_the_desk,
    },
    Test {
        name: "longer_words_that_do_not_fit_are_found",
        engines: &[Engine::Chromium],
        run: what_does_not_fit_is_found,
    },
];

/// The smallest phone, an ordinary one, the same lying, a tablet.
const SIZES: [(u32, u32); 4] = [(320, 568), (740, 360), (1180, 820), (360, 740)];

/// Lengthens each word by 40 % of its letters, with accents above and below; numbers and the names of teams stay.
/// `Translated.back` puts back what the page has not changed meanwhile.
const LENGTHEN: &str = "
    const names = arguments[0];
    const letters = 'éüîñåøžĄ';
    const longer = (text) => {
      let owed = 0, next = 0;
      return text.replace(/\\p{L}[\\p{L}\\p{M}\\u2019]*/gu, (word) => {
        if (names.includes(word)) return word;
        owed += word.length * 0.4;
        const more = Math.round(owed);
        owed -= more;
        return word + Array.from({ length: more }, () => letters[next++ % letters.length]).join('');
      });
    };
    const changed = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const node = texts.currentNode;
      if (node.parentElement.closest('script, style') || !/\\p{L}/u.test(node.data)) continue;
      const was = node.data;
      node.data = longer(was);
      changed.push([node, 'data', was, node.data]);
    }
    for (const field of document.querySelectorAll('[placeholder]')) {
      const was = field.placeholder;
      field.placeholder = longer(was);
      changed.push([field, 'placeholder', was, field.placeholder]);
    }
    globalThis.lengthened = () => {
      for (const [node, what, was, now] of changed) if (node[what] === now) node[what] = was;
    };
    return changed.length;";

/// What scrolls although it should not, what is cut off below without a sign, and words that leave their button.
pub const LEAVES: &str = "
    const out = [];
    const called = (e) => `${e.tagName}.${e.className}: ${e.innerText?.replace(/\\s+/g, ' ').slice(0, 40)}`;
    const seen = (e) => e.checkVisibility() && e.clientWidth > 1 && !e.closest('svg, .visually-hidden');
    for (const e of document.body.querySelectorAll('*')) {
      if (!seen(e)) continue;
      const { overflowX, overflowY, webkitLineClamp } = getComputedStyle(e);
      const scrolls = overflowX === 'auto' || overflowX === 'scroll';
      if (scrolls && e.scrollWidth > e.clientWidth + 1 && !e.matches('.running-score, .rounds, .numbers')) {
        out.push(`scrolls sideways: ${called(e)}`);
      }
      if (overflowY === 'hidden' && webkitLineClamp === 'none' && e.scrollHeight > e.clientHeight + 2) {
        out.push(`cut off below: ${called(e)}`);
      }
    }
    const shortened = (e, button) => {
      for (let one = e; one !== button; one = one.parentElement) {
        const { textOverflow, webkitLineClamp, overflowX } = getComputedStyle(one);
        if (overflowX !== 'visible' && (textOverflow === 'ellipsis' || webkitLineClamp !== 'none')) return true;
      }
      return false;
    };
    const words = document.createRange();
    for (const button of document.querySelectorAll('button, a.button, summary')) {
      if (!seen(button)) continue;
      const box = button.getBoundingClientRect();
      const texts = document.createTreeWalker(button, NodeFilter.SHOW_TEXT);
      while (texts.nextNode()) {
        const around = texts.currentNode.parentElement;
        if (!/\\p{L}/u.test(texts.currentNode.data) || !seen(around) || shortened(around, button)) continue;
        words.selectNodeContents(texts.currentNode);
        const left = [...words.getClientRects()].some((at) => at.width > 0 && (at.left < box.left - 1
          || at.right > box.right + 1 || at.top < box.top - 2 || at.bottom > box.bottom + 2));
        if (left) { out.push(`leaves its button: ${called(button)}`); break; }
      }
    }
    return out.slice(0, 8);";

/// Where every court and what belongs to it stands, to the pixel: the halves and the players on the screen, what is
/// drawn or asked for elsewhere within its own court.
const COURTS: &str = "
    const at = (e, from) => {
      const box = e.getBoundingClientRect();
      const text = e.id || e.className.baseVal || e.className;
      return [text, Math.round(box.left - from.left), Math.round(box.right - from.left), Math.round(box.top - from.top)];
    };
    const all = (css) => [...document.querySelectorAll(css)].filter((e) => e.checkVisibility());
    const screen = { left: 0, top: 0 };
    const here = all('.floor .court, .half, .spot, .net, .antenna, .tools, .team-tools').map((e) => at(e, screen));
    for (const court of all('.line-up-court, .start-court, .watch-court, .both-line-ups')) {
      const from = court.getBoundingClientRect();
      here.push(...[...court.children].map((e) => at(e, from)));
    }
    return here;";

/// Text that would stay at the left, and lines of text that do not run as the page does.
const ALIGNED: &str = "
    const out = [];
    for (const e of document.body.querySelectorAll('*')) {
      const own = [...e.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && /\\p{L}/u.test(n.data));
      if (!own || !e.checkVisibility() || e.closest('svg, .visually-hidden')) continue;
      const { textAlign, direction } = getComputedStyle(e);
      const of_a_court = e.closest('.court, .line-up-court, .start-court, .watch-court, .lock-score');
      if (textAlign === 'left' || direction !== 'rtl' && !of_a_court) {
        out.push(`stays at the left: ${e.tagName}.${e.className}: ${e.textContent.slice(0, 40)}`);
      }
    }
    return out.slice(0, 5);";

fn turn(browser: &mut Browser, way: &str) {
    let set = "document.documentElement.dir = arguments[0]; return null;";
    browser.run(set, json!([way]));
}

fn lines(found: &Value) -> Vec<String> {
    let all = found.as_array().into_iter().flatten();
    all.map(|line| line.as_str().unwrap_or_default().to_owned())
        .collect()
}

/// What of the screen as it is does not fit at a size, in longer words and both ways of writing.
fn found(referee: &mut Referee, (width, height): (u32, u32), name: &str) -> Vec<String> {
    let mut wrong = Vec::new();
    referee.browser().screen(width, height);
    referee.still();
    let browser = referee.browser();
    let changed = browser.run(LENGTHEN, json!([[A, B]]));
    assert!(changed.as_u64() > Some(3), "{name}: {changed} texts");
    let stood = browser.run(COURTS, json!([]));
    for way in ["ltr", "rtl"] {
        turn(browser, way);
        let mut scripts = vec![WIDE, LEAVES];
        if way == "rtl" {
            scripts.push(ALIGNED);
            let stand = browser.run(COURTS, json!([]));
            let moved = pairs(&stood, &stand).find(|(was, is)| was != is);
            wrong.extend(moved.map(|(was, is)| format!("{way}: {was} stands at {is}")));
        }
        for script in scripts {
            let found = browser.run(script, json!([]));
            wrong.extend(
                lines(&found)
                    .into_iter()
                    .map(|line| format!("{way}: {line}")),
            );
        }
    }
    if matches!(width, 360 | 1180) {
        browser.picture(&format!("longer-{name}-{width}x{height}"));
    }
    turn(browser, "");
    browser.run("lengthened(); return null;", json!([]));
    let at = format!("{name} {width}x{height}, ");
    wrong.into_iter().map(|line| at.clone() + &line).collect()
}

fn pairs<'a>(one: &'a Value, other: &'a Value) -> impl Iterator<Item = (&'a Value, &'a Value)> {
    let list = |of: &'a Value| of.as_array().expect("a list");
    assert_eq!(list(one).len(), list(other).len(), "nothing goes away");
    list(one).iter().zip(list(other))
}

/// Looks at screens in every size and gathers what does not fit.
#[derive(Default)]
struct Longer(Vec<String>);

impl Longer {
    fn at(&mut self, referee: &mut Referee, name: &str) {
        for size in SIZES {
            self.0.extend(found(referee, size, name));
        }
    }

    fn done(self) -> Ran {
        assert!(self.0.is_empty(), "\n{}", self.0.join("\n"));
        Ok(())
    }
}

fn on_the_court(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut longer = Longer::default();
    referee.go_on_with("longer", begun());
    referee.point(Side::Left);
    longer.at(referee, "reasons");
    referee.reason("Ball", "Ball in");
    longer.at(referee, "signal");
    referee.tap_at("#replay");
    longer.at(referee, "replay");
    referee.tap_at("#panel-close");
    referee.tap_at("#change-left");
    longer.at(referee, "substitution");
    referee.tap_at("#panel-close");
    referee.tap_at("#more-left");
    longer.at(referee, "more");
    referee.tap("Misconduct");
    longer.at(referee, "asking");
    referee.tap_at(".panel .numbers button");
    longer.at(referee, "misconduct");
    referee.tap_at(".panel .button.level");
    longer.at(referee, "consequence");
    referee.tap_at("#panel-close");
    referee.tap_at("#more-right");
    referee.tap("Somebody hurt");
    referee.tap("Without a number");
    longer.at(referee, "hurt");
    referee.tap_at("#panel-close");
    referee.tap_at("#time-out-left");
    longer.at(referee, "time-out");
    referee.tap("Menu");
    longer.at(referee, "menu");
    referee.tap("Large court");
    longer.at(referee, "large-court");
    referee.tap_at("#lock");
    longer.at(referee, "locked");
    longer.done()
}

fn around_a_match(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut longer = Longer::default();
    let here = referee.stage.url();
    let mut kinds = opening(Preset::International.rules());
    // Lists and toss.
    kinds.truncate(4);
    referee.go_on_with("before", numbered(kinds));
    for step in ["net", "team_lists", "captains", "toss", "line_ups"] {
        referee.tap_at(&format!("#step-{step}"));
        longer.at(referee, &format!("before-{step}"));
    }
    referee.stage.open();
    let between = first_simulated(|timeline| timeline.state().phase() == Phase::BetweenSets);
    referee.go_on_with("between", between);
    longer.at(referee, "between");
    referee.stage.open();
    let over = played(Preset::SchoolJunior, 5);
    assert_eq!(Timeline::of(over.clone()).state().phase(), Phase::Finished);
    referee.go_on_with("over", over);
    referee.reads("Sign and seal");
    longer.at(referee, "sheet");
    for (place, sees) in [
        ("start", ".sheet-line"),
        ("new", "#preset-form, .fields, form, fieldset"),
        ("phone", "#promise"),
        ("about", "main p"),
        ("log/over", ".log-line"),
        ("review/over", "#talk"),
        ("hand-over/over", "main button"),
        ("receive", "#digits-read"),
    ] {
        referee.browser().goto(&format!("{here}#/{place}"));
        referee.browser().find(sees);
        longer.at(referee, &place.replace('/', "-"));
    }
    longer.done()
}

fn to_learn_and_on_the_desk(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut longer = Longer::default();
    let here = referee.stage.url();
    referee.open_file("notes.json", NOTES.as_bytes());
    referee.reads("notes.json: the notes of an observer are on this phone.");
    referee.open_file("logbook.json", LOGBOOK.as_bytes());
    referee.reads("logbook.json: 2 matches and 2 goals are new in your logbook.");
    for (place, reads) in [
        ("", text::learn::book_more()),
        ("decisions", text::learn::decisions_more()),
        ("signals", text::signals_more()),
        ("court", text::learn::net_measured()),
        ("jobs", text::learn::roles_more()),
        ("observer/watch/n1", "Good calm"),
        ("observer/notes/n1", "2 notes"),
        ("logbook", text::learn::goals()),
        ("logbook/match/m1", text::learn::logged_kept()),
        ("trainer", text::learn::trainer_how()[0]),
    ] {
        referee.browser().goto(&format!("{here}#/learn/{place}"));
        referee.reads(reads);
        longer.at(referee, &format!("learn-{}", place.replace('/', "-")));
    }
    referee.tap(text::learn::in_steps());
    referee.tap(text::learn::begin());
    referee.browser().find("#step");
    longer.at(referee, "trainer-scene");
    referee.browser().goto(&format!("{here}#/desk"));
    referee.tap("Add the sample tournament");
    referee.browser().find("#tour");
    longer.at(referee, "desk");
    referee.tap_at(".desk-item .row-open, .desk-item button");
    longer.at(referee, "desk-record");
    longer.done()
}

/// A button that is too narrow, a list that scrolls sideways, text that is held at the left, a court that turns.
fn what_does_not_fit_is_found(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("planted", begun());
    referee.point(Side::Left);
    let size = (360, 740);
    assert_eq!(found(referee, size, "planted"), Vec::<String>::new());
    for (css, what, value, says) in [
        ("#take-back", "width", "3rem", "leaves its button"),
        (".last-words", "min-width", "40rem", "scrolls sideways"),
        (".last-words", "text-align", "left", "stays at the left"),
        (".floor", "direction", "inherit", "stands at"),
    ] {
        let set = "for (const e of document.querySelectorAll(arguments[0])) e.style.setProperty(arguments[1], arguments[2]); return null;";
        referee.browser().run(set, json!([css, what, value]));
        let wrong = found(referee, size, "planted");
        assert!(
            wrong.iter().any(|line| line.contains(says)),
            "{css} {what}: {wrong:?}"
        );
        referee.browser().run(set, json!([css, what, ""]));
    }
    Ok(())
}
