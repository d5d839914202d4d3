//! Ranking: one criterion after the other, until nobody is level or the criteria are used up.

use std::collections::BTreeSet;

use super::check::{self, Finding};
use super::{Criterion, Played, Pool, Side, Tally};
use crate::one_match::Instead;

/// The table of a pool.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standings {
    /// The teams, the first one first; level teams share a place and stand alphabetically.
    pub rows: Vec<Row>,
    /// The results grid: of each team, in the order of the rows, the sets of its matches with each other team
    /// in the same order, its own sets first.
    pub grid: Vec<Vec<Vec<(u64, u64)>>>,
    /// What is wrong with the results.
    pub findings: Vec<Finding>,
}

/// One line of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The place, from 1.
    pub place: usize,
    /// The team.
    pub team: String,
    /// What it has gathered.
    pub tally: Tally,
    /// Whether it shares its place.
    pub level: bool,
    /// What separates it from the next team; for the last one, from the team before it. None where
    /// there is nobody to be separated from, or nothing that separates.
    pub cut: Option<Cut>,
}

impl Row {
    /// The criterion that decided, or `level`; none for a team alone in its pool.
    #[must_use]
    pub fn decided_by(&self) -> Option<&'static str> {
        if self.level {
            Some("level")
        } else {
            self.cut.as_ref().map(|cut| cut.criterion.code())
        }
    }
}

/// What separates two neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    /// The criterion.
    pub criterion: Criterion,
    /// For head to head: the level teams, and what decided among them.
    pub among: Option<(Vec<String>, Criterion)>,
    /// What the team above has in it.
    pub above: String,
    /// What the team below has.
    pub below: String,
    /// The team above.
    pub over: String,
    /// The team below.
    pub under: String,
}

/// The table of a pool. The order of the results decides nothing (`one_match/counting.rs`).
#[must_use]
pub fn rank(pool: &Pool) -> Standings {
    let instead = check::instead(pool);
    let mut findings = check::check(pool, &instead);
    let table = Table::of(pool, &instead, &mut findings);
    let everybody: Vec<usize> = (0..table.names.len()).collect();
    let order = table.order(&everybody, &pool.rank_by);
    let rows = table.rows(&order);
    Standings {
        grid: table.grid(&rows),
        rows,
        findings,
    }
}

/// The names of the teams of a pool and of these results of it, alphabetically.
pub(super) fn names<'a>(
    pool: &'a Pool,
    results: impl IntoIterator<Item = &'a Played>,
) -> Vec<String> {
    let played = results.into_iter().flat_map(|r| [&r.home, &r.away]);
    let names: BTreeSet<&String> = rules::gather(pool.teams.iter().chain(played));
    names.into_iter().cloned().collect()
}

/// One match, counted.
struct Game {
    teams: [usize; 2],
    sets: [u64; 2],
    points: [u64; 2],
    match_points: [i64; 2],
}

struct Table {
    names: Vec<String>,
    games: Vec<Game>,
    tallies: Vec<Tally>,
    restart: bool,
    rank_by: Vec<Criterion>,
}

/// Groups of level teams in their order, with what separates each from the next.
struct Order {
    groups: Vec<Vec<usize>>,
    cuts: Vec<Between>,
}

/// What separates one group from the next: the criterion, for head to head the level teams and what
/// decided among them, and what both groups have in it.
#[derive(Clone)]
struct Between {
    criterion: Criterion,
    among: Option<(Vec<usize>, Criterion)>,
    values: [String; 2],
}

impl Order {
    fn one(group: &[usize]) -> Order {
        Order {
            groups: vec![group.to_vec()],
            cuts: Vec::new(),
        }
    }

    /// Puts a finer order in the place of each group.
    fn refine(self, mut finer: impl FnMut(&[usize]) -> Order) -> Order {
        let mut whole = Order {
            groups: Vec::new(),
            cuts: Vec::new(),
        };
        let mut cuts = self.cuts.into_iter();
        for group in &self.groups {
            let order = finer(group);
            whole.groups.extend(order.groups);
            whole.cuts.extend(order.cuts);
            whole.cuts.extend(cuts.next());
        }
        whole
    }
}

impl Table {
    fn of(pool: &Pool, instead: &[Option<Instead>], findings: &mut Vec<Finding>) -> Table {
        let counted = || {
            let all = pool.results.iter().enumerate();
            all.filter(|(result, _)| instead[*result].is_none())
        };
        let names = names(pool, counted().map(|(_, played)| played));
        let index = |name: &String| names.binary_search(name).unwrap_or_default();
        let mut games = Vec::new();
        for (result, played) in counted() {
            if check::has_result(played) {
                games.push(Game {
                    teams: [index(&played.home), index(&played.away)],
                    ..count(pool, result, played, findings)
                });
            }
        }
        let all = |_: usize| true;
        let tallies = tallies(names.len(), &games, all);
        Table {
            names,
            games,
            tallies,
            restart: pool.restart,
            rank_by: pool.rank_by.clone(),
        }
    }

    /// The matches of each team with each other one, in the order of the rows.
    fn grid(&self, rows: &[Row]) -> Vec<Vec<Vec<(u64, u64)>>> {
        let index = |row: &Row| self.names.binary_search(&row.team).unwrap_or_default();
        let order: Vec<usize> = rows.iter().map(index).collect();
        let met = |one: usize, other: usize| {
            let sets = self.games.iter().filter_map(|game| match game.teams {
                teams if teams == [one, other] => Some((game.sets[0], game.sets[1])),
                teams if teams == [other, one] => Some((game.sets[1], game.sets[0])),
                _ => None,
            });
            sets.collect()
        };
        let line = |one: &usize| order.iter().map(|other| met(*one, *other)).collect();
        order.iter().map(line).collect()
    }

    /// The order of a group that is level in everything before `criteria`.
    fn order(&self, group: &[usize], criteria: &[Criterion]) -> Order {
        let Some((first, rest)) = criteria.split_first() else {
            return Order::one(group);
        };
        if group.len() < 2 {
            return Order::one(group);
        }
        let order = match first {
            Criterion::HeadToHead => self.head_to_head(group),
            criterion => split(&self.tallies, group, *criterion, None),
        };
        if order.groups.len() == 1 {
            return self.order(group, rest);
        }
        let next = if self.restart { &self.rank_by } else { rest };
        order.refine(|part| self.order(part, next))
    }

    /// The matches among the level teams alone. Two: who won more of theirs. (Regulations speak of the
    /// last match between them; a list of results has no dates.) Three or more are ranked among
    /// themselves by the same criteria from the top (international regulations of 2017 to 2021).
    fn head_to_head(&self, group: &[usize]) -> Order {
        let mut level = vec![false; self.names.len()];
        group.iter().for_each(|&team| level[team] = true);
        let among = tallies(self.names.len(), &self.games, |team| level[team]);
        if group.len() == 2 {
            return split(&among, group, Criterion::Wins, Some(group));
        }
        let mut criteria: Vec<Criterion> = self.rank_by.clone();
        criteria.retain(|c| *c != Criterion::HeadToHead);
        let of_matches = |c: &Criterion| matches!(c, Criterion::Wins | Criterion::MatchPoints);
        if !criteria.iter().any(of_matches) {
            // Who has beaten whom comes first where no other criterion counts matches.
            criteria.insert(0, Criterion::Wins);
        }
        self.sift(&among, group, group, &criteria)
    }

    /// Ranks part of a level group by what its teams have gathered among all of the group.
    fn sift(
        &self,
        among: &[Tally],
        all: &[usize],
        part: &[usize],
        criteria: &[Criterion],
    ) -> Order {
        let Some((first, rest)) = criteria.split_first() else {
            return Order::one(part);
        };
        let order = split(among, part, *first, Some(all));
        match order.groups.len() {
            1 => self.sift(among, all, part, rest),
            // Begun again from the top by the caller.
            _ if self.restart => order,
            _ => order.refine(|finer| self.sift(among, all, finer, rest)),
        }
    }

    fn rows(&self, order: &Order) -> Vec<Row> {
        let named = |i: &usize| self.names[*i].clone();
        let cut_after = |g: usize| {
            let Between {
                criterion,
                among,
                values: [above, below],
            } = order.cuts.get(g)?;
            let among = among
                .as_ref()
                .map(|(teams, by)| (teams.iter().map(named).collect(), *by));
            Some(Cut {
                criterion: *criterion,
                among,
                above: above.clone(),
                below: below.clone(),
                over: named(order.groups[g].last()?),
                under: named(order.groups.get(g + 1)?.first()?),
            })
        };
        let mut rows = Vec::new();
        for (g, group) in order.groups.iter().enumerate() {
            let place = rows.len() + 1;
            let level = group.len() > 1;
            let cut = cut_after(g).or_else(|| cut_after(g.checked_sub(1)?));
            for &team in group {
                rows.push(Row {
                    place,
                    team: self.names[team].clone(),
                    tally: self.tallies[team],
                    level,
                    cut: cut.clone(),
                });
            }
        }
        rows
    }
}

/// Splits a group by one criterion. Within each part the teams stay as they stood, alphabetically.
fn split(
    tallies: &[Tally],
    group: &[usize],
    criterion: Criterion,
    among: Option<&[usize]>,
) -> Order {
    let mut sorted = group.to_vec();
    let before = |a: &usize, b: &usize| criterion.compare(&tallies[*b], &tallies[*a]);
    rules::sort_by(&mut sorted, before);
    let level = |a: &usize, b: &usize| before(a, b).is_eq();
    let groups: Vec<Vec<usize>> = sorted.chunk_by(level).map(<[usize]>::to_vec).collect();
    let cuts = groups.windows(2).map(|w| {
        let values = [w[0][0], w[1][0]].map(|team| criterion.value(&tallies[team]));
        match among {
            None => Between {
                criterion,
                among: None,
                values,
            },
            Some(all) => Between {
                criterion: Criterion::HeadToHead,
                among: Some((all.to_vec(), criterion)),
                values,
            },
        }
    });
    Order {
        cuts: cuts.collect(),
        groups,
    }
}

/// What each team has gathered in the matches between teams of a group.
fn tallies(teams: usize, games: &[Game], in_group: impl Fn(usize) -> bool) -> Vec<Tally> {
    let mut tallies = vec![Tally::default(); teams];
    for game in games
        .iter()
        .filter(|g| g.teams.iter().all(|&t| in_group(t)))
    {
        for (own, other) in [(0, 1), (1, 0)] {
            let tally = &mut tallies[game.teams[own]];
            tally.played += 1;
            match game.sets[own].cmp(&game.sets[other]) {
                std::cmp::Ordering::Greater => tally.wins += 1,
                std::cmp::Ordering::Less => tally.losses += 1,
                std::cmp::Ordering::Equal => tally.draws += 1,
            }
            tally.match_points += game.match_points[own];
            tally.sets.0 += game.sets[own];
            tally.sets.1 += game.sets[other];
            tally.points.0 += game.points[own];
            tally.points.1 += game.points[other];
        }
    }
    tallies
}

/// Sets, points and match points of one match.
fn count(pool: &Pool, result: usize, played: &Played, findings: &mut Vec<Finding>) -> Game {
    let (home, away) = check::sets_of(played);
    let points =
        |pick: fn(&(u16, u16)) -> u16| played.sets.iter().map(|s| u64::from(pick(s))).sum();
    let (won, lost) = (home.max(away), home.min(away));
    let by_default = played.default.and(pool.default_points);
    let laid_down = by_default.or_else(|| pool.match_points.get(&(won, lost)).copied());
    if laid_down.is_none() && pool.rank_by.contains(&Criterion::MatchPoints) {
        findings.push(Finding::NoMatchPoints { result, won, lost });
    }
    let (winner, loser) = laid_down.unwrap_or_default();
    let home_won = match played.default {
        Some(side) if by_default.is_some() => side == Side::Away,
        _ => home >= away,
    };
    let match_points = if home_won {
        [winner, loser]
    } else {
        [loser, winner]
    };
    Game {
        teams: [0, 0],
        sets: [home, away].map(u64::from),
        points: [points(|s| s.0), points(|s| s.1)],
        match_points: match_points.map(i64::from),
    }
}
