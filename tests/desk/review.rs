//! The look back on a match agrees with its sheet.

use game::{simulate, Kind, Outcome, Timeline};
use render::review as pictures;
use reports::review::{Question, Review, AFTER_TIME_OUT};
use reports::Sheet;
use rules::{ByTeam, Preset, Team};

fn names() -> ByTeam<String> {
    ByTeam::new(|team| format!("Team {team}"))
}

#[test]
fn a_review_agrees_with_the_sheet() {
    for seed in 1..60 {
        let timeline = Timeline::of(simulate(Preset::SchoolJunior, seed));
        let sheet = Sheet::of(&timeline);
        let review = Review::of(&timeline);
        let played: Vec<_> = sheet.sets.iter().filter(|s| s.began.is_some()).collect();
        assert_eq!(review.sets.len(), played.len(), "seed {seed}");
        for (set, of) in review.sets.iter().zip(played) {
            assert_eq!(set.time_outs.len(), of.time_outs.len());
            if let Some(last) = set.points.last() {
                assert_eq!(last.score, of.score, "seed {seed}");
            }
            for team in Team::BOTH {
                let (won, lost) = set.rotations[team]
                    .iter()
                    .fold((0, 0), |(w, l), (won, lost)| (w + won, l + lost));
                let rallies = |of: Team| {
                    let points = set.points.iter().filter(|p| p.team == of);
                    points.filter(|p| is_rally(&timeline, p.entry)).count()
                };
                assert_eq!(usize::from(won), rallies(team), "seed {seed}");
                assert_eq!(usize::from(lost), rallies(team.other()), "seed {seed}");
            }
        }
        let called: usize = review.calls.iter().map(|c| c.when.len()).sum();
        assert!(called + review.unsaid() == review.points(), "seed {seed}");
        let struck = timeline.outcomes().filter(|(e, o)| {
            // A rally that was replayed was not taken back.
            let by_strike =
                |by| matches!(timeline.entry(by), Some(by) if matches!(by.kind, Kind::Strike { .. }));
            matches!(o, Outcome::Struck(by) if by_strike(*by))
                && !matches!(e.kind, Kind::Strike { .. })
        });
        assert_eq!(review.taken_back.len(), struck.count());
    }
}

fn is_rally(timeline: &Timeline, entry: u32) -> bool {
    timeline
        .entry(entry)
        .is_some_and(|e| matches!(e.kind, Kind::Rally { .. }))
}

#[test]
fn what_followed_a_time_out_is_what_was_played() {
    let mut seen = 0;
    for seed in 1..30 {
        let review = Review::of(&Timeline::of(simulate(Preset::SchoolJunior, seed)));
        for set in &review.sets {
            for t in &set.time_outs {
                seen += 1;
                let after: Vec<Team> = set
                    .points
                    .iter()
                    .skip(usize::from(t.score.a + t.score.b))
                    .take(AFTER_TIME_OUT)
                    .map(|p| p.team)
                    .collect();
                assert_eq!(t.after, after, "seed {seed}");
            }
        }
    }
    assert!(seen > 20);
}

#[test]
fn three_different_questions_end_with_what_went_well() {
    for seed in 1..60 {
        let review = Review::of(&Timeline::of(simulate(Preset::SchoolJunior, seed)));
        let questions = review.questions();
        assert_eq!(questions[2], Question::Well);
        assert_ne!(questions[0], questions[1]);
        let rules = Preset::SchoolJunior.rules();
        for question in &questions {
            let words = text::review::question(question, &rules);
            assert!(words.ends_with('?'), "{words}");
        }
    }
    let [first, second, third] = Review::default().questions();
    assert_eq!((&first, &third), (&Question::Looked, &Question::Well));
    assert_ne!(first, second);
}

#[test]
fn every_picture_is_a_drawing_and_a_sentence() {
    let review = Review::of(&Timeline::of(simulate(Preset::SchoolJunior, 344)));
    let mut pictures = vec![pictures::pauses(&review).expect("a simulated match has times")];
    for set in &review.sets {
        pictures.push(pictures::lead(set, &names()));
        pictures.extend(
            Team::BOTH
                .iter()
                .filter_map(|t| pictures::rotation(set, *t, "Otters")),
        );
        pictures.extend(set.time_outs.iter().map(pictures::after_time_out));
    }
    pictures.extend(
        review
            .calls
            .iter()
            .map(|c| pictures::when_called(&review, c)),
    );
    assert!(pictures.len() > 10);
    for picture in pictures {
        let opened = picture.inside.matches('<').count();
        let closed = picture.inside.matches('>').count();
        assert_eq!(opened, closed, "{}", picture.inside);
        assert!(!picture.inside.contains("style"), "the page's policy");
        assert!(picture.say.ends_with('.'), "{}", picture.say);
    }
    // Nothing that a person typed gets into a drawing.
    let bad = ByTeam::new(|_| "<script>".to_owned());
    assert!(!pictures::lead(&review.sets[0], &bad)
        .inside
        .contains("script"));
}

/// Who showed a fault is counted where it was noted, and every such call is one of those that were made.
#[test]
fn what_others_showed_is_among_what_was_called() {
    let mut seen = 0;
    for seed in 1..30 {
        let timeline = Timeline::of(simulate(Preset::SchoolJunior, seed));
        let review = Review::of(&timeline);
        let shown: usize = review.shown_by().iter().map(|(_, times)| times).sum();
        let marked: usize = review.calls.iter().map(|c| c.shown.len()).sum();
        assert_eq!(shown, marked, "seed {seed}");
        for calls in &review.calls {
            assert!(calls.shown.iter().all(|w| calls.when.contains(w)));
            let rings = pictures::when_called(&review, calls)
                .inside
                .matches("<circle")
                .count();
            assert_eq!(rings, calls.shown.len());
        }
        seen += shown;
    }
    assert!(seen > 20, "only {seen}");
}
