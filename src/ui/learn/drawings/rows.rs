//! Rows of contacts: numbered balls between players.

use learn::{Dial, Values, PLAYERS};

use crate::learn::sketch::{Drawing, Handle, Place, Sketch};

/// Where the players are drawn, and behind them where the ball has gone across the net. Player 3 is at it.
const PLACES: [Place; PLAYERS + 1] = [
    (-3.4, 0.9),
    (-3.0, -1.0),
    (-0.9, -0.9),
    (-1.1, 1.0),
    (1.1, 0.0),
];
/// How large a player is drawn.
const PLAYER: f64 = 0.34;

/// Where the ball of a contact lies beside whoever plays it: each has a corner of its own.
fn beside((x, y): Place, contact: u8) -> Place {
    const AWAY: f64 = 0.55;
    let (right, down) = match contact {
        1 => (-AWAY, -AWAY),
        2 => (AWAY, -AWAY),
        3 => (AWAY, AWAY),
        _ => (-AWAY, AWAY),
    };
    (x + right, y + down)
}

pub(super) fn hits(set: &Values) -> Drawing {
    let mut sketch = Sketch::new((-4.4, -2.0), (6.4, 4.0));
    sketch.area("court team-a", (-4.4, -2.0), (0.0, 2.0));
    sketch.area("court team-b", (0.0, -2.0), (2.0, 2.0));
    sketch.line("net-edge", &[(0.0, -2.0), (0.0, 2.0)]);
    for (n, place) in PLACES[..PLAYERS].iter().enumerate() {
        sketch.circle("body team-a", *place, PLAYER);
        sketch.mark("player-mark", *place, 0.4, &(n + 1).to_string());
    }
    let mut way = vec![(1.8, -1.6)];
    if set.is(Dial::OwnBlock) {
        way.push((0.0, PLACES[2].1));
    }
    let mut across = false;
    for contact in 1..=4 {
        let who = set.choice(Dial::Hitter(contact));
        let at = beside(PLACES[who], contact);
        // What is across the net is no contact of this team any more.
        if !across {
            way.push(at);
        }
        across |= who >= PLAYERS;
        let places = PLACES.map(|place| beside(place, contact)).into();
        sketch.handle(Handle {
            nearest: Some((Dial::Hitter(contact), places)),
            mark: contact.to_string(),
            mover: Some(contact),
            ..Handle::at(at)
        });
    }
    sketch.line("way", &way);
    sketch.done()
}
