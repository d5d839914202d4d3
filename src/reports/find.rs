//! Finding a match among many by words and by its day, the day as people write it.

/// What a language writes in a date beside its numbers, in small letters and without accents.
pub struct DateWords {
    /// The months, January first, each by all its names.
    pub months: [&'static [&'static str]; 12],
    /// The day that has a name as well.
    pub first: &'static str,
    /// What stands behind the number of a day.
    pub ordinals: &'static [&'static str],
    /// What stands before a day, a month or a year.
    pub links: &'static [&'static str],
}

/// Whether a match fits: each of the words stands in its names, competition, division, hall, court,
/// number or day, whatever the case and the accents of the letters, or belongs to a date that is one of its days:
/// `9 May`, `May 9th`, `9.5.`, `5/9/26`, `2026-05`. `day` begins with the day of its last entry as `2026-05-09`.
#[must_use]
pub fn fits(
    parts: &[String],
    scheduled: Option<&str>,
    day: &str,
    words: &str,
    said: &DateWords,
) -> bool {
    let mut all = String::from(day);
    let mut days = Vec::from_iter(Day::of_record(day));
    days.extend(scheduled.and_then(Day::of_record));
    for part in parts {
        all.push('\n');
        all.push_str(part);
    }
    let all = plain(&all);
    let words = plain(words);
    let words: Vec<&str> = words
        .split(|c: char| c.is_whitespace() || c == ',')
        .filter(|word| !word.is_empty())
        .collect();
    let mut rest = &words[..];
    while !rest.is_empty() {
        let (asked, taken) = dates(rest, said);
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

/// In small letters without their accents, whether these are parts of a letter or stand behind it.
fn plain(text: &str) -> String {
    let small = text.chars().flat_map(char::to_lowercase);
    small.filter_map(without_accent).collect()
}

const fn without_accent(c: char) -> Option<char> {
    Some(match c {
        '\u{300}'..='\u{36f}' => return None,
        'à'..='å' => 'a',
        'ç' => 'c',
        'è'..='ë' => 'e',
        'ì'..='ï' => 'i',
        'ñ' => 'n',
        'ò'..='ö' => 'o',
        'ù'..='ü' => 'u',
        'ý' | 'ÿ' => 'y',
        c => c,
    })
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
fn dates(words: &[&str], said: &DateWords) -> (Vec<Day>, usize) {
    const JUST_A_WORD: (Vec<Day>, usize) = (Vec::new(), 1);
    let numeric = words.first().map_or_else(Vec::new, |w| of_numbers(w));
    if !numeric.is_empty() {
        return (numeric, 1);
    }
    // A month by name, with a day before or behind it and a year after that.
    let next = Next { words, said };
    let (month, day, next) = if let Some((month, next)) = next.take(month) {
        match next.take(ordinal) {
            Some((day, next)) => (month, Some(day), next),
            None => (month, None, next),
        }
    } else if let Some((day, next)) = next.take(ordinal) {
        match next.take(month) {
            Some((month, next)) => (month, Some(day), next),
            None => return JUST_A_WORD,
        }
    } else {
        return JUST_A_WORD;
    };
    let (year, next) = match next.take(year) {
        Some((year, next)) => (Some(year), next),
        None => (None, next),
    };
    let date = Day {
        year,
        month: Some(month),
        day,
    };
    (vec![date], words.len() - next.words.len())
}

/// The words that are still to be read as a date.
#[derive(Clone, Copy)]
struct Next<'a> {
    words: &'a [&'a str],
    said: &'a DateWords,
}

impl<'a> Next<'a> {
    /// What the next word means, whatever words that only link stand before it, and what is left then.
    fn take(self, read: fn(&str, &DateWords) -> Option<u32>) -> Option<(u32, Next<'a>)> {
        let is_link = |word: &&&str| self.said.links.contains(*word);
        let links = self.words.iter().take_while(is_link).count();
        let (word, words) = self.words[links..].split_first()?;
        Some((read(word, self.said)?, Next { words, ..self }))
    }
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

/// A month by its name or the beginning of it.
fn month(word: &str, said: &DateWords) -> Option<u32> {
    let word = word.trim_end_matches('.');
    let begins = |names: &&[&str]| names.iter().any(|name| name.starts_with(word));
    let place = said.months.iter().position(begins)?;
    (word.len() >= 3).then(|| u32::try_from(place + 1).ok())?
}

/// A day of the month, `9`, `9.` or `9th`.
fn ordinal(word: &str, said: &DateWords) -> Option<u32> {
    if word == said.first {
        return Some(1);
    }
    let digits = word.trim_end_matches(|c: char| !c.is_ascii_digit());
    let behind = word[digits.len()..].trim_start_matches('.');
    let day = digits.parse().ok().filter(|d| (1..=31).contains(d))?;
    (behind.is_empty() || said.ordinals.contains(&behind)).then_some(day)
}

fn year(word: &str, _: &DateWords) -> Option<u32> {
    word.parse().ok().filter(|y| (1000..=9999).contains(y))
}
