//! The invented day: whole matches, two pools that are not clear at a glance, one slip on paper, two
//! records that differ.

use game::entry::Detail;
use game::{Outcome, Phase, Timeline};
use reports::standings::{self, Criterion, Played, Scheme};
use reports::{compare, demo, paper};

fn folds() -> Vec<Timeline> {
    let day = demo::day();
    day.logs
        .iter()
        .map(|l| Timeline::of(l.entries.clone()))
        .collect()
}

fn table(results: Vec<Played>) -> standings::Standings {
    standings::rank(&Scheme::ByMargin.pool(Criterion::USUAL.to_vec(), results))
}

#[test]
fn the_day_is_the_same_every_time_and_survives_a_file() {
    let day = demo::day();
    assert_eq!(day.logs, demo::day().logs);
    assert_eq!(day.paper, demo::day().paper);
    assert_eq!(day.logs.len(), 12);
    for log in &day.logs {
        assert!(demo::is_invented(&log.id));
        let reading = record::read(&record::write(log));
        assert_eq!(reading.problems, []);
        assert_eq!(&reading.log, log);
    }
    assert!(demo::is_invented(&day.paper_id));
    assert!(!demo::is_invented("a-match-of-my-own"));
}

#[test]
fn every_match_is_played_to_its_end_by_two_of_eight_teams() {
    let mut teams = std::collections::BTreeSet::new();
    for timeline in folds() {
        let state = timeline.state();
        assert_eq!(state.phase(), Phase::Finished);
        let heading = state.heading().expect("a heading");
        assert_eq!(
            heading.details[Detail::Competition].as_deref(),
            Some(demo::COMPETITION)
        );
        teams.extend([heading.names.a.clone(), heading.names.b.clone()]);
        let refused = timeline
            .outcomes()
            .filter(|(_, o)| matches!(o, Outcome::Refused(_)));
        assert_eq!(refused.count(), 0);
        let times: Vec<i64> = timeline.entries().iter().filter_map(|e| e.at).collect();
        assert!(times.windows(2).all(|t| t[0] <= t[1]));
    }
    assert_eq!(teams.len(), 8);
}

#[test]
fn both_pools_need_the_rule_of_order() {
    let day = demo::day();
    let of = |pool: &str| -> Vec<Played> {
        let in_pool = folds().into_iter().take(11).filter(|r| {
            let heading = r.state().heading().expect("a heading");
            heading.details[Detail::Division].as_deref() == Some(pool)
        });
        in_pool
            .map(|r| standings::of_match(r.state()).expect("it is over"))
            .collect()
    };
    let first = table(of("Pool 1"));
    let mut second = of("Pool 2");
    second.extend(standings::of_paper(&day.paper));
    let second = table(second);
    for table in [&first, &second] {
        assert_eq!(table.rows.len(), 4);
        assert_eq!(table.findings, []);
        let wins: Vec<u32> = table.rows.iter().map(|r| r.tally.wins).collect();
        assert_eq!(wins[0], wins[1], "the first two are level in matches won");
    }
}

#[test]
fn the_paper_sheet_has_one_slip() {
    let day = demo::day();
    let checked = paper::check(&day.paper);
    let codes: Vec<_> = checked
        .findings
        .iter()
        .map(|f| (f.set, f.fault.code()))
        .collect();
    assert_eq!(
        codes,
        [(Some(1), "rounds_decrease")],
        "{}",
        render::paper::text(&day.paper, &checked)
    );
}

#[test]
fn the_two_records_part_at_a_missed_rally() {
    let all = folds();
    let comparison = compare::compare(&all[10], &all[11]);
    assert!(comparison.parting().is_some());
    let codes: Vec<&str> = comparison.differences.iter().map(|d| d.code).collect();
    for code in ["rally", "time_out", "explain"] {
        assert!(codes.contains(&code), "{code} is not in {codes:?}");
    }
    assert!(
        codes.len() <= 4,
        "{}",
        render::comparison::text(&comparison)
    );
}

#[test]
fn the_day_says_where_its_pieces_lie() {
    let day = demo::day();
    let here = |id: &String| day.logs.iter().any(|log| log.id == *id);
    assert!(demo::id_of_both().iter().all(here) && here(&demo::id_of(3)));
    assert_eq!(demo::id_on_paper(), day.paper_id);
    assert!(demo::is_invented(&demo::id_on_paper()));
}

#[test]
fn the_picture_of_two_records_parts_where_they_do() {
    let day = demo::day();
    let both = demo::id_of_both().map(|id| {
        let log = day.logs.iter().find(|log| log.id == id).expect("a record");
        Timeline::of(log.entries.clone())
    });
    let comparison = compare::compare(&both[0], &both[1]);
    let parting = comparison.parting().expect("they part");
    let picture = render::parting(&comparison, [&both[0], &both[1]]).expect("a picture");
    let before = parting.rally.expect("a rally") - 1;
    let score = parting.score.expect("a score");
    let say = format!(
        "both records go together for {before} points, to {}.",
        score.marked()
    );
    assert!(picture.say.contains(&say), "{}", picture.say);
    // Two lines: one drawn, one broken; nothing where no point differs.
    assert_eq!(picture.inside.matches("class=\"line\"").count(), 1);
    assert_eq!(picture.inside.matches("class=\"line broken\"").count(), 1);
    let same = compare::compare(&both[0], &both[0]);
    assert_eq!(render::parting(&same, [&both[0], &both[0]]), None);
}
