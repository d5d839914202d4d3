//! What a person does at the page, in the trade's words, and what that person then sees and holds.
//!
//! Everything is done by what it is called on the screen; everything seen is compared with what the
//! core computes from the entries that the browser has kept.

use std::time::{Duration, Instant};

use app::merge::merge;
use app::ports::Lines;
use game::{Entry, Phase, State, Timeline};
use record::Log;
use rules::{Shirt, Team};
use serde_json::{json, Value};

use crate::driver::Browser;
use crate::stage::Stage;

/// The team's name in every test.
pub const A: &str = "Otters";
/// The other one's.
pub const B: &str = "Herons";

/// One half of the court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Of the screen.
    Left,
    /// Of the screen.
    Right,
}

impl Side {
    /// The part of an id that names it.
    pub fn word(self) -> &'static str {
        match self {
            Side::Left => "left",
            Side::Right => "right",
        }
    }
}

/// What one half shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Half {
    pub name: String,
    pub score: u16,
    pub sets: u8,
    /// The words beside the ball, where there is one.
    pub serves: Option<String>,
    /// Place 1 to place 6.
    pub places: Vec<u16>,
}

/// The court as it is shown: left half, right half.
pub type Court = [Half; 2];

/// Reads the halves from the screen, each number from where it stands: at the net on the left are
/// places 4, 3, 2 from top to bottom, and the right half is the left one turned round.
const COURT: &str = "
    ['left', 'right'].map((side) => {
      const half = document.querySelector('#half-' + side);
      if (!half) return null;
      const box = half.getBoundingClientRect();
      const near = (e) => { const b = e.getBoundingClientRect();
        return { x: (b.left + b.right) / 2 - box.left, y: (b.top + b.bottom) / 2 - box.top, n: Number(e.innerText) }; };
      const spots = [...half.querySelectorAll('.spot')].map(near);
      const atNet = (a, b) => side === 'left' ? b.x - a.x : a.x - b.x;
      const columns = [...spots].sort(atNet);
      const down = (list) => [...list].sort((a, b) => a.y - b.y).map((s) => s.n);
      const front = down(columns.slice(0, 3)), back = down(columns.slice(3));
      if (side === 'right') { front.reverse(); back.reverse(); }
      // Left half, downwards: 4, 3, 2 at the net and 5, 6, 1 behind.
      const places = spots.length === 6 ? [back[2], front[2], front[1], front[0], back[0], back[1]] : [];
      return {
        name: half.querySelector('.half-name').innerText.trim(),
        score: Number(half.querySelector('.half-score').innerText),
        sets: Number(half.querySelector('.half-sets').innerText),
        serves: half.querySelector('.half-serves').innerText.trim() || null,
        places,
      };
    })";

/// Reads every line of the one match in the address, from both stores.
const LINES: &str = "(async () => {
    const id = location.hash.split('/')[2];
    const head = 'dutystand/m/' + id + '/';
    const local = Object.keys(localStorage).filter((k) => k.startsWith(head)).sort()
      .map((k) => [Number(k.slice(head.length)), localStorage.getItem(k)]);
    const db = await new Promise((done, broken) => {
      const open = indexedDB.open('dutystand');
      open.onsuccess = () => done(open.result);
      open.onerror = () => broken(open.error);
    });
    const store = db.transaction('lines').objectStore('lines');
    const answer = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
    const [keys, values] = await Promise.all([answer(store.getAllKeys()), answer(store.getAll())]);
    db.close();
    const durable = keys.map((key, i) => [key[1], values[i], key[0]])
      .filter((line) => line[2] === id).map((line) => line.slice(0, 2));
    return { id, local, durable };
})()";

/// What the browser has kept of the open match.
pub struct Kept {
    pub id: String,
    pub local: Vec<(u32, String)>,
    pub durable: Vec<(u32, String)>,
}

impl Kept {
    /// The entries, which must be whole. Both copies hold the same while the match goes on; once it is over
    /// the database keeps it alone, and what is still in local storage is the same there.
    pub fn entries(&self) -> Vec<Entry> {
        let lines: Lines = self.durable.iter().cloned().collect();
        let found = merge(&[&lines]);
        assert_eq!(found.damage, Vec::new());
        assert_eq!(found.entries.len(), self.durable.len());
        if Timeline::of(found.entries.clone()).state().phase() == Phase::Finished {
            for (n, line) in &self.local {
                assert_eq!(lines.get(n), Some(line), "entry {n}");
            }
        } else {
            assert_eq!(self.local, self.durable, "both copies hold the same");
        }
        found.entries
    }
}

fn lines(value: &Value) -> Vec<(u32, String)> {
    serde_json::from_value(value.clone()).expect("pairs of number and line")
}

/// What the core says the halves must show.
pub fn court_of(state: &State, turned: bool) -> Court {
    let play = state
        .play()
        .or_else(|| state.ready())
        .expect("a set is played");
    let on_left = if turned { play.left.other() } else { play.left };
    [on_left, on_left.other()].map(|team| {
        let serving = state.serving().filter(|(of, _)| *of == team);
        Half {
            name: name_of(state, team),
            score: play.score[team],
            sets: state.sets_won()[team],
            serves: serving.map(|(_, number)| match number {
                Some(Shirt(number)) => format!("{number} serves"),
                None => "serves".to_owned(),
            }),
            places: play.sides[team].on_court().map(|Shirt(n)| n).collect(),
        }
    })
}

fn name_of(state: &State, team: Team) -> String {
    match state.heading().map(|heading| heading.names[team].as_str()) {
        None | Some("") => format!("Team {team}"),
        Some(name) => name.to_owned(),
    }
}

/// A person at the page.
pub struct Referee<'a> {
    /// Where it plays.
    pub stage: &'a mut Stage,
}

impl<'a> Referee<'a> {
    /// Opens the page for the first time.
    pub fn at(stage: &'a mut Stage) -> Referee<'a> {
        stage.open();
        Referee { stage }
    }

    pub fn browser(&mut self) -> &mut Browser {
        self.stage.browser()
    }

    pub fn tap(&mut self, name: &str) {
        self.browser().tap_named(name);
    }

    /// Taps what is called so within what a CSS selector finds.
    pub fn tap_in(&mut self, css: &str, name: &str) {
        self.browser()
            .tap(|browser| browser.find_named_in(css, name));
    }

    /// Taps what a CSS selector finds, where a name alone would not tell.
    pub fn tap_at(&mut self, css: &str) {
        self.browser().tap(|browser| browser.find(css));
    }

    /// Where what a CSS selector finds stands: left, top, right, bottom.
    pub fn place(&mut self, css: &str) -> [f64; 4] {
        self.browser().find(css);
        let box_of = "const box = document.querySelector(arguments[0]).getBoundingClientRect();
             return [box.left, box.top, box.right, box.bottom];";
        let found = self.browser().run(box_of, json!([css]));
        serde_json::from_value(found).expect("four numbers")
    }

    /// Whether something that can be operated is called so now.
    pub fn sees(&mut self, name: &str) -> bool {
        !self.browser().named(name).is_empty()
    }

    /// Waits until these words are on the screen.
    pub fn reads(&mut self, words: &str) {
        self.browser().wait_until(
            &format!("the screen says {words:?}"),
            &format!(
                "document.body.innerText.replace(/\\s+/g, ' ').includes({})",
                json!(words)
            ),
        );
    }

    /// Scrolls to an element and waits until it holds these words.
    pub fn reads_at(&mut self, css: &str, words: &str) {
        self.browser().wait_until(
            &format!("{css} says {words:?}"),
            &format!(
                "((e) => (e?.scrollIntoView({{ block: 'nearest' }}),
                  e?.innerText.replace(/\\s+/g, ' ').includes({1})))(document.querySelector({0}))",
                json!(css),
                json!(words)
            ),
        );
    }

    // ---- Before the match.

    /// Ticks each check before the match.
    pub fn all_in_order(&mut self) {
        for check in [
            "Own kit",
            "Floor and free zone",
            "Net and posts",
            "Ball",
            "First aid and exits",
            "Duty team briefed",
            "Captains' meeting",
        ] {
            self.tap(&format!("Done: {check}"));
        }
    }

    /// Opens a match of a preset, its name as on the screen.
    pub fn new_match(&mut self, preset: &str) {
        self.tap_at("#new-match");
        self.tap(preset);
        for (field, name) in [("Team A", A), ("Team B", B)] {
            let field = self.browser().find_named(field);
            self.browser().write(&field, name);
        }
        self.tap("Open the match");
        self.reads("Before the match");
    }

    /// Types a list into the number pad, marks the captain, hands it in.
    pub fn list(&mut self, team: &str, numbers: &[u16], captain: u16) {
        self.tap(team);
        for number in numbers {
            for digit in number.to_string().chars() {
                self.tap(&digit.to_string());
            }
            self.tap("Add");
        }
        self.tap(&format!("Number {captain}"));
        self.tap("Captain");
        self.tap(&format!(
            "Confirm the team list ({} players)",
            numbers.len()
        ));
        self.reads("The team list is confirmed");
    }

    /// Enters a toss that was made with a coin of metal.
    pub fn tossed(&mut self, serves: &str, left: &str) {
        self.tap("We have tossed already");
        for (question, answer) in [(1, serves), (2, left)] {
            self.tap_in(&format!(".toss fieldset:nth-of-type({question})"), answer);
        }
        self.tap("Record the toss");
    }

    /// Taps six numbers into the drawn court, place 1 first, and hands them in.
    pub fn line_up(&mut self, team: &str, numbers: &[u16]) {
        self.tap(team);
        for number in numbers {
            // The captain's chip says so too.
            let of = |mark: &str| format!("Number {number}{mark}");
            let captain = self.sees(&of(", captain"));
            self.tap(&of(if captain { ", captain" } else { "" }));
        }
        self.tap("Confirm the line-up");
        self.reads("The line-up is confirmed");
    }

    // ---- On the court.

    /// The halves as they are on the screen now.
    pub fn court(&mut self) -> Court {
        let seen = self.browser().value(COURT);
        let half = |of: &Value| Half {
            name: of["name"].as_str().unwrap_or_default().to_owned(),
            score: of["score"].as_u64().unwrap_or(u64::MAX) as u16,
            sets: of["sets"].as_u64().unwrap_or(u64::MAX) as u8,
            serves: of["serves"].as_str().map(str::to_owned),
            places: serde_json::from_value(of["places"].clone()).unwrap_or_default(),
        };
        [half(&seen[0]), half(&seen[1])]
    }

    /// Which half belongs to a team now, once both are drawn.
    pub fn side_of(&mut self, team: &str) -> Side {
        let begun = Instant::now();
        loop {
            match self.court() {
                [left, _] if left.name == team => return Side::Left,
                [_, right] if right.name == team => return Side::Right,
                _ if begun.elapsed() < Duration::from_secs(10) => {
                    std::thread::sleep(Duration::from_millis(20));
                }
                court => panic!("{team} stands in no half: {court:?}"),
            }
        }
    }

    /// Gives a side the point and the next service.
    pub fn point(&mut self, side: Side) {
        self.quick();
        self.still();
        self.tap_at(&format!("#half-{}", side.word()));
    }

    /// Waits until nothing moves on the screen.
    pub fn still(&mut self) {
        self.browser().wait_until(
            "nothing moves",
            "document.getAnimations().every((one) => one.playState !== 'running')",
        );
    }

    /// Gives a team the point, wherever it stands.
    pub fn point_for(&mut self, team: &str) {
        let side = self.side_of(team);
        self.point(side);
    }

    /// Taps a player on the court.
    pub fn tap_player(&mut self, side: Side, number: u16) {
        self.still();
        let middle = self.browser().value(&format!(
            "(() => {{ const spot = [...document.querySelectorAll('#half-{} .spot')]
                 .find((one) => one.innerText.trim() === '{number}');
               const box = spot.getBoundingClientRect();
               return [(box.left + box.right) / 2, (box.top + box.bottom) / 2].map(Math.round); }})()",
            side.word()
        ));
        let at = |i: usize| middle[i].as_i64().expect("a place");
        self.browser().tap_place(at(0), at(1));
    }

    /// Taps halves one after the other, so many milliseconds apart, without looking.
    pub fn points(&mut self, sides: &[Side], gap_ms: u32) {
        self.quick();
        self.taps(sides, gap_ms);
    }

    /// A test plays quicker than anybody, as its setting says.
    pub fn quick(&mut self) {
        self.browser().run(
            "try { localStorage.setItem('dutystand/s/quick-taps', 'on'); } catch { /* It is forbidden. */ }",
            json!([]),
        );
    }

    /// Taps halves as a person may who has set nothing.
    pub fn taps(&mut self, sides: &[Side], gap_ms: u32) {
        self.still();
        let elements: Vec<_> = [Side::Left, Side::Right]
            .map(|side| self.browser().find(&format!("#half-{}", side.word())))
            .into();
        let taps: Vec<_> = sides
            .iter()
            .map(|side| elements[usize::from(*side == Side::Right)].clone())
            .collect();
        self.browser().tap_quickly(&taps, gap_ms);
    }

    /// Chooses a reason for the last rally.
    pub fn reason(&mut self, group: &str, cause: &str) {
        self.tap(group);
        self.tap(cause);
    }

    /// Waits until the mark says that the last entry is on disk.
    pub fn saved(&mut self) {
        self.browser().wait_until(
            "the last entry is safe on disk",
            "document.querySelector('#saved')?.classList.contains('safe')",
        );
    }

    // ---- What is kept.

    /// Both copies of the open match.
    pub fn kept(&mut self) -> Kept {
        let found = self.browser().value(LINES);
        Kept {
            id: found["id"].as_str().unwrap_or_default().to_owned(),
            local: lines(&found["local"]),
            durable: lines(&found["durable"]),
        }
    }

    /// Waits until IndexedDB holds so many lines of the open match.
    pub fn on_disk(&mut self, lines: usize) {
        let begun = Instant::now();
        while self.kept().durable.len() != lines {
            assert!(
                begun.elapsed() < Duration::from_secs(20),
                "waited in vain for {lines} lines on disk"
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// The fold of what is kept, once it is safe.
    pub fn timeline(&mut self) -> Timeline {
        self.saved();
        Timeline::of(self.kept().entries())
    }

    /// The halves show what the core computes from what is kept.
    ///
    /// The page draws a turn after the tap, and the players of a half a frame later.
    pub fn court_is_right(&mut self, turned: bool) -> Timeline {
        let timeline = self.timeline();
        let right = court_of(timeline.state(), turned);
        let begun = Instant::now();
        loop {
            let seen = self.court();
            if seen == right {
                return timeline;
            }
            if begun.elapsed() > Duration::from_secs(20) {
                assert_eq!(seen, right, "the court is not what is kept");
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    // ---- Files.

    /// Gives the page a file on the start screen.
    pub fn open_file(&mut self, name: &str, content: &[u8]) {
        let file = self.stage.scratch(name);
        std::fs::write(&file, content).expect("room for a file");
        let field = self.browser().find("#import");
        self.browser().choose_file(&field, &file);
    }

    /// Gives the page many files at once.
    pub fn open_files(&mut self, files: &[(String, String)]) {
        let paths: Vec<std::path::PathBuf> = files
            .iter()
            .map(|(name, content)| {
                let file = self.stage.scratch(name);
                std::fs::write(&file, content).expect("room for a file");
                file
            })
            .collect();
        let field = self.browser().find("#import");
        self.browser().choose_files(&field, &paths);
    }

    /// Takes in a match and goes on with it.
    pub fn go_on_with(&mut self, id: &str, entries: Vec<Entry>) {
        let timeline = Timeline::of(entries.clone());
        let state = timeline.state();
        let log = Log {
            id: id.to_owned(),
            entries,
        };
        self.open_file("given.json", record::write(&log).as_bytes());
        self.reads("given.json is on this phone now.");
        if state.phase() == Phase::Finished {
            // Several may be called the same; the address names one.
            let sheet = format!("{}#/sheet/{id}", self.stage.url());
            self.browser().goto(&sheet);
        } else {
            self.tap_at("#continue");
        }
        self.browser().wait_until(
            "the match is open",
            "document.querySelector('#saved') !== null",
        );
    }

    /// Chromium's downloads go into this folder from now on.
    pub fn catch_downloads(&mut self) -> std::path::PathBuf {
        let folder = self.stage.scratch("downloads");
        std::fs::create_dir_all(&folder).expect("room for a folder");
        let path = folder.display().to_string();
        self.browser().cdp(
            "Browser.setDownloadBehavior",
            json!({ "behavior": "allow", "downloadPath": path }),
        );
        folder
    }

    /// The one file in the folder, once it is whole; it is taken away.
    pub fn caught(&mut self, folder: &std::path::Path) -> (String, String) {
        let begun = Instant::now();
        loop {
            let mut whole = std::fs::read_dir(folder)
                .expect("the folder is there")
                .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
                .filter(|name| {
                    [".json", ".html", ".csv"]
                        .iter()
                        .any(|end| name.ends_with(end))
                });
            if let Some(name) = whole.next() {
                let file = folder.join(&name);
                let text = std::fs::read_to_string(&file).expect("the file can be read");
                if !text.is_empty() {
                    std::fs::remove_file(&file).expect("the file can be removed");
                    return (name, text);
                }
            }
            assert!(
                begun.elapsed() < Duration::from_secs(20),
                "no file was handed over"
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}
