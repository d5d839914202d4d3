//! The rebuilt order entered into a log, box by box. What the reducer refuses is a finding; it is then
//! entered against its advice, because so it stands on the sheet.

use sha2::{Digest, Sha256};

use super::check::leader;
use super::finding::{BoxKind, Fault, Finding};
use super::rounds::Order;
use super::{say, PaperSanction, PaperSet, PaperSheet, PaperSubstitution};
use crate::game::entry::{Change, Forced, Heading, Player, TeamList, Toss};
use crate::game::{self, Barred, Entry, Kind, OutFor, Phase, Refusal, Replay, SanctionKind, State};
use crate::record::Log;
use crate::rules::{ByTeam, Score, Shirt, Team};

/// The scorer's table at which the sheet is played through once more.
pub(super) struct Table<'a> {
    sheet: &'a PaperSheet,
    replay: Replay,
    /// How many entries stand on the sheet; those after it were made up to look further.
    on_sheet: Option<usize>,
    /// Who was due to open the last set.
    due: Option<Team>,
    pub findings: Vec<Finding>,
}

/// Something asked or sanctioned at a score, by its place in its list.
enum Asked<'a> {
    Sanction(usize, &'a PaperSanction),
    TimeOut(usize, Team),
    /// One request: all regular changes of a team at one score, or one exceptional change.
    Request(Team, Vec<(usize, &'a PaperSubstitution)>),
    Penalty(usize, &'a PaperSanction),
}

impl<'a> Table<'a> {
    /// Opens the match: heading and team lists.
    pub fn open(sheet: &'a PaperSheet) -> Table<'a> {
        let mut table = Table {
            sheet,
            replay: Replay::new(),
            on_sheet: None,
            due: None,
            findings: Vec::new(),
        };
        let heading = Heading::new(sheet.teams.map(|_, t| t.name.clone()), sheet.rules);
        // Rules that cannot be played by are turned away by the reader.
        table.push(Kind::Match(Box::new(heading)));
        if sheet.rules.line_ups {
            for team in Team::BOTH {
                table.list(team);
            }
        }
        table
    }

    /// What was found, the record as far as it stands on the sheet, and whether that is all of it.
    pub fn close(mut self) -> (Vec<Finding>, Log, bool) {
        let mut entries = self.replay.entries().to_vec();
        let whole = self.on_sheet.is_none();
        entries.truncate(self.on_sheet.unwrap_or(usize::MAX));
        let text = if whole {
            say::REBUILT
        } else {
            say::REBUILT_SO_FAR
        };
        let text = text.to_owned();
        let n = entries.last().map_or(1, |e| e.n + 1);
        entries.push(Entry::new(n, Kind::Remark { text, team: None }));
        // The order of the sheet: the match first, then set by set.
        self.findings.sort_by_key(|f| f.set);
        let digest = Sha256::digest(super::write(self.sheet).as_bytes());
        let hex: String = digest.iter().take(6).map(|b| format!("{b:02x}")).collect();
        let id = format!("paper-{hex}");
        (self.findings, Log { id, entries }, whole)
    }

    fn state(&self) -> &State {
        self.replay.state()
    }

    fn found(&mut self, set: Option<u8>, place: String, fault: Fault) {
        self.findings.push(Finding { set, place, fault });
    }

    /// Enters something, if the rules have nothing against it.
    fn enter(&mut self, kind: Kind) -> Result<(), Refusal> {
        let entry = Entry::new(self.replay.next_number(), kind);
        self.replay.may(&entry)?;
        self.replay.push(entry);
        Ok(())
    }

    /// Enters what is known to be legal, or is not worth a finding.
    fn push(&mut self, kind: Kind) {
        let _ = self.enter(kind);
    }

    /// Enters something against the advice; what has no object is left out, and the record is no
    /// longer whole.
    fn insist(&mut self, kind: Kind, refusal: &Refusal) {
        if refusal.is_final() {
            self.made_up();
            return;
        }
        let mut entry = Entry::new(self.replay.next_number(), kind);
        entry.insist = Some(say::ON_THE_SHEET.to_owned());
        self.replay.push(entry);
    }

    /// From here on the log no longer says what stands on the sheet.
    fn made_up(&mut self) {
        let len = self.replay.entries().len();
        self.on_sheet.get_or_insert(len);
    }

    fn against(&mut self, set: Option<u8>, place: String, about: BoxKind, refusal: &Refusal) {
        let say = game::say(refusal, self.state());
        let refusal = refusal.clone();
        self.found(
            set,
            place,
            Fault::Against {
                about,
                refusal,
                say,
            },
        );
    }

    fn list(&mut self, team: Team) {
        let on_sheet = &self.sheet.teams[team];
        let place = format!("teams.{team}.players");
        let players = match &on_sheet.players {
            Some(players) if !players.is_empty() => {
                let more = on_sheet.liberos.iter().filter(|l| !players.contains(l));
                players.iter().chain(more).copied().collect()
            }
            _ => {
                self.found(None, place.clone(), Fault::Missing);
                self.made_up();
                self.everybody(team)
            }
        };
        let list = |players: &[Shirt]| {
            let player = |&number: &Shirt| Player {
                number,
                name: None,
                captain: false,
                libero: on_sheet.liberos.contains(&number),
            };
            let players = players.iter().map(player).collect();
            Kind::TeamList(TeamList {
                team,
                players,
                staff: Vec::new(),
            })
        };
        if let Err(refusal) = self.enter(list(&players)) {
            self.against(None, place, BoxKind::List, &refusal);
            self.insist(list(&players), &refusal);
        }
        if self.state().team(team).list.is_none() {
            // A number stands twice: to look further, each counts once.
            let mut once = players;
            once.sort();
            once.dedup();
            let kind = list(&once);
            if let Err(refusal) = self.enter(kind.clone()) {
                self.insist(kind, &refusal);
            }
        }
    }

    /// Every number of a team anywhere on the sheet.
    fn everybody(&self, team: Team) -> Vec<Shirt> {
        let mut all: Vec<Shirt> = self.sheet.teams[team].liberos.clone();
        for set in &self.sheet.sets {
            all.extend(set.line_up.iter().flat_map(|l| &l[team]));
            let own = set.substitutions.iter().filter(|s| s.team == team);
            all.extend(own.flat_map(|s| [s.out, s.into]));
        }
        all.sort();
        all.dedup();
        all
    }

    /// Plays one set through.
    pub fn set(&mut self, number: u8, set: &PaperSet, order: &Order) {
        if self.state().phase() == Phase::Finished {
            let place = format!("sets[{}]", number.saturating_sub(1));
            self.found(None, place, Fault::SetTooMany);
            return;
        }
        if self.state().set_at_hand() != number {
            return; // An earlier set could not be played through.
        }
        self.toss(number, set);
        let doubtful = if self.sheet.rules.line_ups {
            Team::BOTH.map(|team| !self.line_up(number, set, team))
        } else {
            [false, false]
        };
        let doubtful = ByTeam {
            a: doubtful[0],
            b: doubtful[1],
        };
        if self.enter(Kind::BeginSet).is_err() {
            self.made_up();
            return;
        }
        self.play(number, set, order, &doubtful);
        self.finish(number, set, order);
    }

    fn toss(&mut self, number: u8, set: &PaperSet) {
        let toss = Kind::Toss(Toss::new(
            set.first_service,
            // Sides are not on the form. By custom A is the team on the scorer's left in set 1
            // (score-sheet practice), which is the referee's right; the deciding set is as good as any.
            Team::B,
        ));
        let in_log = self.state().opener_to_come();
        // One wrong box is one finding: the next set follows from who was due to open this one.
        let due = match (in_log, self.due) {
            (Some(_), Some(last)) => last.other(),
            _ => set.first_service,
        };
        self.due = Some(due);
        if due != set.first_service {
            self.found(
                Some(number),
                "first_service".to_owned(),
                Fault::FirstServiceOrder { due },
            );
        }
        if in_log != Some(set.first_service) {
            if let Err(refusal) = self.enter(toss.clone()) {
                self.insist(toss, &refusal);
            }
        }
    }

    /// Hands in a line-up. Where it cannot be one, another is made up to look further, and false says
    /// that the places are doubtful.
    fn line_up(&mut self, number: u8, set: &PaperSet, team: Team) -> bool {
        let place = format!("line_up.{team}");
        let mut positions = match &set.line_up {
            Some(line_up) if !line_up[team].is_empty() => line_up[team].clone(),
            _ => {
                self.found(Some(number), place.clone(), Fault::Missing);
                self.made_up();
                Vec::new()
            }
        };
        let mut as_written = !positions.is_empty();
        // Each turn puts one number right; there are few.
        for _ in 0..100 {
            let kind = Kind::LineUp {
                team,
                positions: positions.clone(),
            };
            let Err(refusal) = self.enter(kind.clone()) else {
                return as_written;
            };
            let at = culprit(&positions, &refusal);
            if as_written || at.is_some() {
                let place = match at {
                    Some(i) => format!("{place}[{i}]"),
                    None => place.clone(),
                };
                self.against(Some(number), place, BoxKind::LineUp, &refusal);
            }
            if !refusal.is_final() {
                self.insist(kind, &refusal);
                return as_written;
            }
            as_written = false;
            self.made_up();
            let Some(filled) = self.fill(team, &positions, at) else {
                return false;
            };
            positions = filled;
        }
        false
    }

    /// The line-up with somebody else at one place, or with as many numbers as it needs.
    fn fill(&self, team: Team, positions: &[Shirt], at: Option<usize>) -> Option<Vec<Shirt>> {
        let state = self.state();
        let list = state.team(team).list.as_ref()?;
        let mut free = list
            .players
            .iter()
            .map(|p| p.number)
            .filter(|n| !positions.contains(n) && game::may_start(state, team, *n).is_ok());
        let mut filled = positions.to_vec();
        match at {
            Some(i) => filled[i] = free.next()?,
            None => {
                let size = usize::from(state.rules().players_on_court);
                filled.truncate(size);
                while filled.len() < size {
                    filled.push(free.next()?);
                }
            }
        }
        Some(filled)
    }

    /// The rallies, and what was asked between them.
    fn play(&mut self, number: u8, set: &PaperSet, order: &Order, doubtful: &ByTeam<bool>) {
        let mut asked = self.place_all(number, set, order);
        for (i, at) in asked.iter_mut().enumerate() {
            let mut letter = order.letters.get(i).copied();
            for asked in at.drain(..) {
                if self.state().play().is_none() {
                    // Said once: what was asked at a score after the end of the set.
                    let score = self.state().score();
                    if letter.is_none() {
                        let place = place_of(&asked);
                        self.found(Some(number), place, Fault::AfterTheEnd { score });
                    }
                    continue;
                }
                match asked {
                    Asked::Sanction(i, s) => self.sanction(i, s),
                    Asked::TimeOut(i, team) => self.time_out(number, i, team),
                    Asked::Request(team, changes) => {
                        self.request(number, team, &changes, doubtful[team]);
                    }
                    Asked::Penalty(i, s) => self.penalty(i, s, &mut letter),
                }
            }
            let Some(won_by) = letter else { continue };
            if self.state().play().is_none() {
                continue; // Said once, when the set is finished.
            }
            self.push(Kind::Rally {
                won_by,
                cause: None,
                by: None,
            });
        }
    }

    /// Everything asked in the set, each at the number of points after which its score stood.
    fn place_all<'s>(&mut self, number: u8, set: &'s PaperSet, order: &Order) -> Vec<Vec<Asked<'s>>>
    where
        'a: 's,
    {
        let mut stood = vec![Score::default()];
        for &letter in &order.letters {
            stood.push(stood[stood.len() - 1].plus(letter));
        }
        let mut places: Vec<Vec<Asked>> = stood.iter().map(|_| Vec::new()).collect();
        let sheet = self.sheet;
        let of_set = sheet.sanctions.iter().enumerate();
        for (i, s) in of_set.filter(|(_, s)| s.set == number) {
            let place = || format!("sanctions[{i}]");
            let Some(at) = self.moment(None, place, s.score, &stood, order) else {
                continue;
            };
            let asked = match s.kind {
                SanctionKind::DelayPenalty | SanctionKind::Misconduct(game::Level::Penalty) => {
                    Asked::Penalty(i, s)
                }
                _ => Asked::Sanction(i, s),
            };
            places[at].push(asked);
        }
        let in_set = Some(number);
        for (i, t) in set.time_outs.iter().enumerate() {
            let place = || format!("time_outs[{i}]");
            if let Some(at) = self.moment(in_set, place, t.score, &stood, order) {
                places[at].push(Asked::TimeOut(i, t.team));
            }
        }
        for (i, s) in set.substitutions.iter().enumerate() {
            let place = || format!("substitutions[{i}]");
            let Some(at) = self.moment(in_set, place, s.score, &stood, order) else {
                continue;
            };
            let together = |other: &PaperSubstitution| {
                let regular = !s.exceptional && !other.exceptional;
                regular && other.team == s.team && other.score == s.score
            };
            let regular = places[at].iter_mut().find_map(|asked| match asked {
                Asked::Request(_, changes) if together(changes[0].1) => Some(changes),
                _ => None,
            });
            match regular {
                Some(changes) => changes.push((i, s)),
                None => places[at].push(Asked::Request(s.team, vec![(i, s)])),
            }
        }
        for at in &mut places {
            // Who is sent off must leave after it; a penalty ends the interruption.
            at.sort_by_key(|asked| match asked {
                Asked::Sanction(..) => 0,
                Asked::TimeOut(..) => 1,
                Asked::Request(..) => 2,
                Asked::Penalty(..) => 3,
            });
        }
        places
    }

    /// After how many points a score stood. One that never did is said and put where so many points had
    /// been played, so that it still counts against the limits; none beyond a doubtful box.
    fn moment(
        &mut self,
        set: Option<u8>,
        place: impl Fn() -> String,
        score: Score,
        stood: &[Score],
        order: &Order,
    ) -> Option<usize> {
        let played = usize::from(score.a) + usize::from(score.b);
        if stood.get(played) == Some(&score) {
            return Some(played);
        }
        if !order.whole && played >= order.letters.len() {
            return None;
        }
        let apart = |s: &Score| u32::from(s.a.abs_diff(score.a)) + u32::from(s.b.abs_diff(score.b));
        let nearest = stood.iter().min_by_key(|s| apart(s)).copied();
        let nearest = nearest.unwrap_or_default();
        self.found(set, place(), Fault::ScoreNeverStood { score, nearest });
        Some(played.min(order.letters.len().saturating_sub(1)))
    }

    fn time_out(&mut self, number: u8, i: usize, team: Team) {
        let kind = Kind::TimeOut { team };
        if let Err(refusal) = self.enter(kind.clone()) {
            let place = format!("time_outs[{i}]");
            self.against(Some(number), place, BoxKind::TimeOut, &refusal);
            self.insist(kind, &refusal);
        }
    }

    fn request(
        &mut self,
        number: u8,
        team: Team,
        asked: &[(usize, &PaperSubstitution)],
        doubtful: bool,
    ) {
        let change = |s: &PaperSubstitution| Change {
            out: s.out,
            into: s.into,
        };
        let reason = asked
            .iter()
            .find(|(_, s)| s.exceptional)
            .map(|(_, s)| self.why_exceptional(team, s.out, number));
        let kind = |changes: Vec<Change>| Kind::Substitution {
            team,
            changes,
            reason,
        };
        let exceptional = |state: &State| state.play().map_or(0, |p| p.sides[team].exceptional);
        let before = exceptional(self.state());
        let changes: Vec<Change> = asked.iter().map(|(_, s)| change(s)).collect();
        let Err(refusal) = self.enter(kind(changes)) else {
            let place = format!("substitutions[{}]", asked[0].0);
            if reason.is_some() && exceptional(self.state()) == before && !doubtful {
                self.found(Some(number), place, Fault::NotExceptional);
            }
            return;
        };
        // Which of them it is about: alone, and behind those that can be granted.
        let legal = match &refusal {
            Refusal::PartlyIllegal { legal, .. } => legal.clone(),
            _ => Vec::new(),
        };
        if !legal.is_empty() {
            self.push(kind(legal.clone()));
        }
        for (i, s) in asked.iter().filter(|(_, s)| !legal.contains(&change(s))) {
            let alone = Entry::new(self.replay.next_number(), kind(vec![change(s)]));
            let why = match (self.replay.may(&alone), &refusal) {
                (Err(Refusal::SecondRequest { .. }), Refusal::PartlyIllegal { because, .. }) => {
                    (**because).clone()
                }
                (Err(why), _) => why,
                (Ok(()), _) => {
                    self.push(alone.kind);
                    continue;
                }
            };
            // Two requests at one score are one on paper; they are two here only where one of the scores
            // never stood, which is said already.
            let said = matches!(why, Refusal::SecondRequest { .. })
                || doubtful
                    && !matches!(
                        why,
                        Refusal::NotListed { .. } | Refusal::NoSubstitutionLeft { .. }
                    );
            if !said {
                let place = format!("substitutions[{i}]");
                self.against(Some(number), place, BoxKind::Substitution, &why);
            }
            self.insist(alone.kind, &why);
        }
    }

    /// Why an exceptional substitution was made: what the sanctions say, else an injury.
    fn why_exceptional(&self, team: Team, out: Shirt, number: u8) -> Forced {
        match self.state().team(team).barred(out, number) {
            Some(Barred::Expelled) => Forced::Expelled,
            Some(Barred::Out(OutFor::Disqualified)) => Forced::Disqualified,
            _ => Forced::Injury,
        }
    }

    /// A sanction without a point.
    fn sanction(&mut self, i: usize, s: &PaperSanction) {
        let place = format!("sanctions[{i}]");
        let kind = entry_of(s);
        let mut trial = self.replay.clone();
        let entry = Entry::new(trial.next_number(), kind.clone());
        if let Err(refusal) = trial.may(&entry) {
            self.against(None, place, BoxKind::Sanction, &refusal);
            self.insist(kind, &refusal);
            return;
        }
        trial.push(entry);
        let by_rule = trial.state().sanctions().last().map(|s| s.kind);
        if by_rule == Some(s.kind) {
            self.replay = trial;
        } else {
            let written = s.kind;
            self.found(None, place, Fault::OtherSanction { written, by_rule });
            self.made_up();
        }
    }

    /// A sanction with a point, which is the next one on the sheet.
    fn penalty(&mut self, i: usize, s: &PaperSanction, letter: &mut Option<Team>) {
        let to = s.team.other();
        if *letter != Some(to) {
            let place = format!("sanctions[{i}]");
            self.found(None, place, Fault::PointMissing { to });
            self.made_up();
            return;
        }
        let points = |replay: &Replay| {
            let score = replay.state().score();
            (replay.state().sets().count(), score[to])
        };
        let before = points(&self.replay);
        self.sanction(i, s);
        if points(&self.replay) != before {
            *letter = None;
        }
    }

    /// Whether the set ended with its last point. One that did not is ended for the leading team, to
    /// look at the next one.
    fn finish(&mut self, number: u8, set: &PaperSet, order: &Order) {
        let Some(score) = self.state().play().map(|p| p.score) else {
            let over_at = self.state().score();
            let points = usize::from(over_at.a) + usize::from(over_at.b);
            if points < order.letters.len() {
                let place = match order.letters.last() {
                    Some(&team) => {
                        format!(
                            "rounds.{team}[{}]",
                            set.rounds[team].len().saturating_sub(1)
                        )
                    }
                    None => "rounds".to_owned(),
                };
                self.found(Some(number), place, Fault::PlayedOn { over_at });
                self.made_up();
            }
            return;
        };
        if order.whole {
            self.found(
                Some(number),
                "final".to_owned(),
                Fault::NotFinished { score },
            );
        }
        self.made_up();
        let won_by = leader(set).unwrap_or(Team::A);
        // No target is further away.
        for _ in 0..2000 {
            if self.state().play().is_none() {
                break;
            }
            self.push(Kind::Rally {
                won_by,
                cause: None,
                by: None,
            });
        }
    }
}

/// The number in a line-up that a refusal is about.
fn culprit(positions: &[Shirt], refusal: &Refusal) -> Option<usize> {
    match refusal {
        Refusal::TwiceInLineUp { number } => positions.iter().rposition(|n| n == number),
        Refusal::NotListed { number, .. }
        | Refusal::LiberoInLineUp { number }
        | Refusal::PlayerBarred { number, .. } => positions.iter().position(|n| n == number),
        _ => None,
    }
}

fn place_of(asked: &Asked) -> String {
    match asked {
        Asked::Sanction(i, _) | Asked::Penalty(i, _) => format!("sanctions[{i}]"),
        Asked::TimeOut(i, _) => format!("time_outs[{i}]"),
        Asked::Request(_, changes) => {
            format!("substitutions[{}]", changes.first().map_or(0, |c| c.0))
        }
    }
}

fn entry_of(s: &PaperSanction) -> Kind {
    match (s.kind, &s.who) {
        (SanctionKind::Misconduct(sanction), Some(who)) => Kind::Misconduct {
            team: s.team,
            who: who.clone(),
            sanction,
        },
        (SanctionKind::ImproperRequest, _) => Kind::ImproperRequest { team: s.team },
        // Misconduct without a person is turned away by the reader.
        _ => Kind::Delay {
            team: s.team,
            request: false,
        },
    }
}
