//! Finding a match among many by words and by its day, the day as people write it.

/// Whether a match fits: each of the words stands in its names, competition, division, hall, court,
/// number or day, whatever the case of the letters, or belongs to a date that is one of its days: `9 May`,
/// `May 9th`, `9.5.`, `5/9/26`, `2026-05`. `day` begins with the day of its last entry as `2026-05-09`.
#[must_use]
pub fn fits(parts: &[String], scheduled: Option<&str>, day: &str, words: &str) -> bool {
    let mut all = String::from(day);
    let mut days = Vec::from_iter(Day::of_record(day));
    days.extend(scheduled.and_then(Day::of_record));
    for part in parts {
        all.push('\n');
        all.push_str(part);
    }
    let all = all.to_lowercase();
    let words = words.to_lowercase();
    let words: Vec<&str> = words
        .split(|c: char| c.is_whitespace() || c == ',')
        .filter(|word| !word.is_empty())
        .collect();
    let mut rest = &words[..];
    while !rest.is_empty() {
        let (asked, taken) = dates(rest);
        let (group, behind) = rest.split_at(taken);
        let by_day = days
            .iter()
            .any(|day| asked.iter().any(|a| a.is_part_of(day)));
        if !by_day && !group.iter().all(|word| all.contains(word)) {
            return false;
        }
        rest = behind;
    }
    true
}

/// A date, as far as it was written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Day {
    year: Option<u32>,
    month: Option<u32>,
    day: Option<u32>,
}

impl Day {
    /// The day of a moment as records have it, such as `2026-05-09T14:00`.
    fn of_record(text: &str) -> Option<Day> {
        let (year, month, day) = (text.get(..4)?, text.get(5..7)?, text.get(8..10)?);
        Some(Day {
            year: Some(year.parse().ok()?),
            month: Some(month.parse().ok()?),
            day: Some(day.parse().ok()?),
        })
    }

    fn is_part_of(&self, whole: &Day) -> bool {
        let same = |asked: Option<u32>, is: Option<u32>| asked.is_none() || asked == is;
        same(self.year, whole.year) && same(self.month, whole.month) && same(self.day, whole.day)
    }

    fn is_possible(&self) -> bool {
        let within = |n: Option<u32>, most| n.is_none_or(|n| (1..=most).contains(&n));
        within(self.month, 12) && within(self.day, 31)
    }
}

/// What the first words can mean as a date (none: they are just words), and how many of them it takes.
fn dates(words: &[&str]) -> (Vec<Day>, usize) {
    let Some(first) = words.first() else {
        return (Vec::new(), 0);
    };
    let numeric = of_numbers(first);
    if !numeric.is_empty() {
        return (numeric, 1);
    }
    // A month by name, with a day before or behind it and a year after that.
    let second = words.get(1).copied();
    let (named, day, mut taken) = match (month(first), ordinal(first)) {
        (Some(named), _) => match second.and_then(ordinal) {
            Some(day) => (named, Some(day), 2),
            None => (named, None, 1),
        },
        (None, Some(day)) => match second.and_then(month) {
            Some(named) => (named, Some(day), 2),
            None => return (Vec::new(), 1),
        },
        (None, None) => return (Vec::new(), 1),
    };
    let year = words.get(taken).and_then(|word| year(word));
    taken += usize::from(year.is_some());
    let date = Day {
        year,
        month: Some(named),
        day,
    };
    (vec![date], taken)
}

/// `9.5.`, `9/5/26`, `2026-05-09`: day and month may be meant either way round.
fn of_numbers(word: &str) -> Vec<Day> {
    let parts: Option<Vec<u32>> = word
        .trim_end_matches('.')
        .split(['.', '/', '-'])
        .map(|part| part.parse().ok())
        .collect();
    let century = |year: u32| if year < 100 { 2000 + year } else { year };
    let date = |year, month, day| Day { year, month, day };
    let all = match parts.as_deref() {
        Some(&[year, month]) if year > 31 => vec![date(Some(year), Some(month), None)],
        Some(&[year, month, day]) if year > 31 => vec![date(Some(year), Some(month), Some(day))],
        Some(&[one, two]) => vec![
            date(None, Some(two), Some(one)),
            date(None, Some(one), Some(two)),
        ],
        Some(&[one, two, year]) => {
            let year = Some(century(year));
            vec![
                date(year, Some(two), Some(one)),
                date(year, Some(one), Some(two)),
            ]
        }
        _ => Vec::new(),
    };
    all.into_iter().filter(Day::is_possible).collect()
}

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// A month by its name or the beginning of it.
fn month(word: &str) -> Option<u32> {
    let word = word.trim_end_matches('.');
    let place = MONTHS.iter().position(|m| m.starts_with(word))?;
    (word.len() >= 3).then(|| u32::try_from(place + 1).ok())?
}

/// A day of the month, `9`, `9.` or `9th`.
fn ordinal(word: &str) -> Option<u32> {
    let digits = word.trim_end_matches(|c: char| !c.is_ascii_digit());
    let behind = &word[digits.len()..];
    let day = digits.parse().ok().filter(|d| (1..=31).contains(d))?;
    ["", ".", "st", "nd", "rd", "th"]
        .contains(&behind)
        .then_some(day)
}

fn year(word: &str) -> Option<u32> {
    word.parse().ok().filter(|y| (1000..=9999).contains(y))
}

#[cfg(test)]
mod tests {
    use super::*;

    const DAY: &str = "2026-05-09, 14:00";

    fn finds(scheduled: Option<&str>, day: &str, words: &str) -> bool {
        let parts = ["Otters", "Rote Füchse", "Hall by the river", "17/3"];
        let mut parts: Vec<String> = parts.map(str::to_owned).into();
        parts.extend(scheduled.map(str::to_owned));
        fits(&parts, scheduled, day, words)
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
        assert!(fits(&[], None, "2026-05-09", "05-09"));
    }

    #[test]
    fn a_day_is_found_as_people_write_it() {
        let finds = |words: &str| finds(None, DAY, words);
        for words in [
            "9 May",
            "may 9",
            "9. May 2026",
            "May 9th, 2026",
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
        ] {
            assert!(!finds(words), "{words}");
        }
    }

    #[test]
    fn the_day_it_was_planned_for_counts_too() {
        let finds = |words: &str| finds(Some("2026-06-01T10:00"), "2026-05-31, 23:50", words);
        assert!(finds("1 June") && finds("31 May") && !finds("2 June"));
    }
}
