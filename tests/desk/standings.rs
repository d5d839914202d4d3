//! Standings: worked cases, told tables, laws.

use proptest::prelude::*;
use render::standings::{csv, json};
use reports::standings::{self, Criterion, Played, Pool, Scheme, Side, Source};
use reports::FormProblemKind;
use serde_json::{json, Value};

/// Reads and ranks what must be readable.
fn table(pool: &Value) -> Value {
    let form = standings::read(&pool.to_string());
    let pool = form.read.unwrap_or_else(|| panic!("{:?}", form.problems));
    json(&pool, &standings::rank(&pool))
}

#[test]
fn worked_cases() {
    super::check("standings", table);
}

/// A pool with the international order and best of three.
fn pool(results: Value) -> Value {
    json!({ "log": "volleyball-pool", "version": 1,
        "rank_by": ["wins", "match_points", "set_ratio", "point_ratio", "head_to_head"],
        "match_points": { "2-0": [3, 0], "2-1": [2, 1] },
        "results": results })
}

fn played(home: &str, away: &str, sets: &[[u16; 2]]) -> Value {
    json!({ "home": home, "away": away, "sets": sets })
}

/// Two sets to 25 for the first team, the second at 20.
fn two_nil(home: &str, away: &str) -> Value {
    played(home, away, &[[25, 20], [25, 20]])
}

fn teams(table: &Value) -> Vec<(u64, &str, &str)> {
    table["table"]
        .as_array()
        .expect("a table")
        .iter()
        .map(|row| {
            (
                row["place"].as_u64().expect("place"),
                row["team"].as_str().expect("team"),
                row["decided_by"].as_str().unwrap_or_default(),
            )
        })
        .collect()
}

fn codes(value: &Value) -> Vec<&str> {
    let list = value["findings"].as_array().expect("findings");
    list.iter().filter_map(|f| f["code"].as_str()).collect()
}

/// Both have beaten the Voles alike and their own match was close; with nothing but wins and head to
/// head their match decides, and the last row names what set it below.
#[test]
fn two_level_teams_are_decided_by_their_match() {
    let mut pool = pool(json!([
        two_nil("Otters", "Voles"),
        two_nil("Voles", "Herons"),
        two_nil("Herons", "Otters"),
        two_nil("Otters", "Badgers"),
        two_nil("Herons", "Badgers"),
        two_nil("Badgers", "Voles"),
    ]));
    pool["rank_by"] = json!(["wins", "head_to_head"]);
    let table = table(&pool);
    assert_eq!(
        teams(&table),
        [
            (1, "Herons", "head_to_head"),
            (2, "Otters", "wins"),
            (3, "Badgers", "head_to_head"),
            (4, "Voles", "head_to_head"),
        ]
    );
    let say = table["table"][0]["say"].as_str().expect("say");
    assert_eq!(
        say,
        "Herons before Otters by the matches between the two: won 1, lost 0."
    );
}

/// Three teams with one win each among themselves; wins and sets apart from each other.
fn circle() -> Value {
    let mut pool = pool(json!([
        played("Otters", "Herons", &[[25, 20], [25, 20]]),
        played("Herons", "Badgers", &[[20, 25], [25, 5], [15, 5]]),
        played("Badgers", "Otters", &[[25, 23], [20, 25], [15, 13]]),
    ]));
    // Without match points, or the 2-1 would separate them.
    pool["rank_by"] = json!(["wins", "head_to_head", "set_difference", "point_difference"]);
    pool
}

#[test]
fn three_level_teams_are_ranked_among_themselves() {
    let table = table(&circle());
    assert_eq!(
        teams(&table),
        [
            (1, "Otters", "head_to_head"),
            (2, "Badgers", "head_to_head"),
            (3, "Herons", "head_to_head")
        ]
    );
    let say = table["table"][0]["say"].as_str().expect("say");
    assert_eq!(
        say,
        "Otters before Badgers by sets won minus sets lost in the matches among Badgers, Herons and \
         Otters: +1 to +0."
    );
}

/// Sets won among the three: Otters 3, Badgers 3, Herons 2. Otters and Badgers stay level: begun again,
/// their own match decides (Badgers); gone on, the points among the three (Otters). Both are found in
/// regulations.
#[test]
fn beginning_again_or_going_on_is_a_setting() {
    let mut pool = circle();
    pool["rank_by"] = json!(["wins", "head_to_head", "sets_won", "point_difference"]);
    let order = |pool: &Value| -> Vec<String> {
        let table = table(pool);
        teams(&table).iter().map(|t| t.1.to_owned()).collect()
    };
    assert_eq!(order(&pool), ["Badgers", "Otters", "Herons"]);
    pool["restart"] = false.into();
    assert_eq!(order(&pool), ["Otters", "Badgers", "Herons"]);
}

#[test]
fn a_default_costs_what_the_regulation_says() {
    let mut pool = pool(json!([
        { "home": "Otters", "away": "Herons", "sets": [[25, 0], [25, 0]], "default": "away" }
    ]));
    pool["match_points"]["default"] = json!([3, -1]);
    let table = table(&pool);
    assert_eq!(table["table"][1]["match_points"], -1);
    assert_eq!(codes(&table), Vec::<&str>::new());
}

#[test]
fn level_matches_are_counted_where_all_sets_are_played() {
    let mut pool = pool(json!([played("Otters", "Herons", &[[25, 20], [20, 25]])]));
    pool["match_points"] = json!({ "2-0": [2, 0], "1-1": [1, 1] });
    pool["rules"] = json!({ "preset": "school_junior", "sets": { "fixed": 2 } });
    let table = table(&pool);
    assert_eq!(codes(&table), Vec::<&str>::new());
    assert_eq!(
        teams(&table),
        [(1, "Herons", "level"), (1, "Otters", "level")]
    );
    assert_eq!(table["table"][0]["draws"], 1);
    assert_eq!(table["table"][0]["match_points"], 1);
}

#[test]
fn a_team_that_has_not_played_stands_last() {
    let mut pool = pool(json!([two_nil("Otters", "Herons")]));
    pool["teams"] = json!(["Voles", "Otters", "Herons"]);
    pool["rank_by"] = json!(["set_ratio", "point_ratio"]);
    let table = table(&pool);
    let order: Vec<&str> = teams(&table).iter().map(|t| t.1).collect();
    assert_eq!(order, ["Otters", "Herons", "Voles"]);
}

#[test]
fn what_cannot_be_is_said_and_the_rest_is_ranked() {
    let results = json!([
        two_nil("Otters", "Otters"),
        two_nil("Otters", "Herons"),
        two_nil("Otters", "Herons"),
        played("Herons", "Otters", &[[20, 25], [20, 25]]),
        played("Badgers", "Voles", &[[25, 24], [25, 3]]),
        played("Badgers", "Herons", &[[25, 3], [25, 3], [25, 3], [25, 3]]),
        played("Badgers", "otters", &[]),
    ]);
    let table = table(&pool(results));
    assert_eq!(
        codes(&table),
        [
            "names_alike",
            "against_itself",
            "match_twice",
            "match_twice",
            "set_cannot_be",
            "no_sets",
            "not_played",
            "no_match_points",
        ]
    );
    assert_eq!(table["findings"][4]["where"], "results[4].sets[0]");
    // Three results of one match are one win, so the Badgers with two are before the Otters.
    let first: Vec<&str> = teams(&table).iter().take(2).map(|t| t.1).collect();
    assert_eq!(first, ["Badgers", "Otters"]);
    assert_eq!(table["table"][1]["played"], 1);
}

#[test]
fn by_given_rules_a_match_is_whole_or_not() {
    let mut all = pool(json!([
        played("Otters", "Herons", &[[25, 20], [20, 25]]),
        played("Otters", "Voles", &[[25, 20], [25, 20], [15, 3]]),
        played("Otters", "Badgers", &[[25, 20], [20, 25], [25, 3]]),
    ]));
    all["rank_by"] = json!(["wins"]);
    all["rules"] = json!({ "preset": "school_junior" });
    assert_eq!(
        codes(&table(&all)),
        [
            "sets_cannot_be",
            "sets_cannot_be",
            "set_cannot_be",
            "not_played"
        ]
    );
}

#[test]
fn hostile_pools_get_a_sentence_with_the_place() {
    let sorry = |value: Value| {
        let form = standings::read(&value.to_string());
        assert_eq!(form.read, None, "{value}");
        let first = form.problems.into_iter().next().expect("a problem");
        format!("{}: {}", first.place, text::form_problem(&first.kind))
    };
    let mut unknown = pool(json!([]));
    unknown["rank_by"] = json!(["wins", "beauty"]);
    assert!(
        sorry(unknown).starts_with("rank_by[1]: This should be one of: wins, match_points"),
        "an unknown criterion"
    );
    let mut key = pool(json!([]));
    key["match_points"] = json!({ "three-nil": [3, 0] });
    assert!(sorry(key).starts_with("match_points.three-nil: A result is named by its sets"));
    assert!(sorry(pool(json!([{ "home": "Otters", "sets": [] }]))).starts_with("results[0].away"));
    assert!(sorry(pool(json!([played("A", "B", &[[1000, 3]])])))
        .starts_with("results[0].sets[0][0]: This should be a whole number"));
    assert!(sorry(json!({ "log": "volleyball-pool", "version": 2 })).contains("newer version"));
    assert!(sorry(json!([])).contains("another kind of file"));
    let form = standings::read("{ \"log\":\n oops");
    assert!(
        form.problems[0].kind == FormProblemKind::Damaged(2),
        "{:?}",
        form.problems
    );
}

#[test]
fn a_name_cannot_be_a_formula_in_the_csv() {
    let value = pool(json!([two_nil("=1+1", "Herons \"B\", west")]));
    let form = standings::read(&value.to_string());
    let pool = form.read.expect("readable");
    let csv = csv(&standings::rank(&pool));
    let lines: Vec<&str> = csv.split("\r\n").collect();
    assert!(lines[1].starts_with("1,\"'=1+1\",1,1,0,0,3,2,0,max,50,40,1.250,wins,"));
    assert!(lines[2].starts_with("2,\"Herons \"\"B\"\", west\",1,0,1"));
}

fn any_pool() -> impl Strategy<Value = Pool> {
    let name = || (0..5usize).prop_map(|i| ["Otters", "Herons", "Badgers", "Voles", "Newts"][i]);
    // Few points and few sets, so that teams are level often.
    let set = (0u16..3, 0u16..3);
    let default = proptest::option::weighted(0.1, any::<bool>());
    let result = (
        name(),
        name(),
        proptest::collection::vec(set, 0..4),
        default,
    )
        .prop_map(|(home, away, sets, default)| standings::Played {
            home: home.into(),
            away: away.into(),
            sets,
            default: default.map(|home| match home {
                true => standings::Side::Home,
                false => standings::Side::Away,
            }),
            source: Source::default(),
        });
    let criteria = Just(Criterion::ALL.to_vec()).prop_shuffle();
    (
        proptest::collection::vec(result, 0..12),
        criteria,
        1..=8usize,
        any::<bool>(),
    )
        .prop_map(|(results, mut rank_by, keep, restart)| {
            rank_by.truncate(keep);
            Pool {
                rank_by,
                restart,
                match_points: [((1, 0), (3, 0)), ((2, 1), (2, 1))].into(),
                default_points: Some((3, -1)),
                rules: None,
                teams: vec!["Newts".into()],
                meetings: None,
                results,
            }
        })
}

proptest! {
    #![proptest_config(super::config(256))]

    #[test]
    fn the_order_of_the_results_does_not_matter(pool in any_pool(), seed in any::<u64>()) {
        let mut other = pool.clone();
        let len = other.results.len().max(1);
        for i in 0..other.results.len() {
            let j = (seed.rotate_left(u32::try_from(i * 7).unwrap_or(0)) % len as u64) as usize;
            other.results.swap(i, j);
        }
        prop_assert_eq!(standings::rank(&pool).rows, standings::rank(&other).rows);
    }

    /// The grid tells each match twice, once from either side; added up it is the table.
    #[test]
    fn the_grid_adds_up_to_the_table(pool in any_pool()) {
        let table = standings::rank(&pool);
        for (at, row) in table.rows.iter().enumerate() {
            let line = &table.grid[at];
            prop_assert_eq!(line.len(), table.rows.len());
            // A team that plays against itself by a slip is said elsewhere.
            let met = line.iter().enumerate().filter(|(other, _)| *other != at);
            let sets = met.flat_map(|(_, met)| met);
            let sum = sets.fold((0, 0), |(won, lost), (w, l)| (won + w, lost + l));
            if line[at].is_empty() {
                prop_assert_eq!(sum, row.tally.sets);
            }
            for (other, met) in line.iter().enumerate() {
                let turned: Vec<_> = met.iter().map(|(own, theirs)| (*theirs, *own)).collect();
                if other != at {
                    prop_assert_eq!(&table.grid[other][at], &turned);
                }
            }
        }
    }

    /// Every team stands once; places rise by as many as share them; level teams are level in all that
    /// is counted over the whole pool.
    #[test]
    fn the_table_is_a_total_order(pool in any_pool()) {
        let rows = standings::rank(&pool).rows;
        for (i, row) in rows.iter().enumerate() {
            let first = rows.iter().position(|r| r.place == row.place).expect("itself");
            prop_assert_eq!(row.place, first + 1);
            prop_assert!(rows.iter().skip(i + 1).all(|r| r.team != row.team));
        }
        for pair in rows.windows(2) {
            let level = pair[0].place == pair[1].place;
            let counted = pool.rank_by.iter().filter(|c| **c != Criterion::HeadToHead);
            let mut compared = counted.map(|c| c.compare(&pair[0].tally, &pair[1].tally));
            if level {
                prop_assert!(compared.all(std::cmp::Ordering::is_eq));
                prop_assert!(pair[0].team < pair[1].team && pair[0].level && pair[1].level);
            } else {
                // Where no match among the level teams decides, the first difference does.
                let cut = pair[0].cut.as_ref().expect("something separates them");
                if !pair[0].level && cut.criterion != Criterion::HeadToHead {
                    prop_assert_eq!(
                        compared.find(|o| o.is_ne()),
                        Some(std::cmp::Ordering::Greater)
                    );
                }
            }
        }
    }

    #[test]
    fn reading_any_pool_ends_with_a_table_or_a_sentence(value in super::any_form("volleyball-pool")) {
        let form = standings::read(&value.to_string());
        match form.read {
            Some(pool) => prop_assert!(json(&pool, &standings::rank(&pool)).is_object()),
            None => prop_assert!(!form.problems.is_empty()),
        }
    }
}

/// A team that does not appear loses as the competition says, and not more.
#[test]
fn a_default_costs_what_the_scheme_says() {
    let default = Played {
        home: "Otters".to_owned(),
        away: "Herons".to_owned(),
        sets: vec![(25, 0), (25, 0)],
        default: Some(Side::Away),
        source: Source::default(),
    };
    let points = |scheme: Scheme| {
        let pool = scheme.pool(vec![Criterion::MatchPoints], vec![default.clone()]);
        let table = standings::rank(&pool);
        assert_eq!(table.findings, []);
        let of = |team: &str| {
            let row = table.rows.iter().find(|r| r.team == team);
            row.map(|r| r.tally.match_points)
        };
        (of("Otters"), of("Herons"))
    };
    assert_eq!(points(Scheme::Appearance), (Some(2), Some(0)));
    assert_eq!(points(Scheme::Loss), (Some(2), Some(1)));
    assert_eq!(points(Scheme::ByMargin), (Some(3), Some(0)));
    for scheme in Scheme::ALL {
        assert_eq!(Scheme::from_code(scheme.code()), Some(scheme));
    }
}
